//! Bending against strength along the link, in words and as a table of its parts.

use super::words::length;
use crate::document::Document;
use crate::inputs::{self, At};
use crate::quantity::{Kind, System, show};
use crate::report::{Along, Answer};

/// The heads of the table's columns.
pub const HEAD: [&str; 5] = ["Part", "From eye A", "Moment", "Strength", "Utilization"];

/// What is said under the picture.
#[derive(Debug, Clone, PartialEq)]
pub struct Explanation {
    /// The sentences.
    pub sentence: String,
    /// Whether they say why there is no picture, since the link buckles.
    pub buckles: bool,
}

/// How to read the picture, or why there is none.
pub fn explanation(document: &Document, answer: &Answer, along: &Along, system: System) -> Explanation {
    if answer.loads.strike <= 0.0 {
        let axial = show(answer.loads.axial, Kind::Force, system);
        return Explanation {
            sentence: format!(
                "No hit is assumed on this link, so nothing bends it: it bears {axial} in tension or compression. What counts is whether it buckles, and the strength of its ends."
            ),
            buckles: false,
        };
    }
    if along.stations.is_empty() {
        let sentence = "The compression along the link alone buckles it, so there is no bending to draw.".to_string();
        return Explanation { sentence, buckles: true };
    }
    let factor = inputs::YIELD_FACTOR.value(document, At::default()).unwrap_or(f64::NAN);
    Explanation {
        sentence: format!(
            "The filled curve is the bending moment of the hit at each place of the link: the worst hit for that place, with the factor of {} on yield. The line is the bending strength of that place, up to first yield. Where the two come closest, the link yields first. On a screen, touch a part to open its working.",
            show(factor, Kind::Ratio, system)
        ),
        buckles: false,
    }
}

/// A part of the link at the place where it is asked for most.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Row {
    /// The part.
    pub part: &'static str,
    /// Place, moment, strength and utilization, in the order of the columns.
    pub values: [String; 4],
}

/// The parts from eye A to eye B, each where it is asked for most.
pub fn rows(along: &Along, system: System) -> Vec<Row> {
    let stretches = along.stations.chunk_by(|a, b| a.part == b.part);
    let worst = stretches.filter_map(|stretch| stretch.iter().max_by(|a, b| a.utilization.total_cmp(&b.utilization)));
    let row = |worst: &crate::report::Station| Row {
        part: worst.part,
        values: [
            length(worst.x, system),
            show(worst.moment, Kind::Moment, system),
            show(worst.strength, Kind::Moment, system),
            show(worst.utilization, Kind::Percent, system),
        ],
    };
    worst.map(row).collect()
}
