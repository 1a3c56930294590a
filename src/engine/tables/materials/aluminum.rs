//! Aluminum bar.

use super::{Basis, Form, HabitMetal, Material, SizeMeans, Speaks, Strength};
use crate::engine::tables::cutting;
use crate::quantity::{inch, ksi, lb_per_in3};
use crate::source::{Cite, MIL_HDBK_5J, Obtained, cite};

const ROLLED_7075: Cite = cite(&MIL_HDBK_5J, "Table 3.7.6.0(d)", Obtained::Copied);
const EXTRUDED_7075: Cite = cite(&MIL_HDBK_5J, "Table 3.7.6.0(g1), area up to 20 in²", Obtained::Copied);
const LOWER_7075: Cite = cite(&MIL_HDBK_5J, "lower of Tables 3.7.6.0(d) and (g1), value by value", Obtained::Computed);

/// A row of the handbook, with its basis and its sizes.
const fn copied(place: &'static str) -> Cite {
    cite(&MIL_HDBK_5J, place, Obtained::Copied)
}

/// A row worked out from two tables of the handbook.
const fn computed(place: &'static str) -> Cite {
    cite(&MIL_HDBK_5J, place, Obtained::Computed)
}
const BAR_6061: Cite = cite(&MIL_HDBK_5J, "Table 3.6.2.0(d)", Obtained::Copied);
const BAR_2024: Cite = cite(&MIL_HDBK_5J, "Tables 3.2.3.0(i1) and (i2)", Obtained::Copied);

const STRESS_CORROSION: &str = "7075-T6 can crack where salt and steady tension meet. Wash it, keep water out of the threads, and look at it often.";
const NO_WELD: &str = "Never weld it: the strength beside a weld is gone.";
const STEEL_SHANKS: &str =
    "Steel shanks seize and corrode in bare aluminum: use anti-seize, and move them once a year.";

/// Bar of which no more is known than alloy and temper.
pub(super) static A7075_T6: Material = Material {
    id: "7075-t6",
    label: "7075-T6/T651 bar",
    plain: "The usual link bar: strong, light, and elastic through hits that leave steel tube bent.",
    rows: &[
        unproved(
            0.0,
            2.999,
            42.0,
            "lower of Tables 3.7.6.0(d) and (g1) from 1.5 in up, A basis, diameter up to 2.999 in",
        ),
        unproved(2.999, 4.0, 40.0, "lower of Tables 3.7.6.0(d) and (g1), A basis, diameter 3.000 to 4.000 in"),
    ],
    never_weld: Some(NO_WELD),
    cut_as: &cutting::ALUMINUM,
    cautions: &[
        "Without a certificate its threads count 42 ksi in shear, as extruded bar does. If it names rolled or cold-finished bar, choose that row: 46 ksi.",
        NO_WELD,
        STRESS_CORROSION,
        STEEL_SHANKS,
    ],
    ..A7075_T6_ROLLED
};

/// Tensile and compressive strength as for rolled bar, shear as for extruded: the lower of each, whichever it is.
const fn unproved(over: f64, up_to: f64, shear: f64, place: &'static str) -> Strength {
    Strength {
        over: inch(over),
        up_to: inch(up_to),
        shear_ultimate: ksi(shear),
        bearing_yield: None,
        note: "Rolled and extruded bar differ: the lower tensile, compressive and shear strength of the two.",
        cite: computed(place),
        ..rolled()
    }
}

/// The table of rolled, drawn or cold-finished bar along the bar, where diameter makes no difference.
const fn rolled() -> Strength {
    Strength {
        over: 0.0,
        up_to: inch(4.0),
        ultimate: ksi(77.0),
        yield_tension: ksi(66.0),
        yield_compression: ksi(64.0),
        shear_ultimate: ksi(46.0),
        bearing_yield: Some(ksi(86.0)),
        elongation: Some(0.07),
        basis: Basis::A,
        note: "Along the bar these hold for every diameter up to 4 in; across it the strength falls with diameter.",
        cite: copied("Table 3.7.6.0(d), A basis, diameter up to 4.000 in"),
    }
}

/// Rolled, drawn or cold-finished bar.
pub(super) static A7075_T6_ROLLED: Material = Material {
    id: "7075-t6-rolled",
    label: "7075-T6/T651 bar, certificate says rolled or cold-finished",
    plain: "The usual link bar with a certificate that names rolled or cold-finished bar: its threads count 46 ksi in shear.",
    form: Form::Bar,
    habit: (HabitMetal::Solid7075, Speaks::OfItself),
    modulus: ksi(10_300.0),
    modulus_compression: ksi(10_500.0),
    shear_modulus: ksi(3_900.0),
    density: lb_per_in3(0.101),
    ductile: false,
    size_means: SizeMeans::Diameter,
    rows: &[rolled()],
    welded: None,
    never_weld: Some(NO_WELD),
    cut_as: &cutting::ALUMINUM,
    cautions: &[
        "Keep the certificate: without the words rolled, drawn or cold-finished in it this row does not hold.",
        NO_WELD,
        STRESS_CORROSION,
        STEEL_SHANKS,
    ],
    modulus_cite: ROLLED_7075,
};

/// A row of the extruded table, whose tensile and shear strengths change with size.
const fn extruded(over: f64, up_to: f64, yielding: f64, shear: f64, place: &'static str) -> Strength {
    Strength {
        over: inch(over),
        up_to: inch(up_to),
        ultimate: ksi(81.0),
        yield_tension: ksi(yielding),
        yield_compression: ksi(yielding),
        shear_ultimate: ksi(shear),
        bearing_yield: None,
        elongation: Some(0.07),
        basis: Basis::A,
        note: "Stronger along the bar than rolled bar, weaker in shear.",
        cite: copied(place),
    }
}

/// Extruded rod and bar. A size between two printed ranges counts to the larger, which is the weaker.
pub(super) static A7075_T6_EXTRUDED: Material = Material {
    id: "7075-t6-extruded",
    label: "7075-T6/T6511 bar, extruded",
    plain: "As stiff as rolled bar and stronger in bending, but its own threads strip sooner.",
    form: Form::Bar,
    habit: (HabitMetal::Solid7075, Speaks::OfItself),
    modulus: ksi(10_400.0),
    modulus_compression: ksi(10_700.0),
    shear_modulus: ksi(4_000.0),
    density: lb_per_in3(0.101),
    ductile: false,
    size_means: SizeMeans::Diameter,
    rows: &[
        extruded(0.499, 0.749, 72.0, 43.0, "Table 3.7.6.0(g1), area up to 20 in², A basis, 0.500 to 0.749 in"),
        extruded(0.749, 1.499, 72.0, 43.0, "Table 3.7.6.0(g1), area up to 20 in², A basis, 0.750 to 1.499 in"),
        extruded(1.499, 2.999, 72.0, 42.0, "Table 3.7.6.0(g1), area up to 20 in², A basis, 1.500 to 2.999 in"),
        extruded(2.999, 4.499, 71.0, 40.0, "Table 3.7.6.0(g1), area up to 20 in², A basis, 3.000 to 4.499 in"),
    ],
    welded: None,
    never_weld: Some(NO_WELD),
    cut_as: &cutting::ALUMINUM,
    cautions: &[NO_WELD, STRESS_CORROSION, STEEL_SHANKS],
    modulus_cite: EXTRUDED_7075,
};

/// A row that holds for rolled and for extruded bar alike.
const fn either(over: f64, up_to: f64, shear: f64, place: &'static str) -> Strength {
    Strength {
        over: inch(over),
        up_to: inch(up_to),
        ultimate: ksi(77.0),
        yield_tension: ksi(66.0),
        yield_compression: ksi(64.0),
        shear_ultimate: ksi(shear),
        bearing_yield: None,
        elongation: Some(0.07),
        basis: Basis::A,
        note: "The lower of rolled and extruded bar, value by value.",
        cite: computed(place),
    }
}

/// What may be counted on when nobody knows how the bar was made.
pub(super) static A7075_T6_UNKNOWN: Material = Material {
    id: "7075-t6-unknown",
    label: "7075-T6 bar, certificate not seen",
    plain: "For a bar whose making is not known: the lower strength of rolled and extruded, value by value.",
    form: Form::Bar,
    habit: (HabitMetal::Solid7075, Speaks::OfItself),
    modulus: ksi(10_300.0),
    modulus_compression: ksi(10_500.0),
    shear_modulus: ksi(3_900.0),
    density: lb_per_in3(0.101),
    ductile: false,
    size_means: SizeMeans::Diameter,
    rows: &[
        either(0.499, 0.749, 43.0, "lower of Tables 3.7.6.0(d) and (g1), value by value, A basis, 0.500 to 0.749 in"),
        either(0.749, 1.499, 43.0, "lower of Tables 3.7.6.0(d) and (g1), value by value, A basis, 0.750 to 1.499 in"),
        either(1.499, 2.999, 42.0, "lower of Tables 3.7.6.0(d) and (g1), value by value, A basis, 1.500 to 2.999 in"),
        either(2.999, 4.0, 40.0, "lower of Tables 3.7.6.0(d) and (g1), value by value, A basis, 3.000 to 4.000 in"),
    ],
    welded: None,
    never_weld: Some(NO_WELD),
    cut_as: &cutting::ALUMINUM,
    cautions: &[
        "Without a certificate nobody knows that the bar is 7075-T6 at all. Ask the seller for it.",
        NO_WELD,
        STRESS_CORROSION,
        STEEL_SHANKS,
    ],
    modulus_cite: LOWER_7075,
};

/// The overaged temper.
pub(super) static A7075_T7351: Material = Material {
    id: "7075-t7351",
    label: "7075-T7351 bar",
    plain: "Gives up a seventh of the strength for far better behavior in salt.",
    form: Form::Bar,
    habit: (HabitMetal::Solid7075, Speaks::OfItself),
    modulus: ksi(10_300.0),
    modulus_compression: ksi(10_500.0),
    shear_modulus: ksi(3_900.0),
    density: lb_per_in3(0.101),
    ductile: false,
    size_means: SizeMeans::Diameter,
    rows: &[
        Strength {
            over: inch(0.374),
            up_to: inch(2.0),
            ultimate: ksi(68.0),
            yield_tension: ksi(56.0),
            yield_compression: ksi(54.0),
            shear_ultimate: ksi(42.0),
            bearing_yield: Some(ksi(81.0)),
            elongation: Some(0.10),
            basis: Basis::S,
            note: "",
            cite: copied("Table 3.7.6.0(d), S basis, diameter 0.375 to 2.000 in"),
        },
        Strength {
            over: inch(2.0),
            up_to: inch(3.0),
            ultimate: ksi(68.0),
            yield_tension: ksi(56.0),
            yield_compression: ksi(54.0),
            shear_ultimate: ksi(40.0),
            bearing_yield: None,
            elongation: None,
            basis: Basis::S,
            note: "",
            cite: copied("Table 3.7.6.0(d), S basis, diameter 2.001 to 3.000 in"),
        },
    ],
    welded: None,
    never_weld: Some(NO_WELD),
    cut_as: &cutting::ALUMINUM,
    cautions: &[NO_WELD, STEEL_SHANKS],
    modulus_cite: ROLLED_7075,
};

/// The common structural alloy.
pub(super) static A6061_T6: Material = Material {
    id: "6061-t6",
    label: "6061-T6 bar",
    plain: "Easy to get and kind in salt, but little more than half as strong as 7075; its threads need far more length.",
    form: Form::Bar,
    habit: (HabitMetal::Solid7075, Speaks::AsLeast),
    modulus: ksi(9_900.0),
    modulus_compression: ksi(10_100.0),
    shear_modulus: ksi(3_800.0),
    density: lb_per_in3(0.098),
    ductile: false,
    size_means: SizeMeans::Diameter,
    rows: &[Strength {
        over: 0.0,
        up_to: inch(8.0),
        ultimate: ksi(42.0),
        yield_tension: ksi(35.0),
        yield_compression: ksi(34.0),
        shear_ultimate: ksi(27.0),
        bearing_yield: Some(ksi(49.0)),
        elongation: Some(0.10),
        basis: Basis::S,
        note: "Rolled, drawn or cold-finished.",
        cite: copied("Table 3.6.2.0(d), S basis, diameter up to 8.000 in"),
    }],
    welded: None,
    never_weld: Some(NO_WELD),
    cut_as: &cutting::ALUMINUM,
    cautions: &[
        "Extruded 6061-T6 over 1 in is printed with 38 ksi tension and only 19 ksi shear: this row does not cover it.",
        NO_WELD,
        STEEL_SHANKS,
    ],
    modulus_cite: BAR_6061,
};

/// The copper alloy, weak in compression.
pub(super) static A2024_T351: Material = Material {
    id: "2024-t351",
    label: "2024-T351 bar",
    plain: "Tough, but yields early in compression, so it makes a weak column and bends sooner than 7075.",
    form: Form::Bar,
    habit: (HabitMetal::Solid7075, Speaks::AsLeast),
    modulus: ksi(10_500.0),
    modulus_compression: ksi(10_700.0),
    shear_modulus: ksi(4_000.0),
    density: lb_per_in3(0.100),
    ductile: false,
    size_means: SizeMeans::Diameter,
    rows: &[Strength {
        over: inch(0.499),
        up_to: inch(6.5),
        ultimate: ksi(62.0),
        yield_tension: ksi(45.0),
        yield_compression: ksi(34.0),
        shear_ultimate: ksi(37.0),
        bearing_yield: Some(ksi(63.0)),
        elongation: Some(0.10),
        basis: Basis::S,
        note: "In compression it yields a quarter below what it does in tension.",
        cite: copied("Tables 3.2.3.0(i1) and (i2), S basis, diameter 0.500 to 6.500 in"),
    }],
    welded: None,
    never_weld: Some(NO_WELD),
    cut_as: &cutting::ALUMINUM,
    cautions: &[NO_WELD, STEEL_SHANKS],
    modulus_cite: BAR_2024,
};
