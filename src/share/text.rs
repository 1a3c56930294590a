//! Free text within a link, in signs that no messenger changes.

/// A text in letters and digits that no messenger changes: what is neither stands as `.` and two digits for each byte.
pub(super) fn in_ascii(text: &str) -> String {
    let mut out = String::new();
    for byte in text.bytes() {
        match byte {
            b' ' => out.push('_'),
            byte if byte.is_ascii_alphanumeric() || byte == b'-' => out.push(char::from(byte)),
            byte => out.push_str(&format!(".{byte:02x}")),
        }
    }
    out
}

/// Reads such a text back; nothing when it is not one that [`in_ascii`] writes.
pub(super) fn from_ascii(text: &str) -> Option<String> {
    let (mut bytes, mut rest) = (Vec::new(), text.bytes());
    while let Some(byte) = rest.next() {
        bytes.push(match byte {
            b'_' => b' ',
            b'.' => {
                let digits = [rest.next()?, rest.next()?];
                u8::from_str_radix(std::str::from_utf8(&digits).ok()?, 16).ok()?
            }
            byte => byte,
        });
    }
    String::from_utf8(bytes).ok().filter(|read| in_ascii(read) == text)
}
