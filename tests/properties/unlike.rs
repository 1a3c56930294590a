//! Links whose ends differ, and what must be told of them.

use linkwright::document::{Link, OWN_ROD_END};
use linkwright::engine::tables::{rod_ends, threads};
use linkwright::inputs;
use linkwright::quantity::inch;
use linkwright::report::{Answer, Verdict};
use proptest::prelude::*;

/// Ends that are not alike, one or both of them measured, on a bar that is rounded coarsely.
#[derive(Debug, Clone)]
pub(crate) struct Unlike {
    /// Which thread each end has, and whether its rod end was measured.
    ends: [(usize, bool); 2],
    /// Thread length of a measured shank in diameters, and how much longer it is to the eye, likewise.
    shank: [f64; 2],
    rounding: f64,
    showing: f64,
}

/// From shanks that hardly leave the jam nut to such as are sold, and from bars cut to 1/16 in to such cut to 1/2 in.
pub(crate) fn unlike() -> impl Strategy<Value = Unlike> {
    let end = (0..UNLIKE.len(), any::<bool>());
    (end.clone(), end, 0.5..2.2, 0.9..1.8, 0.06..0.5, 0.0..4.0).prop_map(|(a, b, thread, neck, rounding, showing)| {
        Unlike { ends: [a, b], shank: [thread, neck], rounding, showing }
    })
}

/// Rod ends of unlike thread.
const UNLIKE: [&str; 4] = ["wide-10", "wide-12", "wide-14", "wide-16"];

impl Unlike {
    pub(crate) fn enter(&self, link: &mut Link) {
        (link.rounding, link.visible_threads) = (Some(inch(self.rounding)), Some(self.showing));
        for (end, (which, measured)) in link.ends.iter_mut().zip(self.ends) {
            let row = rod_ends::find(UNLIKE[which]).expect("a rod end");
            if !measured {
                end.rod_end = Some(row.id);
                continue;
            }
            let thread = threads::find(row.thread).expect("a thread");
            let [length, neck] = self.shank.map(|share| share * thread.major);
            (end.rod_end, end.own_thread, end.own_bore) = (Some(OWN_ROD_END), Some(thread.id), Some(row.bore));
            (end.own_thread_length, end.own_eye_to_end) = (
                Some(length.max(inputs::OWN_THREAD_LENGTH.least)),
                Some((length + neck).max(inputs::OWN_EYE_TO_END.least)),
            );
        }
    }
}

/// Both ends, as everything that may be wrong with one of them must show in the answer.
pub(crate) fn every_end_is_judged(answer: &Answer) -> Result<(), String> {
    let fails = |id: &str, end: usize| {
        let finding = answer.findings.iter().find(|it| it.id == id).ok_or(format!("{id} was not asked"))?;
        // Both may be out; then it is one of them that is named.
        let told = finding.verdict == Verdict::Fails || finding.verdict == Verdict::Unanswered;
        if told && answer.verdict >= Verdict::Close { Ok(()) } else { Err(format!("{id} at end {end}: {finding:?}")) }
    };
    for (index, end) in answer.link.ends.iter().enumerate() {
        if end.engagement < end.least * (1.0 - 1e-6) {
            fails("engagement", index)?;
        }
        if end.engagement <= 0.0 {
            fails("thread-stripping", index)?;
        }
        if end.visible_threads < -0.02 {
            fails("visible-threads", index)?;
        }
    }
    let negative = answer.findings.iter().find(|it| it.utilization.is_some_and(|used| used < 0.0));
    negative.map_or(Ok(()), |finding| Err(format!("less than nothing is used: {finding:?}")))
}
