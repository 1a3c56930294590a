//! Builds are kept, found, compared, binned and sent; two tabs agree; what cannot be kept is told.

use crate::kept::{EMPTY, FILL};
use crate::page::{DESK, Key, PHONE, Page, Screen};
use crate::size::EXAMPLE;
use serde_json::json;

/// Saves the current build under a name.
pub(crate) async fn save_as(page: &Page, name: &str) {
    page.open_saved().await;
    page.enter("in-name", name).await;
    page.press(Key::Tab).await;
    page.click("#save").await;
    page.wait_text("#saved-notices", |text| text.contains("Saved") && text.contains(&format!("“{name}”"))).await;
}

/// Opens the first listed build whose name has these words.
pub(crate) async fn open(page: &Page, name: &str) {
    page.open_saved().await;
    page.wait_text("#builds", |text| text.contains(name)).await;
    let code = "const all = [...document.querySelectorAll('#builds [data-build]')];
        return all.find(it => it.querySelector('h4').innerText === arguments[0])?.dataset.build ?? ''";
    let id = page.script(code, vec![json!(name)]).await;
    page.click(&format!("#builds [data-build='{}'] .open", id.as_str().unwrap_or_default())).await;
}

/// Somebody changes their mind for a winter: versions in words, a copy, the bin, two side by side.
pub(crate) async fn builds_are_kept_and_compared(page: &Page) {
    page.open(PHONE, EXAMPLE).await;
    let answer = page.wait_text("#headline", |text| text.contains("7075-T6")).await;
    save_as(page, "Trail rig").await;
    page.reload().await;
    page.wait_text("#save-state", |text| text.contains("“Trail rig”, saved") && text.contains("Unchanged")).await;
    page.click("#view-size").await;
    page.click("#clear").await;
    page.wait_text("#still-needed", |text| !text.is_empty()).await;
    open(page, "Trail rig").await;
    page.wait_text("#headline", |text| text == answer).await;

    page.enter("in-length", "39 1/4").await;
    page.wait_text("#eye-to-eye", |text| text == "39-1/4 in").await;
    page.open_saved().await;
    page.wait_text(".changes", |text| text == "Front lower links: Mount to mount: 39-1/4 in, before 38 in").await;
    page.click("#save").await;
    page.wait_text("#save-state", |text| text.contains("Unchanged")).await;
    page.click("#builds .history-of").await;
    page.wait_text("#builds .history", |text| text.contains("39-1/4 in, before 38 in")).await;
    page.click("#builds .history button").await;
    page.wait_text("#eye-to-eye", |text| text == "38 in").await;
    page.open_saved().await;
    page.wait_text("#save-state", |text| text.contains("Version 1 of “Trail rig”")).await;

    page.click("#builds .copy").await;
    page.wait_text("#builds", |text| text.contains("Trail rig (2)")).await;
    page.choose("compare-b", "Trail rig").await;
    let table = page.wait_text("#comparison", |text| text.contains("differs")).await;
    for said in ["Current build", "38 in", "39-1/4 in", "Mount to mount"] {
        assert!(table.contains(said), "{said} is missing in {table}");
    }
    page.screenshot_whole("saved-phone").await;
    assert_eq!(page.overflow().await, 0, "nothing sticks out sideways");
    page.click("#builds li:first-child .remove").await;
    page.wait_text("#saved-title", |text| text == "1 saved build").await;
    page.wait_focus("bring-back").await;
    page.press(Key::Enter).await;
    page.wait_text("#saved-title", |text| text == "2 saved builds").await;
    page.click("#builds li:first-child .remove").await;
    page.wait_text("#saved-title", |text| text == "1 saved build").await;
    page.wait_focus("bring-back").await;
    page.click("#bin summary").await;
    page.click("#bin .bring").await;
    page.wait_text("#saved-title", |text| text == "2 saved builds").await;
    let records = page.records().await;
    assert_eq!(records.len(), 2, "{records:?}");
    assert_eq!(records[0]["links"][0]["length"], "39.25 in", "what is kept can be read: {}", records[0]);
    assert!(records.iter().all(|record| record["removed"].is_null()), "{records:?}");
}

/// Steps back across an opened build bring the earlier one back with what it belongs to.
pub(crate) async fn undoing_an_opening_returns_to_the_build_before(page: &Page) {
    page.open(PHONE, EXAMPLE).await;
    save_as(page, "One").await;
    page.click("#save-another").await;
    page.wait_text("#saved-notices", |text| text.contains("One (2)")).await;
    page.click("#view-size").await;
    page.enter("in-length", "44").await;
    page.wait_text("#eye-to-eye", |text| text == "44 in").await;
    page.open_saved().await;
    page.click("#save").await;
    page.wait_text("#save-state", |text| text.contains("“One (2)”") && text.contains("Unchanged")).await;
    page.pause(1100).await;
    open(page, "One").await;
    page.wait_text("#eye-to-eye", |text| text == "38 in").await;
    page.click("#undo").await;
    page.wait_text("#eye-to-eye", |text| text == "44 in").await;
    page.open_saved().await;
    page.wait_text("#save-state", |text| text.contains("“One (2)”") && text.contains("Unchanged")).await;
}

/// Everything out into one file, everything forgotten, everything back.
pub(crate) async fn builds_leave_and_return_as_a_file(page: &Page) {
    page.open(DESK, EXAMPLE).await;
    page.wait_text("#headline", |text| text.contains("7075-T6")).await;
    for name in ["Blue rig", "Größer", "Winter \"2026\"", "Buggy"] {
        save_as(page, name).await;
        page.click("#save-another").await;
        page.wait_text("#saved-notices", |text| text.contains("(2)")).await;
    }
    page.enter("find-build", "GRÖSSER driven").await;
    page.wait_text("#builds", |text| text.contains("No build has these words")).await;
    page.enter("find-build", "grÖßer driven").await;
    let found = page.wait_text("#builds", |text| text.contains("Größer")).await;
    assert!(!found.contains("Buggy"), "{found}");
    let before = page.records().await;
    assert_eq!(before.len(), 5, "the first one took every name in turn: {before:?}");
    let folder = page.download_to("builds").await;
    page.click("#export-all").await;
    let (file, text) = page.downloaded(&folder).await;
    assert!(text.contains("\"weight\": \"4100 lb\""), "{text}");

    page.forget_everything().await;
    page.open(DESK, "").await;
    page.open_saved().await;
    page.wait_text("#saved-title", |text| text == "No saved builds yet").await;
    page.choose_file("take-in", &file).await;
    page.wait_text("#saved-notices", |text| text.contains("5 builds imported")).await;
    assert_eq!(page.records().await, before, "bit for bit");
    page.choose_file("take-in", &file).await;
    page.wait_text("#saved-notices", |text| text.contains("is here already")).await;
    assert_eq!(page.records().await, before, "nothing came twice");

    // What the page hands out when it has stopped can be taken in as well; what lay in the bin does again.
    page.click("#builds li:last-child .remove").await;
    page.wait_text("#saved-title", |text| text == "4 saved builds").await;
    let before = page.records().await;
    let code = "return Object.keys(localStorage).map(key => '\\n' + key + '\\n' + localStorage[key] + '\\n').join('')";
    let rescued = page.script(code, vec![]).await.as_str().unwrap_or_default().to_owned();
    page.forget_everything().await;
    page.open(DESK, "").await;
    page.open_saved().await;
    let other = file.with_file_name("rescued.txt");
    std::fs::write(&other, format!("Kept by Linkwright\n{rescued}")).expect("a file to write");
    page.choose_file("take-in", &other).await;
    page.wait_text("#saved-notices", |text| text.contains("5 builds imported")).await;
    assert_eq!(page.records().await, before, "bit for bit");
    page.wait_text("#saved-title", |text| text == "4 saved builds").await;

    std::fs::write(&file, &text[..text.len() / 2]).expect("a file to write");
    page.choose_file("take-in", &file).await;
    page.wait_text("#saved-notices", |text| text.contains("cut off or damaged")).await;
    std::fs::write(&file, text.replace("4100 lb", "4300 lb")).expect("a file to write");
    page.choose_file("take-in", &file).await;
    let told = page.wait_text("#saved-notices", |text| text.contains("imported")).await;
    assert!(told.contains("Compare every number"), "edited by hand: {told}");
    assert_eq!(page.records().await.len(), 10, "beside the others, instead of none");
    assert_eq!(page.overflow().await, 0, "nothing sticks out sideways");
}

/// What a friend sends lies beside what is saved here, and never over it.
pub(crate) async fn a_received_build_is_a_copy(page: &Page) {
    page.open(PHONE, EXAMPLE).await;
    save_as(page, "Mine").await;
    let mine = page.records().await;
    page.click("#view-size").await;
    page.enter("in-length", "41").await;
    page.wait_text("#eye-to-eye", |text| text == "41 in").await;
    page.open_saved().await;
    page.click("#save-another").await;
    page.wait_text("#saved-notices", |text| text.contains("Mine (2)")).await;
    let link = page.fragment().await;
    // The same link on a device that never saw it.
    page.forget_everything().await;
    page.open(PHONE, EXAMPLE).await;
    save_as(page, "Mine").await;
    page.click("#view-size").await;
    page.enter("in-weight", "4444").await;
    page.wait_text("#bar-length", |text| !text.is_empty()).await;
    page.open(PHONE, &link).await;
    page.wait_text("#notices", |text| {
        text.contains("Your own earlier entries are kept") && text.contains("came by a link")
    })
    .await;
    page.open_saved().await;
    page.wait_text("#save-state", |text| text == "Not saved yet.").await;
    let now = page.records().await;
    let saved = |records: &[serde_json::Value]| -> Vec<serde_json::Value> {
        records.iter().filter(|it| it["removed"].is_null()).map(|it| it["links"].clone()).collect()
    };
    assert_eq!(saved(&now), saved(&mine)[..1], "nothing that was saved has changed");
    assert!(
        now.iter().any(|it| it["rig"]["weight"] == "4444 lb" && !it["removed"].is_null()),
        "unsaved, so set aside: {now:?}"
    );
    page.click("#back-to-own").await;
    page.click("#view-size").await;
    page.wait_text("#in-weight", |_| true).await;
    assert_eq!(page.value("in-weight").await, "4444");
}

/// A camera reads the link back, from the screen and from the paper.
pub(crate) async fn the_code_is_the_link(page: &Page) {
    page.open(DESK, EXAMPLE).await;
    page.prefer("color-scheme", "dark").await;
    page.click("#view-rig").await;
    for id in ["add-steering", "add-sway", "add-four"] {
        page.click(&format!("#{id}")).await;
    }
    page.enter("in-name", "Trail rig, größer").await;
    page.press(Key::Tab).await;
    page.wait_text("#rig-title", |text| text == "Trail rig, größer").await;
    page.click("#show-code").await;
    page.script("document.querySelector('#code').scrollIntoView({ block: 'end' })", vec![]).await;
    let link = format!("{}#{}", page.address(), page.fragment().await);
    assert_eq!(page.scan("code-on-screen").await.as_deref(), Some(link.as_str()));
    page.click("#show-code").await;
    page.script("dispatchEvent(new Event('beforeprint'))", vec![]).await;
    // A printer draws finer than a screen.
    page.look_with(Screen { scale: 4, ..DESK }).await;
    page.devtools("Emulation.setEmulatedMedia", json!({ "media": "print" })).await;
    page.script("document.querySelector('#code').scrollIntoView({ block: 'end' })", vec![]).await;
    assert_eq!(page.scan("code-on-paper").await.as_deref(), Some(link.as_str()));
    page.devtools("Emulation.setEmulatedMedia", json!({ "media": "" })).await;
    page.script("dispatchEvent(new Event('afterprint'))", vec![]).await;
}

/// The same work in two tabs is one work; different works stay apart until somebody decides.
pub(crate) async fn two_tabs_agree_or_ask(page: &Page) {
    page.open(DESK, EXAMPLE).await;
    save_as(page, "Mine").await;
    page.click("#view-size").await;
    let [first, second] = page.another_tab().await;
    page.open(DESK, "").await;
    page.click("#view-size").await;
    page.enter("in-length", "40").await;
    page.wait_text("#eye-to-eye", |text| text == "40 in").await;
    page.turn_to_tab(&first).await;
    page.wait_text("#eye-to-eye", |text| text == "40 in").await;
    page.enter("in-weight", "4500").await;
    page.wait_text(".kicker", |text| text.contains("4,500 lb")).await;
    page.turn_to_tab(&second).await;
    page.wait_text(".kicker", |text| text.contains("4,500 lb")).await;

    // The second tab turns to something else: the first keeps what it has, and is told.
    page.click("#clear").await;
    page.enter("in-length", "30").await;
    page.enter("in-weight", "3000").await;
    page.click("label[for=in-use-easy]").await;
    page.wait_text("#eye-to-eye", |text| text == "30 in").await;
    page.turn_to_tab(&first).await;
    page.wait_text(".elsewhere", |text| text.contains("Rig of 3,000 lb")).await;
    assert_eq!(page.text("#eye-to-eye").await, "40 in");
    page.reload().await;
    page.wait_text("#eye-to-eye", |text| text == "40 in").await;
    page.enter("in-length", "42").await;
    page.wait_kept("length=42in").await;
    page.open_saved().await;
    page.wait_text("#bin summary", |text| text.contains("The bin")).await;
    let bin = page.records().await;
    assert!(
        bin.iter().any(|it| it["rig"]["weight"] == "3000 lb" && !it["removed"].is_null()),
        "written over, so set aside: {bin:?}"
    );
    page.turn_to_tab(&second).await;
    page.wait_text(".elsewhere", |text| text.contains("Mine")).await;
    assert_eq!(page.text("#eye-to-eye").await, "30 in");
    page.click("#join").await;
    page.wait_text("#eye-to-eye", |text| text == "42 in").await;
}

/// Two tabs hold the same build in different versions: the second to save is asked.
pub(crate) async fn a_build_saved_elsewhere_is_not_written_over(page: &Page) {
    page.open(DESK, EXAMPLE).await;
    save_as(page, "Mine").await;
    let id = page.records().await[0]["id"].as_str().unwrap_or_default().to_owned();
    page.click("#view-size").await;
    page.enter("in-length", "40").await;
    // As another window would that this one has not heard of.
    let code = "const key = 'linkwright.build.' + arguments[0];
        const other = JSON.parse(localStorage[key]);
        other.builds[0].rig.weight = '5000 lb';
        localStorage[key] = JSON.stringify(other)";
    page.script(code, vec![json!(id)]).await;
    page.open_saved().await;
    page.click("#save").await;
    page.wait_text(".clash", |text| text.contains("Something else was saved")).await;
    page.click("#save-over").await;
    page.wait_text("#saved-notices", |text| text.contains("Saved as “Mine”")).await;
    let now = &page.records().await[0];
    assert_eq!(now["links"][0]["length"], "40 in");
    let earlier = now["earlier"][0]["link"].as_str().unwrap_or_default();
    assert!(earlier.contains("weight=5000lb"), "the other one is an earlier version: {now}");
}

/// A full store, a blocked one, a damaged one: a sentence each, and the work goes on.
pub(crate) async fn what_cannot_be_kept_is_told(page: &Page) {
    page.open(PHONE, EXAMPLE).await;
    save_as(page, "Mine").await;
    page.click("#view-size").await;
    page.script(FILL, vec![]).await;
    page.enter("in-length", "43 1/16").await;
    page.wait_text("#eye-to-eye", |text| text == "43-1/16 in").await;
    page.wait_text(".trouble", |text| text.contains("is full")).await;
    assert!(page.fragment().await.contains("length=1.0937875"), "the address holds it");
    page.open_saved().await;
    page.enter("in-name", "A name that is much longer than the one before").await;
    page.press(Key::Tab).await;
    page.click("#save").await;
    page.wait_text("#saved-notices", |text| text.contains("Not saved.")).await;
    page.click("#builds .remove").await;
    page.wait_text("#saved-notices", |text| text.contains("Not deleted.")).await;
    page.script(EMPTY, vec![]).await;
    // What could not be kept is tried again by itself, and the notice above goes.
    page.pause(600).await;
    page.click("#save").await;
    page.wait_text("#saved-notices", |text| text.contains("Saved over “Mine”")).await;
    page.wait_text("#notices", |text| !text.contains("is full")).await;

    // Damaged records and entries.
    page.pause(400).await;
    page.script("localStorage['linkwright.build.broken'] = '{ \"format\"'; localStorage['linkwright.entries'] = localStorage['linkwright.entries'].replace('length=1.0', 'length=1.1')", vec![])
        .await;
    page.open(PHONE, "").await;
    page.wait_text("#notices", |text| text.contains("was damaged")).await;
    assert!(!page.kept("linkwright.damaged").await.is_empty(), "the damaged entries are kept as they were");
    page.open_saved().await;
    let list = page.wait_text("#builds", |text| text.contains("A damaged record")).await;
    assert!(list.contains("A name that is much longer"), "nothing else is lost: {list}");

    page.before_everything(
        "Object.defineProperty(window, 'localStorage', { get() { throw new DOMException('no', 'SecurityError') } })",
    )
    .await;
    page.open(PHONE, EXAMPLE).await;
    page.wait_text(".trouble", |text| text.contains("keeps nothing")).await;
    page.enter("in-length", "40").await;
    page.wait_text("#eye-to-eye", |text| text == "40 in").await;
    page.click("#save-here").await;
    page.wait_text(".sending .done", |text| text.contains("Not saved.")).await;
    assert!(page.fragment().await.contains("length=40in"), "the address holds it");
}

/// What changes with a name does not move the button that is being pressed.
pub(crate) async fn a_button_pressed_after_a_name_is_pressed(page: &Page) {
    page.open(PHONE, EXAMPLE).await;
    save_as(page, "Trail rig").await;
    page.enter("in-name", "Spare axle").await;
    page.click("#save-another").await;
    page.wait_text("#builds", |text| text.contains("Trail rig") && text.contains("Spare axle")).await;
}
