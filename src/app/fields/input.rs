//! The field of any input, whatever its kind.

use super::{ChoiceField, NumberField};
use crate::app::session::use_session;
use leptos::prelude::*;
use linkwright::inputs::{At, Input, applies};

/// The field. An entry that only some links have appears when it can matter.
#[component]
pub(crate) fn InputField(
    /// The input.
    input: Input,
    /// Where it is.
    place: At,
    /// Whether it answers a question of the order.
    #[prop(optional)]
    answers: bool,
) -> impl IntoView {
    let session = use_session();
    let shown = Memo::new(move |_| session.document.with(|document| applies(input.id(), document, place)));
    let field = move || match input {
        Input::Choice(choice) => view! { <ChoiceField choice place answers /> }.into_any(),
        Input::Number(input) => view! { <NumberField input place /> }.into_any(),
    };
    view! { <Show when=move || shown.get()>{field()}</Show> }
}
