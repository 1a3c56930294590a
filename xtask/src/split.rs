//! The page's program cut in two: what the first answer needs, and the rest, which the page adds later.
//!
//! The cut is `load` in `src/app/later.rs`. What only it leads to goes into the second file; the two share memory and
//! a table of functions. The tool for that reads the relocations of the linked program, so it comes before wasm-bindgen.

use crate::dress::{bare_script, read};
use crate::run::{program, run, step};
use crate::{Outcome, dress, holds, root, tools};
use std::path::{Path, PathBuf};
use wasm_encoder::{Module, RawSection, SectionId};
use wasmparser::Parser;

/// The module that the first part takes the function from which adds the second.
const LINK: &str = "./rest.js";
const REST: &str = include_str!("../../src/shell/rest.js");

/// Said by the views and the code of the second part, and by nothing of the first.
const LATER: [&str; 4] = [
    "Fit, closest to its limit first",
    "Links, the worst first",
    "Builds are kept in this browser, on this device only",
    "Scan it to open these entries",
];

/// A program in two parts, and what stands between the browser and both.
#[derive(Debug)]
pub struct Split {
    /// Script, a module.
    pub glue: String,
    /// The first part.
    pub wasm: Vec<u8>,
    /// The second part.
    pub rest: Vec<u8>,
}

/// Where cargo leaves what Trunk had it build.
#[must_use]
pub fn linked() -> PathBuf {
    root().join("target").join(tools::WASM).join("release").join("linkwright.wasm")
}

/// Cuts the linked program in two and binds it for the browser.
pub fn split(linked: &Path) -> Outcome<Split> {
    step("split", "the program in two parts", || cut(linked))
}

fn cut(linked: &Path) -> Outcome<Split> {
    let folder = root().join("target").join("split");
    dress::empty(&folder)?;
    let whole = read(linked)?;
    let first = folder.join("linkwright.wasm");
    let mut options = wasm_split_cli_support::Options::new(&whole);
    options.output_dir = &folder;
    options.main_out_path = &first;
    options.link_name = LINK;
    let parts = wasm_split_cli_support::transform(options).map_err(|reason| {
        format!(
            "the program cannot be cut in two ({reason:#}): remove target/wasm32-unknown-unknown/release and build again"
        )
    })?;
    let [rest] = parts.split_modules.as_slice() else {
        return Err(format!(
            "{} parts beside the first, not 1: see `load` in src/app/later.rs",
            parts.split_modules.len()
        ));
    };
    let bound = folder.join("bound");
    bind(&first, &bound)?;
    let glue = read(&bound.join("linkwright.js"))?;
    let glue = String::from_utf8(glue).map_err(|_| "the program's glue is no text".to_owned())?;
    let wasm = read(&bound.join("linkwright_bg.wasm"))?;
    let (glue, rest) = (joined(&glue)?, without_custom_sections(&read(rest)?)?);
    held_apart(&wasm, &rest)?;
    Ok(Split { glue, wasm, rest })
}

/// A view named in the wrong place would come with the first part, and nobody would notice.
fn held_apart(first: &[u8], rest: &[u8]) -> Outcome {
    match LATER.iter().find(|words| holds(first, words) || !holds(rest, words)) {
        None => Ok(()),
        Some(words) => Err(format!(
            "“{words}” is not where it belongs, in the second part alone: reach it through `LaterViews` in src/app/later.rs"
        )),
    }
}

/// Runs wasm-bindgen; what the second part needs of the first stays there.
pub fn bind(wasm: &Path, folder: &Path) -> Outcome {
    let tool = tools::wasm_bindgen()?.join("wasm-bindgen");
    let mut bind = program(tool, &["--target", "web", "--no-typescript", "--keep-lld-exports"]);
    bind.args(["--remove-name-section", "--remove-producers-section", "--out-dir"]).arg(folder).arg(wasm);
    run(&mut bind, "wasm-bindgen refused the program: see its message above")
}

/// The glue with the function that adds the second part in it, instead of a module of its own.
fn joined(glue: &str) -> Outcome<String> {
    let import = format!("import * as import1 from \"{LINK}\"\n");
    let asked = format!("\"{LINK}\": import1,");
    if [&import, &asked].iter().any(|it| glue.matches(*it).count() != 1) {
        return Err("wasm-bindgen writes its glue otherwise by now: teach xtask/src/split.rs".to_owned());
    }
    let given = format!("\"{LINK}\": {{ __wasm_split_load_rest: addRest }},");
    Ok(glue.replacen(&import, "", 1).replacen(&asked, &given, 1) + &bare_script(REST))
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
        let all = LATER.concat();
        assert_eq!(held_apart(b"first", all.as_bytes()), Ok(()));
        assert!(held_apart(LATER[1].as_bytes(), all.as_bytes()).is_err());
        assert!(held_apart(b"first", LATER[..3].concat().as_bytes()).is_err());
    }

    #[test]
    fn the_glue_brings_the_second_part_itself() -> Outcome {
        let bound = "import * as import1 from \"./rest.js\"\nlet wasm;\ngo({\n\"./rest.js\": import1,\n});\n\
                     export { initSync, __wbg_init as default };\n";
        let glue = joined(bound)?;
        assert!(!glue.contains("import "), "{glue}");
        assert!(glue.contains("__wasm_split_load_rest: addRest") && glue.contains("function addRest("), "{glue}");
        assert!(joined("let wasm;").is_err(), "another way of writing is noticed");
        Ok(())
    }
}
