//! A verdict as a word and a shape, so that neither color nor sight alone is needed.

use leptos::prelude::*;
use linkwright::present::verdict::class;
use linkwright::report::Verdict;

/// Shape and word.
#[component]
pub(crate) fn VerdictMark(
    /// How it stands.
    verdict: Verdict,
    /// Its word, which may say more than the verdict's own.
    word: &'static str,
) -> impl IntoView {
    view! {
        <span class=format!("verdict {}", class(verdict))>
            <span class="shape" aria-hidden="true">
                <svg viewBox="0 0 20 20">{shape(verdict)}</svg>
            </span>
            <span class="word">{word}</span>
        </span>
    }
}

/// A ticked ring, a broken ring, a half-filled triangle, a crossed block.
fn shape(verdict: Verdict) -> AnyView {
    match verdict {
        Verdict::Passes => view! {
            <circle class="line" cx="10" cy="10" r="8.5" />
            <path class="line" d="M5.5 10.5l3 3 6-7" />
        }
        .into_any(),
        Verdict::Unanswered => view! {
            <circle class="line broken" cx="10" cy="10" r="8.5" />
            <path class="line" d="M7 7.6a3 3 0 1 1 4.2 2.8q-1.2.6-1.2 2" />
            <circle class="solid" cx="10" cy="15" r="1" />
        }
        .into_any(),
        Verdict::Close | Verdict::Bends => view! {
            <path class="line" d="M10 1.8 19 18H1z" />
            <path class="solid" d="M5.2 10.5h9.6L19 18H1z" />
        }
        .into_any(),
        Verdict::Fails => view! {
            <path class="solid" d="M0 0h20v20H0z" />
            <path class="cut" d="M5 5l10 10M15 5 5 15" />
        }
        .into_any(),
    }
}
