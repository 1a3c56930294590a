//! The window: its events, its width, what it can do.

use leptos::ev::Event;
use leptos::prelude::{on_cleanup, window, window_event_listener_untyped};
use leptos::wasm_bindgen::prelude::Closure;
use leptos::wasm_bindgen::{JsCast, JsValue};

/// Whether an object of the browser has something by this name.
pub(crate) fn has(object: &JsValue, name: &str) -> bool {
    JsValue::from_str(name).js_in(object)
}

/// Listens to an event of the window for as long as the component that asked lives.
pub(crate) fn on(event: &'static str, act: impl Fn(Event) + 'static) {
    let listener = window_event_listener_untyped(event, act);
    on_cleanup(move || listener.remove());
}

/// Calls back with whether a media query holds, now and whenever that changes.
pub(crate) fn follow_media(query: &str, mut on_change: impl FnMut(bool) + 'static) {
    let Ok(Some(media)) = window().match_media(query) else { return };
    on_change(media.matches());
    let list = media.clone();
    let listener = Closure::<dyn FnMut()>::new(move || on_change(list.matches()));
    let _ = media.add_event_listener_with_callback("change", listener.as_ref().unchecked_ref());
    // The listener lives as long as the page.
    listener.forget();
}
