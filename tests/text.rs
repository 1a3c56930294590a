//! Marks found and texts joined against the standard library.

use linkwright::text::{cut, cut_last, holds, is_letter, is_of_a_name, joined, pieces, replaced};

#[test]
fn marks_are_found_as_the_standard_library_finds_them() {
    for text in ["", "a", "ab", "ab, cd, ef", ", ", ",, ,", "−, −", "\u{a0}, x", "aaa", "aaaa", "a, b,"] {
        for mark in [", ", "a", "aa", "−", "no such mark", "b,"] {
            assert_eq!(cut(text, mark), text.split_once(mark), "“{mark}” in “{text}”");
            assert_eq!(cut_last(text, mark), text.rsplit_once(mark), "the last “{mark}” in “{text}”");
            assert_eq!(holds(text, mark), text.contains(mark), "“{mark}” in “{text}”");
            assert_eq!(pieces(text, mark), text.split(mark).collect::<Vec<_>>(), "“{mark}” in “{text}”");
            assert_eq!(replaced(text, mark, "; "), text.replace(mark, "; "), "“{mark}” in “{text}”");
        }
        assert!(holds(text, "") && text.contains(""));
    }
}

#[test]
fn texts_are_joined_as_the_standard_library_joins_them() {
    for texts in [&[][..], &["a"], &["a", "", "c"]] {
        assert_eq!(joined(texts, ", "), texts.join(", "));
    }
}

#[test]
fn letters_are_latin_and_greek() {
    for letter in ['a', 'Z', 'α', 'ω', 'Δ'] {
        assert!(is_letter(letter) && letter.is_alphabetic() && is_of_a_name(letter), "{letter}");
    }
    for other in ['1', '²', '_', '√', '·', ' '] {
        assert!(!is_letter(other), "{other}");
    }
    assert!(is_of_a_name('1') && is_of_a_name('_') && is_of_a_name('′') && !is_of_a_name('²'));
}
