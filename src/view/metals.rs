//! The same job in other metals: a table, and weight against strength as a picture whose points can be taken.

use super::later;
use super::markup::{Markup, attribute, cell, element, heads, plain, said};
use super::pen::{Hang, Pen};
use super::state::Bench;
use super::tag::{Piece, tag};
use super::{storage, words};
use linkwright::engine;
use linkwright::engine::tables::threads;
use linkwright::quantity::{Kind, System, show};
use linkwright::report::{InMetal, MetalSize};
use std::sync::Arc;

/// What is compared.
const HEAD: [&str; 6] = ["Metal", "Size", "Weight", "Bends", "Strike to first bend", "Folding push"];
/// Width and height of a plot.
const SHEET: (f64, f64) = (344.0, 220.0);

/// The section, folded until it is wanted.
pub(super) fn metals(bench: Bench) -> Piece {
    let fold = later::fold(bench, "metals", "The same job in other metals", |bench, document, at| {
        let metals = engine::in_other_metals(document, at);
        Arc::new(move || shown(bench, &metals))
    });
    tag("section class=part-of").with(tag("h3").with("In another metal")).with(fold)
}

fn shown(bench: Bench, metals: &[InMetal]) -> Piece {
    if metals.is_empty() {
        return tag("p").with("Nothing to compare until there is an answer.");
    }
    let system = bench.system.get();
    let strike = plot(metals, system, "first bend", |size| size.beyond.first_yield);
    let push = plot(metals, system, "folding push", |size| size.buckling);
    let tables = table(metals, system, "Smallest stock size that passes; where none does, the largest", |metal| {
        metal.smallest.as_ref()
    }) + element(
        "div data-same=\"\"",
        table(metals, system, "At the same diameter, each with the rod ends that suit it best", |metal| {
            metal.same.as_ref()
        }),
    );
    let kept: Vec<InMetal> = metals.to_vec();
    let take = move |event: leptos::ev::Event| {
        let Some(id) = storage::attribute(&event, "data-metal") else { return };
        let same = storage::attribute(&event, "data-same").is_some();
        if let Some(metal) = kept.iter().find(|metal| metal.material.id == id) {
            bench.take_metal(metal.material.id, metal.same.as_ref().filter(|_| same));
        }
    };
    let plots = element("figure class=\"drawing plot\"", strike) + element("figure class=\"drawing plot\"", push);
    let how = "Up is stronger, left is lighter. Letters as in the tables: a ring passes, a cross fails. Touch one to take its metal.";
    let markup = element("div", tables) + said("p", how) + element("div class=\"plots\"", plots);
    tag("div").on("click", take).markup(move || markup.clone())
}

fn letter(index: usize) -> String {
    char::from(b'a' + u8::try_from(index).unwrap_or(0)).to_string()
}

fn table(metals: &[InMetal], system: System, title: &str, of: fn(&InMetal) -> Option<&MetalSize>) -> Markup {
    let rows: Markup = metals.iter().enumerate().map(|(index, metal)| row(index, metal, of(metal), system)).collect();
    let inside = said("caption", title) + element("thead", element("tr", heads(&HEAD))) + element("tbody", rows);
    element("div class=\"scroll\"", element("table class=\"metals\"", inside))
}

fn row(index: usize, metal: &InMetal, size: Option<&MetalSize>, system: System) -> Markup {
    let name = metal.material.label.split(',').next().unwrap_or_default();
    let take = said(attribute("button type=\"button\" class=\"quiet\"", "data-metal", metal.material.id), name);
    let head = element("th scope=\"row\"", said("b", letter(index)) + plain(" ") + take);
    let Some(size) = size else {
        return element("tr", head + said("td colspan=\"5\"", "no answer at this size"));
    };
    let thread = threads::find(size.thread).map_or(size.thread, words::thread);
    let used = show(size.utilization, Kind::Percent, system);
    let holds =
        if size.holds { format!("uses {used}") } else { format!("not recommended, {used} at the {}", size.decides) };
    let bar = format!("{}, {thread}", words::size(size.outside_diameter, size.wall, system));
    let mut strike = plain(show(size.beyond.first_yield, Kind::Force, system));
    if let Some(collapse) = size.beyond.collapse {
        strike += said("small", format!("folds at {}", show(collapse, Kind::Force, system)));
    }
    let values = [
        plain(bar) + said("small", holds),
        plain(show(size.bar_weight, Kind::Weight, system)),
        plain(show(size.beyond.deflection, Kind::FineLength, system)),
        strike,
        plain(show(size.buckling, Kind::Force, system)),
    ];
    element("tr", head + HEAD.iter().skip(1).zip(values).map(|(name, value)| cell(name, value)).collect())
}

/// Weight to the right, a force upward; a ring for a size that holds, a cross for one that does not.
fn plot(metals: &[InMetal], system: System, what: &str, of: fn(&MetalSize) -> f64) -> Markup {
    let (width, height) = SHEET;
    let (left, right, top, bottom) = (16.0, width - 30.0, 30.0, height - 34.0);
    let points: Vec<(usize, &InMetal, &MetalSize)> = metals
        .iter()
        .enumerate()
        .flat_map(|(index, metal)| {
            let same = metal.same.as_ref().filter(|same| {
                metal.smallest.as_ref().is_none_or(|small| (small.bar_weight - same.bar_weight).abs() > 1e-9)
            });
            metal.smallest.iter().chain(same).map(move |size| (index, metal, size)).collect::<Vec<_>>()
        })
        .collect();
    if points.iter().all(|point| of(point.2) <= 0.0) {
        return Markup::default();
    }
    let heaviest = points.iter().map(|point| point.2.bar_weight).fold(0.0, f64::max) * 1.12;
    let strongest = points.iter().map(|point| of(point.2)).fold(0.0, f64::max) * 1.12;
    let mut pen = Pen::new();
    pen.line("edge", left, bottom, right, bottom);
    pen.line("edge", left, bottom, left, top);
    pen.text("size", Hang::Start, left, top - 12.0, &format!("{what}, up to {}", show(strongest, Kind::Force, system)));
    pen.text(
        "size",
        Hang::End,
        right,
        bottom + 20.0,
        &format!("weight of the bar, up to {}", show(heaviest, Kind::Weight, system)),
    );
    let mut named: Vec<(f64, f64)> = Vec::new();
    for (index, metal, size) in points {
        let x = left + (right - left) * size.bar_weight / heaviest;
        let y = bottom - (bottom - top) * of(size) / strongest;
        pen.mark(metal.material.id, x, y, size.holds);
        // Letters of points that fall together stand side by side.
        let beside = named.iter().filter(|other| (other.0 - x).abs() < 12.0 && (other.1 - y).abs() < 12.0).count();
        pen.text("size", Hang::Start, x + 10.0 + 9.0 * beside as f64, y + 4.5, &letter(index));
        named.push((x, y));
    }
    let words = format!("Weight of the bar against {what}: the numbers stand in the tables above.");
    pen.svg("", width, height, &words)
}
