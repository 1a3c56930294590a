//! Puts together what is published: a folder of files named by their content, and the same page in one file.

use crate::built::Built;
use crate::icons::{Icon, Purpose};
use crate::page::Page;
use crate::split::Split;
use crate::{Outcome, digest, files, policy, single, worker};
use std::path::Path;

const BOOT: &str = include_str!("../../src/shell/boot.js");
const FETCH_REST: &str = include_str!("../../src/shell/fetch_rest.js");
const LOAD: &str = include_str!("../../src/shell/load.js");
const OFFLINE: &str = include_str!("../../src/shell/offline.js");
const MANIFEST: &str = include_str!("../../src/shell/manifest.json");

/// Writes both products: a folder for a host, and a folder with one file to carry.
pub fn publish(built: &Built, dist: &Path, dist_single: &Path) -> Outcome {
    write_folder(built, dist)?;
    files::empty(dist_single)?;
    files::write(dist_single, single::NAME, single::file(built).as_bytes())
}

fn write_folder(built: &Built, dist: &Path) -> Outcome {
    files::empty(dist)?;
    let Split { glue, wasm, rest } = &built.program;
    // The glue knows the second part by name and hash; the page knows the glue and the first part so.
    let rest_name = content_name("linkwright-rest", rest, "wasm");
    let glue = glue.clone() + &fetching(FETCH_REST, &rest_name, rest);
    let glue_name = content_name("linkwright", glue.as_bytes(), "js");
    let wasm_name = content_name("linkwright", wasm, "wasm");
    let page = Page {
        links: links(&glue_name, &glue),
        early_script: Some(fetching(LOAD, &wasm_name, wasm)),
        start_script: [OFFLINE, BOOT].concat(),
        ..Page::default()
    };
    let html = page.html(built);
    let icon = Icon::read(&built.icon)?;

    // Browsers may store these for good: other bytes would have another name.
    let lasting: [(&str, &[u8]); 3] = [(&glue_name, glue.as_bytes()), (&wasm_name, wasm), (&rest_name, rest)];
    let changing: [(&str, &[u8]); 6] = [
        ("index.html", html.as_bytes()),
        ("linkwright.webmanifest", MANIFEST.as_bytes()),
        ("icon.svg", built.icon.as_bytes()),
        ("icon-192.png", &icon.png(192, Purpose::Any)?),
        ("icon-512.png", &icon.png(512, Purpose::Any)?),
        ("icon-maskable-512.png", &icon.png(512, Purpose::Maskable)?),
    ];
    for (name, bytes) in lasting.iter().chain(&changing) {
        files::write(dist, name, bytes)?;
    }
    // After all files that its list names.
    worker::write(dist)?;

    let lasting = lasting.map(|(name, _)| name);
    let changing: Vec<&str> = changing.iter().map(|(name, _)| *name).chain([worker::WORKER]).collect();
    let headers = policy::headers(&page.policy(built), &lasting, &changing);
    files::write(dist, policy::HEADERS, headers.as_bytes())
}

/// A file's name with the mark of its content.
fn content_name(start: &str, bytes: &[u8], ending: &str) -> String {
    format!("{start}-{}.{ending}", digest::mark(bytes))
}

/// A script that fetches a file, with the file's name and hash filled in.
fn fetching(script: &str, name: &str, bytes: &[u8]) -> String {
    let script = script.replacen("/* name */", name, 1);
    script.replacen("/* integrity */", &digest::integrity(bytes), 1)
}

fn links(glue_name: &str, glue: &str) -> String {
    let integrity = digest::integrity(glue.as_bytes());
    format!(
        "\n  <link rel=\"modulepreload\" href=\"{glue_name}\" integrity=\"{integrity}\">\
         \n  <link rel=\"manifest\" href=\"linkwright.webmanifest\">\
         \n  <link rel=\"icon\" type=\"image/svg+xml\" href=\"icon.svg\">\
         \n  <link rel=\"apple-touch-icon\" href=\"icon-192.png\">"
    )
}
