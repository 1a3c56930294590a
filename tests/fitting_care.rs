//! Measuring a rig, fitting a link and looking at it again: what is told, with its source, and what is never good.
#![cfg(not(target_arch = "wasm32"))]

#[path = "care/calendar.rs"]
mod calendar;
mod dice;
#[path = "care/identify.rs"]
mod identify;
mod links;
#[path = "care/measuring.rs"]
mod measuring;
#[path = "care/page.rs"]
mod page;
#[path = "care/recheck.rs"]
mod recheck;
#[path = "care/steps.rs"]
mod steps;
#[path = "care/torque.rs"]
mod torque;
