//! A formula as it is written by hand: a tree of fractions, powers and roots, each node one element of MathML.

use crate::engine::notation::{Term, grouped};

/// A part of a written formula.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum Node {
    /// A number.
    Number(String),
    /// The name of a quantity or a function.
    Identifier(String),
    /// A sign between two parts, or a parenthesis.
    Operator(&'static str),
    /// Words, such as a unit.
    Text(String),
    /// Parts side by side.
    Row(Vec<Node>),
    /// A numerator over a denominator.
    Fraction(Box<[Node; 2]>),
    /// A base and what it is raised to.
    Power(Box<[Node; 2]>),
    /// A name and its index.
    Subscript(Box<[Node; 2]>),
    /// A square root.
    SquareRoot(Box<Node>),
    /// What is under a root sign, and the degree of the root.
    Root(Box<[Node; 2]>),
}

/// An equation: the name of a quantity, or nothing below a line that names it, and what it is equal to.
pub fn equation(name: Option<&str>, right: Node) -> Node {
    let left = name.map(symbol);
    Node::Row(left.into_iter().chain([Node::Operator("="), right]).collect())
}

/// A symbol such as `P_e`, with its index set low.
pub fn symbol(name: &str) -> Node {
    let Some((base, index)) = name.split_once('_') else { return Node::Identifier(name.to_string()) };
    let counts = index.chars().all(|c| c.is_ascii_digit());
    let index = if counts { Node::Number(index.to_string()) } else { Node::Identifier(index.to_string()) };
    Node::Subscript(Box::new([Node::Identifier(base.to_string()), index]))
}

/// A value as it is shown, `2.5 in`: its number and its unit.
pub fn quantity(shown: &str) -> Node {
    match shown.split_once(' ') {
        Some((number, unit)) => Node::Row(vec![Node::Number(number.to_string()), Node::Text(format!("\u{a0}{unit}"))]),
        None => Node::Number(shown.to_string()),
    }
}

/// A formula in its symbols.
pub fn with_symbols(term: &Term) -> Node {
    node(term, &symbol)
}

/// A formula with a value in place of each symbol; `shown` gives its text, `2.5 in`. One without a value stays.
pub fn with_values(term: &Term, shown: &dyn Fn(&str) -> Option<String>) -> Node {
    let text = |name: &str| shown(name).unwrap_or_else(|| name.to_string());
    let value = |name: &str| shown(name).map_or_else(|| symbol(name), |shown| quantity(&shown));
    node(&grouped(term, &text), &value)
}

fn node(term: &Term, of_symbol: &dyn Fn(&str) -> Node) -> Node {
    let of = |term: &Term| node(term, of_symbol);
    let pair = |a: &Term, sign: &'static str, b: &Term| Node::Row(vec![of(a), Node::Operator(sign), of(b)]);
    // A fraction bar and a root sign group by themselves, so parentheses there are left out.
    let under = |term: &Term| of(ungrouped(term));
    match term {
        Term::Number(_, printed) => Node::Number(printed.clone()),
        Term::Symbol(name) => of_symbol(name),
        Term::Pi => Node::Identifier("π".to_string()),
        Term::Add(a, b) => pair(a, "+", b),
        Term::Subtract(a, b) => pair(a, "−", b),
        Term::Multiply(a, b) => pair(a, "·", b),
        Term::Divide(a, b) => Node::Fraction(Box::new([under(a), under(b)])),
        Term::Power(base, exponent) => Node::Power(Box::new([of(base), Node::Number(exponent.to_string())])),
        Term::Root(inside, 3) => Node::Root(Box::new([under(inside), Node::Number("3".to_string())])),
        Term::Root(inside, _) => Node::SquareRoot(Box::new(under(inside))),
        Term::Negative(inside) => Node::Row(vec![Node::Operator("−"), of(inside)]),
        Term::Group(inside) => parenthesized(vec![of(inside)]),
        Term::Call(function, arguments) => {
            let mut inside: Vec<Node> = Vec::new();
            for argument in arguments {
                if !inside.is_empty() {
                    inside.push(Node::Operator(","));
                }
                inside.push(of(argument));
            }
            Node::Row(vec![Node::Identifier(function.name().to_string()), parenthesized(inside)])
        }
    }
}

fn parenthesized(mut inside: Vec<Node>) -> Node {
    inside.insert(0, Node::Operator("("));
    inside.push(Node::Operator(")"));
    Node::Row(inside)
}

fn ungrouped(term: &Term) -> &Term {
    match term {
        Term::Group(inside) => inside,
        other => other,
    }
}
