//! Differences between two rigs, in words.

use linkwright::differences::{differences, followed, matched};
use linkwright::document::{Document, Link, Position, Role, Side, Use};
use linkwright::layouts::{self, LAYOUTS};
use linkwright::quantity::{System, inch, lbf};

/// A rig of two axles.
fn rig() -> Document {
    let mut rig = Document::default();
    rig.rig.weight = Some(lbf(4100.0));
    rig.rig.usage = Some(Use::Hard);
    for position in Position::ALL {
        layouts::add(&mut rig, &LAYOUTS[0], position);
    }
    rig.links.iter_mut().for_each(|link| link.length = Some(inch(38.0)));
    rig
}

/// Every difference as a sentence.
fn told(before: &Document, after: &Document, system: System) -> Vec<String> {
    differences(before, after).iter().map(|difference| difference.sentence(system)).collect()
}

#[test]
fn nothing_differs_from_itself() {
    assert_eq!(told(&rig(), &rig(), System::Inch), Vec::<String>::new());
}

#[test]
fn every_kind_of_change_is_one_sentence() {
    let before = rig();
    type Change = fn(&mut Document);
    let cases: [(Change, &str); 11] = [
        (|rig| rig.name = "Blue".to_string(), "Named “Blue”"),
        (|rig| rig.rig.weight = Some(lbf(4500.0)), "Rig weight, loaded: 4,500 lb, before 4,100 lb"),
        (|rig| rig.rig.tire = Some(inch(40.0)), "Tire diameter: 40 in, before 37 in by default"),
        (
            |rig| rig.rig.axles[1].flex = Some(inch(9.0)),
            "Rear axle: Wheel travel, one up and one down: 9 in, before 5 in by default",
        ),
        (|rig| rig.links[0].length = Some(inch(38.5)), "Front lower links: Mount to mount: 38-1/2 in, before 38 in"),
        (|rig| rig.links[0].length = None, "Front lower links: Mount to mount: left open, before 38 in"),
        (
            |rig| rig.links[0].length = Some(inch(38.000_001)),
            "Front lower links: Mount to mount: 38 in, changed by less than is shown",
        ),
        (
            |rig| rig.links[2].ends[1].rod_end = Some("wide-16"),
            "Rear lower links: Rod end at B: 1-1/4-12 shank × 1 in bore, SAE wide, before left open",
        ),
        (|rig| layouts::remove(rig, 3), "Rear upper links: removed"),
        (|rig| rig.links.push(Link { role: Role::TieRod, ..Link::default() }), "Front tie rod: added"),
        (|rig| rig.links.swap(0, 3), ""),
    ];
    for (change, sentence) in cases {
        let mut after = before.clone();
        change(&mut after);
        let told = told(&before, &after, System::Inch);
        let wanted: Vec<&str> = Some(sentence).filter(|sentence| !sentence.is_empty()).into_iter().collect();
        assert_eq!(told, wanted);
    }
}

#[test]
fn a_pair_set_apart_is_one_moved_and_one_added() {
    let before = rig();
    let mut after = before.clone();
    layouts::set_apart(&mut after, 0);
    let told = told(&before, &after, System::Inch);
    assert_eq!(told.len(), 2, "{told:?}");
    assert!(told.iter().any(|line| line == "Right front lower link: added"), "{told:?}");
    assert_eq!(after.links[0].seat, Some(Side::Left));
}

#[test]
fn links_are_told_apart_by_where_they_sit() {
    let before = rig();
    let mut after = before.clone();
    after.links.reverse();
    assert_eq!(
        matched(&before, &after),
        [(Some(0), Some(3)), (Some(1), Some(2)), (Some(2), Some(1)), (Some(3), Some(0))]
    );
}

#[test]
fn a_link_is_followed_to_where_it_is_now() {
    let before = rig();
    let last = before.links.len() - 1;
    let mut after = before.clone();
    layouts::remove(&mut after, 0);
    assert_eq!(followed(&before, &after, 0), None, "it is gone, and no other one stands for it");
    for link in 1..=last {
        let there = followed(&before, &after, link).expect("still there");
        assert_eq!(after.links[there].title(), before.links[link].title());
    }
    let mut other_role = before.clone();
    other_role.links[1].role = Role::TrackBar;
    assert_eq!(followed(&before, &other_role, 1), Some(1), "with another role it stands where it stood");
    assert_eq!(followed(&before, &other_role, 0), Some(0));
    assert_eq!(followed(&before, &before, last), Some(last));
}

#[test]
fn of_two_links_alike_the_right_one_is_followed() {
    let mut before = rig();
    before.links.truncate(1);
    before.links.push(Link { length: Some(inch(40.0)), ..before.links[0].clone() });
    let mut after = before.clone();
    after.links.remove(0);
    assert_eq!(followed(&before, &after, 0), None, "gone, though the other one has its role and place");
    assert_eq!(followed(&before, &after, 1), Some(0));
}
