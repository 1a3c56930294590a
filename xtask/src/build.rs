//! `cargo xtask build`: the page as it is published, in dist/ and as one file in dist-single/.

use crate::built::{self, Built};
use crate::run::{cargo, program, run, step};
use crate::{Outcome, files, publish, root, split, tools};
use std::path::{Path, PathBuf};

/// The folder of the built page.
#[must_use]
pub fn dist() -> PathBuf {
    root().join("dist")
}

/// The folder of the page in one file.
#[must_use]
pub fn dist_single() -> PathBuf {
    root().join("dist-single")
}

/// Installs what is missing, builds, and prints the sizes.
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
    step("build", "trunk build --release", || run_trunk(&folders))?;
    // Trunk binds the program without cutting it, so only the page around it is taken from there.
    let program = split::split(&tools::release_folder().join("linkwright.wasm"))?;
    let built = Built::read(&built::trunk_folder(), program)?;
    publish::publish(&built, &dist(), &dist_single())
}

/// Runs Trunk, the first of the tools in these folders.
fn run_trunk(folders: &[PathBuf; 2]) -> Outcome {
    let mut trunk = program(folders[0].join("trunk"), &["build", "--release", "--offline", "--features", "cut"]);
    trunk.env("PATH", tools::path_with(folders)?);
    // Where the next step looks, whatever folder is set on this machine.
    trunk.env("CARGO_TARGET_DIR", root().join("target"));
    trunk.env("CARGO_ENCODED_RUSTFLAGS", compiler_flags());
    // The cut needs the names of the functions, and leaves them out afterward.
    trunk.env("CARGO_PROFILE_RELEASE_STRIP", "none");
    // Trunk stops at NO_COLOR=1: it reads the variable as the word true or false.
    trunk.env_remove("NO_COLOR");
    run(&mut trunk, "the page does not build: fix what the compiler says above")
}

/// The compiler's flags beside the profile. They replace those that are set on this machine.
fn compiler_flags() -> String {
    // The cut needs to know which function calls which.
    let mut flags = vec!["-Clink-arg=--emit-relocs".to_owned()];
    // As .cargo/config.toml says, which is not read where flags are given.
    flags.extend(["--cfg", "erase_components"].map(str::to_owned));
    // No folder of this machine is in the program, which is then the same wherever it is built.
    let home = std::env::var_os("CARGO_HOME").map(PathBuf::from);
    let home = home.or_else(|| Some(PathBuf::from(std::env::var_os("HOME")?).join(".cargo")));
    let folders = [(home.map(|home| home.join("registry").join("src")), "crates"), (Some(root()), ".")];
    for (folder, name) in folders {
        flags.extend(folder.map(|folder| format!("--remap-path-prefix={}={name}", folder.display())));
    }
    // The separator that cargo asks for.
    flags.join("\u{1f}")
}

/// Prints every file of a folder with its size as it is and as a host sends it.
pub fn print_sizes(folder: &Path) -> Outcome {
    let (mut total, mut total_small) = (0, 0);
    println!("{:>12} {:>12}", "bytes", "with brotli");
    for file in files::list(folder)? {
        let bytes = files::read(&file)?;
        let small = compressed_size(&bytes).min(bytes.len());
        let name = file.strip_prefix(folder).unwrap_or(&file);
        println!("{:>12} {:>12}  {}", bytes.len(), small, name.display());
        total += bytes.len();
        total_small += small;
    }
    println!("{total:>12} {total_small:>12}  in all, in {}", folder.display());
    Ok(())
}

/// The size with brotli at its best, as hosts prepare files that stay as they are.
fn compressed_size(bytes: &[u8]) -> usize {
    let mut small = Vec::new();
    // Neither a slice nor a Vec can fail to be read or written.
    let _ = brotli::BrotliCompress(&mut &bytes[..], &mut small, &Default::default());
    small.len()
}
