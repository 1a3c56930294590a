//! The Size view as its three users go through it.

use crate::page::{DESK, Key, PHONE, Page};

/// The README's worked example.
pub(crate) const EXAMPLE: &str = "2&length=38in&weight=4100lb&use=hard&crc=fa372c2d";

/// A rig owner on a phone: three entries, then the answer.
pub(crate) async fn three_entries_give_the_answer(page: &Page) {
    page.open(PHONE, "").await;
    page.enter("in-length", "3' 2\"").await;
    page.enter("in-weight", "4,100 lb").await;
    page.click("label[for='in-use-hard']").await;
    let headline = page.wait_text("#headline", |text| text.contains("2-1/4 in")).await;
    assert!(headline.contains("1-1/4-12"), "{headline}");
    assert!(page.text("#bar-length").await.contains("32-3/4 in"));
    assert!(page.text("#summary").await.contains("2-1/4 in"), "the summary follows");
    assert_eq!(page.text(".sheet-name").await, "Front lower links, 2 pieces");
    assert_eq!(page.fragment().await, EXAMPLE);
    assert_eq!(page.overflow().await, 0, "nothing sticks out sideways");
    page.screenshot_whole("answer-phone").await;
    page.prefer("color-scheme", "dark").await;
    page.screenshot_whole("answer-phone-dark").await;
}

/// A bad entry gets a sentence at the field; the last good answer stays and says so.
pub(crate) async fn a_bad_entry_gets_a_sentence(page: &Page) {
    page.open(PHONE, EXAMPLE).await;
    page.wait_text("#headline", |text| text.contains("2-1/4 in")).await;
    for (typed, part) in [("38 lb", "weight"), ("400", "between"), ("3//4", "between"), ("0", "between")] {
        page.enter("in-length", typed).await;
        let sentence = page.wait_text("#err-length", |text| text.contains(part)).await;
        assert!(sentence.contains("Mount to mount"), "{typed}: {sentence}");
        assert!(page.text("#headline").await.contains("2-1/4 in"), "{typed}: the last good answer stays");
        assert_eq!(page.attribute("#in-length", "aria-invalid").await.as_deref(), Some("true"));
    }
    page.enter("in-length", "965.2 mm").await;
    page.wait_text("#bar-length", |text| text.contains("32-3/4 in")).await;
    assert_eq!(page.attribute("#in-length", "aria-invalid").await.as_deref(), Some("false"));
}

/// A link sent to somebody else shows the same numbers, in either system.
pub(crate) async fn a_shared_link_shows_the_same_answer(page: &Page) {
    page.open(DESK, EXAMPLE).await;
    let headline = page.wait_text("#headline", |text| text.contains("2-1/4 in")).await;
    let bar = page.text("#bar-length").await;
    page.reload().await;
    assert_eq!(page.wait_text("#headline", |text| text.contains("in")).await, headline);
    assert_eq!(page.text("#bar-length").await, bar);
    page.screenshot_whole("answer-desk").await;
    page.prefer("color-scheme", "dark").await;
    page.screenshot_whole("answer-desk-dark").await;
    page.click("#units-metric").await;
    page.wait_text("#bar-length", |text| text.contains("mm")).await;
    let entered = [page.value("in-weight").await, page.value("in-length").await];
    assert_eq!(entered, ["1,860", "965.2"], "nobody wrote 1859.7287 kg");
    assert_eq!(page.fragment().await, EXAMPLE, "units are the reader's, not the link's");

    page.open(PHONE, "2&length=38in&weight=4900lb&use=hard&crc=fa372c2d").await;
    let told = page.wait_text("#told", |text| !text.is_empty()).await;
    assert!(told.contains("damaged"), "{told}");
}

/// A salesperson without a mouse: from the first field to the working of a check.
pub(crate) async fn a_keyboard_is_enough(page: &Page) {
    page.open(DESK, "").await;
    page.wait_text("#still-needed", |text| text.contains("Still needed")).await;
    page.script("document.querySelector('#in-length').focus()", vec![]).await;
    type_keys(page, "36 1/2").await;
    for _ in 0..12 {
        page.press(Key::Tab).await;
        if page.focus().await == "in-weight" {
            break;
        }
    }
    assert_eq!(page.focus().await, "in-weight", "Tab leads to the weight");
    type_keys(page, "3500").await;
    for _ in 0..12 {
        page.press(Key::Tab).await;
        if page.focus().await.starts_with("in-use") {
            break;
        }
    }
    assert!(page.focus().await.starts_with("in-use"), "Tab leads to the use");
    page.press(' ').await;
    page.press(Key::Down).await;
    page.wait_text("#headline", |text| text.contains("2 in")).await;
    for _ in 0..80 {
        page.press(Key::Tab).await;
        if page.focus().await == "to-prove" {
            break;
        }
    }
    page.press(Key::Enter).await;
    page.wait_text("#prove-title", |text| !text.is_empty()).await;
    for _ in 0..80 {
        page.press(Key::Tab).await;
        let inside =
            page.script("return document.activeElement.closest('[data-check]')?.dataset.check ?? ''", vec![]).await;
        if inside == "bar-bending" {
            page.press(Key::Enter).await;
            let math = page.wait_text("[data-check='bar-bending']", |text| text.contains("Timoshenko")).await;
            assert!(!math.is_empty());
            return;
        }
    }
    panic!("Tab never reached the check on bar bending");
}

async fn type_keys(page: &Page, text: &str) {
    for key in text.chars() {
        page.press(key).await;
    }
}
