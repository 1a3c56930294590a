//! Answers of the Fit view that reach beyond the bar that is looked at.

use crate::fit::{MEASURED, TWO};
use crate::page::{PHONE, Page};
use crate::size::EXAMPLE;

/// Both bars of a pair are turned: an entry for each, and what was read on each is taken back.
pub(crate) async fn both_bars_of_a_pair_go_into_the_log(page: &Page) {
    page.open(PHONE, MEASURED).await;
    page.click("#view-fit").await;
    page.click("#fit-safe").await;
    page.enter("in-face-a", "2.594").await;
    page.enter("in-face-b", "2.594").await;
    page.click(".fit-head .back").await;
    page.click("#fit-turn").await;
    page.enter("turn-wish", "3/16").await;
    let told = page.wait_text("#turn-answer", |text| text.contains("Right rear lower link")).await;
    assert!(told.contains("Left rear lower link") && told.contains("Nothing was read on this bar"), "{told}");
    page.wait_text("#turn-log", |text| text == "I turned them").await;
    page.click("#turn-log").await;
    page.wait_text("#fit-log > summary", |text| text == "Log: 1 entry").await;
    page.click("label[for=bar-1]").await;
    page.wait_text("#fit-log > summary", |text| text == "Log: 1 entry").await;
    page.click("label[for=bar-0]").await;
    page.click(".fit-head .back").await;
    page.click("#fit-safe").await;
    page.wait_text("#safe-verdict", |text| text.contains("No reading at end A")).await;
}

/// A slope is typed once for an axle, whichever bar of it is looked at.
pub(crate) async fn a_slope_is_typed_once_for_an_axle(page: &Page) {
    page.open(PHONE, TWO).await;
    page.click("#view-fit").await;
    page.click("#fit-turn").await;
    page.click("label[for=ask-pinion]").await;
    page.click("#turn-basis > summary").await;
    page.enter("in-lower-slope", "6").await;
    page.click("label[for=bar-1]").await;
    assert_eq!(page.value("in-lower-slope").await, "6");
}

/// From a rod end that nobody measured to its field, with its fold open.
pub(crate) async fn a_rod_end_is_entered_where_it_is_missing(page: &Page) {
    page.open(PHONE, EXAMPLE).await;
    for _ in 0..2 {
        page.click("#view-fit").await;
        page.click("#fit-safe").await;
        page.click(".fit-end:nth-child(2) .enter-rod-end").await;
        page.wait_focus("in-rod-end-b").await;
        assert_eq!(page.attribute("#view-size", "aria-current").await.as_deref(), Some("page"));
        // Folded by the reader, it opens again at the next press.
        page.script(
            "document.getElementById('in-rod-end-b').closest('details').querySelector('summary').click()",
            vec![],
        )
        .await;
        page.wait_count("details.group[open] #in-rod-end-b", 0).await;
    }
    page.click("#view-fit").await;
    page.click("#fit-turn").await;
    page.enter("turn-wish", "1/16").await;
    page.wait_text("#turn-answer", |text| text.contains("is not measured")).await;
    page.click("#turn-answer .enter-rod-end").await;
    page.wait_focus("in-rod-end-a").await;
}

/// While a hit is open no place has a good word.
pub(crate) async fn a_hit_takes_the_good_word_everywhere(page: &Page) {
    page.open(PHONE, MEASURED).await;
    page.click("#view-fit").await;
    page.click("#fit-hit").await;
    page.click("label[for=in-hit-crack-yes]").await;
    page.wait_text("#hit-verdict", |text| text.contains("Stop")).await;
    page.click("#hit-log").await;
    page.wait_text("#open-hit", |text| text.starts_with("Stop. A hit is in the log")).await;
    for place in ["safe", "turn", "fit-it", "recheck", "spares"] {
        page.click(".fit-head .back").await;
        page.click(&format!("#fit-{place}")).await;
        match place {
            "safe" => {
                page.enter("in-face-a", "2.594").await;
                page.enter("in-face-b", "2.594").await;
                page.click("#both-tight").await;
                page.wait_text("#safe-verdict", |text| text.contains("a hit is open")).await;
            }
            "turn" => {
                page.enter("turn-wish", "1/8").await;
                page.wait_text("#turn-answer", |text| text.contains("a hit is open")).await;
            }
            "spares" => {
                page.wait_text("#spares-list", |text| text.contains("a hit is open")).await;
            }
            _ => {}
        }
        page.wait_count("#answer .verdict.passes", 0).await;
    }
}
