//! Files for the shop's other programs: the finished bar as a drawing, what is sawn and what is bought as tables.

use super::cut_plan::Planned;
use super::machines::Machines;
use crate::app::fields::say_again;
use crate::app::session::use_session;
use crate::app::shop::{Shop, use_held_back};
use crate::browser::files;
use leptos::prelude::*;
use linkwright::present::make::cut_list::{cut_list, parts_list};
use linkwright::present::make::dxf;
use linkwright::present::make::head::name_of_file;
use linkwright::present::saved::notices::exported;
use linkwright::present::words::{rig_title, sheet_name};

/// The section.
#[component]
pub(super) fn Files(
    /// The shop's lists.
    shop: Shop,
    /// What the shop has set.
    machines: Machines,
    /// The cut plan.
    planned: Planned,
) -> impl IntoView {
    let session = use_session();
    let held_back = use_held_back();
    let said = RwSignal::new(String::new());
    let hand_over = move |name: String, text: String| {
        let done = files::download(&name, &text);
        say_again(said, exported(&name, done));
    };
    let of_rig = move |what: &str, ending: &str| {
        let title = session.document.with_untracked(|document| rig_title(document, session.units.get_untracked()));
        name_of_file(&format!("{what} {title}"), ending)
    };
    let drawing = move |_| {
        session.settle();
        if let Some(answer) = session.answer.get_untracked() {
            let link = session.link.get_untracked();
            let title = session.document.with_untracked(|document| sheet_name(document, link));
            let text = dxf::bar(&answer.link, &title, session.units.get_untracked());
            hand_over(name_of_file(&title, "dxf"), text);
        }
    };
    let sawn = move |_| {
        if !untrack(|| planned.is_current(session, shop, machines)) {
            planned.plan(session, shop, machines);
        }
        let plans = planned.found.with_untracked(|found| {
            let plans = found.iter().flat_map(|found| &found.plans);
            plans.map(|(plan, _)| plan.clone()).collect::<Vec<_>>()
        });
        hand_over(of_rig("cut list", "csv"), cut_list(&plans));
    };
    let bought = move |_| {
        session.settle();
        let text = session.rig.with_untracked(|whole| parts_list(&whole.rig.parts));
        hand_over(of_rig("parts", "csv"), text);
    };
    view! {
        <section class="part-of on-screen" id="files" tabindex="-1">
            <h3>"Files"</h3>
            <div class="buttons">
                <button type="button" id="file-dxf" disabled=move || !session.answered.get() || held_back.get() on:click=drawing>
                    "Drawing of this bar (DXF)"
                </button>
                <button type="button" id="file-cuts" disabled=move || held_back.get() on:click=sawn>"Cut list (CSV)"</button>
                <button type="button" id="file-parts" disabled=move || held_back.get() on:click=bought>"Parts list (CSV)"</button>
            </div>
            <p class="done" role="status">{move || said.get()}</p>
            <p class="help">
                "The drawing is the finished bar in your units, for any drawing program. The lists open in a spreadsheet; the cut list is the plan above, made anew if something changed."
            </p>
        </section>
    }
}
