//! The whole page as one file that opens from a memory stick.

use crate::dress::{Built, bare_script};
use crate::split::Split;
use crate::{Outcome, digest};

/// The file's name.
pub const NAME: &str = "linkwright.html";

const BOOT: &str = include_str!("../../src/shell/boot.js");
const UNPACK: &str = include_str!("../../src/shell/unpack.js");

/// The page with its program packed inside as text.
pub fn page(built: &Built) -> Outcome<String> {
    let Split { glue, wasm, rest } = &built.program;
    if glue.contains("</script") {
        return Err("the program's glue would end the script it stands in".to_owned());
    }
    let packed = |id: &str, bytes: &[u8]| {
        let packed = digest::base64(&miniz_oxide::deflate::compress_to_vec_zlib(bytes, 10));
        format!("<script type=\"text/plain\" id=\"{id}\">{packed}</script>\n")
    };
    let before = packed("packed", wasm) + &packed("packed-rest", rest);
    let icon = format!(
        "\n  <link rel=\"icon\" type=\"image/svg+xml\" href=\"data:image/svg+xml;base64,{}\">",
        digest::base64(built.icon.as_bytes())
    );
    let start = [glue.clone(), bare_script(UNPACK), bare_script(BOOT)].concat();
    Ok(built.page([&icon, ""], &before, &start, false))
}
