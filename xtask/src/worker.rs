//! The service worker: src/shell/worker.js with the list of the files in a built folder.

use crate::policy::HEADERS;
use crate::{Outcome, digest, files};
use std::path::Path;

/// The worker's own file, which the browser stores by itself.
pub const WORKER: &str = "sw.js";

const CODE: &str = include_str!("../../src/shell/worker.js");

/// Writes the worker of the build in a folder. Its version is the content of all files.
pub fn write(folder: &Path) -> Outcome {
    let mut hashes = Vec::new();
    for file in files::list(folder)? {
        let name = file.file_name().unwrap_or_default().to_string_lossy();
        let name = match name.as_ref() {
            WORKER | HEADERS => continue,
            // Hosts answer for the folder itself, and some of them lead from the page's file to it.
            "index.html" => "./".to_owned(),
            other => other.to_owned(),
        };
        hashes.push((name, digest::integrity(&files::read(&file)?)));
    }
    hashes.sort();
    files::write(folder, WORKER, worker(&hashes).as_bytes())
}

/// The worker's code for files of these names and hashes.
fn worker(hashes: &[(String, String)]) -> String {
    let list: Vec<String> = hashes.iter().map(|(name, integrity)| format!("['{name}', '{integrity}']")).collect();
    let list = format!("[\n{}\n]", list.join(",\n"));
    let version = digest::mark(list.as_bytes());
    CODE.replacen("/* files */", &list, 1).replacen("/* version */", &version, 1)
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
