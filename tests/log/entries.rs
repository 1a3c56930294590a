//! Entries of a log: put in once, taken out and put back, told in a line; and what follows the link that they are of.

use crate::*;

/// Taken out and put back on two pages: the later word holds, whichever page takes the other in, and the file tells it.
#[test]
fn what_was_taken_out_can_be_put_back() {
    let left = spot("front-lower-left");
    let stands = |log: &Log| log.of_bar(&left).any(|entry| entry.id == "one");
    let (mut out, mut back) = (log(), log());
    out.withdraw("one", true, T2);
    assert!(!stands(&out));
    back.withdraw("one", true, T2);
    back.withdraw("one", false, T3);
    assert!(stands(&back));
    for (mut own, theirs, is_there) in [
        (out.clone(), back.clone(), true),
        (back.clone(), out.clone(), true),
        (log(), out.clone(), false),
        (out.clone(), log(), false),
        (log(), back.clone(), true),
    ] {
        own.join(&theirs);
        assert_eq!(stands(&own), is_there);
        let (read, whole) = log_from_text(&log_to_text(&own));
        assert_eq!((&read, whole), (&own, true));
    }
    // A page that wrote down no time: any time is later, and of two without one the entry is out.
    let (mut old, mut untouched) = (log(), log());
    old.entries[0].withdrawn = OUT;
    let text = log_to_text(&old);
    assert!(text.contains("\"withdrawn\": true") && !text.contains("withdrawn_at"), "{text}");
    untouched.join(&old);
    assert!(!stands(&untouched));
    old.join(&back);
    assert!(stands(&old));
}

/// The same readings are not put in twice, but after anything else was done to the bar.
#[test]
fn the_newest_entry_is_known_again() {
    let mut log = Log::default();
    let checked = entry("one", T1, EntryKind::Checked, "Good.");
    assert_eq!(log.has_newest(&checked), None);
    log.record(checked.clone());
    log.record(entry("note", T2, EntryKind::Note, "Sunny"));
    let again = Entry { id: "two".to_string(), at: T3.to_string(), ..checked.clone() };
    assert_eq!(log.has_newest(&again), Some(&checked));
    assert_eq!(log.has_newest(&Entry { words: "Stop.".to_string(), ..again.clone() }), None);
    assert_eq!(log.has_newest(&Entry { code: "other".to_string(), ..again.clone() }), None);
    assert_eq!(log.has_newest(&Entry { readings: [].into(), ..again.clone() }), None);
    assert_eq!(log.has_newest(&Entry { spot: spot("front-lower-right"), ..again.clone() }), None);
    log.record(entry("turned", T3, EntryKind::Turned, "Longer"));
    assert_eq!(log.has_newest(&again), None, "it was turned since");
}

/// What could not be read goes along when the entries become a build: the record that it stood in is taken away.
#[test]
fn a_damaged_log_follows_its_entries_as_it_was_found() {
    let before = Origin::new("origin".to_string());
    let now = Origin { build: Some("build".to_string()), ..before.clone() };
    for stands in ["{ damaged".to_string(), log_to_text(&log()).replace("\"2.625 in\"", "\"seven\"")] {
        let writes = logs::follow(&before, &now, |id| if id == "origin" { stands.clone() } else { String::new() });
        let copy = writes.iter().find(|write| write.key == "linkwright.log.build.damaged").expect("a copy");
        assert_eq!(copy.text, stands);
        let cleared = writes.iter().position(|write| write.key == "linkwright.log.origin" && write.text.is_empty());
        assert_eq!(cleared, Some(writes.len() - 1), "the last of all");
    }
}

/// Each line says a thing once: the sentence first, then the readings that are not in it, in a few words.
#[test]
fn a_line_of_the_log_says_each_thing_once() {
    use linkwright::present::fit::log::lines;
    let left = spot("front-lower-left");
    let codes = ["made".to_string(), "code".to_string()];
    let said = |kind, words: &str, readings: &[(&'static str, Reading)]| {
        let mut log = Log::default();
        log.record(Entry { readings: readings.iter().copied().collect(), ..entry("one", T1, kind, words) });
        let line = lines(&log, &left, &codes, &[], System::Inch).remove(0);
        (line.title, line.words)
    };
    let (yes, no) = (Reading::Pick("yes"), Reading::Pick("no"));
    for (kind, words, readings, title, wanted) in [
        (
            EntryKind::Checked,
            "Good. A: 3 threads show, B: not read",
            vec![("threads-a", Reading::Number(3.0)), ("nut-a", yes), ("nut-b", no)],
            "Checked as fitted",
            "Good. A: 3 threads show, B: not read · A nut tight · B nut loose",
        ),
        (
            EntryKind::Checked,
            "Good. A: 13 threads show",
            vec![("threads-b", Reading::Number(3.0)), ("eye-to-eye", Reading::Number(inch(38.0)))],
            "Checked as fitted",
            "Good. A: 13 threads show · eye to eye 38 in · B 3 threads",
        ),
        (
            EntryKind::Hit,
            "Stop. The bar has a kink.",
            vec![
                ("hit-crack", no),
                ("hit-gouge", Reading::Pick("none")),
                ("hit-kink", yes),
                ("hit-verdict", Reading::Pick("stop")),
            ],
            "After a hit",
            "Stop. The bar has a kink. · Kink, wrinkle or flat",
        ),
        (
            EntryKind::Note,
            "Still to look at.",
            vec![("recheck-kind", Reading::Pick("outing"))],
            "Recheck",
            "Still to look at. · Each outing",
        ),
        (EntryKind::Note, "Sunny", vec![], "Note", "Sunny"),
    ] {
        assert_eq!(said(kind, words, &readings), (title, wanted.to_string()));
    }
}

/// An entry is of another link once another bar or rod end is made, not once a pair is set apart.
#[test]
fn a_pair_that_is_set_apart_keeps_its_log() {
    use linkwright::engine::report_on;
    use linkwright::engine::shop::code::{code_of_link, code_of_made};
    use linkwright::layouts;
    let code = |document: &Document| {
        let report = report_on(document, 0);
        let answer = report.answer().expect("an answer");
        [code_of_made(document, 0, answer), code_of_link(document, 0, answer)].map(|code| code.written())
    };
    let (pair, mut apart, mut longer) = (rig(), rig(), rig());
    assert!(layouts::set_apart(&mut apart, 0).is_some());
    longer.links[0].length = Some(inch(42.0));
    let [made, order] = code(&pair);
    assert_eq!(code(&apart)[0], made);
    assert_ne!(code(&apart)[1], order, "it is another order");
    assert_ne!(code(&longer)[0], made);
}

#[test]
fn a_removed_link_tells_that_its_log_stays() {
    use linkwright::present::fit::log::entries_of;
    use linkwright::present::rig_list::log_stays;
    let spots = [spot("front-lower-left"), spot("front-lower-right")];
    assert_eq!(entries_of(&log(), &spots[1..]), None);
    let entries = entries_of(&log(), &spots).expect("entries");
    assert_eq!(log_stays("Front lower removed.", &entries), "Front lower removed. Its log (2 entries) stays.");
}

/// The ends go by their threads, not by the sides of the rig.
#[test]
fn which_end_is_a_is_told_by_its_thread() {
    use linkwright::document::Hand;
    use linkwright::engine::report_on;
    use linkwright::present::fit::which_ends;
    let told = |hands: Option<[Hand; 2]>| {
        let mut document = rig();
        if let Some(hands) = hands {
            let ends = &mut document.links[0].ends;
            ends.iter_mut().zip(hands).for_each(|(end, hand)| end.hand = Some(hand));
        }
        which_ends(&report_on(&document, 0).answer().expect("an answer").link)
    };
    let usual = "End A has the right-hand thread (RH), end B the left-hand thread (LH). Not the side of the rig.";
    assert_eq!(told(None), usual);
    assert_eq!(
        told(Some([Hand::Right, Hand::Right])),
        "Both ends have a right-hand thread (RH). Mark one of them A with paint, and keep to it."
    );
}
