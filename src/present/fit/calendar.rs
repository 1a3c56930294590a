//! Rechecks as a calendar file (RFC 5545), which phones and computers open.

use crate::engine::fitting::dates::Day;
use crate::engine::fitting::recheck::{HALF_YEAR, Occasion};
use crate::log::Spot;

/// What kind of file it is.
pub const MIME_TYPE: &str = "text/calendar;charset=utf-8";

/// When it rings on its day, counted from midnight: eight in the morning.
const MORNING: &str = "PT8H";

/// The longest line, in octets, before its line break.
const LONGEST_LINE: usize = 75;

/// What is put into a calendar.
#[derive(Debug, Clone, PartialEq)]
pub struct Reminder {
    /// What it is about.
    pub occasion: Occasion,
    /// The day it first falls on.
    pub first: Day,
}

/// The bar it is about.
#[derive(Debug, Clone, Copy)]
pub struct Bar<'a> {
    /// Where on the rig it sits.
    pub spot: &'a Spot,
    /// What it is called.
    pub title: &'a str,
    /// What the rig is called; empty where it has no name.
    pub rig: &'a str,
}

/// The reminders of a bar from today on: twice a year for good, and once after the first drive where that is due.
pub fn reminders(half_year: Option<Day>, first_drive_due: bool, today: Day) -> Vec<Reminder> {
    let coming = half_year.filter(|day| *day >= today).unwrap_or(today);
    let once = first_drive_due.then_some(Reminder { occasion: Occasion::FirstDrive, first: today.days_later(1) });
    once.into_iter().chain([Reminder { occasion: Occasion::HalfYear, first: coming }]).collect()
}

/// The file. `now` is a time as ISO 8601 in UTC, `looks` what to look at, one line each.
pub fn file(bar: Bar, reminders: &[Reminder], looks: &[String], now: &str) -> String {
    let mut out = String::new();
    let mut line = |text: &str| folded(text, &mut out);
    line("BEGIN:VCALENDAR");
    line("VERSION:2.0");
    line("PRODID:-//Linkwright//Recheck of a link//EN");
    line("CALSCALE:GREGORIAN");
    for reminder in reminders {
        let Reminder { occasion, first } = reminder;
        line("BEGIN:VEVENT");
        line(&format!("UID:{}", uid(bar, *occasion)));
        line(&format!("DTSTAMP:{}", stamp(now)));
        line(&format!("DTSTART;VALUE=DATE:{}", basic(*first)));
        if *occasion == Occasion::HalfYear {
            line(&format!("RRULE:FREQ=MONTHLY;INTERVAL={HALF_YEAR}{}", month_end(*first)));
        }
        line(&format!("SUMMARY:{}", escaped(&summary(bar, *occasion))));
        line(&format!("DESCRIPTION:{}", escaped(&looks.join("\n"))));
        line("TRANSP:TRANSPARENT");
        line("BEGIN:VALARM");
        line("ACTION:DISPLAY");
        line(&format!("DESCRIPTION:{}", escaped(&summary(bar, *occasion))));
        line(&format!("TRIGGER:{MORNING}"));
        line("END:VALARM");
        line("END:VEVENT");
    }
    line("END:VCALENDAR");
    out
}

/// A month without the 29th, 30th or 31st has no such day for a plain rule, which would skip it: the last day it has is
/// asked for instead.
fn month_end(first: Day) -> String {
    if first.day <= 28 {
        return String::new();
    }
    let days: Vec<String> = (28..=first.day).map(|day| day.to_string()).collect();
    format!(";BYMONTHDAY={};BYSETPOS=-1", days.join(","))
}

fn summary(bar: Bar, occasion: Occasion) -> String {
    let what = match occasion {
        Occasion::FirstDrive => "Recheck after the first drive",
        Occasion::Outing => "Recheck before the outing",
        Occasion::HalfYear => "Half-year recheck, jam nuts backed off and tightened",
    };
    if bar.rig.is_empty() { format!("{}: {what}", bar.title) } else { format!("{}, {}: {what}", bar.rig, bar.title) }
}

/// The name of the file.
pub fn file_name(bar: Bar) -> String {
    format!("recheck-{}.ics", bar.spot.id())
}

/// The same for the same bar of the same rig, so that a second import replaces the first.
fn uid(bar: Bar, occasion: Occasion) -> String {
    format!("{}-{}-{:016x}@linkwright.invalid", occasion.id(), bar.spot.id(), hash(bar.rig))
}

/// FNV-1a, 64 bits: tells rigs apart by their names.
fn hash(text: &str) -> u64 {
    text.bytes().fold(0xcbf2_9ce4_8422_2325, |hash, byte| (hash ^ u64::from(byte)).wrapping_mul(0x0100_0000_01b3))
}

fn basic(day: Day) -> String {
    format!("{:04}{:02}{:02}", day.year, day.month, day.day)
}

/// A time as ISO 8601 in the short form, to the second; midnight where only the day can be read.
fn stamp(now: &str) -> String {
    let day = Day::of_iso(now).map_or_else(|| "19700101".to_string(), basic);
    let digits: String =
        now.get(11..19).map(|time| time.chars().filter(char::is_ascii_digit).collect()).unwrap_or_default();
    let time = if digits.len() == 6 { digits.as_str() } else { "000000" };
    format!("{day}T{time}Z")
}

/// Text as a value: backslash, comma and semicolon are set off, line breaks written out, other control characters left
/// out.
fn escaped(text: &str) -> String {
    let mut out = String::with_capacity(text.len());
    for letter in text.chars() {
        match letter {
            '\\' | ',' | ';' => out.extend(['\\', letter]),
            '\n' => out.push_str("\\n"),
            '\t' => out.push(' '),
            letter if letter.is_control() => {}
            letter => out.push(letter),
        }
    }
    out
}

/// A line in pieces of at most 75 octets, no letter torn apart; each further piece begins with a space.
fn folded(text: &str, out: &mut String) {
    let mut used = 0;
    for letter in text.chars() {
        if used + letter.len_utf8() > LONGEST_LINE {
            out.push_str("\r\n ");
            used = 1;
        }
        out.push(letter);
        used += letter.len_utf8();
    }
    out.push_str("\r\n");
}
