//! How fast the page is on a slow phone, beside the least page of its framework: `cargo xtask measure`.
//!
//! It measures and fails nothing: a busy machine is no fault of the page. Medians of several visits, each
//! with a browser profile of its own.

mod driver;
mod page;

use driver::Driver;
use linkwright::engine;
use linkwright::share::from_fragment;
use page::{PHONE, Page};
use serde_json::{Value, json};
use std::path::{Path, PathBuf};
use std::process::ExitCode;
use std::time::{Duration, Instant};

/// Visits to each page.
const VISITS: usize = 5;

/// How often keys are pressed in each field, and how many: each time begins with another value than the one before ended
/// with. In parts, because a script may not run for long.
const PARTS: usize = 5;
const KEYS: usize = 39;

/// Two readings of “slow 4G”: the one that Chromium's own tools offer (each request waits 562.5 ms, as one over a line of
/// 150 ms does that is opened first), and that line without the opening. Milliseconds, bytes a second down and up.
const LINES: [(&str, [f64; 3]); 2] = [
    ("slow 4G of the browser's tools", [562.5, 180_000.0, 84_375.0]),
    ("1.6 Mbit/s with 150 ms", [150.0, 200_000.0, 93_750.0]),
];

/// One link with an answer.
const ONE: &str = "3&length=38in&weight=4100lb&use=hard&crc=6f47f8b8";

/// Eight links of different kinds, before their check.
const EIGHT: &str = "3&links=8&length=38in&2.length=36in&3.length=33.5in&4.length=48in&5.length=40in&6.length=12in&7.length=40.25in&8.length=34.5in&weight=4100lb&2.role=upper&3.role=track-bar&4.role=tie-rod&5.role=drag-link&6.role=sway-link&8.role=upper&7.axle=rear&8.axle=rear&use=hard";

/// Notes when the page first answers.
const WATCH: &str = "new MutationObserver((_, it) => {
    if (!document.documentElement?.hasAttribute('data-live')) return;
    window.liveAt = performance.now();
    it.disconnect();
}).observe(document, { subtree: true, attributes: true, childList: true })";

/// The rest between two keys, in ms; 0 is one frame. At a typist's pace, what follows after a key is done before the
/// next one. Without a rest, nothing is measured of a machine that takes memory back from programs that wait.
const PACES: [(&str, u32); 2] = [("one after the other", 0), ("at a typist's pace", 120)];

/// Types values into a field, or presses a button, and times each until the answer has changed.
const TYPE: &str = "const [id, values, count, pause] = arguments, it = document.getElementById(id), times = [];
    const step = () => new Promise(done => {
        const seen = new MutationObserver(() => { seen.disconnect(); done(performance.now() - start); });
        seen.observe(document.querySelector('#answer'), { subtree: true, childList: true, characterData: true });
        if (values.length) it.value = values[times.length % values.length];
        const start = performance.now();
        it.dispatchEvent(new Event(values.length ? 'input' : 'click', { bubbles: true }));
        setTimeout(() => done(NaN), 2000);
    });
    const frame = () => new Promise(done => requestAnimationFrame(() => {
        const shown = new MessageChannel();
        shown.port1.onmessage = done;
        shown.port2.postMessage(0);
    }));
    const rest = () => pause ? new Promise(done => setTimeout(done, pause)) : frame();
    return (async () => {
        // What it costs to be asked from outside is no part of a key.
        for (let first = 0; first < 5; first += 1) await rest();
        while (times.length < count) { times.push(await step()); await rest(); }
        return times;
    })();";

fn main() -> ExitCode {
    let runtime = tokio::runtime::Builder::new_current_thread().enable_all().build();
    let told = runtime.map_err(|reason| reason.to_string()).and_then(|it| {
        tokio::task::LocalSet::new().block_on(&it, async {
            let driver = Driver::start(false).await?;
            let told = all(&driver).await;
            driver.stop().await;
            told
        })
    });
    match told {
        Ok(()) => ExitCode::SUCCESS,
        Err(sentence) => {
            eprintln!("error: {sentence}");
            ExitCode::FAILURE
        }
    }
}

async fn all(driver: &Driver) -> Result<(), String> {
    let folder = |name: &str| std::env::var_os(name).map(PathBuf::from).ok_or("start it as `cargo xtask measure`");
    let (page, least) = (folder("LINKWRIGHT_DIST")?, folder("LINKWRIGHT_LEAST")?);
    for (line, rates) in LINES {
        println!("\nCPU 4 times slower, {line}; medians of {VISITS} visits, in ms");
        let mut live = Vec::new();
        for (name, folder) in [("the least page", &least), ("this page", &page)] {
            let (mut paints, mut lives) = (Vec::new(), Vec::new());
            for _ in 0..VISITS {
                let (paint, live) = visit(driver, folder, rates).await?;
                paints.push(paint);
                lives.push(live);
            }
            println!("{name:>24}: first paint {:>5.0}, answers {:>5.0}", share(&paints, 0.5), share(&lives, 0.5));
            live.push(share(&lives, 0.5));
        }
        println!("{:>24}: {:.2}", "ratio", live[1] / live[0]);
    }
    let again = again(driver, &page).await?;
    println!("{:>24}: answers {:>5.0}", "second visit, no network", share(&again, 0.5));
    let eight = linkwright::share::to_fragment(&from_fragment(EIGHT).document);
    for (pace, pause) in PACES {
        println!(
            "\nKey to changed answer at CPU 4 times slower, {} keys {pace}, in ms: median, 95th percentile",
            PARTS * KEYS
        );
        let least_press = keys(driver, &least, None, "more", &[], pause).await?;
        println!(
            "{:>25}: {:>6.1} {:>6.1}",
            "the least page, a press",
            share(&least_press, 0.5),
            share(&least_press, 0.95)
        );
        for (name, fragment) in [("one link", ONE), ("eight links", eight.as_str())] {
            for (id, values) in
                [("in-length", ["38.5", "39", "37", "36.5"]), ("in-weight", ["4150", "4000", "4200", "3900"])]
            {
                let times = keys(driver, &page, Some(fragment), id, &values, pause).await?;
                println!("{name:>14}, {id:<9}: {:>6.1} {:>6.1}", share(&times, 0.5), share(&times, 0.95));
            }
        }
    }
    println!("\nThe engine alone, natively, in ms: median of 50");
    for (name, fragment) in [("one link", ONE), ("eight links", eight.as_str())] {
        let document = from_fragment(fragment).document;
        let times: Vec<f64> = (0..50)
            .map(|_| {
                let start = Instant::now();
                let reports: Vec<_> =
                    (0..document.links.len()).map(|link| engine::report_on(&document, link)).collect();
                std::hint::black_box(engine::rig(&document, &reports));
                start.elapsed().as_secs_f64() * 1e3
            })
            .collect();
        println!("{name:>24}: {:.2}", share(&times, 0.5));
    }
    // What a pause in typing asks for beside it.
    let document = from_fragment(ONE).document;
    let times: Vec<f64> = (0..50)
        .map(|_| {
            let start = Instant::now();
            std::hint::black_box(engine::firmness(&document, 0));
            start.elapsed().as_secs_f64() * 1e3
        })
        .collect();
    println!("{:>24}: {:.2}", "how firm one link is", share(&times, 0.5));
    Ok(())
}

/// The value below which a share of the others lies.
fn share(values: &[f64], part: f64) -> f64 {
    let mut sorted: Vec<f64> = values.iter().copied().filter(|value| value.is_finite()).collect();
    sorted.sort_by(f64::total_cmp);
    let at = (part * sorted.len() as f64).ceil() as usize;
    sorted.get(at.saturating_sub(1)).copied().unwrap_or(f64::NAN)
}

async fn slow(page: &Page, [latency, down, up]: [f64; 3]) {
    let rates = json!({ "offline": false, "latency": latency, "downloadThroughput": down, "uploadThroughput": up });
    page.devtools("Network.enable", json!({})).await;
    page.devtools("Network.emulateNetworkConditions", rates).await;
    page.devtools("Emulation.setCPUThrottlingRate", json!({ "rate": 4 })).await;
}

/// Milliseconds until something is painted, and until the page answers.
async fn times(page: &Page, patience: Duration) -> (f64, f64) {
    // To ask a page on a slow phone how far it is keeps it from going on: so not before it should be done.
    tokio::time::sleep(patience).await;
    let start = Instant::now();
    loop {
        let code = "return [performance.getEntriesByName('first-contentful-paint')[0]?.startTime ?? null, window.liveAt ?? null]";
        let both = page.script(code, vec![]).await;
        if let (Some(paint), Some(live)) = (both[0].as_f64(), both[1].as_f64()) {
            return (paint, live);
        }
        if start.elapsed() > Duration::from_secs(20) {
            return (f64::NAN, f64::NAN);
        }
        tokio::time::sleep(Duration::from_millis(500)).await;
    }
}

async fn visit(driver: &Driver, folder: &Path, rates: [f64; 3]) -> Result<(f64, f64), String> {
    let page = Page::new(driver, folder).await?;
    page.before_everything(WATCH).await;
    slow(&page, rates).await;
    page.visit(PHONE, &page.address()).await;
    let times = times(&page, Duration::from_secs(5)).await;
    page.close().await;
    Ok(times)
}

/// A visitor who comes back where there is no network.
async fn again(driver: &Driver, folder: &Path) -> Result<Vec<f64>, String> {
    let page = Page::new(driver, folder).await?;
    page.before_everything(WATCH).await;
    page.open(PHONE, ONE).await;
    let ready = "return navigator.serviceWorker.ready.then(() => true)";
    page.script(ready, vec![]).await;
    page.stop_server();
    page.devtools("Emulation.setCPUThrottlingRate", json!({ "rate": 4 })).await;
    let mut all = Vec::new();
    for _ in 0..VISITS {
        // The visit before is over, and what it leaves to do is done.
        page.visit(PHONE, "about:blank").await;
        tokio::time::sleep(Duration::from_millis(500)).await;
        page.visit(PHONE, &format!("{}#{ONE}", page.address())).await;
        all.push(times(&page, Duration::from_secs(2)).await.1);
    }
    page.close().await;
    Ok(all)
}

async fn keys(
    driver: &Driver,
    folder: &Path,
    fragment: Option<&str>,
    id: &str,
    values: &[&str],
    pause: u32,
) -> Result<Vec<f64>, String> {
    let page = Page::new(driver, folder).await?;
    if let Some(fragment) = fragment {
        page.open(PHONE, fragment).await;
        // A whole rig opens where all of it is seen.
        page.click("#view-size").await;
        page.wait_text("#headline", |text| !text.is_empty()).await;
    } else {
        page.visit(PHONE, &page.address()).await;
        page.find("#more").await;
    }
    page.devtools("Emulation.setCPUThrottlingRate", json!({ "rate": 4 })).await;
    let mut all = Vec::new();
    for _ in 0..PARTS {
        let times = page.script(TYPE, vec![json!(id), json!(values), json!(KEYS), json!(pause)]).await;
        all.extend(times.as_array().into_iter().flatten().filter_map(Value::as_f64));
    }
    page.close().await;
    Ok(all)
}
