//! What is to be sawn for a rig, or for several saved builds together, by metal and size.

use super::{Blank, Demand};
use crate::document::{Document, Link};
use crate::engine;
use crate::report::{LinkReport, Part};

/// A rig whose links are to be cut, with the reports on them in their order.
#[derive(Debug, Clone, Copy)]
pub struct Source<'a> {
    /// What the build is called; empty where there is only one.
    pub build: &'a str,
    /// What was decided.
    pub document: &'a Document,
    /// What follows, a report for each link.
    pub reports: &'a [LinkReport],
}

/// What is to be sawn.
#[derive(Debug, Clone, PartialEq, Default)]
pub struct Demands {
    /// One for each metal and size, in the order in which they are met.
    pub of: Vec<Demand>,
    /// Entries without an answer, whose blanks no plan contains.
    pub open: usize,
}

/// What is to be sawn for the links of one rig or of several.
pub fn demands(sources: &[Source]) -> Demands {
    let mut demands = Demands::default();
    for source in sources {
        for (index, link) in source.document.links.iter().enumerate() {
            match source.reports.get(index).and_then(LinkReport::answer) {
                Some(answer) => {
                    let provisional = answer.link.provisional;
                    for part in engine::parts(source.document, index, answer) {
                        add(&mut demands.of, &part, link, source.build, provisional);
                    }
                }
                None => demands.open += 1,
            }
        }
    }
    demands
}

/// Puts the blanks of a bar with those that come off the same stock.
fn add(demands: &mut Vec<Demand>, part: &Part, link: &Link, build: &str, provisional: bool) {
    let Part::Bar { material, outside_diameter, wall, cuts } = part else { return };
    let (material, outside_diameter, wall) = (*material, *outside_diameter, *wall);
    let blanks = cuts.iter().map(|cut| Blank {
        length: cut.length,
        count: cut.count,
        link: link.title(),
        build: build.to_string(),
        provisional,
    });
    match demands.iter_mut().find(|demand| demand.is_cut_from(material.id, outside_diameter, wall)) {
        Some(demand) => demand.blanks.extend(blanks),
        None => demands.push(Demand { material, outside_diameter, wall, blanks: blanks.collect() }),
    }
}

impl Demand {
    /// Whether stock of a metal, by its id, and a size is what it is cut from.
    pub fn is_cut_from(&self, material: &str, outside_diameter: f64, wall: f64) -> bool {
        let near = |a: f64, b: f64| (a - b).abs() < 1e-7;
        self.material.id == material && near(self.outside_diameter, outside_diameter) && near(self.wall, wall)
    }
}
