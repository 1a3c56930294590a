//! A formula's text as a tree: read it, evaluate it, check its units, print it as text.
//!
//! Grammar: `+ −` over `· /` over prefix `−` over powers (`²`, `³`, `⁴`, `^1.5`) over numbers,
//! symbols, `π`, `√x`, `∛x`, `name(a, b)` and parentheses. There is no implied multiplication.

use crate::engine::math;
use crate::quantity::Exponents;

mod parse;
mod print;

pub use parse::{Misspelled, comparison, parse};
pub use print::{grouped, text, text_with};

/// A function a formula text may call.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Function {
    /// Sine of an angle.
    Sin,
    /// Cosine of an angle.
    Cos,
    /// Tangent of an angle.
    Tan,
    /// Angle of a sine.
    Asin,
    /// Angle of a tangent.
    Atan,
    /// Smaller of two.
    Min,
    /// Larger of two.
    Max,
}

impl Function {
    /// Every function with its printed name.
    pub const ALL: [(Self, &'static str); 7] = [
        (Self::Sin, "sin"),
        (Self::Cos, "cos"),
        (Self::Tan, "tan"),
        (Self::Asin, "asin"),
        (Self::Atan, "atan"),
        (Self::Min, "min"),
        (Self::Max, "max"),
    ];

    /// The printed name.
    pub fn name(self) -> &'static str {
        Self::ALL.iter().find(|(function, _)| *function == self).map_or("", |(_, name)| name)
    }

    fn arity(self) -> usize {
        if matches!(self, Self::Min | Self::Max) { 2 } else { 1 }
    }

    fn apply(self, a: f64, b: f64) -> f64 {
        match self {
            Self::Sin => math::sine(a),
            Self::Cos => math::cosine(a),
            Self::Tan => math::tangent(a),
            Self::Asin => math::arcsine(a),
            Self::Atan => math::arctangent(a),
            Self::Min => a.min(b),
            Self::Max => a.max(b),
        }
    }
}

/// Whether a character can stand in the name of a symbol.
pub fn is_of_a_name(c: char) -> bool {
    c.is_alphabetic() || c.is_ascii_digit() || matches!(c, '_' | '′')
}

/// A formula text as a tree.
#[derive(Debug, Clone, PartialEq)]
pub enum Term {
    /// A number as printed.
    Number(f64, String),
    /// A named quantity such as `P_e`.
    Symbol(String),
    /// π.
    Pi,
    /// Sum.
    Add(Box<Term>, Box<Term>),
    /// Difference.
    Subtract(Box<Term>, Box<Term>),
    /// Product.
    Multiply(Box<Term>, Box<Term>),
    /// Quotient.
    Divide(Box<Term>, Box<Term>),
    /// Power with a plain number.
    Power(Box<Term>, f64),
    /// Square root (2) or cube root (3).
    Root(Box<Term>, u8),
    /// Change of sign.
    Negative(Box<Term>),
    /// A function.
    Call(Function, Vec<Term>),
    /// Parentheses, kept so that what is printed is what was written.
    Group(Box<Term>),
}

/// How two sides of a validity condition compare.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Comparator {
    /// ≥
    AtLeast,
    /// ≤
    AtMost,
    /// >
    Above,
    /// <
    Below,
}

/// A validity condition such as `L / r ≥ 10`.
#[derive(Debug, Clone, PartialEq)]
pub struct Comparison {
    /// Left side.
    pub left: Term,
    /// The sign between.
    pub comparator: Comparator,
    /// Right side.
    pub right: Term,
}

impl Comparison {
    /// Whether it holds for the given values; `None` when a symbol is unknown.
    pub fn holds(&self, value_of: &dyn Fn(&str) -> Option<f64>) -> Option<bool> {
        let (left, right) = (evaluate(&self.left, value_of)?, evaluate(&self.right, value_of)?);
        Some(match self.comparator {
            Comparator::AtLeast => left >= right,
            Comparator::AtMost => left <= right,
            Comparator::Above => left > right,
            Comparator::Below => left < right,
        })
    }
}

/// The value of a term; `None` when a symbol is unknown.
pub fn evaluate(term: &Term, value_of: &dyn Fn(&str) -> Option<f64>) -> Option<f64> {
    let value = |term: &Term| evaluate(term, value_of);
    Some(match term {
        Term::Number(number, _) => *number,
        Term::Symbol(name) => value_of(name)?,
        Term::Pi => std::f64::consts::PI,
        Term::Add(a, b) => value(a)? + value(b)?,
        Term::Subtract(a, b) => value(a)? - value(b)?,
        Term::Multiply(a, b) => value(a)? * value(b)?,
        Term::Divide(a, b) => value(a)? / value(b)?,
        Term::Power(base, exponent) => math::power(value(base)?, *exponent),
        Term::Root(of, 3) => math::cube_root(value(of)?),
        Term::Root(of, _) => value(of)?.sqrt(),
        Term::Negative(of) => -value(of)?,
        Term::Group(of) => value(of)?,
        Term::Call(function, of) => {
            let first = value(of.first()?)?;
            let second = of.get(1).map_or(Some(0.0), value)?;
            function.apply(first, second)
        }
    })
}

/// The units of a term, or a sentence that says where they do not close.
///
/// # Errors
/// An unknown symbol, a sum of unlike quantities, or a function of something with a unit.
pub fn exponents(term: &Term, kind_of: &dyn Fn(&str) -> Option<Exponents>) -> Result<Exponents, String> {
    const NONE: Exponents = [0.0; 3];
    let units = |term: &Term| exponents(term, kind_of);
    let same = |a: &Term, b: &Term| {
        let (left, right) = (units(a)?, units(b)?);
        if close(left, right) {
            Ok(left)
        } else {
            Err(format!("{} and {} have unlike units {left:?} and {right:?}", text(a), text(b)))
        }
    };
    match term {
        Term::Number(..) | Term::Pi => Ok(NONE),
        Term::Symbol(name) => kind_of(name).ok_or_else(|| format!("unknown symbol {name}")),
        Term::Add(a, b) | Term::Subtract(a, b) => same(a, b),
        Term::Multiply(a, b) => {
            let (a, b) = (units(a)?, units(b)?);
            Ok(std::array::from_fn(|i| a[i] + b[i]))
        }
        Term::Divide(a, b) => {
            let (a, b) = (units(a)?, units(b)?);
            Ok(std::array::from_fn(|i| a[i] - b[i]))
        }
        Term::Power(base, exponent) => Ok(units(base)?.map(|power| power * exponent)),
        Term::Root(of, degree) => Ok(units(of)?.map(|power| power / f64::from(*degree))),
        Term::Negative(of) | Term::Group(of) => units(of),
        Term::Call(Function::Min | Function::Max, of) => match of.as_slice() {
            [a, b] => same(a, b),
            _ => Err("min and max take two".to_string()),
        },
        Term::Call(function, of) => {
            for term in of {
                if !close(units(term)?, NONE) {
                    return Err(format!("{} of {}, which has a unit", function.name(), text(term)));
                }
            }
            Ok(NONE)
        }
    }
}

/// Whether two sets of powers are the same.
pub fn close(a: Exponents, b: Exponents) -> bool {
    a.iter().zip(b).all(|(a, b)| (a - b).abs() < 1e-9)
}
