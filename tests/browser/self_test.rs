//! The harness tried on a page made for it: a harness that misses trouble would pass everything.

use crate::page::{DESK, Key, PHONE, Page};
use serde_json::json;

fn use_own_page(page: &Page) {
    page.serve(&xtask::root().join("tests/browser/self_test"));
}

pub(crate) async fn harness_types_and_looks(page: &Page) {
    use_own_page(page);
    page.open(PHONE, "a=1").await;
    assert_eq!(page.title().await, "Harness");
    assert_eq!(page.fragment().await, "a=1");
    let device = "return [innerWidth, innerHeight, devicePixelRatio, matchMedia('(pointer: coarse)').matches]";
    assert_eq!(page.script(device, vec![]).await, json!([360, 740, 2, true]));

    page.enter("text", "36-1/2").await;
    page.wait_text("#typed", |text| text.starts_with("36-1/2 after ")).await;
    assert_eq!(page.text("#typed").await, "36-1/2 after 8 keys", "six keys, and Control and A before them");
    assert_eq!(page.value("text").await, "36-1/2");
    page.enter("text", "").await;
    assert_eq!(page.value("text").await, "");
    // Until the shorter text has moved the button: a tap on a moving target may fall beside it.
    page.wait_text("#typed", |text| text == "after 11 keys").await;

    page.click("#count").await;
    page.press_with(Key::Shift, Key::Tab).await;
    assert_eq!(page.focus().await, "text");
    page.press(Key::Tab).await;
    page.press(Key::Enter).await;
    assert_eq!(page.wait_text("#counted", |text| text.contains("key")).await, "touch key");
    assert_eq!(page.texts("output").await.len(), 2);
    assert_eq!(page.overflow().await, 0);

    page.open(DESK, "").await;
    assert_eq!(page.script(device, vec![]).await, json!([1440, 900, 1, false]));
    page.click("#count").await;
    assert_eq!(page.text("#counted").await, "mouse");
    let background = "return getComputedStyle(document.body).backgroundColor";
    for (scheme, color) in [("dark", "rgb(0, 0, 0)"), ("light", "rgb(255, 255, 255)")] {
        page.prefer("color-scheme", scheme).await;
        assert_eq!(page.script(background, vec![]).await, json!(color), "{scheme}");
    }
    let picture = page.screenshot_whole("harness").await;
    assert!(picture.metadata().is_ok_and(|it| it.len() > 1000), "the picture is empty");
}

pub(crate) async fn harness_notices_trouble(page: &Page) {
    use_own_page(page);
    page.open(DESK, "").await;
    assert_eq!(page.take_errors().await, [""; 0]);
    assert_eq!(page.take_foreign_requests().await, [""; 0]);

    page.click("#trouble").await;
    page.script("return fetch('missing.txt').then(it => it.status)", vec![]).await;
    let errors = page.take_errors().await.join("\n");
    for part in ["said aloud", "not caught", "missing.txt"] {
        assert!(errors.contains(part), "{part} is not in: {errors}");
    }
    assert_eq!(page.take_foreign_requests().await, ["http://elsewhere.test/pixel"]);
    assert_eq!(page.take_errors().await, [""; 0], "taken errors came back");

    // With the network cut, or the server gone (also for a connection kept open), nothing arrives.
    let ask = "return fetch('index.html', { cache: 'no-store' }).then(it => it.status, () => 'nothing')";
    assert_eq!(page.script(ask, vec![]).await, json!(200));
    page.offline(true).await;
    assert_eq!(page.script(ask, vec![]).await, json!("nothing"));
    page.offline(false).await;
    assert_eq!(page.script(ask, vec![]).await, json!(200));
    page.stop_server();
    assert_eq!(page.script(ask, vec![]).await, json!("nothing"));
    page.start_server();
    assert_eq!(page.script(ask, vec![]).await, json!(200));
    page.take_errors().await;
}
