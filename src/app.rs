//! The page.

mod drawings;
mod formula;
mod prove;
mod rig;
mod saved;
mod sending;
mod size;
