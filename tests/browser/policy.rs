//! The content policy, in the page and in the host's headers: what it must refuse is tried.

use crate::offline::Folder;
use crate::page::{DESK, Page};
use crate::size::EXAMPLE;
use serde_json::json;

/// Somebody else's script, style and address, each as an attack would bring it.
const INTRUDERS: &str = "
    const refused = [];
    addEventListener('securitypolicyviolation', event => refused.push(event.effectiveDirective));
    const script = document.createElement('script');
    script.textContent = 'globalThis.intruder = 1';
    document.body.append(script);
    const style = document.createElement('style');
    style.textContent = 'body { display: none }';
    document.body.append(style);
    const picture = new Image();
    picture.src = 'http://elsewhere.test/picture';
    document.body.insertAdjacentHTML('beforeend', '<p onclick=\"intruder = 1\">');
    document.body.lastElementChild.click();
    // Later, since the driver's own scripts may do what the page may not.
    setTimeout(() => { try { (0, eval)('globalThis.intruder = 1') } catch (refusal) {} });
    return fetch('http://elsewhere.test/').then(() => {}, () => {})
        .then(() => new Promise(done => setTimeout(done, 100)))
        .then(() => [globalThis.intruder ?? 'none', getComputedStyle(document.body).display, refused.sort()]);
";

/// The page does all its work under the policy, and nothing else works under it.
pub(crate) async fn nothing_foreign_runs_or_is_asked_for(page: &Page) {
    let folder = Folder::new("policy");
    let bare = folder.with_build(&page.folder(), "bare");
    std::fs::remove_file(bare.join("_headers")).expect("the file of headers");
    for (what, headers) in [("with headers", true), ("the page alone", false)] {
        // At another path, since the worker kept the first page with its headers.
        let path = if headers { "" } else { "bare/" };
        if !headers {
            page.serve(&folder.0);
        }
        page.visit(DESK, &format!("{}{path}#{EXAMPLE}", page.address())).await;
        page.wait_text("#headline", |text| text.contains("2-1/4 in")).await;
        assert_eq!(page.take_errors().await, [""; 0], "{what}");
        let ask = "return fetch('').then(it => it.headers.get('content-security-policy') ?? '')";
        let policy = page.script(ask, vec![]).await;
        assert_eq!(policy.as_str().is_some_and(|it| it.contains("default-src 'none'")), headers, "{what}: {policy}");
        let found = page.script(INTRUDERS, vec![]).await;
        let refused = ["connect-src", "img-src", "script-src", "script-src-attr", "script-src-elem", "style-src-elem"];
        // The header and the page each refuse on their own.
        let refused: Vec<&str> =
            refused.into_iter().flat_map(|it| std::iter::repeat_n(it, if headers { 2 } else { 1 })).collect();
        assert_eq!(found, json!(["none", "block", refused]), "{what}");
        let errors = page.take_errors().await.join("\n");
        assert!(errors.contains("Content Security Policy"), "{what}: a journey would fail on these: {errors}");
        // Refused before they were sent; the log notes them as they are asked for.
        page.take_foreign_requests().await;
    }
}
