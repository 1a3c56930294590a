//! Where nothing passes: what is fitted all the same, what it is good to, what yields first, what helps.

use linkwright::document::{Document, Role, Use};
use linkwright::engine::report;
use linkwright::engine::sentence::spoken;
use linkwright::quantity::{System, inch, lbf};
use linkwright::report::{Answer, Verdict};

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

/// A rig too heavy for any stock size: what is fitted, what it is good to, what yields first, what helps.
#[test]
fn where_nothing_passes_what_is_fitted_is_told() {
    let mut document = link(Role::Lower, "7075-t6", Use::Punished, 9000.0, 42.0);
    let heavy = answer(&document);
    assert_eq!(heavy.sizing.recommended, None);
    assert_eq!(heavy.verdict, Verdict::Fails);
    let fitted = heavy.sizing.fitted.clone().expect("something is fitted");
    let habit = fitted.habit.clone().expect("a habit");
    assert_eq!((fitted.candidate.size(), fitted.candidate.thread), (habit.least, habit.thread));
    assert!((heavy.link.outside_diameter - inch(2.5)).abs() < 1e-9, "what is fitted is what the page answers for");
    assert!(fitted.candidate.utilization > 1.0 && !fitted.candidate.feasible);
    assert_eq!(fitted.yields_first, fitted.candidate.decides);
    // Good to just that weight: a hair under it every check passes, a hair over it one fails.
    let good_to = fitted.good_to.expect("a weight");
    assert!(good_to < lbf(9000.0) && good_to > lbf(1000.0), "{good_to}");
    document.links[0].outside_diameter = Some(inch(2.5));
    document.links[0].ends.iter_mut().for_each(|end| end.rod_end = Some("wide-16"));
    for (share, fails) in [(1.0 - 1e-6, false), (1.0 + 1e-6, true)] {
        document.rig.weight = Some(good_to * share);
        assert_eq!(answer(&document).verdict == Verdict::Fails, fails, "{share} of {good_to}");
    }
    let says = governs(&heavy);
    for words in ["No stock size passes every check", "2-1/2 in with 1-1/4-12 rod ends", "What yields first", "lb used"]
    {
        assert!(says.contains(words), "{words}: {says}");
    }
    let cures: Vec<String> = fitted.cures.iter().map(|cure| spoken(cure, System::Inch)).collect();
    // The bar and the shank are both over: each cure is for both.
    assert_eq!(cures, ["a larger bar and a larger rod end than this series has", "gentler use or a lighter rig"]);
    assert!(says.contains(&cures.join("; ")), "{says}");
}

/// A cure stands only where it cures: a shorter link or a stiffer metal does nothing for a shank.
#[test]
fn cures_follow_what_governs() {
    let cures = |document: &Document| {
        let answer = answer(document);
        let fitted = answer.sizing.fitted.clone().expect("nothing passes");
        let words: Vec<String> = fitted.cures.iter().map(|cure| spoken(cure, System::Inch)).collect();
        (fitted.yields_first, words)
    };
    // A thin shank in a thick bar.
    let mut shank = link(Role::Lower, "7075-t6", Use::Punished, 6000.0, 30.0);
    shank.links[0].ends.iter_mut().for_each(|end| end.rod_end = Some("wide-10"));
    let (part, words) = cures(&shank);
    assert_eq!(part, "rod-end shank at the jam nut");
    assert_eq!(words[0], "a larger rod end");
    assert!(words.iter().all(|words| !words.contains("shorter link") && !words.contains("metal")), "{words:?}");
    assert!(!words.iter().any(|words| words.contains("alloy")), "already of alloy: {words:?}");
    shank.links[0].shank_yield = Some(57.0 * 6.894_757e6);
    assert!(cures(&shank).1.iter().any(|words| words.contains("heat-treated alloy")), "not known to be alloy");
    // The largest of its series.
    shank.links[0].ends.iter_mut().for_each(|end| end.rod_end = Some("narrow-16"));
    assert_eq!(cures(&shank).1[0], "a larger rod end");
    shank.links[0].ends.iter_mut().for_each(|end| end.rod_end = Some("wide-16"));
    assert_eq!(cures(&shank).1[0], "a larger rod end than this series has");
    // A column: long, under a great push, nothing else asked.
    let mut column = link(Role::DragLink, "7075-t6", Use::Slow, 4000.0, 96.0);
    column.rig.box_force = Some(lbf(26_500.0));
    column.links[0].ear = Some(inch(0.5));
    column.links[0].ends.iter_mut().for_each(|end| end.rod_end = Some("wide-16"));
    let (part, words) = cures(&column);
    assert!(part.starts_with("whole link"), "{part}");
    assert_eq!(words[..2], ["a larger bar, or steel", "a shorter link"]);
}

/// Hardened tube is stocked with thicker walls than any strength is held for: that is the reason, and no larger tube cures
/// it.
#[test]
fn where_strengths_end_that_is_the_reason() {
    let cures = |answer: &Answer| {
        let fitted = answer.sizing.fitted.clone().expect("nothing passes");
        spoken(fitted.cures.first().expect("a cure"), System::Inch)
    };
    for (metal, ends) in [("4130-qt125", "over 3/16 in wall"), ("4340-qt150", "over 1.700 in diameter")] {
        let heavy = answer(&link(Role::Lower, metal, Use::Hard, 4300.0, 36.0));
        let says = governs(&heavy);
        assert!(says.contains("no published strength is held for") && says.contains(ends), "{metal}: {says}");
        assert!(cures(&heavy).starts_with("another metal"), "{metal}: {}", cures(&heavy));
    }
    // As near to the habit as passes, not the smallest that passes.
    let track_bar = answer(&link(Role::TrackBar, "4130-qt125", Use::Hard, 6000.0, 34.0));
    let found = track_bar.sizing.recommended.clone().expect("a size");
    assert_eq!((found.outside_diameter, found.wall, found.thread), (inch(2.0), inch(0.188), "1-1/4-12"));
    assert!(governs(&track_bar).contains("over 3/16 in wall. Recommended is what comes nearest"));
}

/// The habit bends, a larger tube in stock does not: that one is shown, with its condition.
#[test]
fn what_comes_out_better_than_the_habit_is_shown_instead() {
    let heavy = answer(&link(Role::Lower, "1026-dom", Use::Hard, 6000.0, 36.0));
    let fitted = heavy.sizing.fitted.clone().expect("nothing passes");
    assert_eq!((fitted.candidate.outside_diameter, fitted.candidate.wall), (inch(2.5), inch(0.375)));
    assert_eq!((heavy.verdict, heavy.conditions.len()), (Verdict::Close, 1));
    let says = governs(&heavy);
    assert!(
        says.starts_with("No stock size passes every check without a condition. Builders usually fit 2-1/4"),
        "{says}"
    );
    assert!(says.contains("the nearest to passing here is 2-1/2 in by 3/8 in wall"), "{says}");
}

/// The next size up of a link whose shank decides is a larger rod end, not a larger bar.
#[test]
fn the_next_size_up_is_larger_where_it_counts() {
    let next = |document: &Document| answer(document).sizing.next_up.expect("a next size");
    let shank = next(&link(Role::Lower, "7075-t6", Use::Slow, 2200.0, 36.0));
    assert_eq!((shank.outside_diameter, shank.thread), (inch(1.75), "7/8-14"));
    let bar = next(&link(Role::Lower, "7075-t6", Use::Slow, 4300.0, 36.0));
    assert_eq!((bar.outside_diameter, bar.thread), (inch(2.25), "1-1/4-12"));
    // 2 by 3/8 in does not take the rod end: the next that does.
    let tube = next(&link(Role::Lower, "1020-dom", Use::Slow, 4300.0, 36.0));
    assert_eq!((tube.outside_diameter, tube.wall), (inch(2.25), inch(0.25)));
}
