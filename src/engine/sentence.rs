//! Sentences with values in them; the view writes the values in the reader's units.

use std::borrow::Cow;
use std::ops::Deref;

use crate::quantity::{self, Kind, System};

/// A sentence, or the beginning of one. One pointer, and each phrase is put in by a call: there are hundreds of them,
/// and written out in place they were a tenth of the engine's code.
#[derive(Debug, Clone, PartialEq, Default)]
pub struct Said(Option<Box<Phrases>>);

#[derive(Debug, Clone, PartialEq)]
struct Phrases(Vec<Phrase>);

impl Default for Phrases {
    /// With room for as many as most sentences have.
    fn default() -> Self {
        Self(Vec::with_capacity(8))
    }
}

/// A part of a sentence.
#[derive(Debug, Clone, PartialEq)]
pub enum Phrase {
    /// Words as they are.
    Words(Cow<'static, str>),
    /// A value, SI, and what it measures.
    Value(f64, Kind),
    /// The size of something bought, in meters, which keeps the name it is sold under.
    Trade(f64),
}

impl Said {
    /// A sentence without words.
    pub const fn new() -> Self {
        Self(None)
    }

    #[inline(never)]
    fn with(mut self, phrase: Phrase) -> Self {
        self.0.get_or_insert_default().0.push(phrase);
        self
    }

    /// The sentence with more words.
    #[must_use]
    #[inline(never)]
    pub fn words(self, words: impl Into<Cow<'static, str>>) -> Self {
        self.with(Phrase::Words(words.into()))
    }

    /// The sentence with a value, SI.
    #[must_use]
    #[inline(never)]
    pub fn value(self, value: f64, kind: Kind) -> Self {
        self.with(Phrase::Value(value, kind))
    }

    /// The sentence with the size of something bought, in meters.
    #[must_use]
    #[inline(never)]
    pub fn trade(self, size: f64) -> Self {
        self.with(Phrase::Trade(size))
    }

    /// Adds what else is to be said.
    pub fn extend(&mut self, more: Self) {
        if let Some(more) = more.0 {
            self.0.get_or_insert_default().0.extend(more.0);
        }
    }
}

impl Deref for Said {
    type Target = [Phrase];

    fn deref(&self) -> &[Phrase] {
        self.0.as_deref().map_or(&[], |phrases| &phrases.0)
    }
}

/// Builds a sentence: `said!["as long as ", (length, Length), "."]`.
macro_rules! said {
    (@put $said:expr;) => { $said };
    (@put $said:expr; ($value:expr, Trade) $(, $($rest:tt)*)?) => {
        $crate::engine::sentence::said!(@put $said.trade($value); $($($rest)*)?)
    };
    (@put $said:expr; ($value:expr, $kind:ident) $(, $($rest:tt)*)?) => {
        $crate::engine::sentence::said!(@put $said.value($value, $crate::quantity::Kind::$kind); $($($rest)*)?)
    };
    (@put $said:expr; $words:expr $(, $($rest:tt)*)?) => {
        $crate::engine::sentence::said!(@put $said.words($words); $($($rest)*)?)
    };
    ($($piece:tt)*) => { $crate::engine::sentence::said!(@put $crate::engine::sentence::Said::default(); $($piece)*) };
}
pub(crate) use said;

/// A sentence in one unit system, as plain text.
pub fn spoken(said: &[Phrase], system: System) -> String {
    said.iter()
        .map(|phrase| match phrase {
            Phrase::Words(words) => words.to_string(),
            // As in the lists, so that one length does not stand there in two ways.
            Phrase::Value(value, Kind::Length) => quantity::measured(*value, system),
            Phrase::Value(value, Kind::FineLength) => quantity::fit(*value, system),
            Phrase::Value(value, kind) => quantity::show(*value, *kind, system),
            Phrase::Trade(value) => quantity::trade(*value, system),
        })
        .collect()
}
