//! The address bar.

use super::storage;
use leptos::prelude::window;
use leptos::wasm_bindgen::JsValue;

/// What a tab wrote into its own address last. While a page is left the address stays as it was.
pub(crate) const OWN_ADDRESS: &str = "linkwright.address";

/// The fragment of the address, without `#`.
pub(crate) fn fragment() -> String {
    let hash = window().location().hash().unwrap_or_default();
    hash.trim_start_matches('#').to_string()
}

/// Writes the fragment into the address without a step in the browser's history, whose present step keeps its name.
pub(crate) fn write_fragment(fragment: &str) {
    let address = if fragment.is_empty() { without_fragment() } else { format!("#{fragment}") };
    storage::set_of_tab(OWN_ADDRESS, fragment);
    if let Ok(history) = window().history() {
        let step = history.state().unwrap_or(JsValue::NULL);
        let _ = history.replace_state_with_url(&step, "", Some(&address));
    }
}

/// The name of the present step in the browser's history, if this page gave it one.
pub(crate) fn step() -> Option<String> {
    window().history().and_then(|history| history.state()).ok()?.as_string()
}

/// Adds a step of this name to the browser's history; the address stays.
pub(crate) fn add_step(name: &str) {
    if let Ok(history) = window().history() {
        let _ = history.push_state(&JsValue::from_str(name), "");
    }
}

/// Gives the present step in the browser's history a name.
pub(crate) fn name_step(name: &str) {
    if let Ok(history) = window().history() {
        let _ = history.replace_state(&JsValue::from_str(name), "");
    }
}

fn without_fragment() -> String {
    let href = window().location().href().unwrap_or_default();
    href.split('#').next().unwrap_or_default().to_string()
}

/// The whole address with a fragment, as one would send it.
pub(crate) fn with_fragment(fragment: &str) -> String {
    format!("{}#{fragment}", without_fragment())
}

/// Whether the page was opened from a folder, not from a host.
pub(crate) fn is_a_file() -> bool {
    without_fragment().starts_with("file:")
}
