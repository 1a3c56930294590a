//! Edits and questions that take in many inputs: an end copied to the other, defaults that were changed or come back.

use super::{At, CHOICES, Choice, Group, HAND, NUMBERS, ROD_END, SUPPLIED_BY, Scope, places};
use crate::document::{Document, OWN_ROD_END};

/// The same place at each end of its link.
fn at_ends(place: At) -> [At; 2] {
    [0, 1].map(|end| At { end, ..place })
}

/// Copies every value that a group has at end A to end B.
pub fn copy_end(document: &mut Document, group: Group, place: At) {
    let [a, b] = at_ends(place);
    for input in NUMBERS.iter().filter(|input| input.group == group && input.scope == Scope::End) {
        let value = (input.get)(document, a);
        (input.set)(document, b, value);
    }
    for choice in CHOICES.iter().filter(|choice| choice.group == group && choice.scope == Scope::End) {
        // The hand stays: a link whose ends have the same hand does not adjust.
        if choice.id != HAND.id {
            let value = (choice.get)(document, a);
            (choice.set)(document, b, value);
        }
    }
}

/// How many entries of a group the reader decided, at both ends.
pub fn count_decided(document: &Document, group: Group, place: At) -> usize {
    let places = |scope: Scope| match scope {
        Scope::End => at_ends(place).to_vec(),
        Scope::Rig | Scope::Axle | Scope::Link => vec![place],
    };
    let numbers = NUMBERS.iter().filter(|input| input.group == group);
    let numbers =
        numbers.flat_map(|input| places(input.scope).into_iter().map(|at| (input.get)(document, at).is_some()));
    let choices = CHOICES.iter().filter(|choice| choice.group == group);
    let choices =
        choices.flat_map(|choice| places(choice.scope).into_iter().map(|at| (choice.get)(document, at).is_some()));
    numbers.chain(choices).filter(|decided| *decided).count()
}

/// Whether a default of a link, its rig or its axle was changed.
pub fn has_changed_defaults(document: &Document, place: At) -> bool {
    let mut defaults = NUMBERS.iter().filter(|input| input.default_kind.is_a_default());
    defaults.any(|input| at_ends(place).into_iter().any(|at| input.decided(document, at).is_some()))
}

/// Gives every changed default of a link, its rig and its axle back.
pub fn reset_defaults(document: &mut Document, place: At) {
    for input in NUMBERS.iter().filter(|input| input.default_kind.is_a_default()) {
        for at in at_ends(place) {
            (input.set)(document, at, None);
        }
    }
}

/// Makes a choice for every link of a rig, at both ends where it belongs to an end.
pub fn pick_for_all(document: &mut Document, choice: &Choice, id: &str) {
    for place in places(document, choice.scope) {
        (choice.set)(document, place, Some(id));
        follow_pick(document, choice, place);
    }
}

/// What follows from a pick: a rod end that the customer brings is measured, whatever a table says of its like.
pub fn follow_pick(document: &mut Document, choice: &Choice, place: At) {
    if choice.id == SUPPLIED_BY.id && SUPPLIED_BY.value(document, place) == Some("customer") {
        (ROD_END.set)(document, place, Some(OWN_ROD_END));
    }
}

/// Gives both ends of some links the same rod end.
pub fn set_rod_ends(document: &mut Document, links: &[usize], rod_end: &'static str) {
    for index in links {
        if let Some(link) = document.links.get_mut(*index) {
            link.ends.iter_mut().for_each(|end| end.rod_end = Some(rod_end));
        }
    }
}
