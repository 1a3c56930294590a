//! Markup for what only stands there to be read: tables, lists, rows. What reacts is a piece.

use std::ops::{Add, AddAssign};

/// A letter without width, at which no line breaks (U+2060, word joiner). Where it is pasted back it is dropped.
const JOINER: char = '\u{2060}';

/// Markup. Words get into it escaped; opening tags and what [`Markup::drawn`] takes are ours.
#[derive(Clone, PartialEq, Eq, Default)]
#[expect(clippy::box_collection, reason = "one pointer where text is three words: a tenth of the views' code")]
pub(super) struct Markup(Box<String>);

impl Markup {
    /// What is markup already: a drawing, a formula.
    pub(super) fn drawn(markup: String) -> Self {
        Self(Box::new(markup))
    }

    /// Whether there is nothing in it.
    pub(super) fn is_empty(&self) -> bool {
        self.0.is_empty()
    }

    /// As the browser takes it.
    pub(super) fn written(self) -> String {
        *self.0
    }
}

impl Add for Markup {
    type Output = Self;

    #[inline(never)]
    fn add(mut self, more: Self) -> Self {
        self.0.push_str(&more.0);
        self
    }
}

impl AddAssign for Markup {
    #[inline(never)]
    fn add_assign(&mut self, more: Self) {
        self.0.push_str(&more.0);
    }
}

impl Extend<Markup> for Markup {
    fn extend<I: IntoIterator<Item = Self>>(&mut self, all: I) {
        all.into_iter().for_each(|more| *self += more);
    }
}

impl FromIterator<Markup> for Markup {
    fn from_iter<I: IntoIterator<Item = Self>>(all: I) -> Self {
        let mut whole = Self::default();
        whole.extend(all);
        whole
    }
}

/// Text that stays text inside markup.
fn escaped(words: &str) -> String {
    // Hardly any words hold one of them, and a page holds many words.
    if !words.bytes().any(|byte| matches!(byte, b'&' | b'<' | b'"')) {
        return words.to_string();
    }
    words.replace('&', "&amp;").replace('<', "&lt;").replace('"', "&quot;")
}

/// Words as markup.
pub(super) fn plain(words: impl AsRef<str>) -> Markup {
    Markup(Box::new(escaped(words.as_ref())))
}

/// A tag with one more attribute, whose value is not known beforehand.
pub(super) fn attribute(open: &str, name: &str, value: &str) -> String {
    format!("{open} {name}=\"{}\"", escaped(value))
}

/// An element around markup; `open` is its name with its attributes.
pub(super) fn element(open: impl AsRef<str>, inside: Markup) -> Markup {
    #[inline(never)]
    fn around(open: &str, inside: Markup) -> Markup {
        let name = open.split(' ').next().unwrap_or(open);
        Markup(Box::new(format!("<{open}>{}</{name}>", inside.0)))
    }
    around(open.as_ref(), inside)
}

/// An element around words.
#[inline(never)]
pub(super) fn said(open: impl AsRef<str>, words: impl AsRef<str>) -> Markup {
    element(open, plain(words))
}

/// An element around a sentence of several lines.
pub(super) fn sentence(open: &str, words: &str) -> Markup {
    element(open, unbroken(words))
}

/// Words as markup that no line breaks in the middle of a size, which would leave 1/2 of a `1-1/2` on the next one.
pub(super) fn unbroken(words: &str) -> Markup {
    let words = escaped(words);
    let between = |at: usize| {
        let byte = |at: usize| words.as_bytes().get(at).is_some_and(u8::is_ascii_digit);
        byte(at + 1) && at.checked_sub(1).is_some_and(byte)
    };
    let mut dashes = words.match_indices('-').map(|(at, _)| at).filter(|at| between(*at)).peekable();
    if dashes.peek().is_none() {
        return Markup(Box::new(words));
    }
    let (mut whole, mut from) = (String::new(), 0);
    for at in dashes {
        whole += words.get(from..=at).unwrap_or_default();
        whole.push(JOINER);
        from = at + 1;
    }
    Markup(Box::new(whole + words.get(from..).unwrap_or_default()))
}

/// Words that break between their phrases only, so that no size is torn apart: the class of its element is `phrases`.
pub(super) fn phrases(words: &str) -> Markup {
    let broken = escaped(words).replace(", ", ", </span><span>");
    let broken = broken.replace("; ", "; </span><span>");
    element("span", Markup(Box::new(broken)))
}

/// One row of a list of terms.
pub(super) fn pair(term: &str, open: &str, value: impl AsRef<str>) -> Markup {
    element("div", said("dt", term) + said(open, value))
}

/// The heads of columns; one without a name is the head of nothing.
pub(super) fn heads(names: &[&str]) -> Markup {
    names.iter().map(|name| said(if name.is_empty() { "td" } else { "th scope=\"col\"" }, name)).collect()
}

/// A cell that repeats its column's name, for narrow pages that hide the head.
pub(super) fn cell(name: &str, inside: Markup) -> Markup {
    element(attribute("td", "data-of", name), inside)
}

/// The cells of a row behind its first column.
pub(super) fn cells<const N: usize>(names: &[&str], values: [String; N]) -> Markup {
    names.iter().skip(1).zip(values).map(|(name, value)| cell(name, plain(value))).collect()
}

/// A row of a table: its class, what it is about, and its cells.
pub(super) struct Row {
    pub(super) class: &'static str,
    pub(super) about: &'static str,
    pub(super) cells: [Markup; 2],
}

/// A table of three columns.
pub(super) fn table(open: &str, caption: &str, head: [&str; 3], rows: Vec<Row>) -> Markup {
    let row = |row: Row| {
        let cells = head.into_iter().skip(1).zip(row.cells).map(|(name, inside)| cell(name, inside));
        element(attribute("tr", "class", row.class), said("th scope=\"row\"", row.about) + cells.collect())
    };
    let caption = if caption.is_empty() { Markup::default() } else { said("caption", caption) };
    let head = element("thead", element("tr", heads(&head)));
    element(open, caption + head + element("tbody", rows.into_iter().map(row).collect()))
}
