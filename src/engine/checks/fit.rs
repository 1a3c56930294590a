//! Checks of fit and rules of thumb: engagement, holes, jam nut, walls, tilt of the balls.

use super::ends::{at_ends, letter};
use super::engagement::broken;
use super::{Case, Check, Outcome, of_length, seat};
use crate::document::Spacers;
use crate::engine::formula::Sheet;
use crate::engine::formulas::{columns, jam_nut, lengths, motion};
use crate::engine::sentence::said;
use crate::engine::tables::inserts;
use crate::engine::tables::materials::Form;
use crate::inputs;
use crate::quantity;
use crate::quantity::{Kind, deg};
use crate::report::Topic;
use crate::source::{Cite, GEOMETRY, Obtained, PRACTICE, cite};

/// Id of the check that enough metal is left between the two holes.
pub(in crate::engine) const HOLES_MEET: &str = "holes-meet";

pub(super) static ROWS: &[Check] = &[
    Check {
        id: HOLES_MEET,
        topic: Topic::Other,
        of_lengths: true,
        title: "Solid bar between the two holes",
        part: "bar between the holes",
        rule: true,
        optional: false,
        source: cite(&GEOMETRY, "", Obtained::Computed),
        run: holes_meet,
    },
    Check {
        id: "bottoming",
        topic: Topic::Other,
        of_lengths: true,
        title: "Room for the shank in its hole",
        part: "bottom of the hole",
        rule: true,
        optional: false,
        source: cite(&GEOMETRY, "", Obtained::Computed),
        run: bottoming,
    },
    Check {
        id: "jam-nut-seat",
        topic: Topic::Other,
        of_lengths: false,
        title: "Jam-nut seat on the bar",
        part: "jam nut",
        rule: true,
        optional: false,
        source: jam_nut::SEAT_PRESSURE.formula.source,
        run: seat::jam_nut_seat,
    },
    Check {
        id: "misalignment",
        topic: Topic::Other,
        of_lengths: false,
        title: "Rod-end misalignment at full articulation",
        part: "ball of the rod end",
        rule: true,
        optional: false,
        source: motion::AXLE_ROLL.formula.source,
        run: misalignment,
    },
    Check {
        id: "thin-tube",
        topic: Topic::Other,
        of_lengths: false,
        title: "Local buckling of the tube's wall",
        part: "wall of the tube",
        rule: true,
        optional: false,
        source: columns::THIN_TUBE.formula.source,
        run: thin_tube,
    },
    Check {
        id: "wall",
        topic: Topic::Other,
        of_lengths: false,
        title: "Wall around the thread",
        part: "wall around the thread",
        rule: true,
        optional: false,
        source: cite(&PRACTICE, "at least 1/4 of the thread's diameter, better 0.35", Obtained::Practice),
        run: wall,
    },
];

/// The end with the larger of two numbers.
fn worse(values: [f64; 2]) -> usize {
    usize::from(quantity::exceeds(values[1], values[0]))
}

fn holes_meet(case: &Case, sheet: &mut Sheet) -> Outcome {
    let [a, b] = &case.made.ends;
    // The inserts of a tube are taken to be as long as their thread.
    let tube = case.made.material.form == Form::Tube;
    let depths = if tube { [a.tapped_depth, b.tapped_depth] } else { [a.drill_point, b.drill_point] };
    let web = sheet.work(&lengths::HOLE_WEB, &[case.made.bar, depths[0], depths[1]]);
    let wanted = a.thread.major.max(b.thread.major);
    if web <= 0.0 {
        return Outcome::new(
            broken(sheet),
            None,
            sheet.remark(|| {
                said!["Drilled this deep, the two holes run into each other. Tap less deep or make the link longer."]
            }),
        );
    }
    Outcome::new(
        of_length(wanted, web, sheet),
        None,
        sheet.remark(|| {
            if tube {
                said![(web, Length), " of tube is left between the inserts; required is one thread diameter."]
            } else {
                said![(web, Length), " of solid bar is left between the drill points; required is one thread diameter."]
            }
        }),
    )
}

fn bottoming(case: &Case, sheet: &mut Sheet) -> Outcome {
    let mut used: f64 = 0.0;
    for end in &case.made.ends {
        let room = sheet.work(&lengths::MOST_BY_HOLE, &[end.tapped_depth, end.thread.pitch]);
        used = used.max(of_length(end.inserted, room, sheet));
    }
    let tight =
        case.made.ends.iter().any(|end| quantity::exceeds(end.thread_length - end.jam_nut, end.most + end.not_full));
    let says = if tight {
        sheet.remark(|| said![
            "The hole ends before the thread of the shank does: a shank wound in that far locks on the bottom, and its jam nut tightens on nothing."
        ])
    } else {
        sheet.remark(|| said!["Even wound in as far as it goes, the shank stops short of the bottom of the hole."])
    };
    Outcome::new(used, None, says)
}

fn wall(case: &Case, sheet: &mut Sheet) -> Outcome {
    if case.made.material.form == Form::Tube {
        return insert_wall(case, sheet);
    }
    let mut worst = (0.0_f64, 0.0, 0.0);
    for end in &case.made.ends {
        let wall = sheet.work(&lengths::WALL_AROUND_THREAD, &[case.made.outside_diameter, end.thread.major]);
        let floor = sheet.work(&lengths::LEAST_BY_DIAMETERS, &[0.25, end.thread.major]);
        let used = if wall > 0.0 { of_length(floor, wall, sheet) } else { broken(sheet) };
        if used > worst.0 {
            worst = (used, wall, wall / end.thread.major);
        }
    }
    Outcome {
        ..Outcome::new(
            worst.0,
            None,
            sheet.remark(|| {
                said![
                    (worst.1, FineLength),
                    " of wall stands around the thread, ",
                    (worst.2, Ratio),
                    " of its diameter. 0.25 is the floor; from 0.35 up is comfortable."
                ]
            }),
        )
    }
}

/// What a ball tilts each way with high-misalignment spacers, with plain ones beside it, and with none.
const TILT_STEPPED: f64 = deg(30.0);
const TILT_WITH_SPACERS: f64 = deg(12.0);
const TILT_BARE: f64 = deg(5.5);
const USUAL_TILT: Cite = cite(&PRACTICE, "tilt of a ball in its bracket; tall spacers leave more", Obtained::Practice);

/// The axle rolls, the links along the rig are twisted by as much, and their balls take that up. The ball that runs
/// out first passes the twist on, and the jam nut at that end is the one that comes loose.
fn misalignment(case: &Case, sheet: &mut Sheet) -> Outcome {
    // Links across the rig swing about their bolts when the axle rolls.
    if !case.given.link.role.drives() {
        return Outcome::does_not_arise();
    }
    let (travel, track) = (case.given.known(&inputs::FLEX), case.given.known(&inputs::TRACK));
    if 2.0 * travel > track {
        return Outcome::unanswered(said![
            "Wheels that go ",
            (travel, Length),
            " up and down need a wider track than ",
            (track, Length),
            ": check both."
        ]);
    }
    let roll = sheet.work(&motion::AXLE_ROLL, &[travel, track]);
    let twist = sheet.work(&motion::TWIST_PER_BALL, &[roll]);
    let tilts = [0, 1].map(|end| {
        if let Some(own) = case.given.number_at(&inputs::TILT, end) {
            return own;
        }
        // They narrow beside the ball, so that the head does not stop them where its table says.
        if case.given.spacers() == Spacers::HighMisalignment {
            let row = "high-misalignment spacers";
            return sheet.look_up("Tilt of the ball", TILT_STEPPED, Kind::Angle, row, USUAL_TILT);
        }
        let spacers = case.given.known(&inputs::SPACER) > 0.0;
        let (usual, row) =
            if spacers { (TILT_WITH_SPACERS, "plain spacers") } else { (TILT_BARE, "no spacers, bare in the bracket") };
        match case.joints[end].row.and_then(|row| row.misalignment.zip(row.tilt_cite).map(|tilt| (row, tilt))) {
            Some((row, (tilt, cite))) if tilt < usual => {
                sheet.look_up("Tilt of the ball", tilt, Kind::Angle, row.label, cite)
            }
            _ => sheet.look_up("Tilt of the ball", usual, Kind::Angle, row, USUAL_TILT),
        }
    });
    let first = worse([-tilts[0], -tilts[1]]);
    let used = sheet.work(&motion::TILT_SHARE, &[twist, tilts[first]]);
    let which = if (tilts[0] - tilts[1]).abs() < 1e-9 { "either end" } else { ["end A", "end B"][first] };
    Outcome::new(
        used,
        None,
        sheet.remark(|| {
            said![
                "With one wheel ",
                (travel, Length),
                " up and the other as far down the axle rolls ",
                (roll, Angle),
                "; each ball takes half, and the one at ",
                (which),
                " may tilt ",
                (tilts[first], Angle),
                ". A rod end out of misalignment twists the link and loosens the jam nut at its end."
            ]
        }),
    )
}

fn thin_tube(case: &Case, sheet: &mut Sheet) -> Outcome {
    if case.made.material.form == Form::Bar {
        return Outcome::does_not_arise();
    }
    let (outside, wall) = (case.made.outside_diameter, case.made.wall);
    let row = case.strength;
    let yielding = sheet.look_up(
        "Yield strength of the tube",
        row.yield_compression,
        Kind::Stress,
        case.made.material.label,
        row.cite,
    );
    let most = sheet.work(&columns::THIN_TUBE, &[case.made.material.modulus_compression, yielding]);
    let slenderness = sheet.work(&lengths::DIAMETER_OVER_WALL, &[outside, wall]);
    Outcome::new(
        sheet.work(&lengths::RATIO_SHARE, &[slenderness, most]),
        None,
        sheet.remark(|| {
            said![
                "The tube is ",
                (slenderness, Ratio),
                " walls across; up to ",
                (most, Ratio),
                " it bends as a whole before its wall buckles. A rock dents a thin wall all the same."
            ]
        }),
    )
}

/// A welded insert slips into the tube's bore, so its wall is what the bore leaves around the thread.
fn insert_wall(case: &Case, sheet: &mut Sheet) -> Outcome {
    at_ends(case, sheet, |case, end, sheet| {
        let wall = sheet.work(&lengths::WALL_AROUND_THREAD, &[case.made.bore, case.made.ends[end].thread.major]);
        if wall <= 0.0 {
            let says = sheet.remark(|| {
                said![
                    "The tube's bore of ",
                    (case.made.bore, FineLength),
                    " leaves no room for an insert around the thread at end ",
                    (letter(end)),
                    ": take a larger tube, a thinner wall or a smaller rod end."
                ]
            });
            return Outcome::new(broken(sheet), None, says);
        }
        let least = sheet.look_up(
            "Least wall of a threaded insert",
            inserts::LEAST_WALL,
            Kind::FineLength,
            case.given.insert(end).label,
            inserts::LEAST_WALL_CITE,
        );
        let used = of_length(least, wall, sheet);
        let says = sheet.remark(|| {
            said![
                "The ",
                (case.given.insert(end).noun),
                " at end ",
                (letter(end)),
                " keeps ",
                (wall, FineLength),
                " of wall inside the tube; required is ",
                (least, FineLength),
                ", an assumption."
            ]
        });
        let instead = Some(("Wall of the threaded insert", inserts::LEAST_WALL_CITE));
        Outcome { instead, ..Outcome::new(used, None, says) }
    })
}
