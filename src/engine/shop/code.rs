//! The order code: a short word over everything that is made, so that two people can tell whether they mean the same bar.
//!
//! It covers every entry of the rig and its links and what follows from them: bar, rod ends, hands, lengths, tapped
//! depths, quantity, finish. So the same entries get another code where a later version makes another bar of them. The
//! name and the texts of the order are left out, and the links count in any order.
//!
//! Eight signs of the base 32 alphabet of RFC 4648 §6 (A to Z and 2 to 7, without 0, 1, 8 and 9) hold 40 bits of a
//! hash; a ninth is the check sign. `K7QM-2XPA-B`: two different orders have the same code once in 2⁴⁰.

mod alone;
mod check_sign;
mod hash;
mod made;

pub use alone::alone;
pub use check_sign::check_sign;
pub use hash::hash;
pub use made::bytes_of_link;

use crate::document::{Document, Yes};
use crate::report::{Answer, LinkReport};
use crate::share;

/// The signs, in the order of their values: RFC 4648 §6, from memory.
const ALPHABET: &[u8; 32] = b"ABCDEFGHIJKLMNOPQRSTUVWXYZ234567";

/// Signs that hold the hash, before the check sign.
const SIGNS: usize = 8;

/// The value of each sign has so many bits.
const BITS: u32 = 5;

/// An order code: the values of its signs, the check sign last.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
pub struct Code([u8; SIGNS + 1]);

impl Code {
    /// The code of what is made, from its bytes.
    pub fn of_bytes(bytes: &[u8]) -> Self {
        // The hash is well mixed, so that its upper bits are as good as any.
        let bits = hash(bytes) >> (u64::BITS - BITS * SIGNS as u32);
        let mut signs = [0; SIGNS + 1];
        for (place, sign) in signs.iter_mut().take(SIGNS).enumerate() {
            let shift = BITS * (SIGNS - 1 - place) as u32;
            // Five bits fit any integer.
            *sign = ((bits >> shift) & 31) as u8;
        }
        signs[SIGNS] = check_sign(&signs[..SIGNS], 32);
        Self(signs)
    }

    /// Its signs without dashes: `K7QM2XPAB`.
    fn letters(self) -> impl Iterator<Item = char> {
        self.0.into_iter().map(|value| ALPHABET.get(usize::from(value)).copied().map_or('?', char::from))
    }

    /// As it is written: `K7QM-2XPA-B`.
    pub fn written(self) -> String {
        let mut text = String::new();
        for (place, letter) in self.letters().enumerate() {
            if matches!(place, 4 | 8) {
                text.push('-');
            }
            text.push(letter);
        }
        text
    }

    /// As it is said over the phone: `Kilo, seven, Quebec, Mike`.
    pub fn spoken(self) -> String {
        let words: Vec<&str> = self.letters().map(spelled).collect();
        words.join(", ")
    }
}

/// A sign in the spelling words of the radiotelephony alphabet (ITU Radio Regulations, Appendix 14; ICAO Annex 10,
/// Volume II; both from memory). Digits are said as plain English says them.
const fn spelled(letter: char) -> &'static str {
    match letter {
        'A' => "Alfa",
        'B' => "Bravo",
        'C' => "Charlie",
        'D' => "Delta",
        'E' => "Echo",
        'F' => "Foxtrot",
        'G' => "Golf",
        'H' => "Hotel",
        'I' => "India",
        'J' => "Juliett",
        'K' => "Kilo",
        'L' => "Lima",
        'M' => "Mike",
        'N' => "November",
        'O' => "Oscar",
        'P' => "Papa",
        'Q' => "Quebec",
        'R' => "Romeo",
        'S' => "Sierra",
        'T' => "Tango",
        'U' => "Uniform",
        'V' => "Victor",
        'W' => "Whiskey",
        'X' => "X-ray",
        'Y' => "Yankee",
        'Z' => "Zulu",
        '2' => "two",
        '3' => "three",
        '4' => "four",
        '5' => "five",
        '6' => "six",
        '7' => "seven",
        _ => "",
    }
}

/// Why a text is no order code.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum NoCode {
    /// Nothing was typed.
    Empty,
    /// A sign that no code has.
    Sign(char),
    /// It has so many signs.
    Count(usize),
    /// The check sign does not fit: one sign was misheard, or two changed places.
    Misheard,
}

impl NoCode {
    /// What is wrong, in a sentence.
    pub fn sentence(self) -> String {
        match self {
            Self::Empty => "Type the nine signs of the code.".to_string(),
            Self::Sign('1') => "A code has no digit 1: type the letter I or L.".to_string(),
            Self::Sign(sign @ ('8' | '9')) => format!("A code has no digit {sign}: have it spelled again."),
            Self::Sign(sign) => format!("A code has letters and the digits 2 to 7, no “{sign}”."),
            Self::Count(1) => "A code has nine signs; this is 1.".to_string(),
            Self::Count(count) => format!("A code has nine signs; these are {count}."),
            Self::Misheard => {
                "This is no code: a sign was misheard, or two changed places. Have it spelled again.".to_string()
            }
        }
    }
}

/// Reads a code as people type it: with spaces and dashes or without, in small letters or capitals. A 0 is read as the
/// letter O, as RFC 4648 allows, for the alphabet has no 0; a 1 as whichever of I and L the check sign allows.
///
/// # Errors
/// Why it is no code.
pub fn read(text: &str) -> Result<Code, NoCode> {
    let ones = text.chars().filter(|letter| *letter == '1').count();
    if ones == 0 {
        return read_signs(text);
    }
    // Nobody hears or sees a 1 that is written I or L: the check sign tells which it is, unless it fits both.
    let [as_i, as_l] = ["I", "L"].map(|sign| read_signs(&text.replace('1', sign)));
    match (ones, as_i, as_l) {
        (1, Ok(code), Err(_)) | (1, Err(_), Ok(code)) => Ok(code),
        (_, Err(NoCode::Count(count)), _) => Err(NoCode::Count(count)),
        _ => Err(NoCode::Sign('1')),
    }
}

/// Reads a code of which every sign is one of the alphabet's, or a 0.
fn read_signs(text: &str) -> Result<Code, NoCode> {
    let mut values = Vec::new();
    for letter in text.chars().filter(|letter| !is_between(*letter)) {
        let sign = if letter == '0' { 'O' } else { letter.to_ascii_uppercase() };
        let value = ALPHABET.iter().position(|known| char::from(*known) == sign).ok_or(NoCode::Sign(letter))?;
        // There are 32 of them.
        values.push(value as u8);
        if values.len() > 999 {
            break;
        }
    }
    if values.is_empty() {
        return Err(NoCode::Empty);
    }
    let signs: [u8; SIGNS + 1] = values.as_slice().try_into().map_err(|_| NoCode::Count(values.len()))?;
    if check_sign(&signs[..SIGNS], 32) == signs[SIGNS] { Ok(Code(signs)) } else { Err(NoCode::Misheard) }
}

/// What may stand between signs: spaces, dashes of any length, points and commas.
const fn is_between(letter: char) -> bool {
    letter.is_whitespace()
        || matches!(letter, '-' | '\u{2010}'..='\u{2015}' | '\u{2212}' | '\u{2060}' | '.' | ',' | '_')
}

/// The code of one link.
pub fn code_of_link(document: &Document, link: usize, answer: &Answer) -> Code {
    of_links(document, vec![bytes_of_link(document, link, answer)])
}

/// The code of what is made for one link: bar, ends and finish, without its count, its side and the rest of the rig. A
/// bar's log is marked by it.
pub fn code_of_made(document: &Document, link: usize, answer: &Answer) -> Code {
    Code::of_bytes(&made::bytes_of_made(document, link, answer))
}

/// The code of the whole order, every link in it; nothing while one of them cannot be made yet. Of a rig with one link
/// it is that link's code.
pub fn code_of_rig(document: &Document, reports: &[LinkReport]) -> Option<Code> {
    if document.links.is_empty() || reports.len() != document.links.len() {
        return None;
    }
    let links = reports.iter().enumerate().map(|(link, report)| Some(bytes_of_link(document, link, report.answer()?)));
    Some(of_links(document, links.collect::<Option<_>>()?))
}

/// The code over links in any order.
fn of_links(document: &Document, mut links: Vec<Vec<u8>>) -> Code {
    links.sort();
    Code::of_bytes(&made::whole(document, &links))
}

/// Whether a typed code belongs to a document.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Compared {
    /// It is the code of the whole order.
    Order,
    /// It is the code of this link, and the order has more.
    Link(usize),
    /// It is a code, of something else.
    Another,
    /// It is a code, but some link here cannot be made yet, so that the order has none to compare it with.
    NothingYet,
    /// It is no code.
    NoCode(NoCode),
}

/// Tells whether a typed code belongs to a document, from the reports on its links in their order.
pub fn compare(typed: &str, document: &Document, reports: &[LinkReport]) -> Compared {
    let typed = match read(typed) {
        Ok(typed) => typed,
        Err(why) => return Compared::NoCode(why),
    };
    let order = code_of_rig(document, reports);
    if order == Some(typed) {
        return Compared::Order;
    }
    let of_link = |(link, report): (usize, &LinkReport)| {
        report.answer().is_some_and(|answer| code_of_link(document, link, answer) == typed)
    };
    match reports.iter().take(document.links.len()).enumerate().position(of_link) {
        Some(link) => Compared::Link(link),
        None if order.is_none() => Compared::NothingYet,
        None => Compared::Another,
    }
}

/// The yes to an order as it is now, to be kept with it; nothing while it has no code.
pub fn yes(document: &Document, reports: &[LinkReport], by: &str, at: &str) -> Option<Yes> {
    let code = code_of_rig(document, reports)?.written();
    let by = crate::document::tidy_reference(by);
    let at = if crate::document::is_time(at) { at.to_string() } else { String::new() };
    Some(Yes { by, at, code, snapshot: share::snapshot(document) })
}
