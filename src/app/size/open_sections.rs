//! Which sections of the view are unfolded, for the folds themselves and for the jumps to them.

use crate::app::session::use_session;
use crate::browser::page;
use leptos::prelude::*;

/// Ids of the sections that fold, in the order of the page.
pub(super) const ENDS: &str = "two-ends";
pub(super) const DEPTHS: &str = "shop-depths";
pub(super) const PARTS: &str = "link-parts";
pub(super) const FITTING: &str = "fitting";

/// The ids of the unfolded sections.
#[derive(Clone, Copy)]
pub(super) struct OpenSections(RwSignal<Vec<&'static str>>);

/// The unfolded sections of the view that is open: all on a wide screen, none on a phone. Whoever of the view asks first
/// provides them for the others.
pub(super) fn use_open_sections() -> OpenSections {
    use_context::<OpenSections>().unwrap_or_else(|| {
        let wide = use_session().wide.get_untracked();
        let open = OpenSections(RwSignal::new(if wide { vec![ENDS, DEPTHS, PARTS, FITTING] } else { Vec::new() }));
        provide_context(open);
        open
    })
}

impl OpenSections {
    /// Whether a section is unfolded.
    pub(super) fn is_open(self, id: &str) -> bool {
        self.0.read().contains(&id)
    }

    /// Folds or unfolds a section.
    pub(super) fn set(self, id: &'static str, open: bool) {
        if self.0.read_untracked().contains(&id) != open {
            self.0.update(|all| {
                all.retain(|other| *other != id);
                all.extend(open.then_some(id));
            });
        }
    }

    /// Unfolds a section, if it folds, and leads to it.
    pub(super) fn jump(self, id: &'static str) {
        if [ENDS, DEPTHS, PARTS, FITTING].contains(&id) {
            self.set(id, true);
        }
        page::show_soon(id.to_string());
    }
}
