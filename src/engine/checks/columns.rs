//! Checks on the whole link in compression: buckling, compression yield of its weakest section, and a bent bar.

use super::{Case, Check, Outcome, buckles, of_capacity};
use crate::document::Role;
use crate::engine::cross_sections::{CrossSection, Stretch, StretchKind};
use crate::engine::formula::{Line, Sheet};
use crate::engine::formulas::{beams, columns, pins, sections, stepped};
use crate::engine::given::Values;
use crate::engine::sentence::{Said, said};
use crate::engine::tables::materials::Form;
use crate::inputs;
use crate::quantity;
use crate::quantity::Kind;
use crate::report::Topic;

pub(super) static ROWS: &[Check] = &[
    Check {
        id: "buckling",
        topic: Topic::Buckling,
        of_lengths: true,
        title: "Buckling of the whole link",
        part: "whole link, in compression",
        rule: false,
        optional: false,
        source: columns::PERRY_ROBERTSON_LOAD.formula.source,
        run: buckling,
    },
    Check {
        id: "compression-yield",
        topic: Topic::Other,
        of_lengths: true,
        title: "Compression yield of the weakest section",
        part: "compression yield of a section",
        rule: false,
        optional: false,
        source: columns::SQUASH_LOAD.formula.source,
        run: compression_yield,
    },
    Check {
        id: "bent-bar",
        topic: Topic::Other,
        of_lengths: true,
        title: "Bent bar in tension and compression",
        part: "bent bar",
        rule: false,
        optional: false,
        source: columns::BENT_MOMENT.formula.source,
        run: bent_bar,
    },
];

/// The load at which the link buckles: the smaller of what a straight link and what a slightly bowed one takes.
pub(in crate::engine) fn buckling_load(case: &Case, sheet: &mut Sheet) -> f64 {
    let section = case.stock.plain(sheet);
    sheet.record(|| Line::Solved {
        what: "Critical load of the whole link, its weaker ends counted, were nothing to yield",
        value: case.critical_load(),
        kind: Kind::Force,
        how: "found by raising the compression until the bent shape, carried from piece to piece, turns through exactly half a wave",
    });
    let straight = straight_load(case, &section, sheet);
    let bowed = bowed_load(case, &section, 0.0, sheet);
    let (capacity, which) =
        if quantity::exceeds(straight, bowed) { (bowed, "bowed link") } else { (straight, "straight link") };
    sheet.choose(|| said!["The smaller counts: the ", (which), ", ", (capacity, Force), "."]);
    capacity
}

/// Johnson's curve while the metal yields first, Euler's beyond, on the slenderness that the critical load stands for.
fn straight_load(case: &Case, section: &CrossSection, sheet: &mut Sheet) -> f64 {
    let (modulus, area, yielding) = (section.modulus_compression, section.area, section.yield_compression);
    let plain = sheet.work(&columns::EULER_LOAD, &[modulus, section.second_moment, case.made.length]);
    sheet.choose(|| said!["Without its weaker ends the critical load would be ", (plain, Force), "."]);
    let slenderness = sheet.work(&stepped::EQUIVALENT_SLENDERNESS, &[modulus, area, case.critical_load()]);
    let transition = sheet.work(&columns::TRANSITION_SLENDERNESS, &[modulus, yielding]);
    if slenderness < transition {
        sheet.choose(|| {
            said![
                "Slenderness ",
                (slenderness, Ratio),
                " is below ",
                (transition, Ratio),
                ": the short-column curve governs."
            ]
        });
        sheet.work(&columns::JOHNSON_LOAD, &[area, yielding, slenderness, modulus])
    } else {
        sheet.choose(|| {
            said![
                "Slenderness ",
                (slenderness, Ratio),
                " is ",
                (transition, Ratio),
                " or more: the long-column curve governs."
            ]
        });
        sheet.work(&columns::EULER_COLUMN_LOAD, &[area, slenderness, modulus])
    }
}

/// First yield of the link with a slight bow, and with the permanent set that a hit left on top of it.
fn bowed_load(case: &Case, section: &CrossSection, set: f64, sheet: &mut Sheet) -> f64 {
    let (area, yielding) = (section.area, section.yield_compression);
    let mut bow = sheet.work(&columns::STRAIGHTNESS, &[case.given.known(&inputs::BOW), case.made.length]);
    if set > 0.0 {
        bow = sheet.work(&columns::BOW_AFTER_SET, &[bow, set]);
    }
    let radius = sheet.work(&sections::RADIUS_OF_GYRATION, &[section.second_moment, area]);
    let crookedness = sheet.work(&columns::CROOKEDNESS, &[bow, case.made.outside_diameter / 2.0, radius]);
    let critical = sheet.work(&beams::AXIAL_STRESS, &[case.critical_load(), area]);
    let half_sum = sheet.work(&columns::PERRY_HALF_SUM, &[yielding, crookedness, critical]);
    sheet.work(&columns::PERRY_ROBERTSON_LOAD, &[area, half_sum, yielding, critical])
}

fn buckling(case: &Case, sheet: &mut Sheet) -> Outcome {
    let capacity = buckling_load(case, sheet);
    let compression = case.axial();
    let used = of_capacity(compression, case.given.known(&inputs::COLUMN_FACTOR), capacity, sheet);
    Outcome::new(
        used,
        Some(case.made.length / 2.0),
        sheet.remark(|| {
            said![
                "It buckles at a compression of ",
                (capacity, Force),
                "; the largest compression here is ",
                (compression, Force),
                "."
            ]
        }),
    )
}

/// How much of its buckling capacity a link uses once a hit has left a permanent set in it.
pub(super) fn used_after_set(case: &Case, section: &CrossSection, set: f64, sheet: &mut Sheet) -> f64 {
    sheet.choose(|| said!["Bent by that set, the link must still carry its largest compression:"]);
    let capacity = bowed_load(case, section, set, sheet);
    sheet.work(&pins::UTILIZATION, &[case.axial(), case.given.known(&inputs::COLUMN_FACTOR), capacity])
}

fn squash(stretch: &Stretch) -> f64 {
    columns::SQUASH_LOAD.value(&[stretch.section.area, stretch.section.yield_compression])
}

/// Where the weakest section yields all over before the link buckles, that is the limit, with the factor on yield.
fn compression_yield(case: &Case, sheet: &mut Sheet) -> Outcome {
    let weakest = case.stretches.iter().min_by(|a, b| squash(a).total_cmp(&squash(b)));
    let column = buckling_load(case, &mut Sheet::silent());
    let Some(weakest) = weakest.filter(|weakest| quantity::exceeds(column, squash(weakest))) else {
        return Outcome::does_not_arise();
    };
    let section = &weakest.section;
    let capacity = sheet.work(&columns::SQUASH_LOAD, &[section.area, section.yield_compression]);
    let compression = case.axial();
    let used = of_capacity(compression, case.given.known(&inputs::YIELD_FACTOR), capacity, sheet);
    let says = sheet.remark(|| {
        said![
            "Before the link buckles, the ",
            (weakest.part),
            " yields in compression at ",
            (capacity, Force),
            "; the largest compression here is ",
            (compression, Force),
            "."
        ]
    });
    Outcome { part: Some(yield_of(weakest.kind)), ..Outcome::new(used, Some((weakest.from + weakest.to) / 2.0), says) }
}

/// The name of the compression yield of a stretch.
const fn yield_of(kind: StretchKind) -> &'static str {
    match kind {
        StretchKind::Shank => "compression yield of the shank",
        StretchKind::Hole => "compression yield of the bar at the threaded hole",
        StretchKind::Flats => "compression yield of the wrench flats",
        StretchKind::Weld => "compression yield of the tube beside its weld",
        StretchKind::Bar | StretchKind::Tube => "compression yield of the bar",
    }
}

/// Offset of the bar from the line between its eyes. That no bend was entered is no assumption to list.
pub(super) fn bend(given: &Values) -> f64 {
    if given.is_decided(&inputs::BEND_OFFSET) { given.known(&inputs::BEND_OFFSET) } else { 0.0 }
}

/// Why a bar cannot be bent, where one is entered with a bend; nobody bends solid bar for a link.
pub(in crate::engine) fn bent_solid_bar(given: &Values) -> Option<Said> {
    let offset = bend(given);
    (offset > 0.0 && given.material().form != Form::Tube).then(|| {
        said![
            "A bar offset by ",
            (offset, FineLength),
            " has to be bent, and only steel tube is bent for links: solid bar cracks or loses its strength (common practice, no source). Pick a tube under Metal, or enter an offset of 0."
        ]
    })
}

/// A bend makes a lever of the force along the link. Whether the straight bar buckles is asked beside it.
fn bent_bar(case: &Case, sheet: &mut Sheet) -> Outcome {
    let offset = bend(case.given);
    if offset <= 0.0 {
        return Outcome::does_not_arise();
    }
    if !matches!(case.given.link.role, Role::TrackBar | Role::DragLink) {
        return Outcome::unanswered(said![
            "Only track bars and drag links are judged with a bend: on this link it would have to take hits as well."
        ]);
    }
    let section = case.stock.plain(sheet);
    let factor = case.given.known(&inputs::YIELD_FACTOR);
    // The factor comes before the amplification, so that what compression adds to the moment is counted too.
    let load = sheet.work(&stepped::FACTORED_LOAD, &[factor, case.axial()]);
    if !quantity::exceeds(case.critical_load(), load) {
        return buckles(case, sheet);
    }
    let compressed = sheet.work(&columns::BENT_MOMENT, &[load, offset, case.critical_load()]);
    let stretched = sheet.work(&columns::BENT_MOMENT_TENSION, &[load, offset]);
    let [in_compression, in_tension] = [(compressed, section.yield_compression), (stretched, section.yield_tension)]
        .map(|(moment, yielding)| {
            let stress = sheet.work(&beams::COMBINED_STRESS, &[load, section.area, moment, section.modulus]);
            (sheet.work(&pins::STRESS_SHARE, &[stress, yielding]), stress, yielding)
        });
    let worst = if quantity::exceeds(in_tension.0, in_compression.0) { in_tension } else { in_compression };
    let (used, stress, yielding) = worst;
    Outcome::new(
        used,
        Some(case.made.length / 2.0),
        sheet.remark(|| {
            said![
                "Offset by ",
                (offset, FineLength),
                ", the bend works at ",
                (stress, Stress),
                ", factor included; it yields at ",
                (yielding, Stress),
                "."
            ]
        }),
    )
}
