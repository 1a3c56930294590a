//! An order, as a salesperson takes it on the phone and somebody opens it elsewhere.

use crate::page::{DESK, Key, PHONE, Page};
use crate::rig::{fill, tab_to};
use crate::size::EXAMPLE;
use serde_json::json;
use std::fs;

/// Picks in a list without a mouse: so many entries below the first.
async fn pick(page: &Page, id: &str, below: usize) {
    tab_to(page, id, Key::Tab).await;
    for _ in 0..below {
        page.press(Key::Down).await;
    }
}

/// What two people who talk of the same order compare.
async fn compared(page: &Page) -> [String; 3] {
    page.wait_text("#order-code", |text| text.len() == 11).await;
    [page.text("#order-code").await, page.text("#short-text").await, page.text("#named-lengths").await]
}

/// A whole order by keyboard: asked, read back, confirmed; the same numbers, text and code on another device.
pub(crate) async fn a_phone_order_by_keyboard(page: &Page) {
    page.open(DESK, "").await;
    tab_to(page, "view-order", Key::Tab).await;
    page.press(Key::Enter).await;
    page.wait_text("#order-title", |text| text.contains("still needed")).await;
    fill(page, "in-length", "36 1/2").await;
    pick(page, "in-measured-on", 1).await;
    pick(page, "in-supplied-by-a", 1).await;
    pick(page, "in-supplied-by-b", 1).await;
    pick(page, "in-use", 2).await;
    fill(page, "in-weight", "4200").await;
    page.wait_text("#order-title", |text| text == "Nothing is missing.").await;
    fill(page, "in-order-remarks", "gate code 77").await;
    fill(page, "in-order-reference", "PO 12").await;
    page.press(Key::Tab).await;
    let script = page.wait_text("#read-back", |text| text.contains("PO 12")).await;
    for said in
        ["thirty-six and a half, that is 36.500 inches, hole center to hole center", "left-hand", "gate code 77"]
    {
        assert!(script.contains(said), "{said:?} is missing in {script}");
    }
    tab_to(page, "note-first", Key::Tab).await;
    page.press(Key::Enter).await;
    page.wait_text("#read-back", |text| text.contains("Nothing that you first said has changed.")).await;
    tab_to(page, "stage-read-back", Key::Tab).await;
    page.press(Key::Enter).await;
    tab_to(page, "in-yes-by", Key::Tab).await;
    fill(page, "in-yes-by", "The owner").await;
    tab_to(page, "record-yes", Key::Tab).await;
    page.press(Key::Enter).await;
    page.wait_text("#stages", |text| text.contains("Confirmed by The owner")).await;
    let here = compared(page).await;
    assert!(here[1].chars().count() <= 480 && here[1].contains(&here[0]), "{}", here[1]);
    page.screenshot_whole("order-desk").await;

    // Neither the address nor the text says what was not ticked.
    let text = page.text("#confirmation-text").await;
    assert!(text.contains(&here[0]) && !text.contains("PO 12") && !text.contains("gate code"), "{text}");
    page.click("#send-reference").await;
    page.wait_text("#confirmation-text", |text| text.contains("PO 12") && !text.contains("gate code")).await;
    page.pause(400).await;
    let fragment = page.fragment().await;
    assert!(!["order-", "yes-", "first-said", "PO"].iter().any(|part| fragment.contains(part)), "{fragment}");

    // Nothing is lost on a reload.
    page.reload().await;
    page.wait_text("#stages", |text| text.contains("Confirmed by The owner")).await;
    assert_eq!(page.value("in-order-remarks").await, "gate code 77");

    // Changed after the yes: said loudly, until it is as it was.
    page.enter("in-length", "37").await;
    let changed = page.wait_text("#changed-since-yes", |text| text.contains("Do not cut")).await;
    assert!(changed.contains("37 in, before 36-1/2 in") && changed.contains(&here[0]), "{changed}");
    page.screenshot("order-changed-desk").await;
    page.click("#view-make").await;
    page.wait_text("#changed-since-yes", |text| text.contains("Do not cut")).await;
    page.click("#view-order").await;
    page.enter("in-length", "36 1/2").await;
    page.wait_count("#changed-since-yes", 0).await;
    page.enter("in-code", &here[0].to_lowercase().replace('-', " ")).await;
    page.wait_text("#code-compared", |text| text.contains("this code belongs to what stands here")).await;

    page.forget_everything().await;
    page.open(PHONE, &fragment).await;
    page.click("#view-order").await;
    assert_eq!(compared(page).await, here, "the same on another device");
    assert_eq!(page.overflow().await, 0, "nothing sticks out sideways");
    page.enter("in-code", "AAAA-AAAA-A").await;
    page.wait_text("#code-compared", |text| !text.is_empty() && !text.contains("belongs to what stands here.")).await;
    page.screenshot_whole("order-phone").await;
}

/// The shop's lists: tried with invented rows, edited, kept, taken out and in as files, and searched.
pub(crate) async fn a_shop_keeps_its_lists(page: &Page) {
    page.open(DESK, EXAMPLE).await;
    page.click("#view-order").await;
    page.wait_text("#quote", |text| text.contains("No price is built in")).await;
    page.click("#fill-demo").await;
    page.wait_text("#quote-total", |text| !text.is_empty()).await;
    page.click("#search-stock").await;
    let offers = page.wait_text("#from-stock", |text| text.contains("Take these")).await;
    assert!(offers.contains("final, the rod ends are measured"), "{offers}");
    page.click(".take-offer").await;
    page.wait_text("#named-lengths", |text| text.contains("Bar, face to face")).await;

    // A cell that a spreadsheet would run comes back as it was.
    page.click(".shop-list > summary").await;
    let first = ".shop-list table tbody tr:first-child td:first-child input";
    page.find(first).await;
    page.script(&format!("document.querySelector('{first}').id = 'first-cell'"), vec![]).await;
    page.enter("first-cell", "=1+1").await;
    page.press(Key::Tab).await;
    page.pause(100).await;
    assert!(page.kept("linkwright.shop.rod-ends").await.contains("'=1+1"), "kept as its file holds it");
    let folder = page.download_to("lists").await;
    page.click("#export-rod-ends").await;
    let (file, text) = page.downloaded(&folder).await;
    assert!(text.contains("'=1+1") && file.ends_with("linkwright-rod-ends.csv"), "{}: {text}", file.display());
    page.reload().await;
    page.click(".shop-list > summary").await;
    page.find(first).await;
    let kept = format!("return document.querySelector('{first}').value");
    assert_eq!(page.script(&kept, vec![]).await.as_str(), Some("=1+1"));

    // A file with a mistake in it: named by line and column, and nothing is lost.
    let wrong = folder.join("wrong.csv");
    fs::write(&wrong, text.replace("1-1/4-12 UNF,1,4.2", "1-1/4-12 UNF,wide,4.2")).expect("a file to write");
    page.choose_file("import-rod-ends", &wrong).await;
    let told = page.wait_text(".shop-list", |text| text.contains("Line ")).await;
    assert!(told.contains("wide"), "{told}");
    page.click("#before-rod-ends").await;
    page.wait_text(".shop-list", |text| !text.contains("wide")).await;
    assert_eq!(page.overflow().await, 0, "nothing sticks out sideways");

    page.forget_everything().await;
    page.open(PHONE, EXAMPLE).await;
    page.click("#view-order").await;
    page.click("#fill-demo").await;
    page.wait_text("#quote-total", |text| !text.is_empty()).await;
    page.click(".shop-list > summary").await;
    page.find(first).await;
    assert_eq!(page.overflow().await, 0, "a list scrolls by itself");
    page.screenshot_whole("order-lists-phone").await;
}

/// Two tabs in one list: an edit lands on the row that was read, and of a row that both changed neither edit is lost.
pub(crate) async fn two_tabs_edit_one_list(page: &Page) {
    const ROWS: &str = "#shop-lists .list tbody tr";
    // Row, field of the row, text: typed and not left yet.
    const TYPE: &str = "const row = document.querySelectorAll('#shop-lists .list tbody tr')[arguments[0]];
        const field = row.querySelectorAll('input')[arguments[1]];
        field.focus();
        field.value = arguments[2];";
    let [name, right_hand] = [0, 4];
    let line = |kept: &str, name: &str| kept.lines().find(|line| line.contains(name)).unwrap_or_default().to_owned();
    page.open(DESK, EXAMPLE).await;
    page.click("#view-order").await;
    page.click("#fill-demo").await;
    page.click(".shop-list > summary").await;
    page.wait_count(ROWS, 4).await;
    let [first, second] = page.another_tab().await;
    page.open(DESK, EXAMPLE).await;
    page.click("#view-order").await;
    page.click(".shop-list > summary").await;
    page.wait_count(ROWS, 4).await;

    // The row that is typed into moves up meanwhile.
    page.script(TYPE, vec![json!(2), json!(right_hand), json!("77")]).await;
    page.turn_to_tab(&first).await;
    page.click(&format!("{ROWS}:first-child td:last-child button")).await;
    page.wait_count(ROWS, 3).await;
    page.turn_to_tab(&second).await;
    page.press(Key::Tab).await;
    page.wait_count(ROWS, 3).await;
    let kept = page.kept("linkwright.shop.rod-ends").await;
    assert!(line(&kept, "Demo, 1-1/4 shank\"").contains(",2.45,77,10,"), "{kept}");
    assert_eq!(kept.lines().filter(|line| line.contains(",77,")).count(), 1, "{kept}");

    // The same row is changed in both: whether the browser takes what is half typed when its tab is left or when it is
    // left itself, neither edit is lost.
    page.script(TYPE, vec![json!(0), json!(name), json!("Mine")]).await;
    page.turn_to_tab(&first).await;
    page.pause(300).await;
    page.script(TYPE, vec![json!(0), json!(right_hand), json!("9")]).await;
    page.pause(100).await;
    page.press(Key::Tab).await;
    page.pause(300).await;
    page.turn_to_tab(&second).await;
    page.press(Key::Tab).await;
    page.pause(300).await;
    let kept = page.kept("linkwright.shop.rod-ends").await;
    assert!(kept.contains("Mine,7/8-14 UNF,0.75,3.4,2.05,") && kept.contains(",3.4,2.05,9,5,"), "{kept}");
}
