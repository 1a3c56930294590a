//! The state of the page: the document, the reports that follow from it, and what the reader is looking at.

mod answers;
mod autosave;
mod builds;
mod edits;
mod history;
mod logs;
mod navigation;
mod opening;
mod other_tabs;
mod printing;
mod slow;
mod typing;
mod view;
mod way_back;

pub(crate) use answers::after_paint;
pub(crate) use builds::Saving;
use logs::Unkept;
pub(crate) use navigation::check_id;
pub(crate) use slow::{Question, use_slow};
pub(crate) use view::View;

use crate::browser::window;
use answers::answer_in;
use leptos::prelude::*;
use linkwright::document::Document;
use linkwright::engine;
use linkwright::engine::sentence::Phrase;
use linkwright::inputs::drafts::{Draft, Drafts};
use linkwright::inputs::{self, At};
use linkwright::present::fit::Place;
use linkwright::present::words;
use linkwright::quantity::{Kind, System};
use linkwright::report::{Answer, LinkReport, WholeRig};
use linkwright::share::{Sent, sent};
use linkwright::store::Refused;
use linkwright::store::history::History;
use linkwright::store::saved_builds::SavedBuild;
use linkwright::store::stored_entries::{Origin, StoredEntries};
use slow::Firm;
use std::sync::Arc;

/// The state of the page; a copy of it is no more than a handful of signals.
#[derive(Clone, Copy)]
pub(crate) struct Session {
    /// What was decided. Read it freely; it is written through the methods of the session.
    pub(crate) document: RwSignal<Document>,
    /// The reader's units; [`Session::switch_units`] changes them.
    pub(crate) units: RwSignal<System>,
    /// The open view.
    pub(crate) view: RwSignal<View>,
    /// The open place of the Fit view; none while its six buttons are shown.
    pub(crate) fit_place: RwSignal<Option<Place>>,
    /// The index of the current link.
    pub(crate) link: RwSignal<usize>,
    /// The report on the current link.
    pub(crate) report: Memo<LinkReport>,
    /// The answer for the current link, if there is one.
    pub(crate) answer: Memo<Option<Arc<Answer>>>,
    /// The same a frame later, for the sections below: the answer must not wait for the rest of the page.
    pub(crate) answer_below: RwSignal<Option<Arc<Answer>>>,
    /// Whether there is an answer.
    pub(crate) answered: Memo<bool>,
    /// Whether the first entries are there, so that there is an answer, or something to say instead.
    pub(crate) entered: Memo<bool>,
    /// Every link and the rig; worked out only while something reads it.
    pub(crate) rig: Memo<Arc<WholeRig>>,
    /// How firm the answer is; worked out only while something reads it.
    pub(crate) firmness: Memo<Firm>,
    /// The document without its order and what was measured of it, and the current link: what slow questions rest on.
    pub(crate) question: Memo<Question>,
    /// The same as they were when typing last paused.
    paused: RwSignal<Option<Question>>,
    /// The name typed for the next step of the order; it belongs to these entries and stays while views are switched.
    pub(crate) order_person: RwSignal<String>,
    /// What is typed into fields.
    pub(crate) drafts: RwSignal<Drafts>,
    /// What could not be taken of it: of the current link, or of all where all are seen.
    refused_drafts: Memo<Vec<Draft>>,
    /// The saved builds on this device, once they were read.
    pub(crate) builds: RwSignal<Option<Vec<SavedBuild>>>,
    /// Where the entries come from.
    pub(crate) origin: RwSignal<Origin>,
    /// What the reader should know about the entries that were opened, a sentence each.
    pub(crate) notices: RwSignal<Vec<String>>,
    /// The reader's own entries from before something else took their place.
    pub(crate) earlier: RwSignal<Option<StoredEntries>>,
    /// Counts up whenever another tab writes into the shop's lists.
    pub(crate) shop_changed: RwSignal<u32>,
    /// Counts up whenever another tab writes into a log.
    pub(crate) log_changed: RwSignal<u32>,
    /// What another tab has open, if that is something else.
    pub(crate) other_tab: RwSignal<Option<StoredEntries>>,
    /// A log that the browser did not keep, if there is one.
    pub(crate) unkept_log: RwSignal<Option<Unkept>>,
    /// Why the browser refuses to store anything, if it does.
    pub(crate) refused: RwSignal<Option<Refused>>,
    /// The ids of the checks whose working is open.
    pub(crate) open_checks: RwSignal<Vec<&'static str>>,
    /// The ids of the folded sections of the Size view that are open; none while the reader touched none.
    pub(crate) open_sections: RwSignal<Option<Vec<&'static str>>>,
    /// The group of the form that a jump unfolded, until it is folded again.
    pub(crate) open_group: RwSignal<Option<inputs::Group>>,
    /// Whether drawings are laid out for a wide screen.
    pub(crate) wide: RwSignal<bool>,
    /// Whether entries and answer stand side by side.
    pub(crate) columns: RwSignal<bool>,
    /// Whether the page is being printed.
    pub(crate) printing: RwSignal<bool>,
    /// Whether every working, or every link's sheet, is printed too.
    pub(crate) laid_open: RwSignal<bool>,
    /// The part of a view that is printed by itself, by its name.
    pub(crate) paper_part: RwSignal<Option<&'static str>>,
    /// Whether the part of the program that the first answer does not need is here.
    pub(crate) arrived: RwSignal<bool>,
    /// Where the reader wants to be once that part is here.
    wanted_place: StoredValue<Option<(View, String)>>,
    history: RwSignal<History>,
    /// Which opening of an address the steps of the way back belong to.
    visit: StoredValue<String>,
    /// The stored entries of all tabs, as this tab last read or wrote them.
    seen: StoredValue<Option<String>>,
    /// Whether the browser refused to store the entries, so that it is tried again.
    unsaved: StoredValue<bool>,
    /// Whether a finger or a mouse button is down.
    pressed: StoredValue<bool>,
    /// How often the page asked to print, and whether the browser is at it.
    printer: StoredValue<(u32, bool)>,
}

/// The session of the page.
pub(crate) fn use_session() -> Session {
    expect_context::<Session>()
}

impl Session {
    /// Opens the session: with the link in the address, else with the stored entries.
    pub(crate) fn open() -> Self {
        let document = RwSignal::new(Document::default());
        let link = RwSignal::new(0);
        let units = RwSignal::new(autosave::stored_units());
        let view = RwSignal::new(autosave::stored_view());
        let drafts = RwSignal::new(Drafts::default());
        // Comparing whole reports costs more than comparing the rows that are made of them.
        let report = Memo::new_with_compare(
            move |_| document.with(|document| engine::report_on(document, link.get())),
            |_, _| true,
        );
        let answer = Memo::new_with_compare(
            move |_| report.with(answer_in),
            |before, now| {
                before.map(|answer| answer.as_ref().map(Arc::as_ptr))
                    != now.map(|answer| answer.as_ref().map(Arc::as_ptr))
            },
        );
        let rig = Memo::new_with_compare(
            move |before: Option<&Arc<WholeRig>>| {
                document.with(|document| {
                    // The report follows every change of the document; which link it is of does not matter here.
                    let link = link.get_untracked();
                    report.with_untracked(|report| {
                        Arc::new(engine::whole_rig_with(document, before.map(Arc::as_ref), Some((link, report))))
                    })
                })
            },
            |_, _| true,
        );
        let refused_drafts = Memo::new(move |_| {
            let (link, all, system) = (link.get(), view.get() == View::Rig, units.get());
            let mut refused = drafts.with(|drafts| document.with(|document| drafts.refused(document, system)));
            refused.retain(|draft| all || !draft.is_of_a_link() || draft.place.link == link);
            refused
        });
        let printing = RwSignal::new(false);
        // What was said and measured of an order is long, and no report rests on it.
        let question = Memo::new(move |_| (document.with(|document| sent(document, Sent::default())), link.get()));
        let paused = slow::paused(question);
        let session = Self {
            document,
            units,
            view,
            fit_place: RwSignal::new(None),
            link,
            report,
            answer,
            answer_below: RwSignal::new(None),
            answered: Memo::new(move |_| answer.with(Option::is_some)),
            entered: Memo::new(move |_| {
                document.with(|document| inputs::still_needed(document, link.get()).is_empty())
            }),
            rig,
            firmness: slow::firmness(question, paused, printing),
            question,
            paused,
            order_person: RwSignal::new(String::new()),
            drafts,
            refused_drafts,
            builds: RwSignal::new(None),
            origin: RwSignal::new(Origin::default()),
            notices: RwSignal::new(Vec::new()),
            earlier: RwSignal::new(None),
            other_tab: RwSignal::new(None),
            shop_changed: RwSignal::new(0),
            log_changed: RwSignal::new(0),
            unkept_log: RwSignal::new(None),
            refused: RwSignal::new(None),
            open_checks: RwSignal::new(Vec::new()),
            open_sections: RwSignal::new(None),
            open_group: RwSignal::new(None),
            wide: RwSignal::new(true),
            columns: RwSignal::new(false),
            printing,
            laid_open: RwSignal::new(false),
            paper_part: RwSignal::new(None),
            arrived: RwSignal::new(false),
            wanted_place: StoredValue::new(None),
            history: RwSignal::new(History::default()),
            visit: StoredValue::new(String::new()),
            seen: StoredValue::new(None),
            unsaved: StoredValue::new(false),
            pressed: StoredValue::new(false),
            printer: StoredValue::new((0, false)),
        };
        window::follow_media("(min-width: 40rem)", move |wide| session.wide.set(wide));
        window::follow_media("(min-width: 64rem)", move |columns| session.columns.set(columns));
        session.open_at_load();
        session.follow_way_back();
        session.follow_answer();
        session.follow_history();
        session.save_on_change();
        session.watch_other_tabs();
        session.watch_printing();
        for (event, down) in [("pointerdown", true), ("pointerup", false), ("pointercancel", false)] {
            window::on(event, move |_| session.pressed.set_value(down));
        }
        window::on("hashchange", move |_| session.address_changed());
        session
    }

    /// Changes values of the document.
    pub(crate) fn edit(self, change: impl FnOnce(&mut Document)) {
        self.document.update(change);
    }

    /// Changes which links the rig has; half-typed entries belong to links that may have moved.
    pub(crate) fn rearrange(self, change: impl FnOnce(&mut Document)) {
        self.settle();
        self.drafts.set(Drafts::default());
        let mut document = self.document.get_untracked();
        change(&mut document);
        self.follow(document);
    }

    /// Opens another document.
    pub(crate) fn replace(self, document: Document) {
        self.settle();
        self.drafts.set(Drafts::default());
        self.order_person.set(String::new());
        self.link.set(0);
        self.document.set(document);
    }

    /// The current link and its axle.
    pub(crate) fn place(self) -> At {
        let link = self.link.get();
        self.document.with(|document| At::of_link(document, link))
    }

    /// The same, as it is now.
    pub(crate) fn place_untracked(self) -> At {
        let link = self.link.get_untracked();
        self.document.with_untracked(|document| At::of_link(document, link))
    }

    /// Whether nothing was entered yet.
    pub(crate) fn is_empty(self) -> bool {
        self.document.with(|document| *document == Document::default())
    }

    /// A value in the reader's units; a length as it stands in the lists.
    pub(crate) fn show(self, value: f64, kind: Kind) -> String {
        words::value(value, kind, self.units.get())
    }

    /// A sentence in the reader's units.
    pub(crate) fn say(self, said: &[Phrase]) -> String {
        words::say(said, self.units.get())
    }
}
