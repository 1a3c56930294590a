//! The bolt through an eye: how thick it is, of which grade, and whether it goes through the bore.

use super::given::{RodEndSpec, Values};
use super::sentence::{Said, said};
use super::tables::bolt_threads::{self, BoltSize, BoltThread};
use super::tables::bolts::{self, Grade};
use crate::document::{BoltSeries, Spacers};
use crate::inputs;
use crate::quantity::inch;

/// A bolt.
#[derive(Debug, Clone, Copy)]
pub(super) struct Bolt {
    pub(super) diameter: f64,
    pub(super) grade: &'static Grade,
    /// The standard size; a diameter that nobody makes has no known thread.
    pub(super) size: Option<&'static BoltSize>,
    /// Which of the size's threads.
    pub(super) series: BoltSeries,
}

/// From this much play up in the bore a bolt knocks (common practice, no source).
const LOOSE: f64 = inch(1.0 / 32.0);

/// A spacer's face on the ear, in bolt diameters, where nobody says (assumption).
pub(super) const FOOT: f64 = 1.6;

impl Values<'_> {
    pub(super) fn spacers(&self) -> Spacers {
        self.link.spacer_kind.unwrap_or_default()
    }

    /// The bolt through the eye of an end; `None` when only the user knows it. Otherwise it is the largest standard
    /// bolt that fits the bore.
    pub(super) fn bolt(&self, end: usize, bore: f64) -> Option<Bolt> {
        let (diameter, size) = match self.number_at(&inputs::BOLT_DIAMETER, end) {
            Some(diameter) => (diameter, bolt_threads::of_diameter(diameter)),
            None if self.spacers() == Spacers::HighMisalignment => return None,
            None => match bolt_threads::for_bore(bore) {
                Some(size) => (size.diameter, Some(size)),
                None => (bore, None),
            },
        };
        let system = size.map_or_else(|| bolt_threads::system_of(diameter), |size| size.system);
        let grade = self.link.bolt.and_then(bolts::find).unwrap_or_else(|| bolts::default_grade(system));
        Some(Bolt { diameter, grade, size, series: self.link.bolt_series.unwrap_or_default() })
    }

    /// Diameter of the spacer's face on the ear, where somebody gave it.
    pub(super) fn spacer_foot(&self, end: usize) -> Option<f64> {
        self.number_at(&inputs::SPACER_FOOT, end)
    }
}

impl Bolt {
    /// Its thread, where the table holds it.
    pub(super) fn thread(&self) -> Option<&'static BoltThread> {
        self.size.map(|size| match self.series {
            BoltSeries::Fine => &size.fine,
            BoltSeries::Coarse => &size.coarse,
        })
    }

    /// Whether it rattles in a bore.
    pub(super) fn is_loose_in(&self, bore: f64) -> bool {
        bore - self.diameter > LOOSE
    }
}

/// Why a bolt that the user entered does not go through its rod end; also why a spacer's foot cannot be.
pub(super) fn does_not_fit(given: &Values, joints: &[RodEndSpec; 2]) -> Option<Said> {
    for (end, letter) in ["A", "B"].into_iter().enumerate() {
        let Some(diameter) = given.number_at(&inputs::BOLT_DIAMETER, end) else { continue };
        let bore = joints[end].bore;
        if diameter > bore + bolt_threads::READING {
            return Some(said![
                "A ",
                (diameter, FineLength),
                " bolt does not go through the ",
                (bore, FineLength),
                " bore of the rod end at ",
                (letter),
                ". Take a smaller bolt or a rod end with a larger bore."
            ]);
        }
        if given.spacer_foot(end).is_some_and(|foot| foot <= diameter) {
            return Some(said![
                "The spacer at ",
                (letter),
                " must be wider on the ear than its ",
                (diameter, FineLength),
                " bolt: check both diameters."
            ]);
        }
    }
    None
}
