//! The cut list and the parts list as tables that spreadsheets open: inches and millimeters side by side.

use crate::engine::shop::cut_plan::CutPlan;
use crate::present::parts;
use crate::present::words::{Units, short};
use crate::quantity::INCH;
use crate::report::Part;
use crate::spreadsheet;

/// The headings of the cut list.
pub const CUT_LIST: [&str; 20] = [
    "Metal",
    "Outside diameter (in)",
    "Outside diameter (mm)",
    "Wall (in)",
    "Wall (mm)",
    "Bar",
    "Bar is",
    "Bar called",
    "Bar length (in)",
    "Bar length (mm)",
    "Cut",
    "Saw length (in)",
    "Saw length (mm)",
    "From bar end (in)",
    "From bar end (mm)",
    "Link",
    "Build",
    "Left of bar (in)",
    "Left of bar (mm)",
    "Left is",
];

/// The headings of the parts list.
pub const PARTS_LIST: [&str; 5] = ["Part", "Pieces", "Length each (in)", "Length each (mm)", "For"];

/// Inches to the last ten-thousandth, millimeters to the last hundredth.
fn both(length: f64) -> [String; 2] {
    [format!("{:.4}", length / INCH), format!("{:.2}", length * 1e3)]
}

const NOTHING: [String; 2] = [String::new(), String::new()];

fn row(cells: impl IntoIterator<Item = Vec<String>>) -> Vec<String> {
    cells.into_iter().flatten().collect()
}

/// The cut list: a row for each blank, in the order of the cuts; what is not cut comes last and says so.
pub fn cut_list(plans: &[CutPlan]) -> String {
    let mut rows: Vec<Vec<String>> = vec![CUT_LIST.map(String::from).to_vec()];
    for plan in plans {
        let metal = vec![short(plan.material).to_string()];
        // Solid bar has no wall.
        let wall = if plan.wall > 0.0 { both(plan.wall) } else { NOTHING };
        let sizes = [both(plan.outside_diameter), wall].concat();
        let mut of = |bar: Vec<String>, blank: Vec<String>, left: Vec<String>| {
            rows.push(row([metal.clone(), sizes.clone(), bar, blank, left]));
        };
        for (number, bar) in plan.bars.iter().enumerate() {
            let is = if bar.stock.remnant { "remnant" } else { "new" };
            let [inches, millimeters] = both(bar.stock.length);
            let bar_cells =
                vec![(number + 1).to_string(), is.to_string(), bar.stock.label.clone(), inches, millimeters];
            for (cut, piece) in bar.pieces.iter().enumerate() {
                let blank = row([
                    vec![(cut + 1).to_string()],
                    both(piece.length).to_vec(),
                    both(piece.from).to_vec(),
                    vec![piece.link.clone(), piece.build.clone()],
                ]);
                let last = cut + 1 == bar.pieces.len();
                let left = if last { both(bar.left) } else { NOTHING };
                let kept = match (last, bar.kept) {
                    (false, _) => "",
                    (true, true) => "keep",
                    (true, false) => "scrap",
                };
                of(bar_cells.clone(), blank, row([left.to_vec(), vec![kept.to_string()]]));
            }
        }
        for not in &plan.not_cut {
            for _ in 0..not.blank.count {
                let bar = vec![String::new(), "not cut".to_string(), String::new(), String::new(), String::new()];
                let blank = row([
                    vec![String::new()],
                    both(not.blank.length).to_vec(),
                    NOTHING.to_vec(),
                    vec![not.blank.link.clone(), not.blank.build.clone()],
                ]);
                of(bar, blank, row([NOTHING.to_vec(), vec![String::new()]]));
            }
        }
    }
    spreadsheet::write(&rows)
}

/// The parts list: a row for each kind of part, and for bars one for each length to saw.
pub fn parts_list(parts: &[Part]) -> String {
    let mut rows: Vec<Vec<String>> = vec![PARTS_LIST.map(String::from).to_vec()];
    for (part, told) in parts.iter().zip(parts::rows(parts, Units::Both)) {
        match part {
            Part::Bar { cuts, .. } => rows.extend(cuts.iter().map(|cut| {
                let [inches, millimeters] = both(cut.length);
                vec![told.name.clone(), cut.count.to_string(), inches, millimeters, cut.links.join(", ")]
            })),
            _ => rows.push(row([vec![told.name, part.count().to_string()], NOTHING.to_vec(), vec![String::new()]])),
        }
    }
    spreadsheet::write(&rows)
}
