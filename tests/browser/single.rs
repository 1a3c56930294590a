//! The page in one file, opened from a folder as from a memory stick.

use crate::page::{DESK, PHONE, Page};
use crate::size::EXAMPLE;
use serde_json::json;
use std::path::PathBuf;

fn built() -> PathBuf {
    let file = xtask::build::dist_single().join(xtask::single::NAME);
    assert!(file.is_file(), "there is no {}: run `cargo xtask build`", file.display());
    file
}

/// A salesperson with a stick: entries, answer, working, and the same again the next day.
pub(crate) async fn one_file_opens_from_a_folder(page: &Page) {
    page.stop_server();
    let address = format!("file://{}", built().display());
    page.visit(DESK, &address).await;
    page.is_live().await;
    page.enter("in-length", "38").await;
    page.enter("in-weight", "4,100 lb").await;
    page.click("label[for='in-use-hard']").await;
    let headline = page.wait_text("#headline", |text| text.contains("2-1/4 in")).await;
    page.click("#view-prove").await;
    page.wait_text("#prove-title", |text| !text.is_empty()).await;
    page.click("#view-size").await;
    let kept = "return localStorage.getItem('linkwright.entries')?.split('\\n')[0]";
    assert_eq!(page.script(kept, vec![]).await, json!(EXAMPLE), "kept before the file is closed");

    page.visit(PHONE, &address).await;
    assert_eq!(page.script(kept, vec![]).await, json!(EXAMPLE), "kept when it is opened again");
    assert_eq!(page.wait_text("#headline", |text| text.contains("in")).await, headline, "entries are kept");
    page.screenshot("single-phone").await;
    page.visit(PHONE, &format!("{address}#{}", EXAMPLE.replace("38in", "40in"))).await;
    page.wait_text("#notices", |text| text.contains("damaged")).await;
}

/// Copied badly: it says so instead of answering, or standing there for ever.
pub(crate) async fn a_damaged_file_says_so(page: &Page) {
    let whole = std::fs::read(built()).expect("it was there just now");
    let inside = |id: &str| {
        let packed = format!("id=\"{id}\">");
        let at = whole.windows(packed.len()).position(|piece| piece == packed.as_bytes());
        at.expect("it is inside") + 1_000
    };
    let program = inside("packed");
    let changed = |at: usize| {
        let mut changed = whole.clone();
        changed[at] ^= 1;
        changed
    };
    let (first, second) = (changed(program), changed(inside("packed-rest")));
    let half = whole[..program].to_vec();
    let file = std::env::temp_dir().join(format!("linkwright-damaged-{}.html", std::process::id()));
    for (name, bytes, why) in
        [("first part changed", first, ""), ("second part changed", second, ""), ("half", half, "ends before")]
    {
        std::fs::write(&file, bytes).expect("there is room for a copy");
        page.visit(PHONE, &format!("file://{}", file.display())).await;
        let text = page.wait_text(".rescue", |text| text.contains("not as it was made")).await;
        assert!(text.contains(why), "{name}: {text}");
    }
    page.screenshot_whole("single-damaged").await;
    std::fs::remove_file(file).expect("it was written");
}
