//! Reads a written formula as an eye does: a power stands on what is just before it, a fraction bar binds what it spans.

use linkwright::present::math::Node;

/// What is seen, as a formula text; the fault where a part is empty or a root has another degree than it can be read with.
pub(crate) fn seen(node: &Node) -> Result<String, String> {
    Ok(match node {
        Node::Number(word) | Node::Identifier(word) | Node::Text(word) if word.trim().is_empty() => {
            return Err(format!("an empty {node:?}"));
        }
        Node::Number(word) | Node::Identifier(word) | Node::Text(word) => word.clone(),
        Node::Operator(sign) => format!(" {sign} "),
        Node::Row(parts) if parts.is_empty() => return Err("an empty row".to_string()),
        Node::Row(parts) => parts.iter().map(seen).collect::<Result<Vec<_>, _>>()?.concat(),
        Node::Fraction(parts) => format!("(({}) / ({}))", seen(&parts[0])?, seen(&parts[1])?),
        Node::Power(parts) => format!("{}^{}", seen(&parts[0])?.trim_end(), seen(&parts[1])?),
        Node::Subscript(parts) => format!("{}_{}", seen(&parts[0])?, seen(&parts[1])?),
        Node::SquareRoot(inside) => format!("(√({}))", seen(inside)?),
        Node::Root(parts) if parts[1] == Node::Number("3".to_string()) => format!("(∛({}))", seen(&parts[0])?),
        Node::Root(parts) => return Err(format!("a root of degree {:?}", parts[1])),
    })
}
