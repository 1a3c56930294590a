//! A link as a QR code, which a phone's camera reads.

use super::{Drawing, Mark};
use qrcodegen::{QrCode, QrCodeEcc};

/// Light modules around the code, without which no camera finds it (ISO/IEC 18004).
const QUIET: i32 = 4;

/// The least width of one module on paper, in millimeters: our assumption, twice what a phone needs at arm's length.
const MODULE: f64 = 0.5;

/// The code of an address, a module to the unit; nothing for one that is too long.
pub fn code(address: &str) -> Option<Drawing> {
    // The best correction that does not need a larger code.
    let code = QrCode::encode_binary(address.as_bytes(), QrCodeEcc::Low).ok()?;
    let size = code.size();
    let mut dark = Vec::new();
    for y in 0..size {
        let mut x = 0;
        while x < size {
            let from = x;
            while x < size && code.get_module(x, y) {
                x += 1;
            }
            if x > from {
                let corner = |x: i32, y: i32| (f64::from(x + QUIET), f64::from(y + QUIET));
                dark.push((corner(from, y), corner(x, y + 1)));
            }
            x += 1;
        }
    }
    let whole = f64::from(size + 2 * QUIET);
    let blocks = |class: &str, blocks| Mark::Blocks { class: class.to_string(), blocks };
    Some(Drawing {
        class: String::new(),
        width: whole,
        height: whole,
        words: "QR code of the link".to_string(),
        millimeters: Some(MODULE),
        marks: vec![blocks("ground", vec![((0.0, 0.0), (whole, whole))]), blocks("modules", dark)],
    })
}
