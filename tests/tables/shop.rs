//! Rod ends, stock, drills and taps.

use linkwright::engine::tables::rod_ends::{self, Family};
use linkwright::engine::tables::{drills, stock, threads};
use linkwright::quantity::{System, inch, mm};

#[test]
fn rod_ends_have_the_shape_of_rod_ends() {
    for row in rod_ends::ALL {
        let id = row.id;
        let major = threads::find(row.thread).map_or(f64::NAN, |thread| thread.major);
        assert!(row.head_width <= row.ball_width, "{id}: the ball stands out of the head");
        assert!(row.bore < row.head_diameter && row.bore < 2.0 * row.ball_width, "{id}");
        assert!((0.95..1.3).contains(&(major / row.bore)), "{id}: shank {major}, bore {}", row.bore);
        assert!(row.race_bore.is_none_or(|race| race > row.bore && race < row.head_diameter), "{id}: race");
        // The thread ends before the head begins.
        assert!(
            row.thread_length < row.eye_to_end - 0.4 * row.head_diameter,
            "{id}: thread {} of {}",
            row.thread_length,
            row.eye_to_end
        );
        assert!(row.misalignment.is_none_or(|tilt| (0.09..0.3).contains(&tilt)), "{id}: tilt");
        if row.misalignment.is_none() || row.race_bore.is_none() {
            assert!(!row.note.is_empty(), "{id} lacks something and does not say so");
        }
    }
}

#[test]
fn eyes_are_as_strong_to_their_shanks_as_the_notes_say() {
    // Area of the eye over stress area of the shank, as worked out apart from this program.
    for (id, expected) in
        [("wide-08", 1.09), ("wide-10", 0.76), ("wide-12", 0.69), ("wide-14", 0.60), ("wide-16", 0.61)]
    {
        let ratio = rod_ends::find(id).and_then(|row| {
            let eye = (row.head_diameter - row.race_bore?) * row.head_width;
            Some(eye / threads::find(row.thread)?.tensile_stress_area())
        });
        assert!(ratio.is_some_and(|ratio| (ratio - expected).abs() < 0.0051), "{id}: {ratio:?}, expected {expected}");
    }
    assert!(rod_ends::ALL.iter().filter(|row| row.family == Family::Wide).all(|row| row.race_bore.is_some()));
}

#[test]
fn the_wrong_series_makes_a_link_too_long() {
    // The lesson of the two inch series: at 3/4-16 they differ by .318 in from eye to shank end, at both ends.
    let reach = |id: &str| rod_ends::find(id).map_or(f64::NAN, |row| row.eye_to_end);
    assert!((2.0 * (reach("narrow-12") - reach("wide-12")) - inch(0.636)).abs() < 1e-9);
}

#[test]
fn stock_can_be_made() {
    for (outside, wall) in stock::TUBES {
        assert!(*wall > 0.0 && 2.0 * wall < *outside, "{outside} by {wall}");
    }
    assert!(stock::BARS.iter().all(|bar| !stock::BARS_BETWEEN.iter().any(|other| (bar - other).abs() < 1e-9)));
}

#[test]
fn every_thread_has_a_tap_drill_that_leaves_thread_enough() {
    for thread in threads::ALL {
        let Some(listed) = drills::tap_drill(thread) else { panic!("{} has no tap drill", thread.id) };
        assert_eq!(listed.drill.system, thread.system, "{}", thread.id);
        let percent = linkwright::engine::formulas::threads::PERCENT_OF_THREAD.value(&[
            thread.major,
            listed.drill.diameter,
            thread.pitch,
        ]);
        assert!((0.60..=0.84).contains(&percent), "{}: {percent}", thread.id);
        if thread.system == System::Metric {
            assert!((listed.drill.diameter - (thread.major - thread.pitch)).abs() < mm(0.001), "{}", thread.id);
        }
    }
}

#[test]
fn drills_are_named_by_their_size() {
    for drill in drills::FRACTIONS {
        let value = drill.id.split('-').map(|part| match part.split_once('/') {
            Some((over, under)) => over.parse::<f64>().unwrap_or(f64::NAN) / under.parse::<f64>().unwrap_or(f64::NAN),
            None => part.parse().unwrap_or(f64::NAN),
        });
        assert!((value.sum::<f64>() - drill.diameter / inch(1.0)).abs() < 1e-12, "{}", drill.id);
    }
    for pair in drills::FRACTIONS.windows(2) {
        assert!((pair[1].diameter - pair[0].diameter - inch(1.0 / 64.0)).abs() < 1e-12, "after {}", pair[0].id);
    }
    for drill in drills::METRIC {
        let value: f64 = drill.id.trim_end_matches("mm").parse().unwrap_or(f64::NAN);
        assert!((value - drill.diameter / mm(1.0)).abs() < 1e-9, "{}", drill.id);
    }
}

#[test]
fn the_nearest_drill_is_found() {
    let nearest = |diameter, system| drills::nearest(diameter, system).map(|drill| drill.id);
    assert_eq!(nearest(inch(0.6875), System::Inch), Some("11/16"));
    assert_eq!(nearest(inch(0.3330), System::Inch), Some("Q"));
    assert_eq!(nearest(mm(10.26), System::Metric), Some("10.25mm"));
    assert_eq!(nearest(0.0, System::Metric), Some("7mm"));
    // Midway the larger hole is taken: it spares the tap.
    assert_eq!(nearest(inch(1.0 + 1.0 / 128.0), System::Inch), Some("1-1/64"));
}

#[test]
fn ranges_are_ranges() {
    for row in drills::DRILLING_SPEEDS.iter().chain(drills::TAPPING_SPEEDS) {
        assert!(row.feet_per_minute[0] < row.feet_per_minute[1], "{}", row.id);
    }
    for pair in drills::FEEDS.windows(2) {
        assert!(
            (pair[0].up_to - pair[1].over).abs() < 1e-12 && (pair[0].per_turn[1] - pair[1].per_turn[0]).abs() < 1e-12
        );
    }
    for pair in drills::TAPS.windows(2) {
        assert!(pair[0].chamfer[0] > pair[1].chamfer[1]);
    }
}
