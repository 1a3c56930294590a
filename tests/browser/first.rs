//! The first screen, there before the program: the same as the live page, taken over without a jump.

use crate::page::{DESK, PHONE, Page};
use crate::size::EXAMPLE;
use serde_json::json;
use std::path::PathBuf;

/// The live page as it can stand before its program: what folds hide is left out, so is what only
/// the program needs, and what a reader may change stands as it is at first.
const LIVE: &str = r"
    const copy = document.createElement('div');
    for (const it of [...document.body.children]) {
        if (it.matches('header, main, footer, .summary')) copy.append(it.cloneNode(true));
    }
    for (const it of copy.querySelectorAll('details > :not(summary)')) it.remove();
    for (const it of copy.querySelectorAll('*')) {
        // A program that is not there yet tells nothing.
        it.removeAttribute('aria-live');
        if (it.getAttribute('class') === '') it.removeAttribute('class');
    }
    for (const it of document.querySelectorAll('main input[id]')) {
        const twin = copy.querySelector('#' + CSS.escape(it.id));
        if (twin && it.checked) twin.setAttribute('checked', '');
    }
    return copy.innerHTML.replaceAll(/<!--.*?-->/g, '');
";

fn file() -> PathBuf {
    xtask::root().join("src/shell/first.html")
}

/// Whoever changes the first screen has it written anew: `UPDATE_FIRST=1`.
pub(crate) async fn the_first_screen_is_the_live_page(page: &Page) {
    page.open(DESK, "").await;
    page.wait_text("#still-needed", |text| text.contains("Still needed")).await;
    let live = page.script(LIVE, vec![]).await;
    // One element a line, to be read in a diff; the page does not depend on space between elements.
    let live = live.as_str().unwrap_or_default().replace("><", ">\n<") + "\n";
    if std::env::var_os("UPDATE_FIRST").is_some() {
        std::fs::write(file(), &live).expect("src/shell/first.html");
    }
    let kept = std::fs::read_to_string(file()).expect("src/shell/first.html");
    let differs = kept.lines().zip(live.lines()).find(|(kept, live)| kept != live);
    assert!(
        kept == live,
        "src/shell/first.html is not the live page any more ({differs:?}): see DEVELOPERS.md, Recipes"
    );
}

/// Holds the program back until the page is told to let it go, and adds up what jumps.
const HOLD: &str = "
    const held = new Promise(done => { globalThis.letGo = done; });
    const start = WebAssembly.instantiate;
    WebAssembly.instantiate = async (...all) => { await held; return start(...all); };
    globalThis.jumped = 0;
    new PerformanceObserver(list => list.getEntries().forEach(it => { jumped += it.value; }))
        .observe({ type: 'layout-shift', buffered: true });
";

async fn hold(page: &Page) {
    page.before_everything(HOLD).await;
}

async fn let_go(page: &Page) {
    assert_eq!(page.attribute("html", "data-live").await, None, "the program waits");
    page.script("letGo()", vec![]).await;
    page.find("html[data-live]").await;
}

/// Where everything on the first screen stands.
const PLACES: &str = "
    return [...document.querySelectorAll('header *, main *, .summary')]
        .map(it => [it.tagName, it.id, it.getBoundingClientRect()])
        .filter(([, , box]) => box.width && box.top < innerHeight)
        .map(([name, id, box]) => [name, id, box.x, box.y, box.width, box.height].join(' '))
";

/// Whoever looks sees nothing move when the program takes over.
pub(crate) async fn the_program_takes_over_without_a_jump(page: &Page) {
    hold(page).await;
    for (screen, name) in [(PHONE, "phone"), (DESK, "desk")] {
        page.visit(screen, &page.address()).await;
        page.wait_text("h1", |text| text == "Linkwright").await;
        page.screenshot(&format!("first-{name}")).await;
        let before = page.script(PLACES, vec![]).await;
        assert!(before.as_array().is_some_and(|all| all.len() > 40), "{before}");
        let_go(page).await;
        page.screenshot(&format!("first-{name}-live")).await;
        let after = page.script(PLACES, vec![]).await;
        let pairs = before.as_array().into_iter().flatten().zip(after.as_array().into_iter().flatten());
        let moved: Vec<_> = pairs.filter(|(before, after)| before != after).collect();
        assert!(before == after, "moved on the {name}, before and after: {:?}", moved.first());
        let jumped = page.script("return jumped", vec![]).await;
        assert!(jumped.as_f64().is_some_and(|it| it < 0.001), "the browser saw a jump of {jumped}");
    }
}

/// What is typed, chosen and pressed before the program is there counts.
pub(crate) async fn what_is_done_before_the_program_counts(page: &Page) {
    hold(page).await;
    page.visit(PHONE, &page.address()).await;
    page.click("label[for='in-use-hard']").await;
    page.enter("in-weight", "4,100 lb").await;
    page.enter("in-length", "3' 2\"").await;
    page.press(crate::page::Key::Left).await;
    page.press(crate::page::Key::Enter).await;
    let_go(page).await;
    page.wait_text("#headline", |text| text.contains("2-1/4 in")).await;
    assert_eq!(page.value("in-length").await, "3' 2\"", "as it was typed");
    assert_eq!(page.focus().await, "in-length");
    page.press('4').await;
    assert_eq!(page.value("in-length").await, "3' 24\"", "the caret is where it was");

    page.press(crate::page::Key::Tab).await;
    page.wait_text("#err-length", |text| !text.is_empty()).await;
    page.pause(400).await;
    page.script("localStorage.clear()", vec![]).await;
    page.visit(DESK, &page.address()).await;
    page.click("#example").await;
    let_go(page).await;
    page.wait_text("#headline", |text| text.contains("bar")).await;
}

/// Whoever comes with a link is not shown an empty form first.
pub(crate) async fn a_link_shows_no_empty_form_first(page: &Page) {
    hold(page).await;
    page.visit(PHONE, &format!("{}#{EXAMPLE}", page.address())).await;
    page.find("#waiting").await;
    let shown = "return document.querySelector('#in-length').checkVisibility({ visibilityProperty: true })";
    assert_eq!(page.script(shown, vec![]).await, json!(false));
    page.screenshot("first-link-phone").await;
    let_go(page).await;
    page.wait_text("#headline", |text| text.contains("2-1/4 in")).await;
    assert_eq!(page.script(shown, vec![]).await, json!(true));
}
