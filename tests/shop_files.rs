//! What goes to the shop: the cut plan in words and drawn, DXF files read back, tables that come back, labels that fit.
#![cfg(not(target_arch = "wasm32"))]

mod dice;
#[path = "shop_files/drawing_file.rs"]
mod drawing_file;
#[path = "shop_files/labels.rs"]
mod labels;
#[path = "present/drawing/legible.rs"]
mod legible;
#[allow(dead_code, reason = "not every helper is needed here")]
mod links;
#[path = "shop_files/plan.rs"]
mod plan;
#[path = "shop_files/tables.rs"]
mod tables;

use linkwright::document::{Document, Use};
use linkwright::engine::shop::cut_plan::{CutPlan, Saw, Source, Stock, cut_plan, demands};
use linkwright::engine::tables::materials::{self, Form};
use linkwright::engine::whole_rig;
use linkwright::quantity::{System, inch, lbf};
use linkwright::shop::money::Cents;

const SYSTEMS: [System; 2] = [System::Inch, System::Metric];

/// A tube that can be chosen.
fn tube() -> &'static str {
    materials::ALL.iter().find(|metal| metal.form == Form::Tube).expect("a tube").id
}

/// Random rigs that have an answer for most links.
fn rigs(seed: u64, many: usize) -> Vec<Document> {
    let mut dice = dice::Dice(seed);
    let rig = |_| {
        let mut document = dice.rig();
        document.links.truncate(6);
        document.rig.weight.get_or_insert(lbf(4100.0));
        document.rig.usage.get_or_insert(Use::Hard);
        for link in &mut document.links {
            link.length.get_or_insert(inch(14.0 + dice.next(300) as f64 / 8.0));
            if dice.next(3) == 0 {
                link.material = Some(tube());
            }
        }
        document
    };
    (0..many).map(rig).collect()
}

/// The plans of a rig from bars of 12 ft and a few remnants.
fn plans(document: &Document) -> Vec<CutPlan> {
    let whole = whole_rig(document, None);
    let source = Source { build: "", document, reports: &whole.links };
    let new = Stock { length: inch(144.0), count: None, cost: Some(Cents(8750)), remnant: false, label: String::new() };
    let stock = [
        Stock { length: inch(43.3), count: Some(1), remnant: true, label: "rack 2".to_string(), ..new.clone() },
        Stock { length: inch(90.0), count: Some(1), remnant: true, ..new.clone() },
        new,
    ];
    demands(&[source]).of.iter().map(|demand| cut_plan(demand, &stock, &Saw::ASSUMED)).collect()
}
