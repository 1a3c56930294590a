//! Texts stored between visits, for all tabs and for this one. A browser may refuse; then nothing is stored, and
//! nothing breaks.

use leptos::prelude::window;
use leptos::wasm_bindgen::JsCast;
use linkwright::store::Refused;

fn all_tabs() -> Option<web_sys::Storage> {
    window().local_storage().ok().flatten()
}

fn this_tab() -> Option<web_sys::Storage> {
    window().session_storage().ok().flatten()
}

fn read(storage: Option<web_sys::Storage>, key: &str) -> Option<String> {
    storage?.get_item(key).ok().flatten().filter(|text| !text.is_empty())
}

fn write(storage: Option<web_sys::Storage>, key: &str, text: &str) -> Result<(), Refused> {
    let storage = storage.ok_or(Refused::Blocked)?;
    let done = if text.is_empty() { storage.remove_item(key) } else { storage.set_item(key, text) };
    // Storage that holds nothing and takes nothing is blocked in another way.
    done.map_err(|_| if storage.length().unwrap_or(0) == 0 { Refused::Blocked } else { Refused::Full })
}

/// The text under a key; none when storage is blocked or holds none.
pub(crate) fn get(key: &str) -> Option<String> {
    read(all_tabs(), key)
}

/// Stores a text, or removes the key when the text is empty.
///
/// # Errors
/// Why the browser does not store it.
pub(crate) fn set(key: &str, text: &str) -> Result<(), Refused> {
    write(all_tabs(), key, text)
}

/// Stores a text that nobody misses, or whose loss shows elsewhere.
pub(crate) fn set_quietly(key: &str, text: &str) {
    let _ = set(key, text);
}

/// What this tab stores for itself, over a reload.
pub(crate) fn get_of_tab(key: &str) -> Option<String> {
    read(this_tab(), key)
}

/// Stores a text for this tab.
pub(crate) fn set_of_tab(key: &str, text: &str) {
    let _ = write(this_tab(), key, text);
}

/// Every text whose key begins like this, with the rest of its key.
pub(crate) fn records(start: &str) -> Vec<(String, String)> {
    let Some(storage) = all_tabs() else { return Vec::new() };
    let keys = (0..storage.length().unwrap_or(0)).filter_map(|at| storage.key(at).ok().flatten());
    keys.filter_map(|key| {
        let id = key.strip_prefix(start)?.to_string();
        Some((id, storage.get_item(&key).ok().flatten()?))
    })
    .collect()
}

/// Which key another tab changed; empty when it cleared everything.
pub(crate) fn changed_key(event: &web_sys::Event) -> Option<String> {
    Some(event.dyn_ref::<web_sys::StorageEvent>()?.key().unwrap_or_default())
}

/// Forgets what any tab kept.
#[cfg(test)]
pub(crate) fn forget_everything() {
    for storage in [all_tabs(), this_tab()].into_iter().flatten() {
        let _ = storage.clear();
    }
}

/// Fills what the browser gives to the page, but for a few letters.
#[cfg(test)]
pub(crate) fn fill() {
    let Some(storage) = all_tabs() else { return };
    let mut size = 4 << 20;
    while size > 16 {
        let key = format!("filler-{}", storage.length().unwrap_or(0));
        if storage.set_item(&key, &"x".repeat(size)).is_err() {
            size /= 2;
        }
    }
}
