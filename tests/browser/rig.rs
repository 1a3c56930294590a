//! The whole rig, as a builder enters it once and opens it again for years.

use crate::page::{DESK, Key, PHONE, Page};

/// Mount to mount of each entry, in the order in which the layouts add them.
const LENGTHS: [&str; 8] = ["38", "36", "33 1/2", "48", "40", "12", "40 1/4", "34 1/2"];

/// A builder without a mouse: eight entries, twelve links, and the same after a reload and on a phone.
pub(crate) async fn an_eight_link_rig_by_keyboard(page: &Page) {
    page.open(DESK, "").await;
    tab_to(page, "view-rig", Key::Tab).await;
    page.press(Key::Enter).await;
    page.wait_text("#rig-title", |text| !text.is_empty()).await;
    fill(page, "in-name", "Trail rig, größer").await;
    fill(page, "in-weight", "4100").await;
    tab_to(page, "in-use-easy", Key::Tab).await;
    for _ in 0..2 {
        page.press(Key::Down).await;
    }
    for (axle, layouts) in
        [("add-front", &["add-three", "add-steering", "add-sway"][..]), ("add-rear", &["add-converging"])]
    {
        for id in [&[axle], layouts].concat() {
            tab_to(page, id, Key::Tab).await;
            page.press(Key::Enter).await;
        }
    }
    page.wait_text("#rig-status", |text| text == "12 links to make, none entered yet.").await;
    tab_to(page, "view-size", Key::Tab).await;
    page.press(Key::Enter).await;
    for (number, length) in LENGTHS.into_iter().enumerate() {
        tab_to(page, "link-picker", Key::Tab).await;
        if number > 0 {
            page.press(Key::Down).await;
        }
        fill(page, "in-length", length).await;
        page.wait_text("#headline", |text| text.contains("7075-T6")).await;
    }
    tab_to(page, "view-rig", Key::Tab).await;
    page.press(Key::Enter).await;
    let parts = page.wait_text("#parts", |text| text.contains("Jam nut")).await;
    assert!(parts.contains("All bars together weigh"), "{parts}");
    // Two lengths off one bar: neither is mistaken for the sum.
    assert!(parts.contains("2-1/4 in solid 7075-T6/T651 bar"), "{parts}");
    assert!(
        parts.contains(
            "saw 4 pieces, 2 × 35-1/8 in (rear lower links), 2 × 32-7/8 in (front lower links); total 136 in"
        ),
        "{parts}"
    );
    for said in
        ["Rod end, 1-1/4-12 right-hand shank × 1 in bore", "Lock nut for the 1 in bolts", "measure your bracket"]
    {
        assert!(parts.contains(said), "{said} is missing in {parts}");
    }
    let says = page.texts("#rig-links .help").await;
    let folds: Vec<_> = says.iter().filter(|line| line.to_lowercase().contains("buckling")).collect();
    assert_eq!(folds.len(), 3, "what steers says whether a push folds it, and what folds first: {says:?}");
    let once = |line: &&String| line.to_lowercase().matches("buckling").count() == 1 && !line.contains("whole link");
    assert!(folds.iter().all(once), "once, and nowhere on the link: {folds:?}");
    assert!(page.text("#rig-links").await.contains("Saw to 32-7/8 in"), "each line says its own");
    let (lines, fragment) = (page.texts("#rig-links h4").await, page.fragment().await);
    assert_eq!(lines.len(), 8, "{lines:?}");
    // The worst first, under the number that each has for good.
    assert!(
        lines[0] == "7. Rear lower links, 2 pieces" && lines.iter().any(|it| it.starts_with("4. Front tie rod")),
        "{lines:?}"
    );
    let drawn = "let texts = document.querySelectorAll('.plan .wide .letter'); return [...texts].map(it => it.textContent).sort().join('')";
    assert_eq!(page.script(drawn, vec![]).await.as_str(), Some("112345667788"), "pairs twice");
    let sums = page.texts("#rig-status, #summary").await.concat();
    assert_eq!(sums.matches("Worst: rear lower links, passes, little margin.").count(), 2, "{sums}");
    assert!(sums.contains("12 links to make. Worst: "), "{sums}");
    assert!(fragment.len() < 1500, "{} characters", fragment.len());
    page.click("#fewer").await;
    let ways = page.wait_text("#fewer-ways", |text| text.contains("One size fewer")).await;
    assert!(ways.contains("no check fails") && ways.contains("brackets and whatever else they bolt to"), "{ways}");
    assert!(!ways.contains("sway"), "its holes come with the bar: {ways}");
    page.screenshot_whole("rig-desk").await;
    // For the saw and the bench: a sheet of each link behind the rig's own.
    page.script("window.print = () => window.dispatchEvent(new Event('beforeprint'))", vec![]).await;
    page.click("#print-all").await;
    page.wait_count(".one-sheet", 8).await;
    let sheets = page.texts(".one-sheet").await;
    let sheet = sheets.iter().find(|text| text.contains("Trail rig, größer: Front lower links, 2 pieces"));
    let sheet = sheet.expect("a sheet that names rig, link and pieces");
    for said in [
        "Printed ",
        "Saw to",
        "32-7/8 in",
        "Drill to the shoulder",
        "1-11/64 in, 1.172 in across",
        "Wrench flats: ",
        "Fitting it",
    ] {
        assert!(sheet.contains(said), "{said} is missing in {sheet}");
    }
    assert_eq!(page.texts(".one-sheet > thead .sheet-name").await.len(), 8, "a head that every page repeats");
    page.script("window.dispatchEvent(new Event('afterprint'))", vec![]).await;
    page.wait_count(".one-sheet", 0).await;
    page.click(".sending summary").await;
    let twin = page.wait_text("#twin", |text| text.contains("Parts:")).await;
    let sawn = "2-1/4 in (57.2 mm) solid 7075-T6/T651 bar: saw 4 pieces, 2 × 35-1/8 in (892.2 mm) (rear lower links)";
    for said in ["Trail rig, größer", "4,100 lb", "kg", "1022.4 mm", sawn, &fragment] {
        assert!(twin.contains(said), "{said} is missing in {twin}");
    }

    page.reload().await;
    page.wait_text("#rig-title", |text| text == "Trail rig, größer").await;
    assert_eq!(page.texts("#rig-links h4").await, lines, "nothing is lost on reload");
    page.look_with(PHONE).await;
    assert_eq!(page.overflow().await, 0, "nothing sticks out sideways");
    // A finger meets one number, and none lies on a tire or on another.
    let drawn = page.script(NUMBERS, vec![]).await;
    let [count, least, closest, on_tires] = [0, 1, 2, 3].map(|at| drawn[at].as_f64().unwrap_or_default());
    assert!(count > 11.5 && least >= 44.0 && closest >= 40.0 && on_tires < 0.5, "{drawn}");
    // What is touched on the picture is what opens.
    let first = lines[0].split(',').next().unwrap_or_default().to_owned();
    page.script("document.querySelector('.plan .narrow [data-piece]').scrollIntoView({ block: 'center' })", vec![])
        .await;
    page.click("#rig-links li:first-child .open").await;
    let picked =
        page.script("let it = document.querySelector('#link-picker'); return it.selectedOptions[0].text", vec![]).await;
    assert_eq!(picked.as_str(), Some(first.as_str()));
}

/// Of the numbers on the plan: how many, how wide to touch, how far apart, and how many lie on a tire.
const NUMBERS: &str = "
    const boxes = of => [...document.querySelectorAll('.plan .narrow ' + of)].map(it => it.getBoundingClientRect());
    const [touch, tires, rings] = ['.touch', '.part', '.balloon'].map(boxes);
    const middle = box => [box.x + box.width / 2, box.y + box.height / 2];
    const far = (a, b) => Math.hypot(...middle(a).map((at, way) => at - middle(b)[way]));
    const over = (a, b) => a.left < b.right && b.left < a.right && a.top < b.bottom && b.top < a.bottom;
    return [touch.length, Math.min(...touch.map(it => it.width)),
        Math.min(...touch.flatMap((a, at) => touch.slice(at + 1).map(b => far(a, b)))),
        rings.filter(ring => tires.some(tire => over(ring, tire))).length];
";

/// Set apart, copied and taken away with a finger; the axles have their own values.
pub(crate) async fn links_are_copied_and_taken_away(page: &Page) {
    page.open(PHONE, crate::size::EXAMPLE).await;
    page.click("#view-rig").await;
    page.wait_text("#rig-links", |text| text.contains("Front lower links, 2 pieces")).await;
    let row =
        |link: usize, button: usize| format!("#rig-links li[data-link='{link}'] .buttons button:nth-of-type({button})");
    page.click(&row(0, 2)).await;
    page.wait_text("#rig-links .gone", |text| text.contains("Rear lower links added.")).await;
    page.wait_focus("undo-remove").await;
    let both = page.wait_text("#rig-links", |text| text.contains("2. Rear lower links")).await;
    assert!(both.contains("1. Front lower links"), "{both}");
    // Nothing is written over that was not named, and what was there comes back.
    page.click("#open-1").await;
    page.enter("in-length", "44").await;
    page.click("#view-rig").await;
    page.wait_text(&row(0, 2), |text| text.starts_with("Replace the rear lower links (44 in) with these")).await;
    page.click(&row(0, 2)).await;
    page.wait_text("#rig-links .gone", |text| text.contains("Rear lower links were 44 in, now 38 in.")).await;
    page.wait_focus("undo-remove").await;
    page.press(Key::Enter).await;
    page.wait_focus("open-0").await;
    page.wait_text("#rig-links li[data-link='1']", |text| text.contains("44 in: ")).await;
    page.click(&row(0, 3)).await;
    page.wait_text("#rig-links .gone", |text| text.contains("Front lower links are two entries now: left and right."))
        .await;
    page.wait_focus("undo-remove").await;
    page.wait_text("#rig-links", |text| text.contains("2. Rear lower links") && text.contains("3. Right front lower"))
        .await;
    page.click(&row(2, 4)).await;
    page.wait_text("#rig-links .gone", |text| text.contains("Front lower links are one entry again: 38 in.")).await;
    page.wait_focus("undo-remove").await;
    page.press(Key::Enter).await;
    page.wait_focus("open-2").await;
    page.click("#rig-links li[data-link='2'] .remove").await;
    // Nothing slid under the finger, and one tap brings it back.
    page.wait_text("#rig-links .gone", |text| text.contains("Right front lower link removed.")).await;
    page.wait_focus("undo-remove").await;
    page.press(Key::Enter).await;
    page.wait_focus("open-2").await;
    page.wait_text("#rig-links", |text| text.contains("Right front lower link, 1 piece")).await;
    assert!(page.texts("#rig-links .gone").await.is_empty(), "said and done");
    page.click("#rig-links li[data-link='2'] .remove").await;
    page.wait_focus("undo-remove").await;
    page.click(".adding > summary").await;
    page.click("#add-sway").await;
    page.wait_text(".adding", |text| text.contains("Added to the front axle.")).await;
    page.click("#add-sway").await;
    page.wait_text(".adding", |text| text.contains("The front axle has these already.")).await;
    let left = page.wait_text("#rig-links", |text| text.contains("sway")).await;
    assert!(!left.contains("Right front"), "the line about it is gone with the next change: {left}");
    assert!(left.contains("Left front lower link"), "{left}");
    assert_eq!(page.overflow().await, 0, "nothing sticks out sideways");
}

/// From the rig into each link and on, with a finger: the field that is missing waits for its number.
pub(crate) async fn one_link_after_the_other(page: &Page) {
    page.open(PHONE, crate::size::EXAMPLE).await;
    page.wait_text("#headline", |text| text.contains("2-1/4 in")).await;
    assert!(page.texts(".next-link").await.is_empty(), "there is no other link yet");
    page.click("#view-rig").await;
    page.click("#add-steering").await;
    page.click("#open-2").await;
    page.wait_focus("in-length").await;
    assert_eq!(page.value("link-picker").await, "2");
    page.wait_text("#summary", |text| text == "Front drag link. Still needed: mount to mount.").await;
    assert_eq!(page.text("label[for='in-length']").await, "Mount to mount, front drag link, 3 of 3");
    page.enter("in-length", "40").await;
    page.wait_text(".sheet-name", |text| text == "Front drag link, 1 piece").await;
    let line = page.text("#summary").await;
    assert!(line.starts_with("Front drag link. 1"), "the line in sight names the link: {line}");
    let below = "const [field, next] = ['#in-length', 'form .next-link']
        .map(it => document.querySelector(it).getBoundingClientRect());
        return next.top >= field.bottom && next.top - field.bottom < 150 && next.height >= 48";
    assert_eq!(page.script(below, vec![]).await.as_bool(), Some(true), "on is where the thumb is");
    page.click("form .next-link").await;
    page.wait_focus("in-length").await;
    assert_eq!(page.value("link-picker").await, "1", "the one without a length");
    assert_eq!(page.text("label[for='in-length']").await, "Mount to mount, front tie rod, 2 of 3");
    page.enter("in-length", "48").await;
    page.wait_text(".sheet-name", |text| text == "Front tie rod, 1 piece").await;
    page.wait_text(".buckling", |text| text.contains("Buckling in compression: ") && text.contains("Passes")).await;
    page.click("#code ~ .around .next-link").await;
    page.wait_text(".sheet-name", |text| text == "Front drag link, 1 piece").await;
    page.wait_focus("answer").await;
    assert!(page.texts(".next-link").await.is_empty(), "nobody is led from the last to the first");
    assert_eq!(page.texts(".back-to-rig").await, ["All entered: back to the rig"; 2]);
    page.click("form .back-to-rig").await;
    page.wait_focus("open-2").await;
    let seen = "let it = document.activeElement.closest('li').getBoundingClientRect(); return it.top > 0";
    assert_eq!(page.script(seen, vec![]).await.as_bool(), Some(true), "its whole line is in sight");
}

/// Presses Tab, round the whole page if need be, until the focus is on the element with this id.
pub(crate) async fn tab_to(page: &Page, id: &str, key: Key) {
    for _ in 0..150 {
        if page.focus().await == id {
            return;
        }
        page.press(key).await;
    }
    panic!("Tab never reached #{id}");
}

/// Tabs to a field and types into it.
pub(crate) async fn fill(page: &Page, id: &str, text: &str) {
    tab_to(page, id, Key::Tab).await;
    for key in text.chars() {
        page.press(key).await;
    }
}

/// What was taken away by mistake comes back, and what was brought back can go again.
pub(crate) async fn every_step_can_be_undone(page: &Page) {
    page.open(PHONE, crate::size::EXAMPLE).await;
    page.enter("in-length", "40").await;
    page.wait_text("#eye-to-eye", |text| text == "40 in").await;
    page.pause(1100).await;
    page.click("#view-rig").await;
    page.click("#add-steering").await;
    page.wait_text("#rig-links", |text| text.contains("Front tie rod")).await;
    page.click("#undo").await;
    page.wait_text("#rig-links", |text| !text.contains("Front tie rod")).await;
    page.click("#undo").await;
    page.wait_text("#rig-links", |text| text.contains("38 in: ")).await;
    page.click("#redo").await;
    page.wait_text("#rig-links", |text| text.contains("40 in: ")).await;
    page.click("#redo").await;
    page.wait_text("#rig-links", |text| text.contains("Front tie rod")).await;
    page.click("#clear").await;
    page.wait_text("#rig-links", |text| !text.contains("Front tie rod")).await;
    page.click("#undo").await;
    page.wait_text("#rig-links", |text| text.contains("Front tie rod")).await;
}
