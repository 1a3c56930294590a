//! The three lengths of a link, engagement and adjustment at each end, and the depths of its holes.

use super::formula::Sheet;
use super::formulas::{lengths, machining, sections, threads as thread_formulas};
use super::given::{RodEndSpec, Values};
use super::sentence::{Said, said};
use super::tables::SHEAR_SHARE;
use super::tables::materials::{Form, Strength};
use crate::document::{Hand, Role};
use crate::inputs;
use crate::quantity::{deg, inch};
use crate::report::{Adjustment, EndGeometry, EngagementMark, Flats, LinkGeometry, Reach};
use crate::source::{Obtained, PRACTICE, cite};

/// Visible threads past the jam nut that good practice allows at most.
pub(super) const MOST_VISIBLE_THREADS: f64 = 3.0;
/// Tap chamfer of a plug tap, the larger printed figure, in threads.
const PLUG_CHAMFER: f64 = 5.0;
/// Clear pitches below the tap.
const CLEAR_PITCHES: f64 = 1.0;
/// Drill point angle taken for the depth to the point.
const POINT_ANGLE: f64 = deg(118.0);
/// Up to this much over the strength line, engagement is short of comfortable.
pub(super) const COMFORT: f64 = 1.2;

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

/// Lays a link out.
///
/// # Errors
/// A sentence when no link of this section and these rod ends fits between the mounts.
pub(super) fn lay_out(
    given: &Values,
    section: Section,
    joints: [RodEndSpec; 2],
    strength: &Strength,
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
    let ends = [0, 1].map(|end| lay_out_end(given, end, joints[end], design[end] + shift, strength, sheet));
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
    engagement: f64,
    strength: &Strength,
    sheet: &mut Sheet,
) -> EndGeometry {
    let thread = joint.thread;
    let pitch = thread.pitch;
    let nut = joint.nut.thickness;
    let deepest = joint.thread_length - nut;
    let tapped = given
        .number_at(&inputs::TAPPED_DEPTH, end)
        .unwrap_or_else(|| up_to(joint.thread_length + 2.0 * pitch, inch(0.125)));
    let by_hole = sheet.work(&lengths::MOST_BY_HOLE, &[tapped, pitch]);
    let most = deepest.min(by_hole).max(0.0);
    let least_asked = given.number_at(&inputs::LEAST_ENGAGEMENT, end).unwrap_or(0.0);
    let lines = EngagementLines::new(given, joint, strength, sheet);
    let least = lines.least().max(least_asked);
    let visible = sheet.work(&lengths::VISIBLE_THREAD, &[joint.thread_length, nut, engagement]);
    let drill_depth = sheet.work(&machining::FULL_DIAMETER_DEPTH, &[tapped, PLUG_CHAMFER, pitch, CLEAR_PITCHES]);
    let point = sheet.work(&machining::DRILL_POINT, &[joint.limits.internal_minor_min, POINT_ANGLE]);
    let shortest_good = (deepest - MOST_VISIBLE_THREADS * pitch).max(least);
    let longest_good = deepest.min(most);
    let hand =
        given.link.ends.get(end).and_then(|end| end.hand).unwrap_or(if end == 0 { Hand::Right } else { Hand::Left });
    EndGeometry {
        rod_end: joint.label,
        rod_end_id: joint.id,
        thread,
        hand,
        bore: joint.bore,
        ball_width: joint.ball_width,
        head_diameter: joint.head.map(|row| row.head_diameter),
        eye_to_end: joint.eye_to_end,
        thread_length: joint.thread_length,
        jam_nut: nut,
        jam_nut_across: joint.nut.across_flats_max,
        engagement,
        least,
        most,
        // Marks are for the eye; a search has none.
        marks: if sheet.is_recording() { lines.marks(engagement, least_asked) } else { Vec::new() },
        visible,
        visible_threads: visible / pitch,
        eye_to_face: joint.eye_to_end - engagement,
        hole: [joint.limits.internal_minor_min, joint.limits.internal_minor_max],
        tapped_depth: tapped,
        drill_depth,
        drill_point: drill_depth + point,
        reach: Reach {
            out_good: (engagement - shortest_good).max(0.0),
            in_good: (longest_good - engagement).max(0.0),
            out_limit: (engagement - least).max(0.0),
            in_limit: (most - engagement).max(0.0),
        },
    }
}

/// The lengths of engagement that different rules ask for at one end.
pub(super) struct EngagementLines {
    /// Thread as strong as the shank.
    pub(super) strength: f64,
    /// The one-third rule.
    pub(super) one_third: f64,
    /// What habit is called here.
    pub(super) habit_name: &'static str,
    /// What habit asks for.
    pub(super) habit: f64,
    /// One diameter, a floor whatever the strengths say.
    pub(super) floor: f64,
}

impl EngagementLines {
    fn new(given: &Values, joint: RodEndSpec, strength: &Strength, sheet: &mut Sheet) -> Self {
        let thread = joint.thread;
        let shank = given.known(&inputs::SHANK_ULTIMATE);
        let steel = given.material().form == Form::Tube || given.material().ductile;
        let shear = if given.material().form == Form::Tube {
            given.known(&inputs::INSERT_SHEAR)
        } else {
            strength.shear_ultimate
        };
        let area = thread.tensile_stress_area();
        let shank_shear = SHEAR_SHARE * shank;
        Self {
            strength: sheet.work(
                &thread_formulas::FULL_STRENGTH_ENGAGEMENT,
                &[area, shank, joint.external_shear_area, shank_shear, joint.internal_shear_area, shear],
            ),
            one_third: sheet
                .work(&thread_formulas::ONE_THIRD_ENGAGEMENT, &[area, shank, thread.basic_pitch_diameter(), shear]),
            habit_name: if steel { "Habit, 1.25 diameters" } else { "Habit, 1.5 diameters" },
            habit: sheet.work(&lengths::LEAST_BY_DIAMETERS, &[if steel { 1.25 } else { 1.5 }, thread.major]),
            floor: sheet.work(&lengths::LEAST_BY_DIAMETERS, &[1.0, thread.major]),
        }
    }

    /// The least engagement this tool accepts.
    pub(super) fn least(&self) -> f64 {
        self.strength.max(self.floor)
    }

    fn marks(&self, engagement: f64, asked: f64) -> Vec<EngagementMark> {
        let mark = |name, length: f64, source| EngagementMark { name, length, reached: engagement >= length, source };
        let practice = |place| cite(&PRACTICE, place, Obtained::Practice);
        let mut marks = vec![
            mark(
                "Thread as strong as the shank",
                self.strength,
                thread_formulas::FULL_STRENGTH_ENGAGEMENT.formula.source,
            ),
            mark("One-third rule", self.one_third, thread_formulas::ONE_THIRD_ENGAGEMENT.formula.source),
            mark(self.habit_name, self.habit, practice("1.5 diameters in aluminum, 1.25 in steel")),
        ];
        marks.push(mark("One diameter", self.floor, practice("least thread in any metal")));
        if asked > 0.0 {
            marks.push(mark("What you ask for", asked, practice("your own entry")));
        }
        marks
    }
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

fn adjustment(ends: &[EndGeometry; 2]) -> Adjustment {
    let [a, b] = ends;
    let opposite_hands = a.hand != b.hand;
    let pitches = [a.thread.pitch, b.thread.pitch];
    let sum = thread_formulas::LENGTH_PER_TURN_OPPOSITE_HANDS.value(&pitches);
    let same = thread_formulas::LENGTH_PER_TURN_SAME_HAND.value(&pitches);
    let per_turn = if opposite_hands { sum } else { same.abs() };
    // Turning the bar moves both ends together, so the end with less room stops it.
    let turns = |a: f64, b: f64| if opposite_hands { (a / pitches[0]).min(b / pitches[1]) } else { 0.0 };
    let turns_good = [turns(a.reach.out_good, b.reach.out_good), turns(a.reach.in_good, b.reach.in_good)];
    let turns_limit = [turns(a.reach.out_limit, b.reach.out_limit), turns(a.reach.in_limit, b.reach.in_limit)];
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
        turning: opposite_hands.then(|| turning(a.hand)),
    }
}

/// Which way lengthens: a right-hand thread comes out of the bar when the bar is turned clockwise, seen
/// from its eye.
const fn turning(at_a: Hand) -> &'static str {
    match at_a {
        Hand::Right => "Look along the bar from end A: clockwise makes it longer, counterclockwise shorter.",
        Hand::Left => "Look along the bar from end A: counterclockwise makes it longer, clockwise shorter.",
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
