//! Every other entry, by group: built from the tables of inputs, so that none can be forgotten.

use super::field::{ChoiceField, NumberField};
use super::state::Bench;
use super::words;
use leptos::prelude::*;
use linkwright::document::{Document, OWN_ROD_END, Role};
use linkwright::engine::tables::materials::{self, Form};
use linkwright::inputs::{CHOICES, Group, MATERIAL, NUMBERS, Place, ROD_END, Scope};

/// The groups in the order of the form, each with its name and what it is about.
const GROUPS: [(Group, &str, &str); 7] = [
    (Group::Seat, "Place on the rig", "Axle, side, how many"),
    (Group::Bar, "Bar", "Metal and size"),
    (Group::Ends, "Rod ends", "Series, hand, thread, your own"),
    (Group::Bracket, "Bracket", "Bolt, ears, spacers"),
    (Group::Loads, "Loads", "Tires, grip, shock, strikes"),
    (Group::Factors, "Factors", "How much in hand you ask for"),
    (Group::Shop, "Shop", "Rounding, facing, wrench flats"),
];

/// The groups, each folded away until it is wanted.
#[component]
pub(super) fn More(place: Place) -> impl IntoView {
    let bench = Bench::here();
    view! {
        <h3 class="more-title">"Change a default"</h3>
        {GROUPS.into_iter().map(|(group, name, about)| {
            let changed = move || changed_words(bench, group, place);
            view! {
                <details class="group">
                    <summary><b>{name}</b>" "<small>{about}</small><em>{changed}</em></summary>
                    <div class="fields">{inside(bench, group, place)}</div>
                </details>
            }
        }).collect_view()}
    }
    .into_any()
}

fn inside(bench: Bench, group: Group, place: Place) -> AnyView {
    let whole = fields(bench, group, false, place);
    let ends = (group == Group::Ends).then(|| {
        [0, 1]
            .map(|end| {
                let place = Place { end, ..place };
                view! { <fieldset class="end"><legend>"End "{words::letter(end)}</legend>{fields(bench, group, true, place)}</fieldset> }
            })
            .collect_view()
    });
    view! { {whole}{ends} }.into_any()
}

/// The choices and numbers of a group that belong to an end, or that do not.
fn fields(bench: Bench, group: Group, of_end: bool, place: Place) -> AnyView {
    let choices = CHOICES.iter().filter(move |choice| choice.group == group && (choice.scope == Scope::End) == of_end);
    let numbers = NUMBERS.iter().filter(move |number| number.group == group && (number.scope == Scope::End) == of_end);
    view! {
        {choices.map(|&choice| shown_if(bench, choice.id, place, move || view! { <ChoiceField choice=choice place=place/> }.into_any())).collect_view()}
        {numbers.map(|&number| shown_if(bench, number.id, place, move || view! { <NumberField input=number place=place/> }.into_any())).collect_view()}
    }
    .into_any()
}

/// An entry that only some links have appears when it can matter.
fn shown_if(bench: Bench, id: &'static str, place: Place, field: impl Fn() -> AnyView + Send + 'static) -> AnyView {
    let applies: fn(&Document, Place) -> bool = match id {
        // Only the picture of the whole rig rests on it.
        "wheelbase" => return ().into_any(),
        "wall" | "insert-shear" => is_tube,
        "steering-arm" | "scrub" | "patch" | "box-force" => is_steering,
        id if id.starts_with("cylinder") => is_steering,
        "sway-rate" => |document, place| role(document, place) == Some(Role::SwayLink),
        "count" | "plan-angle" | "uneven" | "lower-height" | "upper-height" | "tire" => {
            |document, place| role(document, place).is_some_and(Role::drives)
        }
        id if id.starts_with("own-") && id != "own-axial" && id != "own-strike" => is_own,
        _ => return field(),
    };
    let shows = Memo::new(move |_| bench.document.with(|document| applies(document, place)));
    (move || if shows.get() { field() } else { ().into_any() }).into_any()
}

fn role(document: &Document, place: Place) -> Option<Role> {
    document.links.get(place.link).map(|link| link.role)
}

fn is_steering(document: &Document, place: Place) -> bool {
    role(document, place).is_some_and(Role::steers)
}

fn is_own(document: &Document, place: Place) -> bool {
    ROD_END.value(document, place) == Some(OWN_ROD_END)
}

fn is_tube(document: &Document, place: Place) -> bool {
    MATERIAL.value(document, place).and_then(materials::find).is_some_and(|material| material.form == Form::Tube)
}

/// How many entries of a group the reader changed.
fn changed_words(bench: Bench, group: Group, place: Place) -> String {
    let count = bench.document.with(|document| {
        let at = |scope: Scope| {
            if scope == Scope::End { vec![Place { end: 0, ..place }, Place { end: 1, ..place }] } else { vec![place] }
        };
        let numbers = NUMBERS.iter().filter(|input| input.group == group);
        let numbers = numbers
            .flat_map(|input| at(input.scope).into_iter().filter(|place| (input.get)(document, *place).is_some()))
            .count();
        let choices = CHOICES.iter().filter(|choice| choice.group == group);
        numbers
            + choices
                .flat_map(|choice| {
                    at(choice.scope).into_iter().filter(|place| (choice.get)(document, *place).is_some())
                })
                .count()
    });
    match count {
        0 => String::new(),
        count => format!(" {count} changed"),
    }
}
