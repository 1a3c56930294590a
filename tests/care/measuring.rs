//! Three tape readings: their mean, the odd one by its number, the tape's error in turns.

use crate::dice::Dice;
use crate::links::{answer, hard, sized};
use linkwright::document::Hand;
use linkwright::engine::fitting::Standing;
use linkwright::engine::fitting::measuring::{Measured, SPREAD, TAPE_ERROR, mount_to_mount};
use linkwright::engine::sentence::spoken;
use linkwright::quantity::{System, inch};
use linkwright::report::LinkGeometry;

fn link() -> LinkGeometry {
    answer(&sized(2.0, "wide-12", "wide-12")).link
}

fn measured(inches: [Option<f64>; 3]) -> Measured {
    mount_to_mount(inches.map(|reading| reading.map(inch)), &link())
}

fn words(measured: &Measured) -> String {
    spoken(&measured.says, System::Inch)
}

/// Readings in inches, the number of the odd one, the mean, the standing.
type Case = ([f64; 3], Option<usize>, Option<f64>, Standing);
const CASES: [Case; 10] = [
    ([38.0, 38.0, 38.0], None, Some(38.0), Standing::Good),
    ([38.0, 38.0625, 38.125], None, Some(38.0625), Standing::Good),
    ([38.0, 38.0625, 38.5], Some(2), Some(38.03125), Standing::NotJudged),
    ([37.0, 38.0, 38.0625], Some(0), Some(38.03125), Standing::NotJudged),
    ([38.0, 40.0, 38.125], Some(1), Some(38.0625), Standing::NotJudged),
    // Each lies within an eighth of the next: none is odd.
    ([38.0, 38.1, 38.2], None, None, Standing::NotJudged),
    ([38.0, 38.1, 38.21], None, None, Standing::NotJudged),
    // No two agree.
    ([38.0, 38.5, 39.0], None, None, Standing::NotJudged),
    ([38.0, 39.0, 38.5], None, None, Standing::NotJudged),
    ([38.0, -38.0, 38.0], None, None, Standing::NotJudged),
];

#[test]
fn the_odd_one_is_named_by_its_number() {
    for (readings, odd, mean, standing) in CASES {
        let found = measured(readings.map(Some));
        assert_eq!((found.odd, found.standing), (odd, standing), "{readings:?}: {}", words(&found));
        match (found.mean, mean) {
            (Some(found), Some(mean)) => assert!((found - inch(mean)).abs() < 1e-9, "{readings:?}"),
            (found, mean) => assert_eq!(found.is_some(), mean.is_some(), "{readings:?}"),
        }
        if let Some(odd) = odd {
            let number = format!("Reading {} is the odd one", odd + 1);
            assert!(words(&found).contains(&number) && words(&found).contains("again"), "{}", words(&found));
        }
    }
}

#[test]
fn a_missing_reading_is_named_and_nothing_is_good_without_it() {
    for (readings, missing) in [
        ([None, None, None], "Take three readings"),
        ([Some(38.0), None, None], "readings 2 and 3"),
        ([None, Some(38.0), None], "readings 1 and 3"),
        ([Some(38.0), None, Some(38.0)], "reading 2"),
        ([None, Some(38.0), Some(39.0)], "reading 1"),
    ] {
        let found = measured(readings);
        assert_eq!(found.standing, Standing::NotJudged);
        assert!(words(&found).contains(missing), "{}", words(&found));
        assert!(found.beside_build.is_none_or(|it| it.standing != Standing::Good), "{readings:?}");
    }
}

#[test]
fn the_error_of_the_tape_is_turns_of_the_bar() {
    // 3/4-16 at both ends, opposite hands: 1/8 in a turn (trade table), so 1/16 in is half a turn.
    let found = measured([Some(38.0); 3]);
    assert!((found.turns.expect("turns") - 0.5).abs() < 1e-12 && !found.working.is_empty());
    let mut document = sized(2.0, "wide-12", "wide-12");
    document.links[0].ends =
        document.links[0].ends.clone().map(|end| linkwright::document::End { hand: Some(Hand::Right), ..end });
    let same = mount_to_mount([Some(inch(38.0)); 3], &answer(&document).link);
    assert_eq!(same.turns, None, "turning the bar does not change its length");
}

#[test]
fn what_no_adjustment_reaches_is_a_stop() {
    let link = answer(&hard()).link;
    let [out, inward] = [link.adjustment.reach.out_good, link.adjustment.reach.in_good];
    let at = |difference: f64| {
        let measured = mount_to_mount([Some(link.length + difference); 3], &link);
        let beside = measured.beside_build.expect("three readings");
        (beside.standing, spoken(&beside.says, System::Inch))
    };
    assert_eq!(at(0.0).0, Standing::Good);
    assert_eq!(at(TAPE_ERROR).0, Standing::Good);
    let (standing, says) = at(out.max(TAPE_ERROR) + inch(0.1));
    assert!(standing == Standing::Stop && says.contains("too short") && says.contains("do not wind it out"), "{says}");
    let (standing, says) = at(-inward.max(TAPE_ERROR) - inch(0.1));
    assert!(standing == Standing::Stop && says.contains("too long"), "{says}");
}

/// Whatever is read: good only with three readings within the spread, and a mean lies between the readings.
#[test]
fn good_means_three_readings_that_agree() {
    let (mut dice, link) = (Dice(3), link());
    for _ in 0..2_000 {
        let readings: [Option<f64>; 3] =
            std::array::from_fn(|_| (dice.next(5) > 0).then(|| inch(38.0 + dice.next(64) as f64 / 128.0)));
        let found = mount_to_mount(readings, &link);
        let there: Vec<f64> = readings.iter().flatten().copied().collect();
        let [least, most] = [f64::min, f64::max].map(|pick| there.iter().copied().reduce(pick).unwrap_or(0.0));
        let agree = there.len() == 3 && most - least <= SPREAD + 1e-12;
        assert_eq!(found.standing == Standing::Good, agree, "{readings:?}");
        assert!(found.mean.is_none_or(|mean| (least - 1e-12..=most + 1e-12).contains(&mean)), "{readings:?}");
        if let Some(odd) = found.odd {
            let others: Vec<f64> = (0..3).filter(|at| *at != odd).filter_map(|at| readings[at]).collect();
            let off = |value: f64| others.iter().map(|other| (other - value).abs()).fold(f64::INFINITY, f64::min);
            assert!((others[0] - others[1]).abs() <= SPREAD + 1e-12 && off(readings[odd].expect("read")) > SPREAD);
        }
    }
}
