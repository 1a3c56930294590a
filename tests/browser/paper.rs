//! Quote, cut plan and certificate on Letter and A4: how many pages, the words that must stand on them, nothing cut off.

use crate::make::{KEEP_DIALOG, close_dialog, open_whole_axle, pages};
use crate::page::{DESK, Key, Page, Screen};
use crate::size::EXAMPLE;
use linkwright::document::{Document, Use};
use linkwright::quantity::{inch, lbf};
use linkwright::share;
use serde_json::json;

/// Paper with its name and its width and height, in inches.
const PAPERS: [(&str, [f64; 2]); 2] = [("Letter", [8.5, 11.0]), ("A4", [8.27, 11.69])];

/// What a browser leaves free on each side where a sheet asks for nothing else: 1 cm. In inches.
const MARGIN: f64 = 0.4;

/// What of the printed part lies outside the paper, or is wider than what holds it and hidden there.
const CUT_OFF: &str = r"
    const wide = document.documentElement.clientWidth;
    const out = element => {
        const box = element.getBoundingClientRect();
        const hidden = getComputedStyle(element).overflowX !== 'visible' && element.scrollWidth > element.clientWidth + 1;
        return box.width > 0 && (box.right > wide + 1 || box.left < -1 || hidden);
    };
    const part = document.querySelector('.paper-part');
    return [...part.querySelectorAll('*')].filter(out).map(element => `${element.tagName}.${element.className}: ${element.textContent.slice(0, 40)}`);
";

/// Prints the part behind a button on each paper, which must take so many pages of each; gives its words.
async fn printed(page: &Page, button: &str, wanted: [i64; 2]) -> String {
    page.script(KEEP_DIALOG, vec![]).await;
    let mut words = String::new();
    for ((name, [width, height]), wanted) in PAPERS.into_iter().zip(wanted) {
        page.click(button).await;
        words = page.wait_text(".paper-part", |text| !text.is_empty()).await;
        page.look_with(Screen { width: ((width - 2.0 * MARGIN) * 96.0) as u32, ..DESK }).await;
        page.devtools("Emulation.setEmulatedMedia", json!({ "media": "print" })).await;
        let cut_off = page.script(CUT_OFF, vec![]).await;
        assert_eq!(cut_off, json!([]), "{button} on {name}");
        page.devtools("Emulation.setEmulatedMedia", json!({ "media": "" })).await;
        page.look_with(DESK).await;
        // The browser is done with the paper afterward.
        assert_eq!(pages(page, [width, height]).await, wanted, "{button} on {name}");
        close_dialog(page).await;
        page.wait_count(".paper-part *", 0).await;
    }
    words
}

/// All words that must stand on a paper do.
fn says(paper: &str, all: &[&str]) {
    for words in all {
        assert!(paper.contains(words), "{words} is missing in {paper}");
    }
}

/// The quote of a whole axle: every link, the code, the total and what it is made of.
pub(crate) async fn the_quote_on_paper(page: &Page) {
    open_whole_axle(page).await;
    page.click("#fill-demo").await;
    let total = page.wait_text("#quote-total", |text| !text.is_empty()).await;
    let code = page.text("#order-code").await;
    let paper = printed(page, "#print-quote", [4, 3]).await;
    says(
        &paper,
        &[
            "Quote: ",
            &code,
            &total,
            "For",
            "Rate",
            "Amount",
            "Front lower links",
            "Front tie rod",
            "Lead time",
            "Demo order",
        ],
    );
}

/// The cut plan of a whole axle: which bars, what is sawn from each, what is left, and the saw that was reckoned with.
pub(crate) async fn the_cut_plan_on_paper(page: &Page) {
    open_whole_axle(page).await;
    page.click("#view-make").await;
    page.click("#plan-cuts").await;
    page.wait_text("#cut-plans", |text| text.contains("Saw")).await;
    let titles = page.texts("#cut-plans .one-plan h4").await;
    let paper = printed(page, "#print-cuts", [2; 2]).await;
    says(&paper, &["Cut plan: ", "Bars", "Left", "(", "mm)", "front lower links", "front tie rod", "kerf", "Printed "]);
    assert!(!titles.is_empty());
    for title in titles {
        let (size, metal) = title.split_once(" in ").expect("a size in inches");
        says(&paper, &[&format!("{size} in ("), metal]);
    }
}

/// The certificate of a pair, one piece measured and one not yet.
pub(crate) async fn the_certificate_on_paper(page: &Page) {
    page.open(DESK, EXAMPLE).await;
    page.click("#view-make").await;
    page.wait_text("#as-built", |text| text.contains("Piece 2")).await;
    page.enter("in-made-heat", "H 4711").await;
    page.enter("in-made-bar", "3").await;
    page.press(Key::Tab).await;
    page.wait_text("#held-back", |text| text.contains("Keep this piece in the shop")).await;
    let code = page.text("#make-code").await;
    let paper = printed(page, "#print-record", [2; 2]).await;
    says(
        &paper,
        &[
            "Certificate of work",
            &code,
            "H 4711",
            "Out of tolerance",
            "piece 1",
            "piece 2",
            "Judged",
            "Made and measured by",
            "Signed:",
        ],
    );
}

/// A welded tube has more steps than a bar: its route stays on one page all the same, with plain inserts, with shouldered
/// bungs, and with rosette welds.
pub(crate) async fn a_welded_tube_is_one_page(page: &Page) {
    for (kind, rosettes) in [(None, false), (Some("shouldered"), false), (Some("shouldered"), true)] {
        let mut document = Document::default();
        (document.rig.weight, document.rig.usage) = (Some(lbf(4100.0)), Some(Use::Hard));
        let link = &mut document.links[0];
        (link.length, link.material, link.rosette_welds) = (Some(inch(38.0)), Some("1026-dom"), rosettes);
        link.ends.iter_mut().for_each(|end| end.insert = kind);
        page.open(DESK, &share::to_fragment(&document)).await;
        page.click("#view-make").await;
        page.wait_text("#route-steps", |text| text.contains("Weld, end A")).await;
        let head = page.text("#route").await;
        assert_eq!(head.contains("flange of the bungs is assumed"), kind.is_some(), "on the screen too: {head}");
        let paper = printed(page, "#print-route", [1; 2]).await;
        says(&paper, &["Fit and prepare, end A", "Tap after welding", "beside the weld the answer counts"]);
        for (is_so, words) in [
            (kind.is_none(), "Slip the insert in flush"),
            (kind.is_some(), "flange of the bungs is assumed"),
            (kind.is_some(), "the flange to the tube all around at end A"),
            (rosettes, "four rosette holes"),
            (rosettes, "Fill the rosette holes first"),
        ] {
            assert_eq!(paper.contains(words), is_so, "{kind:?}, {rosettes}: {words} in {paper}");
        }
    }
}
