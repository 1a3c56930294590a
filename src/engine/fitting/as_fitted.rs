//! Is it still safe? A link judged as it is fitted, from a ruler, a count of threads and a wrench.

mod end;
mod order;
mod reading;
mod whole;

pub use order::OrderBar;
pub(super) use order::bar_for;
pub(super) use reading::set_as_read;
pub(super) use whole::too;

use super::Standing;
use crate::engine::formula::{Line, Sheet};
use crate::engine::sentence::{Said, said};
use crate::quantity::inch;
use crate::report::{Answer, LinkGeometry, Verdict};

/// What a tape or a ruler may be off by (assumption).
pub const TAPE: f64 = inch(1.0 / 16.0);
/// What a count of threads may be off by, in threads (assumption).
pub const COUNT: f64 = 0.5;
/// Threads that one end may show more than the other (common practice, no source).
pub const UNEVEN: f64 = 2.0;
/// Threads showing at which a new bar is set.
pub const SET_AT: f64 = 1.5;

const LETTERS: [&str; 2] = ["A", "B"];

/// What was read on the rig, SI. Nothing is taken for granted where nothing was read.
#[derive(Debug, Clone, Copy, PartialEq, Default)]
pub struct Readings {
    /// Eye center to bar face, at each end.
    pub face: [Option<f64>; 2],
    /// Threads counted past the jam nut, at each end; parts of a thread count.
    pub visible: [Option<f64>; 2],
    /// Ball center to ball center.
    pub eye_to_eye: Option<f64>,
    /// Whether each jam nut is tight.
    pub nut_tight: [Option<bool>; 2],
    /// Whether something stands in a field that cannot be read.
    pub unreadable: bool,
}

impl Readings {
    /// Whether anything was read that tells how a bar is set.
    pub fn tell_a_setting(&self) -> bool {
        self.eye_to_eye.is_some() || self.face.iter().chain(&self.visible).any(Option::is_some)
    }
}

/// What a remark is about, the most pressing first.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
pub enum About {
    /// How much thread is in the bar.
    Engagement,
    /// Winding out or in beyond what the shank allows.
    Stop,
    /// The shank at the bottom of its hole, or the nut at the end of its thread.
    Bottom,
    /// The jam nut.
    Nut,
    /// A reading that cannot be true, or contradicts another.
    Reading,
    /// A reading that is missing.
    Missing,
    /// The rod end itself was not measured.
    RodEnd,
    /// How far the two ends differ.
    Evenness,
    /// The length of the bar.
    Bar,
    /// The hands of its ends.
    Hands,
    /// The size of the link.
    Size,
}

/// One remark with what follows from it.
#[derive(Debug, Clone, PartialEq)]
pub struct Remark {
    /// How that stands.
    pub standing: Standing,
    /// What it is about.
    pub about: About,
    /// The reason, and what to do.
    pub says: Said,
}

/// One end as it is fitted.
#[derive(Debug, Clone, PartialEq)]
pub struct EndAsFitted {
    /// The worst of its remarks.
    pub standing: Standing,
    /// Every remark, the worst first.
    pub remarks: Vec<Remark>,
    /// Shank in the bar, where a reading tells.
    pub inserted: Option<f64>,
    /// Full thread engaged.
    pub engagement: Option<f64>,
    /// The same in threads and in diameters.
    pub in_threads: Option<[f64; 2]>,
    /// Threads that show past the nut.
    pub visible_threads: Option<f64>,
    /// Eye center to bar face.
    pub eye_to_face: Option<f64>,
    /// Turns it may still be wound out of the bar and into it, never negative.
    pub turns: Option<[f64; 2]>,
}

/// A link as it is fitted.
#[derive(Debug, Clone, PartialEq)]
pub struct AsFitted {
    /// The worst of everything.
    pub standing: Standing,
    /// Whether something could not be judged, however the rest stands.
    pub unjudged: bool,
    /// End A and end B.
    pub ends: [EndAsFitted; 2],
    /// Remarks about the link as a whole, the worst first.
    pub remarks: Vec<Remark>,
    /// Eye to eye now: as read, else from the build's bar and both ends.
    pub length: Option<f64>,
    /// Eye to eye at the shorter and at the longer stop.
    pub stops: Option<[f64; 2]>,
    /// Length of the bar, from eye to eye and both ends.
    pub bar: Option<f64>,
    /// The bar to order where this one is too short or too long.
    pub order: Option<OrderBar>,
    /// Eye to eye of the build, where the bar is wound beyond it and reaches it: no other bar is needed for that.
    pub back_to: Option<f64>,
    /// How the numbers came out.
    pub working: Vec<Line>,
}

/// Judges a link as it is fitted.
pub fn as_fitted(link: &LinkGeometry, readings: &Readings) -> AsFitted {
    let mut sheet = Sheet::recording();
    let ends = [0, 1].map(|index| end::end(link, index, readings, &mut sheet));
    whole::whole(link, readings, ends, sheet)
}

/// The same for a whole answer: a link that fails a check is not made safe by how it is fitted.
pub fn as_fitted_of(answer: &Answer, readings: &Readings) -> AsFitted {
    let mut judged = as_fitted(&answer.link, readings);
    if answer.verdict == Verdict::Fails {
        judged.remarks.push(Remark {
            standing: Standing::Stop,
            about: About::Size,
            says: said![
                "This link fails a check in the Size view: a part of it is too weak for this rig, however it is fitted."
            ],
        });
        let whole = settle(&mut judged.remarks);
        judged.standing = judged.standing.max(whole);
    }
    judged
}

impl EndAsFitted {
    /// The remark that stands first.
    pub fn first(&self) -> Option<&Remark> {
        self.remarks.first()
    }
}

/// Sorts remarks by how pressing they are; the standing of the worst.
fn settle(remarks: &mut [Remark]) -> Standing {
    remarks.sort_by(|a, b| b.standing.cmp(&a.standing).then(a.about.cmp(&b.about)));
    remarks.first().map_or(Standing::Good, |remark| remark.standing)
}
