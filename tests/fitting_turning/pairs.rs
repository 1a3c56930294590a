//! Bars that are turned together: each by its own readings, none by itself, all into the log; and what could do it instead.

use crate::moves::{Solved, level};
use crate::page::{ask_with, asked, made, whole_rig};
use crate::rig::{document, link, read, with_hands, words};
use linkwright::document::{Document, Hand, Position, Role};
use linkwright::engine::fitting::Standing;
use linkwright::engine::fitting::as_fitted::Readings;
use linkwright::engine::fitting::moves::{Slopes, Through, Wanted, move_by};
use linkwright::engine::fitting::turn::{Place, Turned, Wish, hold_back, turn, turn_bars};
use linkwright::log::{Entry, EntryKind, Log, Noted, Reading, Spot, bars};
use linkwright::present::fit::log::TURNED_BY;
use linkwright::present::fit::safe::ROWS;
use linkwright::present::fit::turn::{Ask, Asked, Known, TurnAnswer, answer};
use linkwright::quantity::{System, deg, inch};
use linkwright::report::Verdict;

const PAIR: Place = Place { role: Role::Lower, pair: true };

/// Each bar by its own readings: its own turns to one length, its own ends afterwards, its own stops.
#[test]
fn each_bar_of_a_pair_goes_by_its_own_readings() {
    let link = link(&document());
    let (left, right) = (read(&link, [1.5, 1.5]), read(&link, [2.0, 1.0]));
    for wish in [Wish::Length(link.length + inch(0.1)), Wish::Longer(inch(0.1)), Wish::Longer(inch(-0.5))] {
        let both = turn_bars(&link, &[left, right], wish, PAIR);
        assert_eq!(both, [turn(&link, &left, wish, PAIR), turn(&link, &right, wish, PAIR)], "{wish:?}");
        assert!((both[1].ends[0].visible_threads - both[0].ends[0].visible_threads - 0.5).abs() < 1e-6);
    }
    // A bar that is a turn longer already needs a turn less to the same length.
    let longer = read(&link, [2.5, 2.5]);
    let both = turn_bars(&link, &[left, longer], Wish::Length(left.eye_to_eye.expect("read") + inch(0.25)), PAIR);
    let flats = both.iter().map(|one| one.way.expect("a turn").how_far()).collect::<Vec<_>>();
    assert_eq!(flats, ["1 turn and 3 flats", "3 flats"]);
}

/// A bar that nobody read goes along by as much; what shows there is not told, and nothing is judged.
#[test]
fn a_bar_that_nobody_read_goes_along_and_is_not_judged() {
    for hands in [[Hand::Right, Hand::Left], [Hand::Right, Hand::Right]] {
        let link = link(&with_hands(hands));
        let read = read(&link, [2.0, 2.0]);
        // Only its nuts were checked: that tells no setting.
        let nuts = Readings { nut_tight: [Some(true); 2], ..Readings::default() };
        for wish in [Wish::Longer(inch(0.08)), Wish::Length(read.eye_to_eye.expect("read") - inch(0.1))] {
            let [first, other] = turn_bars(&link, &[read, nuts], wish, PAIR).try_into().expect("two bars");
            assert_eq!((first.way, first.change), (other.way, other.change), "by as much");
            assert!(other.alike && !first.alike && first.standing == Standing::Good);
            assert_eq!(other.standing, Standing::NotJudged);
            assert!(words(&other.open[0]).starts_with("Nothing was read on this bar"));
            assert!(other.steps.is_empty() && other.working.is_empty());
        }
    }
}

/// The stop of one bar is not told of another that nobody read.
#[test]
fn a_refusal_is_told_of_the_bar_that_was_read() {
    let link = link(&document());
    let mut both = turn_bars(&link, &[read(&link, [2.9, 2.9]), Readings::default()], Wish::Longer(inch(0.2)), PAIR);
    hold_back(&mut both);
    assert!(both.iter().all(Turned::is_refused));
    let whys: Vec<String> = both.iter().filter_map(|one| one.instead.as_ref()).map(|why| words(why)).collect();
    assert!(whys[0].contains("would be wound out beyond its stop"), "{whys:?}");
    assert!(whys[1].starts_with("Do not turn this one by itself"), "{whys:?}");
}

/// Where one bar cannot take it none is told to turn.
#[test]
fn no_bar_is_turned_where_the_other_cannot() {
    let link = link(&document());
    for readings in [[[1.5, 1.5], [2.9, 2.9]], [[2.9, 2.9], [1.5, 1.5]]] {
        let mut both = turn_bars(&link, &readings.map(|shows| read(&link, shows)), Wish::Longer(inch(0.2)), PAIR);
        assert_eq!(both.iter().filter(|one| one.is_refused()).count(), 1);
        hold_back(&mut both);
        for one in &both {
            assert!(one.is_refused() && one.steps.is_empty() && one.instead.is_some() && one.change == 0.0);
        }
        let whys: Vec<String> = both.iter().filter_map(|one| one.instead.as_ref()).map(|why| words(why)).collect();
        assert!(whys.iter().any(|why| why.contains("Do not turn this one by itself")), "{whys:?}");
        assert!(whys.iter().any(|why| why.contains("order one of")), "{whys:?}");
    }
    let fine = turn_bars(&link, &[read(&link, [1.5; 2]), read(&link, [1.0; 2])], Wish::Longer(inch(0.1)), PAIR);
    let mut held = fine.clone();
    hold_back(&mut held);
    assert_eq!(fine, held);
}

#[test]
fn the_page_names_both_bars_and_writes_an_entry_for_each() {
    let rig = document();
    let told = ask_with(&rig, 0, &asked(Ask::Longer, inch(1.0 / 12.0)), &|spot| {
        if spot.id().contains("left") { [1.5, 1.5] } else { [1.0, 2.0] }
    });
    let titles: Vec<&str> = told.links.iter().map(|link| link.title.as_str()).collect();
    let of_build = bars(&rig, 0);
    assert_eq!(titles, [of_build[0].1.as_str(), of_build[1].1.as_str()]);
    assert!(told.links[0].after[0].starts_with("End A: 2 threads show"), "{:?}", told.links[0].after);
    assert!(told.links[1].after[0].starts_with("End A: 1-1/2 threads show"), "{:?}", told.links[1].after);
    assert!(told.links.iter().all(|link| link.can_be_logged() && link.mark == Verdict::Passes));

    // As the page writes them.
    let (mut log, now) = (Log::default(), "2026-12-01T08:00:00Z");
    for (spot, _) in &of_build {
        log.note(spot, "threads-a", Some(Reading::Number(1.5)), "2026-12-01T07:00:00Z");
        log.note(spot, "hit-bow", Some(Reading::Number(0.0)), "2026-12-01T07:00:00Z");
    }
    let entry = |(number, link): (usize, &linkwright::present::fit::turn::LinkTurn)| Entry {
        id: format!("entry-{number}"),
        spot: link.spot.clone().expect("a bar"),
        at: now.to_string(),
        kind: EntryKind::Turned,
        code: String::new(),
        readings: [(TURNED_BY, Reading::Number(link.change))].into(),
        words: link.log.clone(),
        withdrawn: Noted::default(),
    };
    log.record_turns(told.links.iter().enumerate().map(entry).collect(), &ROWS, now);
    for (spot, _) in &of_build {
        let entries: Vec<&Entry> = log.of_bar(spot).collect();
        assert_eq!(entries.len(), 1, "one each");
        assert!(entries[0].words.contains("longer"), "{}", entries[0].words);
        assert_eq!(log.reading(spot, "threads-a"), None, "what was read before the turn is not true after it");
        assert!(log.reading(spot, "hit-bow").is_some(), "the rest stays");
    }
}

/// The bar that is looked at stands first, and one without readings says so on the page.
#[test]
fn the_bar_that_is_looked_at_stands_first() {
    let rig = document();
    let of_build = bars(&rig, 0);
    let right = &of_build[1].0;
    let made = |of: usize| made(&rig, of);
    let readings = |spot: &Spot| if spot == right { read(&link(&rig), [1.5, 1.5]) } else { Readings::default() };
    let known = Known { answers: &made, readings: &readings, hit: &|_| false, chosen: Some(right) };
    let told = answer(&rig, 0, &asked(Ask::Longer, inch(0.1)), known, System::Inch);
    assert_eq!(told.links[0].spot.as_ref(), Some(right));
    let other = &told.links[1];
    assert!(other.after.is_empty() && other.open[0].starts_with("Nothing was read on this bar"));
    assert_eq!(other.gives.as_deref(), Some("0.111 in longer."));
    assert_eq!((told.links[0].mark, other.mark), (Verdict::Passes, Verdict::Unanswered));
    assert!(other.can_be_logged());
}

/// An axle with lowers and uppers whose bars show so many threads, and what an answer about it says.
fn axle(wanted: f64, through: Through, ask: Ask, shows: [f64; 2]) -> TurnAnswer {
    let rig = whole_rig();
    let asked = Asked { through, ..asked(ask, wanted) };
    let threads = |spot: &Spot| if spot.id().contains("upper") { [shows[1]; 2] } else { [shows[0]; 2] };
    ask_with(&rig, 0, &asked, &threads)
}

/// The pair that was picked is at its stop: the others are named with how much each, as the engine works it out.
#[test]
fn what_could_do_it_is_named_with_how_much() {
    let told = axle(deg(1.0), Through::Uppers, Ask::Pinion, [1.0, 2.9]);
    assert!(told.links.iter().all(|link| link.large.is_none() && link.mark == Verdict::Fails));
    let could = told.could.join("\n");
    // Longer uppers cannot; shorter lowers can.
    let lowers = move_by(&whole_rig(), 0, Wanted::PinionUp(deg(1.0)), Through::Lowers, Slopes::default());
    let by = linkwright::quantity::fit(lowers.changes[0].change.abs(), System::Inch);
    assert!(could.contains("With the lowers it can be done"), "{could}");
    assert!(could.contains(&format!("front lower links each {by} shorter")), "{could}");
    assert!(!could.contains("With both") && !could.contains("order bars"), "the uppers are at their stop: {could}");
    // What was named is what is told once it is picked.
    let then = axle(deg(1.0), Through::Lowers, Ask::Pinion, [1.0, 2.9]);
    assert!(then.could.is_empty() && then.links.iter().all(|link| link.large.is_some()), "{:?}", then.could);
}

/// Too much for either pair, and within reach of both opposite ways.
#[test]
fn both_opposite_ways_are_named_where_they_reach() {
    let told = axle(deg(1.0), Through::Uppers, Ask::Pinion, [0.5, 2.1]);
    let could = told.could.join("\n");
    let both = axle(deg(1.0), Through::Both, Ask::Pinion, [0.5, 2.1]);
    assert!(both.links.iter().all(|link| link.large.is_some()), "they reach");
    let by = |role| {
        let moved = move_by(&whole_rig(), 0, Wanted::PinionUp(deg(1.0)), Through::Both, Slopes::default());
        let change = moved.changes.iter().find(|change| change.role == role).expect("a change").change;
        linkwright::quantity::fit(change.abs(), System::Inch)
    };
    let says = format!(
        "With both, opposite ways it can be done: front upper links each {} longer, front lower links each {} shorter.",
        by(Role::Upper),
        by(Role::Lower)
    );
    assert!(could.contains(&says) && !could.contains("With the lowers"), "{could}");
}

/// Where nothing can, it says so, says how far these bars go, and which to order; a shift of the axle has no other way.
#[test]
fn where_nothing_can_the_length_to_order_is_named() {
    for (ask, wanted) in [(Ask::Pinion, deg(12.0)), (Ask::Caster, deg(12.0)), (Ask::Forward, inch(2.0))] {
        let told = axle(wanted, Through::Uppers, ask, [1.5, 1.5]);
        let could = told.could.join("\n");
        let first = if ask == Ask::Forward { "No other link does this" } else { "Neither the uppers, nor the lowers" };
        assert!(could.starts_with(first), "{could}");
        assert!(could.contains("The most of it that these bars take is "), "{could}");
        assert!(could.contains("links: order bars of ") && could.contains(" eye to eye."), "{could}");
        assert!(told.links.iter().all(|link| link.large.is_none()), "none by itself");
    }
}

/// The most of it is taken, and a step more is not.
#[test]
fn the_most_of_it_is_the_last_step_that_is_taken() {
    let told = axle(inch(2.0), Through::Uppers, Ask::Forward, [1.5, 1.5]);
    let most = told.could.iter().find(|words| words.starts_with("The most of it")).expect("a line");
    let sixteenths = (1..32).take_while(|count| {
        axle(inch(f64::from(*count) / 16.0), Through::Uppers, Ask::Forward, [1.5, 1.5]).could.is_empty()
    });
    let last = inch(sixteenths.last().map_or(0.0, f64::from) / 16.0);
    assert_eq!(
        *most,
        format!("The most of it that these bars take is {}.", linkwright::quantity::fit(last, System::Inch))
    );
}

/// What is named brings the axle where it is wanted, by the solver that knows nothing of the engine's formulas.
#[test]
fn the_other_ways_bring_the_axle_there() {
    for (number, through) in [Through::Uppers, Through::Lowers, Through::Both].into_iter().enumerate() {
        let rig = level(Position::Rear, 8.0 + number as f64);
        let tilt = deg(1.5);
        let document: Document = rig.document();
        // Every way is asked of bars that take nothing, so that all others are named.
        let wish = linkwright::engine::fitting::moves::Move {
            document: &document,
            index: 0,
            wanted: Wanted::PinionUp(tilt),
            through,
            slopes: rig.slopes(),
        };
        let geometry = link(&crate::rig::document());
        let takes = |_: usize, _: f64| -> Vec<Turned> {
            vec![turn(&geometry, &read(&geometry, [1.5; 2]), Wish::Longer(inch(0.05)), PAIR)]
        };
        let could = wish.could(&takes);
        assert_eq!(could.len(), 2);
        for could in could {
            assert!(could.through != through && could.known && could.judged);
            let of = |role| could.changes.iter().find(|one| one.role == role).map_or(0.0, |one| one.change);
            let Solved { tilt: solved, .. } = rig.solved(of(Role::Lower), of(Role::Upper));
            assert!((solved - tilt).abs() < 1e-8, "{:?}: {solved}", could.through);
        }
    }
}
