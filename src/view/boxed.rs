//! Closures in boxes. With each closure that the standard library's own traits box come two more functions that nobody
//! calls; there are six hundred closures, and a phone would fetch them all.

/// Does something with what it is given, or tells something.
pub(super) trait Does<G, T = ()> {
    /// Does it.
    fn does(&mut self, given: G) -> T;
}

impl<G, T, F: FnMut(G) -> T> Does<G, T> for F {
    fn does(&mut self, given: G) -> T {
        self(given)
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
