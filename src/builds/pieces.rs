//! The pieces of a link that were made, in the file of builds.

use super::{number_of, read_number};
use crate::document::{Holds, Link, MOST_PIECES, PIECE_FIELDS, Piece, PieceField};
use crate::quantity::Kind;
use serde_json::{Map, Value, json};

/// The member of a link that holds them.
pub(super) const MADE: &str = "made";

/// The pieces as a list, each with the ids of its fields; nothing where none was made.
pub(super) fn written(link: &Link) -> Option<Value> {
    let piece = |piece: &Piece| {
        let fields = PIECE_FIELDS.iter().filter(|field| !field.is_empty(piece)).map(|field| {
            let value = match field.length(piece) {
                Some(length) => number_of(length, Kind::FineLength),
                None => json!(field.text(piece)),
            };
            (field.id.to_string(), value)
        });
        fields.collect::<Map<String, Value>>()
    };
    (!link.made.is_empty()).then(|| json!(link.made.iter().map(piece).collect::<Vec<_>>()))
}

/// Takes the pieces of a list over; gives what could not be read.
pub(super) fn read(made: &mut Vec<Piece>, list: &Value) -> Vec<String> {
    let Some(list) = list.as_array() else { return vec!["the pieces that were made".to_string()] };
    let mut lost = Vec::new();
    for (number, table) in list.iter().take(MOST_PIECES).enumerate() {
        let mut piece = Piece::default();
        for field in &PIECE_FIELDS {
            if table.get(field.id).is_some_and(|value| !take(field, &mut piece, value)) {
                lost.push(format!("{} of piece {}", field.label, number + 1));
            }
        }
        made.push(piece);
    }
    if list.len() > MOST_PIECES {
        lost.push(format!("the pieces after the first {MOST_PIECES}"));
    }
    lost
}

fn take(field: &PieceField, piece: &mut Piece, value: &Value) -> bool {
    match field.holds {
        Holds::Length(..) => read_number(value, Kind::FineLength).is_some_and(|length| field.set_length(piece, length)),
        Holds::Words(..) | Holds::Day(..) | Holds::Gauge(..) => {
            value.as_str().is_some_and(|text| field.set_text(piece, text))
        }
    }
}
