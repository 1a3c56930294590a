//! A list of rows: from a CSV file and back, with nothing lost on the way.
//!
//! A cell that cannot be read stays in its row as it was written, until somebody corrects it: the row is kept but not
//! used. Columns that are not known here are carried along.

use super::columns::{Column, Value};
use crate::document::one_line;
use crate::spreadsheet;

/// More complaints than this help nobody.
const MOST_NOTICES: usize = 20;

/// A list.
#[derive(Debug, Clone, PartialEq)]
pub struct Table<R> {
    /// Its rows, in the shop's own order.
    pub rows: Vec<Entry<R>>,
    /// Headings of columns that are not known here.
    pub extra: Vec<String>,
}

/// A row of a list.
#[derive(Debug, Clone, PartialEq, Default)]
pub struct Entry<R> {
    /// What was understood.
    pub row: R,
    /// Cells that could not be read: place of the column, and the text as it was written.
    pub unread: Vec<(usize, String)>,
    /// Cells of the columns that are not known here.
    pub extra: Vec<String>,
}

/// A list as it was read.
#[derive(Debug, Clone, PartialEq)]
pub struct Read<T> {
    /// What was read.
    pub list: T,
    /// What the reader should know, a sentence each, with line and column; empty when all is well.
    pub notices: Vec<String>,
}

impl<R> Default for Table<R> {
    fn default() -> Self {
        Self { rows: Vec::new(), extra: Vec::new() }
    }
}

impl<R> Entry<R> {
    /// Headings of the needed columns that hold nothing, and of every column whose cell could not be read.
    pub fn lacks(&self, columns: &[Column<R>]) -> Vec<&'static str> {
        let each = columns.iter().enumerate();
        each.filter(|(place, column)| {
            let unread = self.unread.iter().any(|(at, _)| at == place);
            unread || (column.needed && (column.get)(&self.row) == Value::Empty)
        })
        .map(|(_, column)| column.name)
        .collect()
    }
}

/// A heading with its unit: `Bore (in)`.
pub(super) fn heading<R>(column: &Column<R>) -> String {
    let unit = column.holds.unit();
    if unit.is_empty() { column.name.to_string() } else { format!("{} ({unit})", column.name) }
}

/// A heading as its name in small letters, and the unit in its brackets.
fn parted(heading: &str) -> (String, String) {
    let (name, unit) =
        heading.trim_end().strip_suffix(')').and_then(|rest| rest.rsplit_once('(')).unwrap_or((heading, ""));
    (name.trim().to_lowercase(), unit.trim().to_string())
}

/// Where the cells of a file go.
enum Goes {
    /// To a column, with the unit of its heading.
    To(usize, String),
    /// Along with the row.
    Along,
}

/// Reads a file. Rows without a word are left out.
///
/// # Errors
/// A sentence, when it is no file of such a list at all.
pub(super) fn read<R: Default>(columns: &[Column<R>], text: &str) -> Result<Read<Table<R>>, String> {
    let mut rows = spreadsheet::read(text)?.into_iter();
    let first = rows.next().map(|row| row.cells).unwrap_or_default();
    let mut notices = Vec::new();
    let mut list = Table { rows: Vec::new(), extra: Vec::new() };
    let mut goes = Vec::new();
    let mut taken: Vec<usize> = Vec::new();
    for heading in &first {
        let (name, unit) = parted(heading);
        let at = columns.iter().position(|column| column.name.to_lowercase() == name);
        match at.filter(|at| !taken.contains(at)).and_then(|at| Some((at, columns.get(at)?))) {
            Some((at, column)) if unit.is_empty() || column.holds.takes_unit(&unit) => {
                taken.push(at);
                goes.push(Goes::To(at, unit));
            }
            _ => {
                let cell = one_line(heading, 40);
                if at.is_some_and(|at| taken.contains(&at)) {
                    notices
                        .push(format!("Column “{cell}” stands there twice. The first one is used, this one is kept."));
                } else if at.is_some() {
                    notices.push(format!("Column “{cell}”: its unit is not known here. It is kept, but not used."));
                } else if !cell.is_empty() {
                    notices.push(format!("Column “{cell}” is not known here. It is kept, but not used."));
                }
                // The first line tells what separates cells: ours has commas.
                list.extra.push(one_line(heading, 60).replace([';', '\t'], ","));
                goes.push(Goes::Along);
            }
        }
    }
    if taken.is_empty() {
        let known: Vec<String> = columns.iter().take(3).map(heading).collect();
        return Err(format!(
            "The first row of this file must name its columns, such as {}. Nothing from it was used.",
            known.join(", ")
        ));
    }
    for (_, column) in columns.iter().enumerate().filter(|(at, column)| column.needed && !taken.contains(at)) {
        notices.push(format!("There is no column “{}”; without it a row is not used.", heading(column)));
    }
    for row in rows {
        let mut entry = Entry { row: R::default(), unread: Vec::new(), extra: Vec::new() };
        for (place, cell) in row.cells.iter().enumerate() {
            let Some(Goes::To(at, unit)) = goes.get(place) else {
                if place >= goes.len() {
                    list.extra.push(String::new());
                    goes.push(Goes::Along);
                }
                entry.extra.push(cell.clone());
                continue;
            };
            let Some(column) = columns.get(*at) else { continue };
            match column.holds.read(cell, unit) {
                Ok(value) => (column.put)(&mut entry.row, value),
                Err(why) => {
                    notices.push(format!("Line {}, “{}”: {why}", row.line, heading(column)));
                    entry.unread.push((*at, carried(cell, unit, column)));
                }
            }
        }
        list.rows.push(entry);
    }
    for entry in &mut list.rows {
        entry.extra.resize(list.extra.len(), String::new());
        entry.unread.sort();
    }
    if notices.len() > MOST_NOTICES {
        let more = notices.len() - MOST_NOTICES;
        notices.truncate(MOST_NOTICES);
        notices.push(format!("And {more} more like these."));
    }
    Ok(Read { list, notices })
}

/// A cell that could not be read, so written that it means the same under our own heading: a number keeps the unit that
/// its heading gave it, or stays unreadable where nobody knows the unit.
fn carried<R>(cell: &str, unit: &str, column: &Column<R>) -> String {
    let own = column.holds.unit();
    if own.is_empty() || unit == own || !cell.ends_with(|c: char| c.is_ascii_digit() || c == '.') {
        return cell.to_string();
    }
    format!("{cell} {}", if unit.is_empty() { "(unit?)" } else { unit })
}

/// The lines of a file, that of its headings first.
pub(super) fn lines<R>(columns: &[Column<R>], list: &Table<R>) -> Vec<String> {
    let headings = columns.iter().map(heading).chain(list.extra.iter().cloned()).collect();
    let rows = list.rows.iter().map(|entry| cells(columns, entry));
    spreadsheet::lines(std::iter::once(headings).chain(rows))
}

/// The line of one row.
pub(super) fn line<R>(columns: &[Column<R>], list: &Table<R>, place: usize) -> Option<String> {
    let entry = list.rows.get(place)?;
    spreadsheet::lines(std::iter::once(cells(columns, entry))).pop()
}

/// The text of a file.
pub(super) fn write<R>(columns: &[Column<R>], list: &Table<R>) -> String {
    lines(columns, list).concat()
}

/// The cells of a row as a file holds them.
fn cells<R>(columns: &[Column<R>], entry: &Entry<R>) -> Vec<String> {
    let own = columns.iter().enumerate().map(|(at, column)| match entry.unread.iter().find(|(of, _)| *of == at) {
        Some((_, text)) => text.clone(),
        None => column.holds.written(&(column.get)(&entry.row)),
    });
    own.chain(entry.extra.iter().cloned()).collect()
}
