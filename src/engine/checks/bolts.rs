//! Checks on the bolts through the eyes and on the ears that hold them.

use super::ends::{at_ends, letter, radial};
use super::{Case, Check, Outcome, of_capacity, of_strength};
use crate::document::Spacers;
use crate::engine::bolt::{Bolt, FOOT};
use crate::engine::formula::Sheet;
use crate::engine::formulas::{beams, jam_nut, pins};
use crate::engine::sentence::{Said, said};
use crate::engine::tables::bolts::BoltStrength;
use crate::engine::tables::jam_torque;
use crate::inputs;
use crate::quantity;
use crate::quantity::{Kind, ksi};
use crate::report::Topic;
use crate::source::{Cite, MIL_HDBK_5J, Obtained, cite};

pub(super) static ROWS: &[Check] = &[
    Check {
        id: "bolt-shear",
        topic: Topic::Other,
        of_lengths: false,
        title: "Bolt in double shear",
        part: "bolt",
        rule: false,
        optional: false,
        source: pins::DOUBLE_SHEAR_CAPACITY.formula.source,
        run: |case, sheet| at_ends(case, sheet, shear),
    },
    Check {
        id: "bolt-bending",
        topic: Topic::Other,
        of_lengths: false,
        title: "Bolt bending between the ears",
        part: "bolt",
        rule: false,
        optional: false,
        source: pins::BOLT_MOMENT.formula.source,
        run: |case, sheet| at_ends(case, sheet, bending),
    },
    Check {
        id: "ear-bearing",
        topic: Topic::Other,
        of_lengths: false,
        title: "Bracket ears in bearing",
        part: "bracket ear",
        rule: false,
        optional: false,
        source: EAR_BEARING,
        run: |case, sheet| at_ends(case, sheet, ear_bearing),
    },
];

/// Bearing strength of a mild-steel bracket ear at edge distance 2 diameters: AISI 1025.
const EAR_BEARING_ULTIMATE: f64 = ksi(90.0);
const EAR_BEARING: Cite =
    cite(&MIL_HDBK_5J, "Table 2.2.1.0(b), AISI 1025, edge distance 2 diameters", Obtained::Copied);

/// Share of its proof load that a bolt is torqued to (Shigley, for bolts that are taken out again).
const PROOF_SHARE: f64 = 0.75;
/// Share of that preload which is sure to be there: torque scatters by a quarter.
const SCATTER: f64 = 0.75;

/// The bolt at an end with its strengths.
///
/// # Errors
/// A sentence when the bolt is not known, or its size is not in the table of its grade.
fn bolt_at(case: &Case, end: usize) -> Result<(Bolt, &'static BoltStrength), Said> {
    let Some(bolt) = case.given.bolt(end, case.made.ends[end].bore) else {
        return Err(said![
            "Enter the bolt diameter at end ",
            (letter(end)),
            ": high-misalignment spacers take a smaller bolt than the bore, and only you know which."
        ]);
    };
    match bolt.grade.strength(bolt.diameter) {
        Some(row) => Ok((bolt, row)),
        None => Err(said![
            "A ",
            (bolt.grade.label),
            " bolt of ",
            (bolt.diameter, FineLength),
            " is outside the table held here."
        ]),
    }
}

fn shear(case: &Case, end: usize, sheet: &mut Sheet) -> Outcome {
    let (bolt, row) = match bolt_at(case, end) {
        Ok(found) => found,
        Err(why) => return Outcome::unanswered(why),
    };
    let force = radial(case, sheet);
    let area = sheet.work(&pins::BOLT_AREA, &[bolt.diameter]);
    let strength =
        sheet.look_up("Shear strength of the bolt", row.shear_ultimate, Kind::Stress, bolt.grade.label, row.cite);
    let capacity = sheet.work(&pins::DOUBLE_SHEAR_CAPACITY, &[area, strength]);
    let used = of_capacity(force, case.given.known(&inputs::ULTIMATE_FACTOR), capacity, sheet);
    Outcome::new(
        used,
        Some(case.station(end, 0.0)),
        sheet.remark(|| {
            said![
                "In double shear the ",
                (bolt.diameter, Trade),
                " bolt shears at ",
                (capacity, Force),
                ". Keep its thread out of the bracket, and never mount a link in single shear."
            ]
        }),
    )
}

/// A bolt bends between its ears unless it, or the stack that it clamps, is stiff enough to stay straight.
fn bending(case: &Case, end: usize, sheet: &mut Sheet) -> Outcome {
    let (bolt, row) = match bolt_at(case, end) {
        Ok(found) => found,
        Err(why) => return Outcome::unanswered(why),
    };
    let given = case.given;
    if given.spacers() == Spacers::HighMisalignment && !given.is_decided(&inputs::SPACER) {
        return Outcome::unanswered(said![
            "Enter the length of the high-misalignment spacers, from ball to ear: the longer they are, the more the bolt bends."
        ]);
    }
    let force = radial(case, sheet);
    let stack = [given.known(&inputs::EAR), given.known(&inputs::GAP), given.known(&inputs::SPACER)];
    let [ear, gap, spacer] = stack;
    let moment = sheet.work(&pins::BOLT_MOMENT, &[force, ear, gap, spacer, case.made.ends[end].ball_width]);
    let modulus = sheet.work(&pins::ROUND_MODULUS, &[bolt.diameter]);
    let stress = sheet.work(&beams::BENDING_STRESS, &[moment, modulus]);
    let strength =
        sheet.look_up("Yield strength of the bolt", row.yield_strength, Kind::Stress, bolt.grade.label, row.cite);
    let alone = of_strength(stress, given.known(&inputs::YIELD_FACTOR), strength, sheet);
    let at_eye = Some(case.station(end, 0.0));
    let loose = loose(case, end, &bolt, sheet);
    let with_play = |mut says: Said| {
        says.extend(loose.clone());
        says
    };
    if !quantity::exceeds(alone, 1.0) {
        let says = sheet.remark(|| {
            said![
                "Between its ears the ",
                (bolt.diameter, Trade),
                " bolt works at ",
                (stress, Stress),
                " in bending; it yields at ",
                (strength, Stress),
                "."
            ]
        });
        return Outcome::new(alone, at_eye, with_play(says));
    }
    if given.link.role.steers() {
        let says = sheet.remark(|| {
            said![
                "The ",
                (bolt.diameter, Trade),
                " bolt yields in bending. In steering it must hold by itself, since a nut may come loose: take a thicker bolt or shorter spacers."
            ]
        });
        return Outcome::new(alone, at_eye, with_play(says));
    }
    if gap > 0.0 {
        let says = sheet.remark(|| {
            said![
                "The ",
                (bolt.diameter, Trade),
                " bolt yields in bending, and a stack with a gap of ",
                (gap, FineLength),
                " each side does not clamp. Fill the gap, or take a thicker bolt."
            ]
        });
        return Outcome::new(alone, at_eye, with_play(says));
    }
    let Some(clamp) = clamp(case, end, &bolt, row, moment, sheet) else {
        let says = sheet.remark(|| {
            said![
                "The ",
                (bolt.diameter, FineLength),
                " bolt yields in bending. It is of no standard size, so what its clamp adds cannot be told."
            ]
        });
        return Outcome::new(alone, at_eye, with_play(says));
    };
    if quantity::exceeds(clamp.used, 1.0) {
        let says = sheet.remark(|| {
            said![
                "The ",
                (bolt.diameter, Trade),
                " bolt yields in bending (",
                (alone, Percent),
                "), and tight or not its stack of ears, spacers and ball opens (",
                (clamp.used, Percent),
                "). Take a thicker bolt or shorter spacers."
            ]
        });
        return Outcome::new(alone.min(clamp.used), at_eye, with_play(says));
    }
    let says = sheet.remark(|| {
        said![
            "By itself the ",
            (bolt.diameter, Trade),
            " bolt would yield in bending (",
            (alone, Percent),
            "). Good while the bolt is tight, since its clamped stack of ears, spacers and ball then stays closed. Torque it to ",
            (clamp.torque, Torque),
            ", threads as received and not oiled, and check it; loose, it bends."
        ]
    });
    Outcome { condition: Some(said!["while the bolt is tight"]), ..Outcome::new(clamp.used, at_eye, with_play(says)) }
}

/// What a tight bolt makes of its stack.
struct Clamp {
    /// Moment over the one at which the stack opens.
    used: f64,
    /// Torque that gives the preload.
    torque: f64,
}

/// `None` for a bolt whose thread is not known.
fn clamp(case: &Case, end: usize, bolt: &Bolt, row: &BoltStrength, moment: f64, sheet: &mut Sheet) -> Option<Clamp> {
    let (size, thread) = (bolt.size?, bolt.thread()?);
    sheet.choose(|| said!["The bolt alone does not hold; its clamp, with a ", (bolt.series.words()), ":"]);
    let area =
        sheet.look_up("Tensile stress area of the bolt", thread.stress_area, Kind::Area, size.label, thread.cite);
    let proof = sheet.look_up("Proof strength of the bolt", row.proof, Kind::Stress, bolt.grade.label, row.cite);
    let preload = sheet.work(&jam_nut::PROOF_SHARE_PRELOAD, &[PROOF_SHARE, area, proof]);
    let foot = match case.given.spacer_foot(end) {
        Some(foot) => foot,
        None => sheet.work(&pins::SPACER_FOOT, &[FOOT, bolt.diameter]),
    };
    let opens = sheet.work(&pins::CLAMP_MOMENT, &[SCATTER, preload, foot, bolt.diameter]);
    let used = sheet.work(&pins::MOMENT_SHARE, &[moment, opens]);
    sheet.conclude(used, || {
        said!["M ", (moment, Moment), ", of ", (opens, Moment), " at which the stack opens: ", (used, Percent), "."]
    });
    let torque = sheet.work(&jam_nut::TORQUE, &[jam_torque::COEFFICIENT_AS_RECEIVED, preload, bolt.diameter]);
    Some(Clamp { used, torque })
}

/// A warning for a bolt that rattles in the ball; high-misalignment spacers fill the bore.
fn loose(case: &Case, end: usize, bolt: &Bolt, sheet: &Sheet) -> Said {
    let bore = case.made.ends[end].bore;
    if case.given.spacers() == Spacers::HighMisalignment || !bolt.is_loose_in(bore) {
        return Said::default();
    }
    sheet.remark(|| {
        said![
            " The bore at end ",
            (letter(end)),
            " is ",
            (bore - bolt.diameter, FineLength),
            " wider than the bolt: without a sleeve or spacers that fill it, the joint knocks and wears its holes."
        ]
    })
}

fn ear_bearing(case: &Case, end: usize, sheet: &mut Sheet) -> Outcome {
    let Some(bolt) = case.given.bolt(end, case.made.ends[end].bore) else {
        return Outcome::unanswered(sheet.remark(|| said!["It takes the bolt diameter, which is not entered."]));
    };
    let force = radial(case, sheet);
    let both_ears = 2.0 * case.given.known(&inputs::EAR);
    let pressure = sheet.work(&pins::BEARING_STRESS, &[force, both_ears, bolt.diameter]);
    let bearing = sheet.look_up(
        "Bearing strength of a mild-steel ear",
        EAR_BEARING_ULTIMATE,
        Kind::Stress,
        "AISI 1025",
        EAR_BEARING,
    );
    let used = of_strength(pressure, case.given.known(&inputs::ULTIMATE_FACTOR), bearing, sheet);
    Outcome::new(
        used,
        Some(case.station(end, 0.0)),
        sheet.remark(|| {
            said![
                "The bolt bears on each ear at ",
                (pressure, Stress),
                "; the ear is taken as mild steel with two bolt diameters from hole center to edge."
            ]
        }),
    )
}
