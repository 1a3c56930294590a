//! Keeping an answer and handing it on: what each way is good for, and how it ended.

/// What a link is good for.
pub const OF_A_LINK: &str = "The link opens the same numbers on any phone. They travel in the link itself.";

/// What to do instead where the page itself lies on the device.
pub const OF_A_FILE: &str = "This page is a file on this device, and a link to it opens here only. To hand the numbers on, copy them as text, or save them as a file under “Saved”.";

/// The link was copied.
pub const LINK_COPIED: &str = "The link is on your clipboard.";

/// The text was copied.
pub const TEXT_COPIED: &str = "The text is on your clipboard.";

/// The working of a check was copied.
pub const WORKING_COPIED: &str = "The working is on your clipboard.";

/// The share sheet took it.
pub const SHARED: &str = "Handed over.";

/// What to do where the browser does not let the page copy the link or the answer.
pub const COPY_THE_LINK_BY_HAND: &str =
    "This browser did not copy. The link stands below: hold it, or press Ctrl and C.";

/// What to do where the browser does not let the page copy the working of a check.
pub const COPY_THE_WORKING_BY_HAND: &str = "This browser did not copy. Select the lines above instead.";

/// What to do where the browser does not let the page copy a text that stands there.
pub const COPY_BY_HAND: &str = "This browser did not copy. Select the text instead.";

/// Under the code of a link.
pub const SCAN_IT: &str = "Scan it to open these entries. The code has nothing in it but the link.";

/// In place of the code.
pub const TOO_LONG_FOR_A_CODE: &str = "This link is too long for a QR code. Copy it instead.";

/// How handing on ended; while an entry is not taken, with a note that it is not in there.
pub fn handed_on(done: &str, stale: bool) -> String {
    if stale {
        format!("{done} One of your entries is not taken yet: in its place stands the last good one.")
    } else {
        done.to_string()
    }
}
