//! The Size view as its three users go through it.

use crate::page::{DESK, Key, PHONE, Page, Screen};
use serde_json::json;

/// The README's worked example.
pub(crate) const EXAMPLE: &str = "3&length=38in&weight=4100lb&use=hard&crc=6f47f8b8";

/// A rig owner on a phone: three entries, then the answer.
pub(crate) async fn three_entries_give_the_answer(page: &Page) {
    page.open(PHONE, "").await;
    page.enter("in-length", "3' 2\"").await;
    page.enter("in-weight", "4,100 lb").await;
    page.click("label[for='in-use-hard']").await;
    let headline = page.wait_text("#headline", |text| text.contains("2-1/4 in")).await;
    assert!(headline.contains("1-1/4-12"), "{headline}");
    assert!(page.text("#bar-length").await.contains("32-3/4 in"));
    assert!(page.text("#summary").await.contains("2-1/4 in"), "the summary follows");
    assert_eq!(page.text(".sheet-name").await, "Front lower links, 2 pieces");
    assert_eq!(page.fragment().await, EXAMPLE);
    assert_eq!(page.overflow().await, 0, "nothing sticks out sideways");
    page.click("#to-make").await;
    let ends = page.wait_text("#shop-depths", |text| text.contains("Tap drill")).await;
    assert!(ends.contains("1-11/64 in, 1.172 in across") && ends.contains("3-1/8 in deep"), "{ends}");
    page.click("#view-size").await;
    page.click("#link-parts summary").await;
    let bought = page.wait_text("#link-parts", |text| text.contains("Bolt")).await;
    assert!(bought.contains("Bolt 1 in, fine thread, Grade 8, grip 1-7/8 in without thread"), "{bought}");
    page.screenshot_whole("answer-phone").await;
    page.prefer("color-scheme", "dark").await;
    page.screenshot_whole("answer-phone-dark").await;
}

/// A bad entry gets a sentence at the field; the last good answer stays and says so.
pub(crate) async fn a_bad_entry_gets_a_sentence(page: &Page) {
    page.open(PHONE, EXAMPLE).await;
    page.wait_text("#headline", |text| text.contains("2-1/4 in")).await;
    for (typed, part) in [("38 lb", "weight"), ("400", "between"), ("3//4", "between"), ("0", "between")] {
        page.enter("in-length", typed).await;
        let sentence = page.wait_text("#err-length", |text| text.contains(part)).await;
        assert!(sentence.contains("Mount to mount"), "{typed}: {sentence}");
        assert!(page.text("#headline").await.contains("2-1/4 in"), "{typed}: the last good answer stays");
        assert_eq!(page.attribute("#in-length", "aria-invalid").await.as_deref(), Some("true"));
    }
    page.enter("in-length", "965.2 mm").await;
    page.wait_text("#bar-length", |text| text.contains("32-3/4 in")).await;
    assert_eq!(page.attribute("#in-length", "aria-invalid").await.as_deref(), Some("false"));
}

/// Whoever acts right after a key gets what that key says.
pub(crate) async fn nothing_is_copied_late(page: &Page) {
    page.open(PHONE, EXAMPLE).await;
    page.wait_text("#headline", |text| text.contains("2-1/4 in")).await;
    page.pause(400).await;
    let code = "const [length, press] = arguments, field = document.getElementById('in-length'), seen = () => [
            document.getElementById('eye-to-eye').textContent,
            document.getElementById('link-text').value.match(/length=(\\d+)/)[1]];
        field.value = length;
        field.dispatchEvent(new Event('input', { bubbles: true }));
        if (press) document.getElementById('copy-link').click();
        return new Promise(done => setTimeout(() => done(seen())))";
    assert_eq!(page.script(code, vec![json!("41"), json!(false)]).await, json!(["41 in", "41"]));
    page.pause(100).await;
    let rest = page.attribute(".drawing svg", "aria-label").await.unwrap_or_default();
    assert!(rest.contains("41 in"), "and follows: {rest}");
    assert_eq!(
        page.script(code, vec![json!("42"), json!(true)]).await,
        json!(["42 in", "42"]),
        "nothing is copied late"
    );
    page.wait_text(".sending .done", |text| text.contains("clipboard") || text.contains("did not copy")).await;
    page.enter("in-length", "43").await;
    page.wait_text(".sending .done", str::is_empty).await;
    page.enter("in-length", "927").await;
    page.wait_text("#err-length", |text| text.contains("between")).await;
    page.click("#copy-link").await;
    page.wait_text(".sending .done", |text| text.contains("the last good one") || text.contains("did not copy")).await;
}

/// What a button of the page prints is written when the browser is asked to print, and not after.
pub(crate) async fn the_buttons_print_what_the_keys_do(page: &Page) {
    let watch = "window.print = () => {
            const text = place => document.querySelector(place)?.textContent.replaceAll('\\u2060', '');
            const has = (place, words) => text(place)?.includes(words) ?? false;
            const shut = [...document.querySelectorAll('#answer .cautions details')].filter(it => !it.open).length;
            const code = document.querySelector('#code svg') !== null;
            window.printed = [has('.sheets.own.alone', '32-3/4 in'), has('#answer', 'Printed '), shut, code];
            dispatchEvent(new Event('afterprint'));
        }";
    let printed = "const id = arguments[0]; window.printed = undefined; document.getElementById(id).click();
        return new Promise(done => {
            const look = () => window.printed ? done(window.printed) : setTimeout(look, 20);
            look();
        })";
    page.open(PHONE, EXAMPLE).await;
    page.wait_text(".sending", |text| text.contains("Print")).await;
    page.script(watch, vec![]).await;
    assert_eq!(page.script(printed, vec![json!("print")]).await, json!([true, true, 0, true]), "one link");
    page.wait_count(".sheets.alone", 0).await;
    assert_eq!(page.script(printed, vec![json!("print-all")]).await, json!([false, true, 0, true]), "every working");
    // Inside a program without a printer nothing happens, and the screen is itself again.
    page.script("window.print = () => {}", vec![]).await;
    page.click("#print").await;
    page.wait_count(".sheets.alone", 1).await;
    page.wait_count(".sheets.alone", 0).await;
    page.script(watch, vec![]).await;
    page.click("#view-rig").await;
    page.wait_text("#rig-title", |text| !text.is_empty()).await;
    for button in ["print", "print-all"] {
        assert_eq!(page.script(printed, vec![json!(button)]).await, json!([false, true, 0, true]), "the rig: {button}");
    }
}

/// A field of millimeters takes a fraction as inches and asks back; thousands may be set off by a space or be a k.
pub(crate) async fn a_fraction_is_inches_and_a_k_a_thousand(page: &Page) {
    page.open(PHONE, "").await;
    page.click("#units-metric").await;
    page.enter("in-length", "36 1/2").await;
    let field = ".field:has(#in-length) [role='status']";
    let asked = page.wait_text(field, |text| text.contains("36-1/2 in?")).await;
    assert!(asked.contains("927.1 mm"), "{asked}");
    page.enter("in-weight", "4.3k lb").await;
    assert!(page.fragment().await.contains("length=36.5in&weight=4300lb"), "as they were meant");
    page.enter("in-weight", "4 400 lb").await;
    assert!(page.fragment().await.contains("weight=4400lb"), "with a space");
    page.enter("in-length", "927").await;
    page.wait_count(field, 0).await;
    assert!(page.fragment().await.contains("length=0.927&"), "a plain number is millimeters");
}

/// Six digits of millimeters stand apart on the narrowest phone.
pub(crate) async fn the_lengths_stand_apart(page: &Page) {
    page.open(PHONE, EXAMPLE).await;
    page.wait_text("#headline", |text| text.contains("2-1/4 in")).await;
    page.enter("in-length", "46 5/16").await;
    for width in [320, 360] {
        page.look_with(Screen { width, ..PHONE }).await;
        assert_eq!(page.overflow().await, 0, "nothing sticks out sideways at {width} px");
        for units in ["#units-inch", "#units-metric"] {
            page.click(units).await;
            page.pause(60).await;
            let cut = "return [...document.querySelectorAll('.plate dd')].filter(it => it.scrollWidth > it.clientWidth \
                       || it.getBoundingClientRect().right > it.closest('.plate').getBoundingClientRect().right).length";
            assert_eq!(page.script(cut, vec![]).await.as_i64(), Some(0), "{units} at {width} px");
        }
    }
}

/// On paper a link is its sheet, and what is sent says what the screen says.
pub(crate) async fn one_link_on_paper_and_in_words(page: &Page) {
    page.open(DESK, EXAMPLE).await;
    let says = page.wait_text("#weakest", |text| text.contains("Weakest")).await;
    page.click(".sending summary").await;
    let twin = page.wait_text("#twin", |text| text.contains("Parts:")).await;
    let near = says.split(" from eye A").next().unwrap_or_default();
    assert!(twin.contains("Passes. Weakest: ") && twin.contains(near), "{says} is missing in {twin}");
    for said in [
        "tap drill: 1-11/64 in, 1.172 in (29.77 mm) across",
        "drill to the shoulder: 3-1/8 in (79.4 mm) deep",
        "Wrench flats: 2 in (50.8 mm) across",
        "bolt hole in the ball: 1 in (25.4 mm)",
        "Bolt 1 in (25.4 mm), fine thread, Grade 8, grip 1-7/8 in (47.6 mm) without thread: 4",
        "Lock nut for the 1 in (25.4 mm) bolts, fine thread, to match Grade 8: 4",
        "in (831.9 mm)",
    ] {
        assert!(twin.contains(said), "{said} is missing in {twin}");
    }
    page.script("window.dispatchEvent(new Event('beforeprint'))", vec![]).await;
    page.wait_count(".one-sheet", 1).await;
    let sheet = page.texts(".one-sheet").await.concat();
    let place = |said: &str| sheet.find(said).unwrap_or_else(|| panic!("{said} is missing in {sheet}"));
    assert!(place("Saw to") < place("Tap drill") && place("Tap drill") < place("Fitting it"), "{sheet}");
    page.script("window.dispatchEvent(new Event('afterprint'))", vec![]).await;
    page.wait_count(".one-sheet", 0).await;
    let paper = page.devtools("Page.printToPDF", json!({})).await["data"].clone();
    let pages = r"return atob(arguments[0]).match(/\/Type\s*\/Page\b/g).length";
    assert_eq!(page.script(pages, vec![paper]).await.as_i64(), Some(2), "two pages for the saw and the bench");
}

/// A link sent to somebody else shows the same numbers, in either system.
pub(crate) async fn a_shared_link_shows_the_same_answer(page: &Page) {
    page.open(DESK, EXAMPLE).await;
    let headline = page.wait_text("#headline", |text| text.contains("2-1/4 in")).await;
    let bar = page.text("#bar-length").await;
    page.reload().await;
    assert_eq!(page.wait_text("#headline", |text| text.contains("in")).await, headline);
    assert_eq!(page.text("#bar-length").await, bar);
    page.screenshot_whole("answer-desk").await;
    page.prefer("color-scheme", "dark").await;
    page.screenshot_whole("answer-desk-dark").await;
    page.click("#units-metric").await;
    page.wait_text("#bar-length", |text| text.contains("mm")).await;
    let entered = [page.value("in-weight").await, page.value("in-length").await];
    assert_eq!(entered, ["1,860", "965.2"], "nobody wrote 1859.7287 kg");
    assert_eq!(page.fragment().await, EXAMPLE, "units are the reader's, not the link's");

    page.open(PHONE, "3&length=38in&weight=4900lb&use=hard&crc=6f47f8b8").await;
    let told = page.wait_text("#notices", |text| !text.is_empty()).await;
    assert!(told.contains("damaged"), "{told}");
}

/// A salesperson without a mouse: from the first field to the working of a check.
pub(crate) async fn a_keyboard_is_enough(page: &Page) {
    page.open(DESK, "").await;
    page.wait_text("#still-needed", |text| text.contains("Still needed")).await;
    page.script("document.querySelector('#in-length').focus()", vec![]).await;
    type_keys(page, "36 1/2").await;
    for _ in 0..12 {
        page.press(Key::Tab).await;
        if page.focus().await == "in-weight" {
            break;
        }
    }
    assert_eq!(page.focus().await, "in-weight", "Tab leads to the weight");
    type_keys(page, "3500").await;
    for _ in 0..12 {
        page.press(Key::Tab).await;
        if page.focus().await.starts_with("in-use") {
            break;
        }
    }
    assert!(page.focus().await.starts_with("in-use"), "Tab leads to the use");
    page.press(' ').await;
    page.press(Key::Down).await;
    page.wait_text("#headline", |text| text.contains("2 in")).await;
    for _ in 0..80 {
        page.press(Key::Tab).await;
        if page.focus().await == "to-prove" {
            break;
        }
    }
    page.press(Key::Enter).await;
    page.wait_text("#prove-title", |text| !text.is_empty()).await;
    for _ in 0..80 {
        page.press(Key::Tab).await;
        let inside =
            page.script("return document.activeElement.closest('[data-check]')?.dataset.check ?? ''", vec![]).await;
        if inside == "bar-bending" {
            page.press(Key::Enter).await;
            let math = page.wait_text("[data-check='bar-bending']", |text| text.contains("Timoshenko")).await;
            assert!(!math.is_empty());
            return;
        }
    }
    panic!("Tab never reached the check on bar bending");
}

async fn type_keys(page: &Page, text: &str) {
    for key in text.chars() {
        page.press(key).await;
    }
}

/// What was refused stays in its field when something else is pressed, and the beginning of it is nobody's entry.
pub(crate) async fn a_refused_entry_is_not_a_shorter_one(page: &Page) {
    page.open(PHONE, "").await;
    page.enter("in-weight", "4100").await;
    page.enter("in-length", "927").await;
    page.click("#in-use-hard").await;
    page.wait_text("#err-length", |text| text.contains("between")).await;
    assert_eq!(page.value("in-length").await, "927");
    let chosen = page.script("return document.getElementById('in-use-hard').checked", vec![]).await;
    assert_eq!(chosen, json!(true), "the choice was made although a sentence came above it");
    page.wait_text("#still-needed", |text| text.contains("mount to mount")).await;
    page.wait_text("#summary", |text| text == "Still needed: mount to mount.").await;
    page.click("#in-role-upper").await;
    page.wait_text("#err-length", |text| text.contains("between")).await;
    // Whoever meant millimeters says so.
    page.click("#units-metric").await;
    page.wait_text("#eye-to-eye", |text| text == "927.0 mm").await;
    assert_eq!(page.value("in-length").await, "927");
    // At once, too: neither what is undone nor another view knows of a 92.
    page.enter("in-length", "92x").await;
    page.click("#undo").await;
    page.wait_text("#still-needed", |text| text.contains("mount to mount")).await;
    page.click("#redo").await;
    page.wait_text("#eye-to-eye", |text| text == "927.0 mm").await;
    page.enter("in-length", "500x").await;
    page.click("#view-prove").await;
    page.click("#view-size").await;
    page.wait_text("#eye-to-eye", |text| text == "927.0 mm").await;
    assert!(page.fragment().await.contains("length=0.927&"));
}

/// A sentence that appears when a field is left does not move what is pressed from under the finger.
pub(crate) async fn what_is_pressed_stays_until_it_is_let_go(page: &Page) {
    page.open(DESK, EXAMPLE).await;
    page.enter("in-length", "365 abc").await;
    let press = "const radio = document.querySelector('label[for=in-use-slow]'), place = () => radio.getBoundingClientRect().top;
        const before = place();
        dispatchEvent(new PointerEvent('pointerdown', { isPrimary: true }));
        document.activeElement.blur();
        await new Promise(done => setTimeout(done, 200));
        const during = place();
        dispatchEvent(new PointerEvent('pointerup', { isPrimary: true }));
        await new Promise(done => setTimeout(done, 300));
        return [during === before, place() > before];";
    let moved = page.script(&format!("return (async () => {{ {press} }})()"), vec![]).await;
    assert_eq!(moved, json!([true, true]), "still while it is down, moved afterwards");
}

/// In a sentence no line breaks inside a size.
pub(crate) async fn sizes_in_sentences_are_whole(page: &Page) {
    page.open(PHONE, EXAMPLE).await;
    page.find("#fitting summary").await;
    page.click("#fitting summary").await;
    page.wait_text("#fitting .lines", |text| text.contains("reads 2-5/8 in")).await;
    let raw = page.script("return document.querySelector('#fitting .lines').textContent", vec![]).await;
    assert!(raw.as_str().is_some_and(|text| text.contains("reads 2-\u{2060}5/8 in")), "{raw}");
}

/// Paper opens all folds, and leaves behind what the reader had open, and the focus.
pub(crate) async fn paper_leaves_the_screen_as_it_was(page: &Page) {
    page.open(PHONE, EXAMPLE).await;
    page.wait_text(".sending", |text| text.contains("Print")).await;
    let print =
        "window.papers = 0; window.print = () => { dispatchEvent(new Event('afterprint')); window.papers += 1; }";
    page.script(print, vec![]).await;
    page.click("#answer .cautions summary").await;
    page.click("#show-code").await;
    page.find("#code svg").await;
    let open = "return [...document.querySelectorAll('#answer details')].filter(it => it.open).length";
    for (papers, all) in ["#print", "#print-all"].into_iter().enumerate() {
        page.click(all).await;
        let printed = "const wanted = arguments[0]; return new Promise(done => {
                const look = () => window.papers > wanted ? setTimeout(done, 100) : setTimeout(look, 20);
                look();
            })";
        page.script(printed, vec![json!(papers)]).await;
        assert_eq!(page.script(open, vec![]).await, json!(1), "{all}");
        assert_eq!(page.texts("#code svg").await.len(), 1, "{all}");
        assert_eq!(page.focus().await, &all[1..]);
    }
}
