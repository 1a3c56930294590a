//! Entries that were typed and not taken: an order must not go out as if they had been.

use crate::document::Document;
use crate::inputs::drafts::Draft;
use crate::present::words;

/// What still stands in an entry's place, in a sentence.
pub fn sentence(document: &Document, draft: &Draft) -> String {
    let Some(input) = draft.row() else { return String::new() };
    let (label, typed) = (input.label, draft.text.trim());
    let stands = match input.value(document, draft.place) {
        Some(value) => {
            let value = words::value(value, input.kind, draft.system);
            format!("{label}: {typed} was not taken; this order is for {value}.")
        }
        None => format!("{label}: {typed} was not taken; this order has no value for it."),
    };
    if draft.is_of_a_link() && document.links.len() > 1 {
        format!("{}: {}", words::titled(document, draft.place.link), words::lower(&stands))
    } else {
        stands
    }
}
