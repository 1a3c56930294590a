//! A part of the page as a test uses it: looks, types, clicks.

use js_sys::Promise;
use leptos::prelude::{document, window};
use leptos::wasm_bindgen::JsCast;
use wasm_bindgen_futures::JsFuture;
use web_sys::{Element, Event, EventInit, HtmlElement, HtmlInputElement};

/// An element that stands in the page until the test is over.
pub(crate) struct Tested(HtmlElement);

impl Tested {
    /// An empty one.
    pub(crate) fn new() -> Self {
        let element: HtmlElement = document().create_element("div").expect("a div").unchecked_into();
        document().body().expect("a body").append_child(&element).expect("to append");
        Self(element)
    }

    /// The element.
    pub(crate) fn element(&self) -> HtmlElement {
        self.0.clone()
    }

    /// Waits until the page shows what was set, and what waits for a finger to be up is done.
    pub(crate) async fn settle(&self) {
        let soon = Promise::new(&mut |done, _| {
            let _ = window().set_timeout_with_callback_and_timeout_and_arguments_0(&done, 30);
        });
        let _ = JsFuture::from(soon).await;
    }

    /// The element of a selector.
    fn find(&self, selector: &str) -> Element {
        self.0.query_selector(selector).ok().flatten().unwrap_or_else(|| panic!("there is no {selector}"))
    }

    /// How many elements a selector finds.
    pub(crate) fn count(&self, selector: &str) -> u32 {
        self.0.query_selector_all(selector).expect("a selector").length()
    }

    /// What stands in an element.
    pub(crate) fn text(&self, selector: &str) -> String {
        self.find(selector).text_content().unwrap_or_default()
    }

    /// An attribute of an element.
    pub(crate) fn attribute(&self, selector: &str, name: &str) -> String {
        self.find(selector).get_attribute(name).unwrap_or_default()
    }

    /// What stands in a field.
    pub(crate) fn value(&self, selector: &str) -> String {
        self.field(selector).value()
    }

    fn field(&self, selector: &str) -> HtmlInputElement {
        self.find(selector).unchecked_into()
    }

    /// Types into a field without leaving it.
    pub(crate) async fn type_into(&self, selector: &str, text: &str) {
        self.field(selector).set_value(text);
        self.tell(selector, "input").await;
    }

    /// Types into a field, or picks, and leaves it.
    pub(crate) async fn enter(&self, selector: &str, text: &str) {
        self.type_into(selector, text).await;
        self.tell(selector, "change").await;
    }

    /// Clicks.
    pub(crate) async fn click(&self, selector: &str) {
        self.find(selector).unchecked_into::<HtmlElement>().click();
        self.settle().await;
    }

    async fn tell(&self, selector: &str, event: &str) {
        let how = EventInit::new();
        how.set_bubbles(true);
        let event = Event::new_with_event_init_dict(event, &how).expect("an event");
        self.find(selector).dispatch_event(&event).expect("to be told");
        self.settle().await;
    }
}

impl Drop for Tested {
    fn drop(&mut self) {
        self.0.remove();
    }
}
