//! A formula as data with its proof, and the sheet that every calculation goes through.

use super::notation;
use super::sentence::{Said, said};
use crate::quantity::Kind;
use crate::source::Cite;

/// A named quantity of a formula.
#[derive(Debug, PartialEq)]
pub struct Symbol {
    /// As printed, such as `P_e`.
    pub name: &'static str,
    /// What it measures.
    pub kind: Kind,
    /// What it is, in words.
    pub meaning: &'static str,
}

/// Where a formula stops being valid.
#[derive(Debug)]
pub struct Condition {
    /// As printed; a test shows that it says what the code asks.
    pub text: &'static str,
    /// The same in code.
    pub test: fn(&[f64]) -> bool,
}

/// One printed example that the code must reproduce to the digits printed.
#[derive(Debug)]
pub struct Example {
    /// The values put in, SI.
    pub given: &'static [f64],
    /// The result as printed.
    pub gives: &'static str,
    /// What one of the printed unit is in SI.
    pub unit: f64,
    /// Where the example comes from.
    pub origin: &'static str,
}

/// A formula with everything that a reader needs to trust it.
#[derive(Debug)]
pub struct Formula {
    /// The name in the code.
    pub id: &'static str,
    /// What it gives, as a sentence.
    pub says: &'static str,
    /// The symbol it gives.
    pub result: Symbol,
    /// The right side as printed.
    pub text: &'static str,
    /// The symbols it takes, in order.
    pub given: &'static [Symbol],
    /// The same in code, SI in and out.
    pub code: fn(&[f64]) -> f64,
    /// Where it holds; empty means everywhere its symbols make sense.
    pub holds: &'static [Condition],
    /// Where it comes from.
    pub source: Cite,
}

/// A formula beside its example, which stands apart: the tests need it, and the page goes without its weight.
pub type Shown = (&'static Formula, &'static Example);

/// A formula of `N` symbols, so that the compiler counts what is put in.
#[derive(Debug)]
pub struct FormulaOf<const N: usize> {
    /// The formula itself.
    pub formula: Formula,
}

impl<const N: usize> FormulaOf<N> {
    /// The value, without keeping a record.
    pub fn value(&self, given: &[f64; N]) -> f64 {
        (self.formula.code)(given)
    }
}

impl PartialEq for Formula {
    fn eq(&self, other: &Self) -> bool {
        self.id == other.id
    }
}

impl Formula {
    /// What it gives, without the full stop.
    pub fn title(&self) -> &'static str {
        self.says.trim().trim_end_matches('.')
    }

    /// Why it cannot be used where a condition is broken, naming the symbols of the condition.
    fn refusal(&self, condition: &Condition) -> Said {
        let named: Vec<String> = self
            .given
            .iter()
            .filter(|symbol| condition.text.split(|c| !notation::is_of_a_name(c)).any(|word| word == symbol.name))
            .map(|symbol| format!("{} is the {}", symbol.name, symbol.meaning))
            .collect();
        said![
            (self.title()),
            " cannot be worked out from these entries: its formula holds only for ",
            (condition.text),
            ", where ",
            (named.join(" and ")),
            "."
        ]
    }

    /// The first condition that the values break.
    pub fn broken(&self, given: &[f64]) -> Option<&'static Condition> {
        self.holds.iter().find(|condition| !(condition.test)(given))
    }
}

/// Makes a [`Formula`] whose code can name its symbols.
macro_rules! formula {
    (
        $(#[doc = $says:literal])+
        $id:ident: $name:literal $kind:ident = $text:literal;
        given $($symbol:ident $printed:literal $given_kind:ident $meaning:literal),+ $(,)?;
        code $code:expr;
        $(holds $condition:literal => $test:expr;)*
        source $source:ident, $place:literal, $obtained:ident;
        example [$($value:expr),+ $(,)?] gives $gives:literal of $unit:expr, $origin:literal;
    ) => {
        $crate::engine::formula::formula! { @with [$($symbol),+]
            $(#[doc = $says])+
            $id: $name $kind = $text;
            given $($printed $given_kind $meaning),+;
            code $code;
            $(holds $condition => $test;)*
            source $source, $place, $obtained;
            example [$($value),+] gives $gives of $unit, $origin;
        }
    };
    (
        @with $symbols:tt
        $(#[doc = $says:literal])+
        $id:ident: $name:literal $kind:ident = $text:literal;
        given $($printed:literal $given_kind:ident $meaning:literal),+;
        code $code:expr;
        $(holds $condition:literal => $test:expr;)*
        source $source:ident, $place:literal, $obtained:ident;
        example [$($value:expr),+] gives $gives:literal of $unit:expr, $origin:literal;
    ) => {
        $(#[doc = $says])+
        pub static $id: $crate::engine::formula::FormulaOf<{ [$($printed),+].len() }> = $crate::engine::formula::FormulaOf { formula: $crate::engine::formula::Formula {
            id: stringify!($id),
            says: concat!($($says),+),
            result: $crate::engine::formula::Symbol { name: $name, kind: $crate::quantity::Kind::$kind, meaning: concat!($($says),+) },
            text: $text,
            given: &[$($crate::engine::formula::Symbol { name: $printed, kind: $crate::quantity::Kind::$given_kind, meaning: $meaning }),+],
            code: |given| match *given { $symbols => $code, _ => f64::NAN },
            holds: &[$($crate::engine::formula::Condition {
                text: $condition,
                #[allow(unused_variables)]
                test: |given| match *given { $symbols => $test, _ => false },
            }),*],
            source: $crate::source::cite(&$crate::source::$source, $place, $crate::source::Obtained::$obtained),
        } };

        /// Holds the example of the formula of the same name.
        #[allow(non_camel_case_types)]
        pub enum $id {}

        impl $id {
            /// One printed example.
            pub const EXAMPLE: &$crate::engine::formula::Example =
                &$crate::engine::formula::Example { given: &[$($value),+], gives: $gives, unit: $unit, origin: $origin };
        }
    };
}
pub(crate) use formula;

/// Lists every formula of a file with its example: those that serve an answer, and those that are references only, which
/// stand for comparison beside them and for the tests.
macro_rules! listed {
    ($($id:ident),* $(,)? $(; references $($reference:ident),+ $(,)?)?) => {
        /// Every formula of this file that serves an answer.
        pub static ALL: &[$crate::engine::formula::Shown] = &[$((&$id.formula, $id::EXAMPLE)),*];
        /// Those that serve none.
        pub static REFERENCES: &[$crate::engine::formula::Shown] = &[$($((&$reference.formula, $reference::EXAMPLE)),+)?];
    };
}
pub(crate) use listed;

/// One line of a calculation.
#[derive(Debug, Clone, PartialEq)]
pub enum Line {
    /// What the whole calculation comes to, in one line; it stands first.
    Result(Said),
    /// A formula with the values put in and what came out.
    Worked {
        /// Which formula.
        formula: &'static Formula,
        /// What was put in, SI.
        given: Vec<f64>,
        /// What came out, SI.
        result: f64,
    },
    /// A value read from a table.
    LookedUp {
        /// What was looked up, in words.
        what: &'static str,
        /// The value, SI.
        value: f64,
        /// What it measures.
        kind: Kind,
        /// The row of the table.
        row: &'static str,
        /// Where the row comes from.
        source: Cite,
    },
    /// A decision between two ways, said aloud.
    Chose(Said),
    /// A value found by trying, with what it makes equal.
    Solved {
        /// What was sought, in words.
        what: &'static str,
        /// The value, SI.
        value: f64,
        /// What it measures.
        kind: Kind,
        /// How it was found.
        how: &'static str,
    },
    /// A value that nobody gave: a default which the user may change.
    Assumed {
        /// The id of the input that would replace it.
        input: &'static str,
        /// The value, SI.
        value: f64,
        /// Whether the user has changed it.
        changed: bool,
    },
}

/// The calculation sheet: computes through formulas and remembers how, so that nothing can be
/// shown which was not computed. A sheet that does not record costs a search almost nothing.
#[derive(Debug, Default)]
pub struct Sheet {
    /// The working, in the order it was done.
    pub lines: Vec<Line>,
    /// Why the result cannot be trusted, when a formula was used where it does not hold.
    pub out_of_range: Option<Said>,
    /// Utilizations with the line that tells each; a check shows the one that it comes out with.
    results: Vec<(f64, Said)>,
    recording: bool,
}

impl Sheet {
    /// A sheet that keeps its working.
    pub fn recording() -> Self {
        Self { recording: true, ..Self::default() }
    }

    /// A sheet for searches: same numbers, no record.
    pub fn silent() -> Self {
        Self::default()
    }

    /// A sheet that keeps its working exactly when `other` does.
    pub fn like(other: &Self) -> Self {
        Self { recording: other.recording, ..Self::default() }
    }

    /// Whether somebody will read what is worked here.
    pub fn is_recording(&self) -> bool {
        self.recording
    }

    /// Works a formula and keeps the line.
    pub fn work<const N: usize>(&mut self, formula: &'static FormulaOf<N>, given: &[f64; N]) -> f64 {
        let formula = &formula.formula;
        let result = (formula.code)(given);
        if self.out_of_range.is_none() {
            if let Some(condition) = formula.broken(given) {
                self.out_of_range = Some(formula.refusal(condition));
            } else if !result.is_finite() {
                self.out_of_range = Some(said![
                    (formula.title()),
                    " cannot be worked out from these entries; check them for a value that cannot be."
                ]);
            }
        }
        if self.recording {
            self.lines.push(Line::Worked { formula, given: given.to_vec(), result });
        }
        result
    }

    /// Keeps a value read from a table.
    pub fn look_up(&mut self, what: &'static str, value: f64, kind: Kind, row: &'static str, source: Cite) -> f64 {
        if self.recording {
            self.lines.push(Line::LookedUp { what, value, kind, row, source });
        }
        value
    }

    /// Keeps a decision; the sentence is only built when somebody will read it.
    pub fn choose(&mut self, because: impl FnOnce() -> Said) {
        if self.recording {
            self.lines.push(Line::Chose(because()));
        }
    }

    /// Keeps what a utilization comes from, in one line.
    pub fn conclude(&mut self, utilization: f64, line: impl FnOnce() -> Said) {
        if self.recording {
            self.results.push((utilization, line()));
        }
    }

    /// The line of a utilization that was concluded.
    pub fn result(&self, utilization: f64) -> Option<&Said> {
        self.results.iter().find(|(concluded, _)| concluded.total_cmp(&utilization).is_eq()).map(|(_, line)| line)
    }

    /// Takes over what another sheet worked.
    pub fn take_over(&mut self, other: Self) {
        self.lines.extend(other.lines);
        self.results.extend(other.results);
        if self.out_of_range.is_none() {
            self.out_of_range = other.out_of_range;
        }
    }

    /// A sentence, when somebody will read it; a search reads none.
    pub fn remark(&self, sentence: impl FnOnce() -> Said) -> Said {
        if self.recording { sentence() } else { Said::default() }
    }

    /// Keeps any other line.
    pub fn record(&mut self, line: impl FnOnce() -> Line) {
        if self.recording {
            self.lines.push(line());
        }
    }
}
