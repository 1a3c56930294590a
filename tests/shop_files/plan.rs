//! The cut plan in words, and its bars to scale.

use linkwright::engine::shop::cut_plan::{Blank, Demand, Demands, Saw, Stock, cut_plan};
use linkwright::engine::tables::materials;
use linkwright::present::drawing::{Drawing, Layout, Mark, bars};
use linkwright::present::make::cut_plan::{open, rows};
use linkwright::present::words::Units;
use linkwright::quantity::{System, inch};
use linkwright::shop::money::Cents;

use super::legible::legible;
use super::{SYSTEMS, plans, rigs};

fn demand(of: &[(f64, usize)]) -> Demand {
    let blank = |(length, count): &(f64, usize)| Blank {
        length: inch(*length),
        count: *count,
        link: "Front lower links".to_string(),
        build: String::new(),
        provisional: false,
    };
    Demand {
        material: materials::default_row(),
        outside_diameter: inch(2.0),
        wall: 0.0,
        blanks: of.iter().map(blank).collect(),
    }
}

fn bar(feet: f64) -> Stock {
    Stock { length: inch(12.0 * feet), count: None, cost: Some(Cents(4250)), remnant: false, label: String::new() }
}

#[test]
fn a_plan_says_how_many_bars_and_whether_fewer_would_do() {
    let saw = Saw { kerf: inch(0.125), ..Saw::ASSUMED };
    let told = rows(&cut_plan(&demand(&[(40.0, 4), (36.0, 4)]), &[bar(12.0)], &saw), System::Inch);
    assert_eq!(told.title, "2 in 7075-T6/T651 bar");
    assert_eq!(told.summary, "3 bars of 12 ft; proven: no plan needs fewer new bars");
    assert_eq!(told.bars[0].bar, "12 ft bar");
    assert!(told.bars[0].cuts.ends_with("(front lower links)"), "{}", told.bars[0].cuts);
    assert!(told.sentences.contains(&"New bars cost 127.50.".to_string()), "{:?}", told.sentences);
    let cut: usize = told.bars.iter().map(|row| row.count).sum();
    assert_eq!((cut, told.not_cut.len()), (3, 0));
    let told = rows(&cut_plan(&demand(&[(40.0, 4), (150.0, 2)]), &[bar(12.0)], &saw), System::Inch);
    assert_eq!(told.summary, "2 bars of 12 ft; not every blank is cut");
    assert_eq!(
        told.not_cut,
        ["Not cut: 2 × 150 in for front lower links. No bar is long enough once ends and grip are taken off."]
    );
    let remnant = Stock { remnant: true, count: Some(1), label: "rack 2".to_string(), ..bar(4.0) };
    let told = rows(&cut_plan(&demand(&[(40.0, 1)]), &[bar(12.0), remnant], &saw), System::Inch);
    assert_eq!(told.summary, "1 remnant of 4 ft; no new bar is needed");
    assert_eq!((told.bars[0].bar.as_str(), told.bars[0].left.as_str()), ("remnant of 4 ft, rack 2", "7-5/8 in, scrap"));
    // No new bar is taken, so none is weighed.
    assert!(told.sentences.iter().any(|line| line.starts_with("The blanks weigh ")), "{:?}", told.sentences);
    assert!(!told.sentences.iter().any(|line| line.contains("New bars")), "{:?}", told.sentences);
    let assumed = rows(&cut_plan(&demand(&[(40.0, 1)]), &[bar(12.0)], &Saw::ASSUMED), System::Inch).saw;
    assert!(assumed.ends_with("Assumed: common practice, no source."), "{assumed}");
    assert!(!told.saw.contains("Assumed"), "a saw that was entered");
}

#[test]
fn what_is_not_proven_says_at_least_how_many() {
    let mut plan = cut_plan(&demand(&[(40.0, 4), (36.0, 4)]), &[bar(12.0)], &Saw::ASSUMED);
    (plan.at_least, plan.proven) = (2, false);
    let told = rows(&plan, System::Inch);
    assert_eq!(told.summary, "3 bars of 12 ft; not proven: at least 2 new bars are needed");
    assert!(told.sentences[0].ends_with("is not ruled out."), "{}", told.sentences[0]);
}

#[test]
fn entries_without_an_answer_are_told() {
    assert_eq!(open(&Demands::default()), None);
    let told = open(&Demands { open: 2, ..Demands::default() });
    assert_eq!(told.as_deref(), Some("2 entries have no answer yet: their blanks are not in the plan."));
}

/// The widths of all blocks of a class.
fn wide(drawing: &Drawing, class: &str) -> Vec<f64> {
    let blocks = drawing.marks.iter().filter_map(|mark| match mark {
        Mark::Path { class: name, points, .. } if name == class => Some(points[1].0 - points[0].0),
        _ => None,
    });
    blocks.collect()
}

#[test]
fn bars_are_drawn_to_scale_and_legible() {
    let mut seen = 0;
    for document in rigs(17, 9) {
        for plan in plans(&document) {
            for system in SYSTEMS {
                for layout in Layout::ALL {
                    let drawing = bars::bars(&plan, system, layout);
                    assert_eq!(legible(&drawing), [""; 0], "{layout:?}");
                    let drawn = wide(&drawing, "ghost");
                    let longest = plan.bars.iter().map(|bar| bar.stock.length).fold(0.0, f64::max);
                    let scale = (layout.width() - 6.0) / longest;
                    assert!(drawn.len() <= plan.bars.len() && !drawn.is_empty());
                    assert!((drawn.iter().fold(0.0_f64, |a, b| a.max(*b)) - longest * scale).abs() < 1e-6);
                    let blank = plan.bars[0].pieces[0].length * scale;
                    assert!((wide(&drawing, "part")[0] - blank).abs() < 1e-6);
                    seen += 1;
                }
            }
            let told = rows(&plan, Units::Both);
            assert!(told.sentences.iter().all(|sentence| sentence.ends_with('.')));
            assert!(
                told.sentences.iter().any(|sentence| sentence.contains("measured")),
                "table rod ends are provisional"
            );
        }
    }
    assert!(seen > 60, "only {seen} drawings");
    let nothing = cut_plan(&demand(&[]), &[bar(12.0)], &Saw::ASSUMED);
    assert!(bars::bars(&nothing, System::Inch, Layout::Narrow).is_empty());
}
