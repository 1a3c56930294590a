//! What is saved: titles, how the entries stand to it, rows, versions, the search.

use super::{eight, shows_no_number};
use linkwright::builds::Build;
use linkwright::document::{Document, Link, Position, Role};
use linkwright::present::saved::{
    SaveState, about, changes, file_name, heading, is_found, notices, of_entries, row, save_state, title_of, trash_row,
    versions,
};
use linkwright::present::words::rig_title;
use linkwright::quantity::{System, inch, lbf};
use linkwright::share;
use linkwright::store::saved_builds::SavedBuild;
use linkwright::store::stored_entries::Origin;
use linkwright::store::{Refused, Write};

/// A time as the reader hears it; nothing of one that is none.
fn spoken(time: &str) -> String {
    if time.is_empty() { String::new() } else { format!("on {time}") }
}

/// A record as it is read from the device.
fn record(build: &Build) -> SavedBuild {
    SavedBuild::read(&build.id, Write::build(build).text)
}

fn saved_rig() -> Build {
    Build { id: "rig".to_string(), saved: "Monday".to_string(), document: eight(), ..Build::default() }
}

fn says(document: &Document, build: &Build) -> [String; 2] {
    let SaveState { short, full } = save_state(document, Some(&record(build)), System::Inch, spoken);
    [short, full]
}

#[test]
fn a_build_is_called_by_its_name_or_by_its_job() {
    let mut document = eight();
    assert_eq!(rig_title(&document, System::Inch), "Trail rig");
    document.name = String::new();
    assert_eq!(rig_title(&document, System::Inch), "Rig of 4,100 lb, driven hard");
    assert_eq!(rig_title(&document, System::Metric), "Rig of 1,860 kg, driven hard");
    assert_eq!(rig_title(&Document::default(), System::Inch), "Rig without a name");
    let damaged = SavedBuild::read("x", "{ \"format\"".to_string());
    assert_eq!(title_of(&damaged, System::Inch), "A damaged record");
}

#[test]
fn a_build_is_told_by_its_job_and_its_links() {
    assert_eq!(
        about(&eight(), System::Inch),
        "4,100 lb, driven hard. Front: lower links, upper link, track bar, tie rod, drag link, sway-bar end links. Rear: lower links, upper links."
    );
    let rear = Link { role: Role::TrackBar, position: Position::Rear, ..Link::default() };
    assert_eq!(about(&Document { links: vec![rear], ..Document::default() }, System::Inch), "Rear: track bar.");
}

#[test]
fn the_entries_stand_to_what_is_saved_in_every_way() {
    let plain = |words: &str| [words.to_string(), words.to_string()];
    assert_eq!(says(&Document::default(), &saved_rig()), plain("Nothing is entered yet."));
    let SaveState { short, full } = save_state(&eight(), None, System::Inch, spoken);
    assert_eq!([short, full], plain("Not saved yet."));
    assert_eq!(says(&eight(), &saved_rig()), ["“Trail rig”: Saved.", "“Trail rig”, saved on Monday. Unchanged since."]);
    let mut one = eight();
    one.links[0].length = Some(inch(39.0));
    assert_eq!(
        says(&one, &saved_rig()),
        ["“Trail rig”: One change not saved.", "“Trail rig”, saved on Monday. One change since:"]
    );
    let mut two = one.clone();
    two.rig.weight = Some(lbf(4500.0));
    assert_eq!(
        says(&two, &saved_rig()),
        ["“Trail rig”: 2 changes not saved.", "“Trail rig”, saved on Monday. 2 changes since:"]
    );
    let nowhen = Build { saved: String::new(), ..saved_rig() };
    assert_eq!(says(&eight(), &nowhen), ["“Trail rig”: Saved.", "“Trail rig”, saved. Unchanged since."]);
}

#[test]
fn an_earlier_version_is_known_as_one() {
    let mut build = saved_rig();
    let mut newer = eight();
    newer.links[0].length = Some(inch(39.0));
    build.save(&newer, "Tuesday");
    assert_eq!(
        says(&eight(), &build),
        [
            "Version 1 of “Trail rig”, not the newest.",
            "Version 1 of “Trail rig”, saved on Monday. Save it to make it the newest. It differs from the newest:"
        ]
    );
    assert_eq!(says(&newer, &build)[0], "“Trail rig”: Saved.", "the newest is no earlier one");
    // What was saved again later counts, not its first time.
    build.save(&eight(), "Wednesday");
    build.save(&newer, "Thursday");
    assert!(says(&eight(), &build)[1].starts_with("Version 3 of “Trail rig”, saved on Wednesday."));
}

#[test]
fn the_entries_belong_to_an_open_build() {
    let origin = Origin { build: Some("rig".to_string()), ..Origin::default() };
    let found =
        |build: &Build, origin: &Origin| of_entries(&[record(build)], origin).map(|saved| saved.build.id.clone());
    assert_eq!(found(&saved_rig(), &origin).as_deref(), Some("rig"));
    assert_eq!(found(&saved_rig(), &Origin::default()), None);
    let deleted = Build { removed: Some("Friday".to_string()), ..saved_rig() };
    assert_eq!(found(&deleted, &origin), None, "not what lies in the trash");
}

#[test]
fn changes_are_listed_up_to_a_dozen() {
    let mut after = eight();
    after.links.iter_mut().for_each(|link| {
        link.length = Some(inch(20.0));
        link.bow = Some(0.001);
    });
    let listed = changes(&eight(), &after, System::Inch);
    assert_eq!((listed.len(), listed.last().map(String::as_str)), (13, Some("And 4 more.")));
    assert_eq!(listed[0], "Front lower links: Mount to mount: 20 in, before 38 in");
    assert_eq!(changes(&eight(), &eight(), System::Inch), Vec::<String>::new());
}

#[test]
fn versions_say_what_came_after_them() {
    let mut build = saved_rig();
    let mut document = eight();
    for (length, day) in [(39.0, "Tuesday"), (40.0, "Wednesday")] {
        document.links[0].length = Some(inch(length));
        build.save(&document, day);
    }
    let found = versions(&build, System::Inch, spoken);
    let short: Vec<_> =
        found.iter().map(|it| (it.index, it.replaced.as_str(), it.changes.concat(), it.open.as_str())).collect();
    let change = |now: &str, before: &str| format!("Front lower links: Mount to mount: {now} in, before {before} in");
    assert_eq!(
        short,
        [
            (1, "on Wednesday", change("40", "39"), "Open version 2 of on Tuesday"),
            (0, "on Tuesday", change("39", "38"), "Open version 1 of on Monday"),
        ]
    );
    assert!(found.iter().all(|version| version.unverified.is_empty()));
    // A version whose check fails says so, and its own doubts stay.
    build.earlier[0].fragment = build.earlier[0].fragment.replace("length=38in", "length=36in");
    build.earlier[1].unverified = vec!["Compare it.".to_string()];
    build.earlier[1].saved = String::new();
    let found = versions(&build, System::Inch, spoken);
    assert_eq!((found[0].unverified.concat().as_str(), found[0].open.as_str()), ("Compare it.", "Open version 2"));
    assert!(found[1].unverified.concat().contains("damaged"), "{:?}", found[1]);
    assert_eq!(share::to_fragment(&build.document), share::to_fragment(&document), "only read");
}

#[test]
fn rows_say_when_and_what_is_open() {
    let origin = Origin { build: Some("rig".to_string()), ..Origin::default() };
    let saved = row(&record(&saved_rig()), &origin, System::Inch, spoken);
    assert_eq!((saved.name.as_str(), saved.when.as_str()), ("Trail rig", "Saved on Monday. Current build."));
    assert!(!saved.damaged && !saved.has_versions && saved.unverified.is_empty());
    assert_eq!(row(&record(&saved_rig()), &Origin::default(), System::Inch, spoken).when, "Saved on Monday.");
    let damaged = row(&SavedBuild::read("x", "{".to_string()), &origin, System::Inch, spoken);
    assert!(damaged.damaged && damaged.when.is_empty() && damaged.unverified.len() == 1, "{damaged:?}");
    for (id, when) in [("rig", "Deleted on Friday"), ("aside-rig", "Set aside unsaved on Friday")] {
        let build = Build { id: id.to_string(), removed: Some("Friday".to_string()), ..saved_rig() };
        assert_eq!(trash_row(&record(&build), System::Inch, spoken).when, when);
    }
    let nowhen = Build { removed: Some(String::new()), ..saved_rig() };
    assert_eq!(trash_row(&record(&nowhen), System::Inch, spoken).when, "Deleted");
}

#[test]
fn a_build_is_found_by_every_word_in_any_letters() {
    let mut build = saved_rig();
    build.document.name = "Größer".to_string();
    let saved = record(&build);
    let cases =
        [("", true), ("grÖßer driven", true), ("TIE rod", true), ("GRÖSSER driven", false), ("größer slowly", false)];
    for (search, found) in cases {
        assert_eq!(is_found(&saved, search, System::Inch), found, "{search}");
    }
    assert!(is_found(&saved, "1,860 kg", System::Metric) && !is_found(&saved, "1,860 kg", System::Inch));
}

#[test]
fn files_have_names_that_every_system_takes() {
    let cases = [
        ("Trail rig", "linkwright-trail-rig.json"),
        ("Winter \"2026\"/7", "linkwright-winter-2026-7.json"),
        ("日本", "linkwright-build.json"),
        ("a b c d e f g h i j", "linkwright-a-b-c-d-e-f-g-h.json"),
    ];
    for (title, file) in cases {
        assert_eq!(file_name(title), file);
    }
    assert_eq!([0, 1, 7].map(heading), ["No saved builds yet", "1 saved build", "7 saved builds"]);
}

#[test]
fn notices_say_how_it_ended() {
    let why = Refused::Full;
    let cases = [
        (notices::saved(Ok("B"), None), "Saved as “B”."),
        (notices::saved(Ok("B"), Some("A")), "Saved over “A”, now called “B”. What it was is its earlier version."),
        (
            notices::saved(Err(why), None),
            "Not saved. The space this browser gives to the page is full: the last change was not kept. Copy the link or export a file instead.",
        ),
        (notices::saved_too(Ok("A")), "“A” is kept too."),
        (
            notices::saved_too(Err(why)),
            "Not kept. The space this browser gives to the page is full: the last change was not kept.",
        ),
        (notices::duplicated(Ok("A (2)")), "Copied as “A (2)”."),
        (
            notices::duplicated(Err(why)),
            "Not copied. The space this browser gives to the page is full: the last change was not kept.",
        ),
        (notices::deleted("A", Ok(())), "“A” is in the bin, at the end of this page."),
        (
            notices::deleted("A", Err(why)),
            "Not deleted. The space this browser gives to the page is full: the last change was not kept. Export “A” if you may want it back, then delete it for good.",
        ),
        (notices::restored(Ok("A")), "“A” is back among the saved builds."),
        (
            notices::restored(Err(why)),
            "Not brought back. The space this browser gives to the page is full: the last change was not kept.",
        ),
        (notices::gone("A"), "“A” is gone for good."),
        (notices::exported("a.json", true), "“a.json” went to your downloads."),
        (notices::exported("a.json", false), "The browser refused to write a file."),
    ];
    for (said, wanted) in cases {
        assert_eq!(said, wanted);
    }
}

#[test]
fn random_builds_show_no_broken_number() {
    super::dice::in_four_threads(47, |mut dice| {
        for _ in 0..100 {
            let mut build = Build { id: "any".to_string(), document: dice.rig(), ..Build::default() };
            build.save(&dice.rig(), "Tuesday");
            let saved = record(&build);
            for system in super::SYSTEMS {
                let shown = format!(
                    "{:?} {:?} {:?}",
                    row(&saved, &Origin::default(), system, spoken),
                    versions(&saved.build, system, spoken),
                    save_state(&dice.rig(), Some(&saved), system, spoken)
                );
                assert!(!shows_no_number(&shown), "{shown}");
            }
        }
    });
}
