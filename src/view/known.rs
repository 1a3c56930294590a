//! What follows from signals, worked out once for all who look at it.
//!
//! The framework brings code of its own for every kind of thing that is remembered so. To it, all of them are one kind
//! here, so that a phone fetches that code once.

use super::changing::Changing;
use leptos::prelude::*;
use std::any::Any;
use std::marker::PhantomData;
use std::sync::Arc;

type Slot = Arc<dyn Any + Send + Sync>;
type Told = Box<dyn TellsAnew + Send + Sync>;

/// Tells something, and is told what it was before. A trait for itself, for the reason in `boxed.rs`.
trait TellsAnew {
    fn tells(&self, before: Option<&Slot>) -> Slot;
}

impl<F: Fn(Option<&Slot>) -> Slot> TellsAnew for F {
    fn tells(&self, before: Option<&Slot>) -> Slot {
        self(before)
    }
}

/// Something that follows from signals.
pub(super) struct Known<T> {
    memo: Memo<Slot>,
    kind: PhantomData<fn() -> T>,
}

impl<T> Clone for Known<T> {
    fn clone(&self) -> Self {
        *self
    }
}

impl<T> Copy for Known<T> {}

/// What is told anew is only passed on when it is another thing than before.
fn remember(told: Told) -> Memo<Slot> {
    Memo::new_with_compare(move |before| told.tells(before), |old, new| old.map(place) != new.map(place))
}

fn place(slot: &Slot) -> *const () {
    Arc::as_ptr(slot).cast()
}

fn kind<T: 'static>(slot: &Slot) -> &T {
    slot.downcast_ref().expect("what was put there is of this kind")
}

/// What was there before, where what is told now is the same.
#[inline(never)]
fn kept<T: PartialEq + Send + Sync + 'static>(before: Option<&Slot>, now: T) -> Slot {
    match before {
        Some(before) if *kind::<T>(before) == now => Arc::clone(before),
        _ => Arc::new(now),
    }
}

impl<T: Send + Sync + 'static> Known<T> {
    /// Passed on only when it differs; told with what it was before.
    pub(super) fn with_before(told: impl Fn(Option<&T>) -> T + Send + Sync + 'static) -> Self
    where
        T: PartialEq,
    {
        let told = move |before: Option<&Slot>| kept(before, told(before.map(kind)));
        Self { memo: remember(Box::new(told)), kind: PhantomData }
    }

    /// Passed on only when it differs.
    pub(super) fn new(told: impl Fn() -> T + Send + Sync + 'static) -> Self
    where
        T: PartialEq,
    {
        Self::with_before(move |_| told())
    }

    /// Passed on each time, where to compare costs more than to look.
    pub(super) fn each_time(told: impl Fn(Option<&T>) -> T + Send + Sync + 'static) -> Self {
        let told = move |before: Option<&Slot>| -> Slot { Arc::new(told(before.map(kind))) };
        Self { memo: remember(Box::new(told)), kind: PhantomData }
    }

    /// The same, but what is new is not passed on while something is so.
    pub(super) fn unless(self, something: Changing<bool>) -> Self {
        let told = move |before: Option<&Slot>| match (something.get(), before) {
            (true, Some(before)) => Arc::clone(before),
            _ => self.memo.get(),
        };
        Self { memo: remember(Box::new(told)), kind: PhantomData }
    }

    /// Looks at it.
    pub(super) fn with<U>(self, look: impl FnOnce(&T) -> U) -> U {
        look(kind(&self.memo.get()))
    }

    /// Looks at it once.
    pub(super) fn with_untracked<U>(self, look: impl FnOnce(&T) -> U) -> U {
        look(kind(&self.memo.get_untracked()))
    }

    /// A copy of it.
    pub(super) fn get(self) -> T
    where
        T: Clone,
    {
        self.with(T::clone)
    }
}
