//! The route sheet: how a link is made, with numbers that can be checked.
#![cfg(not(target_arch = "wasm32"))]

mod dice;
#[path = "links/mod.rs"]
mod links;

#[path = "route/paper.rs"]
mod paper;
#[path = "route/settings.rs"]
mod settings;
#[path = "route/sheet.rs"]
mod sheet;
#[path = "route/skim.rs"]
mod skim;
#[path = "route/speeds.rs"]
mod speeds;
#[path = "route/steps.rs"]
mod steps;
#[path = "route/tube.rs"]
mod tube;
#[path = "route/weight.rs"]
mod weight;

use linkwright::document::Document;
use linkwright::engine::sentence::spoken;
use linkwright::engine::shop::route::{Machine, Operation, Route, Step, route};
use linkwright::quantity::System;
use linkwright::report::Answer;

/// A document's only link with how it is made, on machines as assumed.
pub(crate) fn made(document: &Document) -> (Answer, Route) {
    let answer = links::answer(document);
    let route = route(document, 0, &answer, &Machine::default());
    (answer, route)
}

/// A step of a route.
#[track_caller]
pub(crate) fn step(route: &Route, operation: Operation, end: Option<usize>) -> &Step {
    route.steps.iter().find(|step| (step.operation, step.end) == (operation, end)).expect("a step")
}

/// What a step says, in inches.
pub(crate) fn said(step: &Step) -> String {
    step.says.iter().map(|says| spoken(says, System::Inch)).collect::<Vec<_>>().join(" ")
}

/// What a step warns of, in inches.
pub(crate) fn warned(step: &Step) -> String {
    step.warnings.iter().map(|says| spoken(says, System::Inch)).collect::<Vec<_>>().join(" ")
}
