//! Steps on the whole bar: stock, saw, face, skim, wrench flats.

use super::machine::{
    DIAMETER_TOLERANCE, FACE_MINUTES, FLATS_MINUTES, FLATS_TOLERANCE, LENGTH_TOLERANCE, MOST_RPM, SAW_MINUTES,
    SKIM_MINUTES, STOCK_MINUTES,
};
use super::{Asked, Operation, Shop, Step, Value, speeds};
use crate::engine;
use crate::engine::formula::Sheet;
use crate::engine::formulas::machining;
use crate::engine::sentence::{Said, said};
use crate::engine::tables::cutting;
use crate::inputs;
use crate::quantity::{Kind, exceeds};
use crate::report::{Answer, LinkReport, Topic, Verdict};

/// Stock, saw and face.
pub(super) fn to_length(shop: &Shop, blank_weight: f64) -> Vec<Step> {
    let made = shop.made;
    let metal = made.material;
    let stock = shop.step(Operation::Stock, None, "Stock", &STOCK_MINUTES);
    let stock = if shop.is_bar() {
        stock.say(said![
            "Pull ",
            (metal.label),
            ", ",
            (made.stock_diameter, Trade),
            " across. Check the label or certificate and write down its number."
        ])
    } else {
        stock.say(said![
            "Pull ",
            (metal.label),
            ", ",
            (made.stock_diameter, Trade),
            " by ",
            (made.wall, Trade),
            " wall. Check the label or certificate and write down its number."
        ])
    };
    let stock = stock
        .length("Outside diameter", made.stock_diameter)
        .warn(metal.never_weld.map(|caution| said![(caution)]))
        .measuring("Heat or lot", None, None)
        .measuring("Certificate", None, None);
    let facing = shop.known(&inputs::FACING);
    let saw = shop
        .step(Operation::Saw, None, "Saw", &SAW_MINUTES)
        .say(said![
            "Saw to ",
            (made.cut, Length),
            ", that is finished length and ",
            (facing, FineLength),
            " for facing at each end. The blank weighs ",
            (blank_weight, Weight),
            "."
        ])
        .figure("Saw length", Value::One(made.cut, Kind::Length))
        .length("Facing stock, each end", facing)
        .figure("Weight of the blank", Value::One(blank_weight, Kind::Weight));
    let off = shop.machine.in_force(&LENGTH_TOLERANCE);
    let shoulders: f64 = made.ends.iter().filter_map(|end| end.insert).map(|insert| insert.shoulder).sum();
    let face_to_face = made.bar - shoulders;
    let face = shop
        .step(Operation::Face, None, "Face", &FACE_MINUTES)
        .say(said!["Face both ends square to ", (face_to_face, Length), ", within ", (off, FineLength), " either way."])
        .figure("Finished length", Value::One(face_to_face, Kind::Length))
        .length("Tolerance, either way", off)
        .from(LENGTH_TOLERANCE.cite)
        .measuring("Face to face", None, Asked::within(face_to_face, off));
    vec![stock, speeds::saw(shop, saw), speeds::face(shop, face)]
}

/// The skim pass, with what it costs.
pub(super) fn skim(shop: &Shop) -> Option<Step> {
    let made = shop.made;
    if !made.is_skimmed() {
        return None;
    }
    let mut sheet = Sheet::recording();
    let turning = shop.class.turning;
    let most = shop.machine.in_force(&MOST_RPM);
    let rpm = speeds::spindle(&mut sheet, [turning.begin, turning.most], made.stock_diameter, most);
    let cutting = sheet.work(&machining::TURNING_TIME, &[made.bar, cutting::FINISH_FEED, rpm[0]]);
    let off = shop.machine.in_force(&DIAMETER_TOLERANCE);
    let mut step = shop
        .step(Operation::Skim, None, "Skim pass", &SKIM_MINUTES)
        .say(said![
            "Turn the whole bar from ",
            (made.stock_diameter, FineLength),
            " to ",
            (made.outside_diameter, FineLength),
            ", within ",
            (off, FineLength),
            " either way; blend every tool mark, for a groove is where a crack begins."
        ])
        .say(speeds::begin(rpm, said![(cutting::FINISH_FEED, FineLength), " a turn."]))
        .length("Finished diameter", made.outside_diameter)
        .figure("Spindle speed", Value::Counted(rpm, "rpm"))
        .length("Feed for one turn", cutting::FINISH_FEED)
        .from(turning.cite)
        .from(cutting::TURNING_CITE)
        .warn(speeds::too_fast(shop, rpm[1]))
        .from(DIAMETER_TOLERANCE.cite)
        .measuring("Finished diameter", None, Asked::within(made.outside_diameter, off));
    let Some(cost) = cost(shop) else {
        return Some(
            step.warn(Some(said!["What the skim pass costs in strength could not be worked out."]))
                .worked(sheet, Some(cutting)),
        );
    };
    step = step
        .say(said![
            "It costs strength: bending takes the bar to ",
            (cost.bending[1], Percent),
            " of its limit instead of ",
            (cost.bending[0], Percent),
            ", and the highest utilization of any part goes from ",
            (cost.highest[0], Percent),
            " without it to ",
            (cost.highest[1], Percent),
            " with it."
        ])
        .figure("Bending of the bar, without and with it", Value::Range(cost.bending, Kind::Percent))
        .figure("Highest utilization, without and with it", Value::Range(cost.highest, Kind::Percent))
        .warn(cost.fails.then(|| said!["With this skim pass the link fails. Skim less, or buy a thicker bar."]));
    Some(step.worked(sheet, Some(cutting)))
}

/// Utilizations without the skim pass and with it, of the same bar with the same rod ends.
struct Cost {
    bending: [f64; 2],
    highest: [f64; 2],
    /// Whether the link fails with it and does not without.
    fails: bool,
}

fn cost(shop: &Shop) -> Option<Cost> {
    let mut trial = shop.document.clone();
    let link = trial.links.get_mut(shop.link)?;
    link.skim = None;
    link.outside_diameter = Some(shop.made.stock_diameter);
    for (end, made) in link.ends.iter_mut().zip(&shop.made.ends) {
        end.rod_end = Some(made.rod_end_id);
    }
    let LinkReport::Answer(without) = engine::report_on(&trial, shop.link) else { return None };
    let bending =
        |answer: &Answer| answer.findings.iter().find(|finding| finding.topic == Topic::BarBending)?.utilization;
    let highest = |answer: &Answer| answer.weakest_finding()?.utilization;
    Some(Cost {
        bending: [bending(&without)?, bending(shop.answer)?],
        highest: [highest(&without)?, highest(shop.answer)?],
        fails: shop.answer.verdict == Verdict::Fails && without.verdict != Verdict::Fails,
    })
}

/// The wrench flats, where they cut into the bar.
pub(super) fn flats(shop: &Shop) -> Option<Step> {
    let made = shop.made;
    let flats = made.cut_flats()?;
    let off = shop.machine.in_force(&FLATS_TOLERANCE);
    let step = shop
        .step(Operation::Flats, None, "Wrench flats", &FLATS_MINUTES)
        .say(said![
            "Mill two flats ",
            (flats.width, FineLength),
            " across and ",
            (flats.length, FineLength),
            " long, beginning ",
            (flats.start, FineLength),
            " from face A. Leave no sharp corner where they end."
        ])
        .length("Across flats", flats.width)
        .length("Length", flats.length)
        .length("From face A", flats.start)
        .from(FLATS_TOLERANCE.cite)
        .measuring("Across flats", None, Asked::at_most(flats.width, off));
    Some(step.warn(over_a_hole(shop, flats.start, flats.start + flats.length)))
}

/// Said where flats lie over a hole: over its thread, or only over what is drilled deeper.
fn over_a_hole(shop: &Shop, from: f64, to: f64) -> Option<Said> {
    let [a, b] = &shop.made.ends;
    let reaches = |a: f64, b: f64| exceeds(a, from) || exceeds(to, shop.made.bar - b);
    if reaches(a.tapped_depth, b.tapped_depth) {
        return Some(said![
            "These flats lie over the tapped thread, where the wall is thinnest. Move them past ",
            (a.drill_point.max(b.drill_point), FineLength),
            " from the face."
        ]);
    }
    reaches(a.drill_point, b.drill_point).then(|| {
        said![
            "These flats lie over the drilled hole. Past ",
            (a.drill_point.max(b.drill_point), FineLength),
            " from the face they are clear of it."
        ]
    })
}
