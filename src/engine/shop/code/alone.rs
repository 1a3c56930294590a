//! One link out of a rig, for a sheet and a code of its own.

use super::code_of_link;
use crate::document::Document;
use crate::engine;
use crate::report::Answer;
use crate::share;

/// The document of one link alone, without the order; nothing where it would not be made just the same, because other
/// links of the rig matter to it.
pub fn alone(document: &Document, link: usize, answer: &Answer) -> Option<Document> {
    let whole = share::made_of(document);
    let one = Document { name: document.name.clone(), links: vec![document.links.get(link)?.clone()], ..whole };
    let same = engine::report_on(&one, 0)
        .answer()
        .is_some_and(|its| code_of_link(&one, 0, its) == code_of_link(document, link, answer));
    same.then_some(one)
}
