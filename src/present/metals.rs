//! The same job in other metals, as two tables.

use super::drawing::plot::letter;
use super::words::{self, size};
use crate::engine::tables::threads;
use crate::quantity::{Kind, System, show};
use crate::report::{InMetal, MetalSize};

/// The heads of the tables' columns.
pub const HEAD: [&str; 6] = ["Metal", "Size", "Weight", "Deflection", "Side load to first yield", "Buckling load"];

/// How to read the pictures beside the tables.
pub const HOW_TO_READ_PLOTS: &str = "Up is stronger, left is lighter. Letters as in the tables: a ring passes, a cross fails. Touch one to take its metal.";

/// In place of the tables while there is no answer.
pub const NOTHING_YET: &str = "Nothing to compare until there is an answer.";

/// A table of metals.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Table {
    /// Which size of each metal it holds.
    pub caption: &'static str,
    /// Whether to take a metal from it is to take its size too; else the size is found anew.
    pub keeps_size: bool,
    /// A row a metal.
    pub rows: Vec<Row>,
}

/// A metal in a table.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Row {
    /// Which metal.
    pub id: &'static str,
    /// The letter that marks it in the plots.
    pub letter: String,
    /// What it is called.
    pub name: &'static str,
    /// The size; none where it is not stocked.
    pub size: Option<Size>,
}

/// A size of a metal and its strengths.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Size {
    /// Bar or tube, and thread.
    pub bar: String,
    /// Whether it passes, and how much of its strength is used.
    pub used: String,
    /// Weight of the bar.
    pub weight: String,
    /// How far it bends under the hit.
    pub deflection: String,
    /// The side load at which it yields first.
    pub first_yield: String,
    /// The side load at which it collapses, in a ductile metal.
    pub collapse: Option<String>,
    /// The compression at which it buckles.
    pub buckling: String,
}

/// The smallest size of each metal that passes, and the size at hand in each metal.
pub fn tables(metals: &[InMetal], system: System) -> [Table; 2] {
    let rows = |of: fn(&InMetal) -> Option<&MetalSize>| {
        metals.iter().enumerate().map(|(index, metal)| row(index, metal, of(metal), system)).collect()
    };
    [
        Table {
            caption: "Smallest stock size that passes; where none does, the largest",
            keeps_size: false,
            rows: rows(|metal| metal.smallest.as_ref()),
        },
        Table {
            caption: "At the same diameter, each with the rod ends that suit it best",
            keeps_size: true,
            rows: rows(|metal| metal.same.as_ref()),
        },
    ]
}

fn row(index: usize, metal: &InMetal, of: Option<&MetalSize>, system: System) -> Row {
    Row {
        id: metal.material.id,
        letter: letter(index),
        name: words::short(metal.material),
        size: of.map(|of| shown(of, system)),
    }
}

fn shown(of: &MetalSize, system: System) -> Size {
    let thread = threads::find(of.thread).map_or(of.thread, words::thread);
    let used = show(of.utilization, Kind::Percent, system);
    let force = |value| show(value, Kind::Force, system);
    Size {
        bar: format!("{}, {thread}", size(of.outside_diameter, of.wall, system)),
        used: if of.passes { format!("uses {used}") } else { format!("not recommended, {used} at the {}", of.decides) },
        weight: show(of.bar_weight, Kind::Weight, system),
        deflection: show(of.beyond.deflection, Kind::FineLength, system),
        first_yield: force(of.beyond.first_yield),
        collapse: of.beyond.collapse.map(|collapse| format!("collapses at {}", force(collapse))),
        buckling: force(of.buckling),
    }
}
