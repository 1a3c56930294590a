//! Prints a formula's tree as plain text and as MathML, with its symbols or with values in their place.
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
    let at = |term: &Term, place: Place| {
        let shown = text_with(term, symbol);
        if needs_parentheses(term, &shown, place) { format!("({shown})") } else { shown }
    };
    match term {
        Term::Number(_, printed) => printed.clone(),
        Term::Symbol(name) => symbol(name),
        Term::Pi => "π".to_string(),
        Term::Add(a, b) => format!("{} + {}", at(a, Place::Alone), at(b, Place::Addend)),
        Term::Subtract(a, b) => format!("{} − {}", at(a, Place::Alone), at(b, Place::Addend)),
        Term::Multiply(a, b) => format!("{} · {}", at(a, Place::Factor), at(b, Place::Factor)),
        Term::Divide(a, b) => format!("{} / {}", at(a, Place::Factor), at(b, Place::Divisor)),
        Term::Power(base, exponent) => format!("{}{}", at(base, Place::Raised), superscript(*exponent)),
        Term::Root(of, degree) => format!("{}{}", if *degree == 3 { '∛' } else { '√' }, at(of, Place::Raised)),
        Term::Negative(of) => format!("−{}", at(of, Place::Addend)),
        Term::Group(of) => format!("({})", at(of, Place::Alone)),
        Term::Call(function, of) => {
            let arguments: Vec<String> = of.iter().map(|term| at(term, Place::Alone)).collect();
            format!("{}({})", function.name(), arguments.join(", "))
        }
    }
}

/// Where a value stands that took the place of a symbol.
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

fn needs_parentheses(term: &Term, shown: &str, place: Place) -> bool {
    let negative = shown.starts_with(['-', '−']);
    matches!(term, Term::Symbol(_))
        && match place {
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

/// The term as the inside of a `<math>` element, with its symbols.
pub fn mathml(term: &Term) -> String {
    mathml_with(term, &symbol_mathml)
}

/// The term as the inside of a `<math>` element, with something else in place of each symbol.
///
/// What `symbol` gives must be MathML too, such as `<mn>2</mn><mtext> in</mtext>`.
pub fn mathml_with(term: &Term, symbol: &dyn Fn(&str) -> String) -> String {
    let at = |term: &Term, place: Place| {
        let shown = mathml_with(term, symbol);
        if needs_parentheses(term, &without_tags(&shown), place) { parenthesized(&shown) } else { shown }
    };
    let pair = |a: String, sign: &str, b: String| format!("<mrow>{a}<mo>{sign}</mo>{b}</mrow>");
    // A fraction bar and a root sign group by themselves, so parentheses there would only be noise.
    let under = |term: &Term| mathml_with(ungrouped(term), symbol);
    match term {
        Term::Number(_, printed) => format!("<mn>{printed}</mn>"),
        Term::Symbol(name) => one_element(symbol(name)),
        Term::Pi => "<mi>π</mi>".to_string(),
        Term::Add(a, b) => pair(at(a, Place::Alone), "+", at(b, Place::Addend)),
        Term::Subtract(a, b) => pair(at(a, Place::Alone), "−", at(b, Place::Addend)),
        Term::Multiply(a, b) => pair(at(a, Place::Factor), "·", at(b, Place::Factor)),
        Term::Divide(a, b) => format!("<mfrac>{}{}</mfrac>", under(a), under(b)),
        Term::Power(base, exponent) => {
            format!("<msup>{}<mn>{}</mn></msup>", at(base, Place::Raised), exponent)
        }
        Term::Root(of, 3) => format!("<mroot>{}<mn>3</mn></mroot>", under(of)),
        Term::Root(of, _) => format!("<msqrt>{}</msqrt>", under(of)),
        Term::Negative(of) => format!("<mrow><mo>−</mo>{}</mrow>", at(of, Place::Addend)),
        Term::Group(of) => parenthesized(&at(of, Place::Alone)),
        Term::Call(function, of) => {
            let arguments: Vec<String> = of.iter().map(|term| at(term, Place::Alone)).collect();
            format!("<mrow><mi>{}</mi>{}</mrow>", function.name(), parenthesized(&arguments.join("<mo>,</mo>")))
        }
    }
}

fn parenthesized(inside: &str) -> String {
    format!("<mrow><mo>(</mo>{inside}<mo>)</mo></mrow>")
}

fn ungrouped(term: &Term) -> &Term {
    match term {
        Term::Group(of) => of,
        other => other,
    }
}

fn without_tags(mathml: &str) -> String {
    let mut inside_tag = false;
    let keep = |c: &char| match c {
        '<' => {
            inside_tag = true;
            false
        }
        '>' => {
            inside_tag = false;
            false
        }
        _ => !inside_tag,
    };
    mathml.chars().filter(keep).collect()
}

/// Powers and fractions count the elements they are given, so a value of several is bound into one.
fn one_element(mathml: String) -> String {
    let mut depth = 0_usize;
    let mut elements = 0;
    for tag in mathml.split('<').skip(1) {
        if tag.starts_with('/') {
            depth = depth.saturating_sub(1);
        } else {
            elements += usize::from(depth == 0);
            depth += 1;
        }
    }
    if elements == 1 { mathml } else { format!("<mrow>{mathml}</mrow>") }
}

/// A symbol such as `P_e` with its index set low.
pub fn symbol_mathml(name: &str) -> String {
    match name.split_once('_') {
        Some((base, index)) => {
            let tag = if index.chars().all(|c| c.is_ascii_digit()) { "mn" } else { "mi" };
            format!("<msub><mi>{base}</mi><{tag}>{index}</{tag}></msub>")
        }
        None => format!("<mi>{name}</mi>"),
    }
}
