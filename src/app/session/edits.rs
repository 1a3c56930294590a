//! Edits of the document that more than one field takes part in.

use super::Session;
use crate::browser::clock;
use leptos::prelude::*;
use linkwright::document::{Document, Use};
use linkwright::inputs::{self, edits};
use linkwright::quantity::{inch, lbf};
use linkwright::report::MetalSize;
use linkwright::store::stored_entries::Origin;

impl Session {
    /// Fills in a typical rig.
    pub(crate) fn try_example(self) {
        let mut document = Document::default();
        document.rig.weight = Some(lbf(4200.0));
        document.rig.usage = Some(Use::Slow);
        if let Some(link) = document.links.first_mut() {
            link.length = Some(inch(36.5));
        }
        self.origin.set(Origin::new(clock::fresh_id()));
        self.replace(document);
    }

    /// Gives every changed assumption and factor back to its default.
    pub(crate) fn reset_defaults(self) {
        let place = self.place_untracked();
        self.edit(|document| edits::reset_defaults(document, place));
    }

    /// Takes another metal for the current link, with its size, or with one that is found anew.
    pub(crate) fn take_metal(self, id: &'static str, size: Option<&MetalSize>) {
        let place = self.place_untracked();
        self.edit(|document| {
            (inputs::MATERIAL.set)(document, place, Some(id));
            (inputs::OUTSIDE_DIAMETER.set)(document, place, size.map(|size| size.outside_diameter));
            (inputs::WALL.set)(document, place, size.map(|size| size.wall).filter(|wall| *wall > 0.0));
        });
    }
}
