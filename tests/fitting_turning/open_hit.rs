//! While a hit is open in the log nothing in the view is good: no mark and no word, in any of its places, nor on the card.

use crate::page::{asked, made};
use crate::rig::{document, read};
use linkwright::document::{Document, Hand};
use linkwright::engine::fitting::borrowed::{BorrowedLink, BorrowedRodEnd};
use linkwright::engine::fitting::recheck::Occasion;
use linkwright::engine::whole_rig;
use linkwright::log::{
    DRIVE_ON, Entry, EntryKind, HIT_VERDICT, LIMP, Log, Noted, Reading, STOP, Spot, bars, reading_row,
};
use linkwright::present::drawing::Layout;
use linkwright::present::fit::card::blocks;
use linkwright::present::fit::fit_it::how_far;
use linkwright::present::fit::guide::{self, Topic};
use linkwright::present::fit::recheck::{due_rows, last, sum_up};
use linkwright::present::fit::safe::checked;
use linkwright::present::fit::spares;
use linkwright::present::fit::turn::{Ask, Known, answer};
use linkwright::quantity::{System, deg, inch};
use linkwright::report::Verdict;

const T: [&str; 4] =
    ["2026-11-01T08:00:00.000Z", "2026-11-10T08:00:00.000Z", "2026-11-20T08:00:00.000Z", "2026-12-01T08:00:00.000Z"];

fn entry(spot: &Spot, at: &str, kind: EntryKind, verdict: Option<&'static str>) -> Entry {
    Entry {
        id: format!("{}-{at}", kind.id()),
        spot: spot.clone(),
        at: at.to_string(),
        kind,
        code: String::new(),
        readings: verdict.map(|verdict| (HIT_VERDICT, Reading::Pick(verdict))).into_iter().collect(),
        words: String::new(),
        withdrawn: Noted::default(),
    }
}

/// Fitted, looked at since, and then hit.
fn log(spot: &Spot, verdict: &'static str) -> Log {
    let mut log = Log::default();
    log.record(entry(spot, T[0], EntryKind::Fitted, None));
    log.record(entry(spot, T[1], EntryKind::Rechecked, None));
    log.record(entry(spot, T[2], EntryKind::Hit, Some(verdict)));
    log
}

/// What a place shows: its name, and each mark with its word.
type Shown = (&'static str, Vec<(Verdict, String)>);

/// Every mark and word of every place, for a bar that all readings and ticks are good of.
fn everything(document: &Document, spot: &Spot, log: &Log) -> Vec<Shown> {
    let system = System::Inch;
    let made_of = made(document, 0).expect("an answer");
    let hit = log.open_hit(spot).is_some();
    let good = read(&made_of.link, [1.5, 1.5]);
    let mut shown = Vec::new();

    let safe = checked(&made_of, &good, hit, system, Layout::Narrow);
    let mut marks = vec![(safe.mark, safe.word.to_string()), (safe.mark, safe.log.clone())];
    for end in &safe.ends {
        marks.push((end.mark, end.word.to_string()));
        marks.extend(end.more.iter().map(|line| (line.mark, line.word.to_string())));
    }
    marks.extend(safe.whole.iter().map(|line| (line.mark, line.word.to_string())));
    shown.push(("Is it still safe?", marks));

    let known = Known {
        answers: &|of| made(document, of),
        readings: &|_| good,
        hit: &|spot| log.open_hit(spot).is_some(),
        chosen: Some(spot),
    };
    for ask in [Ask::Longer, Ask::Length] {
        let value = if ask == Ask::Longer { inch(0.1) } else { made_of.link.length + inch(0.1) };
        let told = answer(document, 0, &asked(ask, value), known, system);
        assert_eq!(told.links.len(), 2, "both bars, of which one was hit");
        shown.push(("Turn it", told.links.iter().map(|link| (link.mark, link.word.to_string())).collect()));
    }

    let fitted = how_far(document, 0, &made_of, |_| true, hit, system);
    assert_eq!(fitted.log.is_some(), !hit, "nothing is fitted while a hit is open");
    shown.push(("Fit it", vec![(fitted.mark, fitted.word.to_string()), (fitted.mark, fitted.says)]));

    for occasion in Occasion::ALL {
        let outcome = sum_up(&made_of, occasion, |_| true, hit, system);
        assert_eq!(outcome.kind == EntryKind::Rechecked, !hit, "no recheck while a hit is open");
        shown.push(("Recheck", vec![(outcome.mark, outcome.word.to_string()), (outcome.mark, outcome.says)]));
    }
    let due = due_rows(&last(log, spot), T[3], hit, system);
    shown.push(("Recheck", due.iter().map(|row| (row.mark, row.word.to_string())).collect()));

    let rig = whole_rig(document, None);
    let hits = |link: usize| log.open_hits(document, link).next().is_some();
    let list = spares::list(document, &rig.links, &hits, system);
    let fits = list.bars.iter().flat_map(|bar| &bar.links);
    shown.push(("Spares", fits.map(|(mark, word, words)| (*mark, format!("{word} {words}"))).collect()));
    let part = BorrowedRodEnd {
        heat_treated: Some(true),
        thread: Some("1-1/4-12"),
        hand: Some(Hand::Right),
        eye_to_end: Some(inch(4.125)),
        thread_length: Some(inch(2.5)),
        bore: Some(inch(1.0)),
        ball_width: Some(made_of.link.ends[0].ball_width),
    };
    let link = BorrowedLink { shortest: Some(inch(37.0)), longest: Some(inch(39.0)) };
    for lent in [spares::rod_end(document, 0, &made_of, 0, &part, system), spares::whole_link(&made_of, &link, system)]
    {
        let lent = lent.unless_hit(hit);
        let mut marks = vec![(lent.mark, lent.word.to_string())];
        marks.extend(lent.points.iter().map(|(mark, _)| (*mark, String::new())));
        shown.push(("Spares", marks));
    }

    // The guide stands in Fit it and under the six buttons.
    let tape = |id: &str| id.starts_with("tape-").then_some(made_of.link.length);
    let readings = guide::Readings { number: &tape, picked: &|id| reading_row(id).and(Some("right")) };
    for topic in [Topic::MountToMount, Topic::Hand] {
        let judged = guide::judged(topic, &readings, document, 0, &made_of, system).expect("judged here");
        let judged = judged.into_iter().map(|judged| judged.unless_hit(hit));
        shown.push(("Fit it", judged.map(|judged| (judged.mark, judged.word.to_string())).collect()));
    }
    shown
}

/// Words that say that all is well.
const GREEN: [&str; 9] =
    ["Good", "good", "Within its stops", "Fitted", "In order", "in order", "Not due", "Fits", "Drive on"];

#[test]
fn no_place_says_a_good_word_while_a_hit_is_open() {
    let document = document();
    let of_build = bars(&document, 0);
    for at in [0, 1] {
        let spot = &of_build[at].0;
        for verdict in [STOP, LIMP] {
            for (place, marks) in everything(&document, spot, &log(spot, verdict)) {
                assert!(!marks.is_empty(), "{place}");
                for (mark, words) in marks {
                    assert_ne!(mark, Verdict::Passes, "{place}: {words}");
                    assert!(!GREEN.iter().any(|green| words.contains(green)), "{place}: {words}");
                }
            }
        }
    }
}

/// The same without a hit, and with one that was looked at in full: then each place has its good word, so that the test
/// above can fail.
#[test]
fn every_place_has_its_good_word_where_no_hit_is_open() {
    let document = document();
    let spot = &bars(&document, 0)[0].0;
    let mut replaced = log(spot, STOP);
    replaced.record(entry(spot, T[3], EntryKind::Replaced, None));
    for log in [log(spot, DRIVE_ON), replaced] {
        for place in ["Is it still safe?", "Turn it", "Fit it", "Recheck", "Spares"] {
            let shown = everything(&document, spot, &log);
            let marks = shown.iter().filter(|(of, _)| *of == place).flat_map(|(_, marks)| marks);
            assert!(marks.clone().any(|(mark, _)| *mark == Verdict::Passes), "{place}: {shown:?}");
        }
    }
}

/// The other bar of the pair is not good either where both are turned together.
#[test]
fn a_hit_on_the_other_bar_takes_the_green_from_both_that_are_turned() {
    let document = document();
    let of_build = bars(&document, 0);
    let log = log(&of_build[1].0, STOP);
    let made_of = made(&document, 0).expect("an answer");
    let good = read(&made_of.link, [1.5, 1.5]);
    let known = Known {
        answers: &|of| made(&document, of),
        readings: &|_| good,
        hit: &|spot| log.open_hit(spot).is_some(),
        chosen: Some(&of_build[0].0),
    };
    let told = answer(&document, 0, &asked(Ask::Longer, inch(0.1)), known, System::Inch);
    assert!(told.links.iter().all(|link| link.mark == Verdict::Unanswered && link.word.contains("a hit is open")));
}

/// Nor is a turn of the uppers while the lower that is looked at was hit.
#[test]
fn a_hit_on_the_bar_that_is_looked_at_takes_the_green_from_others() {
    let rig = crate::page::whole_rig();
    let lower = bars(&rig, 0)[0].0.clone();
    let log = log(&lower, LIMP);
    let readings = |_: &Spot| read(&made(&rig, 1).expect("an answer").link, [1.5, 1.5]);
    let told = |log: &Log| {
        let known = Known {
            answers: &|of| made(&rig, of),
            readings: &readings,
            hit: &|spot| log.open_hit(spot).is_some(),
            chosen: Some(&lower),
        };
        answer(&rig, 0, &asked(Ask::Pinion, deg(0.5)), known, System::Inch).links
    };
    assert!(told(&log).iter().all(|link| link.mark == Verdict::Unanswered));
    assert!(told(&Log::default()).iter().all(|link| link.mark == Verdict::Passes), "the case is one");
}

/// The card names the bar, first of all.
#[test]
fn the_card_names_the_bar_that_was_hit() {
    let document = document();
    let rig = whole_rig(&document, None);
    let of_build = bars(&document, 0);
    for (verdict, says) in [(STOP, "stop. A hit is in the log"), (LIMP, "limp home only. A hit is in the log")] {
        let cards = blocks(&document, &rig.links, &log(&of_build[1].0, verdict), System::Inch);
        assert_eq!(cards[0].stops[0].find(&of_build[1].1), Some(0), "{:?}", cards[0].stops);
        assert!(cards[0].stops[0].contains(says), "{:?}", cards[0].stops);
    }
    for log in [Log::default(), log(&of_build[1].0, DRIVE_ON)] {
        let cards = blocks(&document, &rig.links, &log, System::Inch);
        assert!(!cards[0].stops.iter().any(|stop| stop.contains("hit")), "{:?}", cards[0].stops);
    }
}
