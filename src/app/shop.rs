//! What the Order and the Make view share: the shop's own lists on this device, and what changed since the yes.

mod changed;
mod machine;

pub(crate) use changed::{ChangedSinceYes, use_changed};
pub(crate) use machine::use_machine;

use crate::app::session::Session;
use crate::browser::storage;
use leptos::prelude::*;
use linkwright::present::order::lists::not_kept;
use linkwright::present::saved::notices::refused;
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
        };
        Effect::new(move |_| {
            session.shop_changed.track();
            Kind::ALL.into_iter().filter(|kind| kept(*kind) != shop.seen(*kind)).for_each(|kind| shop.read(kind));
        });
        shop
    }

    fn seen(self, kind: Kind) -> String {
        self.seen
            .with_value(|seen| seen.iter().find(|(of, _)| *of == kind).map(|(_, text)| text.clone()))
            .unwrap_or_default()
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

    fn read(self, kind: Kind) {
        let text = kept(kind);
        let said = self.lists.try_update(|lists| shop::read(lists, kind, &text));
        match said {
            // A list that was emptied elsewhere.
            _ if text.is_empty() => self.lists.update(|lists| shop::clear(lists, kind)),
            Some(Ok(sentences)) => self.say(kind, sentences),
            Some(Err(sentence)) => {
                self.say(kind, vec![sentence]);
                // Not seen: whatever takes its place sets it aside.
                return self.note_seen(kind, String::new());
            }
            None => {}
        }
        self.note_seen(kind, text);
    }

    /// Changes a list and keeps it.
    pub(crate) fn edit<T>(self, kind: Kind, change: impl FnOnce(&mut Lists) -> T) -> Option<T> {
        let done = self.lists.try_update(change)?;
        let text = self.lists.with_untracked(|lists| shop::write(lists, kind));
        self.keep(kind, shop_lists::keep(kind.id(), text.clone(), &kept(kind), &self.seen(kind)), text);
        Some(done)
    }

    /// Puts the rows of a file in place of a list, which stays beside it.
    pub(crate) fn import(self, kind: Kind, text: &str) {
        match self.lists.try_update(|lists| shop::read(lists, kind, text)) {
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
        self.lists.track();
        storage::get(&key_before(kind.id()))
    }

    fn keep(self, kind: Kind, writes: Vec<Write>, text: String) {
        match self.session.carry_out(&writes) {
            Ok(()) => self.note_seen(kind, text),
            Err(why) => self.say(kind, vec![not_kept(refused(why))]),
        }
    }
}
