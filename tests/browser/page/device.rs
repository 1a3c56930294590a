//! What surrounds the page: other tabs, files that come and go, what the browser keeps.

use super::{Page, done};
use fantoccini::Locator;
use serde_json::{Value, json};
use std::path::{Path, PathBuf};
use std::time::Instant;
use tokio::time::{Duration, sleep};

impl Page {
    /// Opens another tab beside this one and looks at it; gives both, the old one first.
    pub(crate) async fn another_tab(&self) -> [fantoccini::wd::WindowHandle; 2] {
        let old = done("asking which tab this is", self.client.window().await);
        let new = done("opening a tab", self.client.new_window(true).await).handle;
        self.turn_to_tab(&new).await;
        [old, new]
    }

    /// Looks at another tab.
    pub(crate) async fn turn_to_tab(&self, tab: &fantoccini::wd::WindowHandle) {
        done("turning to another tab", self.client.switch_to_window(tab.clone()).await);
    }

    /// Has downloads go to a folder of this journey's own, which is empty at first.
    pub(crate) async fn download_to(&self, name: &str) -> PathBuf {
        let folder = xtask::root().join("target").join("downloads").join(name);
        if folder.exists() {
            done("emptying the downloads", std::fs::remove_dir_all(&folder));
        }
        done("making the downloads", std::fs::create_dir_all(&folder));
        let answer = json!({ "behavior": "allow", "downloadPath": folder.to_string_lossy() });
        self.devtools("Browser.setDownloadBehavior", answer).await;
        folder
    }

    /// Waits until a file stands in a folder, and gives its path and text.
    pub(crate) async fn downloaded(&self, folder: &Path) -> (PathBuf, String) {
        let start = Instant::now();
        loop {
            let entries = done("reading the downloads", std::fs::read_dir(folder));
            // Until it is whole it has an ending of the browser's own.
            let whole = |path: &PathBuf| {
                path.extension()
                    .is_some_and(|ending| ["json", "csv", "dxf", "ics"].iter().any(|known| ending == *known))
            };
            if let Some(path) = entries.filter_map(|entry| entry.ok().map(|entry| entry.path())).find(whole) {
                let text = done("reading a download", std::fs::read_to_string(&path));
                if !text.is_empty() {
                    return (path, text);
                }
            }
            assert!(start.elapsed() < super::PATIENCE, "nothing was downloaded into {}", folder.display());
            sleep(Duration::from_millis(20)).await;
        }
    }

    /// Chooses a file in the field with this id.
    pub(crate) async fn choose_file(&self, id: &str, file: &Path) {
        let field = done(&format!("finding #{id}"), self.client.find(Locator::Id(id)).await);
        done("choosing a file", field.send_keys(&file.to_string_lossy()).await);
    }

    /// Waits until the browser keeps entries with this in them, which it does once typing pauses.
    pub(crate) async fn wait_kept(&self, part: &str) {
        let start = Instant::now();
        while !self.kept("linkwright.entries").await.contains(part) {
            assert!(start.elapsed() < super::PATIENCE, "{part:?} is not kept");
            sleep(Duration::from_millis(20)).await;
        }
    }

    /// What the browser keeps under a key of the page's.
    pub(crate) async fn kept(&self, key: &str) -> String {
        let kept = self.script("return localStorage.getItem(arguments[0]) ?? ''", vec![json!(key)]).await;
        kept.as_str().unwrap_or_default().to_owned()
    }

    /// The saved builds that the browser keeps, each as its record, by their names.
    pub(crate) async fn records(&self) -> Vec<Value> {
        let code = "return Object.keys(localStorage).filter(key => key.startsWith('linkwright.build.')).map(key => localStorage[key])";
        let texts: Vec<String> = done("reading the records", serde_json::from_value(self.script(code, vec![]).await));
        let mut records: Vec<Value> = texts
            .iter()
            .map(|text| {
                let record: Value = done("reading a record", serde_json::from_str(text));
                record["builds"][0].clone()
            })
            .collect();
        records.sort_by_key(|record| record["name"].as_str().unwrap_or_default().to_owned());
        records
    }

    /// A new visitor, as far as the page can tell: nothing is kept, nothing is in the address.
    pub(crate) async fn forget_everything(&self) {
        // A page that is left keeps what it holds.
        let code =
            "document.documentElement.removeAttribute('data-live'); localStorage.clear(); sessionStorage.clear()";
        self.script(code, vec![]).await;
    }

    /// Has a script run before the page's own, from the next load on.
    pub(crate) async fn before_everything(&self, code: &str) {
        self.devtools("Page.addScriptToEvaluateOnNewDocument", json!({ "source": code })).await;
    }

    /// What a camera reads from a code on the screen, or nothing.
    pub(crate) async fn scan(&self, name: &str) -> Option<String> {
        let file = done("opening a picture", std::fs::File::open(self.screenshot(name).await));
        let mut decoder = png::Decoder::new(std::io::BufReader::new(file));
        decoder.set_transformations(png::Transformations::normalize_to_color8());
        let mut reader = done("reading a picture", decoder.read_info());
        let mut bytes = vec![0; reader.output_buffer_size().unwrap_or_default()];
        let info = done("reading a picture", reader.next_frame(&mut bytes));
        let step = info.color_type.samples();
        let (width, height) = (info.width as usize, info.height as usize);
        let mut picture =
            rqrr::PreparedImage::prepare_from_greyscale(width, height, |x, y| bytes[(y * width + x) * step]);
        picture.detect_grids().first().and_then(|grid| grid.decode().ok()).map(|(_, text)| text)
    }
}
