//! One end as it is fitted, judged.

use super::reading::{Read, read, remark};
use super::{About, EndAsFitted, LETTERS, Readings, Standing, settle};
use crate::document::OWN_ROD_END;
use crate::engine::fitting::hands::nut_tightens;
use crate::engine::fitting::{quarters_below, threads as say_threads, threads_show};
use crate::engine::formula::Sheet;
use crate::engine::formulas::{lengths, turning};
use crate::engine::sentence::said;
use crate::quantity::exceeds;
use crate::report::{EndGeometry, LinkGeometry, StopBy};

/// One end, judged.
pub(super) fn end(link: &LinkGeometry, index: usize, readings: &Readings, sheet: &mut Sheet) -> EndAsFitted {
    let end = &link.ends[index];
    let letter = LETTERS[index];
    let Read { inserted, error, mut remarks } = read(end, index, readings, sheet);
    if inserted.is_none() && remarks.is_empty() {
        let says = said![
            "No reading at end ",
            (letter),
            ". Put a ruler from the eye's center to the bar's face, or count the threads that show past the jam nut."
        ];
        remarks.push(remark(Standing::NotJudged, About::Missing, says));
    }
    match readings.nut_tight[index] {
        Some(true) => {}
        Some(false) => remarks.push(remark(
            Standing::Stop,
            About::Nut,
            said![
                "The jam nut at ",
                (letter),
                " is loose: tighten it before you drive, ",
                (nut_tightens(end.hand).words()),
                " seen from its eye, with the bar held. A loose nut lets the thread hammer itself out."
            ],
        )),
        None => remarks.push(remark(
            Standing::NotJudged,
            About::Missing,
            said!["Jam nut at ", (letter), " not checked: put a wrench on it."],
        )),
    }
    if end.rod_end_id != OWN_ROD_END {
        remarks.push(remark(
            Standing::NotJudged,
            About::RodEnd,
            said![
                "The rod end at ",
                (letter),
                " is not measured: its published series stands in. Measure eye center to shank end, and thread length, and enter it as your own rod end."
            ],
        ));
    }
    let mut judged = EndAsFitted {
        standing: Standing::Good,
        remarks,
        inserted,
        engagement: None,
        in_threads: None,
        visible_threads: None,
        eye_to_face: None,
        turns: None,
    };
    if let Some(inserted) = inserted {
        judge(&mut judged, end, letter, inserted, error, sheet);
    }
    judged.standing = settle(&mut judged.remarks);
    judged
}

/// What the shank in the bar says.
fn judge(
    judged: &mut EndAsFitted,
    end: &EndGeometry,
    letter: &'static str,
    inserted: f64,
    error: f64,
    sheet: &mut Sheet,
) {
    let (pitch, room) = (end.thread.pitch, end.thread_length - end.jam_nut);
    let engagement = sheet.work(&turning::FULL_AS_FITTED, &[inserted, end.not_full]);
    let in_threads = sheet.work(&turning::IN_THREADS, &[engagement, pitch]);
    let diameters = sheet.work(&turning::IN_DIAMETERS, &[engagement, end.thread.major]);
    let visible = sheet.work(&turning::THREADS_SHOWING, &[end.thread_length, end.jam_nut, inserted, pitch]);
    let deepest = end.most + end.not_full;
    let out = sheet.work(&lengths::LENGTH_TURNS, &[(inserted - end.stop.inserted).max(0.0), pitch]);
    let inward = sheet.work(&lengths::LENGTH_TURNS, &[(deepest - inserted).max(0.0), pitch]);
    judged.engagement = Some(engagement);
    judged.in_threads = Some([in_threads, diameters]);
    judged.visible_threads = Some(visible);
    judged.eye_to_face = Some(end.eye_to_end - inserted);
    judged.turns = Some([out, inward]);
    let by = if end.rod_end_id == OWN_ROD_END { "" } else { ", by the published series" };
    let mut add = |standing, about, says| judged.remarks.push(remark(standing, about, says));
    if exceeds(end.least, engagement) {
        add(
            Standing::Stop,
            About::Engagement,
            said![
                "Only ",
                (engagement.max(0.0), FineLength),
                " of full thread is in the bar at ",
                (letter),
                (by),
                ": ",
                (say_threads(quarters_below(in_threads))),
                ", ",
                (diameters.max(0.0), Ratio),
                " diameters. It needs ",
                (end.least, FineLength),
                "."
            ],
        );
    } else if exceeds(end.least, engagement - error) {
        add(
            Standing::Watch,
            About::Engagement,
            said![
                "Full thread in the bar at ",
                (letter),
                (by),
                ": ",
                (engagement, FineLength),
                ", and it needs ",
                (end.least, FineLength),
                ". A tape or a count cannot tell that apart: measure with a caliper, or wind it in."
            ],
        );
    } else {
        // By a stand-in for the rod end nothing is good.
        let (standing, about) = if end.rod_end_id == OWN_ROD_END {
            (Standing::Good, About::Engagement)
        } else {
            (Standing::NotJudged, About::RodEnd)
        };
        add(
            standing,
            about,
            said![
                "Full thread in the bar at ",
                (letter),
                (by),
                ": ",
                (engagement, FineLength),
                ", ",
                (say_threads(quarters_below(in_threads))),
                ", ",
                (diameters, Ratio),
                " diameters. It needs ",
                (end.least, FineLength),
                "."
            ],
        );
    }
    if exceeds(end.stop.inserted, inserted) {
        match end.stop.by {
            StopBy::Engagement => {}
            StopBy::VisibleThreads => add(
                Standing::Watch,
                About::Stop,
                said![
                    "About ",
                    (threads_show(visible)),
                    " at ",
                    (letter),
                    ". No more than 3 is common practice, no source: wind it in, or fit a longer bar."
                ],
            ),
            StopBy::ShankBending => add(
                Standing::Stop,
                About::Stop,
                said![
                    "At ",
                    (letter),
                    " the shank reaches its limit in bending with more than ",
                    (say_threads(quarters_below(end.stop.visible_threads))),
                    " showing; about ",
                    (threads_show(visible)),
                    ". Wind it in, or fit a longer bar."
                ],
            ),
        }
    }
    if exceeds(inserted + pitch, end.tapped_depth) {
        add(
            Standing::Stop,
            About::Bottom,
            said![
                "The shank at ",
                (letter),
                " is ",
                (inserted, FineLength),
                " in a hole tapped ",
                (end.tapped_depth, FineLength),
                " deep, less than a thread from its bottom: the jam nut can feel tight and hold nothing. Wind it out, or fit a shorter bar."
            ],
        );
    } else if exceeds(inserted + pitch + error, end.tapped_depth) {
        add(
            Standing::Watch,
            About::Bottom,
            said![
                "The shank at ",
                (letter),
                " is within what a tape or a count can be off by of the bottom of its hole. Wind it out by a thread, or measure with a caliper."
            ],
        );
    }
    if exceeds(inserted, room) {
        add(
            Standing::Watch,
            About::Bottom,
            said![
                "No thread is left outside the jam nut at ",
                (letter),
                ": the nut can be tight on the end of its thread and not on the bar. Wind the end out until a thread shows."
            ],
        );
    }
}
