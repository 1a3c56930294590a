//! Dates without a clock, what is due, and a recheck that is good only when everything was looked at.

use crate::links::{answer, hard, sized};
use linkwright::document::Role;
use linkwright::engine::fitting::Standing;
use linkwright::engine::fitting::dates::{Day, days_of, is_leap};
use linkwright::engine::fitting::recheck::{Due, LastTimes, Occasion, due, looks, outcome};
use linkwright::engine::sentence::spoken;
use linkwright::quantity::{System, lbf};
use linkwright::report::Verdict;

fn day(iso: &str) -> Day {
    Day::of_iso(iso).expect("a day")
}

#[test]
fn months_and_days_go_by_the_calendar() {
    for (from, months, to) in [
        ("2026-12-01", 6, "2027-06-01"),
        ("2026-08-31", 6, "2027-02-28"),
        ("2027-08-31", 6, "2028-02-29"),
        ("2024-02-29", 12, "2025-02-28"),
        ("2024-02-29", 48, "2028-02-29"),
        ("2026-10-31", 1, "2026-11-30"),
        ("2026-12-31", 0, "2026-12-31"),
    ] {
        assert_eq!(day(from).months_later(months).iso(), to, "{from} and {months} months");
    }
    for (from, days, to) in [
        ("2024-02-28", 1, "2024-02-29"),
        ("2023-02-28", 1, "2023-03-01"),
        ("2026-12-31", 1, "2027-01-01"),
        ("2024-01-01", 366, "2025-01-01"),
    ] {
        assert_eq!(day(from).days_later(days).iso(), to, "{from} and {days} days");
    }
    for (year, leap) in [(1900, false), (2000, true), (2024, true), (2026, false), (2100, false)] {
        assert_eq!(is_leap(year), leap, "{year}");
    }
    // Four centuries have 146,097 days.
    let days: u32 = (2000..2400).flat_map(|year| (1..=12).map(move |month| u32::from(days_of(year, month)))).sum();
    assert_eq!(days, 146_097);
    assert_eq!(day("2000-03-01").days_later(days).iso(), "2400-03-01");
}

#[test]
fn what_is_no_date_is_none() {
    for iso in [
        "",
        "2026-13-01",
        "2026-00-10",
        "2025-02-29",
        "2026-4-1",
        "20260401",
        "2026-04-31",
        "x",
        "2026-04-01x",
        "+026-04-01",
        "2026-é4-01",
    ] {
        assert_eq!(Day::of_iso(iso), None, "{iso}");
    }
    assert_eq!(day("2026-11-25T10:11:12.000Z").iso(), "2026-11-25");
}

fn at(last: LastTimes, today: &str, occasion: Occasion) -> (Standing, Option<String>, String) {
    let found: Vec<Due> = due(last, today).into_iter().filter(|due| due.occasion == occasion).collect();
    (found[0].standing, found[0].on.map(Day::iso), spoken(&found[0].says, System::Inch))
}

#[test]
fn what_is_due_follows_from_the_log() {
    let fitted = LastTimes { fitted: Some("2026-06-01T10:00:00Z"), ..LastTimes::default() };
    let (standing, _, says) = at(fitted, "2026-06-02", Occasion::FirstDrive);
    assert!(standing == Standing::Watch && says.contains("Jun 1, 2026") && says.contains("first drive"), "{says}");
    let looked = LastTimes { rechecked: Some("2026-06-03T10:00:00Z"), ..fitted };
    assert_eq!(at(looked, "2026-06-04", Occasion::FirstDrive).0, Standing::Good);
    // Turned since: it is a new first drive.
    let turned = LastTimes { turned: Some("2026-07-01T10:00:00Z"), ..looked };
    let (standing, _, says) = at(turned, "2026-07-02", Occasion::FirstDrive);
    assert!(standing == Standing::Watch && says.contains("Turned on Jul 1, 2026"), "{says}");
    for (today, standing, words) in [
        ("2026-11-30", Standing::Good, "Due on Dec 1, 2026"),
        ("2026-12-01", Standing::Watch, "Due today"),
        ("2026-12-02", Standing::Watch, "Overdue since Dec 1, 2026"),
        ("2031-01-01", Standing::Watch, "Overdue since Dec 1, 2026"),
    ] {
        // A recheck of an outing does not back the nuts off: the half year runs on.
        let (found, on, says) = at(looked, today, Occasion::HalfYear);
        assert!(found == standing && says.starts_with(words), "{today}: {says}");
        assert_eq!(on.as_deref(), Some("2026-12-01"));
    }
    // Who turned a bar has not said that its nuts are tight.
    let only_turned = LastTimes { turned: Some("2026-12-01T10:00:00Z"), ..LastTimes::default() };
    assert_eq!(at(only_turned, "2026-12-02", Occasion::HalfYear).0, Standing::NotJudged);
    let done = LastTimes { half_year: Some("2026-12-02T00:00:00Z"), ..looked };
    assert_eq!(at(done, "2026-12-03", Occasion::HalfYear).1.as_deref(), Some("2027-06-02"));
    assert_eq!(at(done, "2026-12-03", Occasion::Outing).0, Standing::Watch, "before every outing");
}

#[test]
fn without_a_date_or_with_one_from_the_future_nothing_is_good() {
    for (last, today) in [
        (LastTimes::default(), "2026-12-01"),
        (LastTimes { fitted: Some("2027-12-01T00:00:00Z"), ..LastTimes::default() }, "2026-12-01"),
        (LastTimes { fitted: Some("nonsense"), ..LastTimes::default() }, "2026-12-01"),
        (LastTimes { fitted: Some("2026-06-01"), ..LastTimes::default() }, "someday"),
    ] {
        for found in due(last, today) {
            assert_ne!(found.standing, Standing::Good, "{last:?}");
            if found.occasion != Occasion::Outing {
                assert_eq!(found.standing, Standing::NotJudged);
            }
        }
    }
}

#[test]
fn every_limit_has_its_source() {
    for (document, role) in
        [(hard(), Role::Lower), (hard(), Role::TieRod), (sized(2.0, "wide-12", "k-20"), Role::Upper)]
    {
        let mut document = document;
        document.links[0].role = role;
        let answer = answer(&document);
        for occasion in Occasion::ALL {
            assert!(!occasion.source().words().is_empty());
            let looks = looks(&answer, occasion);
            for look in &looks {
                assert!(
                    !look.source.words().is_empty() && !spoken(&look.limit, System::Inch).is_empty(),
                    "{}",
                    look.id
                );
            }
            let says = |id: &str| {
                let look = looks.iter().find(|look| look.id == id).expect("a look");
                spoken(&look.words, System::Inch) + " " + &spoken(&look.limit, System::Inch)
            };
            assert_eq!(says("nuts").contains("Back off"), occasion == Occasion::HalfYear);
            if role.steers() {
                assert!(says("bow").contains("any bend") && says("play").contains("do not drive"));
                assert!(looks.iter().any(|look| look.id == "steering"));
            }
        }
    }
    let mut tube = hard();
    tube.links[0].material = Some("1026-dom");
    let looks = looks(&answer(&tube), Occasion::Outing);
    let bow = looks.iter().find(|look| look.id == "bow").expect("a bow");
    // 1 % of 38 in.
    assert!(
        spoken(&bow.limit, System::Inch).contains("3/8 in") || spoken(&bow.limit, System::Inch).contains("0.380 in")
    );
}

#[test]
fn one_look_left_out_is_not_in_order() {
    let answer = answer(&hard());
    let looks = looks(&answer, Occasion::Outing);
    let all = vec![true; looks.len()];
    assert_eq!(outcome(&answer, Occasion::Outing, &looks, &all).standing, Standing::Good);
    for at in 0..looks.len() {
        let mut ticks = all.clone();
        ticks[at] = false;
        let found = outcome(&answer, Occasion::Outing, &looks, &ticks);
        let says = spoken(&found.says, System::Inch);
        assert!(found.standing == Standing::NotJudged && says.contains("not ticked"), "{says}");
        assert!(!says.contains("everything"), "{says}");
    }
    assert_ne!(outcome(&answer, Occasion::Outing, &looks, &[]).standing, Standing::Good);
    assert_ne!(outcome(&answer, Occasion::Outing, &[], &[]).standing, Standing::Good);
}

#[test]
fn a_link_that_fails_is_never_in_order() {
    let mut document = sized(0.75, "wide-08", "wide-08");
    document.rig.weight = Some(lbf(9000.0));
    let answer = answer(&document);
    assert_eq!(answer.verdict, Verdict::Fails);
    for occasion in Occasion::ALL {
        let looks = looks(&answer, occasion);
        let found = outcome(&answer, occasion, &looks, &vec![true; looks.len()]);
        let says = spoken(&found.says, System::Inch);
        assert!(found.standing == Standing::Stop && says.contains("Do not drive"), "{says}");
    }
}
