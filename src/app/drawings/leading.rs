//! The drawing that leads the page: the current link, redrawn on every key.

use super::view::DrawingView;
use crate::app::session::{Session, use_session};
use leptos::prelude::*;
use linkwright::inputs;
use linkwright::present::drawing::{Drawing, Layout, Touch, check_of, link};
use linkwright::present::words;

/// The current link to scale; an outline while there is no answer. Touching a part opens its check.
#[component]
pub(crate) fn LeadingDrawing() -> impl IntoView {
    view! {
        <figure class="drawing leading">
            <InLayout layout=Layout::Narrow />
            <InLayout layout=Layout::Wide />
        </figure>
    }
}

/// The drawing in one layout, where the screen shows that or paper may want it.
#[component]
fn InLayout(
    /// The layout.
    layout: Layout,
) -> impl IntoView {
    let session = use_session();
    let drawing = Memo::new(move |_| drawn(session, layout));
    // Before there is an answer both stand there: the first screen is made once for all widths.
    let wanted = move || !session.answered.get() || session.shows(layout);
    let on_touch = move |touch| {
        if let Touch::Part(part) = touch
            && let Some(check) = check_of(part)
        {
            session.open_check(check);
        }
    };
    view! {
        <Show when=wanted>
            <DrawingView drawing on_touch />
        </Show>
    }
}

fn drawn(session: Session, layout: Layout) -> Drawing {
    let system = session.units.get();
    session.answer.with(|answer| match answer {
        Some(answer) => link::link(answer, system, layout),
        None => {
            let place = session.place();
            let length = session.document.with(|document| inputs::LENGTH.decided(document, place));
            let words = length.map_or("mount to mount".to_string(), |length| words::length(length, system));
            link::outline(layout, &words)
        }
    })
}
