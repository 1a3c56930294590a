//! The route sheet: how one link is made, step by step.
//!
//! A question of its own: no answer rests on it. Every number it tells was worked out through a [`Sheet`].

mod asked;
mod bar;
mod ends;
mod finish;
pub mod machine;
mod speeds;
mod tube;
mod weight;

pub use asked::Asked;
pub use machine::Machine;

use machine::Setting;

use crate::document::Document;
use crate::engine::formula::{Line, Sheet};
use crate::engine::formulas::machining;
use crate::engine::sentence::{Said, said};
use crate::engine::tables::cutting::Class;
use crate::inputs::{self, At, Number};
use crate::quantity::Kind;
use crate::report::{Answer, LinkGeometry, Verdict};
use crate::source::Cite;

/// How one link is made.
#[derive(Debug, Clone, PartialEq)]
pub struct Route {
    /// Pieces to make of it.
    pub pieces: usize,
    /// What must be settled before anything is cut; empty for most links.
    pub before: Vec<Said>,
    /// The steps in their order.
    pub steps: Vec<Step>,
    /// Minutes of all steps, for one piece.
    pub minutes: f64,
    /// Weight of the sawn blank, or of the sawn tube.
    pub blank_weight: f64,
    /// Weight of the finished bar; none for a tube, whose welds nobody weighs.
    pub finished_weight: Option<f64>,
    /// How both weights came out.
    pub working: Vec<Line>,
}

/// What is done in a step.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Operation {
    /// Pull and check the stock.
    Stock,
    /// Saw.
    Saw,
    /// Face both ends.
    Face,
    /// Center drill.
    CenterDrill,
    /// Drill for the tap.
    TapDrill,
    /// Countersink.
    Countersink,
    /// Tap.
    Tap,
    /// Go and no-go gauge.
    Gauge,
    /// Skim pass.
    Skim,
    /// Wrench flats.
    Flats,
    /// Turn a threaded insert.
    Insert,
    /// Fit an insert and prepare its weld.
    Fit,
    /// Weld an insert.
    Weld,
    /// Let it cool.
    Cool,
    /// Deburr, wash, blow out.
    Clean,
    /// Mark by hand of thread.
    Mark,
    /// Try the rod ends.
    Trial,
    /// Measure what was made.
    Measure,
    /// Protect and pack.
    Pack,
}

/// One step.
#[derive(Debug, Clone, PartialEq)]
pub struct Step {
    /// What is done.
    pub operation: Operation,
    /// At which end: 0 is A; none where it is done to the whole.
    pub end: Option<usize>,
    /// What it is called.
    pub title: &'static str,
    /// What to do, in whole sentences.
    pub says: Vec<Said>,
    /// Its numbers by name.
    pub figures: Vec<Figure>,
    /// What to measure and write down.
    pub boxes: Vec<ToMeasure>,
    /// What to mind.
    pub warnings: Vec<Said>,
    /// Minutes for one piece.
    pub minutes: f64,
    /// Where its values come from.
    pub sources: Vec<Cite>,
    /// How its numbers came out.
    pub working: Vec<Line>,
}

/// A number of a step.
#[derive(Debug, Clone, PartialEq)]
pub struct Figure {
    /// What it is.
    pub name: &'static str,
    /// The number.
    pub value: Value,
}

/// A number or what stands in its place.
#[derive(Debug, Clone, PartialEq)]
pub enum Value {
    /// One value, SI.
    One(f64, Kind),
    /// Least and most, SI.
    Range([f64; 2], Kind),
    /// Least and most of what has no SI unit, with the name of its unit; both the same for a single value.
    Counted([f64; 2], &'static str),
    /// A name.
    Words(String),
}

/// Something to measure on the finished part.
#[derive(Debug, Clone, PartialEq)]
pub struct ToMeasure {
    /// What is measured.
    pub name: &'static str,
    /// At which end.
    pub end: Option<usize>,
    /// What it should be, with how far under and over it may be; none for what only passes or not.
    pub asked: Option<Asked>,
}

/// How a link is made; `answer` is the answer for it. Nothing for a link that is not there.
pub fn route(document: &Document, link: usize, answer: &Answer, machine: &Machine) -> Route {
    let shop = Shop { document, link, answer, made: &answer.link, machine, class: answer.link.material.cut_as };
    let mut sheet = Sheet::recording();
    let blank_weight = weight::blank(&shop, &mut sheet);
    let finished_weight = shop.is_bar().then(|| weight::finished(&shop, &mut sheet));
    let mut steps = bar::to_length(&shop, blank_weight);
    if shop.is_bar() {
        for end in 0..2 {
            steps.extend(ends::threaded(&shop, end));
        }
        steps.extend(bar::skim(&shop));
        steps.extend(bar::flats(&shop));
    } else {
        steps.extend(tube::welded(&shop));
    }
    steps.extend(finish::steps(&shop));
    Route {
        pieces: inputs::pieces_of(document, link),
        before: before(&shop),
        minutes: steps.iter().map(|step| step.minutes).sum(),
        steps,
        blank_weight,
        finished_weight,
        working: sheet.lines,
    }
}

/// What must be settled before anything is cut.
fn before(shop: &Shop) -> Vec<Said> {
    let mut before = Vec::new();
    match shop.answer.verdict {
        Verdict::Fails => {
            before.push(said!["Do not make this link: it fails as entered. Settle that before anything is cut."])
        }
        Verdict::Bends => {
            before.push(said!["As entered this link bends in the hit it is sized for; make sure that is accepted."])
        }
        Verdict::Unanswered => {
            before.push(said!["Not every part of this link could be judged; settle that before anything is cut."])
        }
        Verdict::Passes | Verdict::Close => {}
    }
    let has_flange = shop.made.ends.iter().filter_map(|end| end.insert).any(|insert| insert.kind.has_flange);
    if has_flange && inputs::BUNG_FLANGE.decided(shop.document, shop.place()).is_none() {
        before.push(said![
            "The flange of the bungs is assumed to be ",
            (shop.known(&inputs::BUNG_FLANGE), FineLength),
            " thick. Measure it before you saw: the tube is shorter by it at each end that has one."
        ]);
    }
    // Said last: the page has said it already.
    if shop.made.provisional {
        before.push(said![
            "Lengths are provisional: they rest on published rod ends. Measure the rod ends that will be fitted before you saw."
        ]);
    }
    before
}

/// What every step is worked out from.
struct Shop<'a> {
    document: &'a Document,
    link: usize,
    answer: &'a Answer,
    made: &'a LinkGeometry,
    machine: &'a Machine,
    class: &'static Class,
}

impl Shop<'_> {
    fn place(&self) -> At {
        At::of_link(self.document, self.link)
    }

    /// An input of the link that always has a value.
    fn known(&self, input: &'static Number) -> f64 {
        input.value(self.document, self.place()).unwrap_or(f64::NAN)
    }

    fn is_bar(&self) -> bool {
        self.made.wall <= 0.0
    }

    fn minutes(&self, setting: &Setting) -> f64 {
        self.machine.in_force(setting)
    }

    /// A step that takes only handling.
    fn step(&self, operation: Operation, end: Option<usize>, title: &'static str, minutes: &Setting) -> Step {
        Step {
            operation,
            end,
            title,
            says: Vec::new(),
            figures: Vec::new(),
            boxes: Vec::new(),
            warnings: Vec::new(),
            minutes: self.minutes(minutes),
            sources: vec![minutes.cite],
            working: Vec::new(),
        }
    }
}

impl Step {
    fn say(mut self, said: Said) -> Self {
        self.says.push(said);
        self
    }

    fn figure(mut self, name: &'static str, value: Value) -> Self {
        self.figures.push(Figure { name, value });
        self
    }

    fn length(self, name: &'static str, value: f64) -> Self {
        self.figure(name, Value::One(value, Kind::FineLength))
    }

    fn from(mut self, cite: Cite) -> Self {
        if !self.sources.contains(&cite) {
            self.sources.push(cite);
        }
        self
    }

    fn warn(mut self, warning: Option<Said>) -> Self {
        self.warnings.extend(warning);
        self
    }

    fn measuring(mut self, name: &'static str, end: Option<usize>, asked: impl Into<Option<Asked>>) -> Self {
        self.boxes.push(ToMeasure { name, end, asked: asked.into() });
        self
    }

    /// The working of a step, and the minutes of cutting beside those of handling.
    fn worked(mut self, mut sheet: Sheet, cutting: Option<f64>) -> Self {
        if let Some(cutting) = cutting {
            self.minutes = sheet.work(&machining::STEP_TIME, &[self.minutes, cutting]);
        }
        self.warnings.extend(sheet.out_of_range.take());
        self.working = sheet.lines;
        self
    }
}

/// `A` or `B`.
const fn letter(end: usize) -> &'static str {
    if end == 0 { "A" } else { "B" }
}
