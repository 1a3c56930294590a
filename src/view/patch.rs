//! Markup that changed a little: only the words and attributes that differ are written. Parsing a block anew costs a
//! slow phone more than the engine does, and takes away what was selected, folded open or had the focus.

use leptos::tachys::renderer::Rndr;
use leptos::tachys::renderer::types::{Element, Node};
use leptos::wasm_bindgen::{JsCast, JsValue};

/// Where words stand.
#[derive(Clone, Copy)]
enum At {
    /// At the beginning of an element.
    In(u32),
    /// Behind an element.
    After(u32),
}

/// What has to be written.
enum Change<'a> {
    Words(At, &'a str),
    Attribute(u32, &'a str, &'a str),
    /// Whether a box is ticked: its reader may have ticked it since, which stands in no markup.
    Tick(u32, bool),
}

/// What the tag of a box begins with. No other field is patched: what a reader typed there stands in no markup.
const BOX: &str = "input type=\"checkbox\"";
const TICKED: &str = " checked";

/// Writes `new` over `old`; false, and nothing written, when it takes other elements, or other places for words.
pub(super) fn patch(element: &Element, old: &str, new: &str) -> bool {
    let Some((changes, count)) = changes(old, new) else { return false };
    let all = element.get_elements_by_tag_name("*");
    // What a browser made of the markup must be what it says.
    if all.length() != count {
        return false;
    }
    let mut nodes = Vec::with_capacity(changes.len());
    for change in &changes {
        let (Change::Words(At::In(index) | At::After(index), _)
        | Change::Attribute(index, ..)
        | Change::Tick(index, _)) = change;
        let Some(element) = all.item(*index) else { return false };
        let node = match change {
            Change::Words(At::In(_), _) => Rndr::first_child(&element),
            Change::Words(At::After(_), _) => Rndr::next_sibling(&element),
            Change::Attribute(..) | Change::Tick(..) => Some(element.into()),
        };
        let words = matches!(change, Change::Words(..));
        let Some(node) = node.filter(|node| words == (node.node_type() == Node::TEXT_NODE)) else {
            return false;
        };
        nodes.push(node);
    }
    for (change, node) in changes.iter().zip(&nodes) {
        match change {
            Change::Words(_, words) => Rndr::set_text(node.unchecked_ref(), &read(words)),
            Change::Tick(_, is) => Rndr::set_property(node.unchecked_ref(), "checked", &JsValue::from_bool(*is)),
            Change::Attribute(_, name, value) => Rndr::set_attribute(node.unchecked_ref(), name, &read(value)),
        }
    }
    true
}

/// What differs between two texts of markup of the same elements, and how many elements there are.
fn changes<'a>(old: &str, new: &'a str) -> Option<(Vec<Change<'a>>, u32)> {
    let (mut old, mut new) = (old.split('<'), new.split('<'));
    // Words before the first element have none to be found by.
    let before = old.next()?;
    if before != new.next()? {
        return None;
    }
    let (mut changes, mut open, mut count) = (Vec::new(), Vec::new(), 0);
    loop {
        let (old, new) = match (old.next(), new.next()) {
            (Some(old), Some(new)) => (old.split_once('>')?, new.split_once('>')?),
            (None, None) => return Some((changes, count)),
            _ => return None,
        };
        let at = if new.0.starts_with('/') {
            if old.0 != new.0 {
                return None;
            }
            At::After(open.pop()?)
        } else {
            let index = count;
            count += 1;
            let is_box = new.0.starts_with(BOX);
            if is_box {
                let bare = new.0.strip_suffix(TICKED).unwrap_or(new.0);
                if old.0.strip_suffix(TICKED).unwrap_or(old.0) != bare {
                    return None;
                }
                changes.push(Change::Tick(index, bare != new.0));
            } else if new.0.starts_with("input") {
                return None;
            } else if old.0 != new.0 {
                attributes(old.0, new.0, index, &mut changes)?;
            }
            if is_box || new.0.ends_with('/') {
                At::After(index)
            } else {
                open.push(index);
                At::In(index)
            }
        };
        if old.1 != new.1 {
            // Words that come or go are a node that comes or goes.
            if old.1.is_empty() || new.1.is_empty() {
                return None;
            }
            changes.push(Change::Words(at, new.1));
        }
    }
}

/// The attributes that differ between two tags of the same name with the same attributes.
fn attributes<'a>(old: &str, new: &'a str, index: u32, changes: &mut Vec<Change<'a>>) -> Option<()> {
    let (mut old, mut new) = (old.split('"'), new.split('"'));
    loop {
        let (name, value) = match (old.next()?, old.next(), new.next()?, new.next()) {
            // What stands behind the last attribute, or a tag without any.
            (old, None, new, None) => return (old == new).then_some(()),
            (old, Some(before), new, Some(value)) if old == new => {
                let name = new.split_ascii_whitespace().last()?.strip_suffix('=')?;
                (name, (before != value).then_some(value))
            }
            _ => return None,
        };
        if let Some(value) = value {
            changes.push(Change::Attribute(index, name, value));
        }
    }
}

/// Markup as the text that it stands for: the other way of `escaped`.
fn read(words: &str) -> String {
    if !words.contains('&') {
        return words.to_string();
    }
    let marks = [("&lt;", "<"), ("&quot;", "\""), ("&amp;", "&")];
    marks.into_iter().fold(words.to_string(), |words, (mark, by)| words.replace(mark, by))
}
