//! Columns as data: heading, what a cell may hold, and where it stands in a row.
//!
//! Files, the table on the page and its editing all follow from a list of columns; a new column is one row of it.

use super::money::Rate;
use crate::document::{Hand, ShankSteel};
use crate::quantity::Kind;

/// One thing that may be picked in a cell.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Pick {
    /// Never reused once released; read in a file as well as the label.
    pub id: &'static str,
    /// As files and the page show it.
    pub label: &'static str,
}

/// What a cell may hold.
#[derive(Debug, Clone, Copy)]
pub enum Holds {
    /// Words on one line.
    Text,
    /// So many pieces; 0 is a count, nothing is not known.
    Count,
    /// A quantity between two limits, SI.
    Number {
        /// What it measures.
        kind: Kind,
        /// Least value accepted.
        least: f64,
        /// Most value accepted.
        most: f64,
    },
    /// What one unit costs.
    Money,
    /// A percentage.
    Percent,
    /// One of a list.
    Pick(fn() -> Vec<Pick>),
}

/// What a cell holds.
#[derive(Debug, Clone, PartialEq)]
pub enum Value {
    /// Nothing.
    Empty,
    /// Words.
    Text(String),
    /// So many pieces.
    Count(u32),
    /// A quantity, SI.
    Number(f64),
    /// Money for one unit, or a percentage.
    Rate(Rate),
    /// The id of what was picked.
    Picked(&'static str),
}

/// A column of a list whose rows are of one type.
#[derive(Debug)]
pub struct Column<R> {
    /// Its heading without the unit.
    pub name: &'static str,
    /// What its cells hold.
    pub holds: Holds,
    /// Whether a row is of no use without it.
    pub needed: bool,
    /// What a row has in it.
    pub get: fn(&R) -> Value,
    /// Puts a value that this column reads into a row.
    pub put: fn(&mut R, Value),
}

/// A field of a row that a column shows.
pub trait Field {
    /// Its value.
    fn shown(&self) -> Value;
    /// Takes a value over; one of another kind empties it.
    fn take(&mut self, value: Value);
}

/// What may be picked and is kept as a value of its own type.
pub trait Picked: Copy + PartialEq + 'static {
    /// Each value with its id and label.
    const ALL: &'static [(Self, Pick)];
}

macro_rules! fields {
    ($($type:ty: $variant:ident;)*) => {$(
        impl Field for Option<$type> {
            fn shown(&self) -> Value {
                self.map_or(Value::Empty, Value::$variant)
            }

            fn take(&mut self, value: Value) {
                *self = if let Value::$variant(value) = value { Some(value) } else { None };
            }
        }
    )*};
}
fields! { f64: Number; u32: Count; Rate: Rate; &'static str: Picked; }

impl Field for String {
    fn shown(&self) -> Value {
        if self.is_empty() { Value::Empty } else { Value::Text(self.clone()) }
    }

    fn take(&mut self, value: Value) {
        *self = if let Value::Text(text) = value { text } else { Self::new() };
    }
}

impl<T: Picked> Field for Option<T> {
    fn shown(&self) -> Value {
        let row = self.and_then(|value| T::ALL.iter().find(|(of, _)| *of == value));
        row.map_or(Value::Empty, |(_, pick)| Value::Picked(pick.id))
    }

    fn take(&mut self, value: Value) {
        *self = match value {
            Value::Picked(id) => T::ALL.iter().find(|(_, pick)| pick.id == id).map(|(of, _)| *of),
            _ => None,
        };
    }
}

/// The options of a type.
pub fn options<T: Picked>() -> Vec<Pick> {
    T::ALL.iter().map(|(_, pick)| *pick).collect()
}

impl Picked for Hand {
    const ALL: &'static [(Self, Pick)] =
        &[(Self::Right, Pick { id: "rh", label: "Right-hand" }), (Self::Left, Pick { id: "lh", label: "Left-hand" })];
}

impl Picked for ShankSteel {
    const ALL: &'static [(Self, Pick)] = &[
        (Self::Alloy, Pick { id: "alloy", label: "Heat-treated alloy" }),
        (Self::NotKnown, Pick { id: "not-known", label: "Not known" }),
    ];
}

/// A list of columns: heading, field, what it holds, and `needed` where a row is of no use without it.
macro_rules! columns {
    ($(#[$doc:meta])* $name:ident of $row:ty: $($heading:literal $field:ident $holds:expr $(, $needed:ident)?;)*) => {
        $(#[$doc])*
        pub static $name: &[$crate::shop::columns::Column<$row>] = &[$($crate::shop::columns::Column {
            name: $heading,
            holds: $holds,
            needed: columns!(@ $($needed)?),
            get: |row| $crate::shop::columns::Field::shown(&row.$field),
            put: |row, value| $crate::shop::columns::Field::take(&mut row.$field, value),
        }),*];
    };
    (@ needed) => { true };
    (@) => { false };
}
pub(super) use columns;
