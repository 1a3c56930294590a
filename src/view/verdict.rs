//! Verdicts as a word and a shape, so that neither color nor sight alone is needed.

use super::markup::{Markup, element, said};
use super::words;
use linkwright::quantity::System;
use linkwright::report::{Answer, Verdict};

/// The class that carries a verdict into the style sheets.
pub(super) const fn class(verdict: Verdict) -> &'static str {
    match verdict {
        Verdict::Passes => "holds",
        Verdict::Unanswered => "unanswered",
        Verdict::Close => "close",
        Verdict::Bends => "bends",
        Verdict::Fails => "fails",
    }
}

/// The shape: a ticked ring, a broken ring, a half-filled triangle, a crossed block.
const fn shape(verdict: Verdict) -> &'static str {
    match verdict {
        Verdict::Passes => {
            r#"<svg viewBox="0 0 20 20"><circle class="line" cx="10" cy="10" r="8.5"/><path class="line" d="M5.5 10.5l3 3 6-7"/></svg>"#
        }
        Verdict::Unanswered => {
            r#"<svg viewBox="0 0 20 20"><circle class="line broken" cx="10" cy="10" r="8.5"/><path class="line" d="M7 7.6a3 3 0 1 1 4.2 2.8q-1.2.6-1.2 2"/><circle class="solid" cx="10" cy="15" r="1"/></svg>"#
        }
        Verdict::Close | Verdict::Bends => {
            r#"<svg viewBox="0 0 20 20"><path class="line" d="M10 1.8 19 18H1z"/><path class="solid" d="M5.2 10.5h9.6L19 18H1z"/></svg>"#
        }
        Verdict::Fails => {
            r#"<svg viewBox="0 0 20 20"><path class="solid" d="M0 0h20v20H0z"/><path class="cut" d="M5 5l10 10M15 5 5 15"/></svg>"#
        }
    }
}

/// Shape and word, as markup.
pub(super) fn mark(verdict: Verdict, word: &'static str) -> Markup {
    let shape = element("span class=\"shape\" aria-hidden=\"true\"", Markup::drawn(shape(verdict).to_string()));
    let word = said("span class=\"word\"", word);
    element(format!("span class=\"verdict {}\"", class(verdict)), shape + word)
}

/// The line of a steering link that tells whether a push folds it; empty for other links.
pub(super) fn buckling(answer: &Answer, system: System) -> Markup {
    words::buckling(answer, system).map_or_else(Markup::default, |(verdict, words)| {
        element("p class=\"buckling\"", said("span", words) + mark(verdict, verdict.word()))
    })
}
