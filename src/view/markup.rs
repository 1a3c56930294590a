//! Markup for what only stands there to be read: tables, lists, rows. What reacts is a tag.
//!
//! A piece of text comes in through [`escaped`]; what is joined here is markup already.

/// A letter without width, at which no line breaks (U+2060, word joiner). Where it is pasted back it is dropped.
const JOINER: char = '\u{2060}';

/// Text that stays text inside markup.
pub(super) fn escaped(words: &str) -> String {
    // Hardly any words hold one of them, and a page holds many words.
    if !words.bytes().any(|byte| matches!(byte, b'&' | b'<' | b'"')) {
        return words.to_string();
    }
    words.replace('&', "&amp;").replace('<', "&lt;").replace('"', "&quot;")
}

/// An element around markup; `open` is its name with its attributes.
pub(super) fn element(open: &str, inside: &str) -> String {
    let name = open.split(' ').next().unwrap_or(open);
    format!("<{open}>{inside}</{name}>")
}

/// An element around words.
pub(super) fn said(open: &str, words: &str) -> String {
    element(open, &escaped(words))
}

/// An element around a sentence of several lines.
pub(super) fn sentence(open: &str, words: &str) -> String {
    element(open, &unbroken(words))
}

/// Words as text that no line breaks in the middle of a size, which would leave 1/2 of a `1-1/2` on the next one.
pub(super) fn unbroken(words: &str) -> String {
    let words = escaped(words);
    let between = |at: usize| {
        let byte = |at: usize| words.as_bytes().get(at).is_some_and(u8::is_ascii_digit);
        byte(at + 1) && at.checked_sub(1).is_some_and(byte)
    };
    let mut dashes = words.match_indices('-').map(|(at, _)| at).filter(|at| between(*at)).peekable();
    if dashes.peek().is_none() {
        return words;
    }
    let (mut whole, mut from) = (String::new(), 0);
    for at in dashes {
        whole += words.get(from..=at).unwrap_or_default();
        whole.push(JOINER);
        from = at + 1;
    }
    whole + words.get(from..).unwrap_or_default()
}

/// Words that break between their phrases only, so that no size is torn apart: the class of its element is `phrases`.
pub(super) fn phrases(words: &str) -> String {
    element("span", &escaped(words).replace(", ", ", </span><span>").replace("; ", "; </span><span>"))
}

/// One row of a list of terms.
pub(super) fn pair(term: &str, open: &str, value: &str) -> String {
    format!("<div><dt>{}</dt>{}</div>", escaped(term), said(open, value))
}

/// A row of a table: its class, what it is about, and its cells, which are markup.
pub(super) struct Row {
    pub(super) class: &'static str,
    pub(super) about: &'static str,
    pub(super) cells: [String; 2],
}

/// A table of three columns. Each cell repeats its column's name, for narrow pages that hide the head.
pub(super) fn table(attributes: &str, caption: &str, head: [&str; 3], rows: &[Row]) -> String {
    let mut out = format!("<table {attributes}>");
    if !caption.is_empty() {
        out.push_str(&said("caption", caption));
    }
    out.push_str("<thead><tr>");
    for name in head {
        out.push_str(&if name.is_empty() { said("td", "") } else { said("th scope=\"col\"", name) });
    }
    out.push_str("</tr></thead><tbody>");
    for row in rows {
        out.push_str(&format!("<tr class=\"{}\">{}", row.class, said("th scope=\"row\"", row.about)));
        for (name, cell) in head.into_iter().skip(1).zip(&row.cells) {
            out.push_str(&format!("<td data-of=\"{}\">{cell}</td>", escaped(name)));
        }
        out.push_str("</tr>");
    }
    out + "</tbody></table>"
}
