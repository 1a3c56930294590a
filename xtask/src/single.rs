//! The whole page as one file that opens from a memory stick.

use crate::built::Built;
use crate::digest;
use crate::page::Page;
use crate::split::Split;
use miniz_oxide::deflate::compress_to_vec_zlib;

/// The file's name.
pub const NAME: &str = "linkwright.html";

const BOOT: &str = include_str!("../../src/shell/boot.js");
const SINGLE: &str = include_str!("../../src/shell/single.js");

/// Hands the start of the glue over to `single.js`.
const START: &str = "start(__wbg_init);\n";

/// The page with its program inside: compressed in a way that every browser undoes, and written as base64.
#[must_use]
pub fn file(built: &Built) -> String {
    let Split { glue, wasm, rest } = &built.program;
    let glue = glue.clone() + START;
    let parts = [("packed-glue", glue.as_bytes()), ("packed", wasm), ("packed-rest", rest)];
    let page = Page {
        links: format!(
            "\n  <link rel=\"icon\" type=\"image/svg+xml\" href=\"data:image/svg+xml;base64,{}\">",
            digest::base64(built.icon.as_bytes())
        ),
        elements: parts.map(|(id, bytes)| element(id, bytes)).concat(),
        start_script: [SINGLE, BOOT].concat(),
        added_script: Some(glue),
        ..Page::default()
    };
    page.html(built)
}

/// A part of the program in an element that no browser runs.
fn element(id: &str, bytes: &[u8]) -> String {
    let text = digest::base64(&compress_to_vec_zlib(bytes, 10));
    format!("<script type=\"text/plain\" id=\"{id}\">{text}</script>\n")
}
