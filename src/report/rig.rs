//! What is told about the whole rig.

use crate::document::{BoltSeries, Document, Hand, ShankSteel};
use crate::engine::tables::materials::Material;
use crate::engine::tables::threads::Thread;
use crate::report::{LinkReport, Verdict};

/// Everything about every link, with the document that it rests on.
#[derive(Debug, Clone, PartialEq, Default)]
pub struct WholeRig {
    /// What was decided.
    pub document: Document,
    /// A report for each link, in the order of the document.
    pub links: Vec<LinkReport>,
    /// The rig as a whole.
    pub rig: RigReport,
    /// Where each link lies.
    pub plan: Plan,
}

/// The rig as a whole.
#[derive(Debug, Clone, PartialEq, Default)]
pub struct RigReport {
    /// Indexes of the links, the one that says most against the rig first.
    pub worst_first: Vec<usize>,
    /// The verdict of the whole: never better than its worst link, and a link without an answer is no pass. `None` while
    /// no link is answered.
    pub verdict: Option<Verdict>,
    /// Links to make, by their quantities.
    pub pieces: usize,
    /// Entries without an answer, which no sum contains.
    pub open: usize,
    /// Links to make that still lack their length.
    pub unmeasured: usize,
    /// Links to make that lack something else.
    pub unfinished: usize,
    /// Links to make that cannot be made as entered.
    pub impossible: usize,
    /// Weight of all bars, without rod ends and bolts: a force.
    pub weight: f64,
    /// Every part, the bars first, the thickest of its kind before the others.
    pub parts: Vec<Part>,
}

/// A bolt as it is bought, but for its length.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct BoughtBolt {
    /// Nominal diameter.
    pub diameter: f64,
    /// Id of its grade.
    pub grade: &'static str,
    /// Fine or coarse thread.
    pub series: BoltSeries,
}

/// So many of one part. Lengths SI.
#[derive(Debug, Clone, PartialEq)]
pub enum Part {
    /// Bar or tube of one size.
    Bar {
        /// The metal.
        material: &'static Material,
        /// Outside diameter.
        outside_diameter: f64,
        /// Wall of a tube, 0 for a solid bar.
        wall: f64,
        /// What to saw off it, the longest first.
        cuts: Vec<Cut>,
    },
    /// Threaded inserts, welded into the ends of a tube.
    Insert {
        /// Thread for the rod end's shank.
        thread: &'static Thread,
        /// Which way it is cut.
        hand: Hand,
        /// As wide as the tube's bore.
        outside_diameter: f64,
        /// Metal around the thread.
        wall: f64,
        /// As long as its thread.
        length: f64,
        /// How thick the flange of a shouldered bung is, 0 for a plain insert.
        flange: f64,
        /// Pieces.
        count: usize,
    },
    /// Rod ends.
    RodEnd {
        /// As the tables name it.
        name: &'static str,
        /// Thread of the shank.
        thread: &'static Thread,
        /// Which way it is cut.
        hand: Hand,
        /// What its shank must be made of.
        steel: ShankSteel,
        /// Pieces.
        count: usize,
    },
    /// Jam nuts.
    JamNut {
        /// Its thread.
        thread: &'static Thread,
        /// Which way it is cut.
        hand: Hand,
        /// Pieces.
        count: usize,
    },
    /// Bolts through the eyes.
    Bolt {
        /// Which bolt; `None` while only the user knows.
        bolt: Option<BoughtBolt>,
        /// Ears, spacers, ball and gaps together: the least length without thread.
        grip: f64,
        /// Pieces.
        count: usize,
    },
    /// Lock nuts for those bolts.
    LockNut {
        /// The bolt it goes on.
        bolt: Option<BoughtBolt>,
        /// Pieces.
        count: usize,
    },
    /// Spacers beside the balls.
    Spacer {
        /// Hole for the bolt; `None` while only the user knows.
        bore: Option<f64>,
        /// Diameter of its face on the ear.
        foot: Option<f64>,
        /// Bore of the ball that a high-misalignment spacer reaches into.
        into: Option<f64>,
        /// From face to face.
        long: f64,
        /// Pieces.
        count: usize,
    },
}

/// So many pieces of one length, facing included.
#[derive(Debug, Clone, PartialEq)]
pub struct Cut {
    /// Length to saw.
    pub length: f64,
    /// Pieces.
    pub count: usize,
    /// Titles of the links they become.
    pub links: Vec<String>,
}

/// A way to buy one rod-end size fewer.
#[derive(Debug, Clone, PartialEq)]
pub struct FewerSizes {
    /// Indexes of the links that would change, all that have this rod end.
    pub links: Vec<usize>,
    /// Id of the rod end they have now.
    pub from: &'static str,
    /// Id of the rod end they would take, which the rig has already.
    pub to: &'static str,
    /// Bolts before and then: what they go through must take them.
    pub bolts: [f64; 2],
    /// How the weight of all their bars changes, a force; negative when they become lighter.
    pub weight_change: f64,
}

/// The rig from above, to scale: meters ahead of the rear axle, and to the left of the middle.
#[derive(Debug, Clone, PartialEq, Default)]
pub struct Plan {
    /// From axle to axle.
    pub wheelbase: f64,
    /// Middle of one tire to middle of the other.
    pub track: f64,
    /// Tire diameter.
    pub tire: f64,
    /// Every piece; a pair is two of them.
    pub placed: Vec<Placed>,
}

/// One piece, from its end at the axle to its other end, or from left to right.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Placed {
    /// Which link it is.
    pub link: usize,
    /// Where it begins: ahead, and to the left.
    pub from: [f64; 2],
    /// Where it ends.
    pub to: [f64; 2],
    /// Whether its length was entered; else it is only hinted at.
    pub known: bool,
}
