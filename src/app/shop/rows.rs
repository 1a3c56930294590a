//! Rows of a list one by one: an edit lands on the row that was read, whatever other tabs did to the list meanwhile.

use super::Shop;
use leptos::prelude::*;
use linkwright::present::order::lists::{CHANGED_ELSEWHERE, landed};
use linkwright::quantity::System;
use linkwright::shop::lines::{AsRead, Landed, Lines, RowId};
use linkwright::shop::{Kind, Lists};

impl Shop {
    /// Does something with the lines of a list, which are written when they are first asked for.
    fn with_lines<T>(self, kind: Kind, of: impl FnOnce(&mut Lines) -> T) -> Option<T> {
        self.lines.try_update_value(|all| {
            let at = all.iter().position(|(known, _)| *known == kind).unwrap_or_else(|| {
                let mut lines = Lines::default();
                self.lists.with_untracked(|lists| lines.follow(lists, kind));
                all.push((kind, lines));
                all.len() - 1
            });
            all.get_mut(at).map(|(_, lines)| of(lines))
        })?
    }

    /// Changes a list and its lines together.
    fn change<T>(self, kind: Kind, change: impl FnOnce(&mut Lists, &mut Lines) -> T) -> Option<T> {
        // They are written before the list is held for the change.
        self.with_lines(kind, |_| ())?;
        self.lists.try_update(|lists| self.with_lines(kind, |lines| change(lists, lines)))?
    }

    /// The rows of a list in which all of the words stand.
    pub(crate) fn found(self, kind: Kind, words: &str) -> Vec<RowId> {
        self.with_lines(kind, |lines| lines.found(words)).unwrap_or_default()
    }

    /// Every row of a list.
    pub(crate) fn rows(self, kind: Kind) -> Vec<RowId> {
        self.lists.track();
        self.with_lines(kind, |lines| lines.ids()).unwrap_or_default()
    }

    /// The place of a row in its list.
    pub(crate) fn place(self, kind: Kind, row: RowId) -> Option<usize> {
        self.with_lines(kind, |lines| lines.place(row)).flatten()
    }

    /// A row as it stands now, before somebody changes it.
    pub(crate) fn as_read(self, kind: Kind, row: RowId) -> Option<AsRead> {
        self.with_lines(kind, |lines| lines.as_read(row)).flatten()
    }

    /// A field of a list is entered: what other tabs write waits.
    pub(crate) fn enter(self, kind: Kind) {
        self.typed_into.set_value(Some(kind));
    }

    /// It is left.
    pub(crate) fn leave(self, kind: Kind) {
        if self.typed_into.try_get_value().is_some() {
            self.typed_into.set_value(None);
            self.catch_up(kind);
        }
    }

    /// Takes over what was typed into a cell of a row as it was read, and says where it landed if that is another row.
    pub(crate) fn type_into(
        self,
        kind: Kind,
        read: &AsRead,
        (column, text, system): (usize, &str, System),
    ) -> Option<Result<Landed, String>> {
        self.catch_up(kind);
        let taken = self.change(kind, |lists, lines| lines.set_cell(lists, kind, read, (column, text, system)))?;
        if let Ok(where_to) = &taken {
            self.tell(kind, landed(*where_to).map(str::to_string));
            self.keep_lines(kind);
        }
        Some(taken)
    }

    /// Adds an empty row at the end.
    pub(crate) fn add(self, kind: Kind) {
        self.catch_up(kind);
        match self.change(kind, |lists, lines| lines.add(lists, kind)) {
            Some(Ok(_)) => {
                self.tell(kind, None);
                self.keep_lines(kind);
            }
            Some(Err(sentence)) => self.tell(kind, Some(sentence)),
            None => {}
        }
    }

    /// Takes a row away, unless another tab changed it since it was read.
    pub(crate) fn remove(self, kind: Kind, read: &AsRead) {
        self.catch_up(kind);
        match self.change(kind, |lists, lines| lines.remove(lists, kind, read)) {
            Some(true) => {
                self.tell(kind, None);
                self.keep_lines(kind);
            }
            Some(false) => self.tell(kind, Some(CHANGED_ELSEWHERE.to_string())),
            None => {}
        }
    }

    /// Says what is to know of an edit, in the place of what was said of the one before.
    fn tell(self, kind: Kind, sentence: Option<String>) {
        let is_old = self.told_of_edit.get_value() == Some(kind);
        if sentence.is_some() || is_old {
            self.told_of_edit.set_value(sentence.is_some().then_some(kind));
            self.say(kind, sentence.into_iter().collect());
        }
    }

    /// Keeps a list of which one row was written anew.
    fn keep_lines(self, kind: Kind) {
        if let Some(text) = self.with_lines(kind, |lines| lines.text()) {
            self.keep_edited(kind, text);
        }
    }
}
