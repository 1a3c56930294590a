//! What the log itself writes beside the readings, so that it can be asked later.

use super::{ReadingKind, ReadingRow};

/// The row of what a look after a hit came to.
pub const HIT_VERDICT: &str = "hit-verdict";
/// It must not be driven.
pub const STOP: &str = "stop";
/// It may be driven home.
pub const LIMP: &str = "limp-home";
/// Not everything was looked at.
pub const NOT_JUDGED: &str = "not-judged";
/// It may be driven on.
pub const DRIVE_ON: &str = "drive-on";

/// The rows.
pub(super) static ROWS: [ReadingRow; 1] = [ReadingRow {
    id: HIT_VERDICT,
    label: "After a hit",
    help: "What the look came to. The log writes it.",
    holds: ReadingKind::Pick(&[
        (STOP, "Stop"),
        (LIMP, "Limp home"),
        (NOT_JUDGED, "Not judged"),
        (DRIVE_ON, "Drive on"),
    ]),
}];
