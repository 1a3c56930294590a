//! Damaged numbers never pass for sound, and what gives way to something else is there when it is wanted back.

use crate::kept::{EMPTY, FILL, length, other};
use crate::page::{DESK, Key, PHONE, Page};
use crate::saved::{open, save_as};
use crate::size::EXAMPLE;
use serde_json::json;

/// What is told about damaged entries, links and files.
fn is_unverified(text: &str) -> bool {
    text.contains("amaged")
}

/// The link of a build with unverified numbers, its versions and its paper say so too.
pub(crate) async fn unverified_numbers_are_marked_wherever_they_go(page: &Page) {
    page.open(PHONE, &EXAMPLE.replace("length=38in", "length=36in")).await;
    page.wait_text("#notices", is_unverified).await;
    page.devtools("Emulation.setEmulatedMedia", json!({ "media": "print" })).await;
    let shown = "return getComputedStyle(document.querySelector('#notices .unverified')).display";
    assert_eq!(page.script(shown, vec![]).await, json!("block"), "on paper");
    page.devtools("Emulation.setEmulatedMedia", json!({ "media": "" })).await;
    save_as(page, "Doubtful").await;
    let link = page.fragment().await;
    page.click("#view-size").await;
    page.click("#clear").await;
    page.wait_text("#notices", |text| !is_unverified(text)).await;
    page.open(PHONE, &other()).await;
    page.open(PHONE, &link).await;
    page.wait_text("#notices", is_unverified).await;
    length(page, "37").await;
    page.open_saved().await;
    page.click("#save").await;
    page.wait_text("#save-state", |text| text.contains("Unchanged")).await;
    page.click("#compared").await;
    page.wait_text("#notices", |text| !is_unverified(text)).await;
    page.click("#builds .history-of").await;
    page.wait_text("#builds .history", is_unverified).await;
    page.click("#builds .history button").await;
    page.wait_text("#eye-to-eye", |text| text == "36 in").await;
    page.wait_text("#notices", is_unverified).await;
}

/// A link to unverified numbers tells whoever opens it, until somebody compared them.
pub(crate) async fn a_link_sent_on_says_so_too(page: &Page) {
    page.open(PHONE, &EXAMPLE.replace("length=38in", "length=36in")).await;
    page.wait_text("#notices", is_unverified).await;
    let sent = "return document.getElementById('link-text').value.split('#')[1]";
    page.find("#link-text").await;
    let link = page.script(sent, vec![]).await;
    let opened = linkwright::share::from_fragment(link.as_str().unwrap_or_default());
    assert!(opened.notices.concat().contains("in doubt"), "{link}");
    // So does the address, which somebody may copy from its bar once it was written.
    let written = "return new Promise(done => setTimeout(() => done(location.hash.includes('&crc=')), 500))";
    assert_eq!(page.script(written, vec![]).await, json!(false), "the address has no check either");
    page.click("#compared").await;
    page.wait_text("#notices", |text| !is_unverified(text)).await;
    let link = page.script(sent, vec![]).await;
    let opened = linkwright::share::from_fragment(link.as_str().unwrap_or_default());
    assert!(opened.notices.is_empty(), "{link}");
    assert_eq!(page.script(written, vec![]).await, json!(true), "and has it once they were compared");
}

/// Stored entries that were damaged are unverified in the bin as well.
pub(crate) async fn damaged_entries_are_set_aside_as_such(page: &Page) {
    page.open(PHONE, EXAMPLE).await;
    length(page, "41").await;
    page.wait_kept("length=41in").await;
    let code =
        "localStorage['linkwright.entries'] = localStorage['linkwright.entries'].replace('length=41in', 'length=47in')";
    page.script(code, vec![]).await;
    page.open(PHONE, &other()).await;
    page.wait_text("#eye-to-eye", |text| text == "30 in").await;
    page.open_saved().await;
    page.click("#bin summary").await;
    page.click("#bin .bring").await;
    page.wait_text("#builds", is_unverified).await;
    page.click("#builds .open").await;
    page.wait_text("#eye-to-eye", |text| text == "47 in").await;
    page.wait_text("#notices", is_unverified).await;
}

/// Own entries that are offered back are in the bin too, whoever turns the offer down.
pub(crate) async fn an_offer_that_is_closed_leaves_the_bin(page: &Page) {
    page.open(PHONE, EXAMPLE).await;
    page.pause(400).await;
    // As the page does that stands in for one that has stopped.
    let code = "localStorage['linkwright.before'] = localStorage['linkwright.entries'];
        localStorage.removeItem('linkwright.entries');
        sessionStorage.clear();
        document.documentElement.removeAttribute('data-live')";
    page.script(code, vec![]).await;
    page.open(PHONE, "").await;
    page.click("#keep-these").await;
    page.wait_text("#notices", |text| !text.contains("Your own earlier")).await;
    let bin = page.records().await;
    assert!(bin.len() == 1 && bin[0]["rig"]["weight"] == "4100 lb" && !bin[0]["removed"].is_null(), "{bin:?}");
}

/// What one tab takes up again throws no other tab back.
pub(crate) async fn going_back_in_one_tab_leaves_the_other(page: &Page) {
    page.open(DESK, EXAMPLE).await;
    length(page, "41").await;
    page.wait_kept("length=41in").await;
    let [first, second] = page.another_tab().await;
    page.open(DESK, &other()).await;
    page.wait_text("#notices", |text| text.contains("Your own earlier")).await;
    page.turn_to_tab(&first).await;
    length(page, "50").await;
    // Kept as the shorter 1.27 m.
    page.wait_kept("length=1.27").await;
    page.turn_to_tab(&second).await;
    page.click("#back-to-own").await;
    page.wait_text("#eye-to-eye", |text| text == "50 in").await;
    page.turn_to_tab(&first).await;
    assert_eq!(page.text("#eye-to-eye").await, "50 in");

    // The same by steps back: first 51, then other work, then the first tab goes on to 52.
    page.turn_to_tab(&second).await;
    length(page, "51").await;
    page.pause(1000).await;
    page.click("#clear").await;
    page.wait_text("#still-needed", |text| !text.is_empty()).await;
    page.turn_to_tab(&first).await;
    page.wait_text("#eye-to-eye", |text| text == "51 in").await;
    length(page, "52").await;
    page.wait_kept("length=52in").await;
    page.turn_to_tab(&second).await;
    page.click("#undo").await;
    page.wait_text("#eye-to-eye", |text| text == "51 in").await;
    page.pause(400).await;
    page.turn_to_tab(&first).await;
    page.wait_text(".elsewhere", |text| text.contains("Another tab")).await;
    assert_eq!(page.text("#eye-to-eye").await, "52 in");
}

/// Once there is room again the entries are kept, and only then all is well.
pub(crate) async fn room_again_keeps_the_entries(page: &Page) {
    page.open(PHONE, EXAMPLE).await;
    save_as(page, "Mine").await;
    page.click("#view-size").await;
    page.pause(400).await;
    page.script(FILL, vec![]).await;
    page.enter("in-length", "40.123456").await;
    page.wait_text(".trouble", |text| text.contains("is full")).await;
    page.script(EMPTY, vec![]).await;
    page.open_saved().await;
    // The view comes to its title first.
    page.pause(400).await;
    page.click("#builds .copy").await;
    page.wait_text("#notices", |text| !text.contains("is full")).await;
    assert!(page.kept("linkwright.entries").await.contains("length=40.123456in"));
}

/// What the page hands out when it has stopped, through an editor that ends lines in its own way.
pub(crate) async fn rescued_entries_come_back_from_any_editor(page: &Page) {
    page.open(PHONE, EXAMPLE).await;
    save_as(page, "Mine").await;
    length(page, "43").await;
    page.wait_kept("length=43in").await;
    let code = "return Object.keys(localStorage).map(key => '\\n' + key + '\\n' + localStorage[key] + '\\n').join('')";
    let rescued = page.script(code, vec![]).await.as_str().unwrap_or_default().replace('\n', "\r\n");
    page.forget_everything().await;
    page.open(PHONE, "").await;
    page.open_saved().await;
    let folder = page.download_to("rescued").await;
    let file = folder.join("rescued.txt");
    std::fs::write(&file, rescued).expect("a file to write");
    page.choose_file("take-in", &file).await;
    page.wait_text("#saved-notices", |text| text.contains("2 builds imported")).await;
    assert!(page.records().await.iter().any(|it| it["links"][0]["length"] == "43 in"));
    page.choose_file("take-in", &file).await;
    page.wait_text("#saved-notices", |text| text.contains("is here already")).await;
    std::fs::write(&file, "\nlinkwright.units\nmetric\n").expect("a file to write");
    page.choose_file("take-in", &file).await;
    page.wait_text("#saved-notices", |text| text.contains("nothing in this file")).await;
}

/// A build that is in the bin is not told to be saved, and one press deletes nothing for good.
pub(crate) async fn what_is_in_the_bin_is_not_saved(page: &Page) {
    page.open(DESK, EXAMPLE).await;
    save_as(page, "Mine").await;
    page.pause(400).await;
    let [first, _] = page.another_tab().await;
    page.open(DESK, "").await;
    page.open_saved().await;
    page.wait_text("#save-state", |text| text.contains("Unchanged")).await;
    page.turn_to_tab(&first).await;
    page.click("#builds .remove").await;
    page.wait_text("#save-state", |text| text == "Not saved yet.").await;
    page.pause(1300).await;
    assert_eq!(page.text("#save-state").await, "Not saved yet.");
    page.click("#bin summary").await;
    page.click("#bin .forget").await;
    page.wait_text("#bin .forget", |text| text.contains("Press again")).await;
    page.click("#bin .bring").await;
    page.wait_text("#saved-title", |text| text == "1 saved build").await;
    assert_eq!(page.texts("#builds .forget").await.len(), 0, "armed no longer");
    open(page, "Mine").await;
    page.wait_text("#eye-to-eye", |text| text == "38 in").await;
    // Leaving the page with the name half typed keeps the name.
    page.open_saved().await;
    page.enter("in-name", "Half").await;
    page.press(Key::End).await;
    page.reload().await;
    page.find("#in-name").await;
    assert_eq!(page.value("in-name").await, "Half");
}
