//! Nothing that was entered is lost or passes for sound when it is not: late tabs, full stores, damage, the bin.

use crate::page::{DESK, Key, PHONE, Page};
use crate::saved::{open, save_as};
use crate::size::EXAMPLE;
use linkwright::document::{Document, Use};
use linkwright::quantity::{inch, lbf};
use linkwright::share;
use serde_json::json;

/// Another link than the example.
pub(crate) fn other() -> String {
    let mut document = Document::default();
    document.rig.weight = Some(lbf(3000.0));
    document.rig.usage = Some(Use::Easy);
    document.links[0].length = Some(inch(30.0));
    share::to_fragment(&document)
}

/// Fills the store to the last letter.
pub(crate) const FILL: &str = "let number = 0;
    for (const size of [1000000, 100000, 10000, 1000, 100, 10]) {
        try { while (true) localStorage.setItem('filler' + number++, 'x'.repeat(size)) } catch { }
    }
    try { while (true) localStorage.filler0 += 'x' } catch { }";

/// Takes away again what fills the store.
pub(crate) const EMPTY: &str =
    "Object.keys(localStorage).filter(it => it.startsWith('filler')).forEach(it => localStorage.removeItem(it))";

/// Sets the length of the current link, once the view it turns to has come to rest.
pub(crate) async fn length(page: &Page, inches: &str) {
    page.click("#view-size").await;
    page.wait_focus("answer").await;
    page.pause(100).await;
    page.enter("in-length", inches).await;
    let shown = format!("{inches} in");
    page.wait_text("#eye-to-eye", |text| text == shown).await;
}

/// A phone drops a tab, or somebody goes away and back: the work went on in another tab meanwhile.
pub(crate) async fn a_tab_that_comes_back_late_overwrites_nothing(page: &Page) {
    page.open(DESK, EXAMPLE).await;
    let [first, second] = page.another_tab().await;
    page.open(DESK, "").await;
    page.wait_text("#eye-to-eye", |text| text == "38 in").await;
    page.turn_to_tab(&first).await;
    page.visit(DESK, "about:blank").await;
    page.turn_to_tab(&second).await;
    page.enter("in-weight", "5000").await;
    page.wait_text(".kicker", |text| text.contains("5,000 lb")).await;
    page.pause(50).await;
    page.turn_to_tab(&first).await;
    page.open(DESK, EXAMPLE).await;
    page.wait_text(".kicker", |text| text.contains("5,000 lb")).await;
    length(page, "39").await;
    page.turn_to_tab(&second).await;
    page.wait_text("#eye-to-eye", |text| text == "39 in").await;
    page.wait_text(".kicker", |text| text.contains("5,000 lb")).await;
}

/// Keys come faster than another tab follows.
pub(crate) async fn quick_steps_beside_another_tab_all_count(page: &Page) {
    page.open(DESK, EXAMPLE).await;
    let [first, second] = page.another_tab().await;
    page.open(DESK, "").await;
    page.wait_text("#eye-to-eye", |text| text == "38 in").await;
    let code = "const field = document.getElementById('in-length');
        const weight = document.getElementById('in-weight');
        return (async () => {
            for (let step = 0; step < 40; step += 1) {
                const entry = step % 2 ? weight : field;
                entry.value = step % 2 ? 4000 + step : 30 + step / 4;
                entry.dispatchEvent(new Event('input', { bubbles: true }));
                await new Promise(done => setTimeout(done, 8 + 4 * (step % 12)));
            }
        })()";
    page.script(code, vec![]).await;
    // Timers of a hidden tab may wait for a second.
    page.pause(1500).await;
    assert_eq!([page.value("in-length").await, page.value("in-weight").await], ["39.5", "4039"]);
    page.turn_to_tab(&first).await;
    page.wait_text("#eye-to-eye", |text| text == "39-1/2 in").await;
    page.wait_text(".kicker", |text| text.contains("4,039 lb")).await;
    page.turn_to_tab(&second).await;
    assert_eq!(page.text("#eye-to-eye").await, "39-1/2 in");
    assert!(page.records().await.is_empty(), "nothing was written over");
}

/// What the page put aside and the reader took back is a build like any other from then on.
pub(crate) async fn what_was_set_aside_and_brought_back_stays(page: &Page) {
    page.open(PHONE, EXAMPLE).await;
    length(page, "41").await;
    page.open(PHONE, &other()).await;
    page.wait_text("#notices", |text| text.contains("Your own earlier entries")).await;
    page.open_saved().await;
    page.click("#bin summary").await;
    page.click("#bin .bring").await;
    page.wait_text("#saved-title", |text| text == "1 saved build").await;
    let brought = page.records().await;
    assert_eq!(brought.len(), 1, "{brought:?}");
    // The same work goes on, and is set aside once more.
    page.click("#back-to-own").await;
    length(page, "42").await;
    page.click("#clear").await;
    page.wait_text("#still-needed", |text| !text.is_empty()).await;
    let now = page.records().await;
    assert!(now.contains(&brought[0]), "{now:?}");
    assert!(now.iter().any(|it| it["links"][0]["length"] == "42 in" && !it["removed"].is_null()), "{now:?}");
    assert!(now.iter().all(|it| !it["removed"].is_null() || it["id"] == brought[0]["id"]), "{now:?}");

    // Own entries come back with the build they belong to.
    open(page, "Rig of 4,100 lb, driven hard").await;
    save_as(page, "Mine").await;
    length(page, "43").await;
    page.open(PHONE, &other()).await;
    page.click("#back-to-own").await;
    page.wait_text("#eye-to-eye", |text| text == "43 in").await;
    page.open_saved().await;
    page.wait_text("#save-state", |text| text.contains("“Mine”") && text.contains("One change since")).await;
}

/// Where there is no room to set entries aside, nothing is written over them.
pub(crate) async fn a_full_store_loses_nothing(page: &Page) {
    page.open(PHONE, EXAMPLE).await;
    length(page, "41").await;
    page.wait_kept("length=41in").await;
    page.script(FILL, vec![]).await;
    page.open(PHONE, &other()).await;
    page.wait_text("#eye-to-eye", |text| text == "30 in").await;
    page.wait_text(".trouble", |text| text.contains("is full")).await;
    let [_, _second] = page.another_tab().await;
    page.open(PHONE, "").await;
    page.wait_text("#eye-to-eye", |text| text == "41 in").await;
    page.wait_text(".kicker", |text| text.contains("4,100 lb")).await;
    page.click("#clear").await;
    page.wait_text("#still-needed", |text| !text.is_empty()).await;
    page.wait_text(".trouble", |text| text.contains("is full")).await;
    page.open(PHONE, "").await;
    page.wait_text("#eye-to-eye", |text| text == "41 in").await;
}

/// Numbers that may be wrong say so wherever they go, until somebody compared them.
pub(crate) async fn unverified_numbers_stay_so_until_compared(page: &Page) {
    let damaged = EXAMPLE.replace("length=38in", "length=36in");
    let is_unverified = |text: &str| text.contains("damaged on its way");
    page.open(PHONE, &damaged).await;
    page.wait_text("#notices", is_unverified).await;
    length(page, "37").await;
    page.reload().await;
    page.wait_text("#notices", is_unverified).await;
    save_as(page, "Doubtful").await;
    page.wait_text("#builds", is_unverified).await;
    // As a finger would: what is not kept yet is set aside when other work takes its place.
    page.wait_kept("name=Doubtful").await;
    page.click("#builds .copy").await;
    page.wait_text("#builds", |text| text.contains("Doubtful (2)")).await;
    page.click("#builds .remove").await;
    page.click("#bring-back").await;
    page.wait_text("#saved-title", |text| text == "2 saved builds").await;
    page.click("#view-size").await;
    page.click("#clear").await;
    page.wait_text("#notices", |text| !is_unverified(text)).await;
    open(page, "Doubtful (2)").await;
    page.wait_text("#notices", is_unverified).await;
    page.click("#compared").await;
    page.wait_text("#notices", |text| !is_unverified(text)).await;
    page.reload().await;
    page.wait_text("#eye-to-eye", |text| text == "37 in").await;
    page.wait_text("#notices", |text| !is_unverified(text)).await;
    let records = page.records().await;
    let unverified: Vec<bool> = records.iter().map(|record| !record["doubt"].is_null()).collect();
    assert_eq!(unverified, [true, false], "each for itself: {records:?}");
}

/// The check of an older version is read before it is shown.
pub(crate) async fn a_damaged_earlier_version_says_so(page: &Page) {
    page.open(PHONE, EXAMPLE).await;
    save_as(page, "Mine").await;
    length(page, "39").await;
    page.open_saved().await;
    page.click("#save").await;
    page.wait_text("#save-state", |text| text.contains("Unchanged")).await;
    let code = "const key = Object.keys(localStorage).find(key => key.startsWith('linkwright.build.'));
        localStorage[key] = localStorage[key].replace('length=38in', 'length=36in')";
    page.script(code, vec![]).await;
    page.reload().await;
    page.open_saved().await;
    page.click("#builds .history-of").await;
    page.wait_text("#builds .history", |text| text.contains("damaged")).await;
    page.click("#builds .history button").await;
    page.wait_text("#eye-to-eye", |text| text == "36 in").await;
    page.wait_text("#notices", |text| text.contains("damaged")).await;
}

/// A coarse clock gives everything one time: ids differ all the same.
pub(crate) async fn many_builds_in_one_tick_all_arrive(page: &Page) {
    page.before_everything("Date.now = () => 1").await;
    page.open(DESK, EXAMPLE).await;
    save_as(page, "Mine").await;
    let build = page.records().await.remove(0);
    let builds: Vec<serde_json::Value> = (0..300)
        .map(|number| {
            let mut build = build.clone();
            build["links"][0]["length"] = json!(format!("{} in", 30.0 + f64::from(number) / 16.0));
            build.as_object_mut().expect("a build").remove("id");
            build
        })
        .collect();
    let folder = page.download_to("many").await;
    let file = folder.join("many.json");
    let text = json!({ "format": "linkwright builds", "version": 1, "builds": builds }).to_string();
    std::fs::write(&file, text).expect("a file to write");
    page.choose_file("take-in", &file).await;
    page.wait_text("#saved-notices", |text| text.contains("299 of 300") || text.contains("300 builds")).await;
    let count = page.records().await.len();
    assert!(count >= 300, "{count} records");
    let last = page.records().await.iter().filter(|it| it["name"] == "Mine (300)").count();
    assert_eq!(last, 1, "every name once");
}

/// An address with nothing of ours in it leaves the entries alone, also beside another tab.
pub(crate) async fn an_address_that_brings_nothing_changes_nothing(page: &Page) {
    page.open(DESK, EXAMPLE).await;
    let [first, _] = page.another_tab().await;
    page.open(DESK, &other()).await;
    page.wait_text("#eye-to-eye", |text| text == "30 in").await;
    page.turn_to_tab(&first).await;
    page.wait_text(".elsewhere", |text| text.contains("Rig of 3,000 lb")).await;
    page.script("location.hash = 'garbage'", vec![]).await;
    page.wait_text("#notices", |text| text.contains("Nothing from it was used")).await;
    assert_eq!(page.text("#eye-to-eye").await, "38 in");
    assert_eq!(page.fragment().await, EXAMPLE);
    page.script("location.hash = ''", vec![]).await;
    page.wait_text("#notices", |text| !text.contains("Nothing from it was used")).await;
    assert_eq!(page.fragment().await, EXAMPLE);
}

/// Every button of the list keeps the focus: two presses of one key delete for good.
pub(crate) async fn a_keyboard_deletes_for_good(page: &Page) {
    page.open(PHONE, EXAMPLE).await;
    save_as(page, "Mine").await;
    page.script("document.querySelector('#builds .copy').focus()", vec![]).await;
    page.press(Key::Enter).await;
    page.wait_text("#builds", |text| text.contains("Mine (2)")).await;
    page.pause(60).await;
    let focused = "return document.activeElement.dataset.do ?? document.activeElement.id";
    assert_eq!(page.script(focused, vec![]).await, json!("copy"));
    page.click("#builds .remove").await;
    page.wait_text("#saved-title", |text| text == "1 saved build").await;
    page.wait_focus("bring-back").await;
    page.click("#bin summary").await;
    page.find("#bin .forget").await;
    page.script("document.querySelector('#bin .forget').focus()", vec![]).await;
    page.press(Key::Enter).await;
    page.wait_text("#bin .forget", |text| text.contains("Press again")).await;
    page.pause(60).await;
    page.press(Key::Enter).await;
    page.wait_text("#saved-notices", |text| text.contains("gone for good")).await;
    assert_eq!(page.records().await.len(), 1);
}

/// An old bookmark is an earlier version; a new name does not make the old one vanish.
pub(crate) async fn old_bookmarks_and_old_names_are_known(page: &Page) {
    page.open(PHONE, EXAMPLE).await;
    save_as(page, "Mine").await;
    let bookmark = page.fragment().await;
    length(page, "39").await;
    page.open_saved().await;
    page.click("#save").await;
    page.wait_text("#save-state", |text| text.contains("Unchanged")).await;
    // Until the address says so, the bookmark's would be the page's own.
    assert!(page.fragment().await.contains("length=39in"));
    page.open(PHONE, &bookmark).await;
    page.wait_text("#eye-to-eye", |text| text == "38 in").await;
    page.open_saved().await;
    page.wait_text("#save-state", |text| text.contains("Version 1 of “Mine”")).await;
    assert_eq!(page.title().await, "Saved, Mine: Linkwright");

    page.enter("in-name", "Other").await;
    page.press(Key::Tab).await;
    page.click("#save").await;
    page.wait_text("#saved-notices", |text| text.contains("Saved over “Mine”, now called “Other”")).await;
    page.click("#keep-too").await;
    page.wait_text("#saved-title", |text| text == "2 saved builds").await;
    let records = page.records().await;
    let lengths: Vec<String> =
        records.iter().map(|it| format!("{}: {}", it["name"], it["links"][0]["length"])).collect();
    assert_eq!(lengths, ["\"Mine\": \"39 in\"", "\"Other\": \"38 in\""]);
    page.click("#close-notices").await;
    page.wait_text("#saved-notices", str::is_empty).await;
}

/// What another tab does while something typed here is not written yet takes nothing away.
pub(crate) async fn what_was_just_typed_comes_first(page: &Page) {
    page.open(DESK, EXAMPLE).await;
    page.wait_text("#eye-to-eye", |text| text == "38 in").await;
    page.pause(400).await;
    let code = "const key = 'linkwright.entries', before = localStorage[key];
        const field = document.getElementById('in-length');
        field.value = '41';
        field.dispatchEvent(new Event('input', { bubbles: true }));
        localStorage[key] = before.replace(arguments[0], arguments[1]);
        dispatchEvent(new StorageEvent('storage', { key }))";
    let mut document = share::from_fragment(EXAMPLE).document;
    document.rig.weight = Some(lbf(4500.0));
    page.script(code, vec![json!(EXAMPLE), json!(share::to_fragment(&document))]).await;
    page.wait_text("#eye-to-eye", |text| text == "41 in").await;
    assert!(page.fragment().await.contains("length=41in"));
    let bin = page.records().await;
    assert!(bin.len() == 1 && bin[0]["rig"]["weight"] == "4500 lb" && !bin[0]["removed"].is_null(), "{bin:?}");
}
