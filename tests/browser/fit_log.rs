//! What is written down on the rig, and where it goes.

use crate::page::{DESK, PHONE, Page};
use crate::size::EXAMPLE;
use serde_json::json;

async fn note(page: &Page, words: &str) {
    page.enter("log-note", words).await;
    page.click("#add-note").await;
    page.wait_text("#fit-log", |text| text.contains(words)).await;
}

/// The log stays with its build: over a reload, through saving, the bin and a file, and no link carries it.
pub(crate) async fn a_log_stays_with_its_build(page: &Page) {
    page.open(PHONE, EXAMPLE).await;
    page.click("#view-fit").await;
    page.click("#fit-log > summary").await;
    note(page, "Two turns longer on Friday").await;
    assert!(!page.fragment().await.contains("Friday"), "no link carries it");
    page.reload().await;
    page.click("#fit-log > summary").await;
    page.wait_text("#fit-log", |text| text.contains("1 entry") && text.contains("Friday")).await;
    // The other bar of the pair has its own.
    page.click("label[for=bar-1]").await;
    page.wait_text("#fit-log > summary", |text| text == "Log").await;
    page.click("label[for=bar-0]").await;

    page.open_saved().await;
    page.click("#save").await;
    page.wait_text("#saved-notices", |text| text.contains("Saved")).await;
    let logs = "return Object.keys(localStorage).filter(it => it.startsWith('linkwright.log.')).length";
    assert_eq!(page.script(logs, vec![]).await, json!(1), "it moved to its build");
    page.click("#view-fit").await;
    page.click("#fit-log > summary").await;
    note(page, "Checked before the trip").await;
    page.open_saved().await;
    let folder = page.download_to("fit-log").await;
    page.click("#export-all").await;
    let (path, text) = page.downloaded(&folder).await;
    assert!(text.contains("Two turns longer on Friday") && text.contains("front-lower-left"), "{text}");

    // Another device, which takes the file in.
    page.forget_everything().await;
    page.open(DESK, "").await;
    page.open_saved().await;
    page.choose_file("take-in", &path).await;
    page.wait_text("#saved-notices", |text| text.contains("1 build imported")).await;
    page.click("#builds li .open").await;
    page.wait_text("#headline", |text| text.contains("7075-T6")).await;
    page.click("#view-fit").await;
    page.click("#fit-log > summary").await;
    page.wait_text("#fit-log", |text| text.contains("2 entries") && text.contains("before the trip")).await;
    page.click("#fit-log li:first-child button").await;
    page.wait_text("#fit-log", |text| text.contains("1 entry") && text.contains("Taken out.")).await;
    page.click("#fit-log li:first-child button").await;
    page.wait_text("#fit-log", |text| text.contains("2 entries") && !text.contains("Undo")).await;
}

/// Two tabs write into one log, and neither takes anything from the other.
pub(crate) async fn two_tabs_share_a_log(page: &Page) {
    page.open(DESK, EXAMPLE).await;
    page.click("#view-fit").await;
    page.click("#fit-log > summary").await;
    note(page, "From the first").await;
    let [first, second] = page.another_tab().await;
    page.open(DESK, "").await;
    page.click("#view-fit").await;
    page.click("#fit-log > summary").await;
    page.wait_text("#fit-log", |text| text.contains("From the first")).await;
    note(page, "From the second").await;
    page.turn_to_tab(&first).await;
    page.wait_text("#fit-log", |text| text.contains("From the second")).await;
    note(page, "From the first again").await;
    page.turn_to_tab(&second).await;
    page.wait_text("#fit-log", |text| text.contains("3 entries") && text.contains("again")).await;
}

/// A link carries the log where it is asked for; and what is written down on somebody's link is not lost for the next.
pub(crate) async fn a_link_can_carry_the_log(page: &Page) {
    page.open(PHONE, EXAMPLE).await;
    page.click("#view-fit").await;
    page.click("#fit-log > summary").await;
    page.wait_count("#copy-with-log", 0).await;
    note(page, "Two turns longer on Friday").await;
    let hold = "navigator.clipboard.writeText = async text => { window.copied = text }";
    page.script(hold, vec![]).await;
    page.click("#copy-with-log").await;
    page.wait_text("#log-sent", |text| text.contains("on your clipboard")).await;
    let link = page.script("return window.copied", vec![]).await.as_str().expect("a link").to_string();
    let fragment = link.split_once('#').expect("a fragment").1.to_string();
    assert!(fragment.contains("Friday") && !page.fragment().await.contains("Friday"));

    // Somebody else's link in its place: these entries are as they were received, but for the log.
    page.open(PHONE, &EXAMPLE.replace("38in", "30in").replace("&crc=6f47f8b8", "")).await;
    page.wait_text("#eye-to-eye", |text| text == "30 in").await;
    page.click("#back-to-own").await;
    page.wait_text("#eye-to-eye", |text| text == "38 in").await;
    page.click("#view-fit").await;
    page.click("#fit-log > summary").await;
    page.wait_text("#fit-log", |text| text.contains("Friday")).await;

    page.forget_everything().await;
    page.open(DESK, &fragment).await;
    page.wait_text("#notices", |text| text.contains("the log of whoever sent it")).await;
    page.click("#view-fit").await;
    page.click("#fit-log > summary").await;
    page.wait_text("#fit-log", |text| text.contains("1 entry") && text.contains("Friday")).await;
}
