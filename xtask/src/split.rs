//! The page's program cut in two: what the first answer needs, and the rest, which the page adds later.
//!
//! The cut is `brought` in `src/view/rest.rs`. What only it leads to goes into the second file; the two share memory and
//! a table of functions. The tool for that reads the relocations of the linked program, so it comes before wasm-bindgen.

use crate::dress::{bare_script, read};
use crate::pack::{packed, renamed};
use crate::run::{program, run, step};
use crate::unused::without_streams;
use crate::{Outcome, dress, holds, root, tools};
use std::path::{Path, PathBuf};
use wasm_encoder::reencode::{Error, Reencode, RoundtripReencoder};
use wasmparser::{CustomSectionReader, Parser};

/// The module that the first part takes the function from which adds the second.
const LINK: &str = "./rest.js";
const REST: &str = include_str!("../../src/shell/rest.js");
/// Puts together what travels apart.
const WHOLE: &str = include_str!("../../src/shell/whole.js");
const START: &str = include_str!("../../src/shell/start.js");

/// With that begins what wasm-bindgen ends the glue with.
const END: &str = "async function __wbg_load(";

/// Said by the views and the code of the second part, and by nothing of the first.
const LATER: [&str; 4] = [
    "Every check, worst first",
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
    without_heavy(&whole)?;
    let whole = without_streams(&whole)?;
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
            "{} parts beside the first, not 1: see `brought` in src/view/rest.rs",
            parts.split_modules.len()
        ));
    };
    dress::write(&folder, "linkwright.wasm", &bare(&read(&first)?)?)?;
    let bound = folder.join("bound");
    bind(&first, &bound)?;
    let glue = read(&bound.join("linkwright.js"))?;
    let glue = String::from_utf8(glue).map_err(|_| "the program's glue is no text".to_owned())?;
    let wasm = read(&bound.join("linkwright_bg.wasm"))?;
    let (glue, names) = renamed(&joined(&bare_script(&glue))?, &wasm)?;
    let (wasm, rest) = (packed(&wasm, names)?, packed(&read(rest)?, Vec::new())?);
    held_apart(&wasm, &rest)?;
    Ok(Split { glue, wasm, rest })
}

/// A name in the wrong place would bring a view back into the first part, and nobody would notice.
fn held_apart(first: &[u8], rest: &[u8]) -> Outcome {
    match LATER.iter().find(|words| holds(first, words) || !holds(rest, words)) {
        None => Ok(()),
        Some(words) => Err(format!(
            "“{words}” is not where it belongs, in the second part alone: reach it through `Part` in src/view/rest.rs"
        )),
    }
}

/// What one careless line would bring from the standard library, in kilobytes, and nobody would notice: a name that tells
/// it, and what to do.
const HEAVY: [(&str, &str); 4] = [
    (
        "flt2dec",
        "an `f64` is printed by `{}`, `{:?}` or their like (`f64::clamp` does, when it panics): \
         use src/quantity/decimals.rs",
    ),
    ("StrSearcher", "a text is looked for in another, split at it or replaced: use src/text.rs"),
    ("10alphabetic", "any letter of any script is asked for: use `is_letter` of src/text.rs"),
    ("dlmalloc", "the thread is asked for, and with it a second allocator: see `Hearing` in src/view/moments.rs"),
];

fn without_heavy(whole: &[u8]) -> Outcome {
    if !holds(whole, "linkwright") {
        return Err("the linked program has no names by which what is heavy would be noticed".to_owned());
    }
    HEAVY.iter().find(|(name, _)| holds(whole, name)).map_or(Ok(()), |(_, how)| Err((*how).to_owned()))
}

/// Runs wasm-bindgen; what the second part needs of the first stays there.
pub fn bind(wasm: &Path, folder: &Path) -> Outcome {
    let tool = tools::wasm_bindgen()?.join("wasm-bindgen");
    let mut bind = program(tool, &["--target", "web", "--no-typescript", "--keep-lld-exports", "--out-dir"]);
    bind.arg(folder).arg(wasm);
    run(&mut bind, "wasm-bindgen refused the program: see its message above")
}

/// The glue with the function that adds the second part in it, instead of a module of its own, and with our own end.
fn joined(glue: &str) -> Outcome<String> {
    let import = format!("import * as import1 from \"{LINK}\"\n");
    let asked = format!("\"{LINK}\": import1,");
    if [&import, &asked, END, "function __wbg_finalize_init(instance, module)"]
        .iter()
        .any(|it| glue.matches(*it).count() != 1)
    {
        return Err("wasm-bindgen writes its glue otherwise by now: teach xtask/src/split.rs".to_owned());
    }
    let (glue, _) = glue.split_once(END).unwrap_or_default();
    let given = format!("\"{LINK}\": {{ __wasm_split_load_rest: addRest }},");
    Ok(glue.replacen(&import, "", 1).replacen(&asked, &given, 1) + &bare_script(&[REST, WHOLE, START].concat()))
}

/// The program in as few bytes as it can be written with, without names and the like.
pub fn bare(wasm: &[u8]) -> Outcome<Vec<u8>> {
    let mut bare = wasm_encoder::Module::new();
    let written = Bare.parse_core_module(&mut bare, Parser::new(0), wasm);
    written.map_err(|reason| format!("the program cannot be written anew ({reason})"))?;
    Ok(bare.finish())
}

/// Copies all but custom sections; of those, only what wasm-bindgen has yet to read.
struct Bare;

impl Reencode for Bare {
    type Error = std::convert::Infallible;

    fn parse_custom_section(
        &mut self,
        module: &mut wasm_encoder::Module,
        section: CustomSectionReader<'_>,
    ) -> Result<(), Error<Self::Error>> {
        if section.name().starts_with("__wasm_bindgen") {
            RoundtripReencoder.parse_custom_section(module, section)?;
        }
        Ok(())
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn what_nobody_runs_is_left_out() -> Outcome {
        let mut module = wasm_encoder::Module::new();
        for name in ["name", "__wasm_bindgen_unstable", "reloc.CODE", "target_features"] {
            module.section(&wasm_encoder::CustomSection { name: name.into(), data: b"0123456789"[..].into() });
        }
        let bare = bare(&module.finish())?;
        assert!(holds(&bare, "__wasm_bindgen_unstable"));
        assert!(!holds(&bare, "reloc.CODE") && !holds(&bare, "target_features"));
        Ok(())
    }

    #[test]
    fn a_view_in_the_wrong_part_is_noticed() {
        let all = LATER.concat();
        assert_eq!(held_apart(b"first", all.as_bytes()), Ok(()));
        assert!(held_apart(LATER[1].as_bytes(), all.as_bytes()).is_err());
        assert!(held_apart(b"first", LATER[..3].concat().as_bytes()).is_err());
    }

    #[test]
    fn what_is_heavy_is_noticed() {
        assert_eq!(without_heavy(b"linkwright core3num4flt2"), Ok(()));
        for (name, how) in HEAVY {
            assert_eq!(without_heavy(format!("linkwright core{name}3fmt").as_bytes()), Err(how.to_owned()));
        }
        assert!(without_heavy(b"core3num4flt2").is_err(), "a program without names tells nothing");
    }

    #[test]
    fn the_glue_brings_the_second_part_itself() -> Outcome {
        let bound = "import * as import1 from \"./rest.js\"\nlet wasm;\ngo({\n\"./rest.js\": import1,\n});\n\
                     function __wbg_finalize_init(instance, module) {}\nasync function __wbg_load(module) { fetch(); }\n\
                     export { initSync, __wbg_init as default };\n";
        let glue = joined(bound)?;
        assert!(!glue.contains("import ") && !glue.contains("fetch(") && !glue.contains("default"), "{glue}");
        assert!(glue.ends_with("export { start, whole };\n"), "{glue}");
        assert!(glue.contains("__wasm_split_load_rest: addRest") && glue.contains("function addRest("), "{glue}");
        assert!(joined("let wasm;").is_err(), "another way of writing is noticed");
        Ok(())
    }
}
