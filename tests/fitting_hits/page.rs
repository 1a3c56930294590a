//! What the page says after a hit, of spares and of borrowed parts: the right words in the right place.

use std::collections::BTreeMap;

use super::{link, tube};
use crate::links::{answer, sized};
use linkwright::document::{Document, Hand, Role};
use linkwright::engine::fitting::borrowed::BorrowedRodEnd;
use linkwright::engine::fitting::hit::bowed_bar;
use linkwright::engine::report;
use linkwright::log::{Reading, ReadingKind, reading_row};
use linkwright::present::drawing::string::string;
use linkwright::present::fit::hit::{self, HitPage};
use linkwright::present::fit::spares;
use linkwright::quantity::{System, inch};
use linkwright::report::Verdict;

type Log = BTreeMap<&'static str, Reading>;

fn page(document: &Document, log: &Log) -> HitPage {
    let number = |id: &str| log.get(id).and_then(|reading| reading.number());
    let picked = |id: &str| log.get(id).and_then(|reading| reading.picked());
    let readings = hit::readings(number, picked);
    hit::page(&answer(document), bowed_bar(document, 0).as_ref(), &readings, System::Inch)
}

/// Two touches and one number: the string, and the button for all the rest.
fn after_two_touches(bow: f64) -> Log {
    let mut log = Log::from([("hit-bow", Reading::Number(inch(bow)))]);
    for (id, pick) in hit::none_of(|_| None, true) {
        log.insert(id, Reading::Pick(pick));
    }
    log
}

#[test]
fn two_touches_and_a_number_give_a_word() {
    let cases = [
        (tube(), 0.0, "Drive on", Verdict::Passes),
        (tube(), 0.1, "Limp home", Verdict::Close),
        (tube(), 0.5, "Stop", Verdict::Fails),
        (link(Role::Lower, "7075-t6", [4000.0, 36.0, 2.0, 0.0]), 0.1, "Stop", Verdict::Fails),
        (link(Role::TieRod, "1026-dom", [4000.0, 48.0, 1.75, 0.25]), 0.1, "Stop", Verdict::Fails),
    ];
    for (document, bow, word, mark) in cases {
        let page = page(&document, &after_two_touches(bow));
        assert_eq!((page.word, page.mark), (word, mark), "{bow}: {}", page.reason);
        assert!(page.log.starts_with(word) && !page.next.is_empty());
        assert_eq!(page.limits.is_empty(), word != "Limp home");
        // Only the whole says that it drives on, and no line of a link that stops is the word of one that may.
        assert!(page.lines.iter().all(|line| line.word != "Drive on" && !line.source.is_empty()));
        assert_eq!(page.left.is_empty(), bow == 0.0);
        assert_eq!(page.working.is_empty(), bow == 0.0);
    }
}

/// What was found and may stay is told; a loose nut or a torn bracket stops; the rows can be read out on a call.
#[test]
fn what_was_found_is_never_called_nothing() {
    assert!(page(&tube(), &after_two_touches(0.0)).reason.contains("nothing found"));
    let mut scratched = after_two_touches(0.0);
    scratched.insert("hit-gouge", Reading::Pick("blunt"));
    for log in [after_two_touches(1.0 / 32.0), scratched] {
        let page = page(&tube(), &log);
        assert!(page.word == "Drive on" && !page.reason.contains("nothing found"), "{}", page.reason);
    }
    assert!(page(&tube(), &after_two_touches(1.0 / 32.0)).reason.contains("1/32 in of gap is within"));
    for id in ["hit-nut", "hit-mount"] {
        let mut log = after_two_touches(0.0);
        assert_eq!(log.insert(id, Reading::Pick("yes")), Some(Reading::Pick("no")));
        assert_eq!(page(&tube(), &log).word, "Stop", "{id}");
    }
    let names: Vec<&str> = page(&tube(), &after_two_touches(0.1)).left.iter().map(|(name, _)| *name).collect();
    let wanted = ["Bow counted, with that of a bar sold as straight", "Buckling load, straight", "Buckling load, now"];
    assert_eq!(names[..3], wanted);
    assert!(names.contains(&"Bending + compression, share of yield") && names.contains(&"Design hit, share of yield"));
}

#[test]
fn what_is_open_stands_in_the_reason() {
    let empty = page(&tube(), &Log::new());
    assert_eq!((empty.word, empty.mark), ("Not judged", Verdict::Unanswered));
    for words in ["Still to look for: a bend", "cracks", "play."] {
        assert!(empty.reason.contains(words), "{}", empty.reason);
    }
    // A dent that nobody measured is still to be looked at; one that was is judged.
    let mut log = after_two_touches(0.0);
    log.insert("hit-dent", Reading::Pick("yes"));
    assert_eq!(page(&tube(), &log).reason, "Still to look for: dents, and how deep.");
    log.insert("hit-dent-depth", Reading::Number(inch(0.3)));
    assert_eq!(page(&tube(), &log).word, "Stop");
    // A depth left over from before the dent was taken back says nothing.
    log.insert("hit-dent", Reading::Pick("no"));
    assert_eq!(page(&tube(), &log).word, "Drive on");
    // A bend that was seen is asked to be measured.
    let mut log = after_two_touches(0.0);
    log.remove("hit-bow");
    log.insert("hit-bend", Reading::Pick("yes"));
    assert!(page(&tube(), &log).reason.contains("Measure it with a string"));
}

/// Every row of readings is one of the log, and the button answers only what is open.
#[test]
fn the_rows_are_those_of_the_log() {
    for id in hit::ROWS {
        assert!(reading_row(id).is_some(), "{id}");
    }
    for (id, pick) in hit::none_of(|_| None, false) {
        let row = reading_row(id).expect("a row");
        assert!(row.pick(pick).is_some() && matches!(row.holds, ReadingKind::Pick(_)), "{id}: {pick}");
    }
    let open = hit::none_of(|id| (id == "hit-crack").then_some("yes"), true);
    assert!(open.len() == hit::PICKED.len() - 2 && open.iter().all(|(id, _)| *id != "hit-crack" && *id != "hit-bend"));
    assert!(!string().is_empty() && string().words.contains("string"));
}

#[test]
fn the_list_says_hand_count_and_what_a_bar_is_for() {
    let mut document = sized(2.0, "wide-16", "wide-16");
    let mut short = document.links[0].clone();
    short.length = Some(inch(33.0));
    document.links.push(short);
    let list = spares::list(&document, &report(&document).links, &|_| false, System::Inch);
    let names: Vec<&str> = list.parts.iter().map(|(name, _, _)| name.as_str()).collect();
    for words in
        ["Rod end, 1-1/4-12 right-hand", "Rod end, 1-1/4-12 left-hand", "Jam nut, 1-1/4-12 left-hand", "Bolt 1 in"]
    {
        assert!(names.iter().any(|name| name.starts_with(words)), "{words}: {names:?}");
    }
    assert_eq!(list.bars.len(), 1);
    let bar = &list.bars[0];
    assert!(bar.name.contains("tapped 1-1/4-12 RH and 1-1/4-12 LH"), "{}", bar.name);
    let marks: Vec<Verdict> = bar.links.iter().map(|(mark, _, _)| *mark).collect();
    // Its rod ends were never measured.
    assert_eq!(marks, [Verdict::Unanswered, Verdict::Fails]);
    assert!(bar.links[1].2.contains("Too long for the front lower links"), "{}", bar.links[1].2);
    assert!(list.notes.iter().any(|note| note == spares::PROVISIONAL));
}

/// A rod end of a series needs its hand only; a wrong one is red, an unknown one is not green.
#[test]
fn a_listed_rod_end_needs_its_hand_only() {
    let document = sized(2.0, "wide-14", "wide-14");
    let judged = |part: &BorrowedRodEnd| spares::rod_end(&document, 0, &answer(&document), 0, part, System::Inch);
    let of = |hand| BorrowedRodEnd { heat_treated: Some(true), ..spares::of_series("wide-14", hand).expect("listed") };
    let unknown = judged(&of(None));
    assert_eq!((unknown.word, unknown.missing.as_str()), ("Not judged", "Still needed: its hand of thread."));
    let right = judged(&of(Some(Hand::Right)));
    assert_eq!((right.word, right.mark, right.lengths.len()), ("Fits", Verdict::Passes, 3));
    // The print of a series says nothing of the steel in the hand.
    let steel = spares::of_series("wide-14", Some(Hand::Right)).expect("listed");
    assert_eq!((judged(&steel).word, steel.heat_treated), ("Not judged", None));
    assert_eq!(judged(&BorrowedRodEnd { heat_treated: Some(false), ..steel }).word, "With care");
    let wrong = judged(&of(Some(Hand::Left)));
    assert_eq!((wrong.word, wrong.mark), ("Does not fit", Verdict::Fails));
    assert!(wrong.points[0].1.contains("Never force it"));
    assert_eq!(spares::of_series("no-such-part", None), None);
    assert_eq!(spares::thread_of("1-14"), Some("1-14"));
    assert!(spares::series().len() > 20 && spares::thread_picks().len() > 20);
}
