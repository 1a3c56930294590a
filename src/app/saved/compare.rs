//! Two rigs side by side: what each link comes out as, and what was entered differently.

use crate::app::session::use_session;
use leptos::prelude::*;
use linkwright::document::Document;
use linkwright::engine;
use linkwright::present::compare::{Cells, Group, Row, Side, Table, table};
use linkwright::present::saved::help::SAME_ENTRIES;
use linkwright::present::saved::{CURRENT_BUILD, title_of};
use linkwright::present::words::{rig_title, unbroken};
use linkwright::quantity::System;
use linkwright::report::WholeRig;
use linkwright::store::saved_builds::SavedBuild;
use std::sync::Arc;

/// Stands for what is open now, among the ids of saved builds.
const CURRENT: &str = "current";

/// Two pickers, and the table once both hold something.
#[component]
pub(super) fn Compare() -> impl IntoView {
    let session = use_session();
    let [a, b] = [CURRENT, ""].map(|first| RwSignal::new(first.to_string()));
    let [one, other] = [use_side(a), use_side(b)];
    let compared = Memo::new(move |_| {
        let (one, other) = (one.get()?, other.get()?);
        let system = session.units.get();
        let [left, right] = [&one, &other].map(|side| side.name(system));
        Some(table([Side { name: &left, whole: &one.whole }, Side { name: &right, whole: &other.whole }], system))
    });
    view! {
        <section class="part-of" aria-labelledby="compare-title">
            <h3 id="compare-title">"Compare two"</h3>
            <div class="two">
                <Picker id="compare-a" label="This one" picked=a />
                <Picker id="compare-b" label="With this one" picked=b optional=true />
            </div>
            <div id="comparison" role="status">
                {move || compared.get().map(|table| view! { <Comparison table /> })}
            </div>
        </section>
    }
}

/// What was picked.
#[derive(Clone, PartialEq)]
struct Picked {
    /// The saved build; none for what is open now, which may have the same name.
    saved: Option<Document>,
    whole: Arc<WholeRig>,
}

impl Picked {
    fn name(&self, system: System) -> String {
        self.saved.as_ref().map_or_else(|| CURRENT_BUILD.to_string(), |document| rig_title(document, system))
    }
}

/// Everything about what was picked; none before, or once it is saved no longer.
fn use_side(picked: RwSignal<String>) -> Memo<Option<Picked>> {
    let session = use_session();
    let saved = Memo::new(move |_| {
        session.builds.with(|builds| {
            let is_picked = |saved: &&SavedBuild| saved.is_open() && *picked.read() == saved.build.id;
            builds.iter().flatten().find(is_picked).map(|saved| saved.build.document.clone())
        })
    });
    Memo::new(move |_| {
        if *picked.read() == CURRENT {
            return Some(Picked { saved: None, whole: session.rig.get() });
        }
        let document = saved.get()?;
        let whole = Arc::new(engine::whole_rig(&document, None));
        Some(Picked { saved: Some(document), whole })
    })
}

/// Picks what is open now, or a saved build.
#[component]
fn Picker(
    /// Its id.
    id: &'static str,
    /// Its label.
    label: &'static str,
    /// The id of what is picked.
    picked: RwSignal<String>,
    /// Whether nothing may be picked.
    #[prop(optional)]
    optional: bool,
) -> impl IntoView {
    let session = use_session();
    let builds = Memo::new(move |_| {
        let system = session.units.get();
        session.builds.with(|builds| {
            let open = builds.iter().flatten().filter(|saved| SavedBuild::is_open(saved));
            open.map(|saved| (saved.build.id.clone(), title_of(saved, system))).collect::<Vec<_>>()
        })
    });
    let option = move |(id, name): (String, String)| {
        let value = id.clone();
        view! { <option value=value selected=move || *picked.read() == id>{name}</option> }
    };
    view! {
        <div class="field">
            <label for=id>{label}</label>
            <select id=id prop:value=move || picked.get() on:change:target=move |event| picked.set(event.target().value())>
                {optional.then(|| view! { <option value="">"Choose one"</option> })}
                <option value=CURRENT>{CURRENT_BUILD}</option>
                <For each=move || builds.get() key=Clone::clone children=option />
            </select>
        </div>
    }
}

/// The table.
#[component]
fn Comparison(
    /// The table.
    table: Table,
) -> impl IntoView {
    let Table { names, same_entries, groups } = table;
    let heads = names.iter().map(|name| view! { <th scope="col">{name.clone()}</th> }).collect_view();
    let groups = groups.into_iter().map(|group| view! { <GroupRows group names=names.clone() /> }).collect_view();
    view! {
        {same_entries.then(|| view! { <p>{SAME_ENTRIES}</p> })}
        <table class="comparison">
            <thead>
                <tr><td></td>{heads}</tr>
            </thead>
            {groups}
        </table>
    }
}

/// Rows under a heading.
#[component]
fn GroupRows(
    /// The rows.
    group: Group,
    /// What the two are called.
    names: [String; 2],
) -> impl IntoView {
    let rows = group.rows.into_iter().map(|row| view! { <ComparedRow row names=names.clone() /> }).collect_view();
    view! {
        <tbody>
            <tr><td colspan="3" class="about">{group.heading}</td></tr>
            {rows}
        </tbody>
    }
}

/// What it is about, what both have, and a mark in words where they differ.
#[component]
fn ComparedRow(
    /// The row.
    row: Row,
    /// What the two are called.
    names: [String; 2],
) -> impl IntoView {
    let differs = row.differs();
    let cells = match row.cells {
        Cells::Each(cells) => {
            // On a narrow page, which hides the head, a cell repeats the name of its column.
            let cell = |(name, words): (String, String)| view! { <td data-of=name>{unbroken(&words)}</td> };
            names.into_iter().zip(cells).map(cell).collect_view().into_any()
        }
        Cells::Both(words) => view! { <td colspan="2">{unbroken(&words)}</td> }.into_any(),
    };
    view! {
        <tr class:differing=differs>
            <th scope="row">
                {row.about}
                {differs.then(|| view! { <small class="changed-mark">"differs"</small> })}
            </th>
            {cells}
        </tr>
    }
}
