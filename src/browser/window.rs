//! What the window tells: its events, its width, what it can do.

use leptos::ev::Event;
use leptos::prelude::{on_cleanup, window, window_event_listener_untyped};
use leptos::wasm_bindgen::prelude::Closure;
use leptos::wasm_bindgen::{JsCast, JsValue};

/// Whether an object of the browser has something by this name.
pub(crate) fn has(object: &JsValue, name: &str) -> bool {
    JsValue::from_str(name).js_in(object)
}

/// Hears an event of the window for as long as the component that asked lives.
pub(crate) fn on(event: &'static str, act: impl Fn(Event) + 'static) {
    let heard = window_event_listener_untyped(event, act);
    on_cleanup(move || heard.remove());
}

/// Tells whether a media query of the style sheet holds, now and whenever that changes.
pub(crate) fn follow_media(query: &str, mut tell: impl FnMut(bool) + 'static) {
    let Ok(Some(media)) = window().match_media(query) else { return };
    tell(media.matches());
    let list = media.clone();
    let heard = Closure::<dyn FnMut()>::new(move || tell(list.matches()));
    let _ = media.add_event_listener_with_callback("change", heard.as_ref().unchecked_ref());
    // As long as the page.
    heard.forget();
}
