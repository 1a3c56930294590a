//! What a journey can do and see: one browser tab, with a server of its own behind it.
//!
//! Every helper panics with what it was about when it cannot do it.
#![allow(dead_code, reason = "helpers stay while no journey needs them")]

use crate::driver::Driver;
use fantoccini::actions::{InputSource, KeyAction, KeyActions, PointerAction, PointerActions, TouchActions};
use fantoccini::elements::Element;
pub(crate) use fantoccini::key::Key;
use fantoccini::wd::WebDriverCompatibleCommand;
use fantoccini::{Client, Locator};
use serde_json::{Value, json};
use std::cell::{Cell, RefCell};
use std::fmt::{Debug, Display};
use std::net::{Ipv4Addr, SocketAddr};
use std::path::{Path, PathBuf};
use std::time::{Duration, Instant};
use tokio::time::sleep;
use xtask::server::Server;

/// How long a helper waits for what it is told to wait for.
const PATIENCE: Duration = Duration::from_secs(5);

/// What the page is looked at with.
#[derive(Clone, Copy, Debug)]
pub(crate) struct Screen {
    pub(crate) width: u32,
    pub(crate) height: u32,
    pub(crate) scale: u32,
    pub(crate) touch: bool,
}

pub(crate) const PHONE: Screen = Screen { width: 360, height: 740, scale: 2, touch: true };
pub(crate) const DESK: Screen = Screen { width: 1440, height: 900, scale: 1, touch: false };

pub(crate) struct Page {
    client: Client,
    address: SocketAddr,
    server: RefCell<Option<Server>>,
    folder: RefCell<PathBuf>,
    screen: Cell<Screen>,
    media: RefCell<Vec<(String, String)>>,
    errors: RefCell<Vec<String>>,
    foreign: RefCell<Vec<String>>,
}

/// Coming and going.
impl Page {
    pub(crate) async fn new(driver: &Driver, folder: &Path) -> Result<Page, String> {
        let server = Server::start(folder, Ipv4Addr::LOCALHOST.into(), 0)
            .map_err(|reason| format!("{} cannot be served: {reason}", folder.display()))?;
        Ok(Page {
            client: driver.session().await?,
            address: server.address(),
            server: RefCell::new(Some(server)),
            folder: RefCell::new(folder.to_path_buf()),
            screen: Cell::new(DESK),
            media: RefCell::default(),
            errors: RefCell::default(),
            foreign: RefCell::default(),
        })
    }

    /// Loads the page anew, at a fragment (without `#`; may be empty).
    pub(crate) async fn open(&self, screen: Screen, fragment: &str) {
        // From another page, or a change of the fragment alone would load nothing.
        done("leaving the page", self.client.goto("about:blank").await);
        self.look_with(screen).await;
        let hash = if fragment.is_empty() { "" } else { "#" };
        let address = format!("{}{hash}{fragment}", self.address());
        done(&format!("opening {address}"), self.client.goto(&address).await);
    }

    pub(crate) async fn reload(&self) {
        done("reloading", self.client.refresh().await);
    }

    /// The page's address, without a fragment.
    pub(crate) fn address(&self) -> String {
        format!("http://{}/", self.address)
    }

    /// Turns or exchanges the device under the open page.
    pub(crate) async fn look_with(&self, screen: Screen) {
        self.screen.set(screen);
        let Screen { width, height, scale, touch } = screen;
        let metrics = json!({ "width": width, "height": height, "deviceScaleFactor": scale, "mobile": touch });
        self.devtools("Emulation.setDeviceMetricsOverride", metrics).await;
        let points = json!({ "enabled": touch, "maxTouchPoints": if touch { 5 } else { 1 } });
        self.devtools("Emulation.setTouchEmulationEnabled", points).await;
    }

    /// A preference of the reader's: `prefer("color-scheme", "dark")`, `prefer("reduced-motion", "reduce")`.
    pub(crate) async fn prefer(&self, feature: &str, value: &str) {
        let name = format!("prefers-{feature}");
        let features: Vec<Value> = {
            let mut media = self.media.borrow_mut();
            media.retain(|(known, _)| *known != name);
            media.push((name, value.to_owned()));
            media.iter().map(|(name, value)| json!({ "name": name, "value": value })).collect()
        };
        self.devtools("Emulation.setEmulatedMedia", json!({ "features": features })).await;
    }

    /// Cuts the page's own network. A service worker's is not cut: for that, stop the server.
    pub(crate) async fn offline(&self, cut: bool) {
        let rates = json!({ "offline": cut, "latency": 0, "downloadThroughput": -1, "uploadThroughput": -1 });
        self.devtools("Network.emulateNetworkConditions", rates).await;
    }

    /// Takes the host away for good: every connection is closed and the port refuses new ones.
    pub(crate) fn stop_server(&self) {
        drop(self.server.take());
    }

    /// Brings the host back at the same address.
    pub(crate) fn start_server(&self) {
        let folder = self.folder.borrow().clone();
        self.serve(&folder);
    }

    /// Has another folder served at the same address, as when a new build is published.
    pub(crate) fn serve(&self, folder: &Path) {
        self.stop_server();
        let server = Server::start(folder, self.address.ip(), self.address.port());
        self.server.replace(Some(done(&format!("serving {}", folder.display()), server)));
        self.folder.replace(folder.to_path_buf());
    }

    pub(crate) async fn close(&self) {
        // A session that is gone already needs no closing.
        let _ = self.client.clone().close().await;
        self.stop_server();
    }
}

/// Doing.
impl Page {
    /// Clicks, or taps on a touch screen.
    pub(crate) async fn click(&self, selector: &str) {
        let element = self.find(selector).await;
        if !self.screen.get().touch {
            return done(&format!("clicking {selector}"), element.click().await);
        }
        self.script("arguments[0].scrollIntoView({ block: 'center' })", vec![done(selector, serde_json::to_value(&element))])
            .await;
        let finger = TouchActions::new("finger".to_owned())
            .then(PointerAction::MoveToElement { element, duration: None, x: 0.0, y: 0.0 })
            .then(PointerAction::Down { button: 0 })
            .then(PointerAction::Up { button: 0 });
        done(&format!("tapping {selector}"), self.client.perform_actions(finger).await);
    }

    /// Replaces what the input with this id holds by typing, key by key.
    pub(crate) async fn enter(&self, id: &str, text: &str) {
        let selector = format!("#{id}");
        self.click(&selector).await;
        self.press_with(Key::Control, 'a').await;
        if text.is_empty() {
            self.press(Key::Delete).await;
        } else {
            done(&format!("typing into {selector}"), self.find(&selector).await.send_keys(text).await);
        }
    }

    /// Chooses an option by its label in the select with this id.
    pub(crate) async fn choose(&self, id: &str, label: &str) {
        let list = self.find(&format!("#{id}")).await;
        done(&format!("choosing {label:?} in #{id}"), list.select_by_label(label).await);
    }

    /// Presses a key where the focus is: `Key::Tab`, `Key::Enter`, `'x'`.
    pub(crate) async fn press(&self, key: impl Into<char>) {
        let value = key.into();
        let keys = KeyActions::new("keys".to_owned()).then(KeyAction::Down { value }).then(KeyAction::Up { value });
        done(&format!("pressing {value:?}"), self.client.perform_actions(keys).await);
    }

    /// Presses a key while another is held: `press_with(Key::Shift, Key::Tab)`.
    pub(crate) async fn press_with(&self, held: impl Into<char>, key: impl Into<char>) {
        let (held, value) = (held.into(), key.into());
        let keys = KeyActions::new("keys".to_owned())
            .then(KeyAction::Down { value: held })
            .then(KeyAction::Down { value })
            .then(KeyAction::Up { value })
            .then(KeyAction::Up { value: held });
        done(&format!("pressing {value:?} with {held:?}"), self.client.perform_actions(keys).await);
    }

    /// Runs JavaScript in the page (`return ...` gives a value; `arguments[0]` is the first of `arguments`).
    pub(crate) async fn script(&self, code: &str, arguments: Vec<Value>) -> Value {
        done(&format!("running {code}"), self.client.execute(code, arguments).await)
    }

    /// A command of Chromium's DevTools protocol.
    pub(crate) async fn devtools(&self, command: &str, parameters: Value) -> Value {
        let body = json!({ "cmd": command, "params": parameters });
        let command_sent = self.client.issue_cmd(Extra { path: "goog/cdp/execute", body }).await;
        done(command, command_sent)
    }
}

/// Seeing.
impl Page {
    pub(crate) async fn title(&self) -> String {
        done("reading the title", self.client.title().await)
    }

    /// The text a reader sees in an element, once there is such an element.
    pub(crate) async fn text(&self, selector: &str) -> String {
        done(&format!("reading {selector}"), self.find(selector).await.text().await)
    }

    /// The texts of all elements that match, which may be none.
    pub(crate) async fn texts(&self, selector: &str) -> Vec<String> {
        let code = "return [...document.querySelectorAll(arguments[0])].map(it => it.innerText)";
        let all = self.script(code, vec![json!(selector)]).await;
        done(&format!("reading every {selector}"), serde_json::from_value(all))
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

    /// The fragment in the address bar, without `#`.
    pub(crate) async fn fragment(&self) -> String {
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
                Ok(element) => element.text().await,
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

    /// Errors in the console since the last call: messages, uncaught exceptions, files not found.
    pub(crate) async fn take_errors(&self) -> Vec<String> {
        self.read_logs().await;
        self.errors.take()
    }

    /// Addresses outside the page's own origin that were asked for since the last call.
    pub(crate) async fn take_foreign_requests(&self) -> Vec<String> {
        self.read_logs().await;
        self.foreign.take()
    }

    /// What a journey must not leave behind, in words.
    pub(crate) async fn leftovers(&self) -> Option<String> {
        self.read_logs().await;
        let mut all = Vec::new();
        for (what, list) in [("errors in the console", self.errors.take()), ("requests to another origin", self.foreign.take())] {
            if !list.is_empty() {
                all.push(format!("{what}:\n  {}", list.join("\n  ")));
            }
        }
        (!all.is_empty()).then(|| all.join("\n"))
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

    /// Waits for the first element that matches.
    async fn find(&self, selector: &str) -> Element {
        let start = Instant::now();
        loop {
            match self.client.find(Locator::Css(selector)).await {
                Ok(element) => return element,
                Err(reason) if start.elapsed() > PATIENCE => panic!("there is no {selector}: {reason}"),
                Err(_) => sleep(Duration::from_millis(20)).await,
            }
        }
    }

    /// The browser's logs are emptied by reading them, so what they hold is kept here.
    async fn read_logs(&self) {
        for entry in self.log("browser").await {
            if entry["level"] == "SEVERE" {
                self.errors.borrow_mut().push(entry["message"].as_str().unwrap_or_default().to_owned());
            }
        }
        for entry in self.log("performance").await {
            let event: Value = serde_json::from_str(entry["message"].as_str().unwrap_or_default()).unwrap_or_default();
            let about = &event["message"]["params"];
            let url = match event["message"]["method"].as_str() {
                Some("Network.requestWillBeSent") => &about["request"]["url"],
                Some("Network.webSocketCreated") => &about["url"],
                _ => continue,
            };
            let url = url.as_str().unwrap_or_default();
            let within = ["data:", "blob:", "about:", "chrome:", "devtools:"];
            if !url.starts_with(&self.address()) && !within.iter().any(|it| url.starts_with(it)) {
                self.foreign.borrow_mut().push(url.to_owned());
            }
        }
    }

    async fn log(&self, kind: &str) -> Vec<Value> {
        let answer = self.client.issue_cmd(Extra { path: "se/log", body: json!({ "type": kind }) }).await;
        done(&format!("reading the {kind} log"), done("reading a log", answer.map(serde_json::from_value)))
    }
}

/// The value, or a panic that says what was being done.
fn done<T, E: Display + Debug>(what: &str, result: Result<T, E>) -> T {
    result.unwrap_or_else(|reason| panic!("{what}: {reason}"))
}

/// A command that chromedriver knows beyond the WebDriver standard.
#[derive(Debug)]
struct Extra {
    path: &'static str,
    body: Value,
}

impl WebDriverCompatibleCommand for Extra {
    fn endpoint(&self, base: &url::Url, session: Option<&str>) -> Result<url::Url, url::ParseError> {
        base.join(&format!("session/{}/{}", session.unwrap_or_default(), self.path))
    }

    fn method_and_body(&self, _: &url::Url) -> (http::Method, Option<String>) {
        (http::Method::POST, Some(self.body.to_string()))
    }
}
