//! `cargo xtask build | serve | test | measure`: see [`HELP`].

use std::process::ExitCode;
use xtask::{Outcome, build, measure, serve, suite};

const HELP: &str = "\
cargo xtask build    build the page for release into dist/ and print its size
cargo xtask serve    build, then serve the page on this computer
    --port N             first port to try (8080)
    --host ADDRESS       0.0.0.0 also lets a phone on the same network in (127.0.0.1)
    --open-fragment F    the second address printed opens at this share link instead of the worked example
    --no-build           serve dist/ as it is
cargo xtask test     run everything: formatting, lints, native, web and browser tests
    --only GROUP         one of: native, lint, web, journeys
cargo xtask measure  time the page on a slow phone, beside the least page of its framework

Each installs what it misses: the compiler's wasm32 target, Trunk and the wasm-bindgen tools
(into the user's cache folder), and for tests Chromium with its driver (with apt-get).";

fn main() -> ExitCode {
    let words: Vec<String> = std::env::args().skip(1).collect();
    match run(&mut Words(words.iter())) {
        Ok(()) => ExitCode::SUCCESS,
        Err(sentence) => {
            eprintln!("error: {sentence}");
            ExitCode::FAILURE
        }
    }
}

fn run(words: &mut Words) -> Outcome {
    match words.next().unwrap_or("help") {
        "help" | "--help" | "-h" => {
            println!("{HELP}");
            Ok(())
        }
        "build" => {
            words.end()?;
            build::build()
        }
        "serve" => serve::serve(&serve_options(words)?),
        "test" => suite::test(only_group(words)?),
        "measure" => {
            words.end()?;
            measure::measure()
        }
        other => Err(unknown(other)),
    }
}

fn serve_options(words: &mut Words) -> Outcome<serve::Options> {
    let mut options = serve::Options::default();
    while let Some(word) = words.next() {
        match word {
            "--port" => options.port = words.parsed("--port")?,
            "--host" => options.host = words.parsed("--host")?,
            "--open-fragment" => options.fragment = words.value("--open-fragment")?.to_owned(),
            "--no-build" => options.build = false,
            other => return Err(unknown(other)),
        }
    }
    Ok(options)
}

fn only_group<'a>(words: &mut Words<'a>) -> Outcome<Option<&'a str>> {
    let mut group = None;
    while let Some(word) = words.next() {
        match word {
            "--only" => group = Some(words.value("--only")?),
            other => return Err(unknown(other)),
        }
    }
    Ok(group)
}

fn unknown(word: &str) -> String {
    format!("`{word}` is not known here: see `cargo xtask help`")
}

/// The words of the command line, taken one by one.
struct Words<'a>(std::slice::Iter<'a, String>);

impl<'a> Words<'a> {
    fn next(&mut self) -> Option<&'a str> {
        self.0.next().map(String::as_str)
    }

    fn value(&mut self, option: &str) -> Outcome<&'a str> {
        self.next().ok_or_else(|| format!("`{option}` needs a value: see `cargo xtask help`"))
    }

    /// A port or an address: anything that reads itself from text.
    fn parsed<T: std::str::FromStr>(&mut self, option: &str) -> Outcome<T> {
        let text = self.value(option)?;
        text.parse().map_err(|_| format!("`{option} {text}` cannot be read: see `cargo xtask help`"))
    }

    fn end(&mut self) -> Outcome {
        self.next().map_or(Ok(()), |word| Err(unknown(word)))
    }
}
