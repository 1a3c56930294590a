//! The steps of fitting: their order, their numbers, and that no missing step passes for done.

use crate::dice::Dice;
use crate::links::{answer, find, hard, sized};
use linkwright::document::{Document, Role};
use linkwright::engine::fitting::Standing;
use linkwright::engine::fitting::fitting_steps::{
    DO_NOT_FIT, JAM_NUTS_FIRST, JAM_NUTS_LAST, Step, bolt_in_its_ears, misalignment, progress, steps,
};
use linkwright::engine::report;
use linkwright::engine::sentence::spoken;
use linkwright::log::LONGEST_KEY;
use linkwright::present::checklist;
use linkwright::quantity::{System, inch, lbf};
use linkwright::report::{Answer, Verdict};
use std::collections::BTreeSet;

fn of(document: &Document) -> (Answer, Vec<Step>) {
    let answer = answer(document);
    let steps = steps(document, 0, &answer);
    (answer, steps)
}

fn on_screen(steps: &[Step]) -> Vec<Step> {
    steps.iter().filter(|step| step.is_on_screen()).cloned().collect()
}

fn role(role: Role) -> Document {
    let mut document = hard();
    (document.links[0].role, document.links[0].outside_diameter) = (role, Some(inch(2.0)));
    document.rig.weight = Some(lbf(2500.0));
    document
}

#[test]
fn the_jam_nuts_stand_first_and_last() {
    for document in [hard(), sized(2.25, "wide-16", "k-20"), role(Role::TieRod), role(Role::TrackBar)] {
        let (answer, all) = of(&document);
        if answer.verdict == Verdict::Fails {
            assert_eq!((all.len(), all[0].id), (1, DO_NOT_FIT));
            continue;
        }
        let screen = on_screen(&all);
        let ids: Vec<&str> = screen.iter().map(|step| step.id).collect();
        assert_eq!((ids[0], ids[ids.len() - 1]), (JAM_NUTS_FIRST, JAM_NUTS_LAST), "{ids:?}");
        let flagged: Vec<&str> = screen.iter().filter(|step| step.last_and_first).map(|step| step.id).collect();
        assert_eq!(flagged, [JAM_NUTS_FIRST, "jam-nut-a", "jam-nut-b", JAM_NUTS_LAST]);
        // Nothing is tightened before length, travel and clearance are right.
        let at = |id: &str| ids.iter().position(|other| *other == id).unwrap_or_else(|| panic!("{id} in {ids:?}"));
        for before in ["ride-height", "evenly", "bolt-a", "full-travel", "tire-clearance", "bolt-torque-b"] {
            assert!(at(before) < at("jam-nut-a") && at("jam-nut-a") < at("jam-nut-b"), "{ids:?}");
        }
        assert!(at("nuts-on") < at("evenly") && at("jam-nut-b") < at("witness-lines"));
        assert_eq!(ids.contains(&"lock-to-lock"), answer.role.steers());
        assert_eq!(ids.contains(&"steering-rules"), answer.role.steers());
    }
}

/// Every single step left out, and above all each jam nut.
#[test]
fn no_missing_step_passes_for_done() {
    let (_, all) = of(&hard());
    let screen = on_screen(&all);
    let done = vec![true; screen.len()];
    assert_eq!(progress(&screen, &done).standing, Standing::Good);
    for (at, step) in screen.iter().enumerate() {
        let mut ticks = done.clone();
        ticks[at] = false;
        let found = progress(&screen, &ticks);
        let says = spoken(&found.says, System::Inch);
        assert_ne!(found.standing, Standing::Good, "{}", step.id);
        match step.id {
            "jam-nut-a" => assert!(found.standing == Standing::Stop && says.contains("jam nut at A"), "{says}"),
            "jam-nut-b" => assert!(found.standing == Standing::Stop && says.contains("jam nut at B"), "{says}"),
            JAM_NUTS_LAST => assert!(found.standing == Standing::Stop && says.contains("Do not drive"), "{says}"),
            _ => assert_eq!(found.standing, Standing::NotJudged, "{}", step.id),
        }
    }
    let none = progress(&screen, &[]);
    assert_eq!(none.standing, Standing::Stop);
    assert!(spoken(&none.says, System::Inch).contains("the jam nuts at A and B are not ticked as tight"));
    assert_eq!(progress(&[], &[]).standing, Standing::NotJudged);
}

#[test]
fn a_link_that_fails_is_not_fitted() {
    let mut document = sized(0.75, "wide-08", "wide-08");
    document.rig.weight = Some(lbf(9000.0));
    let (answer, all) = of(&document);
    assert_eq!(answer.verdict, Verdict::Fails);
    assert_eq!((all.len(), all[0].id), (1, DO_NOT_FIT));
    assert_eq!(progress(&all, &[true]).standing, Standing::Stop, "not even when it is ticked");
}

#[test]
fn a_thread_in_the_ear_is_a_stop() {
    // Ball 7/8 in, ears 1/4 in each, nothing else: 1-3/8 in of grip.
    let document = sized(2.0, "wide-12", "wide-12");
    let answer = answer(&document);
    let judged = |plain: Option<f64>, washers: f64| {
        let found = bolt_in_its_ears(&document, 0, &answer, 0, plain.map(inch), Some(inch(washers))).expect("an end");
        assert!((found.grip - inch(1.375)).abs() < 1e-9);
        (found.standing, spoken(&found.says, System::Inch))
    };
    for (plain, washers, standing, words) in [
        (Some(1.25), 0.125, Standing::Stop, "Thread in the ear"),
        (Some(1.37), 0.125, Standing::Stop, "Thread in the ear"),
        (Some(0.0), 0.125, Standing::Stop, "Thread in the ear"),
        (Some(1.375), 0.0, Standing::Good, "nut clamps"),
        (Some(1.45), 0.125, Standing::Good, "nut clamps"),
        (Some(1.75), 0.125, Standing::Stop, "washers"),
        (None, 0.125, Standing::NotJudged, "measure the bolt"),
        (Some(f64::NAN), 0.125, Standing::NotJudged, "measure the bolt"),
        (Some(-1.0), 0.125, Standing::NotJudged, "measure the bolt"),
    ] {
        let (found, says) = judged(plain, washers);
        assert!(found == standing && says.contains(words), "{plain:?}: {says}");
    }
}

#[test]
fn the_ball_is_told_what_it_is_asked_for() {
    let (answer, all) = of(&hard());
    let (asked, may) = misalignment(&answer).expect("a lower link is twisted");
    // 5 in of travel over 65 in of track: 8.85° of roll, half of it for each ball.
    assert_eq!(find(&answer, "misalignment").utilization, Some(asked / may));
    assert!((asked.to_degrees() - 4.425).abs() < 0.01 && may > 0.0);
    let full = all.iter().find(|step| step.id == "full-travel").expect("a step");
    assert!(spoken(&full.words, System::Inch).contains("4.42°"), "{}", spoken(&full.words, System::Inch));
    assert_eq!(misalignment(&crate::links::answer(&role(Role::TrackBar))), None);
}

/// Keys hold every number, are kept whole, and differ from step to step.
#[test]
fn a_changed_number_clears_its_tick() {
    let mut dice = Dice(11);
    for _ in 0..60 {
        let mut document = dice.rig();
        document.rig.weight = Some(lbf(2000.0 + 100.0 * dice.next(30) as f64));
        document.rig.usage = Some(linkwright::document::Use::Slow);
        document.links.truncate(2);
        document.links.iter_mut().for_each(|link| link.length = Some(inch(30.0)));
        for (index, report) in report(&document).links.iter().enumerate() {
            let Some(answer) = report.answer() else { continue };
            let all = steps(&document, index, answer);
            let keys: Vec<String> = all.iter().map(checklist::key).collect();
            let whole: BTreeSet<&String> = keys.iter().collect();
            assert_eq!(whole.len(), keys.len(), "{keys:?}");
            for key in &keys {
                assert!(key.chars().count() <= LONGEST_KEY, "{key}");
                assert_eq!(&linkwright::document::one_line(key, LONGEST_KEY), key);
            }
        }
    }
    let key = |document: &Document, id: &str| {
        let (_, all) = of(document);
        checklist::key(all.iter().find(|step| step.id == id).expect("a step"))
    };
    let (mut small, mut large) = (sized(2.0, "wide-12", "wide-12"), sized(2.25, "wide-16", "wide-16"));
    (small.rig.weight, large.rig.weight) = (Some(lbf(1500.0)), Some(lbf(1500.0)));
    (small.rig.usage, large.rig.usage) = (Some(linkwright::document::Use::Easy), Some(linkwright::document::Use::Easy));
    assert_ne!(key(&small, "jam-nut-a"), key(&large, "jam-nut-a"));
    assert_eq!(key(&small, "witness-lines"), key(&large, "witness-lines"));
}

#[test]
fn the_sheet_has_its_own_short_list() {
    let (answer, all) = of(&hard());
    let paper: Vec<&Step> = all.iter().filter(|step| step.is_on_paper()).collect();
    assert!(paper.len() <= 14 && paper[0].id == JAM_NUTS_FIRST, "{}", paper.len());
    let printed = checklist::steps(&hard(), 0, &answer, System::Inch);
    assert_eq!(printed.len(), paper.len());
}

/// Every limit and torque of the list says where it comes from, on the step itself.
#[test]
fn limits_and_torques_name_their_source() {
    for document in [hard(), sized(2.25, "wide-16", "k-20"), role(Role::TrackBar)] {
        let (answer, all) = of(&document);
        if answer.verdict == Verdict::Fails {
            continue;
        }
        for id in ["threads-showing", "bolt-a", "bolt-b", "full-travel", "tire-clearance", "jam-nut-a", "jam-nut-b"] {
            let step = all.iter().find(|step| step.id == id).expect("a step");
            let why = spoken(step.why.as_ref().unwrap_or_else(|| panic!("{id} lacks its source")), System::Inch);
            let named = ["no source", "AC 43.13", "assumption", "Checks and sources"];
            assert!(named.iter().any(|name| why.contains(name)), "{id}: {why}");
        }
        for id in ["bolt-torque-a", "bolt-torque-b"] {
            let step = all.iter().find(|step| step.id == id).expect("a step");
            let words = spoken(&step.words, System::Inch);
            assert!(step.why.is_some() || words.contains("none is published here"), "{words}");
        }
    }
}
