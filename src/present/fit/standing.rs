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

/// The word while a hit is open in the log.
pub const HIT_OPEN: &str = "Not judged: a hit is open";

/// Said in its place where all else is in order.
pub const HIT_OPEN_SAYS: &str =
    "Nothing here says anything of the damage: look at it in full under “After a hit”, or replace the part.";

/// A mark and its word, or those of a bar that is not judged: what was hit is not made good by anything else.
pub const fn unless_hit(mark: Verdict, word: &'static str, hit: bool) -> (Verdict, &'static str) {
    if hit && matches!(mark, Verdict::Passes) { (Verdict::Unanswered, HIT_OPEN) } else { (mark, word) }
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
