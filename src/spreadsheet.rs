//! Tables as CSV files that spreadsheets open, and back.
//!
//! A spreadsheet runs a cell that begins like a formula. Such a cell is written with an apostrophe before it, and the
//! apostrophe goes again when the file is read (common practice of exporters; RFC 4180 says nothing of it).

use csv::{ReaderBuilder, Terminator, WriterBuilder};

/// A longer file is a mistake.
const LONGEST: usize = 2_000_000;

/// More rows than any shop keeps.
pub const MOST_ROWS: usize = 5_000;

/// A row of a file.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Row {
    /// The line of the file on which it begins; the first is 1.
    pub line: u64,
    /// Its cells.
    pub cells: Vec<String>,
}

/// Whether a spreadsheet would take a cell for a formula. A plain number, such as `-0.5`, is none.
fn runs(cell: &str) -> bool {
    cell.starts_with(['=', '+', '-', '@', '\t', '\r']) && cell.parse::<f64>().is_err()
}

/// A cell that no spreadsheet runs.
fn guarded(cell: &str) -> String {
    // An apostrophe of its own before such a cell is doubled, so that it survives the way back.
    if runs(cell.trim_start_matches('\'')) { format!("'{cell}") } else { cell.to_string() }
}

/// A cell as it was before it was guarded.
fn unguarded(cell: &str) -> &str {
    cell.strip_prefix('\'').filter(|rest| runs(rest.trim_start_matches('\''))).unwrap_or(cell)
}

/// A number as it is written with a point. A spreadsheet that separates cells by semicolons writes `1,335` for 1.335.
fn with_point(cell: &str, delimiter: u8) -> String {
    let is_decimal = |(whole, rest): (&str, &str)| {
        let digits = |text: &str| !text.is_empty() && text.bytes().all(|byte| byte.is_ascii_digit());
        digits(whole.strip_prefix('-').unwrap_or(whole)) && digits(rest)
    };
    if delimiter == b';' && cell.split_once(',').is_some_and(is_decimal) {
        cell.replacen(',', ".", 1)
    } else {
        cell.to_string()
    }
}

/// The text of a file: RFC 4180, UTF-8, lines that end as every spreadsheet reads them.
pub fn write(rows: &[Vec<String>]) -> String {
    lines(rows.iter().cloned()).concat()
}

/// The same with the text of each row by itself.
pub fn lines(rows: impl Iterator<Item = Vec<String>>) -> Vec<String> {
    let mut writer = WriterBuilder::new().flexible(true).terminator(Terminator::CRLF).from_writer(Vec::new());
    let mut lines = Vec::new();
    let mut begun = 0;
    for row in rows {
        // Writing to memory does not fail.
        let _ = writer.write_record(row.iter().map(|cell| guarded(cell)));
        let _ = writer.flush();
        let bytes = writer.get_ref();
        lines.push(String::from_utf8_lossy(bytes.get(begun..).unwrap_or_default()).into_owned());
        begun = bytes.len();
    }
    lines
}

/// The line on which a row begins: the reader counts from before the empty lines above it.
fn first_line(text: &str, start: &csv::Position) -> u64 {
    let rest = usize::try_from(start.byte()).ok().and_then(|byte| text.get(byte..)).unwrap_or_default();
    start.line()
        + rest.bytes().take_while(|byte| matches!(byte, b'\r' | b'\n')).filter(|byte| *byte == b'\n').count() as u64
}

/// The line of a quotation mark that opens a cell and is never closed: it would swallow every row below it.
fn never_closed(text: &str, delimiter: u8) -> Option<usize> {
    let (mut line, mut begins, mut opened) = (1, true, None);
    let mut bytes = text.bytes().peekable();
    while let Some(byte) = bytes.next() {
        match (byte, opened) {
            (b'"', None) if begins => opened = Some(line),
            // Two of them stand for one within a cell.
            (b'"', Some(_)) if bytes.next_if_eq(&b'"').is_none() => opened = None,
            _ => {}
        }
        begins = opened.is_none() && (byte == delimiter || matches!(byte, b'\n' | b'\r'));
        line += usize::from(byte == b'\n');
    }
    opened
}

/// Reads a file; semicolons and tabs separate cells as well as commas, whichever the first line has most of.
///
/// # Errors
/// A sentence that names the line, when the file cannot be read.
pub fn read(text: &str) -> Result<Vec<Row>, String> {
    if text.len() > LONGEST {
        return Err("This file is far too long to be a list of a shop. Nothing from it was used.".to_string());
    }
    let text = text.trim_start_matches('\u{feff}');
    let first = text.lines().next().unwrap_or_default();
    let count = |separator: &u8| first.bytes().filter(|byte| byte == separator).count();
    let delimiter = [b',', b';', b'\t'].into_iter().rev().max_by_key(count).unwrap_or(b',');
    if let Some(line) = never_closed(text, delimiter) {
        return Err(format!("Line {line}: a quotation mark is never closed. Nothing from this file was used."));
    }
    let mut reader =
        ReaderBuilder::new().has_headers(false).flexible(true).delimiter(delimiter).from_reader(text.as_bytes());
    let mut rows = Vec::new();
    for record in reader.records() {
        let record = record.map_err(|why| {
            let line = why.position().map_or(0, csv::Position::line);
            format!("Line {line} of this file cannot be read. Nothing from it was used.")
        })?;
        // Beside the headings.
        if rows.len() > MOST_ROWS {
            return Err(format!("This file has more than {MOST_ROWS} rows. Nothing from it was used."));
        }
        let line = record.position().map_or(0, |start| first_line(text, start));
        let cell = |cell: &str| with_point(unguarded(cell.trim()), delimiter);
        let cells: Vec<String> = record.iter().map(cell).collect();
        if cells.iter().any(|cell| !cell.is_empty()) {
            rows.push(Row { line, cells });
        }
    }
    Ok(rows)
}
