//! One end as it is fitted: its readings, whether they can be true, and what they say.

use super::{About, COUNT, EndAsFitted, Readings, Remark, Standing, TAPE, settle};
use crate::document::OWN_ROD_END;
use crate::engine::fitting::hands::nut_tightens;
use crate::engine::formula::Sheet;
use crate::engine::formulas::{lengths, turning};
use crate::engine::sentence::{Said, said};
use crate::engine::tables::rod_ends;
use crate::quantity::exceeds;
use crate::report::{EndGeometry, LinkGeometry, StopBy};

const LETTERS: [&str; 2] = ["A", "B"];

/// The two ways to read how far a shank is in the bar.
struct Seen {
    by_face: Option<f64>,
    by_count: Option<f64>,
}

/// What the readings of an end say of the shank in the bar, and what is wrong with them.
struct Read {
    inserted: Option<f64>,
    /// What that may be off by.
    error: f64,
    remarks: Vec<Remark>,
}

/// Threads as fine as they are counted: `1-1/2`.
pub(in crate::engine::fitting) fn quarter(threads: f64) -> String {
    let quarters = (threads.max(0.0) * 4.0).round();
    let (whole, over) = ((quarters / 4.0).floor(), quarters % 4.0);
    let over = ["", "1/4", "1/2", "3/4"].get(over as usize).copied().unwrap_or_default();
    match (whole, over) {
        (whole, "") => format!("{whole}"),
        (0.0, over) => over.to_string(),
        (whole, over) => format!("{whole}-{over}"),
    }
}

fn remark(standing: Standing, about: About, says: Said) -> Remark {
    Remark { standing, about, says }
}

/// How far an end is screwed in by readings that can be true and agree; none without.
pub(in crate::engine::fitting) fn set_as_read(link: &LinkGeometry, index: usize, readings: &Readings) -> Option<f64> {
    let read = read(&link.ends[index], index, readings, &mut Sheet::silent());
    let contradicted = read.remarks.iter().any(|remark| remark.about == About::Reading);
    read.inserted.filter(|_| !contradicted)
}

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

/// Reads both ways, and asks whether each can be true and both agree.
fn read(end: &EndGeometry, index: usize, readings: &Readings, sheet: &mut Sheet) -> Read {
    let (face, count) = (readings.face[index], readings.visible[index]);
    let (letter, pitch) = (LETTERS[index], end.thread.pitch);
    let seen = Seen {
        by_face: face.map(|face| sheet.work(&lengths::ENGAGEMENT_FROM_OUTSIDE, &[end.eye_to_end, face])),
        by_count: count
            .map(|count| sheet.work(&turning::INSERTED_BY_COUNT, &[end.thread_length, end.jam_nut, count, pitch])),
    };
    let mut remarks = Vec::new();
    let mut doubt = |says: Said| remarks.push(remark(Standing::NotJudged, About::Reading, says));
    let ruler =
        seen.by_face.zip(face).and_then(|(inserted, face)| match ruler_cannot_be(end, letter, face, inserted) {
            Some(mut why) => {
                why.extend(another_series(end, Some(face), count));
                doubt(why);
                None
            }
            None => Some(inserted),
        });
    let counted =
        seen.by_count.zip(count).and_then(|(inserted, count)| match count_cannot_be(end, letter, count, inserted) {
            Some(why) => {
                doubt(why);
                None
            }
            None => Some(inserted),
        });
    let inserted = match (ruler, counted) {
        (Some(ruler), Some(counted)) => {
            let apart = (ruler - counted).abs();
            if exceeds(apart, TAPE + COUNT * pitch) {
                let mut says = said![
                    "Ruler and count disagree at end ",
                    (letter),
                    " by ",
                    (apart, FineLength),
                    ": ",
                    (quarter(apart / pitch)),
                    " threads, where a tape may be off by 1/16 in and a count by half a thread. Measure again, and count from the outer face of the nut."
                ];
                says.extend(another_series(end, face, count));
                doubt(says);
            }
            // Of two readings the one with less thread in the bar is judged.
            Some(ruler.min(counted))
        }
        (one, other) => one.or(other),
    };
    // A rule may be off by the tape, a count by half a thread; where both agree the finer of them holds.
    let by_count = COUNT * pitch;
    let error = match (ruler, counted) {
        (Some(_), Some(_)) => TAPE.min(by_count),
        (Some(_), None) => TAPE,
        _ => by_count,
    };
    Read { inserted, error, remarks }
}

fn ruler_cannot_be(end: &EndGeometry, letter: &'static str, face: f64, inserted: f64) -> Option<Said> {
    let room = end.thread_length - end.jam_nut;
    if !exceeds(inserted, 0.0) {
        return Some(said![
            "The ruler at end ",
            (letter),
            " cannot be right: ",
            (face, Length),
            " from eye center to bar face, on a shank that ends ",
            (end.eye_to_end, FineLength),
            " from its eye, would not be in the bar at all. Measure to the face of the bar, or measure the rod end."
        ]);
    }
    if exceeds(inserted, room + TAPE) {
        return Some(said![
            "The ruler at end ",
            (letter),
            " cannot be right: ",
            (face, Length),
            " would put ",
            (inserted, FineLength),
            " of shank in the bar, and behind the jam nut this shank has only ",
            (room, FineLength),
            " of thread. Measure to the face of the bar, not to the nut, or measure the rod end."
        ]);
    }
    exceeds(inserted, end.tapped_depth + TAPE).then(|| {
        said![
            "The ruler at end ",
            (letter),
            " cannot be right: ",
            (face, Length),
            " would put ",
            (inserted, FineLength),
            " of shank into a hole that this build taps ",
            (end.tapped_depth, FineLength),
            " deep. Measure again, or enter the depth this bar really has."
        ]
    })
}

fn count_cannot_be(end: &EndGeometry, letter: &'static str, count: f64, inserted: f64) -> Option<Said> {
    let room = (end.thread_length - end.jam_nut) / end.thread.pitch;
    if !exceeds(inserted, 0.0) || count < 0.0 {
        return Some(said![
            "The count at end ",
            (letter),
            " cannot be right: ",
            (count, Ratio),
            " threads past the nut, of ",
            (quarter(room)),
            " that this shank has beside it, would leave none in the bar. Count again, or measure the rod end."
        ]);
    }
    exceeds(inserted, end.tapped_depth + COUNT * end.thread.pitch).then(|| {
        said![
            "The count at end ",
            (letter),
            " cannot be right: ",
            (count, Ratio),
            " threads showing would put ",
            (inserted, FineLength),
            " of shank into a hole that this build taps ",
            (end.tapped_depth, FineLength),
            " deep. Count again, or enter the depth this bar really has."
        ]
    })
}

/// The published rod end with this thread that readings would fit, where they do not fit the one entered.
fn another_series(end: &EndGeometry, face: Option<f64>, count: Option<f64>) -> Said {
    let Some(face) = face else { return Said::default() };
    if end.rod_end_id == OWN_ROD_END {
        return Said::default();
    }
    let fits = |row: &&rod_ends::RodEnd| {
        let inserted = row.eye_to_end - face;
        let room = row.thread_length - end.jam_nut;
        let shown = (room - inserted) / end.thread.pitch;
        row.id != end.rod_end_id
            && row.thread == end.thread.id
            && exceeds(inserted, 0.0)
            && exceeds(room + TAPE, inserted)
            && count.is_none_or(|count| (shown - count).abs() * end.thread.pitch <= TAPE + COUNT * end.thread.pitch)
    };
    match rod_ends::ALL.iter().find(fits) {
        Some(row) => {
            said![" It would fit another rod end with this thread, ", (row.label), ": measure which one this is."]
        }
        None => Said::default(),
    }
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
    let threads = sheet.work(&turning::IN_THREADS, &[engagement, pitch]);
    let diameters = sheet.work(&turning::IN_DIAMETERS, &[engagement, end.thread.major]);
    let visible = sheet.work(&turning::THREADS_SHOWING, &[end.thread_length, end.jam_nut, inserted, pitch]);
    let deepest = end.most + end.not_full;
    let out = sheet.work(&lengths::LENGTH_TURNS, &[(inserted - end.stop.inserted).max(0.0), pitch]);
    let inward = sheet.work(&lengths::LENGTH_TURNS, &[(deepest - inserted).max(0.0), pitch]);
    judged.engagement = Some(engagement);
    judged.in_threads = Some([threads, diameters]);
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
                (quarter(threads.max(0.0))),
                " threads, ",
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
        add(
            Standing::Good,
            About::Engagement,
            said![
                "Full thread in the bar at ",
                (letter),
                (by),
                ": ",
                (engagement, FineLength),
                ", ",
                (quarter(threads)),
                " threads, ",
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
                    (quarter(visible)),
                    " threads show at ",
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
                    (quarter(end.stop.visible_threads)),
                    " threads showing; about ",
                    (quarter(visible)),
                    " show. Wind it in, or fit a longer bar."
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
