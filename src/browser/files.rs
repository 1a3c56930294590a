//! Files that leave and enter the page, and the browser's promise not to clear its storage.

use super::window::has;
use gloo_file::{Blob, File, ObjectUrl, futures::read_as_text};
use leptos::prelude::{document, set_timeout, window};
use leptos::wasm_bindgen::JsCast;
use linkwright::present::saved::notices;
use std::time::Duration;
use wasm_bindgen_futures::JsFuture;

/// A file longer than this is none of ours, and would only be slow to refuse.
const LONGEST: u64 = 10_000_000;

/// The browser reads the address of a file after the click on it is over.
const READ_BY_THEN: Duration = Duration::from_secs(60);

/// Hands a text to the reader as a file; `false` when the browser refuses.
pub(crate) fn download(name: &str, text: &str) -> bool {
    download_as(name, text, "application/json")
}

/// The same of another type: a phone opens a calendar by it.
pub(crate) fn download_as(name: &str, text: &str, mime_type: &str) -> bool {
    let address = ObjectUrl::from(Blob::new_with_options(text, Some(mime_type)));
    let link = document().create_element("a").ok();
    let Some(link) = link.and_then(|link| link.dyn_into::<web_sys::HtmlAnchorElement>().ok()) else { return false };
    link.set_href(&address);
    link.set_download(name);
    link.click();
    // Dropping the address revokes it.
    set_timeout(move || drop(address), READ_BY_THEN);
    true
}

/// The text of the file that was just chosen; the field is emptied, so that the same file can be chosen again.
///
/// # Errors
/// A sentence when it is far too long or cannot be read.
pub(crate) async fn chosen_text(event: leptos::ev::Event) -> Result<Option<String>, &'static str> {
    let field = event.target().and_then(|target| target.dyn_into::<web_sys::HtmlInputElement>().ok());
    let Some(field) = field else { return Ok(None) };
    let Some(file) = field.files().and_then(|files| files.get(0)) else { return Ok(None) };
    field.set_value("");
    let file = File::from(file);
    if file.size() > LONGEST {
        return Err(notices::FILE_TOO_LONG);
    }
    read_as_text(&file).await.map(Some).map_err(|_| notices::FILE_NOT_READ)
}

/// Asks the browser not to clear the storage when space runs out.
pub(crate) async fn persist() -> Option<bool> {
    JsFuture::from(manager()?.persist().ok()?).await.ok()?.as_bool()
}

/// Whether the browser promised that.
pub(crate) async fn is_persisted() -> Option<bool> {
    JsFuture::from(manager()?.persisted().ok()?).await.ok()?.as_bool()
}

/// Only pages served securely have one.
fn manager() -> Option<web_sys::StorageManager> {
    let navigator = window().navigator();
    has(navigator.as_ref(), "storage").then(|| navigator.storage())
}
