//! What the engine gives beside what finite elements and a section library give for the same random links.
//!
//! The values stand in `tests/second_opinion/` with the script that made them and the versions of its libraries. They
//! were made without a look at this engine.
#![cfg(not(target_arch = "wasm32"))]

use std::path::Path;

use linkwright::engine::formulas::sections;
use linkwright::engine::stepped::{Levers, Step, critical_load, deflection_per_force};

/// How far sections, beams and folding pushes may differ, as a share.
const SECTIONS: f64 = 1e-7;
const BEAMS: f64 = 1e-4;
const FOLDING: f64 = 1e-5;

/// The rows of a file as cells by column name.
fn rows(name: &str) -> Vec<Vec<(String, String)>> {
    let path = Path::new(env!("CARGO_MANIFEST_DIR")).join("tests/second_opinion").join(name);
    let text = std::fs::read_to_string(&path).unwrap_or_else(|why| panic!("{}: {why}", path.display()));
    let mut lines = text.lines();
    let head: Vec<&str> = lines.next().expect("a head").split(',').collect();
    lines
        .map(|line| head.iter().zip(line.split(',')).map(|(name, cell)| (name.to_string(), cell.to_string())).collect())
        .collect()
}

fn cell<'a>(row: &'a [(String, String)], name: &str) -> &'a str {
    &row.iter().find(|(head, _)| head == name).unwrap_or_else(|| panic!("a column {name}")).1
}

fn number(row: &[(String, String)], name: &str) -> f64 {
    cell(row, name).parse().unwrap_or_else(|why| panic!("{name} {:?}: {why}", cell(row, name)))
}

/// Collects what differs by more than allowed.
#[derive(Default)]
struct Compared {
    told: Vec<String>,
    count: usize,
    worst: f64,
}

impl Compared {
    fn compare(&mut self, what: &str, here: f64, there: f64, allowed: f64) {
        let off = (here - there).abs() / there.abs();
        self.count += 1;
        self.worst = self.worst.max(off);
        // A value that is no number is never close.
        if off.is_nan() || off > allowed {
            self.told.push(format!("{what}: {here} here, {there} there, {off:.1e} apart"));
        }
    }

    fn finish(self, least: usize) {
        println!("{} values, at most {:.1e} apart", self.count, self.worst);
        assert!(self.told.is_empty(), "{}", self.told.join("\n"));
        assert!(self.count >= least, "only {} values", self.count);
    }
}

#[test]
fn sections_agree_with_a_section_library() {
    let mut compared = Compared::default();
    for row in rows("sections.csv") {
        let id = cell(&row, "id");
        let size = [number(&row, "outside_m"), number(&row, "bore_m")];
        let (area, weak, strong) = if cell(&row, "across_flats_m").is_empty() {
            let second = sections::RING_SECOND_MOMENT.value(&size);
            (sections::RING_AREA.value(&size), second, second)
        } else {
            let angle = sections::FLATS_HALF_ANGLE.value(&[number(&row, "across_flats_m"), size[0]]);
            let given = [size[0], angle, size[1]];
            (
                sections::FLATS_AREA.value(&given),
                sections::FLATS_WEAK_SECOND_MOMENT.value(&given),
                sections::FLATS_STRONG_SECOND_MOMENT.value(&given),
            )
        };
        compared.compare(&format!("{id} area"), area, number(&row, "area_m2"), SECTIONS);
        compared.compare(&format!("{id} weak"), weak, number(&row, "second_moment_weak_m4"), SECTIONS);
        compared.compare(&format!("{id} strong"), strong, number(&row, "second_moment_strong_m4"), SECTIONS);
    }
    compared.finish(60);
}

#[test]
fn links_agree_with_finite_elements() {
    let mut compared = Compared::default();
    let links = rows("links.csv");
    assert!(links.len() >= 40, "{} links", links.len());
    for row in links {
        let id = cell(&row, "id");
        let steps: Vec<Step> = cell(&row, "pieces")
            .split(';')
            .map(|piece| {
                let (length, stiffness) = piece.split_once(':').expect("length:EI");
                let number = |text: &str| text.parse::<f64>().expect("a number");
                Step { length: number(length), modulus: number(stiffness), second_moment: 1.0 }
            })
            .collect();
        let (push, strike, at) = (number(&row, "push_N"), number(&row, "strike_N"), number(&row, "at_m"));
        let levers = Levers::new(&steps, push);
        assert!(levers.stand(), "{id} folds");
        let station = number(&row, "moment_station_m");
        for (what, here, column, allowed) in [
            ("deflection", strike * deflection_per_force(&steps, at), "deflection_m", BEAMS),
            ("pushed deflection", strike * levers.deflection(at, at), "pushed_deflection_m", BEAMS),
            ("pushed moment", strike * levers.moment(station, at), "pushed_moment_Nm", BEAMS),
            ("folding push", critical_load(&steps), "folding_N", FOLDING),
        ] {
            compared.compare(&format!("{id} {what}"), here, number(&row, column), allowed);
        }
    }
    compared.finish(160);
}
