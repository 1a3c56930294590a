//! The check sign of an order code, by the hybrid system of ISO/IEC 7064.

/// The check sign of values below `modulus`, by the recursive method for hybrid systems, MOD M + 1, M: ISO/IEC 7064:2003,
/// from memory, held against published identifiers for M of 10 and 36 by the tests.
///
/// The standard names systems for M of 10, 26 and 36. Ours has M = 32, one for each sign of base 32, and the same
/// method. It notices every single wrong sign, for 2 and 33 have no common factor; tests count what it misses of two
/// neighbors that changed places.
pub fn check_sign(values: &[u8], modulus: u8) -> u8 {
    let m = u32::from(modulus);
    let product = values.iter().fold(m, |product, value| {
        let sum = (product + u32::from(*value)) % m;
        (if sum == 0 { m } else { sum }) * 2 % (m + 1)
    });
    // The product and the check sign together leave a remainder of 1; the result is below the modulus.
    ((m + 1 - product) % m) as u8
}
