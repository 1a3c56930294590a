//! Turning to another view, another link, a check.

use super::{Session, View};
use crate::browser::page;
use leptos::prelude::*;
use linkwright::inputs::{self, Group};
use linkwright::present::fit::Place;
use linkwright::report::LinkReport;
use std::time::Duration;

/// The list of checks may have to be put on the page first.
const LIST_IS_THERE: Duration = Duration::from_millis(60);

impl Session {
    /// Turns to a view and to its top.
    pub(crate) fn open_view(self, view: View) {
        self.open_view_at(view, "answer".to_string());
    }

    /// Turns to a view and to a part of it, by its id.
    pub(crate) fn open_view_at(self, view: View, id: String) {
        self.settle();
        self.fit_place.set(None);
        self.view.set(view);
        if self.arrived.get_untracked() {
            return page::show_soon(id);
        }
        // Until the view is here, its placeholder.
        page::show_soon("answer".to_string());
        self.wanted_place.set_value(Some((view, id)));
    }

    /// Turns to a place of the Fit view, or back to its buttons: to that of the place that was open.
    pub(crate) fn open_place(self, place: Option<Place>) {
        let before = self.fit_place.get_untracked();
        self.fit_place.set(place);
        page::show_soon(match (place, before) {
            (Some(_), _) => "fit-title".to_string(),
            (None, Some(before)) => format!("fit-{}", before.id()),
            (None, None) => "answer".to_string(),
        });
    }

    /// Turns to the Size view with a group of the form unfolded, and to one of its fields.
    pub(crate) fn open_field(self, group: Group, id: String) {
        self.open_group.set(Some(group));
        self.open_view_at(View::Size, id);
    }

    /// The later part of the program is here: shows the place in it that the reader still waits for.
    pub(crate) fn show_wanted_place(self) {
        let wanted = self.wanted_place.try_update_value(Option::take).flatten();
        if let Some((view, id)) = wanted
            && page::has_focus("answer")
            && self.view.get_untracked() == view
        {
            page::show_soon(id);
        }
    }

    /// Opens a link: at the field it still lacks, else at its answer.
    pub(crate) fn open_link(self, index: usize) {
        self.link.set(index);
        self.open_view_at(View::Size, self.next_place());
    }

    /// The id of the field that the current link still lacks, else of its answer.
    pub(crate) fn next_place(self) -> String {
        let lacks = self.report.with_untracked(|report| match report {
            LinkReport::Needs(needs) => needs.first().copied(),
            _ => None,
        });
        match lacks {
            Some(id) if id == inputs::USAGE.id => format!("in-{id}-{}", (inputs::USAGE.options)()[0].id),
            Some(id) if id == inputs::LENGTH.id || id == inputs::WEIGHT.id => format!("in-{id}"),
            // What is folded away is named in the answer's place.
            _ => "answer".to_string(),
        }
    }

    /// Turns to the Prove view with the working of a check open.
    pub(crate) fn open_check(self, id: &'static str) {
        self.view.set(View::Prove);
        self.open_checks.update(|open| {
            if !open.contains(&id) {
                open.push(id);
            }
        });
        set_timeout(move || page::show(&check_id(id)), LIST_IS_THERE);
    }
}

/// The id of the line of a check.
pub(crate) fn check_id(check: &str) -> String {
    format!("check-{check}")
}
