//! Cut list and parts list come back from their files as they went in.

use linkwright::engine::whole_rig;
use linkwright::present::make::cut_list::{CUT_LIST, PARTS_LIST, cut_list, parts_list};
use linkwright::report::Part;
use linkwright::spreadsheet;

use super::{plans, rigs};

fn number(cell: &str) -> f64 {
    cell.parse().unwrap_or_else(|why| panic!("{cell:?}: {why}"))
}

#[test]
fn every_blank_stands_in_the_cut_list_in_both_units() {
    for document in rigs(23, 5) {
        let mut plans = plans(&document);
        // What somebody typed, as a spreadsheet must not run it.
        for piece in plans.iter_mut().flat_map(|plan| &mut plan.bars).flat_map(|bar| &mut bar.pieces) {
            piece.build = "=HYPERLINK(\"x\"), \"quoted\"\nline".to_string();
        }
        let text = cut_list(&plans);
        assert!(!text.lines().any(|line| line.split(',').any(|cell| cell.trim_matches('"').starts_with('='))));
        let rows = spreadsheet::read(&text).expect("our own file");
        assert_eq!(rows[0].cells, CUT_LIST);
        let mut rows = rows.into_iter().skip(1).map(|row| row.cells);
        for plan in &plans {
            for (number_of, bar) in plan.bars.iter().enumerate() {
                for (cut, piece) in bar.pieces.iter().enumerate() {
                    let cells = rows.next().expect("a row");
                    assert_eq!(
                        (cells[5].clone(), cells[10].clone()),
                        ((number_of + 1).to_string(), (cut + 1).to_string())
                    );
                    for (at, length) in
                        [(1, plan.outside_diameter), (8, bar.stock.length), (11, piece.length), (13, piece.from)]
                    {
                        assert!((number(&cells[at]) * 0.0254 - length).abs() < 2e-6, "{at}: {cells:?}");
                        assert!((number(&cells[at + 1]) / 1e3 - length).abs() < 6e-6, "{at}: {cells:?}");
                    }
                    assert_eq!((cells[15].as_str(), cells[16].as_str()), (piece.link.as_str(), piece.build.as_str()));
                    let last = cut + 1 == bar.pieces.len();
                    let kept = if last { if bar.kept { "keep" } else { "scrap" } } else { "" };
                    assert_eq!(cells.get(19).map_or("", String::as_str), kept);
                }
            }
            for not in &plan.not_cut {
                for _ in 0..not.blank.count {
                    assert_eq!(rows.next().expect("a row")[6], "not cut");
                }
            }
        }
        assert_eq!(rows.next(), None);
    }
}

#[test]
fn every_part_stands_in_the_parts_list() {
    for document in rigs(29, 5) {
        let parts = whole_rig(&document, None).rig.parts;
        let rows = spreadsheet::read(&parts_list(&parts)).expect("our own file");
        assert_eq!(rows[0].cells, PARTS_LIST);
        let pieces: f64 = rows[1..].iter().map(|row| number(&row.cells[1])).sum();
        assert_eq!(pieces as usize, parts.iter().map(Part::count).sum::<usize>());
        for row in rows[1..].iter().filter(|row| !row.cells[2].is_empty()) {
            assert!((number(&row.cells[2]) * 25.4 - number(&row.cells[3])).abs() < 0.02, "{row:?}");
            assert!(!row.cells[4].is_empty(), "a cut says for which links it is");
        }
    }
}
