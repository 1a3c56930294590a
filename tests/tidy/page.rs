//! Rules of the page: what its modules may name, no view that imports another, no import in a circle, short files.

use super::{code, files, flattened, forbidden, longer_than, named_by, none};
use std::collections::{BTreeMap, BTreeSet};

/// The longest a file of the page, and of what it shows and keeps, may be.
const MOST_LINES: usize = 300;

/// The folders of the views.
const VIEWS: [&str; 7] = ["size", "prove", "order", "make", "fit", "rig", "saved"];

/// What a view may import of the rest of `src/app`.
const SHARED: [&str; 8] = ["drawings", "entries", "fields", "formula", "mounted", "sending", "session", "shop"];

#[test]
fn only_the_browser_folder_touches_the_browser() {
    none(&forbidden(&["web_sys", "js_sys", "gloo_"], |file| file.starts_with("src/browser")));
}

#[test]
fn views_are_written_with_the_words_of_leptos() {
    let names = ["inner_html", "tachys::renderer", "Box<dyn", "query_selector", "get_element_by_id"];
    none(&forbidden(&names, |file| {
        // Waiting for a finger to be lifted asks itself again and again.
        !file.starts_with("src/app") || file == "src/app/session/typing.rs"
    }));
}

#[test]
fn files_of_the_page_are_short() {
    none(&longer_than(MOST_LINES, &["src/app", "src/present", "src/store", "src/browser"]));
}

/// Every module of `src/app` by its path, with the modules of `src/app` that it names.
fn imports() -> BTreeMap<Vec<String>, BTreeSet<Vec<String>>> {
    let files = files(&["src/app"]);
    let path_of = |file: &str| -> Vec<String> {
        let inside = file.trim_start_matches("src/").trim_end_matches(".rs");
        inside.split('/').map(str::to_string).collect()
    };
    let modules: BTreeSet<Vec<String>> = files.keys().map(|file| path_of(file)).collect();
    let mut imports = BTreeMap::new();
    for (file, text) in &files {
        let own = path_of(file);
        let module: Vec<&str> = own.iter().map(String::as_str).collect();
        let mut named = BTreeSet::new();
        for line in text.lines() {
            for mut path in flattened(code(line)).iter().flat_map(|line| named_by(line, &module)) {
                while !path.is_empty() && !modules.contains(&path) {
                    path.pop();
                }
                // What stands in the module around it, or in one inside it, is one house.
                if !path.is_empty() && !own.starts_with(&path) && !path.starts_with(&own) {
                    named.insert(path);
                }
            }
        }
        imports.insert(own, named);
    }
    imports
}

/// The folder or file of `src/app` that a module belongs to.
fn part(path: &[String]) -> &str {
    path.get(1).map_or("", String::as_str)
}

#[test]
fn no_view_imports_another() {
    let mut told = Vec::new();
    for (module, named) in imports() {
        let own = part(&module);
        for other in named.iter().map(|path| part(path)).filter(|other| *other != own) {
            if VIEWS.contains(&own) && !SHARED.contains(&other) {
                told.push(format!("{} names {other}", module.join("::")));
            }
        }
    }
    none(&told);
}

#[test]
fn no_module_of_the_page_imports_itself_in_a_circle() {
    // Between the parts of `src/app`, and between the files of each part.
    let mut edges: BTreeMap<String, BTreeSet<String>> = BTreeMap::new();
    for (module, named) in imports() {
        for other in named {
            let between_parts = part(&module) != part(&other);
            let (from, to) = if between_parts {
                (part(&module).to_string(), part(&other).to_string())
            } else {
                (module.join("::"), other.join("::"))
            };
            if !from.is_empty() && from != to {
                edges.entry(from).or_default().insert(to);
            }
        }
    }
    // What names nothing that is left can be in no circle.
    loop {
        let before = edges.len();
        let left: BTreeSet<String> = edges.keys().cloned().collect();
        edges.retain(|_, named| named.iter().any(|other| left.contains(other)));
        if edges.len() == before {
            break;
        }
    }
    let told: Vec<String> = edges
        .iter()
        .map(|(module, named)| format!("{module} is in a circle, or leads to one: it names {named:?}"))
        .collect();
    none(&told);
}
