//! What is done at another moment: after a while, when the window tells of something, when the browser has answered.
//!
//! The framework's own ways are written out wherever they are used. Here each is one function with what to do in a box,
//! never written into another one, so that a phone fetches that code once.

use leptos::ev::Event;
use leptos::prelude::*;
use leptos::task::spawn_local;
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
    fn set(event: &'static str, act: Box<dyn Fn(Event)>) {
        window_event_listener_untyped(event, act);
    }
    set(event, Box::new(act));
}

/// Does something that waits for the browser's answers.
pub(super) fn meanwhile(act: impl Future<Output = ()> + 'static) {
    #[inline(never)]
    fn set(act: Pin<Box<dyn Future<Output = ()>>>) {
        spawn_local(act);
    }
    set(Box::pin(act));
}
