//! What the Order and the Make view share: the shop's own lists on this device, what changed since the yes,
//! and entries that were not taken.

mod changed;
mod machine;
mod not_taken;
mod rows;

pub(crate) use changed::{ChangedSinceYes, use_changed};
pub(crate) use machine::use_machine;
pub(crate) use not_taken::{provide_not_taken, use_held_back};

use crate::app::session::Session;
use crate::browser::storage;
use leptos::prelude::*;
use linkwright::present::order::lists::not_kept;
use linkwright::present::saved::notices::refused;
use linkwright::shop::lines::Lines;
use linkwright::shop::{self, Kind, Lists};
use linkwright::store::Write;
use linkwright::store::shop_lists::{self, key, key_before};

/// The lists while a view that needs them is open. What is kept is the text of each list's file.
#[derive(Clone, Copy)]
pub(crate) struct Shop {
    session: Session,
    /// The lists.
    pub(crate) lists: RwSignal<Lists>,
    /// What the reader should know of each list, a sentence each.
    pub(crate) notices: RwSignal<Vec<(Kind, Vec<String>)>>,
    /// What this tab last read or wrote of each.
    seen: StoredValue<Vec<(Kind, String)>>,
    /// The lines of each list whose rows were asked for.
    lines: StoredValue<Vec<(Kind, Lines)>>,
    /// The list that is typed into: what other tabs write into it is taken over when the field is left.
    typed_into: StoredValue<Option<Kind>>,
    /// The list of which the last edit had something to say, which the next one makes old.
    told_of_edit: StoredValue<Option<Kind>>,
    /// Counts up whenever a list is put aside for another.
    put_aside: RwSignal<u32>,
}

fn kept(kind: Kind) -> String {
    storage::get(&key(kind.id())).unwrap_or_default()
}

impl Shop {
    /// Reads every list, and follows what other tabs write.
    pub(crate) fn open(session: Session) -> Self {
        let shop = Self {
            session,
            lists: RwSignal::new(Lists::default()),
            notices: RwSignal::new(Vec::new()),
            seen: StoredValue::new(Vec::new()),
            lines: StoredValue::new(Vec::new()),
            typed_into: StoredValue::new(None),
            told_of_edit: StoredValue::new(None),
            put_aside: RwSignal::new(0),
        };
        Effect::new(move |_| {
            session.shop_changed.track();
            let free = Kind::ALL.into_iter().filter(|kind| shop.typed_into.get_value() != Some(*kind));
            free.for_each(|kind| {
                shop.catch_up(kind);
            });
        });
        shop
    }

    fn seen_is(self, kind: Kind, text: &str) -> bool {
        self.seen.with_value(|seen| {
            seen.iter().find(|(of, _)| *of == kind).map_or(text.is_empty(), |(_, seen)| seen.as_str() == text)
        })
    }

    fn note_seen(self, kind: Kind, text: String) {
        self.seen.update_value(|seen| {
            seen.retain(|(of, _)| *of != kind);
            seen.push((kind, text));
        });
    }

    /// Says what the reader should know of a list.
    pub(crate) fn say(self, kind: Kind, sentences: Vec<String>) {
        self.notices.update(|notices| {
            notices.retain(|(of, _)| *of != kind);
            notices.push((kind, sentences));
        });
    }

    /// Takes over what another tab wrote into a list; gives whether that changed it.
    pub(crate) fn catch_up(self, kind: Kind) -> bool {
        let text = kept(kind);
        if self.seen_is(kind, &text) {
            return false;
        }
        self.put_aside.update(|count| *count += 1);
        let said = self.lists.try_update(|lists| {
            let said = if text.is_empty() {
                // A list that was emptied elsewhere.
                shop::clear(lists, kind);
                Ok(Vec::new())
            } else {
                shop::read(lists, kind, &text)
            };
            self.follow(lists, kind);
            said
        });
        match said {
            Some(Ok(sentences)) => {
                if !text.is_empty() {
                    self.say(kind, sentences);
                }
                self.note_seen(kind, text);
                true
            }
            Some(Err(sentence)) => {
                self.say(kind, vec![sentence]);
                // Not seen: whatever takes its place sets it aside.
                self.note_seen(kind, String::new());
                false
            }
            None => false,
        }
    }

    /// The lines follow a list of which more than one row may have changed.
    fn follow(self, lists: &Lists, kind: Kind) {
        self.lines.update_value(|lines| {
            if let Some((_, lines)) = lines.iter_mut().find(|(of, _)| *of == kind) {
                lines.follow(lists, kind);
            }
        });
    }

    /// Changes a list and keeps it.
    pub(crate) fn edit<T>(self, kind: Kind, change: impl FnOnce(&mut Lists) -> T) -> Option<T> {
        let done = self.lists.try_update(|lists| {
            let done = change(lists);
            self.follow(lists, kind);
            done
        })?;
        let text = self.lists.with_untracked(|lists| shop::write(lists, kind));
        self.keep_edited(kind, text);
        Some(done)
    }

    /// Puts the rows of a file in place of a list, which stays beside it.
    pub(crate) fn import(self, kind: Kind, text: &str) {
        let read = self.lists.try_update(|lists| {
            let read = shop::read(lists, kind, text);
            self.follow(lists, kind);
            read
        });
        match read {
            Some(Ok(sentences)) => {
                let text = self.lists.with_untracked(|lists| shop::write(lists, kind));
                self.say(kind, sentences);
                self.keep(kind, shop_lists::replace(kind.id(), text.clone(), &kept(kind)), text);
            }
            Some(Err(sentence)) => self.say(kind, vec![sentence]),
            None => {}
        }
    }

    /// The text of a list's file.
    pub(crate) fn text(self, kind: Kind) -> String {
        self.lists.with_untracked(|lists| shop::write(lists, kind))
    }

    /// What a list was before it was replaced; none where nothing stands beside it.
    pub(crate) fn before(self, kind: Kind) -> Option<String> {
        self.put_aside.track();
        storage::get(&key_before(kind.id()))
    }

    /// Keeps a list after an edit.
    fn keep_edited(self, kind: Kind, text: String) {
        let shared = kept(kind);
        let seen = if self.seen_is(kind, &shared) { shared.clone() } else { String::new() };
        self.keep(kind, shop_lists::keep(kind.id(), text.clone(), &shared, &seen), text);
    }

    fn keep(self, kind: Kind, writes: Vec<Write>, text: String) {
        match self.session.carry_out(&writes) {
            Ok(()) => self.note_seen(kind, text),
            Err(why) => self.say(kind, vec![not_kept(refused(why))]),
        }
        if writes.len() > 1 {
            self.put_aside.update(|count| *count += 1);
        }
    }
}
