//! What a shop has and charges: lists of its own stock and its price book, each a CSV file that a spreadsheet opens.
//!
//! Nothing here changes an answer: `engine::report` never reads it. A rod end taken from a list writes its measured
//! sizes into the document, so that a link opens to the same numbers anywhere. What is kept of a list is the text of its
//! file: [`read`] and [`write`] give it back whole.

mod cells;
pub mod columns;
pub mod demo;
pub mod lines;
mod lists;
pub mod money;
pub mod prices;
mod table;

use self::columns::{Column, Holds};
use self::prices::PriceBook;
use crate::quantity::System;
pub use lists::{BARS, INSERTS, Insert, NUTS, Nut, Per, Piece, ROD_ENDS, RodEnd, Stock, TUBES};
pub use table::{Entry, Read, Table};

/// Everything a shop has entered.
#[derive(Debug, Clone, PartialEq, Default)]
pub struct Lists {
    /// Its rod ends.
    pub rod_ends: Table<RodEnd>,
    /// Its solid bars.
    pub bars: Table<Stock>,
    /// Its tubes.
    pub tubes: Table<Stock>,
    /// Its threaded inserts.
    pub inserts: Table<Insert>,
    /// Its jam nuts.
    pub nuts: Table<Nut>,
    /// What it charges.
    pub prices: PriceBook,
}

impl Lists {
    fn stock(&mut self, wall: f64) -> &mut Table<Stock> {
        if wall > 0.0 { &mut self.tubes } else { &mut self.bars }
    }

    /// Adds what a cut left over of a bar, or of a tube where it has a wall: one more where such a remnant is listed.
    pub fn keep_remnant(&mut self, name: &str, metal: &'static str, [outside_diameter, wall, length]: [f64; 3]) {
        let list = self.stock(wall);
        let wall = (wall > 0.0).then_some(wall);
        let remnant = Stock {
            name: name.to_string(),
            metal: Some(metal),
            outside_diameter: Some(outside_diameter),
            wall,
            length: Some(length),
            count: Some(1),
            piece: Some(Piece::Remnant),
            ..Stock::default()
        };
        let near = |a: Option<f64>, b: Option<f64>| a.unwrap_or(0.0).to_bits() == b.unwrap_or(0.0).to_bits();
        let same = list.rows.iter_mut().map(|entry| &mut entry.row).find(|row| {
            row.is_remnant()
                && row.metal == remnant.metal
                && near(row.outside_diameter, remnant.outside_diameter)
                && near(row.wall, remnant.wall)
                && near(row.length, remnant.length)
        });
        match same {
            Some(row) => row.count = row.count.map(|count| count.saturating_add(1)),
            None => {
                let extra = vec![String::new(); list.extra.len()];
                list.rows.push(Entry { row: remnant, unread: Vec::new(), extra });
            }
        }
    }

    /// Takes one piece out of a row of bars, or of tubes, once it is cut; a remnant that is used up leaves the list.
    pub fn cut_up(&mut self, kind: Kind, row: usize) {
        let list = match kind {
            Kind::Bars => &mut self.bars,
            Kind::Tubes => &mut self.tubes,
            _ => return,
        };
        let Some(stock) = list.rows.get_mut(row).map(|entry| &mut entry.row) else { return };
        stock.count = stock.count.map(|count| count.saturating_sub(1));
        if stock.is_remnant() && stock.count == Some(0) {
            list.rows.remove(row);
        }
    }
}

/// Which list.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Kind {
    /// Rod ends.
    RodEnds,
    /// Solid bars.
    Bars,
    /// Tubes.
    Tubes,
    /// Threaded inserts.
    Inserts,
    /// Jam nuts.
    Nuts,
    /// The price book.
    Prices,
}

impl Lists {
    /// Whether there is anything that a link can be made from.
    pub fn has_stock(&self) -> bool {
        !(self.rod_ends.rows.is_empty() && self.bars.rows.is_empty() && self.tubes.rows.is_empty())
    }
}

impl Kind {
    /// Every list, in the order of the page.
    pub const ALL: [Self; 6] = [Self::RodEnds, Self::Bars, Self::Tubes, Self::Inserts, Self::Nuts, Self::Prices];

    /// Never reused once released: what a record or a file is called by.
    pub const fn id(self) -> &'static str {
        match self {
            Self::RodEnds => "rod-ends",
            Self::Bars => "bars",
            Self::Tubes => "tubes",
            Self::Inserts => "inserts",
            Self::Nuts => "jam-nuts",
            Self::Prices => "prices",
        }
    }

    /// As it is shown.
    pub const fn label(self) -> &'static str {
        match self {
            Self::RodEnds => "Rod ends",
            Self::Bars => "Bars",
            Self::Tubes => "Tubes",
            Self::Inserts => "Threaded inserts",
            Self::Nuts => "Jam nuts",
            Self::Prices => "Price book",
        }
    }
}

/// A column as the page shows it.
#[derive(Debug, Clone, Copy)]
pub struct Heading {
    /// Its heading, without a unit.
    pub name: &'static str,
    /// What its cells hold.
    pub holds: Holds,
    /// Whether a row is of no use without it.
    pub needed: bool,
}

/// A cell as the page shows it.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Cell {
    /// What stands in it, as one would type it.
    pub text: String,
    /// Whether it could not be read and waits to be corrected.
    pub unread: bool,
}

/// Does the same with the list of a kind and its columns, whatever its rows are.
macro_rules! with {
    ($lists:expr, $kind:expr, $borrow:ident, |$table:ident, $columns:ident| $body:expr) => {
        match $kind {
            Kind::RodEnds => with!(@ $lists.rod_ends, ROD_ENDS, $borrow, $table, $columns, $body),
            Kind::Bars => with!(@ $lists.bars, BARS, $borrow, $table, $columns, $body),
            Kind::Tubes => with!(@ $lists.tubes, TUBES, $borrow, $table, $columns, $body),
            Kind::Inserts => with!(@ $lists.inserts, INSERTS, $borrow, $table, $columns, $body),
            Kind::Nuts => with!(@ $lists.nuts, NUTS, $borrow, $table, $columns, $body),
            Kind::Prices => with!(@ $lists.prices, prices::PRICES, $borrow, $table, $columns, $body),
        }
    };
    (@ $list:expr, $all:expr, read, $table:ident, $columns:ident, $body:expr) => {{
        let ($table, $columns) = (&$list, $all);
        $body
    }};
    (@ $list:expr, $all:expr, change, $table:ident, $columns:ident, $body:expr) => {{
        let ($table, $columns) = (&mut $list, $all);
        $body
    }};
}

use with;

/// The columns of a list, in their order.
pub fn headings(kind: Kind) -> Vec<Heading> {
    fn all<R>(columns: &[Column<R>]) -> Vec<Heading> {
        columns.iter().map(|it| Heading { name: it.name, holds: it.holds, needed: it.needed }).collect()
    }
    match kind {
        Kind::RodEnds => all(ROD_ENDS),
        Kind::Bars => all(BARS),
        Kind::Tubes => all(TUBES),
        Kind::Inserts => all(INSERTS),
        Kind::Nuts => all(NUTS),
        Kind::Prices => all(prices::PRICES),
    }
}

/// Puts the rows of a file in place of the list of a kind, and tells what could not be read. Nothing is lost: see
/// [`Table`].
///
/// # Errors
/// A sentence, when it is no file of such a list; the list then stays as it is.
pub fn read(lists: &mut Lists, kind: Kind, text: &str) -> Result<Vec<String>, String> {
    with!(lists, kind, change, |table, columns| {
        let read = table::read(columns, text)?;
        *table = read.list;
        Ok(read.notices)
    })
}

/// The text of the file of a list.
pub fn write(lists: &Lists, kind: Kind) -> String {
    with!(lists, kind, read, |table, columns| table::write(columns, table))
}

/// How many rows a list has.
pub fn rows(lists: &Lists, kind: Kind) -> usize {
    with!(lists, kind, read, |table, _columns| table.rows.len())
}

/// A cell of a list in the reader's units; `None` outside the list.
pub fn cell(lists: &Lists, kind: Kind, row: usize, column: usize, system: System) -> Option<Cell> {
    with!(lists, kind, read, |table, columns| {
        let (entry, column_at) = (table.rows.get(row)?, columns.get(column)?);
        let unread = entry.unread.iter().find(|(at, _)| *at == column).map(|(_, text)| text.clone());
        let text = || column_at.holds.shown(&(column_at.get)(&entry.row), system);
        Some(Cell { unread: unread.is_some(), text: unread.unwrap_or_else(text) })
    })
}

/// Headings of what a row lacks before it can be used.
pub fn lacks(lists: &Lists, kind: Kind, row: usize) -> Vec<&'static str> {
    with!(lists, kind, read, |table, columns| {
        table.rows.get(row).map(|entry| entry.lacks(columns)).unwrap_or_default()
    })
}

/// What keeps a row from being used, in a sentence; `None` when it can be.
pub fn complaint(lists: &Lists, kind: Kind, row: usize) -> Option<String> {
    let lacks = lacks(lists, kind, row);
    if !lacks.is_empty() {
        return Some(format!("Not used until you enter or correct: {}.", lacks.join(", ")));
    }
    let price = lists.prices.rows.get(row).filter(|_| kind == Kind::Prices)?;
    price.row.complaint()
}

/// Takes over what was typed into a cell, where a bare number has the unit of `system`; empty text empties the cell.
///
/// # Errors
/// A sentence that says what was read and what would work; the cell then stays as it is.
pub fn set_cell(
    lists: &mut Lists,
    kind: Kind,
    row: usize,
    column: usize,
    text: &str,
    system: System,
) -> Result<(), String> {
    with!(lists, kind, change, |table, columns| {
        let (Some(entry), Some(column_at)) = (table.rows.get_mut(row), columns.get(column)) else {
            return Err("This row is no longer in the list.".to_string());
        };
        let value = column_at.holds.typed(text, system)?;
        (column_at.put)(&mut entry.row, value);
        entry.unread.retain(|(at, _)| *at != column);
        Ok(())
    })
}

/// Adds an empty row and gives its place. A row without a word in it is not kept.
pub fn add_row(lists: &mut Lists, kind: Kind) -> usize {
    with!(lists, kind, change, |table, _columns| {
        let extra = vec![String::new(); table.extra.len()];
        table.rows.push(Entry { extra, ..Entry::default() });
        table.rows.len() - 1
    })
}

/// Empties a list.
pub fn clear(lists: &mut Lists, kind: Kind) {
    with!(lists, kind, change, |table, _columns| *table = Default::default());
}

/// Takes a row away.
pub fn remove_row(lists: &mut Lists, kind: Kind, row: usize) {
    with!(lists, kind, change, |table, _columns| {
        if row < table.rows.len() {
            table.rows.remove(row);
        }
    });
}
