//! `cargo xtask measure`: the page on a slow phone, beside the least page of its framework.

use crate::run::{cargo, run, step};
use crate::{Outcome, build, dress, root, split, tools};
use std::path::PathBuf;

/// What stands around the least page's program.
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
    let wasm = root().join("target/wasm32-unknown-unknown/release/examples/minimal.wasm");
    step("least", "the least page", || {
        let mut made =
            cargo(&["build", "--locked", "--release", "--target", "wasm32-unknown-unknown", "--example", "minimal"]);
        run(&mut made, "the least page does not build: mend what the compiler says above")?;
        dress::empty(&folder)?;
        split::bind(&wasm, &folder)?;
        dress::write(&folder, "index.html", LEAST.as_bytes())?;
        dress::write(&folder, "start.js", b"import start from './minimal.js';\nstart();\n")
    })?;
    build::print_sizes(&folder)?;
    Ok(folder)
}
