//! CSV files: what comes back, what a spreadsheet must not run, and what a malformed file says.

use linkwright::spreadsheet::{read, write};

fn round_trip(rows: &[&[&str]]) -> Vec<Vec<String>> {
    let rows: Vec<Vec<String>> = rows.iter().map(|row| row.iter().map(|cell| (*cell).to_string()).collect()).collect();
    let back = read(&write(&rows)).expect("our own file");
    back.into_iter().map(|row| row.cells).collect()
}

#[test]
fn every_cell_comes_back() {
    let rows: &[&[&str]] = &[
        &["Name", "Length (in)", "Remark"],
        &["3/4-16, wide", "36.5", "he said \"short\""],
        &["=1+1", "-0.5", "two\nlines"],
        &["'=1+1", "''-x", "'quoted'"],
        &["@cmd", "+call", "-1-1/2 in"],
    ];
    assert_eq!(round_trip(rows), rows);
}

#[test]
fn a_spreadsheet_runs_no_cell() {
    for cell in ["=1+1", "+call", "-x", "@sum", "\t=1", "'=1"] {
        let text = write(&[vec![cell.to_string(), "end".to_string()]]);
        assert!(text.trim_start_matches('"').starts_with('\''), "{cell:?} is written as {text:?}");
    }
    assert_eq!(write(&[vec!["-0.5".to_string(), "36".to_string()]]), "-0.5,36\r\n", "a number is no formula");
}

#[test]
fn other_separators_are_read() {
    for text in ["a;b;1,5\nc;d;2,5\n", "a\tb\t1,5\r\nc\td\t2,5", "\u{feff}a;b;\"1,5\"\n\n;;\nc;d;2,5"] {
        let rows = read(text).expect("a file of a spreadsheet");
        let cells: Vec<Vec<String>> = rows.into_iter().map(|row| row.cells).collect();
        // Where semicolons separate cells, a comma is a decimal point.
        let comma = if text.contains(';') { "." } else { "," };
        assert_eq!(cells, [["a", "b", &format!("1{comma}5")], ["c", "d", &format!("2{comma}5")]], "{text:?}");
    }
}

#[test]
fn a_row_knows_its_line() {
    let rows = read("a,b\n\"two\nlines\",x\n\nlast,y\n").expect("a file");
    let lines: Vec<u64> = rows.iter().map(|row| row.line).collect();
    assert_eq!(lines, [1, 2, 5]);
}

#[test]
fn a_file_too_long_says_so() {
    let why = read(&"a,b\n".repeat(6_000)).expect_err("too many rows");
    assert!(why.contains("5000 rows"), "{why}");
    let why = read(&"x".repeat(2_000_001)).expect_err("too many letters");
    assert!(why.contains("too long"), "{why}");
}

#[test]
fn a_quotation_mark_that_is_never_closed_is_told_by_its_line() {
    let told = "Line 2: a quotation mark is never closed. Nothing from this file was used.";
    for text in ["Name,Bore\n\"left,1\nright,2\n", "Name;Bore\r\n1;\"left\r\nright;2\r\n", "Name,Bore\n\"a\"\"b,1\n"] {
        assert_eq!(read(text), Err(told.to_string()), "{text}");
    }
    // An inch mark within a cell, a mark written twice and a line break in quotes are no mistakes.
    for text in ["Name,Bore\n1-1/4\",1\n", "Name,Bore\n\"1-1/4\"\"\",1\n", "Name,Bore\n\"left\nend\",1\n\"\",2\n"] {
        assert!(read(text).is_ok(), "{text}");
    }
}
