//! The whole page as one file that opens from a memory stick.

use crate::digest;
use crate::dress::{Built, bare_script};
use crate::split::Split;
use miniz_oxide::deflate::compress_to_vec_zlib;

/// The file's name.
pub const NAME: &str = "linkwright.html";

const BOOT: &str = include_str!("../../src/shell/boot.js");
const SINGLE: &str = include_str!("../../src/shell/single.js");

/// Hands the start of the glue over to `single.js`.
const END: &str = "start(__wbg_init);\n";

/// The file: the page with its program inside, packed in the way that every browser unpacks and written as base64.
#[must_use]
pub fn file(built: &Built) -> String {
    let Split { glue, wasm, rest } = &built.program;
    let glue = glue.clone() + END;
    let mut before = String::new();
    for (id, bytes) in [("packed-glue", glue.as_bytes()), ("packed", wasm), ("packed-rest", rest)] {
        let packed = digest::base64(&compress_to_vec_zlib(bytes, 10));
        before.push_str(&format!("<script type=\"text/plain\" id=\"{id}\">{packed}</script>\n"));
    }
    let icon = format!(
        "\n  <link rel=\"icon\" type=\"image/svg+xml\" href=\"data:image/svg+xml;base64,{}\">",
        digest::base64(built.icon.as_bytes())
    );
    let start = [SINGLE, BOOT].map(bare_script).concat();
    built.page([&icon, ""], &before, &start, Some(&glue))
}
