//! How much of a shank is full thread, and how much of it different rules ask for.

use super::formula::Sheet;
use super::formulas::{lengths, threads as thread_formulas};
use super::given::{RodEndSpec, Values};
use super::tables::SHEAR_SHARE;
use super::tables::materials::{Form, Strength};
use crate::inputs;
use crate::quantity;
use crate::report::{EngagementMark, EngagementRule};
use crate::source::{Obtained, PRACTICE, cite};

/// Least engagement in any metal, in diameters.
pub(super) const LEAST_DIAMETERS: f64 = 1.0;

/// What of the length inside the bar is no full thread.
pub(super) struct NotFull {
    pub(super) across: f64,
    pub(super) countersink: f64,
    pub(super) length: f64,
}

pub(super) fn not_full(given: &Values, joint: RodEndSpec, sheet: &mut Sheet) -> NotFull {
    let thread = joint.thread;
    let minor = sheet.work(&thread_formulas::BASIC_MINOR_DIAMETER, &[thread.major, thread.pitch]);
    let diameter = thread.major + given.known(&inputs::COUNTERSINK);
    let countersink = sheet.work(&lengths::COUNTERSINK_DEPTH, &[diameter, minor]);
    NotFull { across: diameter, countersink, length: given.known(&inputs::LEAD_THREADS) * thread.pitch + countersink }
}

/// The lengths of engagement that different rules ask for at one end.
pub(super) struct EngagementLines {
    /// Breaking strength of the shank.
    pub(super) shank_ultimate: f64,
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
    pub(super) fn new(
        given: &Values,
        end: usize,
        joint: RodEndSpec,
        strength: &Strength,
        axial: f64,
        sheet: &mut Sheet,
    ) -> Self {
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
    pub(super) fn least(&self) -> f64 {
        self.load.max(self.floor)
    }

    pub(super) fn marks(&self, engagement: f64, asked: f64) -> Vec<EngagementMark> {
        let mark = |rule, name, length: f64, source| EngagementMark {
            rule,
            name,
            length,
            reached: !quantity::exceeds(length, engagement),
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
