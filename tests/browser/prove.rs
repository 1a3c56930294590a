//! The Prove view as somebody goes through it who does not believe the answer.

use crate::page::{DESK, PHONE, Page};
use crate::size::EXAMPLE;

/// A rig owner touches the part that looks weak and reads why it holds.
pub(crate) async fn a_touched_part_opens_its_working(page: &Page) {
    page.open(PHONE, EXAMPLE).await;
    page.wait_text("#headline", |text| text.contains("2-1/4 in")).await;
    page.click("#view-prove").await;
    let words = page.wait_text("#hill-words", |text| text.contains("bending moment")).await;
    assert!(words.contains("factor of 1.25"), "{words}");
    page.click(".hill .narrow [data-part='shank at end A']").await;
    let working = page.wait_text("[data-check='shank-bending']", |text| text.contains("Section modulus")).await;
    assert!(working.contains("Source: "), "{working}");
    assert_eq!(page.overflow().await, 0, "nothing sticks out sideways");
    page.screenshot_whole("prove-phone").await;
    page.reload().await;
    page.wait_text("#prove-title", |text| !text.is_empty()).await;
}

/// An engineer runs every outside check and looks for what would change the answer.
pub(crate) async fn every_outside_value_agrees_here(page: &Page) {
    page.open(DESK, EXAMPLE).await;
    page.click("#view-prove").await;
    page.click("#outside > summary").await;
    let sum = page.wait_text("#outside-sum", |text| text.contains("agree")).await;
    let counts: Vec<usize> = sum.split(|c: char| !c.is_ascii_digit()).filter_map(|word| word.parse().ok()).collect();
    let [agree, all, explained] = counts[..] else { panic!("{sum}") };
    assert!(agree + explained == all && all >= 250, "{sum}");
    page.click("#moves > summary").await;
    let moves = page.wait_text("#moves", |text| text.contains("Rig weight, loaded")).await;
    assert!(moves.contains("points"), "{moves}");
    page.click("#metals > summary").await;
    page.wait_text("#metals", |text| text.contains("6061-T6 bar")).await;
    page.screenshot_whole("prove-desk").await;
    // Touching a point of the plot takes its metal; the size is found anew.
    page.click("#metals tbody button[data-metal='6061-t6']").await;
    page.wait_text(".kicker", |text| text.contains("6061-T6")).await;
    assert!(page.fragment().await.contains("6061-t6"), "the link carries the metal");
}

/// A changed assumption marks what rests on it, and one tap takes it back.
pub(crate) async fn a_changed_assumption_leaves_its_mark(page: &Page) {
    page.open(DESK, EXAMPLE).await;
    page.click("#view-prove").await;
    page.wait_text("[data-check='bar-bending']", |text| text.contains("Passes")).await;
    let loads = "details.group:nth-of-type(5) > summary";
    page.click(loads).await;
    page.enter("in-drop", "0.1").await;
    page.wait_text("[data-check='bar-bending']", |text| text.contains("your own drop before it lands")).await;
    page.script("document.querySelectorAll('.far-below').forEach(fold => { fold.open = true; })", vec![]).await;
    let nut = page.wait_text("[data-check='jam-nut-seat']", |text| !text.is_empty()).await;
    assert!(!nut.contains("your own"), "a jam nut does not rest on the drop: {nut}");
    assert_eq!(page.focus().await, "in-drop", "typing is not interrupted");
    page.click("#defaults").await;
    page.wait_text("[data-check='bar-bending']", |text| !text.contains("your own")).await;
    assert_eq!(page.fragment().await, EXAMPLE);
}
