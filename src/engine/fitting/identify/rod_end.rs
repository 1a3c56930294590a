//! Which published rod end it is, from three readings.

use super::{CALIPER_ERROR, Standing};
use crate::engine::sentence::{Said, said};
use crate::engine::tables::rod_ends::{self, RodEnd};
use crate::quantity::{exceeds, inch};
use crate::source::{Cite, OURS, Obtained, cite};

/// How far eye center to shank end may be read off, with the tolerance of the print.
const EYE_TO_END: f64 = inch(1.0 / 32.0);
/// How far a thread length may be read off, with the tolerance of the print.
const THREAD_LENGTH: f64 = inch(1.0 / 16.0);
/// Nobody publishes how well a reading is taken.
pub const READING_SOURCE: Cite = cite(
    &OURS,
    "eye to shank end reads to 1/32 in, thread length to 1/16 in, ball and bore to 0.1 mm",
    Obtained::Assumption,
);

/// What was read on a rod end.
#[derive(Debug, Clone, Copy, PartialEq, Default)]
pub struct RodEndReadings {
    /// Eye center to shank end.
    pub eye_to_end: Option<f64>,
    /// Thread on the shank.
    pub thread_length: Option<f64>,
    /// Face to face of the ball.
    pub ball_width: Option<f64>,
    /// Hole in the ball.
    pub bore: Option<f64>,
}

/// Which rod end it is.
#[derive(Debug, Clone, PartialEq)]
pub struct RodEndFound {
    /// Good where all readings leave one published row.
    pub standing: Standing,
    /// The rows that it can be, the nearest first.
    pub rows: Vec<&'static RodEnd>,
    /// The answer.
    pub says: Said,
    /// What stands in doubt with that row, or what to do next; empty where nothing does.
    pub next: &'static str,
}

/// One reading beside a row: the reading, the print, and how far they may lie apart.
type Beside = (Option<f64>, f64, f64);

fn beside(readings: RodEndReadings, row: &RodEnd) -> [Beside; 4] {
    [
        (readings.eye_to_end, row.eye_to_end, EYE_TO_END),
        (readings.thread_length, row.thread_length, THREAD_LENGTH),
        (readings.ball_width, row.ball_width, CALIPER_ERROR),
        (readings.bore, row.bore, CALIPER_ERROR),
    ]
}

/// Tells a rod end from eye center to shank end, thread length, and ball width or bore.
pub fn rod_end(readings: RodEndReadings) -> RodEndFound {
    let usable = |value: &f64| value.is_finite() && *value > 0.0;
    let readings = RodEndReadings {
        eye_to_end: readings.eye_to_end.filter(usable),
        thread_length: readings.thread_length.filter(usable),
        ball_width: readings.ball_width.filter(usable),
        bore: readings.bore.filter(usable),
    };
    let open = |says: Said, next| RodEndFound { standing: Standing::NotJudged, rows: Vec::new(), says, next };
    let missing = match readings {
        RodEndReadings { eye_to_end: None, .. } => Some("eye center to shank end"),
        RodEndReadings { thread_length: None, .. } => Some("the thread length of the shank"),
        RodEndReadings { ball_width: None, bore: None, .. } => Some("the width of the ball, or its bore,"),
        _ => None,
    };
    if let Some(missing) = missing {
        return open(said!["Not judged: ", (missing), " is missing."], "");
    }
    let fits = |row: &&RodEnd| {
        beside(readings, row)
            .iter()
            .all(|(read, print, most)| read.is_none_or(|read| !exceeds((read - print).abs(), *most)))
    };
    let off = |row: &RodEnd| -> f64 {
        let share = |(read, print, most): &Beside| read.map_or(0.0, |read| (read - print).abs() / most);
        beside(readings, row).iter().map(share).sum()
    };
    let mut rows: Vec<&'static RodEnd> = rod_ends::ALL.iter().filter(fits).collect();
    rows.sort_by(|a, b| off(a).total_cmp(&off(b)));
    match rows.as_slice() {
        [] => {
            let nearest = rod_ends::ALL.iter().min_by(|a, b| off(a).total_cmp(&off(b)));
            let mut says = said!["No published rod end of ours has these sizes: it is your own."];
            if let Some(row) = nearest {
                says.extend(said![
                    " The nearest, ",
                    (row.label),
                    ", has ",
                    (row.eye_to_end, FineLength),
                    " from eye center to shank end and ",
                    (row.thread_length, FineLength),
                    " of thread."
                ]);
            }
            open(says, "Pick Your own in the Size view and enter it as measured.")
        }
        [one] => RodEndFound {
            standing: Standing::Good,
            says: said![
                "Its sizes are those of ",
                (one.label),
                ". Sizes tell neither its steel nor its rating: go by its maker."
            ],
            next: one.note,
            rows,
        },
        [first, ..] => {
            let names: Vec<&str> = rows.iter().map(|row| row.label).collect();
            let says =
                said!["The readings fit ", (names.join(" and ")), ": not judged until something tells them apart."];
            let bore = rows.iter().any(|row| (row.bore - first.bore).abs() > 2.0 * CALIPER_ERROR);
            let next = if bore && readings.bore.is_none() {
                "Measure the bore of the ball."
            } else if readings.ball_width.is_none() {
                "Measure the width of the ball."
            } else {
                "Measure the thread over its crests and count its pitch."
            };
            RodEndFound { standing: Standing::NotJudged, rows, says, next }
        }
    }
}
