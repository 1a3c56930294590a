//! The project keeps its own rules: layers, names that must not appear, the developers' map.

#[path = "tidy/page.rs"]
mod page;

use std::collections::BTreeMap;
use std::fs;
use std::path::{Path, PathBuf};

/// The longest a file may be.
const MOST_LINES: usize = 450;

fn root() -> PathBuf {
    PathBuf::from(env!("CARGO_MANIFEST_DIR"))
}

/// Every Rust file under the given folders, as path from the root and text.
fn files(folders: &[&str]) -> BTreeMap<String, String> {
    fn walk(folder: &Path, found: &mut BTreeMap<String, String>) {
        for entry in fs::read_dir(folder).expect("a folder of the project") {
            let path = entry.expect("an entry of a folder").path();
            if path.is_dir() {
                walk(&path, found);
            } else if path.extension().is_some_and(|ending| ending == "rs") {
                let name = path.strip_prefix(root()).expect("below the root").to_string_lossy().replace('\\', "/");
                found.insert(name, fs::read_to_string(&path).expect("a text file"));
            }
        }
    }
    let mut found = BTreeMap::new();
    for folder in folders {
        walk(&root().join(folder), &mut found);
    }
    found
}

/// The page, which alone may know that it runs in a browser.
fn is_page(name: &str) -> bool {
    ["src/main.rs", "src/app", "src/browser"].iter().any(|start| name.starts_with(start))
}

/// A line without its comment.
fn code(line: &str) -> &str {
    line.split("//").next().unwrap_or_default()
}

/// Fails with every complaint at once.
fn none(told: &[String]) {
    assert!(told.is_empty(), "\n{}", told.join("\n"));
}

/// Complaints about names that stand in the code of files they must not stand in.
fn forbidden(names: &[&str], may: impl Fn(&str) -> bool) -> Vec<String> {
    let mut told = Vec::new();
    for (file, text) in files(&["src"]) {
        if may(&file) {
            continue;
        }
        for (number, line) in text.lines().enumerate() {
            for name in names.iter().filter(|name| code(line).contains(**name)) {
                told.push(format!("{file}:{}: {name}", number + 1));
            }
        }
    }
    told
}

#[test]
fn the_library_names_no_web_crate() {
    none(&forbidden(&["leptos", "web_sys", "wasm_bindgen", "js_sys"], is_page));
}

#[test]
fn the_library_has_no_clock_no_chance_no_panic() {
    let names = [
        "HashMap",
        "HashSet",
        "Instant",
        "SystemTime",
        "println!",
        "eprintln!",
        "unwrap(",
        "expect(",
        "panic!",
        "todo!",
        "unimplemented!",
        "unreachable!",
        "static mut",
        "thread_local!",
        "std::env",
        "std::fs",
    ];
    none(&forbidden(&names, is_page));
}

/// IEEE 754 leaves their last bits open, and the standard library takes them from the system: see `engine::math`.
#[test]
fn functions_that_differ_between_systems_come_from_one_place() {
    let names = [
        "sin", "cos", "tan", "sin_cos", "asin", "acos", "atan", "atan2", "sinh", "cosh", "tanh", "exp", "exp2",
        "exp_m1", "ln", "ln_1p", "log", "log2", "log10", "powi", "powf", "cbrt", "hypot",
    ];
    let calls: Vec<String> = names.iter().flat_map(|name| [format!(".{name}("), format!("f64::{name}")]).collect();
    let calls: Vec<&str> = calls.iter().map(String::as_str).collect();
    none(&forbidden(&calls, is_page));
    none(&forbidden(&["libm::"], |file| file == "src/engine/math.rs"));
}

#[test]
fn only_the_page_asks_where_it_runs() {
    none(&forbidden(&["target_arch"], is_page));
}

#[test]
fn every_file_starts_with_a_sentence() {
    let told: Vec<String> = files(&["src", "tests", "xtask/src"])
        .into_iter()
        .filter(|(_, text)| {
            let lines: Vec<&str> = text.lines().take_while(|line| line.starts_with("//!")).collect();
            let first = lines.split(|line| *line == "//!").next().unwrap_or_default().last().copied();
            !first.is_some_and(|line| line.len() > 8 && line.ends_with(['.', ':']))
        })
        .map(|(file, _)| format!("{file} does not start with a sentence"))
        .collect();
    none(&told);
}

/// Complaints about files that are longer than this.
fn longer_than(most: usize, folders: &[&str]) -> Vec<String> {
    files(folders)
        .into_iter()
        .map(|(file, text)| (file, text.lines().count()))
        .filter(|(_, lines)| *lines > most)
        .map(|(file, lines)| format!("{file} has {lines} lines; at most {most}"))
        .collect()
}

#[test]
fn no_file_is_too_long_to_read() {
    none(&longer_than(MOST_LINES, &["src", "tests", "xtask/src"]));
}

#[test]
fn no_file_knows_whose_computer_it_was_written_on() {
    // In pieces, so that this file does not complain about itself.
    let homes = ["home", "Users", "root", "tmp", "work"].map(|folder| format!("/{folder}/"));
    let mut told = Vec::new();
    for (file, text) in files(&["src", "tests", "xtask/src"]) {
        for (number, line) in text.lines().enumerate() {
            // Inside a longer path or an address the same letters mean something else.
            let home = |folder: &String| {
                line.match_indices(folder.as_str())
                    .any(|(at, _)| !line[..at].ends_with(|c: char| c.is_alphanumeric() || matches!(c, '.' | '_' | '-')))
            };
            if homes.iter().any(home) {
                told.push(format!("{file}:{}: {}", number + 1, line.trim()));
            }
        }
    }
    none(&told);
}

#[test]
fn every_file_is_on_the_map() {
    let Ok(text) = fs::read_to_string(root().join("DEVELOPERS.md")) else { return };
    let map = text.split("\n## ").find(|part| part.starts_with("Map")).expect("a map");
    let named: Vec<&str> = map.split('`').skip(1).step_by(2).collect();
    // A folder or a page named whole stands for what is in it.
    let listed = |file: &str| {
        let name = file.rsplit('/').next().unwrap_or_default();
        named.iter().any(|named| *named == file || *named == name || (named.ends_with('/') && file.starts_with(named)))
    };
    let told: Vec<String> = files(&["src", "tests", "xtask/src"])
        .into_keys()
        .filter(|file| !listed(file))
        .map(|file| format!("{file} is not on the map in DEVELOPERS.md"))
        .collect();
    none(&told);
}

#[test]
fn the_map_names_no_file_that_is_gone() {
    let Ok(text) = fs::read_to_string(root().join("DEVELOPERS.md")) else { return };
    let map = text.split("\n## ").find(|part| part.starts_with("Map")).expect("a map");
    let all = files(&["src", "tests", "xtask/src"]);
    let told: Vec<String> = map
        .split('`')
        .skip(1)
        .step_by(2)
        .filter(|named| named.ends_with(".rs"))
        .filter(|named| !all.keys().any(|file| file == named || file.ends_with(&format!("/{named}"))))
        .map(|named| format!("the map names {named}, which is not there"))
        .collect();
    none(&told);
}

/// Formulas worked out without a sheet leave no line for the reader; each file that does so is in the developers' table.
#[test]
fn what_is_computed_without_a_sheet_is_listed() {
    let Ok(text) = fs::read_to_string(root().join("DEVELOPERS.md")) else { return };
    let table = text.split("\n## ").find(|part| part.starts_with("Computed without a sheet")).expect("a table");
    let mut listed: BTreeMap<String, usize> = BTreeMap::new();
    for row in table.lines().filter(|line| line.starts_with("| `")) {
        let cells: Vec<&str> = row.split('|').map(str::trim).collect();
        assert!(cells.len() == 5 && cells[3].len() > 10, "{row} lacks its reason");
        listed.insert(cells[1].trim_matches('`').to_string(), cells[2].parse().expect("a count"));
    }
    let formulas = ["src/engine/formula.rs", "src/engine/formulas", "src/engine/reference"];
    let mut told = Vec::new();
    for (file, text) in files(&["src/engine"]) {
        if formulas.iter().any(|folder| file.starts_with(folder)) {
            continue;
        }
        let found: usize = text.lines().map(|line| code(line).matches(".value(&").count()).sum();
        let known = listed.remove(&file).unwrap_or(0);
        if found != known {
            told.push(format!(
                "{file} works out {found} formulas without a sheet; {known} are listed in DEVELOPERS.md"
            ));
        }
    }
    told.extend(listed.into_keys().map(|file| format!("{file} is listed but not there")));
    none(&told);
}

/// What each layer may name of the others. The engine's own files, last, may name all but what comes after them.
const LAYERS: [(&str, &[&str]); 30] = [
    ("quantity", &[]),
    ("source", &[]),
    ("document", &[]),
    ("engine::math", &[]),
    ("engine::notation", &["quantity", "engine::math"]),
    ("engine::sentence", &["quantity"]),
    ("engine::formula", &["quantity", "source", "engine::notation", "engine::sentence"]),
    ("engine::formulas", &["quantity", "source", "engine::formula", "engine::math"]),
    ("engine::roots", &[]),
    ("engine::stepped", &["engine::formulas", "engine::math", "engine::roots"]),
    ("engine::plastic", &["engine::math", "engine::roots"]),
    ("engine::reference", REFERENCE),
    (
        "engine::tables",
        &["quantity", "source", "document", "report", "engine::formula", "engine::formulas", "engine::math"],
    ),
    ("inputs", &["quantity", "document", "engine::tables"]),
    ("layouts", &["quantity", "document"]),
    ("report", &["quantity", "source", "document", "engine::formula", "engine::sentence", "engine::tables"]),
    ("share", &["quantity", "document", "inputs"]),
    ("log", &["quantity", "document"]),
    ("builds", &["quantity", "document", "inputs", "share", "log"]),
    ("differences", &["quantity", "document", "inputs"]),
    ("store", &["document", "share", "builds", "log"]),
    ("spreadsheet", &[]),
    ("shop", &["quantity", "source", "document", "spreadsheet", "engine::tables"]),
    ("engine", ENGINE),
    ("engine::shop", SHOP),
    ("engine::fitting", FITTING),
    ("engine::advice", ADVICE),
    ("present", PRESENT),
    ("app", PAGE),
    ("browser", PAGE),
];
const PRESENT: &[&str] = &[
    "quantity",
    "source",
    "document",
    "inputs",
    "layouts",
    "report",
    "share",
    "builds",
    "log",
    "differences",
    "store",
    "shop",
    "spreadsheet",
    "engine",
    "engine::shop",
    "engine::fitting",
    "engine::math",
    "engine::sentence",
    "engine::tables",
    "engine::formula",
    "engine::formulas",
    "engine::notation",
    "engine::reference",
];
/// The page takes what it shows from the library, under its own name: `linkwright::…`.
const PAGE: &[&str] = &["app", "browser"];
const REFERENCE: &[&str] =
    &["quantity", "source", "engine::formula", "engine::formulas", "engine::stepped", "engine::tables"];
const ENGINE: &[&str] = &[
    "quantity",
    "source",
    "document",
    "inputs",
    "report",
    "engine::math",
    "engine::sentence",
    "engine::formula",
    "engine::formulas",
    "engine::plastic",
    "engine::roots",
    "engine::stepped",
    "engine::tables",
];
/// Questions of a shop: they may ask the engine, and the engine never asks them.
const SHOP: &[&str] = &[
    "quantity",
    "source",
    "document",
    "inputs",
    "report",
    "share",
    "shop",
    "spreadsheet",
    "engine",
    "engine::math",
    "engine::sentence",
    "engine::formula",
    "engine::formulas",
    "engine::tables",
];
/// Questions of whoever fits a link: they may ask the engine, and the engine never asks them.
const FITTING: &[&str] = &[
    "quantity",
    "source",
    "document",
    "inputs",
    "report",
    "engine",
    "engine::math",
    "engine::sentence",
    "engine::formula",
    "engine::formulas",
    "engine::plastic",
    "engine::roots",
    "engine::tables",
];
/// Words about an answer, which know nothing of how it was found.
const ADVICE: &[&str] = &["document", "report", "engine::formula", "engine::sentence", "engine::tables"];
/// Files that are the engine itself.
const OWN: [&str; 19] = [
    "firmness",
    "adjustment",
    "engagement",
    "beyond",
    "bolt",
    "build",
    "checks",
    "cross_sections",
    "fitted",
    "geometry",
    "given",
    "habit",
    "loads",
    "metals",
    "plan",
    "profile",
    "rig",
    "sensitivity",
    "sizing",
];

/// The layer of a module path.
fn layer(path: &[&str]) -> String {
    match path {
        ["engine", second, ..] if OWN.contains(second) => "engine".to_string(),
        ["engine", second, ..] if second.starts_with(|c: char| c.is_lowercase()) => format!("engine::{second}"),
        [first, ..] => (*first).to_string(),
        [] => String::new(),
    }
}

/// The module paths that a line of a file names through `crate::` and `super::`.
fn named_by(line: &str, module: &[&str]) -> Vec<Vec<String>> {
    let mut found = Vec::new();
    for start in ["crate::", "super::"] {
        for (at, _) in line.match_indices(start) {
            if line[..at].ends_with("super::") {
                continue;
            }
            let mut path: Vec<String> = Vec::new();
            let mut rest = line[at..].trim_start_matches("crate::");
            if start == "super::" {
                let mut up = 0;
                while let Some(after) = rest.strip_prefix("super::") {
                    (rest, up) = (after, up + 1);
                }
                path = module[..module.len().saturating_sub(up)].iter().map(|part| (*part).to_string()).collect();
            }
            loop {
                let end = rest.find(|c: char| !(c.is_alphanumeric() || c == '_')).unwrap_or(rest.len());
                let (name, after) = rest.split_at(end);
                if name.is_empty() {
                    break;
                }
                path.push(name.to_string());
                match after.strip_prefix("::") {
                    Some(after) => rest = after,
                    None => break,
                }
            }
            found.push(path);
        }
    }
    found
}

/// `super::{a, b}` and `crate::{a::b, c}` on one line each, so that a path is read where it stands.
fn flattened(line: &str) -> Vec<String> {
    for start in ["super::{", "crate::{"] {
        if let Some((before, inside)) = line.split_once(start) {
            let prefix = start.trim_end_matches('{');
            let inside = inside.trim_end().trim_end_matches([';', '}']);
            return inside.split(',').map(|part| format!("{before}{prefix}{}", part.trim())).collect();
        }
    }
    vec![line.to_string()]
}

#[test]
fn no_layer_names_one_above_it() {
    let mut told = Vec::new();
    for (file, text) in files(&["src"]) {
        if file == "src/lib.rs" || file == "src/main.rs" {
            continue;
        }
        let inside = file.trim_start_matches("src/").trim_end_matches(".rs");
        let module: Vec<&str> = inside.split('/').collect();
        let own = layer(&module);
        let Some((_, allowed)) = LAYERS.iter().find(|(name, _)| *name == own) else {
            told.push(format!("{file}: {own} is no layer; add it to the table"));
            continue;
        };
        for (number, line) in text.lines().enumerate() {
            for path in flattened(code(line)).iter().flat_map(|line| named_by(line, &module)) {
                let path: Vec<&str> = path.iter().map(String::as_str).collect();
                let other = layer(&path);
                let within = other == own || allowed.contains(&other.as_str());
                let root = other.is_empty() || (own == "engine::formulas" && other == "engine");
                if !(within || root) {
                    told.push(format!("{file}:{}: {own} names {other}", number + 1));
                }
            }
        }
    }
    none(&told);
}
