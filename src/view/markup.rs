//! Markup for what only stands there to be read: tables, lists, rows. What reacts is a tag.
//!
//! A piece of text comes in through [`escaped`]; what is joined here is markup already.

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
