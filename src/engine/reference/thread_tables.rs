//! Every tabled thread limit and stress area beside what the standard's formulas give for it.

use crate::engine::tables::thread_limits::{DISAGREEMENTS, LIMITS, STRESS_AREAS};
use crate::engine::tables::threads::{self, Limit, Thread};
use crate::source::Cite;

/// One tabled value of a thread, SI.
#[derive(Debug)]
pub struct Tabled {
    /// The thread.
    pub thread: &'static Thread,
    /// What is tabled, in words.
    pub what: &'static str,
    /// The value as tabled.
    pub tabled: f64,
    /// The value by formula.
    pub by_formula: f64,
    /// How far apart they may be: what is lost in printing.
    pub allowed: f64,
    /// What is known about a difference that is no loss in printing.
    pub why: Option<&'static str>,
    /// Where it is tabled.
    pub cite: Cite,
}

impl Tabled {
    /// Whether formula and table agree to the digits printed.
    pub fn agrees(&self) -> bool {
        (self.by_formula - self.tabled).abs() <= self.allowed
    }

    /// Whether they agree, or differ as is known and explained.
    pub fn accounted_for(&self) -> bool {
        self.agrees() != self.why.is_some()
    }
}

/// Limits are rounded as the standard prints them, so only the last bits may differ.
const LAST_BITS: f64 = 1e-12;

/// Every tabled value, thread by thread, limits before stress areas.
pub fn tabled() -> Vec<Tabled> {
    let mut rows = Vec::new();
    for row in LIMITS {
        let Some(thread) = threads::find(row.thread) else { continue };
        let computed = thread.limits_by_formula();
        rows.extend(Limit::ALL.map(|limit| Tabled {
            thread,
            what: words(limit),
            tabled: row.limits.get(limit),
            by_formula: computed.get(limit),
            allowed: LAST_BITS,
            why: DISAGREEMENTS.iter().find(|it| it.thread == row.thread && it.limit == limit).map(|it| it.why),
            cite: row.cite,
        }));
    }
    rows.extend(STRESS_AREAS.iter().filter_map(|row| {
        let thread = threads::find(row.thread)?;
        Some(Tabled {
            thread,
            what: "stress area",
            tabled: row.area,
            by_formula: thread.tensile_stress_area(),
            // Some are cut short where they should be rounded.
            allowed: row.last_digit,
            why: None,
            cite: row.cite,
        })
    }));
    rows
}

const fn words(limit: Limit) -> &'static str {
    match limit {
        Limit::ExternalMajorMax => "screw, largest outside diameter",
        Limit::ExternalMajorMin => "screw, least outside diameter",
        Limit::ExternalPitchMax => "screw, largest pitch diameter",
        Limit::ExternalPitchMin => "screw, least pitch diameter",
        Limit::InternalMinorMin => "hole, least minor diameter",
        Limit::InternalMinorMax => "hole, largest minor diameter",
        Limit::InternalPitchMin => "hole, least pitch diameter",
        Limit::InternalPitchMax => "hole, largest pitch diameter",
    }
}
