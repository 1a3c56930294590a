//! Two tabs in one list: an edit lands on the row that was read, and nothing of either tab is lost.

use crate::dice::Dice;
use linkwright::quantity::System;
use linkwright::shop::lines::{AsRead, Landed, Lines};
use linkwright::shop::{Kind, Lists, clear, demo, read, rows, write};
use linkwright::spreadsheet::MOST_ROWS;
use linkwright::store::shop_lists;

const KIND: Kind = Kind::Bars;
const NAME: usize = 0;
const COUNT: usize = 4;

/// What both tabs see of the browser's storage.
#[derive(Default)]
struct Kept(String);

/// One tab, as the page handles its lists.
#[derive(Default)]
struct Tab {
    lists: Lists,
    lines: Lines,
    seen: String,
}

impl Tab {
    fn open(kept: &Kept) -> Self {
        let mut tab = Self::default();
        tab.catch_up(kept);
        tab
    }

    fn catch_up(&mut self, kept: &Kept) {
        if self.seen == kept.0 {
            return;
        }
        if kept.0.is_empty() {
            clear(&mut self.lists, KIND);
        } else {
            read(&mut self.lists, KIND, &kept.0).expect("a list");
        }
        self.lines.follow(&self.lists, KIND);
        self.seen.clone_from(&kept.0);
    }

    fn keep(&mut self, kept: &mut Kept) {
        let text = self.lines.text();
        assert_eq!(text, write(&self.lists, KIND), "the lines are the list's");
        for write in shop_lists::keep("bars", text.clone(), &kept.0, &self.seen) {
            kept.0 = write.text;
        }
        self.seen = text;
    }

    /// Types into a cell of a row as it was read.
    fn type_into(&mut self, kept: &mut Kept, read: &AsRead, column: usize, text: &str) -> Result<Landed, String> {
        self.catch_up(kept);
        let landed = self.lines.set_cell(&mut self.lists, KIND, read, (column, text, System::Inch))?;
        self.keep(kept);
        Ok(landed)
    }

    fn remove(&mut self, kept: &mut Kept, read: &AsRead) -> bool {
        self.catch_up(kept);
        let gone = self.lines.remove(&mut self.lists, KIND, read);
        self.keep(kept);
        gone
    }

    /// A row as this tab shows it.
    fn read(&self, name: &str) -> AsRead {
        let id = self.lines.ids()[self.names().iter().position(|its| its == name).expect(name)];
        self.lines.as_read(id).expect(name)
    }

    fn names(&self) -> Vec<String> {
        self.lists.bars.rows.iter().map(|entry| entry.row.name.clone()).collect()
    }
}

fn two_tabs() -> (Kept, Tab, Tab) {
    let kept = Kept(write(&demo::lists(), KIND));
    let (one, two) = (Tab::open(&kept), Tab::open(&kept));
    (kept, one, two)
}

#[test]
fn an_edit_follows_its_row_when_another_tab_moved_it() {
    let (mut kept, mut one, mut two) = two_tabs();
    let read = two.read("Demo 2-1/4 bar");
    assert!(one.remove(&mut kept, &one.read("Demo 1-3/4 bar")), "the rows below it move up");
    assert_eq!(two.type_into(&mut kept, &read, COUNT, "7"), Ok(Landed::InPlace));
    let counts: Vec<_> = two.lists.bars.rows.iter().map(|it| (it.row.name.as_str(), it.row.count)).collect();
    assert_eq!(
        counts,
        [("Demo 2 bar", Some(3)), ("Demo 2-1/4 bar", Some(7)), ("Demo 2-1/2 bar", Some(2)), ("Demo remnant", Some(1)),]
    );
    one.catch_up(&kept);
    assert_eq!(write(&one.lists, KIND), kept.0);
}

#[test]
fn a_row_that_both_changed_is_kept_twice() {
    let (mut kept, mut one, mut two) = two_tabs();
    let (first, second) = (one.read("Demo 2 bar"), two.read("Demo 2 bar"));
    assert_eq!(one.type_into(&mut kept, &first, COUNT, "9"), Ok(Landed::InPlace));
    assert_eq!(two.type_into(&mut kept, &second, NAME, "Rack 4"), Ok(Landed::Below));
    let rows: Vec<_> = two.lists.bars.rows.iter().map(|it| (it.row.name.as_str(), it.row.count)).collect();
    assert_eq!(rows[1..3], [("Demo 2 bar", Some(9)), ("Rack 4", Some(3))], "{rows:?}");
    // Neither of them is written over by what cannot be read.
    let before = kept.0.clone();
    let read = two.read("Rack 4");
    assert!(one.type_into(&mut kept, &read, COUNT, "many").is_err());
    assert_eq!(kept.0, before);
}

#[test]
fn a_row_that_was_taken_away_comes_back_with_the_edit() {
    let (mut kept, mut one, mut two) = two_tabs();
    let read = two.read("Demo remnant");
    assert!(one.remove(&mut kept, &one.read("Demo remnant")));
    assert_eq!(two.type_into(&mut kept, &read, COUNT, "2"), Ok(Landed::AtTheEnd));
    let last = two.lists.bars.rows.last().expect("a row");
    assert_eq!((last.row.name.as_str(), last.row.count, last.row.is_remnant()), ("Demo remnant", Some(2), true));
}

#[test]
fn a_row_that_another_tab_changed_is_not_taken_away_unseen() {
    let (mut kept, mut one, mut two) = two_tabs();
    let read = two.read("Demo 2 bar");
    assert_eq!(one.type_into(&mut kept, &one.read("Demo 2 bar"), COUNT, "9"), Ok(Landed::InPlace));
    assert!(!two.remove(&mut kept, &read), "it is shown as it is now first");
    assert!(two.remove(&mut kept, &two.read("Demo 2 bar")));
    assert_eq!(two.names().len(), 4);
}

#[test]
fn a_new_row_that_only_one_tab_has_is_no_conflict() {
    let (mut kept, mut one, mut two) = two_tabs();
    let new = two.lines.add(&mut two.lists, KIND).expect("room");
    two.keep(&mut kept);
    let read = two.lines.as_read(new).expect("it");
    one.catch_up(&kept);
    assert_eq!(one.names().len(), 5, "an empty row is kept nowhere");
    assert!(one.remove(&mut kept, &one.read("Demo 1-3/4 bar")));
    assert_eq!(two.type_into(&mut kept, &read, NAME, "Rack 9"), Ok(Landed::InPlace));
    assert_eq!(two.names().last().map(String::as_str), Some("Rack 9"));
    assert_eq!(two.names().len(), 5);
}

/// A list may grow no longer than its file can be read again.
#[test]
fn a_full_list_takes_no_more_rows() {
    let (mut kept, mut one, _) = two_tabs();
    let entry = one.lists.bars.rows[0].clone();
    one.lists.bars.rows.resize(MOST_ROWS, entry);
    one.lines.follow(&one.lists, KIND);
    let text = one.lines.text();
    assert!(one.lines.add(&mut one.lists, KIND).expect_err("full").contains("5,000 rows"));
    assert_eq!(one.lines.text(), text);
    kept.0 = text;
    assert_eq!(rows_in(&kept), MOST_ROWS);
}

#[test]
fn names_stay_with_their_rows() {
    let mut lists = demo::lists();
    let mut lines = Lines::default();
    lines.follow(&lists, KIND);
    let before = lines.ids();
    lists.bars.rows.remove(1);
    lists.bars.rows[0].row.count = Some(40);
    lines.follow(&lists, KIND);
    assert_eq!(lines.ids(), [before[0], before[2], before[3], before[4]], "one gone, one changed in its place");
    lists.bars.rows.swap(0, 3);
    lines.follow(&lists, KIND);
    assert_eq!(lines.ids(), [before[4], before[2], before[3], before[0]]);
}

#[test]
fn rows_are_found_by_their_words() {
    let lists = demo::lists();
    let mut lines = Lines::default();
    lines.follow(&lists, KIND);
    for (words, count) in [("", 5), ("demo", 5), ("REMNANT 41.5", 1), ("2-1/4  7075", 1), ("full", 4), ("steel", 0)] {
        assert_eq!(lines.found(words).len(), count, "{words}");
    }
}

/// Whatever two tabs do in whichever order, each edit stands in the list beside the rest of the row that was read, and
/// no row is lost but those that somebody took away.
#[test]
fn nothing_of_either_tab_is_lost() {
    for seed in 0..30 {
        let mut dice = Dice(seed);
        let (mut kept, one, two) = two_tabs();
        let mut tabs = [one, two];
        for step in 0..40 {
            let at = dice.next(2);
            // Most of the time the tab has not heard of the other's last edit yet.
            if dice.next(3) == 0 {
                tabs[at].catch_up(&kept);
            }
            let ids = tabs[at].lines.ids();
            if ids.is_empty() {
                continue;
            }
            let read = tabs[at].lines.as_read(ids[dice.next(ids.len())]).expect("a row");
            let other = 1 - at;
            // The other tab may write between reading and typing.
            if dice.next(3) == 0 {
                tabs[other].catch_up(&kept);
                let there = tabs[other].lines.ids();
                if let Some(id) = there.get(dice.next(there.len().max(1))) {
                    let theirs = tabs[other].lines.as_read(*id).expect("a row");
                    let _ = tabs[other].type_into(&mut kept, &theirs, COUNT, &dice.next(500).to_string());
                }
            }
            let before = rows_in(&kept);
            if dice.next(6) == 0 {
                let gone = usize::from(tabs[at].remove(&mut kept, &read));
                // What was taken away elsewhere already is gone, too.
                assert!(before - rows_in(&kept) <= gone, "{seed} {step}");
                continue;
            }
            let name = format!("Name {seed} {step}");
            let landed = tabs[at].type_into(&mut kept, &read, NAME, &name).expect("a name");
            let line = kept.0.lines().find(|line| line.starts_with(&format!("{name},"))).expect("the edit is kept");
            let rest = |line: &str| line.split_once(',').map(|(_, rest)| rest.trim_end().to_string());
            let was = format!("{read:?}");
            assert!(was.contains(&rest(line).expect("cells")), "{seed} {step}: {line} in {was}");
            let more = usize::from(landed != Landed::InPlace);
            assert_eq!(rows_in(&kept), before + more, "{seed} {step}: {landed:?}");
        }
    }
}

fn rows_in(kept: &Kept) -> usize {
    let mut lists = Lists::default();
    read(&mut lists, KIND, &kept.0).expect("a list");
    rows(&lists, KIND)
}
