//! The browser itself: what is kept between visits, the address bar, the clipboard, the printer.
//!
//! Only this file and those in its folder name `web_sys`. A browser may refuse any of it; then nothing is
//! kept, which is told, and nothing breaks.

mod clock;
mod files;

pub(super) use clock::{fresh_id, now, spoken_time, stamp};
pub(super) use files::{chosen_text, download, is_kept_for_good, keep_for_good};

use super::moments::after;
use leptos::prelude::{document, window};
use leptos::wasm_bindgen::prelude::Closure;
use leptos::wasm_bindgen::{JsCast, JsValue};
use std::time::Duration;

/// What a tab wrote into its own address last. While a page is left the address stays as it was.
pub(super) const ADDRESS: &str = "linkwright.address";
/// Where the unit system is kept.
pub(super) const UNITS: &str = "linkwright.units";
/// Which view was open.
pub(super) const LEAF: &str = "linkwright.leaf";
/// Where the ticked steps are kept, one a line.
pub(super) const TICKS: &str = "linkwright.ticks";

/// Why something was not kept.
#[derive(Clone, Copy, PartialEq, Eq, Debug)]
pub(super) enum Trouble {
    /// The browser lets this page keep nothing.
    Blocked,
    /// The space it gives is used up.
    Full,
}

impl Trouble {
    /// In words.
    pub(super) const fn sentence(self) -> &'static str {
        match self {
            Self::Blocked => "This browser keeps nothing for this page, as in a private window.",
            Self::Full => "The space this browser gives to the page is full: the last change was not kept.",
        }
    }
}

fn store() -> Option<web_sys::Storage> {
    window().local_storage().ok().flatten()
}

fn store_of_tab() -> Option<web_sys::Storage> {
    window().session_storage().ok().flatten()
}

fn get(store: Option<web_sys::Storage>, key: &str) -> Option<String> {
    store?.get_item(key).ok().flatten().filter(|text| !text.is_empty())
}

fn set(store: Option<web_sys::Storage>, key: &str, text: &str) -> Result<(), Trouble> {
    let store = store.ok_or(Trouble::Blocked)?;
    let done = if text.is_empty() { store.remove_item(key) } else { store.set_item(key, text) };
    // A store that holds nothing and takes nothing is one that is blocked in another way.
    done.map_err(|_| if store.length().unwrap_or(0) == 0 { Trouble::Blocked } else { Trouble::Full })
}

/// What is kept under a key; nothing when storage is blocked or empty.
pub(super) fn kept(key: &str) -> Option<String> {
    get(store(), key)
}

/// Keeps a text, or forgets it when it is empty.
pub(super) fn keep(key: &str, text: &str) -> Result<(), Trouble> {
    set(store(), key, text)
}

/// Keeps what nobody misses, or what is told about elsewhere.
pub(super) fn keep_quietly(key: &str, text: &str) {
    let _ = keep(key, text);
}

/// What this tab keeps for itself, over a reload.
pub(super) fn of_tab(key: &str) -> Option<String> {
    get(store_of_tab(), key)
}

/// Keeps a text for this tab.
pub(super) fn keep_of_tab(key: &str, text: &str) {
    let _ = set(store_of_tab(), key, text);
}

/// Everything whose key begins like this, with the rest of its key.
pub(super) fn records(start: &str) -> Vec<(String, String)> {
    let Some(store) = store() else { return Vec::new() };
    let keys = (0..store.length().unwrap_or(0)).filter_map(|at| store.key(at).ok().flatten());
    keys.filter_map(|key| {
        let id = key.strip_prefix(start)?.to_string();
        Some((id, store.get_item(&key).ok().flatten()?))
    })
    .collect()
}

/// Which key another tab changed; empty when it forgot everything.
pub(super) fn changed_key(event: &web_sys::Event) -> Option<String> {
    Some(event.dyn_ref::<web_sys::StorageEvent>()?.key().unwrap_or_default())
}

/// The fragment of the address, without `#`.
pub(super) fn fragment() -> String {
    let hash = window().location().hash().unwrap_or_default();
    hash.trim_start_matches('#').to_string()
}

/// Writes the fragment into the address without a step in the history.
pub(super) fn write_fragment(fragment: &str) {
    let address = if fragment.is_empty() { without_fragment() } else { format!("#{fragment}") };
    keep_of_tab(ADDRESS, fragment);
    if let Ok(history) = window().history() {
        let _ = history.replace_state_with_url(&JsValue::NULL, "", Some(&address));
    }
}

fn without_fragment() -> String {
    let href = window().location().href().unwrap_or_default();
    href.split('#').next().unwrap_or_default().to_string()
}

/// The whole address with a fragment, as one would send it.
pub(super) fn address(fragment: &str) -> String {
    format!("{}#{fragment}", without_fragment())
}

/// Whether the page was opened from a folder, not from a host.
pub(super) fn is_a_file() -> bool {
    without_fragment().starts_with("file:")
}

/// Whether the browser can hand a text to other programs.
pub(super) fn can_share() -> bool {
    let navigator = window().navigator();
    name_in(navigator.as_ref(), "share")
}

fn name_in(object: &JsValue, name: &str) -> bool {
    JsValue::from_str(name).js_in(object)
}

/// Hands title, text and address to the system's share sheet.
pub(super) async fn share(text: &str, address: &str) -> bool {
    let data = web_sys::ShareData::new();
    data.set_title("Link size");
    data.set_text(text);
    data.set_url(address);
    window().navigator().share_with_data(&data).await.is_ok()
}

/// Puts a text on the clipboard; `false` when the browser refuses.
pub(super) async fn copy(text: &str) -> bool {
    let navigator = window().navigator();
    if !name_in(navigator.as_ref(), "clipboard") {
        return false;
    }
    navigator.clipboard().write_text(text).await.is_ok()
}

/// Small letters of every script; the browser has the tables for it already.
pub(super) fn lowercase(words: &str) -> String {
    web_sys::js_sys::JsString::from(words).to_lower_case().into()
}

/// Opens the print dialog.
pub(super) fn print() {
    let _ = window().print();
}

/// Brings an element into view and gives it the focus.
pub(super) fn show(id: &str) {
    if let Some(element) = document().get_element_by_id(id) {
        if let Some(element) = element.dyn_ref::<web_sys::HtmlElement>() {
            let _ = element.focus();
        }
        element.scroll_into_view();
    }
}

/// The same with what the next moment puts there.
pub(super) fn show_soon(id: String) {
    after(Duration::from_millis(30), move || show(&id));
}

/// Gives the focus to an element, which stays where it is.
pub(super) fn focus(selector: &str) {
    let element = document().query_selector(selector).ok().flatten();
    if let Some(element) = element.and_then(|element| element.dyn_into::<web_sys::HtmlElement>().ok()) {
        let _ = element.focus();
    }
}

/// Whether an element has the focus.
pub(super) fn has_focus(id: &str) -> bool {
    document().active_element().is_some_and(|element| element.id() == id)
}

/// Leaves the field that has the focus: what was typed there counts.
pub(super) fn leave_field() {
    let field = document().active_element();
    if let Some(field) = field.and_then(|element| element.dyn_into::<web_sys::HtmlElement>().ok()) {
        let _ = field.blur();
    }
}

/// Presses a button.
pub(super) fn press(id: &str) {
    let button = document().get_element_by_id(id);
    if let Some(button) = button.and_then(|element| element.dyn_into::<web_sys::HtmlElement>().ok()) {
        button.click();
    }
}

/// Whether a key is the one that confirms.
pub(super) fn is_enter(event: &web_sys::Event) -> bool {
    event.dyn_ref::<web_sys::KeyboardEvent>().is_some_and(|event| event.key() == "Enter")
}

/// What the window and a saved bookmark are called.
pub(super) fn name_page(name: &str) {
    document().set_title(name);
}

/// What an attribute says on the element where an event began, or on one around it.
pub(super) fn attribute(event: &leptos::ev::Event, attribute: &str) -> Option<String> {
    let target = event.target()?.dyn_into::<web_sys::Element>().ok()?;
    target.closest(&format!("[{attribute}]")).ok().flatten()?.get_attribute(attribute)
}

/// Whether the fold that an event tells of is open.
pub(super) fn is_open(event: &leptos::ev::Event) -> bool {
    let fold = event.target().and_then(|target| target.dyn_into::<web_sys::Element>().ok());
    fold.is_some_and(|fold| fold.has_attribute("open"))
}

/// Brings the line of a check into view and gives it the focus.
pub(super) fn show_check(id: &str) {
    let line = document().query_selector(&format!("[data-check='{id}'] > summary")).ok().flatten();
    if let Some(line) = line.and_then(|line| line.dyn_into::<web_sys::HtmlElement>().ok()) {
        let _ = line.focus();
        line.scroll_into_view();
    }
}

/// Selects the text of a field, so that one key copies it.
pub(super) fn select_all(id: &str) {
    let field = document().get_element_by_id(id);
    if let Some(field) = field.and_then(|element| element.dyn_into::<web_sys::HtmlInputElement>().ok()) {
        field.select();
    }
}

/// Whether the page is alive: not once it has stopped and something else stands in its place.
pub(super) fn is_live() -> bool {
    document().document_element().is_some_and(|root| root.has_attribute("data-live"))
}

/// Tells whether the screen is as wide as a desk's, now and whenever that changes; the style sheet knows the same width.
pub(super) fn follow_width(mut tell: impl FnMut(bool) + 'static) {
    let Ok(Some(width)) = window().match_media("(min-width: 40rem)") else { return };
    tell(width.matches());
    let list = width.clone();
    let heard = Closure::<dyn FnMut()>::new(move || tell(list.matches()));
    let _ = width.add_event_listener_with_callback("change", heard.as_ref().unchecked_ref());
    // As long as the page.
    heard.forget();
}

/// Marks the page as alive and takes the words away that stood in for it.
pub(super) fn mark_live() {
    if let Some(root) = document().document_element() {
        let _ = root.set_attribute("data-live", "");
    }
    if let Some(waiting) = document().get_element_by_id("waiting") {
        waiting.remove();
    }
}
