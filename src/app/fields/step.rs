//! Moving a length by the smallest step of a tape measure.

use crate::app::session::{Session, use_session};
use leptos::prelude::*;
use linkwright::inputs::drafts::Typed;
use linkwright::inputs::{At, Number};
use linkwright::present::field;

/// A button that moves the length by the smallest step of a tape measure.
#[component]
pub(super) fn Step(
    /// The input.
    input: &'static Number,
    /// Where it is.
    place: At,
    /// 1 for longer, -1 for shorter.
    direction: f64,
) -> impl IntoView {
    let session = use_session();
    let words = move || field::step_label(session.units.get(), direction > 0.0);
    // The sign is drawn by the style: the button's name says what it does.
    let class = if direction > 0.0 { "step longer" } else { "step shorter" };
    let step = move |_| step(session, input, place, direction);
    view! { <button type="button" class=class aria-label=words title=words on:click=step></button> }
}

/// Moves a length by the smallest step of a tape measure, onto its marks.
pub(super) fn step(session: Session, input: &'static Number, place: At, direction: f64) {
    let system = session.units.get_untracked();
    let text = session.document.with_untracked(|document| field::stepped(document, system, input, place, direction));
    if let Some(text) = text {
        session.type_into(input, place, text, Typed::Whole);
    }
}
