//! An element that reacts: one kind for the whole page, so that a phone fetches its code once.
//!
//! Macros would make a new type of each piece of markup, with its own code to build and change it:
//! a third of the page. Here an opening tag is text, and what changes is a list.

use super::changing::Changing;
use super::patch::patch;
use leptos::ev::Event;
use leptos::prelude::*;
use leptos::tachys::html::attribute::any_attribute::AnyAttribute;
use leptos::tachys::hydration::Cursor;
use leptos::tachys::renderer::types::{Element, Node};
use leptos::tachys::renderer::{CastFrom, RemoveEventHandler, Rndr};
use leptos::tachys::view::any_view::AnyViewState;
use leptos::tachys::view::{Mountable, Position, PositionState};
use leptos::wasm_bindgen::{JsCast, JsValue};

/// An element as it is wanted.
pub(super) struct Tag {
    open: &'static str,
    set: Vec<(&'static str, String)>,
    live: Vec<(Way, &'static str, Told)>,
    heard: Vec<(&'static str, Heard)>,
    inside: Vec<AnyView>,
}

/// What follows from signals; `None` takes an attribute away.
type Told = Box<dyn Fn() -> Option<String> + Send>;
type Heard = Box<dyn FnMut(Event) + Send>;

/// How something live reaches its element.
#[derive(Clone, Copy, PartialEq, Eq)]
enum Way {
    Attribute,
    Class,
    /// What the reader may change too: the text of a field.
    Value,
    /// What the reader may change too: a tick, a fold.
    Switch,
    Markup,
}

/// An element: its name with its attributes, `button type=button class='quiet remove'`.
pub(super) fn tag(open: &'static str) -> Tag {
    Tag { open, set: Vec::new(), live: Vec::new(), heard: Vec::new(), inside: Vec::new() }
}

/// A button with its opening tag, what stands on it, and what it does.
pub(super) fn button(open: &'static str, words: &str, act: impl FnMut(Event) + Send + 'static) -> Tag {
    tag(open).on("click", act).with(words)
}

/// What is put there and taken away as signals change.
pub(super) fn live(view: impl FnMut() -> AnyView + Send + 'static) -> AnyView {
    let view: Box<dyn FnMut() -> AnyView + Send> = Box::new(view);
    view.into_any()
}

/// Words that follow from signals.
pub(super) fn words(said: impl Fn() -> String + Send + 'static) -> AnyView {
    #[inline(never)]
    fn follow(said: Box<dyn Fn() -> String + Send>) -> AnyView {
        live(move || said().into_any())
    }
    follow(Box::new(said))
}

/// Nothing at all.
pub(super) fn nothing() -> AnyView {
    ().into_any()
}

impl Tag {
    /// An attribute whose value is not known beforehand.
    pub(super) fn set(mut self, name: &'static str, value: &str) -> Self {
        self.set.push((name, value.to_string()));
        self
    }

    fn follow(mut self, way: Way, name: &'static str, told: Told) -> Self {
        self.live.push((way, name, told));
        self
    }

    /// An attribute that follows from signals.
    pub(super) fn attribute(self, name: &'static str, value: impl Fn() -> String + Send + 'static) -> Self {
        self.follow(Way::Attribute, name, Box::new(move || Some(value())))
    }

    /// An attribute that is there or not.
    pub(super) fn flag(self, name: &'static str, is: impl Fn() -> bool + Send + 'static) -> Self {
        self.follow(Way::Attribute, name, Box::new(move || is().then(String::new)))
    }

    /// A class that is there or not.
    pub(super) fn class(self, name: &'static str, is: impl Fn() -> bool + Send + 'static) -> Self {
        self.follow(Way::Class, name, Box::new(move || is().then(String::new)))
    }

    /// Whether a box is ticked or a fold is open.
    pub(super) fn switch(self, name: &'static str, is: impl Fn() -> bool + Send + 'static) -> Self {
        self.follow(Way::Switch, name, Box::new(move || is().then(String::new)))
    }

    /// What stands in a field.
    pub(super) fn value(self, value: impl Fn() -> String + Send + 'static) -> Self {
        self.follow(Way::Value, "value", Box::new(move || Some(value())))
    }

    /// Markup inside that follows from signals.
    pub(super) fn markup(self, markup: impl Fn() -> String + Send + 'static) -> Self {
        self.follow(Way::Markup, "", Box::new(move || Some(markup())))
    }

    /// What to do when something happens.
    pub(super) fn on(mut self, event: &'static str, act: impl FnMut(Event) + Send + 'static) -> Self {
        self.heard.push((event, Box::new(act)));
        self
    }

    /// Notes when a fold first opens, for what is only made then.
    pub(super) fn first_opened(self, opened: Changing<bool>) -> Self {
        self.on("toggle", move |_| {
            if !opened.get_untracked() {
                opened.set(true);
            }
        })
    }

    /// Words, elements or views inside, after what is there already.
    pub(super) fn with(mut self, inside: impl Inside) -> Self {
        inside.put(&mut self.inside);
        self
    }
}

/// What can stand inside an element.
pub(super) trait Inside {
    /// Adds itself to what is inside.
    fn put(self, inside: &mut Vec<AnyView>);
}

impl Inside for &str {
    fn put(self, inside: &mut Vec<AnyView>) {
        inside.push(self.to_string().into_any());
    }
}

impl Inside for AnyView {
    fn put(self, inside: &mut Vec<AnyView>) {
        inside.push(self);
    }
}

impl Inside for Tag {
    fn put(self, inside: &mut Vec<AnyView>) {
        inside.push(self.into_any());
    }
}

impl<T: Inside> Inside for Option<T> {
    fn put(self, inside: &mut Vec<AnyView>) {
        if let Some(this) = self {
            this.put(inside);
        }
    }
}

impl<T: Inside> Inside for Vec<T> {
    fn put(self, inside: &mut Vec<AnyView>) {
        self.into_iter().for_each(|this| this.put(inside));
    }
}

/// An element on the page.
pub(super) struct Standing {
    open: &'static str,
    element: Element,
    inside: Vec<AnyViewState>,
    // Dropped, they end what they do.
    _live: Vec<RenderEffect<Option<String>>>,
    _heard: Vec<RemoveEventHandler<Element>>,
}

/// Name and attributes of an opening tag, in pairs; the first is the name.
fn attributes(open: &'static str) -> impl Iterator<Item = (&'static str, &'static str)> {
    let mut rest = open;
    std::iter::from_fn(move || {
        rest = rest.trim_start();
        let until = rest.find([' ', '=']).unwrap_or(rest.len());
        let (name, after) = rest.split_at(until);
        let Some(value) = after.strip_prefix('=') else {
            rest = after;
            return (!name.is_empty()).then_some((name, ""));
        };
        let (value, after) = match value.strip_prefix('\'') {
            Some(quoted) => quoted.split_once('\'').unwrap_or((quoted, "")),
            None => value.split_at(value.find(' ').unwrap_or(value.len())),
        };
        rest = after;
        Some((name, value))
    })
}

fn set(element: &Element, list: &[(&'static str, String)]) {
    for (name, value) in list {
        Rndr::set_attribute(element, name, value);
    }
}

/// Keeps an element as its signals say; only what differs is written.
fn follow(element: &Element, (way, name, told): (Way, &'static str, Told)) -> RenderEffect<Option<String>> {
    let element = element.clone();
    RenderEffect::new(move |before: Option<Option<String>>| {
        let now = told();
        if before.as_ref() == Some(&now) {
            return now;
        }
        match (way, &now) {
            (Way::Attribute, Some(value)) => Rndr::set_attribute(&element, name, value),
            (Way::Attribute, None) => Rndr::remove_attribute(&element, name),
            (Way::Class, Some(_)) => Rndr::add_class(&Rndr::class_list(&element), name),
            (Way::Class, None) => Rndr::remove_class(&Rndr::class_list(&element), name),
            (Way::Value, value) => {
                Rndr::set_property(&element, name, &JsValue::from_str(value.as_deref().unwrap_or_default()));
            }
            (Way::Switch, value) => Rndr::set_property(&element, name, &JsValue::from_bool(value.is_some())),
            (Way::Markup, markup) => {
                let (old, new) = (before.flatten(), markup.as_deref().unwrap_or_default());
                if !old.is_some_and(|old| patch(&element, &old, new)) {
                    Rndr::set_inner_html(&element, new);
                }
            }
        }
        now
    })
}

fn hear(element: &Element, (event, mut act): (&'static str, Heard)) -> RemoveEventHandler<Element> {
    Rndr::add_event_listener(element, event, Box::new(move |event| act(event.unchecked_into())))
}

impl Render for Tag {
    type State = Standing;

    fn build(self) -> Standing {
        let mut pairs = attributes(self.open);
        let element = Rndr::create_element(pairs.next().map_or("div", |(name, _)| name), None);
        for (name, value) in pairs {
            Rndr::set_attribute(&element, name, value);
        }
        set(&element, &self.set);
        let inside = self
            .inside
            .into_iter()
            .map(|view| {
                let mut state = view.build();
                state.mount(&element, None);
                state
            })
            .collect();
        // A field shows its value once its choices are there.
        let live = self.live.into_iter().map(|live| follow(&element, live)).collect();
        let heard = self.heard.into_iter().map(|heard| hear(&element, heard)).collect();
        Standing { open: self.open, element, inside, _live: live, _heard: heard }
    }

    /// The same element with other words stays: it keeps the focus, and folds stay open.
    fn rebuild(self, state: &mut Standing) {
        if self.open != state.open || self.inside.len() != state.inside.len() {
            let mut new = self.build();
            state.insert_before_this(&mut new);
            state.unmount();
            *state = new;
            return;
        }
        let element = &state.element;
        set(element, &self.set);
        for (view, state) in self.inside.into_iter().zip(&mut state.inside) {
            view.rebuild(state);
        }
        state._live = self.live.into_iter().map(|live| follow(element, live)).collect();
        state._heard = self.heard.into_iter().map(|heard| hear(element, heard)).collect();
    }
}

impl Mountable for Standing {
    fn unmount(&mut self) {
        Rndr::remove(&self.element);
    }

    fn mount(&mut self, parent: &Element, marker: Option<&Node>) {
        Rndr::insert_node(parent, &self.element, marker);
    }

    fn insert_before_this(&self, child: &mut dyn Mountable) -> bool {
        let parent = Rndr::get_parent(&self.element).and_then(Element::cast_from);
        if let Some(parent) = &parent {
            child.mount(parent, Some(&self.element));
        }
        parent.is_some()
    }

    fn elements(&self) -> Vec<Element> {
        vec![self.element.clone()]
    }
}

leptos::tachys::no_attrs!(Tag);

/// What the page needs of a view; it is never written by a server.
impl RenderHtml for Tag {
    type AsyncOutput = Self;
    type Owned = Self;
    const MIN_LENGTH: usize = 0;

    fn dry_resolve(&mut self) {}

    async fn resolve(self) -> Self {
        self
    }

    fn to_html_with_buf(self, _: &mut String, _: &mut Position, _: bool, _: bool, _: Vec<AnyAttribute>) {}

    fn hydrate<const FROM_SERVER: bool>(self, _: &Cursor, _: &PositionState) -> Standing {
        self.build()
    }

    fn into_owned(self) -> Self {
        self
    }
}
