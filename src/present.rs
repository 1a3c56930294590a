//! What a report says, as rows, sentences and drawings: plain data, ready to be shown, in the reader's units.

pub mod adjustment;
pub mod answer;
pub mod bending;
pub mod checklist;
pub mod compare;
pub mod drawing;
pub mod ends;
pub mod field;
pub mod findings;
pub mod forces;
pub mod math;
pub mod metals;
pub mod outside;
pub mod parts;
pub mod rig;
pub mod rig_list;
pub mod saved;
pub mod sensitivity;
pub mod sheet;
pub mod sizes;
pub mod summary;
pub mod text;
pub mod verdict;
pub mod words;
pub mod working;
