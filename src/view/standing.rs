//! What stands on the page, and how it becomes what is wanted next.

use super::changing::follows;
use super::moments::Hearing;
use super::patch::patch;
use super::tag::{Heard, Live, Piece, Wanted, Way, What};
use leptos::prelude::*;
use leptos::tachys::renderer::types::{Element, Node, Placeholder, Text};
use leptos::tachys::renderer::{CastFrom, Rndr};
use leptos::wasm_bindgen::JsValue;
use std::cell::RefCell;
use std::rc::Rc;

/// A piece on the page.
pub(super) enum DefaultKind {
    Element {
        open: &'static str,
        element: Element,
        inside: Vec<DefaultKind>,
        /// Dropped, they end what they do.
        kept: (Vec<RenderEffect<()>>, Vec<Hearing>),
    },
    Words {
        node: Text,
        words: String,
    },
    Follows(Following),
    /// The place holder stands behind them, and marks where they are when there is none.
    Several {
        inside: Vec<DefaultKind>,
        end: Placeholder,
    },
}

/// What follows from signals, as it is now.
pub(super) struct Following {
    now: Rc<RefCell<Option<DefaultKind>>>,
    _effect: RenderEffect<()>,
}

impl Drop for Following {
    /// At once: what follows holds it too until it is asked again, and inside of it may be what would read signals that
    /// are gone by then.
    fn drop(&mut self) {
        self.now.take();
    }
}

impl DefaultKind {
    /// Makes it; nobody sees it until it is put somewhere.
    pub(super) fn new(piece: Piece) -> Self {
        let Wanted { what, set, live, heard, inside } = piece.wanted();
        match what {
            What::Element(open) => {
                let mut pairs = attributes(open);
                let element = Rndr::create_element(pairs.next().map_or("div", |(name, _)| name), None);
                for (name, value) in pairs {
                    Rndr::set_attribute(&element, name, value);
                }
                dress(&element, &set);
                let inside: Vec<Self> = inside.into_iter().map(Self::new).collect();
                inside.iter().for_each(|standing| standing.put(&element, None));
                // A field shows its value once its choices are there.
                let kept = keep(&element, live, heard);
                Self::Element { open, element, inside, kept }
            }
            What::Words(words) => Self::Words { node: Rndr::create_text_node(&words), words },
            What::Follows(mut view) => {
                let now = Rc::new(RefCell::new(None::<Self>));
                let place = Rc::clone(&now);
                let effect = follows(Box::new(move || {
                    let piece = view.tells();
                    let mut place = place.borrow_mut();
                    match place.as_mut() {
                        Some(standing) => standing.turn_into(piece),
                        None => *place = Some(Self::new(piece)),
                    }
                }));
                Self::Follows(Following { now, _effect: effect })
            }
            What::Several => {
                Self::Several { inside: inside.into_iter().map(Self::new).collect(), end: Rndr::create_placeholder() }
            }
        }
    }

    /// Puts it onto the page, for as long as that is open.
    pub(super) fn stay(self) {
        self.put(&document().body().expect("a page has a body"), None);
        std::mem::forget(self);
    }

    /// Puts it into an element, before one of its nodes or at its end.
    pub(super) fn put(&self, parent: &Element, before: Option<&Node>) {
        match self {
            Self::Element { element, .. } => Rndr::insert_node(parent, element, before),
            Self::Words { node, .. } => Rndr::insert_node(parent, node, before),
            Self::Follows(Following { now, .. }) => {
                now.borrow().iter().for_each(|standing| standing.put(parent, before))
            }
            Self::Several { inside, end } => {
                inside.iter().for_each(|standing| standing.put(parent, before));
                Rndr::insert_node(parent, end, before);
            }
        }
    }

    /// Puts another one before it, where it is anywhere.
    fn put_before(&self, other: &Self) {
        let put = |node: &Node| {
            if let Some(parent) = Rndr::get_parent(node).and_then(Element::cast_from) {
                other.put(&parent, Some(node));
            }
        };
        match self {
            Self::Element { element, .. } => put(element),
            Self::Words { node, .. } => put(node),
            Self::Follows(Following { now, .. }) => now.borrow().iter().for_each(|standing| standing.put_before(other)),
            Self::Several { inside, end } => match inside.first() {
                Some(first) => first.put_before(other),
                None => put(end),
            },
        }
    }

    /// Takes it from the page.
    fn take_away(&self) {
        match self {
            Self::Element { element, .. } => Rndr::remove(element),
            Self::Words { node, .. } => Rndr::remove(node),
            Self::Follows(Following { now, .. }) => now.borrow().iter().for_each(Self::take_away),
            Self::Several { inside, end } => {
                inside.iter().for_each(Self::take_away);
                Rndr::remove(end);
            }
        }
    }

    /// Whether it can become what is wanted. What follows from signals is always made anew.
    fn stays_for(&self, wanted: &Wanted) -> bool {
        match (self, &wanted.what) {
            (Self::Element { open, inside, .. }, What::Element(new)) => {
                open == new && inside.len() == wanted.inside.len()
            }
            (Self::Words { .. }, What::Words(_)) | (Self::Several { .. }, What::Several) => true,
            _ => false,
        }
    }

    /// Becomes what is wanted next. The same element with other words stays: it keeps the focus, and folds stay open.
    fn turn_into(&mut self, piece: Piece) {
        if !self.stays_for(piece.look()) {
            let new = Self::new(piece);
            self.put_before(&new);
            self.take_away();
            *self = new;
            return;
        }
        let wanted = piece.wanted();
        match self {
            Self::Element { element, inside, kept, .. } => {
                dress(element, &wanted.set);
                inside.iter_mut().zip(wanted.inside).for_each(|(standing, piece)| standing.turn_into(piece));
                *kept = keep(element, wanted.live, wanted.heard);
            }
            Self::Words { node, words } => {
                if let What::Words(new) = wanted.what
                    && *words != new
                {
                    Rndr::set_text(node, &new);
                    *words = new;
                }
            }
            Self::Several { inside, end } => {
                let count = wanted.inside.len();
                inside.drain(count.min(inside.len())..).for_each(|standing| standing.take_away());
                for (index, piece) in wanted.inside.into_iter().enumerate() {
                    match inside.get_mut(index) {
                        Some(standing) => standing.turn_into(piece),
                        None => {
                            let standing = Self::new(piece);
                            if let Some(parent) = Rndr::get_parent(end).and_then(Element::cast_from) {
                                standing.put(&parent, Some(end));
                            }
                            inside.push(standing);
                        }
                    }
                }
            }
            Self::Follows(_) => {}
        }
    }
}

/// Name and attributes of an opening tag, in pairs; the first is the name.
fn attributes(open: &'static str) -> impl Iterator<Item = (&'static str, &'static str)> {
    let mut rest = open;
    std::iter::from_fn(move || {
        rest = rest.trim_start();
        let until = rest.find([' ', '=']).unwrap_or(rest.len());
        let (name, after) = rest.split_at_checked(until)?;
        let Some(value) = after.strip_prefix('=') else {
            rest = after;
            return (!name.is_empty()).then_some((name, ""));
        };
        let (value, after) = match value.strip_prefix('\'') {
            Some(quoted) => quoted.split_once('\'').unwrap_or((quoted, "")),
            None => value.split_at_checked(value.find(' ').unwrap_or(value.len()))?,
        };
        rest = after;
        Some((name, value))
    })
}

fn dress(element: &Element, list: &[(&'static str, String)]) {
    for (name, value) in list {
        Rndr::set_attribute(element, name, value);
    }
}

fn keep(element: &Element, live: Vec<Live>, heard: Vec<Heard>) -> (Vec<RenderEffect<()>>, Vec<Hearing>) {
    let live = live.into_iter().map(|live| follow(element, live)).collect();
    (live, heard.into_iter().map(|(event, act)| Hearing::new(element, event, act)).collect())
}

/// Keeps an element as its signals say; only what differs is written.
fn follow(element: &Element, (way, name, mut told): Live) -> RenderEffect<()> {
    let element = element.clone();
    let mut before: Option<Option<String>> = None;
    follows(Box::new(move || {
        let now = told.now();
        if before.as_ref() == Some(&now) {
            return;
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
                let new = markup.as_deref().unwrap_or_default();
                let old = before.iter().flatten().next();
                if !old.is_some_and(|old| patch(&element, old, new)) {
                    Rndr::set_inner_html(&element, new);
                }
            }
        }
        before = Some(now);
    }))
}
