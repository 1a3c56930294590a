//! Prints a formula's tree as plain text and as MathML, with its symbols or with values in their place.

use super::Term;

/// The text of a term, which reads back to the same tree.
pub fn text(term: &Term) -> String {
    text_with(term, &|name| name.to_string())
}

/// The text of a term with something else, such as a value, in place of each symbol.
pub fn text_with(term: &Term, symbol: &dyn Fn(&str) -> String) -> String {
    let show = |term: &Term| text_with(term, symbol);
    match term {
        Term::Number(_, printed) => printed.clone(),
        Term::Symbol(name) => symbol(name),
        Term::Pi => "π".to_string(),
        Term::Add(a, b) => format!("{} + {}", show(a), show(b)),
        Term::Subtract(a, b) => format!("{} − {}", show(a), show(b)),
        Term::Multiply(a, b) => format!("{} · {}", show(a), show(b)),
        Term::Divide(a, b) => format!("{} / {}", show(a), show(b)),
        Term::Power(base, exponent) => {
            let shown = show(base);
            // A value such as "2 in" needs parentheses before it can be raised to a power.
            let shown = if matches!(**base, Term::Symbol(_)) && shown.contains(' ') { format!("({shown})") } else { shown };
            format!("{shown}{}", superscript(*exponent))
        }
        Term::Root(of, degree) => {
            let shown = show(of);
            let shown = if matches!(**of, Term::Symbol(_)) && shown.contains(' ') { format!("({shown})") } else { shown };
            format!("{}{shown}", if *degree == 3 { '∛' } else { '√' })
        }
        Term::Negative(of) => format!("−{}", show(of)),
        Term::Group(of) => format!("({})", show(of)),
        Term::Call(function, of) => {
            let arguments: Vec<String> = of.iter().map(show).collect();
            format!("{}({})", function.name(), arguments.join(", "))
        }
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
pub fn mathml_with(term: &Term, symbol: &dyn Fn(&str) -> String) -> String {
    let show = |term: &Term| mathml_with(term, symbol);
    let pair = |a: &Term, sign: &str, b: &Term| format!("<mrow>{}<mo>{sign}</mo>{}</mrow>", show(a), show(b));
    match term {
        Term::Number(_, printed) => format!("<mn>{printed}</mn>"),
        Term::Symbol(name) => symbol(name),
        Term::Pi => "<mi>π</mi>".to_string(),
        Term::Add(a, b) => pair(a, "+", b),
        Term::Subtract(a, b) => pair(a, "−", b),
        Term::Multiply(a, b) => pair(a, "·", b),
        // A fraction bar groups by itself, so parentheses around a whole side would only be noise.
        Term::Divide(a, b) => format!("<mfrac>{}{}</mfrac>", show(ungrouped(a)), show(ungrouped(b))),
        Term::Power(base, exponent) => {
            let shown = show(base);
            let shown = if matches!(**base, Term::Symbol(_)) && shown.contains("<mtext>") {
                format!("<mrow><mo>(</mo>{shown}<mo>)</mo></mrow>")
            } else {
                shown
            };
            format!("<msup>{shown}<mn>{exponent}</mn></msup>")
        }
        Term::Root(of, 3) => format!("<mroot>{}<mn>3</mn></mroot>", show(ungrouped(of))),
        Term::Root(of, _) => format!("<msqrt>{}</msqrt>", show(ungrouped(of))),
        Term::Negative(of) => format!("<mrow><mo>−</mo>{}</mrow>", show(of)),
        Term::Group(of) => format!("<mrow><mo>(</mo>{}<mo>)</mo></mrow>", show(of)),
        Term::Call(function, of) => {
            let arguments: Vec<String> = of.iter().map(show).collect();
            format!("<mrow><mi>{}</mi><mo>(</mo>{}<mo>)</mo></mrow>", function.name(), arguments.join("<mo>,</mo>"))
        }
    }
}

fn ungrouped(term: &Term) -> &Term {
    match term {
        Term::Group(of) => of,
        other => other,
    }
}

/// A symbol such as `P_e` with its index set low.
pub fn symbol_mathml(name: &str) -> String {
    match name.split_once('_') {
        Some((base, index)) => format!("<msub><mi>{base}</mi><mi>{index}</mi></msub>"),
        None => format!("<mi>{name}</mi>"),
    }
}
