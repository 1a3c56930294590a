//! One link as a message short enough for every phone, with everything that must be right.

use super::mounts;
use super::read_back::{heading, picked, title};
use crate::document::Document;
use crate::engine::shop::code::{Code, code_of_link};
use crate::inputs::{At, FINISH, SUPPLIED_BY, pieces_of};
use crate::present::words::{self, hand_mark, length, letter, lower, metal};
use crate::quantity::System;
use crate::report::{Answer, LinkReport, Verdict};

/// As many letters as a short message takes: no more than networks join without cutting (common practice, no source).
pub const SHORTEST_TEXT: usize = 480;

/// Said where something that must be right found no room.
const REST: &str = "Rest: see the confirmation.";

/// Said above the messages of several links.
pub const ONE_EACH: &str = "One message for each link. Each has the code of its own link; the order has another.";

/// In place of a message.
pub const NO_MESSAGE: &str = "No message yet: this link cannot be made from what is entered so far.";

/// The message of one link.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Message {
    /// Which link it is.
    pub heading: String,
    /// The message; `None` while the link cannot be made.
    pub text: Option<String>,
}

/// A message for each link, in their order.
pub fn messages(document: &Document, reports: &[LinkReport], system: System) -> Vec<Message> {
    let links = reports.iter().enumerate().take(document.links.len());
    let message = |(link, report): (usize, &LinkReport)| {
        let text = report
            .answer()
            .map(|answer| short_text(document, link, answer, code_of_link(document, link, answer), system));
        Message { heading: heading(document, link), text }
    };
    links.map(message).collect()
}

/// One link in at most [`SHORTEST_TEXT`] letters that every phone's message takes, with everything that must be right.
pub fn short_text(document: &Document, link: usize, answer: &Answer, code: Code, system: System) -> String {
    let (made, place) = (&answer.link, At::of_link(document, link));
    let [a, b] = &made.ends;
    let [given, bar] = [made.length, made.bar].map(|value| length(value, system));
    let count = words::pieces(pieces_of(document, link));
    // In a rig of several links this is the code of one of them, which no order goes by.
    let called = if document.links.len() > 1 { "Link code" } else { "Order" };
    let must = [
        format!("{called} {}: {}, {count}.", code.written(), lower(&title(document, link))),
        format!("Mount to mount and eye to eye {given}."),
        format!("Bar {bar} face to face."),
        format!("A: {} {}.", a.thread.id, hand_mark(a.hand)),
        format!("B: {} {}.", b.thread.id, hand_mark(b.hand)),
    ];
    let provisional = "Bar length only until the rod ends are measured.".to_string();
    let whose = [0, 1].map(|end| {
        let whose = SUPPLIED_BY.value(document, At { end, ..place });
        let words = match whose {
            Some("shop") => "ours",
            Some("customer") => "yours",
            _ => "not said whose",
        };
        format!("{} {words}", letter(end))
    });
    let finish = picked(&FINISH, document, place).unwrap_or_default();
    let says = |value, kind| mounts::written(value, kind, system.into());
    let after = [
        made.provisional.then_some(provisional),
        Some(format!("Rod ends: {}, {}.", whose[0], whose[1])),
        Some(format!("Calculation: {}.", lower(answer.word()))),
        Some(format!("{} {}, {}.", words::stock(made, system), metal(made), lower(finish))),
    ];
    let may = mounts::one_hand(made).into_iter().chain(mounts::readings(document, place, made, &says));
    let may = may.chain(mounts::said(document, place, &says)).chain(after.into_iter().flatten());
    let may: Vec<String> = may.collect();
    let asks = if answer.verdict == Verdict::Fails { "Do not answer yes." } else { "All right? Answer yes." };
    let all = [&must[..], &may, &[asks.to_string()]].concat().join(" ");
    if all.chars().count() <= SHORTEST_TEXT {
        return plain(&all);
    }
    let mut text = must.join(" ");
    // Whatever else fits, the most important first; the question always does.
    for sentence in may {
        if text.chars().count() + sentence.chars().count() + REST.len() + asks.len() + 3 <= SHORTEST_TEXT {
            text.push(' ');
            text.push_str(&sentence);
        }
    }
    plain(&[&text, REST, asks].join(" "))
}

/// How long a message is.
pub fn letters_of(text: &str) -> String {
    format!("{} of at most {SHORTEST_TEXT} letters.", text.chars().count())
}

/// Signs that every phone has, so that a message is not cut into many: each stands for one of the same length or less.
fn plain(text: &str) -> String {
    let letter = |letter| match letter {
        '’' | '‘' => Some('\''),
        '“' | '”' => Some('"'),
        '×' => Some('x'),
        '–' | '—' | '−' => Some('-'),
        '\u{2060}' => None,
        letter => Some(letter),
    };
    text.chars().filter_map(letter).collect()
}
