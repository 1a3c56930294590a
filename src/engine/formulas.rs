//! Every formula of the engine, by subject, in handbook order: the section, what it bears, its ends, its making.

pub mod axle;
pub mod beams;
pub mod bent;
pub mod beyond;
pub mod columns;
pub mod fastening;
pub mod impact;
pub mod jam_nut;
pub mod lengths;
pub mod loads;
pub mod machining;
pub mod motion;
pub mod pins;
pub mod sections;
pub mod steering;
pub mod stepped;
pub mod threads;
pub mod turning;

use super::formula::{Formula, Shown};

/// Every formula: those that serve an answer in the order of the files, then those that are references only.
pub fn all() -> impl Iterator<Item = &'static Formula> {
    shown().map(|(formula, _)| formula)
}

/// The same, each with its example.
pub fn shown() -> impl Iterator<Item = Shown> {
    serving().chain(references())
}

/// The formulas that serve an answer, in the order of the files.
pub fn serving() -> impl Iterator<Item = Shown> {
    [
        sections::ALL,
        beams::ALL,
        columns::ALL,
        stepped::ALL,
        bent::ALL,
        impact::ALL,
        axle::ALL,
        steering::ALL,
        loads::ALL,
        lengths::ALL,
        threads::ALL,
        jam_nut::ALL,
        pins::ALL,
        motion::ALL,
        beyond::ALL,
        machining::ALL,
        turning::ALL,
        fastening::ALL,
    ]
    .into_iter()
    .flatten()
    .copied()
}

/// The formulas that serve no answer: for comparison and for the tests.
pub fn references() -> impl Iterator<Item = Shown> {
    [
        sections::REFERENCES,
        beams::REFERENCES,
        columns::REFERENCES,
        stepped::REFERENCES,
        bent::REFERENCES,
        impact::REFERENCES,
        axle::REFERENCES,
        steering::REFERENCES,
        loads::REFERENCES,
        lengths::REFERENCES,
        threads::REFERENCES,
        jam_nut::REFERENCES,
        pins::REFERENCES,
        motion::REFERENCES,
        beyond::REFERENCES,
        machining::REFERENCES,
        turning::REFERENCES,
        fastening::REFERENCES,
    ]
    .into_iter()
    .flatten()
    .copied()
}
