//! The three lengths of a link, engagement and adjustment at each end, and the depths of its holes.

use super::adjustment::{adjustment, set_stop};
use super::engagement::{EngagementLines, not_full};
use super::formula::Sheet;
use super::formulas::{lengths, machining, sections};
use super::given::{RodEndSpec, Values};
use super::sentence::{Said, said};
use super::tables::drills;
use super::tables::inserts::Fitted;
use super::tables::materials::{Form, Strength};
use crate::document::{Hand, OWN_ROD_END};
use crate::inputs;
use crate::quantity::{deg, exceeds, inch};
use crate::report::{EndGeometry, Flats, LinkGeometry, OutwardStop, Reach, StopBy};

/// Visible threads past the jam nut that good practice allows at most.
pub(super) const MOST_VISIBLE_THREADS: f64 = 3.0;
/// Tap chamfer of a plug tap, the larger printed figure, in threads.
const PLUG_CHAMFER: f64 = 5.0;
/// Clear pitches below the tap.
pub(super) const CLEAR_PITCHES: f64 = 1.0;
/// Drill point angle taken for the depth to the point.
const POINT_ANGLE: f64 = deg(118.0);

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

    /// What a skim pass leaves of a bar that is bought in this size; nothing is turned off a tube.
    pub(super) fn finished(self, given: &Values, sheet: &mut Sheet) -> Self {
        // Asked for only where somebody decided it: no answer without a skim rests on it.
        if self.wall > 0.0 || given.material().form == Form::Tube || !given.is_decided(&inputs::SKIM) {
            return self;
        }
        let skim = given.known(&inputs::SKIM);
        Self { outside_diameter: sheet.work(&machining::SKIMMED_DIAMETER, &[self.outside_diameter, skim]), ..self }
    }
}

/// Lays a link out of the section that is bought; its least engagement follows from the largest axial load, N.
///
/// # Errors
/// A sentence when no link of this section and these rod ends fits between the mounts.
pub(super) fn lay_out(
    given: &Values,
    bought: Section,
    joints: [RodEndSpec; 2],
    strength: &Strength,
    axial: f64,
    sheet: &mut Sheet,
) -> Result<LinkGeometry, Said> {
    let length = given.known(&inputs::LENGTH);
    let wanted = given.known(&inputs::VISIBLE_THREADS);
    let material = given.material();
    let section = bought.finished(given, sheet);
    if section != bought
        && let Some(why) = too_thin(bought, section, &joints)
    {
        return Err(why);
    }
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
    let mut ends = [0, 1].map(|end| lay_out_end(given, end, joints[end], design[end] + shift, strength, axial, sheet));
    if material.form == Form::Tube {
        for (index, end) in ends.iter_mut().enumerate() {
            let kind = given.insert(index);
            let flange = if kind.has_flange { given.known(&inputs::BUNG_FLANGE) } else { 0.0 };
            let (thread, depth) = (end.thread.major, end.tapped_depth);
            let rosettes = given.link.rosette_welds;
            let fitted = kind.fitted(section.outside_diameter, section.wall, thread, depth, flange);
            end.insert = Some(Fitted { rosettes, ..fitted });
        }
        if let Some(why) = no_tube_left(bar, &ends) {
            return Err(why);
        }
    }
    // A tube is sawn shorter by the flanges of its bungs.
    let shoulders: f64 = ends.iter().filter_map(|end| end.insert).map(|insert| insert.shoulder).sum();
    let cut = sheet.work(&lengths::CUT_LENGTH, &[bar - shoulders, given.known(&inputs::FACING)]);
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
        let hole = |end: &EndGeometry| [material.density, end.thread.major, end.drill_depth];
        ends.iter().map(|end| sheet.work(&lengths::HOLE_WEIGHT, &hole(end))).sum()
    } else {
        0.0
    };
    let adjustment = adjustment(&ends, sheet);
    Ok(LinkGeometry {
        material,
        outside_diameter: section.outside_diameter,
        stock_diameter: bought.outside_diameter,
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

/// Why a skim pass leaves too little of a bar for the threads at its ends. How much metal is enough around a thread that
/// does go in, its own check says.
fn too_thin(bought: Section, finished: Section, joints: &[RodEndSpec; 2]) -> Option<Said> {
    let largest = if joints[1].thread.major > joints[0].thread.major { joints[1] } else { joints[0] };
    (!exceeds(finished.outside_diameter, largest.thread.major)).then(|| {
        said![
            "Skimming ",
            (bought.outside_diameter - finished.outside_diameter, FineLength),
            " off a bar of ",
            (bought.outside_diameter, FineLength),
            " leaves ",
            (finished.outside_diameter, FineLength),
            ": nothing around a ",
            (largest.thread.label),
            " thread. Skim less, or buy a thicker bar."
        ]
    })
}

/// Why a flange is too thick: nothing of its bung goes into the tube, or no tube is left between two of them.
fn no_tube_left(bar: f64, ends: &[EndGeometry; 2]) -> Option<Said> {
    let inserts = || ends.iter().filter_map(|end| end.insert);
    if let Some(bung) = inserts().find(|bung| bung.kind.has_flange && !exceeds(bung.length, bung.shoulder)) {
        return Some(said![
            "A flange of ",
            (bung.shoulder, FineLength),
            " is as thick as the bung's thread is deep, ",
            (bung.length, FineLength),
            ": nothing of it goes into the tube. Measure the flange again, or tap deeper."
        ]);
    }
    let shoulders: f64 = inserts().map(|bung| bung.shoulder).sum();
    (shoulders > 0.0 && !exceeds(bar, shoulders + inch(1.0))).then(|| {
        said![
            "The flanges of the bungs leave ",
            ((bar - shoulders).max(0.0), Length),
            " of tube between them. Take plain inserts, shorter rod ends, or measure mount to mount again."
        ]
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
    let drill = drills::tap_drill(thread).map_or(joint.limits.internal_minor_min, |tap| tap.drill.diameter);
    let point = sheet.work(&machining::DRILL_POINT, &[drill, POINT_ANGLE]);
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
        countersink: not_full.across,
        tapped_depth: tapped,
        drill_depth,
        drill_point: drill_depth + point,
        insert: None,
        stop: OutwardStop { inserted: 0.0, visible_threads: 0.0, by: StopBy::Engagement },
        reach: Reach::default(),
    };
    set_stop(&mut geometry, None);
    geometry
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

fn up_to(value: f64, step: f64) -> f64 {
    // A length that already lies on the step stays on it in spite of the last bits.
    (value / step - 1e-9).ceil() * step
}
