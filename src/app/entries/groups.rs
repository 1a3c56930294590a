//! Every other entry, by group: built from the tables of inputs, so that none can be forgotten.

use crate::app::fields::InputField;
use crate::app::session::use_session;
use leptos::html;
use leptos::prelude::*;
use linkwright::document::OWN_ROD_END;
use linkwright::inputs::{At, Group, Input, NUMBERS, ROD_END, Scope, WHEELBASE, edits};
use linkwright::present::{field, words};

/// The groups in the order of the form, each with its name and what it is about.
const GROUPS: [(Group, &str, &str); 7] = [
    (Group::Side, "Place on the rig", "Axle, side, how many"),
    (Group::Bar, "Bar", "Metal and size"),
    (Group::Ends, "Rod ends", "Series, hand, thread, your own"),
    (Group::Bracket, "Bracket", "Bolt, ears, spacers"),
    (Group::Loads, "Loads", "Tires, grip, shock, strikes"),
    (Group::Factors, "Factors", "Safety factors"),
    (Group::Shop, "Shop", "Rounding, facing, wrench flats"),
];

/// The groups of the current link, each folded away until it is wanted.
#[component]
pub(crate) fn FieldGroups() -> impl IntoView {
    let session = use_session();
    let place = Memo::new(move |_| session.place());
    let groups = move || {
        let place = place.get();
        let group = |(group, name, about)| {
            let changed =
                Signal::derive(move || session.document.with(|document| field::changed_words(document, group, place)));
            view! { <FieldGroup name about changed of=group><GroupFields group place /></FieldGroup> }
        };
        GROUPS.map(group).collect_view()
    };
    view! {
        <h3 class="more-title">{field::CHANGE_A_DEFAULT}</h3>
        {groups}
    }
}

/// A fold of the form. Its fields are made when it first opens: sixty of them would otherwise follow every key that is
/// pressed in another.
#[component]
pub(crate) fn FieldGroup(
    /// What it is called.
    name: &'static str,
    /// What it is about.
    about: &'static str,
    /// How many of its entries the reader changed.
    #[prop(optional, into)]
    changed: Signal<String>,
    /// Which group it holds, where a jump may lead to a field of it.
    #[prop(optional)]
    of: Option<Group>,
    /// Its fields.
    children: ChildrenFn,
) -> impl IntoView {
    let session = use_session();
    let wanted = Memo::new(move |_| of.is_some() && session.open_group.get() == of);
    let details = NodeRef::<html::Details>::new();
    let opened = RwSignal::new(false);
    let toggled = move |_| {
        let open = details.get_untracked().is_some_and(|details| details.open());
        if open && !opened.get_untracked() {
            opened.set(true);
        }
        if !open && wanted.get_untracked() {
            session.open_group.set(None);
        }
    };
    view! {
        <details class="group" node_ref=details prop:open=wanted on:toggle=toggled>
            <summary>
                <b>{name}</b>
                " "
                <small>{about}</small>
                <em>{move || changed.get()}</em>
            </summary>
            <div class="fields">
                <Show when=move || opened.get() || wanted.get()>{children()}</Show>
            </div>
        </details>
    }
}

/// The fields of a group: those of the link, then those of each end.
#[component]
fn GroupFields(group: Group, place: At) -> impl IntoView {
    let of_ends = NUMBERS.iter().any(|row| row.group == group && row.scope == Scope::End);
    view! {
        <Fields group place of_end=false />
        {of_ends.then(|| [0, 1].map(|end| view! { <EndFields group place end /> }).collect_view())}
    }
}

/// The fields of one end.
#[component]
fn EndFields(group: Group, place: At, end: usize) -> impl IntoView {
    let session = use_session();
    let to_b = move |_| session.edit(|document| edits::copy_end(document, group, place));
    view! {
        <fieldset class="end">
            <legend>"End "{words::letter(end)}</legend>
            <Fields group place=At { end, ..place } of_end=true />
            {(end == 0)
                .then(|| view! { <button type="button" class="quiet same-at-b" on:click=to_b>"Same at B"</button> })}
        </fieldset>
    }
}

/// The choices and numbers of a group that belong to an end, or that do not. Of the reader's own rod end the caliper's
/// readings come first.
#[component]
fn Fields(group: Group, place: At, of_end: bool) -> impl IntoView {
    let session = use_session();
    let own = Memo::new(move |_| session.document.with(|document| ROD_END.value(document, place) == Some(OWN_ROD_END)));
    move || {
        let rows = Input::all().filter(|row| row.group() == group && (row.scope() == Scope::End) == of_end);
        // Only the picture of the whole rig rests on the wheelbase: it stands in the rig's form.
        let mut rows: Vec<Input> = rows.filter(|row| row.id() != WHEELBASE.id).collect();
        if of_end && own.get() {
            rows.sort_by_key(|row| !(row.id() == ROD_END.id || row.id().starts_with("own-")));
        }
        rows.into_iter().map(|input| view! { <InputField input place /> }).collect_view()
    }
}
