//! Saved builds: file, link and document are the same thing, bit for bit; what was damaged by hand is told.
#![cfg(not(target_arch = "wasm32"))]

mod dice;

use linkwright::builds::{Build, Earlier, MOST_EARLIER, from_text, is_id, numbered, to_text};
use linkwright::document::{Axle, Document, Hand, Link, Position, Role, Side, Stage, Use};
use linkwright::quantity::{deg, inch, ksi, lbf};
use linkwright::share::{from_fragment, to_fragment};

/// A file of version 1, kept as it was first written: it must open for as long as version 1 is known.
const SAMPLE: &str = include_str!("builds/version-1.json");

/// A file of version 2, kept as it was first written.
const SAMPLE_2: &str = include_str!("builds/version-2.json");

/// A file of version 2 with an order, kept as it was first written.
const SAMPLE_2_ORDER: &str = include_str!("builds/version-2-order.json");

/// What the samples were made from.
fn sample() -> Vec<Build> {
    let mut document = Document { name: "Blue rig, \"größer\"".to_string(), ..Document::default() };
    document.rig.weight = Some(lbf(4100.0));
    document.rig.usage = Some(Use::Hard);
    document.rig.front_share = Some(0.55);
    document.rig.traction = Some(1.1);
    document.rig.axles[1] = Axle { share: Some(0.7), flex: Some(inch(7.0)), ..Axle::default() };
    let lower = Link { length: Some(inch(38.5)), outside_diameter: Some(inch(2.25)), ..Link::default() };
    let mut upper = Link { role: Role::Upper, position: Position::Rear, length: Some(0.8128), ..Link::default() };
    upper.seat = Some(Side::Left);
    upper.plan_angle = Some(deg(25.0));
    upper.shank_yield = Some(ksi(120.0));
    upper.quantity = Some(3.0);
    upper.ends[0].rod_end = Some("wide-16");
    upper.ends[0].rating = Some(lbf(28_000.0));
    upper.ends[1].hand = Some(Hand::Right);
    // No unit leads back to this one exactly.
    upper.ends[1].tapped_depth = Some(0.050_000_000_000_000_01);
    document.links = vec![lower, upper];
    let mut before = document.clone();
    before.links.truncate(1);
    // As it was written then.
    let fragment = "2&name=Blue_rig.2c_.22gr.c3.b6.c3.9fer.22&length=0.9779&weight=4100lb&od=2.25in&rear.flex=7in&traction=1.1&front-share=0.55&rear.axle-share=0.7&use=hard&crc=285cf417";
    assert_eq!(from_fragment(fragment).document, before);
    let earlier =
        Earlier { saved: "2026-11-24T18:02:11.120Z".to_string(), fragment: fragment.to_string(), ..Earlier::default() };
    let first = Build {
        id: "m3x9-k2".to_string(),
        saved: "2026-11-25T07:41:00.000Z".to_string(),
        removed: None,
        document,
        earlier: vec![earlier],
        ..Build::default()
    };
    let second = Build {
        id: "b".to_string(),
        saved: "2026-11-20T10:00:00.000Z".to_string(),
        removed: Some("2026-11-21T10:00:00.000Z".to_string()),
        ..Build::default()
    };
    vec![first, second]
}

fn values(text: &str) -> serde_json::Value {
    serde_json::from_str(text).expect("JSON")
}

/// The names in a file, in their order.
fn names(value: &serde_json::Value) -> Vec<String> {
    match value {
        serde_json::Value::Object(members) => {
            members.iter().flat_map(|(name, value)| [vec![name.clone()], names(value)].concat()).collect()
        }
        serde_json::Value::Array(values) => values.iter().flat_map(names).collect(),
        _ => Vec::new(),
    }
}

#[test]
fn a_file_of_version_1_opens_for_good() {
    let read = from_text(SAMPLE).expect("a file");
    assert_eq!(read.notices, Vec::<String>::new());
    assert!(read.builds == sample(), "{:#?}", read.builds);
}

#[test]
fn a_file_of_version_2_opens_for_good() {
    let read = from_text(SAMPLE_2).expect("a file");
    assert_eq!((read.notices, read.builds), (Vec::<String>::new(), sample()));
    let [written, kept] = [&to_text(&sample()), SAMPLE_2].map(values);
    assert_eq!(written, kept, "the same values are written today");
    assert_eq!(names(&written), names(&kept), "in the same order");
}

#[test]
fn a_file_with_an_order_opens_for_good() {
    let read = from_text(SAMPLE_2_ORDER).expect("a file");
    assert_eq!(read.notices, Vec::<String>::new());
    let order = &read.builds[0].document.order;
    assert_eq!(
        (order.reference.as_str(), order.wanted.as_str(), order.stage),
        ("PO 17/b", "2026-12-24", Stage::Confirmed)
    );
    assert_eq!(order.remarks, "Größe: stamp \"LH\" at B");
    assert_eq!(order.yes.code, "K7QM-2XPA-B");
    assert_eq!(from_fragment(&order.first_said).notices, Vec::<String>::new());
    let [written, kept] = [&to_text(&read.builds), SAMPLE_2_ORDER].map(values);
    assert_eq!(written, kept, "the same values are written today");
    assert_eq!(names(&written), names(&kept), "in the same order");
}

#[test]
fn a_file_is_json_for_everybody_else() {
    let read: serde_json::Value = serde_json::from_str(SAMPLE).expect("JSON");
    assert_eq!(read["builds"][0]["name"], "Blue rig, \"größer\"");
    assert_eq!(read["builds"][0]["links"][0]["length"], "38.5 in", "every value says its unit");
    assert_eq!(read["builds"][0]["rig"]["weight"], "4100 lb");
}

#[test]
fn a_hundred_thousand_rigs_come_back_from_file_and_link_bit_for_bit() {
    dice::in_four_threads(4_711, |mut dice| {
        for hundred in 0..250 {
            // A hundred in one file, as somebody exports them all.
            let builds: Vec<Build> = (0..100)
                .map(|number| {
                    let document = dice.rig();
                    let saved = format!("2026-11-25T07:41:{:02}.000Z", number % 60);
                    let earlier = vec![Earlier {
                        saved: saved.clone(),
                        fragment: to_fragment(&document),
                        unverified: Vec::new(),
                    }];
                    Build { id: format!("b{number}"), saved, removed: None, document, earlier, ..Build::default() }
                })
                .collect();
            let read = from_text(&to_text(&builds)).expect("a file");
            assert!(read.notices.is_empty(), "{hundred}: {:?}", read.notices);
            assert_eq!(read.builds.len(), 100);
            for (out, back) in builds.iter().zip(&read.builds) {
                let fragment = &out.earlier[0].fragment;
                assert!(out == back, "{hundred}: {fragment}");
                assert_eq!(to_fragment(&back.document), *fragment, "down to the sign of zero");
                assert!(from_fragment(fragment).document == out.document, "{hundred}: {fragment}");
            }
        }
    });
}

#[test]
fn every_truncated_file_is_told() {
    let end = SAMPLE.trim_end().len();
    for cut in (0..end).filter(|cut| SAMPLE.is_char_boundary(*cut)) {
        let told = from_text(&SAMPLE[..cut]).expect_err("half a file is none");
        assert!(told.contains("cannot be read"), "{cut}: {told}");
    }
}

#[test]
fn every_changed_character_is_told_or_means_the_same() {
    let whole = sample();
    let first = SAMPLE.find("\"rig\"").expect("a rig");
    let last = SAMPLE.find("\"check\"").expect("a check");
    for at in (first..last).filter(|at| SAMPLE.is_char_boundary(*at) && SAMPLE.is_char_boundary(at + 1)) {
        for other in ['0', '9', 'x', ' ', '"', '.', '}', '-', 'm'] {
            let changed = format!("{}{other}{}", &SAMPLE[..at], &SAMPLE[at + 1..]);
            if let Ok(read) = from_text(&changed) {
                let same = read.builds.first().is_some_and(|build| build.document == whole[0].document);
                assert!(same || !read.notices.is_empty(), "{changed}");
            }
        }
    }
}

#[test]
fn what_was_edited_by_hand_is_read_as_people_type_and_told() {
    let edited = SAMPLE.replace("38.5 in", "3' 2-3/4\\\"");
    let read = from_text(&edited).expect("a file");
    assert_eq!(read.builds[0].document.links[0].length, Some(inch(38.75)));
    assert_eq!(read.notices.len(), 1, "{:?}", read.notices);
    assert!(read.notices[0].contains("Compare every number"), "{:?}", read.notices);
    for (what, with, part) in [
        ("\"38.5 in\"", "\"38.5 furlongs\"", "“length”"),
        ("\"38.5 in\"", "\"3800 in\"", "“length”"),
        ("\"38.5 in\"", "null", "“length”"),
        ("\"38.5 in\"", "38.5", "“length”"),
        ("\"length\": \"38.5 in\"", "\"lenght\": \"38.5 in\"", "“lenght”"),
        ("\"use\": \"hard\"", "\"use\": \"gently\"", "“use”"),
    ] {
        let edited = SAMPLE.replace(what, with);
        assert_ne!(edited, SAMPLE, "{what}");
        let read = from_text(&edited).expect("a file");
        assert!(read.notices[0].contains(part), "{with}: {:?}", read.notices);
        assert_eq!(read.builds[0].document.rig.weight, Some(lbf(4100.0)), "{with}: the rest is read");
    }
}

#[test]
fn a_file_that_is_not_ours_is_told() {
    for (text, part) in [
        ("", "cut off or damaged"),
        ("PK\u{3}\u{4}", "cut off or damaged"),
        ("<html>", "cut off or damaged"),
        ("[]", "not a file of saved builds"),
        ("{\"format\": \"something else\"}", "not a file of saved builds"),
        ("{\"format\": \"linkwright builds\", \"version\": 3, \"builds\": [{}]}", "another version"),
        ("{\"format\": \"linkwright builds\", \"version\": \"1\", \"builds\": [{}]}", "another version"),
        ("{\"format\": \"linkwright builds\", \"version\": 1, \"builds\": []}", "no build in this file"),
        ("{\"format\": \"linkwright builds\", \"version\": 1, \"builds\": {}}", "no build in this file"),
    ] {
        let told = from_text(text).expect_err("not a file");
        assert!(told.contains(part), "{text}: {told}");
    }
    let told = from_text(&"[".repeat(1_000_000)).expect_err("not a file");
    assert!(told.contains("cut off or damaged"), "{told}");
}

#[test]
fn what_stands_around_a_build_may_be_anything() {
    for build in ["null", "5", "\"x\"", "[]", "{}", "{\"id\": 5, \"links\": 7, \"rig\": [], \"earlier\": [null, {}]}"] {
        let text = format!("{{\"format\": \"linkwright builds\", \"version\": 1, \"builds\": [{build}]}}");
        let read = from_text(&text).expect("a file");
        assert_eq!(read.builds.len(), 1, "{build}");
        assert_eq!(read.builds[0].document, Document::default(), "{build}");
        assert_eq!(read.notices.len(), 1, "{build}: it has no check that fits");
    }
}

#[test]
fn a_new_version_keeps_the_one_before() {
    let mut build = sample().remove(1);
    let first = build.document.clone();
    build.save(&first, "2026-12-01T00:00:00.000Z");
    assert_eq!((build.removed.as_ref(), build.earlier.len()), (None, 0), "the same again is no new version");
    let mut changed = first.clone();
    changed.rig.weight = Some(lbf(5000.0));
    build.save(&changed, "2026-12-01T00:00:00.000Z");
    assert_eq!(build.earlier.len(), 1);
    assert_eq!(build.earlier[0].saved, "2026-11-20T10:00:00.000Z", "when that one was saved");
    assert_eq!(from_fragment(&build.earlier[0].fragment).document, first);
    for pounds in 0..200 {
        changed.rig.weight = Some(lbf(3000.0 + f64::from(pounds)));
        build.save(&changed, "2026-12-02T00:00:00.000Z");
    }
    assert_eq!(build.earlier.len(), MOST_EARLIER);
    assert_eq!(build.document.rig.weight, Some(lbf(3199.0)));
}

#[test]
fn ids_are_plain() {
    assert!(is_id("m3x9-k2"));
    for id in ["", "A", "a b", "../x", "ä", "a\u{0}", &"a".repeat(61)] {
        assert!(!is_id(id), "{id:?}");
    }
}

#[test]
fn it_is_said_in_which_line_a_file_stops() {
    let told = from_text("{\n  \"a\": 1\n  \"b\": 2\n}").expect_err("a comma is missing");
    assert!(told.contains("damaged in line 3."), "{told}");
}

#[test]
fn unverified_numbers_stay_so_in_a_file() {
    let edited = SAMPLE.replacen("4100 lb", "4300 lb", 1);
    let mut read = from_text(&edited).expect("a file");
    let doubt = read.builds[0].unverified.clone();
    assert!(doubt.len() == 1 && doubt[0].contains("Compare every number"), "{doubt:?}");
    assert!(read.builds[1].unverified.is_empty(), "the other one is sound");
    // Written anew the check fits; the doubt remains all the same, until somebody takes it away.
    for _ in 0..2 {
        read = from_text(&to_text(&read.builds)).expect("a file");
        assert_eq!(read.builds[0].unverified, doubt);
        assert_eq!(read.notices, doubt);
    }
    read.builds[0].unverified.clear();
    assert_eq!(from_text(&to_text(&read.builds)).expect("a file").notices, Vec::<String>::new());
}

#[test]
fn what_could_not_be_read_is_named_and_counted() {
    let values: Vec<String> = (0..9).map(|number| format!("\"unknown-{number}\": \"1 in\"")).collect();
    let with = format!("\"rig\": {{ {},", values.join(", "));
    let read = from_text(&SAMPLE.replacen("\"rig\": {", &with, 1)).expect("a file");
    assert!(read.notices[0].contains("“unknown-5” and 3 more."), "{:?}", read.notices);
}

#[test]
fn reasons_from_a_file_are_short_and_few() {
    let mut build = Build { unverified: vec!["x".repeat(5_000); 1], ..sample()[0].clone() };
    build.unverified.extend((0..40).map(|number| format!("line {number}\nbreak")));
    let read = from_text(&to_text(&[build])).expect("a file");
    assert_eq!(read.builds[0].unverified.len(), 8);
    assert!(read.builds[0].unverified.iter().all(|doubt| doubt.len() <= 400 && !doubt.contains('\n')));
}

#[test]
fn a_build_adds_nothing_to_one_that_has_all_of_it() {
    let [first, _] = &sample()[..] else { panic!("two builds") };
    let plain = Build { earlier: Vec::new(), ..first.clone() };
    assert!(first.has_all_of(&plain) && first.has_all_of(first));
    assert!(!plain.has_all_of(first), "the other one knows more of the past");
}

#[test]
fn an_earlier_version_stays_unverified() {
    let mut build = Build { unverified: vec!["Compare.".to_string()], ..sample()[0].clone() };
    let known = build.earlier.len();
    let next = Document { name: "Next".to_string(), ..build.document.clone() };
    build.save(&next, "2026-11-26T00:00:00.000Z");
    assert!(build.unverified.is_empty(), "what was saved now is not the one before");
    let read = from_text(&to_text(&[build])).expect("a file");
    assert_eq!(read.builds[0].earlier[known].unverified, ["Compare."]);
    assert!(read.notices.is_empty(), "{:?}", read.notices);
}

#[test]
fn a_number_after_the_name_makes_no_other_build() {
    let one = sample().remove(0);
    let mut two = Build { id: "other".to_string(), ..one.clone() };
    two.document.name += " (2)";
    assert!(one.has_all_of(&two));
    two.document.name = "Another".to_string();
    assert!(!one.has_all_of(&two));
    for (name, stem, number) in
        [("Q (7)", "Q", 7), ("Q (1)", "Q (1)", 1), ("Q (4294967295)", "Q (4294967295)", 1), ("(2)", "(2)", 1)]
    {
        assert_eq!(numbered(name), (stem.to_string(), number));
    }
}

#[test]
fn names_keep_their_letters_and_lose_what_hides() {
    let cases = [
        ("क्\u{200d}ष", "क्\u{200d}ष"),
        ("می\u{200c}خواهم", "می\u{200c}خواهم"),
        ("\u{200d}\u{200c}", ""),
        ("\u{3164}", ""),
        ("a\u{ad}b\u{61c}c\u{202e}d", "abcd"),
        ("  two\n words\t", "two words"),
    ];
    for (name, tidy) in cases {
        assert_eq!(linkwright::document::tidy_name(name), tidy, "{name:?}");
    }
}
