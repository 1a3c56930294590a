//! Turns: what the engine tells to turn, done to the link in three dimensions; stops; what it refuses.

use crate::rig::{document, link, of_a_series, read, with_hands, words};
use crate::screw::{Helix, Link, What, clockwise};
use linkwright::document::{Document, Hand, Role};
use linkwright::engine::fitting::Standing;
use linkwright::engine::fitting::as_fitted::Readings;
use linkwright::engine::fitting::hands::{Turning, nut_loosens, nut_tightens};
use linkwright::engine::fitting::turn::{Place, Turned, Way, Wish, turn};
use linkwright::quantity::{inch, threads_per_inch};
use linkwright::report::LinkGeometry;

const PAIR: Place = Place { role: Role::Lower, pair: true };
const ALONE: Place = Place { role: Role::TieRod, pair: false };

const HANDS: [[Hand; 2]; 4] =
    [[Hand::Right, Hand::Left], [Hand::Left, Hand::Right], [Hand::Right, Hand::Right], [Hand::Left, Hand::Left]];

fn with_threads(hands: [Hand; 2], threads: [&'static str; 2]) -> Document {
    let mut document = with_hands(hands);
    document.links[0].ends.iter_mut().zip(threads).for_each(|(end, thread)| end.own_thread = Some(thread));
    document
}

/// What was told, done to the model: how much longer it is and how far each end came out.
fn done(link: &LinkGeometry, way: Way) -> (f64, [f64; 2]) {
    let threads = link.ends.each_ref().map(|end| Helix { hand: end.hand, pitch: end.thread.pitch });
    let mut model = Link::new(threads);
    let mut go = |what, turns, turning, from| {
        let angle = clockwise(turns, from);
        model.turn(what, if turning == Turning::Clockwise { angle } else { -angle });
    };
    if let Way::Bar(bar) = way {
        go(What::Bar, f64::from(bar.flats) / 6.0, bar.turning, 0);
    }
    for eye in way.eyes() {
        go(What::Eye(eye.end), f64::from(eye.half_turns) / 2.0, eye.turning, eye.end);
    }
    (model.longer(), model.out())
}

#[test]
fn what_is_told_does_what_is_said_in_three_dimensions() {
    let threads = [["1-1/4-12", "1-1/4-12"], ["1-1/4-12", "1-14"], ["1-14", "1-1/4-12"], ["3/4-16", "7/8-14"]];
    let mut told = 0;
    for hands in HANDS {
        for threads in threads {
            let link = link(&with_threads(hands, threads));
            let now = read(&link, [1.5, 1.5]);
            for change in [0.1, 0.06, -0.06, -0.1] {
                let turned = turn(&link, &now, Wish::Longer(inch(change)), PAIR);
                let Some(way) = turned.way else {
                    assert!(turned.instead.is_some());
                    continue;
                };
                told += 1;
                let (longer, out) = done(&link, way);
                assert!((longer - turned.change).abs() < 1e-9, "{hands:?} {threads:?} {change}");
                assert!((longer - inch(change)).abs() <= step(&link, way) / 2.0 + 1e-9, "the nearest step");
                for (end, out) in out.into_iter().enumerate() {
                    let shows = 1.5 + out / link.ends[end].thread.pitch;
                    assert!((turned.ends[end].visible_threads - shows).abs() < 1e-6);
                    let engaged = link.ends[end].not_full + turned.ends[end].engagement + turned.ends[end].eye_to_face;
                    assert!((engaged - link.ends[end].eye_to_end).abs() < 1e-9);
                }
                let length = now.eye_to_eye.expect("read") + longer;
                assert!((turned.length - length).abs() < 1e-9);
                assert_eq!(hands[0] == hands[1], !way.eyes().is_empty(), "like hands are set by their eyes");
                if let Way::Bar(bar) = way {
                    let tape = turned.tape_turns.expect("a bar");
                    assert!((tape - inch(1.0 / 16.0) / bar.per_turn).abs() < 1e-9);
                }
            }
        }
    }
    assert!(told > 40, "{told}");
}

fn step(link: &LinkGeometry, way: Way) -> f64 {
    match way {
        Way::Bar(bar) => bar.per_turn / 6.0,
        Way::Eye(eye) => link.ends[eye.end].thread.pitch / 2.0,
        Way::Eyes(_) => link.ends[0].thread.pitch.min(link.ends[1].thread.pitch) / 2.0,
    }
}

/// 1-1/4-12 right and left: a sixth of 1/6 in a flat. A quarter inch is 1 turn and 3 flats.
#[test]
fn a_quarter_inch_by_hand() {
    let link = link(&document());
    let turned = turn(&link, &read(&link, [1.0, 1.0]), Wish::Longer(inch(0.25)), PAIR);
    let way = turned.way.expect("something to turn");
    assert_eq!(way.says(), "1 turn and 3 flats, clockwise, looking from the eye at end A");
    assert!((turned.change - inch(0.25)).abs() < 1e-9);
    assert_eq!(turned.standing, Standing::Good);
    let shorter = turn(&link, &read(&link, [2.0, 2.0]), Wish::Longer(inch(-0.06)), PAIR);
    assert_eq!(shorter.way.expect("a turn").says(), "2 flats, counterclockwise, looking from the eye at end A");
    let length = read(&link, [1.0, 1.0]).eye_to_eye.expect("read");
    let same = turn(&link, &read(&link, [1.0, 1.0]), Wish::Length(length + inch(0.25)), PAIR);
    assert_eq!(same.way, turned.way, "a length and a change ask the same");
}

fn steps(turned: &Turned) -> Vec<String> {
    turned.steps.iter().map(|step| words(step)).collect()
}

/// Every step that names a nut names the way of the model, from its own eye.
#[test]
fn each_nut_loosens_and_tightens_the_way_of_its_hand() {
    for hands in HANDS {
        let link = link(&with_hands(hands));
        let turned = turn(&link, &read(&link, [1.5, 1.5]), Wish::Longer(inch(0.09)), PAIR);
        let way = turned.way.expect("something to turn");
        let steps = steps(&turned).join("\n");
        for (end, hand) in hands.into_iter().enumerate() {
            let letter = ["A", "B"][end];
            if matches!(way, Way::Eye(eye) if eye.end != end) {
                assert!(steps.contains(&format!("leave the nut at {letter} tight")), "{steps}");
                continue;
            }
            let [loosens, tightens] = [nut_loosens(hand), nut_tightens(hand)].map(Turning::words);
            assert!(steps.contains(&format!("the nut at {letter} ({}) {loosens}", hand.words())), "{steps}");
            assert!(steps.contains(&format!("tighten the nut at {letter} {tightens}, seen from its eye")), "{steps}");
            let angle = clockwise(0.5, end);
            let threads = link.ends.each_ref().map(|end| Helix { hand: end.hand, pitch: end.thread.pitch });
            let mut model = Link::new(threads);
            model.turn(What::Nut(end), if nut_tightens(hand) == Turning::Clockwise { angle } else { -angle });
            assert!(model.nut_to_bar()[end] > 0.0);
        }
        for must in ["ride height", "square to its bracket", "Paint a line", "Both bars of the pair"] {
            assert!(steps.contains(must), "{must}: {steps}");
        }
    }
}

/// With ends of one hand, what a turn of the bar would do is the model's, and its stops are where an end reaches one.
#[test]
fn ends_of_one_hand_tell_what_the_bar_would_do() {
    for hand in [Hand::Right, Hand::Left] {
        for threads in [["1-1/4-12", "1-1/4-12"], ["1-1/4-12", "1-14"], ["1-14", "1-1/4-12"]] {
            let link = link(&with_threads([hand; 2], threads));
            let turned = turn(&link, &read(&link, [1.5, 1.5]), Wish::Longer(inch(0.05)), ALONE);
            let same = turned.same_hand.expect("one hand");
            let helices = link.ends.each_ref().map(|end| Helix { hand: end.hand, pitch: end.thread.pitch });
            for (turns, turning) in [(same.turns[0], 1.0), (same.turns[1], -1.0)] {
                let mut model = Link::new(helices);
                model.turn(What::Bar, clockwise(turns * turning, 0));
                let out = model.out();
                let at_stop = [0, 1].map(|end| {
                    let inserted = turned.from.inserted[end] - out[end];
                    let made = &link.ends[end];
                    let room = (inserted - made.stop.inserted).min(made.most + made.not_full - inserted);
                    assert!(room > -1e-9, "no end passes its stop");
                    room.abs() < 1e-9
                });
                assert!(at_stop[0] || at_stop[1], "one end is at its stop");
            }
            let mut model = Link::new(helices);
            model.turn(What::Bar, clockwise(1.0, 0));
            assert!((model.longer() - same.longer).abs() < 1e-9);
            assert!((model.out()[0] - same.out[0]).abs() < 1e-9 && (model.out()[1] - same.out[1]).abs() < 1e-9);
            let caution = words(&turned.cautions[0]);
            assert!(caution.contains("never set the length by turning the bar"), "{caution}");
        }
    }
}

/// A length beyond a stop is refused and never told as turns.
#[test]
fn a_length_beyond_the_stop_is_refused_with_the_bar_to_order() {
    let link = link(&document());
    let now = read(&link, [1.5, 1.5]);
    for (change, says) in [(1.0, "too short"), (-1.5, "too long")] {
        let turned = turn(&link, &now, Wish::Longer(inch(change)), PAIR);
        assert_eq!((turned.standing, turned.way), (Standing::Stop, None), "{change}");
        let why = words(&turned.instead.clone().expect("a reason"));
        assert!(why.contains("Do not turn it that far") && why.contains(says) && why.contains("order one of"), "{why}");
        let order = turned.order.expect("a bar");
        assert!((order.bar - link.bar - inch(change)).abs() < inch(1.0 / 32.0), "as much longer as was asked");
        assert!(turned.steps.is_empty() && turned.change == 0.0);
    }
    // Uneven ends: one is at its stop while the other has room.
    let uneven = read(&link, [2.9, 0.0]);
    let turned = turn(&link, &uneven, Wish::Longer(inch(0.2)), PAIR);
    assert_eq!((turned.standing, turned.order), (Standing::Stop, None));
    assert!(words(&turned.instead.expect("a reason")).contains("Even the two ends first"));
    // From beyond a stop the way back is open.
    let back = turn(&link, &read(&link, [5.0, 5.0]), Wish::Longer(inch(-0.5)), PAIR);
    assert!(back.way.is_some() && back.standing == Standing::Good, "{:?}", back.instead);
}

#[test]
fn what_was_not_read_or_measured_is_said_and_never_good() {
    let own = link(&document());
    let nothing = turn(&own, &Readings::default(), Wish::Longer(inch(0.1)), PAIR);
    assert_eq!((nothing.standing, nothing.from.read), (Standing::NotJudged, [false; 2]));
    assert!(nothing.way.is_some() && words(&nothing.open[0]).contains("Nothing was read at end A"));
    let series = link(&of_a_series());
    let turned = turn(&series, &read(&series, [1.0, 1.0]), Wish::Longer(inch(0.05)), PAIR);
    assert!(turned.standing >= Standing::NotJudged);
    assert!(turned.open.iter().any(|open| words(open).contains("is not measured")));
    // A reading that contradicts another counts as none.
    let good = read(&own, [1.5, 1.5]);
    let odd = turn(&own, &Readings { visible: [Some(5.0), Some(1.5)], ..good }, Wish::Longer(inch(0.1)), PAIR);
    assert_eq!((odd.from.read, odd.standing), ([false, true], Standing::NotJudged));
    for wish in [Wish::Length(f64::NAN), Wish::Longer(f64::INFINITY)] {
        let turned = turn(&own, &good, wish, PAIR);
        assert_eq!((turned.standing, turned.way), (Standing::NotJudged, None));
    }
    let hair = turn(&own, &good, Wish::Longer(inch(0.005)), PAIR);
    assert!(hair.way.is_none() && words(&hair.instead.expect("why")).contains("Nothing to turn"));
}

/// Of two ends of one hand the one with more room is turned.
#[test]
fn ends_of_one_hand_share_the_room() {
    let link = link(&with_hands([Hand::Right, Hand::Right]));
    for (threads, change, end) in
        [([2.5, 0.5], 0.05, 1), ([0.5, 2.5], 0.05, 0), ([2.5, 0.5], -0.05, 0), ([0.5, 2.5], -0.05, 1)]
    {
        let turned = turn(&link, &read(&link, threads), Wish::Longer(inch(change)), PAIR);
        assert!(matches!(turned.way, Some(Way::Eye(eye)) if eye.end == end), "{threads:?} {change}: {:?}", turned.way);
    }
}

/// What is too much for one eye is one procedure for both: told, done to the model, and judged end by end.
#[test]
fn a_change_too_large_for_one_eye_is_told_for_both() {
    let threads = [["1-1/4-12", "1-1/4-12"], ["1-1/4-12", "1-14"], ["1-14", "1-1/4-12"]];
    let (mut both, mut refused) = (0, 0);
    for hands in [[Hand::Right; 2], [Hand::Left; 2]] {
        for threads in threads {
            let link = link(&with_threads(hands, threads));
            for shows in [[1.5, 1.5], [0.5, 2.5], [2.5, 0.5], [2.9, 2.9], [5.0, 1.0]] {
                for sixteenths in -20..=8 {
                    let change = inch(f64::from(sixteenths) / 16.0);
                    let now = read(&link, shows);
                    let turned = turn(&link, &now, Wish::Longer(change), PAIR);
                    let Some(way) = turned.way else {
                        refused += usize::from(turned.standing == Standing::Stop);
                        continue;
                    };
                    let (longer, out) = done(&link, way);
                    assert!((longer - turned.change).abs() < 1e-9, "{threads:?} {shows:?} {sixteenths}");
                    let coarser = link.ends[0].thread.pitch.max(link.ends[1].thread.pitch) / 2.0;
                    let step = if way.eyes().len() > 1 { step(&link, way) } else { coarser };
                    assert!((longer - change).abs() <= step / 2.0 + 1e-9, "the nearest half turn");
                    for (end, made) in link.ends.iter().enumerate() {
                        let after = &turned.ends[end];
                        assert!((turned.from.inserted[end] - out[end] - after.inserted).abs() < 1e-9);
                        let room = [after.inserted - made.stop.inserted, made.most + made.not_full - after.inserted];
                        let moved_in = out[end] * change.signum() > 1e-9;
                        assert!(!moved_in || room[usize::from(change < 0.0)] > -1e-8, "no eye passes its stop");
                        let beyond = room[0] < -1e-8 || room[1] < -1e-8;
                        assert_eq!(after.standing, if beyond { Standing::Stop } else { Standing::Good });
                        for (left, room) in after.turns_left.into_iter().zip(room) {
                            assert!((left - room.max(0.0) / made.thread.pitch).abs() < 1e-6);
                        }
                    }
                    let Way::Eyes([a, b]) = way else { continue };
                    both += 1;
                    assert_eq!((a.end, b.end), (0, 1));
                    assert!(a.half_turns > 0 && b.half_turns > 0 && turned.order.is_none());
                    let steps = steps(&turned);
                    let at = |of: &str| steps.iter().position(|step| step.contains(of)).expect("a step");
                    // One end is bolted up and tight before the other is begun.
                    let order = [
                        "One end at a time",
                        "Take the bolt out at A",
                        "the bolt at A slides in by hand",
                        "tighten the nut at A",
                        "Take the bolt out at B",
                        "the bolt at B slides in by hand",
                        "tighten the nut at B",
                        "Measure: eye to eye",
                        "Paint a line",
                    ];
                    assert!(order.map(at).is_sorted(), "{steps:?}");
                    for eye in [a, b] {
                        let turns = if eye.half_turns == 1 { "half turn" } else { "half turns" };
                        let says = format!("Turn that eye {} {turns} {}", eye.half_turns, eye.turning.words());
                        assert!(steps.iter().any(|step| step.starts_with(&says)), "{says}: {steps:?}");
                    }
                }
            }
        }
    }
    assert!(both > 60 && refused > 60, "{both} {refused}");
}

/// Twelve to the inch, both right-hand, 1-1/2 threads showing, stops at three: three half turns of room at each end. A
/// fifth of an inch is nearest to five half turns, 0.208 in; three eighths are nine, and out of reach.
#[test]
fn a_fifth_of_an_inch_by_both_eyes_by_hand() {
    let link = link(&with_hands([Hand::Right, Hand::Right]));
    let now = read(&link, [1.5, 1.5]);
    let turned = turn(&link, &now, Wish::Longer(inch(0.2)), PAIR);
    let Some(Way::Eyes([a, b])) = turned.way else { panic!("{:?}", turned.way) };
    assert_eq!((a.half_turns + b.half_turns, a.half_turns.abs_diff(b.half_turns)), (5, 1));
    assert!((turned.change - inch(5.0 / 24.0)).abs() < 1e-9);
    let each = turned.half_turn.expect("half turns");
    assert!(each.iter().all(|step| (step - inch(1.0 / 24.0)).abs() < 1e-12));
    let far = turn(&link, &now, Wish::Longer(inch(0.375)), PAIR);
    assert_eq!((far.standing, far.way), (Standing::Stop, None));
    assert!(words(&far.instead.expect("a reason")).contains("order one of"));
    // Within both stops together, and between their half turns.
    let odd = read(&link, [1.75, 1.75]);
    let between = turn(&link, &odd, Wish::Longer(inch(2.5 / 12.0)), PAIR);
    assert_eq!((between.standing, between.way, between.order), (Standing::Stop, None, None));
    let why = words(&between.instead.expect("a reason"));
    assert!(why.contains("1/6 in longer") || why.contains("0.167 in longer"), "{why}");
}

/// A length alone tells where the ends are, as far as it can: nothing of it is judged.
#[test]
fn a_length_alone_is_shared_by_both_ends() {
    let link = link(&document());
    let pitch = link.ends[0].thread.pitch;
    let built = read(&link, [1.5, 1.5]);
    let length = built.eye_to_eye.map(|length| length + 2.0 * pitch);
    let turned = turn(&link, &Readings { eye_to_eye: length, ..Readings::default() }, Wish::Longer(pitch / 3.0), PAIR);
    for end in 0..2 {
        let shown = (link.ends[end].thread_length - link.ends[end].jam_nut - turned.from.inserted[end]) / pitch;
        assert!((shown - link.ends[end].visible_threads - 1.0).abs() < 1e-6, "{shown}");
    }
    assert_eq!(turned.standing, Standing::NotJudged);
    let one = Readings { face: [built.face[0], None], eye_to_eye: length, ..Readings::default() };
    let turned = turn(&link, &one, Wish::Longer(pitch / 3.0), PAIR);
    let shown =
        [0, 1].map(|end| (link.ends[end].thread_length - link.ends[end].jam_nut - turned.from.inserted[end]) / pitch);
    assert!((shown[0] - 1.5).abs() < 1e-6 && (shown[1] - 3.5).abs() < 1e-6, "{shown:?}");
}

#[test]
fn steering_is_told_to_mind() {
    let link = link(&document());
    let turned = turn(&link, &read(&link, [1.5, 1.5]), Wish::Longer(inch(0.05)), ALONE);
    assert!(turned.cautions.iter().any(|caution| words(caution).contains("Steering is safety critical")));
}

/// The step that the trade's table prints: a turn and a flat of right and left-hand ends, in inches.
#[test]
fn a_turn_and_a_flat_are_as_the_trade_prints_them() {
    for (thread, turn_prints, flat_prints) in
        [(18.0, 0.111, 0.0185), (16.0, 0.125, 0.0208), (14.0, 0.143, 0.0238), (12.0, 0.167, 0.0278)]
    {
        let turn = 2.0 * threads_per_inch(thread) / inch(1.0);
        assert!((turn - turn_prints).abs() <= 0.0005 && (turn / 6.0 - flat_prints).abs() <= 0.00005);
    }
}
