//! How something on the rig stands: as a word and a mark.

use crate::engine::fitting::Standing;
use crate::report::Verdict;

/// The mark of a standing, for eyes that see no color too.
pub const fn mark(standing: Standing) -> Verdict {
    match standing {
        Standing::Good => Verdict::Passes,
        Standing::NotJudged => Verdict::Unanswered,
        Standing::Watch => Verdict::Close,
        Standing::Stop => Verdict::Fails,
    }
}

/// Its word.
pub const fn word(standing: Standing) -> &'static str {
    match standing {
        Standing::Good => "Good",
        Standing::NotJudged => "Not judged",
        Standing::Watch => "Watch",
        Standing::Stop => "Stop",
    }
}
