//! Strengths: what the material table holds for a size, beside the handbooks.

use super::Tolerance::Exact;
use super::rows;
use crate::engine::tables::materials::{self, Strength};
use crate::quantity::{KSI, inch};

const TABLE_7075: &str = "MIL-HDBK-5J, Table 3.7.6.0(d), digitized";
const EXTRUDED_7075: &str = "MIL-HDBK-5J, Table 3.7.6.0(g1), digitized";
const TABLE_6061: &str = "MIL-HDBK-5J, Table 3.6.2.0(d), digitized";
const TABLE_4130: &str = "MIL-HDBK-5J, Table 2.3.1.0(c1), digitized";
const HARDENED: &str = "MIL-HDBK-5J, Table 2.3.1.0(g2), digitized";
const A513: &str = "ASTM A513, tensile table for round tubing (public reprint)";

/// Something about a solid bar of a diameter in inches; NaN when the table does not hold it.
fn bar(id: &str, diameter: f64, value: impl Fn(&Strength) -> f64) -> f64 {
    materials::find(id).and_then(|material| material.strength(inch(diameter), 0.0)).map_or(f64::NAN, value)
}

/// Something about a 2 in tube of a wall in inches.
fn tube(id: &str, wall: f64, value: impl Fn(&Strength) -> f64) -> f64 {
    materials::find(id).and_then(|material| material.strength(inch(2.0), inch(wall))).map_or(f64::NAN, value)
}

rows! {
    "Strengths" {
        "7075-ultimate", "7075-T6 bar, rolled: breaking strength" = 77.0 "ksi" in KSI, Exact; TABLE_7075, Copied
            => bar("7075-t6", 2.0, |row| row.ultimate);
        "7075-pressed", "7075-T6 bar, rolled: yield strength in compression" = 64.0 "ksi" in KSI, Exact; TABLE_7075, Copied
            => bar("7075-t6", 2.0, |row| row.yield_compression);
        "7075-extruded-ultimate", "7075-T6 bar, extruded, .750 to 1.499 in: breaking strength" = 81.0 "ksi" in KSI, Exact; EXTRUDED_7075, Copied
            => bar("7075-t6-extruded", 1.25, |row| row.ultimate);
        "7075-extruded-yield", "7075-T6 bar, extruded, 1.500 to 2.999 in: yield strength" = 72.0 "ksi" in KSI, Exact; EXTRUDED_7075, Copied
            => bar("7075-t6-extruded", 2.0, |row| row.yield_tension);
        "6061-ultimate", "6061-T6 bar: breaking strength" = 42.0 "ksi" in KSI, Exact; TABLE_6061, Copied
            => bar("6061-t6", 2.0, |row| row.ultimate);
        "4130-thin-ultimate", "4130 tube, normalized, wall to .188 in: breaking strength" = 95.0 "ksi" in KSI, Exact; TABLE_4130, Copied
            => tube("4130-n", 0.120, |row| row.ultimate);
        "4130-thick-yield", "4130 tube, normalized, wall over .188 in: yield strength" = 70.0 "ksi" in KSI, Exact; TABLE_4130, Copied
            => tube("4130-n", 0.250, |row| row.yield_tension);
        "hardened-150-yield", "Low-alloy steel hardened to 150 ksi, all forms: yield strength" = 132.0 "ksi" in KSI, Exact; HARDENED, Copied
            => bar("4340-qt150", 1.5, |row| row.yield_tension);
        "1020-dom-ultimate", "1020 tube, drawn over a mandrel: breaking strength" = 70.0 "ksi" in KSI, Exact; A513, Copied
            => tube("1020-dom", 0.250, |row| row.ultimate);
        "1026-dom-ultimate", "1026 tube, drawn over a mandrel: breaking strength" = 80.0 "ksi" in KSI, Exact; A513, Copied
            => tube("1026-dom", 0.250, |row| row.ultimate);
        "1026-dom-elongation", "1026 tube, drawn over a mandrel: elongation" = 5.0 "%" in 0.01, Exact; A513, Copied
            => tube("1026-dom", 0.250, |row| row.elongation.unwrap_or(f64::NAN));
        "1026-normalized-yield", "1026 tube, normalized, which is what a weld leaves: yield strength" = 40.0 "ksi" in KSI, Exact; A513, Copied
            => tube("1026-dom-welded", 0.250, |row| row.yield_tension);
        "4130-a513-yield", "4130 tube, normalized to A513: yield strength" = 50.0 "ksi" in KSI, Exact; A513, Copied
            => tube("4130-n-a513", 0.250, |row| row.yield_tension);
        "4130-a513-ultimate", "4130 tube, normalized to A513: breaking strength" = 70.0 "ksi" in KSI, Exact; A513, Copied
            => tube("4130-n-a513", 0.250, |row| row.ultimate);
    }
}
