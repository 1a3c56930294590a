//! A server for a folder of files, for people (`cargo xtask serve`) and for the journeys.
//! It sends the headers that the folder's own file of headers asks hosts for.

use crate::policy::{HEADERS, headers_for};
use axum::Router;
use axum::extract::{Request, State};
use axum::handler::HandlerWithoutStateExt;
use axum::http::header::{CACHE_CONTROL, HeaderName, HeaderValue};
use axum::middleware::{Next, from_fn_with_state};
use axum::response::Response;
use axum::serve::ListenerExt;
use std::io;
use std::net::{IpAddr, SocketAddr, TcpListener};
use std::path::{Path, PathBuf};
use std::thread::{self, JoinHandle};
use tokio::sync::oneshot;
use tower_http::CompressionLevel;
use tower_http::compression::CompressionLayer;
use tower_http::services::ServeDir;
use tower_http::set_header::SetResponseHeaderLayer;

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
        let site = site(&folder.canonicalize()?);
        let listener = TcpListener::bind((host, port))?;
        listener.set_nonblocking(true)?;
        let address = listener.local_addr()?;
        let runtime = tokio::runtime::Builder::new_current_thread().enable_all().build()?;
        let (stop, stopped) = oneshot::channel::<()>();
        let thread = thread::Builder::new().name("server".to_owned()).spawn(move || {
            runtime.spawn(serve(listener, site));
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
        self.join();
    }

    fn join(&mut self) {
        if let Some(thread) = self.thread.take() {
            let _ = thread.join();
        }
    }
}

impl Drop for Server {
    fn drop(&mut self) {
        drop(self.stop.take());
        self.join();
    }
}

async fn serve(listener: TcpListener, site: Router) -> io::Result<()> {
    // A compressed answer is sent in pieces, and the system would hold back the last one for a moment.
    let listener = tokio::net::TcpListener::from_std(listener)?.tap_io(|connection| {
        let _ = connection.set_nodelay(true);
    });
    axum::serve(listener, site).await
}

/// The files of a folder, and how they are sent.
fn site(folder: &Path) -> Router {
    let files = ServeDir::new(folder).not_found_service(not_found.into_service());
    // Compressed at each request, so at a quality that takes little time; a host would use 11, as the printed sizes do.
    let compression = CompressionLayer::new().quality(CompressionLevel::Precise(5));
    // Asked about every time, so that a rebuilt page is seen at the next reload.
    let no_cache = SetResponseHeaderLayer::if_not_present(CACHE_CONTROL, HeaderValue::from_static("no-cache"));
    Router::new()
        .fallback_service(files)
        .layer(from_fn_with_state(folder.join(HEADERS), add_headers))
        .layer(no_cache)
        .layer(compression)
}

async fn not_found() -> &'static str {
    "There is no such file here."
}

/// The headers that the file of headers gives to a path. It is read anew each time: a build under way may change what
/// may run.
async fn add_headers(State(file): State<PathBuf>, request: Request, next: Next) -> Response {
    let path = request.uri().path().to_owned();
    let mut response = next.run(request).await;
    // What is missing may be there later, and must not be cached for as long as the file itself.
    if response.status().is_client_error() {
        return response;
    }
    let text = std::fs::read_to_string(file).unwrap_or_default();
    for (name, value) in headers_for(&text, &path) {
        if let (Ok(name), Ok(value)) = (HeaderName::try_from(name), HeaderValue::try_from(value)) {
            response.headers_mut().insert(name, value);
        }
    }
    response
}
