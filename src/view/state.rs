//! What the page holds: the document, the unit system, half-typed entries, and what follows from them.

use super::changing::Changing;
use super::drafts::Draft;
use super::firm::{self, Firm};
use super::known::Known;
use super::moments::at_window;
use super::pace::Pace;
use super::rest::Rest;
use super::storage::{self, Trouble};
use super::trail::Trail;
use linkwright::document::{Document, Use};
use linkwright::engine;
use linkwright::engine::sentence::{Phrase, spoken};
use linkwright::inputs::{self, At, NUMBERS, Scope, TRACK_BAR, places};
use linkwright::quantity::{self, Kind, System, inch, lbf};
use linkwright::report::{Answer, LinkReport, MetalSize, Plan, RigReport};
use linkwright::store::saved_builds::SavedBuild;
use linkwright::store::stored_entries::{Origin, StoredEntries};
use std::ops::Deref;
use std::sync::Arc;

/// A leaf of the drawing set.
#[derive(Clone, Copy, PartialEq, Eq)]
pub(super) enum Leaf {
    /// What to buy and make.
    Size,
    /// Why.
    Prove,
    /// Every link of the rig.
    Rig,
    /// What is kept on this device.
    Saved,
}

impl Leaf {
    /// Every leaf with the name under which it is kept.
    pub(super) const NAMES: [(Self, &'static str); 4] =
        [(Self::Size, ""), (Self::Prove, "prove"), (Self::Rig, "rig"), (Self::Saved, "saved")];

    /// One link opens where it is looked at, a whole rig where all of it is seen.
    pub(super) fn to_open(document: &Document) -> Self {
        if document.links.len() > 1 { Self::Rig } else { Self::Size }
    }
}

/// The reports on every link, with what they rest on, so that only what changed is worked out again.
#[derive(Clone)]
pub(super) struct Whole {
    pub(super) document: Document,
    pub(super) links: Vec<LinkReport>,
    pub(super) rig: RigReport,
    pub(super) plan: Plan,
}

impl Whole {
    /// A link's report rests on the rig, on that link and on which axles have a track bar.
    pub(super) fn of(document: &Document, before: Option<&Self>) -> Self {
        let track_bars = |document: &Document| {
            places(document, Scope::Axle).into_iter().map(|axle| TRACK_BAR.value(document, axle)).collect::<Vec<_>>()
        };
        let before = before.filter(|before| {
            before.document.rig == document.rig && track_bars(&before.document) == track_bars(document)
        });
        let known = |index: usize| {
            let link = document.links.get(index)?;
            let at = before?.document.links.iter().position(|other| other == link)?;
            before?.links.get(at).cloned()
        };
        let links: Vec<LinkReport> = (0..document.links.len())
            .map(|index| known(index).unwrap_or_else(|| engine::report_on(document, index)))
            .collect();
        Self { document: document.clone(), rig: engine::rig(document, &links), plan: engine::plan(document), links }
    }
}

/// Everything the page holds, for as long as it is open. What reacts takes it along, so it is no more than a place.
#[derive(Clone, Copy)]
pub(super) struct Bench(&'static Everything);

impl Deref for Bench {
    type Target = Everything;

    fn deref(&self) -> &Everything {
        self.0
    }
}

/// What a bench holds.
pub(super) struct Everything {
    pub(super) document: Changing<Document>,
    pub(super) system: Changing<System>,
    /// What is told about the link on the bench, at once: for the answer itself.
    pub(super) first: Known<LinkReport>,
    /// The same for the rest of the page, a moment after a key.
    pub(super) report: Known<LinkReport>,
    pub(super) pace: Pace,
    /// What is told about all of them; worked out only where somebody looks.
    pub(super) whole: Known<Option<Whole>>,
    /// The part of the program that the first answer does not need.
    pub(super) rest: Changing<Rest>,
    /// How firm the answer on the bench is.
    pub(super) firm: Known<Firm>,
    /// Whether there is an answer.
    pub(super) known: Known<bool>,
    /// Whether the first entries are there, so that there is an answer or something to say instead.
    pub(super) entered: Known<bool>,
    /// Which view is open.
    pub(super) leaf: Changing<Leaf>,
    /// Which link is on the bench.
    pub(super) at: Changing<usize>,
    pub(super) drafts: Changing<Vec<Draft>>,
    /// Counts replacements of the whole document, so that old drafts are dropped.
    pub(super) revision: Changing<u32>,
    pub(super) trail: Trail,
    pub(super) told: Changing<Vec<String>>,
    /// The reader's own entries from before something else came onto the bench.
    pub(super) before: Changing<Option<StoredEntries>>,
    /// Where the entries come from, to tell them from what another tab has open.
    pub(super) origin: Changing<Origin>,
    /// What another tab has open, if that comes from elsewhere.
    pub(super) elsewhere: Changing<Option<StoredEntries>>,
    /// What this tab last read or wrote of what all tabs share.
    pub(super) seen: Changing<Option<String>>,
    /// Whether the entries could not be kept, so that it is tried again.
    pub(super) unkept: Changing<bool>,
    /// Why the browser keeps nothing, if so.
    pub(super) trouble: Changing<Option<Trouble>>,
    /// The builds on this device, once they were read.
    pub(super) shelf: Changing<Option<Vec<SavedBuild>>>,
    /// Ids of the findings whose working is open.
    pub(super) opened: Changing<Vec<&'static str>>,
    /// Steps ticked, each as its sentence in inches.
    pub(super) ticks: Changing<Vec<String>>,
    /// Whether a finger or a button is down.
    pub(super) pressed: Changing<bool>,
    /// Whether the screen shows the drawings of a desk.
    pub(super) wide: Changing<bool>,
    /// Whether the page is being printed.
    pub(super) printing: Changing<bool>,
    /// How often the page asked for that, and whether the browser itself is at it.
    pub(super) at_the_printer: Changing<(u32, bool)>,
    /// Whether every working is laid open for the printer.
    pub(super) laid_open: Changing<bool>,
}

impl Bench {
    /// Sets the bench up from the address and from what was kept.
    pub(super) fn open() -> Self {
        let document = Changing::new(Document::default());
        let metric = storage::kept(storage::UNITS).as_deref() == Some("metric");
        let leaf = storage::kept(storage::LEAF).unwrap_or_default();
        let leaf = Leaf::NAMES.into_iter().find(|(_, name)| *name == leaf).map_or(Leaf::Size, |(leaf, _)| leaf);
        let ticks = storage::kept(storage::TICKS).map(|text| text.lines().map(str::to_string).collect());
        let at = Changing::new(0);
        let origin = Changing::new(Origin::default());
        let rest = Changing::new(Rest::OnItsWay);
        // To compare whole reports costs more than to look at what is shown of them.
        let first = Known::each_time(move |_| document.with(|document| engine::report_on(document, at.get())));
        let pace = Pace::new();
        let report = pace.calm(first);
        let entered = Known::new(move || document.with(|document| inputs::still_needed(document, at.get()).is_empty()));
        let whole = Known::each_time(move |before: Option<&Option<Whole>>| {
            let Rest::Here(part) = rest.get() else { return None };
            Some(document.with(|document| (part.whole)(document, before.and_then(Option::as_ref))))
        });
        let (printing, laid_open) = (Changing::new(false), Changing::new(false));
        let bench = Self(Box::leak(Box::new(Everything {
            document,
            system: Changing::new(if metric { System::Metric } else { System::Inch }),
            first,
            report,
            pace,
            whole,
            rest,
            firm: firm::follow(document, at, rest, pace, move || printing.get() || laid_open.get()),
            known: Known::new(move || report.with(|report| report.answer().is_some())),
            entered: pace.calm(entered),
            leaf: Changing::new(leaf),
            at,
            drafts: Changing::new(Vec::new()),
            revision: Changing::new(0),
            trail: Trail::follow(document, origin),
            told: Changing::new(Vec::new()),
            before: Changing::new(None),
            origin,
            elsewhere: Changing::new(None),
            seen: Changing::new(None),
            unkept: Changing::new(false),
            trouble: Changing::new(None),
            shelf: Changing::new(None),
            opened: Changing::new(Vec::new()),
            ticks: Changing::new(ticks.unwrap_or_default()),
            pressed: Changing::new(false),
            wide: Changing::new(true),
            printing,
            at_the_printer: Changing::new((0, false)),
            laid_open,
        })));
        storage::follow_width(move |wide| bench.wide.set(wide));
        bench.arrive();
        bench.save_on_change();
        at_window("hashchange", move |_| bench.address_changed());
        bench.mind_other_tabs();
        for (event, down) in [("pointerdown", true), ("pointerup", false), ("pointercancel", false)] {
            at_window(event, move |_| bench.pressed.set(down));
        }
        at_window("beforeprint", move |_| {
            bench.settle();
            bench.printing.set(true);
            bench.at_the_printer.update(|(_, at_it)| *at_it = true);
        });
        at_window("afterprint", move |_| bench.printed());
        bench
    }

    /// Nothing is printed any more.
    pub(super) fn printed(self) {
        self.at_the_printer.update(|(_, at_it)| *at_it = false);
        self.printing.set(false);
        self.laid_open.set(false);
    }

    /// Puts another document on the bench.
    pub(super) fn replace(self, document: Document) {
        self.settle();
        self.revision.update(|revision| *revision += 1);
        self.drafts.set(Vec::new());
        self.at.set(0);
        self.document.set(document);
    }

    /// Fills in a typical rig.
    pub(super) fn try_example(self) {
        let mut document = Document::default();
        document.rig.weight = Some(lbf(4200.0));
        document.rig.usage = Some(Use::Slow);
        if let Some(link) = document.links.first_mut() {
            link.length = Some(inch(36.5));
        }
        self.origin.set(Origin::new(storage::fresh_id()));
        self.replace(document);
    }

    /// The link on the bench and its axle.
    pub(super) fn place(self) -> At {
        let at = self.at.get();
        self.document.with(|document| At::of_link(document, at))
    }

    pub(super) fn place_untracked(self) -> At {
        let at = self.at.get_untracked();
        self.document.with_untracked(|document| At::of_link(document, at))
    }

    /// Changes which links the rig has; half-typed entries belong to links that may have moved.
    pub(super) fn rearrange(self, change: impl FnOnce(&mut Document)) {
        self.settle();
        self.drafts.set(Vec::new());
        self.revision.update(|revision| *revision += 1);
        let mut document = self.document.get_untracked();
        change(&mut document);
        self.follow(document);
    }

    /// Turns to a leaf and to its top.
    pub(super) fn turn_to(self, leaf: Leaf) {
        self.turn_to_part(leaf, "answer".to_string());
    }

    /// Turns to a leaf and to a part of it, by its id.
    pub(super) fn turn_to_part(self, leaf: Leaf, id: String) {
        self.settle();
        self.leaf.set(leaf);
        if self.part().is_some() {
            return storage::show_soon(id);
        }
        // What stands there until the view itself is here. Then only whoever waits for it is taken to it.
        storage::show_soon("answer".to_string());
        self.once_here(move |_| {
            if storage::has_focus("answer") && self.leaf.get_untracked() == leaf {
                storage::show_soon(id);
            }
        });
    }

    /// The answer on the bench, if there is one.
    pub(super) fn answer(self) -> Option<Arc<Answer>> {
        self.report.with(answer_in)
    }

    /// The same, at once after a key; where that leads to no answer, the one that still stands below.
    pub(super) fn first_answer(self) -> Option<Arc<Answer>> {
        self.first.with(answer_in).or_else(|| self.answer())
    }

    /// Something about the answer on the bench, if there is one.
    pub(super) fn with_answer<T>(self, tell: impl FnOnce(&Answer) -> T) -> Option<T> {
        self.answer().map(|answer| tell(&answer))
    }

    /// Gives every changed assumption and factor back to its default.
    pub(super) fn give_back_defaults(self) {
        let link = self.at.get_untracked();
        self.document.update(|document| {
            let place = At::of_link(document, link);
            for input in NUMBERS.iter().filter(|input| input.standing.is_a_default()) {
                for end in [0, 1] {
                    (input.set)(document, At { end, ..place }, None);
                }
            }
        });
    }

    /// Takes another metal for the link on the bench, with its size, or with one that is found anew.
    pub(super) fn take_metal(self, id: &'static str, size: Option<&MetalSize>) {
        let place = self.place_untracked();
        self.document.update(|document| {
            (inputs::MATERIAL.set)(document, place, Some(id));
            (inputs::OUTSIDE_DIAMETER.set)(document, place, size.map(|size| size.outside_diameter));
            (inputs::WALL.set)(document, place, size.map(|size| size.wall).filter(|wall| *wall > 0.0));
        });
    }

    /// A value in the reader's units; a length as it stands in the lists.
    pub(super) fn show(self, value: f64, kind: Kind) -> String {
        let system = self.system.get();
        if kind == Kind::Length { quantity::measured(value, system) } else { quantity::show(value, kind, system) }
    }

    /// A limit in the reader's units, never rounded past itself.
    pub(super) fn show_at_most(self, value: f64, kind: Kind) -> String {
        quantity::show_at_most(value, kind, self.system.get())
    }

    /// A sentence in the reader's units.
    pub(super) fn say(self, said: &[Phrase]) -> String {
        spoken(said, self.system.get())
    }
}

/// Puts an item into a list, or takes it out when it is there.
pub(super) fn toggle<T: PartialEq + Send + Sync + 'static>(list: Changing<Vec<T>>, item: T) {
    list.update(|list| match list.iter().position(|other| *other == item) {
        Some(at) => {
            list.remove(at);
        }
        None => list.push(item),
    });
}

fn answer_in(report: &LinkReport) -> Option<Arc<Answer>> {
    match report {
        LinkReport::Answer(answer) => Some(Arc::clone(answer)),
        _ => None,
    }
}
