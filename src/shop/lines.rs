//! A list as one tab holds it: the line of each row in its file, with a name that stays with the row while others come
//! and go. So an edit lands on the row that was read, and only that row is written anew.

use super::table::{self, Entry};
use super::{BARS, INSERTS, Kind, Lists, NUTS, ROD_ENDS, TUBES, prices, set_cell, with};
use crate::quantity::System;
use crate::spreadsheet::MOST_ROWS;
use std::collections::{BTreeMap, VecDeque};

/// Said where no row may be added.
const FULL: &str = "This list has 5,000 rows, as many as one may have. Remove a row first.";

/// Names a row within one tab.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub struct RowId(u32);

/// The lines of a list.
#[derive(Debug, Clone, PartialEq, Eq, Default)]
pub struct Lines {
    heading: String,
    rows: Vec<(RowId, String)>,
    next: u32,
}

/// A row as somebody read it before changing it.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct AsRead {
    row: RowId,
    heading: String,
    line: String,
}

/// Where an edit landed.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Landed {
    /// In the row that was read.
    InPlace,
    /// In a row of its own right below the one that was read, which somebody changed meanwhile.
    Below,
    /// In a row of its own at the end, since somebody took the one that was read away.
    AtTheEnd,
}

impl Lines {
    /// Takes over the list as it is now. A row whose line is as before keeps its name; so does, as far as there are as
    /// many, one that was changed.
    pub fn follow(&mut self, lists: &Lists, kind: Kind) {
        let mut lines = with!(lists, kind, read, |list, columns| table::lines(columns, list)).into_iter();
        self.heading = lines.next().unwrap_or_default();
        let lines: Vec<String> = lines.collect();
        let before = std::mem::take(&mut self.rows);
        let mut free: BTreeMap<&str, VecDeque<usize>> = BTreeMap::new();
        for (place, (_, line)) in before.iter().enumerate() {
            free.entry(line).or_default().push_back(place);
        }
        let matched: Vec<Option<usize>> =
            lines.iter().map(|line| free.get_mut(line.as_str()).and_then(VecDeque::pop_front)).collect();
        let mut left: Vec<usize> = free.into_values().flatten().collect();
        left.sort_unstable();
        let mut left = left.into_iter();
        let named = matched.into_iter().map(|place| place.or_else(|| left.next()));
        let ids: Vec<Option<RowId>> = named.map(|place| before.get(place?).map(|(id, _)| *id)).collect();
        for (line, id) in lines.into_iter().zip(ids) {
            let id = id.unwrap_or_else(|| self.fresh());
            self.rows.push((id, line));
        }
    }

    fn fresh(&mut self) -> RowId {
        self.next += 1;
        RowId(self.next)
    }

    /// The names of the rows in their order.
    pub fn ids(&self) -> Vec<RowId> {
        self.rows.iter().map(|(id, _)| *id).collect()
    }

    /// The place of a row; `None` once it is gone.
    pub fn place(&self, row: RowId) -> Option<usize> {
        self.rows.iter().position(|(id, _)| *id == row)
    }

    /// The text of the file.
    pub fn text(&self) -> String {
        let length = self.heading.len() + self.rows.iter().map(|(_, line)| line.len()).sum::<usize>();
        let mut text = String::with_capacity(length);
        text.push_str(&self.heading);
        self.rows.iter().for_each(|(_, line)| text.push_str(line));
        text
    }

    /// The rows in which every one of the words stands, in large or small letters; all of them where there is none.
    pub fn found(&self, words: &str) -> Vec<RowId> {
        let words: Vec<String> = words.split_whitespace().map(str::to_lowercase).collect();
        let has_all = |line: &str| {
            let line = if words.is_empty() { String::new() } else { line.to_lowercase() };
            words.iter().all(|word| line.contains(word.as_str()))
        };
        self.rows.iter().filter(|(_, line)| has_all(line)).map(|(id, _)| *id).collect()
    }

    /// A row as it is read now.
    pub fn as_read(&self, row: RowId) -> Option<AsRead> {
        let (row, line) = self.rows.iter().find(|(id, _)| *id == row)?;
        Some(AsRead { row: *row, heading: self.heading.clone(), line: line.clone() })
    }

    /// Takes over what was typed into a cell of a row as it was read. If the row was changed or taken away meanwhile, a
    /// row with the edit is added beside it, so that nothing of either is lost.
    ///
    /// # Errors
    /// A sentence that says what was read and what would work; the list then stays as it is.
    pub fn set_cell(
        &mut self,
        lists: &mut Lists,
        kind: Kind,
        read: &AsRead,
        (column, text, system): (usize, &str, System),
    ) -> Result<Landed, String> {
        let there = self.place(read.row);
        let is_as_read = self.as_read(read.row).is_some_and(|now| now == *read);
        if let Some(place) = there.filter(|_| is_as_read) {
            set_cell(lists, kind, place, column, text, system)?;
            self.renew(lists, kind, place);
            return Ok(Landed::InPlace);
        }
        if self.is_full() {
            return Err(FULL.to_string());
        }
        let place = there.map_or(self.rows.len(), |place| place + 1);
        if !insert(lists, kind, place, read) {
            return Err("This row is no longer in the list, and what it was cannot be read again.".to_string());
        }
        if let Err(why) = set_cell(lists, kind, place, column, text, system) {
            super::remove_row(lists, kind, place);
            return Err(why);
        }
        let id = self.fresh();
        self.rows.insert(place, (id, String::new()));
        self.renew(lists, kind, place);
        // A row without a word is kept nowhere, so that nobody took it away.
        let nothing_lost = read.line.chars().all(|letter| matches!(letter, ',' | '\r' | '\n'));
        Ok(match there {
            Some(_) => Landed::Below,
            None if nothing_lost => Landed::InPlace,
            None => Landed::AtTheEnd,
        })
    }

    /// Whether no row may be added: a file of more could not be read again.
    fn is_full(&self) -> bool {
        self.rows.len() >= MOST_ROWS
    }

    /// Adds an empty row at the end and gives its name.
    ///
    /// # Errors
    /// A sentence, when the list is full.
    pub fn add(&mut self, lists: &mut Lists, kind: Kind) -> Result<RowId, String> {
        if self.is_full() {
            return Err(FULL.to_string());
        }
        let place = super::add_row(lists, kind);
        let id = self.fresh();
        self.rows.push((id, String::new()));
        self.renew(lists, kind, place);
        Ok(id)
    }

    /// Takes a row away if it still is as it was read; gives whether it is gone.
    pub fn remove(&mut self, lists: &mut Lists, kind: Kind, read: &AsRead) -> bool {
        let Some(place) = self.place(read.row) else { return true };
        let is_as_read = self.as_read(read.row).is_some_and(|now| now == *read);
        if is_as_read {
            super::remove_row(lists, kind, place);
            self.rows.remove(place);
        }
        is_as_read
    }

    /// Writes the line of one row anew.
    fn renew(&mut self, lists: &Lists, kind: Kind, place: usize) {
        let line = with!(lists, kind, read, |list, columns| table::line(columns, list, place));
        if let Some(((_, kept), line)) = self.rows.get_mut(place).zip(line) {
            *kept = line;
        }
    }
}

/// Puts a row as it was read back into a list; gives whether it could be read.
fn insert(lists: &mut Lists, kind: Kind, place: usize, read: &AsRead) -> bool {
    let text = format!("{}{}", read.heading, read.line);
    with!(lists, kind, change, |list, columns| {
        let Ok(was) = table::read(columns, &text) else { return false };
        let found = was.list.rows.into_iter().next();
        let mut entry = found.unwrap_or_default();
        let of_column = |name: &String| {
            let at = was.list.extra.iter().position(|its| its == name);
            at.and_then(|at| entry.extra.get(at).cloned()).unwrap_or_default()
        };
        let extra = list.extra.iter().map(of_column).collect();
        entry = Entry { extra, ..entry };
        list.rows.insert(place.min(list.rows.len()), entry);
        true
    })
}
