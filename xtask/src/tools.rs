//! What the project needs beyond rustup's Rust, and how each part gets onto a machine.

use crate::run::{cargo, on_path, program, run, step};
use crate::{Outcome, root};
use std::env;
use std::ffi::OsString;
use std::fs;
use std::io::IsTerminal;
use std::path::{Path, PathBuf};
use std::process::{Command, Stdio};

/// The target that browsers run.
pub const WASM: &str = "wasm32-unknown-unknown";

/// Where cargo leaves what it built for browsers and for release.
#[must_use]
pub fn release_folder() -> PathBuf {
    root().join("target").join(WASM).join("release")
}

/// Trunk's later releases ask for a newer compiler than this project does.
const TRUNK: &str = "0.21.14";

/// Makes sure that the compiler can build for the browser.
pub fn wasm_target() -> Outcome {
    if has_wasm_target() {
        return Ok(());
    }
    let fix = format!("run `rustup target add {WASM}`, or install your Rust's package for that target");
    step("target", &format!("rustup target add {WASM}"), || {
        run(&mut program("rustup", &["target", "add", WASM]), &fix)
    })?;
    if has_wasm_target() { Ok(()) } else { Err(fix) }
}

fn has_wasm_target() -> bool {
    let mut ask = program("rustc", &["--print", "target-libdir", "--target", WASM]);
    let answer = ask.stderr(Stdio::null()).output();
    answer.is_ok_and(|it| it.status.success() && Path::new(String::from_utf8_lossy(&it.stdout).trim()).is_dir())
}

/// The folder that holds Trunk, installed if need be.
pub fn trunk() -> Outcome<PathBuf> {
    // Without default features Trunk has no downloader (and no TLS to build): nothing is missed.
    installed(&["trunk"], "trunk", TRUNK, &["--no-default-features"], "2 to 4 minutes")
}

/// The folder that holds wasm-bindgen and its test runner, at exactly the version the project is
/// locked to: the two speak a format that changes with every release.
pub fn wasm_bindgen() -> Outcome<PathBuf> {
    let version = locked("wasm-bindgen")?;
    let tools = ["wasm-bindgen", "wasm-bindgen-test-runner"];
    installed(&tools, "wasm-bindgen-cli", &version, &[], "1 to 2 minutes")
}

/// PATH with these folders in front.
pub fn path_with(folders: &[PathBuf]) -> Outcome<OsString> {
    let old = env::var_os("PATH").unwrap_or_default();
    env::join_paths(folders.iter().cloned().chain(env::split_paths(&old)))
        .map_err(|reason| format!("PATH cannot be extended ({reason}): rename the folder it names"))
}

/// A crate's version in Cargo.lock.
fn locked(name: &str) -> Outcome<String> {
    let file = root().join("Cargo.lock");
    let text = fs::read_to_string(&file)
        .map_err(|reason| format!("Cargo.lock cannot be read ({reason}): run `cargo fetch`"))?;
    version_in_lock(&text, name)
        .ok_or_else(|| format!("Cargo.lock names no {name}: run `cargo fetch` and look at Cargo.toml"))
}

fn version_in_lock(lock: &str, name: &str) -> Option<String> {
    let wanted = format!("name = \"{name}\"");
    let mut lines = lock.lines().skip_while(|line| *line != wanted);
    let version = lines.nth(1)?.strip_prefix("version = \"")?.strip_suffix('"')?;
    Some(version.to_owned())
}

/// The folder of tools at an exact version: on PATH, in this project's cache, or put there now.
fn installed(tools: &[&str], package: &str, version: &str, flags: &[&str], time: &str) -> Outcome<PathBuf> {
    let home = cache()?;
    let bin = home.join("bin");
    let has = |folder: &Path| tools.iter().all(|tool| version_of(&folder.join(tool)).as_deref() == Some(version));
    let first = on_path(tools[0]);
    let candidates = first.iter().filter_map(|file| file.parent()).chain([bin.as_path()]);
    if let Some(folder) = candidates.into_iter().find(|folder| has(folder)) {
        return Ok(folder.to_path_buf());
    }
    fs::create_dir_all(&home)
        .map_err(|reason| format!("{} cannot be made ({reason}): set XDG_CACHE_HOME", home.display()))?;
    let wanted = format!("{package}@{version}");
    let what = format!("cargo install {wanted} into {} (once, {time})", home.display());
    let fix = format!(
        "`cargo install {wanted}` failed: see its message above, then run this again (it needs the crates registry and a C linker)"
    );
    step("install", &what, || {
        let mut install = cargo(&["install", &wanted, "--locked", "--force", "--debug", "--root"]);
        install.arg(&home).args(flags);
        if !std::io::stderr().is_terminal() {
            install.arg("--quiet");
        }
        // A debug build is made in a third of the time and does the same. Away from the project's
        // folder, and without its variables, nothing of the project's own settings reaches it.
        install.env("CARGO_PROFILE_DEV_DEBUG", "0").current_dir(&home);
        for name in ["CARGO_TARGET_DIR", "CARGO_BUILD_TARGET", "RUSTFLAGS"] {
            install.env_remove(name);
        }
        run(&mut install, &fix)
    })?;
    if has(&bin) { Ok(bin) } else { Err(fix) }
}

/// The second word of what `--version` prints.
fn version_of(file: &Path) -> Option<String> {
    let answer = Command::new(file).arg("--version").stdin(Stdio::null()).output().ok()?;
    let text = String::from_utf8_lossy(&answer.stdout).into_owned();
    text.split_whitespace().nth(1).map(str::to_owned)
}

/// Per user and not per checkout: every clone shares the tools.
fn cache() -> Outcome<PathBuf> {
    let folder = |name: &str| env::var_os(name).map(PathBuf::from).filter(|it| it.is_absolute());
    let base = folder("XDG_CACHE_HOME")
        .or_else(|| Some(folder("HOME").or_else(|| folder("USERPROFILE"))?.join(".cache")))
        .ok_or("no folder to keep tools in: set HOME or XDG_CACHE_HOME to an absolute path")?;
    Ok(base.join("linkwright").join("tools"))
}

/// The chromedriver to test with. Installs it and Chromium if need be.
pub fn browser() -> Outcome<PathBuf> {
    if let Some(driver) = find_browser() {
        return Ok(driver);
    }
    let fix = "install Chromium and its chromedriver so that both are on PATH (Debian: apt-get install chromium chromium-driver)";
    if on_path("apt-get").is_none() {
        return Err(fix.to_owned());
    }
    step("install", "apt-get install chromium chromium-driver (once, 1 to 2 minutes)", || {
        // Lists that cannot all be renewed may still hold what is wanted.
        let _ = run(&mut as_administrator(&["apt-get", "-qq", "update"]), fix);
        let words = ["apt-get", "-qq", "-y", "--no-install-recommends", "install"];
        // A font too: without any, text has no width and layouts are not what a reader sees.
        let packages = ["chromium", "chromium-driver", "fonts-dejavu-core"];
        let mut install = as_administrator(&words);
        // Another installation may be under way.
        install.args(["-o", "DPkg::Lock::Timeout=120"]).args(packages);
        run(&mut install, fix)
    })?;
    find_browser().ok_or_else(|| fix.to_owned())
}

fn find_browser() -> Option<PathBuf> {
    let driver = match env::var_os("CHROMEDRIVER") {
        Some(file) => Some(PathBuf::from(file)).filter(|file| file.is_file()),
        None => on_path("chromedriver"),
    }?;
    // On other systems browsers are not on PATH, and chromedriver knows where to look.
    let browsers = ["chromium", "chromium-browser", "google-chrome", "google-chrome-stable"];
    let found = !cfg!(target_os = "linux") || browsers.iter().any(|name| on_path(name).is_some());
    found.then_some(driver)
}

/// A command run as root: as it is, or through sudo, which may ask for a password at a terminal only.
fn as_administrator(words: &[&str]) -> Command {
    let user = program("id", &["-u"]).output();
    let root = user.is_ok_and(|it| it.stdout.trim_ascii() == b"0");
    let mut command = if root {
        program(words[0], &words[1..])
    } else {
        let mut sudo = program("sudo", if std::io::stdin().is_terminal() { &[] } else { &["-n"] });
        sudo.arg("DEBIAN_FRONTEND=noninteractive").args(words);
        sudo
    };
    command.env("DEBIAN_FRONTEND", "noninteractive");
    command
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_locked_version_is_found() {
        let lock = "[[package]]\nname = \"wasm-bindgen-futures\"\nversion = \"0.4.79\"\n\n\
                    [[package]]\nname = \"wasm-bindgen\"\nversion = \"0.2.129\"\nsource = \"x\"\n";
        assert_eq!(version_in_lock(lock, "wasm-bindgen").as_deref(), Some("0.2.129"));
        assert_eq!(version_in_lock(lock, "leptos"), None);
    }
}
