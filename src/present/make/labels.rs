//! Labels for finished parts: what stands on them, and which of it fits a label of a common size.

use crate::document::Document;
use crate::present::words::{Units, fit, hand_mark, length, letter, thread};
use crate::quantity::Kind;
use crate::quantity::{System, show_at_most};
use crate::report::{Answer, EndGeometry};

/// What a line of a label tells.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Line {
    /// The order code.
    Code,
    /// Which link.
    Link,
    /// Which rig.
    Rig,
    /// Eye to eye, as set.
    EyeToEye,
    /// Length of the finished bar.
    Bar,
    /// Thread and hand at end A.
    EndA,
    /// Thread and hand at end B.
    EndB,
    /// Full thread engaged at both ends.
    Engagement,
    /// The most threads that may show.
    MostShowing,
}

/// A size of label.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct LabelSize {
    /// Never reused once released.
    pub id: &'static str,
    /// As it is shown.
    pub name: &'static str,
    /// Width in millimeters.
    pub width: f64,
    /// Height in millimeters.
    pub height: f64,
    /// Height of letters in millimeters.
    pub lettering: f64,
    /// Whether the code that a camera reads stands on it.
    pub camera_code: bool,
    /// Which lines, from the top.
    pub lines: &'static [Line],
}

/// Said where a label would send out a part that must not leave.
pub const NOT_PRINTED: &str =
    "No label is printed while an entry was not taken, a link fails or the order has changed since its yes.";

/// Said beneath the button that prints them.
pub const HELP: &str = "In the print dialog pick the label printer, no margins, no scaling.";

/// What stands on the button that prints so many labels.
pub fn print(labels: usize) -> String {
    match labels {
        1 => "Print 1 label".to_string(),
        _ => format!("Print {labels} labels"),
    }
}

/// Every line, as a large label has room for.
const ALL_LINES: [Line; 9] = [
    Line::Code,
    Line::Rig,
    Line::Link,
    Line::EyeToEye,
    Line::Bar,
    Line::EndA,
    Line::EndB,
    Line::Engagement,
    Line::MostShowing,
];

/// Sizes common for label printers: common practice, no source.
pub static SIZES: [LabelSize; 3] = [
    LabelSize {
        id: "62x29",
        name: "62 × 29 mm",
        width: 62.0,
        height: 29.0,
        lettering: 2.6,
        camera_code: true,
        lines: &[Line::Code, Line::Link, Line::EyeToEye, Line::Bar, Line::EndA, Line::EndB, Line::MostShowing],
    },
    LabelSize {
        id: "4x6",
        name: "4 × 6 in",
        width: 101.6,
        height: 152.4,
        lettering: 5.0,
        camera_code: true,
        lines: &ALL_LINES,
    },
    LabelSize {
        id: "2x1",
        name: "2 × 1 in",
        width: 50.8,
        height: 25.4,
        lettering: 2.5,
        camera_code: false,
        lines: &[Line::Code, Line::Link, Line::EyeToEye, Line::Bar, Line::EndA, Line::EndB, Line::MostShowing],
    },
];

/// Margin around a label, from one line to the next as a share of the height of letters, and width of a letter likewise.
const MARGIN: f64 = 1.5;
const LINE: f64 = 1.25;
const LETTER: f64 = 0.56;

impl LabelSize {
    /// Side of the square that the camera's code takes, with its distance from the words; 0 without one.
    pub fn code_side(&self) -> f64 {
        if !self.camera_code {
            0.0
        } else if self.height > self.width {
            // On a tall label it stands under the words.
            0.6 * self.width
        } else {
            0.75 * self.height
        }
    }

    /// How many letters fit on a line.
    pub fn letters(&self) -> usize {
        let beside = if self.height > self.width { 0.0 } else { self.code_side() };
        ((self.width - 2.0 * MARGIN - beside) / (LETTER * self.lettering)).max(0.0) as usize
    }

    /// How many lines fit.
    pub fn most_lines(&self) -> usize {
        let below = if self.height > self.width { self.code_side() } else { 0.0 };
        ((self.height - 2.0 * MARGIN - below) / (LINE * self.lettering)).max(0.0) as usize
    }
}

/// What stands on the label of one link.
#[derive(Debug, Clone, PartialEq)]
pub struct Label {
    /// Lines in order.
    pub lines: Vec<(Line, String)>,
    /// The address that the camera's code holds; none on a label without one.
    pub link: Option<String>,
}

/// The label of a link, in a size: its order code and the link that opens it come in.
pub fn label(
    document: &Document,
    at: usize,
    answer: &Answer,
    code: &str,
    link: &str,
    size: &LabelSize,
    system: System,
) -> Label {
    let letters = size.letters();
    let lines = size.lines.iter().map(|line| (*line, text(*line, document, at, answer, code, system, letters)));
    let lines = lines.filter(|(_, text)| !text.is_empty()).collect();
    Label { lines, link: size.camera_code.then(|| link.to_string()) }
}

/// What one line says. Where it is too long, names are cut short; sizes never are: they are said in fewer words.
fn text(
    line: Line,
    document: &Document,
    at: usize,
    answer: &Answer,
    code: &str,
    system: System,
    letters: usize,
) -> String {
    let made = &answer.link;
    let one = Units::In(system);
    let shorter = |ways: [String; 2]| {
        let [whole, short] = ways;
        if whole.chars().count() <= letters { whole } else { short }
    };
    match line {
        Line::Code => code.to_string(),
        Line::Link => cut(&document.links.get(at).map(crate::document::Link::title).unwrap_or_default(), letters),
        Line::Rig => cut(&document.name, letters),
        Line::EyeToEye => shorter([
            format!("Eye to eye {}", length(made.length, Units::Both)),
            format!("Eyes {}", length(made.length, one)),
        ]),
        Line::Bar => {
            let about = if made.provisional { "about " } else { "" };
            shorter([
                format!("Bar {about}{}", length(made.bar, Units::Both)),
                format!("Bar {about}{}", length(made.bar, one)),
            ])
        }
        Line::EndA | Line::EndB => {
            let end = usize::from(line == Line::EndB);
            made.ends.get(end).map(|made| end_words(made, letter(end))).unwrap_or_default()
        }
        Line::Engagement => {
            let [a, b] = made.ends.each_ref().map(|end| fit(end.engagement, one));
            shorter([format!("Thread engaged {a} at A, {b} at B"), format!("Engaged {a} / {b}")])
        }
        Line::MostShowing => {
            let [a, b] = made.ends.each_ref().map(most_showing);
            if a == b {
                shorter([format!("No more than {a} threads showing"), format!("Max {a} threads show")])
            } else {
                shorter([format!("No more than {a} (A), {b} (B) threads showing"), format!("Max show A {a}, B {b}")])
            }
        }
    }
}

/// `A: 1-1/4-12 RH`.
fn end_words(end: &EndGeometry, letter: &str) -> String {
    format!("{letter}: {} {}", thread(end.thread), hand_mark(end.hand))
}

/// Threads that may show at most, rounded down, so that whoever keeps to it keeps to the limit.
fn most_showing(end: &EndGeometry) -> String {
    show_at_most(end.stop.visible_threads.max(0.0), Kind::Turns, System::Inch)
        .replace(" turns", "")
        .replace(" turn", "")
}

/// Words cut to a number of letters.
fn cut(words: &str, letters: usize) -> String {
    if words.chars().count() <= letters {
        return words.to_string();
    }
    let kept: String = words.chars().take(letters.saturating_sub(1)).collect();
    format!("{}…", kept.trim_end())
}
