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
    let inserted = [0, 1].map(|index| seen[index].unwrap_or(link.ends[index].inserted));
    let read = seen.map(|seen| seen.is_some());
    let length = readings.eye_to_eye.unwrap_or_else(|| {
        let faces =
            [0, 1].map(|index| sheet.work(&lengths::EYE_TO_FACE, &[link.ends[index].eye_to_end, inserted[index]]));
        sheet.work(&lengths::EYE_TO_EYE, &[link.bar, faces[0], faces[1]])
    });
    sheet.choose(|| match read {
        [true, true] => said!["Both ends as read on the rig."],
        [true, false] => said!["End A as read on the rig; end B as this build sets it."],
        [false, true] => said!["End B as read on the rig; end A as this build sets it."],
        [false, false] => said!["Both ends as this build sets them: nothing was read on the rig."],
    });
    Setting { inserted, length, read, length_read: readings.eye_to_eye.is_some() }
}
