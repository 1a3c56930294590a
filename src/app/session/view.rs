//! The views of the page.

use linkwright::document::{Document, Order};

/// A view of the page. One that is left out of [`View::ALL`] does not compile.
#[derive(Clone, Copy, PartialEq, Eq, Debug)]
#[deny(dead_code)]
pub(crate) enum View {
    /// What to buy and make.
    Size,
    /// Why.
    Prove,
    /// What is asked, read back, confirmed and charged.
    Order,
    /// How it is made.
    Make,
    /// How it is fitted, turned, checked and kept.
    Fit,
    /// Every link of the rig.
    Rig,
    /// What is kept on this device.
    Saved,
}

impl View {
    /// Every view, in the order of the navigation.
    pub(crate) const ALL: [Self; 7] =
        [Self::Rig, Self::Size, Self::Prove, Self::Order, Self::Make, Self::Fit, Self::Saved];

    /// What stands in the navigation.
    pub(crate) const fn label(self) -> &'static str {
        match self {
            Self::Size => "Size",
            Self::Prove => "Prove",
            Self::Order => "Order",
            Self::Make => "Make",
            Self::Fit => "Fit",
            Self::Rig => "Rig",
            Self::Saved => "Saved",
        }
    }

    /// The name under which the browser remembers it.
    pub(crate) const fn name(self) -> &'static str {
        match self {
            Self::Size => "size",
            Self::Prove => "prove",
            Self::Order => "order",
            Self::Make => "make",
            Self::Fit => "fit",
            Self::Rig => "rig",
            Self::Saved => "saved",
        }
    }

    /// The view of a name; the Size view for any other.
    pub(super) fn of_name(name: &str) -> Self {
        Self::ALL.into_iter().find(|view| view.name() == name).unwrap_or(Self::Size)
    }

    /// Whether it shows the current link and not the rig or the device.
    pub(crate) const fn is_of_one_link(self) -> bool {
        matches!(self, Self::Size | Self::Prove | Self::Order | Self::Make | Self::Fit)
    }

    /// Whether its fields stand in it, and not beside it.
    pub(crate) const fn asks_for_itself(self) -> bool {
        matches!(self, Self::Order | Self::Make | Self::Fit)
    }

    /// What somebody sent with their order opens where that is read.
    pub(super) fn to_receive(document: &Document) -> Self {
        if *document.order == Order::default() { Self::to_open(document) } else { Self::Order }
    }

    /// One link opens where it is looked at, a whole rig where all of it is seen.
    pub(crate) fn to_open(document: &Document) -> Self {
        if document.links.len() > 1 { Self::Rig } else { Self::Size }
    }
}
