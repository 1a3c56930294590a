//! Two rigs side by side: what each link comes out as, and what was entered differently.

use super::changing::Changing;
use super::known::Known;
use super::markup::{Markup, cell, element, plain, said};
use super::shelf::Kept;
use super::state::{Bench, Whole};
use super::tag::{Piece, live, several, tag};
use super::words;
use leptos::prelude::*;
use linkwright::differences::{Change, differences, matched};
use linkwright::document::{Document, Link};
use linkwright::quantity::Kind;
use linkwright::report::LinkReport;

/// Stands for what is on the bench.
const BENCH: &str = "bench";

/// Two pickers, and the table once both hold something.
pub(super) fn compare(bench: Bench) -> Piece {
    let picks = [Changing::new(BENCH.to_string()), Changing::new(String::new())];
    let table = Known::new(move || {
        let [a, b] = picks.map(|pick| pick.with(|pick| picked(bench, pick)));
        a.zip(b).map(|((a, one), (b, other))| side_by_side(bench, &[a, b], [&one, &other])).unwrap_or_default()
    });
    let picker = move |number: usize, id: &'static str, label: &str| {
        let pick = picks[number];
        let options = move || {
            let first = if number == 0 { None } else { Some((String::new(), "Choose one".to_string())) };
            let shelf = bench.shelf.get().unwrap_or_default();
            let builds =
                shelf.into_iter().filter(Kept::lies_open).map(|kept| (kept.build.id.clone(), kept.title(bench)));
            let bench = [(BENCH.to_string(), "Current build".to_string())];
            let all = first.into_iter().chain(bench).chain(builds);
            let options = all.map(|(id, name)| {
                let chosen = pick.with_untracked(|pick| *pick == id);
                tag("option").set("value", &id).flag("selected", move || chosen).with(&*name)
            });
            several().with(options.collect::<Vec<_>>())
        };
        let select = tag("select")
            .set("id", id)
            .on("change", move |event| pick.set(event_target_value(&event)))
            .with(live(options));
        tag("div class=field").with(tag("label").set("for", id).with(label)).with(select)
    };
    let two =
        tag("div class=two").with(picker(0, "compare-a", "This one")).with(picker(1, "compare-b", "With this one"));
    tag("section class=part-of aria-labelledby=compare-title")
        .with(tag("h3 id=compare-title").with("Compare two"))
        .with(two)
        .with(tag("div id=comparison role=status").markup(move || table.get()))
}

/// What was picked, and what it is called: the bench and a build on it may have the same name.
fn picked(bench: Bench, pick: &str) -> Option<(String, Document)> {
    if pick == BENCH {
        return Some(("On the bench".to_string(), bench.document.get()));
    }
    bench.shelf.with(|shelf| {
        let kept = shelf.iter().flatten().find(|kept| kept.build.id == pick && kept.lies_open())?;
        Some((kept.title(bench), kept.build.document.clone()))
    })
}

/// One row: what it is about, both values, and a mark in words where they differ.
fn row(about: &str, [a, b]: [&str; 2], names: &[String; 2]) -> Markup {
    let differ = a != b;
    let mark = if differ { said("small class=\"changed-mark\"", "differs") } else { Markup::default() };
    let open = if differ { "tr class=\"differing\"" } else { "tr" };
    let head = element("th scope=\"row\"", plain(about) + mark);
    element(open, head + cell(&names[0], plain(a)) + cell(&names[1], plain(b)))
}

fn heading(words: &str) -> Markup {
    element("tr", said("td colspan=\"3\" class=\"about\"", words))
}

fn side_by_side(bench: Bench, names: &[String; 2], [a, b]: [&Document; 2]) -> Markup {
    let system = bench.system.get();
    let wholes = [a, b].map(|document| Whole::of(document, None));
    let mut groups = Markup::default();
    let found = differences(a, b);
    let mut entered = Markup::default();
    for difference in &found {
        if let Change::Input { label, before, after } = &difference.change {
            let about =
                if difference.about.is_empty() { label.clone() } else { format!("{}: {label}", difference.about) };
            let (before, after) = (before.words(system), after.words(system));
            entered += row(&about, [&before, &after], names);
        }
    }
    if !entered.is_empty() {
        groups += element("tbody", heading("Entered differently") + entered);
    }
    let weights = [0, 1].map(|side: usize| bench.show(wholes[side].rig.weight, Kind::Weight));
    let pieces = [0, 1].map(|side: usize| words::count(wholes[side].rig.pieces));
    let mut rows = heading("All of it");
    rows += row("Links to make", pieces.each_ref().map(String::as_str), names);
    rows += row("All bars together", weights.each_ref().map(String::as_str), names);
    groups += element("tbody", rows);
    // What comes out the same is told last, a line a link.
    let mut alike = Markup::default();
    for pair in matched(a, b) {
        let links = [(pair.0, a, &wholes[0]), (pair.1, b, &wholes[1])];
        let about = links.iter().find_map(|(at, document, _)| document.links.get((*at)?)).map(Link::title);
        let about = about.unwrap_or_default();
        let cells = links.map(|(at, _, whole)| at.map(|at| made(bench, whole.links.get(at))));
        match &cells {
            [Some(a), Some(b)] if a == b => {
                let words = a.as_ref().map_or_else(
                    |why| (*why).to_string(),
                    |[length, bar, ends, cut, verdict]| {
                        format!("{length} mount to mount, {bar}, {ends}, saw to {cut}. {verdict}.")
                    },
                );
                let once = said("td colspan=\"2\"", words);
                alike += element("tr", said("th scope=\"row\"", about) + once);
            }
            [Some(Ok(a)), Some(Ok(b))] => {
                let mut rows = heading(&about);
                for (number, about) in
                    ["Mount to mount", "Bar", "Rod ends", "Saw to", "Verdict"].into_iter().enumerate()
                {
                    rows += row(about, [&a[number], &b[number]], names);
                }
                groups += element("tbody", rows);
            }
            _ => {
                // Where one of them has no answer, one line says what the other is.
                let cells = cells.map(|cell| match cell {
                    None => "not there".to_string(),
                    Some(Err(words)) => words.to_string(),
                    Some(Ok(cells)) => cells.join(", "),
                });
                let line = row("This link", cells.each_ref().map(String::as_str), names);
                groups += element("tbody", heading(&about) + line);
            }
        }
    }
    if !alike.is_empty() {
        groups += element("tbody", heading("The same in both") + alike);
    }
    let heads: Markup = names.iter().map(|name| said("th scope=\"col\"", name)).collect();
    let head = element("thead", element("tr", said("td", "") + heads));
    let alike = if found.is_empty() { said("p", "Both hold the same entries.") } else { Markup::default() };
    alike + element("table class=\"comparison\"", head + groups)
}

/// What a link comes out as: length, bar, rod ends, saw length, verdict; or why not.
fn made(bench: Bench, report: Option<&LinkReport>) -> Result<[String; 5], &'static str> {
    let system = bench.system.get();
    let answer = match report {
        Some(LinkReport::Answer(answer)) => answer,
        Some(LinkReport::Impossible(_)) => return Err("cannot be made as entered"),
        _ => return Err("no answer yet"),
    };
    let made = &answer.link;
    Ok([
        words::length(made.length, system),
        format!("{} {}", words::size(made.outside_diameter, made.wall, system), words::metal(made)),
        words::threads(&made.ends),
        words::length(made.cut, system),
        answer.word().to_string(),
    ])
}
