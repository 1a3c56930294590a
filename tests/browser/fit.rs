//! Under the rig: the six places, the log, and the card.

use crate::make::{KEEP_DIALOG, close_dialog, open_whole_axle, pages};
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

/// The pocket card: every link of a rig on one page, on both sizes of paper.
pub(crate) async fn the_card_is_one_page(page: &Page) {
    let links = open_whole_axle(page).await;
    page.click("#view-fit").await;
    page.script(KEEP_DIALOG, vec![]).await;
    page.click("#print-card").await;
    page.wait_count(".card-links section", links).await;
    let card = page.text(".pocket-card").await;
    for said in ["Front lower links", "Eye to eye 38 in. Shortest", "threads showing, at most", "lbf·ft", "clockwise"]
    {
        assert!(card.contains(said), "{said} is missing in {card}");
    }
    close_dialog(page).await;
    page.wait_count(".pocket-card", 0).await;
    one_page_each(page, links).await;
    // As many as a rig has, of a link that adds a notice.
    page.open(DESK, EIGHT).await;
    page.click("#view-fit").await;
    page.script(KEEP_DIALOG, vec![]).await;
    one_page_each(page, 8).await;
}

async fn one_page_each(page: &Page, links: usize) {
    // A printed page closes the dialog.
    for size in [[8.5, 11.0], [8.27, 11.69]] {
        page.click("#print-card").await;
        page.wait_count(".card-links section", links).await;
        assert_eq!(pages(page, size).await, 1, "{links} links on {size:?}");
        close_dialog(page).await;
        page.wait_count(".pocket-card", 0).await;
    }
}

/// A rig with every kind of link.
const EIGHT: &str = "3&links=8&length=38in&2.length=36in&3.length=33.5in&4.length=48in&5.length=40in&6.length=12in&7.length=40.25in&8.length=34.5in&weight=4100lb&2.role=upper&3.role=track-bar&4.role=tie-rod&5.role=drag-link&6.role=sway-link&8.role=upper&7.axle=rear&8.axle=rear&use=hard";

/// A rear lower link, 38 in, with rod ends that were measured: 2.594 in from eye to face as set.
pub(crate) const MEASURED: &str = "3&length=38in&weight=4100lb&own-f.a=4.6in&own-f.b=4.6in&own-t.a=2.85in&own-t.b=2.85in&own-bore.a=1in&own-bore.b=1in&own-ball.a=1.375in&own-ball.b=1.375in&own-head.a=2.775in&own-head.b=2.775in&own-head-thick.a=1.015in&own-head-thick.b=1.015in&rear.lower-height=17in&rear.upper-height=26in&use=hard&axle=rear&rod-end.a=mine&rod-end.b=mine&shank-steel.a=alloy&shank-steel.b=alloy&own-thread.a=1-1/4-12&own-thread.b=1-1/4-12&crc=bbd61ae8";

/// The same with an upper link, 34 in, half a thread showing at every end.
pub(crate) const TWO: &str = "3&links=2&length=38in&2.length=34in&weight=4100lb&visible=0.5&2.visible=0.5&own-f.a=4.6in&own-f.b=4.6in&2.own-f.a=4.6in&2.own-f.b=4.6in&own-t.a=2.85in&own-t.b=2.85in&2.own-t.a=2.85in&2.own-t.b=2.85in&own-bore.a=1in&own-bore.b=1in&2.own-bore.a=1in&2.own-bore.b=1in&own-ball.a=1.375in&own-ball.b=1.375in&2.own-ball.a=1.375in&2.own-ball.b=1.375in&own-head.a=2.775in&own-head.b=2.775in&2.own-head.a=2.775in&2.own-head.b=2.775in&own-head-thick.a=1.015in&own-head-thick.b=1.015in&2.own-head-thick.a=1.015in&2.own-head-thick.b=1.015in&rear.lower-height=17in&rear.upper-height=26in&2.role=upper&use=hard&axle=rear&2.axle=rear&rod-end.a=mine&rod-end.b=mine&2.rod-end.a=mine&2.rod-end.b=mine&shank-steel.a=alloy&shank-steel.b=alloy&2.shank-steel.a=alloy&2.shank-steel.b=alloy&own-thread.a=1-1/4-12&own-thread.b=1-1/4-12&2.own-thread.a=1-1/4-12&2.own-thread.b=1-1/4-12&crc=6b6c36fc";

/// Under the rig without a network: the page is there, and counts the taps from the open build.
async fn under_the_rig(page: &Page, fragment: &str) {
    page.open(PHONE, fragment).await;
    page.find("#view-fit").await;
    crate::offline::kept(page).await;
    page.reload().await;
    page.offline(true).await;
    page.reload().await;
    page.find("#view-fit").await;
}

/// Is it still safe? Four taps and two numbers.
pub(crate) async fn the_owner_asks_whether_it_is_safe(page: &Page) {
    under_the_rig(page, MEASURED).await;
    page.click("#view-fit").await;
    page.click("#fit-safe").await;
    let verdict = page.wait_text("#safe-verdict", |text| text.contains("Not judged")).await;
    assert!(!verdict.contains("nuts good"), "nothing was read: {verdict}");
    page.enter("in-face-a", "2.594").await;
    page.enter("in-face-b", "2.594").await;
    page.wait_text("#safe-verdict", |text| text.contains("Not judged") && text.contains("am nut")).await;
    page.click("#both-tight").await;
    page.wait_text("#safe-verdict", |text| text.contains("Threads and jam nuts good")).await;
    // One nut loose, and no green word stays.
    page.click("label[for=in-nut-b-no]").await;
    let verdict = page.wait_text("#safe-verdict", |text| text.contains("Stop")).await;
    assert!(verdict.contains("jam nut at B is loose") && !verdict.contains("nuts good"), "{verdict}");
    // Readings stay on a reload, and change no size.
    page.reload().await;
    page.wait_text("#safe-verdict", |text| text.contains("jam nut at B is loose")).await;
    assert_eq!(page.value("in-face-a").await, "2.594");
    assert!(!page.fragment().await.contains("face"), "no link carries a reading");
}

/// Make it 3/16 longer, and which nut do I loosen: two taps and a number.
pub(crate) async fn the_owner_makes_it_longer(page: &Page) {
    under_the_rig(page, MEASURED).await;
    page.click("#view-fit").await;
    page.click("#fit-turn").await;
    page.enter("turn-wish", "3/16").await;
    let told = page.wait_text("#turn-answer", |text| text.contains("flat")).await;
    assert!(told.contains("1 turn and 1 flat, clockwise, looking from the eye at end A"), "{told}");
    let (a, b) =
        (told.find("nut at A").or(told.find("jam nut at A")), told.find("nut at B").or(told.find("jam nut at B")));
    assert!(a.is_some() && b.is_some(), "which nut loosens which way: {told}");
    // Too far: no way to turn is shown, but the bar to order.
    page.enter("turn-wish", "1").await;
    let told = page.wait_text("#turn-answer", |text| text.contains("order one of")).await;
    assert!(told.contains("too short") && !told.contains("clockwise, looking"), "{told}");
    page.enter("turn-wish", "3/16").await;
    page.wait_text("#turn-answer", |text| text.contains("1 turn and 1 flat")).await;
    page.click("#turn-log").await;
    page.wait_text("#fit-log > summary", |text| text.contains("1 entry")).await;
    assert_eq!(page.value("turn-wish").await, "", "a turn that was made is not asked for twice");
    page.click("#fit-log > summary").await;
    page.wait_text("#turned-since", |text| text == "0.194 in longer in all: turned once.").await;
}

/// Pinion up 2 degrees: three taps and a number, the heights being known.
pub(crate) async fn the_owner_lifts_the_pinion(page: &Page) {
    under_the_rig(page, TWO).await;
    page.click("#view-fit").await;
    page.click("#fit-turn").await;
    page.click("label[for=ask-pinion]").await;
    page.enter("turn-wish", "2").await;
    let told = page.wait_text("#turn-answer", |text| text.contains("turn")).await;
    // 9 in between the mounts: 9 in × sin 2° = 0.314 in back; × cos 30° along uppers that converge; 1/6 in a turn.
    assert!(
        told.contains("1 turn and 4 flats, clockwise, looking from the eye at end A")
            && told.contains("Left rear upper link")
            && told.contains("Right rear upper link"),
        "{told}"
    );
}

/// I hit a rock: a bent bar of 7075 is done, whatever else was looked at.
pub(crate) async fn the_owner_hit_a_rock(page: &Page) {
    under_the_rig(page, MEASURED).await;
    page.click("#view-fit").await;
    page.click("#fit-hit").await;
    page.wait_text("#hit-verdict", |text| text.contains("Not judged")).await;
    page.enter("in-hit-bow", "1/4").await;
    let told = page.wait_text("#hit-verdict", |text| text.contains("Stop")).await;
    assert!(!told.contains("Drive on"), "{told}");
    page.enter("in-hit-bow", "0").await;
    page.wait_text("#hit-verdict", |text| text.contains("Not judged")).await;
    page.click("#hit-all-clean").await;
    page.wait_text("#hit-verdict", |text| text.contains("Drive on")).await;
    page.click("label[for=in-hit-crack-yes]").await;
    let told = page.wait_text("#hit-verdict", |text| text.contains("Stop")).await;
    assert!(!told.contains("Drive on"), "{told}");
    // In the log it stands above every place, and takes the green word from the threads, until the bar is replaced.
    page.click("#hit-log").await;
    page.wait_text("#open-hit", |text| text.starts_with("Stop. A hit is in the log")).await;
    page.click(".fit-head .back").await;
    page.click("#fit-safe").await;
    page.enter("in-face-a", "2.594").await;
    page.enter("in-face-b", "2.594").await;
    page.click("#both-tight").await;
    let told = page.wait_text("#safe-verdict", |text| text.contains("a hit is open")).await;
    assert!(!told.contains("nuts good"), "{told}");
    page.click("#bar-replaced").await;
    page.wait_text("#safe-verdict", |text| text.contains("Threads and jam nuts good")).await;
    page.wait_count("#open-hit", 0).await;
}

/// The list of fitting, a recheck and its calendar file.
pub(crate) async fn ticks_and_rechecks_are_kept(page: &Page) {
    page.open(PHONE, MEASURED).await;
    page.click("#view-fit").await;
    page.click("#fit-fit-it").await;
    page.click(".fit-steps li:nth-child(2) label").await;
    page.wait_text("#answer", |text| text.contains("1 of")).await;
    page.reload().await;
    page.wait_text("#answer", |text| text.contains("1 of")).await;
    page.click(".fit-head .back").await;
    page.click("#fit-recheck").await;
    page.wait_text("#recheck-due", |text| text.contains("no date of fitting")).await;
    let folder = page.download_to("recheck").await;
    page.click("#recheck-calendar").await;
    let (path, text) = page.downloaded(&folder).await;
    assert!(path.extension().is_some_and(|ending| ending == "ics"), "{}", path.display());
    assert!(text.starts_with("BEGIN:VCALENDAR\r\n") && text.contains("RRULE:"), "{text}");
    page.script(KEEP_DIALOG, vec![]).await;
    for size in [[8.5, 11.0], [8.27, 11.69]] {
        page.click("#print-recheck").await;
        page.wait_text(".recheck-sheet", |text| text.contains("Witness line")).await;
        assert_eq!(pages(page, size).await, 1, "on {size:?}");
        close_dialog(page).await;
        page.wait_count(".recheck-sheet", 0).await;
    }
}

/// What cannot be read judges nothing: neither a reading, nor a log that was damaged where it is kept.
pub(crate) async fn nothing_is_judged_by_what_cannot_be_read(page: &Page) {
    page.open(PHONE, MEASURED).await;
    page.click("#view-fit").await;
    page.click("#fit-safe").await;
    page.enter("in-face-a", "2.594").await;
    page.enter("in-face-b", "2.594").await;
    page.click("#both-tight").await;
    page.wait_text("#safe-verdict", |text| text.contains("nuts good")).await;
    for hostile in ["1e400", "-5", "9999", "NaN", "2.6 lb", "<b>2</b>"] {
        page.enter("in-face-a", hostile).await;
        let told = page.wait_text("#safe-verdict", |text| text.contains("Not judged")).await;
        assert!(!told.contains("nuts good"), "{hostile}: {told}");
        page.enter("in-face-a", "2.594").await;
        page.wait_text("#safe-verdict", |text| text.contains("nuts good")).await;
    }
    let spoil = "for (const key of Object.keys(localStorage)) if (key.startsWith('linkwright.log.')) localStorage[key] = '{ spoiled'";
    page.script(spoil, vec![]).await;
    page.reload().await;
    page.find("#log-damaged").await;
    page.wait_text("#safe-verdict", |text| text.contains("Not judged")).await;
    page.enter("in-face-a", "2.594").await;
    let kept = "return Object.values(localStorage).includes('{ spoiled')";
    assert_eq!(page.script(kept, vec![]).await, json!(true), "it stays as it was found");
    page.reload().await;
    page.find("#log-damaged").await;
}
