//! What stands in the page's place when it cannot run, and that nothing kept is lost by it.

use crate::kept::{EMPTY, FILL};
use crate::offline::Folder;
use crate::page::{DESK, Key, PHONE, Page};
use crate::saved::save_as;
use crate::size::EXAMPLE;
use serde_json::json;

/// Everything kept can be taken along as text and as a file that says the same.
async fn takes_along(page: &Page, wanted: &[&str]) {
    let text = page.value("kept").await;
    for part in wanted {
        assert!(text.contains(part), "{part:?} is not in {text:?}");
    }
    let file = page.attribute("#save-kept", "href").await.unwrap_or_default();
    let decoded = page.script("return decodeURIComponent(arguments[0].split(',')[1])", vec![json!(file)]).await;
    assert_eq!(decoded, json!(text), "the file says the same");
    assert_eq!(page.attribute("#save-kept", "download").await.as_deref(), Some("linkwright.txt"));
    assert_eq!(page.overflow().await, 0, "nothing sticks out sideways");
    let low =
        "return [...document.querySelectorAll('.rescue :is(button, a)')].filter(it => it.offsetHeight < 48).length";
    assert_eq!(page.script(low, vec![]).await, json!(0), "a finger finds every button");
}

/// Scripts switched off: plain words instead of a form that does nothing.
pub(crate) async fn without_scripts_the_page_says_so(page: &Page) {
    page.devtools("Emulation.setScriptExecutionDisabled", json!({ "value": true })).await;
    page.visit(PHONE, &page.address()).await;
    let picture = page.screenshot("no-scripts").await;
    assert!(picture.is_file());
    let shown = page.devtools("Accessibility.getFullAXTree", json!({})).await.to_string();
    assert!(shown.contains("Linkwright needs scripts"), "{shown}");
    assert!(!shown.contains("Mount to mount"), "a form that cannot answer is not shown");
}

/// WebAssembly switched off, with entries from better days.
pub(crate) async fn without_webassembly_entries_can_be_taken_along(page: &Page) {
    page.open(PHONE, EXAMPLE).await;
    page.wait_text("#headline", |text| text.contains("2-1/4 in")).await;
    page.script("localStorage.setItem('linkwright.other', 'größer'); localStorage.setItem('strange', 'x')", vec![])
        .await;
    page.before_everything("delete globalThis.WebAssembly").await;
    page.open(PHONE, "").await;
    let text = page.wait_text(".rescue", |text| text.contains("cannot run")).await;
    assert!(text.contains("WebAssembly"), "{text}");
    takes_along(page, &[&format!("linkwright.entries\n{EXAMPLE}\n"), "linkwright.other\ngrößer\n"]).await;
    assert!(!page.value("kept").await.contains("strange"), "what is not ours stays out");
    page.screenshot_whole("no-webassembly").await;
}

/// Turns to the Prove view, where the page may be gone before a driver has clicked.
const PROVE: &str = "document.getElementById('view-prove')?.click()";

/// A panic inside the program, and the ways on.
pub(crate) async fn a_program_that_stops_gives_everything_back(page: &Page) {
    page.open(PHONE, EXAMPLE).await;
    page.wait_text("#headline", |text| text.contains("2-1/4 in")).await;
    page.wait_kept("length=38in").await;
    // The program builds what it shows by copying templates. Where that is refused it cannot go on.
    let refuse = "Node.prototype.cloneNode = () => { throw new Error('refused') }";
    page.script(refuse, vec![]).await;
    page.script(PROVE, vec![]).await;
    let text = page.wait_text(".rescue", |text| text.contains("has stopped")).await;
    assert!(text.contains("What you saved is safe"), "{text}");
    takes_along(page, &[&format!("linkwright.entries\n{EXAMPLE}\n"), &page.address()]).await;
    let errors = page.take_errors().await.join("\n");
    assert!(errors.contains("unreachable"), "the program ended as on a panic: {errors}");
    page.screenshot_whole("stopped-phone").await;
    page.prefer("color-scheme", "dark").await;
    page.screenshot_whole("stopped-phone-dark").await;

    page.click("#again").await;
    page.wait_text("#headline", |text| text.contains("2-1/4 in")).await;
    page.script(refuse, vec![]).await;
    page.script(PROVE, vec![]).await;
    page.wait_text(".rescue", |text| text.contains("has stopped")).await;
    // What was under way may call the stopped program once more.
    page.pause(800).await;
    page.take_errors().await;
    page.click("#without").await;
    page.wait_text("#still-needed", |text| text.contains("Still needed")).await;
    assert_eq!(page.fragment().await, "");
    page.click("#back-to-own").await;
    page.wait_text("#headline", |text| text.contains("2-1/4 in")).await;
}

/// The empty form after a stop is new work: it belongs to no build, and needs no room.
pub(crate) async fn the_empty_form_after_a_stop_is_new_work(page: &Page) {
    page.open(PHONE, EXAMPLE).await;
    save_as(page, "Mine").await;
    page.click("#view-size").await;
    page.enter("in-length", "41").await;
    page.wait_kept("length=41in").await;
    page.script(FILL, vec![]).await;
    page.script("Node.prototype.cloneNode = () => { throw new Error('refused') }", vec![]).await;
    page.script(PROVE, vec![]).await;
    page.wait_text(".rescue", |text| text.contains("has stopped")).await;
    page.take_errors().await;
    page.click("#without").await;
    page.wait_text("#still-needed", |text| text.contains("Still needed")).await;
    page.open_saved().await;
    page.wait_text("#save-state", |text| text == "Nothing is entered yet.").await;
    page.script(EMPTY, vec![]).await;
    page.enter("in-name", "Another").await;
    page.press(Key::Enter).await;
    page.wait_text("#saved-notices", |text| text.contains("Saved as “Another”")).await;
    assert_eq!(page.records().await.len(), 2, "beside the other one");
    page.click("#back-to-own").await;
    page.wait_text("#save-state", |text| text.contains("“Mine”") && text.contains("One change since")).await;
}

/// What goes wrong in something that the browser added to the page is not the page's end.
pub(crate) async fn a_stranger_s_mistake_changes_nothing(page: &Page) {
    page.open(PHONE, EXAMPLE).await;
    page.wait_text("#headline", |text| text.contains("2-1/4 in")).await;
    page.script("setTimeout(() => { throw new Error('not ours') }); Promise.reject(new Error('nor this'))", vec![])
        .await;
    page.pause(50).await;
    assert_eq!(page.take_errors().await.len(), 2);
    page.click("#view-prove").await;
    page.wait_text("#prove-title", |text| !text.is_empty()).await;
}

/// A part that does not arrive, and arrives at the second try.
pub(crate) async fn a_part_that_does_not_arrive_can_be_tried_again(page: &Page) {
    let built = page.folder();
    let folder = Folder::new("part");
    let half = folder.with_build(&built, "half");
    for entry in std::fs::read_dir(&half).expect("a copy").flatten() {
        if entry.path().extension().is_some_and(|it| it == "wasm") {
            std::fs::remove_file(entry.path()).expect("one file less");
        }
    }
    page.serve(&half);
    page.open(DESK, EXAMPLE).await;
    page.wait_text(".rescue", |text| text.contains("did not load")).await;
    takes_along(page, &[EXAMPLE]).await;
    page.take_errors().await;
    page.serve(&built);
    page.click("#again").await;
    page.wait_text("#headline", |text| text.contains("2-1/4 in")).await;
}

/// Presses and types at random, faster than anybody reads; what a press began may end after its view is gone.
const PRESS: &str = "let state = arguments[0];
    const below = many => { state = (state * 1103515245 + 12345) % 2147483648; return Math.floor(state / 65536) % many; };
    const texts = ['', '38', '36 1/2', '1e300', '-4', 'x', '927 mm', '0', '4000'];
    const told = name => new Event(name, { bubbles: true, cancelable: true });
    const press = it => {
        if (it.tagName === 'SELECT') {
            it.selectedIndex = below(it.options.length);
            it.dispatchEvent(told('change'));
        } else if (it.type === 'text') {
            it.value = texts[below(texts.length)];
            it.dispatchEvent(told(below(3) ? 'input' : 'change'));
        } else {
            it.dispatchEvent(new MouseEvent('click', { bubbles: true, cancelable: true }));
        }
    };
    return (async () => {
        const end = performance.now() + 4000;
        let count = 0;
        while (performance.now() < end) {
            const all = [...document.querySelectorAll('button, summary, input, select, [data-part], [data-piece]')];
            const live = all.filter(it => it.type !== 'file' && !it.disabled);
            press(live[below(live.length)]);
            count += 1;
            if (below(3)) await new Promise(done => setTimeout(done, below(4) ? below(12) : 60));
        }
        return count;
    })();";

/// Nothing that hands can do to the page stops it.
pub(crate) async fn hasty_fingers_stop_nothing(page: &Page) {
    let stand_ins = "print = () => ['beforeprint', 'afterprint'].forEach(name => dispatchEvent(new Event(name)));
        HTMLAnchorElement.prototype.click = () => {}";
    page.before_everything(stand_ins).await;
    page.open(PHONE, "3&links=2&length=38in&weight=4100lb&2.length=36in&2.role=tie-rod&use=hard").await;
    page.wait_text("#rig-title", |text| text.contains("links")).await;
    for seed in 1..=4 {
        let count = page.script(PRESS, vec![json!(seed)]).await;
        assert!(count.as_u64().is_some_and(|count| count > 0), "{count:?}");
        page.is_live().await;
    }
    // Entries out of range are refused in words, not in the log.
    assert_eq!(page.take_errors().await, Vec::<String>::new());
}
