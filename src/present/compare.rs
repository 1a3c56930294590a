//! Two rigs side by side: what was entered differently, and what each link comes out as.

use super::words::{length, metal, stock, thread_sizes, value};
use crate::differences::{Change, differences, matched, text_words};
use crate::document::Link;
use crate::quantity::{Kind, System};
use crate::report::{LinkReport, WholeRig};

/// One of the two.
#[derive(Debug, Clone, Copy)]
pub struct Side<'a> {
    /// What it is called.
    pub name: &'a str,
    /// What it is.
    pub whole: &'a WholeRig,
}

/// The comparison.
#[derive(Debug, Clone, PartialEq)]
pub struct Table {
    /// What the two are called.
    pub names: [String; 2],
    /// Whether nothing was entered differently.
    pub same_entries: bool,
    /// The rows, in groups.
    pub groups: Vec<Group>,
}

/// Rows under a heading.
#[derive(Debug, Clone, PartialEq)]
pub struct Group {
    /// What they are about.
    pub heading: String,
    /// The rows.
    pub rows: Vec<Row>,
}

/// One row.
#[derive(Debug, Clone, PartialEq)]
pub struct Row {
    /// What it is about.
    pub about: String,
    /// What the two have.
    pub cells: Cells,
}

/// What the two have.
#[derive(Debug, Clone, PartialEq)]
pub enum Cells {
    /// Each its own.
    Each([String; 2]),
    /// Both the same.
    Both(String),
}

impl Row {
    fn each(about: impl Into<String>, cells: [String; 2]) -> Self {
        Self { about: about.into(), cells: Cells::Each(cells) }
    }

    /// Whether the two differ in it.
    pub fn differs(&self) -> bool {
        matches!(&self.cells, Cells::Each([a, b]) if a != b)
    }
}

/// What a link comes out as, in this order.
const LINK_ROWS: [&str; 6] = ["Mount to mount", "Bar", "Metal", "Rod ends", "Saw to", "Verdict"];

/// The cells of a link; or why it comes out as nothing.
type LinkCells = Result<[String; 6], &'static str>;

/// Compares two rigs: what was entered differently, the sums, each link that comes out differently, and what is the same.
pub fn table(sides: [Side<'_>; 2], system: System) -> Table {
    let [a, b] = sides.map(|side| &side.whole.document);
    let found = differences(a, b);
    let mut groups = Vec::new();
    let entered: Vec<Row> = found
        .iter()
        .filter_map(|difference| match &difference.change {
            Change::Input { label, before, after } => {
                let about = &difference.about;
                let about = if about.is_empty() { label.clone() } else { format!("{about}: {label}") };
                Some(Row::each(about, [before, after].map(|side| side.words(system))))
            }
            Change::Text { id, label, before, after } => {
                let sides = [before, after].map(|text| text_words(id, text));
                Some(Row::each(format!("{}: {label}", difference.about), sides))
            }
            _ => None,
        })
        .collect();
    if !entered.is_empty() {
        groups.push(Group { heading: "Entered differently".to_string(), rows: entered });
    }
    let rigs = sides.map(|side| &side.whole.rig);
    let sums = vec![
        Row::each("Links to make", rigs.map(|rig| rig.pieces.to_string())),
        Row::each("All bars together", rigs.map(|rig| value(rig.weight, Kind::Weight, system))),
    ];
    groups.push(Group { heading: "All of it".to_string(), rows: sums });
    // Links that come out the same, or as nothing in one of the two, stand last, a line each.
    let (mut same, mut one_sided) = (Vec::new(), Vec::new());
    for (in_a, in_b) in matched(a, b) {
        let places = [in_a, in_b];
        let title = places.iter().zip([a, b]).find_map(|(at, document)| document.links.get((*at)?)).map(Link::title);
        let title = title.unwrap_or_default();
        let [one, other] = [0, 1].map(|side: usize| {
            let at = places.get(side).copied().flatten()?;
            sides.get(side).map(|side| link(side.whole.links.get(at), system))
        });
        match (one, other) {
            (Some(one), Some(other)) if one == other => {
                same.push(Row { about: title, cells: Cells::Both(in_one_sentence(one)) });
            }
            (Some(Ok(one)), Some(Ok(other))) => {
                let pairs = one.into_iter().zip(other);
                let rows = LINK_ROWS.into_iter().zip(pairs).map(|(about, (a, b))| Row::each(about, [a, b])).collect();
                groups.push(Group { heading: title, rows });
            }
            (one, other) => one_sided.push(Row::each(title, [one, other].map(in_one_cell))),
        }
    }
    if !one_sided.is_empty() {
        groups.push(Group { heading: "No answer in one of them".to_string(), rows: one_sided });
    }
    if !same.is_empty() {
        groups.push(Group { heading: "The same in both".to_string(), rows: same });
    }
    Table { names: sides.map(|side| side.name.to_string()), same_entries: found.is_empty(), groups }
}

/// What a link comes out as.
fn link(report: Option<&LinkReport>, system: System) -> LinkCells {
    let answer = match report {
        Some(LinkReport::Answer(answer)) => answer,
        Some(LinkReport::Impossible(_)) => return Err("cannot be made as entered"),
        _ => return Err("no answer yet"),
    };
    let made = &answer.link;
    Ok([
        length(made.length, system),
        stock(made, system),
        metal(made).to_string(),
        thread_sizes(&made.ends),
        length(made.cut, system),
        answer.word().to_string(),
    ])
}

fn in_one_sentence(cells: LinkCells) -> String {
    match cells {
        Ok([length, bar, metal, threads, cut, verdict]) => {
            format!("{length} mount to mount, {bar} {metal}, rod ends {threads}, saw to {cut}. {verdict}.")
        }
        Err(why) => why.to_string(),
    }
}

fn in_one_cell(cells: Option<LinkCells>) -> String {
    cells.map_or_else(|| "not there".to_string(), in_one_sentence)
}
