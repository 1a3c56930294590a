//! Table values beside a second reading of their print, row by row: a slip of the pen in one of the two turns a test red.

use linkwright::engine::tables::rod_ends::{self, RodEnd};
use linkwright::quantity::{DEGREE, inch, mm};

use crate::printed;

fn rod_end(id: &str) -> &'static RodEnd {
    rod_ends::find(id).unwrap_or_else(|| panic!("{id} is gone"))
}

/// AS81935/1A Table 1, read again from the publisher's preview: dash, thread, then B, D, L, F, W, H, J and
/// the column between J and G, which has no heading there and is headed as an angle in AS81935/4B.
const WIDE: [(&str, &str, [f64; 8]); 8] = [
    ("05", "5/16-24", [0.3125, 0.900, 1.187, 1.875, 0.437, 0.327, 0.6875, 14.0]),
    ("06", "3/8-24", [0.3750, 1.025, 1.187, 1.938, 0.500, 0.416, 0.8125, 8.0]),
    ("07", "7/16-20", [0.4375, 1.150, 1.281, 2.125, 0.562, 0.452, 0.9062, 10.0]),
    ("08", "1/2-20", [0.5000, 1.337, 1.468, 2.438, 0.625, 0.515, 1.0000, 9.0]),
    ("10", "5/8-18", [0.6250, 1.525, 1.562, 2.625, 0.750, 0.577, 1.1875, 12.0]),
    ("12", "3/4-16", [0.7500, 1.775, 1.687, 2.875, 0.875, 0.640, 1.3750, 13.0]),
    ("14", "7/8-14", [0.8750, 2.025, 2.000, 3.375, 0.875, 0.765, 1.6250, 6.0]),
    ("16", "1-1/4-12", [1.0000, 2.775, 2.343, 4.125, 1.375, 1.015, 2.1250, 12.0]),
];

/// AS81935/4B Table 1, likewise: dash, thread, then B, D, L, F, W, H. Its second half is cut off after -05.
const NARROW: [(&str, &str, [f64; 6]); 8] = [
    ("05", "5/16-24", [0.3125, 0.984, 1.187, 1.948, 0.375, 0.291]),
    ("06", "3/8-24", [0.3750, 1.131, 1.187, 2.030, 0.406, 0.322]),
    ("07", "7/16-20", [0.4375, 1.294, 1.281, 2.250, 0.437, 0.353]),
    ("08", "1/2-20", [0.5000, 1.459, 1.468, 2.544, 0.500, 0.400]),
    ("10", "5/8-18", [0.6250, 1.763, 1.562, 2.832, 0.625, 0.510]),
    ("12", "3/4-16", [0.7500, 2.140, 1.687, 3.193, 0.750, 0.603]),
    ("14", "7/8-14", [0.8750, 2.372, 2.000, 3.677, 0.875, 0.713]),
    ("16", "1-12", [1.0000, 2.681, 2.100, 3.968, 1.000, 0.807]),
];

/// Series K in millimeters, from a table that also prints the whole length, which is the length to the
/// ball and half the head: bore, thread, ball width, head width, head diameter, bearing, to the ball, whole, thread, degrees.
const SERIES_K: [(f64, &str, [f64; 8]); 9] = [
    (10.0, "M10x1.5", [14.0, 10.5, 28.0, 22.0, 48.0, 62.0, 28.0, 13.0]),
    (12.0, "M12x1.75", [16.0, 12.0, 32.0, 26.0, 54.0, 70.0, 32.0, 13.0]),
    (14.0, "M14x2", [19.0, 13.5, 36.0, 29.0, 60.0, 78.0, 36.0, 15.0]),
    (16.0, "M16x2", [21.0, 15.0, 42.0, 32.0, 66.0, 87.0, 37.0, 15.0]),
    (18.0, "M18x1.5", [23.0, 16.5, 46.0, 35.0, 72.0, 95.0, 41.0, 15.0]),
    (20.0, "M20x1.5", [25.0, 18.0, 50.0, 40.0, 78.0, 103.0, 45.0, 14.0]),
    (22.0, "M22x1.5", [28.0, 20.0, 54.0, 42.0, 84.0, 111.0, 48.0, 15.0]),
    (25.0, "M24x2", [31.0, 22.0, 60.0, 47.0, 94.0, 124.0, 58.0, 15.0]),
    (30.0, "M30x2", [37.0, 25.0, 70.0, 55.0, 110.0, 145.0, 71.0, 15.0]),
];

#[test]
fn rod_ends_are_as_their_sheets_print_them() {
    for (dash, thread, [bore, head, thread_length, reach, ball, body, housing, angle]) in WIDE {
        let id = format!("wide-{dash}");
        let row = rod_end(&id);
        assert_eq!(row.thread, thread, "{id}");
        let race = row.race_bore.unwrap_or(f64::NAN);
        for (what, held, print) in [
            ("bore", row.bore, bore),
            ("head diameter", row.head_diameter, head),
            ("thread length", row.thread_length, thread_length),
            ("eye to end", row.eye_to_end, reach),
            ("ball width", row.ball_width, ball),
            ("head width", row.head_width, body),
            ("hole in the head", race, housing),
        ] {
            printed(&id, what, held, print, inch(1.0));
        }
        printed(&id, "misalignment", row.misalignment.unwrap_or(f64::NAN), angle, DEGREE);
    }
    for (dash, thread, [bore, head, thread_length, reach, ball, body]) in NARROW {
        let id = format!("narrow-{dash}");
        let row = rod_end(&id);
        assert_eq!(row.thread, thread, "{id}");
        for (what, held, print) in [
            ("bore", row.bore, bore),
            ("head diameter", row.head_diameter, head),
            ("thread length", row.thread_length, thread_length),
            ("eye to end", row.eye_to_end, reach),
            ("ball width", row.ball_width, ball),
            ("head width", row.head_width, body),
        ] {
            printed(&id, what, held, print, inch(1.0));
        }
    }
    for (bore, thread, [ball, body, head, bearing, reach, whole, thread_length, angle]) in SERIES_K {
        let id = format!("k-{bore}");
        let row = rod_end(&id);
        assert_eq!(row.thread, thread, "{id}");
        for (what, held, print) in [
            ("bore", row.bore, bore),
            ("ball width", row.ball_width, ball),
            ("head width", row.head_width, body),
            ("head diameter", row.head_diameter, head),
            ("hole in the head", row.race_bore.unwrap_or(f64::NAN), bearing),
            ("eye to end", row.eye_to_end, reach),
            ("whole length", row.eye_to_end + row.head_diameter / 2.0, whole),
            ("thread length", row.thread_length, thread_length),
        ] {
            printed(&id, what, held, print, mm(1.0));
        }
        printed(&id, "misalignment", row.misalignment.unwrap_or(f64::NAN), angle, DEGREE);
    }
    assert_eq!(rod_ends::ALL.len(), WIDE.len() + NARROW.len() + SERIES_K.len(), "a row has no print beside it");
}

#[test]
fn what_no_print_shows_stays_open() {
    for row in rod_ends::ALL.iter().filter(|row| row.family == rod_ends::Family::Narrow) {
        // The preview shows column J and the angle as far as -05.
        let seen = row.id == "narrow-05";
        assert_eq!((row.race_bore.is_some(), row.misalignment.is_some()), (seen, seen), "{}", row.id);
        assert_eq!(row.note.contains("not traced"), !seen, "{}", row.id);
    }
    let first = rod_end("narrow-05");
    printed("narrow-05", "hole in the head", first.race_bore.unwrap_or(f64::NAN), 0.7500, inch(1.0));
    printed("narrow-05", "misalignment", first.misalignment.unwrap_or(f64::NAN), 10.0, DEGREE);
}
