//! `cargo xtask serve`: the built page on this computer.

/// The share link's fragment (without `#`) of the example that the second printed address opens.
const EXAMPLE: &str = "3&length=38in&weight=4100lb&use=hard&crc=6f47f8b8";

use crate::server::Server;
use crate::{Outcome, build};
use std::io::ErrorKind;
use std::net::{IpAddr, Ipv4Addr, UdpSocket};

/// What the command line asks for.
#[derive(Debug)]
pub struct Wish {
    /// The address to listen at.
    pub host: IpAddr,
    /// The first port to try.
    pub port: u16,
    /// The fragment of the second address printed.
    pub fragment: String,
    /// Whether to build first.
    pub build: bool,
}

impl Default for Wish {
    fn default() -> Self {
        Wish { host: Ipv4Addr::LOCALHOST.into(), port: 8080, fragment: EXAMPLE.to_owned(), build: true }
    }
}

/// Builds and serves until the process is stopped.
pub fn serve(wish: &Wish) -> Outcome {
    if wish.build {
        build::build()?;
    }
    let server = listen(wish)?;
    let port = server.address().port();
    let fragment = wish.fragment.trim_start_matches('#');
    for host in hosts(wish.host) {
        println!("\n  the page           http://{host}:{port}/");
        if !fragment.is_empty() {
            println!("  a worked example   http://{host}:{port}/#{fragment}");
        }
    }
    if !wish.host.is_loopback() {
        println!("\nBrowsers keep a page for offline use only from https or from this computer itself.");
    }
    println!("\nCtrl-C stops it.");
    server.wait();
    Ok(())
}

/// The port wished for, or the next free one.
fn listen(wish: &Wish) -> Outcome<Server> {
    let dist = build::dist();
    if !dist.join("index.html").is_file() {
        return Err("there is no page in dist/ yet: run `cargo xtask build`".to_owned());
    }
    let last = wish.port.saturating_add(50);
    for port in wish.port..=last {
        match Server::start(&dist, wish.host, port) {
            Ok(server) => return Ok(server),
            Err(reason) if reason.kind() == ErrorKind::AddrInUse => {
                println!("port {port} is taken, trying the next");
            }
            Err(reason) => {
                return Err(format!(
                    "cannot listen at {}:{port} ({reason}): choose another --port or --host",
                    wish.host
                ));
            }
        }
    }
    Err(format!("ports {} to {last} are all taken: choose another --port", wish.port))
}

/// What to type into a browser: 0.0.0.0 means every address of this computer, which is none to visit.
fn hosts(host: IpAddr) -> Vec<String> {
    let text = |it: IpAddr| {
        if it.is_ipv6() { format!("[{it}]") } else { it.to_string() }
    };
    if !host.is_unspecified() {
        return vec![text(host)];
    }
    let mut all = vec![text(Ipv4Addr::LOCALHOST.into())];
    // Connecting a UDP socket sends nothing: it only asks which of this computer's addresses would
    // be used to reach that one (an address reserved for documentation).
    let outward = UdpSocket::bind((Ipv4Addr::UNSPECIFIED, 0))
        .and_then(|socket| socket.connect(("192.0.2.1", 9)).and_then(|()| socket.local_addr()));
    if let Ok(address) = outward {
        all.push(text(address.ip()));
    }
    all
}
