//! Text brought into the few characters that the reader knows, and runs of digits with their marks.

/// Longer than any value a person types, short enough that no number overflows.
const LONGEST: usize = 64;

/// Characters without a width or that turn the writing around; they come along when text is copied.
pub(super) fn is_invisible(c: char) -> bool {
    matches!(c, '\u{200b}'..='\u{200f}' | '\u{202a}'..='\u{202e}' | '\u{2060}'..='\u{2069}' | '\u{feff}' | '\u{fe0f}')
}

/// The text in few characters: ASCII, `°`, `·` and raised digits, in lower case. `None` when too long.
pub(super) fn tidied(text: &str) -> Option<String> {
    let mut tidy = String::new();
    for c in text.trim().chars().filter(|c| !is_invisible(*c)) {
        // The full-width forms stand in the order of ASCII.
        let c = match c {
            '\u{ff01}'..='\u{ff5e}' => char::from_u32(u32::from(c) - 0xfee0).unwrap_or(c),
            _ => c,
        };
        match c {
            '½' => tidy.push_str(" 1/2 "),
            '¼' => tidy.push_str(" 1/4 "),
            '¾' => tidy.push_str(" 3/4 "),
            '⅛' => tidy.push_str(" 1/8 "),
            '⅜' => tidy.push_str(" 3/8 "),
            '⅝' => tidy.push_str(" 5/8 "),
            '⅞' => tidy.push_str(" 7/8 "),
            '⅓' => tidy.push_str(" 1/3 "),
            '⅔' => tidy.push_str(" 2/3 "),
            '″' | '“' | '”' | '„' | '‟' | 'ʺ' => tidy.push('"'),
            '′' | '‘' | '’' | '‛' | 'ʹ' | 'ʼ' | '´' | '`' => tidy.push('\''),
            '−' | '‐' | '‑' | '‒' | '–' | '—' => tidy.push('-'),
            '⁄' | '∕' => tidy.push('/'),
            '⋅' | '∙' | '•' | '*' | '×' => tidy.push('·'),
            'º' | '˚' => tidy.push('°'),
            'µ' | 'μ' => tidy.push('u'),
            c if c.is_whitespace() => tidy.push(' '),
            c => tidy.push(c.to_ascii_lowercase()),
        }
        if tidy.len() > LONGEST {
            return None;
        }
    }
    Some(tidy.replace("''", "\""))
}

/// Digits with at most one decimal mark and with thousands set off evenly, or `None`.
pub(super) fn decimal(run: &str, grouped: bool) -> Option<f64> {
    let mark = match (run.matches('.').count(), run.matches(',').count()) {
        (0, 0) => None,
        (0, 1) if grouped && in_groups(run, ',') => None,
        (0, 1) => Some(','),
        (0, _) => None,
        // Of a point and a comma the last is the decimal mark: "4,200.5" and "4.200,5".
        _ => run.chars().rfind(|c| !c.is_ascii_digit()),
    };
    let (whole, part) = mark.and_then(|mark| run.rsplit_once(mark)).unwrap_or((run, ""));
    let separator = whole.chars().find(|c| !c.is_ascii_digit());
    if separator.is_some_and(|separator| Some(separator) == mark || !in_groups(whole, separator)) {
        return None;
    }
    let whole: String = whole.chars().filter(char::is_ascii_digit).collect();
    format!("{whole}.{part}").parse().ok()
}

/// One to three digits, not starting with a zero, then threes.
fn in_groups(run: &str, separator: char) -> bool {
    let mut groups = run.split(separator);
    let first = groups.next().unwrap_or_default();
    let digits = |group: &str| group.bytes().all(|byte| byte.is_ascii_digit());
    let opens = (1..=3).contains(&first.len()) && digits(first) && !first.starts_with('0');
    opens && groups.all(|group| group.len() == 3 && digits(group))
}
