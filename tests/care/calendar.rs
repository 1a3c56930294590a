//! The calendar file, read back by another reader.

use crate::dice::Dice;
use icalendar::{Calendar, CalendarComponent, CalendarDateTime, Component, DatePerhapsTime};
use linkwright::engine::fitting::dates::Day;
use linkwright::engine::fitting::recheck::Occasion;
use linkwright::log::Spot;
use linkwright::present::fit::calendar::{Bar, Reminder, file, file_name, reminders};

const TODAY: Day = Day { year: 2026, month: 12, day: 1 };

fn spot() -> Spot {
    Spot::of_id("front-lower-left").expect("an id")
}

fn text(rig: &str, looks: &[String], reminders: &[Reminder]) -> String {
    let spot = spot();
    file(Bar { spot: &spot, title: "Left front lower link", rig }, reminders, looks, "2026-12-01T08:09:10.123Z")
}

fn both() -> Vec<Reminder> {
    reminders(None, true, TODAY)
}

/// Names that would end a line, a value or a letter in its middle.
const HOSTILE: [&str; 8] = [
    "",
    "Rig\r\nBEGIN:VEVENT",
    "semi; comma, back\\slash",
    "colon: equals= \"quotes\" 'more'",
    "日本語の車日本語の車日本語の車日本語の車日本語の車日本語の車",
    "😀😀😀😀😀😀😀😀😀😀😀😀😀😀😀😀😀😀😀😀😀😀😀😀😀",
    "é½\u{301} combining",
    "a very long name that needs more than one line of seventy-five octets because it does not stop where others do",
];

#[test]
fn every_line_is_short_and_ends_as_the_standard_says() {
    for rig in HOSTILE {
        let looks = vec!["Witness line, both; straight".to_string(), rig.to_string()];
        let text = text(rig, &looks, &both());
        assert!(text.ends_with("END:VCALENDAR\r\n") && !text.replace("\r\n", "").contains(['\r', '\n']));
        for line in text.split("\r\n") {
            assert!(line.len() <= 75, "{line}");
        }
        assert_eq!(text.matches("\r\nBEGIN:VEVENT\r\n").count(), 2, "{text}");
        let alarm = "\r\nTRIGGER:PT8H\r\nEND:VALARM\r\nEND:VEVENT\r\n";
        assert_eq!((text.matches("\r\nBEGIN:VALARM\r\n").count(), text.matches(alarm).count()), (2, 2), "{text}");
    }
}

#[test]
fn another_reader_reads_the_same() {
    for rig in HOSTILE {
        let looks = vec!["One, two; three \\ four".to_string(), "Second line".to_string()];
        let text = text(rig, &looks, &both());
        let read: Calendar = text.parse().expect("a calendar");
        let events: Vec<_> = read.components.iter().filter_map(CalendarComponent::as_event).collect();
        assert_eq!(events.len(), 2);
        let kept: String = rig.chars().filter(|c| *c != '\r').collect();
        let expected =
            if rig.is_empty() { "Left front lower link:".to_string() } else { format!("{kept}, Left front") };
        for event in &events {
            assert!(event.get_summary().expect("a summary").starts_with(&expected), "{:?}", event.get_summary());
            assert_eq!(event.get_description(), Some("One, two; three \\ four\nSecond line"));
            assert!(event.get_uid().is_some_and(|uid| uid.ends_with("@linkwright.invalid")));
            assert_eq!(event.get_timestamp().expect("a stamp").to_rfc3339(), "2026-12-01T08:09:10+00:00");
        }
        let uids: std::collections::BTreeSet<_> = events.iter().map(|event| event.get_uid()).collect();
        assert_eq!(uids.len(), 2);
    }
}

#[test]
fn twice_a_year_repeats_and_the_first_drive_does_not() {
    let first = Day { year: 2027, month: 2, day: 14 };
    let text = text("Rig", &[], &reminders(Some(first), true, TODAY));
    let read: Calendar = text.parse().expect("a calendar");
    let events: Vec<_> = read.components.iter().filter_map(CalendarComponent::as_event).collect();
    let rules: Vec<_> = events.iter().map(|event| event.property_value("RRULE")).collect();
    assert_eq!(rules, [None, Some("FREQ=MONTHLY;INTERVAL=6")]);
    let starts: Vec<String> = events
        .iter()
        .map(|event| match event.get_start().expect("a start") {
            DatePerhapsTime::Date(date) => date.to_string(),
            DatePerhapsTime::DateTime(CalendarDateTime::Utc(_) | _) => panic!("a day, not a time"),
        })
        .collect();
    assert_eq!(starts, ["2026-12-02", "2027-02-14"]);
    // What is overdue is put on today, not into the past.
    let overdue = reminders(Some(Day { year: 2026, month: 1, day: 1 }), false, TODAY);
    assert_eq!(overdue, [Reminder { occasion: Occasion::HalfYear, first: TODAY }]);
}

/// The rule must name a day in every half year: a plain one would skip February for the 31st of August.
#[test]
fn the_end_of_a_month_is_kept() {
    let first = Day { year: 2026, month: 8, day: 31 };
    let text = text("Rig", &[], &[Reminder { occasion: Occasion::HalfYear, first }]);
    assert!(text.contains("RRULE:FREQ=MONTHLY;INTERVAL=6;BYMONTHDAY=28,29,30,31;BYSETPOS=-1\r\n"), "{text}");
}

#[test]
fn two_rigs_and_two_bars_never_share_an_event() {
    let of = |rig: &str, id: &str| {
        let spot = Spot::of_id(id).expect("an id");
        let text = file(Bar { spot: &spot, title: "x", rig }, &both(), &[], "2026-12-01T00:00:00Z");
        text.lines().filter(|line| line.starts_with("UID:")).map(str::to_string).collect::<Vec<_>>()
    };
    let all = [of("Mule", "rear-lower-left"), of("Goat", "rear-lower-left"), of("Mule", "rear-lower-right")];
    let different: std::collections::BTreeSet<&String> = all.iter().flatten().collect();
    assert_eq!(different.len(), 6);
    assert_eq!(of("Mule", "rear-lower-left"), of("Mule", "rear-lower-left"), "a second import replaces the first");
    assert_eq!(file_name(Bar { spot: &spot(), title: "x", rig: "../\\" }), "recheck-front-lower-left.ics");
}

/// A value as the standard reads it, sign by sign; the reader above takes an escaped backslash before a sign for its escape.
fn unescaped(text: &str, name: &str) -> Vec<String> {
    let whole = text.replace("\r\n ", "");
    let values = whole.split("\r\n").filter_map(|line| line.strip_prefix(name)?.strip_prefix(':'));
    let read = |value: &str| {
        let (mut out, mut letters) = (String::new(), value.chars());
        while let Some(letter) = letters.next() {
            match (letter, letter == '\\') {
                (_, true) => match letters.next().expect("a sign after a backslash") {
                    'n' | 'N' => out.push('\n'),
                    sign @ ('\\' | ',' | ';') => out.push(sign),
                    other => panic!("{other} needs no backslash"),
                },
                (',' | ';', _) => panic!("a bare {letter}"),
                (letter, _) => out.push(letter),
            }
        }
        out
    };
    values.map(read).collect()
}

#[test]
fn random_names_are_read_back() {
    let mut dice = Dice(5);
    let letters = ['a', ',', ';', '\\', 'n', ':', '"', 'é', '日', '😀', ' ', '\n', 'Z'];
    for _ in 0..300 {
        let name: String = (0..dice.next(120)).map(|_| letters[dice.next(letters.len())]).collect();
        let looks = vec![format!("x{name}x")];
        let text = text("R", &looks, &both());
        // Every other one is the summary again, of the alarm.
        let told: Vec<String> = unescaped(&text, "DESCRIPTION").into_iter().step_by(2).collect();
        assert_eq!(told, [looks[0].as_str(); 2]);
        let read: Calendar = text.parse().expect("a calendar");
        for event in read.components.iter().filter_map(CalendarComponent::as_event) {
            assert!(name.contains('\\') || event.get_description() == Some(looks[0].as_str()), "{name:?}");
        }
    }
}
