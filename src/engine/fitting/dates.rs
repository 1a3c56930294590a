//! Days of the calendar, counted without a clock.

/// A day of the Gregorian calendar.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
pub struct Day {
    /// The year.
    pub year: i32,
    /// The month, from 1.
    pub month: u8,
    /// The day of the month, from 1.
    pub day: u8,
}

/// Whether a year has a 29th of February.
pub const fn is_leap(year: i32) -> bool {
    year % 4 == 0 && (year % 100 != 0 || year % 400 == 0)
}

/// How many days a month has.
pub const fn days_of(year: i32, month: u8) -> u8 {
    match month {
        4 | 6 | 9 | 11 => 30,
        2 if is_leap(year) => 29,
        2 => 28,
        _ => 31,
    }
}

impl Day {
    /// The day that a time in ISO 8601 begins with; `None` where there is no such day.
    pub fn of_iso(iso: &str) -> Option<Self> {
        let date = iso.get(..10)?;
        let plain = date.bytes().enumerate().all(|(at, byte)| match at {
            4 | 7 => byte == b'-',
            _ => byte.is_ascii_digit(),
        });
        if !plain || iso.get(10..).is_some_and(|rest| !rest.is_empty() && !rest.starts_with('T')) {
            return None;
        }
        let day = Self {
            year: date.get(..4)?.parse().ok()?,
            month: date.get(5..7)?.parse().ok()?,
            day: date.get(8..10)?.parse().ok()?,
        };
        let there =
            day.year >= 1 && (1..=12).contains(&day.month) && (1..=days_of(day.year, day.month)).contains(&day.day);
        there.then_some(day)
    }

    /// As ISO 8601 writes it.
    pub fn iso(self) -> String {
        format!("{:04}-{:02}-{:02}", self.year, self.month, self.day)
    }

    /// As the page says it: `Dec 1, 2026`.
    pub fn spoken(self) -> String {
        const MONTHS: [&str; 12] = ["Jan", "Feb", "Mar", "Apr", "May", "Jun", "Jul", "Aug", "Sep", "Oct", "Nov", "Dec"];
        let month = MONTHS.get(usize::from(self.month).wrapping_sub(1)).copied().unwrap_or_default();
        format!("{month} {}, {}", self.day, self.year)
    }

    /// So many months later; where that month is shorter, its last day.
    #[must_use]
    pub fn months_later(self, months: u16) -> Self {
        let counted = i32::from(self.month) - 1 + i32::from(months);
        let (year, month) = (self.year + counted / 12, (counted % 12 + 1) as u8);
        Self { year, month, day: self.day.min(days_of(year, month)) }
    }

    /// So many days later.
    #[must_use]
    pub fn days_later(self, days: u32) -> Self {
        let mut day = self;
        for _ in 0..days {
            day.day += 1;
            if day.day > days_of(day.year, day.month) {
                day.day = 1;
                day.month += 1;
            }
            if day.month > 12 {
                (day.month, day.year) = (1, day.year + 1);
            }
        }
        day
    }
}
