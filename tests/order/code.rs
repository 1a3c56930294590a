//! The order code: the same link has the same one, everything that is made changes it, and nothing else does.

use std::collections::BTreeSet;

use crate::dice::{self, Dice};
use crate::links::{hard, sized};
use linkwright::document::{Document, Finish, Hand, Link, Position, Role};
use linkwright::engine::report;
use linkwright::engine::shop::code::{Code, Compared, NoCode, code_of_link, code_of_rig, compare, hash, read};
use linkwright::inputs::{CHOICES, LENGTH, NUMBERS, places};
use linkwright::quantity::{System, inch};
use linkwright::report::LinkReport;
use linkwright::share::{from_fragment, to_fragment};
use std::sync::{Arc, Mutex};

fn code(document: &Document) -> Code {
    code_of_rig(document, &report(document).links).expect("a link that can be made")
}

/// Two links of a rig.
fn two() -> Document {
    let mut document = hard();
    let upper = Link { role: Role::Upper, length: Some(inch(36.5)), ..Link::default() };
    document.links.push(upper);
    document
}

/// Changes one entry to another value; false where the dice took the value that stood there.
fn change(document: &mut Document, dice: &mut Dice) -> bool {
    let before = document.clone();
    let number = dice.next(NUMBERS.len() + CHOICES.len());
    if let Some(input) = NUMBERS.get(number) {
        let places = places(document, input.scope);
        let share = dice.next(1 << 20) as f64 / f64::from(1 << 20);
        let value = input.whole(input.least + share * (input.most - input.least));
        (input.set)(document, places[dice.next(places.len())], Some(value));
    } else {
        let choice = CHOICES[number - NUMBERS.len()];
        let places = places(document, choice.scope);
        let options = (choice.options)();
        (choice.set)(document, places[dice.next(places.len())], Some(options[dice.next(options.len())].id));
    }
    // What is said as it would be taken anyway changes nothing that is made.
    let usual = [
        "quantity=2&",
        "hand.a=rh&",
        "hand.b=lh&",
        "finish=as-turned&",
        "seat=both&",
        "skim=0in&",
        "role=lower&",
        "axle=front&",
    ];
    let says_the_usual = usual.iter().any(|part| to_fragment(document).contains(part));
    *document != before && !says_the_usual
}

#[test]
fn what_is_said_as_it_would_be_taken_changes_nothing() {
    let known = code(&hard());
    for said in [
        "quantity=2",
        "hand.a=rh",
        "hand.b=lh",
        "finish=as-turned",
        "seat=both",
        "skim=0in",
        "role=lower",
        "axle=front",
    ] {
        let fragment = to_fragment(&hard());
        let (body, _) = fragment.rsplit_once("&crc=").expect("a check");
        assert_eq!(code(&from_fragment(&format!("{body}&{said}")).document), known, "{said}");
    }
}

#[test]
fn the_same_link_has_the_same_code_anywhere() {
    let document = sized(2.0, "wide-16", "wide-14");
    let elsewhere = from_fragment(&to_fragment(&document)).document;
    assert_eq!(code(&document), code(&elsewhere));
    let report = report(&document);
    let answer = report.links[0].answer().expect("an answer");
    assert_eq!(code_of_link(&document, 0, answer), code(&document), "an order of one link is that link");
}

#[test]
fn name_order_and_the_sequence_of_links_leave_the_code_alone() {
    let document = two();
    let mut other = document.clone();
    other.name = "Blue".to_string();
    *other.order = Dice(5).order();
    other.links.swap(0, 1);
    assert_eq!(code(&other), code(&document));
}

#[test]
fn a_length_as_good_as_nothing_gives_the_code_of_none() {
    let [mut one, mut other] = [hard(), hard()];
    one.links[0].spacer = Some(1e-13);
    other.links[0].spacer = Some(-0.0);
    assert_eq!(code(&one), code(&other), "as a link brings both");
}

#[test]
fn a_length_in_inches_and_the_same_in_millimeters_give_one_code() {
    for (inches, millimeters) in [(36.5, 927.1), (38.25, 971.55), (36.0, 914.4), (33.0, 838.2)] {
        let [mut one, mut other] = [hard(), hard()];
        one.links[0].length = LENGTH.read(&inches.to_string(), System::Inch).expect("a length");
        other.links[0].length = LENGTH.read(&millimeters.to_string(), System::Metric).expect("a length");
        assert_eq!(code(&one), code(&other), "{inches} in");
    }
}

#[test]
fn whatever_is_made_changes_the_code() {
    let document = two();
    let known = code(&document);
    type Change = fn(&mut Document);
    let changes: [(&str, Change); 9] = [
        ("length", |it| it.links[0].length = Some(inch(38.0 + 1.0 / 64.0))),
        ("hand", |it| it.links[0].ends[1].hand = Some(Hand::Right)),
        ("quantity", |it| it.links[0].quantity = Some(1.0)),
        ("finish", |it| it.links[1].finish = Some(Finish::Anodized)),
        ("rod end", |it| it.links[0].ends[0].rod_end = Some("wide-16")),
        ("tapped depth", |it| it.links[0].ends[0].tapped_depth = Some(inch(2.75))),
        ("axle", |it| it.links[1].position = Position::Rear),
        ("a link more", |it| it.links.push(it.links[0].clone())),
        ("a link less", |it| it.links.truncate(1)),
    ];
    for (what, change) in changes {
        let mut changed = document.clone();
        change(&mut changed);
        assert_ne!(code(&changed), known, "{what}");
    }
}

/// A later version that computes another bar from the same entries: its report is another one.
#[test]
fn another_bar_from_the_same_entries_changes_the_code() {
    let document = hard();
    let known = code(&document);
    let answer = report(&document).links[0].answer().expect("an answer").clone();
    let with = |change: fn(&mut linkwright::report::Answer)| {
        let mut answer = answer.clone();
        change(&mut answer);
        code_of_rig(&document, &[LinkReport::Answer(Arc::new(answer))]).expect("a code")
    };
    assert_eq!(with(|_| ()), known);
    assert_eq!(with(|it| it.link.bar *= 1.0 + 1e-15), known, "a last bit makes no other bar");
    for other in [
        with(|it| it.link.bar += inch(1.0 / 32.0)),
        with(|it| it.link.outside_diameter += inch(0.25)),
        with(|it| it.link.ends[1].hand = Hand::Right),
        with(|it| it.link.ends[0].tapped_depth += inch(0.01)),
        with(|it| it.link.ends[0].eye_to_end += inch(0.1)),
        with(|it| it.link.flats = None),
    ] {
        assert_ne!(other, known);
    }
}

/// The report is kept as it was, so that this holds for the entries alone; the next test works each out.
#[test]
fn a_hundred_thousand_changed_entries_each_give_another_code() {
    let document = hard();
    let reports = report(&document).links;
    let known = code(&document);
    let seen = Mutex::new(BTreeSet::new());
    dice::in_four_threads(19, |mut dice| {
        let mut codes = Vec::new();
        while codes.len() < 25_000 {
            let mut changed = document.clone();
            if change(&mut changed, &mut dice) {
                let code = code_of_rig(&changed, &reports).expect("a report");
                assert_ne!(code, known, "{}", to_fragment(&changed));
                codes.push((code, to_fragment(&changed)));
            }
        }
        seen.lock().expect("no thread failed").extend(codes);
    });
    // The same change may come twice; two different ones never share a code.
    let seen = seen.into_inner().expect("no thread failed");
    let codes: BTreeSet<&Code> = seen.iter().map(|(code, _)| code).collect();
    assert_eq!(codes.len(), seen.len());
    assert!(codes.len() > 60_000, "{} of them differ", codes.len());
}

#[test]
fn a_thousand_changed_links_each_give_another_code() {
    let document = hard();
    let known = code(&document);
    dice::in_four_threads(190, |mut dice| {
        for _ in 0..250 {
            let mut changed = document.clone();
            if change(&mut changed, &mut dice) {
                let code = code_of_rig(&changed, &report(&changed).links);
                assert_ne!(code, Some(known), "{}", to_fragment(&changed));
            }
        }
    });
}

#[test]
fn an_order_that_cannot_be_made_has_no_code() {
    let mut document = two();
    document.links[1].length = None;
    let reports = report(&document).links;
    assert_eq!(code_of_rig(&document, &reports), None);
    assert_eq!(code_of_rig(&document, &reports[..1]), None, "a report is lacking");
    assert_eq!(compare(&code(&hard()).written(), &document, &reports), Compared::Link(0), "the link that can be made");
    assert_eq!(compare(&code(&two()).written(), &document, &reports), Compared::NothingYet);
}

#[test]
fn a_typed_code_is_compared() {
    let document = two();
    let reports = report(&document).links;
    let written = code(&document).written();
    let spaced: String = written.to_lowercase().replace('-', "").chars().flat_map(|sign| [sign, ' ']).collect();
    for typed in
        [written.clone(), written.replace('-', ""), spaced, written.replace('-', " – "), written.replace('O', "0")]
    {
        assert_eq!(compare(&typed, &document, &reports), Compared::Order, "{typed:?}");
    }
    for link in [0, 1] {
        let own = code_of_link(&document, link, reports[link].answer().expect("an answer"));
        assert_eq!(compare(&own.written(), &document, &reports), Compared::Link(link));
    }
    let other = sized(2.5, "wide-16", "wide-16");
    assert_eq!(compare(&code(&other).written(), &document, &reports), Compared::Another);
}

#[test]
fn what_is_no_code_is_told() {
    let good = Code::of_bytes(b"a link").written();
    let wrong = good.replacen(&good[..1], if good.starts_with('A') { "B" } else { "A" }, 1);
    for (typed, why) in [
        ("", NoCode::Empty),
        (" - ", NoCode::Empty),
        ("AAAA", NoCode::Count(4)),
        ("AAAA-AAAA-A1", NoCode::Count(10)),
        ("AAAA-AAA8", NoCode::Sign('8')),
        ("AAAA-AAAÄ-A", NoCode::Sign('Ä')),
        (&wrong, NoCode::Misheard),
        (&"A".repeat(100_000), NoCode::Count(1000)),
    ] {
        assert_eq!(read(typed), Err(why), "{}", &typed[..typed.len().min(20)]);
        assert!(why.sentence().ends_with('.'));
    }
    assert_eq!(read(&good).map(Code::written), Ok(good));
}

/// A 1 is I or L, whichever the check sign allows.
#[test]
fn a_one_is_read_as_the_letter_it_looks_like() {
    let mut read_back = 0;
    for number in 0..2_000_u32 {
        let good = Code::of_bytes(&number.to_be_bytes()).written();
        if good.matches(['I', 'L']).count() == 1 {
            let typed = good.replace(['I', 'L'], "1");
            match read(&typed) {
                Ok(code) => {
                    assert_eq!(code.written(), good);
                    read_back += 1;
                }
                // Both letters fit, or it stands where the check sign is: then nobody can tell.
                Err(why) => assert_eq!(why, NoCode::Sign('1'), "{typed}"),
            }
        }
    }
    assert!(read_back > 500, "{read_back}");
}

#[test]
fn a_code_is_written_and_spoken_sign_by_sign() {
    let code = Code::of_bytes(b"a link");
    let (written, spoken) = (code.written(), code.spoken());
    assert_eq!(written.len(), 11);
    assert!(written.bytes().enumerate().all(|(at, sign)| (sign == b'-') == (at == 4 || at == 9)), "{written}");
    let words: Vec<&str> = spoken.split(", ").collect();
    let digits = ["two", "three", "four", "five", "six", "seven"];
    let first = |word: &str| match digits.iter().position(|digit| *digit == word) {
        Some(at) => char::from(b'2' + at as u8),
        None => word.chars().next().unwrap_or_default(),
    };
    let read: String = words.iter().map(|word| first(word)).collect();
    assert_eq!(read, written.replace('-', ""), "{spoken}");
}

#[test]
fn every_bit_of_the_hash_is_as_often_one_as_zero() {
    let mut ones = [0_u32; 64];
    for number in 0..4_000_u32 {
        let hash = hash(&number.to_be_bytes());
        ones.iter_mut().enumerate().for_each(|(bit, ones)| *ones += u32::from(hash >> bit & 1 == 1));
    }
    // Four standard deviations of 4,000 throws are 126.
    assert!(ones.iter().all(|ones| ones.abs_diff(2_000) < 126), "{ones:?}");
}
