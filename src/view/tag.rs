//! What is wanted on the page: one kind for all of it, so that a phone fetches its code once.
//!
//! Macros would make a new type of each piece of markup, with its own code to build and change it:
//! a third of the page. Here an opening tag is text, what changes is a list, and what is passed on is one pointer.

use super::boxed::{Does, Tells};
use super::changing::Changing;
use super::markup::Markup;
use leptos::ev::Event;

/// An element, words, or what follows from signals, as it is wanted.
pub(super) struct Piece(Box<Wanted>);

/// What a piece is made of; only an element has more than its kind and what is inside.
pub(super) struct Wanted {
    pub(super) what: What,
    pub(super) set: Vec<(&'static str, String)>,
    pub(super) live: Vec<Live>,
    pub(super) heard: Vec<Heard>,
    pub(super) inside: Vec<Piece>,
}

/// The kind of a piece.
pub(super) enum What {
    /// An element, with its opening tag.
    Element(&'static str),
    Words(String),
    /// What is put there and taken away as signals change.
    Follows(Box<dyn Tells<Piece>>),
    /// What is inside, one after the other, or nothing.
    Several,
}

/// What of an element follows from signals: how it reaches the element, its name, and what it is.
pub(super) type Live = (Way, &'static str, Told);
/// An event, and what is done when it happens.
pub(super) type Heard = (&'static str, Box<dyn Does<Event>>);

/// What follows from signals.
pub(super) enum Told {
    Words(Box<dyn Tells<String>>),
    Markup(Box<dyn Tells<Markup>>),
    /// Whether it is so.
    Is(Box<dyn Tells<bool>>),
}

impl Told {
    /// What is told now; nothing where it is not so.
    pub(super) fn now(&mut self) -> Option<String> {
        match self {
            Self::Words(told) => Some(told.tells()),
            Self::Markup(told) => Some(told.tells().written()),
            Self::Is(told) => told.tells().then(String::new),
        }
    }
}

/// How something live reaches its element. What is not there takes itself away.
#[derive(Clone, Copy, PartialEq, Eq)]
pub(super) enum Way {
    Attribute,
    Class,
    /// What the reader may change too: the text of a field.
    Value,
    /// What the reader may change too: a tick, a fold.
    Switch,
    Markup,
}

fn piece(what: What) -> Piece {
    Piece(Box::new(Wanted { what, set: Vec::new(), live: Vec::new(), heard: Vec::new(), inside: Vec::new() }))
}

/// An element: its name with its attributes, `button type=button class='quiet remove'`.
pub(super) fn tag(open: &'static str) -> Piece {
    piece(What::Element(open))
}

/// A button with its opening tag, what stands on it, and what it does.
pub(super) fn button(open: &'static str, words: &str, act: impl FnMut(Event) + 'static) -> Piece {
    tag(open).on("click", act).with(words)
}

/// What is put there and taken away as signals change.
pub(super) fn live(view: impl FnMut() -> Piece + 'static) -> Piece {
    piece(What::Follows(Box::new(view)))
}

/// Words that follow from signals.
pub(super) fn words(said: impl Fn() -> String + 'static) -> Piece {
    #[inline(never)]
    fn follow(mut said: Box<dyn Tells<String>>) -> Piece {
        live(move || piece(What::Words(said.tells())))
    }
    follow(Box::new(said))
}

/// Several, one after the other: what it is given by `with`.
pub(super) fn several() -> Piece {
    piece(What::Several)
}

/// Nothing at all.
pub(super) fn nothing() -> Piece {
    several()
}

impl Piece {
    /// What it is made of.
    pub(super) fn wanted(self) -> Wanted {
        *self.0
    }

    /// The same, for a look.
    pub(super) fn look(&self) -> &Wanted {
        &self.0
    }

    /// An attribute whose value is not known beforehand.
    pub(super) fn set(mut self, name: &'static str, value: &str) -> Self {
        self.0.set.push((name, value.to_string()));
        self
    }

    fn follow(mut self, way: Way, name: &'static str, told: Told) -> Self {
        self.0.live.push((way, name, told));
        self
    }

    /// An attribute that follows from signals.
    pub(super) fn attribute(self, name: &'static str, value: impl Fn() -> String + 'static) -> Self {
        self.follow(Way::Attribute, name, Told::Words(Box::new(value)))
    }

    /// An attribute that is there or not.
    pub(super) fn flag(self, name: &'static str, is: impl Fn() -> bool + 'static) -> Self {
        self.follow(Way::Attribute, name, Told::Is(Box::new(is)))
    }

    /// A class that is there or not.
    pub(super) fn class(self, name: &'static str, is: impl Fn() -> bool + 'static) -> Self {
        self.follow(Way::Class, name, Told::Is(Box::new(is)))
    }

    /// Whether a box is ticked or a fold is open.
    pub(super) fn switch(self, name: &'static str, is: impl Fn() -> bool + 'static) -> Self {
        self.follow(Way::Switch, name, Told::Is(Box::new(is)))
    }

    /// What stands in a field.
    pub(super) fn value(self, value: impl Fn() -> String + 'static) -> Self {
        self.follow(Way::Value, "value", Told::Words(Box::new(value)))
    }

    /// Markup inside that follows from signals.
    pub(super) fn markup(self, markup: impl Fn() -> Markup + 'static) -> Self {
        self.follow(Way::Markup, "", Told::Markup(Box::new(markup)))
    }

    /// What to do when something happens.
    pub(super) fn on(mut self, event: &'static str, act: impl FnMut(Event) + 'static) -> Self {
        self.0.heard.push((event, Box::new(act)));
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

    /// Words or other pieces inside, after what is there already.
    pub(super) fn with(mut self, inside: impl Inside) -> Self {
        inside.put(&mut self.0.inside);
        self
    }
}

/// What can stand inside an element.
pub(super) trait Inside {
    /// Adds itself to what is inside.
    fn put(self, inside: &mut Vec<Piece>);
}

impl Inside for &str {
    fn put(self, inside: &mut Vec<Piece>) {
        inside.push(piece(What::Words(self.to_string())));
    }
}

impl Inside for Piece {
    fn put(self, inside: &mut Vec<Piece>) {
        inside.push(self);
    }
}

impl Inside for Option<Piece> {
    fn put(self, inside: &mut Vec<Piece>) {
        inside.extend(self);
    }
}

impl Inside for Vec<Piece> {
    fn put(self, inside: &mut Vec<Piece>) {
        inside.extend(self);
    }
}
