//! What goes into the mounts, as it is told to the customer: measured rod ends, bolts, spacers and gaps; and ends of one
//! hand.

use crate::document::{Document, Hand, OWN_ROD_END, SuppliedBy};
use crate::inputs::{At, BOLT_DIAMETER, GAP, SPACER};
use crate::present::words::{Units, in_units, letter, trade};
use crate::quantity::Kind;
use crate::report::{EndGeometry, LinkGeometry};

/// How a length is written or said.
pub(super) type Says<'a> = &'a dyn Fn(f64, Kind) -> String;

/// A length as it is written: what is sold in sizes by its size.
pub(super) fn written(value: f64, kind: Kind, units: Units) -> String {
    if kind == Kind::Length { trade(value, units) } else { in_units(value, kind, units) }
}

/// The readings of the rod ends that somebody measured, a sentence for each.
pub(super) fn readings(document: &Document, place: At, made: &LinkGeometry, says: Says) -> Vec<String> {
    let ends = made.ends.iter().enumerate().filter(|(_, end)| end.rod_end_id == OWN_ROD_END);
    ends.map(|(end, made)| reading(document, At { end, ..place }, made, says)).collect()
}

fn reading(document: &Document, place: At, made: &EndGeometry, says: Says) -> String {
    let end = document.links.get(place.link).and_then(|link| link.ends.get(place.end));
    let whose = if end.and_then(|end| end.supplied_by) == Some(SuppliedBy::Shop) { "Our" } else { "Your" };
    format!(
        "{whose} rod end at {}: {} eye center to shank end, {} of thread, {} bore.",
        letter(place.end),
        says(made.eye_to_end, Kind::FineLength),
        says(made.thread_length, Kind::FineLength),
        says(made.bore, Kind::Length)
    )
}

/// The bolts, spacers and gaps that somebody said, a sentence for each.
pub(super) fn said(document: &Document, place: At, says: Says) -> Vec<String> {
    let decided = |input: &crate::inputs::Number, place| input.decided(document, place);
    let bolt = |end| decided(&BOLT_DIAMETER, At { end, ..place }).map(|bolt| says(bolt, Kind::Length));
    let mut told = match [bolt(0), bolt(1)] {
        [Some(a), Some(b)] if a == b => vec![format!("Bolt {a} at A and at B.")],
        [a, b] => {
            let at = |bolt: Option<String>, end| bolt.map(|bolt| format!("Bolt {bolt} at {}.", letter(end)));
            [at(a, 0), at(b, 1)].into_iter().flatten().collect()
        }
    };
    let size = |value| says(value, Kind::Length);
    told.extend(match [decided(&SPACER, place), decided(&GAP, place)] {
        [Some(spacer), Some(gap)] if spacer > 0.0 && gap > 0.0 => {
            vec![format!("Spacer {} and gap {} on each side.", size(spacer), size(gap))]
        }
        [spacer, gap] => {
            let each = |value: Option<f64>, name: &str, none: &str| match value {
                Some(value) if value > 0.0 => Some(format!("{name} {} on each side.", size(value))),
                Some(_) => Some(none.to_string()),
                None => None,
            };
            [each(spacer, "Spacer", "No spacer."), each(gap, "Gap", "No gap.")].into_iter().flatten().collect()
        }
    });
    told
}

/// The mistake that costs most, where both ends have one hand.
pub(super) fn one_hand(made: &LinkGeometry) -> Option<String> {
    let [a, b] = &made.ends;
    (a.hand == b.hand).then(|| {
        let hand = if a.hand == Hand::Left { "LEFT-HAND" } else { "RIGHT-HAND" };
        format!("BOTH ENDS {hand}: turning the bar does not change its length.")
    })
}
