//! Looking for a mark in a short text, putting short texts together, and telling letters, by plain comparison. The
//! standard library's search, joins and tables of letters are made for any text and bring a phone eight kilobytes.

/// The text before and behind the first place of a mark; an empty one is nowhere.
pub fn cut<'a>(text: &'a str, mark: &str) -> Option<(&'a str, &'a str)> {
    let at = text.as_bytes().windows(mark.len().max(1)).position(|found| found == mark.as_bytes())?;
    Some((text.get(..at)?, text.get(at + mark.len()..)?))
}

/// The text before and behind the last place of a mark; an empty one is nowhere.
pub fn cut_last<'a>(text: &'a str, mark: &str) -> Option<(&'a str, &'a str)> {
    let at = text.as_bytes().windows(mark.len().max(1)).rposition(|found| found == mark.as_bytes())?;
    Some((text.get(..at)?, text.get(at + mark.len()..)?))
}

/// Whether a mark is in a text.
pub fn holds(text: &str, mark: &str) -> bool {
    mark.is_empty() || cut(text, mark).is_some()
}

/// The texts between the places of a mark.
pub fn pieces<'a>(text: &'a str, mark: &str) -> Vec<&'a str> {
    let (mut pieces, mut rest) = (Vec::new(), text);
    while let Some((before, behind)) = cut(rest, mark) {
        pieces.push(before);
        rest = behind;
    }
    pieces.push(rest);
    pieces
}

/// The text with something else in each place of a mark.
pub fn replaced(text: &str, mark: &str, by: &str) -> String {
    joined(&pieces(text, mark), by)
}

/// Texts one after the other, with something between each two.
pub fn joined<T: AsRef<str>>(texts: &[T], between: &str) -> String {
    let mut whole = String::new();
    for (index, text) in texts.iter().enumerate() {
        if index > 0 {
            whole.push_str(between);
        }
        whole.push_str(text.as_ref());
    }
    whole
}

/// A Latin or Greek letter, of which the symbols of formulas are made.
pub const fn is_letter(c: char) -> bool {
    c.is_ascii_alphabetic() || matches!(c, 'Α'..='Ω' | 'α'..='ω')
}

/// Whether a character can stand in the name of a symbol.
pub const fn is_of_a_name(c: char) -> bool {
    is_letter(c) || c.is_ascii_digit() || matches!(c, '_' | '′')
}
