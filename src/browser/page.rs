//! The document on the screen: focus, scrolling, title, printing.

use leptos::prelude::{document, set_timeout, window};
use leptos::wasm_bindgen::JsCast;
use std::time::Duration;

/// Long enough for what was just decided to stand on the page.
const NEXT_MOMENT: Duration = Duration::from_millis(30);

fn element(id: &str) -> Option<web_sys::HtmlElement> {
    document().get_element_by_id(id)?.dyn_into().ok()
}

/// Brings an element into view and gives it the focus.
pub(crate) fn show(id: &str) {
    if let Some(element) = element(id) {
        let _ = element.focus();
        element.scroll_into_view();
    }
}

/// The same with what the next moment puts there.
pub(crate) fn show_soon(id: String) {
    set_timeout(move || show(&id), NEXT_MOMENT);
}

/// Gives the focus to an element, which stays where it is.
pub(crate) fn focus(id: &str) {
    if let Some(element) = element(id) {
        let _ = element.focus();
    }
}

/// The same with what the next moment puts there.
pub(crate) fn focus_soon(id: String) {
    set_timeout(move || focus(&id), NEXT_MOMENT);
}

/// Whether an element has the focus.
pub(crate) fn has_focus(id: &str) -> bool {
    document().active_element().is_some_and(|element| element.id() == id)
}

/// Leaves the field that has the focus: what was typed there counts.
pub(crate) fn leave_field() {
    let field = document().active_element();
    if let Some(field) = field.and_then(|element| element.dyn_into::<web_sys::HtmlElement>().ok()) {
        let _ = field.blur();
    }
}

/// Presses a button in the next moment, which may wake it.
pub(crate) fn press_soon(id: &'static str) {
    let press = move || {
        if let Some(button) = element(id) {
            button.click();
        }
    };
    set_timeout(press, NEXT_MOMENT);
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

/// Whether the page is alive: not once it has stopped and the rescue page stands in its place.
pub(crate) fn is_live() -> bool {
    document().document_element().is_some_and(|root| root.has_attribute("data-live"))
}

/// Marks the page as alive and takes the words away that stood in for it.
pub(crate) fn mark_live() {
    if let Some(root) = document().document_element() {
        let _ = root.set_attribute("data-live", "");
    }
    if let Some(waiting) = document().get_element_by_id("waiting") {
        waiting.remove();
    }
}
