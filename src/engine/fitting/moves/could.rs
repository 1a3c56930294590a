//! What could do it where the links that were picked cannot: the other pair, both at once, or less of it.

use super::{LinkChange, Through, Wanted, move_by};
use crate::document::Document;
use crate::engine::fitting::Standing;
use crate::engine::fitting::moves::Slopes;
use crate::engine::fitting::turn::Turned;
use crate::quantity::{DEGREE, inch};

/// Another way to what is wanted.
#[derive(Debug, Clone, PartialEq)]
pub struct Could {
    /// Which links tilt the axle.
    pub through: Through,
    /// The change of each.
    pub changes: Vec<LinkChange>,
    /// Whether the build holds all of them, with an answer.
    pub known: bool,
    /// Whether everything it rests on was read and measured.
    pub judged: bool,
}

/// What is wanted of an axle, and what was read of it.
#[derive(Debug, Clone, Copy)]
pub struct Move<'a> {
    /// The build.
    pub document: &'a Document,
    /// A link of the axle.
    pub index: usize,
    /// What is wanted.
    pub wanted: Wanted,
    /// Which links tilt it.
    pub through: Through,
    /// Slopes that were read.
    pub slopes: Slopes,
}

/// How the bars of a link take a change of its length; empty where the link has no answer.
pub type Turns<'a> = &'a dyn Fn(usize, f64) -> Vec<Turned>;

impl Move<'_> {
    /// The change of each link; none where it cannot be worked out.
    fn changes(&self) -> Option<Vec<LinkChange>> {
        let moved = move_by(self.document, self.index, self.wanted, self.through, self.slopes);
        moved.instead.is_none().then_some(moved.changes)
    }

    /// The other ways to the same tilt that every bar they turn can take; a shift of an axle has no other.
    pub fn could(&self, turns: Turns) -> Vec<Could> {
        if !matches!(self.wanted, Wanted::PinionUp(_) | Wanted::Caster(_)) {
            return Vec::new();
        }
        let others = [Through::Uppers, Through::Lowers, Through::Both].into_iter().filter(|way| *way != self.through);
        others.filter_map(|through| Move { through, ..*self }.reached(turns)).collect()
    }

    /// This way, where every bar can take its part.
    fn reached(&self, turns: Turns) -> Option<Could> {
        let changes = self.changes()?;
        let (mut known, mut judged) = (true, true);
        for change in &changes {
            let turned = change.link.map(|link| turns(link, change.change)).unwrap_or_default();
            known &= !turned.is_empty();
            if turned.iter().any(|one| one.standing == Standing::Stop) {
                return None;
            }
            judged &= turned.iter().all(|one| one.standing < Standing::NotJudged);
        }
        Some(Could { through: self.through, changes, known, judged: known && judged })
    }

    /// The most of it that these links can take, in steps of 1/16 in or a quarter of a degree; none where they take not
    /// even one step.
    pub fn most(&self, turns: Turns) -> Option<f64> {
        let (value, step) = match self.wanted {
            Wanted::PinionUp(angle) | Wanted::Caster(angle) => (angle, DEGREE / 4.0),
            Wanted::Forward(length) | Wanted::AwayFromFrameEnd(length) | Wanted::ToeIn(length) => {
                (length, inch(1.0 / 16.0))
            }
        };
        let of = |steps: u32| f64::from(steps) * step * value.signum();
        let takes = |steps: u32| Move { wanted: self.wanted.of(of(steps)), ..*self }.reached(turns).is_some();
        // More of it is never easier, so that it can be halved.
        let (mut can, mut cannot) = (0, (value.abs() / step).ceil().clamp(0.0, 1000.0) as u32);
        while cannot > can + 1 {
            let middle = u32::midpoint(can, cannot);
            if takes(middle) { can = middle } else { cannot = middle }
        }
        (can > 0).then(|| of(can))
    }
}

impl Wanted {
    /// The same wish with another number.
    const fn of(self, value: f64) -> Self {
        match self {
            Self::PinionUp(_) => Self::PinionUp(value),
            Self::Caster(_) => Self::Caster(value),
            Self::Forward(_) => Self::Forward(value),
            Self::AwayFromFrameEnd(_) => Self::AwayFromFrameEnd(value),
            Self::ToeIn(_) => Self::ToeIn(value),
        }
    }
}
