//! What changes while the page is open, and what is done when it does.
//!
//! As with what is known (`known.rs`), all of it is one kind to the framework, so that a phone fetches that code once.

use super::boxed::Does;
use super::moments::after;
use leptos::prelude::*;
use std::any::Any;
use std::marker::PhantomData;
use std::time::Duration;

type Slot = Box<dyn Any + Send + Sync>;

/// Something that changes. Whoever looked at it is asked again when it does.
pub(super) struct Changing<T> {
    signal: RwSignal<Slot>,
    kind: PhantomData<fn() -> T>,
}

impl<T> Clone for Changing<T> {
    fn clone(&self) -> Self {
        *self
    }
}

impl<T> Copy for Changing<T> {}

impl<T: Default + Send + Sync + 'static> Default for Changing<T> {
    fn default() -> Self {
        Self::new(T::default())
    }
}

fn kind<T: 'static>(slot: &Slot) -> &T {
    slot.downcast_ref().expect("what was put there is of this kind")
}

fn kind_mut<T: 'static>(slot: &mut Slot) -> &mut T {
    slot.downcast_mut().expect("what was put there is of this kind")
}

impl<T: Send + Sync + 'static> Changing<T> {
    pub(super) fn new(value: T) -> Self {
        Self { signal: RwSignal::new(Box::new(value)), kind: PhantomData }
    }

    /// Looks at it.
    pub(super) fn with<U>(self, look: impl FnOnce(&T) -> U) -> U {
        look(kind(&self.signal.read()))
    }

    /// Looks at it once.
    pub(super) fn with_untracked<U>(self, look: impl FnOnce(&T) -> U) -> U {
        look(kind(&self.signal.read_untracked()))
    }

    /// The same, where the view that holds it may be gone by now.
    pub(super) fn try_with_untracked<U>(self, look: impl FnOnce(&T) -> U) -> Option<U> {
        self.signal.try_read_untracked().map(|slot| look(kind(&slot)))
    }

    /// A copy of it.
    pub(super) fn get(self) -> T
    where
        T: Clone,
    {
        self.with(T::clone)
    }

    /// A copy of it as it is now.
    pub(super) fn get_untracked(self) -> T
    where
        T: Clone,
    {
        self.with_untracked(T::clone)
    }

    /// The same, where the view that holds it may be gone by now.
    pub(super) fn try_get_untracked(self) -> Option<T>
    where
        T: Clone,
    {
        self.try_with_untracked(T::clone)
    }

    /// Asks to be asked again, without a look.
    pub(super) fn track(self) {
        self.signal.track();
    }

    /// Puts another one in its place; nothing happens where the view that holds it is gone.
    pub(super) fn set(self, value: T) {
        self.update(|held| *held = value);
    }

    /// Changes it; nothing happens where the view that holds it is gone.
    pub(super) fn update(self, change: impl FnOnce(&mut T)) {
        if let Some(mut slot) = self.signal.try_write() {
            change(kind_mut(&mut slot));
        }
    }

    /// Changes it, and nobody is asked again.
    pub(super) fn update_untracked(self, change: impl FnOnce(&mut T)) {
        if let Some(mut slot) = self.signal.try_write_untracked() {
            change(kind_mut(&mut slot));
        }
    }
}

impl<T: Default + Send + Sync + 'static> Changing<T> {
    /// Takes it out, which nobody is told, and leaves nothing in its place.
    pub(super) fn take(self) -> T {
        let mut taken = T::default();
        self.update_untracked(|held| std::mem::swap(held, &mut taken));
        taken
    }
}

/// Waits until nothing new comes for a while.
#[derive(Clone, Copy)]
pub(super) struct Pause(Changing<u32>);

impl Pause {
    pub(super) fn new() -> Self {
        Self(Changing::new(0))
    }

    /// Does something after a while, unless it is called again before.
    pub(super) fn after(self, pause: Duration, act: impl FnOnce() + 'static) {
        let latest = self.0.get_untracked() + 1;
        self.0.set(latest);
        after(pause, move || {
            if self.0.try_get_untracked() == Some(latest) {
                act();
            }
        });
    }
}

/// Does something now, which is told to be the first time, and again when something that it looked at changes.
pub(super) fn whenever(act: impl FnMut(bool) + Send + Sync + 'static) {
    #[inline(never)]
    fn follow(mut act: Box<dyn Does<bool> + Send + Sync>) {
        Effect::new_sync(move |before: Option<()>| act.does(before.is_none()));
    }
    follow(Box::new(act));
}

/// Does something now, and again when something that it looked at changes, for as long as what it gives is kept.
pub(super) fn follows(mut act: Box<dyn FnMut()>) -> RenderEffect<()> {
    RenderEffect::new(move |_| act())
}
