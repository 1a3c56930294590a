//! The tables hold together: ids, sources, order, and how one row leads to another.
//!
//! What each table says is tried in the files beside this one.

#[path = "tables/inserts.rs"]
mod inserts;
#[path = "tables/print_cutting.rs"]
mod print_cutting;
#[path = "tables/print_rod_ends.rs"]
mod print_rod_ends;
#[path = "tables/print_shop.rs"]
mod print_shop;
#[path = "tables/print_strengths.rs"]
mod print_strengths;
#[path = "tables/print_threads.rs"]
mod print_threads;
#[path = "tables/shop.rs"]
mod shop;
#[path = "tables/strengths.rs"]
mod strengths;
#[path = "tables/threads.rs"]
mod threads;

use std::collections::BTreeSet;

use linkwright::engine::shop::route::machine as route;
use linkwright::engine::tables::{
    bolt_threads, bolts, cutting, drills, inserts as inserts_table, jam_nuts, materials, rod_ends, stock,
    thread_limits, threads as table,
};
use linkwright::quantity::{Kind, System, mm};
use linkwright::source::{self, Cite, Obtained};

/// Whether two values are the same but for the last bits of a conversion.
pub(crate) fn same(a: f64, b: f64) -> bool {
    (a - b).abs() <= 1e-12 * a.abs().max(b.abs()).max(1e-6)
}

/// Whether what is held is what is printed, in the print's unit.
#[track_caller]
pub(crate) fn printed(row: &str, what: &str, held: f64, print: f64, unit: f64) {
    assert!(same(held, print * unit), "{row}, {what}: {} is held, {print} is printed", held / unit);
}

/// Everything shown by id, with the table it stands in.
fn ids() -> Vec<(&'static str, Vec<&'static str>)> {
    vec![
        ("threads", table::ALL.iter().map(|row| row.id).collect()),
        ("jam nuts", jam_nuts::ALL.iter().map(|row| row.size).collect()),
        ("rod ends", rod_ends::ALL.iter().map(|row| row.id).collect()),
        ("families", rod_ends::Family::ALL.iter().map(|row| row.id()).collect()),
        ("materials", materials::ALL.iter().chain(materials::BESIDE_A_WELD).map(|row| row.id).collect()),
        ("inserts", inserts_table::ALL.iter().map(|row| row.id).collect()),
        ("bolts", bolts::GRADES.iter().map(|row| row.id).collect()),
        ("drills", drills::all().map(|row| row.id).collect()),
        ("taps", drills::TAPS.iter().map(|row| row.id).collect()),
        ("drilling speeds", drills::DRILLING_SPEEDS.iter().map(|row| row.id).collect()),
        ("tapping speeds", drills::TAPPING_SPEEDS.iter().map(|row| row.id).collect()),
        ("metals by how they are cut", cutting::CLASSES.iter().map(|row| row.id).collect()),
        ("chamfers", cutting::CHAMFER_FORMS.iter().map(|row| row.letter).collect()),
        ("machine settings", route::SETTINGS.iter().map(|row| row.id).collect()),
        ("tabled limits", thread_limits::LIMITS.iter().map(|row| row.thread).collect()),
        ("tabled areas", thread_limits::STRESS_AREAS.iter().map(|row| row.thread).collect()),
    ]
}

#[test]
fn ids_are_unique_and_travel_in_a_link() {
    for (table, ids) in ids() {
        let mut seen = BTreeSet::new();
        assert!(!ids.is_empty(), "{table} is empty");
        for id in ids {
            assert!(seen.insert(id), "{id} stands twice in {table}");
            let travels = !id.is_empty() && id.chars().all(|c| c.is_ascii_alphanumeric() || "-/.".contains(c));
            assert!(travels, "{id} in {table} has a character that does not travel");
        }
    }
    let kebab = |id: &str| {
        id.split('-').all(|part| !part.is_empty() && part.chars().all(|c| c.is_ascii_lowercase() || c.is_ascii_digit()))
    };
    for id in rod_ends::ALL
        .iter()
        .map(|row| row.id)
        .chain(materials::ALL.iter().map(|row| row.id))
        .chain(bolts::GRADES.iter().map(|row| row.id))
    {
        assert!(kebab(id), "{id} is not in kebab case");
    }
}

/// Every citation of every table, with whose it is.
fn cites() -> Vec<(String, Cite)> {
    let mut cites = vec![("stock".to_string(), stock::CITE)];
    cites.extend(table::ALL.iter().map(|row| (row.id.to_string(), row.cite)));
    cites.extend(thread_limits::LIMITS.iter().map(|row| (format!("limits of {}", row.thread), row.cite)));
    cites.extend(thread_limits::STRESS_AREAS.iter().map(|row| (format!("area of {}", row.thread), row.cite)));
    cites.extend(jam_nuts::ALL.iter().map(|row| (row.size.to_string(), row.cite)));
    cites.extend(rod_ends::ALL.iter().map(|row| (row.id.to_string(), row.cite)));
    cites.extend(inserts_table::ALL.iter().map(|row| (format!("{} insert", row.id), row.cite)));
    cites.push(("least wall of an insert".to_string(), inserts_table::LEAST_WALL_CITE));
    for material in materials::ALL.iter().chain(materials::BESIDE_A_WELD) {
        cites.push((material.id.to_string(), material.modulus_cite));
        cites.extend(material.rows.iter().map(|row| (material.id.to_string(), row.cite)));
    }
    cites.extend(bolts::GRADES.iter().flat_map(|grade| grade.rows.iter().map(|row| (grade.id.to_string(), row.cite))));
    for size in bolt_threads::ALL {
        cites.extend([&size.fine, &size.coarse].map(|thread| (format!("bolt {}", size.label), thread.cite)));
    }
    cites.extend(drills::all().map(|row| (row.id.to_string(), row.cite)));
    cites.extend(
        table::ALL
            .iter()
            .filter_map(|row| drills::tap_drill(row).map(|drill| (format!("tap drill of {}", row.id), drill.cite))),
    );
    cites
        .extend(drills::DRILLING_SPEEDS.iter().chain(drills::TAPPING_SPEEDS).map(|row| (row.id.to_string(), row.cite)));
    cites.extend(drills::FEEDS.iter().map(|row| ("feed".to_string(), row.cite)));
    cites.extend(drills::TAPS.iter().map(|row| (row.id.to_string(), row.cite)));
    cites.extend(cutting::CHAMFER_FORMS.iter().map(|row| (format!("form {}", row.letter), row.cite)));
    for class in cutting::CLASSES {
        let all = [class.drilling_fluid.cite, class.tapping_fluid.cite, class.blind_tap.cite, cutting::TURNING_CITE];
        cites.extend(all.map(|cite| (class.id.to_string(), cite)));
    }
    cites.extend(route::SETTINGS.iter().map(|row| (row.id.to_string(), row.cite)));
    cites
}

#[test]
fn every_row_says_where_it_comes_from() {
    for (row, cite) in cites() {
        assert!(source::ALL.contains(&cite.source), "{row} cites what the bibliography does not have");
        assert!(!cite.place.is_empty(), "{row} does not say where in {}", cite.source.name);
        let no_document = [&source::PRACTICE, &source::OURS].contains(&cite.source);
        let nobody_published = matches!(cite.obtained, Obtained::Practice | Obtained::Assumption);
        assert_eq!(no_document, nobody_published, "{row} says {} of {}", cite.obtained.words(), cite.source.name);
    }
}

#[test]
fn rows_stand_in_order() {
    fn rising<T>(what: &str, rows: &[T], key: impl Fn(&T) -> Vec<f64>) {
        for (a, b) in rows.iter().zip(rows.iter().skip(1)) {
            assert!(key(a) < key(b), "{what}: {:?} before {:?}", key(a), key(b));
        }
    }
    let system = |system| if system == linkwright::quantity::System::Inch { 0.0 } else { 1.0 };
    rising("threads", table::ALL, |row| {
        // Inch threads are counted by the inch, metric ones by their pitch.
        let named = if system(row.system) < 0.5 { -row.pitch } else { row.pitch };
        vec![system(row.system), row.major, named]
    });
    rising("jam nuts", jam_nuts::ALL, |row| vec![system(row.system), row.major]);
    let place =
        |family| rod_ends::Family::ALL.iter().position(|it| *it == family).map_or(f64::NAN, |place| place as f64);
    rising("rod ends", rod_ends::ALL, |row| vec![place(row.family), row.bore]);
    rising("bolt sizes", bolt_threads::ALL, |row| vec![system(row.system), row.diameter]);
    rising("bars", stock::BARS, |size| vec![*size]);
    rising("bars in between", stock::BARS_BETWEEN, |size| vec![*size]);
    rising("metric bars", stock::METRIC_BARS, |size| vec![*size]);
    for bars in [stock::SWAY_LINK_BARS, stock::METRIC_SWAY_LINK_BARS] {
        rising("bars for sway-bar links", bars, |size| vec![*size]);
    }
    let modulus = |(outside, wall): &(f64, f64)| (outside.powi(4) - (outside - 2.0 * wall).powi(4)) / outside;
    rising("tubes", stock::TUBES, |tube| vec![modulus(tube)]);
    rising("fractions", drills::FRACTIONS, |row| vec![row.diameter]);
    rising("letters", drills::LETTERS, |row| vec![row.diameter]);
    rising("metric drills", drills::METRIC, |row| vec![row.diameter]);
    for grade in bolts::GRADES {
        rising(grade.id, grade.rows, |row| vec![row.over]);
    }
    let order: Vec<&str> = table::ALL.iter().map(|row| row.id).collect();
    let at = |id: &str| order.iter().position(|it| *it == id);
    let listed = |rows: Vec<&'static str>| rows.windows(2).all(|pair| at(pair[0]) <= at(pair[1]));
    assert!(listed(thread_limits::LIMITS.iter().map(|row| row.thread).collect()), "tabled limits");
    assert!(listed(thread_limits::STRESS_AREAS.iter().map(|row| row.thread).collect()), "tabled areas");
}

#[test]
fn what_is_found_is_what_was_asked_for() {
    for row in table::ALL {
        assert_eq!(table::find(row.id), Some(row));
    }
    for row in rod_ends::ALL {
        assert_eq!(rod_ends::find(row.id), Some(row));
    }
    for row in materials::ALL.iter().chain(materials::BESIDE_A_WELD) {
        assert_eq!(materials::find(row.id), Some(*row));
    }
    for row in bolts::GRADES {
        assert_eq!(bolts::find(row.id), Some(*row));
    }
    assert_eq!(materials::find(materials::DEFAULT), Some(materials::default_row()));
    for (system, id) in [(System::Inch, "grade-8"), (System::Metric, "class-10-9")] {
        assert_eq!(bolts::default_grade(system).id, id);
        assert_eq!(bolts::default_grade(system).system, system);
    }
    assert_eq!(
        (
            table::find("1-13").is_none(),
            rod_ends::find("").is_none(),
            materials::find("7075").is_none(),
            bolts::find("9").is_none()
        ),
        (true, true, true, true)
    );
}

#[test]
fn every_rod_end_leads_to_a_thread_and_a_jam_nut() {
    for row in rod_ends::ALL {
        let thread = table::find(row.thread);
        assert!(thread.is_some(), "{} has no thread", row.id);
        assert!(thread.and_then(jam_nuts::for_thread).is_some(), "{} has no jam nut", row.id);
        assert!(
            row.label.contains(thread.map_or("?", |thread| thread.label.trim_end_matches(" UNF"))),
            "{} is labeled {}",
            row.id,
            row.label
        );
        let suffix = match row.family {
            rod_ends::Family::Wide => "SAE wide",
            rod_ends::Family::Narrow => "SAE narrow",
            rod_ends::Family::SeriesK => "series K",
        };
        assert!(row.label.ends_with(suffix), "{} is labeled {}", row.id, row.label);
        // "7/8 × 3/4" is read both ways, so shank and bore are named apart.
        let apart = row.label.split_once(" shank × ").and_then(|(_, rest)| rest.split_once(" bore, "));
        let System::Inch = thread.map_or(System::Metric, |thread| thread.system) else {
            assert_eq!(apart.map(|(bore, _)| bore), Some(&*format!("{:.0} mm", row.bore / mm(1.0))), "{}", row.label);
            continue;
        };
        assert_eq!(
            apart.map(|(bore, _)| bore),
            Some(&*linkwright::quantity::show(row.bore, Kind::Length, System::Inch)),
            "{}",
            row.label
        );
    }
    for family in rod_ends::Family::ALL {
        assert!(rod_ends::ALL.iter().any(|row| row.family == family), "{} is empty", family.id());
    }
}
