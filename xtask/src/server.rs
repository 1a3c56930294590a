//! A small server for a folder of files, for people (`cargo xtask serve`) and for the journeys.
//! It sends the headers that the folder's own file of headers asks hosts for.

use crate::policy::{HEADERS, headers_for};
use http_body_util::Full;
use hyper::body::Bytes;
use hyper::header::{self, HeaderMap, HeaderName, HeaderValue};
use hyper::{Method, Request, Response, StatusCode};
use hyper_util::rt::TokioIo;
use std::collections::HashMap;
use std::convert::Infallible;
use std::io;
use std::net::{IpAddr, SocketAddr};
use std::path::{Path, PathBuf};
use std::sync::{Arc, LazyLock, Mutex, PoisonError};
use std::thread::{self, JoinHandle};
use std::time::SystemTime;
use tokio::sync::oneshot;

/// A server in its own thread. Dropping it stops it and closes every connection, so that to a
/// browser it is as gone as a host without power.
#[derive(Debug)]
pub struct Server {
    address: SocketAddr,
    stop: Option<oneshot::Sender<()>>,
    thread: Option<JoinHandle<()>>,
}

impl Server {
    /// Serves a folder; port 0 takes any free one.
    pub fn start(folder: &Path, host: IpAddr, port: u16) -> io::Result<Server> {
        let files = Arc::new(Files::new(folder)?);
        let listener = std::net::TcpListener::bind((host, port))?;
        listener.set_nonblocking(true)?;
        let address = listener.local_addr()?;
        let runtime = tokio::runtime::Builder::new_current_thread().enable_io().build()?;
        let (stop, stopped) = oneshot::channel::<()>();
        let thread = thread::Builder::new().name("server".to_owned()).spawn(move || {
            runtime.spawn(accept(listener, files));
            // Until the sender is dropped.
            let _ = runtime.block_on(stopped);
            // The runtime is dropped here, with every connection that it holds.
        })?;
        Ok(Server { address, stop: Some(stop), thread: Some(thread) })
    }

    /// Where it listens.
    #[must_use]
    pub fn address(&self) -> SocketAddr {
        self.address
    }

    /// Serves until the process ends.
    pub fn wait(mut self) {
        if let Some(thread) = self.thread.take() {
            let _ = thread.join();
        }
    }
}

impl Drop for Server {
    fn drop(&mut self) {
        drop(self.stop.take());
        if let Some(thread) = self.thread.take() {
            let _ = thread.join();
        }
    }
}

async fn accept(listener: std::net::TcpListener, files: Arc<Files>) {
    let Ok(listener) = tokio::net::TcpListener::from_std(listener) else {
        return;
    };
    loop {
        // A connection that fails while it is being made is the browser's to try again.
        let Ok((stream, _)) = listener.accept().await else {
            tokio::task::yield_now().await;
            continue;
        };
        let files = Arc::clone(&files);
        let answer = hyper::service::service_fn(move |request| {
            let response = files.answer(&request);
            async move { Ok::<_, Infallible>(response) }
        });
        tokio::spawn(hyper::server::conn::http1::Builder::new().serve_connection(TokioIo::new(stream), answer));
    }
}

/// A file's compressed form, and the state of the file that it was made from.
type Compressed = (SystemTime, u64, Bytes);

/// Of every folder served, as long as the process lives: each journey has a server of its own.
static COMPRESSED: LazyLock<Mutex<HashMap<PathBuf, Compressed>>> = LazyLock::new(Mutex::default);

struct Files {
    root: PathBuf,
}

impl Files {
    fn new(folder: &Path) -> io::Result<Files> {
        Ok(Files { root: folder.canonicalize()? })
    }

    fn answer<B>(&self, request: &Request<B>) -> Response<Full<Bytes>> {
        if request.method() != Method::GET && request.method() != Method::HEAD {
            let mut refusal = plain(StatusCode::METHOD_NOT_ALLOWED, "Only GET and HEAD are answered here.");
            refusal.headers_mut().insert(header::ALLOW, HeaderValue::from_static("GET, HEAD"));
            return refusal;
        }
        let Some(file) = find(&self.root, request.uri().path()) else {
            return plain(StatusCode::NOT_FOUND, "There is no such file here.");
        };
        match read(&file, accepts_brotli(request.headers())) {
            Ok((body, brotli)) => {
                let mut response = ok(&file, body, brotli);
                self.add_headers(request.uri().path(), response.headers_mut());
                response
            }
            Err(_) => plain(StatusCode::INTERNAL_SERVER_ERROR, "The file cannot be read."),
        }
    }

    /// Read anew each time: a build under way may change what may run.
    fn add_headers(&self, path: &str, headers: &mut HeaderMap) {
        let text = std::fs::read_to_string(self.root.join(HEADERS)).unwrap_or_default();
        for (name, value) in headers_for(&text, path) {
            if let (Ok(name), Ok(value)) = (HeaderName::try_from(name), HeaderValue::try_from(value)) {
                headers.insert(name, value);
            }
        }
    }
}

/// The file's bytes, and whether they are compressed.
fn read(file: &Path, brotli: bool) -> io::Result<(Bytes, bool)> {
    let about = file.metadata()?;
    let state = (about.modified()?, about.len());
    if !brotli || !kind(file).1 || about.len() < 1024 {
        return Ok((std::fs::read(file)?.into(), false));
    }
    let mut all = COMPRESSED.lock().unwrap_or_else(PoisonError::into_inner);
    if let Some((time, length, bytes)) = all.get(file)
        && (*time, *length) == state
    {
        return Ok((bytes.clone(), true));
    }
    // Quality 5 is made at once; a host would use 11, as the printed sizes do.
    let bytes = Bytes::from(compress(&std::fs::read(file)?, 5));
    all.insert(file.to_path_buf(), (state.0, state.1, bytes.clone()));
    Ok((bytes, true))
}

/// Brotli at a quality from 0 (fast) to 11 (small).
#[must_use]
pub fn compress(bytes: &[u8], quality: i32) -> Vec<u8> {
    let settings = brotli::enc::BrotliEncoderParams { quality, ..Default::default() };
    let mut small = Vec::new();
    // Neither a slice nor a Vec can fail to be read or written.
    let _ = brotli::BrotliCompress(&mut &bytes[..], &mut small, &settings);
    small
}

/// The file that a request's path names, if there is one inside `root`.
fn find(root: &Path, path: &str) -> Option<PathBuf> {
    let mut file = root.to_path_buf();
    for part in decode(path)?.split('/') {
        match part {
            "" => {}
            "." | ".." => return None,
            // Separators and drive letters of other systems, and the end of a C string.
            _ if part.contains(['\\', ':', '\0']) => return None,
            _ => file.push(part),
        }
    }
    if file.is_dir() && path.ends_with('/') {
        file.push("index.html");
    }
    // A symbolic link may lead outside.
    let file = file.canonicalize().ok()?;
    (file.starts_with(root) && file.is_file()).then_some(file)
}

/// Percent-encoding undone; none when it is broken or not text.
fn decode(path: &str) -> Option<String> {
    let mut bytes = Vec::new();
    let mut rest = path.bytes();
    while let Some(byte) = rest.next() {
        if byte == b'%' {
            let digit = |it: u8| char::from(it).to_digit(16);
            let value = digit(rest.next()?)? * 16 + digit(rest.next()?)?;
            bytes.push(u8::try_from(value).ok()?);
        } else {
            bytes.push(byte);
        }
    }
    String::from_utf8(bytes).ok()
}

fn accepts_brotli(headers: &HeaderMap) -> bool {
    let all = headers.get_all(header::ACCEPT_ENCODING).iter();
    all.filter_map(|it| it.to_str().ok()).flat_map(|it| it.split(',')).any(|offer| {
        let (name, weight) = offer.split_once(';').unwrap_or((offer, "q=1"));
        let weight = weight.trim().strip_prefix("q=").and_then(|it| it.trim().parse().ok());
        name.trim().eq_ignore_ascii_case("br") && weight.unwrap_or(1.0_f64) > 0.0
    })
}

/// A file's media type, and whether compressing it pays.
fn kind(file: &Path) -> (&'static str, bool) {
    match file.extension().and_then(|it| it.to_str()).unwrap_or_default() {
        "html" => ("text/html; charset=utf-8", true),
        "js" | "mjs" => ("text/javascript; charset=utf-8", true),
        "css" => ("text/css; charset=utf-8", true),
        // Browsers compile WASM while it arrives only under this type.
        "wasm" => ("application/wasm", true),
        "json" | "map" => ("application/json", true),
        "webmanifest" => ("application/manifest+json", true),
        "svg" => ("image/svg+xml", true),
        "txt" | "md" => ("text/plain; charset=utf-8", true),
        "ico" => ("image/x-icon", true),
        "png" => ("image/png", false),
        "jpg" | "jpeg" => ("image/jpeg", false),
        "webp" => ("image/webp", false),
        "woff2" => ("font/woff2", false),
        "pdf" => ("application/pdf", false),
        _ => ("application/octet-stream", false),
    }
}

fn ok(file: &Path, body: Bytes, brotli: bool) -> Response<Full<Bytes>> {
    let mut response = Response::new(Full::new(body));
    let headers = response.headers_mut();
    headers.insert(header::CONTENT_TYPE, HeaderValue::from_static(kind(file).0));
    headers.insert(header::VARY, HeaderValue::from_static("accept-encoding"));
    if brotli {
        headers.insert(header::CONTENT_ENCODING, HeaderValue::from_static("br"));
    }
    common(headers);
    response
}

fn plain(status: StatusCode, text: &'static str) -> Response<Full<Bytes>> {
    let mut response = Response::new(Full::new(Bytes::from_static(text.as_bytes())));
    *response.status_mut() = status;
    let headers = response.headers_mut();
    headers.insert(header::CONTENT_TYPE, HeaderValue::from_static("text/plain; charset=utf-8"));
    common(headers);
    response
}

fn common(headers: &mut HeaderMap) {
    // A rebuilt page must be seen at the next reload.
    headers.insert(header::CACHE_CONTROL, HeaderValue::from_static("no-cache"));
    headers.insert(header::X_CONTENT_TYPE_OPTIONS, HeaderValue::from_static("nosniff"));
}
