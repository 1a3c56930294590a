//! `cargo xtask serve`: the built page on this computer.

use crate::server::Server;
use crate::{Outcome, build};
use std::io::ErrorKind;
use std::net::{IpAddr, Ipv4Addr, UdpSocket};

/// The share link's fragment (without `#`) of the example that the second printed address opens.
const EXAMPLE: &str = "3&length=38in&weight=4100lb&use=hard&crc=6f47f8b8";

/// How many ports are tried after the first one.
const MORE_PORTS: u16 = 50;

/// What the command line asks for.
#[derive(Debug)]
pub struct Options {
    /// The address to listen at.
    pub host: IpAddr,
    /// The first port to try.
    pub port: u16,
    /// The fragment of the second address printed.
    pub fragment: String,
    /// Whether to build first.
    pub build: bool,
}

impl Default for Options {
    fn default() -> Self {
        Options { host: Ipv4Addr::LOCALHOST.into(), port: 8080, fragment: EXAMPLE.to_owned(), build: true }
    }
}

/// Builds and serves until the process is stopped.
pub fn serve(options: &Options) -> Outcome {
    if options.build {
        build::build()?;
    }
    let server = listen(options)?;
    let port = server.address().port();
    let fragment = options.fragment.trim_start_matches('#');
    for host in hosts(options.host) {
        println!("\n  the page           http://{host}:{port}/");
        if !fragment.is_empty() {
            println!("  a worked example   http://{host}:{port}/#{fragment}");
        }
    }
    if !options.host.is_loopback() {
        println!("\nBrowsers keep a page for offline use only from https or from this computer itself.");
    }
    println!("\nCtrl-C stops it.");
    server.wait();
    Ok(())
}

/// Listens at the port asked for, or at the next free one.
fn listen(options: &Options) -> Outcome<Server> {
    let dist = build::dist();
    if !dist.join("index.html").is_file() {
        return Err("there is no page in dist/ yet: run `cargo xtask build`".to_owned());
    }
    let last = options.port.saturating_add(MORE_PORTS);
    for port in options.port..=last {
        match Server::start(&dist, options.host, port) {
            Ok(server) => return Ok(server),
            Err(reason) if reason.kind() == ErrorKind::AddrInUse => {
                println!("port {port} is taken, trying the next");
            }
            Err(reason) => {
                return Err(format!(
                    "cannot listen at {}:{port} ({reason}): choose another --port or --host",
                    options.host
                ));
            }
        }
    }
    Err(format!("ports {} to {last} are all taken: choose another --port", options.port))
}

/// What to type into a browser. 0.0.0.0 stands for every address of this computer, and no browser can visit it.
fn hosts(host: IpAddr) -> Vec<String> {
    let text = |address: IpAddr| if address.is_ipv6() { format!("[{address}]") } else { address.to_string() };
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
