//! The page without a network, and a newer build that waits for a yes.

use crate::page::{DESK, PHONE, Page};
use crate::size::EXAMPLE;
use serde_json::json;
use std::fs;
use std::path::{Path, PathBuf};
use xtask::{digest, worker};

/// A folder of a journey's own, gone with it.
pub(crate) struct Folder(pub(crate) PathBuf);

impl Folder {
    pub(crate) fn new(name: &str) -> Folder {
        let folder = std::env::temp_dir().join(format!("linkwright-{name}-{}", std::process::id()));
        let _ = fs::remove_dir_all(&folder);
        fs::create_dir_all(&folder).expect("a folder for this journey");
        Folder(folder)
    }

    /// Every file of the built page, copied into a folder below this one.
    pub(crate) fn with_build(&self, built: &Path, below: &str) -> PathBuf {
        let folder = self.0.join(below);
        fs::create_dir_all(&folder).expect("a folder below");
        for entry in fs::read_dir(built).expect("the built page") {
            let entry = entry.expect("a built file");
            fs::copy(entry.path(), folder.join(entry.file_name())).expect("a copy of a built file");
        }
        folder
    }
}

impl Drop for Folder {
    fn drop(&mut self) {
        let _ = fs::remove_dir_all(&self.0);
    }
}

/// Another build of the page: its program and its page both say so.
fn newer(folder: &Path, name: &str) {
    let index = fs::read_to_string(folder.join("index.html")).expect("the page");
    let old =
        index.split('"').find(|it| it.starts_with("linkwright-") && it.ends_with(".js")).expect("the glue's name");
    let glue = fs::read(folder.join(old)).expect("the glue");
    let changed = [&glue[..], format!("globalThis.build = '{name}';\n").as_bytes()].concat();
    let new = format!("linkwright-{}.js", digest::mark(&changed));
    fs::remove_file(folder.join(old)).expect("the old glue");
    fs::write(folder.join(&new), &changed).expect("the new glue");
    let index = index
        .replace(old, &new)
        .replace(&digest::integrity(&glue), &digest::integrity(&changed))
        .replace("<html lang=\"en\"", &format!("<html lang=\"en\" data-build=\"{name}\""));
    fs::write(folder.join("index.html"), index).expect("the new page");
    worker::write(folder).expect("the new worker");
}

/// Which build the open page and its program are of, once the answer is there.
async fn build(page: &Page) -> [String; 2] {
    page.wait_text("#headline", |text| text.contains("2-1/4 in")).await;
    let ask = "return [document.documentElement.dataset.build ?? 'first', globalThis.build ?? 'first']";
    serde_json::from_value(page.script(ask, vec![]).await).expect("two words")
}

/// Waits until a worker keeps the page.
pub(crate) async fn kept(page: &Page) {
    let active = "return navigator.serviceWorker.ready.then(home => new Promise(done => {
        const look = () => { if (home.active.state === 'activated') done('kept'); };
        home.active.addEventListener('statechange', look);
        look();
    }))";
    assert_eq!(page.script(active, vec![]).await, json!("kept"));
}

/// Waits until a newer build is here whole, which the reload before began to look for.
async fn newer_waits(page: &Page) {
    let waiting = "return navigator.serviceWorker.getRegistration().then(home => new Promise(done => {
        const look = () => home.waiting ? done('waits') : setTimeout(look, 50);
        look();
    }))";
    assert_eq!(page.script(waiting, vec![]).await, json!("waits"));
}

/// How many builds the browser keeps.
async fn builds_kept(page: &Page) -> i64 {
    page.script("return caches.keys().then(all => all.length)", vec![]).await.as_i64().unwrap_or(-1)
}

/// In the yard without a signal: the second visit needs no host at all.
pub(crate) async fn a_second_visit_needs_no_network(page: &Page) {
    page.open(PHONE, EXAMPLE).await;
    build(page).await;
    kept(page).await;
    let missing = "return caches.keys().then(([name]) => caches.open(name)).then(cache => cache.keys())
        .then(all => all.map(it => it.url.replace(location.origin, '')).sort())";
    let files: Vec<String> = serde_json::from_value(page.script(missing, vec![]).await).expect("addresses");
    let mut wanted: Vec<String> = fs::read_dir(page.folder())
        .expect("the built page")
        .filter_map(|entry| entry.ok()?.file_name().into_string().ok())
        .filter(|name| !["index.html", "sw.js", "_headers"].contains(&name.as_str()))
        .chain([String::new()])
        .map(|name| format!("/{name}"))
        .collect();
    wanted.sort();
    assert_eq!(files, wanted, "every file is kept");

    page.stop_server();
    page.reload().await;
    build(page).await;
    page.open(DESK, "").await;
    build(page).await;
    page.enter("in-length", "40").await;
    page.wait_text("#bar-length", |text| text.contains("34-3/4 in")).await;
    assert_eq!(page.text("#news").await, "", "nothing to tell");
}

/// A newer build waits, is told of once, and comes whole after the yes.
pub(crate) async fn a_newer_build_waits_for_a_yes(page: &Page) {
    page.open(PHONE, EXAMPLE).await;
    kept(page).await;
    assert_eq!(build(page).await, ["first", "first"]);
    let folder = Folder::new("newer");
    let next = folder.with_build(&page.folder(), "next");
    newer(&next, "newer");
    page.serve(&next);
    // The host has no file of the first build any more; the reader sees all of it all the same.
    page.reload().await;
    assert_eq!(build(page).await, ["first", "first"]);
    newer_waits(page).await;
    let news = page.wait_text("#news", |text| text.contains("newer version is ready")).await;
    assert!(news.contains("Use it now"), "{news}");
    assert_eq!(page.attribute("#news", "role").await.as_deref(), Some("status"));
    let height = page.script("return document.getElementById('use-newer').offsetHeight", vec![]).await;
    assert!(height.as_f64().is_some_and(|it| it >= 48.0), "{height}");
    page.screenshot("newer-phone").await;
    page.reload().await;
    assert_eq!(build(page).await, ["first", "first"], "a reload is no yes");
    page.wait_text("#news", |text| text.contains("newer version is ready")).await;
    assert_eq!(page.texts("#news p").await.len(), 1, "said once");
    page.enter("in-length", "40").await;
    page.wait_text("#bar-length", |text| text.contains("34-3/4 in")).await;

    // Nobody said yes for a while, and a still newer one took its place.
    let newest = folder.with_build(&next, "newest");
    newer(&newest, "newest");
    page.serve(&newest);
    let update = "return navigator.serviceWorker.getRegistration().then(async home => {
        const before = home.waiting;
        await home.update();
        return new Promise(done => {
            const look = () => home.waiting && home.waiting !== before ? done('waits') : setTimeout(look, 50);
            look();
        });
    })";
    assert_eq!(page.script(update, vec![]).await, json!("waits"));
    page.click("#use-newer").await;
    page.wait_text("[data-build=newest] #bar-length", |text| text.contains("34-3/4 in")).await;
    assert_eq!(build(page).await, ["newest", "newest"]);
    assert_eq!(page.text("#news").await, "", "nothing more to tell");
    assert_eq!(builds_kept(page).await, 1, "the first build is gone");
    page.stop_server();
    page.reload().await;
    assert_eq!(build(page).await, ["newest", "newest"], "without a network");
}

/// A host that has only part of a newer build, or an altered one, changes nothing.
pub(crate) async fn a_broken_newer_build_is_refused(page: &Page) {
    page.open(DESK, EXAMPLE).await;
    kept(page).await;
    let folder = Folder::new("broken");
    let next = folder.with_build(&page.folder(), "next");
    newer(&next, "newer");
    fs::write(next.join("icon.svg"), "<svg xmlns='http://www.w3.org/2000/svg'/>").expect("an altered file");
    page.serve(&next);
    let update = "return navigator.serviceWorker.getRegistration().then(home => home.update()).then(home => new Promise(done => {
        const worker = home.installing ?? home.waiting;
        const look = () => { if (worker.state !== 'installing') done(worker.state); };
        worker.addEventListener('statechange', look);
        look();
    }))";
    assert_eq!(page.script(update, vec![]).await, json!("redundant"));
    page.reload().await;
    assert_eq!(build(page).await, ["first", "first"]);
    assert_eq!(page.text("#news").await, "");
    // The worker's console tells of the hash that was not met.
    page.take_errors().await;
}

/// Below a path of a host, beside another copy, each with a build of its own.
pub(crate) async fn below_a_path_beside_another_copy(page: &Page) {
    let folder = Folder::new("below");
    folder.with_build(&page.folder(), "some/yard");
    newer(&folder.with_build(&page.folder(), "other"), "newer");
    page.serve(&folder.0);
    let home = page.address();
    page.visit(PHONE, &format!("{home}some/yard/#{EXAMPLE}")).await;
    assert_eq!(build(page).await, ["first", "first"]);
    kept(page).await;
    page.visit(PHONE, &format!("{home}other/index.html#{EXAMPLE}")).await;
    assert_eq!(build(page).await, ["newer", "newer"]);
    kept(page).await;
    assert_eq!(builds_kept(page).await, 2, "neither took the other away");
    page.stop_server();
    page.visit(PHONE, &format!("{home}some/yard/?from=home#{EXAMPLE}")).await;
    assert_eq!(build(page).await, ["first", "first"]);
    page.visit(PHONE, &format!("{home}other/#{EXAMPLE}")).await;
    assert_eq!(build(page).await, ["newer", "newer"]);
}
