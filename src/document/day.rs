//! A day of the calendar: kept as ISO 8601 writes it, told in words.

/// The months, as they are said.
const MONTHS: [&str; 12] = [
    "January",
    "February",
    "March",
    "April",
    "May",
    "June",
    "July",
    "August",
    "September",
    "October",
    "November",
    "December",
];

/// Whether a text is a day of the calendar, as ISO 8601 writes it: `2026-12-24`.
pub fn is_date(text: &str) -> bool {
    parts(text).is_some()
}

/// A day in words: `December 24, 2026`. What is no day stays as it is written.
pub fn day_in_words(text: &str) -> String {
    let Some([year, month, day]) = parts(text) else { return text.to_string() };
    let name = MONTHS.get(month.saturating_sub(1) as usize).copied().unwrap_or_default();
    format!("{name} {day}, {year}")
}

/// Year, month and day; nothing where the calendar has no such day.
fn parts(text: &str) -> Option<[u32; 3]> {
    let digits_and_dashes = text.len() == 10
        && text
            .bytes()
            .enumerate()
            .all(|(at, byte)| if matches!(at, 4 | 7) { byte == b'-' } else { byte.is_ascii_digit() });
    if !digits_and_dashes {
        return None;
    }
    let parts: Vec<u32> = text.split('-').filter_map(|part| part.parse().ok()).collect();
    let [year, month, day] = parts[..] else { return None };
    let leap = year % 4 == 0 && (year % 100 != 0 || year % 400 == 0);
    let days = match month {
        1 | 3 | 5 | 7 | 8 | 10 | 12 => 31,
        4 | 6 | 9 | 11 => 30,
        2 if leap => 29,
        2 => 28,
        _ => 0,
    };
    (1..=days).contains(&day).then_some([year, month, day])
}
