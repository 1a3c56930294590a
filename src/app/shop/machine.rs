//! What the shop has set of its machines and its saw, for a view that only reads it.

use crate::app::session::Session;
use crate::browser::storage;
use leptos::prelude::*;
use linkwright::engine::shop::route::{Machine, machine};
use linkwright::store::shop_lists::{MACHINE, key};

/// The settings as they are kept, following what other tabs write.
pub(crate) fn use_machine(session: Session) -> Memo<Machine> {
    Memo::new(move |_| {
        session.shop_changed.track();
        machine::read(&storage::get(&key(MACHINE)).unwrap_or_default())
    })
}
