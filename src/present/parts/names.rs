//! What a part is called in a list, with the sizes it is bought or made by.

use crate::document::ShankSteel;
use crate::engine::tables::bolts;
use crate::present::words::{Units, fit, length, short, size, thread as thread_size, trade};
use crate::report::{BoughtBolt, Part};

/// The name of a part.
pub(super) fn name(part: &Part, units: Units) -> String {
    match part {
        Part::Bar { material, outside_diameter, wall, .. } => {
            let solid = if *wall > 0.0 { "" } else { " solid" };
            format!("{}{solid} {}", size(*outside_diameter, *wall, units), short(material))
        }
        Part::RodEnd { name, thread, hand, steel, .. } => {
            let (thread, hand) = (thread_size(thread), hand.words());
            let steel = if *steel == ShankSteel::Alloy { ", heat-treated alloy" } else { "" };
            match name.strip_prefix(thread) {
                Some(rest) => format!("Rod end, {thread} {hand}{rest}{steel}"),
                // The user's own has no size in its name.
                None => format!("{name}, {thread} {hand}{steel}"),
            }
        }
        Part::JamNut { thread, hand, .. } => format!("Jam nut, {} {}", thread_size(thread), hand.words()),
        Part::Insert { thread, hand, outside_diameter, wall, .. } if *wall <= 0.0 => format!(
            "Threaded insert, {} {}: none fits a bore of {}",
            thread_size(thread),
            hand.words(),
            fit(*outside_diameter, units)
        ),
        Part::Insert { thread, hand, outside_diameter, wall, length, flange, .. } => {
            let (thread, hand) = (thread_size(thread), hand.words());
            let [outside, wall, long] = [outside_diameter, wall, length].map(|size| fit(*size, units));
            if *flange > 0.0 {
                let flange = fit(*flange, units);
                return format!(
                    "Shouldered bung, {thread} {hand}, body {outside} outside, {wall} wall, {long} long with its flange of {flange}"
                );
            }
            format!("Threaded insert, {thread} {hand}, {outside} outside, {wall} wall, {long} long")
        }
        Part::Bolt { bolt, grip, .. } => {
            let bolt = match bolt {
                Some(bolt) => {
                    format!("Bolt {}, {}, {}", trade(bolt.diameter, units), bolt.series.words(), grade(bolt))
                }
                None => "Bolt, diameter not entered".to_string(),
            };
            format!("{bolt}, grip {} without thread", length(*grip, units))
        }
        Part::LockNut { bolt: Some(bolt), .. } => {
            let (size, thread) = (trade(bolt.diameter, units), bolt.series.words());
            format!("Lock nut for the {size} bolts, {thread}, to match {}", grade(bolt))
        }
        Part::LockNut { bolt: None, .. } => "Lock nut for the bolts whose diameter is not entered".to_string(),
        Part::Spacer { bore, foot, into, long, .. } => spacer([*bore, *foot, *into], &length(*long, units), units),
    }
}

fn grade(bolt: &BoughtBolt) -> &'static str {
    bolts::find(bolt.grade).map_or("", |grade| grade.label)
}

/// A spacer by its bore, its face on the ear and the ball it reaches into.
fn spacer([bore, foot, into]: [Option<f64>; 3], long: &str, units: Units) -> String {
    let ball = into.map(|ball| format!("High-misalignment spacer into a {} bore", trade(ball, units)));
    let bolt = bore.map_or("a bolt not entered".to_string(), |bore| format!("a {} bolt", trade(bore, units)));
    let face = foot.map(|foot| format!(", {} across on the ear", fit(foot, units))).unwrap_or_default();
    format!("{}, for {bolt}{face}, {long} long", ball.as_deref().unwrap_or("Spacer"))
}
