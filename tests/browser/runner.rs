//! Runs the journeys, two at a time, and reports them the way cargo's own test runner does.

use crate::driver::Driver;
use crate::page::Page;
use std::backtrace::Backtrace;
use std::collections::HashMap;
use std::path::{Path, PathBuf};
use std::pin::Pin;
use std::process::ExitCode;
use std::rc::Rc;
use std::sync::{Mutex, PoisonError};
use std::time::{Duration, Instant};
use tokio::task::{Id, JoinError, JoinSet, LocalSet, spawn_local};
use tokio::time::timeout;

const AT_ONCE: usize = 2;
const PATIENCE: Duration = Duration::from_secs(60);
const ENOUGH: Duration = Duration::from_secs(10);

/// A journey's function, in a box.
pub(crate) type Go = fn(Rc<Page>) -> Pin<Box<dyn Future<Output = ()>>>;

pub(crate) struct Journey {
    pub(crate) name: &'static str,
    pub(crate) go: Go,
}

/// The list of journeys from the names of their functions.
macro_rules! journeys {
    ($($name:path),* $(,)?) => {
        [$($crate::runner::Journey {
            name: stringify!($name),
            go: |page| Box::pin(async move { $name(&page).await }),
        }),*]
    };
}
pub(crate) use journeys;

/// What panics said, by the task that they ended.
static PANICS: Mutex<Option<HashMap<Id, String>>> = Mutex::new(None);

pub(crate) fn run(all: &[Journey]) -> ExitCode {
    std::panic::set_hook(Box::new(note_panic));
    // One thread: each journey mostly waits for the browser.
    let runtime = tokio::runtime::Builder::new_current_thread().enable_all().build();
    match runtime.map(|it| LocalSet::new().block_on(&it, run_all(all))) {
        Ok(Ok(true)) => ExitCode::SUCCESS,
        Ok(Ok(false)) => ExitCode::FAILURE,
        Ok(Err(sentence)) => {
            eprintln!("error: {sentence}");
            ExitCode::FAILURE
        }
        Err(reason) => {
            eprintln!("error: the journeys cannot start: {reason}");
            ExitCode::FAILURE
        }
    }
}

/// Whether every chosen journey held.
async fn run_all(all: &[Journey]) -> Result<bool, String> {
    let wanted: Vec<String> = std::env::args().skip(1).filter(|it| !it.starts_with('-')).collect();
    let chosen = all.iter().filter(|it| wanted.is_empty() || wanted.iter().any(|part| it.name.contains(part.as_str())));
    let mut waiting: Vec<&Journey> = chosen.collect();
    let filtered = all.len() - waiting.len();
    waiting.reverse();
    let dist = std::env::var_os("LINKWRIGHT_DIST").map_or_else(xtask::build::dist, PathBuf::from);
    if !dist.join("index.html").is_file() {
        return Err("there is no page in dist/ yet: run `cargo xtask build`".to_owned());
    }
    let start = Instant::now();
    println!("\nrunning {} journeys", waiting.len());
    let driver = Rc::new(Driver::start(true).await?);
    let mut running = JoinSet::new();
    let mut failures: Vec<String> = Vec::new();
    let mut passed = 0;
    let go_through = async {
        loop {
            while running.len() < AT_ONCE
                && let Some(next) = waiting.pop()
            {
                running.spawn_local(run_one(next.name, next.go, Rc::clone(&driver), dist.clone()));
            }
            match running.join_next().await {
                None => break,
                Some(Ok(None)) => passed += 1,
                Some(Ok(Some(failure))) => failures.push(failure),
                Some(Err(reason)) => failures.push(explain(&reason)),
            }
        }
    };
    let interrupted = tokio::select! {
        () = go_through => false,
        () = asked_to_stop() => true,
    };
    running.shutdown().await;
    if let Ok(driver) = Rc::try_unwrap(driver) {
        driver.stop().await;
    }
    if interrupted {
        return Err("interrupted before the last journey's end: run it again".to_owned());
    }
    for failure in &failures {
        println!("\n---- {failure}");
    }
    let word = if failures.is_empty() { "ok" } else { "FAILED" };
    println!(
        "\ntest result: {word}. {passed} passed; {} failed; 0 ignored; 0 measured; {filtered} filtered out; finished in {:.2}s\n",
        failures.len(),
        start.elapsed().as_secs_f64()
    );
    Ok(failures.is_empty())
}

/// One journey from its browser's start to its end; what went wrong, if anything did.
async fn run_one(name: &'static str, go: Go, driver: Rc<Driver>, dist: PathBuf) -> Option<String> {
    let start = Instant::now();
    let mut trouble = match timeout(PATIENCE, Page::new(&driver, &dist)).await {
        Err(_) => Some("the browser does not start".to_owned()),
        Ok(Err(reason)) => Some(reason),
        Ok(Ok(page)) => {
            let page = Rc::new(page);
            let mut task = spawn_local(go(Rc::clone(&page)));
            let mut trouble = match timeout(PATIENCE, &mut task).await {
                Ok(Ok(())) => timeout(ENOUGH, page.leftovers())
                    .await
                    .unwrap_or_else(|_| Some("the browser no longer answers".to_owned())),
                Ok(Err(reason)) => Some(explain(&reason)),
                Err(_) => {
                    task.abort();
                    Some(format!("not at its end after {} s", PATIENCE.as_secs()))
                }
            };
            // A browser that hangs must not hang the run: chromedriver ends it at the end.
            if let Some(text) = &mut trouble {
                let picture = format!("FAILED-{}", name.replace("::", "-"));
                let look = timeout(ENOUGH, page.last_look(&picture)).await;
                text.push_str(&look.unwrap_or_default());
            }
            let _ = timeout(ENOUGH, page.close()).await;
            trouble
        }
    };
    let word = if trouble.is_none() { "ok" } else { "FAILED" };
    println!("test {name} ... {word} ({:.1} s)", start.elapsed().as_secs_f64());
    if let Some(text) = &mut trouble {
        text.insert_str(0, &format!("{name}\n"));
    }
    trouble
}

/// Keeps a panic's text and the lines of the journey that led to it.
fn note_panic(panic: &std::panic::PanicHookInfo<'_>) {
    let payload = panic.payload();
    let text = payload.downcast_ref::<String>().map(String::as_str);
    let text = text.or_else(|| payload.downcast_ref::<&str>().copied()).unwrap_or("a panic without text");
    let trace = Backtrace::force_capture().to_string();
    let mut places: Vec<&str> = trace
        .lines()
        .filter_map(|line| line.trim().strip_prefix("at "))
        .filter(|place| place.contains("tests/browser/"))
        .filter(|place| !place.contains("/page") && !place.contains("/runner.rs"))
        .filter_map(|place| Path::new(place).file_name()?.to_str())
        .collect();
    places.dedup();
    let own = panic.location().map(|it| format!("{}:{}", it.file(), it.line())).unwrap_or_default();
    let text = match places.first() {
        // The journeys! macro's own line says nothing.
        Some(_) if places.len() > 1 => format!("{text}\n  in {}", places[..places.len() - 1].join(", called from ")),
        Some(place) => format!("{text}\n  in {place}"),
        None => format!("{text}\n  in {own}"),
    };
    match tokio::task::try_id() {
        Some(id) => {
            let mut panics = PANICS.lock().unwrap_or_else(PoisonError::into_inner);
            panics.get_or_insert_default().insert(id, text);
        }
        None => eprintln!("{text}"),
    }
}

fn explain(reason: &JoinError) -> String {
    let mut panics = PANICS.lock().unwrap_or_else(PoisonError::into_inner);
    panics.as_mut().and_then(|it| it.remove(&reason.id())).unwrap_or_else(|| reason.to_string())
}

/// Ends when someone presses Ctrl-C or ends the process politely.
async fn asked_to_stop() {
    #[cfg(unix)]
    {
        use tokio::signal::unix::{SignalKind, signal};
        if let Ok(mut end) = signal(SignalKind::terminate()) {
            tokio::select! {
                _ = end.recv() => {}
                _ = tokio::signal::ctrl_c() => {}
            }
            return;
        }
    }
    let _ = tokio::signal::ctrl_c().await;
}
