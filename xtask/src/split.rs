//! The page's program cut in two: what the first answer needs, and the rest, which the page adds later.
//!
//! The cut is `load` in `src/app/later.rs`. What only it leads to goes into the second file; the two share memory and
//! a table of functions. The tool for that reads the relocations of the linked program, so it comes before wasm-bindgen.

use crate::run::{program, run, step};
use crate::{Outcome, files, root, tools};
use std::path::{Path, PathBuf};
use wasm_encoder::{Module, RawSection, SectionId};
use wasmparser::Parser;

/// The module that the first part imports, for a function that adds the second one.
const LINK: &str = "./rest.js";

/// That function, `addRest`.
const ADD_REST: &str = include_str!("../../src/shell/rest.js");

/// Words of what comes in the second part, which nothing in the first part says.
const LATER_WORDS: [&str; 4] = [
    "Fit, closest to its limit first",
    "Links, the worst first",
    "Builds are kept in this browser, on this device only",
    "Scan it to open these entries",
];

/// A program in two parts, bound for the browser.
#[derive(Debug)]
pub struct Split {
    /// The module of JavaScript between the browser and both parts.
    pub glue: String,
    /// The first part.
    pub wasm: Vec<u8>,
    /// The second part.
    pub rest: Vec<u8>,
}

/// Cuts the linked program in two and binds it for the browser.
pub fn split(linked: &Path) -> Outcome<Split> {
    step("split", "the program in two parts", || {
        let folder = root().join("target").join("split");
        files::empty(&folder)?;
        let first = folder.join("linkwright.wasm");
        let rest = cut(linked, &folder, &first)?;
        let bound = folder.join("bound");
        bind(&first, &bound)?;
        let glue = with_add_rest(&files::read_text(&bound.join("linkwright.js"))?)?;
        let wasm = files::read(&bound.join("linkwright_bg.wasm"))?;
        let rest = without_custom_sections(&files::read(&rest)?)?;
        check_parts(&wasm, &rest)?;
        Ok(Split { glue, wasm, rest })
    })
}

/// Writes the first part as a file of its own and the second one into a folder; gives the second one's file.
fn cut(linked: &Path, folder: &Path, first: &Path) -> Outcome<PathBuf> {
    let whole = files::read(linked)?;
    let mut options = wasm_split_cli_support::Options::new(&whole);
    options.output_dir = folder;
    options.main_out_path = first;
    options.link_name = LINK;
    let parts = wasm_split_cli_support::transform(options).map_err(|reason| {
        format!(
            "the program cannot be cut in two ({reason:#}): remove target/wasm32-unknown-unknown/release and build again"
        )
    })?;
    let [rest] = parts.split_modules.as_slice() else {
        let count = parts.split_modules.len();
        return Err(format!("{count} parts beside the first, not 1: see `load` in src/app/later.rs"));
    };
    Ok(rest.clone())
}

/// A view named in the wrong place would come with the first part, and nobody would notice.
fn check_parts(first: &[u8], rest: &[u8]) -> Outcome {
    match LATER_WORDS.iter().find(|words| contains(first, words) || !contains(rest, words)) {
        None => Ok(()),
        Some(words) => Err(format!(
            "“{words}” is not where it belongs, in the second part alone: reach it through `LaterViews` in src/app/later.rs"
        )),
    }
}

fn contains(bytes: &[u8], words: &str) -> bool {
    bytes.windows(words.len()).any(|piece| piece == words.as_bytes())
}

/// Runs wasm-bindgen. The first part still exports what the second one needs of it (`--keep-lld-exports`).
pub fn bind(wasm: &Path, folder: &Path) -> Outcome {
    let tool = tools::wasm_bindgen()?.join("wasm-bindgen");
    let mut bind = program(tool, &["--target", "web", "--no-typescript", "--keep-lld-exports"]);
    bind.args(["--remove-name-section", "--remove-producers-section", "--out-dir"]).arg(folder).arg(wasm);
    run(&mut bind, "wasm-bindgen refused the program: see its message above")
}

/// The glue with [`ADD_REST`] in it, instead of an import of a module that would be one more file to wait for.
fn with_add_rest(glue: &str) -> Outcome<String> {
    let import = format!("import * as import1 from \"{LINK}\"\n");
    let used = format!("\"{LINK}\": import1,");
    if [&import, &used].iter().any(|it| glue.matches(*it).count() != 1) {
        return Err("wasm-bindgen writes its glue otherwise by now: teach xtask/src/split.rs".to_owned());
    }
    let replaced = format!("\"{LINK}\": {{ __wasm_split_load_rest: addRest }},");
    Ok(glue.replacen(&import, "", 1).replacen(&used, &replaced, 1) + ADD_REST)
}

/// A part without the names of its functions and other custom sections, which only tools read.
fn without_custom_sections(wasm: &[u8]) -> Outcome<Vec<u8>> {
    let broken = || "the second part of the program cannot be read".to_owned();
    let mut module = Module::new();
    for payload in Parser::new(0).parse_all(wasm) {
        let Some((id, range)) = payload.map_err(|_| broken())?.as_section() else { continue };
        if id != SectionId::Custom as u8 {
            let data = wasm.get(range.start as usize..range.end as usize).ok_or_else(broken)?;
            module.section(&RawSection { id, data });
        }
    }
    Ok(module.finish())
}

#[cfg(test)]
mod tests {
    use super::*;
    use wasm_encoder::{CustomSection, MemorySection, MemoryType};

    #[test]
    fn custom_sections_are_left_out() {
        let custom = CustomSection { name: "name".into(), data: b"of a function".into() };
        let mut memory = MemorySection::new();
        memory.memory(MemoryType { minimum: 1, maximum: None, memory64: false, shared: false, page_size_log2: None });
        let mut plain = Module::new();
        plain.section(&memory);
        let mut named = Module::new();
        named.section(&custom).section(&memory).section(&custom);
        let named = named.finish();
        assert_eq!(without_custom_sections(&named), Ok(plain.finish()));
        assert!(without_custom_sections(&named[..named.len() - 1]).is_err());
        assert!(without_custom_sections(&named[..5]).is_err());
    }

    #[test]
    fn a_view_in_the_wrong_part_is_noticed() {
        let all = LATER_WORDS.concat();
        assert_eq!(check_parts(b"first", all.as_bytes()), Ok(()));
        assert!(check_parts(LATER_WORDS[1].as_bytes(), all.as_bytes()).is_err());
        assert!(check_parts(b"first", LATER_WORDS[..3].concat().as_bytes()).is_err());
    }

    #[test]
    fn the_glue_adds_the_second_part_itself() -> Outcome {
        let bound = "import * as import1 from \"./rest.js\"\nlet wasm;\ngo({\n\"./rest.js\": import1,\n});\n\
                     export { initSync, __wbg_init as default };\n";
        let glue = with_add_rest(bound)?;
        assert!(!glue.contains("import "), "{glue}");
        assert!(glue.contains("__wasm_split_load_rest: addRest") && glue.contains("function addRest("), "{glue}");
        assert!(with_add_rest("let wasm;").is_err(), "another way of writing is noticed");
        Ok(())
    }
}
