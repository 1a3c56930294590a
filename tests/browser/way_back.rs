//! The browser's own way back and forth.

use crate::page::{DESK, PHONE, Page};
use crate::size::EXAMPLE;

async fn go(page: &Page, way: &str) {
    page.script(&format!("history.{way}()"), vec![]).await;
}

/// Back and forth turn to the view and the place before, and take no entry back.
pub(crate) async fn views_and_places_are_steps_of_the_way_back(page: &Page) {
    page.open(PHONE, EXAMPLE).await;
    page.click("#view-fit").await;
    page.click("#fit-turn").await;
    page.wait_focus("fit-title").await;
    page.click("#view-size").await;
    page.enter("in-length", "41").await;
    page.wait_kept("length=41in").await;

    go(page, "back").await;
    page.wait_text("#fit-title", |text| text == "Turn it").await;
    page.wait_focus("fit-title").await;
    // Loaded anew in the middle of it, the page is where it was.
    page.reload().await;
    page.wait_text("#fit-title", |text| text == "Turn it").await;
    go(page, "back").await;
    page.wait_count(".places button", 6).await;
    go(page, "back").await;
    page.wait_text("#eye-to-eye", |text| text == "41 in").await;
    assert_eq!(page.attribute("#view-size", "aria-current").await.as_deref(), Some("page"));
    go(page, "forward").await;
    page.wait_count(".places button", 6).await;
    assert!(page.fragment().await.contains("length=41in"), "the address is of what is open");
}

/// Back from a link that was opened leads to one's own entries, at the view they were left in.
pub(crate) async fn the_way_back_from_a_link_leads_to_ones_own(page: &Page) {
    page.open(DESK, EXAMPLE).await;
    page.enter("in-length", "41").await;
    page.wait_kept("length=41in").await;
    page.click("#view-prove").await;
    let other = EXAMPLE.replace("length=38in", "length=30in");
    let other = other.rsplit_once("&crc=").map_or(other.as_str(), |(body, _)| body);
    page.script(&format!("location.hash = '{}'", other.trim_start_matches('#')), vec![]).await;
    page.wait_text("#eye-to-eye", |text| text == "30 in").await;
    page.wait_kept("length=30in").await;
    go(page, "back").await;
    page.wait_kept("length=41in").await;
    assert_eq!(page.attribute("#view-prove", "aria-current").await.as_deref(), Some("page"));
    go(page, "back").await;
    page.wait_text("#eye-to-eye", |text| text == "41 in").await;
}
