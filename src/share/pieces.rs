//! The pieces that were made, within what is kept: `made-2-bar=31in` is the bar of the second piece.

use super::text::{from_ascii, in_ascii};
use super::{read_number, write_number};
use crate::document::{Document, Holds, MOST_PIECES, PIECE_FIELDS, Piece, PieceField};
use crate::quantity::Kind;

/// Begins the key of everything about a piece.
const MADE: &str = "made-";

/// What is written of a field; nothing where nothing stands.
fn written(field: &PieceField, piece: &Piece) -> Option<String> {
    match field.length(piece) {
        Some(length) => Some(write_number(length, Kind::FineLength)),
        None => Some(in_ascii(field.text(piece))).filter(|text| !text.is_empty()),
    }
}

/// Takes over what was written of a field; what cannot stand there gives `false`.
fn read(field: &PieceField, piece: &mut Piece, written: &str) -> bool {
    match field.holds {
        Holds::Length(..) => {
            read_number(written, Kind::FineLength).is_some_and(|length| field.set_length(piece, length))
        }
        Holds::Words(..) | Holds::Day(..) | Holds::Gauge(..) => {
            from_ascii(written).is_some_and(|text| !text.is_empty() && field.set_text(piece, &text))
        }
    }
}

/// Adds the pieces of every link to the parts of a fragment.
pub(super) fn write(document: &Document, parts: &mut Vec<String>) {
    for (index, link) in document.links.iter().enumerate() {
        let prefix = if document.links.len() > 1 && index > 0 { format!("{}.", index + 1) } else { String::new() };
        for (number, piece) in link.made.iter().enumerate() {
            for field in &PIECE_FIELDS {
                if let Some(text) = written(field, piece) {
                    parts.push(format!("{prefix}{MADE}{}-{}={text}", number + 1, field.id));
                }
            }
        }
    }
}

/// Takes something about a piece out of a fragment; nothing where the name is none of a piece's.
pub(super) fn take(document: &mut Document, name: &str, value: &str) -> Option<Result<(), String>> {
    let (link, rest) = match name.split_once('.') {
        Some((number, rest)) => (number.parse::<usize>().ok()?.checked_sub(1)?, rest),
        None => (0, name),
    };
    let (number, id) = rest.strip_prefix(MADE)?.split_once('-')?;
    let number = number.parse::<usize>().ok().filter(|number| (1..=MOST_PIECES).contains(number))?;
    let field = PIECE_FIELDS.iter().find(|field| field.id == id)?;
    let piece = document.links.get_mut(link)?.piece_mut(number - 1);
    Some(if read(field, piece, value) {
        Ok(())
    } else {
        Err(format!("{}, piece {number}: what the link says cannot be read and was left out.", field.label))
    })
}
