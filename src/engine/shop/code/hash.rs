//! The hash under an order code: nobody is to be kept out, only mixed up orders are to be told apart.

/// Where FNV-1a begins, with 64 bits.
const OFFSET_BASIS: u64 = 0xcbf2_9ce4_8422_2325;

/// What FNV-1a multiplies by, with 64 bits.
const PRIME: u64 = 0x0000_0100_0000_01b3;

/// FNV-1a with 64 bits (from memory), its result mixed once more by the finalizer of MurmurHash3, so that each bit of the
/// bytes moves each bit of the code.
pub fn hash(bytes: &[u8]) -> u64 {
    mixed(fnv_1a(bytes))
}

/// FNV-1a with 64 bits.
fn fnv_1a(bytes: &[u8]) -> u64 {
    bytes.iter().fold(OFFSET_BASIS, |hash, byte| (hash ^ u64::from(*byte)).wrapping_mul(PRIME))
}

/// The finalizer of MurmurHash3 for 64 bits, from memory. It can be undone, so it brings no two values together.
const fn mixed(mut hash: u64) -> u64 {
    hash ^= hash >> 33;
    hash = hash.wrapping_mul(0xff51_afd7_ed55_8ccd);
    hash ^= hash >> 33;
    hash = hash.wrapping_mul(0xc4ce_b9fe_1a85_ec53);
    hash ^ (hash >> 33)
}

#[cfg(test)]
mod tests {
    //! The values printed for FNV-1a, and that the mixing can be undone.

    use super::{fnv_1a, mixed};

    #[test]
    fn fnv_1a_gives_its_printed_values() {
        // From the list of test vectors that comes with the hash (from memory).
        let cases = [("", 0xcbf2_9ce4_8422_2325), ("a", 0xaf63_dc4c_8601_ec8c), ("foobar", 0x8594_4171_f739_67e8)];
        for (text, value) in cases {
            assert_eq!(fnv_1a(text.as_bytes()), value, "{text:?}");
        }
    }

    #[test]
    fn one_bit_moves_half_of_all() {
        let (mut least, mut most) = (64, 0);
        for bit in 0..64 {
            let moved: u32 = (0..1000_u64)
                .map(|number| {
                    let start = fnv_1a(&number.to_be_bytes());
                    (mixed(start) ^ mixed(start ^ (1 << bit))).count_ones()
                })
                .sum();
            (least, most) = (least.min(moved / 1000), most.max(moved / 1000));
        }
        assert!(least >= 31 && most <= 32, "{least} to {most} of 64 bits");
    }
}
