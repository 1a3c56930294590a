//! The server as a browser meets it: over a socket.

use std::error::Error;
use std::fs;
use std::io::{ErrorKind, Read, Write};
use std::net::{Ipv4Addr, SocketAddr, TcpStream};
use std::path::PathBuf;
use std::time::{Duration, Instant};
use xtask::server::Server;

type Checked = Result<(), Box<dyn Error>>;

/// A folder to serve, beside a file that must stay out of reach.
struct Folder(PathBuf);

impl Folder {
    fn new(name: &str) -> Result<Folder, Box<dyn Error>> {
        let top = std::env::temp_dir().join(format!("linkwright-server-{}-{name}", std::process::id()));
        let site = top.join("site");
        fs::create_dir_all(site.join("deep"))?;
        fs::write(top.join("secret.txt"), "secret")?;
        fs::write(site.join("index.html"), "<title>Home</title>")?;
        fs::write(site.join("deep/index.html"), "<title>Deep</title>")?;
        fs::write(site.join("two words.txt"), "spaced")?;
        fs::write(site.join("app.wasm"), [0; 5000])?;
        for name in ["app.js", "icon.svg", "list.json", "app.webmanifest"] {
            fs::write(site.join(name), "text")?;
        }
        fs::write(site.join("_headers"), "/*\n  X-All: yes\n/app.wasm\n  Cache-Control: immutable\n")?;
        Ok(Folder(top))
    }

    fn serve(&self) -> std::io::Result<Server> {
        Server::start(&self.0.join("site"), Ipv4Addr::LOCALHOST.into(), 0)
    }
}

impl Drop for Folder {
    fn drop(&mut self) {
        let _ = fs::remove_dir_all(&self.0);
    }
}

/// One request on its own connection: the head in lower case, and the body's length.
fn ask(address: SocketAddr, method: &str, path: &str, headers: &str) -> Result<(String, usize), Box<dyn Error>> {
    let mut stream = TcpStream::connect(address)?;
    stream.set_read_timeout(Some(Duration::from_secs(10)))?;
    write!(stream, "{method} {path} HTTP/1.1\r\nHost: here\r\nConnection: close\r\n{headers}\r\n")?;
    let mut answer = Vec::new();
    stream.read_to_end(&mut answer)?;
    let end = answer.windows(4).position(|it| it == b"\r\n\r\n").ok_or("no head")?;
    let head = String::from_utf8_lossy(&answer[..end]).to_lowercase();
    Ok((head, answer.len() - end - 4))
}

#[test]
fn files_come_with_their_types() -> Checked {
    let folder = Folder::new("types")?;
    let server = folder.serve()?;
    for (path, status, kind) in [
        ("/", 200, "text/html"),
        ("/?from=home#part", 200, "text/html"),
        ("/deep/", 200, "text/html"),
        ("/two%20words.txt", 200, "text/plain"),
        // Browsers compile WASM while it arrives only under this type.
        ("/app.wasm", 200, "application/wasm"),
        ("/app.js", 200, "text/javascript"),
        ("/icon.svg", 200, "image/svg+xml"),
        ("/list.json", 200, "application/json"),
        ("/app.webmanifest", 200, "application/manifest+json"),
        ("/none.js", 404, "text/plain"),
    ] {
        let (head, _) = ask(server.address(), "GET", path, "")?;
        assert!(head.starts_with(&format!("http/1.1 {status}")), "{path}: {head}");
        assert!(head.contains(&format!("content-type: {kind}")), "{path}: {head}");
        let cache = if path == "/app.wasm" { "immutable" } else { "no-cache" };
        assert_eq!(head.matches("cache-control: ").count(), 1, "{path}: {head}");
        assert!(head.contains(&format!("cache-control: {cache}")), "{path}: {head}");
        assert_eq!(head.contains("x-all: yes"), status == 200, "{path}: {head}");
    }
    Ok(())
}

/// As hosts do: relative addresses inside a page hold only below the slash.
#[test]
fn a_folder_is_answered_at_its_slash() -> Checked {
    let folder = Folder::new("slash")?;
    let server = folder.serve()?;
    let (head, _) = ask(server.address(), "GET", "/deep", "")?;
    assert!(head.starts_with("http/1.1 307") && head.contains("location: /deep/"), "{head}");
    // A folder without a page in it is not listed.
    fs::create_dir(folder.0.join("site/bare"))?;
    let (head, _) = ask(server.address(), "GET", "/bare/", "")?;
    assert!(head.starts_with("http/1.1 404"), "{head}");
    Ok(())
}

#[test]
fn a_changed_file_is_sent_anew() -> Checked {
    let folder = Folder::new("changed")?;
    let server = folder.serve()?;
    let (head, _) = ask(server.address(), "GET", "/app.js", "")?;
    let tag = head.lines().find_map(|line| line.strip_prefix("etag: ")).ok_or("no tag")?.to_owned();
    let known = format!("If-None-Match: {tag}\r\n");
    let (head, length) = ask(server.address(), "GET", "/app.js", &known)?;
    assert!(head.starts_with("http/1.1 304") && head.contains("x-all: yes"), "{head}");
    assert_eq!(length, 0);
    // As long as before, and within the same second.
    std::thread::sleep(Duration::from_millis(20));
    fs::write(folder.0.join("site/app.js"), "TEXT")?;
    let (head, length) = ask(server.address(), "GET", "/app.js", &known)?;
    assert!(head.starts_with("http/1.1 200"), "{head}");
    assert_eq!(length, 4);
    Ok(())
}

#[test]
fn brotli_goes_to_those_who_accept_it() -> Checked {
    let folder = Folder::new("brotli")?;
    let server = folder.serve()?;
    for (accept, brotli) in
        [("", false), ("Accept-Encoding: gzip, br\r\n", true), ("Accept-Encoding: gzip;q=1.0, br;q=0\r\n", false)]
    {
        let (head, length) = ask(server.address(), "GET", "/app.wasm", accept)?;
        assert_eq!(head.contains("content-encoding: br"), brotli, "{accept}: {head}");
        assert_eq!(length < 5000, brotli, "{accept}");
    }
    Ok(())
}

#[test]
fn only_reading_is_answered() -> Checked {
    let folder = Folder::new("methods")?;
    let server = folder.serve()?;
    let (head, length) = ask(server.address(), "HEAD", "/app.wasm", "")?;
    assert!(head.contains("content-length: 5000"), "{head}");
    assert_eq!(length, 0);
    let (head, _) = ask(server.address(), "POST", "/", "Content-Length: 0\r\n")?;
    assert!(head.starts_with("http/1.1 405"), "{head}");
    Ok(())
}

#[test]
fn nothing_outside_the_folder_is_served() -> Checked {
    let folder = Folder::new("outside")?;
    let server = folder.serve()?;
    for path in [
        "/../secret.txt",
        "/%2e%2e/secret.txt",
        "/..%2fsecret.txt",
        "/deep/../../secret.txt",
        "/..%5csecret.txt",
        "//../secret.txt",
        "/%00",
        "/%zz",
        "/%ff",
    ] {
        let (head, _) = ask(server.address(), "GET", path, "")?;
        assert!(head.starts_with("http/1.1 404"), "{path}: {head}");
    }
    Ok(())
}

#[test]
fn a_stopped_server_is_gone_and_its_port_free() -> Checked {
    let folder = Folder::new("stopped")?;
    let server = folder.serve()?;
    let address = server.address();
    // A connection that stays open, as browsers do it.
    let mut open = TcpStream::connect(address)?;
    open.set_read_timeout(Some(Duration::from_secs(10)))?;
    let request = b"GET / HTTP/1.1\r\nHost: here\r\n\r\n";
    open.write_all(request)?;
    let mut part = [0; 4096];
    let mut answer = Vec::new();
    // Head and body may come one after the other.
    while !answer.ends_with(b"<title>Home</title>") {
        let length = open.read(&mut part)?;
        assert!(length > 0, "the answer breaks off: {}", String::from_utf8_lossy(&answer));
        answer.extend(&part[..length]);
    }
    drop(server);
    let more = open.write_all(request).and_then(|()| open.read(&mut part));
    assert!(!matches!(more, Ok(1..)), "the open connection still answers");
    assert!(more.err().is_none_or(|it| it.kind() != ErrorKind::WouldBlock), "the open connection hangs");
    assert!(TcpStream::connect(address).is_err(), "the port still answers");
    let again = Server::start(&folder.0.join("site"), address.ip(), address.port())?;
    assert_eq!(again.address(), address);
    Ok(())
}

#[test]
fn a_stopped_server_breaks_off_what_it_sends() -> Checked {
    let folder = Folder::new("broken-off")?;
    // More than the system takes from the server before it is read.
    let length = 64 << 20;
    fs::File::create(folder.0.join("site/long.png"))?.set_len(length)?;
    let server = folder.serve()?;
    let mut stream = TcpStream::connect(server.address())?;
    stream.set_read_timeout(Some(Duration::from_secs(10)))?;
    stream.write_all(b"GET /long.png HTTP/1.1\r\nHost: here\r\n\r\n")?;
    stream.read_exact(&mut [0; 4096])?;
    let start = Instant::now();
    drop(server);
    assert!(start.elapsed() < Duration::from_secs(1), "stopping takes {:?}", start.elapsed());
    let mut rest = Vec::new();
    let end = stream.read_to_end(&mut rest);
    assert!((rest.len() as u64) < length / 2, "{} bytes arrived after all", rest.len());
    assert!(end.err().is_none_or(|it| it.kind() != ErrorKind::WouldBlock), "the connection hangs");
    Ok(())
}
