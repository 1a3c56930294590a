//! Threaded inserts that are welded into the ends of a tube: common practice, no source.
//!
//! The plain insert slips into the tube's bore up to the tube's end, without a shoulder, and is
//! welded around its rim. Sizes whose wall would be too thin take a shouldered insert, which has
//! no row here: nobody publishes its dimensions.

use crate::quantity::inch;
use crate::source::{Cite, OURS, Obtained, PRACTICE, cite};

/// Least wall between the thread's basic major diameter and the insert's outside, m. Exactly this much passes.
pub const LEAST_WALL: f64 = inch(0.125);
/// Nobody publishes it.
pub const LEAST_WALL_CITE: Cite =
    cite(&OURS, "least wall of a threaded insert, for every insert", Obtained::Assumption);

/// A kind of insert.
#[derive(Debug, PartialEq)]
pub struct Insert {
    /// Never reused once released.
    pub id: &'static str,
    /// As it is shown.
    pub label: &'static str,
    /// How far its shoulder stands out of the tube and lengthens the link, m; 0 without one.
    pub shoulder: f64,
    /// What it is, for the reader.
    pub note: &'static str,
    /// Where the row comes from.
    pub cite: Cite,
}

/// An insert in a tube, cut for a thread. All lengths in m.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Fitted {
    /// Its outside diameter, which is the tube's bore.
    pub outside_diameter: f64,
    /// Metal between the thread's basic major diameter and its outside; negative where the thread is too large.
    pub wall: f64,
    /// Its length inside the tube, which is the tapped depth.
    pub length: f64,
    /// How far its shoulder stands out of the tube.
    pub shoulder: f64,
}

/// Every kind of insert.
pub static ALL: &[Insert] = &[Insert {
    id: "plain",
    label: "Plain insert",
    shoulder: 0.0,
    note: "Turned to slip into the tube's bore, as long as its thread, without a shoulder; welded around the tube's end.",
    cite: cite(&PRACTICE, "plain threaded insert", Obtained::Practice),
}];

/// The kind taken when none is decided.
pub fn default_row() -> &'static Insert {
    &ALL[0]
}

/// The kind with an id.
pub fn find(id: &str) -> Option<&'static Insert> {
    ALL.iter().find(|row| row.id == id)
}

/// Bore of a tube, m, from its outside diameter and wall.
pub fn bore(outside_diameter: f64, wall: f64) -> f64 {
    outside_diameter - 2.0 * wall
}

impl Insert {
    /// The insert for a tube and a thread, all m: the tube's outside diameter and wall, the thread's
    /// basic major diameter, and how deep it is tapped.
    pub fn fitted(&self, outside_diameter: f64, wall: f64, thread_major: f64, tapped_depth: f64) -> Fitted {
        let bore = bore(outside_diameter, wall);
        Fitted {
            outside_diameter: bore,
            wall: (bore - thread_major) / 2.0,
            length: tapped_depth,
            shoulder: self.shoulder,
        }
    }
}

/// The smallest bore that takes a plain insert for a thread of this basic major diameter, m.
pub fn least_bore(thread_major: f64) -> f64 {
    thread_major + 2.0 * LEAST_WALL
}
