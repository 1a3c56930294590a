//! Bending and strength along a link, station by station, for the picture of where it gives first.

use super::checks::{Case, actions_with, tube, worst};
use super::cross_sections::Stretch;
use super::formula::Sheet;
use super::stepped::Levers;
use crate::inputs;
use crate::quantity;
use crate::report::{Along, Station};

/// Stations inside every stretch of one section, beside its two ends.
const INSIDE: u32 = 11;

/// What bends each place of the link and what that place bears; empty when the compression alone buckles it.
pub(super) fn along(case: &Case) -> Along {
    let unfactored = &Levers::new(case.compression_steps, case.axial_with_strike());
    let mut stations = Vec::with_capacity(case.stretches.len() * (INSIDE as usize + 2));
    for stretch in case.stretches {
        for count in 0..=INSIDE + 1 {
            let share = f64::from(count) / f64::from(INSIDE + 1);
            let x = stretch.from + share * (stretch.to - stretch.from);
            let Some(station) = station(case, unfactored, stretch, x) else { return Along::default() };
            stations.push(station);
        }
        // The middle of the link is where the strike bends it most.
        let middle = case.made.length / 2.0;
        if stretch.from < middle
            && middle < stretch.to
            && let Some(station) = station(case, unfactored, stretch, middle)
        {
            let at = stations.partition_point(|before| before.x <= middle);
            stations.insert(at, station);
        }
    }
    let weakest = stations.iter().enumerate().fold(None, |weakest: Option<(usize, f64)>, (index, station)| {
        let used = station.utilization;
        if weakest.is_none_or(|(_, most)| quantity::exceeds(used, most)) { Some((index, used)) } else { weakest }
    });
    Along { stations, weakest: weakest.map(|(index, _)| index) }
}

fn station(case: &Case, unfactored: &Levers, stretch: &Stretch, x: f64) -> Option<Station> {
    let sheet = &mut Sheet::silent();
    let (usual, factor) = (case.given.known(&inputs::YIELD_FACTOR), tube::factor(case, stretch));
    let levers = if factor < usual { unfactored } else { case.levers };
    let actions = actions_with(case, x, factor, levers, sheet)?;
    let section = &stretch.section;
    let weaker = section.yield_tension.min(section.yield_compression);
    Some(Station {
        x,
        part: stretch.part,
        moment: actions.in_compression,
        strength: ((weaker - actions.axial / section.area) * section.modulus).max(0.0),
        utilization: worst(section, &actions, sheet).0,
    })
}
