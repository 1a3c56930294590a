//! What somebody hears who cannot see the page: names, headings, tables, and what speaks up by itself.

use crate::page::{PHONE, Page};
use crate::size::EXAMPLE;
use serde_json::{Value, json};

/// One thing in the tree that a screen reader reads.
struct Heard {
    role: String,
    name: String,
    focusable: bool,
    level: i64,
}

async fn hear(page: &Page) -> Vec<Heard> {
    let tree = page.devtools("Accessibility.getFullAXTree", json!({})).await;
    let text = |value: &Value| value["value"].as_str().unwrap_or_default().trim().to_owned();
    let property = |node: &Value, name: &str| {
        let all = node["properties"].as_array().into_iter().flatten();
        all.filter(|it| it["name"] == name).map(|it| it["value"]["value"].clone()).next().unwrap_or_default()
    };
    let nodes = tree["nodes"].as_array().cloned().unwrap_or_default();
    nodes
        .iter()
        .filter(|node| node["ignored"] != true)
        .map(|node| Heard {
            role: text(&node["role"]),
            name: text(&node["name"]),
            focusable: property(node, "focusable") == true,
            level: property(node, "level").as_i64().unwrap_or_default(),
        })
        .collect()
}

/// Everything that can be reached says what it is, and headings lead down one step at a time.
async fn makes_sense(page: &Page, view: &str) -> Vec<Heard> {
    let heard = hear(page).await;
    assert!(heard.len() > 20, "{view}: there is a page");
    for it in heard.iter().filter(|it| it.focusable) {
        let plain = ["RootWebArea", "generic", "none"].contains(&it.role.as_str());
        // What only scrolls is read from inside.
        let read_inside = it.role == "region" || it.role == "math" || it.role == "group";
        assert!(plain || read_inside || !it.name.is_empty(), "{view}: a {} has no name", it.role);
    }
    for it in heard.iter().filter(|it| ["image", "SvgRoot", "img"].contains(&it.role.as_str())) {
        assert!(it.name.len() > 15, "{view}: a picture says only {:?}", it.name);
    }
    let mut last = 0;
    for it in heard.iter().filter(|it| it.role == "heading") {
        assert!(!it.name.is_empty(), "{view}: a heading says nothing");
        assert!(it.level <= last + 1, "{view}: from a heading of level {last} to {:?} of level {}", it.name, it.level);
        last = it.level;
    }
    let regions = heard.iter().filter(|it| it.role == "status").count();
    assert!(regions <= 5, "{view}: {regions} places speak up by themselves");
    heard
}

/// The three entries, the answer and what is saved, heard.
pub(crate) async fn every_view_can_be_heard(page: &Page) {
    page.open(PHONE, "").await;
    let heard = makes_sense(page, "the first screen").await;
    for field in ["Mount to mount", "Rig weight, loaded"] {
        let there = heard.iter().any(|it| it.role == "textbox" && it.name.starts_with(field));
        assert!(there, "a field is called {field}");
    }
    page.open(PHONE, EXAMPLE).await;
    page.wait_text("#headline", |text| text.contains("7075-T6")).await;
    let heard = makes_sense(page, "Size").await;
    let drawn = heard.iter().find(|it| it.role == "image" || it.role == "SvgRoot").map(|it| it.name.as_str());
    assert!(drawn.is_some_and(|name| name.contains("38 in")), "the drawing is told in words: {drawn:?}");
    page.click("#view-prove").await;
    page.wait_text(".checks", |text| !text.is_empty()).await;
    page.click(".check > summary").await;
    makes_sense(page, "Prove").await;
    page.click("#view-rig").await;
    page.click("#add-steering").await;
    page.wait_text("#rig-links", |text| text.contains("tie rod")).await;
    let heard = makes_sense(page, "Rig").await;
    let open = heard.iter().filter(|it| it.role == "button" && it.name.starts_with("Open ")).count();
    assert_eq!(open, 3, "each button says which link it opens");
    page.open_saved().await;
    page.click("#save").await;
    page.wait_text("#saved-notices", |text| text.contains("Saved")).await;
    page.click("#save-another").await;
    page.choose("compare-b", "Rig of 4,100 lb, driven hard").await;
    page.wait_text("#comparison", |text| !text.is_empty()).await;
    makes_sense(page, "Saved").await;
}

/// Large letters and narrow screens: nothing is cut off or lies over something else.
pub(crate) async fn twice_the_letters_still_fit(page: &Page) {
    for (width, size) in [(320, "100%"), (360, "200%"), (1280, "200%")] {
        page.open(crate::page::Screen { width, ..PHONE }, EXAMPLE).await;
        page.script("document.documentElement.style.setProperty('font-size', arguments[0])", vec![json!(size)]).await;
        for view in ["view-size", "view-prove", "view-order", "view-make", "view-fit", "view-rig", "view-saved"] {
            page.click(&format!("#{view}")).await;
            page.pause(60).await;
            assert_eq!(page.overflow().await, 0, "{view} at {width} px with letters of {size}");
        }
    }
}
