//! Linkwright sizes, explains and checks the links of an off-road rig.
//!
//! Read the modules in this order: what a number is, where it comes from, what the user decides,
//! what follows from it, what the reader is told, and how it travels.

/// So that the inside of the engine is tested with what the tests beside it share.
#[cfg(test)]
extern crate self as linkwright;

pub mod builds;
pub mod differences;
pub mod document;
pub mod engine;
pub mod inputs;
pub mod layouts;
pub mod log;
pub mod present;
pub mod quantity;
pub mod report;
pub mod share;
pub mod shop;
pub mod source;
pub mod spreadsheet;
pub mod store;
