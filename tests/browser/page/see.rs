//! What a reader sees: texts, values, the focus, pictures.

use super::{PATIENCE, Page, Screen, done};
use fantoccini::Locator;
use serde_json::json;
use std::path::PathBuf;
use std::time::{Duration, Instant};
use tokio::time::sleep;

/// A text as it is read: letters without width, which keep sizes whole, are not.
fn read(text: &str) -> String {
    text.replace('\u{2060}', "")
}

impl Page {
    pub(crate) async fn title(&self) -> String {
        done("reading the title", self.client.title().await)
    }

    /// The text a reader sees in an element, once there is such an element.
    pub(crate) async fn text(&self, selector: &str) -> String {
        read(&done(&format!("reading {selector}"), self.find(selector).await.text().await))
    }

    /// The texts of all elements that match, which may be none.
    pub(crate) async fn texts(&self, selector: &str) -> Vec<String> {
        let code = "return [...document.querySelectorAll(arguments[0])].map(it => it.innerText ?? '')";
        let all = self.script(code, vec![json!(selector)]).await;
        let all: Vec<String> = done(&format!("reading every {selector}"), serde_json::from_value(all));
        all.iter().map(|text| read(text)).collect()
    }

    /// An attribute; none when the element does not have it.
    pub(crate) async fn attribute(&self, selector: &str, name: &str) -> Option<String> {
        done(&format!("reading {name} of {selector}"), self.find(selector).await.attr(name).await)
    }

    /// What the input with this id holds.
    pub(crate) async fn value(&self, id: &str) -> String {
        let value = self.find(&format!("#{id}")).await.prop("value").await;
        done(&format!("reading #{id}"), value).unwrap_or_default()
    }

    /// The id of the element with the focus, empty when it has none.
    pub(crate) async fn focus(&self) -> String {
        let value = self.script("return document.activeElement?.id ?? ''", vec![]).await;
        value.as_str().unwrap_or_default().to_owned()
    }

    /// Waits until so many elements match.
    pub(crate) async fn wait_count(&self, selector: &str, wanted: usize) {
        let start = Instant::now();
        loop {
            let found = self.texts(selector).await.len();
            if found == wanted {
                return;
            }
            assert!(start.elapsed() < PATIENCE, "waited in vain for {wanted} of {selector}, there are {found}");
            sleep(Duration::from_millis(20)).await;
        }
    }

    /// Waits until the element with this id has the focus.
    pub(crate) async fn wait_focus(&self, id: &str) {
        let start = Instant::now();
        while self.focus().await != id {
            assert!(
                start.elapsed() < PATIENCE,
                "waited in vain for the focus on #{id}, it is on #{}",
                self.focus().await
            );
            sleep(Duration::from_millis(20)).await;
        }
    }

    /// The fragment in the address bar, without `#`.
    pub(crate) async fn fragment(&self) -> String {
        // It is written once typing pauses.
        self.pause(350).await;
        let address = done("reading the address", self.client.current_url().await);
        address.fragment().unwrap_or_default().to_owned()
    }

    /// How far the page is wider than the screen, in CSS pixels: 0 on a page that fits.
    pub(crate) async fn overflow(&self) -> i64 {
        let code = "let it = document.documentElement; return it.scrollWidth - it.clientWidth";
        self.script(code, vec![]).await.as_i64().unwrap_or(i64::MAX)
    }

    /// Waits until an element's text is as wanted, and gives it.
    pub(crate) async fn wait_text(&self, selector: &str, wanted: impl Fn(&str) -> bool) -> String {
        let start = Instant::now();
        loop {
            // The element may be replaced between finding and reading it: then look again.
            let found = self.client.find(Locator::Css(selector)).await;
            let text = match found {
                Ok(element) => element.text().await.map(|text| read(&text)),
                Err(reason) => Err(reason),
            };
            match text {
                Ok(text) if wanted(&text) => return text,
                last if start.elapsed() > PATIENCE => {
                    let last = last.map_or_else(|reason| reason.to_string(), |text| format!("{text:?}"));
                    panic!("waited in vain for {selector}, which is now: {last}");
                }
                _ => sleep(Duration::from_millis(20)).await,
            }
        }
    }

    /// A picture of what is on the screen, in target/screenshots.
    pub(crate) async fn screenshot(&self, name: &str) -> PathBuf {
        let folder = xtask::root().join("target").join("screenshots");
        done("making target/screenshots", std::fs::create_dir_all(&folder));
        let file = folder.join(format!("{name}.png"));
        let picture = done("taking a picture", self.client.screenshot().await);
        done(&format!("writing {}", file.display()), std::fs::write(&file, picture));
        file
    }

    /// A picture of the page from top to bottom, as on a screen of that height.
    pub(crate) async fn screenshot_whole(&self, name: &str) -> PathBuf {
        let screen = self.screen.get();
        let height = self.script("return document.documentElement.scrollHeight", vec![]).await;
        let height = height.as_u64().and_then(|it| u32::try_from(it).ok()).unwrap_or(screen.height);
        self.look_with(Screen { height: height.max(screen.height), ..screen }).await;
        let file = self.screenshot(name).await;
        self.look_with(screen).await;
        file
    }

    /// After a failure: a picture, and where the page was.
    pub(crate) async fn last_look(&self, name: &str) -> String {
        let Ok(address) = self.client.current_url().await else {
            return "\n  the browser no longer answers".to_owned();
        };
        let mut text = format!("\n  at {address}");
        let folder = xtask::root().join("target").join("screenshots");
        if let Ok(picture) = self.client.screenshot().await
            && std::fs::create_dir_all(&folder).is_ok()
            && std::fs::write(folder.join(format!("{name}.png")), picture).is_ok()
        {
            text.push_str(&format!("\n  picture: target/screenshots/{name}.png"));
        }
        text
    }
}
