//! What bars and tubes are made of: stiffness, weight, and the least strength a specification promises.
//!
//! Strengths run along the bar (the handbook's direction L). None of them covers a label that is
//! wrong, a weld, a bend, or time in the salt; the cautions of each row say what matters most.

mod aluminum;
mod steel;

use super::cutting::Class;
use super::spans;
use crate::source::Cite;

/// What a material comes as.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Form {
    /// Solid round bar, drilled and tapped at its ends.
    Bar,
    /// Round tube with threaded inserts welded into its ends.
    Tube,
}

/// What the size of a strength row measures.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum SizeMeans {
    /// Diameter of the bar.
    Diameter,
    /// Wall of the tube.
    Wall,
}

/// How much stands behind a strength.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Basis {
    /// 99 of 100 exceed it, with 95 percent confidence.
    A,
    /// 90 of 100 exceed it, with 95 percent confidence.
    B,
    /// The minimum of a specification, without stated statistics.
    S,
    /// Printed for design use without statistics or specification behind it.
    Unstated,
}

impl Basis {
    /// In words, for the reader.
    pub const fn words(self) -> &'static str {
        match self {
            Self::A => "99 of 100 exceed it (A basis)",
            Self::B => "90 of 100 exceed it (B basis)",
            Self::S => "least the specification allows (S basis)",
            Self::Unstated => "no statistics and no specification behind it",
        }
    }
}

/// Strengths over a range of sizes, Pa.
#[derive(Debug, PartialEq)]
pub struct Strength {
    /// The range begins above this size, m: where the row before it ends.
    pub over: f64,
    /// The range ends with this size, m; infinite where the table sets no end.
    pub up_to: f64,
    /// Tensile strength.
    pub ultimate: f64,
    /// Yield strength in tension.
    pub yield_tension: f64,
    /// Yield strength in compression: for columns and for the compression side in bending.
    pub yield_compression: f64,
    /// Shear strength, for threads.
    pub shear_ultimate: f64,
    /// Yield in bearing at an edge distance of 1.5 hole diameters, the lower of those printed, where it is held.
    pub bearing_yield: Option<f64>,
    /// Elongation at break, 0.07 for 7 percent, where it is held.
    pub elongation: Option<f64>,
    /// How much stands behind it.
    pub basis: Basis,
    /// What is particular about the row.
    pub note: &'static str,
    /// Where the row comes from.
    pub cite: Cite,
}

/// A material in one condition.
#[derive(Debug, PartialEq)]
pub struct Material {
    /// Never reused once released.
    pub id: &'static str,
    /// As it is shown.
    pub label: &'static str,
    /// One sentence for a rig owner.
    pub plain: &'static str,
    /// Bar or tube.
    pub form: Form,
    /// Young's modulus in tension, Pa.
    pub modulus: f64,
    /// Young's modulus in compression, Pa.
    pub modulus_compression: f64,
    /// Shear modulus, Pa.
    pub shear_modulus: f64,
    /// Density as a weight, N/m³.
    pub density: f64,
    /// Whether it bends far before it breaks, so that a plastic hinge may be counted on: steel with at
    /// least 5 percent of published elongation.
    pub ductile: bool,
    /// What the sizes of its rows measure.
    pub size_means: SizeMeans,
    /// Strengths by size, smallest first.
    pub rows: &'static [Strength],
    /// Id of the row that holds beside a weld, for tubes.
    pub welded: Option<&'static str>,
    /// What to mind, most important first.
    pub cautions: &'static [&'static str],
    /// Said where it must never be welded; it stands among its cautions too.
    pub never_weld: Option<&'static str>,
    /// How it is cut; for a tube how the insert in it is, whose steel nobody enters.
    pub cut_as: &'static Class,
    /// Where moduli and density come from.
    pub modulus_cite: Cite,
    /// The metal whose habit counts for it, and how.
    pub habit: (HabitMetal, Speaks),
}

/// Metals that builders have a habit for.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum HabitMetal {
    /// Solid 7075 in any condition.
    Solid7075,
    /// 1020 and 1026 tube as drawn.
    Drawn,
    /// 4130 tube, heat-treated.
    Hardened,
}

impl HabitMetal {
    /// Its name in a sentence.
    pub const fn name(self) -> &'static str {
        match self {
            Self::Solid7075 => "7075",
            Self::Drawn => "DOM tube",
            Self::Hardened => "heat-treated 4130",
        }
    }
}

/// How a habit in one metal speaks for another.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Speaks {
    /// It is the metal's own.
    OfItself,
    /// It is the least that is fitted in this one too.
    AsLeast,
    /// Only of the rod ends.
    OfRodEnds,
}

/// Every material to choose from: aluminum before steel, bar before tube.
pub static ALL: &[&Material] = &[
    &aluminum::A7075_T6,
    &aluminum::A7075_T6_ROLLED,
    &aluminum::A7075_T6_EXTRUDED,
    &aluminum::A7075_T6_UNKNOWN,
    &aluminum::A7075_T7351,
    &aluminum::A6061_T6,
    &aluminum::A2024_T351,
    &steel::S4340_QT150,
    &steel::S1020_DOM,
    &steel::S1020_DOM_RELIEVED,
    &steel::S1026_DOM,
    &steel::S1026_DOM_RELIEVED,
    &steel::S4130_N,
    &steel::S4130_N_A513,
    &steel::S4130_DRAWN_A513,
    &steel::S4130_QT125,
    &steel::S4130_QT150,
    &steel::S4130_QT180,
];

/// What a drawn tube falls back to beside a weld; nobody buys it, so it is not among those to choose from.
pub static BESIDE_A_WELD: &[&Material] = &[&steel::S1020_DOM_WELDED, &steel::S1026_DOM_WELDED];

/// The id of the material taken when none is decided.
pub const DEFAULT: &str = "7075-t6";

/// The material taken when none is decided.
pub fn default_row() -> &'static Material {
    &aluminum::A7075_T6
}

/// The material with an id, those beside a weld included.
pub fn find(id: &str) -> Option<&'static Material> {
    ALL.iter().chain(BESIDE_A_WELD).copied().find(|material| material.id == id)
}

impl Material {
    /// Whether it is a hardened tube: welding takes that away, unless the link is heat-treated after it.
    pub fn is_hardened_tube(&self) -> bool {
        self.form == Form::Tube && self.habit.0 == HabitMetal::Hardened
    }

    /// The strengths that hold for this outside diameter and wall, m; a solid bar goes by its diameter.
    /// `None` for a size outside the published table.
    pub fn strength(&self, diameter: f64, wall: f64) -> Option<&'static Strength> {
        let size = match self.size_means {
            SizeMeans::Diameter => diameter,
            SizeMeans::Wall => wall,
        };
        self.rows.iter().find(|row| spans(size, row.over, row.up_to))
    }
}
