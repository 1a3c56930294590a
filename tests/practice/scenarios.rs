//! Links that builders have made for years, and what the engine says of them: by the numbers, after common practice, and
//! of tubes that are typed in. What the trade fits is common practice, no source.

use linkwright::document::{Document, Role, ShankSteel, TieRodSide, Use};
use linkwright::document::{Role::Lower, Role::Upper, Use::Hard, Use::Punished, Use::Slow};
use linkwright::engine::formula::Line;
use linkwright::engine::sentence::spoken;
use linkwright::engine::tables::materials;
use linkwright::quantity::{INCH, Kind, System, inch, show};
use linkwright::report::{Answer, Candidate, Verdict};

use super::common::{answer, find, job};

/// What does not come out as the calculation that the model was fitted with had it, and why.
///
/// Scenario, that calculation's answer, ours, the reason.
const DEVIATIONS: [(&str, &str, &str, &str); 6] = [
    (
        "1026 2 x .250, 4,500 lb, 36 in, hard",
        "bends 0.02 in",
        "fails at the weld, 107 %; bends 0.02 in",
        "The bar bends as it should, but beside the weld it is past the 40 ksi of the annealed zone, where no bend \
         is allowed. That calculation's own numbers give 105 % there; the insert is made to the next 1/8 in, so it \
         ends a little further from the eye.",
    ),
    (
        "1020 2 x .250, 5,000 lb, 34 in, slow",
        "fails at the weld, 101 %; bends 0.003 in",
        "fails at the weld, 103 %; bends 0.003 in",
        "The inner end of the insert lies a little further from the eye, as above.",
    ),
    (
        "1020 2 x .250, 5,000 lb, 38 in, slow",
        "fails at the weld, 102 %; bends 0.04 in",
        "fails at the weld, 104 %; bends 0.04 in",
        "The inner end of the insert lies a little further from the eye, as above.",
    ),
    (
        "6061, 4,000 lb, 36 in, slow",
        "2.5, 1-14 → 2.5, 1-14",
        "2.5, 1-1/4-12 → 2.5, 1-1/4-12",
        "No series of rod ends with a 1-14 shank is published, so the next thread up is taken.",
    ),
    (
        "tie rod, 5,000 lb, 50 in, ram, hard, ahead of the axle",
        "1.625, 5/8-18 → 1.75, 7/8-14",
        "1.75, 3/4-16 → 1.75, 7/8-14",
        "The ram's force of 7,363 lbf meets the strike of a rig driven hard; without that strike, or behind the axle, \
         it is 1-5/8 in.",
    ),
    (
        "sway-bar end link, 4,000 lb, hard",
        "1, 5/16-24 → 1, 1/2-20",
        "0.75, 5/16-24 → 1, 1/2-20",
        "Bars of 3/4 and 7/8 in are in stock here, as common practice fits them to light rigs; what is recommended is \
         the same.",
    ),
];

/// A bar's diameter in in, or a tube's and its wall, and its thread.
fn size(candidate: Option<&Candidate>) -> String {
    candidate.map_or_else(
        || "none".to_string(),
        |it| {
            let wall = if it.wall > 0.0 { format!(" x {:.3}", it.wall / INCH) } else { String::new() };
            let diameter = (it.outside_diameter / INCH * 1000.0).round() / 1000.0;
            format!("{diameter}{wall}, {}", it.thread)
        },
    )
}

/// Smallest that passes, and what common practice makes of it.
fn found(document: &Document) -> String {
    let sizing = answer(document).sizing;
    format!("{} → {}", size(sizing.by_numbers.as_ref()), size(sizing.recommended.as_ref()))
}

fn lower(material: &str, weight: f64, length: f64, usage: Use) -> Document {
    let mut document = job(Lower, weight, length, usage);
    document.links[0].material = Some(materials::find(material).expect("a metal").id);
    document
}

fn tie_rod(usage: Use, side: TieRodSide, ram: bool) -> Document {
    let mut document = job(Role::TieRod, 5000.0, 50.0, usage);
    document.links[0].tie_rod_side = Some(side);
    document.rig.cylinder_bore = ram.then_some(inch(2.5));
    document
}

/// The answer of that calculation, or the one of ours that is known to deviate from it.
#[track_caller]
fn compare(scenario: &str, found: &str, expected: &str) {
    match DEVIATIONS.iter().find(|(name, ..)| *name == scenario) {
        Some((_, theirs, ours, _)) => {
            assert_eq!(*theirs, expected, "{scenario}: the deviation is from something else");
            assert_eq!(found, *ours, "{scenario}: it deviates otherwise than is listed");
        }
        None => assert_eq!(found, expected, "{scenario}"),
    }
}

#[test]
fn deviations_have_reasons() {
    for (scenario, theirs, ours, reason) in DEVIATIONS {
        assert!(theirs != ours && reason.len() > 40, "{scenario}");
    }
}

#[test]
fn sizes_come_out_as_builders_make_them() {
    let rows: [(&str, Document, &str); 28] = [
        ("7075, 4,000 lb, 24 in, hard", job(Lower, 4000.0, 24.0, Hard), "2, 1-1/4-12 → 2, 1-1/4-12"),
        ("7075, 4,000 lb, 24 in, punished", job(Lower, 4000.0, 24.0, Punished), "2, 1-1/4-12 → 2.25, 1-1/4-12"),
        ("7075, 4,000 lb, 30 in, punished", job(Lower, 4000.0, 30.0, Punished), "2.25, 1-1/4-12 → 2.5, 1-1/4-12"),
        ("7075, 4,000 lb, 36 in, punished", job(Lower, 4000.0, 36.0, Punished), "2.5, 1-1/4-12 → 2.5, 1-1/4-12"),
        ("7075, 4,000 lb, 40 in, punished", job(Lower, 4000.0, 40.0, Punished), "2.5, 1-1/4-12 → 2.5, 1-1/4-12"),
        ("7075, 6,000 lb, 48 in, slow", job(Lower, 6000.0, 48.0, Slow), "2.5, 1-1/4-12 → 2.5, 1-1/4-12"),
        // The trade fits 2-1/2 with 1-1/4 here. What is told instead of a size: the next test.
        ("7075, 5,000 lb, 42 in, punished", job(Lower, 5000.0, 42.0, Punished), "none → none"),
        ("7075, 6,500 lb, 44 in, hard", job(Lower, 6500.0, 44.0, Hard), "none → none"),
        ("7075, 1,800 lb, 30 in, punished", job(Lower, 1800.0, 30.0, Punished), "1.75, 7/8-14 → 1.75, 7/8-14"),
        (
            "1026, 5,500 lb, 38 in, slow",
            lower("1026-dom", 5500.0, 38.0, Slow),
            "2.25 x 0.250, 1-1/4-12 → 2.25 x 0.250, 1-1/4-12",
        ),
        (
            "1026, 6,000 lb, 40 in, slow",
            lower("1026-dom", 6000.0, 40.0, Slow),
            "2.25 x 0.250, 1-1/4-12 → 2.25 x 0.250, 1-1/4-12",
        ),
        (
            "1026, 6,500 lb, 40 in, slow",
            lower("1026-dom", 6500.0, 40.0, Slow),
            "2.25 x 0.250, 1-1/4-12 → 2.25 x 0.250, 1-1/4-12",
        ),
        (
            "1026, 4,000 lb, 36 in, hard",
            lower("1026-dom", 4000.0, 36.0, Hard),
            "2.25 x 0.250, 1-1/4-12 → 2.25 x 0.250, 1-1/4-12",
        ),
        (
            "1026, 5,000 lb, 38 in, hard",
            lower("1026-dom", 5000.0, 38.0, Hard),
            "2.25 x 0.375, 1-1/4-12 → 2.25 x 0.375, 1-1/4-12",
        ),
        (
            "1026, 4,000 lb, 36 in, punished",
            lower("1026-dom", 4000.0, 36.0, Punished),
            "2.25 x 0.375, 1-1/4-12 → 2.25 x 0.375, 1-1/4-12",
        ),
        (
            "1020, 5,000 lb, 34 in, slow",
            lower("1020-dom", 5000.0, 34.0, Slow),
            "2.25 x 0.250, 1-1/4-12 → 2.25 x 0.250, 1-1/4-12",
        ),
        (
            "1020, 5,000 lb, 38 in, slow",
            lower("1020-dom", 5000.0, 38.0, Slow),
            "2.25 x 0.250, 1-1/4-12 → 2.25 x 0.250, 1-1/4-12",
        ),
        ("6061, 4,000 lb, 36 in, slow", lower("6061-t6", 4000.0, 36.0, Slow), "2.5, 1-14 → 2.5, 1-14"),
        ("upper, 4,000 lb, 30 in, hard", job(Upper, 4000.0, 30.0, Hard), "1.25, 5/8-18 → 1.75, 7/8-14"),
        ("upper, 5,000 lb, 34 in, punished", job(Upper, 5000.0, 34.0, Punished), "1.75, 7/8-14 → 2, 1-1/4-12"),
        (
            "tie rod, 5,000 lb, 50 in, slow, ahead of the axle",
            tie_rod(Slow, TieRodSide::Ahead, false),
            "1.5, 5/8-18 → 1.5, 7/8-14",
        ),
        (
            "tie rod, 5,000 lb, 50 in, hard, ahead of the axle",
            tie_rod(Hard, TieRodSide::Ahead, false),
            "1.625, 3/4-16 → 1.625, 7/8-14",
        ),
        (
            "tie rod, 5,000 lb, 50 in, hard, behind the axle",
            tie_rod(Hard, TieRodSide::Behind, false),
            "1.375, 5/8-18 → 1.5, 7/8-14",
        ),
        (
            "tie rod, 5,000 lb, 50 in, ram, slow, ahead of the axle",
            tie_rod(Slow, TieRodSide::Ahead, true),
            "1.625, 5/8-18 → 1.75, 7/8-14",
        ),
        (
            "tie rod, 5,000 lb, 50 in, ram, hard, ahead of the axle",
            tie_rod(Hard, TieRodSide::Ahead, true),
            "1.625, 5/8-18 → 1.75, 7/8-14",
        ),
        ("track bar, 5,000 lb, 34 in, slow", job(Role::TrackBar, 5000.0, 34.0, Slow), "1.125, 3/8-24 → 1.5, 7/8-14"),
        ("track bar, 5,000 lb, 34 in, hard", job(Role::TrackBar, 5000.0, 34.0, Hard), "1.25, 3/8-24 → 1.75, 7/8-14"),
        ("sway-bar end link, 4,000 lb, hard", job(Role::SwayLink, 4000.0, 12.0, Hard), "1, 5/16-24 → 1, 1/2-20"),
    ];
    for (scenario, document, expected) in rows {
        compare(scenario, &found(&document), expected);
    }
}

/// A utilization as the tables print it.
fn percent(answer: &Answer, id: &str) -> String {
    format!("{:.0} %", 100.0 * find(answer, id).utilization.expect("a number"))
}

#[test]
fn above_the_strongest_rod_end_it_tells_what_is_fitted() {
    for (weight, length, usage, bar, shank) in
        [(5000.0, 42.0, Punished, "106 %", "105 %"), (6500.0, 44.0, Hard, "113 %", "107 %")]
    {
        let answer = answer(&job(Lower, weight, length, usage));
        assert_eq!([percent(&answer, "bar-bending"), percent(&answer, "shank-bending")], [bar, shank]);
        assert_eq!(answer.verdict, Verdict::Fails);
        let fitted = answer.sizing.fitted.as_ref().expect("what is fitted");
        assert_eq!(size(Some(&fitted.candidate)), "2.5, 1-1/4-12");
        assert!(
            fitted.good_to.is_some_and(|good| good < linkwright::quantity::lbf(weight)) && !fitted.cures.is_empty()
        );
    }
    assert_eq!(percent(&answer(&job(Lower, 6000.0, 48.0, Slow)), "bar-bending"), "89 %");
    let mut ram = tie_rod(Slow, TieRodSide::Behind, true);
    ram.links[0].outside_diameter = Some(inch(1.75));
    // 69 % for a plain bar; the thinner shanks at its ends let the link buckle 2 % earlier.
    let used = find(&answer(&ram), "buckling").utilization.expect("a number");
    assert!((0.69..0.72).contains(&used), "{used}");
}

/// The force along an upper link, and what a bent track bar takes of its yield strength.
#[test]
fn the_numbers_beside_the_sizes() {
    let force = |length, weight, usage| answer(&job(Upper, weight, length, usage)).loads.axial;
    let shown = |force| show(force, Kind::Force, System::Inch);
    assert_eq!(shown(force(30.0, 4000.0, Hard)), "5,327 lbf");
    assert_eq!(shown(force(34.0, 5000.0, Punished)), "8,878 lbf");
    // 76.4 and 110 % for a plain tube; the link's critical load is a little lower.
    for (offset, used, verdict) in [(2.0, "77 %", Verdict::Passes), (3.0, "111 %", Verdict::Fails)] {
        let mut document = typed("1026-dom", (1.5, 0.25), "wide-12", (5000.0, 34.0, Hard));
        document.links[0].role = Role::TrackBar;
        document.links[0].bend_offset = Some(inch(offset));
        let answer = answer(&document);
        assert_eq!((percent(&answer, "bent-bar").as_str(), find(&answer, "bent-bar").verdict), (used, verdict));
    }
}

/// A tube that stands on a rig, with rod ends of known steel.
fn typed(material: &str, (outside, wall): (f64, f64), rod_end: &'static str, rig: (f64, f64, Use)) -> Document {
    let mut document = lower(material, rig.0, rig.1, rig.2);
    let link = &mut document.links[0];
    (link.outside_diameter, link.wall) = (Some(inch(outside)), Some(inch(wall)));
    link.ends.iter_mut().for_each(|end| {
        (end.rod_end, end.shank_steel) = (Some(rod_end), Some(ShankSteel::Alloy));
    });
    document
}

/// What becomes of a tube: beside its weld, and in the middle.
fn fate(document: &Document) -> String {
    let answer = answer(document);
    let (bar, weld) = (find(&answer, "bar-bending"), find(&answer, "tapped-end"));
    let set = bar.working.iter().find_map(|line| match line {
        Line::Solved { what: "Permanent set at mid-span", value, .. } => Some(*value / INCH),
        _ => None,
    });
    let middle = match bar.verdict {
        Verdict::Passes => "passes".to_string(),
        Verdict::Close => "passes, little margin".to_string(),
        Verdict::Bends => {
            let set = set.expect("a set");
            if set < 0.01 { format!("bends {set:.3} in") } else { format!("bends {set:.2} in") }
        }
        Verdict::Unanswered => "not judged".to_string(),
        Verdict::Fails => {
            let says = spoken(&bar.says, System::Inch);
            let bow = says.split("a bow of about ").nth(1).and_then(|rest| rest.split(' ').next());
            let bow: f64 = bow.and_then(|bow| bow.parse().ok()).unwrap_or(f64::NAN);
            return format!("fails, bow {bow:.2} in");
        }
    };
    // Nothing else may decide it.
    for finding in &answer.findings {
        let other = !["bar-bending", "tapped-end"].contains(&finding.id);
        assert!(!other || finding.verdict == Verdict::Passes || finding.is_left_open(), "{finding:?}");
    }
    match weld.verdict {
        Verdict::Fails => format!("fails at the weld, {}; {middle}", percent(&answer, "tapped-end")),
        _ => middle,
    }
}

#[test]
fn tubes_that_are_typed_in_bend_before_they_fail() {
    let (two, slim) = ((2.0, 0.25), (1.75, 0.12));
    for (scenario, document, expected) in [
        ("1026 2 x .250, 3,500 lb, 34 in, slow", typed("1026-dom", two, "wide-16", (3500.0, 34.0, Slow)), "passes"),
        (
            "1026 2 x .250, 4,000 lb, 36 in, slow",
            typed("1026-dom", two, "wide-16", (4000.0, 36.0, Slow)),
            "passes, little margin",
        ),
        (
            "1026 2 x .250, 4,500 lb, 36 in, slow",
            typed("1026-dom", two, "wide-16", (4500.0, 36.0, Slow)),
            "bends 0.000 in",
        ),
        (
            "1026 2 x .250, 5,000 lb, 38 in, slow",
            typed("1026-dom", two, "wide-16", (5000.0, 38.0, Slow)),
            "bends 0.002 in",
        ),
        (
            "1026 2 x .250, 4,000 lb, 36 in, hard",
            typed("1026-dom", two, "wide-16", (4000.0, 36.0, Hard)),
            "bends 0.002 in",
        ),
        (
            "1026 2 x .250, 4,500 lb, 36 in, hard",
            typed("1026-dom", two, "wide-16", (4500.0, 36.0, Hard)),
            "bends 0.02 in",
        ),
        (
            "1026 2 x .250, 5,000 lb, 38 in, hard",
            typed("1026-dom", two, "wide-16", (5000.0, 38.0, Hard)),
            "fails, bow 0.14 in",
        ),
        (
            "1020 2 x .250, 5,000 lb, 34 in, slow",
            typed("1020-dom", two, "wide-16", (5000.0, 34.0, Slow)),
            "fails at the weld, 101 %; bends 0.003 in",
        ),
        (
            "1020 2 x .250, 5,000 lb, 38 in, slow",
            typed("1020-dom", two, "wide-16", (5000.0, 38.0, Slow)),
            "fails at the weld, 102 %; bends 0.04 in",
        ),
        (
            "4130 hardened to 125 ksi, 1-3/4 x .120, 2,500 lb, 34 in, slow",
            typed("4130-qt125", slim, "wide-14", (2500.0, 34.0, Slow)),
            "passes, little margin",
        ),
        (
            "4130 hardened to 150 ksi, 1-3/4 x .120, 2,500 lb, 34 in, slow",
            typed("4130-qt150", slim, "wide-14", (2500.0, 34.0, Slow)),
            "passes",
        ),
        (
            "4130 normalized, 1-3/4 x .120, 2,500 lb, 34 in, slow",
            typed("4130-n", slim, "wide-14", (2500.0, 34.0, Slow)),
            "bends 0.001 in",
        ),
    ] {
        compare(scenario, &fate(&document), expected);
    }
}

/// The whole of the deviation at the weld is that holes and inserts are made to the next 1/8 in: at the length of the
/// thread and two pitches, where that calculation has the insert end, its numbers come out.
#[test]
fn an_insert_that_is_not_rounded_up_gives_the_printed_weld() {
    for (material, weight, length, usage, printed) in [
        ("1026-dom", 4500.0, 36.0, Hard, "105 %"),
        ("1020-dom", 5000.0, 34.0, Slow, "101 %"),
        ("1020-dom", 5000.0, 38.0, Slow, "102 %"),
        // 1020 is good to 4,900 lb at 36 in, and so it is not with the insert as it is made.
        ("1020-dom", 4900.0, 36.0, Slow, "99 %"),
    ] {
        let mut document = typed(material, (2.0, 0.25), "wide-16", (weight, length, usage));
        let rounded = answer(&document);
        for end in &mut document.links[0].ends {
            end.tapped_depth = Some(inch(2.343 + 2.0 / 12.0));
        }
        assert_eq!(percent(&answer(&document), "tapped-end"), printed, "{material}, {weight} lb, {length} in");
        assert_eq!(find(&rounded, "tapped-end").verdict, Verdict::Fails);
    }
}

/// A set too small to print is not told as none.
#[test]
fn a_tiny_set_is_told_as_less_than_the_least_that_prints() {
    for (length, weight, told) in
        [(36.0, 4500.0, "a permanent set of less than 0.001 in"), (38.0, 5000.0, "a permanent set of 0.002 in")]
    {
        let answer = answer(&typed("1026-dom", (2.0, 0.25), "wide-16", (weight, length, Slow)));
        let says = spoken(&find(&answer, "bar-bending").says, System::Inch);
        assert!(says.contains(told), "{says}");
    }
}

/// Beside its weld a hardened tube counts as normalized, unless the finished link is heat-treated.
#[test]
fn a_tube_hardened_after_welding_keeps_its_strength_to_the_ends() {
    let mut document = typed("4130-qt125", (1.75, 0.12), "wide-14", (3000.0, 34.0, Slow));
    let weld = |document: &Document| find(&answer(document), "tapped-end").utilization.expect("a number");
    let as_welded = weld(&document);
    document.links[0].hardened_after_welding = true;
    let hardened = weld(&document);
    // 50 ksi beside the weld against 100 ksi in tension and 109 in compression.
    assert!((2.0..=109.0 / 50.0).contains(&(as_welded / hardened)), "{as_welded} {hardened}");
}
