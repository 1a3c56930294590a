//! Cells: how each kind of value is read from a file or from the page, and written back.

use super::columns::{Holds, Pick, Value};
use super::money::Rate;
use crate::document::one_line;
use crate::quantity::{self, Kind, System, unit_name};

/// The longest name or remark, in characters.
const LONGEST_TEXT: usize = 120;

/// More pieces of one thing than any shop keeps.
const MOST_PIECES: u32 = 100_000;

impl Holds {
    /// A length between two limits.
    pub const fn length(least: f64, most: f64) -> Self {
        Self::Number { kind: Kind::FineLength, least, most }
    }

    /// The unit in the headings of files; empty without one.
    pub const fn unit(&self) -> &'static str {
        match self {
            Self::Number { kind, .. } => unit_name(*kind, System::Inch),
            Self::Percent => "%",
            _ => "",
        }
    }

    /// Whether a heading may give this unit.
    pub fn takes_unit(&self, unit: &str) -> bool {
        match self {
            Self::Number { kind, .. } => quantity::read(&format!("1 {unit}"), *kind, System::Inch).is_ok(),
            other => unit == other.unit(),
        }
    }

    /// Reads what was typed into a cell of the page, where a bare number has the unit of `system`.
    ///
    /// # Errors
    /// A sentence that says what was read and what would work.
    pub fn typed(&self, text: &str, system: System) -> Result<Value, String> {
        match self {
            Self::Number { kind, .. } if !text.trim().is_empty() => {
                self.in_range(quantity::read(text, *kind, system).map_err(|misread| misread.sentence())?, system)
            }
            _ => self.read(text, ""),
        }
    }

    /// Reads a cell of a file, where a bare number has the unit that stands in the heading.
    ///
    /// # Errors
    /// A sentence that says what was read and what would work.
    pub fn read(&self, text: &str, unit: &str) -> Result<Value, String> {
        let text = one_line(text, usize::MAX);
        if text.is_empty() {
            return Ok(Value::Empty);
        }
        match self {
            Self::Text if text.chars().count() > LONGEST_TEXT => {
                Err(format!("This is longer than {LONGEST_TEXT} letters. Shorten it."))
            }
            Self::Text => Ok(Value::Text(text)),
            Self::Count => count(&text),
            Self::Money => Rate::read(&text).map(Value::Rate),
            Self::Percent => percent(&text),
            Self::Pick(options) => pick(&text, &options()),
            // Most cells: a bare number, which takes the unit of its heading.
            Self::Number { kind, .. } if !unit.is_empty() && is_bare(&text) => {
                let value = quantity::read(&format!("{text} {unit}"), *kind, System::Inch);
                self.in_range(value.map_err(|misread| misread.sentence())?, System::Inch)
            }
            Self::Number { kind, .. } => {
                let [inch, metric] = [System::Inch, System::Metric].map(|system| quantity::read(&text, *kind, system));
                let inch = inch.map_err(|misread| misread.sentence())?;
                // Where both agree the cell brings its own unit, as every fraction of an inch does.
                let value = if metric.is_ok_and(|metric| metric.to_bits() == inch.to_bits()) {
                    inch
                } else if unit.is_empty() {
                    return Err(format!("“{text}” has no unit, and the heading gives none."));
                } else {
                    quantity::read(&format!("{text} {unit}"), *kind, System::Inch)
                        .map_err(|misread| misread.sentence())?
                };
                self.in_range(value, System::Inch)
            }
        }
    }

    fn in_range(&self, value: f64, system: System) -> Result<Value, String> {
        let Self::Number { kind, least, most } = self else { return Ok(Value::Number(value)) };
        let slack = 1e-9 * most.abs();
        if value.is_finite() && (least - slack..=most + slack).contains(&value) {
            return Ok(Value::Number(value));
        }
        let show = |value: f64| quantity::show(value, *kind, system);
        Err(format!("I read {}. It must lie between {} and {}.", show(value), show(*least), show(*most)))
    }

    /// A cell of a file, which reads back to the same value bit for bit.
    pub fn written(&self, value: &Value) -> String {
        match (self, value) {
            (Self::Number { kind, .. }, Value::Number(value)) => exact(*value, *kind),
            (Self::Pick(options), Value::Picked(id)) => {
                let label = options().into_iter().find(|option| option.id == *id).map(|option| option.label);
                label.unwrap_or(id).to_string()
            }
            _ => value.plain(Kind::Ratio, System::Inch),
        }
    }

    /// A cell as it is typed on the page.
    pub fn shown(&self, value: &Value, system: System) -> String {
        match (self, value) {
            (Self::Number { kind, .. }, _) => value.plain(*kind, system),
            _ => self.written(value),
        }
    }
}

impl Value {
    fn plain(&self, kind: Kind, system: System) -> String {
        match self {
            Self::Empty => String::new(),
            Self::Text(text) => text.clone(),
            Self::Count(count) => count.to_string(),
            Self::Number(value) => quantity::plain(*value, kind, system),
            Self::Rate(rate) => rate.to_string(),
            Self::Picked(id) => (*id).to_string(),
        }
    }
}

/// Whether a text is a number of digits alone, or with a point among them.
fn is_bare(text: &str) -> bool {
    text.bytes().all(|byte| byte.is_ascii_digit() || byte == b'.') && text.parse::<f64>().is_ok()
}

/// A count of pieces.
fn count(text: &str) -> Result<Value, String> {
    let count = if text.bytes().all(|byte| byte.is_ascii_digit()) { text.parse::<u32>().ok() } else { None };
    let count = count.filter(|count| *count <= MOST_PIECES);
    count.map(Value::Count).ok_or_else(|| format!("I read “{}”. Type a whole number.", short(text)))
}

/// A percentage from 0 to 100.
fn percent(text: &str) -> Result<Value, String> {
    let rate = Rate::read(text.trim_end_matches('%'))?;
    if rate <= Rate::new(100, 0) {
        return Ok(Value::Rate(rate));
    }
    Err(format!("I read “{}”. A percentage is at most 100.", short(text)))
}

/// What a text is known by: neither case, spaces nor the kind of cross count.
fn known_by(text: &str) -> String {
    let letters = text.chars().filter(|c| !c.is_whitespace()).map(|c| if c == '×' { 'x' } else { c });
    letters.flat_map(char::to_lowercase).collect()
}

/// One of a list, by its id or label.
fn pick(text: &str, options: &[Pick]) -> Result<Value, String> {
    // Our own files have the label itself.
    if let Some(option) = options.iter().find(|option| option.label == text) {
        return Ok(Value::Picked(option.id));
    }
    let wanted = known_by(text);
    let found = options.iter().find(|option| [option.id, option.label].iter().any(|name| known_by(name) == wanted));
    found.map(|option| Value::Picked(option.id)).ok_or_else(|| {
        let few: Vec<&str> = options.iter().take(4).map(|option| option.label).collect();
        let more = if options.len() > few.len() { " and so on" } else { "" };
        let dated = ["jan", "feb", "mar", "apr", "may", "jun", "jul", "aug", "sep", "oct", "nov", "dec"];
        let date = if dated.iter().any(|month| wanted.contains(month)) && wanted.contains('-') {
            " A spreadsheet may have made a date of it."
        } else {
            ""
        };
        format!("I read “{}”.{date} It must be one of: {}{more}.", short(text), few.join(", "))
    })
}

/// The beginning of a text, to name it.
fn short(text: &str) -> String {
    text.chars().take(24).collect()
}

/// A value in as few digits as read back to it bit for bit: inches or pounds bare, else with the unit they fit.
fn exact(value: f64, kind: Kind) -> String {
    let (inch, metric) = (unit_name(kind, System::Inch), unit_name(kind, System::Metric));
    let same = |text: &str, unit: &str| {
        quantity::read(&format!("{text} {unit}"), kind, System::Inch)
            .is_ok_and(|back| back.to_bits() == value.to_bits())
    };
    let of_one = |unit: &str| quantity::read(&format!("1 {unit}"), kind, System::Inch).unwrap_or(1.0);
    let in_unit = |unit: &str| {
        // What reads back with fewer places reads back with six, the last of them zeros.
        let text = format!("{:.6}", value / of_one(unit));
        let text = text.trim_end_matches('0').trim_end_matches('.').to_string();
        Some(text).filter(|text| same(text, unit))
    };
    if let Some(text) = in_unit(inch) {
        return text;
    }
    if let Some(text) = in_unit(metric) {
        return format!("{text} {metric}");
    }
    let text = format!("{}", value / of_one(inch));
    if same(&text, inch) {
        return text;
    }
    // The number itself, in the unit of the program.
    let unit = if matches!(kind, Kind::Force | Kind::Weight) { "N" } else { "m" };
    format!("{value} {unit}")
}
