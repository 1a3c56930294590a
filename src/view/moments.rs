//! What is done at another moment: after a while, when the window tells of something, when the browser has answered.
//!
//! The framework's own ways are written out wherever they are used. Here each is one function with what to do in a box,
//! never written into another one, so that a phone fetches that code once.

use super::boxed::Does;
use leptos::ev::Event;
use leptos::prelude::*;
use leptos::tachys::renderer::types::Element;
use leptos::task::spawn_local;
use leptos::wasm_bindgen::JsCast;
use leptos::wasm_bindgen::closure::Closure;
use std::pin::Pin;
use std::time::Duration;

/// Does something after a while.
pub(super) fn after(pause: Duration, act: impl FnOnce() + 'static) {
    #[inline(never)]
    fn set(pause: Duration, act: Box<dyn FnOnce()>) {
        set_timeout(act, pause);
    }
    set(pause, Box::new(act));
}

/// Does something whenever the window tells of an event.
pub(super) fn at_window(event: &'static str, act: impl Fn(Event) + 'static) {
    #[inline(never)]
    fn set(event: &'static str, act: Box<dyn Does<Event>>) {
        let heard = heard(act).into_js_value();
        // A page without a window cannot be.
        let _ = window().add_event_listener_with_callback(event, heard.unchecked_ref());
    }
    set(event, Box::new(act));
}

fn heard(mut act: Box<dyn Does<Event>>) -> Closure<dyn FnMut(Event)> {
    Closure::new(move |event| act.does(event))
}

/// What hears an event of an element, for as long as it is kept.
pub(super) struct Hearing {
    element: Element,
    event: &'static str,
    act: Closure<dyn FnMut(Event)>,
}

impl Hearing {
    /// Does something whenever an element tells of an event.
    pub(super) fn new(element: &Element, event: &'static str, act: Box<dyn Does<Event>>) -> Self {
        let act = heard(act);
        // Only what is no function is refused.
        let _ = element.add_event_listener_with_callback(event, act.as_ref().unchecked_ref());
        Self { element: element.clone(), event, act }
    }
}

impl Drop for Hearing {
    fn drop(&mut self) {
        let _ = self.element.remove_event_listener_with_callback(self.event, self.act.as_ref().unchecked_ref());
    }
}

/// Does something that waits for the browser's answers.
pub(super) fn meanwhile(act: impl Future<Output = ()> + 'static) {
    #[inline(never)]
    fn set(act: Pin<Box<dyn Future<Output = ()>>>) {
        spawn_local(act);
    }
    set(Box::pin(act));
}
