//! The log within a link: only where somebody asked for it.

use super::check;
use super::text::in_ascii;

/// The name of the part.
pub(super) const LOG: &str = "log";

/// The longest log that a link carries, in letters as they stand in it: messengers cut longer links off.
const LONGEST_LOG: usize = 16_000;

/// A fragment with the text of a log; nothing where that is too long for a link.
pub fn with_log(fragment: &str, log: &str) -> Option<String> {
    let log = in_ascii(log);
    if log.len() > LONGEST_LOG {
        return None;
    }
    let body = super::unchecked(fragment);
    let body = format!("{body}&{LOG}={log}");
    let check = check(body.as_bytes());
    Some(format!("{body}&crc={check:08x}"))
}
