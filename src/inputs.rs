//! The table of inputs: one row each for form, range sentence, default, share link and random documents.

use crate::document::Document;
use crate::quantity::{self, Kind, Misread, System};

mod applies;
mod bracket;
mod choices;
pub mod drafts;
pub mod edits;
mod numbers;
mod order;

pub use applies::applies;
pub use bracket::{BOLT_SERIES, SPACER_KIND, STOCK, stock_of};
pub use choices::{
    BOLT, FAMILY, HAND, HARDENED_AFTER_WELDING, MATERIAL, OWN_THREAD, POSITION, ROD_END, ROLE, ROSETTE_WELDS, SEAT,
    SHANK_STEEL, TUBE_END, USAGE,
};
pub use choices::{CHOICES, Choice, Option as Pick};
pub use choices::{STEERING_BOX, SWAY_MEASURED, TIE_ROD_SIDE, TRACK_BAR};
pub use numbers::*;
pub use order::{FINISH, MEASURED_ON, SUPPLIED_BY};

/// Where in a document an input lives.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default)]
pub struct At {
    /// Which link.
    pub link: usize,
    /// Which end of it: 0 is A, 1 is B.
    pub end: usize,
    /// Which axle: 0 is the front one, 1 the rear one.
    pub axle: usize,
}

impl At {
    /// A link with the axle it is at, seen from its end A.
    pub fn of_link(document: &Document, link: usize) -> Self {
        Self { link, end: 0, axle: document.links.get(link).map_or(0, |link| link.position.index()) }
    }

    /// An axle.
    pub const fn of_axle(axle: usize) -> Self {
        Self { link: 0, end: 0, axle }
    }
}

/// What an input belongs to.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Scope {
    /// The rig: once in a document.
    Rig,
    /// Each axle: front and rear.
    Axle,
    /// Each link.
    Link,
    /// Each end of each link.
    End,
}

/// Which part of the form an input stands in.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Group {
    /// The three entries that give an answer.
    First,
    /// Where on the rig the link sits, and how many are made.
    Side,
    /// The bar or tube itself.
    Bar,
    /// The rod ends.
    Ends,
    /// Bolt and bracket.
    Bracket,
    /// What the rig does to the link.
    Loads,
    /// How much in hand is asked for.
    Factors,
    /// Shop details.
    Shop,
    /// What an order says beside the sizes; no number of the answer rests on it.
    Order,
    /// Asked for by earlier versions only: kept in links and files, and not shown in the form.
    Former,
}

/// How firmly a default stands.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum DefaultKind {
    /// No default: only the user knows.
    Asked,
    /// Our own choice.
    Assumed,
    /// What builders do; nobody has published it.
    Practice,
    /// Follows from other values.
    Follows,
}

impl DefaultKind {
    /// Whether it is a default that somebody may change, rather than what only they know or what follows from the rest.
    pub const fn is_a_default(self) -> bool {
        matches!(self, Self::Assumed | Self::Practice)
    }

    /// The words shown beside a default.
    pub const fn words(self) -> &'static str {
        match self {
            Self::Asked => "",
            Self::Assumed => "assumed",
            Self::Practice => "common practice, no source",
            Self::Follows => "follows from the rest",
        }
    }
}

/// A number the user may decide.
pub struct Number {
    /// Never reused once released: links and files carry it.
    pub id: &'static str,
    /// As the form says it.
    pub label: &'static str,
    /// What it measures.
    pub kind: Kind,
    /// Least value accepted, SI.
    pub least: f64,
    /// Most value accepted, SI.
    pub most: f64,
    /// One sentence for somebody who does not know it.
    pub help: &'static str,
    /// What it belongs to.
    pub scope: Scope,
    /// Where in the form it stands.
    pub group: Group,
    /// How firm the default is.
    pub default_kind: DefaultKind,
    /// The value decided, if any.
    pub get: fn(&Document, At) -> Option<f64>,
    /// Decides a value, or gives it back to the default. Does not check the range: use [`Number::decide`].
    pub set: fn(&mut Document, At, Option<f64>),
    /// The value that stands when nothing is decided.
    pub default: fn(&Document, At) -> Option<f64>,
}

impl PartialEq for Number {
    fn eq(&self, other: &Self) -> bool {
        self.id == other.id
    }
}

/// An input of any kind.
#[derive(Clone, Copy)]
pub enum Input {
    /// One of a few.
    Choice(&'static Choice),
    /// A number.
    Number(&'static Number),
}

impl Input {
    /// Every input: choices first, each kind in the order of the form.
    pub fn all() -> impl Iterator<Item = Self> {
        CHOICES.iter().map(|choice| Self::Choice(choice)).chain(NUMBERS.iter().map(|number| Self::Number(number)))
    }

    /// The input with an id.
    pub fn find(id: &str) -> Option<Self> {
        Self::all().find(|input| input.id() == id)
    }

    /// Its id.
    pub const fn id(self) -> &'static str {
        match self {
            Self::Choice(choice) => choice.id,
            Self::Number(number) => number.id,
        }
    }

    /// What it belongs to.
    pub const fn scope(self) -> Scope {
        match self {
            Self::Choice(choice) => choice.scope,
            Self::Number(number) => number.scope,
        }
    }

    /// Where in the form it stands.
    pub const fn group(self) -> Group {
        match self {
            Self::Choice(choice) => choice.group,
            Self::Number(number) => number.group,
        }
    }
}

/// Why a typed value was not taken.
#[derive(Debug, Clone, PartialEq)]
pub enum Refused {
    /// It could not be read.
    Misread(Misread),
    /// It was read, but lies outside what this input accepts.
    OutOfRange(f64),
}

impl Number {
    /// The value decided, when it is one this input accepts.
    pub fn decided(&self, document: &Document, place: At) -> Option<f64> {
        (self.get)(document, place).filter(|value| self.accepts(*value))
    }

    /// The value in force: the one decided, else the default.
    pub fn value(&self, document: &Document, place: At) -> Option<f64> {
        self.decided(document, place).or_else(|| (self.default)(document, place))
    }

    /// Whether a value lies in range; a count must be whole. A range given in inches must also take the same number
    /// typed in millimeters.
    pub fn accepts(&self, value: f64) -> bool {
        let slack = 1e-9 * self.most.abs();
        let within = self.least - slack <= value && value <= self.most + slack;
        value.is_finite() && within && self.whole(value).to_bits() == value.to_bits()
    }

    /// A value as this input counts: of links, whole ones only.
    pub fn whole(&self, value: f64) -> f64 {
        if self.kind == Kind::Count { value.round() } else { value }
    }

    /// Reads what was typed; empty text gives the value back to the default.
    ///
    /// # Errors
    /// [`Refused`] when the text cannot be read or the value lies outside the range.
    pub fn read(&self, text: &str, system: System) -> Result<Option<f64>, Refused> {
        if text.trim().is_empty() {
            return Ok(None);
        }
        let value = quantity::read(text, self.kind, system).map_err(Refused::Misread)?;
        if self.accepts(value) { Ok(Some(value)) } else { Err(Refused::OutOfRange(value)) }
    }

    /// What to ask back about an entry whose unit had to be assumed.
    pub fn question(&self, text: &str, system: System) -> Option<String> {
        let reading = quantity::reading(text, self.kind, system).ok().filter(|reading| reading.inches_assumed)?;
        let [inches, here] = [System::Inch, system].map(|system| quantity::measured(reading.value, system));
        Some(format!("{inches}? A fraction is read as inches, here {here}; for millimeters type a decimal."))
    }

    /// The sentence for a refused entry: the field, what was read, and what is allowed.
    pub fn sentence(&self, refused: &Refused, system: System) -> String {
        let range = format!(
            "{} must be {}between {} and {}.",
            self.label,
            if self.kind == Kind::Count { "a whole number " } else { "" },
            quantity::show(self.least, self.kind, system),
            quantity::show(self.most, self.kind, system)
        );
        match refused {
            Refused::Misread(misread) => format!("{} {range}", misread.sentence()),
            Refused::OutOfRange(value) => {
                // Just outside, the usual digits would show the limit itself.
                let usual = |value: f64| quantity::show(value, self.kind, system);
                let limits = [self.least, self.most, self.whole(*value)];
                let looks_right = limits.iter().any(|limit| usual(*limit) == usual(*value));
                let read = if looks_right { quantity::plain(*value, self.kind, system) } else { usual(*value) };
                format!("I read {read}. {range}")
            }
        }
    }
}

/// How many pieces of a link are made; the input takes whole numbers from 1 only.
pub fn pieces_of(document: &Document, link: usize) -> usize {
    QUANTITY.value(document, At::of_link(document, link)).map_or(1, |pieces| pieces as usize)
}

/// Every place of a scope in a document.
pub fn places(document: &Document, scope: Scope) -> Vec<At> {
    let links = 0..document.links.len();
    match scope {
        Scope::Rig => vec![At::default()],
        Scope::Axle => [0, 1].map(At::of_axle).to_vec(),
        Scope::Link => links.map(|link| At::of_link(document, link)).collect(),
        Scope::End => links.flat_map(|link| [0, 1].map(|end| At { end, ..At::of_link(document, link) })).collect(),
    }
}
