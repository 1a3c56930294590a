//! `cargo xtask test`: everything that must hold, in order, stopping at the first step that fails.

use crate::run::{Tally, cargo, run, run_tests, seconds, step};
use crate::{Outcome, build, root, tools};
use std::time::{Duration, Instant};

/// One step: its name, what it does, the group that `--only` selects it by, and its work.
struct Step {
    name: &'static str,
    what: &'static str,
    group: &'static str,
    work: fn(&mut Tally) -> Outcome,
}

const STEPS: [Step; 7] = [
    Step { name: "format", what: "cargo fmt --check", group: "lint", work: format },
    Step { name: "lint", what: "clippy for this computer", group: "lint", work: lint },
    Step { name: "lint-web", what: "clippy for the browser", group: "lint", work: lint_web },
    Step { name: "native", what: "the engine's tests, and xtask's", group: "native", work: native },
    Step { name: "web", what: "components and tests/web.rs inside headless Chromium", group: "web", work: web },
    Step { name: "page", what: "the page built for release", group: "journeys", work: page },
    Step {
        name: "journeys",
        what: "tests/browser, a reader's ways through the built page",
        group: "journeys",
        work: journeys,
    },
];

/// Runs every step, or those of one group, and closes with the counts.
pub fn test(only: Option<&str>) -> Outcome {
    let chosen: Vec<&Step> = STEPS.iter().filter(|step| only.is_none_or(|group| step.group == group)).collect();
    if chosen.is_empty() {
        return Err("`--only` takes one of native, lint, web, journeys".to_owned());
    }
    let start = Instant::now();
    let mut tally = Tally::default();
    let mut times: Vec<(&str, Duration)> = Vec::new();
    let mut end = Ok(());
    for Step { name, what, work, .. } in chosen {
        let begun = Instant::now();
        end = step(name, what, || work(&mut tally));
        times.push((name, begun.elapsed()));
        if end.is_err() {
            break;
        }
    }
    println!();
    for (name, time) in times {
        println!("{name:>10} {:>12}", seconds(time));
    }
    println!("{:>10} {:>12}\n", "in all", seconds(start.elapsed()));
    if tally != Tally::default() {
        println!("{} passed, {} failed", tally.passed, tally.failed);
    }
    end
}

fn format(_: &mut Tally) -> Outcome {
    run(
        &mut cargo(&["fmt", "--all", "--check"]),
        "the formatting differs from rustfmt's: run `cargo fmt --all` (if rustfmt is missing: `rustup component add rustfmt`)",
    )
}

const CLIPPY: &str =
    "clippy has complaints: fix what it names above (if clippy is missing: `rustup component add clippy`)";

fn lint(_: &mut Tally) -> Outcome {
    // With the journeys, which a plain build leaves out.
    let what = ["--workspace", "--all-targets", "--features", "xtask/journeys"];
    run(cargo(&["clippy", "--locked"]).args(what).args(["--", "-D", "warnings"]), CLIPPY)
}

fn lint_web(_: &mut Tally) -> Outcome {
    tools::wasm_target()?;
    let what = ["--package", "linkwright", "--all-targets", "--target", tools::WASM];
    // In one part, as Trunk alone builds it, and cut in two.
    for features in [&[][..], &["--features", "cut"]] {
        run(cargo(&["clippy", "--locked"]).args(what).args(features).args(["--", "-D", "warnings"]), CLIPPY)?;
    }
    Ok(())
}

fn native(tally: &mut Tally) -> Outcome {
    run_tests(
        &mut cargo(&["test", "--locked", "--workspace", "--no-fail-fast"]),
        tally,
        "a native test failed: see its message above, and try it alone with `cargo test NAME`",
    )
}

fn web(tally: &mut Tally) -> Outcome {
    tools::wasm_target()?;
    let runner = tools::wasm_bindgen()?.join("wasm-bindgen-test-runner");
    let driver = tools::browser()?;
    let what = ["--bin", "linkwright", "--test", "web", "--no-fail-fast"];
    let mut tests = cargo(&["test", "--locked", "--package", "linkwright", "--target", tools::WASM]);
    tests.args(what);
    tests.env("CARGO_TARGET_WASM32_UNKNOWN_UNKNOWN_RUNNER", runner).env("CHROMEDRIVER", driver);
    tests.env("WASM_BINDGEN_TEST_WEBDRIVER_JSON", root().join("xtask/webdriver.json"));
    run_tests(
        &mut tests,
        tally,
        "a test in Chromium failed: see its message above, and run it again with `cargo xtask test --only web`",
    )
}

fn page(_: &mut Tally) -> Outcome {
    build::build()
}

fn journeys(tally: &mut Tally) -> Outcome {
    let driver = tools::browser()?;
    // The whole workspace, so that the crates built for the native tests are used again.
    let mut tests = cargo(&["test", "--locked", "--workspace", "--features", "xtask/journeys", "--test", "journeys"]);
    tests.env("LINKWRIGHT_DIST", build::dist()).env("CHROMEDRIVER", driver);
    run_tests(
        &mut tests,
        tally,
        "a browser journey failed: see its message above and its picture in target/screenshots",
    )
}
