//! The page in one file, opened from a folder as from a memory stick.

use crate::page::{DESK, PHONE, Page};
use crate::size::EXAMPLE;
use serde_json::json;

/// A salesperson with a stick: entries, answer, working, and the same again the next day.
pub(crate) async fn one_file_opens_from_a_folder(page: &Page) {
    page.stop_server();
    let file = xtask::build::dist_single().join(xtask::single::NAME);
    assert!(file.is_file(), "there is no {}: run `cargo xtask build`", file.display());
    let address = format!("file://{}", file.display());
    page.visit(DESK, &address).await;
    page.is_live().await;
    page.enter("in-length", "38").await;
    page.enter("in-weight", "4,100 lb").await;
    page.click("label[for='in-use-hard']").await;
    let headline = page.wait_text("#headline", |text| text.contains("2-1/4 in")).await;
    page.click("#leaf-prove").await;
    page.wait_text("#prove-title", |text| !text.is_empty()).await;
    page.click("#leaf-size").await;
    let kept = "return localStorage.getItem('linkwright.entries')?.split('\\n')[0]";
    assert_eq!(page.script(kept, vec![]).await, json!(EXAMPLE), "kept before the file is closed");

    page.visit(PHONE, &address).await;
    assert_eq!(page.script(kept, vec![]).await, json!(EXAMPLE), "kept when it is opened again");
    assert_eq!(page.wait_text("#headline", |text| text.contains("in")).await, headline, "entries are kept");
    page.screenshot("single-phone").await;
    page.visit(PHONE, &format!("{address}#{}", EXAMPLE.replace("38in", "40in"))).await;
    page.wait_text("#told", |text| text.contains("damaged")).await;
}
