//! How a link is made: the route, the paper, the cuts, the labels and the files.

use crate::page::{DESK, Key, PHONE, Page, Screen};
use crate::size::EXAMPLE;
use serde_json::json;

/// Has the print dialog open until [`close_dialog`] closes it.
pub(crate) const KEEP_DIALOG: &str = "window.print = () => window.dispatchEvent(new Event('beforeprint'))";

pub(crate) async fn close_dialog(page: &Page) {
    page.script("window.dispatchEvent(new Event('afterprint'))", vec![]).await;
}

/// A rig of two entries: front lower links, and the same at the rear.
async fn open_rig(page: &Page, screen: Screen) {
    page.open(screen, EXAMPLE).await;
    page.click("#view-rig").await;
    page.click("#rig-links li[data-link='0'] .buttons button:nth-of-type(2)").await;
    page.wait_text("#rig-links", |text| text.contains("2. Rear lower links")).await;
    page.click("#view-make").await;
    page.wait_text("#make-title", |text| text.starts_with("Make 2 pieces: 2-1/4 in")).await;
}

/// A builder: the route of each link, a page of paper for each.
pub(crate) async fn a_route_is_read_and_printed(page: &Page) {
    open_rig(page, DESK).await;
    let route = page.wait_text("#route-steps", |text| text.contains("Protect and pack")).await;
    for said in ["Tap drill, end A ●", "Tap, end B ■", "LEFT-HAND", "1-11/64 in", "rpm", "Run the rod end in"] {
        assert!(route.contains(said), "{said} is missing in {route}");
    }
    assert!(page.text("#do-not-saw").await.starts_with("Do not saw yet: measure your rod ends."));
    let (code, time) = (page.text("#make-code").await, page.text("#route-time").await);
    assert!(code.len() == 11 && time.contains("for 2 pieces"), "{code} {time}");
    // A slower machine is remembered on this device, and takes longer.
    page.click("#machine-limits > summary").await;
    page.enter("in-drill-minutes", "30").await;
    page.press(Key::Tab).await;
    let longer = page.wait_text("#route-time", |text| text != time).await;
    page.reload().await;
    page.wait_text("#route-time", |text| text == longer).await;
    page.click("#machine-limits > summary").await;
    page.enter("in-drill-minutes", "1000").await;
    page.press(Key::Tab).await;
    page.wait_text("#machine-limits .error", |text| text.contains("between 0 min and 240 min")).await;
    page.click("#reset-machine").await;
    page.wait_text("#route-time", |text| text == time).await;

    page.script(KEEP_DIALOG, vec![]).await;
    page.click("#print-routes").await;
    page.wait_count(".route-sheet", 2).await;
    let sheets = page.texts(".route-sheet").await;
    for (sheet, name) in sheets.iter().zip(["Front lower links, 2 pieces", "Rear lower links, 2 pieces"]) {
        for said in [name, "Heat or lot; certificate", "Made by", "As built", "Saw to"] {
            assert!(sheet.contains(said), "{said} is missing in {sheet}");
        }
        assert!(!sheet.contains("Fitting it"), "the fitting list is not on it: {sheet}");
    }
    assert!(sheets[0].contains(&code) && !sheets[1].contains(&code), "each its own code");
    page.wait_count(".route-sheet .camera svg", 2).await;
    close_dialog(page).await;
    page.wait_count(".route-sheet", 0).await;
    page.click("#print-route").await;
    page.wait_count(".route-sheet", 1).await;
    close_dialog(page).await;
    // A label for each piece, or one for each link.
    page.wait_text("#print-labels", |text| text == "Print 4 labels").await;
    page.click("#label-each-piece").await;
    page.wait_text("#print-labels", |text| text == "Print 2 labels").await;
    page.choose("label-size", "4 × 6 in").await;
    let preview = page.wait_text(".label-preview", |text| text.contains("threads")).await;
    assert!(preview.contains(&code), "{preview}");
    page.click("#print-labels").await;
    page.wait_count(".labels .label.of-4x6", 2).await;
    close_dialog(page).await;
    page.wait_count(".labels", 0).await;
}

/// The same rig at the saw: a plan, a remnant in the list, the files.
pub(crate) async fn cuts_are_planned_and_remnants_kept(page: &Page) {
    open_rig(page, DESK).await;
    page.click("#plan-cuts").await;
    let plan = page.wait_text("#cut-plans", |text| text.contains("proven")).await;
    for said in ["2-1/4 in", "12 ft", "Your lists hold no full bar of this size", "measure before you saw"] {
        assert!(plan.contains(said), "{said} is missing in {plan}");
    }
    // Bars of another length: the plan that stands is no longer of what is entered.
    page.click("#saw-settings > summary").await;
    page.enter("in-stock-length", "20 ft").await;
    page.press(Key::Tab).await;
    page.wait_text("#cut-plan-said", |text| text.contains("Plan the cuts again")).await;
    page.wait_count("#cut-plans", 0).await;
    page.click("#plan-cuts").await;
    page.wait_text("#cut-plans", |text| text.contains("1 bar of 20 ft")).await;
    page.script(KEEP_DIALOG, vec![]).await;
    page.click("#print-cuts").await;
    page.wait_text(".cut-sheet", |text| text.contains("1 bar of 20 ft")).await;
    close_dialog(page).await;
    page.wait_count(".cut-sheet", 0).await;
    page.click("#put-remnants").await;
    page.wait_text("#remnants-put", |text| text.contains("1 remnant put into the list")).await;
    assert_eq!(page.attribute("#put-remnants", "disabled").await.as_deref(), Some("true"), "only once");
    page.wait_text("#cut-plans", |text| text.contains("1 bar of 20 ft")).await;
    // It is there after a reload, and the next plan begins with it.
    page.reload().await;
    page.click("#plan-cuts").await;
    page.wait_text("#cut-plans", |text| text.contains("remnant of")).await;
    page.click("#view-order").await;
    page.wait_text("#shop-lists", |text| text.contains("Bars: 1 row")).await;

    page.click("#view-make").await;
    let files = [
        ("#file-dxf", "dxf", "linkwright-front-lower-links-2-pieces.dxf", "ENTITIES"),
        ("#file-cuts", "csv", "linkwright-cut-list-", "Saw length (in)"),
        ("#file-parts", "csv", "linkwright-parts-", "Rod end"),
    ];
    for (button, ending, name, inside) in files {
        let folder = page.download_to(&format!("make-{}", &button[1..])).await;
        page.click(button).await;
        let (path, text) = page.downloaded(&folder).await;
        let file = path.file_name().map(|name| name.to_string_lossy().into_owned()).unwrap_or_default();
        assert!(file.starts_with(name) && file.ends_with(ending), "{file}");
        assert!(text.contains(inside), "{inside} is missing in {text}");
    }
}

/// A saved build is cut together with what is open, and says whose each blank is.
pub(crate) async fn builds_are_cut_together(page: &Page) {
    page.open(DESK, EXAMPLE).await;
    page.click("#save-here").await;
    page.wait_text(".sending .done", |text| text.contains("Saved")).await;
    page.click("#view-make").await;
    page.click("#which-builds label:nth-of-type(2) input").await;
    page.click("#plan-cuts").await;
    let plan = page.wait_text("#cut-plans", |text| text.contains("Rig of 4,100 lb")).await;
    assert!(plan.contains("What is open now"), "{plan}");
    page.click("#which-builds label:nth-of-type(1) input").await;
    page.click("#plan-cuts").await;
    page.wait_text("#cut-plans", |text| !text.contains("What is open now") && text.contains("Rig of 4,100 lb")).await;
}

/// Nothing entered, and little room: what is needed is said, and nothing sticks out.
pub(crate) async fn make_on_a_phone(page: &Page) {
    page.open(PHONE, "").await;
    page.click("#view-make").await;
    page.wait_text("#make-title", |text| text.starts_with("Still needed")).await;
    page.click("#plan-cuts").await;
    page.wait_text("#cut-plan-said", |text| text.contains("nothing to cut yet")).await;
    open_rig(page, PHONE).await;
    page.click("#plan-cuts").await;
    page.wait_text("#cut-plans", |text| text.contains("proven")).await;
    assert_eq!(page.overflow().await, 0, "nothing sticks out sideways");
    page.screenshot_whole("make-phone").await;
    for (width, size) in [(320, "100%"), (360, "200%")] {
        page.look_with(Screen { width, ..PHONE }).await;
        page.script("document.documentElement.style.setProperty('font-size', arguments[0])", vec![json!(size)]).await;
        page.pause(60).await;
        assert_eq!(page.overflow().await, 0, "at {width} px with letters of {size}");
    }
}

/// What is measured on a piece is kept with its build, judged, printed, and never sent.
pub(crate) async fn a_piece_is_recorded(page: &Page) {
    page.open(PHONE, EXAMPLE).await;
    page.click("#view-make").await;
    page.wait_text("#as-built", |text| text.contains("Piece 2")).await;
    page.enter("in-made-heat", "H 4711").await;
    page.enter("in-made-bar", "3").await;
    page.press(Key::Tab).await;
    let told = page.wait_text("#held-back", |text| text.contains("Keep this piece in the shop")).await;
    assert!(!told.is_empty() && page.text("#as-built").await.contains("Out of tolerance"), "{told}");
    let asked = page.text("#as-built").await;
    let bar = asked.split("Bar, face to face").nth(1).and_then(|rest| rest.split("Asked: ").nth(1)).expect("a length");
    let bar = bar.split(" in").next().expect("inches").to_owned();
    page.enter("in-made-bar", &bar).await;
    page.press(Key::Tab).await;
    page.choose("in-made-gauge-a", "Go goes in, no-go does not").await;
    page.wait_text("#as-built", |text| text.contains("Within its tolerance.") && text.contains("Passed.")).await;
    page.wait_count("#held-back", 0).await;
    page.wait_kept("made-1-heat=H_4711").await;
    page.pause(300).await;
    assert!(!page.fragment().await.contains("made-"), "no link carries it");

    page.reload().await;
    page.wait_text("#as-built", |text| text.contains("Passed.")).await;
    assert_eq!(page.value("in-made-heat").await, "H 4711");
    page.script(KEEP_DIALOG, vec![]).await;
    page.click("#print-record").await;
    let paper = page.wait_text(".paper-part", |text| text.contains("Certificate of work")).await;
    for said in ["H 4711", "Within its tolerance.", "piece 2", "Link code", "Signed"] {
        assert!(paper.contains(said), "{said} is missing in {paper}");
    }
    close_dialog(page).await;
    assert_eq!(page.overflow().await, 0, "nothing sticks out sideways");
    page.screenshot_whole("record-phone").await;
}

/// How many pages paper of this size has, in inches. The browser is done with it afterward, and the page is told so.
pub(crate) async fn pages(page: &Page, [width, height]: [f64; 2]) -> i64 {
    let size = json!({ "paperWidth": width, "paperHeight": height, "preferCSSPageSize": true });
    let paper = page.devtools("Page.printToPDF", size).await["data"].clone();
    let count = r"return atob(arguments[0]).match(/\/Type\s*\/Page\b/g).length";
    page.script(count, vec![paper]).await.as_i64().unwrap_or_default()
}

/// An axle held by four links and a track bar, with its steering, every length entered; gives how many links that is.
pub(crate) async fn open_whole_axle(page: &Page) -> usize {
    page.open(DESK, EXAMPLE).await;
    page.click("#view-rig").await;
    for id in ["add-four", "add-steering"] {
        page.click(&format!("#{id}")).await;
    }
    page.wait_text("#rig-links", |text| text.contains("tie rod")).await;
    page.click("#view-order").await;
    let links = page.texts("#all-lengths h4").await.len();
    for link in 2..=links {
        page.enter(&format!("in-length-{link}"), &format!("{}", 32 + link)).await;
    }
    links
}

/// Paper: a page for each link on Letter and on A4, a page for each label, and no blank one.
pub(crate) async fn each_sheet_is_one_page(page: &Page) {
    const LETTER: [f64; 2] = [8.5, 11.0];
    const A4: [f64; 2] = [8.27, 11.69];
    let links = open_whole_axle(page).await;
    page.click("#view-make").await;
    page.wait_text("#make-title", |text| text.starts_with("Make ")).await;
    page.script(KEEP_DIALOG, vec![]).await;
    for size in [LETTER, A4] {
        page.click("#print-routes").await;
        page.wait_count(".route-sheet", links).await;
        assert_eq!(pages(page, size).await, links as i64, "{links} links on {size:?}");
        close_dialog(page).await;
        page.wait_count(".route-sheet", 0).await;
    }
    for (name, size) in [("62 × 29 mm", [2.44, 1.14]), ("4 × 6 in", [4.0, 6.0]), ("2 × 1 in", [2.0, 1.0])] {
        page.choose("label-size", name).await;
        let label = page.wait_text("#print-labels", |text| text.contains("label")).await;
        let count: i64 = label.split(' ').find_map(|word| word.parse().ok()).expect("a count");
        page.click("#print-labels").await;
        page.find(".labels").await;
        assert_eq!(pages(page, size).await, count, "labels of {name}");
        close_dialog(page).await;
        page.wait_count(".labels", 0).await;
    }
}
