//! What is shown, without a browser: rows, sentences and drawings.

mod dice;
#[path = "present/drawing.rs"]
mod drawing;
#[path = "present/frame.rs"]
mod frame;
mod links;
#[path = "present/prove.rs"]
mod prove;
#[path = "present/rig.rs"]
mod rig;
#[path = "present/size.rs"]
mod size;
