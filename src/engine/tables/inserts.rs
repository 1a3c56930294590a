//! Threaded inserts that are welded into the ends of a tube: common practice, no source.
//!
//! The plain insert slips into the tube's bore up to the tube's end and is welded around its rim. The body of a
//! shouldered bung slips in too; its flange, as wide as the tube, sits on the tube's face, which is sawn shorter by it.
//! Nobody publishes how thick that flange is: it is assumed until somebody measures it. The wall around the thread is
//! asked of both alike.

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
    /// Whether it has a flange that sits on the tube's face.
    pub has_flange: bool,
    /// What it is called inside a sentence and in a list.
    pub noun: &'static str,
    /// Where it is welded, inside a sentence.
    pub welded: &'static str,
    /// What it is, for the reader.
    pub note: &'static str,
    /// Where the row comes from.
    pub cite: Cite,
}

/// An insert in a tube, cut for a thread. All lengths in m.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Fitted {
    /// Which kind it is.
    pub kind: &'static Insert,
    /// Its outside diameter, which is the tube's bore; of a bung that of its body.
    pub outside_diameter: f64,
    /// Metal between the thread's basic major diameter and its outside; negative where the thread is too large.
    pub wall: f64,
    /// Its whole length, which is the tapped depth.
    pub length: f64,
    /// How far its flange stands out of the tube, which is how thick it is; 0 without one.
    pub shoulder: f64,
    /// Whether rosette welds hold it too.
    pub rosettes: bool,
}

impl Fitted {
    /// How far it goes into the tube.
    pub fn inside(&self) -> f64 {
        self.length - self.shoulder
    }
}

/// Every kind of insert.
pub static ALL: &[Insert] = &[
    Insert {
        id: "plain",
        label: "Plain insert",
        has_flange: false,
        noun: "threaded insert",
        welded: "welded around its rim",
        note: "Slips into the tube's bore up to its end, as long as its thread; welded around its rim.",
        cite: cite(&PRACTICE, "plain threaded insert", Obtained::Practice),
    },
    Insert {
        id: "shouldered",
        label: "Shouldered bung",
        has_flange: true,
        noun: "shouldered bung",
        welded: "welded around its flange",
        note: "Its flange sits on the tube's face: the tube is sawn shorter by the flange. Welded around it.",
        cite: cite(&PRACTICE, "shouldered weld bung", Obtained::Practice),
    },
];

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
    /// basic major diameter, how deep it is tapped, and how thick a flange is, if this kind has one.
    pub fn fitted(
        &'static self,
        outside_diameter: f64,
        wall: f64,
        thread_major: f64,
        tapped_depth: f64,
        flange: f64,
    ) -> Fitted {
        let bore = bore(outside_diameter, wall);
        Fitted {
            kind: self,
            outside_diameter: bore,
            wall: (bore - thread_major) / 2.0,
            length: tapped_depth,
            shoulder: if self.has_flange { flange } else { 0.0 },
            rosettes: false,
        }
    }
}

/// The smallest bore that takes a plain insert for a thread of this basic major diameter, m.
pub fn least_bore(thread_major: f64) -> f64 {
    thread_major + 2.0 * LEAST_WALL
}
