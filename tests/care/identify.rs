//! Which thread, which hand, which rod end: named only where the readings leave one.

use linkwright::document::Hand;
use linkwright::engine::fitting::Standing;
use linkwright::engine::fitting::identify::{
    RodEndReadings, Slope, ThreadFound, ThreadReadings, hand, hand_says, rod_end, thread, window,
};
use linkwright::engine::sentence::spoken;
use linkwright::engine::tables::{rod_ends, threads};
use linkwright::quantity::{System, inch, mm, threads_per_inch};

fn read(major: f64, counted: Option<(f64, f64)>, leaf: Option<f64>) -> ThreadFound {
    let (counted, over) = (counted.map(|it| it.0), counted.map(|it| it.1));
    thread(ThreadReadings { major: Some(major), counted, over, leaf })
}

fn ids(found: &ThreadFound) -> Vec<&'static str> {
    found.candidates.iter().map(|thread| thread.id).collect()
}

/// Major diameters as gauged on real parts of class 2A or 6g (printed limits), and what is left.
#[test]
fn close_threads_are_told_apart_or_left_open() {
    // 3/4-16: 0.7391 to 0.7485 in; M20x1.5: 19.732 to 19.968 mm (printed limits). The caliper alone separates them.
    assert_eq!(ids(&read(inch(0.745), None, None)), ["3/4-16"]);
    assert_eq!(ids(&read(mm(19.85), Some((17.0, inch(1.0))), None)), ["M20x1.5"]);
    // One diameter, three pitches: only the pitch separates them.
    let one_inch = read(inch(0.996), None, None);
    assert_eq!(one_inch.standing, Standing::NotJudged);
    assert!(ids(&one_inch).contains(&"1-14") && ids(&one_inch).contains(&"1-12"), "{:?}", ids(&one_inch));
    let next = spoken(&one_inch.next.expect("what separates them"), System::Inch);
    assert!(next.contains("14 threads are 1-14 UNS") && next.contains("12 threads are 1-12 UNF"), "{next}");
    for (count, id) in [(14.0, "1-14"), (12.0, "1-12")] {
        let found = read(inch(0.996), Some((count, inch(1.0))), None);
        assert_eq!((ids(&found), found.standing), (vec![id], Standing::Good));
    }
    // M24x2 and M24x3; 1 in is 25.4 mm and is not among them.
    assert_eq!(ids(&read(mm(23.8), None, Some(mm(2.0)))), ["M24x2"]);
    assert_eq!(ids(&read(mm(23.8), None, Some(mm(3.0)))), ["M24x3"]);
    // 5/8-18 and M16x1.5 share diameters, and their counts over an inch lie within a thread and a bit.
    let close = read(mm(15.8), None, None);
    assert!(["5/8-18", "M16x1.5", "M16x2"].iter().all(|id| ids(&close).contains(id)), "{:?}", ids(&close));
    assert_eq!(ids(&read(mm(15.8), Some((36.0, inch(2.0))), None)), ["5/8-18"]);
    assert_eq!(ids(&read(mm(15.8), None, Some(mm(1.5)))), ["M16x1.5"]);
    // Over one inch they show 18 and 17 threads: too close for a ruler, and the words say what helps.
    let blurred = read(mm(15.8), Some((17.0, inch(1.0))), None);
    assert_eq!(blurred.standing, Standing::NotJudged, "{:?}", ids(&blurred));
    let next = spoken(&blurred.next.expect("what separates them"), System::Inch);
    assert!(next.contains("thread gauge"), "{next}");
}

#[test]
fn one_reading_alone_names_nothing_for_certain() {
    let by_diameter = read(inch(0.745), None, None);
    let says = spoken(&by_diameter.says, System::Inch);
    assert!(by_diameter.standing == Standing::NotJudged && says.contains("not judged"), "{says}");
    let by_pitch = thread(ThreadReadings { leaf: Some(mm(1.5)), ..ThreadReadings::default() });
    assert!(by_pitch.standing == Standing::NotJudged && spoken(&by_pitch.says, System::Inch).contains("caliper"));
    // A 3/4-10 bolt has the diameter of 3/4-16 and is none of ours.
    let coarse = read(inch(0.745), Some((10.0, inch(1.0))), None);
    assert!(coarse.candidates.is_empty() && spoken(&coarse.says, System::Inch).contains("No thread of ours"));
    // A count and a gauge that contradict each other.
    let torn = read(inch(0.745), Some((16.0, inch(1.0))), Some(threads_per_inch(10.0)));
    let says = spoken(&torn.says, System::Inch);
    assert!(torn.standing == Standing::NotJudged && says.contains("wrong"), "{says}");
    for value in [f64::NAN, 0.0, -1.0, f64::INFINITY] {
        assert_eq!(read(value, Some((16.0, inch(1.0))), None).standing, Standing::NotJudged);
    }
}

/// Every thread of the table, anywhere within its limits and with its gauge leaf, is among its candidates; where it is
/// the only one it is named, and no other name ever stands alone.
#[test]
fn every_thread_is_found_and_no_wrong_name_stands_alone() {
    for row in threads::ALL {
        let limits = row.limits();
        for major in [limits.external_major_min, limits.external_major_max, row.major] {
            for off in [-0.09, 0.0, 0.09] {
                let found = read(major + mm(off), None, Some(row.pitch));
                assert!(found.candidates.iter().any(|other| other.id == row.id), "{} at {off}", row.id);
                if found.standing == Standing::Good {
                    assert_eq!(ids(&found), [row.id]);
                }
            }
        }
        let [least, most] = window(row);
        assert!(read(least - mm(0.01), None, Some(row.pitch)).candidates.iter().all(|other| other.id != row.id));
        assert!(read(most + mm(0.01), None, Some(row.pitch)).candidates.iter().all(|other| other.id != row.id));
    }
}

/// A point of a right-hand helix about an upright axis moves up while it turns counterclockwise seen from above. What
/// is seen is its near side; there it moves to the right.
#[test]
fn a_right_hand_thread_rises_to_the_right() {
    let rises = |handed: f64| {
        // Seen along +y from −y: x to the right, z up. The near side has y < 0.
        let point = |turn: f64| {
            let angle = turn * std::f64::consts::TAU;
            (angle.cos(), angle.sin(), handed * turn)
        };
        let near: Vec<_> = (0..100).map(|step| point(f64::from(step) / 100.0)).filter(|it| it.1 < 0.0).collect();
        let (first, last) = (near[0], near[near.len() - 1]);
        (last.2 - first.2) / (last.0 - first.0)
    };
    for (slope, handed) in [(Slope::RisesRight, 1.0), (Slope::RisesLeft, -1.0)] {
        assert_eq!(rises(handed) > 0.0, slope == Slope::RisesRight);
        assert_eq!(hand(slope), if handed > 0.0 { Hand::Right } else { Hand::Left });
    }
    let (standing, says) = hand_says(Some(Slope::RisesLeft));
    let says = spoken(&says, System::Inch);
    assert!(standing == Standing::Good && says.contains("left-hand") && says.contains("counterclockwise"), "{says}");
    assert_eq!(hand_says(None).0, Standing::NotJudged);
}

#[test]
fn a_rod_end_is_a_published_row_or_your_own() {
    for row in rod_ends::ALL {
        let found = rod_end(RodEndReadings {
            eye_to_end: Some(row.eye_to_end + mm(0.3)),
            thread_length: Some(row.thread_length - mm(0.5)),
            ball_width: Some(row.ball_width),
            bore: Some(row.bore + mm(0.05)),
        });
        assert!(found.rows.iter().any(|other| other.id == row.id), "{}", row.id);
        assert_eq!(found.standing == Standing::Good, found.rows.len() == 1);
    }
    // SAE wide and narrow 3/4-16 differ by 0.318 in from eye to shank end (printed): the costly mix-up.
    let wide = rod_ends::find("wide-12").expect("a row");
    let narrow = RodEndReadings {
        eye_to_end: Some(inch(3.193)),
        thread_length: Some(inch(1.687)),
        ball_width: None,
        bore: Some(inch(0.75)),
    };
    assert_eq!(rod_end(narrow).rows.iter().map(|row| row.id).collect::<Vec<_>>(), ["narrow-12"]);
    let long = rod_end(RodEndReadings { thread_length: Some(inch(2.5)), eye_to_end: Some(inch(4.0)), ..narrow });
    let says = spoken(&long.says, System::Inch);
    assert!(long.standing == Standing::NotJudged && says.contains("your own"), "{says}");
    assert!(long.next.contains("as measured") && !says.contains(wide.id));
    for (readings, missing) in [
        (RodEndReadings::default(), "eye center to shank end"),
        (RodEndReadings { thread_length: None, ..narrow }, "thread length"),
        (RodEndReadings { bore: None, ..narrow }, "ball"),
        (RodEndReadings { eye_to_end: Some(f64::NAN), ..narrow }, "eye center to shank end"),
    ] {
        let found = rod_end(readings);
        let says = spoken(&found.says, System::Inch);
        assert!(found.standing == Standing::NotJudged && says.contains(missing), "{says}");
    }
}
