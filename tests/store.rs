//! What is kept on the device: entries of this version and earlier ones open, and what gives way to what.
#![cfg(not(target_arch = "wasm32"))]

mod dice;
#[path = "store/random.rs"]
mod random;
#[path = "store/tabs.rs"]
mod tabs;

use linkwright::document::{Document, Position, Role, Side, Stage, Use};
use linkwright::quantity::{inch, lbf};
use linkwright::share::{from_fragment, to_fragment};
use linkwright::store::history::History;
use linkwright::store::opening::{AddressChange, Found, Open, Opening, on_address, on_load, receive};
use linkwright::store::saved_builds::{SavedBuild, Target};
use linkwright::store::stored_entries::{Origin, StoredEntries, in_address};
use linkwright::store::unverified::DAMAGED_HERE;
use linkwright::store::{Stamp, Write, import, other_tabs, saved_builds, shop_lists, trash, unverified};

// Records as this version wrote them first; they must open for as long as anybody may have them.
const OWN: &str = include_str!("store/entries-own.txt");
const OF_A_BUILD: &str = include_str!("store/entries-of-a-build.txt");
const RECEIVED_DAMAGED: &str = include_str!("store/entries-received-damaged.txt");
const DAMAGED: &str = include_str!("store/entries-damaged.txt");
const EARLIER: &str = include_str!("store/entries-earlier.txt");
const BUILD: &str = include_str!("store/build-saved.json");
const SET_ASIDE: &str = include_str!("store/build-set-aside.json");

fn one() -> Document {
    let mut document = Document::default();
    document.rig.weight = Some(lbf(4100.0));
    document.rig.usage = Some(Use::Hard);
    document.links[0].length = Some(inch(41.0));
    document
}

fn stamp() -> Stamp {
    Stamp { now: "2026-12-01T00:00:00.000Z".to_string(), id: "fresh".to_string() }
}

#[test]
fn kept_entries_open_and_are_written_as_they_were() {
    for text in [OWN, OF_A_BUILD, RECEIVED_DAMAGED, DAMAGED] {
        assert_eq!(StoredEntries::read(text).write(), text.strip_suffix("\r").unwrap_or(text));
    }
    let own = StoredEntries::read(OWN).checked();
    assert_eq!((own.document, own.recalculated, own.damaged), (one(), false, None));
    assert_eq!(own.entries.origin, Origin::new("mikq3z1fa0k3p9x0c2d1e".to_string()));
    assert!(!own.entries.is_as_received());

    let rig = StoredEntries::read(OF_A_BUILD).checked();
    assert_eq!(rig.document.name, "Mine");
    assert_eq!((rig.document.links[1].role, rig.document.links[1].position), (Role::Upper, Position::Rear));
    assert_eq!(rig.document.links[1].seat, Some(Side::Left));
    assert_eq!(rig.entries.origin.build.as_deref(), Some("mikpzz0l5k8j7h6g5f4d3"));
    assert_eq!(from_fragment(&rig.entries.origin.base).document.links[0].length, Some(inch(38.0)));
    assert_eq!(rig.entries.origin.unverified, [""; 0]);

    let received = StoredEntries::read(RECEIVED_DAMAGED);
    assert!(received.is_as_received());
    assert_eq!(received.origin.unverified.len(), 2);
    assert_eq!(received.origin.unverified[1], "A second sentence of doubt, over two lines.");
}

#[test]
fn damaged_entries_say_so_and_are_kept_as_found() {
    let checked = StoredEntries::read(DAMAGED).checked();
    assert_eq!(checked.entries.origin.unverified, [DAMAGED_HERE]);
    assert_eq!(checked.damaged.as_deref(), DAMAGED.lines().next());
    assert_eq!(checked.document.links[0].length, Some(inch(47.0)));
    let again = checked.entries.checked();
    assert_eq!(again.entries.origin.unverified, [DAMAGED_HERE], "once");
}

#[test]
fn entries_of_an_earlier_version_are_recalculated_and_are_no_change_of_the_readers() {
    let checked = StoredEntries::read(EARLIER).checked();
    assert!(checked.recalculated && checked.damaged.is_none());
    assert_eq!(checked.entries.fragment, to_fragment(&checked.document));
    assert!(checked.entries.is_as_received());
}

#[test]
fn nothing_kept_is_nothing_entered() {
    let nothing = StoredEntries::read("");
    assert_eq!(nothing, StoredEntries::default());
    assert_eq!(nothing.write(), "");
    assert!(!nothing.origin.is_same(&nothing.origin), "no two tabs follow each other for nothing");
    assert_eq!(nothing.checked().document, Document::default());
}

#[test]
fn kept_builds_open_and_are_written_as_they_were() {
    let saved = SavedBuild::read("mikpzz0l5k8j7h6g5f4d3", BUILD.to_string());
    assert!(saved.is_open() && !saved.damaged && !trash::is_set_aside(&saved.build));
    assert_eq!(saved.build.earlier[0].unverified.len(), 1);
    assert!(saved.was(&StoredEntries::read(OF_A_BUILD).origin.base));
    assert_eq!(Write::build(&saved.build).text, BUILD);
    assert_eq!(Write::build(&saved.build).key, "linkwright.build.mikpzz0l5k8j7h6g5f4d3");

    let aside = SavedBuild::read("aside-mikq3z1fa0k3p9x0c2d1e", SET_ASIDE.to_string());
    assert!(aside.is_in_trash() && trash::is_set_aside(&aside.build));
    assert_eq!(Write::build(&aside.build).text, SET_ASIDE);
    let broken = SavedBuild::read("x", BUILD[..200].to_string());
    assert!(broken.damaged && !broken.is_open() && !broken.is_in_trash());
}

#[test]
fn entries_are_set_aside_under_the_id_of_their_origin_once() {
    let own = StoredEntries::read(OWN);
    let writes = trash::set_aside(&own, &[], &stamp());
    assert_eq!(writes.len(), 1);
    assert_eq!(writes[0].key, "linkwright.build.aside-mikq3z1fa0k3p9x0c2d1e");
    let aside = SavedBuild::read("aside-mikq3z1fa0k3p9x0c2d1e", writes[0].text.clone());
    assert_eq!(trash::set_aside(&own, std::slice::from_ref(&aside), &stamp()), []);

    // The same work, changed: what was set aside before becomes its earlier version.
    let mut changed = one();
    changed.links[0].length = Some(inch(42.0));
    let changed = StoredEntries { fragment: to_fragment(&changed), ..own.clone() };
    let writes = trash::set_aside(&changed, std::slice::from_ref(&aside), &stamp());
    let both = SavedBuild::read("aside-mikq3z1fa0k3p9x0c2d1e", writes[0].text.clone());
    assert!(both.was(&own.fragment) && both.fragment == changed.fragment);

    // Once it was restored it is a build of its own, and takes no part in that.
    let (build, writes) = trash::restore(&aside, std::slice::from_ref(&aside), "new".to_string());
    assert_eq!((build.id.as_str(), build.removed), ("new", None));
    assert_eq!(writes[1], Write::forget("aside-mikq3z1fa0k3p9x0c2d1e"));

    // Damaged ones are kept as they were found, too.
    let writes = trash::set_aside(&StoredEntries::read(DAMAGED), &[], &stamp());
    assert_eq!(writes[0].key, "linkwright.damaged");
    assert!(writes[0].is_optional() && writes[1].text.contains("was damaged"));
}

#[test]
fn the_trash_holds_fifty_sets_of_entries_and_never_drops_the_newest() {
    let mut builds: Vec<SavedBuild> = Vec::new();
    for number in 0..60 {
        let mut document = one();
        document.links[0].length = Some(inch(f64::from(number) + 20.0));
        let origin = Origin::new(format!("n{number}"));
        let stamp = Stamp { now: format!("2026-12-01T00:00:{number:02}.000Z"), id: format!("f{number}") };
        let writes = trash::set_aside(&StoredEntries { fragment: to_fragment(&document), origin }, &builds, &stamp);
        let mut records: Vec<(String, String)> =
            builds.iter().map(|saved| (saved.build.id.clone(), saved.text.to_string())).collect();
        for write in writes {
            let id = write.key.trim_start_matches("linkwright.build.").to_string();
            records.retain(|(other, _)| *other != id);
            if !write.text.is_empty() {
                records.push((id, write.text));
            }
        }
        builds = saved_builds::refresh(Some(builds), records).0;
        assert_eq!(builds[0].build.id, format!("aside-n{number}"));
    }
    assert_eq!(builds.len(), 50);
}

#[test]
fn a_build_that_changed_meanwhile_is_written_over_only_after_a_yes() {
    let saved = SavedBuild::read("mikpzz0l5k8j7h6g5f4d3", BUILD.to_string());
    let builds = [saved.clone()];
    let entries = StoredEntries::read(OF_A_BUILD);
    let mut document = saved.build.document.clone();
    document.links[0].length = Some(inch(44.0));
    // It was opened as 38 in, and is kept as 41 in by now.
    assert_eq!(saved_builds::save(&document, &entries.origin, Target::Same, &builds, &stamp()), None);
    let over = saved_builds::save(&document, &entries.origin, Target::SameAnyway, &builds, &stamp()).expect("a save");
    assert_eq!(over.build.id, saved.build.id);
    assert_eq!(over.build.earlier.last().map(|earlier| &earlier.fragment), Some(&saved.fragment));
    assert_eq!(over.origin.base, to_fragment(&document));
    let another = saved_builds::save(&document, &entries.origin, Target::Another, &builds, &stamp()).expect("a save");
    assert_eq!((another.build.id.as_str(), another.build.document.name.as_str()), ("fresh", "Mine (2)"));
    // What equals it by now is no clash.
    assert!(saved_builds::save(&saved.build.document, &entries.origin, Target::Same, &builds, &stamp()).is_some());
}

#[test]
fn unverified_numbers_say_so_until_they_are_verified() {
    let saved = SavedBuild::read("aside-mikq3z1fa0k3p9x0c2d1e", SET_ASIDE.to_string());
    let (document, mut origin) = saved_builds::open(&saved, None, "x".to_string());
    assert_eq!(origin.unverified, ["Compare every number."]);
    let fragment = to_fragment(&document);
    assert!(!from_fragment(unverified::to_send(&fragment, &origin)).notices.is_empty());
    let build = unverified::verify(&fragment, &mut origin, Some(saved.build.clone())).expect("the build, verified");
    assert!(build.unverified.is_empty() && origin.unverified.is_empty());
    assert_eq!(unverified::to_send(&fragment, &origin), fragment);
    // A build that holds something else stays as it is.
    assert_eq!(unverified::verify("3&length=1in", &mut origin, Some(saved.build)), None);
}

#[test]
fn what_the_page_hands_out_when_it_has_stopped_is_taken_in() {
    let text = format!(
        "Kept by Linkwright in this browser\n\nlinkwright.before\n{OWN}\n\nlinkwright.build.mikpzz0l5k8j7h6g5f4d3\n{BUILD}\n\nlinkwright.entries\n{OF_A_BUILD}\n\nlinkwright.units\nmetric\n"
    );
    let mut count = 0;
    let import = import::read(&text, &[], || {
        count += 1;
        format!("new{count}")
    });
    let lengths: Vec<Option<f64>> = import.builds.iter().map(|build| build.document.links[0].length).collect();
    assert_eq!(lengths, [Some(inch(41.0)), Some(inch(41.0))], "the build holds the open entries");
    assert_eq!(import.builds[0].id, "mikpzz0l5k8j7h6g5f4d3");
    assert_eq!(import.notices()[0], "2 of 3 builds imported; the others are here already.");

    // None replaces one that is here, and what was set aside elsewhere makes way for nothing here.
    let here = SavedBuild::read("mikpzz0l5k8j7h6g5f4d3", SET_ASIDE.to_string());
    let ids = |text: &str| {
        let import = import::read(text, std::slice::from_ref(&here), || "new".to_string());
        import.builds.into_iter().map(|build| build.id).collect::<Vec<_>>()
    };
    assert_eq!(ids(BUILD), ["new"], "the id is taken by another build");
    assert_eq!(ids(&SET_ASIDE.replace("41 in", "43 in")), ["new"]);
    assert_eq!(import::read("{", &[], String::new).notices().len(), 1);
    let full = import::read(BUILD, &[], String::new).notices_broken_off(0, "Full.");
    assert_eq!(full, ["Full. Imported before that: 0 of the file’s builds."]);
}

#[test]
fn what_one_tab_takes_up_again_throws_no_other_tab_back() {
    let origin = StoredEntries::read(OWN).origin;
    assert_eq!(other_tabs::apart(origin.clone(), OWN, "fresh".to_string()).id, "fresh");
    assert_eq!(other_tabs::apart(origin.clone(), OF_A_BUILD, "fresh".to_string()), origin);
    let old = StoredEntries { fragment: "3&length=38in".to_string(), origin };
    assert_eq!(other_tabs::newest(old.clone(), OWN), StoredEntries::read(OWN));
    assert_eq!(other_tabs::newest(old.clone(), OF_A_BUILD), old);
    assert_eq!(other_tabs::newest(old.clone(), ""), old);
}

#[test]
fn a_page_opens_with_what_the_address_brings_or_with_what_was_kept() {
    let own = StoredEntries::read(OWN);
    let shorter = to_fragment(&Document { name: "Other".to_string(), ..one() });
    let found = Found { address: "", own_address: "", of_tab: "", shared: OWN };
    let stored = |opening: &Opening| opening.open == Open::Stored(own.clone()) && opening.set_aside.is_none();

    let nothing = on_load(found);
    assert!(stored(&nothing) && nothing.notices.is_empty() && !nothing.address_is_foreign);
    let bad = on_load(Found { address: "garbage", ..found });
    assert!(stored(&bad) && !bad.notices.is_empty());
    let same = on_load(Found { address: &own.fragment, ..found });
    assert!(stored(&same) && same.notices.is_empty() && same.address_is_foreign);
    let link = on_load(Found { address: &shorter, ..found });
    assert!(matches!(link.open, Open::Link(_, ref before) if *before == own) && link.address_is_foreign);

    // Loaded anew: with another tab at something else, and with one that went on with the same.
    let changed = StoredEntries { fragment: shorter.clone(), ..own.clone() }.write();
    let again = on_load(Found { address: &shorter, of_tab: &changed, shared: OF_A_BUILD, ..found });
    assert_eq!(again.open, Open::OfTab(StoredEntries::read(&changed)));
    let went_on = on_load(Found { address: &shorter, of_tab: &changed, ..found });
    assert_eq!(went_on.open, Open::Stored(own.clone()));
    assert_eq!(went_on.set_aside, Some(StoredEntries::read(&changed)));
    // A page that was left before it wrote its address.
    let late = on_load(Found { address: &shorter, own_address: &shorter, of_tab: OWN, ..found });
    assert!(stored(&late) && !late.address_is_foreign);

    assert_eq!(on_address("", &own), AddressChange::Nothing(Vec::new()));
    assert!(matches!(on_address("garbage", &own), AddressChange::Nothing(notices) if notices.len() == 1));
    assert_eq!(on_address(&own.fragment, &own), AddressChange::Same(Vec::new()));
    assert!(matches!(on_address(&shorter, &own), AddressChange::Link(_)));
}

#[test]
fn a_received_link_has_every_reason_that_is_known_here() {
    let aside = SavedBuild::read("aside-x", SET_ASIDE.to_string());
    let opened = from_fragment(&aside.fragment);
    let received = receive(&opened, None, "", std::slice::from_ref(&aside), "new".to_string());
    assert!(received.is_new && received.entries.is_as_received());
    assert_eq!(received.entries.origin.unverified, ["Compare every number."]);
    // What is offered back comes with its origin.
    let before = StoredEntries::read(OWN);
    let received = receive(&from_fragment(&before.fragment), Some(&before), "", &[], "new".to_string());
    assert_eq!((received.entries, received.is_new), (before, false));
}

#[test]
fn undo_goes_back_by_bursts_and_by_origins() {
    let at = |inches: f64, id: &str| {
        let mut document = one();
        document.links[0].length = Some(inch(inches));
        (document, Origin::new(id.to_string()))
    };
    let mut history = History::default();
    assert!(!history.follow(at(30.0, "a")) && !history.can_undo(), "the beginning is no step");
    assert!(history.follow(at(31.0, "a")) && history.follow(at(32.0, "a")), "one burst");
    history.end_burst();
    history.follow(at(33.0, "a"));
    history.follow(at(50.0, "b"));
    assert_eq!(history.undo(at(50.0, "b")), Some(at(33.0, "a")), "another origin is a step of its own");
    assert!(!history.follow(at(33.0, "a")), "what undo puts there is no step");
    assert_eq!(history.undo(at(33.0, "a")), Some(at(32.0, "a")));
    history.follow(at(32.0, "a"));
    assert_eq!(history.redo(at(32.0, "a")), Some(at(33.0, "a")));
    history.follow(at(33.0, "a"));
    assert_eq!(history.undo(at(33.0, "a")), Some(at(32.0, "a")));
    history.follow(at(32.0, "a"));
    assert_eq!(history.undo(at(32.0, "a")), Some(at(30.0, "a")));
    history.follow(at(30.0, "a"));
    assert!(!history.can_undo() && history.can_redo());
    history.end_burst();
    history.follow(at(34.0, "a"));
    assert!(!history.can_redo(), "a change empties redo");
    // A key that is taken back leaves no step.
    history.end_burst();
    history.follow(at(35.0, "a"));
    history.taken_back(&at(34.0, "a").0);
    assert!(!history.follow(at(34.0, "a")));
    assert_eq!(history.undo(at(34.0, "a")), Some(at(30.0, "a")));
}

#[test]
fn the_trash_holds_the_newest_of_what_was_typed() {
    let other = to_fragment(&Document { name: "Other".to_string(), ..one() });
    for by_link in [false, true] {
        let (mut browser, mut tab) = (tabs::Browser::default(), tabs::Tab::default());
        tab.load(&mut browser);
        for inches in [41.5, 42.0] {
            let mut document = one();
            document.links[0].length = Some(inch(inches));
            // Only the first is kept before something else is opened.
            tab.write(&mut browser);
            tab.edit(document);
        }
        if by_link {
            tab.go_to(&mut browser, &other);
        } else {
            tab.clear(&mut browser);
        }
        tab.write(&mut browser);
        let trash = browser.builds(Vec::new());
        assert_eq!(trash.len(), 1, "by a link: {by_link}");
        assert_eq!(trash[0].build.document.links[0].length, Some(inch(42.0)), "by a link: {by_link}");
    }
}

/// What another tab wrote into a list, and what an import takes the place of, stands beside it.
#[test]
fn a_list_of_the_shop_is_never_written_over_unseen() {
    let [one, two, theirs] = ["Name\r\none\r\n", "Name\r\ntwo\r\n", "Name\r\ntheirs\r\n"];
    let write = |key: &str, text: &str| Write { key: key.to_string(), text: text.to_string() };
    let cases: [(&str, &str, &[Write]); 4] = [
        ("", "", &[write("linkwright.shop.bars", two)]),
        (one, one, &[write("linkwright.shop.bars", two)]),
        (two, one, &[]),
        (theirs, one, &[write("linkwright.shop.bars.before", theirs), write("linkwright.shop.bars", two)]),
    ];
    for (shared, seen, writes) in cases {
        assert_eq!(
            shop_lists::keep("bars", two.to_string(), shared, seen),
            writes,
            "{shared:?} where {seen:?} was seen"
        );
    }
    let imported = shop_lists::replace("bars", two.to_string(), one);
    assert_eq!(imported, [write("linkwright.shop.bars.before", one), write("linkwright.shop.bars", two)]);
    assert_eq!(shop_lists::replace("bars", two.to_string(), two), []);
}

/// The address shows what is made and nothing of the order; whoever comes back by it finds the order that is kept.
#[test]
fn an_address_without_its_order_leads_back_to_it() {
    let mut document = one();
    document.order.reference = "PO 12".to_string();
    document.order.remarks = "By Friday".to_string();
    document.links[0].piece_mut(0).heat = "H 1".to_string();
    let kept = StoredEntries { fragment: to_fragment(&document), origin: Origin::new("own".to_string()) };
    let address = in_address(&kept.fragment);
    assert_eq!(address, to_fragment(&one()), "nothing of the order stands in the address");
    assert_eq!(in_address(&address), address);
    let damaged = &kept.fragment[..kept.fragment.len() - 1];
    assert_eq!(in_address(damaged), damaged, "of damaged entries nothing is left out");

    let text = kept.write();
    let found = |of_tab, own_address| Found { address: &address, own_address, of_tab, shared: &text };
    for (of_tab, own_address) in [("", ""), (text.as_str(), ""), (text.as_str(), address.as_str())] {
        assert_eq!(on_load(found(of_tab, own_address)).open, Open::Stored(kept.clone()));
    }
    assert_eq!(on_address(&address, &kept), AddressChange::Same(Vec::new()));

    // A bookmark of a build that is kept here, while something else is open.
    let save = saved_builds::save(&document, &kept.origin, Target::Another, &[], &stamp()).expect("a new build");
    let saved = SavedBuild::read("fresh", Write::build(&save.build).text);
    let received = receive(&from_fragment(&address), None, "", std::slice::from_ref(&saved), "new".to_string());
    assert_eq!(received.entries.fragment, kept.fragment);
    assert_eq!(received.entries.origin.build.as_deref(), Some("fresh"));
}

/// Anybody can write a link: what only a shop knows is taken from none.
#[test]
fn a_link_brings_no_yes_and_no_record() {
    let mut forged = one();
    forged.order.remarks = "ring first".to_string();
    let honest = to_fragment(&forged);
    forged.order.stage = Stage::Cut;
    forged.order.yes.by = "Nobody".to_string();
    forged.links[0].piece_mut(0).heat = "H 1".to_string();
    let link = to_fragment(&forged);
    let found = Found { address: &link, own_address: "", of_tab: "", shared: "" };
    let Open::Link(opened, _) = on_load(found).open else { panic!("a link") };
    assert_eq!(to_fragment(&opened.document), honest, "remarks may be sent");
    assert!(opened.notices.len() == 1 && opened.notices[0].contains("left out"), "{:?}", opened.notices);
    let AddressChange::Link(opened) = on_address(&link, &StoredEntries::default()) else { panic!("a link") };
    assert_eq!(to_fragment(&opened.document), honest);
}
