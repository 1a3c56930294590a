//! Prints a formula's tree as plain text, with its symbols or with values in their place.
//!
//! The parser keeps parentheses as [`Term::Group`], so a tree it made prints without adding any. Only a
//! value put in place of a symbol may need some: `a − b` with −3 for b is `a − (−3)`.

use super::Term;

/// The text of a term, which reads back to the same tree.
pub fn text(term: &Term) -> String {
    text_with(term, &|name| name.to_string())
}

/// The text of a term with something else, such as a value, in place of each symbol.
pub fn text_with(term: &Term, symbol: &dyn Fn(&str) -> String) -> String {
    written(&grouped(term, symbol), symbol)
}

fn written(term: &Term, symbol: &dyn Fn(&str) -> String) -> String {
    let of = |term: &Term| written(term, symbol);
    match term {
        Term::Number(_, printed) => printed.clone(),
        Term::Symbol(name) => symbol(name),
        Term::Pi => "π".to_string(),
        Term::Add(a, b) => format!("{} + {}", of(a), of(b)),
        Term::Subtract(a, b) => format!("{} − {}", of(a), of(b)),
        Term::Multiply(a, b) => format!("{} · {}", of(a), of(b)),
        Term::Divide(a, b) => format!("{} / {}", of(a), of(b)),
        Term::Power(base, exponent) => format!("{}{}", of(base), superscript(*exponent)),
        Term::Root(inside, degree) => format!("{}{}", if *degree == 3 { '∛' } else { '√' }, of(inside)),
        Term::Negative(inside) => format!("−{}", of(inside)),
        Term::Group(inside) => format!("({})", of(inside)),
        Term::Call(function, arguments) => {
            let arguments: Vec<String> = arguments.iter().map(of).collect();
            format!("{}({})", function.name(), arguments.join(", "))
        }
    }
}

/// Where a value stands that takes the place of a symbol.
#[derive(Clone, Copy)]
enum Place {
    /// By itself, in parentheses already, or first in a sum.
    Alone,
    /// After a plus or a minus.
    Addend,
    /// In a product, or first in a quotient.
    Factor,
    /// After a slash.
    Divisor,
    /// Under a power or a root sign.
    Raised,
}

/// The term with parentheses around each symbol whose place cannot take what is `shown` for it without them.
pub fn grouped(term: &Term, shown: &dyn Fn(&str) -> String) -> Term {
    let at = |term: &Term, place: Place| {
        let inside = grouped(term, shown);
        let needed = matches!(term, Term::Symbol(name) if needs_parentheses(&shown(name), place));
        Box::new(if needed { Term::Group(Box::new(inside)) } else { inside })
    };
    match term {
        Term::Number(..) | Term::Symbol(_) | Term::Pi => term.clone(),
        Term::Add(a, b) => Term::Add(at(a, Place::Alone), at(b, Place::Addend)),
        Term::Subtract(a, b) => Term::Subtract(at(a, Place::Alone), at(b, Place::Addend)),
        Term::Multiply(a, b) => Term::Multiply(at(a, Place::Factor), at(b, Place::Factor)),
        Term::Divide(a, b) => Term::Divide(at(a, Place::Factor), at(b, Place::Divisor)),
        Term::Power(base, exponent) => Term::Power(at(base, Place::Raised), *exponent),
        Term::Root(inside, degree) => Term::Root(at(inside, Place::Raised), *degree),
        Term::Negative(inside) => Term::Negative(at(inside, Place::Addend)),
        Term::Group(inside) => Term::Group(at(inside, Place::Alone)),
        Term::Call(function, arguments) => {
            Term::Call(*function, arguments.iter().map(|term| grouped(term, shown)).collect())
        }
    }
}

fn needs_parentheses(shown: &str, place: Place) -> bool {
    let negative = shown.starts_with(['-', '−']);
    match place {
        Place::Alone => false,
        Place::Addend | Place::Factor => negative,
        Place::Divisor => negative || shown.contains(['/', '·', '×']),
        // `2 in²` would say square inches, and `-3²` minus nine.
        Place::Raised => !shown.chars().all(|c| super::is_of_a_name(c) || matches!(c, '.' | ',' | '²' | '³' | '⁴')),
    }
}

fn superscript(exponent: f64) -> String {
    for (value, sign) in [(2.0, "²"), (3.0, "³"), (4.0, "⁴")] {
        if (exponent - value).abs() < 1e-12 {
            return sign.to_string();
        }
    }
    format!("^{exponent}")
}
