//! Rod ends with a male shank: the dimensions of three published series.
//!
//! A preset stands for the published dimensions only. Rod ends in the trade often have longer shanks,
//! so the user's own readings go before any row.

use crate::quantity::{deg, inch, mm};
use crate::source::{Cite, ISO_12240_4, Obtained, SAE_AS81935_1, SAE_AS81935_4, cite};

/// A published series.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Family {
    /// SAE AS81935/1A.
    Wide,
    /// SAE AS81935/4B.
    Narrow,
    /// ISO 12240-4 series K.
    SeriesK,
}

impl Family {
    /// Every series, in the order of the table.
    pub const ALL: [Self; 3] = [Self::Wide, Self::Narrow, Self::SeriesK];

    /// Never reused once released.
    pub const fn id(self) -> &'static str {
        match self {
            Self::Wide => "wide",
            Self::Narrow => "narrow",
            Self::SeriesK => "series-k",
        }
    }

    /// As it is shown.
    pub const fn label(self) -> &'static str {
        match self {
            Self::Wide => "Inch, wide (SAE AS81935/1A)",
            Self::Narrow => "Inch, narrow (SAE AS81935/4B)",
            Self::SeriesK => "Metric, series K (ISO 12240-4)",
        }
    }
}

/// One size of rod end. All lengths in m.
#[derive(Debug, PartialEq)]
pub struct RodEnd {
    /// Never reused once released.
    pub id: &'static str,
    /// Shank and bore named apart, then the series: "7/8 × 3/4" alone is read both ways.
    pub label: &'static str,
    /// The series.
    pub family: Family,
    /// Hole in the ball, which is the bolt's size.
    pub bore: f64,
    /// Id of the shank's thread.
    pub thread: &'static str,
    /// Face to face of the ball.
    pub ball_width: f64,
    /// Thickness of the head.
    pub head_width: f64,
    /// Diameter of the head.
    pub head_diameter: f64,
    /// Largest hole in the head, which the ball's race sits in, where it is held.
    pub race_bore: Option<f64>,
    /// Center of the eye to the end of the shank.
    pub eye_to_end: f64,
    /// Length of thread on the shank.
    pub thread_length: f64,
    /// How far the ball tilts each way, rad, where it is held.
    pub misalignment: Option<f64>,
    /// Where the tilt comes from, where it is held.
    pub tilt_cite: Option<Cite>,
    /// Where the row comes from.
    pub cite: Cite,
    /// What is uncertain about it, for the reader.
    pub note: &'static str,
}

const WIDE: &str = "Misalignment is read from a column without a heading, which AS81935/4B heads as an angle: have it confirmed before you rely on it.";
const NARROW: &str =
    "Hole in the head and misalignment are not traced to a print for this size: go by the maker's static rating.";
const SERIES_K: &str = "Thread length is the least settled figure of this series: measure yours.";
const SERIES_K_PRINT: Cite = cite(
    &ISO_12240_4,
    "series K, male; hole in the head: ISO 12240-1 Table 4, the bearing's outside diameter",
    Obtained::Copied,
);

/// A row of AS81935/1A: bore, head diameter, ball width, head width, race bore, eye to end, thread length, degrees.
const fn wide(id: &'static str, label: &'static str, thread: &'static str, v: [f64; 8]) -> RodEnd {
    let [bore, head_diameter, ball_width, head_width, race_bore, eye_to_end, thread_length, tilt] = v;
    RodEnd {
        id,
        label,
        family: Family::Wide,
        bore: inch(bore),
        thread,
        ball_width: inch(ball_width),
        head_width: inch(head_width),
        head_diameter: inch(head_diameter),
        race_bore: Some(inch(race_bore)),
        eye_to_end: inch(eye_to_end),
        thread_length: inch(thread_length),
        misalignment: Some(deg(tilt)),
        tilt_cite: Some(cite(&SAE_AS81935_1, "Table 1, a column without a heading read as tilt", Obtained::Copied)),
        cite: cite(&SAE_AS81935_1, "Table 1; hole in the head: column J, largest housing bore", Obtained::Read),
        note: WIDE,
    }
}

/// A row of AS81935/4B: bore, head diameter, ball width, head width, eye to end, thread length.
const fn narrow(id: &'static str, label: &'static str, thread: &'static str, v: [f64; 6]) -> RodEnd {
    let [bore, head_diameter, ball_width, head_width, eye_to_end, thread_length] = v;
    RodEnd {
        id,
        label,
        family: Family::Narrow,
        bore: inch(bore),
        thread,
        ball_width: inch(ball_width),
        head_width: inch(head_width),
        head_diameter: inch(head_diameter),
        race_bore: None,
        eye_to_end: inch(eye_to_end),
        thread_length: inch(thread_length),
        misalignment: None,
        tilt_cite: None,
        cite: cite(&SAE_AS81935_4, "Table 1", Obtained::Read),
        note: NARROW,
    }
}

/// A row of series K: bore, ball width, head width, head diameter, race bore, eye to end, thread length, degrees.
const fn series_k(id: &'static str, label: &'static str, thread: &'static str, v: [f64; 8]) -> RodEnd {
    let [bore, ball_width, head_width, head_diameter, race_bore, eye_to_end, thread_length, tilt] = v;
    RodEnd {
        id,
        label,
        family: Family::SeriesK,
        bore: mm(bore),
        thread,
        ball_width: mm(ball_width),
        head_width: mm(head_width),
        head_diameter: mm(head_diameter),
        race_bore: Some(mm(race_bore)),
        eye_to_end: mm(eye_to_end),
        thread_length: mm(thread_length),
        misalignment: Some(deg(tilt)),
        tilt_cite: Some(cite(&ISO_12240_4, "series K, male", Obtained::Copied)),
        cite: SERIES_K_PRINT,
        note: SERIES_K,
    }
}

/// Every rod end, by series, then by size.
pub static ALL: &[RodEnd] = &[
    wide(
        "wide-05",
        "5/16-24 shank × 5/16 in bore, SAE wide",
        "5/16-24",
        [0.3125, 0.900, 0.437, 0.327, 0.6875, 1.875, 1.187, 14.0],
    ),
    wide(
        "wide-06",
        "3/8-24 shank × 3/8 in bore, SAE wide",
        "3/8-24",
        [0.3750, 1.025, 0.500, 0.416, 0.8125, 1.938, 1.187, 8.0],
    ),
    wide(
        "wide-07",
        "7/16-20 shank × 7/16 in bore, SAE wide",
        "7/16-20",
        [0.4375, 1.150, 0.562, 0.452, 0.9062, 2.125, 1.281, 10.0],
    ),
    wide(
        "wide-08",
        "1/2-20 shank × 1/2 in bore, SAE wide",
        "1/2-20",
        [0.5000, 1.337, 0.625, 0.515, 1.0000, 2.438, 1.468, 9.0],
    ),
    wide(
        "wide-10",
        "5/8-18 shank × 5/8 in bore, SAE wide",
        "5/8-18",
        [0.6250, 1.525, 0.750, 0.577, 1.1875, 2.625, 1.562, 12.0],
    ),
    wide(
        "wide-12",
        "3/4-16 shank × 3/4 in bore, SAE wide",
        "3/4-16",
        [0.7500, 1.775, 0.875, 0.640, 1.3750, 2.875, 1.687, 13.0],
    ),
    wide(
        "wide-14",
        "7/8-14 shank × 7/8 in bore, SAE wide",
        "7/8-14",
        [0.8750, 2.025, 0.875, 0.765, 1.6250, 3.375, 2.000, 6.0],
    ),
    wide(
        "wide-16",
        "1-1/4-12 shank × 1 in bore, SAE wide",
        "1-1/4-12",
        [1.0000, 2.775, 1.375, 1.015, 2.1250, 4.125, 2.343, 12.0],
    ),
    RodEnd {
        race_bore: Some(inch(0.7500)),
        misalignment: Some(deg(10.0)),
        tilt_cite: Some(cite(&SAE_AS81935_4, "Table 1", Obtained::Read)),
        note: "",
        ..narrow(
            "narrow-05",
            "5/16-24 shank × 5/16 in bore, SAE narrow",
            "5/16-24",
            [0.3125, 0.984, 0.375, 0.291, 1.948, 1.187],
        )
    },
    narrow(
        "narrow-06",
        "3/8-24 shank × 3/8 in bore, SAE narrow",
        "3/8-24",
        [0.3750, 1.131, 0.406, 0.322, 2.030, 1.187],
    ),
    narrow(
        "narrow-07",
        "7/16-20 shank × 7/16 in bore, SAE narrow",
        "7/16-20",
        [0.4375, 1.294, 0.437, 0.353, 2.250, 1.281],
    ),
    narrow(
        "narrow-08",
        "1/2-20 shank × 1/2 in bore, SAE narrow",
        "1/2-20",
        [0.5000, 1.459, 0.500, 0.400, 2.544, 1.468],
    ),
    narrow(
        "narrow-10",
        "5/8-18 shank × 5/8 in bore, SAE narrow",
        "5/8-18",
        [0.6250, 1.763, 0.625, 0.510, 2.832, 1.562],
    ),
    narrow(
        "narrow-12",
        "3/4-16 shank × 3/4 in bore, SAE narrow",
        "3/4-16",
        [0.7500, 2.140, 0.750, 0.603, 3.193, 1.687],
    ),
    narrow(
        "narrow-14",
        "7/8-14 shank × 7/8 in bore, SAE narrow",
        "7/8-14",
        [0.8750, 2.372, 0.875, 0.713, 3.677, 2.000],
    ),
    narrow("narrow-16", "1-12 shank × 1 in bore, SAE narrow", "1-12", [1.0000, 2.681, 1.000, 0.807, 3.968, 2.100]),
    series_k(
        "k-10",
        "M10 × 1.5 shank × 10 mm bore, series K",
        "M10x1.5",
        [10.0, 14.0, 10.5, 28.0, 22.0, 48.0, 28.0, 13.0],
    ),
    series_k(
        "k-12",
        "M12 × 1.75 shank × 12 mm bore, series K",
        "M12x1.75",
        [12.0, 16.0, 12.0, 32.0, 26.0, 54.0, 32.0, 13.0],
    ),
    series_k("k-14", "M14 × 2 shank × 14 mm bore, series K", "M14x2", [14.0, 19.0, 13.5, 36.0, 29.0, 60.0, 36.0, 15.0]),
    RodEnd {
        note: "Other lists have 40 mm of thread, from memory: measure yours.",
        ..series_k(
            "k-16",
            "M16 × 2 shank × 16 mm bore, series K",
            "M16x2",
            [16.0, 21.0, 15.0, 42.0, 32.0, 66.0, 37.0, 15.0],
        )
    },
    series_k(
        "k-18",
        "M18 × 1.5 shank × 18 mm bore, series K",
        "M18x1.5",
        [18.0, 23.0, 16.5, 46.0, 35.0, 72.0, 41.0, 15.0],
    ),
    RodEnd {
        note: "Other lists have 47 mm of thread, from memory: measure yours.",
        ..series_k(
            "k-20",
            "M20 × 1.5 shank × 20 mm bore, series K",
            "M20x1.5",
            [20.0, 25.0, 18.0, 50.0, 40.0, 78.0, 45.0, 14.0],
        )
    },
    series_k(
        "k-22",
        "M22 × 1.5 shank × 22 mm bore, series K",
        "M22x1.5",
        [22.0, 28.0, 20.0, 54.0, 42.0, 84.0, 48.0, 15.0],
    ),
    RodEnd {
        note: "Other lists have 57 mm of thread, from memory: measure yours.",
        ..series_k(
            "k-25",
            "M24 × 2 shank × 25 mm bore, series K",
            "M24x2",
            [25.0, 31.0, 22.0, 60.0, 47.0, 94.0, 58.0, 15.0],
        )
    },
    RodEnd {
        note: "Other lists have 66 mm of thread, from memory: measure yours.",
        ..series_k(
            "k-30",
            "M30 × 2 shank × 30 mm bore, series K",
            "M30x2",
            [30.0, 37.0, 25.0, 70.0, 55.0, 110.0, 71.0, 15.0],
        )
    },
];

/// The largest hole in a head, as a multiple of the distance across the corners of its ball, √(bore² + ball width²),
/// among the rows that print the hole: what is assumed of a rod end whose hole nobody measured.
pub const LARGEST_RACE: f64 = 1.32;

/// The rod end with an id.
pub fn find(id: &str) -> Option<&'static RodEnd> {
    ALL.iter().find(|row| row.id == id)
}
