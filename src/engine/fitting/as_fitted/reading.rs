//! The readings of an end: whether they can be true, whether they agree, and how far the shank is in the bar.

use super::{About, COUNT, LETTERS, Readings, Remark, Standing, TAPE};
use crate::document::OWN_ROD_END;
use crate::engine::fitting::{quarters, threads};
use crate::engine::formula::Sheet;
use crate::engine::formulas::{lengths, turning};
use crate::engine::sentence::{Said, said};
use crate::engine::tables::rod_ends;
use crate::quantity::exceeds;
use crate::report::{EndGeometry, LinkGeometry};

/// The two ways to read how far a shank is in the bar.
struct Seen {
    by_face: Option<f64>,
    by_count: Option<f64>,
}

/// What the readings of an end say of the shank in the bar, and what is wrong with them.
pub(super) struct Read {
    pub(super) inserted: Option<f64>,
    /// What that may be off by.
    pub(super) error: f64,
    pub(super) remarks: Vec<Remark>,
}

pub(super) fn remark(standing: Standing, about: About, says: Said) -> Remark {
    Remark { standing, about, says }
}

/// How far an end is screwed in by readings that can be true and agree; none without.
pub(in crate::engine::fitting) fn set_as_read(link: &LinkGeometry, index: usize, readings: &Readings) -> Option<f64> {
    let read = read(&link.ends[index], index, readings, &mut Sheet::silent());
    let contradicted = read.remarks.iter().any(|remark| remark.about == About::Reading);
    read.inserted.filter(|_| !contradicted)
}

/// Reads both ways, and asks whether each can be true and both agree.
pub(super) fn read(end: &EndGeometry, index: usize, readings: &Readings, sheet: &mut Sheet) -> Read {
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
                    (threads(apart / pitch)),
                    ", where a tape may be off by 1/16 in and a count by half a thread. Measure again, and count from the outer face of the nut."
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
            (threads(count)),
            " past the nut, of ",
            (quarters(room)),
            " that this shank has beside it, would leave none in the bar. Count again, or measure the rod end."
        ]);
    }
    exceeds(inserted, end.tapped_depth + COUNT * end.thread.pitch).then(|| {
        said![
            "The count at end ",
            (letter),
            " cannot be right: ",
            (threads(count)),
            " showing would put ",
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
