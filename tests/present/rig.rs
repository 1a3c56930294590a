//! The rig, what is saved, and two rigs side by side, as they are shown.

#[path = "rig/links.rs"]
mod links;
#[path = "rig/saved.rs"]
mod saved;
#[path = "rig/side_by_side.rs"]
mod side_by_side;

use crate::dice;
use linkwright::document::{Document, Position, Side, Use};
use linkwright::engine::whole_rig;
use linkwright::layouts::{self, LAYOUTS, Layout};
use linkwright::present::{rig, rig_list};
use linkwright::quantity::{System, inch, lbf};
use linkwright::report::WholeRig;
use std::sync::atomic::{AtomicUsize, Ordering};

const SYSTEMS: [System; 2] = [System::Inch, System::Metric];

fn layout(id: &str) -> &'static Layout {
    LAYOUTS.iter().find(|layout| layout.id == id).expect("a layout")
}

/// A named rig of eight entries, twelve links, as people build it.
fn eight() -> Document {
    let mut document = Document { name: "Trail rig".to_string(), ..Document::default() };
    (document.rig.weight, document.rig.usage) = (Some(lbf(4100.0)), Some(Use::Hard));
    for id in ["three", "steering", "sway"] {
        layouts::add(&mut document, layout(id), Position::Front);
    }
    layouts::add(&mut document, layout("converging"), Position::Rear);
    let lengths = [38.0, 36.0, 33.5, 48.0, 40.0, 12.0, 40.25, 34.5];
    document.links.iter_mut().zip(lengths).for_each(|(link, length)| link.length = Some(inch(length)));
    document
}

fn whole(document: &Document) -> WholeRig {
    whole_rig(document, None)
}

/// A random rig, most of whose links have what an answer needs.
fn random_rig(dice: &mut dice::Dice) -> Document {
    let mut document = dice.rig();
    document.rig.weight = Some(lbf(1500.0 + dice.next(8000) as f64));
    document.rig.usage = Some(Use::Hard);
    for link in &mut document.links {
        if dice.next(6) > 0 {
            link.length = Some(inch(8.0 + dice.next(50) as f64));
        }
    }
    document
}

/// Whether a text shows a number that is none.
fn shows_no_number(text: &str) -> bool {
    let letters = |c: char| !c.is_alphanumeric();
    text.split(letters).any(|word| ["NaN", "inf"].contains(&word))
}

#[test]
fn the_head_says_what_rig_it_is_and_how_it_came_out() {
    let head = rig::head(&whole(&eight()), System::Inch);
    assert_eq!(
        [head.kicker.as_str(), &head.title, &head.status],
        [
            "Rig of 4,100 lb, driven hard",
            "Trail rig",
            "12 links to make. Worst: rear lower links, passes, little margin."
        ]
    );
    assert_eq!(head.judged.map(|judged| judged.word), Some("Passes, little margin"));
    let nameless = whole(&Document { name: String::new(), ..eight() });
    let head = rig::head(&nameless, System::Metric);
    assert_eq!(
        [head.kicker.as_str(), &head.title, &head.status],
        ["Rig of 1,860 kg, driven hard", "12 links to make", "Worst: rear lower links, passes, little margin."],
        "the count is said once"
    );
}

#[test]
fn the_summary_counts_what_is_still_needed() {
    type Edit = fn(&mut Document);
    let cases: [(Edit, &str); 7] = [
        (|rig| rig.links.iter_mut().for_each(|link| link.length = None), "12 links to make, none entered yet."),
        (
            |rig| rig.links[1].length = None,
            "12 links to make. Worst: rear lower links, passes, little margin. 1 link still needs its length.",
        ),
        (
            |rig| rig.links[0].length = None,
            "12 links to make. Worst: rear lower links, passes, little margin. 2 links still need their lengths.",
        ),
        (
            |rig| rig.links[1].ends[0].rod_end = Some(linkwright::document::OWN_ROD_END),
            "12 links to make. Worst: rear lower links, passes, little margin. 1 link still needs an entry.",
        ),
        (|rig| rig.rig.usage = None, "12 links to make. Still needed: how it is used."),
        (
            |rig| {
                rig.links[1].length = Some(inch(6.0));
                rig.links[1].ends.iter_mut().for_each(|end| end.rod_end = Some("wide-16"));
            },
            "12 links to make. Worst: front upper link, cannot be made as entered. 1 link cannot be made as entered.",
        ),
        (|rig| rig.links.truncate(2), "3 links to make. Worst: front lower links, passes."),
    ];
    for (edit, sentence) in cases {
        let mut document = eight();
        edit(&mut document);
        assert_eq!(rig::summary(&whole(&document)), sentence);
    }
    assert_eq!(rig::summary(&whole(&Document::default())), "2 links to make, none entered yet.");
}

#[test]
fn a_link_that_fails_decides_the_word_of_the_rig() {
    let mut document = eight();
    document.links[4].outside_diameter = Some(inch(0.5));
    let head = rig::head(&whole(&document), System::Inch);
    assert_eq!(head.judged.map(|judged| judged.word), Some("Fails"));
    assert!(head.status.contains("Worst: front drag link, fails."), "{}", head.status);
    document.links.iter_mut().for_each(|link| link.length = None);
    assert_eq!(rig::head(&whole(&document), System::Inch).judged, None, "nothing is answered");
}

#[test]
fn the_text_has_every_link_once_and_both_units() {
    let document = eight();
    let text = rig::text(&whole(&document), Some("https://example.org/#rig".to_string()));
    let lines: Vec<&str> = text.lines().collect();
    assert_eq!(lines[..2], ["Trail rig", "Rig: 4,100 lb, driven hard (1,860 kg)"]);
    for index in 0..8 {
        let title = rig::numbered(&document, index);
        assert_eq!(lines.iter().filter(|line| **line == title).count(), 1, "{title}");
    }
    for said in [
        "40-1/4 in (1022.4 mm) mount to mount: 2-1/4 in (57.2 mm) 7075-T6/T651 bar, 1-1/4-12 rod ends, RH at A and LH at B. Saw to 35-1/8 in (892.2 mm). Passes, little margin.",
        "Buckling in compression: 52.9 % of its limit, passes.",
        "Jam nut, 1-1/4-12 left-hand: 4",
        "All bars together: 92.9 lb (42.1 kg)",
        "An estimate for planning, not a certificate.",
    ] {
        assert!(lines.contains(&said), "{said} is missing in {text}");
    }
    assert_eq!(lines.last(), Some(&"https://example.org/#rig"));
    let bare = rig::text(&whole(&Document::default()), None);
    assert!(bare.contains("No answer yet.") && !bare.contains("()"), "{bare}");
    assert!(bare.ends_with("certificate."), "a page that is a file has no link to send");
}

#[test]
fn random_rigs_show_every_link_once_and_no_broken_number() {
    let answered = AtomicUsize::new(0);
    dice::in_four_threads(31, |mut dice| {
        for _ in 0..40 {
            let document = random_rig(&mut dice);
            let whole = whole(&document);
            let mut seen: Vec<usize> = whole.rig.worst_first.clone();
            seen.sort_unstable();
            assert_eq!(seen, (0..document.links.len()).collect::<Vec<_>>(), "each link once");
            for system in SYSTEMS {
                let head = format!("{:?}", rig::head(&whole, system));
                assert!(!shows_no_number(&head), "{head}");
                for &index in &whole.rig.worst_first {
                    let row = rig_list::row(&whole, index, system).expect("a row");
                    assert_eq!(row.title, rig::numbered(&document, index));
                    assert_eq!(row.judged.is_some(), row.saw.is_some());
                    answered.fetch_add(usize::from(row.judged.is_some()), Ordering::Relaxed);
                    assert!(!row.size.is_empty() && !shows_no_number(&format!("{row:?}")), "{row:?}");
                    assert!(rig_list::buttons(&document, index, system).is_some());
                }
            }
            let text = rig::text(&whole, None);
            assert!(!shows_no_number(&text), "{text}");
            for index in 0..document.links.len() {
                let title = rig::numbered(&document, index);
                assert_eq!(text.lines().filter(|line| *line == title).count(), 1, "{title} in {text}");
            }
        }
    });
    let answered = answered.into_inner();
    assert!(answered > 300, "{answered} rows with an answer");
}

#[test]
fn entries_are_counted_apart_from_the_links_to_make() {
    let line = rig::entries_line(&whole(&eight()));
    assert_eq!(line.as_deref(), Some("8 entries for 12 links: links that are alike are entered once."));
    let mut pair = eight();
    pair.links.retain(|link| link.seated() == Side::Both);
    pair.links.truncate(1);
    let line = rig::entries_line(&whole(&pair));
    assert_eq!(line.as_deref(), Some("1 entry for 2 links: links that are alike are entered once."));
    let mut alone = eight();
    alone.links.retain(|link| link.seated() == Side::Middle);
    assert!(!alone.links.is_empty());
    assert_eq!(rig::entries_line(&whole(&alone)), None);
}

#[test]
fn links_are_picked_by_the_numbers_that_they_have_in_the_list() {
    let document = eight();
    let titles = rig::picker_titles(&document);
    assert_eq!(titles.len(), 8);
    assert_eq!([titles[0].as_str(), &titles[6]], ["1. Front lower links", "7. Rear lower links"]);
    for (index, title) in titles.iter().enumerate() {
        assert!(rig::numbered(&document, index).starts_with(title.as_str()), "{title}");
    }
    assert_eq!([true, false].map(rig::back_label), ["All entered: back to the rig", "Back to the rig"]);
}

/// What holds for every link of the pocket card stands above them once; what speaks of one link stays with it.
#[test]
fn the_pocket_card_says_once_what_holds_for_every_link() {
    use linkwright::log::Log;
    use linkwright::present::fit::card::{PROVISIONAL, blocks, said_once};
    let whole = whole(&eight());
    let before = blocks(&whole.document, &whole.links, &Log::default(), System::Inch);
    assert!(before.iter().all(|block| block.stops.iter().any(|stop| stop == PROVISIONAL)));
    let mut after = before.clone();
    let common = said_once(&mut after);
    assert_eq!(common.iter().filter(|words| *words == PROVISIONAL).count(), 1);
    for (before, after) in before.iter().zip(&after) {
        let stays: Vec<&String> = before.stops.iter().filter(|stop| *stop != PROVISIONAL).collect();
        assert_eq!(after.stops.iter().collect::<Vec<_>>(), stays, "{}", before.title);
        assert!(after.turning == before.turning || common.contains(&before.turning), "{}", before.title);
        assert!(after.lengths.contains("One turn: ") || !before.turning.starts_with("Look"), "{}", after.lengths);
    }
    // One link alone keeps all that it says, and where one differs nothing is taken from the others.
    let mut alone = before[..1].to_vec();
    assert!(said_once(&mut alone).is_empty() && alone == before[..1]);
    let mut mixed = before;
    mixed[1].stops.clear();
    assert!(!said_once(&mut mixed).contains(&PROVISIONAL.to_string()));
    assert!(mixed[0].stops.iter().any(|stop| stop == PROVISIONAL));
}
