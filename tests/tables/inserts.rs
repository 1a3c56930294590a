//! Threaded inserts: which thread fits which tube.

use linkwright::engine::tables::inserts::{self, Fitted, LEAST_WALL};
use linkwright::engine::tables::{stock, threads};
use linkwright::quantity::exceeds;
use linkwright::quantity::inch;

use crate::same;

fn major(thread: &str) -> f64 {
    threads::find(thread).map_or(f64::NAN, |row| row.major)
}

/// The rule a check asks: exactly the least wall passes.
fn has_wall(insert: &Fitted) -> bool {
    !exceeds(LEAST_WALL, insert.wall)
}

#[test]
fn threads_fit_the_tubes_that_builders_weld_them_into() {
    // Outside diameter and wall of the tube in inches, thread, wall left, whether that is enough.
    for (outside, wall, thread, left, fits) in [
        (2.0, 0.250, "1-1/4-12", 0.125, true),
        (1.5, 0.250, "3/4-16", 0.125, true),
        (1.5, 0.250, "7/8-14", 0.0625, false),
        (1.75, 0.188, "7/8-14", 0.2495, true),
        (2.0, 0.375, "1-1/4-12", 0.0, false),
        (2.0, 0.375, "1-14", 0.125, true),
        (1.25, 0.120, "3/4-16", 0.130, true),
        (1.25, 0.188, "3/4-16", 0.062, false),
        (1.75, 0.250, "1-1/4-12", 0.0, false),
        (2.25, 0.250, "1-1/4-12", 0.250, true),
    ] {
        let insert = inserts::default_row().fitted(inch(outside), inch(wall), major(thread), inch(2.5), inch(0.25));
        assert!((insert.wall - inch(left)).abs() < 1e-9, "{thread} in {outside} x {wall}: {}", insert.wall / inch(1.0));
        assert_eq!(has_wall(&insert), fits, "{thread} in {outside} x {wall}");
        assert!(same(insert.outside_diameter, inch(outside - 2.0 * wall)), "{thread} in {outside} x {wall}");
        assert!(same(insert.length, inch(2.5)) && insert.shoulder.abs() < 1e-12, "{thread} in {outside} x {wall}");
    }
}

#[test]
fn exactly_the_least_wall_passes_and_a_hair_less_does_not() {
    for thread in threads::ALL {
        let least = inserts::least_bore(thread.major);
        let wall_at = |bore: f64| inserts::default_row().fitted(bore + 0.5, 0.25, thread.major, 0.05, 0.0);
        assert!(same(wall_at(least).wall, LEAST_WALL), "{}", thread.id);
        assert!(has_wall(&wall_at(least)) && !has_wall(&wall_at(least - inch(0.001))), "{}", thread.id);
    }
    assert!(same(LEAST_WALL, inch(0.125)));
}

#[test]
fn every_stock_tube_takes_some_thread() {
    for (outside, wall) in stock::TUBES {
        let takes = threads::ALL
            .iter()
            .any(|row| has_wall(&inserts::default_row().fitted(*outside, *wall, row.major, 0.05, 0.0)));
        assert!(takes, "{outside} by {wall}");
    }
}

#[test]
fn inserts_are_found_by_id_and_own_up_to_having_no_source() {
    for row in inserts::ALL {
        assert_eq!(inserts::find(row.id), Some(row));
        assert!(row.note.ends_with('.'), "{}", row.id);
        assert!(row.cite.words().starts_with("common practice, no source, "), "{}", row.cite.words());
        let made = row.fitted(inch(2.0), inch(0.25), inch(0.75), inch(1.875), inch(0.25));
        let flange = if row.has_flange { inch(0.25) } else { 0.0 };
        assert!(same(made.length, inch(1.875)) && same(made.inside(), inch(1.875) - flange), "{}", row.id);
        assert!((made.shoulder - flange).abs() < 1e-12 && same(made.wall, inch(0.375)), "{}", row.id);
    }
    assert_eq!(inserts::default_row().id, "plain");
    assert!(inserts::find("flanged").is_none());
    assert_eq!(inserts::LEAST_WALL_CITE.obtained, linkwright::source::Obtained::Assumption);
}
