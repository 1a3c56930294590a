//! Style sheets and scripts without comments and indentation, which are for us and not for the reader's browser.

/// A style sheet without comments, indentation and the spaces around its punctuation.
#[must_use]
pub fn style(text: &str) -> String {
    let mut text = text.to_owned();
    while take_out(&mut text, "/*", "*/").is_some() {}
    let text = trimmed_lines(&text);
    let without_spaces = |code: &str| {
        let pairs = [(" {", "{"), ("{ ", "{"), (": ", ":"), ("; ", ";"), (", ", ","), (" }", "}"), (";}", "}")];
        pairs.iter().fold(code.to_owned(), |code, (wide, narrow)| code.replace(wide, narrow))
    };
    // Every other piece stands between quotation marks, and stays as it is.
    let pieces = text
        .split('"')
        .enumerate()
        .map(|(index, piece)| if index % 2 == 0 { without_spaces(piece) } else { piece.to_owned() });
    pieces.collect::<Vec<_>>().join("\"")
}

/// A script without indentation and lines of comment. (None of ours has text over several lines.)
#[must_use]
pub fn script(text: &str) -> String {
    let code: Vec<&str> = text.lines().filter(|line| !line.trim_start().starts_with("//")).collect();
    trimmed_lines(&code.join("\n"))
}

fn trimmed_lines(text: &str) -> String {
    let lines = text.lines().map(str::trim).filter(|line| !line.is_empty());
    lines.fold(String::new(), |all, line| all + line + "\n")
}

/// Takes the first piece from `start` to `end` out of a text.
pub fn take_out(text: &mut String, start: &str, end: &str) -> Option<String> {
    let from = text.find(start)?;
    let to = from + text[from..].find(end)? + end.len();
    Some(text.drain(from..to).collect())
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn pieces_are_taken_out_whole() {
        let mut text = "a<b>c</b>d<b>".to_owned();
        assert_eq!(take_out(&mut text, "<b>", "</b>").as_deref(), Some("<b>c</b>"));
        assert_eq!(text, "ad<b>");
        assert_eq!(take_out(&mut text, "<b>", "</b>"), None, "a piece without an end stays");
    }

    #[test]
    fn what_people_read_in_a_file_is_not_sent() {
        let text = "/* why */\n  a, i > b { b: c; d: calc(1px + 2px) }\n  p::after { content: \"… : x, \"; }\n\n";
        assert_eq!(style(text), "a,i > b{b:c;d:calc(1px + 2px)}\np::after{content:\"… : x, \"}\n");
        assert_eq!(script("// why\n  go('//');\n"), "go('//');\n");
    }
}
