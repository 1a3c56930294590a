//! Starts other programs, and counts the tests that their output reports.

use crate::{Outcome, root};
use std::ffi::OsStr;
use std::io::{self, BufRead, BufReader, Write};
use std::path::PathBuf;
use std::process::{Command, Stdio};
use std::time::{Duration, Instant};

/// Tests passed and failed.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub struct Tally {
    /// Tests that held.
    pub passed: u64,
    /// Tests that did not.
    pub failed: u64,
}

impl Tally {
    /// Adds another runner's counts.
    pub fn add(&mut self, other: Tally) {
        self.passed += other.passed;
        self.failed += other.failed;
    }

    /// The counts in one line of a test runner's output: cargo test, wasm-bindgen-test and the
    /// journeys all close with `test result: ok. 3 passed; 0 failed; ...`.
    #[must_use]
    pub fn of_line(line: &str) -> Option<Tally> {
        let (_, counts) = line.split_once("test result: ")?;
        let count = |word: &str| -> Option<u64> {
            let before = &counts[..counts.find(word)?];
            before.split_whitespace().last()?.parse().ok()
        };
        Some(Tally { passed: count(" passed")?, failed: count(" failed")? })
    }
}

/// A program started at the repository's top with no standard input, so that nothing waits for a key.
#[must_use]
pub fn program(name: impl AsRef<OsStr>, arguments: &[&str]) -> Command {
    let mut command = Command::new(name);
    command.args(arguments).current_dir(root()).stdin(Stdio::null());
    command
}

/// The cargo that runs this.
#[must_use]
pub fn cargo(arguments: &[&str]) -> Command {
    program(std::env::var_os("CARGO").unwrap_or_else(|| "cargo".into()), arguments)
}

/// Runs to the end with the output shown; `fix` is what to say when it fails.
pub fn run(command: &mut Command, fix: &str) -> Outcome {
    match command.status() {
        Ok(status) if status.success() => Ok(()),
        Ok(_) => Err(fix.to_owned()),
        Err(reason) => Err(cannot_start(command, &reason)),
    }
}

/// As [`run`], and adds the tests that the output reports to `tally`.
pub fn run_tests(command: &mut Command, tally: &mut Tally, fix: &str) -> Outcome {
    let mut child = command.stdout(Stdio::piped()).spawn().map_err(|reason| cannot_start(command, &reason))?;
    if let Some(output) = child.stdout.take() {
        let mut screen = io::stdout().lock();
        for line in BufReader::new(output).split(b'\n') {
            let line = line.map_err(|reason| format!("a test's output cannot be read: {reason}"))?;
            // A closed pipe (`| head`) is no reason to stop testing.
            let _ = screen.write_all(&line).and_then(|()| screen.write_all(b"\n"));
            let _ = screen.flush();
            if let Some(counts) = Tally::of_line(&String::from_utf8_lossy(&line)) {
                tally.add(counts);
            }
        }
    }
    match child.wait() {
        Ok(status) if status.success() => Ok(()),
        Ok(_) => Err(fix.to_owned()),
        Err(reason) => Err(cannot_start(command, &reason)),
    }
}

fn cannot_start(command: &Command, reason: &io::Error) -> String {
    let name = command.get_program().to_string_lossy();
    format!("`{name}` cannot be started ({reason}): install it or put it on PATH")
}

/// The first match for a program's name on PATH.
#[must_use]
pub fn on_path(name: &str) -> Option<PathBuf> {
    let name = format!("{name}{}", std::env::consts::EXE_SUFFIX);
    std::env::split_paths(&std::env::var_os("PATH")?).map(|folder| folder.join(&name)).find(|file| file.is_file())
}

/// `0.4 s`, `2 min 07 s`.
#[must_use]
pub fn seconds(time: Duration) -> String {
    if time.as_secs() < 60 {
        format!("{:.1} s", time.as_secs_f64())
    } else {
        format!("{} min {:02} s", time.as_secs() / 60, time.as_secs() % 60)
    }
}

/// Says what is about to be done, does it, and says how long it took.
pub fn step<T>(name: &str, what: &str, work: impl FnOnce() -> Outcome<T>) -> Outcome<T> {
    println!("==> {name}: {what}");
    let start = Instant::now();
    let done = work();
    let word = if done.is_ok() { "done" } else { "failed" };
    println!("    {name} {word} in {}", seconds(start.elapsed()));
    done
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_closing_line_is_counted() {
        let line = "test result: FAILED. 12 passed; 3 failed; 1 ignored; 0 measured; finished in 0.01s";
        assert_eq!(Tally::of_line(line), Some(Tally { passed: 12, failed: 3 }));
    }

    #[test]
    fn a_colored_closing_line_is_counted() {
        let line = "test result: \u{1b}[32mok\u{1b}[0m. 7 passed; 0 failed; 0 ignored";
        assert_eq!(Tally::of_line(line), Some(Tally { passed: 7, failed: 0 }));
    }

    #[test]
    fn other_lines_are_not_counted() {
        assert_eq!(Tally::of_line("test inputs::reads_fractions ... ok"), None);
        assert_eq!(Tally::of_line("12 passed, 0 failed"), None);
        assert_eq!(Tally::of_line("test result: nothing"), None);
    }

    #[test]
    fn times_read_well() {
        assert_eq!(seconds(Duration::from_millis(430)), "0.4 s");
        assert_eq!(seconds(Duration::from_secs(127)), "2 min 07 s");
    }
}
