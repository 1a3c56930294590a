//! The whole page as one file that opens from a memory stick.

use crate::dress::{Built, bare_script};
use crate::split::Split;
use crate::{Outcome, digest};

/// The file's name.
pub const NAME: &str = "linkwright.html";

const BOOT: &str = include_str!("../../src/shell/boot.js");
const UNPACK: &str = include_str!("../../src/shell/unpack.js");
const GLUE_PACKED: &str = include_str!("../../src/shell/glue_packed.js");

/// The file: the page with its program packed inside.
///
/// It is written in windows-1252, where each byte is one letter: packed as base64 the program would be a third larger.
pub fn file(built: &Built) -> Outcome<Vec<u8>> {
    let Split { glue, wasm, rest } = &built.program;
    let glue = glue.clone() + &bare_script(GLUE_PACKED);
    let mut before = String::new();
    for (id, bytes) in [("packed-glue", glue.as_bytes()), ("packed", wasm), ("packed-rest", rest)] {
        let packed = letters(&deflated(bytes).map_err(|reason| format!("{id} cannot be packed ({reason})"))?);
        before.push_str(&format!("<script type=\"text/plain\" id=\"{id}\">{packed}</script>\n"));
    }
    let icon = format!(
        "\n  <link rel=\"icon\" type=\"image/svg+xml\" href=\"data:image/svg+xml;base64,{}\">",
        digest::base64(built.icon.as_bytes())
    );
    let start = [UNPACK, BOOT].map(bare_script).concat();
    bytes(&built.page([&icon, ""], &before, &start, Some(&glue)))
}

/// Packed in the way that every browser unpacks, as small as it goes.
fn deflated(bytes: &[u8]) -> std::io::Result<Vec<u8>> {
    let mut packed = Vec::new();
    zopfli::compress(zopfli::Options::default(), zopfli::Format::Zlib, bytes, &mut packed)?;
    Ok(packed)
}

/// Each byte as the letter with its number; behind an `=` and moved by 64 what a page would change (0 and the return) or
/// end at. `unpack.js` reads it.
fn letters(bytes: &[u8]) -> String {
    let mut text = String::with_capacity(bytes.len());
    for (at, byte) in bytes.iter().enumerate() {
        let tag = *byte == b'<' && matches!(bytes.get(at + 1), Some(b'/' | b'!' | b's' | b'S'));
        if tag || matches!(byte, 0 | b'\r' | b'=') {
            text.push('=');
            text.push(char::from(byte + 64));
        } else {
            text.push(char::from(*byte));
        }
    }
    text
}

/// The text with one byte for each letter. What no script or style may hold, for want of a letter for it, is named.
fn bytes(text: &str) -> Outcome<Vec<u8>> {
    let byte = |letter: char| {
        u8::try_from(letter).map_err(|_| format!("“{letter}” has no place in windows-1252: write it as an escape"))
    };
    text.chars().map(byte).collect()
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn nothing_packed_ends_the_page_or_is_changed_by_it() {
        let all: Vec<u8> = (0..=255).chain(*b"</script><!--<b=\r\n").collect();
        let text = letters(&all);
        assert!(
            !text.contains("</") && !text.contains("<!") && !text.contains('\0') && !text.contains('\r'),
            "{text:?}"
        );
        let mut read = Vec::new();
        let mut letters = text.chars().map(|letter| u8::try_from(letter).unwrap_or_default());
        while let Some(byte) = letters.next() {
            read.push(if byte == b'=' { letters.next().unwrap_or_default().wrapping_sub(64) } else { byte });
        }
        assert_eq!(read, all, "as unpack.js reads it");
        assert_eq!(bytes(&text).map(|it| it.len()), Ok(text.chars().count()));
    }

    #[test]
    fn a_letter_without_a_byte_stops_the_build() {
        assert_eq!(bytes("a×"), Ok(vec![b'a', 0xd7]));
        assert!(bytes("a…").is_err());
    }

    #[test]
    fn what_is_packed_can_be_unpacked() -> Outcome {
        let text = b"lower link, upper link, lower link".repeat(50);
        let packed = deflated(&text).map_err(|reason| reason.to_string())?;
        assert!(packed.len() < text.len() / 10);
        let unpacked = miniz_oxide::inflate::decompress_to_vec_zlib(&packed).map_err(|reason| reason.to_string())?;
        assert_eq!(unpacked, text);
        Ok(())
    }
}
