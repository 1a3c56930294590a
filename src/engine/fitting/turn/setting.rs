//! Where a link is now: from readings where there are some, else from the build.

use crate::engine::fitting::as_fitted::{Readings, set_as_read};
use crate::engine::formula::Sheet;
use crate::engine::formulas::lengths;
use crate::engine::sentence::said;
use crate::report::LinkGeometry;

/// How a link is set now.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Setting {
    /// Shank in the bar at each end.
    pub inserted: [f64; 2],
    /// Eye to eye.
    pub length: f64,
    /// Whether each end was read on the rig; else the build's setting stands in.
    pub read: [bool; 2],
    /// Whether the length was.
    pub length_read: bool,
}

/// How a link is set now. Readings that cannot be true, or that contradict each other, count as none.
pub fn setting(link: &LinkGeometry, readings: &Readings, sheet: &mut Sheet) -> Setting {
    let seen = [0, 1].map(|index| set_as_read(link, index, readings));
    let read = seen.map(|seen| seen.is_some());
    let inserted = match (seen, readings.eye_to_eye) {
        ([Some(a), Some(b)], _) => [a, b],
        // The length and one end tell the other, if the bar is the one of the build.
        ([Some(a), None], Some(length)) => [a, by_length(link, 0, a, length)],
        ([None, Some(b)], Some(length)) => [by_length(link, 1, b, length), b],
        ([None, None], Some(length)) => turned_from_the_build(link, length),
        (seen, None) => [0, 1].map(|index| seen[index].unwrap_or(link.ends[index].inserted)),
    };
    let length = readings.eye_to_eye.unwrap_or_else(|| {
        let faces =
            [0, 1].map(|index| sheet.work(&lengths::EYE_TO_FACE, &[link.ends[index].eye_to_end, inserted[index]]));
        sheet.work(&lengths::EYE_TO_EYE, &[link.bar, faces[0], faces[1]])
    });
    sheet.choose(|| match (read, readings.eye_to_eye.is_some()) {
        ([true, true], _) => said!["Both ends as read on the rig."],
        ([true, false], false) => said!["End A as read on the rig; end B as this build sets it."],
        ([false, true], false) => said!["End B as read on the rig; end A as this build sets it."],
        ([true, false], true) => said!["End A as read on the rig; end B from the length and the bar of this build."],
        ([false, true], true) => said!["End B as read on the rig; end A from the length and the bar of this build."],
        ([false, false], true) => {
            said!["Both ends as the length on the rig has them, if only the bar was turned since it was set."]
        }
        ([false, false], false) => said!["Both ends as this build sets them: nothing was read on the rig."],
    });
    Setting { inserted, length, read, length_read: readings.eye_to_eye.is_some() }
}

/// Shank in the bar at the end that was not read, from the length, the build's bar and the end that was.
fn by_length(link: &LinkGeometry, read: usize, inserted: f64, length: f64) -> f64 {
    let [this, other] = [&link.ends[read], &link.ends[1 - read]];
    other.eye_to_end - (length - link.bar - (this.eye_to_end - inserted))
}

/// Both ends, had only the bar been turned since the build's setting; ends of one hand stay as the build sets them.
fn turned_from_the_build(link: &LinkGeometry, length: f64) -> [f64; 2] {
    let [a, b] = &link.ends;
    let built = link.bar + a.eye_to_face + b.eye_to_face;
    let pitches = a.thread.pitch + b.thread.pitch;
    let turns = if link.adjustment.opposite_hands { (length - built) / pitches } else { 0.0 };
    [a.inserted - turns * a.thread.pitch, b.inserted - turns * b.thread.pitch]
}
