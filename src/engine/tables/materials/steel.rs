//! Steel tube, and one steel bar.

use super::{Basis, Form, HabitMetal, Material, SizeMeans, Speaks, Strength};
use crate::engine::tables::{SHEAR_SHARE, cutting};
use crate::quantity::{inch, ksi, lb_per_in3};
use crate::source::{ASTM_A513, Cite, MIL_HDBK_5J, Obtained, cite};

const DRAWN: Cite = cite(
    &ASTM_A513,
    "tensile table, type 5 as drawn, S basis, any wall; compressive yield and shear assumed",
    Obtained::Copied,
);
const RELIEVED: Cite = cite(
    &ASTM_A513,
    "tensile table, type 5 stress relieved, S basis, any wall; compressive yield and shear assumed",
    Obtained::Copied,
);
const NORMALIZED: Cite = cite(
    &ASTM_A513,
    "tensile table, normalized, S basis, any wall; compressive yield and shear assumed",
    Obtained::Copied,
);

/// A row of the handbook, with its basis and its sizes.
const fn copied(place: &'static str) -> Cite {
    cite(&MIL_HDBK_5J, place, Obtained::Copied)
}

const CARBON_STEEL: Cite =
    cite(&MIL_HDBK_5J, "Table 2.2.1.0(b), AISI 1025; in compression taken as in tension", Obtained::Copied);
const ALLOY_STEEL: Cite = cite(&MIL_HDBK_5J, "Table 2.3.1.0(c1); in compression taken as in tension", Obtained::Copied);

const ONLY_WHEN_ORDERED: &str = "A513 promises these strengths only when the order asks for them; sellers often list typical values, which are higher.";
const BESIDE_THE_WELD: &str =
    "Drawing made this tube strong and welding takes that away: beside the inserts it counts as normalized.";
const NO_WELD: &str = "Never weld it.";
const DENT: &str = "Steel tube takes a permanent bend or dent where a solid bar is still elastic. Replace it then; do not straighten it.";
const THROUGH: &str =
    "4130 hardens through only below 1/2 in of section: a thicker part may not be counted at this strength.";
const WELD_HARDENED: &str = "Welding takes the hardening away: beside the inserts it counts as normalized to A513 (50 ksi), unless it is hardened after welding.";
const WELD_4130: &str = "Beside a weld it counts with 50 ksi, the least that A513 promises normalized 4130: the certificate covers the tube, not what a torch has made of it.";

/// A row of ASTM A513, which prints neither shear nor compressive yield; it holds for every wall.
const fn a513(ultimate: f64, yielding: f64, elongation: f64, cite: Cite) -> Strength {
    Strength {
        over: 0.0,
        up_to: f64::INFINITY,
        ultimate: ksi(ultimate),
        yield_tension: ksi(yielding),
        yield_compression: ksi(yielding),
        shear_ultimate: SHEAR_SHARE * ksi(ultimate),
        bearing_yield: None,
        elongation: Some(elongation),
        basis: Basis::S,
        note: "Yield in compression is taken as in tension and shear as 0.6 of the tensile strength (assumptions); any wall.",
        cite,
    }
}

/// A tube of carbon steel.
const fn carbon(
    id: &'static str,
    label: &'static str,
    plain: &'static str,
    rows: &'static [Strength],
    welded: Option<&'static str>,
) -> Material {
    Material {
        id,
        label,
        plain,
        form: Form::Tube,
        modulus: ksi(29_000.0),
        modulus_compression: ksi(29_000.0),
        shear_modulus: ksi(11_000.0),
        density: lb_per_in3(0.284),
        ductile: true,
        size_means: SizeMeans::Wall,
        rows,
        welded,
        cautions: &[BESIDE_THE_WELD, ONLY_WHEN_ORDERED, DENT],
        never_weld: None,
        cut_as: &cutting::LOW_CARBON_STEEL,
        modulus_cite: CARBON_STEEL,
        habit: (HabitMetal::Drawn, Speaks::OfItself),
    }
}

/// Drawn over a mandrel, as drawn.
pub(super) static S1020_DOM: Material = carbon(
    "1020-dom",
    "1020 DOM tube",
    "Drawn mild-steel tube: cheap, tough, easy to weld and bend.",
    &[a513(70.0, 60.0, 0.05, DRAWN)],
    Some("1020-dom-welded"),
);

/// Drawn over a mandrel, as drawn, with a little more carbon.
pub(super) static S1026_DOM: Material = carbon(
    "1026-dom",
    "1026 DOM tube",
    "A little stronger than 1020 and welds as easily.",
    &[a513(80.0, 70.0, 0.05, DRAWN)],
    Some("1026-dom-welded"),
);

/// Drawn over a mandrel, then stress relieved.
pub(super) static S1020_DOM_RELIEVED: Material = carbon(
    "1020-dom-sr",
    "1020 DOM tube, stress relieved",
    "Drawn mild-steel tube, heated after drawing: a little weaker than as drawn, and twice as tough.",
    &[a513(65.0, 55.0, 0.10, RELIEVED)],
    Some("1020-dom-welded"),
);

/// Drawn over a mandrel, then stress relieved, with a little more carbon.
pub(super) static S1026_DOM_RELIEVED: Material = carbon(
    "1026-dom-sr",
    "1026 DOM tube, stress relieved",
    "1026 heated after drawing: a little weaker than as drawn, and twice as tough.",
    &[a513(75.0, 65.0, 0.10, RELIEVED)],
    Some("1026-dom-welded"),
);

/// What 1020 falls back to beside a weld.
pub(super) static S1020_DOM_WELDED: Material = carbon(
    "1020-dom-welded",
    "1020 DOM tube beside a weld",
    "What is left of a drawn tube next to its welds.",
    &[a513(50.0, 35.0, 0.25, NORMALIZED)],
    Some("1020-dom-welded"),
);

/// What 1026 falls back to beside a weld.
pub(super) static S1026_DOM_WELDED: Material = carbon(
    "1026-dom-welded",
    "1026 DOM tube beside a weld",
    "What is left of a drawn tube next to its welds.",
    &[a513(60.0, 40.0, 0.25, NORMALIZED)],
    Some("1026-dom-welded"),
);

/// A part of 4130 or its like.
const fn alloy(
    id: &'static str,
    label: &'static str,
    plain: &'static str,
    rows: &'static [Strength],
    cautions: &'static [&'static str],
) -> Material {
    Material {
        id,
        label,
        plain,
        form: Form::Tube,
        modulus: ksi(29_000.0),
        modulus_compression: ksi(29_000.0),
        shear_modulus: ksi(11_000.0),
        density: lb_per_in3(0.283),
        ductile: true,
        size_means: SizeMeans::Wall,
        rows,
        // The aircraft specification's 70 to 75 ksi is promised of the tube as bought, not of metal that
        // was welded since; the mechanical-tube minimum is the lowest published for normalized 4130.
        welded: Some("4130-n-a513"),
        cautions,
        never_weld: None,
        cut_as: &cutting::LOW_CARBON_STEEL,
        modulus_cite: ALLOY_STEEL,
        habit: (HabitMetal::Drawn, Speaks::AsLeast),
    }
}

/// A 4130 tube, heat-treated.
const fn hardened(
    id: &'static str,
    label: &'static str,
    plain: &'static str,
    rows: &'static [Strength],
    cautions: &'static [&'static str],
) -> Material {
    Material { habit: (HabitMetal::Hardened, Speaks::OfItself), ..alloy(id, label, plain, rows, cautions) }
}

/// Strengths in ksi: tensile, yield in tension, yield in compression, shear.
const fn printed(
    over: f64,
    up_to: f64,
    strengths: [f64; 4],
    elongation: f64,
    basis: Basis,
    note: &'static str,
    cite: Cite,
) -> Strength {
    let [ultimate, yield_tension, yield_compression, shear] = strengths;
    Strength {
        over,
        up_to,
        ultimate: ksi(ultimate),
        yield_tension: ksi(yield_tension),
        yield_compression: ksi(yield_compression),
        shear_ultimate: ksi(shear),
        bearing_yield: None,
        elongation: Some(elongation),
        basis,
        note,
        cite,
    }
}

const STRIP: &str = "Elongation of a strip cut from the tube; a full tube must reach more.";
const THIN: f64 = inch(0.188);

/// Normalized to the aircraft specification.
pub(super) static S4130_N: Material = alloy(
    "4130-n",
    "4130 tube, normalized to AMS-T-6736",
    "Aircraft-grade alloy tube: lighter than DOM for the same strength.",
    &[
        printed(
            0.0,
            THIN,
            [95.0, 75.0, 75.0, 57.0],
            0.07,
            Basis::S,
            STRIP,
            copied("Table 2.3.1.0(c1), AMS-T-6736, S basis, wall up to 0.188 in"),
        ),
        printed(
            THIN,
            f64::INFINITY,
            [90.0, 70.0, 70.0, 54.0],
            0.10,
            Basis::S,
            STRIP,
            copied("Table 2.3.1.0(c1), AMS-T-6736, S basis, any wall over 0.188 in"),
        ),
    ],
    &["\"4130\" alone is no strength: only a certificate to AMS-T-6736 earns these numbers.", WELD_4130, DENT],
);

/// Normalized to the mechanical-tube specification.
pub(super) static S4130_N_A513: Material = alloy(
    "4130-n-a513",
    "4130 tube, normalized to A513",
    "4130 sold as mechanical tube: promised no more than drawn 1020.",
    &[a513(70.0, 50.0, 0.20, NORMALIZED)],
    &[ONLY_WHEN_ORDERED, "Beside a weld this is the most it can be.", DENT],
);

/// Drawn to the mechanical-tube specification.
pub(super) static S4130_DRAWN_A513: Material = alloy(
    "4130-a513",
    "4130 tube, as drawn to A513",
    "4130 as it comes off the mandrel: strong, but beside a weld no better than normalized.",
    &[a513(95.0, 85.0, 0.05, DRAWN)],
    &[
        "Drawing made this tube strong and welding takes that away: beside the inserts it counts as normalized to A513 (50 ksi).",
        ONLY_WHEN_ORDERED,
        DENT,
    ],
);

const ROUND: &str = "Elongation of a round specimen.";

/// Quenched and tempered to 125 ksi.
pub(super) static S4130_QT125: Material = hardened(
    "4130-qt125",
    "4130 tube, hardened to 125 ksi",
    "Heat-treated alloy tube (AMS 6361), for links that are hardened after welding or not welded at all.",
    &[printed(
        0.0,
        THIN,
        [125.0, 100.0, 109.0, 75.0],
        0.17,
        Basis::S,
        ROUND,
        copied("Table 2.3.1.0(c2), AMS 6361, S basis, wall up to 0.188 in"),
    )],
    &[WELD_HARDENED, THROUGH, DENT],
);

/// Quenched and tempered to 150 ksi.
pub(super) static S4130_QT150: Material = hardened(
    "4130-qt150",
    "4130 tube, hardened to 150 ksi",
    "Heat-treated alloy tube (AMS 6362), for links that are hardened after welding or not welded at all.",
    &[printed(
        0.0,
        THIN,
        [150.0, 135.0, 141.0, 90.0],
        0.14,
        Basis::S,
        ROUND,
        copied("Table 2.3.1.0(c2), AMS 6362, S basis, wall up to 0.188 in"),
    )],
    &[WELD_HARDENED, THROUGH, DENT],
);

/// Quenched and tempered to 180 ksi.
pub(super) static S4130_QT180: Material = hardened(
    "4130-qt180",
    "4130 tube, hardened to 180 ksi",
    "Heat-treated alloy tube (AMS-T-6736), for links that are hardened after welding or not welded at all.",
    // The table sets no end; the through-hardening limit of 4130 does.
    &[printed(
        0.0,
        inch(0.499),
        [180.0, 165.0, 173.0, 108.0],
        0.12,
        Basis::S,
        ROUND,
        copied("Table 2.3.1.0(c2), AMS-T-6736, S basis, all walls; counted up to 0.499 in, where it hardens through"),
    )],
    &[
        WELD_HARDENED,
        THROUGH,
        "At this strength notches and the hydrogen of plating baths matter: no gouges, no plating.",
        DENT,
    ],
);

/// Quenched and tempered bar that hardens through.
pub(super) static S4340_QT150: Material = Material {
    form: Form::Bar,
    habit: (HabitMetal::Solid7075, Speaks::OfRodEnds),
    size_means: SizeMeans::Diameter,
    welded: None,
    never_weld: Some(NO_WELD),
    cut_as: &cutting::HARDENED_ALLOY_STEEL,
    modulus_cite: cite(&MIL_HDBK_5J, "Table 2.3.1.0(g2); in compression taken as in tension", Obtained::Copied),
    ..alloy(
        "4340-qt150",
        "4340 bar, hardened to 150 ksi",
        "Heat-treated alloy bar: very strong and nearly three times as heavy as aluminum.",
        &[printed(
            0.0,
            // The smaller of the limits printed for its quenches.
            inch(1.70),
            [150.0, 132.0, 145.0, 90.0],
            0.14,
            Basis::Unstated,
            "Through-hardened; the limit of 1.70 in is the lower of those printed. Elongation of a round specimen.",
            copied("Table 2.3.1.0(g2), no basis stated, diameter up to 1.700 in; elongation from Table 2.3.1.0(e)"),
        )],
        &["The handbook prints these values without statistics or a specification behind them.", NO_WELD],
    )
};
