//! What builders usually fit: the table, its rules, how it is compared, and what is said where nothing passes.

use linkwright::document::{Document, Role, Use};
use linkwright::engine::report;
use linkwright::engine::sentence::{Phrase, spoken};
use linkwright::engine::tables::materials::{self, Form};
use linkwright::engine::tables::practice::{self, GoesBy, Habit, Job, Size, class};
use linkwright::engine::tables::{jam_nuts, stock, threads};
use linkwright::quantity::{System, inch, lbf, mm};
use linkwright::report::{Answer, Verdict};

const USES: [Use; 4] = [Use::Easy, Use::Slow, Use::Hard, Use::Punished];
const ROLES: [Role; 6] = [Role::Lower, Role::Upper, Role::TrackBar, Role::TieRod, Role::DragLink, Role::SwayLink];
/// One weight of each column, each column's lower edge and just under it.
const WEIGHTS: [f64; 10] = [500.0, 2499.9, 2500.0, 3499.9, 3500.0, 4199.9, 4200.0, 5499.9, 5500.0, 20_000.0];
/// Metals with a habit.
const METALS: [&str; 9] = [
    "7075-t6",
    "7075-t6-extruded",
    "7075-t6-rolled",
    "7075-t6-unknown",
    "7075-t7351",
    "1020-dom",
    "1026-dom",
    "4130-qt125",
    "4130-qt180",
];

fn habit(role: Role, metal: &str, usage: Use, weight: f64, length: f64, ram: bool) -> Option<Habit> {
    let material = materials::find(metal).expect("a material");
    practice::for_job(&Job { role, material, usage, weight: lbf(weight), length: inch(length), ram })
}

fn bar(diameter: f64) -> Size {
    Size { outside_diameter: inch(diameter), wall: 0.0 }
}

fn tube(diameter: f64, wall: f64) -> Size {
    Size { outside_diameter: inch(diameter), wall: inch(wall) }
}

fn class_of(id: &str) -> Option<usize> {
    class(threads::find(id).expect("a thread"))
}

/// Every habit there is, with the metal it is for, by role, metal, length, ram, use and weight.
fn every_habit() -> Vec<(&'static str, Habit)> {
    let mut all = Vec::new();
    for (role, metal) in ROLES.into_iter().flat_map(|role| METALS.map(|metal| (role, metal))) {
        for (length, ram) in [(40.0, false), (24.0, false), (40.0, true)] {
            for (usage, weight) in USES.into_iter().flat_map(|usage| WEIGHTS.map(|weight| (usage, weight))) {
                all.extend(habit(role, metal, usage, weight, length, ram).map(|habit| (metal, habit)));
            }
        }
    }
    all
}

/// Cells read off the printed table (common practice, no source).
#[test]
fn cells_are_those_of_the_printed_table() {
    let cells = [
        (Role::Lower, "7075-t6", Use::Hard, 4100.0, bar(2.25), "1-1/4-12"),
        (Role::Lower, "1026-dom", Use::Slow, 2500.0, tube(1.75, 0.250), "7/8-14"),
        (Role::Lower, "4130-qt125", Use::Punished, 6000.0, tube(2.25, 0.250), "1-1/4-12"),
        (Role::Upper, "7075-t6", Use::Easy, 2600.0, bar(1.75), "3/4-16"),
        (Role::Upper, "4130-qt150", Use::Slow, 3500.0, tube(1.5, 0.120), "7/8-14"),
        (Role::TieRod, "1020-dom", Use::Slow, 3600.0, tube(1.5, 0.250), "3/4-16"),
        (Role::DragLink, "7075-t6", Use::Hard, 5500.0, bar(1.75), "7/8-14"),
        (Role::TrackBar, "7075-t6", Use::Punished, 4300.0, bar(2.0), "1-1/4-12"),
        (Role::TrackBar, "1026-dom", Use::Easy, 2400.0, tube(1.25, 0.120), "5/8-18"),
        (Role::SwayLink, "7075-t6", Use::Hard, 4000.0, bar(1.0), "1/2-20"),
        (Role::SwayLink, "7075-t6", Use::Easy, 2000.0, bar(0.75), "3/8-24"),
    ];
    for (role, metal, usage, weight, least, thread) in cells {
        let found = habit(role, metal, usage, weight, 36.0, false).expect("a habit");
        assert_eq!((found.least, found.thread), (least, thread), "{role:?} {metal} {usage:?} {weight}");
        let most = Size { outside_diameter: least.outside_diameter + inch(0.25), ..least };
        assert_eq!((found.most, found.goes_by), (most, GoesBy::WeightAndUse), "{role:?} {metal}");
    }
}

/// Nobody fits less of a weaker or less known metal than of the one the habit was formed on, nor smaller rod ends in any.
#[test]
fn other_metals_go_by_the_nearest_habit() {
    for (role, usage, weight) in ROLES
        .into_iter()
        .flat_map(|role| USES.into_iter().flat_map(move |usage| WEIGHTS.map(move |weight| (role, usage, weight))))
    {
        let of = |metal| habit(role, metal, usage, weight, 36.0, false).expect("a habit");
        for (metal, like, name) in [
            ("6061-t6", "7075-t6", "7075"),
            ("2024-t351", "7075-t6", "7075"),
            ("4130-n", "1026-dom", "DOM tube"),
            ("4130-n-a513", "1026-dom", "DOM tube"),
            ("4130-a513", "1026-dom", "DOM tube"),
        ] {
            let (found, model) = (of(metal), of(like));
            assert_eq!((found.least, found.thread), (model.least, model.thread), "{role:?} {metal}");
            assert_eq!(found.goes_by, GoesBy::OtherMetal(name), "{role:?} {metal}");
        }
        let steel_bar = of("4340-qt150");
        assert_eq!((steel_bar.thread, steel_bar.goes_by), (of("7075-t6").thread, GoesBy::RodEnds), "{role:?}");
    }
    for material in materials::ALL {
        for role in ROLES {
            assert!(habit(role, material.id, Use::Hard, 4000.0, 36.0, true).is_some(), "{role:?} {}", material.id);
        }
    }
    let ram = habit(Role::TieRod, "6061-t6", Use::Hard, 4000.0, 36.0, true).map(|it| it.goes_by);
    assert_eq!(ram, Some(GoesBy::Ram), "a ram asks the same of every metal");
}

#[test]
fn sway_links_of_tube_take_the_rod_ends_of_solid_ones() {
    for (usage, weight) in USES.into_iter().flat_map(|usage| WEIGHTS.map(|weight| (usage, weight))) {
        let thread = |metal| habit(Role::SwayLink, metal, usage, weight, 12.0, false).map(|it| it.thread);
        assert_eq!(thread("1020-dom"), thread("7075-t6"), "{usage:?} {weight}");
    }
}

#[test]
fn rows_never_fall_with_weight_or_harsher_use() {
    let no_less = |less: &Habit, more: &Habit| {
        more.least.modulus() >= less.least.modulus() * (1.0 - 1e-12) && class_of(more.thread) >= class_of(less.thread)
    };
    for (role, metal) in ROLES.into_iter().flat_map(|role| METALS.map(|metal| (role, metal))) {
        for (length, ram) in [(40.0, false), (24.0, false), (40.0, true)] {
            let at = |usage, weight| habit(role, metal, usage, weight, length, ram);
            for (usage, pair) in USES.into_iter().flat_map(|usage| WEIGHTS.windows(2).map(move |pair| (usage, pair))) {
                let (Some(light), Some(heavy)) = (at(usage, pair[0]), at(usage, pair[1])) else { continue };
                assert!(
                    no_less(&light, &heavy),
                    "{role:?} {metal} {usage:?} {pair:?} at {length}: {light:?} {heavy:?}"
                );
            }
            for (uses, weight) in USES.windows(2).flat_map(|uses| WEIGHTS.map(move |weight| (uses, weight))) {
                let (Some(mild), Some(harsh)) = (at(uses[0], weight), at(uses[1], weight)) else { continue };
                assert!(no_less(&mild, &harsh), "{role:?} {metal} {uses:?} {weight} at {length}: {mild:?} {harsh:?}");
            }
        }
    }
}

/// With a plain insert in a tube, a quarter of the thread around it in a bar, and a seat for the jam nut.
#[test]
fn every_row_can_be_built_from_stock() {
    for (metal, habit) in every_habit() {
        let thread = threads::find(habit.thread).expect("a thread");
        let nut = jam_nuts::for_thread(thread).expect("a jam nut");
        let Size { outside_diameter, wall } = habit.least;
        assert!(nut.across_flats_max <= outside_diameter + 1e-9, "{metal} {habit:?}: the nut does not sit");
        if materials::find(metal).is_some_and(|material| material.form == Form::Tube) {
            let bore = outside_diameter - 2.0 * wall;
            assert!(thread.major + inch(0.25) <= bore + 1e-9, "{metal} {habit:?}: no room for an insert");
            let stocked = |row: &&(f64, f64)| (row.0 - outside_diameter).abs() + (row.1 - wall).abs() < 1e-9;
            assert!(stock::TUBES.iter().any(|row| stocked(&row)), "{metal} {habit:?} is not stocked");
        } else {
            assert!(
                (outside_diameter - thread.major) / 2.0 >= 0.25 * thread.major - 1e-9,
                "{metal} {habit:?}: the wall"
            );
            assert!(wall.abs() < 1e-12, "{metal} {habit:?}");
        }
    }
}

/// A document with the habit's own size and rod ends decided.
fn fitted_by_hand(role: Role, metal: &str, usage: Use, weight: f64, length: f64) -> Option<(Document, Habit)> {
    let habit = habit(role, metal, usage, weight, length, false)?;
    let mut document = Document::default();
    (document.rig.weight, document.rig.usage) = (Some(lbf(weight)), Some(usage));
    let link = &mut document.links[0];
    (link.role, link.length) = (role, Some(inch(length)));
    link.material = materials::find(metal).map(|material| material.id);
    link.outside_diameter = Some(habit.least.outside_diameter);
    link.wall = Some(habit.least.wall).filter(|wall| *wall > 0.0);
    let ends = linkwright::engine::tables::rod_ends::ALL.iter();
    let rod_end = ends.clone().find(|row| row.thread == habit.thread).map(|row| row.id);
    assert!(rod_end.is_some(), "{habit:?}");
    link.ends.iter_mut().for_each(|end| end.rod_end = rod_end);
    Some((document, habit))
}

#[test]
fn no_habit_fails_its_own_insert_wall_or_jam_nut_seat() {
    let mut asked = 0;
    for (role, metal) in ROLES.into_iter().flat_map(|role| METALS.map(|metal| (role, metal))) {
        for (usage, weight) in
            USES.into_iter().flat_map(|usage| [2000.0, 3000.0, 4000.0, 5000.0, 6000.0].map(|w| (usage, w)))
        {
            for length in [24.0, 36.0] {
                let Some((document, habit)) = fitted_by_hand(role, metal, usage, weight, length) else { continue };
                let report = report(&document);
                let Some(answer) = report.links[0].answer() else {
                    // Hardened tube of a wall that no strength is held for.
                    let Size { outside_diameter, wall } = habit.least;
                    let material = materials::find(metal).expect("a material");
                    assert!(wall > 0.0 && material.strength(outside_diameter, wall).is_none(), "{metal} {habit:?}");
                    continue;
                };
                for id in ["wall", "jam-nut-seat"] {
                    let finding = answer.findings.iter().find(|it| it.id == id).expect("asked");
                    let failed = matches!(finding.verdict, Verdict::Fails | Verdict::Unanswered);
                    let says = spoken(&finding.says, System::Inch);
                    assert!(!failed, "{role:?} {metal} {usage:?} {weight}: {habit:?} {:?} {says}", finding.utilization);
                    asked += 1;
                }
            }
        }
    }
    assert!(asked > 1000, "{asked}");
}

#[test]
fn threads_are_compared_by_class() {
    let classes: [(Option<usize>, &[&str]); 9] = [
        (None, &["5/16-24"]),
        (Some(0), &["3/8-24", "7/16-20", "M10x1.5"]),
        (Some(1), &["1/2-20", "M12x1.75", "M14x1.5", "M14x2"]),
        (Some(2), &["5/8-18", "M16x1.5", "M16x2"]),
        (Some(3), &["3/4-16", "M18x1.5", "M20x1.5", "M20x2.5"]),
        (Some(4), &["7/8-14", "M22x1.5"]),
        (Some(5), &["1-12", "1-14", "M24x2", "M24x3", "M27x2"]),
        (Some(6), &["1-1/4-12", "M30x2", "M30x3.5"]),
        (Some(7), &["1-1/2-12"]),
    ];
    for (expected, ids) in classes {
        ids.iter().for_each(|id| assert_eq!(class_of(id), expected, "{id}"));
    }
    let listed: usize = classes.iter().map(|(_, ids)| ids.len()).sum();
    assert!(threads::ALL.len() >= listed);
    // What is not in the table yet goes by the same rule.
    let like = threads::find("5/8-18").expect("a thread");
    for (diameter, expected) in [(0.5625, 1), (1.125, 5)] {
        let thread = threads::Thread { major: inch(diameter), cite: like.cite, ..*like };
        assert_eq!(class(&thread), Some(expected), "{diameter}");
    }
}

#[test]
fn sizes_are_compared_by_section_modulus() {
    let as_large = |a: Size, b: Size| a.is_as_large_as(b);
    let mm = |diameter: f64| Size { outside_diameter: mm(diameter), wall: 0.0 };
    // 0.0982 (2^4 − 1.5^4) / 2 = 0.537 against 0.0982 (1.75^4 − 1^4) / 1.75 = 0.470, and 0.0982 (2^4 − 1.76^4) / 2 = 0.315.
    assert!(as_large(tube(2.0, 0.250), tube(1.75, 0.375)) && as_large(tube(1.75, 0.375), tube(2.0, 0.120)));
    assert!(!as_large(tube(2.0, 0.120), tube(1.75, 0.375)) && !as_large(tube(1.75, 0.375), tube(2.0, 0.250)));
    assert!(as_large(bar(2.0), bar(2.0)) && !as_large(bar(1.875), bar(2.0)));
    // 50 mm is 1.6 % under 2 in, 55 mm 3.8 % under 2-1/4 in.
    assert!(as_large(mm(50.0), bar(2.0)) && as_large(mm(38.0), bar(1.5)) && as_large(mm(25.0), bar(1.0)));
    assert!(!as_large(mm(55.0), bar(2.25)) && as_large(mm(60.0), bar(2.25)) && !as_large(mm(45.0), bar(2.0)));
    // A tube is not let off: 2 by 3/8 in is 6 % short of 2-1/4 by 1/4 in, 1/50 less in diameter.
    assert!(!as_large(tube(2.0, 0.375), tube(2.25, 0.250)));
    // Whatever a habit asks, some metric bar is as large without being a step larger.
    for (_, habit) in every_habit().iter().filter(|(_, habit)| habit.least.wall == 0.0 && habit.least != bar(0.75)) {
        let found = stock::METRIC_BARS
            .iter()
            .find(|diameter| Size { outside_diameter: **diameter, wall: 0.0 }.is_as_large_as(habit.least));
        let found = found.expect("a metric bar") / habit.least.outside_diameter;
        assert!((0.97..1.06).contains(&found), "{habit:?}: {found}");
    }
}

#[test]
fn short_lowers_of_7075_are_a_step_thinner_where_their_rod_ends_go_in() {
    let at = |metal, usage, weight, length| habit(Role::Lower, metal, usage, weight, length, false).expect("a habit");
    for (metal, usage, weight, long, short) in [
        ("7075-t6", Use::Hard, 4000.0, bar(2.25), bar(2.0)),
        ("7075-t7351", Use::Punished, 4000.0, bar(2.5), bar(2.25)),
        ("7075-t6", Use::Slow, 2500.0, bar(2.0), bar(1.75)),
        ("7075-t6", Use::Slow, 2000.0, bar(1.5), bar(1.25)),
        // A 1-1/4 rod end does not go into 1-3/4 in, nor a 7/8 one into 1-1/4 in.
        ("7075-t6", Use::Slow, 4000.0, bar(2.0), bar(2.0)),
        ("7075-t6", Use::Hard, 2000.0, bar(1.5), bar(1.5)),
        ("1026-dom", Use::Hard, 4000.0, tube(2.0, 0.250), tube(2.0, 0.250)),
    ] {
        for length in [30.0, 48.0] {
            assert_eq!(at(metal, usage, weight, length).least, long, "{metal} {usage:?} {weight} {length}");
        }
        let found = at(metal, usage, weight, 29.9);
        let off = (found.least.outside_diameter - short.outside_diameter).abs();
        assert!(off < 1e-9 && (found.least.wall - short.wall).abs() < 1e-9, "{metal} {usage:?} {weight}: {found:?}");
        assert_eq!(found.goes_by == GoesBy::ShortLink, short != long, "{metal} {usage:?} {weight}");
    }
    assert_eq!(habit(Role::Upper, "7075-t6", Use::Hard, 4200.0, 20.0, false).map(|it| it.least), Some(bar(2.0)));
}

#[test]
fn a_ram_asks_the_same_at_any_weight() {
    for (weight, role) in [600.0, 4000.0, 9000.0].into_iter().flat_map(|w| [(w, Role::TieRod), (w, Role::DragLink)]) {
        for (metal, least) in
            [("7075-t6", bar(1.75)), ("1020-dom", tube(1.75, 0.250)), ("4130-qt150", tube(1.75, 0.250))]
        {
            let found = habit(role, metal, Use::Easy, weight, 48.0, true).expect("a habit");
            assert_eq!((found.least, found.thread, found.goes_by), (least, "7/8-14", GoesBy::Ram), "{role:?} {metal}");
        }
    }
    let track_bar = habit(Role::TrackBar, "7075-t6", Use::Easy, 600.0, 36.0, true).map(|it| it.least);
    assert_eq!(track_bar, Some(bar(1.25)), "a ram steers, it does not push on a track bar");
}

#[test]
fn hardened_steering_links_and_track_bars_go_by_the_drawn_row() {
    for role in [Role::TieRod, Role::DragLink, Role::TrackBar] {
        for usage in USES {
            let of = |metal| habit(role, metal, usage, 4300.0, 40.0, false).map(|it| (it.least, it.thread));
            assert_eq!(of("4130-qt150"), of("1026-dom"), "{role:?} {usage:?}");
        }
    }
}

fn link(role: Role, metal: &'static str, usage: Use, weight: f64, length: f64) -> Document {
    let mut document = Document::default();
    (document.rig.weight, document.rig.usage) = (Some(lbf(weight)), Some(usage));
    let link = &mut document.links[0];
    (link.role, link.material, link.length) = (role, Some(metal), Some(inch(length)));
    document
}

fn answer(document: &Document) -> Answer {
    report(document).links[0].answer().expect("an answer").clone()
}

fn governs(answer: &Answer) -> String {
    spoken(&answer.sizing.governs, System::Inch)
}

#[test]
fn no_steering_link_or_track_bar_is_told_what_the_calculation_alone_would_do_with() {
    let mut habits = 0;
    for role in [Role::TieRod, Role::DragLink, Role::TrackBar] {
        for (metal, usage) in METALS.into_iter().flat_map(|metal| USES.map(|usage| (metal, usage))) {
            for (weight, length) in [(2400.0, 30.0), (4000.0, 44.0), (6500.0, 54.0)] {
                let answer = answer(&link(role, metal, usage, weight, length));
                let says = governs(&answer);
                for words in ["alone", "would do", "Smallest that passes: "] {
                    let none_fits = says.starts_with("Builders usually fit");
                    assert!(none_fits || !says.contains(words), "{role:?} {metal} {usage:?} {weight}: {says}");
                }
                habits += usize::from(says.starts_with("Common practice for this job is"));
                if let (Some(found), Some(trade)) = (&answer.sizing.recommended, &answer.sizing.by_trade)
                    && !says.starts_with("Builders usually fit")
                {
                    assert!(found.feasible && found.size().is_as_large_as(trade.least), "{role:?} {metal}: {found:?}");
                    assert!(class_of(found.thread) >= trade.class, "{role:?} {metal} {weight}: {found:?}");
                }
            }
        }
    }
    assert!(habits > 20, "{habits}");
}

#[test]
fn the_sentence_names_the_habit_and_what_decides() {
    let says = governs(&answer(&link(Role::Upper, "7075-t6", Use::Hard, 4000.0, 30.0)));
    let words = "builders usually fit 1-3/4 in with 7/8-14 rod ends for a rig of this weight, driven hard";
    assert!(says.starts_with(&format!("Common practice decides: {words}. Smallest that passes: ")), "{says}");
    let says = governs(&answer(&link(Role::TieRod, "7075-t6", Use::Punished, 3000.0, 30.0)));
    assert_eq!(says, "Common practice for this job is 1-1/2 in with 7/8-14 rod ends; it passes every check.");
    let says = governs(&answer(&link(Role::Lower, "7075-t6", Use::Hard, 4100.0, 38.0)));
    let words = "builders usually fit 2-1/4 in with 1-1/4-12 rod ends for a rig of this weight, driven hard";
    assert_eq!(says, format!("Calculation and common practice agree: {words}."));
    let says = governs(&answer(&link(Role::Lower, "4340-qt150", Use::Easy, 2500.0, 36.0)));
    let words =
        "builders usually fit 7/8-14 rod ends, whatever the bar is made of, for a rig of this weight, on easy trails";
    assert_eq!(says, format!("Calculation and common practice agree: {words}."));
    let says = governs(&answer(&link(Role::Upper, "6061-t6", Use::Hard, 4000.0, 30.0)));
    let words = "builders usually fit at least 1-3/4 in with 7/8-14 rod ends, as in 7075, for a rig of this weight, driven hard";
    assert!(says.contains(words), "{says}");
}

/// Rod ends of another system are compared by their class; a series that ends too soon gives the largest it has.
#[test]
fn other_series_reach_the_habit_by_class_or_as_near_as_they_go() {
    let sized = |role, usage, weight, family| {
        let mut document = link(role, "7075-t6", usage, weight, 36.0);
        document.links[0].family = Some(family);
        let answer = answer(&document);
        let found = answer.sizing.recommended.clone().expect("a size");
        (found.thread, found.feasible, governs(&answer))
    };
    let (thread, feasible, says) = sized(Role::Lower, Use::Hard, 4300.0, "series-k");
    assert!(thread == "M30x2" && feasible && !says.contains("smaller"), "{thread}: {says}");
    let (thread, feasible, says) = sized(Role::TieRod, Use::Hard, 4300.0, "series-k");
    assert!(thread == "M22x1.5" && feasible && says.contains("with M22x1.5 rod ends"), "{thread}: {says}");
    let (thread, feasible, says) = sized(Role::Upper, Use::Punished, 6500.0, "narrow");
    assert!(thread == "1-12" && feasible && says.contains("smaller than builders usually fit"), "{thread}: {says}");
}

#[test]
fn a_habit_never_shows_a_number_that_is_none() {
    for (usage, weight) in USES.into_iter().flat_map(|usage| [500.0, 4000.0, 20_000.0].map(|weight| (usage, weight))) {
        for (role, metal) in ROLES.into_iter().flat_map(|role| ["7075-t6", "1026-dom", "6061-t6"].map(|m| (role, m))) {
            let report = report(&link(role, metal, usage, weight, 36.0));
            let Some(answer) = report.links[0].answer() else { continue };
            for phrase in answer.sizing.governs.iter() {
                if let Phrase::Value(value, _) | Phrase::Trade(value) = phrase {
                    assert!(value.is_finite(), "{role:?} {metal} {usage:?} {weight}: {}", governs(answer));
                }
            }
        }
    }
}
