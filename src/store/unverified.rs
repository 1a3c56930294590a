//! Numbers that may be wrong: they say so wherever they go, until the reader says that they were compared.
//!
//! ```text
//!              a link, file or record fails its check
//!   verified ────────────────────────────────────────▶ unverified, a sentence for each reason
//!      ▲                                                   │  typed over, saved, reloaded, copied, deleted,
//!      │                                                   │  brought back, an earlier version: still unverified
//!      └───────────────── the reader compared them ────────┘
//! ```
//!
//! Serves the promise on bad links: what could be read is opened, and never passes for sound.

use super::stored_entries::Origin;
use crate::builds::Build;
use crate::share;

/// Said when kept entries do not pass their own check.
pub const DAMAGED_HERE: &str = "What this browser kept of your entries was damaged. What could be read is below; check every number before you use it.";

/// Adds a sentence, once.
pub fn add(sentences: &mut Vec<String>, sentence: &str) {
    if !sentences.iter().any(|other| other == sentence) {
        sentences.push(sentence.to_string());
    }
}

/// The fragment to send: of unverified numbers one without its check, so that whoever opens it is told.
pub fn to_send<'a>(fragment: &'a str, origin: &Origin) -> &'a str {
    if origin.unverified.is_empty() { fragment } else { share::unchecked(fragment) }
}

/// The reader compared the numbers. The build that holds just these is verified with them, and is to be kept so.
pub fn verify(fragment: &str, origin: &mut Origin, build: Option<Build>) -> Option<Build> {
    origin.unverified.clear();
    let same = build.filter(|build| share::to_fragment(&build.document) == fragment)?;
    Some(Build { unverified: Vec::new(), ..same })
}
