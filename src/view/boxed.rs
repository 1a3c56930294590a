//! Closures in boxes. With each closure that is boxed as the standard library's `Fn` or `FnMut` come functions that
//! nobody calls, for the other two ways to call it; there are six hundred closures, and a phone would fetch them all.

/// Does something with what it is given.
pub(super) trait Does<G> {
    /// Does it.
    fn does(&mut self, given: G);
}

impl<G, F: FnMut(G)> Does<G> for F {
    fn does(&mut self, given: G) {
        self(given);
    }
}

/// Tells something.
pub(super) trait Tells<T> {
    /// Tells it.
    fn tells(&mut self) -> T;
}

impl<T, F: FnMut() -> T> Tells<T> for F {
    fn tells(&mut self) -> T {
        self()
    }
}
