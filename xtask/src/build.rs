//! `cargo xtask build`: the page as a reader gets it, in dist/ and as one file in dist-single/.

use crate::dress::{self, Built};
use crate::run::{cargo, program, run, step};
use crate::{Outcome, root, split, tools};
use std::fs;
use std::path::{Path, PathBuf};

/// Where the built page is.
#[must_use]
pub fn dist() -> PathBuf {
    root().join("dist")
}

/// Where the page in one file is.
#[must_use]
pub fn dist_single() -> PathBuf {
    root().join("dist-single")
}

/// Installs what is missing, builds, and says what came out.
pub fn build() -> Outcome {
    release()?;
    print_sizes(&dist())?;
    print_sizes(&dist_single())
}

/// Builds the page for release into [`dist`] and [`dist_single`].
pub fn release() -> Outcome {
    tools::wasm_target()?;
    // Trunk works offline, and asks cargo about the whole workspace on every system: fetch all.
    step("fetch", "cargo fetch --locked", || {
        run(
            &mut cargo(&["fetch", "--locked", "--quiet"]),
            "`cargo fetch --locked` failed: check the network, or run `cargo update --workspace` if Cargo.lock is out of date",
        )
    })?;
    let folders = [tools::trunk()?, tools::wasm_bindgen()?];
    step("build", "trunk build --release", || {
        let mut trunk = program(folders[0].join("trunk"), &["build", "--release", "--offline", "--features", "cut"]);
        trunk.env("PATH", tools::path_with(&folders)?);
        // Where the next step looks.
        trunk.env("CARGO_TARGET_DIR", root().join("target"));
        trunk.env("CARGO_ENCODED_RUSTFLAGS", flags());
        // By its names the program is cut in two; then they go.
        trunk.env("CARGO_PROFILE_RELEASE_STRIP", "none");
        // Trunk stops at NO_COLOR=1: it reads the variable as the word true or false.
        trunk.env_remove("NO_COLOR");
        run(&mut trunk, "the page does not build: mend what the compiler says above")
    })?;
    // What Trunk bound is whole; only the page around it is taken from there.
    dress::dress(&Built::read(&dress::raw(), split::split(&split::linked())?)?, &dist(), &dist_single())
}

/// What the compiler is told beside the profile, whatever it is told elsewhere on this machine.
fn flags() -> String {
    // Who calls whom stays written in the program, so that it can be cut in two.
    let mut flags = vec!["-Clink-arg=--emit-relocs".to_owned()];
    // The same program wherever it is built: no folder of this machine is in it.
    let home = std::env::var_os("CARGO_HOME").map(PathBuf::from);
    let home = home.or_else(|| Some(PathBuf::from(std::env::var_os("HOME")?).join(".cargo")));
    let folders = [(home.map(|home| home.join("registry").join("src")), "crates"), (Some(root()), ".")];
    for (folder, name) in folders {
        flags.extend(folder.map(|folder| format!("--remap-path-prefix={}={name}", folder.display())));
    }
    flags.join("\u{1f}")
}

/// Every file with its size as it is and as a host sends it.
pub fn print_sizes(dist: &Path) -> Outcome {
    let mut files = Vec::new();
    list(dist, &mut files)
        .map_err(|reason| format!("{} cannot be read ({reason}): run `cargo xtask build` again", dist.display()))?;
    files.sort();
    let mut total = (0, 0);
    println!("{:>12} {:>12}", "bytes", "with brotli");
    for file in &files {
        let bytes = dress::read(file)?;
        let small = compressed_size(&bytes).min(bytes.len());
        let name = file.strip_prefix(dist).unwrap_or(file);
        println!("{:>12} {:>12}  {}", bytes.len(), small, name.display());
        total = (total.0 + bytes.len(), total.1 + small);
    }
    println!("{:>12} {:>12}  in all, in {}", total.0, total.1, dist.display());
    Ok(())
}

/// The size with brotli at its best, as hosts prepare files that stay as they are.
fn compressed_size(bytes: &[u8]) -> usize {
    let mut small = Vec::new();
    // Neither a slice nor a Vec can fail to be read or written.
    let _ = brotli::BrotliCompress(&mut &bytes[..], &mut small, &Default::default());
    small.len()
}

fn list(folder: &Path, into: &mut Vec<PathBuf>) -> std::io::Result<()> {
    for entry in fs::read_dir(folder)? {
        let path = entry?.path();
        if path.is_dir() {
            list(&path, into)?;
        } else {
            into.push(path);
        }
    }
    Ok(())
}
