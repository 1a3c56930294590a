//! Plans that can be followed by hand, what a plan says where it cannot be made, and what a rig asks for.

use linkwright::document::Document;
use linkwright::engine::shop::cut_plan::{Blank, CutPlan, MOST_NODES, Saw, Source, Stock, Why, cut_plan, demands};
use linkwright::engine::tables::materials::{self, Form};
use linkwright::engine::{report, report_on};
use linkwright::quantity::{inch, lb_per_in3, lbf};
use linkwright::report::Part;
use linkwright::shop::money::Cents;

use super::dice::Dice;
use super::links::{hard, sized};
use super::{NO_SAW, demand, largest_left, new_bars, remnant};

/// What stands in each bar, in inches.
fn inches(plan: &CutPlan) -> Vec<(f64, Vec<f64>, f64)> {
    let round = |length: f64| (length / inch(1.0) * 1e6).round() / 1e6;
    plan.bars
        .iter()
        .map(|bar| {
            let pieces = bar.pieces.iter().map(|piece| round(piece.length)).collect();
            (round(bar.stock.length), pieces, round(bar.left))
        })
        .collect()
}

#[test]
fn a_rig_of_eight_links_from_12_ft_bars() {
    // 2 × 40, 2 × 36, 2 × 30, 2 × 28 in: 268 in with 8 cuts of 1/8 in is 269 in, so two bars of 144 in (288 in) are the
    // least. 40 + 36 + 36 + 30 fills one to 142.5 of 144 in; the other then holds 126.5.
    let saw = Saw { kerf: inch(0.125), ..NO_SAW };
    let of = [(inch(40.0), 2), (inch(36.0), 2), (inch(30.0), 2), (inch(28.0), 2)];
    let plan = cut_plan(&demand(&of), &[new_bars(inch(144.0))], &saw);
    assert!(plan.proven && plan.at_least == 2 && plan.not_cut.is_empty());
    // The largest piece: the fuller bar takes 142 and 4 cuts, the other 126 and 4 cuts, which leaves 17.5 in.
    assert!((largest_left(&plan) - inch(17.5)).abs() < 1e-9, "{:?}", inches(&plan));
    assert_eq!((plan.totals.new_bars, plan.totals.remnants), (2, 0));
    let weight = lb_per_in3(0.101) * std::f64::consts::PI * inch(1.0) * inch(1.0) * inch(288.0);
    assert!((plan.totals.weight_bought - weight).abs() < 1e-9 * weight, "{}", plan.totals.weight_bought / lbf(1.0));
}

#[test]
fn remnants_are_used_before_a_bar_is_bought() {
    let stock = [new_bars(inch(144.0)), remnant(inch(41.0)), remnant(inch(60.0)), remnant(inch(12.0))];
    let plan = cut_plan(&demand(&[(inch(40.0), 1)]), &stock, &NO_SAW);
    assert_eq!(inches(&plan), [(41.0, vec![40.0], 1.0)], "the shortest that does");
    assert!(plan.proven && plan.totals.new_bars == 0 && plan.at_least == 0);
    assert_eq!(plan.totals.cost, Some(Cents(0)));
    // Two blanks into one remnant of 90 rather than into two.
    let stock = [remnant(inch(44.0)), remnant(inch(45.0)), remnant(inch(90.0))];
    let plan = cut_plan(&demand(&[(inch(40.0), 2)]), &stock, &NO_SAW);
    assert_eq!(inches(&plan), [(90.0, vec![40.0, 40.0], 10.0)]);
}

#[test]
fn the_shorter_of_two_stock_lengths_is_taken_where_it_does() {
    let long = Stock { cost: Some(Cents(9000)), ..new_bars(inch(240.0)) };
    let short = Stock { cost: Some(Cents(5000)), ..new_bars(inch(144.0)) };
    let plan = cut_plan(&demand(&[(inch(40.0), 3)]), &[long.clone(), short.clone()], &Saw::ASSUMED);
    assert_eq!((plan.bars.len(), plan.totals.cost, plan.proven), (1, Some(Cents(5000)), true));
    // Four do not go into one short bar: one long one is fewer than two.
    let plan = cut_plan(&demand(&[(inch(40.0), 4)]), &[long, short], &Saw::ASSUMED);
    assert_eq!((plan.bars.len(), plan.totals.cost, plan.proven), (1, Some(Cents(9000)), true));
}

#[test]
fn a_fit_is_exact() {
    // Three lengths fill 144 in to the last 1/64 and the last 0.001 in; one more of either does not fit.
    for (a, b, step) in [(47.0 + 1.0 / 64.0, 48.0, 1.0 / 64.0), (47.123, 48.0, 0.001)] {
        let last = 144.0 - a - b;
        let plan = cut_plan(&demand(&[(inch(a), 1), (inch(b), 1), (inch(last), 1)]), &[new_bars(inch(144.0))], &NO_SAW);
        assert_eq!((plan.totals.new_bars, plan.proven), (1, true));
        assert!(plan.bars[0].left < 1e-8);
        let of = [(inch(a), 1), (inch(b), 1), (inch(last + step), 1)];
        let plan = cut_plan(&demand(&of), &[new_bars(inch(144.0))], &NO_SAW);
        assert_eq!((plan.totals.new_bars, plan.at_least), (2, 2));
    }
}

#[test]
fn kerf_trim_and_grip_take_their_share() {
    // 3 × 47 = 141 in of 144 in: 3 in are left for cuts and ends.
    let of = [(inch(47.0), 3)];
    let bars = |kerf: f64, trim: f64, grip: f64| {
        let saw = Saw { kerf: inch(kerf), trim: inch(trim), grip: inch(grip), keep: 0.0 };
        cut_plan(&demand(&of), &[new_bars(inch(144.0))], &saw).totals.new_bars
    };
    assert_eq!(bars(1.5, 0.0, 0.0), 1, "two cuts of 1-1/2 in: the last blank ends where the bar does");
    assert_eq!(bars(1.501, 0.0, 0.0), 2);
    assert_eq!(bars(0.0, 1.5, 0.0), 1, "1-1/2 in off each end");
    assert_eq!(bars(0.0, 1.501, 0.0), 2);
    assert_eq!(bars(0.5, 0.5, 0.0), 1, "both ends 1/2 in, each with a cut, and two cuts between: 3 in");
    assert_eq!(bars(0.5, 0.501, 0.0), 2);
    assert_eq!(bars(0.0, 0.0, 3.0), 1, "3 in to hold on to");
    assert_eq!(bars(0.0, 0.0, 3.001), 2);
    assert_eq!(bars(0.0, 1.0, 2.0), 1, "what is held takes the trim in");
    assert_eq!(bars(0.0, 1.0, 2.001), 2);
}

#[test]
fn what_cannot_be_cut_is_named() {
    let why = |of: &[(f64, usize)], stock: &[Stock]| {
        let plan = cut_plan(&demand(of), stock, &Saw::ASSUMED);
        assert!(!plan.proven, "a plan that leaves blanks out proves nothing");
        let told: Vec<(Why, usize)> = plan.not_cut.iter().map(|not| (not.why, not.blank.count)).collect();
        (told, plan.bars.len())
    };
    assert_eq!(why(&[(inch(40.0), 2)], &[]), (vec![(Why::NoStock, 2)], 0));
    assert_eq!(why(&[(inch(40.0), 2), (inch(150.0), 1)], &[new_bars(inch(144.0))]), (vec![(Why::TooLong, 1)], 1));
    let two = Stock { count: Some(2), ..new_bars(inch(144.0)) };
    assert_eq!(why(&[(inch(40.0), 7)], &[two]), (vec![(Why::UsedUp, 1)], 2));
    for length in [f64::NAN, f64::INFINITY, -1.0, 0.0, 1e9] {
        assert_eq!(why(&[(length, 1), (inch(40.0), 1)], &[new_bars(inch(144.0))]), (vec![(Why::NoLength, 1)], 1));
        assert_eq!(why(&[(inch(40.0), 1)], &[new_bars(length)]), (vec![(Why::NoStock, 1)], 0));
    }
    let plan = cut_plan(&demand(&[]), &[new_bars(inch(144.0))], &Saw::ASSUMED);
    assert!(plan.bars.is_empty() && plan.not_cut.is_empty());
}

#[test]
fn a_price_is_summed_only_where_every_bar_has_one() {
    let stock = [Stock { cost: Some(Cents(4250)), count: Some(1), ..new_bars(inch(144.0)) }, new_bars(inch(144.0))];
    let plan = cut_plan(&demand(&[(inch(60.0), 2)]), &stock, &Saw::ASSUMED);
    assert_eq!(plan.totals.cost, Some(Cents(4250)), "the priced one is taken first");
    let plan = cut_plan(&demand(&[(inch(60.0), 4)]), &stock, &Saw::ASSUMED);
    assert_eq!((plan.totals.new_bars, plan.totals.cost), (2, None));
}

#[test]
fn a_rig_asks_for_what_its_parts_list_says() {
    let mut document = Dice(9).rig();
    document.rig = hard().rig;
    for (at, link) in document.links.iter_mut().enumerate() {
        link.length = (at % 4 > 0).then(|| inch(30.0 + at as f64));
    }
    let reports = report(&document).links;
    let asked = demands(&[Source { build: "", document: &document, reports: &reports }]);
    let listed = linkwright::engine::rig(&document, &reports);
    assert_eq!(asked.open, listed.open);
    let bars: Vec<&Part> = listed.parts.iter().filter(|part| matches!(part, Part::Bar { .. })).collect();
    assert_eq!(asked.of.len(), bars.len());
    for part in bars {
        let Part::Bar { material, outside_diameter, wall, cuts } = part else { continue };
        let of = asked.of.iter().find(|of| of.is_cut_from(material.id, *outside_diameter, *wall)).expect("that stock");
        assert_eq!(of.blanks.iter().map(|blank| blank.count).sum::<usize>(), part.count());
        let sum: f64 = of.blanks.iter().map(|blank| blank.length * blank.count as f64).sum();
        let whole: f64 = cuts.iter().map(|cut| cut.length * cut.count as f64).sum();
        assert!((sum - whole).abs() < 1e-6);
        assert!(of.blanks.iter().all(|blank| blank.provisional), "rod ends that nobody measured");
    }
}

#[test]
fn builds_that_use_one_bar_are_cut_together() {
    let [first, second] = [2.0, 2.0].map(|size| sized(size, "3/4-16", "3/4-16"));
    let mut tube = hard();
    tube.links[0].material = materials::ALL.iter().find(|metal| metal.form == Form::Tube).map(|metal| metal.id);
    let of = |document: &Document| vec![report_on(document, 0)];
    let reports = [of(&first), of(&second), of(&tube), of(&Document::default())];
    let nothing = Document::default();
    let documents = [("One", &first), ("Two", &second), ("Tube", &tube), ("Empty", &nothing)];
    let sources: Vec<Source> = documents
        .iter()
        .zip(&reports)
        .map(|((build, document), reports)| Source { build, document, reports })
        .collect();
    let asked = demands(&sources);
    assert_eq!((asked.of.len(), asked.open), (2, 1));
    let builds: Vec<&str> = asked.of[0].blanks.iter().map(|blank| blank.build.as_str()).collect();
    assert_eq!(builds, ["One", "Two"]);
    assert!(asked.of[1].wall > 0.0);
    let link: Vec<&Blank> = asked.of[0].blanks.iter().collect();
    assert_eq!(link[0].link, "Front lower links");
}

#[test]
fn a_search_that_stops_says_how_many_bars_at_least() {
    // More than 60 blanks are not searched: 61 × 50 in, two to a bar of 144 in, and the count alone proves 31 bars.
    let plan = cut_plan(&demand(&[(inch(50.0), 61)]), &[new_bars(inch(144.0))], &NO_SAW);
    assert_eq!((plan.totals.new_bars, plan.at_least), (31, 31));
    assert!(plan.nodes <= MOST_NODES);
}
