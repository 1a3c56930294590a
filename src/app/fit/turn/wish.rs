//! The one number that is wanted.

use super::super::number::NumberField;
use crate::app::session::use_session;
use leptos::prelude::*;
use linkwright::present::fit::turn::{Ask, read_wish};

/// The field of a question.
#[component]
pub(super) fn WishField(
    /// The question.
    ask: Ask,
    /// What is typed; whoever asks something else empties it.
    typed: RwSignal<String>,
    /// Where its number goes, SI; nothing while what is typed cannot be read.
    value: RwSignal<Option<f64>>,
) -> impl IntoView {
    let session = use_session();
    let question = ask.question();
    let take = move |text: String| {
        let read = read_wish(ask, &text, session.units.get_untracked());
        typed.set(text);
        value.set(read.as_ref().ok().copied().flatten());
        read.map(|_| ())
    };
    view! {
        <NumberField
            id="turn-wish".to_string()
            label=question.label
            help=question.help
            kind=question.kind
            shown=typed
            take=Callback::new(take)
        />
    }
}
