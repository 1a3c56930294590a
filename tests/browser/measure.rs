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

/// Keys pressed in each field.
const KEYS: usize = 40;

/// One link with an answer.
const ONE: &str = "2&length=38in&weight=4100lb&use=hard&crc=fa372c2d";

/// Eight links of different kinds, before their check.
const EIGHT: &str = "2&links=8&length=38in&2.length=36in&3.length=33.5in&4.length=48in&5.length=40in&6.length=12in&7.length=40.25in&8.length=34.5in&weight=4100lb&2.role=upper&3.role=track-bar&4.role=tie-rod&5.role=drag-link&6.role=sway-link&8.role=upper&7.axle=rear&8.axle=rear&use=hard";

/// Notes when the page first answers.
const WATCH: &str = "new MutationObserver((_, it) => {
    if (!document.documentElement?.hasAttribute('data-live')) return;
    window.liveAt = performance.now();
    it.disconnect();
}).observe(document, { subtree: true, attributes: true, childList: true })";

/// Types values into a field and times each until the answer has changed. The pauses are so long that what follows
/// after one key is not taken for the answer to the next.
const TYPE: &str = "const [id, values, count] = arguments, field = document.getElementById(id), times = [];
    const step = () => new Promise(done => {
        const seen = new MutationObserver(() => { seen.disconnect(); done(performance.now() - start); });
        seen.observe(document.querySelector('#answer'), { subtree: true, childList: true, characterData: true });
        field.value = values[times.length % values.length];
        const start = performance.now();
        field.dispatchEvent(new Event('input', { bubbles: true }));
        setTimeout(() => done(NaN), 2000);
    });
    return (async () => {
        while (times.length < count) { times.push(await step()); await new Promise(done => setTimeout(done, 400)); }
        return times;
    })();";

fn main() -> ExitCode {
    let runtime = tokio::runtime::Builder::new_current_thread().enable_all().build();
    let told = runtime.map_err(|reason| reason.to_string()).and_then(|it| {
        tokio::task::LocalSet::new().block_on(&it, async {
            let driver = Driver::start().await?;
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
    println!("\nCPU 4 times slower, 1.6 Mbit/s with 150 ms; medians of {VISITS} visits, in ms");
    let mut live = Vec::new();
    for (name, folder) in [("the least page", &least), ("this page", &page)] {
        let (mut paints, mut lives) = (Vec::new(), Vec::new());
        for _ in 0..VISITS {
            let (paint, live) = visit(driver, folder).await?;
            paints.push(paint);
            lives.push(live);
        }
        println!("{name:>24}: first paint {:>5.0}, answers {:>5.0}", share(&paints, 0.5), share(&lives, 0.5));
        live.push(share(&lives, 0.5));
    }
    println!("{:>24}: {:.2}", "ratio", live[1] / live[0]);
    let again = again(driver, &page).await?;
    println!("{:>24}: answers {:>5.0}", "second visit, no network", share(&again, 0.5));
    println!("\nKey to changed answer at CPU 4 times slower, {KEYS} keys, in ms: median, 95th percentile");
    let eight = linkwright::share::to_fragment(&from_fragment(EIGHT).document);
    for (name, fragment) in [("one link", ONE), ("eight links", eight.as_str())] {
        for (id, values) in
            [("in-length", ["38.5", "39", "37", "36.5"]), ("in-weight", ["4150", "4000", "4200", "3900"])]
        {
            let times = keys(driver, &page, fragment, id, &values).await?;
            println!("{name:>14}, {id:<9}: {:>6.1} {:>6.1}", share(&times, 0.5), share(&times, 0.95));
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

async fn slow(page: &Page) {
    let rates = json!({ "offline": false, "latency": 150, "downloadThroughput": 200_000, "uploadThroughput": 93_750 });
    page.devtools("Network.enable", json!({})).await;
    page.devtools("Network.emulateNetworkConditions", rates).await;
    page.devtools("Emulation.setCPUThrottlingRate", json!({ "rate": 4 })).await;
}

/// Milliseconds until something is painted, and until the page answers.
async fn times(page: &Page) -> (f64, f64) {
    // To ask a page on a slow phone how far it is keeps it from going on: so not before it should be done.
    tokio::time::sleep(Duration::from_secs(5)).await;
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

async fn visit(driver: &Driver, folder: &Path) -> Result<(f64, f64), String> {
    let page = Page::new(driver, folder).await?;
    page.before_everything(WATCH).await;
    slow(&page).await;
    page.visit(PHONE, &page.address()).await;
    let times = times(&page).await;
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
        page.visit(PHONE, &format!("{}#{ONE}", page.address())).await;
        all.push(times(&page).await.1);
    }
    page.close().await;
    Ok(all)
}

async fn keys(driver: &Driver, folder: &Path, fragment: &str, id: &str, values: &[&str]) -> Result<Vec<f64>, String> {
    let page = Page::new(driver, folder).await?;
    page.open(PHONE, fragment).await;
    // A whole rig opens where all of it is seen.
    page.click("#leaf-size").await;
    page.wait_text("#headline", |text| !text.is_empty()).await;
    page.devtools("Emulation.setCPUThrottlingRate", json!({ "rate": 4 })).await;
    let mut all = Vec::new();
    // In parts: a script may not run for long.
    for _ in 0..8 {
        let times = page.script(TYPE, vec![json!(id), json!(values), json!(KEYS / 8)]).await;
        all.extend(times.as_array().into_iter().flatten().filter_map(Value::as_f64));
    }
    page.close().await;
    Ok(all)
}
