//! The three lengths of a link, engagement and adjustment at each end, and the depths of its holes.

use super::formula::Sheet;
use super::formulas::{lengths, machining, sections, threads as thread_formulas};
use super::given::{RodEndSpec, Values};
use super::sentence::{Said, said};
use super::tables::SHEAR_SHARE;
use super::tables::materials::{Form, Strength};
use crate::document::{Hand, OWN_ROD_END, Role};
use crate::inputs;
use crate::order;
use crate::quantity::{deg, inch};
use crate::report::{
    Adjustment, EndGeometry, EngagementMark, EngagementRule, Flats, LinkGeometry, OutwardStop, Reach, StopBy,
};
use crate::source::{Obtained, PRACTICE, cite};

/// Visible threads past the jam nut that good practice allows at most.
pub(super) const MOST_VISIBLE_THREADS: f64 = 3.0;
/// Tap chamfer of a plug tap, the larger printed figure, in threads.
const PLUG_CHAMFER: f64 = 5.0;
/// Clear pitches below the tap.
const CLEAR_PITCHES: f64 = 1.0;
/// Drill point angle taken for the depth to the point.
const POINT_ANGLE: f64 = deg(118.0);
/// Least engagement in any metal, in diameters.
pub(super) const LEAST_DIAMETERS: f64 = 1.0;

/// A cross-section and the rod ends that go with it.
#[derive(Clone, Copy, PartialEq)]
pub(super) struct Section {
    pub(super) outside_diameter: f64,
    /// 0 for a solid bar.
    pub(super) wall: f64,
}

impl Section {
    pub(super) fn bore(self) -> f64 {
        if self.wall > 0.0 { (self.outside_diameter - 2.0 * self.wall).max(0.0) } else { 0.0 }
    }
}

/// Lays a link out; its least engagement follows from the largest axial load, N.
///
/// # Errors
/// A sentence when no link of this section and these rod ends fits between the mounts.
pub(super) fn lay_out(
    given: &Values,
    section: Section,
    joints: [RodEndSpec; 2],
    strength: &Strength,
    axial: f64,
    sheet: &mut Sheet,
) -> Result<LinkGeometry, Said> {
    let length = given.known(&inputs::LENGTH);
    let wanted = given.known(&inputs::VISIBLE_THREADS);
    let material = given.material();
    let design = joints.map(|joint| {
        sheet.work(&lengths::DESIGN_ENGAGEMENT, &[joint.thread_length, joint.nut.thickness, wanted, joint.thread.pitch])
    });
    if let Some(end) = design.iter().position(|engaged| *engaged <= 0.0) {
        let joint = joints[end];
        return Err(said![
            "With ",
            (wanted, Ratio),
            " threads showing and a jam nut of ",
            (joint.nut.thickness, FineLength),
            ", a shank with ",
            (joint.thread_length, FineLength),
            " of thread does not reach into the bar at all. Leave fewer threads showing, or take a rod end with more thread."
        ]);
    }
    let faces = [0, 1].map(|end| sheet.work(&lengths::EYE_TO_FACE, &[joints[end].eye_to_end, design[end]]));
    let exact = sheet.work(&lengths::BAR_LENGTH, &[length, faces[0], faces[1]]);
    let step = given.known(&inputs::ROUNDING);
    let bar = (exact / step).round() * step;
    if bar.is_nan() || bar < inch(1.0) {
        return Err(said![
            "These rod ends are too long for this link: they leave ",
            (exact.max(0.0), Length),
            " of bar between them. Take shorter rod ends, or measure mount to mount again."
        ]);
    }
    // Rounding the bar moves both faces alike.
    let shift = (bar - exact) / 2.0;
    let ends = [0, 1].map(|end| lay_out_end(given, end, joints[end], design[end] + shift, strength, axial, sheet));
    let cut = sheet.work(&lengths::CUT_LENGTH, &[bar, given.known(&inputs::FACING)]);
    let flats = (material.form == Form::Bar).then(|| flats(given, section, bar, &ends));
    if let (Some(flats), Some(start)) = (flats, given.number(&inputs::FLATS_START))
        && start + flats.length > bar
    {
        return Err(said![
            "Wrench flats that begin ",
            (start, Length),
            " from face A and are ",
            (flats.length, Length),
            " long do not lie on a bar of ",
            (bar, Length),
            "."
        ]);
    }
    let area = sheet.work(&sections::RING_AREA, &[section.outside_diameter, section.bore()]);
    let plain = sheet.work(&lengths::BAR_WEIGHT, &[material.density, area, bar]);
    let holes: f64 = if material.form == Form::Bar {
        ends.iter().map(|end| lengths::HOLE_WEIGHT.value(&[material.density, end.thread.major, end.drill_depth])).sum()
    } else {
        0.0
    };
    let adjustment = adjustment(&ends);
    Ok(LinkGeometry {
        material,
        outside_diameter: section.outside_diameter,
        wall: section.wall,
        bore: section.bore(),
        length,
        bar,
        cut,
        provisional: joints.iter().any(|joint| joint.id != OWN_ROD_END),
        bar_weight: (plain - holes).max(0.0),
        ends,
        flats,
        adjustment,
        working: std::mem::take(&mut sheet.lines),
    })
}

fn lay_out_end(
    given: &Values,
    end: usize,
    joint: RodEndSpec,
    inserted: f64,
    strength: &Strength,
    axial: f64,
    sheet: &mut Sheet,
) -> EndGeometry {
    let thread = joint.thread;
    let pitch = thread.pitch;
    let nut = joint.nut.thickness;
    let deepest = joint.thread_length - nut;
    let tapped = given
        .number_at(&inputs::TAPPED_DEPTH, end)
        .unwrap_or_else(|| up_to(joint.thread_length + 2.0 * pitch, inch(0.125)));
    let not_full = not_full(given, joint, sheet);
    let lead = given.known(&inputs::LEAD_THREADS);
    let engagement = sheet.work(&lengths::FULL_THREAD, &[inserted, lead, pitch, not_full.countersink]);
    let by_hole = sheet.work(&lengths::MOST_BY_HOLE, &[tapped, pitch]);
    let most = deepest.min(by_hole) - not_full.length;
    let least_asked = given.number_at(&inputs::LEAST_ENGAGEMENT, end).unwrap_or(0.0);
    let lines = EngagementLines::new(given, end, joint, strength, axial, sheet);
    let least = lines.least().max(least_asked);
    let visible = sheet.work(&lengths::VISIBLE_THREAD, &[joint.thread_length, nut, inserted]);
    let drill_depth = sheet.work(&machining::FULL_DIAMETER_DEPTH, &[tapped, PLUG_CHAMFER, pitch, CLEAR_PITCHES]);
    let point = sheet.work(&machining::DRILL_POINT, &[joint.limits.internal_minor_min, POINT_ANGLE]);
    let hand =
        given.link.ends.get(end).and_then(|end| end.hand).unwrap_or(if end == 0 { Hand::Right } else { Hand::Left });
    let mut geometry = EndGeometry {
        rod_end: joint.label,
        rod_end_id: joint.id,
        thread,
        hand,
        bore: joint.bore,
        ball_width: joint.ball_width,
        head_diameter: joint.head.diameter,
        eye_to_end: joint.eye_to_end,
        thread_length: joint.thread_length,
        jam_nut: nut,
        jam_nut_across: joint.nut.across_flats_max,
        shank_ultimate: lines.shank_ultimate,
        shank_yield: f64::NAN,
        inserted,
        not_full: not_full.length,
        engagement,
        least,
        most,
        // Marks are for the eye; a search has none.
        marks: if sheet.is_recording() { lines.marks(engagement, least_asked) } else { Vec::new() },
        visible,
        visible_threads: visible / pitch,
        eye_to_face: joint.eye_to_end - inserted,
        hole: [joint.limits.internal_minor_min, joint.limits.internal_minor_max],
        tapped_depth: tapped,
        drill_depth,
        drill_point: drill_depth + point,
        stop: OutwardStop { inserted: 0.0, visible_threads: 0.0, by: StopBy::Engagement },
        reach: Reach::default(),
    };
    set_stop(&mut geometry, None);
    geometry
}

/// What of the length inside the bar is no full thread.
struct NotFull {
    countersink: f64,
    length: f64,
}

fn not_full(given: &Values, joint: RodEndSpec, sheet: &mut Sheet) -> NotFull {
    let thread = joint.thread;
    let minor = sheet.work(&thread_formulas::BASIC_MINOR_DIAMETER, &[thread.major, thread.pitch]);
    let diameter = thread.major + given.known(&inputs::COUNTERSINK);
    let countersink = sheet.work(&lengths::COUNTERSINK_DEPTH, &[diameter, minor]);
    NotFull { countersink, length: given.known(&inputs::LEAD_THREADS) * thread.pitch + countersink }
}

/// Settles how far an end may be wound out: to three visible threads, to the least engagement, or to where its shank
/// reaches its limit in bending (a length inside the bar, where it does so first).
pub(super) fn set_stop(end: &mut EndGeometry, shank: Option<f64>) {
    let pitch = end.thread.pitch;
    let deepest = end.thread_length - end.jam_nut;
    let by_engagement = (end.least + end.not_full, StopBy::Engagement);
    let by_shank = (shank.unwrap_or(f64::NEG_INFINITY), StopBy::ShankBending);
    let limit = if by_shank.0 > by_engagement.0 { by_shank } else { by_engagement };
    let by_threads = (deepest - MOST_VISIBLE_THREADS * pitch, StopBy::VisibleThreads);
    let stop = if limit.0 > by_threads.0 { limit } else { by_threads };
    end.stop = OutwardStop { inserted: stop.0, visible_threads: (deepest - stop.0) / pitch, by: stop.1 };
    let deepest_allowed = end.most + end.not_full;
    end.reach = Reach {
        // Good travel begins inside the good window only.
        out_good: (end.inserted.min(deepest_allowed) - stop.0).max(0.0),
        in_good: (deepest_allowed - end.inserted.max(stop.0)).max(0.0),
        out_limit: (end.inserted - limit.0).max(0.0),
        in_limit: (deepest_allowed - end.inserted).max(0.0),
    };
}

/// The lengths of engagement that different rules ask for at one end.
pub(super) struct EngagementLines {
    /// Breaking strength of the shank.
    shank_ultimate: f64,
    /// The thread bears the largest load with its factor.
    load: f64,
    /// The thread is as strong as the shank.
    shank: f64,
    /// The one-third rule.
    one_third: f64,
    /// What common practice is in the metal of the bar, in diameters, and as a length.
    practice_diameters: f64,
    practice: f64,
    /// One diameter, a floor whatever the strengths say.
    floor: f64,
}

impl EngagementLines {
    fn new(given: &Values, end: usize, joint: RodEndSpec, strength: &Strength, axial: f64, sheet: &mut Sheet) -> Self {
        let thread = joint.thread;
        let shank = given.number_at(&inputs::SHANK_ULTIMATE, end).unwrap_or(f64::NAN);
        let shear = bar_shear(given, strength);
        let area = thread.tensile_stress_area();
        let shank_shear = SHEAR_SHARE * shank;
        let [external, internal] = [joint.external_shear_area, joint.internal_shear_area];
        let practice_diameters = if is_steel(given) { 1.25 } else { 1.5 };
        Self {
            shank_ultimate: shank,
            load: load_engagement(given, joint, shank, shear, axial, sheet),
            shank: sheet.work(
                &thread_formulas::FULL_STRENGTH_ENGAGEMENT,
                &[area, shank, external, shank_shear, internal, shear],
            ),
            one_third: sheet
                .work(&thread_formulas::ONE_THIRD_ENGAGEMENT, &[area, shank, thread.basic_pitch_diameter(), shear]),
            practice_diameters,
            practice: sheet.work(&lengths::LEAST_BY_DIAMETERS, &[practice_diameters, thread.major]),
            floor: sheet.work(&lengths::LEAST_BY_DIAMETERS, &[LEAST_DIAMETERS, thread.major]),
        }
    }

    /// The least engagement this tool accepts. The strength of the shank is no demand: a stronger rod end must never
    /// make a link fail.
    fn least(&self) -> f64 {
        self.load.max(self.floor)
    }

    fn marks(&self, engagement: f64, asked: f64) -> Vec<EngagementMark> {
        let mark = |rule, name, length: f64, source| EngagementMark {
            rule,
            name,
            length,
            reached: !order::exceeds(length, engagement),
            source,
        };
        let practice = |place| cite(&PRACTICE, place, Obtained::Practice);
        let in_diameters = if self.practice_diameters > 1.3 {
            "Common practice in aluminum, 1.5 diameters"
        } else {
            "Common practice in steel, 1.25 diameters"
        };
        let mut marks = vec![
            mark(
                EngagementRule::Shank,
                "Thread as strong as the shank",
                self.shank,
                thread_formulas::FULL_STRENGTH_ENGAGEMENT.formula.source,
            ),
            mark(
                EngagementRule::OneThird,
                "One-third rule",
                self.one_third,
                thread_formulas::ONE_THIRD_ENGAGEMENT.formula.source,
            ),
            mark(
                EngagementRule::Practice,
                in_diameters,
                self.practice,
                practice("1.5 diameters in aluminum, 1.25 in steel"),
            ),
            mark(EngagementRule::OneDiameter, "One diameter", self.floor, practice("least thread in any metal")),
            mark(
                EngagementRule::Load,
                "Bears the largest load, with its factor",
                self.load,
                thread_formulas::LOAD_ENGAGEMENT.formula.source,
            ),
        ];
        if asked > 0.0 {
            marks.push(mark(EngagementRule::Yours, "What you require", asked, practice("your own entry")));
        }
        marks
    }
}

/// Whether the threads of the bar are cut in steel.
fn is_steel(given: &Values) -> bool {
    given.material().form == Form::Tube || given.material().ductile
}

/// Shear strength of what the thread is cut in: the bar, or the insert of a tube.
pub(super) fn bar_shear(given: &Values, strength: &Strength) -> f64 {
    if given.material().form == Form::Tube { given.known(&inputs::INSERT_SHEAR) } else { strength.shear_ultimate }
}

/// Engagement at which the thread bears a load with its factor.
pub(super) fn load_engagement(
    given: &Values,
    joint: RodEndSpec,
    shank: f64,
    bar_shear: f64,
    axial: f64,
    sheet: &mut Sheet,
) -> f64 {
    let [external, internal] = [joint.external_shear_area, joint.internal_shear_area];
    sheet.work(
        &thread_formulas::LOAD_ENGAGEMENT,
        &[given.known(&inputs::THREAD_FACTOR), axial, external, SHEAR_SHARE * shank, internal, bar_shear],
    )
}

fn flats(given: &Values, section: Section, bar: f64, ends: &[EndGeometry; 2]) -> Flats {
    let length = given.known(&inputs::FLATS_LENGTH).min(bar);
    // A quarter inch past the drill point of end A, or in the middle where the bar is too short for that.
    let clear = up_to(ends[0].drill_point + inch(0.25), inch(0.125));
    let middle = ((bar - length) / 2.0).max(0.0);
    Flats {
        start: given.number(&inputs::FLATS_START).unwrap_or_else(|| clear.min(middle)),
        length,
        width: given
            .number(&inputs::FLATS_WIDTH)
            .unwrap_or((section.outside_diameter - inch(0.25)).max(0.7 * section.outside_diameter)),
    }
}

/// What turning the bar and re-clocking the eyes can do, from the reach of both ends.
pub(super) fn adjustment(ends: &[EndGeometry; 2]) -> Adjustment {
    let [a, b] = ends;
    let opposite_hands = a.hand != b.hand;
    let pitches = [a.thread.pitch, b.thread.pitch];
    let sum = thread_formulas::LENGTH_PER_TURN_OPPOSITE_HANDS.value(&pitches);
    let difference = thread_formulas::LENGTH_PER_TURN_SAME_HAND.value(&pitches);
    let per_turn = if opposite_hands { sum } else { difference.abs() };
    // With like hands one end comes out while the other goes in: the coarser pitch decides which way is longer.
    let [coarse, fine] = if difference >= 0.0 { [a, b] } else { [b, a] };
    let turns = |out: [f64; 2], inward: [f64; 2]| {
        let [coarse_pitch, fine_pitch] = [coarse.thread.pitch, fine.thread.pitch];
        if opposite_hands {
            // Both ends move together, so the end with less room stops them.
            [(out[0] / coarse_pitch).min(out[1] / fine_pitch), (inward[0] / coarse_pitch).min(inward[1] / fine_pitch)]
        } else if per_turn > 0.0 {
            [(out[0] / coarse_pitch).min(inward[1] / fine_pitch), (inward[0] / coarse_pitch).min(out[1] / fine_pitch)]
        } else {
            [0.0; 2]
        }
    };
    let turns_good = turns([coarse.reach.out_good, fine.reach.out_good], [coarse.reach.in_good, fine.reach.in_good]);
    let turns_limit =
        turns([coarse.reach.out_limit, fine.reach.out_limit], [coarse.reach.in_limit, fine.reach.in_limit]);
    // With like hands each end is set by itself, by re-clocking its eye, so the ends' own room adds up.
    let total = |turns: f64, a: f64, b: f64| if opposite_hands { turns * sum } else { a + b };
    Adjustment {
        reach: Reach {
            out_good: total(turns_good[0], a.reach.out_good, b.reach.out_good),
            in_good: total(turns_good[1], a.reach.in_good, b.reach.in_good),
            out_limit: total(turns_limit[0], a.reach.out_limit, b.reach.out_limit),
            in_limit: total(turns_limit[1], a.reach.in_limit, b.reach.in_limit),
        },
        per_turn,
        turns_good,
        turns_limit,
        opposite_hands,
        turning: if opposite_hands {
            Some(turning_both(a.hand))
        } else {
            (per_turn > 0.0).then(|| turning_unlike(difference >= 0.0, a.hand))
        },
    }
}

/// Which way lengthens: a right-hand thread comes out of the bar when the bar is turned clockwise, seen
/// from its eye.
const fn turning_both(at_a: Hand) -> &'static str {
    match at_a {
        Hand::Right => "Look along the bar from end A: clockwise makes it longer, counterclockwise shorter.",
        Hand::Left => "Look along the bar from end A: counterclockwise makes it longer, clockwise shorter.",
    }
}

/// The same for like hands of unlike pitch: the end with the coarser thread decides.
const fn turning_unlike(coarse_at_a: bool, hand: Hand) -> &'static str {
    match (coarse_at_a, hand) {
        (true, Hand::Right) => {
            "Look along the bar from end A, the coarser thread: clockwise makes it longer by the difference of the two pitches each turn; A comes out while B goes in."
        }
        (true, Hand::Left) => {
            "Look along the bar from end A, the coarser thread: counterclockwise makes it longer by the difference of the two pitches each turn; A comes out while B goes in."
        }
        (false, Hand::Right) => {
            "Look along the bar from end B, the coarser thread: clockwise makes it longer by the difference of the two pitches each turn; B comes out while A goes in."
        }
        (false, Hand::Left) => {
            "Look along the bar from end B, the coarser thread: counterclockwise makes it longer by the difference of the two pitches each turn; B comes out while A goes in."
        }
    }
}

fn up_to(value: f64, step: f64) -> f64 {
    // A length that already lies on the step stays on it in spite of the last bits.
    (value / step - 1e-9).ceil() * step
}

/// The word for a role.
pub(super) const fn role_word(role: Role) -> &'static str {
    match role {
        Role::Lower => "lower link",
        Role::Upper => "upper link",
        Role::TrackBar => "track bar",
        Role::TieRod => "tie rod",
        Role::DragLink => "drag link",
        Role::SwayLink => "sway-bar end link",
    }
}
