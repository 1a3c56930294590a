//! The whole rig: layouts, pairs, what is worst, and the sums of its parts.

use linkwright::document::{Document, Hand, Link, MOST_LINKS, Position, Role, Side, Use};
use linkwright::engine::{fewer_sizes, parts, report, report_on, rig, whole_rig, whole_rig_with};
use linkwright::inputs::next_link;
use linkwright::layouts::{self, LAYOUTS, Layout};
use linkwright::quantity::{inch, lbf};
use linkwright::report::{LinkReport, Part, RigReport, Verdict};

fn layout(id: &str) -> &'static Layout {
    LAYOUTS.iter().find(|layout| layout.id == id).expect("a layout")
}

/// Eight entries, eleven links: a rig as people build it.
fn eight() -> Document {
    let mut document = Document::default();
    (document.rig.weight, document.rig.usage) = (Some(lbf(4100.0)), Some(Use::Hard));
    layouts::add(&mut document, layout("three"), Position::Front);
    layouts::add(&mut document, layout("steering"), Position::Front);
    layouts::add(&mut document, layout("sway"), Position::Front);
    layouts::add(&mut document, layout("converging"), Position::Rear);
    let lengths = [38.0, 36.0, 33.5, 48.0, 40.0, 12.0, 40.25, 34.5];
    document.links.iter_mut().zip(lengths).for_each(|(link, length)| link.length = Some(inch(length)));
    document
}

fn of(document: &Document) -> (Vec<LinkReport>, RigReport) {
    let reports = report(document).links;
    let whole = rig(document, &reports);
    (reports, whole)
}

#[test]
fn an_axle_is_copied_only_to_one_without_suspension() {
    let mut document = Document::default();
    layouts::add(&mut document, layout("three"), Position::Front);
    layouts::add(&mut document, layout("steering"), Position::Front);
    document.links.iter_mut().for_each(|link| link.length = Some(inch(36.0)));
    assert_eq!([Position::Front, Position::Rear].map(|from| layouts::copied_of_axle(&document, from)), [3, 0]);
    layouts::copy_axle(&mut document, Position::Front);
    let rear: Vec<&Link> = document.links.iter().filter(|link| link.position == Position::Rear).collect();
    assert_eq!(rear.iter().map(|link| link.role).collect::<Vec<_>>(), [Role::Lower, Role::Upper, Role::TrackBar]);
    assert!(rear.iter().all(|link| link.length == Some(inch(36.0))));
    let once = document.clone();
    Position::ALL.into_iter().for_each(|from| layouts::copy_axle(&mut document, from));
    assert_eq!(document, once, "an axle that has links keeps its own");
    document.links = vec![Link { position: Position::Front, ..Link::default() }; MOST_LINKS];
    assert_eq!(layouts::copied_of_axle(&document, Position::Front), 0, "no room");
}

#[test]
fn layouts_add_what_is_not_there_yet() {
    let mut document = eight();
    assert_eq!(document.links.len(), 8, "the blank link made room");
    let titles: Vec<String> = document.links.iter().map(linkwright::document::Link::title).collect();
    assert_eq!(
        titles,
        [
            "Front lower links",
            "Front upper link",
            "Front track bar",
            "Front tie rod",
            "Front drag link",
            "Front sway-bar end links",
            "Rear lower links",
            "Rear upper links"
        ]
    );
    for layout in &LAYOUTS[..1] {
        assert_eq!(layouts::add(&mut document, layout, Position::Rear), None, "all of it is there");
    }
    assert_eq!(layouts::add(&mut document, layout("four"), Position::Rear), Some(8), "only its track bar is new");
    assert_eq!(document.links[8].role, Role::TrackBar);
    for _ in 0..MOST_LINKS {
        layouts::set_apart(&mut document, 0);
        document.links[0].seat = None;
    }
    assert_eq!(document.links.len(), MOST_LINKS, "no more than a link may carry");
}

#[test]
fn a_pair_is_set_apart_copied_across_and_joined() {
    let mut document = eight();
    let whole = document.clone();
    document.links[0].quantity = Some(2.0);
    assert_eq!(layouts::set_apart(&mut document, 0), Some(8), "every other link keeps its place");
    assert_eq!(document.links[1..8], whole.links[1..]);
    let seats = [document.links[0].seat, document.links[8].seat];
    assert_eq!(seats, [Some(Side::Left), Some(Side::Right)]);
    assert_eq!(document.links[0].quantity, None, "one piece each");
    document.links[0].length = Some(inch(37.0));
    assert_eq!(layouts::at_other_side(&document, 0), Some(8), "a copy would write over that one");
    assert_eq!(layouts::to_other_side(&mut document, 0), Some(8), "the right one becomes like the left one");
    assert_eq!(document.links[8].length, Some(inch(37.0)));
    assert_eq!(document.links.len(), 9);
    assert_eq!(layouts::set_apart(&mut document, 0), None, "it is apart");
    for alone in [2, 6] {
        assert_eq!(layouts::to_other_side(&mut document, alone), None, "no other side");
        assert_eq!(layouts::join(&mut document, alone), None);
    }
    document.links[8].length = whole.links[0].length;
    assert_eq!(layouts::join(&mut document, 8), Some(0), "one pair again, like the one that was pressed");
    assert_eq!(document, whole);
}

#[test]
fn an_axle_s_link_is_copied_to_the_other_axle() {
    let mut document = eight();
    let there = [0, 2, 6].map(|index| layouts::at_other_axle(&document, index));
    assert_eq!(there, [Some(6), None, Some(0)], "what a copy would write over");
    assert_eq!(layouts::to_other_axle(&mut document, 0), Some(6), "the rear lowers are there already");
    assert_eq!(document.links[6].length, Some(inch(38.0)));
    assert_eq!(document.links[6].position, Position::Rear);
    assert_eq!(layouts::to_other_axle(&mut document, 2), Some(8), "the rear track bar is new");
    layouts::remove(&mut document, 8);
    layouts::remove(&mut document, 99);
    assert_eq!(document.links.len(), 8);
    (0..20).for_each(|_| layouts::remove(&mut document, 0));
    assert_eq!(document.links, Document::default().links, "one is always left");
}

#[test]
fn each_axle_has_its_own_weight_and_heights() {
    let mut document = eight();
    let before = report(&document);
    document.rig.axles[1].share = Some(0.9);
    let after = report(&document);
    for (index, link) in document.links.iter().enumerate() {
        let moved = before.links[index] != after.links[index];
        assert_eq!(moved, link.position == Position::Rear, "{}", link.title());
    }
    document.rig.front_share = Some(0.6);
    let front = report_on(&document, 0);
    assert!(front != after.links[0], "the front axle now carries seven tenths at worst");
    assert!(report_on(&document, 6) == after.links[6], "the rear one has its own value");
}

#[test]
fn a_link_s_report_rests_on_the_rig_that_link_and_the_track_bar_of_its_axle() {
    let document = eight();
    let whole = report(&document);
    for index in 0..8 {
        let link = &document.links[index];
        let holds_it = |other: &&Link| other.role == Role::TrackBar && other.position == link.position;
        let mut links = vec![link.clone()];
        links.extend(document.links.iter().filter(holds_it).cloned());
        let alone = Document { links, ..document.clone() };
        assert!(report_on(&alone, 0) == whole.links[index], "{}", link.title());
    }
}

#[test]
fn a_report_at_hand_is_taken_over_and_changes_nothing() {
    let document = eight();
    let whole = whole_rig(&document, None);
    for index in 0..8 {
        let at_hand = report_on(&document, index);
        let with = whole_rig_with(&document, None, Some((index, &at_hand)));
        assert!(with == whole, "link {index}");
        let (Some(taken), Some(given)) = (with.links[index].answer(), at_hand.answer()) else { continue };
        assert!(std::ptr::eq(taken, given), "link {index} is not worked out again");
    }
    assert!(whole.links.iter().any(|report| report.answer().is_some()), "some link has an answer to take over");
    let elsewhere = report_on(&document, 0);
    assert!(whole_rig_with(&document, None, Some((8, &elsewhere))) == whole, "no link of this rig");
}

#[test]
fn the_worst_comes_first() {
    let mut document = eight();
    document.links[4].outside_diameter = Some(inch(1.0));
    document.links[7].length = None;
    let (reports, whole) = of(&document);
    assert_eq!(whole.worst_first.len(), 8);
    assert_eq!(whole.worst_first.last(), Some(&7), "what is not entered yet says nothing");
    assert_eq!(whole.open, 1);
    let verdicts: Vec<_> =
        whole.worst_first.iter().filter_map(|index| reports[*index].answer()).map(|answer| answer.verdict).collect();
    assert!(verdicts.first() > verdicts.last(), "{verdicts:?}");
    let mut sorted = whole.worst_first.clone();
    sorted.sort_unstable();
    assert_eq!(sorted, (0..8).collect::<Vec<_>>(), "each once");
}

#[test]
fn what_is_not_entered_yet_is_counted_in_links_to_make() {
    let mut document = eight();
    document.links.iter_mut().for_each(|link| link.length = None);
    let whole = of(&document).1;
    assert_eq!((whole.pieces, whole.unmeasured, whole.open), (12, 12, 8), "four pairs and four single ones");
    document.links.iter_mut().skip(1).for_each(|link| link.length = Some(inch(30.0)));
    document.links[1].length = Some(inch(6.0));
    document.links[1].ends.iter_mut().for_each(|end| end.rod_end = Some("wide-16"));
    let whole = of(&document).1;
    assert_eq!((whole.unmeasured, whole.impossible, whole.open), (2, 1, 2), "a pair, and a single one");
    document.rig.weight = None;
    let whole = of(&document).1;
    assert_eq!((whole.unmeasured, whole.unfinished, whole.open), (2, 10, 8), "the others lack the weight alone");
}

#[test]
fn the_sums_are_those_of_the_pieces() {
    let (reports, whole) = of(&eight());
    let pieces = [2_u8, 1, 1, 1, 1, 2, 2, 2];
    assert_eq!(Some(whole.pieces), Some(12));
    assert_eq!(whole.open, 0);
    let weight: f64 = reports
        .iter()
        .zip(pieces)
        .map(|(it, count)| f64::from(count) * it.answer().expect("an answer").link.bar_weight)
        .sum();
    assert!((whole.weight - weight).abs() < 1e-9 * weight);
    let kinds = |kind: u8| whole.parts.iter().filter(move |part| part.kind() == kind);
    let count = |kind: u8| kinds(kind).map(Part::count).sum::<usize>();
    assert_eq!((count(0), count(1), count(2), count(3)), (12, 0, 24, 24));
    assert_eq!((count(4), count(5), count(6)), (24, 24, 0), "a nut for every bolt");
    let left: usize =
        whole.parts.iter().filter(|part| matches!(part, Part::RodEnd { hand: Hand::Left, .. })).map(Part::count).sum();
    assert_eq!(Some(left), Some(12), "one left-hand end on each");
    let sawn = |part: &Part| match part {
        Part::Bar { cuts, .. } => cuts.iter().map(|cut| cut.count as f64 * cut.length).sum(),
        _ => 0.0,
    };
    let length: f64 = whole.parts.iter().map(sawn).sum();
    let cut: f64 =
        reports.iter().zip(pieces).map(|(it, count)| f64::from(count) * it.answer().expect("an answer").link.cut).sum();
    assert!((length - cut).abs() < 1e-9);
    let order: Vec<u8> = whole.parts.iter().map(Part::kind).collect();
    assert!(order.is_sorted(), "{order:?}");
    let thick: Vec<f64> = kinds(0)
        .filter_map(|part| if let Part::Bar { outside_diameter, .. } = part { Some(-outside_diameter) } else { None })
        .collect();
    assert!(thick.len() > 1 && thick.is_sorted(), "the thickest bar first: {thick:?}");
}

#[test]
fn a_link_s_own_parts_add_up_to_the_rig_s() {
    let document = eight();
    let (reports, whole) = of(&document);
    for kind in 0..=6 {
        let sum = |parts: &[Part]| parts.iter().filter(|part| part.kind() == kind).map(Part::count).sum::<usize>();
        let own =
            reports.iter().enumerate().map(|(at, it)| sum(&parts(&document, at, it.answer().expect("an answer"))));
        assert_eq!(own.sum::<usize>(), sum(&whole.parts), "kind {kind}");
    }
    let named = whole.parts.iter().flat_map(|part| if let Part::Bar { cuts, .. } = part { &cuts[..] } else { &[] });
    let mut named: Vec<&str> = named.flat_map(|cut| cut.links.iter().map(String::as_str)).collect();
    named.sort_unstable();
    let mut titles: Vec<String> = document.links.iter().map(Link::title).collect();
    titles.sort_unstable();
    assert_eq!(named, titles, "every cut says whose it is");
}

#[test]
fn steering_tells_whether_a_push_folds_it_even_when_that_governs() {
    let mut document = eight();
    // A drag link too slender for its push: folding is what governs.
    document.links[4].outside_diameter = Some(inch(0.75));
    document.links[4].length = Some(inch(60.0));
    let (reports, _) = of(&document);
    for (index, link) in document.links.iter().enumerate() {
        let answer = reports[index].answer().expect("an answer");
        assert_eq!(answer.buckling().is_some(), link.role.steers(), "{}", link.title());
    }
    let answer = reports[4].answer().expect("an answer");
    let folds = answer.buckling().expect("a drag link is pushed");
    assert_eq!(answer.weakest.map(|index| answer.findings[index].id), Some(folds.id), "it governs here");
    assert_eq!(folds.verdict, Verdict::Fails);
    assert!(folds.utilization.is_some_and(|used| used > 1.0), "{folds:?}");
}

#[test]
fn the_next_link_is_one_that_lacks_its_length() {
    let mut document = eight();
    assert_eq!(next_link(&document, 3), Some(4), "all are entered: in order");
    assert_eq!(next_link(&document, 7), None, "and no further: nobody is led to the first one again");
    document.links[1].length = None;
    document.links[6].length = None;
    assert_eq!(next_link(&document, 3), Some(6));
    assert_eq!(next_link(&document, 6), Some(1), "round, while one lacks its length");
    document.rig.weight = None;
    document.links[1].length = document.links[0].length;
    assert_eq!(next_link(&document, 6), Some(7), "what the rig lacks is asked at every link");
    assert_eq!(next_link(&Document::default(), 0), None, "there is no other");
}

#[test]
fn every_length_to_saw_stands_by_itself() {
    let mut document = eight();
    let cuts = |document: &Document, of: usize| {
        let (reports, whole) = of_bar(document, of);
        let made = &reports[of].answer().expect("an answer").link;
        (made.cut, whole)
    };
    let (long, before) = cuts(&document, 0);
    assert!(before.contains(&(long, 2)), "a pair is two pieces of that length: {before:?}");
    // The rear pair becomes like the front one, then shorter.
    document.links[6] = Link { position: Position::Rear, ..document.links[0].clone() };
    let (_, alike) = cuts(&document, 0);
    assert!(alike.contains(&(long, 4)), "one length, four pieces: {alike:?}");
    document.links[6].length = Some(inch(36.0));
    let (_, apart) = cuts(&document, 0);
    let (short, _) = cuts(&document, 6);
    let two = |length: f64| (length, 2);
    assert!(short < long && apart.contains(&two(long)) && apart.contains(&two(short)), "{apart:?}");
    assert!(apart.windows(2).all(|pair| pair[0].0 > pair[1].0), "the longest first: {apart:?}");
}

/// The reports, and every cut off the bar that a link is made of: length and pieces.
fn of_bar(document: &Document, link: usize) -> (Vec<LinkReport>, Vec<(f64, usize)>) {
    let (reports, whole) = of(document);
    let made = &reports[link].answer().expect("an answer").link;
    let cuts = whole.parts.iter().find_map(|part| match part {
        Part::Bar { outside_diameter, wall, cuts, .. }
            if (*outside_diameter, *wall) == (made.outside_diameter, made.wall) =>
        {
            Some(cuts.iter().map(|cut| (cut.length, cut.count)).collect())
        }
        _ => None,
    });
    (reports, cuts.expect("its bar"))
}

#[test]
fn parts_that_differ_are_counted_apart() {
    let mut document = eight();
    let before = of(&document).1.parts.len();
    document.links[0].spacer = Some(inch(0.5));
    let (_, whole) = of(&document);
    assert!(whole.parts.len() >= before + 2, "spacers, and longer bolts");
    let spacers: usize = whole.parts.iter().filter(|part| part.kind() == 6).map(Part::count).sum();
    assert_eq!(Some(spacers), Some(8), "two at each of four eyes");
    document.links[0].quantity = Some(5.0);
    let (_, whole) = of(&document);
    let spacers: usize = whole.parts.iter().filter(|part| part.kind() == 6).map(Part::count).sum();
    assert_eq!(Some(spacers), Some(20));
}

#[test]
fn a_size_that_can_be_done_without_is_found_and_holds() {
    let document = eight();
    let (reports, whole) = of(&document);
    let ways = fewer_sizes(&document, &reports);
    assert!(!ways.is_empty(), "three sizes, and the bigger ones fit the smaller links");
    let sizes = |whole: &RigReport| {
        let names =
            whole.parts.iter().filter_map(|part| if let Part::RodEnd { name, .. } = part { Some(*name) } else { None });
        let mut names: Vec<&str> = names.collect();
        names.sort_unstable();
        names.dedup();
        names.len()
    };
    for way in &ways {
        let roles: Vec<Role> = way.links.iter().map(|index| document.links[*index].role).collect();
        assert!(!roles.contains(&Role::SwayLink), "its holes come with the sway bar: {way:?}");
        assert!(way.bolts.iter().all(|bolt| *bolt > 0.0) && (way.bolts[0] - way.bolts[1]).abs() > 1e-6, "{way:?}");
        let mut after = document.clone();
        for index in &way.links {
            after.links[*index].ends.iter_mut().for_each(|end| end.rod_end = Some(way.to));
        }
        let (links, then) = of(&after);
        assert_eq!(sizes(&then), sizes(&whole) - 1, "{way:?}");
        assert!(links.iter().all(|link| link.answer().is_some_and(|it| it.verdict < Verdict::Fails)), "{way:?}");
        assert!((then.weight - whole.weight - way.weight_change).abs() < 1e-6 * whole.weight, "{way:?}");
    }
}
