//! Strengths, moduli and densities beside a second reading of their tables, row by row.

use linkwright::engine::tables::bolts;
use linkwright::engine::tables::materials::{self, Basis, Material};
use linkwright::quantity::{KSI, inch, ksi, lb_per_in3, mm};

use crate::printed;

/// Tensile and shear modulus, 10³ ksi, in tension, in compression, in shear; density, lb/in³.
type Stiffness = [f64; 4];
/// Ends with this size, in; tensile strength, yield in tension and compression, shear, ksi; bearing
/// yield, ksi, or 0 where none is held; elongation, percent; basis.
type Row = (f64, [f64; 4], f64, f64, Basis);

const ALUMINUM: Stiffness = [10.3, 10.5, 3.9, 0.101];
const EXTRUDED: Stiffness = [10.4, 10.7, 4.0, 0.101];
const CARBON: Stiffness = [29.0, 29.0, 11.0, 0.284];
const ALLOY: Stiffness = [29.0, 29.0, 11.0, 0.283];
const ANY: f64 = f64::INFINITY;

/// Yield in compression as in tension and 0.6 of the tensile strength in shear, where A513 prints neither.
const fn a513(ultimate: f64, yielding: f64, elongation: f64) -> Row {
    (ANY, [ultimate, yielding, yielding, 0.6 * ultimate], 0.0, elongation, Basis::S)
}

const PRINTS: &[(&str, f64, Stiffness, &[Row])] = &[
    (
        "7075-t6",
        0.0,
        ALUMINUM,
        &[(2.999, [77.0, 66.0, 64.0, 42.0], 0.0, 7.0, Basis::A), (4.0, [77.0, 66.0, 64.0, 40.0], 0.0, 7.0, Basis::A)],
    ),
    ("7075-t6-rolled", 0.0, ALUMINUM, &[(4.0, [77.0, 66.0, 64.0, 46.0], 86.0, 7.0, Basis::A)]),
    (
        "7075-t6-extruded",
        0.499,
        EXTRUDED,
        &[
            (0.749, [81.0, 72.0, 72.0, 43.0], 0.0, 7.0, Basis::A),
            (1.499, [81.0, 72.0, 72.0, 43.0], 0.0, 7.0, Basis::A),
            (2.999, [81.0, 72.0, 72.0, 42.0], 0.0, 7.0, Basis::A),
            (4.499, [81.0, 71.0, 71.0, 40.0], 0.0, 7.0, Basis::A),
        ],
    ),
    (
        "7075-t6-unknown",
        0.499,
        ALUMINUM,
        &[
            (0.749, [77.0, 66.0, 64.0, 43.0], 0.0, 7.0, Basis::A),
            (1.499, [77.0, 66.0, 64.0, 43.0], 0.0, 7.0, Basis::A),
            (2.999, [77.0, 66.0, 64.0, 42.0], 0.0, 7.0, Basis::A),
            (4.0, [77.0, 66.0, 64.0, 40.0], 0.0, 7.0, Basis::A),
        ],
    ),
    (
        "7075-t7351",
        0.374,
        ALUMINUM,
        &[(2.0, [68.0, 56.0, 54.0, 42.0], 81.0, 10.0, Basis::S), (3.0, [68.0, 56.0, 54.0, 40.0], 0.0, 0.0, Basis::S)],
    ),
    ("6061-t6", 0.0, [9.9, 10.1, 3.8, 0.098], &[(8.0, [42.0, 35.0, 34.0, 27.0], 49.0, 10.0, Basis::S)]),
    ("2024-t351", 0.499, [10.5, 10.7, 4.0, 0.100], &[(6.5, [62.0, 45.0, 34.0, 37.0], 63.0, 10.0, Basis::S)]),
    ("4340-qt150", 0.0, ALLOY, &[(1.70, [150.0, 132.0, 145.0, 90.0], 0.0, 14.0, Basis::Unstated)]),
    ("1020-dom", 0.0, CARBON, &[a513(70.0, 60.0, 5.0)]),
    ("1020-dom-sr", 0.0, CARBON, &[a513(65.0, 55.0, 10.0)]),
    ("1020-dom-welded", 0.0, CARBON, &[a513(50.0, 35.0, 25.0)]),
    ("1026-dom", 0.0, CARBON, &[a513(80.0, 70.0, 5.0)]),
    ("1026-dom-sr", 0.0, CARBON, &[a513(75.0, 65.0, 10.0)]),
    ("1026-dom-welded", 0.0, CARBON, &[a513(60.0, 40.0, 25.0)]),
    (
        "4130-n",
        0.0,
        ALLOY,
        &[(0.188, [95.0, 75.0, 75.0, 57.0], 0.0, 7.0, Basis::S), (ANY, [90.0, 70.0, 70.0, 54.0], 0.0, 10.0, Basis::S)],
    ),
    ("4130-n-a513", 0.0, ALLOY, &[a513(70.0, 50.0, 20.0)]),
    ("4130-a513", 0.0, ALLOY, &[a513(95.0, 85.0, 5.0)]),
    ("4130-qt125", 0.0, ALLOY, &[(0.188, [125.0, 100.0, 109.0, 75.0], 0.0, 17.0, Basis::S)]),
    ("4130-qt150", 0.0, ALLOY, &[(0.188, [150.0, 135.0, 141.0, 90.0], 0.0, 14.0, Basis::S)]),
    ("4130-qt180", 0.0, ALLOY, &[(0.499, [180.0, 165.0, 173.0, 108.0], 0.0, 12.0, Basis::S)]),
];

fn material(id: &str) -> &'static Material {
    materials::find(id).unwrap_or_else(|| panic!("{id} is gone"))
}

#[test]
fn strengths_are_as_printed() {
    for (id, begins, stiffness, rows) in PRINTS {
        let held = material(id);
        let moduli = [held.modulus, held.modulus_compression, held.shear_modulus];
        for (what, (held, print)) in ["E", "E in compression", "G"].into_iter().zip(moduli.into_iter().zip(*stiffness))
        {
            printed(id, what, held, print * 1e3, KSI);
        }
        printed(id, "density", held.density, stiffness[3], lb_per_in3(1.0));
        assert_eq!(held.rows.len(), rows.len(), "{id}");
        let mut over = *begins;
        for (row, (up_to, [ultimate, tension, compression, shear], bearing, elongation, basis)) in
            held.rows.iter().zip(*rows)
        {
            let at = format!("{id} to {up_to}");
            printed(&at, "begins above", row.over, over, inch(1.0));
            if up_to.is_finite() {
                printed(&at, "ends with", row.up_to, *up_to, inch(1.0));
            } else {
                assert!(row.up_to.is_infinite(), "{at}");
            }
            printed(&at, "tensile", row.ultimate, *ultimate, KSI);
            printed(&at, "yield in tension", row.yield_tension, *tension, KSI);
            printed(&at, "yield in compression", row.yield_compression, *compression, KSI);
            printed(&at, "shear", row.shear_ultimate, *shear, KSI);
            printed(&at, "bearing", row.bearing_yield.unwrap_or(0.0), *bearing, KSI);
            printed(&at, "elongation", row.elongation.unwrap_or(0.0), *elongation, 0.01);
            assert_eq!(row.basis, *basis, "{at}");
            over = *up_to;
        }
    }
    let all = materials::ALL.iter().chain(materials::BESIDE_A_WELD).count();
    assert_eq!(all, PRINTS.len(), "a material has no print beside it");
}

#[test]
fn bolts_are_as_strong_as_printed() {
    // Grade, a diameter of its row, the row's last diameter; proof, tensile strength and yield; unit of stress and of length.
    for (id, at, last, [proof, ultimate, yielding], stress, length) in [
        ("grade-5", 0.25, 1.0, [85.0, 120.0, 92.0], KSI, inch(1.0)),
        ("grade-5", 1.25, 1.5, [74.0, 105.0, 81.0], KSI, inch(1.0)),
        ("grade-8", 0.25, 1.5, [120.0, 150.0, 130.0], KSI, inch(1.0)),
        ("class-8-8", 5.0, 16.0, [580.0, 800.0, 640.0], 1e6, mm(1.0)),
        ("class-8-8", 20.0, 36.0, [600.0, 830.0, 660.0], 1e6, mm(1.0)),
        ("class-10-9", 5.0, 36.0, [830.0, 1040.0, 940.0], 1e6, mm(1.0)),
    ] {
        let grade = bolts::find(id).unwrap_or_else(|| panic!("{id} is gone"));
        let row = grade.strength(at * length).unwrap_or_else(|| panic!("{id} ends before {at}"));
        printed(id, "ends with", row.up_to, last, length);
        printed(id, "proof", row.proof, proof, stress);
        printed(id, "tensile", row.ultimate, ultimate, stress);
        printed(id, "yield", row.yield_strength, yielding, stress);
        printed(id, "shear, 0.6 of tensile", row.shear_ultimate, 0.6 * ultimate, stress);
        for pair in grade.rows.windows(2) {
            printed(id, "rows join", pair[1].over, pair[0].up_to, 1.0);
        }
        // No row begins so early that a size smaller than the printed ones finds it.
        let smallest = if length < 0.002 { 4.985 } else { 0.2485 };
        assert!(grade.strength(smallest * length).is_none(), "{id}: {smallest}");
    }
    assert!((ksi(1.0) - KSI).abs() < 1e-9);
}
