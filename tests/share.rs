//! Links: what is sent is what opens; what was damaged or forged on the way is told.

mod dice;

use dice::Dice;
use linkwright::document::{
    Axle, Document, Finish, Hand, History, Link, MeasuredOn, Order, Position, Role, Side, Stage, SuppliedBy, Use, Yes,
};
use linkwright::inputs::{At, NUMBERS, QUANTITY, REST_DEFLECTION, UPPER_STRIKE, places};
use linkwright::quantity::{System, deg, inch, ksi, lbf};
use linkwright::share::{Opened, from_fragment, to_fragment, unchecked};

/// A link of version 1, kept as it was first written: it must open for as long as version 1 is known.
const SAMPLE: &str = "1&links=2&length=0.9779&2.length=32in&weight=4100lb&od=2.25in&2.shank-yield=120ksi&tapped.b=2.5in&2.rating.a=28000lb&axle-share=0.7&2.plan-angle=25deg&2.role=upper&use=hard&rod-end.a=wide-16&hand.b=rh&crc=95a61083";

/// A link of version 2, kept as it was first written.
const SAMPLE_2: &str = "2&links=2&name=Blue_rig.2c_gr.c3.b6.c3.9fer_2.2e0&length=0.9779&2.length=32in&weight=4100lb&2.quantity=3&od=2.25in&2.shank-yield=120ksi&tapped.b=2.5in&2.rating.a=28000lb&rear.flex=7in&front-share=0.55&front.axle-share=0.7&2.plan-angle=25deg&2.role=upper&use=hard&2.axle=rear&2.seat=middle&rod-end.a=wide-16&hand.b=rh&crc=17dc3b67";

/// A link of version 3, kept as it was first written.
const SAMPLE_3: &str = "3&links=2&name=Blue_rig.2c_gr.c3.b6.c3.9fer_2.2e0&length=0.9779&2.length=32in&weight=4100lb&2.quantity=3&od=2.25in&2.shank-yield=120ksi&tapped.b=2.5in&2.rating.a=28000lb&rear.flex=7in&front-share=0.55&front.axle-share=0.7&2.plan-angle=25deg&2.role=upper&use=hard&2.axle=rear&2.seat=middle&rod-end.a=wide-16&hand.b=rh&crc=ef0e177d";

/// A link of version 3 with an order, kept as it was first written.
const SAMPLE_3_ORDER: &str = "3&name=Blue_rig&length=38in&weight=4100lb&use=hard&finish=anodized&supplied-by.a=shop&supplied-by.b=customer&measured-on=rig&order-reference=PO_17.2fb&order-remarks=Gr.c3.b6.c3.9fe.3a_stamp_.22LH.22_at_B&order-wanted=2026-12-24&order-stage=confirmed&yes-by=The_customer&yes-at=2026-11-30T10.3a00.3a00.2e000Z&yes-code=K7QM-2XPA-B&yes-to=3.26length.3d38in.26weight.3d4100lb.26use.3dhard.26rod-end.2ea.3dwide-16.26hand.2eb.3drh.26crc.3d2362aacb&first-said=3.26length.3d38in.26weight.3d4100lb.26use.3dhard.26rod-end.2ea.3dwide-16.26hand.2eb.3drh.26crc.3d2362aacb&crc=4ff32343";

/// What the sample with an order was made from.
fn sample_3_order() -> Document {
    let snapshot = "3&length=38in&weight=4100lb&use=hard&rod-end.a=wide-16&hand.b=rh&crc=2362aacb";
    let mut document = Document { name: "Blue rig".to_string(), ..Document::default() };
    (document.rig.weight, document.rig.usage) = (Some(lbf(4100.0)), Some(Use::Hard));
    let link = &mut document.links[0];
    link.length = Some(inch(38.0));
    (link.finish, link.measured_on) = (Some(Finish::Anodized), Some(MeasuredOn::Rig));
    link.ends[0].supplied_by = Some(SuppliedBy::Shop);
    link.ends[1].supplied_by = Some(SuppliedBy::Customer);
    document.order = Box::new(Order {
        reference: "PO 17/b".to_string(),
        remarks: "Größe: stamp \"LH\" at B".to_string(),
        wanted: "2026-12-24".to_string(),
        stage: Stage::Confirmed,
        yes: Yes {
            by: "The customer".to_string(),
            at: "2026-11-30T10:00:00.000Z".to_string(),
            code: "K7QM-2XPA-B".to_string(),
            snapshot: snapshot.to_string(),
        },
        first_said: snapshot.to_string(),
        read_back: String::new(),
        history: History::default(),
    });
    document
}

/// What the sample of version 2 was made from: the same, with a name, and of both axles.
fn sample_2() -> Document {
    let mut document = sample();
    document.name = "Blue rig, größer 2.0".to_string();
    document.rig.front_share = Some(0.55);
    document.rig.axles[1].share = None;
    document.rig.axles[1].flex = Some(inch(7.0));
    document.links[1].position = Position::Rear;
    document.links[1].seat = Some(Side::Middle);
    document.links[1].quantity = Some(3.0);
    document
}

/// What the sample was made from.
fn sample() -> Document {
    let mut document = Document::default();
    document.rig.weight = Some(lbf(4100.0));
    document.rig.usage = Some(Use::Hard);
    // Version 1 knew one axle: what it said of one holds for both.
    document.rig.axles = [0, 1].map(|_| Axle { share: Some(0.7), ..Axle::default() });
    document.links = vec![Link::default(), Link::default()];
    let [lower, upper] = document.links.as_mut_slice() else { unreachable!() };
    lower.length = Some(inch(38.5));
    lower.outside_diameter = Some(inch(2.25));
    lower.ends[0].rod_end = Some("wide-16");
    lower.ends[1].tapped_depth = Some(inch(2.5));
    lower.ends[1].hand = Some(Hand::Right);
    upper.role = Role::Upper;
    upper.length = Some(0.8128);
    upper.plan_angle = Some(deg(25.0));
    upper.shank_yield = Some(ksi(120.0));
    upper.ends[0].rating = Some(lbf(28_000.0));
    document
}

/// Every sample with what it was made from.
fn samples() -> [(&'static str, Document); 4] {
    [(SAMPLE, sample()), (SAMPLE_2, sample_2()), (SAMPLE_3, sample_2()), (SAMPLE_3_ORDER, sample_3_order())]
}

/// CRC-32 as anybody could forge it, written apart from the one under test.
fn crc(bytes: &[u8]) -> u32 {
    !bytes.iter().fold(u32::MAX, |crc, byte| {
        (0..8).fold(crc ^ u32::from(*byte), |crc, _| if crc & 1 == 1 { (crc >> 1) ^ 0xEDB8_8320 } else { crc >> 1 })
    })
}

/// A fragment with a check that fits: somebody made it on purpose.
fn sealed(body: &str) -> String {
    format!("{body}&crc={:08x}", crc(body.as_bytes()))
}

/// Whether an opened link is honest: it says something, or it is the very document.
fn honest(opened: &Opened, sent: &Document) -> bool {
    !opened.notices.is_empty() || opened.document == *sent
}

#[test]
fn the_check_is_the_one_of_ethernet() {
    assert_eq!(crc(b"123456789"), 0xcbf4_3926, "the value printed for this CRC everywhere");
}

#[test]
fn a_link_of_version_1_opens_for_good() {
    let opened = from_fragment(SAMPLE);
    assert_eq!((opened.document, opened.notices), (sample(), Vec::new()));
    let opened = from_fragment(&format!("#{SAMPLE}"));
    assert_eq!((opened.document, opened.notices), (sample(), Vec::new()), "with the sign that browsers put before it");
    assert_eq!(from_fragment(&to_fragment(&sample())).document, sample(), "as it is written today");
}

#[test]
fn a_link_of_version_2_opens_for_good() {
    let opened = from_fragment(SAMPLE_2);
    assert_eq!(
        opened,
        Opened { document: sample_2(), recalculated: true, ..Opened::default() },
        "an earlier calculation"
    );
}

#[test]
fn a_link_of_version_3_opens_for_good() {
    assert_eq!(to_fragment(&sample_2()), SAMPLE_3);
    assert_eq!(from_fragment(SAMPLE_3), Opened { document: sample_2(), ..Opened::default() });
}

#[test]
fn a_link_with_an_order_opens_for_good() {
    assert_eq!(to_fragment(&sample_3_order()), SAMPLE_3_ORDER);
    let opened = from_fragment(SAMPLE_3_ORDER);
    assert_eq!(opened, Opened { document: sample_3_order(), ..Opened::default() });
}

/// What earlier versions asked for under 1,000 lbf is the deflection under the rig's weight now.
#[test]
fn a_former_deflection_of_the_rest_is_converted() {
    let opened = from_fragment(&sealed("2&length=38in&weight=4100lb&give=0.1in&upper-strike=0.2&use=hard"));
    assert_eq!((opened.notices.len(), opened.recalculated), (0, true));
    let value = |input: &linkwright::inputs::Number| input.value(&opened.document, At::default());
    let deflection = value(&REST_DEFLECTION).expect("a value");
    assert!((deflection - inch(0.41)).abs() < 1e-12, "{deflection}");
    assert_eq!(value(&UPPER_STRIKE), Some(0.2), "an explicit value is kept");
    let again = from_fragment(&to_fragment(&opened.document));
    assert_eq!((again.document, again.recalculated), (opened.document, false), "and nothing is lost on the way");
}

#[test]
fn a_name_that_is_not_tidy_is_told() {
    for name in ["", "_x", ".zz", ".0a", "a.e2.80.ae", "x%20y", ".C3.B6", &"x".repeat(61)] {
        let opened = from_fragment(&sealed(&format!("2&name={name}&weight=4100lb")));
        assert_eq!(opened.document.name, "", "{name}");
        assert_eq!(opened.notices.len(), 1, "{name}: {:?}", opened.notices);
        assert_eq!(opened.document.rig.weight, Some(lbf(4100.0)), "{name}");
    }
}

#[test]
fn a_typical_link_is_short() {
    let mut document = Document::default();
    document.rig.weight = Some(lbf(4100.0));
    document.rig.usage = Some(Use::Hard);
    let link = &mut document.links[0];
    link.length = Some(inch(38.0 + 5.0 / 16.0));
    link.outside_diameter = Some(inch(2.25));
    link.count = Some(2.0);
    link.plan_angle = Some(deg(12.5));
    link.ends[0].rod_end = Some("wide-16");
    link.ends[1].rating = Some(lbf(28_000.0));
    let fragment = to_fragment(&document);
    assert!(fragment.len() < 200, "{} characters: {fragment}", fragment.len());
    assert!(fragment.bytes().all(|b| b.is_ascii_alphanumeric() || b"&=.-".contains(&b)), "no messenger breaks this");
    assert_eq!(from_fragment(&fragment), Opened { document, ..Opened::default() });
}

#[test]
fn what_was_typed_in_a_usual_unit_stays_short() {
    let mut document = Document::default();
    document.links[0].length = Some(0.965);
    document.rig.weight = Some(lbf(4100.0));
    let fragment = to_fragment(&document);
    assert!(fragment.starts_with("3&length=0.965&weight=4100lb&crc="), "{fragment}");
}

#[test]
fn every_truncation_is_told() {
    for (text, _) in samples() {
        for end in 0..text.len() {
            let opened = from_fragment(&text[..end]);
            assert!(!opened.notices.is_empty(), "cut to {end} characters: {}", &text[..end]);
        }
        for start in 1..text.len() {
            let opened = from_fragment(&text[start..]);
            assert!(!opened.notices.is_empty(), "without the first {start} characters: {}", &text[start..]);
        }
    }
}

#[test]
fn every_changed_character_is_told() {
    for (text, sent) in samples() {
        let sent = &sent;
        let others: Vec<char> = (' '..='~').chain(['é', '½', '\u{0}', '\u{202e}', '😀']).collect();
        for at in 0..text.len() {
            for other in &others {
                for (what, after) in [("changed", at + 1), ("put in", at)] {
                    let changed = format!("{}{other}{}", &text[..at], &text[after..]);
                    assert!(honest(&from_fragment(&changed), sent), "{what} at {at}: {changed:?}");
                }
            }
            let left_out = format!("{}{}", &text[..at], &text[at + 1..]);
            assert!(honest(&from_fragment(&left_out), sent), "left out at {at}: {left_out}");
        }
    }
}

#[test]
fn two_characters_in_the_wrong_order_are_told() {
    for (text, sent) in samples() {
        let sent = &sent;
        for at in 1..text.len() {
            let mut bytes = text.as_bytes().to_vec();
            bytes.swap(at - 1, at);
            let swapped = String::from_utf8(bytes).expect("the sample is ASCII");
            assert!(honest(&from_fragment(&swapped), sent), "{swapped}");
        }
    }
}

#[test]
fn what_cannot_be_read_is_told_and_the_rest_is_opened() {
    for (part, sentence) in [
        ("wieght=5lb", "“wieght” in the link is not known"),
        ("tire=wide", "“wide” in the link is not a number"),
        ("tire=NaN", "not a number"),
        ("tire=inf", "not a number"),
        ("tire=1e999", "outside what is allowed"),
        ("tire=-37in", "outside what is allowed"),
        ("tire=500in", "outside what is allowed"),
        ("tire=", "not a number"),
        ("tire", "means nothing here"),
        ("tire=%33%37in", "not a number"),
        ("%74ire=37in", "not known here"),
        ("use=gently", "“gently” in the link is not known"),
        ("metal=unobtainium", "not known here"),
        ("2.length=30in", "not known here"),
        ("0.length=30in", "not known here"),
        ("99999999999999999999999.length=30in", "not known here"),
        ("rod-end.c=wide-16", "not known here"),
        ("links=999999999", "999999999 links, which cannot be"),
        ("links=0", "0 links, which cannot be"),
        ("links=-1", "-1 links, which cannot be"),
        ("größe=5", "not known here"),
        ("日本=1", "not known here"),
        ("=", "not known here"),
        ("", "means nothing here"),
    ] {
        let opened = from_fragment(&sealed(&format!("1&weight=4100lb&{part}")));
        assert_eq!(opened.document.rig.weight, Some(lbf(4100.0)), "{part}: the rest is opened");
        assert_eq!(opened.document.links.len(), 1, "{part}");
        assert!(opened.notices.len() == 1 && opened.notices[0].contains(sentence), "{part}: {:?}", opened.notices);
    }
}

#[test]
fn another_version_is_told_and_nothing_of_it_is_used() {
    for version in ["4", "0", "", "01", "1 ", "１", "1.0", "one"] {
        let opened = from_fragment(&sealed(&format!("{version}&weight=4100lb")));
        assert_eq!(opened.document, Document::default(), "{version:?}");
        assert_eq!(opened.notices.len(), 1, "{version:?}: {:?}", opened.notices);
    }
}

#[test]
fn a_value_given_twice_is_told() {
    for body in [
        "1&weight=4100lb&weight=2500lb",
        "1&length=38in&1.length=30in",
        "1&links=2&2.length=38in&links=2",
        "1&use=hard&use=slow",
    ] {
        let opened = from_fragment(&sealed(body));
        assert!(!opened.notices.is_empty(), "{body} opened as {:?} and said nothing", opened.document);
    }
}

#[test]
fn an_end_named_for_what_has_none_is_told() {
    for body in ["1&weight.b=4100lb", "1&length.a=38in", "1&3.weight=4100lb", "1&tapped=2in", "1&use.a=hard"] {
        let opened = from_fragment(&sealed(body));
        assert!(!opened.notices.is_empty(), "{body} opened as {:?} and said nothing", opened.document);
    }
}

#[test]
fn a_count_of_links_after_their_values_is_told_or_takes_nothing_away() {
    let opened = from_fragment(&sealed("1&length=38in&links=2&2.length=30in"));
    assert!(!opened.notices.is_empty() || opened.document.links[0].length == Some(inch(38.0)), "{opened:?}");
}

#[test]
fn as_many_links_as_a_link_may_hold_can_all_be_decided() {
    let mut document = Document { links: vec![Link::default(); 40], ..Document::default() };
    for input in NUMBERS {
        for place in places(&document, input.scope) {
            let value = input.whole(input.least + 0.37 * (input.most - input.least));
            (input.set)(&mut document, place, Some(value));
        }
    }
    let fragment = to_fragment(&document);
    let opened = from_fragment(&fragment);
    assert!(opened.notices.is_empty(), "{} characters: {:?}", fragment.len(), opened.notices);
    assert!(opened.document == document, "{} characters open as something else", fragment.len());
}

#[test]
fn values_near_nothing_do_not_fill_a_link() {
    let mut body = "2&links=40&length=38in".to_string();
    for link in 2..=40 {
        for name in ["visible", "spacer", "facing", "flats-start", "plan-angle", "own-strike", "least.a", "least.b"] {
            body += &format!("&{link}.{name}=1.2345678901234e-290");
        }
    }
    let opened = from_fragment(&sealed(&body));
    assert!(opened.notices.is_empty(), "{:?}", opened.notices);
    let own = from_fragment(&to_fragment(&opened.document));
    assert!(own.notices.is_empty() && own.document == opened.document, "{:?}", own.notices);
}

#[test]
fn half_a_link_cannot_be_made() {
    let opened = from_fragment(&sealed("2&length=38in&quantity=2.5"));
    assert_eq!((opened.notices.len(), opened.document.links[0].quantity), (1, None), "{:?}", opened.notices);
    let refused = QUANTITY.read("2.5", System::Inch).expect_err("two and a half");
    let sentence = QUANTITY.sentence(&refused, System::Inch);
    assert_eq!(sentence, "I read 2.5. How many to make must be a whole number between 1 and 200.");
    let close = QUANTITY.sentence(&QUANTITY.read("2.001", System::Inch).expect_err("nearly two"), System::Inch);
    assert!(close.starts_with("I read 2.001."), "{close}");
}

#[test]
fn unverified_numbers_say_so_wherever_they_are_opened() {
    let opened = from_fragment(unchecked(SAMPLE_2));
    assert_eq!((opened.notices.len(), opened.document), (1, sample_2()), "{:?}", opened.notices);
}

#[test]
fn a_hundred_thousand_rigs_come_back_bit_for_bit() {
    dice::in_four_threads(20_261_125, |mut dice| {
        for number in 0..25_000 {
            let rig = dice.rig();
            let fragment = to_fragment(&rig);
            let opened = from_fragment(&fragment);
            assert!(
                opened.notices.is_empty() && opened.document == rig,
                "rig {number}: {fragment}\n{:?}",
                opened.notices
            );
            assert_eq!(to_fragment(&opened.document), fragment, "rig {number}");
            // One damage to every fifth of them, somewhere.
            if number % 5 > 0 {
                continue;
            }
            let at = dice.next(fragment.len());
            let other = char::from(b' ' + dice.next(95) as u8);
            for damaged in [fragment[..at].to_string(), format!("{}{other}{}", &fragment[..at], &fragment[at + 1..])] {
                assert!(honest(&from_fragment(&damaged), &rig), "rig {number}: {damaged}");
            }
        }
    });
}

#[test]
fn an_eight_link_rig_fits_a_message() {
    let mut dice = Dice(8);
    let mut rig = dice.rig();
    rig.links = vec![Link::default(); 8];
    rig.name = "Trail rig, as built in the winter of 2026".to_string();
    for (number, link) in rig.links.iter_mut().enumerate() {
        link.role = [Role::Lower, Role::Upper, Role::TrackBar, Role::TieRod][number % 4];
        link.position = [Position::Front, Position::Rear][number / 4];
        link.length = Some(inch(30.0 + number as f64 / 32.0));
        link.outside_diameter = Some(inch(2.25));
        link.plan_angle = Some(deg(12.5));
        link.material = Some(linkwright::engine::tables::materials::ALL[1].id);
        link.ends.iter_mut().for_each(|end| end.rod_end = Some("wide-16"));
    }
    let fragment = to_fragment(&rig);
    assert!(fragment.len() < 1500, "{} characters: {fragment}", fragment.len());
    assert_eq!(from_fragment(&fragment).document, rig);
}

#[test]
fn hostile_links_end_soon_and_are_told_in_a_few_sentences() {
    let hostile = |much: usize| {
        [
            ("one long word", "x".repeat(much)),
            ("one long value", format!("1&weight={}", "9".repeat(much))),
            ("one long key", format!("1&{}=5", "w".repeat(much))),
            ("nothing but ends", format!("1{}", "&".repeat(much))),
            ("one key many times", format!("1{}", "&a=1".repeat(much / 4))),
            ("many keys", format!("1{}", (0..much / 8).map(|n| format!("&{n}=1")).collect::<String>())),
            ("percent signs", format!("1&{}", "%".repeat(much))),
            ("checks upon checks", format!("1{}", "&crc=00000000".repeat(much / 13))),
            ("long characters", format!("1&weight={}", "😀".repeat(much / 4))),
            ("a number with many places", format!("1&weight=4100.{}lb", "0".repeat(much))),
        ]
    };
    let short = hostile(10_000).map(|(what, body)| (what, sealed(&body)));
    for (what, fragment) in hostile(10_000_000).into_iter().chain(short) {
        let opened = from_fragment(&fragment);
        let (count, length) = (opened.notices.len(), opened.notices.iter().map(String::len).sum::<usize>());
        // The number with many places is a number, if anybody ever sends it.
        assert!(count > 0 || opened.document.rig.weight == Some(lbf(4100.0)), "{what}: nothing is told");
        assert!(count <= 50 && length < 20_000, "{what}: {count} sentences of {length} bytes in all");
    }
}
