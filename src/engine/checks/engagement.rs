//! How much thread is in the bar, what it bears, and what shows of it.

use super::ends::{at_ends, letter};
use super::{Case, Check, Outcome, of_capacity, of_length};
use crate::engine::engagement::{LEAST_DIAMETERS, bar_shear, load_engagement};
use crate::engine::formula::{Line, Sheet};
use crate::engine::formulas::{lengths, threads};
use crate::engine::geometry::MOST_VISIBLE_THREADS;
use crate::engine::sentence::{Said, said};
use crate::engine::tables::SHEAR_SHARE;
use crate::engine::tables::materials::Form;
use crate::inputs;
use crate::quantity;
use crate::quantity::Kind;
use crate::report::{EndGeometry, EngagementRule, Topic};
use crate::source::{Obtained, PRACTICE, cite};

pub(super) static ROWS: &[Check] = &[
    Check {
        id: "engagement",
        topic: Topic::Other,
        of_lengths: true,
        title: "Thread engagement",
        part: "thread engagement",
        rule: true,
        optional: false,
        source: threads::LOAD_ENGAGEMENT.formula.source,
        run: engagement,
    },
    Check {
        id: "thread-stripping",
        topic: Topic::Other,
        of_lengths: true,
        title: "Thread stripping",
        part: "thread in the bar",
        rule: false,
        optional: false,
        source: threads::INTERNAL_SHEAR_AREA.formula.source,
        run: thread_stripping,
    },
    Check {
        id: "visible-threads",
        topic: Topic::Other,
        of_lengths: true,
        title: "Visible threads past the jam nut",
        part: "visible thread",
        rule: true,
        optional: false,
        source: cite(&PRACTICE, "at most 3 threads past the jam nut", Obtained::Practice),
        run: visible_threads,
    },
];

/// What a fault of fit counts as.
const BROKEN: f64 = 2.0;

/// A fault of fit: far past any limit, and no number says how far.
pub(super) fn broken(sheet: &mut Sheet) -> f64 {
    sheet.conclude(BROKEN, || {
        said!["No number says how far past its limit this is: it counts as ", (BROKEN, Percent), "."]
    });
    BROKEN
}

/// Red below one diameter, what the load asks for, or what the user requires; nothing in between. What the shank could
/// bear and common practice are told, and color nothing.
fn engagement(case: &Case, sheet: &mut Sheet) -> Outcome {
    at_ends(case, sheet, |case, end, sheet| {
        let made = &case.made.ends[end];
        sheet.record(|| Line::Solved {
            what: "Full thread engaged as set",
            value: made.engagement,
            kind: Kind::FineLength,
            how: "the shank inside the bar, less its lead chamfer and the countersink",
        });
        if made.engagement <= 0.0 {
            let says = sheet.remark(|| said![
                "End ", (letter(end)), ": no full thread of the shank is in the bar. Take a rod end with a longer shank, or leave fewer threads showing."
            ]);
            return Outcome::new(broken(sheet), None, says);
        }
        let shear = bar_shear(case.given, case.strength);
        let load = load_engagement(case.given, case.joints[end], made.shank_ultimate, shear, case.axial(), sheet);
        let floor = sheet.work(&lengths::LEAST_BY_DIAMETERS, &[LEAST_DIAMETERS, made.thread.major]);
        let asked = case.given.number_at(&inputs::LEAST_ENGAGEMENT, end).unwrap_or(0.0);
        let least = load.max(floor).max(asked);
        let why = if load >= least {
            "for the largest load with its factor"
        } else if floor >= least {
            "one thread diameter"
        } else {
            "your own entry"
        };
        let used = of_length(least, made.engagement, sheet);
        let mut says = sheet.remark(|| {
            said![
                "End ",
                (letter(end)),
                ": ",
                (made.engagement, FineLength),
                " of full thread is in the bar; required is ",
                (least, FineLength),
                ", ",
                (why),
                "."
            ]
        });
        says.extend(sheet.remark(|| advice(made, least)));
        Outcome::new(used, None, says)
    })
}

/// What is short, or would be better: a longer shank first.
fn advice(end: &EndGeometry, least: f64) -> Said {
    if quantity::exceeds(least, end.engagement) {
        return said![
            " Take a rod end with a shank at least ",
            (least - end.engagement, FineLength),
            " longer; or leave fewer threads showing."
        ];
    }
    let line = |rule| end.marks.iter().find(|mark| mark.rule == rule).map_or(0.0, |mark| mark.length);
    let (shank, practice) = (line(EngagementRule::Shank), line(EngagementRule::Practice));
    let mut says = Said::default();
    if quantity::exceeds(shank, end.engagement) {
        says.extend(said![
            " That is good for this load with its factor; in an overload the thread would go before the shank."
        ]);
    }
    if quantity::exceeds(practice, end.engagement) {
        says.extend(said![
            " Common practice is ",
            (practice, FineLength),
            ": a shank with ",
            (practice - end.engagement, FineLength),
            " more thread would give it, so ask for the thread length."
        ]);
    }
    says
}

fn thread_stripping(case: &Case, sheet: &mut Sheet) -> Outcome {
    at_ends(case, sheet, |case, end, sheet| {
        let made = &case.made.ends[end];
        let bar_shear = bar_shear(case.given, case.strength);
        if case.made.material.form == Form::Bar {
            let label = case.made.material.label;
            sheet.look_up("Shear strength of the bar", bar_shear, Kind::Stress, label, case.strength.cite);
        }
        let limits = case.joints[end].limits;
        let internal = sheet.work(
            &threads::INTERNAL_SHEAR_AREA,
            &[made.thread.pitch, limits.external_major_min, limits.internal_pitch_max],
        );
        let external = sheet.work(
            &threads::EXTERNAL_SHEAR_AREA,
            &[made.thread.pitch, limits.internal_minor_max, limits.external_pitch_min],
        );
        let engaged = made.engagement.max(0.0);
        let bar = sheet.work(&threads::STRIP_LOAD, &[internal, engaged, bar_shear]);
        let shank = sheet.work(&threads::STRIP_LOAD, &[external, engaged, SHEAR_SHARE * made.shank_ultimate]);
        sheet.choose(|| {
            if bar <= shank {
                said!["The bar's thread strips first."]
            } else {
                said!["The shank's thread strips first."]
            }
        });
        let capacity = bar.min(shank);
        if capacity <= 0.0 {
            let says = sheet.remark(|| said!["End ", (letter(end)), " has no thread in the bar, so it bears nothing."]);
            return Outcome::new(broken(sheet), Some(case.station(end, 0.0)), says);
        }
        let used = of_capacity(case.axial(), case.given.known(&inputs::THREAD_FACTOR), capacity, sheet);
        Outcome::new(
            used,
            Some(case.station(end, 0.0)),
            sheet.remark(|| {
                said![
                    "As set, end ",
                    (letter(end)),
                    " bears ",
                    (capacity, Force),
                    " before its thread strips; the largest tension here is ",
                    (case.axial(), Force),
                    "."
                ]
            }),
        )
    })
}

fn visible_threads(case: &Case, sheet: &mut Sheet) -> Outcome {
    at_ends(case, sheet, |case, end, sheet| {
        let made = &case.made.ends[end];
        if made.visible_threads < -0.01 {
            let says = sheet.remark(|| {
                said![
                    "The jam nut at end ",
                    (letter(end)),
                    " would run off the thread: leave at least no visible thread past it."
                ]
            });
            return Outcome::new(broken(sheet), None, says);
        }
        let most = MOST_VISIBLE_THREADS * made.thread.pitch;
        let used = of_length(made.visible.max(0.0), most, sheet);
        let says = sheet.remark(|| {
            said![
                "As set, ",
                (made.visible_threads.max(0.0), Ratio),
                " threads show past the jam nut at end ",
                (letter(end)),
                "; more than 3 bends the shank sooner."
            ]
        });
        Outcome::new(used, None, says)
    })
}
