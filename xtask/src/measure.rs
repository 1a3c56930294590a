//! `cargo xtask measure`: the page on a slow phone, beside the least page of its framework.

use crate::run::{cargo, run, step};
use crate::{Outcome, build, files, root, split, tools};
use std::path::PathBuf;

/// The HTML of the least page.
const LEAST: &str = r#"<!DOCTYPE html>
<html lang="en"><head><meta charset="utf-8"><title>The least page</title>
<meta name="viewport" content="width=device-width, initial-scale=1">
<link rel="modulepreload" href="minimal.js"><link rel="preload" href="minimal_bg.wasm" as="fetch" type="application/wasm" crossorigin>
<script type="module" src="start.js"></script></head><body></body></html>
"#;

/// Builds both pages and measures them.
pub fn measure() -> Outcome {
    build::build()?;
    let least = least()?;
    let driver = tools::browser()?;
    let mut tests = cargo(&["test", "--locked", "--workspace", "--features", "xtask/journeys", "--test", "measure"]);
    tests.env("LINKWRIGHT_DIST", build::dist()).env("LINKWRIGHT_LEAST", least).env("CHROMEDRIVER", driver);
    run(&mut tests, "the measuring stopped: see its message above")
}

/// The least page, built for release with the same settings.
fn least() -> Outcome<PathBuf> {
    let folder = root().join("target").join("least");
    let wasm = tools::release_folder().join("examples").join("minimal.wasm");
    step("least", "the least page", || {
        let mut cargo = cargo(&["build", "--locked", "--release", "--target", tools::WASM, "--example", "minimal"]);
        run(&mut cargo, "the least page does not build: fix what the compiler says above")?;
        files::empty(&folder)?;
        split::bind(&wasm, &folder)?;
        files::write(&folder, "index.html", LEAST.as_bytes())?;
        files::write(&folder, "start.js", b"import start from './minimal.js';\nstart();\n")
    })?;
    build::print_sizes(&folder)?;
    Ok(folder)
}
