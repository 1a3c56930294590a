//! What no reader sees but must not happen: errors in the console, requests to other origins.

use super::{Extra, Page, done};
use serde_json::{Value, json};

impl Page {
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
        for (what, list) in
            [("errors in the console", self.errors.take()), ("requests to another origin", self.foreign.take())]
        {
            if !list.is_empty() {
                all.push(format!("{what}:\n  {}", list.join("\n  ")));
            }
        }
        (!all.is_empty()).then(|| all.join("\n"))
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
            if !url.starts_with(self.own.borrow().as_str()) && !within.iter().any(|it| url.starts_with(it)) {
                self.foreign.borrow_mut().push(url.to_owned());
            }
        }
    }

    async fn log(&self, kind: &str) -> Vec<Value> {
        let answer = self.client.issue_cmd(Extra { path: "se/log", body: json!({ "type": kind }) }).await;
        done(&format!("reading the {kind} log"), done("reading a log", answer.map(serde_json::from_value)))
    }
}
