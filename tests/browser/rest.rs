//! The part of the program that comes after the first answer: in time, late, altered, and without a network.

use crate::offline::{Folder, kept};
use crate::page::{DESK, Key, PHONE, Page};
use crate::size::EXAMPLE;
use serde_json::json;
use std::fs;
use std::path::{Path, PathBuf};

/// Two links, one with an answer, before their check.
const TWO: &str = "3&links=2&length=38in&weight=4100lb&2.length=36in&use=hard";

/// The part in a folder.
fn part(folder: &Path) -> PathBuf {
    let all = fs::read_dir(folder).expect("the built page").filter_map(|entry| Some(entry.ok()?.path()));
    let mut parts = all.filter(|file| file.file_name().is_some_and(|name| name.to_string_lossy().contains("-rest-")));
    let part = parts.next().expect("the second part of the program");
    assert_eq!(parts.next(), None, "one part");
    part
}

/// The page without its worker, from a folder of the journey's own.
fn without_worker(page: &Page, folder: &Folder) -> PathBuf {
    let copy = folder.with_build(&page.folder(), "copy");
    fs::remove_file(copy.join("sw.js")).expect("the worker");
    page.serve(&copy);
    copy
}

/// Every view opens.
async fn all_views_open(page: &Page) {
    page.click("#view-prove").await;
    page.wait_text("#prove-title", |text| text.contains("yields first")).await;
    page.click("#view-rig").await;
    page.wait_text("#rig-title", |text| text.contains("2 links")).await;
    page.open_saved().await;
    page.wait_text("#saved-title", |text| text.contains("No saved builds")).await;
}

/// Loses the signal right after the first answer: all of the page goes on.
pub(crate) async fn the_part_comes_before_it_is_asked_for(page: &Page) {
    let folder = Folder::new("early");
    without_worker(page, &folder);
    page.open(PHONE, EXAMPLE).await;
    page.wait_text("#headline", |text| text.contains("2-1/4 in")).await;
    let came = "return new Promise(done => {
        const all = () => performance.getEntriesByType('resource').filter(it => it.name.includes('-rest-'));
        const look = () => all().some(it => it.responseEnd > 0) ? done(all().length) : setTimeout(look, 20);
        look();
    })";
    assert_eq!(page.script(came, vec![]).await, json!(1), "fetched once, with nothing pressed");
    page.stop_server();
    all_views_open(page).await;
    page.click("#view-size").await;
    page.click("#show-code").await;
    page.wait_text("#code", |text| text.contains("Scan it")).await;
    // There is no worker to be found.
    page.take_errors().await;
}

/// Opens a link to a rig of several links for the first time: what it opens in needs both parts, so both set out at once.
pub(crate) async fn a_rig_asks_for_both_parts_together(page: &Page) {
    let folder = Folder::new("together");
    without_worker(page, &folder);
    let rates = json!({ "offline": false, "latency": 20, "downloadThroughput": 800_000, "uploadThroughput": 800_000 });
    page.devtools("Network.enable", json!({})).await;
    page.devtools("Network.emulateNetworkConditions", rates).await;
    page.open(PHONE, TWO).await;
    page.wait_text("#rig-title", |text| text.contains("4 links")).await;
    let together = "const of = part => performance.getEntriesByType('resource')
            .find(it => it.name.endsWith('.wasm') && it.name.includes('-rest-') === part);
        return of(true).startTime < of(false).responseEnd";
    assert_eq!(page.script(together, vec![]).await, json!(true), "the second part does not wait for the first");
    // The link carries no check, and there is no worker to be found.
    page.take_errors().await;
}

/// One other byte in the first part could make a program that works out something else: it is refused.
pub(crate) async fn an_altered_program_is_refused(page: &Page) {
    let folder = Folder::new("altered");
    let copy = without_worker(page, &folder);
    let first = fs::read_dir(&copy)
        .expect("a copy")
        .flatten()
        .map(|entry| entry.path())
        .find(|path| path.extension().is_some_and(|it| it == "wasm") && !path.to_string_lossy().contains("-rest-"));
    let first = first.expect("the first part");
    let sound = fs::read(&first).expect("the first part");
    let mut altered = sound.clone();
    altered[sound.len() / 3] ^= 1;
    fs::write(&first, altered).expect("the copy takes it");
    page.open(PHONE, EXAMPLE).await;
    page.wait_text(".rescue", |text| text.contains("did not load")).await;
    page.take_errors().await;
    fs::write(&first, sound).expect("the copy takes it");
    page.click("#again").await;
    page.wait_text("#headline", |text| text.contains("2-1/4 in")).await;
    // There is no worker to be found, which is told a moment later.
    page.pause(500).await;
    page.take_errors().await;
}

/// Keeps what was installed: without a network every view opens on the first tap.
pub(crate) async fn every_view_opens_without_a_network(page: &Page) {
    page.open(PHONE, EXAMPLE).await;
    page.wait_text("#headline", |text| text.contains("2-1/4 in")).await;
    kept(page).await;
    page.stop_server();
    page.reload().await;
    all_views_open(page).await;
    // The view that was open is the one that the next visit needs at once.
    page.reload().await;
    page.wait_text("#saved-title", |text| text.contains("No saved builds")).await;
}

/// An altered part is refused, a missing one is told of, and the first view works on until it comes.
pub(crate) async fn a_part_that_does_not_come_is_told_and_tried_again(page: &Page) {
    let folder = Folder::new("late");
    let part = part(&without_worker(page, &folder));
    let whole = fs::read(&part).expect("the part");
    fs::write(&part, b"of another build").expect("an altered part");
    page.open(PHONE, EXAMPLE).await;
    page.wait_text("#headline", |text| text.contains("2-1/4 in")).await;
    let told = page.wait_text("#missing", |text| text.contains("did not arrive")).await;
    assert!(told.contains("What stands above is valid") && told.contains("Your entries stay"), "{told}");
    page.click("#view-prove").await;
    let told = page.wait_text("#missing", |text| text.contains("did not arrive")).await;
    assert!(told.contains("every check"), "{told}");
    assert_eq!(page.attribute("#missing p", "role").await.as_deref(), Some("alert"));
    assert_eq!(page.overflow().await, 0, "nothing sticks out sideways");
    page.screenshot("missing-phone").await;
    page.script("dispatchEvent(new Event('beforeprint'))", vec![]).await;
    page.wait_text("#answer", |text| text.contains("had not arrived when this was printed")).await;
    page.script("dispatchEvent(new Event('afterprint'))", vec![]).await;

    // All that the first answer promises.
    page.stop_server();
    page.click("#view-size").await;
    page.enter("in-length", "40").await;
    page.wait_text("#bar-length", |text| text.contains("34-3/4 in")).await;
    page.wait_text("#missing", |text| text.contains("What stands above is valid")).await;
    page.screenshot_whole("missing-below-phone").await;
    let on_paper = "dispatchEvent(new Event('beforeprint'));
        return new Promise(done => setTimeout(() => done(document.querySelector('.sheets.alone') === null), 50))";
    assert_eq!(page.script(on_paper, vec![]).await, json!(true), "the answer itself is printed, and no empty sheet");
    page.script("dispatchEvent(new Event('afterprint'))", vec![]).await;

    // Turning to a view tries again by itself; so does the button.
    page.open_saved().await;
    let told = page.wait_text("#missing", |text| text.contains("did not arrive")).await;
    assert!(told.contains("your saved builds"), "{told}");
    page.click("#fetch-again").await;
    page.wait_text("#missing", |text| text.contains("did not arrive")).await;
    fs::write(&part, whole).expect("the part as it was built");
    page.start_server();
    page.look_with(DESK).await;
    page.click("#fetch-again").await;
    page.wait_text("#saved-title", |text| text.contains("No saved builds")).await;
    all_views_open(page).await;
    let errors = page.take_errors().await.join("\n");
    assert!(errors.contains("integrity"), "the altered part was refused: {errors}");
}

/// Whoever types while the part arrives goes on typing; whoever pressed the button is taken to what came.
pub(crate) async fn a_late_part_leaves_the_reader_alone(page: &Page) {
    let folder = Folder::new("slow");
    let part = part(&without_worker(page, &folder));
    page.devtools("Network.enable", json!({})).await;
    page.devtools("Network.setCacheDisabled", json!({ "cacheDisabled": true })).await;
    let slow = |latency: u32| json!({ "offline": false, "latency": latency, "downloadThroughput": -1, "uploadThroughput": -1 });
    page.devtools("Network.emulateNetworkConditions", slow(2500)).await;
    page.open(PHONE, EXAMPLE).await;
    page.click("#view-prove").await;
    page.find("#on-its-way").await;
    page.enter("in-length", "40 1/16").await;
    page.wait_text("#prove-title", |text| text.contains("yields first")).await;
    page.pause(100).await;
    assert_eq!(page.focus().await, "in-length", "the focus stays");
    assert_eq!(page.value("in-length").await, "40 1/16");

    page.devtools("Network.emulateNetworkConditions", slow(0)).await;
    let whole = fs::read(&part).expect("the part");
    fs::write(&part, b"of another build").expect("an altered part");
    page.open(PHONE, EXAMPLE).await;
    page.click("#view-size").await;
    page.wait_text("#missing", |text| text.contains("did not arrive")).await;
    fs::write(&part, whole).expect("the part as it was built");
    page.script("document.getElementById('fetch-again').focus()", vec![]).await;
    page.press(Key::Enter).await;
    page.wait_focus("below").await;
    page.take_errors().await;
}
