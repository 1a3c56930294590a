//! The files of a shop: nothing is lost, what cannot be read is named, and an edit is read as it is typed.

use linkwright::quantity::{System, inch, lbf, mm};
use linkwright::shop::{
    Cell, Kind, Lists, add_row, cell, complaint, demo, headings, read, remove_row, rows, set_cell, write,
};

use crate::dice::Dice;

/// A list of rod ends from a file, with what was told.
fn rod_ends(text: &str) -> (Lists, Vec<String>) {
    let mut lists = Lists::default();
    let told = read(&mut lists, Kind::RodEnds, text).unwrap_or_else(|why| panic!("{why}"));
    (lists, told)
}

fn again(lists: &Lists) -> Lists {
    let mut back = Lists::default();
    for kind in Kind::ALL {
        read(&mut back, kind, &write(lists, kind)).expect("our own file");
    }
    back
}

#[test]
fn the_invented_lists_are_whole_and_marked() {
    let lists = demo::lists();
    for kind in Kind::ALL {
        let told = read(&mut Lists::default(), kind, demo::text(kind));
        assert_eq!(told, Ok(Vec::new()), "{kind:?}");
        assert!(rows(&lists, kind) >= 2, "{kind:?}");
        for row in 0..rows(&lists, kind) {
            let name = cell(&lists, kind, row, 0, System::Inch).expect("a name").text;
            assert!(name.starts_with("Demo"), "{name}");
            assert_eq!(complaint(&lists, kind, row), None, "{name}");
        }
    }
    assert_eq!(again(&lists), lists);
}

/// Each unit by hand.
#[test]
fn headings_give_the_unit() {
    let cases = [
        ("Bore (in)", "0.75", inch(0.75)),
        ("Bore (in)", "3/4", inch(0.75)),
        ("Bore (in)", "1-1/4", inch(1.25)),
        ("Bore (in)", "20 mm", mm(20.0)),
        ("bore ( MM )", "20", mm(20.0)),
        ("Bore (cm)", "2", 0.02),
        ("BORE(mm)", "3/4", inch(0.75)),
        ("Bore (mm)", "19,05", mm(19.05)),
        ("Bore", "3/4 in", inch(0.75)),
        ("Bore", "1/2", inch(0.5)),
    ];
    for (heading, text, value) in cases {
        let (lists, told) = rod_ends(&format!("Name;{heading}\nx;{text}\n"));
        let bore = lists.rod_ends.rows[0].row.bore;
        assert_eq!(bore.map(f64::to_bits), Some(value.to_bits()), "{heading} {text}: {bore:?} {told:?}");
    }
    for (heading, value) in [("(lb)", lbf(5000.0)), ("(lbf)", lbf(5000.0)), ("(N)", 5000.0), ("(kN)", 5_000_000.0)] {
        let (lists, _) = rod_ends(&format!("Name,Static radial rating {heading}\nx,5000\n"));
        let rating = lists.rod_ends.rows[0].row.rating;
        let accepted = (value < lbf(400_000.0)).then_some(value);
        assert_eq!(rating, accepted, "{heading}");
    }
}

#[test]
fn what_cannot_be_read_is_named_by_line_and_column() {
    let cases = [
        ("Bore (in)", "abc", "“abc”"),
        ("Bore (in)", "-0.5", "must lie between"),
        ("Bore (in)", "NaN", "NaN"),
        ("Bore (in)", "1e999", "e999"),
        ("Bore (in)", "40", "must lie between"),
        ("Bore (in)", "0.75 lb", "weight"),
        ("Bore (in)", "11/2", "11/2"),
        ("Bore", "0.75", "has no unit"),
        ("Right-hand in stock", "-1", "whole number"),
        ("Right-hand in stock", "2.5", "whole number"),
        ("Right-hand in stock", "1,2", "whole number"),
        ("Right-hand in stock", "99999999999", "whole number"),
        ("Price each", "$4", "without a currency"),
        ("Price each", "-4", "without a currency"),
        ("Price each", "1.23456", "4 digits"),
        ("Shank thread", "3/4-99", "must be one of"),
        ("Shank thread", "Dec-01", "made a date of it"),
        ("Shank steel", "plastic", "Heat-treated alloy"),
    ];
    for (heading, text, part) in cases {
        let cell_text = if text.contains(',') { format!("\"{text}\"") } else { text.to_string() };
        let file = format!("Name,{heading}\ngood,\n\nbad,{cell_text}\n");
        let (lists, told) = rod_ends(&file);
        let about: Vec<&String> = told.iter().filter(|line| line.starts_with("Line 4, “")).collect();
        let name = heading.split(" (").next().unwrap_or_default();
        assert!(about.len() == 1 && about[0].contains(part) && about[0].contains(name), "{heading} {text}: {told:?}");
        assert_eq!(lists.rod_ends.rows.len(), 2, "the row is kept");
        let bad = complaint(&lists, Kind::RodEnds, 1).expect("not used");
        assert!(bad.contains(name), "{bad}");
        // It comes back as it was written, and is never taken for something else.
        let back = again(&lists);
        assert_eq!(back, lists, "{heading} {text}: {}", write(&lists, Kind::RodEnds));
    }
}

#[test]
fn a_cell_of_another_unit_keeps_it() {
    for (heading, text, kept) in [("Bore (mm)", "2", "2 mm"), ("Bore", "1", "1 (unit?)"), ("Bore (mm)", "wide", "wide")]
    {
        let (lists, told) = rod_ends(&format!("Name,{heading}\nx,{text}\n"));
        assert!(told.iter().any(|line| line.starts_with("Line 2")), "{told:?}");
        assert!(write(&lists, Kind::RodEnds).contains(kept), "{heading}: {}", write(&lists, Kind::RodEnds));
        assert_eq!(again(&lists), lists);
    }
}

#[test]
fn a_file_of_something_else_changes_nothing() {
    let mut lists = demo::lists();
    let before = lists.clone();
    for text in ["", "\n\n", "hello", "a,b\n1,2\n", "{\"json\": true}", &"Name,".repeat(600_000)] {
        let why = read(&mut lists, Kind::RodEnds, text).expect_err("no list");
        assert!(why.contains("Nothing from it was used"), "{why}");
        assert_eq!(lists, before);
    }
}

#[test]
fn columns_that_are_not_known_are_carried_along() {
    let text = "Shelf,Name,Bore (in),Bore (in),Bore (furlong)\nA1,\"one, two\",0.75,0.5,9,more\n=SUM(A1),\"two\nlines\",1,,,\n";
    let (lists, told) = rod_ends(text);
    for part in ["“Shelf” is not known", "“Bore (in)” stands there twice", "“Bore (furlong)” stands there twice"]
    {
        assert!(told.iter().any(|line| line.contains(part)), "{part}: {told:?}");
    }
    let (_, told) = rod_ends("Name,Bore (furlong)\nx,1\n");
    assert!(told.iter().any(|line| line.contains("unit is not known")), "{told:?}");
    let entry = &lists.rod_ends.rows[0];
    assert_eq!(entry.extra, ["A1", "0.5", "9", "more"]);
    assert_eq!(entry.row.bore, Some(inch(0.75)), "the first of two columns of one name");
    assert_eq!(lists.rod_ends.rows[1].row.name, "two lines");
    assert_eq!(lists.rod_ends.rows[1].extra[0], "=SUM(A1)");
    assert!(write(&lists, Kind::RodEnds).contains("'=SUM(A1)"), "a spreadsheet must not run it");
    assert_eq!(again(&lists), lists);
}

#[test]
fn complaints_are_not_endless() {
    let (lists, told) = rod_ends(&format!("Name,Bore (in)\n{}", "x,wide\n".repeat(300)));
    assert_eq!(lists.rod_ends.rows.len(), 300);
    assert!(told.len() == 21 && told[20].starts_with("And "), "{} {:?}", told.len(), told.last());
}

#[test]
fn a_cell_is_typed_in_the_readers_units() {
    let mut lists = Lists::default();
    let row = add_row(&mut lists, Kind::RodEnds);
    let place = |name: &str| headings(Kind::RodEnds).iter().position(|it| it.name == name).expect("a column");
    let mut set = |name, text, system| set_cell(&mut lists, Kind::RodEnds, row, place(name), text, system);
    assert_eq!(set("Bore", "25.4", System::Metric), Ok(()));
    assert_eq!(set("Thread length", "2-1/4", System::Inch), Ok(()));
    assert_eq!(set("Shank thread", "1-1/4-12", System::Inch), Ok(()));
    assert_eq!(set("Left-hand in stock", "4", System::Metric), Ok(()));
    let why = set("Bore", "254", System::Metric).expect_err("too wide");
    assert!(why.contains("254.00 mm") && why.contains("63.50 mm"), "{why}");
    let shown = |name, system| cell(&lists, Kind::RodEnds, row, place(name), system).map(|cell| cell.text);
    assert_eq!(shown("Bore", System::Inch).as_deref(), Some("1"), "a refused entry leaves the cell as it was");
    assert_eq!(shown("Thread length", System::Metric).as_deref(), Some("57.15"));
    assert_eq!(shown("Shank thread", System::Inch).as_deref(), Some("1-1/4-12 UNF"));
    let why = complaint(&lists, Kind::RodEnds, row).expect("it lacks its name");
    assert_eq!(why, "Not used until you enter or correct: Name, Eye center to shank end.");
    assert_eq!(set_cell(&mut lists, Kind::RodEnds, row, place("Bore"), "", System::Inch), Ok(()));
    assert_eq!(lists.rod_ends.rows[row].row.bore, None);
    assert!(set_cell(&mut lists, Kind::RodEnds, 9, 0, "x", System::Inch).is_err(), "no such row");
    remove_row(&mut lists, Kind::RodEnds, 9);
    remove_row(&mut lists, Kind::RodEnds, row);
    assert_eq!(lists, Lists::default());
    assert_eq!(cell(&lists, Kind::RodEnds, 0, 0, System::Inch), None);
}

#[test]
fn a_corrected_cell_is_used() {
    let (mut lists, _) = rod_ends("Name,Bore (in)\nx,wide\n");
    let wide = Cell { text: "wide".to_string(), unread: true };
    assert_eq!(cell(&lists, Kind::RodEnds, 0, 2, System::Metric), Some(wide));
    assert_eq!(set_cell(&mut lists, Kind::RodEnds, 0, 2, "3/4", System::Inch), Ok(()));
    assert!(lists.rod_ends.rows[0].unread.is_empty());
    assert_eq!(lists.rod_ends.rows[0].row.bore, Some(inch(0.75)));
}

/// What somebody might type into a cell, sense or not.
fn anything(dice: &mut Dice) -> String {
    let few = [
        "",
        "0",
        "1",
        "3/4",
        "1-1/4",
        "20 mm",
        "0.875",
        "25,4",
        "2.0000001",
        "0.7500000001 in",
        "12.3456789 mm",
        "-1",
        "NaN",
        "=1+1",
        "+x",
        "@y",
        "'=z",
        "''",
        "\"quoted\"",
        "a,b",
        "a;b",
        "two\nlines",
        "\ttab",
        "é½日😀",
        "\u{202e}turned",
        "1-1/4-12",
        "M20 × 1.5",
        "rh",
        "LEFT-HAND",
        "7075-T6/T651 bar",
        "1020 DOM tube",
        "remnant",
        "ft",
        "saw",
        "Tax without shipping",
        "8.25",
        "8.25 %",
        "1,250.00",
        "0.335",
        "70000",
        "12 kN",
        "(unit?)",
        "1 (unit?)",
        "Dec-01",
    ];
    match dice.next(8) {
        0 => "x".repeat(dice.next(200)),
        1 => format!("{}", dice.next(1_000_000) as f64 / 7_919.0),
        2 => format!("{} mm", dice.next(1_000_000) as f64 / 7_919.0),
        _ => few[dice.next(few.len())].to_string(),
    }
}

#[test]
fn random_files_come_back_whole() {
    let mut dice = Dice(20);
    let units = ["", " (in)", " (mm)", " (cm)", " (lb)", " (kN)", " (furlong)"];
    let mut understood = 0;
    for _ in 0..200 {
        let kind = Kind::ALL[dice.next(6)];
        let mut names: Vec<String> = headings(kind).iter().map(|it| it.name.to_string()).collect();
        names.extend(["Shelf".to_string(), String::new(), "=cmd".to_string(), "a;b\tc".to_string()]);
        let width = 1 + dice.next(names.len());
        let heads: Vec<String> = (0..width)
            .map(|at| {
                let name = if at == 0 { "Name" } else { &names[dice.next(names.len())] };
                format!("{name}{}", units[dice.next(if at == 0 { 1 } else { units.len() })])
            })
            .collect();
        let mut table = vec![heads];
        for _ in 0..dice.next(5) {
            table.push((0..dice.next(width + 2)).map(|_| anything(&mut dice)).collect());
        }
        let text = linkwright::spreadsheet::write(&table);
        let mut lists = Lists::default();
        if read(&mut lists, kind, &text).is_err() {
            continue;
        }
        // What is kept is the text that is written: reading it gives the same list, and the same text again.
        let kept = write(&lists, kind);
        assert_eq!(write(&again(&lists), kind), kept, "{text}");
        assert_eq!(again(&lists), lists, "{text}\n{kept}");
        understood += rows(&lists, kind);
    }
    assert!(understood > 150, "{understood}");
}

#[test]
fn random_edits_come_back_whole() {
    let mut dice = Dice(21);
    let mut taken = 0;
    for _ in 0..100 {
        let mut lists = Lists::default();
        for kind in Kind::ALL {
            for _ in 0..dice.next(4) {
                let row = add_row(&mut lists, kind);
                set_cell(&mut lists, kind, row, 0, "named", System::Inch).expect("a name");
                for column in 0..headings(kind).len() {
                    let system = [System::Inch, System::Metric][dice.next(2)];
                    taken += usize::from(set_cell(&mut lists, kind, row, column, &anything(&mut dice), system).is_ok());
                }
                set_cell(&mut lists, kind, row, 0, "named", System::Inch).expect("a name");
            }
        }
        let mut back = Lists::default();
        for kind in Kind::ALL {
            let told = read(&mut back, kind, &write(&lists, kind)).expect("our own file");
            assert!(told.is_empty(), "{told:?}");
        }
        assert_eq!(back, lists);
    }
    assert!(taken > 1_000, "{taken}");
}

#[test]
fn remnants_go_into_the_list_and_out_again() {
    let mut lists = demo::lists();
    let (bars, tubes) = (rows(&lists, Kind::Bars), rows(&lists, Kind::Tubes));
    for _ in 0..2 {
        lists.keep_remnant("Left over", "7075-t6", [inch(2.0), 0.0, inch(17.25)]);
    }
    lists.keep_remnant("Left over", "1020-dom", [inch(2.0), inch(0.25), inch(30.0)]);
    assert_eq!([rows(&lists, Kind::Bars), rows(&lists, Kind::Tubes)], [bars + 1, tubes + 1]);
    assert_eq!(lists.bars.rows[bars].row.count, Some(2), "two alike stand in one row");
    assert_eq!(complaint(&lists, Kind::Tubes, tubes), None);
    assert_eq!(again(&lists), lists);
    lists.cut_up(Kind::Bars, bars);
    assert_eq!(lists.bars.rows[bars].row.count, Some(1));
    lists.cut_up(Kind::Bars, bars);
    lists.cut_up(Kind::Tubes, tubes);
    assert_eq!(lists, demo::lists(), "a remnant that is used up is gone");
    for _ in 0..9 {
        lists.cut_up(Kind::Bars, 0);
    }
    assert_eq!(lists.bars.rows[0].row.count, Some(0), "a size that the shop buys stays in the list");
    lists.cut_up(Kind::Bars, 99);
    lists.cut_up(Kind::Nuts, 0);
}
