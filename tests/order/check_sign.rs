//! The check sign: published identifiers of the same method, and exactly what ours notices.

use linkwright::engine::shop::code::check_sign;

/// The values of letters and digits in the alphabet of MOD 37,36.
fn values(text: &str) -> Vec<u8> {
    text.chars().map(|letter| letter.to_digit(36).expect("a letter or a digit") as u8).collect()
}

#[test]
fn the_method_gives_published_check_signs() {
    // A Global Release Identifier and the two check signs of an ISAN, all MOD 37,36: read in the test cases of two public
    // libraries for check signs, not in the standards.
    for (text, sign) in [("A12425GABC1234002", 'M'), ("00000000C36D002B", 'K'), ("00000000C36D002B00000000", 'E')] {
        let sign = sign.to_digit(36).expect("a letter") as u8;
        assert_eq!(check_sign(&values(text), 36), sign, "{text}");
    }
    // The example of a library's manual for MOD 11,10 (from memory).
    assert_eq!(check_sign(&values("79462"), 10), 3);
}

/// The state after some signs decides all that follows, and the check sign tells each of the 32 states apart: so any
/// sign before stands for every beginning.
#[test]
fn the_check_sign_tells_all_states_apart() {
    let mut signs: Vec<u8> = (0..32).map(|first| check_sign(&[first], 32)).collect();
    signs.sort_unstable();
    assert_eq!(signs, (0..32).collect::<Vec<u8>>());
}

#[test]
fn every_single_wrong_sign_is_noticed() {
    // A wrong sign changes the state after it, whatever came before; and no later sign brings two states together.
    for before in 0..32 {
        for right in 0..32 {
            for wrong in (0..32).filter(|wrong| *wrong != right) {
                let [one, other] = [right, wrong].map(|sign| check_sign(&[before, sign], 32));
                assert_ne!(one, other, "after {before}, {wrong} for {right}");
                for after in 0..32 {
                    let [one, other] = [right, wrong].map(|sign| check_sign(&[before, sign, after], 32));
                    assert_ne!(one, other, "after {before}, {wrong} for {right}, then {after}");
                }
            }
        }
    }
}

/// Of 992 pairs of unlike neighbors 2 may change places unseen, wherever they stand: 99.8 % are noticed.
#[test]
fn nearly_all_neighbors_that_changed_places_are_noticed() {
    let mut missed = [0; 3];
    for a in 0..32_u8 {
        for b in (0..32).filter(|b| *b != a) {
            missed[0] += u32::from(check_sign(&[a, b], 32) == check_sign(&[b, a], 32));
            for before in 0..32 {
                let [one, other] = [[before, a, b], [before, b, a]].map(|signs| check_sign(&signs, 32));
                missed[1] += u32::from(one == other);
                // The last sign of the hash with the check sign itself.
                let its_check = check_sign(&[before, a], 32);
                missed[2] += u32::from(its_check == b && check_sign(&[before, b], 32) == a);
            }
        }
    }
    assert_eq!(missed, [2, 2 * 32, 2], "of 992 at the beginning, of 32 × 992 inside, of 992 at the end");
}
