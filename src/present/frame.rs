//! What the page says around every view: where entries come from, what is not stored, how far to trust it.

use super::saved::notices::refused;
use crate::store::Refused;

/// What leaves the device.
pub const PRIVACY: &str = "Nothing you type leaves this device unless you send it. A link carries your entries in its own address; no server keeps them.";

/// How far to trust the page.
pub const ESTIMATE: &str = "An estimate for planning. Makers’ ratings, local rules and a licensed engineer come first.";

/// Beside the way back to the reader's own entries from before others took their place.
pub const fn earlier_entries(came_by_a_link: bool) -> &'static str {
    if came_by_a_link {
        "This came by a link. Your own earlier entries are kept, in the bin too."
    } else {
        "Your own earlier entries are kept, in the bin too."
    }
}

/// Another tab has a rig of this title open.
pub fn other_tab(title: &str) -> String {
    format!("Another tab has something else open: {title}. This tab keeps its own entries.")
}

/// The entries are not stored.
pub fn not_stored(why: Refused) -> String {
    let why = refused(why);
    format!(
        "{why} You can go on: your entries are in the address above. To keep them, copy the link, or export a file from Saved."
    )
}

/// What was put into the log is not stored, and no address holds it.
pub const fn log_not_stored(why: Refused) -> &'static str {
    match why {
        Refused::Blocked => {
            "This browser keeps nothing for this page, as in a private window. What you put into the log is on this page only: under Fit, export the build as a file now."
        }
        Refused::Full => {
            "The space this browser gives to the page is full. What you put into the log is on this page only: under Fit, export the build as a file now."
        }
    }
}
