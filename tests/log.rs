//! The log of a build: it only grows, follows its build, and comes back from storage and from a file as it was.
#![cfg(not(target_arch = "wasm32"))]

#[path = "log/entries.rs"]
mod entries;

use linkwright::builds::{self, Build, log_from_text, log_to_line, log_to_text};
use linkwright::document::{Document, Link, Position, Role, Side, Use};
use linkwright::log::{Entry, EntryKind, Log, Noted, READINGS, Reading, ReadingKind, Spot, bars, reading_row};
use linkwright::present::fit::log::is_turned_unread;
use linkwright::quantity::{System, inch, lbf};
use linkwright::share;
use linkwright::store::opening::{self, AddressChange};
use linkwright::store::saved_builds::SavedBuild;
use linkwright::store::stored_entries::{Origin, StoredEntries};
use linkwright::store::{BUILD, ENTRIES, Stamp, import, logs, saved_builds, trash};

const T1: &str = "2026-12-01T08:00:00.000Z";
const T2: &str = "2026-12-02T08:00:00.000Z";
const T3: &str = "2026-12-03T08:00:00.000Z";

/// Taken out by a page that wrote down no time.
const OUT: Noted<()> = Noted { value: Some(()), at: String::new() };

/// A log as the first version that kept one wrote it; it must open for as long as anybody may have one.
const FIRST: &str = include_str!("log/first.json");

fn link(role: Role, position: Position, seat: Option<Side>) -> Link {
    Link { role, position, seat, ..Link::default() }
}

fn spot(id: &str) -> Spot {
    Spot::of_id(id).expect("an id")
}

fn entry(id: &str, at: &str, kind: EntryKind, words: &str) -> Entry {
    Entry {
        id: id.to_string(),
        spot: spot("front-lower-left"),
        at: at.to_string(),
        kind,
        code: "code".to_string(),
        readings: [("face-a", Reading::Number(inch(2.625))), ("nut-a", Reading::Pick("yes"))].into(),
        words: words.to_string(),
        withdrawn: Noted::default(),
    }
}

fn log() -> Log {
    let (mut log, left) = (Log::default(), spot("front-lower-left"));
    log.note(&left, "face-a", Some(Reading::Number(inch(2.625))), T1);
    log.note(&left, "threads-a", Some(Reading::Number(1.5)), T1);
    log.note(&left, "nut-a", Some(Reading::Pick("yes")), T1);
    log.note(&left, "face-b", None, T2);
    log.tick(&left, "Jam nut tight, 36-1/2 in.", true, T1);
    log.record(entry("one", T1, EntryKind::Turned, "Two turns longer"));
    log.record(entry("two", T2, EntryKind::Hit, "Landed on a rock"));
    log
}

#[test]
fn a_bar_is_known_by_where_it_sits() {
    let document = Document {
        links: vec![
            link(Role::Lower, Position::Front, None),
            link(Role::Lower, Position::Front, Some(Side::Left)),
            link(Role::TrackBar, Position::Rear, None),
        ],
        ..Document::default()
    };
    let ids =
        |link: usize| bars(&document, link).into_iter().map(|(spot, _)| spot.id().to_string()).collect::<Vec<_>>();
    assert_eq!(ids(0), ["front-lower-left", "front-lower-right"]);
    assert_eq!(ids(1), ["front-lower-left-2"]);
    assert_eq!(ids(2), ["rear-track-bar-middle"]);
    assert_eq!(ids(3), [""; 0]);
    let names: Vec<String> = bars(&document, 0).into_iter().map(|(_, name)| name).collect();
    assert_eq!(names, ["Left front lower link", "Right front lower link"]);
    // A pair that is set apart keeps the logs of its bars.
    let apart = Document {
        links: vec![
            link(Role::Lower, Position::Front, Some(Side::Left)),
            link(Role::Lower, Position::Front, Some(Side::Right)),
        ],
        ..Document::default()
    };
    let apart: Vec<Spot> = (0..2).flat_map(|link| bars(&apart, link)).map(|(spot, _)| spot).collect();
    assert_eq!(apart, bars(&document, 0).into_iter().map(|(spot, _)| spot).collect::<Vec<_>>());
}

#[test]
fn every_row_of_a_reading_has_its_own_id_and_takes_what_it_shows() {
    let rows: Vec<_> = READINGS.iter().copied().flatten().collect();
    for (at, row) in rows.iter().enumerate() {
        assert!(rows[..at].iter().all(|other| other.id != row.id), "{} stands twice", row.id);
        assert!(!row.label.is_empty() && !row.help.is_empty(), "{}", row.id);
        match row.holds {
            ReadingKind::Number { least, most, .. } => {
                for value in [least, (least + most) / 2.0, most] {
                    assert!(row.takes(Reading::Number(value)), "{}: {value}", row.id);
                }
                for value in [least - 1e-3 * most, most * 1.001, f64::NAN, f64::INFINITY] {
                    assert!(!row.takes(Reading::Number(value)), "{}: {value}", row.id);
                }
                assert!(!row.takes(Reading::Pick("yes")));
            }
            ReadingKind::Pick(picks) => {
                assert!(picks.iter().all(|(id, _)| row.pick(id).is_some_and(|pick| row.takes(pick))), "{}", row.id);
                assert_eq!(row.pick("no such"), None);
                assert!(!row.takes(Reading::Number(1.0)));
            }
        }
    }
    assert_eq!(reading_row("no such"), None);
}

/// What is read of an axle is typed once: it stands at every bar there, and at none of the other axle.
#[test]
fn what_is_read_of_an_axle_holds_for_each_of_its_bars() {
    let [left, upper, rear] = ["front-lower-left", "front-upper-right", "rear-lower-left"].map(spot);
    assert_eq!((left.axle(), rear.axle()), (spot("front-axle"), spot("rear-axle")));
    assert_eq!(left.axle().axle(), left.axle());
    for (id, value) in [("lower-slope", Reading::Number(0.1)), ("track-bar-frame-end", Reading::Pick("left"))] {
        let mut log = Log::default();
        log.note(&left, id, Some(value), T1);
        assert_eq!((log.reading(&upper, id), log.reading(&rear, id)), (Some(value), None));
        log.note(&upper, id, None, T2);
        assert_eq!(log.reading(&left, id), None, "taken back for all");
        let (again, whole) = log_from_text(&log_to_text(&log));
        assert!(whole && again == log);
    }
    // Of a bar it stays with the bar.
    let mut log = Log::default();
    log.note(&left, "face-a", Some(Reading::Number(inch(2.5))), T1);
    assert_eq!(log.reading(&upper, "face-a"), None);
}

/// An earlier page kept the slopes bar by bar: the last that was typed holds, until one is typed for the axle.
#[test]
fn slopes_of_an_old_log_are_read_for_the_axle() {
    let [left, right, rear] = ["front-lower-left", "front-upper-right", "rear-lower-left"].map(spot);
    let mut old = Log::default();
    for (bar, value, at) in [(&left, Some(0.1), T2), (&right, Some(0.2), T1), (&rear, Some(0.3), T3)] {
        let noted = Noted { value: value.map(Reading::Number), at: at.to_string() };
        old.bars.entry(bar.clone()).or_default().readings.insert("lower-slope", noted);
    }
    let (mut read, whole) = log_from_text(&log_to_text(&old));
    assert!(whole && read == old, "as it was written");
    for bar in [&left, &right] {
        assert_eq!(read.reading(bar, "lower-slope"), Some(Reading::Number(0.1)));
    }
    assert_eq!(read.reading(&rear, "lower-slope"), Some(Reading::Number(0.3)));
    read.note(&right, "lower-slope", Some(Reading::Number(0.15)), T3);
    read.join(&old);
    assert_eq!(read.reading(&left, "lower-slope"), Some(Reading::Number(0.15)));
    read.note(&left, "lower-slope", None, T3);
    assert_eq!(read.reading(&right, "lower-slope"), None, "at one moment the axle's own holds");
}

#[test]
fn what_two_tabs_wrote_is_joined_in_any_order() {
    let (left, mut one) = (spot("front-lower-left"), log());
    let mut two = log();
    one.note(&left, "face-a", Some(Reading::Number(inch(2.5))), T2);
    one.record(entry("three", T3, EntryKind::Note, "From one"));
    two.note(&left, "face-a", None, T3);
    two.tick(&left, "Jam nut tight, 36-1/2 in.", false, T2);
    two.record(entry("four", T2, EntryKind::Note, "From two"));
    two.entries[0].withdrawn = OUT;
    let (mut there, mut back) = (one.clone(), two.clone());
    there.join(&two);
    back.join(&one);
    assert_eq!(there, back);
    assert_eq!(there.reading(&left, "face-a"), None, "the later of two holds, also where it was taken back");
    assert_eq!(there.ticked(&left, "Jam nut tight, 36-1/2 in."), None);
    let words: Vec<&str> = there.of_bar(&left).map(|entry| entry.words.as_str()).collect();
    assert_eq!(words, ["From one", "Landed on a rock", "From two"]);
    assert_eq!(there.last(&left, EntryKind::Turned), None, "what was taken back was not done");
    let again = there.clone();
    there.join(&again);
    assert_eq!(there, again);
}

#[test]
fn a_log_comes_back_as_it_was() {
    let log = log();
    let text = log_to_text(&log);
    assert_eq!(log_from_text(&text), (log.clone(), true));
    assert_eq!(log_to_text(&Log::default()), "");
    assert!(text.contains("\"2.625 in\""), "every value carries its unit:\n{text}");
    let document = Document {
        name: "Mine".to_string(),
        links: vec![Link { length: Some(inch(36.0)), ..Link::default() }],
        ..Document::default()
    };
    let build = Build { id: "b".to_string(), saved: T1.to_string(), document, log: log.clone(), ..Build::default() };
    let read = builds::from_text(&builds::to_text(std::slice::from_ref(&build))).expect("a file");
    assert_eq!((read.builds, read.notices), (vec![build], Vec::new()));
    let (first, whole) = log_from_text(FIRST);
    assert!(whole);
    assert_eq!(first, log);
}

#[test]
fn a_damaged_log_keeps_what_can_be_read_and_says_so() {
    let text = log_to_text(&log());
    for (from, to) in [
        ("\"2.625 in\"", "\"seven\""),
        ("\"2.625 in\"", "\"9999 in\""),
        ("\"face-a\"", "\"no-such\""),
        ("\"turned\"", "\"no such\""),
        (T1, "yesterday"),
        ("front-lower-left", "Front Lower"),
        ("\"yes\"", "\"maybe\""),
    ] {
        let (read, whole) = log_from_text(&text.replace(from, to));
        assert!(!whole, "{from} → {to}");
        assert_eq!(log_from_text(&log_to_text(&read)), (read, true), "{from} → {to}");
    }
    for text in ["", "{", "[]", "7", "null", "{\"bars\":7,\"entries\":7}"] {
        assert!(log_from_text(text).0.is_empty(), "{text}");
    }
    // What could not be read is set aside before it is written over.
    let (_, writes) = logs::keep("b", &log(), "{ damaged");
    let keys: Vec<&str> = writes.iter().map(|write| write.key.as_str()).collect();
    assert_eq!(keys, ["linkwright.log.b.damaged", "linkwright.log.b"]);
    assert_eq!(writes[0].text, "{ damaged");
    // Nor is a copy written over by the next.
    assert_eq!(logs::set_aside("", "{ two"), "{ two");
    assert_eq!(logs::set_aside("{ one", "{ two"), "{ one\n{ two");
    assert_eq!(logs::set_aside("{ one\n{ two", "{ two"), "{ one\n{ two");
    assert!(logs::is_set_aside(&writes[0].key) && !logs::is_set_aside(&writes[1].key));
}

fn rig() -> Document {
    let mut document = Document::default();
    document.rig.weight = Some(lbf(4100.0));
    document.rig.usage = Some(Use::Hard);
    document.links[0].length = Some(inch(41.0));
    document
}

#[test]
fn a_log_follows_its_entries() {
    let text = log_to_text(&log());
    let none = Origin::new("origin".to_string());
    let saved = Origin { build: Some("build".to_string()), ..none.clone() };
    let another = Origin { build: Some("another".to_string()), ..none.clone() };
    let of = |id: &str| if id == "origin" || id == "build" { text.clone() } else { String::new() };
    let keys = |before: &Origin, now: &Origin| -> Vec<(String, bool)> {
        logs::follow(before, now, of).into_iter().map(|write| (write.key, write.text.is_empty())).collect()
    };
    // Saved: what stands under the build already is joined, and nothing is left behind.
    assert_eq!(keys(&none, &saved), [("linkwright.log.origin".to_string(), true)]);
    assert_eq!(
        keys(&none, &another),
        [("linkwright.log.another".to_string(), false), ("linkwright.log.origin".to_string(), true)]
    );
    // Saved as another, or its build deleted: a copy.
    assert_eq!(keys(&saved, &another), [("linkwright.log.another".to_string(), false)]);
    assert_eq!(keys(&saved, &none), []);
    // Something else is opened.
    assert_eq!(keys(&none, &Origin { id: "other".to_string(), ..saved.clone() }), []);
    assert_eq!(keys(&none, &none), []);
}

#[test]
fn what_is_set_aside_or_forgotten_takes_its_log_along() {
    let text = log_to_text(&log());
    let entries =
        StoredEntries { fragment: linkwright::share::to_fragment(&rig()), origin: Origin::new("origin".to_string()) };
    let stamp = Stamp { now: T1.to_string(), id: "fresh".to_string() };
    let writes = trash::set_aside(&entries, &[], &stamp);
    let along = logs::along(&writes, &text);
    assert_eq!(along.len(), 1);
    assert_eq!((along[0].key.as_str(), &along[0].text), ("linkwright.log.aside-origin", &text));
    assert!(logs::along(&writes, "").is_empty());
    let record = &writes[0];
    let id = record.key.strip_prefix(BUILD).expect("a build");
    let (_, restored) = trash::restore(&SavedBuild::read(id, record.text.clone()), &[], "new".to_string());
    assert_eq!(logs::along(&restored, &text)[0].key, "linkwright.log.new");
    assert_eq!(logs::forgotten(&restored)[0].key, "linkwright.log.aside-origin");
}

#[test]
fn a_file_brings_its_log_to_new_and_known_builds() {
    let build = Build { id: "b".to_string(), saved: T1.to_string(), document: rig(), ..Build::default() };
    let file = builds::to_text(&[Build { log: log(), ..build.clone() }]);
    let import_of = |text: &str, here: &[SavedBuild]| import::read(text, here, || "new".to_string());
    let fresh = import_of(&file, &[]);
    assert_eq!(fresh.logs, [("b".to_string(), log())]);
    assert!(fresh.builds[0].log.is_empty(), "the record on the device has none");
    let here = SavedBuild::read("here", builds::to_text(std::slice::from_ref(&build)));
    let known = import_of(&file, &[here]);
    assert_eq!((known.builds.len(), known.logs), (0, vec![("here".to_string(), log())]));

    // What the page hands out when it has stopped: every record under its key.
    let stopped = |key: &str, record: &str| format!("\nlinkwright.{key}\n{record}");
    let entries =
        StoredEntries { fragment: linkwright::share::to_fragment(&rig()), origin: Origin::new("o".to_string()) };
    let name = ENTRIES.strip_prefix("linkwright.").expect("its prefix");
    let records = [
        stopped("build.b", &builds::to_text(&[build])),
        stopped("log.b", &log_to_text(&log())),
        stopped(name, &entries.write()),
    ];
    let import = import_of(&records.concat(), &[]);
    assert_eq!(import.logs, [("b".to_string(), log())]);
    let alone = import_of(&[stopped(name, &entries.write()), stopped("log.o", &log_to_text(&log()))].concat(), &[]);
    assert_eq!(alone.logs, [("new".to_string(), log())]);
}

#[test]
fn a_hit_stays_open_until_its_bar_is_replaced() {
    use linkwright::log::{DRIVE_ON, HIT_VERDICT, LIMP, NOT_JUDGED, STOP};
    use linkwright::present::fit::log::open_hit;
    let left = spot("front-lower-left");
    let hit = |at: &str, verdict: &'static str| Entry {
        readings: [(HIT_VERDICT, Reading::Pick(verdict))].into(),
        ..entry(at, at, EntryKind::Hit, "The bar is bent.")
    };
    let open = |entries: Vec<Entry>| {
        let log = Log { entries, ..Log::default() };
        log.open_hit(&left).and_then(Entry::hit_verdict)
    };
    assert_eq!(open(vec![]), None);
    assert_eq!(open(vec![hit(T1, DRIVE_ON)]), None);
    assert_eq!(open(vec![hit(T1, STOP)]), Some(STOP));
    assert_eq!(open(vec![hit(T1, LIMP), hit(T2, NOT_JUDGED)]), Some(LIMP), "a look broken off takes nothing back");
    assert_eq!(open(vec![hit(T1, STOP), hit(T2, DRIVE_ON)]), None, "looked at again, in full");
    assert_eq!(open(vec![hit(T1, STOP), entry("r", T2, EntryKind::Replaced, "")]), None);
    assert_eq!(open(vec![entry("r", T1, EntryKind::Replaced, ""), hit(T2, STOP)]), Some(STOP));
    assert_eq!(open(vec![hit(T1, STOP), entry("c", T2, EntryKind::Checked, "")]), Some(STOP), "no check ends it");
    assert!(open_hit(&hit(T1, STOP), "Dec 1").starts_with("Stop. A hit is in the log, Dec 1: The bar is bent. Do not"));
    assert!(open_hit(&hit(T1, LIMP), "Dec 1").starts_with("Limp home only."));
}

#[test]
fn what_was_turned_since_is_summed() {
    use linkwright::present::fit::log::{TURNED_BY, turned_since};
    let (left, mut log) = (spot("front-lower-left"), Log::default());
    let told = |log: &Log, since: &str| turned_since(log, &left, since, System::Inch);
    assert_eq!(told(&log, ""), "Nothing, by this log.");
    for (id, at, by) in [("one", T1, 0.25), ("two", T2, -0.125), ("three", T3, 0.0625)] {
        let readings = [(TURNED_BY, Reading::Number(inch(by)))].into();
        log.record(Entry { readings, ..entry(id, at, EntryKind::Turned, "") });
    }
    log.record(entry("four", T3, EntryKind::Note, "Not a turn"));
    assert_eq!(told(&log, ""), "0.188 in longer in all: turned 3 times.");
    assert_eq!(told(&log, T1), "0.063 in shorter in all: turned 2 times.");
    assert_eq!(told(&log, T2), "0.063 in longer in all: turned once.");
    assert_eq!(told(&log, T3), "Nothing, by this log.");
    log.withdraw("three", true, T3);
    assert_eq!(told(&log, T2), "Nothing, by this log.");
    log.record(Entry {
        readings: [(TURNED_BY, Reading::Number(inch(-0.125)))].into(),
        ..entry("five", T3, EntryKind::Turned, "")
    });
    assert_eq!(told(&log, ""), "Back where it was: turned 3 times.");
}

#[test]
fn readings_are_read_as_people_type_them() {
    use linkwright::present::fit::reading::{read, shown, typed};
    let row = reading_row("face-a").expect("a row");
    let read = |text: &str, system| read(row, text, system);
    for (text, system, value) in [
        ("2 5/8", System::Inch, inch(2.625)),
        ("2-5/8\"", System::Inch, inch(2.625)),
        ("66.675 mm", System::Inch, inch(2.625)),
        ("66.675", System::Metric, inch(2.625)),
    ] {
        let Ok(Some(Reading::Number(got))) = read(text, system) else { panic!("{text}") };
        assert!((got - value).abs() < 1e-9, "{text}: {got}");
    }
    assert_eq!(read("  ", System::Inch), Ok(None));
    for text in ["0", "-2", "99", "abc", "2 5/8 lb", "1e400"] {
        assert!(read(text, System::Inch).is_err(), "{text}");
    }
    let reading = Some(Reading::Number(inch(2.625)));
    assert_eq!(typed(row, reading, System::Inch), "2.625");
    assert_eq!(shown(row, reading, System::Inch), "2.625 in");
}

#[test]
fn a_link_carries_a_log_only_where_it_is_asked_for() {
    let document = Document { links: vec![link(Role::TrackBar, Position::Front, None)], ..Document::default() };
    let (mut log, fragment) = (log(), share::to_fragment(&document));
    log.record(Entry { withdrawn: OUT, ..entry("three", T3, EntryKind::Note, "Not to be sent") });
    let with = share::with_log(&fragment, &log_to_line(&log)).expect("short enough");
    assert!(!with.contains("Not_to_be_sent") && with.contains("Landed_on_a_rock"), "{with}");
    let opened = share::from_fragment(&with);
    assert_eq!((&opened.document, &opened.notices), (&document, &Vec::new()));
    let (read, whole) = log_from_text(&opened.log);
    assert!(whole);
    log.entries.retain(|entry| !entry.is_withdrawn());
    assert_eq!(read, log);

    // New entries take it in; entries that are open here already keep their own.
    let received = opening::receive(&opened, None, "", &[], "new".to_string());
    let (text, notice) = opening::brought_log(&opened, &received);
    assert!(notice.is_some_and(|words| words.contains("They are theirs")));
    let writes = logs::received(&received.entries.origin, text);
    assert_eq!(writes.iter().map(|write| write.key.as_str()).collect::<Vec<_>>(), ["linkwright.log.new"]);
    match opening::on_address(&with, &received.entries) {
        AddressChange::Same(notices) => assert!(notices.concat().contains("It was left out"), "{notices:?}"),
        other => panic!("{other:?}"),
    }
    let kept =
        SavedBuild::read("kept", builds::to_text(&[Build { id: "kept".to_string(), document, ..Build::default() }]));
    let mine = opening::Received {
        entries: StoredEntries {
            origin: saved_builds::open(&kept, None, "x".to_string()).1,
            ..received.entries.clone()
        },
        is_new: true,
    };
    assert!(opening::brought_log(&opened, &mine).0.is_empty());

    // Cut off on its way it is told, and what is left of it is no log.
    let cut = share::from_fragment(&with[..with.len() - 40]);
    assert!(!cut.notices.is_empty());
    assert!(!log_from_text(&cut.log).1 || cut.log.is_empty());
    // A log of years goes into a file.
    (0..100).for_each(|number| log.record(entry(&format!("id{number}"), T3, EntryKind::Note, "One more")));
    assert_eq!(share::with_log(&fragment, &log_to_line(&log)), None);
}

/// A turn makes what was read before it old, until something is read again.
#[test]
fn a_turn_asks_for_new_readings() {
    let left = spot("front-lower-left");
    let mut log = Log::default();
    log.note(&left, "face-a", Some(Reading::Number(inch(2.625))), T1);
    assert!(!is_turned_unread(&log, &left));
    log.record(entry("turn", T2, EntryKind::Turned, "Two turns longer"));
    assert!(is_turned_unread(&log, &left));
    assert!(!is_turned_unread(&log, &spot("front-lower-right")), "its mate was not turned");
    log.note(&left, "threads-b", Some(Reading::Number(1.5)), T3);
    assert!(!is_turned_unread(&log, &left));
}
