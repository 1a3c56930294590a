//! The service worker: src/shell/worker.js with the list of a built folder's files.

use crate::policy::HEADERS;
use crate::{Outcome, digest, dress};
use std::fs;
use std::path::Path;

/// The worker's own file, which the browser keeps by itself.
pub const WORKER: &str = "sw.js";

const CODE: &str = include_str!("../../src/shell/worker.js");

/// Writes the worker of the build in a folder. Its version is the content of all files.
pub fn write(folder: &Path) -> Outcome {
    let broken = |reason: std::io::Error| format!("{} cannot be listed ({reason})", folder.display());
    let mut files = Vec::new();
    for entry in fs::read_dir(folder).map_err(broken)? {
        let entry = entry.map_err(broken)?;
        let name = entry.file_name().to_string_lossy().into_owned();
        if name == WORKER || name == HEADERS {
            continue;
        }
        let bytes = fs::read(entry.path()).map_err(broken)?;
        // Hosts answer for the folder itself, and some of them lead from the page's file to it.
        let name = if name == "index.html" { "./".to_owned() } else { name };
        files.push((name, digest::integrity(&bytes)));
    }
    files.sort();
    dress::write(folder, WORKER, worker(&files).as_bytes())
}

fn worker(files: &[(String, String)]) -> String {
    let list: Vec<String> = files.iter().map(|(name, integrity)| format!("['{name}', '{integrity}']")).collect();
    let list = format!("[\n{}\n]", list.join(",\n"));
    let version = digest::mark(list.as_bytes());
    dress::bare_script(CODE).replacen("/* files */", &list, 1).replacen("/* version */", &version, 1)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn another_byte_makes_another_worker() {
        let file = |bytes: &[u8]| [("a.js".to_owned(), digest::integrity(bytes))];
        let (one, other) = (worker(&file(b"1")), worker(&file(b"2")));
        assert!(one.contains("['a.js', 'sha256-"), "{one}");
        assert!(!one.contains("/*"), "nothing is left to be filled in: {one}");
        let version = |text: &str| text.lines().find(|line| line.starts_with("const CACHE")).map(str::to_owned);
        assert_ne!(version(&one), version(&other));
    }
}
