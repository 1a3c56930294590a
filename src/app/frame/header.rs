//! Name of the page, its views and the unit switch.

use crate::app::session::{View, use_session};
use leptos::prelude::*;
use linkwright::quantity::System;

const UNITS: [(System, &str, &str, &str); 2] = [
    (System::Inch, "units-inch", "in, lb", "in, lb: inches and pounds"),
    (System::Metric, "units-metric", "mm, kg", "mm, kg: millimeters and kilograms"),
];

/// The header.
#[component]
pub(crate) fn Header() -> impl IntoView {
    let session = use_session();
    let views = View::ALL.map(|view| {
        let current = move || if session.view.get() == view { "page" } else { "false" };
        view! {
            <button
                type="button"
                id=format!("view-{}", view.name())
                aria-current=current
                on:click=move |_| session.open_view(view)
            >
                {view.label()}
            </button>
        }
    });
    let units = UNITS.map(|(system, id, label, spoken)| {
        let pressed = move || (session.units.get() == system).to_string();
        view! {
            <button
                type="button"
                id=id
                aria-label=spoken
                aria-pressed=pressed
                on:click=move |_| session.switch_units(system)
            >
                {label}
            </button>
        }
    });
    view! {
        <header class="title">
            <h1>"Linkwright"</h1>
            <p>"Sizes a suspension link and shows why."</p>
            <nav class="views" aria-label="Views">{views.collect_view()}</nav>
            <div class="units" role="group" aria-label="Units">{units.collect_view()}</div>
        </header>
    }
}
