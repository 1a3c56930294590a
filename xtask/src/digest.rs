//! Hashes of files: as browsers check them, and as part of a file's name.

use base64::Engine;
use base64::engine::general_purpose::STANDARD;
use sha2::{Digest, Sha256};

/// What stands in an `integrity` attribute and, in quotes, in a content policy.
#[must_use]
pub fn integrity(bytes: &[u8]) -> String {
    format!("sha256-{}", base64(&Sha256::digest(bytes)))
}

/// Sixteen letters that differ whenever the bytes do.
#[must_use]
pub fn mark(bytes: &[u8]) -> String {
    Sha256::digest(bytes).iter().take(8).map(|byte| format!("{byte:02x}")).collect()
}

/// Bytes as text.
#[must_use]
pub fn base64(bytes: &[u8]) -> String {
    STANDARD.encode(bytes)
}

#[cfg(test)]
mod tests {
    use super::*;

    /// The hash of the empty file, as FIPS 180-4's examples print it, in both writings.
    #[test]
    fn the_empty_file_has_the_printed_hash() {
        assert_eq!(integrity(b""), "sha256-47DEQpj8HBSa+/TImW+5JCeuQeRkm5NMpJWZG3hSuFU=");
        assert_eq!(mark(b""), "e3b0c44298fc1c14");
    }
}
