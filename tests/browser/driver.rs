//! chromedriver: started on a free port, one browser session per journey, and ended with all of its
//! browsers whatever happens.

use fantoccini::{Client, ClientBuilder};
use serde_json::{Map, Value, json};
use std::path::PathBuf;
use std::process::Stdio;
use std::time::Duration;
use tokio::io::{AsyncBufReadExt, AsyncWriteExt, BufReader};
use tokio::net::TcpStream;
use tokio::process::{Child, Command};
use tokio::time::timeout;

/// The same browser settings as for the tests in tests/web.rs.
const SETTINGS: &str = include_str!("../../xtask/webdriver.json");

pub(crate) struct Driver {
    process: Child,
    port: u16,
    /// Whether the browsers note what is asked of the network and said in the console: it costs a slow one time.
    noting: bool,
    /// Held only to be dropped last, when no browser writes to it any more.
    _profiles: Profiles,
}

impl Driver {
    pub(crate) async fn start(noting: bool) -> Result<Driver, String> {
        let program = std::env::var_os("CHROMEDRIVER").unwrap_or_else(|| "chromedriver".into());
        let profiles = Profiles::new().map_err(|reason| format!("no room for browser profiles: {reason}"))?;
        let mut command = Command::new(&program);
        // A group of its own, to end the browsers with it.
        #[cfg(unix)]
        command.process_group(0);
        let mut process = command
            .arg("--port=0")
            .env("TMPDIR", &profiles.0)
            .stdin(Stdio::null())
            .stdout(Stdio::piped())
            .stderr(Stdio::null())
            .kill_on_drop(true)
            .spawn()
            .map_err(|reason| {
                let name = program.to_string_lossy();
                format!("`{name}` cannot be started ({reason}): `cargo xtask test --only journeys` installs it")
            })?;
        let output = process.stdout.take().ok_or("chromedriver has no output")?;
        let mut lines = BufReader::new(output).lines();
        let port = timeout(Duration::from_secs(20), async {
            while let Ok(Some(line)) = lines.next_line().await {
                if let Some((_, port)) = line.split_once("started successfully on port ") {
                    return port.trim_end_matches('.').parse().ok();
                }
            }
            None
        });
        let port = port.await.ok().flatten().ok_or("chromedriver does not say which port it listens at")?;
        // Read on, or chromedriver would one day wait for room in a full pipe.
        tokio::task::spawn_local(async move { while let Ok(Some(_)) = lines.next_line().await {} });
        Ok(Driver { process, port, noting, _profiles: profiles })
    }

    /// A browser with a new, empty profile.
    pub(crate) async fn session(&self) -> Result<Client, String> {
        let settings =
            capabilities(self.noting).map_err(|reason| format!("webdriver.json cannot be read: {reason}"))?;
        ClientBuilder::new(hyper_util::client::legacy::connect::HttpConnector::new())
            .capabilities(settings)
            .connect(&format!("http://127.0.0.1:{}", self.port))
            .await
            .map_err(|reason| format!("no browser session: {reason}"))
    }

    /// Asks chromedriver to end, which ends the browsers that it started.
    pub(crate) async fn stop(mut self) {
        let ask = async {
            let mut stream = TcpStream::connect(("127.0.0.1", self.port)).await?;
            stream.write_all(b"GET /shutdown HTTP/1.1\r\nHost: 127.0.0.1\r\n\r\n").await?;
            self.process.wait().await.map(drop)
        };
        // It cannot when a browser hangs: dropping it then ends all by force.
        let _ = timeout(Duration::from_secs(5), ask).await;
    }
}

impl Drop for Driver {
    fn drop(&mut self) {
        // Has no number once its end was waited for.
        let Some(number) = self.process.id() else {
            return;
        };
        #[cfg(unix)]
        let _ = std::process::Command::new("kill")
            .args(["-KILL", "--", &format!("-{number}")])
            .stderr(Stdio::null())
            .status();
        #[cfg(not(unix))]
        let _ = (number, self.process.start_kill());
    }
}

/// The folder of the browsers' profiles, which they leave behind. Dropping it removes it.
struct Profiles(PathBuf);

impl Profiles {
    fn new() -> std::io::Result<Profiles> {
        let folder = std::env::temp_dir().join(format!("linkwright-browsers-{}", std::process::id()));
        std::fs::create_dir_all(&folder)?;
        Ok(Profiles(folder))
    }
}

impl Drop for Profiles {
    fn drop(&mut self) {
        let _ = std::fs::remove_dir_all(&self.0);
    }
}

fn capabilities(noting: bool) -> serde_json::Result<Map<String, Value>> {
    let mut all: Map<String, Value> = serde_json::from_str(SETTINGS)?;
    if let Some(Value::Array(arguments)) = all.get_mut("goog:chromeOptions").and_then(|it| it.get_mut("args")) {
        // Whatever the page asks of another host fails at once, here as on a reader's machine offline.
        arguments.push(json!("--host-resolver-rules=MAP * ~NOTFOUND, EXCLUDE 127.0.0.1"));
    }
    if noting {
        all.insert("goog:loggingPrefs".to_owned(), json!({ "browser": "ALL", "performance": "ALL" }));
    }
    Ok(all)
}
