//! What differs between two documents, input by input; links are told apart by where they sit on the rig.

use crate::document::{Document, Link, ORDER_TEXTS, Position, Stage, day_in_words};
use crate::inputs::{At, CHOICES, Choice, NUMBERS, Number, Scope};
use crate::quantity::{Kind, System, show};

/// One thing that differs.
#[derive(Debug, Clone, PartialEq)]
pub struct Difference {
    /// What it is about: `Front lower links`, `Rear axle`; empty for the rig as a whole.
    pub about: String,
    /// What changed there.
    pub change: Change,
}

/// What changed.
#[derive(Debug, Clone, PartialEq)]
pub enum Change {
    /// A link is there that was not.
    Added,
    /// A link is gone.
    Removed,
    /// The rig's name.
    Name {
        /// Before; empty when it had none.
        before: String,
        /// After.
        after: String,
    },
    /// A text of the order.
    Text {
        /// Its id, as links carry it.
        id: &'static str,
        /// As the page says it.
        label: &'static str,
        /// Before; empty when there was none.
        before: String,
        /// After.
        after: String,
    },
    /// What was measured on the pieces that were made.
    Record,
    /// An input was decided differently.
    Input {
        /// As the form says it, with the end it belongs to.
        label: String,
        /// Before.
        before: Side,
        /// After.
        after: Side,
    },
}

/// One side of a difference.
#[derive(Debug, Clone, PartialEq)]
pub struct Side {
    /// The value in force.
    pub value: Option<Value>,
    /// Whether somebody decided it; else it is the default.
    pub own: bool,
}

/// A value of any input.
#[derive(Debug, Clone, PartialEq)]
pub enum Value {
    /// SI.
    Number(f64, Kind),
    /// The label of what was picked.
    Pick(&'static str),
}

impl Difference {
    /// In one sentence: `Front lower links: mount to mount 38 in, before 36 in`.
    pub fn sentence(&self, system: System) -> String {
        self.sentence_with(&|value, kind| show(value, kind, system))
    }

    /// The same with numbers as `number` writes them.
    pub fn sentence_with(&self, number: &dyn Fn(f64, Kind) -> String) -> String {
        let words = match &self.change {
            Change::Added => "added".to_string(),
            Change::Removed => "removed".to_string(),
            Change::Record => "what was measured on the pieces made".to_string(),
            Change::Name { before, after } if before.is_empty() => format!("Named “{after}”"),
            Change::Name { before, after } if after.is_empty() => format!("No longer named “{before}”"),
            Change::Name { before, after } => format!("Named “{after}”, before “{before}”"),
            Change::Text { id, label, before, after } => {
                let (old, new) = (text_words(id, before), text_words(id, after));
                if old == new { format!("{label}: {new} anew") } else { format!("{label}: {new}, before {old}") }
            }
            Change::Input { label, before, after } => {
                let (old, new) = (before.words_with(number), after.words_with(number));
                if old == new {
                    format!("{label}: {new}, changed by less than is shown")
                } else {
                    format!("{label}: {new}, before {old}")
                }
            }
        };
        if self.about.is_empty() { words } else { format!("{}: {words}", self.about) }
    }
}

/// A text of the order in words; nobody reads a snapshot.
pub fn text_words(id: &str, text: &str) -> String {
    match (id, text) {
        ("order-stage", text) => {
            let stage = Stage::ALL.into_iter().find(|stage| stage.id() == text);
            stage.unwrap_or_default().label().to_string()
        }
        (_, "") => "left open".to_string(),
        ("yes-to" | "first-said" | "order-history", _) => "recorded".to_string(),
        ("order-wanted", text) => day_in_words(text),
        (_, text) => format!("“{text}”"),
    }
}

impl Side {
    /// In words: `38 in`, `37 in by default`, `nothing`.
    pub fn words(&self, system: System) -> String {
        self.words_with(&|value, kind| show(value, kind, system))
    }

    /// The same with a number as `number` writes it.
    fn words_with(&self, number: &dyn Fn(f64, Kind) -> String) -> String {
        let Some(value) = &self.value else { return "left open".to_string() };
        let words = match value {
            Value::Number(value, kind) => number(*value, *kind),
            Value::Pick(label) => (*label).to_string(),
        };
        if self.own { words } else { format!("{words} by default") }
    }
}

/// Which link of one rig is which of the other: those that are the same first, then those of the same place, then of the same role at the same
/// axle, then of the same role. What is left stands alone.
pub fn matched(before: &Document, after: &Document) -> Vec<(Option<usize>, Option<usize>)> {
    let mut pairs: Vec<(Option<usize>, Option<usize>)> =
        (0..before.links.len()).map(|link| (Some(link), None)).collect();
    let mut free: Vec<usize> = (0..after.links.len()).collect();
    let alike: [fn(&Link, &Link) -> bool; 4] = [
        |a, b| a == b,
        |a, b| (a.role, a.position, a.seated()) == (b.role, b.position, b.seated()),
        |a, b| (a.role, a.position) == (b.role, b.position),
        |a, b| a.role == b.role,
    ];
    for alike in alike {
        for pair in pairs.iter_mut().filter(|pair| pair.1.is_none()) {
            let Some(link) = pair.0.and_then(|link| before.links.get(link)) else { continue };
            let found = free.iter().position(|other| after.links.get(*other).is_some_and(|other| alike(link, other)));
            pair.1 = found.map(|at| free.remove(at));
        }
    }
    pairs.extend(free.into_iter().map(|link| (None, Some(link))));
    pairs
}

/// Where a link of one rig is in the other; nothing when it is not there.
pub fn followed(before: &Document, after: &Document, link: usize) -> Option<usize> {
    let (mut old, mut new) = (Vec::new(), Vec::new());
    for pair in matched(before, after) {
        match pair {
            (Some(it), Some(there)) if it == link => return Some(there),
            (Some(it), None) => old.push(it),
            (None, Some(there)) => new.push(there),
            _ => {}
        }
    }
    // One that took another role stands where it stood.
    let same_place = old.contains(&link) && new.contains(&link) && before.links.len() == after.links.len();
    if same_place { Some(link) } else { None }
}

/// Everything that differs, the rig first.
pub fn differences(before: &Document, after: &Document) -> Vec<Difference> {
    let mut found = Vec::new();
    if before.name != after.name {
        let change = Change::Name { before: before.name.clone(), after: after.name.clone() };
        found.push(Difference { about: String::new(), change });
    }
    let rig = At::default();
    inputs(before, after, Scope::Rig, [rig, rig], "", &mut found);
    for axle in Position::ALL {
        let place = At::of_axle(axle.index());
        let about = if axle == Position::Front { "Front axle" } else { "Rear axle" };
        inputs(before, after, Scope::Axle, [place, place], about, &mut found);
    }
    let pairs = matched(before, after);
    let was_blank = before.links.len() == 1 && before.links[0] == Link::default();
    for pair in pairs {
        let title = |document: &Document, link: Option<usize>| {
            link.and_then(|link| document.links.get(link)).map(Link::title).unwrap_or_default()
        };
        match pair {
            // Nobody misses the blank link of a new rig.
            (Some(_), None) if was_blank => {}
            (Some(_), None) => found.push(Difference { about: title(before, pair.0), change: Change::Removed }),
            (None, _) => found.push(Difference { about: title(after, pair.1), change: Change::Added }),
            (Some(old), Some(new)) => {
                let about = title(after, pair.1);
                let places = [At::of_link(before, old), At::of_link(after, new)];
                inputs(before, after, Scope::Link, places, &about, &mut found);
                for end in [0, 1] {
                    let places = places.map(|place| At { end, ..place });
                    inputs(before, after, Scope::End, places, &about, &mut found);
                }
                let made = |document: &Document, link: usize| document.links.get(link).map(|link| link.made.clone());
                if made(before, old) != made(after, new) {
                    found.push(Difference { about, change: Change::Record });
                }
            }
        }
    }
    for text in &ORDER_TEXTS {
        let [before, after] = [before, after].map(|document| (text.get)(&document.order).to_string());
        if before != after {
            let change = Change::Text { id: text.id, label: text.label, before, after };
            found.push(Difference { about: "Order".to_string(), change });
        }
    }
    found
}

/// The inputs of one scope that differ between two places.
fn inputs(
    before: &Document,
    after: &Document,
    scope: Scope,
    places: [At; 2],
    about: &str,
    found: &mut Vec<Difference>,
) {
    let label = |label: &str| match (scope, places[0].end) {
        (Scope::End, 0) => format!("{label} at A"),
        (Scope::End, _) => format!("{label} at B"),
        _ => label.to_string(),
    };
    let mut note = |label: String, before: Side, after: Side| {
        found.push(Difference { about: about.to_string(), change: Change::Input { label, before, after } });
    };
    for choice in CHOICES.iter().filter(|choice| choice.scope == scope) {
        let sides = [picked(choice, before, places[0]), picked(choice, after, places[1])];
        if (choice.get)(before, places[0]) != (choice.get)(after, places[1]) {
            let [before, after] = sides;
            note(label(choice.label), before, after);
        }
    }
    for input in NUMBERS.iter().filter(|input| input.scope == scope) {
        let bits = |document, place| (input.get)(document, place).map(f64::to_bits);
        if bits(before, places[0]) != bits(after, places[1]) {
            note(label(input.label), number(input, before, places[0]), number(input, after, places[1]));
        }
    }
}

fn number(input: &Number, document: &Document, place: At) -> Side {
    let value = input.value(document, place).map(|value| Value::Number(value, input.kind));
    Side { value, own: (input.get)(document, place).is_some() }
}

fn picked(choice: &Choice, document: &Document, place: At) -> Side {
    let id = choice.value(document, place);
    let pick = id.and_then(|id| (choice.options)().into_iter().find(|option| option.id == id));
    Side { value: pick.map(|pick| Value::Pick(pick.label)), own: (choice.get)(document, place).is_some() }
}
