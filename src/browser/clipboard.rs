//! Handing texts to other programs: the clipboard and the system's share sheet.

use super::window::has;
use leptos::prelude::window;

/// Whether the browser has a share sheet.
pub(crate) fn can_share() -> bool {
    has(window().navigator().as_ref(), "share")
}

/// Hands title, text and address to the share sheet; `false` when nothing was handed over.
pub(crate) async fn share(text: &str, address: &str) -> bool {
    let data = web_sys::ShareData::new();
    data.set_title("Link size");
    data.set_text(text);
    data.set_url(address);
    window().navigator().share_with_data(&data).await.is_ok()
}

/// Puts a text on the clipboard; `false` when the browser refuses.
pub(crate) async fn copy(text: &str) -> bool {
    let navigator = window().navigator();
    has(navigator.as_ref(), "clipboard") && navigator.clipboard().write_text(text).await.is_ok()
}
