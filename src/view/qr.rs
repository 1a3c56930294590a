//! The link as a code for a camera: on the screen when asked for, on paper always.

use super::changing::Changing;
use super::known::Known;
use super::markup::{Markup, element, said};
use super::state::Bench;
use super::storage;
use super::tag::{Piece, button, tag};
use qrcodegen::{QrCode, QrCodeEcc};

/// Light modules around the code, without which no camera finds it (ISO/IEC 18004).
const QUIET: i32 = 4;

/// The least width of one module on paper, in millimeters: our assumption, twice what a phone needs at arm's length.
const MODULE: f64 = 0.5;

/// The button, and the code below it.
pub(super) fn code(bench: Bench) -> Vec<Piece> {
    // No camera gets from here to a file on this device.
    if storage::is_a_file() {
        return Vec::new();
    }
    let open = Changing::new(false);
    let markup = Known::new(move || {
        if open.get() || bench.printing.get() || bench.laid_open.get() {
            drawn(&bench.link())
        } else {
            Markup::default()
        }
    });
    let show = button("button type=button class=on-screen id=show-code aria-controls=code", "QR code", move |_| {
        open.update(|open| *open = !*open);
    })
    .attribute("aria-expanded", move || open.get().to_string());
    let code = tag("figure class=code id=code").class("for-paper", move || !open.get()).markup(move || markup.get());
    vec![show, code]
}

/// The figure's inside: black on white in every scheme.
fn drawn(address: &str) -> Markup {
    // The best correction that does not need a larger code.
    let Ok(code) = QrCode::encode_binary(address.as_bytes(), QrCodeEcc::Low) else {
        return said("figcaption", "This link is too long for a QR code. Copy it instead.");
    };
    let size = code.size();
    let mut path = String::new();
    for y in 0..size {
        let mut x = 0;
        while x < size {
            let dark = (x..size).take_while(|x| code.get_module(*x, y)).count() as i32;
            if dark > 0 {
                path.push_str(&format!("M{} {}h{dark}v1h-{dark}z", x + QUIET, y + QUIET));
            }
            x += dark + 1;
        }
    }
    let whole = size + 2 * QUIET;
    let width = format!("{:.1}", MODULE * f64::from(whole));
    let ground = format!("rect width=\"{whole}\" height=\"{whole}\" fill=\"#fff\"");
    let svg = format!(
        "svg viewBox=\"0 0 {whole} {whole}\" role=\"img\" aria-label=\"QR code of the link\" shape-rendering=\"crispEdges\" width=\"{width}mm\" height=\"{width}mm\""
    );
    element(&svg, said(ground, "") + said(format!("path d=\"{path}\""), ""))
        + said("figcaption", "Scan it to open these entries. It holds the link and nothing else.")
}
