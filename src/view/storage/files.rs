//! Files that leave and enter the page, and the promise to keep what is here.

use super::super::moments::after;
use leptos::prelude::{document, window};
use leptos::wasm_bindgen::{JsCast, JsValue};
use std::time::Duration;
use wasm_bindgen_futures::JsFuture;

/// A file longer than this is none of ours, and would only be slow to refuse.
const LONGEST: f64 = 10_000_000.0;

/// Hands a text to the reader as a file; `false` when the browser refuses.
pub(crate) fn download(name: &str, text: &str) -> bool {
    offer(name, text).is_ok()
}

fn offer(name: &str, text: &str) -> Result<(), JsValue> {
    let parts = js_sys::Array::of1(&JsValue::from_str(text));
    let kind = web_sys::BlobPropertyBag::new();
    kind.set_type("application/json");
    let blob = web_sys::Blob::new_with_str_sequence_and_options(&parts, &kind)?;
    let address = web_sys::Url::create_object_url_with_blob(&blob)?;
    let link = document().create_element("a")?.dyn_into::<web_sys::HtmlAnchorElement>()?;
    link.set_href(&address);
    link.set_download(name);
    link.click();
    // The browser reads the address after the click is over.
    after(Duration::from_secs(60), move || {
        let _ = web_sys::Url::revoke_object_url(&address);
    });
    Ok(())
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
    if file.size() > LONGEST {
        return Err("This file is far too long to be one of ours. Nothing from it was used.");
    }
    let text = JsFuture::from(file.text()).await.ok().and_then(|text| text.as_string());
    text.map(Some).ok_or("The browser could not read this file.")
}

/// Asks the browser not to clear what is kept here when space runs out.
pub(crate) async fn keep_for_good() -> Option<bool> {
    JsFuture::from(manager()?.persist().ok()?).await.ok()?.as_bool()
}

/// Whether the browser promised that.
pub(crate) async fn is_kept_for_good() -> Option<bool> {
    JsFuture::from(manager()?.persisted().ok()?).await.ok()?.as_bool()
}

/// Only pages served securely have one.
fn manager() -> Option<web_sys::StorageManager> {
    let navigator = window().navigator();
    super::name_in(navigator.as_ref(), "storage").then(|| navigator.storage())
}
