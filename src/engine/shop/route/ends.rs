//! Steps at one threaded end: center drill, tap drill, countersink, tap, gauge.

use super::machine::{
    CENTER_MINUTES, COUNTERSINK_MINUTES, DEPTH_TOLERANCE, DRILL_MINUTES, GAUGE_MINUTES, MOST_RPM, TAP_MINUTES,
};
use super::{Asked, Operation, Shop, Step, Value, letter, speeds};
use crate::document::Hand;
use crate::engine::checks::fit::HOLES_MEET;
use crate::engine::formula::Sheet;
use crate::engine::formulas::lengths::COUNTERSINK_DEPTH;
use crate::engine::formulas::machining;
use crate::engine::formulas::threads::PERCENT_OF_THREAD;
use crate::engine::geometry::CLEAR_PITCHES;
use crate::engine::sentence::{Said, said};
use crate::engine::tables::cutting::{self, ChamferForm};
use crate::engine::tables::drills::{self, Drill};
use crate::inputs;
use crate::quantity::{INCH, Kind, System, deg, exceeds, mm};
use crate::report::{EndGeometry, Verdict};

/// Point angles of drills in use, the one that depths are given for first.
pub(super) const POINTS: [f64; 2] = [deg(118.0), deg(135.0)];

/// Every step that gives a bar its thread at an end.
pub(super) fn threaded(shop: &Shop, end: usize) -> Vec<Step> {
    let made = &shop.made.ends[end];
    vec![
        center_drill(shop, end, made),
        tap_drill(shop, end, made, made.drill_depth, false),
        countersink(shop, end, made),
        tap(shop, end, made, false),
        gauge(shop, end, made),
    ]
}

/// Center drilling, as fast as a drill as wide as the center drill's body.
fn center_drill(shop: &Shop, end: usize, made: &EndGeometry) -> Step {
    let step = shop.step(Operation::CenterDrill, Some(end), "Center drill", &CENTER_MINUTES);
    let at = said!["Center drill end ", (letter(end)), ", no wider than the tap drill"];
    let (Some(drill), Some(speed)) = (drills::center_drill(drill_diameter(made)), shop.class.drilling()) else {
        return step.say(speeds::sentence(at, said!["."]));
    };
    let mut sheet = Sheet::recording();
    let rpm = speeds::spindle(&mut sheet, speed.feet_per_minute, drill.body, shop.machine.in_force(&MOST_RPM));
    let number = said![": number ", (drill.number, Count), " at most, ", (drill.body, Trade), " across. "];
    step.say(speeds::sentence(speeds::sentence(at, number), speeds::begin(rpm, said!["feed by hand."])))
        .length("Body of the center drill, at most", drill.body)
        .figure("Spindle speed", Value::Counted(rpm, "rpm"))
        .from(drill.cite)
        .from(speed.cite)
        .from(cutting::CENTER_DRILL_CITE)
        .warn(speeds::too_fast(shop, rpm[1]))
        .worked(sheet, None)
}

/// Across the drill that is commonly listed for a thread; the middle of what the hole may be where none is.
pub(super) fn drill_diameter(made: &EndGeometry) -> f64 {
    drills::tap_drill(made.thread).map_or((made.hole[0] + made.hole[1]) / 2.0, |listed| listed.drill.diameter)
}

/// Limits in a unit, rounded to a step of it into the tolerance: a hole measured at what is printed is never out of it.
fn inward([least, most]: [f64; 2], (unit, step): (f64, f64)) -> [f64; 2] {
    // A limit that is printed exactly stays what it is.
    let whole = |value: f64, round: fn(f64) -> f64, slack: f64| round(value / unit / step + slack) * step;
    [whole(least, f64::ceil, -1e-6), whole(most, f64::floor, 1e-6)]
}

/// Drilling for the tap. A hole `through` an insert has no point to reckon with.
pub(super) fn tap_drill(shop: &Shop, end: usize, made: &EndGeometry, depth: f64, through: bool) -> Step {
    let mut sheet = Sheet::recording();
    let step = shop.step(Operation::TapDrill, Some(end), "Tap drill", &DRILL_MINUTES);
    let [in_inches, in_millimeters] = [(INCH, 1e-4), (mm(1.0), 1e-3)].map(|unit| inward(made.hole, unit));
    let Some(listed) = drills::tap_drill(made.thread) else {
        let say = said![
            "Drill so that the hole measures ",
            (in_inches[0], InInches),
            " to ",
            (in_inches[1], InInches),
            " (",
            (in_millimeters[0], InMillimeters),
            " to ",
            (in_millimeters[1], InMillimeters),
            "); no drill is listed for this thread."
        ];
        return step.say(say).warn(Some(said!["No tap drill is listed for this thread: settle it before drilling."]));
    };
    let across = listed.drill.diameter;
    let percent = sheet.work(&PERCENT_OF_THREAD, &[made.thread.major, across, made.thread.pitch]);
    let to_point = POINTS.map(|angle| {
        let point = sheet.work(&machining::DRILL_POINT, &[across, angle]);
        sheet.work(&machining::TO_POINT_DEPTH, &[depth, point])
    });
    let mut step = step
        .say(said![
            (if through { "Drill the insert for end " } else { "Drill end " }),
            (letter(end)),
            " with a drill of ",
            (listed.drill.label),
            " (",
            (across / INCH, InInches),
            ", ",
            (across / mm(1.0), InMillimeters),
            "): ",
            (percent, Percent),
            " of full thread. The hole must measure ",
            (in_inches[0], InInches),
            " to ",
            (in_inches[1], InInches),
            " (",
            (in_millimeters[0], InMillimeters),
            " to ",
            (in_millimeters[1], InMillimeters),
            "), class ",
            (class_of_hole(made)),
            "."
        ])
        .figure("Tap drill", Value::Words(listed.drill.label.to_string()))
        .figure("Across, inches", Value::One(across / INCH, Kind::InInches))
        .figure("Across, millimeters", Value::One(across / mm(1.0), Kind::InMillimeters))
        .figure("Percent of full thread", Value::One(percent, Kind::Percent))
        .figure("Hole before tapping", Value::Range(made.hole, Kind::FineLength))
        .from(listed.cite)
        .warn(outside_limits(made, listed.drill));
    step = if through {
        step.say(said!["Drill right through; the insert is as long as its thread."])
    } else {
        step.say(said![
            "Full diameter ",
            (depth, FineLength),
            " deep; to the point ",
            (to_point[0], FineLength),
            " with a 118° drill, ",
            (to_point[1], FineLength),
            " with a 135° drill. All depths from the finished face."
        ])
        .length("Depth to the shoulder", depth)
        .length("Depth to the point, 118°", to_point[0])
        .length("Depth to the point, 135°", to_point[1])
        .from(DEPTH_TOLERANCE.cite)
        .measuring("Depth to the shoulder", Some(end), Asked::at_least(depth, shop.machine.in_force(&DEPTH_TOLERANCE)))
        .warn(holes_meet(shop))
    };
    let (Some(speed), Some(feed)) = (shop.class.drilling(), drills::feed(across)) else {
        return step.warn(Some(said!["No speed is held for this drill: ask its maker."])).worked(sheet, None);
    };
    let rpm = speeds::spindle(&mut sheet, speed.feet_per_minute, across, shop.machine.in_force(&MOST_RPM));
    // Begun at the low end of both: a deep hole, and the harder metals of each class.
    let cutting = sheet.work(&machining::DRILLING_TIME, &[to_point[0], feed.per_turn[0], rpm[0]]);
    step.say(said![
        "Begin at ",
        (speeds::whole(rpm[0]), Count),
        " rpm and ",
        (feed.per_turn[0], FineLength),
        " a turn; at most ",
        (speeds::whole(rpm[1]), Count),
        " rpm and ",
        (feed.per_turn[1], FineLength),
        " a turn. Fluid: ",
        (shop.class.drilling_fluid.name),
        ". Pull the drill out often to clear chips."
    ])
    .figure("Cutting speed", Value::Counted(speed.feet_per_minute, "ft/min"))
    .figure("Spindle speed", Value::Counted(rpm, "rpm"))
    .figure("Feed for one turn", Value::Range(feed.per_turn, Kind::FineLength))
    .figure("Cutting fluid", Value::Words(shop.class.drilling_fluid.name.to_string()))
    .from(speed.cite)
    .from(feed.cite)
    .from(shop.class.drilling_fluid.cite)
    .warn(speeds::too_fast(shop, rpm[1]))
    .worked(sheet, Some(cutting))
}

/// Said where the listed drill is nominally outside the limits of the hole, with the nearest one that is inside.
fn outside_limits(made: &EndGeometry, listed: &Drill) -> Option<Said> {
    let [least, most] = made.hole;
    if !exceeds(listed.diameter, most) && !exceeds(least, listed.diameter) {
        return None;
    }
    let off = |drill: &&Drill| (drill.diameter - listed.diameter).abs();
    let inside = drills::all()
        .filter(|drill| !exceeds(drill.diameter, most) && !exceeds(least, drill.diameter))
        .min_by(|a, b| off(a).total_cmp(&off(b)));
    let says = said![
        "The listed drill is itself ",
        (listed.diameter, FineLength),
        ", outside the limits of the hole, though it is what tables print."
    ];
    Some(match inside {
        Some(drill) => {
            let mut says = says;
            says.extend(said![
                " To be inside them use ",
                (drill.label),
                ", ",
                (drill.diameter, FineLength),
                " across."
            ]);
            says
        }
        None => says,
    })
}

/// What the answer says where too little is left between the two holes.
fn holes_meet(shop: &Shop) -> Option<Said> {
    let finding = shop.answer.findings.iter().find(|finding| finding.id == HOLES_MEET)?;
    (finding.verdict == Verdict::Fails).then(|| finding.says.clone())
}

const fn class_of_hole(made: &EndGeometry) -> &'static str {
    match made.thread.system {
        System::Inch => "2B",
        System::Metric => "6H",
    }
}

/// The countersink at the mouth of the hole.
pub(super) fn countersink(shop: &Shop, end: usize, made: &EndGeometry) -> Step {
    let mut sheet = Sheet::recording();
    let across = sheet.work(&machining::COUNTERSINK_DIAMETER, &[made.thread.major, shop.known(&inputs::COUNTERSINK)]);
    let deep = sheet.work(&COUNTERSINK_DEPTH, &[across, drill_diameter(made)]);
    let step = shop
        .step(Operation::Countersink, Some(end), "Countersink", &COUNTERSINK_MINUTES)
        .say(said![
            "Countersink end ",
            (letter(end)),
            " 90° to ",
            (across, FineLength),
            " across, ",
            (deep, FineLength),
            " deep. It does not count as thread."
        ])
        .length("Across", across)
        .length("Depth", deep);
    let (Some(speed), Some(feed)) = (shop.class.drilling(), drills::feed(across)) else {
        return step.worked(sheet, None);
    };
    let slower = speed
        .feet_per_minute
        .map(|speed| sheet.work(&machining::COUNTERSINK_SPEED, &[cutting::COUNTERSINK_SHARE, speed]));
    let rpm = speeds::spindle(&mut sheet, slower, across, shop.machine.in_force(&MOST_RPM));
    step.say(speeds::begin(rpm, said![(feed.per_turn[0], FineLength), " a turn; slower still if it chatters."]))
        .figure("Cutting speed", Value::Counted(slower, "ft/min"))
        .figure("Spindle speed", Value::Counted(rpm, "rpm"))
        .figure("Feed for one turn", Value::Range(feed.per_turn, Kind::FineLength))
        .from(speed.cite)
        .from(cutting::COUNTERSINK_CITE)
        .from(feed.cite)
        .warn(speeds::too_fast(shop, rpm[1]))
        .worked(sheet, None)
}

/// Says which chamfer the tap has, and whether the hole as drilled has room for it below the full thread.
fn chamfered(step: Step, sheet: &mut Sheet, form: &ChamferForm, made: &EndGeometry, through: bool) -> Step {
    let [least, most] = form.threads;
    let step = step
        .say(said![
            "Chamfer of ",
            (least, Count),
            " to ",
            (most, Count),
            " threads (form ",
            (form.letter),
            (if through { "): it must pass right through." } else { ")." })
        ])
        .figure("Chamfer of the tap", Value::Counted(form.threads, "threads"))
        .from(form.cite);
    if through {
        return step;
    }
    let needed =
        sheet.work(&machining::FULL_DIAMETER_DEPTH, &[made.tapped_depth, most, made.thread.pitch, CLEAR_PITCHES]);
    if exceeds(needed, made.drill_depth) {
        return step.warn(Some(said![
            "The hole has no room for this chamfer: ",
            (needed, FineLength),
            " to the shoulder is needed and ",
            (made.drill_depth, FineLength),
            " is drilled. Take a tap with a shorter chamfer."
        ]));
    }
    step.say(said![
        "This chamfer needs ",
        (needed, FineLength),
        " to the shoulder; the hole is drilled ",
        (made.drill_depth, FineLength),
        "."
    ])
}

/// Tapping: into a blind hole, or right `through` an insert.
pub(super) fn tap(shop: &Shop, end: usize, made: &EndGeometry, through: bool) -> Step {
    let mut sheet = Sheet::recording();
    let class = class_of_hole(made);
    let mut step = shop
        .step(Operation::Tap, Some(end), "Tap", &TAP_MINUTES)
        .say(said![
            "Tap end ",
            (letter(end)),
            " ",
            (made.thread.label),
            "-",
            (class),
            ", ",
            (hand_in_capitals(made.hand)),
            ", full thread ",
            (made.tapped_depth, FineLength),
            " deep from the face."
        ])
        .figure("Thread", Value::Words(format!("{} {class}, {}", made.thread.label, made.hand.words())))
        .length("Full thread from the face", made.tapped_depth)
        .measuring("Full thread", Some(end), Asked::full_thread(made, shop.machine));
    if !through {
        step = step.say(said!["Take a ", (shop.class.blind_tap.words), "."]).from(shop.class.blind_tap.cite);
    }
    if let Some(form) = shop.class.chamfer(through) {
        step = chamfered(step, &mut sheet, form, made, through);
    }
    step = step.warn((made.hand == Hand::Left).then(|| {
        said!["LEFT-HAND: use the LH tap and turn it counterclockwise; a spiral-flute LH tap has a left-hand spiral."]
    }));
    let Some(speed) = shop.class.tapping() else {
        return step
            .warn(Some(said!["No tapping speed is held for this metal: ask the tap's maker."]))
            .worked(sheet, None);
    };
    let rpm = speeds::spindle(&mut sheet, speed.feet_per_minute, made.thread.major, shop.machine.fastest_tapping());
    let feed = sheet.work(&machining::TAP_FEED, &[rpm[0], made.thread.pitch]);
    let cutting = sheet.work(&machining::TAPPING_TIME, &[made.drill_depth, made.thread.pitch, rpm[0]]);
    step.say(said![
        "Begin at ",
        (speeds::whole(rpm[0]), Count),
        " rpm, at most ",
        (speeds::whole(rpm[1]), Count),
        " rpm. Fluid: ",
        (shop.class.tapping_fluid.name),
        (if through { ". Tap right through." } else { ". Stop before the tap reaches the bottom." })
    ])
    .figure("Tapping speed", Value::Counted(speed.feet_per_minute, "ft/min"))
    .figure("Spindle speed", Value::Counted(rpm, "rpm"))
    .length("Advance of the tap in a minute, at the slower", feed)
    .figure("Cutting fluid", Value::Words(shop.class.tapping_fluid.name.to_string()))
    .from(speed.cite)
    .from(shop.class.tapping_fluid.cite)
    .warn(speeds::too_fast(shop, rpm[1]))
    .worked(sheet, Some(cutting))
}

const fn hand_in_capitals(hand: Hand) -> &'static str {
    match hand {
        Hand::Right => "RIGHT-HAND",
        Hand::Left => "LEFT-HAND",
    }
}

/// The thread gauge.
pub(super) fn gauge(shop: &Shop, end: usize, made: &EndGeometry) -> Step {
    shop.step(Operation::Gauge, Some(end), "Gauge", &GAUGE_MINUTES)
        .say(said![
            "Clean the thread at end ",
            (letter(end)),
            ". The ",
            (made.hand.words()),
            " ",
            (class_of_hole(made)),
            " go gauge must run in by hand to full depth; the no-go gauge may enter no more than a few turns, as its standard says."
        ])
        .measuring("Go gauge", Some(end), None)
        .measuring("No-go gauge", Some(end), None)
}
