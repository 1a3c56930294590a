//! Every direction that the engine gives, beside the link in three dimensions.

use crate::screw::{Helix, Link, What, clockwise};
use linkwright::document::Hand;
use linkwright::engine::fitting::hands::{
    Turning, bar_unscrews, eye_unscrews, lengthens, nut_loosens, nut_tightens, per_turn,
};
use linkwright::quantity::{inch, mm, threads_per_inch};

const HANDS: [[Hand; 2]; 4] =
    [[Hand::Right, Hand::Left], [Hand::Left, Hand::Right], [Hand::Right, Hand::Right], [Hand::Left, Hand::Left]];

/// Every pair of hands with like and unlike pitches, inch and metric.
fn links() -> Vec<[Helix; 2]> {
    let p = threads_per_inch;
    let pitches = [
        [p(16.0), p(16.0)],
        [p(12.0), p(12.0)],
        [p(14.0), p(16.0)],
        [p(16.0), p(14.0)],
        [mm(1.5), mm(2.0)],
        [mm(2.0), p(12.0)],
    ];
    let pair = |hands: [Hand; 2], pitches: [f64; 2]| {
        [Helix { hand: hands[0], pitch: pitches[0] }, Helix { hand: hands[1], pitch: pitches[1] }]
    };
    HANDS.into_iter().flat_map(|hands| pitches.into_iter().map(move |pitches| pair(hands, pitches))).collect()
}

fn pairs(threads: [Helix; 2]) -> [(Hand, f64); 2] {
    threads.map(|thread| (thread.hand, thread.pitch))
}

/// A turn of the model, as the engine says it.
fn turned(threads: [Helix; 2], what: What, turns: f64, turning: Turning, from: usize) -> Link {
    let mut link = Link::new(threads);
    let angle = clockwise(turns, from);
    link.turn(what, if turning == Turning::Clockwise { angle } else { -angle });
    link
}

fn near(a: f64, b: f64) -> bool {
    (a - b).abs() < inch(1e-7)
}

const BOTH: [Turning; 2] = [Turning::Clockwise, Turning::Counterclockwise];

#[test]
fn the_model_knows_its_hands() {
    assert!(Helix { hand: Hand::Right, pitch: mm(2.0) }.climbs_to_the_right());
    assert!(!Helix { hand: Hand::Left, pitch: mm(2.0) }.climbs_to_the_right());
    // Somebody at the other end sees the same turn the other way around.
    assert!(near(clockwise(1.0, 0), -clockwise(1.0, 1)));
}

#[test]
fn a_turn_of_the_bar_does_what_the_model_does() {
    for threads in links() {
        for turning in BOTH {
            for from in [0, 1] {
                for turns in [1.0 / 6.0, 1.0, 2.5] {
                    let model = turned(threads, What::Bar, turns, turning, from);
                    let engine = per_turn(pairs(threads), turning, from);
                    let [a, b] = model.out();
                    assert!(near(a, engine.out[0] * turns) && near(b, engine.out[1] * turns));
                    assert!(near(model.longer(), engine.longer * turns));
                }
            }
        }
    }
}

#[test]
fn the_bar_lengthens_the_way_the_engine_says() {
    for threads in links() {
        let [a, b] = threads;
        match lengthens(pairs(threads)) {
            Some(turning) => {
                assert!(turned(threads, What::Bar, 1.0, turning, 0).longer() > inch(1e-4));
                assert!(turned(threads, What::Bar, 1.0, turning.opposite(), 0).longer() < -inch(1e-4));
            }
            None => {
                assert!(a.hand == b.hand && near(a.pitch, b.pitch));
                let model = turned(threads, What::Bar, 1.0, Turning::Clockwise, 0);
                let [out_a, out_b] = model.out();
                assert!(near(model.longer(), 0.0), "the length stays");
                assert!(near(out_a, -out_b) && near(out_a.abs(), a.pitch), "one end quietly unscrews");
            }
        }
        for (end, thread) in threads.into_iter().enumerate() {
            let model = turned(threads, What::Bar, 1.0, bar_unscrews(thread.hand), end);
            assert!(near(model.out()[end], thread.pitch), "seen from its own eye");
        }
    }
}

#[test]
fn an_eye_with_its_bolt_out_unscrews_the_way_the_engine_says() {
    for threads in links() {
        for (end, thread) in threads.into_iter().enumerate() {
            let model = turned(threads, What::Eye(end), 0.5, eye_unscrews(thread.hand), end);
            let mut expected = [0.0; 2];
            expected[end] = thread.pitch / 2.0;
            assert!(near(model.out()[0], expected[0]) && near(model.out()[1], expected[1]));
            assert!(near(model.longer(), thread.pitch / 2.0), "half a turn is half a pitch");
        }
    }
}

#[test]
fn a_jam_nut_goes_the_way_the_engine_says() {
    for threads in links() {
        for (end, thread) in threads.into_iter().enumerate() {
            for (turning, toward) in [(nut_tightens(thread.hand), 1.0), (nut_loosens(thread.hand), -1.0)] {
                let model = turned(threads, What::Nut(end), 0.5, turning, end);
                assert!(near(model.nut_to_bar()[end], toward * thread.pitch / 2.0));
                assert!(near(model.longer(), 0.0) && near(model.nut_to_bar()[1 - end], 0.0));
            }
        }
    }
}

/// The face of the nut rubs on the face of the bar and drags it the way the nut turns.
#[test]
fn tightening_a_nut_drags_the_bar_so_that_its_end_comes_out() {
    for threads in links() {
        for (end, thread) in threads.into_iter().enumerate() {
            let model = turned(threads, What::Bar, 0.1, nut_tightens(thread.hand), end);
            assert!(model.out()[end] > 0.0);
            // Of opposite hands the whole link becomes longer.
            if threads[0].hand != threads[1].hand {
                assert!(model.longer() > 0.0);
            }
        }
    }
}

/// An axle that twists one eye against the other: the bar lies between them, so each end turns against it.
#[test]
fn a_twisting_axle_turns_ends_of_opposite_hands_in_and_out_and_ends_of_one_hand_alike() {
    for threads in links() {
        for twist in [0.1, -0.1] {
            let mut link = Link::new(threads);
            link.turn(What::Eye(0), twist);
            link.turn(What::Eye(1), -twist);
            let [a, b] = link.out();
            assert_eq!(a * b > 0.0, threads[0].hand == threads[1].hand, "{a} {b}");
        }
    }
}

/// What stands in the answer about adjustment says the same, from end A or from the coarser thread.
#[test]
fn the_sentence_of_the_answer_names_the_way_of_the_model() {
    use linkwright::document::{Document, OWN_ROD_END, Use};
    use linkwright::quantity::lbf;
    let own = [("3/4-16", 16.0), ("7/8-14", 14.0)];
    for hands in HANDS {
        for (a, b) in [(0, 0), (0, 1), (1, 0)] {
            let mut document = Document::default();
            (document.rig.weight, document.rig.usage) = (Some(lbf(4000.0)), Some(Use::Slow));
            let link = &mut document.links[0];
            link.length = Some(inch(36.0));
            for ((end, hand), (thread, _)) in link.ends.iter_mut().zip(hands).zip([own[a], own[b]]) {
                (end.hand, end.rod_end, end.own_thread) = (Some(hand), Some(OWN_ROD_END), Some(thread));
                (end.own_eye_to_end, end.own_thread_length) = (Some(inch(3.5)), Some(inch(2.0)));
                end.own_bore = Some(inch(0.75));
            }
            let report = linkwright::engine::report_on(&document, 0);
            let says = report.answer().expect("an answer").link.adjustment.turning;
            let threads = [
                Helix { hand: hands[0], pitch: threads_per_inch(own[a].1) },
                Helix { hand: hands[1], pitch: threads_per_inch(own[b].1) },
            ];
            let Some(says) = says else {
                assert!(lengthens(pairs(threads)).is_none());
                continue;
            };
            let from = usize::from(says.contains("from end B"));
            let turning = if says.contains(": counterclockwise makes it longer")
                || says.contains("thread: counterclockwise makes it longer")
            {
                Turning::Counterclockwise
            } else {
                assert!(says.contains(": clockwise makes it longer"), "{says}");
                Turning::Clockwise
            };
            assert!(turned(threads, What::Bar, 1.0, turning, from).longer() > inch(1e-4), "{hands:?}: {says}");
        }
    }
}
