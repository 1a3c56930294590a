//! The same job in other metals: the smallest section that holds in each, and the size at hand in each.

use super::build::{Asked, Built, build};
use super::geometry::Section;
use super::given::{RodEndSpec, Values};
use super::sizing;
use super::tables::materials::{self, Form, Material};
use super::tables::stock;
use crate::document::Document;
use crate::inputs::{self, At};
use crate::report::{InMetal, MetalSize};

/// Metals that links are made of: the bar most builders use, the softer one, and tube cheap and strong.
const COMPARED: [&str; 4] = ["7075-t6", "6061-t6", "1026-dom", "4130-n"];

/// The job in each metal, always in the same order; empty when there is no answer to compare with.
pub(super) fn compare(document: &Document, index: usize, outside_diameter: f64) -> Vec<InMetal> {
    let place = At::of_link(document, index);
    let mut trial = document.clone();
    // Sizes are what is asked here; the rod ends stay as decided.
    (inputs::OUTSIDE_DIAMETER.set)(&mut trial, place, None);
    (inputs::WALL.set)(&mut trial, place, None);
    let mine = Values::new(document, index).map(|given| given.material());
    let others = COMPARED.iter().filter_map(|id| materials::find(id));
    // A metal that is not among them comes last.
    let mine = mine.filter(|mine| !COMPARED.contains(&mine.id));
    others.chain(mine).map(|material| in_metal(&mut trial, index, material, outside_diameter)).collect()
}

/// Strike to first yield of a link as made, and of the same link in solid 7075 of its diameter: what a tube that is
/// recommended although it takes small bends is told beside.
pub(super) fn beside_7075(
    document: &Document,
    index: usize,
    section: Section,
    joints: [RodEndSpec; 2],
) -> Option<[f64; 2]> {
    let own = size(&Values::new(document, index)?, section, joints)?;
    let mut trial = document.clone();
    let link = trial.links.get_mut(index)?;
    // A bar of the tube's own diameter: nothing is turned off it.
    (link.material, link.skim) = (Some(materials::DEFAULT), None);
    let solid = Section { outside_diameter: section.outside_diameter, wall: 0.0 };
    let bar = size(&Values::new(&trial, index)?, solid, joints)?;
    Some([own.beyond.first_yield, bar.beyond.first_yield])
}

fn in_metal(trial: &mut Document, index: usize, material: &'static Material, outside_diameter: f64) -> InMetal {
    if let Some(link) = trial.links.get_mut(index) {
        link.material = Some(material.id);
    }
    let Some(given) = Values::new(trial, index) else { return InMetal { material, smallest: None, same: None } };
    let search = sizing::search(&given);
    // When nothing holds, the largest that was tried shows by how much.
    let tried = search.by_numbers.or_else(|| sizing::largest(&given));
    let smallest = tried.and_then(|tried| size(&given, tried.section, tried.joints));
    // In tube, of the walls stocked at that diameter the thinnest that holds, else the thickest.
    let walls: Vec<f64> = match material.form {
        Form::Bar => vec![0.0],
        Form::Tube => {
            let same = stock::TUBES.iter().filter(|(outside, _)| (outside - outside_diameter).abs() < 1e-9);
            same.map(|(_, wall)| *wall).collect()
        }
    };
    let sized = walls.into_iter().filter_map(|wall| {
        let section = Section { outside_diameter, wall };
        size(&given, section, sizing::joint_for(&given, section)?)
    });
    let mut same: Option<MetalSize> = None;
    for size in sized {
        if same.as_ref().is_none_or(|best| !best.passes) {
            same = Some(size);
        }
    }
    InMetal { material, smallest, same }
}

fn size(given: &Values, section: Section, joints: [RodEndSpec; 2]) -> Option<MetalSize> {
    let built = build(given, section, joints, Asked::Everything).ok()?;
    let Built { made, judged, .. } = built;
    let candidate = judged.candidate(section, joints);
    let beyond = judged.beyond?;
    Some(MetalSize {
        outside_diameter: section.outside_diameter,
        wall: section.wall,
        thread: candidate.thread,
        passes: candidate.feasible,
        utilization: candidate.utilization,
        decides: candidate.decides,
        bar_weight: made.bar_weight,
        buckling: judged.buckling,
        beyond,
    })
}
