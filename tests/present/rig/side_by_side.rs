//! The table that compares two rigs.

use super::{SYSTEMS, eight, random_rig, shows_no_number, whole};
use linkwright::differences::matched;
use linkwright::document::{Document, Link, Role};
use linkwright::present::compare::{Cells, Group, Row, Side, Table, table};
use linkwright::quantity::{System, inch, lbf};

fn compared(a: &Document, b: &Document, system: System) -> Table {
    table([Side { name: "One", whole: &whole(a) }, Side { name: "Other", whole: &whole(b) }], system)
}

fn each(about: &str, cells: [&str; 2]) -> Row {
    Row { about: about.to_string(), cells: Cells::Each(cells.map(str::to_string)) }
}

fn group<'a>(table: &'a Table, heading: &str) -> &'a Group {
    table.groups.iter().find(|group| group.heading == heading).expect("such a group")
}

#[test]
fn two_that_are_the_same_say_so() {
    let found = compared(&eight(), &eight(), System::Inch);
    assert!(found.same_entries);
    assert_eq!(found.names, ["One", "Other"]);
    let headings: Vec<&str> = found.groups.iter().map(|group| group.heading.as_str()).collect();
    assert_eq!(headings, ["All of it", "The same in both"]);
    let same = group(&found, "The same in both");
    assert_eq!(same.rows.len(), 8);
    assert_eq!(
        same.rows[6].cells,
        Cells::Both(
            "40-1/4 in mount to mount, 2-1/4 in 7075-T6/T651 bar, rod ends 1-1/4-12, saw to 35-1/8 in. Passes, little margin."
                .to_string()
        )
    );
    assert!(found.groups.iter().flat_map(|group| &group.rows).all(|row| !row.differs()));
}

#[test]
fn what_differs_comes_first_link_by_link() {
    let mut other = eight();
    other.rig.weight = Some(lbf(4150.0));
    other.links[0].length = Some(inch(39.0));
    other.links[3].length = None;
    other.links[5] = Link { role: Role::Upper, ..Link::default() };
    other.links.pop();
    let found = compared(&eight(), &other, System::Inch);
    assert!(!found.same_entries);
    let entered = group(&found, "Entered differently");
    assert_eq!(entered.rows[0], each("Rig weight, loaded", ["4,100 lb", "4,150 lb"]));
    assert!(entered.rows.contains(&each("Front lower links: Mount to mount", ["38 in", "39 in"])));
    assert!(entered.rows.contains(&each("Front tie rod: Mount to mount", ["48 in", "left open"])));
    assert!(entered.rows.iter().all(Row::differs));
    assert_eq!(group(&found, "All of it").rows[0].about, "Links to make");
    let lower = &group(&found, "Front lower links").rows;
    let abouts: Vec<&str> = lower.iter().map(|row| row.about.as_str()).collect();
    assert_eq!(abouts, ["Mount to mount", "Bar", "Metal", "Rod ends", "Saw to", "Verdict"]);
    assert_eq!(lower[0], each("Mount to mount", ["38 in", "39 in"]));
    assert!(lower[0].differs() && !lower[2].differs());
    let one_sided = &group(&found, "No answer in one of them").rows;
    let tie_rod = "48 in mount to mount, 1-1/2 in 7075-T6/T651 bar, rod ends 7/8-14, saw to 44-3/16 in. Passes.";
    assert!(one_sided.contains(&each("Front tie rod", [tie_rod, "no answer yet"])), "{one_sided:?}");
    let sway = one_sided.iter().find(|row| row.about == "Front sway-bar end links").expect("a row of its own");
    let Cells::Each([there, gone]) = &sway.cells else {
        panic!("one has it, the other has not");
    };
    assert!(there.starts_with("12 in mount to mount, ") && gone == "not there", "{there}, {gone}");
}

#[test]
fn a_link_that_cannot_be_made_says_so() {
    let mut other = eight();
    other.links[1].length = Some(inch(6.0));
    other.links[1].ends.iter_mut().for_each(|end| end.rod_end = Some("wide-16"));
    let found = compared(&eight(), &other, System::Inch);
    let Cells::Each([_, why]) = &group(&found, "No answer in one of them").rows[0].cells else { panic!("they differ") };
    assert_eq!(why, "cannot be made as entered");
    let both = compared(&other, &other, System::Inch);
    let same = &group(&both, "The same in both").rows[1];
    assert_eq!(same.cells, Cells::Both("cannot be made as entered".to_string()));
}

#[test]
fn random_pairs_have_every_link_once_and_no_broken_number() {
    super::dice::in_four_threads(59, |mut dice| {
        for _ in 0..15 {
            let [a, b] = [(); 2].map(|()| random_rig(&mut dice));
            for system in SYSTEMS {
                let found = compared(&a, &b, system);
                let shown = format!("{found:?}");
                assert!(!shows_no_number(&shown), "{shown}");
                // A group for each link that differs, a row for each that does not.
                let lists = ["No answer in one of them", "The same in both"];
                let counts = found.groups.iter().map(|group| match group.heading.as_str() {
                    "Entered differently" | "All of it" => 0,
                    heading if lists.contains(&heading) => group.rows.len(),
                    _ => 1,
                });
                assert_eq!(counts.sum::<usize>(), matched(&a, &b).len(), "{shown}");
            }
        }
    });
}
