//! What stands beside the verdicts: bending along the link, past first yield, other metals, what moves the answer.

use crate::engine::formula::Line;
use crate::engine::sentence::Said;
use crate::engine::tables::materials::Material;
use crate::quantity::Kind;
use crate::source::Cite;

/// A part of a link and where it lies, from eye A.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct PartAlong {
    /// What it is called.
    pub part: &'static str,
    /// Where it begins.
    pub from: f64,
    /// Where it ends.
    pub to: f64,
}

/// Bending and strength along a link, from eye A to eye B, with the factor on yield in the bending.
#[derive(Debug, Clone, Default, PartialEq)]
pub struct Along {
    /// In order from eye A; where the section changes, one station on either side of the change.
    pub stations: Vec<Station>,
    /// The station that is asked for most.
    pub weakest: Option<usize>,
}

/// One place along a link.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Station {
    /// From eye A.
    pub x: f64,
    /// What the link is there.
    pub part: &'static str,
    /// The greatest moment of a strike in its zone while the link is in compression.
    pub moment: f64,
    /// The moment at which it yields, under the same tension or compression.
    pub strength: f64,
    /// Share of its yield strength that is asked for; 1 is the limit.
    pub utilization: f64,
}

/// What the middle of the bar bears, without any factor.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Beyond {
    /// Strike at which it begins to stay bent.
    pub first_yield: f64,
    /// How far it bends under the strike assumed.
    pub deflection: f64,
    /// Energy it soaks up before that.
    pub energy: f64,
    /// Drop of the assumed weight that just does it; none when setting it down is enough.
    pub drop: Option<f64>,
    /// Strike at which a plastic hinge forms, in a ductile metal.
    pub collapse: Option<f64>,
    /// Bow left by a hit with twice that energy, in a ductile metal.
    pub bow: Option<f64>,
}

/// The job of one link done in one metal.
#[derive(Debug, Clone, PartialEq)]
pub struct InMetal {
    /// The metal.
    pub material: &'static Material,
    /// The smallest stock section that holds; where none does, the largest there is.
    pub smallest: Option<MetalSize>,
    /// The diameter at hand in this metal, where it is stocked.
    pub same: Option<MetalSize>,
}

/// One section of one metal doing a job.
#[derive(Debug, Clone, PartialEq)]
pub struct MetalSize {
    /// Outside diameter.
    pub outside_diameter: f64,
    /// Wall of a tube, 0 for a solid bar.
    pub wall: f64,
    /// Id of the thread of its rod ends.
    pub thread: &'static str,
    /// Whether every check passes.
    pub passes: bool,
    /// The highest utilization.
    pub utilization: f64,
    /// The part that has it.
    pub decides: &'static str,
    /// Weight of the bar without rod ends.
    pub bar_weight: f64,
    /// Compression at which it buckles.
    pub buckling: f64,
    /// What it bears without any factor.
    pub beyond: Beyond,
}

/// How one value moves the answer.
#[derive(Debug, Clone, PartialEq)]
pub struct Sensitivity {
    /// The input's id.
    pub input: &'static str,
    /// What it measures.
    pub kind: Kind,
    /// The value in force.
    pub now: f64,
    /// A value a little higher.
    pub more: f64,
    /// What the weakest part is asked for now.
    pub used_now: f64,
    /// What the weakest part is asked for at the higher value.
    pub used_then: f64,
    /// The weakest part at the higher value.
    pub decides: &'static str,
    /// How far the value may go the harmful way before something fails; none when it never does in its range.
    pub limit: Option<f64>,
}

/// The forces on an axle that its links and the ground hold in balance, without shock. Forces in N, heights in m.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Axle {
    /// Traction of the ground.
    pub traction: f64,
    /// All lower links together, along the rig.
    pub lower: f64,
    /// All upper links together, the other way.
    pub upper: f64,
    /// Mount of the lower links above the ground.
    pub lower_height: f64,
    /// Mount of the upper links above the ground.
    pub upper_height: f64,
    /// Tire diameter.
    pub tire: f64,
}

/// Something worth knowing that is no verdict.
#[derive(Debug, Clone, PartialEq)]
pub struct Note {
    /// Kebab-case, never reused.
    pub id: &'static str,
    /// The question.
    pub title: &'static str,
    /// The answer in words.
    pub says: Said,
    /// The governing source.
    pub source: Cite,
    /// The working.
    pub working: Vec<Line>,
}
