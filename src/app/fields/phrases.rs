//! Words that break between their phrases only, so that no size is torn apart.

use leptos::prelude::*;

/// The phrases of a text; the class of the element around it is `phrases`.
#[component]
pub(crate) fn Phrases(
    /// The text; its phrases end with a comma or a semicolon.
    text: String,
) -> impl IntoView {
    let phrases = text.split_inclusive(", ").flat_map(|part| part.split_inclusive("; "));
    let phrases: Vec<String> = phrases.map(str::to_string).collect();
    phrases.into_iter().map(|phrase| view! { <span>{phrase}</span> }).collect_view()
}
