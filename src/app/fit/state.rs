//! What the Fit view holds: the bar on the rig it is about, its readings and ticks, and the log they go into.

use crate::app::session::{Session, use_session};
use crate::browser::clock;
use leptos::prelude::*;
use linkwright::engine::shop::code::{code_of_link, code_of_made};
use linkwright::log::{self, Entry, EntryKind, Log, Noted, Reading, Spot, reading_row};
use linkwright::present::fit::Place;
use linkwright::present::fit::hit::found_damage;
use linkwright::present::fit::log::TURNED_BY;
use linkwright::present::fit::safe::ROWS;
use linkwright::present::fit::turn::LinkTurn;
use linkwright::store::Refused;
use std::collections::BTreeMap;

/// What can be put into the log of the bar that is looked at.
#[derive(Debug, Clone, PartialEq)]
pub(super) struct Draft {
    kind: EntryKind,
    words: String,
    readings: BTreeMap<&'static str, Reading>,
}

impl Draft {
    /// Words alone.
    pub(super) fn of_words(kind: EntryKind, words: String) -> Self {
        Self { kind, words, readings: BTreeMap::new() }
    }

    /// With one more reading, which stands in no field.
    pub(super) fn with(mut self, id: &'static str, reading: Reading) -> Self {
        self.readings.insert(id, reading);
        self
    }
}

/// The state of the view, for all its components.
#[derive(Clone, Copy)]
pub(super) struct Fitting {
    session: Session,
    /// The log of what is open.
    pub(super) log: RwSignal<Log>,
    /// The bars that the current link stands for, each with its name: a pair is two.
    pub(super) bars: Memo<Vec<(Spot, String)>>,
    /// Which of them is looked at.
    pub(super) chosen: RwSignal<usize>,
    /// Whether a hit is open against the bar that is looked at: nothing is good then.
    pub(super) hit: Memo<bool>,
    /// The ids of the rows in whose fields something stands that cannot be read.
    unread: RwSignal<Vec<&'static str>>,
    /// The codes of the link as it is: of what is made, which every entry is marked by, and of the order, which entries
    /// were marked by before.
    pub(super) codes: Memo<[String; 2]>,
    /// Whether the browser keeps the log, and why not.
    pub(super) kept: RwSignal<Result<(), Refused>>,
    /// Whether all of what was kept could be read.
    pub(super) whole: RwSignal<bool>,
}

/// The state of the view.
pub(super) fn use_fitting() -> Fitting {
    expect_context()
}

/// Provides it: reads the log, and follows what other tabs write and what else is opened.
pub(super) fn provide_fitting() -> Fitting {
    let session = use_session();
    let codes = Memo::new(move |_| {
        let codes = session.answer.get().map(|answer| {
            let link = session.link.get();
            let codes = |document: &_| [code_of_made(document, link, &answer), code_of_link(document, link, &answer)];
            session.document.with(codes).map(|code| code.written())
        });
        codes.unwrap_or_default()
    });
    let (log, chosen) = (RwSignal::new(Log::default()), RwSignal::new(0));
    let bars = Memo::new(move |_| session.document.with(|document| log::bars(document, session.link.get())));
    let hit = Memo::new(move |_| {
        let Some(spot) = spot_of(bars, chosen) else { return false };
        log.with(|log| {
            let reading = |id: &str| log.reading(&spot, id);
            let number = |id: &str| reading(id).and_then(Reading::number);
            let picked = |id: &str| reading(id).and_then(Reading::picked);
            log.open_hit(&spot).is_some() || found_damage(number, picked)
        })
    });
    let kept = session.unkept_log.with_untracked(|unkept| unkept.as_ref().map_or(Ok(()), |unkept| Err(unkept.why)));
    let (kept, whole) = (RwSignal::new(kept), RwSignal::new(true));
    let unread = RwSignal::new(Vec::new());
    let fitting = Fitting { session, log, bars, chosen, hit, unread, codes, kept, whole };
    Effect::new(move |_| {
        session.log_changed.track();
        session.origin.track();
        let (log, whole) = session.kept_log();
        fitting.log.set(log);
        fitting.whole.set(whole);
    });
    provide_context(fitting);
    fitting
}

fn spot_of(bars: Memo<Vec<(Spot, String)>>, chosen: RwSignal<usize>) -> Option<Spot> {
    bars.with(|bars| bars.get(chosen.get()).or_else(|| bars.first()).map(|(spot, _)| spot.clone()))
}

impl Fitting {
    /// The bar that is looked at.
    pub(super) fn spot(self) -> Option<Spot> {
        spot_of(self.bars, self.chosen)
    }

    fn spot_now(self) -> Option<Spot> {
        untrack(|| self.spot())
    }

    /// Notes whether what stands in the field of a row can be read.
    pub(super) fn note_unread(self, id: &'static str, is_unread: bool) {
        if self.unread.with_untracked(|unread| unread.contains(&id)) != is_unread {
            self.unread.update(|unread| {
                unread.retain(|other| *other != id);
                unread.extend(is_unread.then_some(id));
            });
        }
    }

    /// Whether the view was left.
    pub(super) fn is_gone(self) -> bool {
        self.unread.is_disposed()
    }

    /// Whether something stands in a field of these rows that cannot be read.
    pub(super) fn is_unread(self, ids: &[&str]) -> bool {
        self.unread.with(|unread| unread.iter().any(|id| ids.contains(id)))
    }

    /// What stands under the id of a row.
    pub(super) fn reading(self, id: &str) -> Option<Reading> {
        let spot = self.spot()?;
        self.log.with(|log| log.reading(&spot, id))
    }

    /// The number under the id of a row, SI.
    pub(super) fn number(self, id: &str) -> Option<f64> {
        self.reading(id)?.number()
    }

    /// What was picked under the id of a row.
    pub(super) fn picked(self, id: &str) -> Option<&'static str> {
        self.reading(id)?.picked()
    }

    /// Yes or no under the id of a row.
    pub(super) fn yes(self, id: &str) -> Option<bool> {
        self.picked(id).map(|picked| picked == "yes")
    }

    /// Notes a reading, or takes it back.
    pub(super) fn note(self, id: &'static str, value: Option<Reading>) {
        if let Some(spot) = self.spot_now() {
            // The head of the view says where the browser refuses.
            let _ = self.change(|log| log.note(&spot, id, value, &clock::now()));
        }
    }

    /// When a step was ticked; none where it is not.
    pub(super) fn ticked(self, key: &str) -> Option<String> {
        let spot = self.spot()?;
        self.log.with(|log| log.ticked(&spot, key).map(str::to_string))
    }

    /// Ticks steps, or takes their ticks back.
    pub(super) fn tick(self, keys: &[String], ticked: bool) {
        if let Some(spot) = self.spot_now() {
            let now = clock::now();
            let _ = self.change(|log| keys.iter().for_each(|key| log.tick(&spot, key, ticked, &now)));
        }
    }

    /// When something of this kind was last done to the bar, as ISO 8601 in UTC.
    pub(super) fn last(self, kind: EntryKind) -> Option<String> {
        let spot = self.spot()?;
        self.log.with(|log| log.last(&spot, kind))
    }

    /// What can be put into the log of the bar, with the readings of these rows as they stand.
    pub(super) fn draft(self, kind: EntryKind, words: String, readings: &[&str]) -> Draft {
        let rows = readings.iter().filter_map(|id| reading_row(id));
        let readings = rows.filter_map(|row| Some((row.id, self.reading(row.id)?))).collect();
        Draft { kind, words, readings }
    }

    fn entry(self, draft: &Draft, spot: Spot, [code, _]: [String; 2]) -> Entry {
        let Draft { kind, words, readings } = draft.clone();
        let (id, at) = (clock::fresh_id(), clock::now());
        Entry { id, spot, at, kind, code, readings, words, withdrawn: Noted::default() }
    }

    /// Puts something into the log of the bar.
    pub(super) fn record(self, draft: &Draft) -> Result<(), Refused> {
        let Some(spot) = self.spot_now() else { return Ok(()) };
        let entry = self.entry(draft, spot, self.codes.get_untracked());
        self.change(|log| log.record(entry))
    }

    /// When the same was put into the log of the bar today, with nothing else since.
    pub(super) fn has_newest(self, draft: &Draft) -> Option<String> {
        let entry = self.entry(draft, self.spot()?, self.codes.get());
        let at = self.log.with(|log| log.has_newest(&entry).map(|newest| newest.at.clone()))?;
        clock::is_today(&at).then_some(at)
    }

    /// Writes a turn into the log of each bar that was turned, and takes back what was read on it: it is not true any more,
    /// and a nut that was loosened has to be checked.
    pub(super) fn record_turns(self, turned: &[LinkTurn]) -> Result<(), Refused> {
        let now = clock::now();
        let entry = |turn: &LinkTurn| {
            let (link, spot) = (turn.link?, turn.spot.clone()?);
            let readings = [(TURNED_BY, Reading::Number(turn.change))].into();
            let (id, at, code) = (clock::fresh_id(), now.clone(), self.code_of(link));
            let (kind, words) = (EntryKind::Turned, turn.log.clone());
            Some(Entry { id, spot, at, kind, code, readings, words, withdrawn: Noted::default() })
        };
        let entries: Vec<Entry> = turned.iter().filter_map(entry).collect();
        self.change(|log| log.record_turns(entries, &ROWS, &now))
    }

    /// The code of a link of the build as it is; nothing where it has no answer.
    fn code_of(self, link: usize) -> String {
        if link == self.session.link.get_untracked() {
            let [code, _] = self.codes.get_untracked();
            return code;
        }
        let code = self.session.rig.with_untracked(|whole| {
            let answer = whole.links.get(link)?.answer()?;
            Some(code_of_made(&whole.document, link, answer).written())
        });
        code.unwrap_or_default()
    }

    /// Takes an entry out of the log, or puts it back.
    pub(super) fn withdraw(self, id: &str, out: bool) -> Result<(), Refused> {
        self.change(|log| log.withdraw(id, out, &clock::now()))
    }

    /// Tries again to keep what the browser refused.
    pub(super) fn keep_again(self) -> Result<(), Refused> {
        self.change(|_| ())
    }

    /// Changes the log and keeps it.
    fn change(self, change: impl FnOnce(&mut Log)) -> Result<(), Refused> {
        let mut log = self.log.get_untracked();
        change(&mut log);
        let (log, kept) = self.session.keep_log(&log);
        self.kept.set(kept);
        self.log.set(log);
        kept
    }

    /// Turns to a place of the view, or back to its six buttons.
    pub(super) fn open(self, place: Option<Place>) {
        self.session.open_place(place);
    }
}
