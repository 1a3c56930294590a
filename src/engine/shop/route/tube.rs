//! Steps at the welded ends of a tube: insert, fit, weld, cool, then drill and tap.

use super::ends;
use super::machine::{COUNTERSINK_MINUTES, DIAMETER_TOLERANCE, INSERT_CLEARANCE, INSERT_MINUTES, WELD_MINUTES};
use super::{Asked, Operation, Shop, Step, letter};
use crate::engine::formula::Sheet;
use crate::engine::formulas::machining;
use crate::engine::sentence::{Said, said};
use crate::engine::tables::materials::{self, Material};
use crate::inputs;
use crate::source::{AC_43_13, Cite, Obtained, PRACTICE, cite};

const WELDABLE: Cite = cite(&AC_43_13, "par. 4-76 and 4-77", Obtained::Copied);
const HABIT: Cite = cite(&PRACTICE, "welding a threaded insert", Obtained::Practice);

/// Every step that gives a tube its threads: both inserts are turned, fitted and welded before either is tapped.
pub(super) fn welded(shop: &Shop) -> Vec<Step> {
    let mut steps = Vec::new();
    for end in 0..2 {
        steps.extend(insert(shop, end));
        let made = &shop.made.ends[end];
        steps.push(ends::tap_drill(shop, end, made, made.tapped_depth, true));
    }
    for end in 0..2 {
        steps.push(fit(shop, end));
        steps.push(weld(shop, end));
    }
    steps.push(cool(shop));
    for end in 0..2 {
        let made = &shop.made.ends[end];
        steps.push(ends::countersink(shop, end, made));
        let tap = ends::tap(shop, end, made, true);
        steps
            .push(tap.say(said!["Tap after welding, not before: the weld draws the insert out of round."]).from(HABIT));
        steps.push(ends::gauge(shop, end, made));
    }
    steps
}

fn insert(shop: &Shop, end: usize) -> Option<Step> {
    let insert = shop.made.ends[end].insert?;
    let mut sheet = Sheet::recording();
    let clearance = shop.machine.in_force(&INSERT_CLEARANCE);
    let turned = sheet.work(&machining::INSERT_DIAMETER, &[insert.outside_diameter, clearance]);
    let off = shop.machine.in_force(&DIAMETER_TOLERANCE).min(clearance / 2.0);
    let turned_says = if insert.kind.has_flange {
        let inside = sheet.work(&machining::INSIDE_THE_TUBE, &[insert.length, insert.shoulder]);
        said![
            "Measure the tube's bore at end ",
            (letter(end)),
            " first. Turn the bung's body ",
            (clearance, FineLength),
            " smaller: ",
            (turned, FineLength),
            " across in a bore of ",
            (insert.outside_diameter, FineLength),
            ", ",
            (inside, FineLength),
            " long; its flange as wide as the tube, ",
            (shop.made.outside_diameter, FineLength),
            " across and ",
            (insert.shoulder, FineLength),
            " thick, square to the body."
        ]
    } else {
        said![
            "Measure the tube's bore at end ",
            (letter(end)),
            " first. Turn the insert ",
            (clearance, FineLength),
            " smaller: ",
            (turned, FineLength),
            " across in a bore of ",
            (insert.outside_diameter, FineLength),
            ", ",
            (insert.length, FineLength),
            " long."
        ]
    };
    let mut step = shop
        .step(Operation::Insert, Some(end), insert.kind.label, &INSERT_MINUTES)
        .say(turned_says)
        .say(said![
            "Take a weldable steel whose thread bears ",
            (shop.known(&inputs::INSERT_SHEAR), Stress),
            " in shear: the answer counts on it. Speeds are those of low-carbon steel (assumption)."
        ])
        .length("In the bore, across", turned)
        .length("Whole length", insert.length)
        .length("Wall around the thread", insert.wall)
        .from(INSERT_CLEARANCE.cite)
        .from(insert.kind.cite)
        .measuring("Bore of the tube", Some(end), Asked::within(insert.outside_diameter, clearance))
        .measuring("In the bore, across", Some(end), Asked::within(turned, off))
        .warn(
            (insert.wall <= 0.0)
                .then(|| said!["This thread is too large for an insert in this tube: it cannot be made."]),
        );
    if insert.kind.has_flange {
        let off = shop.machine.in_force(&DIAMETER_TOLERANCE);
        step = step.length("Flange, thickness", insert.shoulder).from(DIAMETER_TOLERANCE.cite).measuring(
            "Flange, thickness",
            Some(end),
            Asked::within(insert.shoulder, off),
        );
    }
    Some(step.worked(sheet, None))
}

fn fit(shop: &Shop, end: usize) -> Step {
    let mut sheet = Sheet::recording();
    let made = shop.made;
    // Chamfering the tube is a minute's work, as a countersink is.
    let step = shop.step(Operation::Fit, Some(end), "Fit and prepare", &COUNTERSINK_MINUTES).from(WELDABLE).from(HABIT);
    let Some(insert) = made.ends[end].insert else { return step };
    let mut step = if insert.kind.has_flange {
        step.say(said![
            "Chamfer the edge of the tube at end ",
            (letter(end)),
            " and that of the flange at 45° for the weld, about the wall, ",
            (made.wall, FineLength),
            ", deep together. Clean bung and tube to bright metal, inside and out."
        ])
    } else {
        step.say(said![
            "Chamfer the tube at end ",
            (letter(end)),
            " for the weld, about the wall, ",
            (made.wall, FineLength),
            ", at 45°. Clean insert and tube to bright metal, inside and out."
        ])
    };
    if insert.rosettes {
        let across = sheet.work(&machining::ROSETTE_HOLE, &[made.outside_diameter]);
        let place = sheet.work(&machining::ROSETTE_PLACE, &[insert.length, insert.shoulder]);
        step = step
            .say(said![
                "Drill four rosette holes through the tube's wall alone, ",
                (across, FineLength),
                " across, evenly around it, ",
                (place, FineLength),
                " from the end of the tube. Deburr them inside."
            ])
            .length("Rosette holes, across", across)
            .length("Rosette holes, from the tube's end", place);
    }
    let in_place = if insert.kind.has_flange {
        said![
            "Push the bung in until its flange sits on the tube's face all around, without a gap, and hold both square in a rigid fixture."
        ]
    } else {
        said!["Slip the insert in flush with the tube's end and hold both square in a rigid fixture."]
    };
    step.say(in_place).worked(sheet, None)
}

fn weld(shop: &Shop, end: usize) -> Step {
    let made = shop.made;
    let has_flange = made.ends[end].insert.is_some_and(|insert| insert.kind.has_flange);
    let around = said![
        (if has_flange { "Weld the flange to the tube all around at end " } else { "Weld around the rim at end " }),
        (letter(end)),
        ", clear of the thread to come. Process, filler and preheat by a procedure that is qualified for this steel and wall; none is held here."
    ];
    let mut step = shop
        .step(Operation::Weld, Some(end), "Weld", &WELD_MINUTES)
        .say(around)
        .say(strength(shop, made.material))
        .from(WELDABLE)
        .from(HABIT)
        .warn(Some(said!["Only a qualified welder. Never weld 7075 or 2024 aluminum, and never weld to a rod end."]));
    if made.ends[end].insert.is_some_and(|insert| insert.rosettes) {
        step = step.say(said![
            "Fill the rosette holes first, opposite ones one after the other, down to the steel inside. The answer counts neither what the holes take of the tube nor what these welds hold."
        ]);
    }
    let steering = shop.answer.role.steers();
    step.warn(steering.then(|| said!["A welded steering link is safety critical: have a licensed engineer approve it, and your local rules may forbid it."]))
}

/// What the weld does to the tube's strength, as the answer counts it.
fn strength(shop: &Shop, tube: &'static Material) -> Said {
    let made = shop.made;
    let of = |row: &'static Material| row.strength(made.outside_diameter, made.wall).map(|row| row.yield_tension);
    let link = shop.document.links.get(shop.link);
    if tube.is_hardened_tube() && link.is_some_and(|link| link.hardened_after_welding) {
        return said![
            "The answer counts on the whole link being hardened again after welding: send it out for heat treatment before it is tapped, and keep the certificate."
        ];
    }
    let beside = tube.welded.and_then(materials::find).and_then(of);
    match (of(tube), beside) {
        (Some(before), Some(beside)) => said![
            "The tube yields at ",
            (before, Stress),
            "; beside the weld the answer counts ",
            (beside, Stress),
            ", and it is not hardened again."
        ],
        _ => said!["No strength beside the weld is held for this tube, so that part is not judged."],
    }
}

fn cool(shop: &Shop) -> Step {
    // Waiting is nobody's minute.
    let mut step = shop.step(Operation::Cool, None, "Let cool", &WELD_MINUTES);
    step.minutes = 0.0;
    step.say(said!["Let both ends cool in still air; never quench. Look at each weld all around for cracks, holes and undercut. Check that the tube is straight."])
        .from(HABIT)
        .measuring("Welds looked at", None, None)
}
