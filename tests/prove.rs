//! What stands beside the verdicts: marks of changed defaults, what moves the answer, other metals.

mod links;

use links::{answer, find, hard, sized};
use linkwright::document::*;
use linkwright::engine::formula::Line;
use linkwright::engine::sentence::spoken;
use linkwright::engine::{in_other_metals, report, sensitivity};
use linkwright::inputs::{At, NUMBERS};
use linkwright::quantity::{System, inch, lbf};
use linkwright::report::Answer;

#[test]
fn a_finding_names_the_changed_defaults_it_rests_on() {
    let mut document = hard();
    (document.rig.drop, document.rig.traction, document.links[0].shank_yield) = (Some(inch(0.4)), Some(0.9), Some(9e8));
    let answer = answer(&document);
    assert_eq!(find(&answer, "bar-bending").changed, ["traction", "drop"]);
    assert_eq!(find(&answer, "shank-bending").changed, ["shank-yield", "traction", "drop"]);
    assert_eq!(find(&answer, "buckling").changed, ["traction"]);
    assert_eq!(find(&answer, "wall").changed, [""; 0]);
}

#[test]
fn each_sensitivity_row_is_what_the_report_says() {
    for document in [hard(), {
        let mut d = hard();
        d.links[0].material = Some("1026-dom");
        d
    }] {
        let rows = sensitivity(&document, 0);
        assert!(rows.len() >= 10, "{}", rows.len());
        let size = |d: &mut Document, a: &Answer| {
            d.links[0].outside_diameter = Some(a.link.outside_diameter);
            d.links[0].wall = Some(a.link.wall);
            for (end, made) in d.links[0].ends.iter_mut().zip(&a.link.ends) {
                end.rod_end = Some(made.rod_end_id);
            }
        };
        let now = answer(&document);
        let mut fixed = document.clone();
        size(&mut fixed, &now);
        let factor = if now.link.wall > 0.0 { "shock" } else { "yield-factor" };
        for id in ["weight", "length", "drop", "shock", factor] {
            assert!(rows.iter().any(|row| row.input == id), "{id}");
        }
        for row in &rows {
            let input = NUMBERS.iter().find(|it| it.id == row.input).expect("an input");
            let at = |value: f64| {
                let mut d = fixed.clone();
                (input.set)(&mut d, At::default(), Some(value));
                answer(&d)
            };
            let top = |a: &Answer| {
                let f = &a.findings[a.weakest.expect("a weakest")];
                (f.utilization.expect("a number"), f.part)
            };
            let more = if row.now > 0.0 { row.now * 1.1 } else { 0.002 * input.most }.min(input.most);
            assert!((row.more - more).abs() < 1e-12 * more.abs().max(1.0), "{row:?}");
            assert!((row.used_now - top(&now).0).abs() < 1e-12, "{row:?}");
            assert_eq!((row.used_then, row.decides), top(&at(row.more)), "{}", row.input);
            let up = row.used_then > row.used_now;
            let passes =
                |answer: &Answer| answer.findings.iter().filter_map(|f| f.utilization).all(|u| u <= 1.0 + 1e-9);
            let fails = !passes(&now);
            match row.limit {
                Some(limit) if !fails => {
                    assert_eq!(limit > row.now, up, "{row:?}");
                    let hair = 1e-6 * (input.most - input.least) * if up { 1.0 } else { -1.0 };
                    assert!(passes(&at(limit - hair)), "{row:?}");
                    if row.input != "length" {
                        assert!(!passes(&at(limit + hair)), "{row:?}");
                    }
                }
                Some(limit) => assert!((limit - row.now).abs() < 1e-12, "{row:?}"),
                None => assert!(passes(&at(if up { input.most } else { input.least })), "{row:?}"),
            }
        }
        assert!(
            rows.windows(2).all(|p| (p[0].used_then - p[0].used_now).abs() >= (p[1].used_then - p[1].used_now).abs())
        );
    }
}

#[test]
fn other_metals_are_sized_as_if_they_were_chosen() {
    for (document, ids) in [
        (hard(), ["7075-t6", "6061-t6", "1026-dom", "4130-n"]),
        (sized(2.25, "wide-12", "wide-16"), ["7075-t6", "6061-t6", "1026-dom", "4130-n"]),
    ] {
        let rows = in_other_metals(&document, 0);
        assert_eq!(rows.iter().map(|row| row.material.id).collect::<Vec<_>>(), ids);
        for row in &rows {
            let mut d = document.clone();
            (d.links[0].material, d.links[0].outside_diameter) = (Some(row.material.id), None);
            let smallest = row.smallest.as_ref().expect("a smallest");
            if let Some(numbers) = answer(&d).sizing.by_numbers {
                assert_eq!(
                    (smallest.outside_diameter, smallest.wall, smallest.thread, smallest.utilization),
                    (numbers.outside_diameter, numbers.wall, numbers.thread, numbers.utilization)
                );
            } else {
                assert!(!smallest.passes);
            }
            let same = row.same.as_ref().expect("the same size is stocked");
            assert!((same.outside_diameter - answer(&document).link.outside_diameter).abs() < 1e-12);
            assert_eq!(smallest.thread, "1-1/4-12");
            d.links[0].outside_diameter = Some(same.outside_diameter);
            d.links[0].wall = Some(same.wall);
            assert_eq!(same.passes, answer(&d).findings.iter().all(|finding| finding.recommendable));
        }
    }
}

#[test]
fn nothing_is_said_of_a_strike_that_is_none() {
    let mut document = hard();
    document.rig.strike_share = Some(0.0);
    let answer = answer(&document);
    let says = spoken(&answer.notes[0].says, System::Inch);
    assert!(!says.contains("times the strike") && !says.contains("would have to drop"), "{says}");
}

#[test]
fn what_moves_the_answer_leaves_nothing_out() {
    use linkwright::inputs::{Group, Scope};
    let rows = sensitivity(&hard(), 0);
    for row in &rows {
        let input = NUMBERS.iter().find(|it| it.id == row.input).expect("an input");
        assert!((row.used_then - row.used_now).abs() >= 1e-6 && row.more > row.now, "{row:?}");
        assert!(
            input.scope != Scope::End && matches!(input.group, Group::Loads | Group::Factors)
                || ["length", "weight", "visible", "shank-yield", "ear"].contains(&row.input),
            "{row:?}"
        );
    }
    let mut none = hard();
    none.links[0].own_axial = Some(0.0);
    let none = answer(&none);
    let levers: Vec<f64> = none.notes[0]
        .working
        .iter()
        .filter_map(|l| match l {
            Line::Solved { value, .. } => Some(*value),
            _ => None,
        })
        .collect();
    assert!((levers[0] / levers[1] - 1.0).abs() < 1e-9, "{levers:?}");
    let rows = in_other_metals(&hard(), 0);
    for row in rows.iter().filter(|row| row.material.id == "1026-dom") {
        let same = row.same.as_ref().expect("a size");
        let walls: Vec<f64> = linkwright::engine::tables::stock::TUBES
            .iter()
            .filter(|t| (t.0 - same.outside_diameter).abs() < 1e-9)
            .map(|t| t.1)
            .collect();
        if !same.passes {
            assert!((same.wall - walls.last().expect("a wall")).abs() < 1e-12);
        }
        assert!((same.beyond.deflection / (answer(&hard()).loads.strike * 1e-7)).is_finite());
    }
    let light = {
        let mut d = hard();
        d.rig.weight = Some(lbf(1500.0));
        d.rig.usage = Some(Use::Easy);
        d
    };
    for row in in_other_metals(&light, 0) {
        if let Some(same) = row.same.filter(|s| s.passes && s.wall > 0.0) {
            let mut d = light.clone();
            (d.links[0].material, d.links[0].outside_diameter) = (Some(row.material.id), Some(same.outside_diameter));
            for t in linkwright::engine::tables::stock::TUBES
                .iter()
                .filter(|t| (t.0 - same.outside_diameter).abs() < 1e-9 && t.1 < same.wall)
            {
                d.links[0].wall = Some(t.1);
                assert!(
                    report(&d).links[0].answer().is_none_or(|a| a.findings.iter().any(|f| !f.recommendable)),
                    "{}",
                    row.material.id
                );
            }
        }
    }
    // The deflection under the strike, of a plain bar as a check of its size.
    let a = answer(&hard());
    let d = in_other_metals(&hard(), 0)[0].same.as_ref().expect("a size").beyond.deflection;
    let give = a
        .loads
        .working
        .iter()
        .find_map(|l| match l {
            Line::Solved { value, .. } => Some(*value),
            _ => None,
        })
        .expect("a give");
    assert!((d / (a.loads.strike * give) - 1.0).abs() < 1e-9, "{d}");
    let mut least = sized(2.25, "wide-16", "wide-16");
    least.links[0].ends[1].least_engagement = Some(inch(1.9));
    assert!(answer(&least).link.ends[1].marks.iter().any(|m| m.name == "What you require"));
    assert!(answer(&least).link.ends[0].marks.iter().all(|m| m.name != "What you ask for"));
    let mut shallow = sized(2.25, "wide-16", "wide-16");
    for end in &mut shallow.links[0].ends {
        end.tapped_depth = Some(inch(1.5));
    }
    assert!(spoken(&find(&answer(&shallow), "bottoming").says, System::Inch).contains("locks on the bottom"));
}

#[test]
fn a_value_that_is_nothing_now_is_moved_too() {
    let mut slow = hard();
    slow.rig.usage = Some(Use::Slow);
    let rows = sensitivity(&slow, 0);
    assert!(rows.iter().any(|row| row.input == "drop" && row.now.abs() < 1e-12 && row.more > 0.0), "{rows:?}");
}

#[test]
fn the_same_size_in_another_metal_is_one_that_is_stocked() {
    let tubes = linkwright::engine::tables::stock::TUBES;
    for row in in_other_metals(&hard(), 0).into_iter().filter(|row| row.material.id == "1026-dom") {
        let same = row.same.expect("2-1/4 in tube is stocked");
        assert!(tubes.contains(&(same.outside_diameter, same.wall)), "{same:?}");
    }
    let rows = in_other_metals(&sized(3.0, "wide-16", "wide-16"), 0);
    let tube = rows.iter().find(|row| row.material.id == "1026-dom").expect("compared");
    assert!(tube.same.is_none(), "no 3 in tube is stocked: {tube:?}");
    for size in rows.iter().flat_map(|row| row.smallest.iter().chain(&row.same)) {
        assert!(size.beyond.drop.is_none_or(|drop| drop >= 0.0), "{size:?}");
    }
}

#[test]
fn the_note_on_repeated_loads_follows_the_stress() {
    let mut light = sized(2.25, "wide-16", "wide-16");
    for (strike, words) in
        [(3000.0, "hundreds of thousands"), (5400.0, "tens of thousands"), (12_000.0, "ten thousand")]
    {
        light.links[0].own_strike = Some(lbf(strike));
        let answer = answer(&light);
        let note = answer.notes.iter().find(|note| note.id == "fatigue").expect("a note");
        let says = spoken(&note.says, System::Inch);
        let struck = says.split("Each full strike").nth(1).unwrap_or_default();
        assert!(struck.contains(words), "{strike}: {says}");
    }
}

#[test]
fn numbers_govern_where_they_ask_for_more_than_habit() {
    let mut weaker = hard();
    weaker.links[0].material = Some("7075-t7351");
    weaker.links[0].own_strike = Some(lbf(6800.0));
    let governs = spoken(&answer(&weaker).sizing.governs, System::Inch);
    assert!(governs.contains("The calculation decides"), "{governs}");
}
