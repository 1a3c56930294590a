//! Two tabs, reloads, links good and bad, full storage, saves and the trash in random order: nothing is ever lost.

use crate::dice::Dice;
use crate::tabs::{Browser, Tab, nameless, nameless_fragment};
use linkwright::document::Document;
use linkwright::quantity::{inch, lbf};
use linkwright::share;
use linkwright::store::history::History;
use linkwright::store::saved_builds::{SavedBuild, Target};
use linkwright::store::stored_entries::StoredEntries;
use linkwright::store::{BEFORE, ENTRIES};
use std::collections::{BTreeMap, BTreeSet};

/// Events of one game. Longer ones reach the fifty entries that the trash holds.
const EVENTS: usize = 45;

struct Game {
    browser: Browser,
    tabs: [Tab; 2],
    /// Whether most events are of those that two tabs with the same entries bring about.
    side_by_side: bool,
    /// What the reader entered where there was room to keep it, until the reader changed it.
    own: BTreeSet<String>,
    /// What the reader saved.
    saved: BTreeSet<String>,
    /// What was typed last in each tab.
    typed: [String; 2],
    builds: Vec<SavedBuild>,
    /// Fragments read before.
    read: BTreeMap<String, String>,
    number: u32,
    told: Vec<String>,
}

fn link(number: usize) -> String {
    let mut document = Document::default();
    document.rig.weight = Some(lbf(3000.0 + number as f64));
    document.links[0].length = Some(inch(30.0));
    share::to_fragment(&document)
}

impl Game {
    fn new(side_by_side: bool) -> Self {
        let (mut browser, mut tabs) = (Browser::default(), [Tab::default(), Tab::default()]);
        tabs.iter_mut().for_each(|tab| tab.load(&mut browser));
        let [own, saved] = [BTreeSet::new(), BTreeSet::new()];
        let (typed, builds, read) = ([String::new(), String::new()], Vec::new(), BTreeMap::new());
        Self { browser, tabs, side_by_side, own, saved, typed, builds, read, number: 0, told: Vec::new() }
    }

    /// What was typed in this tab is to be found from then on; where there is no room, once it is kept.
    fn kept(&mut self, at: usize) {
        let tab = &self.tabs[at];
        let own = tab.document != Document::default() && !tab.entries().is_as_received();
        if own && (tab.is_kept() || !self.browser.full) && nameless(&tab.document) == self.typed[at] {
            self.own.insert(self.typed[at].clone());
        }
    }

    fn nameless(&mut self, fragment: &str) -> String {
        self.read.entry(fragment.to_string()).or_insert_with(|| nameless_fragment(fragment)).clone()
    }

    /// Everything that the browser keeps.
    fn records(&mut self) -> BTreeSet<String> {
        let records = [ENTRIES, BEFORE].map(|key| StoredEntries::read(&self.browser.read(key)).fragment);
        let mut all = self.in_builds();
        all.extend(records.iter().filter(|fragment| !fragment.is_empty()).map(|fragment| self.nameless(fragment)));
        all
    }

    /// The same, with what the tabs show and offer.
    fn everything(&mut self) -> BTreeSet<String> {
        let offers = self.tabs.iter().filter_map(|tab| Some(tab.before.as_ref()?.fragment.clone()));
        let shown = self.tabs.iter().map(|tab| tab.entries().fragment);
        let fragments: Vec<String> = offers.chain(shown).collect();
        let mut all = self.records();
        all.extend(fragments.iter().filter(|fragment| !fragment.is_empty()).map(|fragment| self.nameless(fragment)));
        all
    }

    fn in_builds(&mut self) -> BTreeSet<String> {
        self.builds = self.browser.builds(std::mem::take(&mut self.builds));
        let earlier = self.builds.iter().flat_map(|saved| &saved.build.earlier).map(|earlier| &earlier.fragment);
        let fragments: Vec<String> = earlier.chain(self.builds.iter().map(|saved| &saved.fragment)).cloned().collect();
        fragments.iter().map(|fragment| self.nameless(fragment)).collect()
    }

    fn check(&mut self) {
        let everything = self.everything();
        for own in &self.own {
            assert!(everything.contains(own), "lost: {own}\n{}", self.told.join("\n"));
        }
        let builds = self.in_builds();
        for saved in &self.saved {
            assert!(builds.contains(saved), "saved and lost: {saved}\n{}", self.told.join("\n"));
        }
    }

    fn step(&mut self, dice: &mut Dice) {
        let at = dice.next(2);
        let event = if self.side_by_side && dice.next(5) > 0 { [0, 0, 5, 7, 9][dice.next(5)] } else { dice.next(22) };
        self.told.push(format!("tab {at}, event {event}"));
        let (browser, tab) = (&mut self.browser, &mut self.tabs[at]);
        let pick = |dice: &mut Dice, which: fn(&SavedBuild) -> bool, browser: &Browser| {
            let some: Vec<SavedBuild> = browser.builds(Vec::new()).into_iter().filter(which).collect();
            (!some.is_empty()).then(|| some[dice.next(some.len())].clone())
        };
        match event {
            // A key; it is kept after a pause.
            0..=4 => {
                let shown = nameless(&tab.document);
                self.own.remove(&shown);
                self.typed.iter_mut().filter(|typed| **typed == shown).for_each(String::clear);
                self.number += 1;
                let mut document = tab.document.clone();
                document.links[0].length = Some(inch(20.0 + f64::from(self.number) / 16.0));
                if dice.next(4) == 0 {
                    document.name = "Mine".to_string();
                }
                self.typed[at] = nameless(&document);
                tab.edit(document);
            }
            5..=6 => tab.write(browser),
            7 | 8 => tab.look(browser),
            // The page is left: it is kept, then loaded anew.
            9 => {
                tab.keep(browser);
                self.kept(at);
                // What could not be kept was told; then it may be gone.
                self.tabs[at].load(&mut self.browser);
            }
            // The tab is closed, and another one opened, perhaps with a link.
            10 => {
                tab.keep(browser);
                self.kept(at);
                let address = if dice.next(2) == 0 { String::new() } else { link(dice.next(3)) };
                self.tabs[at] = Tab::at(address);
                self.tabs[at].load(&mut self.browser);
            }
            // A link is opened in the same page: sound, damaged, or none of ours.
            11 => tab.go_to(browser, &link(dice.next(3))),
            12 => tab.go_to(browser, &link(dice.next(3)).replace("length=30in", "length=31in")),
            13 => tab.go_to(browser, ["", "garbage"][dice.next(2)]),
            14 => {
                browser.full = !browser.full && dice.next(2) == 0;
                // What was typed just before and is not kept yet has come too late.
                if browser.full {
                    let kept = self.records();
                    self.own.retain(|own| kept.contains(own));
                }
            }
            15 => {
                let target = [Target::Same, Target::SameAnyway, Target::Another][dice.next(3)];
                if tab.save(browser, target) {
                    self.saved.insert(nameless(&tab.document));
                }
            }
            16 => {
                if let Some(saved) = pick(dice, SavedBuild::is_open, browser) {
                    tab.open(browser, &saved);
                }
            }
            17 => match pick(dice, SavedBuild::is_open, browser) {
                Some(saved) => tab.delete(browser, &saved),
                None => tab.clear(browser),
            },
            18 => {
                if let Some(saved) = pick(dice, SavedBuild::is_in_trash, browser) {
                    tab.restore(browser, &saved);
                }
            }
            19 => tab.back_to_own(browser),
            20 => {
                if dice.next(2) == 0 {
                    tab.close_offer(browser);
                } else {
                    tab.join(browser);
                }
            }
            _ => {
                let (shown, origin) = (nameless(&tab.document), tab.origin.id.clone());
                tab.undo(browser, if dice.next(2) == 0 { History::undo } else { History::redo });
                if tab.origin.id == origin {
                    // The reader took it back, to what another tab may have changed meanwhile.
                    self.own.remove(&shown);
                    self.typed.iter_mut().filter(|typed| **typed == shown).for_each(String::clear);
                } else {
                    self.typed[at] = nameless(&tab.document);
                }
            }
        }
        self.kept(at);
        let state = self.state();
        self.told.push(state);
        self.check();
    }

    /// Where everything stands, in a line.
    fn state(&mut self) -> String {
        let tabs = self.tabs.iter().map(|tab| {
            let unkept = if tab.unkept { ", unkept" } else { "" };
            format!("{} ({}{unkept})", tab.entries().fragment, tab.origin.id)
        });
        let kept = [ENTRIES, BEFORE].map(|key| StoredEntries::read(&self.browser.read(key)));
        let kept = kept.into_iter().map(|kept| format!("{} ({})", kept.fragment, kept.origin.id));
        let full = if self.browser.full { "full" } else { "room" };
        let lines: Vec<String> = tabs.chain(kept).collect();
        let lines: Vec<String> = lines.into_iter().chain(self.in_builds()).collect();
        format!("  {full}: {}", lines.join(" | "))
    }
}

#[test]
fn nothing_is_lost_in_any_order_of_events() {
    crate::dice::in_four_threads(1, |mut dice| {
        for number in 0..100 {
            let mut game = Game::new(number % 2 == 0);
            for _ in 0..EVENTS {
                game.step(&mut dice);
            }
        }
    });
}
