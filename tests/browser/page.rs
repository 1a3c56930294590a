//! What a journey can do and see: one browser tab, with a server of its own behind it.
//!
//! Every helper panics with what it was about when it cannot do it.
#![allow(dead_code, reason = "helpers stay while no journey needs them")]

mod act;
mod device;
mod logs;
mod see;

use crate::driver::Driver;
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
    /// What the addresses of all requests begin with.
    own: RefCell<String>,
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
        let address = server.address();
        Ok(Page {
            client: driver.session().await?,
            address,
            own: RefCell::new(format!("http://{address}/")),
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
        let hash = if fragment.is_empty() { "" } else { "#" };
        self.visit(screen, &format!("{}{hash}{fragment}", self.address())).await;
        self.is_live().await;
    }

    /// Waits until no first screen stands in for the page any more.
    pub(crate) async fn is_live(&self) {
        let start = Instant::now();
        while self.client.find(Locator::Css("#waiting")).await.is_ok() {
            assert!(start.elapsed() < PATIENCE, "the page's program does not start");
            sleep(Duration::from_millis(20)).await;
        }
    }

    /// Loads a page below the host's own address, or a file of this computer, and waits for nothing.
    pub(crate) async fn visit(&self, screen: Screen, address: &str) {
        // From another page, or a change of the fragment alone would load nothing.
        done("leaving the page", self.client.goto("about:blank").await);
        self.look_with(screen).await;
        let file = address.starts_with("file:").then(|| address.split('#').next().unwrap_or_default().to_owned());
        self.own.replace(file.unwrap_or_else(|| self.address()));
        done(&format!("opening {address}"), self.client.goto(address).await);
    }

    pub(crate) async fn reload(&self) {
        done("reloading", self.client.refresh().await);
        self.is_live().await;
    }

    /// The page's address, without a fragment.
    pub(crate) fn address(&self) -> String {
        format!("http://{}/", self.address)
    }

    /// The folder that is served.
    pub(crate) fn folder(&self) -> PathBuf {
        self.folder.borrow().clone()
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

/// What the helpers are made of.
impl Page {
    /// A command of Chromium's DevTools protocol.
    pub(crate) async fn devtools(&self, command: &str, parameters: Value) -> Value {
        let body = json!({ "cmd": command, "params": parameters });
        let command_sent = self.client.issue_cmd(Extra { path: "goog/cdp/execute", body }).await;
        done(command, command_sent)
    }

    /// Waits for the first element that matches.
    pub(crate) async fn find(&self, selector: &str) -> Element {
        let start = Instant::now();
        loop {
            match self.client.find(Locator::Css(selector)).await {
                Ok(element) => return element,
                Err(reason) if start.elapsed() > PATIENCE => {
                    panic!("there is no {selector}: {reason}")
                }
                Err(_) => sleep(Duration::from_millis(20)).await,
            }
        }
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
