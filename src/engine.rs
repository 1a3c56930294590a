//! The engine: a pure function of the document. [`report`] is the only door.

pub mod notation;
pub mod formula;
pub mod formulas;
pub mod tables;
