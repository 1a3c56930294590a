//! The views of the page.

use linkwright::document::Document;

/// A view of the page. One that is left out of [`View::ALL`] does not compile.
#[derive(Clone, Copy, PartialEq, Eq, Debug)]
#[deny(dead_code)]
pub(crate) enum View {
    /// What to buy and make.
    Size,
    /// Why.
    Prove,
    /// Every link of the rig.
    Rig,
    /// What is kept on this device.
    Saved,
}

impl View {
    /// Every view, in the order of the navigation.
    pub(crate) const ALL: [Self; 4] = [Self::Rig, Self::Size, Self::Prove, Self::Saved];

    /// What stands in the navigation.
    pub(crate) const fn label(self) -> &'static str {
        match self {
            Self::Size => "Size",
            Self::Prove => "Prove",
            Self::Rig => "Rig",
            Self::Saved => "Saved",
        }
    }

    /// The name under which the browser remembers it.
    pub(crate) const fn name(self) -> &'static str {
        match self {
            Self::Size => "size",
            Self::Prove => "prove",
            Self::Rig => "rig",
            Self::Saved => "saved",
        }
    }

    /// The view of a name; the Size view for any other.
    pub(super) fn of_name(name: &str) -> Self {
        Self::ALL.into_iter().find(|view| view.name() == name).unwrap_or(Self::Size)
    }

    /// One link opens where it is looked at, a whole rig where all of it is seen.
    pub(crate) fn to_open(document: &Document) -> Self {
        if document.links.len() > 1 { Self::Rig } else { Self::Size }
    }
}
