//! What a field shows: the text in it, what stands when it is empty, why an entry is not taken.

use super::words::{length, lower};
use crate::document::Document;
use crate::inputs::drafts::Drafts;
use crate::inputs::{At, DefaultKind, Group, Number, Scope, edits};
use crate::quantity::{Kind, System, inch, mm, plain, show};

/// The title over the entries that have a default.
pub const CHANGE_A_DEFAULT: &str = "Change a default";

/// What becomes of the name of the rig.
pub const NAME_HELP: &str = "Optional. It goes along in the link you send.";

/// What a number field shows.
#[derive(Debug, Clone, PartialEq, Eq, Default)]
pub struct NumberText {
    /// What stands in it: as typed, else the value in the reader's units.
    pub text: String,
    /// What stands there, faint, while it is empty: the default.
    pub placeholder: String,
    /// What stands when the field is left empty, and how firm that is.
    pub default: String,
    /// Why the entry was not taken.
    pub complaint: Option<String>,
    /// What the entry may have meant.
    pub question: Option<String>,
    /// Whether the reader decided the value.
    pub changed: bool,
}

/// What the field of an input at a place shows.
pub fn number(document: &Document, drafts: &Drafts, system: System, input: &Number, place: At) -> NumberText {
    let (decided, default) = ((input.get)(document, place), (input.default)(document, place));
    let draft = drafts.of(document, system, input, place);
    let complaint = draft.filter(|draft| draft.settled).and_then(|draft| draft.refused.as_ref());
    let plainly = |value: Option<f64>| value.map(|value| read(value, input.kind, system)).unwrap_or_default();
    NumberText {
        complaint: complaint.map(|refused| input.sentence(refused, system)),
        question: draft.and_then(|draft| input.question(&draft.text, system)),
        text: draft.map_or_else(|| plainly(decided), |draft| draft.text.clone()),
        placeholder: plainly(default),
        default: default_in_words(input, default, system),
        changed: decided.is_some(),
    }
}

/// A value that was not typed just now. What comes from the other units with more digits than anybody wrote is shown as
/// it is read elsewhere; the document keeps its bits.
fn read(value: f64, kind: Kind, system: System) -> String {
    let exact = plain(value, kind, system);
    let digits = exact.split_once('.').map_or(0, |(_, digits)| digits.len());
    let elsewhere = match (kind, system) {
        (Kind::Weight, _) if digits > 1 => show(value, kind, system),
        (Kind::Length, System::Metric) if digits > 2 => length(value, system),
        _ => return exact,
    };
    elsewhere.split(' ').next().map_or(exact, str::to_string)
}

fn default_in_words(input: &Number, default: Option<f64>, system: System) -> String {
    match (default, input.default_kind) {
        (_, DefaultKind::Asked) => String::new(),
        (Some(value), kind) => format!("Default {}: {}.", show(value, input.kind, system), kind.words()),
        (None, kind) => format!("Default: {}.", kind.words()),
    }
}

/// The id of an input at a place: `length`, or `hand-b`.
pub fn key(id: &str, scope: Scope, place: At) -> String {
    match scope {
        Scope::Axle => format!("{id}-{}", if place.axle == 0 { "front" } else { "rear" }),
        Scope::End => format!("{id}-{}", if place.end == 0 { "a" } else { "b" }),
        Scope::Rig | Scope::Link => id.to_string(),
    }
}

/// How many entries of a group the reader decided; empty when none.
pub fn changed_words(document: &Document, group: Group, place: At) -> String {
    match edits::count_decided(document, group, place) {
        0 => String::new(),
        count => format!(" {count} changed"),
    }
}

/// The smallest step of a tape measure, as a key says it.
pub const fn step_words(system: System) -> &'static str {
    match system {
        System::Inch => "1/16",
        System::Metric => "1 mm",
    }
}

/// What a button is called that makes a length longer or shorter by that step.
pub const fn step_label(system: System, longer: bool) -> &'static str {
    match (system, longer) {
        (System::Inch, true) => "1/16 in longer",
        (System::Inch, false) => "1/16 in shorter",
        (System::Metric, true) => "1 mm longer",
        (System::Metric, false) => "1 mm shorter",
    }
}

/// The text of a length moved by the smallest step of a tape measure, onto its marks: up for a `direction` of 1, down
/// for -1. `None` where there is no length yet.
pub fn stepped(document: &Document, system: System, input: &Number, place: At, direction: f64) -> Option<String> {
    let step = if system == System::Inch { inch(1.0 / 16.0) } else { mm(1.0) };
    let value = input.value(document, place)?;
    Some(plain(((value / step).round() + direction) * step, input.kind, system))
}

/// Of several links, whose entry it is: drawing and picker may be out of sight.
pub fn of_several(document: &Document, link: usize) -> String {
    match (document.links.len(), document.links.get(link)) {
        (several @ 2.., Some(this)) => format!(", {}, {} of {several}", lower(&this.title()), link + 1),
        _ => String::new(),
    }
}

/// The fractions beside the number pad.
pub const FRACTIONS: [&str; 7] = ["1/2", "1/4", "3/4", "1/8", "3/8", "5/8", "7/8"];

/// An entry with this fraction of an inch in place of the one it has: `36` and `1/2` give `36 1/2`.
pub fn with_fraction(text: &str, fraction: &str) -> String {
    let text = text.trim().trim_end_matches(['"', '”']).trim_end();
    // A fraction or decimals in the text are replaced.
    let whole = match text.rsplit_once([' ', '-']) {
        Some((whole, last)) if last.contains('/') => whole,
        _ if text.contains('/') => "",
        _ => text.split_once('.').map_or(text, |(whole, _)| whole),
    };
    let whole = whole.trim_end();
    if whole.is_empty() { fraction.to_string() } else { format!("{whole} {fraction}") }
}
