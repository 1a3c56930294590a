//! A component on a page of its own, for the tests that stand beside components.

use crate::app::session::Session;
use crate::browser::tested::Tested;
use crate::browser::{address, storage};
use leptos::mount::mount_to;
use leptos::prelude::*;
use std::ops::Deref;

/// The link that most tests begin with: a 4,100 lb rig, driven hard, lowers of 38 in.
pub(crate) const EXAMPLE: &str = "3&length=38in&weight=4100lb&use=hard&crc=6f47f8b8";

/// A component that stands in the page, and the session it is part of.
pub(crate) struct Mounted {
    place: Tested,
    pub(crate) session: Session,
}

impl Mounted {
    /// Opens a link as somebody does who never was here, and puts a component into the page.
    pub(crate) async fn with(fragment: &str, component: fn() -> AnyView) -> Self {
        storage::forget_everything();
        address::write_fragment(fragment);
        let place = Tested::new();
        let opened = StoredValue::new_local(None::<Session>);
        // It lives as long as the page, as the session does: what a session asks for later finds it.
        mount_to(place.element(), move || {
            let session = Session::open();
            opened.set_value(Some(session));
            provide_context(session);
            component()
        })
        .forget();
        let session = opened.get_value().expect("a session");
        let mounted = Self { place, session };
        mounted.settle().await;
        mounted
    }
}

impl Deref for Mounted {
    type Target = Tested;

    fn deref(&self) -> &Tested {
        &self.place
    }
}
