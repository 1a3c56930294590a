//! What was read, ticked and done on the rig, bar by bar. A log is kept with a build and beside its document, so that no
//! reading changes a size, and it only grows: what two tabs wrote down can always be joined.

pub mod readings;
mod spot;

pub use readings::told::{DRIVE_ON, HIT_VERDICT, LIMP, NOT_JUDGED, STOP};
pub use readings::{READINGS, Reading, ReadingKind, ReadingRow, is_of_axle, reading_row};
pub use spot::{Spot, bars};

use crate::document::{Document, one_line};
use std::collections::BTreeMap;

/// The log of a build.
#[derive(Debug, Clone, PartialEq, Default)]
pub struct Log {
    /// What is known of each bar now.
    pub bars: BTreeMap<Spot, BarState>,
    /// What was done and found, the oldest first.
    pub entries: Vec<Entry>,
}

/// What is known of one bar now.
#[derive(Debug, Clone, PartialEq, Default)]
pub struct BarState {
    /// The last readings, by the ids of their rows.
    pub readings: BTreeMap<&'static str, Noted<Reading>>,
    /// What is ticked, by the key of each step.
    pub ticks: BTreeMap<String, Noted<()>>,
}

/// Something that was noted, or taken back, and when: the later of two holds.
#[derive(Debug, Clone, PartialEq, Default)]
pub struct Noted<T> {
    /// What was noted; none where it was taken back.
    pub value: Option<T>,
    /// When, as ISO 8601 in UTC.
    pub at: String,
}

/// Something that was done or found.
#[derive(Debug, Clone, PartialEq)]
pub struct Entry {
    /// New for every entry.
    pub id: String,
    /// On which bar.
    pub spot: Spot,
    /// When, as ISO 8601 in UTC.
    pub at: String,
    /// What it was.
    pub kind: EntryKind,
    /// The code of the link as it was then, so that a log tells of which link it speaks.
    pub code: String,
    /// What was read, by the ids of their rows.
    pub readings: BTreeMap<&'static str, Reading>,
    /// What was said of it, one line.
    pub words: String,
    /// Whether it was taken out, and when that was last decided; it stays, so that no other tab brings it again.
    pub withdrawn: Noted<()>,
}

/// What an entry is about.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
pub enum EntryKind {
    /// It was checked as fitted.
    Checked,
    /// Its length was set or changed.
    Turned,
    /// It was fitted.
    Fitted,
    /// It was looked at again.
    Rechecked,
    /// It was looked at after a hit.
    Hit,
    /// Its bar was replaced.
    Replaced,
    /// Anything else.
    Note,
}

impl EntryKind {
    /// Every kind.
    pub const ALL: [Self; 7] =
        [Self::Checked, Self::Turned, Self::Fitted, Self::Rechecked, Self::Hit, Self::Replaced, Self::Note];

    /// Never reused once released.
    pub const fn id(self) -> &'static str {
        match self {
            Self::Checked => "checked",
            Self::Turned => "turned",
            Self::Fitted => "fitted",
            Self::Rechecked => "rechecked",
            Self::Hit => "hit",
            Self::Replaced => "replaced",
            Self::Note => "note",
        }
    }

    /// As the page says it.
    pub const fn label(self) -> &'static str {
        match self {
            Self::Checked => "Checked as fitted",
            Self::Turned => "Length changed",
            Self::Fitted => "Fitted",
            Self::Rechecked => "Recheck",
            Self::Hit => "After a hit",
            Self::Replaced => "Bar replaced",
            Self::Note => "Note",
        }
    }
}

/// The longest line of an entry, in letters.
pub const LONGEST_WORDS: usize = 400;

/// The longest key of a tick, in letters.
pub const LONGEST_KEY: usize = 400;

/// More entries than anybody reads; a longer log is damaged.
pub const MOST_ENTRIES: usize = 2_000;

impl Entry {
    /// Whether it was taken out and not put back.
    pub const fn is_withdrawn(&self) -> bool {
        self.withdrawn.value.is_some()
    }

    /// What a look after a hit came to.
    pub fn hit_verdict(&self) -> Option<&'static str> {
        self.readings.get(HIT_VERDICT)?.picked()
    }
}

impl Log {
    /// Whether nothing was ever noted.
    pub fn is_empty(&self) -> bool {
        self.bars.is_empty() && self.entries.is_empty()
    }

    /// What stands at a bar, or at its axle, under the id of a row.
    pub fn reading(&self, spot: &Spot, id: &str) -> Option<Reading> {
        if is_of_axle(id) { self.of_axle(&spot.axle(), id) } else { self.bars.get(spot)?.readings.get(id)?.value }
    }

    /// What stands at an axle: the last that was noted there, or at one of its bars by a page that kept it bar by bar.
    fn of_axle(&self, axle: &Spot, id: &str) -> Option<Reading> {
        let there = self.bars.iter().filter(|(spot, _)| spot.axle() == *axle);
        let noted = there.filter_map(|(spot, bar)| Some((bar.readings.get(id)?, spot == axle)));
        noted.max_by(|(a, at_axle), (b, of_axle)| (&a.at, at_axle).cmp(&(&b.at, of_axle)))?.0.value
    }

    /// Notes a reading, or takes it back; of an axle, for every bar there.
    pub fn note(&mut self, spot: &Spot, id: &'static str, value: Option<Reading>, now: &str) {
        let spot = if is_of_axle(id) { spot.axle() } else { spot.clone() };
        let bar = self.bars.entry(spot).or_default();
        bar.readings.insert(id, Noted { value, at: now.to_string() });
    }

    /// When a step was ticked; none where it is not.
    pub fn ticked(&self, spot: &Spot, key: &str) -> Option<&str> {
        let tick = self.bars.get(spot)?.ticks.get(key)?;
        tick.value.map(|()| tick.at.as_str())
    }

    /// Ticks a step, or takes the tick back.
    pub fn tick(&mut self, spot: &Spot, key: &str, ticked: bool, now: &str) {
        let bar = self.bars.entry(spot.clone()).or_default();
        bar.ticks.insert(one_line(key, LONGEST_KEY), Noted { value: ticked.then_some(()), at: now.to_string() });
    }

    /// Adds an entry.
    pub fn record(&mut self, entry: Entry) {
        let words = one_line(&entry.words, LONGEST_WORDS);
        self.entries.push(Entry { words, ..entry });
    }

    /// Adds an entry for each bar that was turned, and takes back what was read on it before, by the ids of the rows.
    pub fn record_turns(&mut self, turns: Vec<Entry>, readings: &[&str], now: &str) {
        for entry in turns {
            let rows = readings.iter().filter_map(|id| reading_row(id));
            rows.for_each(|row| self.note(&entry.spot, row.id, None, now));
            self.record(entry);
        }
    }

    /// The entries of a bar that stand, the newest first.
    pub fn of_bar<'a>(&'a self, spot: &'a Spot) -> impl Iterator<Item = &'a Entry> {
        self.entries.iter().rev().filter(move |entry| entry.spot == *spot && !entry.is_withdrawn())
    }

    /// Takes an entry out, or puts it back: it can be undone for as long as the log is kept.
    pub fn withdraw(&mut self, id: &str, out: bool, now: &str) {
        for entry in self.entries.iter_mut().filter(|entry| entry.id == id) {
            entry.withdrawn = Noted { value: out.then_some(()), at: now.to_string() };
        }
    }

    /// Whether the newest entry of a bar but for notes says the same, so that putting it in again would tell nothing.
    pub fn has_newest(&self, entry: &Entry) -> Option<&Entry> {
        let notes = entry.kind == EntryKind::Note;
        let mut of_bar = self.entries.iter().rev().filter(|other| other.spot == entry.spot && !other.is_withdrawn());
        let newest = of_bar.find(|other| notes || other.kind != EntryKind::Note)?;
        let same = newest.kind == entry.kind
            && newest.code == entry.code
            && newest.words == one_line(&entry.words, LONGEST_WORDS)
            && newest.readings == entry.readings;
        same.then_some(newest)
    }

    /// When something of this kind was last done to a bar.
    pub fn last(&self, spot: &Spot, kind: EntryKind) -> Option<String> {
        self.of_bar(spot).find(|entry| entry.kind == kind).map(|entry| entry.at.clone())
    }

    /// The last hit that a bar must not be driven on from, or only home, until it is looked at in full or replaced.
    pub fn open_hit<'a>(&'a self, spot: &'a Spot) -> Option<&'a Entry> {
        let decides = |entry: &&Entry| match entry.kind {
            EntryKind::Replaced => true,
            // A look that was broken off takes nothing back.
            EntryKind::Hit => entry.hit_verdict().is_some_and(|verdict| verdict != NOT_JUDGED),
            _ => false,
        };
        let last = self.of_bar(spot).find(decides)?;
        last.hit_verdict().is_some_and(|verdict| [STOP, LIMP].contains(&verdict)).then_some(last)
    }

    /// The open hits against the bars that a link of the document stands for, each with the name of its bar.
    pub fn open_hits<'a>(&'a self, document: &Document, link: usize) -> impl Iterator<Item = (String, &'a Entry)> {
        let open = |(spot, title): (Spot, String)| {
            let id = self.open_hit(&spot)?.id.clone();
            Some((title, self.entries.iter().find(|entry| entry.id == id)?))
        };
        bars(document, link).into_iter().filter_map(open)
    }

    /// Takes in what another tab or a file wrote: whatever either holds is kept, and of two readings the later holds.
    pub fn join(&mut self, other: &Self) {
        for (spot, theirs) in &other.bars {
            let ours = self.bars.entry(spot.clone()).or_default();
            for (id, noted) in &theirs.readings {
                later(&mut ours.readings, id, noted);
            }
            for (key, noted) in &theirs.ticks {
                later(&mut ours.ticks, key, noted);
            }
        }
        for entry in &other.entries {
            match self.entries.iter_mut().find(|own| own.id == entry.id) {
                Some(own) => later_of(&mut own.withdrawn, &entry.withdrawn),
                None => self.entries.push(entry.clone()),
            }
        }
        self.entries.sort_by(|a, b| (&a.at, &a.id).cmp(&(&b.at, &b.id)));
    }
}

fn later<K: Ord + Clone, T: Clone>(ours: &mut BTreeMap<K, Noted<T>>, key: &K, theirs: &Noted<T>) {
    if ours.get(key).is_none_or(|own| own.at < theirs.at) {
        ours.insert(key.clone(), theirs.clone());
    }
}

/// What was taken out at the same moment as it was put back is out: no page that knows of no time brings it back.
fn later_of(own: &mut Noted<()>, theirs: &Noted<()>) {
    if own.at < theirs.at || (own.at == theirs.at && theirs.value.is_some()) {
        own.clone_from(theirs);
    }
}
