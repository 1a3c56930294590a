//! Under the rig: the six places, the log, and the card.

use crate::make::{KEEP_DIALOG, close_dialog, pages};
use crate::page::{DESK, PHONE, Page};
use crate::size::EXAMPLE;
use serde_json::json;

/// A rig owner: six places in sight, each a tap away and back.
pub(crate) async fn six_places_are_one_tap_away(page: &Page) {
    page.open(PHONE, EXAMPLE).await;
    page.click("#view-fit").await;
    page.wait_count(".places button", 6).await;
    let below = "return Math.max(...[...document.querySelectorAll('.places button')].map(it => it.getBoundingClientRect().bottom)) + scrollY";
    let bottom = page.script(below, vec![]).await.as_f64().expect("a number");
    assert!(bottom <= 740.0, "all six stand on the first screen: {bottom}");
    for (id, title) in [
        ("safe", "Is it still safe?"),
        ("turn", "Turn it"),
        ("fit-it", "Fit it"),
        ("recheck", "Recheck"),
        ("hit", "After a hit"),
        ("spares", "Spares"),
    ] {
        page.click(&format!("#fit-{id}")).await;
        page.wait_text("#fit-title", |text| text == title).await;
        page.wait_focus("fit-title").await;
        assert_eq!(page.overflow().await, 0, "{title}");
        page.click(".fit-head .back").await;
        page.wait_count(".places button", 6).await;
    }
}

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
    page.wait_text("#fit-log", |text| text.contains("1 entry") && !text.contains("before the trip")).await;
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

/// The pocket card: every link of a rig on one page, on both sizes of paper.
pub(crate) async fn the_card_is_one_page(page: &Page) {
    page.open(DESK, EXAMPLE).await;
    page.click("#view-rig").await;
    for id in ["add-four", "add-steering"] {
        page.click(&format!("#{id}")).await;
    }
    page.wait_text("#rig-links", |text| text.contains("tie rod")).await;
    page.click("#view-order").await;
    let links = page.texts("#all-lengths h4").await.len();
    for link in 2..=links {
        page.enter(&format!("in-length-{link}"), &format!("{}", 32 + link)).await;
    }
    page.click("#view-fit").await;
    page.script(KEEP_DIALOG, vec![]).await;
    page.click("#print-card").await;
    page.wait_count(".card-links section", links).await;
    let card = page.text(".pocket-card").await;
    for said in ["Front lower links", "Eye to eye 38 in. Shortest", "threads showing, at most", "lbf·ft", "clockwise"]
    {
        assert!(card.contains(said), "{said} is missing in {card}");
    }
    for size in [[8.5, 11.0], [8.27, 11.69]] {
        assert_eq!(pages(page, size).await, 1, "{links} links on {size:?}");
    }
    close_dialog(page).await;
}
