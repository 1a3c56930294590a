//! Reading and writing files; what goes wrong is said with the file's name.

use crate::Outcome;
use std::fs;
use std::io;
use std::path::{Path, PathBuf};

/// Reads a file.
pub fn read(file: &Path) -> Outcome<Vec<u8>> {
    fs::read(file).map_err(|reason| format!("{} cannot be read ({reason})", file.display()))
}

/// Reads a file of text.
pub fn read_text(file: &Path) -> Outcome<String> {
    fs::read_to_string(file).map_err(|reason| format!("{} cannot be read ({reason})", file.display()))
}

/// Writes a file into a folder.
pub fn write(folder: &Path, name: &str, bytes: &[u8]) -> Outcome {
    let file = folder.join(name);
    fs::write(&file, bytes).map_err(|reason| format!("{} cannot be written ({reason})", file.display()))
}

/// Makes a folder, or empties it.
pub fn empty(folder: &Path) -> Outcome {
    // Where there is none, there is nothing to remove.
    let _ = fs::remove_dir_all(folder);
    fs::create_dir_all(folder).map_err(|reason| format!("{} cannot be made ({reason})", folder.display()))
}

/// The files in a folder, in the order of their names.
pub fn list(folder: &Path) -> Outcome<Vec<PathBuf>> {
    let paths = || -> io::Result<Vec<PathBuf>> { fs::read_dir(folder)?.map(|entry| Ok(entry?.path())).collect() };
    let mut paths = paths().map_err(|reason| format!("{} cannot be listed ({reason})", folder.display()))?;
    paths.sort();
    Ok(paths)
}
