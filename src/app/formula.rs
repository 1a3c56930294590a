//! A formula as it is written by hand, in MathML, and a calculation of such formulas.

mod working;

pub(crate) use working::WorkingLines;

use leptos::prelude::*;
use linkwright::present::math::Node;

/// The formula.
#[component]
pub(crate) fn Formula(
    /// What is written.
    written: Node,
    /// Whether it stands on a line of its own.
    #[prop(optional)]
    block: bool,
) -> impl IntoView {
    view! { <math display=if block { "block" } else { "inline" }>{element(written)}</math> }
}

/// The element of a node, with those of its parts inside.
fn element(node: Node) -> AnyView {
    match node {
        Node::Number(word) => view! { <mn>{word}</mn> }.into_any(),
        Node::Identifier(word) => view! { <mi>{word}</mi> }.into_any(),
        Node::Operator(sign) => view! { <mo>{sign}</mo> }.into_any(),
        Node::Text(word) => view! { <mtext>{word}</mtext> }.into_any(),
        Node::Row(parts) => view! { <mrow>{parts.into_iter().map(element).collect::<Vec<_>>()}</mrow> }.into_any(),
        Node::Fraction(parts) => view! { <mfrac>{parts.map(element)}</mfrac> }.into_any(),
        Node::Power(parts) => view! { <msup>{parts.map(element)}</msup> }.into_any(),
        Node::Subscript(parts) => view! { <msub>{parts.map(element)}</msub> }.into_any(),
        Node::SquareRoot(inside) => view! { <msqrt>{element(*inside)}</msqrt> }.into_any(),
        Node::Root(parts) => view! { <mroot>{parts.map(element)}</mroot> }.into_any(),
    }
}
