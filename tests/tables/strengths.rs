//! Materials and bolts: every value in a sane relation to its neighbors, and lookups at the edges of rows.

use linkwright::engine::tables::materials::{self, Basis, Form, Material, SizeMeans, Strength};
use linkwright::engine::tables::{bolts, stock};
use linkwright::quantity::{KSI, POUND_FORCE, inch, ksi, mm};
use linkwright::source::Obtained;

use crate::same;

fn every_material() -> impl Iterator<Item = &'static Material> {
    materials::ALL.iter().chain(materials::BESIDE_A_WELD).copied()
}

fn material(id: &str) -> &'static Material {
    materials::find(id).unwrap_or_else(|| panic!("{id} is gone"))
}

#[test]
fn strengths_relate_as_they_do_in_metals() {
    for material in every_material() {
        for row in material.rows {
            let (id, at) = (material.id, row.up_to);
            assert!(row.yield_tension < row.ultimate, "{id} to {at}: yields after it breaks");
            assert!(row.yield_compression <= 1.1 * row.yield_tension, "{id} to {at}: pressed yield");
            assert!(row.yield_compression >= 0.7 * row.yield_tension, "{id} to {at}: pressed yield");
            assert!((0.48..=0.68).contains(&(row.shear_ultimate / row.ultimate)), "{id} to {at}: shear");
            assert!(row.bearing_yield.is_none_or(|bearing| bearing > row.yield_tension), "{id} to {at}: bearing");
            assert!(
                row.elongation.is_none_or(|elongation| (0.03..=0.4).contains(&elongation)),
                "{id} to {at}: elongation"
            );
            assert!(row.over < row.up_to, "{id} to {at}: size");
        }
        for (a, b) in material.rows.iter().zip(material.rows.iter().skip(1)) {
            assert!(same(a.up_to, b.over), "{}: rows leave a gap", material.id);
        }
    }
}

#[test]
fn stiffness_and_weight_are_those_of_the_metal() {
    for material in every_material() {
        let steel = material.modulus > ksi(20_000.0);
        let density = material.density / (POUND_FORCE / (inch(1.0) * inch(1.0) * inch(1.0)));
        let expected = if steel { 0.28..0.29 } else { 0.095..0.105 };
        assert!(expected.contains(&density), "{}: {density} lb/in³", material.id);
        assert!((1.0..=1.03).contains(&(material.modulus_compression / material.modulus)), "{}", material.id);
        // Poisson's ratio from the two moduli.
        let poisson = material.modulus / (2.0 * material.shear_modulus) - 1.0;
        assert!((0.28..=0.36).contains(&poisson), "{}: Poisson's ratio {poisson}", material.id);
        // The name for it is earned by elongation, not by being steel.
        let tough = material.rows.iter().all(|row| row.elongation.is_some_and(|elongation| elongation >= 0.05 - 1e-9));
        assert_eq!(material.ductile, steel && tough, "{}", material.id);
        assert_eq!(material.form == Form::Tube, material.size_means == SizeMeans::Wall, "{}", material.id);
    }
}

#[test]
fn every_material_speaks_to_a_rig_owner() {
    for material in every_material() {
        assert!(material.plain.ends_with('.') && material.plain.len() < 140, "{}: {}", material.id, material.plain);
        assert!(!material.label.is_empty() && !material.cautions.is_empty(), "{}", material.id);
        assert!(material.cautions.iter().all(|words| words.ends_with('.')), "{}", material.id);
    }
}

#[test]
fn what_is_assumed_says_so() {
    for material in every_material() {
        for row in material.rows {
            let a513 = row.cite.source.name == "ASTM A513";
            assert_eq!(a513, row.note.contains("assumption"), "{}: {}", material.id, row.note);
            if a513 {
                assert!(row.cite.place.contains("assumed"), "{}", material.id);
                assert!(
                    same(row.yield_compression, row.yield_tension) && same(row.shear_ultimate, 0.6 * row.ultimate),
                    "{}",
                    material.id
                );
            }
        }
    }
    assert!(material("4340-qt150").rows.iter().all(|row| row.basis == Basis::Unstated));
}

fn at(id: &str, inches: f64) -> Option<&'static Strength> {
    let material = material(id);
    match material.size_means {
        SizeMeans::Diameter => material.strength(inch(inches), inch(inches) / 2.0),
        SizeMeans::Wall => material.strength(inch(2.0), inch(inches)),
    }
}

#[test]
fn sizes_find_their_row() {
    let shear = |id: &str, inches: f64| at(id, inches).map(|row| (row.shear_ultimate / KSI).round());
    for (id, inches, expected) in [
        ("7075-t6", 0.75, Some(42.0)),
        ("7075-t6", 2.75, Some(42.0)),
        ("7075-t6", 4.0, Some(40.0)),
        ("7075-t6", 4.01, None),
        ("7075-t6-rolled", 0.75, Some(46.0)),
        ("7075-t6-rolled", 4.0, Some(46.0)),
        ("7075-t6-extruded", 0.25, None),
        ("7075-t6-extruded", 0.5, Some(43.0)),
        ("7075-t6-extruded", 1.499, Some(43.0)),
        ("7075-t6-extruded", 1.5, Some(42.0)),
        ("7075-t6-extruded", 3.0, Some(40.0)),
        ("7075-t6-unknown", 2.0, Some(42.0)),
        ("7075-t6-unknown", 4.25, None),
        ("7075-t7351", 2.0, Some(42.0)),
        ("7075-t7351", 2.25, Some(40.0)),
        ("7075-t7351", 3.25, None),
        ("2024-t351", 0.5, Some(37.0)),
        ("4130-n", 0.188, Some(57.0)),
        ("4130-n", 0.25, Some(54.0)),
        ("4130-qt125", 0.25, None),
        ("4130-qt180", 0.375, Some(108.0)),
        ("4130-qt180", 0.5, None),
        ("1020-dom", 0.5, Some(42.0)),
        ("4340-qt150", 1.75, None),
    ] {
        assert_eq!(shear(id, inches), expected, "{id} at {inches}");
    }
    assert_eq!(material("6061-t6").strength(0.0, 0.0), None);
    assert_eq!(material("6061-t6").strength(f64::NAN, f64::NAN), None);
}

#[test]
fn an_unknown_bar_counts_as_the_weaker_of_two_value_by_value() {
    let unknown = material("7075-t6-unknown");
    let (rolled, extruded) = (material("7075-t6-rolled"), material("7075-t6-extruded"));
    for (unknown, (rolled, extruded)) in
        [unknown.modulus, unknown.modulus_compression, unknown.shear_modulus, unknown.density].into_iter().zip(
            [rolled.modulus, rolled.modulus_compression, rolled.shear_modulus, rolled.density].into_iter().zip([
                extruded.modulus,
                extruded.modulus_compression,
                extruded.shear_modulus,
                extruded.density,
            ]),
        )
    {
        assert!(same(unknown, rolled.min(extruded)));
    }
    let values = |row: &Strength| {
        [row.ultimate, row.yield_tension, row.yield_compression, row.shear_ultimate, row.elongation.unwrap_or(f64::NAN)]
    };
    for step in 0..70 {
        let size = 0.5 + 0.05 * f64::from(step);
        let rows = ["7075-t6-unknown", "7075-t6-rolled", "7075-t6-extruded"].map(|id| at(id, size).map(values));
        let [Some(unknown), Some(rolled), Some(extruded)] = rows else { panic!("{size} in is missing") };
        for ((unknown, rolled), extruded) in unknown.into_iter().zip(rolled).zip(extruded) {
            assert!(same(unknown, rolled.min(extruded)), "{size} in: {unknown} of {rolled} and {extruded}");
        }
    }
    assert!(unknown.rows.iter().all(|row| row.cite.obtained == Obtained::Computed));
}

#[test]
fn a_weld_never_makes_a_tube_stronger() {
    for material in every_material() {
        assert_eq!(material.welded.is_some(), material.form == Form::Tube, "{}", material.id);
        let Some(weld) = material.welded.map(self::material) else { continue };
        for (outside, wall) in stock::TUBES {
            let (Some(before), Some(after)) = (material.strength(*outside, *wall), weld.strength(*outside, *wall))
            else {
                continue;
            };
            assert!(
                after.yield_tension <= before.yield_tension && after.ultimate <= before.ultimate,
                "{} at {wall}",
                material.id
            );
        }
        let reached = stock::TUBES.iter().any(|(outside, wall)| material.strength(*outside, *wall).is_some());
        assert!(reached, "no stock tube is of {}", material.id);
    }
}

#[test]
fn beside_a_weld_only_the_lowest_published_yield_counts() {
    for material in every_material() {
        let Some(weld) = material.welded.map(self::material) else { continue };
        let expected = match material.id {
            id if id.starts_with("1020") => 35.0,
            id if id.starts_with("1026") => 40.0,
            id if id.starts_with("4130") => 50.0,
            id => panic!("{id}: no yield beside a weld is known"),
        };
        for wall in [0.095, 0.188, 0.250, 0.375] {
            let found = weld.strength(inch(2.0), inch(wall)).map(|row| row.yield_tension / KSI);
            assert!(found.is_some_and(|found| (found - expected).abs() < 1e-9), "{}: {found:?} ksi", material.id);
        }
        // Whoever reads the cautions learns it.
        let told = material.cautions.iter().any(|words| words.to_lowercase().contains("beside"));
        assert!(told, "{} does not tell what a weld does", material.id);
    }
}

#[test]
fn every_strength_tells_its_basis_and_its_sizes() {
    for material in every_material() {
        for row in material.rows {
            let place = row.cite.place;
            let basis = match row.basis {
                Basis::A => "A basis",
                Basis::B => "B basis",
                Basis::S => "S basis",
                Basis::Unstated => "no basis stated",
            };
            assert!(place.contains(basis), "{}: {place}", material.id);
            let sizes = if row.up_to.is_finite() {
                format!("to {:.3} in", row.up_to / inch(1.0))
            } else {
                "any wall".to_string()
            };
            assert!(place.contains(&sizes), "{}: {place} should say {sizes}", material.id);
        }
    }
}

#[test]
fn bolts_go_by_their_size() {
    let ultimate = |id: &str, diameter: f64| {
        bolts::find(id).and_then(|grade| grade.strength(diameter)).map(|row| row.ultimate / 1e6)
    };
    let is = |found: Option<f64>, expected: Option<f64>| match (found, expected) {
        (Some(found), Some(expected)) => (found - expected).abs() < 0.01,
        (None, None) => true,
        _ => false,
    };
    let mpa = |ksi: f64| Some(ksi * KSI / 1e6);
    assert!(is(ultimate("grade-5", inch(0.25)), mpa(120.0)));
    assert!(is(ultimate("grade-5", inch(1.0)), mpa(120.0)));
    assert!(is(ultimate("grade-5", inch(1.125)), mpa(105.0)));
    assert!(is(ultimate("grade-8", inch(1.0)), mpa(150.0)));
    assert!(is(ultimate("grade-8", inch(1.75)), None));
    assert!(is(ultimate("grade-8", inch(0.1875)), None));
    assert!(is(ultimate("class-8-8", mm(16.0)), Some(800.0)));
    assert!(is(ultimate("class-8-8", mm(18.0)), Some(830.0)));
    assert!(is(ultimate("class-10-9", mm(30.0)), Some(1040.0)));
    assert!(is(ultimate("class-10-9", mm(42.0)), None));
    for grade in bolts::GRADES {
        for row in grade.rows {
            assert!(row.proof < row.yield_strength && row.yield_strength < row.ultimate, "{}", grade.id);
            assert!(same(row.shear_ultimate, linkwright::engine::tables::SHEAR_SHARE * row.ultimate), "{}", grade.id);
            assert!(
                row.cite.place.contains("shear taken"),
                "{} does not say that its shear strength is an assumption",
                grade.id
            );
        }
    }
}
