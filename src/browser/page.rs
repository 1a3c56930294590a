//! The document on the screen: focus, scrolling, title, printing.

use leptos::prelude::{document, set_timeout, window};
use leptos::wasm_bindgen::JsCast;
use std::time::Duration;

/// Long enough for the page to be rendered with what was just set.
const NEXT_RENDER: Duration = Duration::from_millis(30);

fn element(id: &str) -> Option<web_sys::HtmlElement> {
    document().get_element_by_id(id)?.dyn_into().ok()
}

/// Scrolls an element into view and focuses it.
pub(crate) fn show(id: &str) {
    if let Some(element) = element(id) {
        let _ = element.focus();
        element.scroll_into_view();
    }
}

/// The same once the page is rendered anew, for an element that is not there yet.
pub(crate) fn show_soon(id: String) {
    set_timeout(move || show(&id), NEXT_RENDER);
}

/// Focuses an element without scrolling to it on purpose.
pub(crate) fn focus(id: &str) {
    if let Some(element) = element(id) {
        let _ = element.focus();
    }
}

/// The same once the page is rendered anew, for an element that is not there yet.
pub(crate) fn focus_soon(id: String) {
    set_timeout(move || focus(&id), NEXT_RENDER);
}

/// Whether an element has the focus.
pub(crate) fn has_focus(id: &str) -> bool {
    document().active_element().is_some_and(|element| element.id() == id)
}

/// Takes the focus from the field that has it, so that its change event fires.
pub(crate) fn leave_field() {
    let field = document().active_element();
    if let Some(field) = field.and_then(|element| element.dyn_into::<web_sys::HtmlElement>().ok()) {
        let _ = field.blur();
    }
}

/// Clicks a button once the page is rendered anew, which may enable it.
pub(crate) fn press_soon(id: &'static str) {
    let press = move || {
        if let Some(button) = element(id) {
            button.click();
        }
    };
    set_timeout(press, NEXT_RENDER);
}

/// Selects the text of a field, so that one key copies it.
pub(crate) fn select_all(id: &str) {
    let field = document().get_element_by_id(id);
    if let Some(field) = field.and_then(|element| element.dyn_into::<web_sys::HtmlInputElement>().ok()) {
        field.select();
    }
}

/// What the window and a saved bookmark are called.
pub(crate) fn set_title(title: &str) {
    document().set_title(title);
}

/// Opens the print dialog.
pub(crate) fn print() {
    let _ = window().print();
}

/// Whether the program runs: not once it has stopped and the rescue page is shown instead.
pub(crate) fn is_live() -> bool {
    document().document_element().is_some_and(|root| root.has_attribute("data-live"))
}

/// Marks the program as running and removes the text shown while it was loading.
pub(crate) fn mark_live() {
    if let Some(root) = document().document_element() {
        let _ = root.set_attribute("data-live", "");
    }
    if let Some(waiting) = document().get_element_by_id("waiting") {
        waiting.remove();
    }
}
