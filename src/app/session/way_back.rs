//! The browser's way back: each view that was turned to, and each place of the Fit view, is a step of it.
//!
//! The page's own steps carry their name beside the address. A step without one, or of another visit, is an address that
//! somebody opened: [`Session::address_changed`] reads it.

use super::{Session, View};
use crate::browser::address::{self, OWN_ADDRESS};
use crate::browser::{clock, page, storage, window};
use leptos::prelude::*;
use linkwright::present::fit::Place;

/// What the page shows at one step.
#[derive(Clone, PartialEq, Eq, Debug)]
struct Step {
    /// Which opening of an address it belongs to.
    visit: String,
    view: View,
    /// The place in the Fit view.
    place: Option<Place>,
}

impl Step {
    fn written(&self) -> String {
        format!("{} {} {}", self.visit, self.view.name(), self.place.map_or("", Place::id))
    }

    fn read(text: &str) -> Option<Self> {
        let mut parts = text.split(' ');
        let (visit, view, place) = (parts.next()?, parts.next()?, parts.next()?);
        let view = View::ALL.into_iter().find(|each| each.name() == view)?;
        let place = Place::ALL.into_iter().find(|each| each.id() == place);
        Some(Self { visit: visit.to_string(), view, place })
    }

    fn of_browser() -> Option<Self> {
        Self::read(&address::step()?)
    }
}

impl Session {
    /// Shows what the page showed before it was loaded anew, and makes a step of every view that is turned to.
    pub(super) fn follow_way_back(self) {
        self.begin_visit();
        Effect::new(move |_| {
            let step = Step { visit: self.visit.get_value(), view: self.view.get(), place: self.fit_place.get() };
            match Step::of_browser() {
                Some(stands) if stands == step => {}
                Some(stands) if stands.visit == step.visit => address::add_step(&step.written()),
                _ => address::name_step(&step.written()),
            }
        });
        window::on("popstate", move |_| self.step_back());
    }

    /// The reader went back or forth: shows that step's view. Entries are not taken back with it; there is a button for
    /// that.
    fn step_back(self) {
        let same_entries = || storage::get_of_tab(OWN_ADDRESS).unwrap_or_default() == address::fragment();
        let ours = Step::of_browser().is_some();
        if !ours || !(self.is_at_own_step() || same_entries()) {
            return;
        }
        self.settle();
        self.begin_visit();
        self.write_address();
        let is_place = self.fit_place.with_untracked(Option::is_some);
        page::show_soon(if is_place { "fit-title" } else { "answer" }.to_string());
    }

    /// Whether the browser stands at a step of what is open.
    pub(super) fn is_at_own_step(self) -> bool {
        Step::of_browser().is_some_and(|step| step.visit == self.visit.get_value())
    }

    /// An address was opened: its steps are of its own visit, and it shows what it showed before, if it did.
    pub(super) fn begin_visit(self) {
        let Some(step) = Step::of_browser() else { return self.visit.set_value(clock::fresh_id()) };
        self.visit.set_value(step.visit);
        self.view.set(step.view);
        self.fit_place.set(step.place);
    }
}
