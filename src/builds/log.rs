//! The log of a build, in its file and as it is kept on the device: every reading with its unit and its time.

use super::{number_of, read_number};
use crate::document::{is_time, one_line};
use crate::log::{
    BarState, Entry, EntryKind, LONGEST_KEY, LONGEST_WORDS, Log, MOST_ENTRIES, Noted, READINGS, Reading, ReadingKind,
    ReadingRow, Spot, reading_row,
};
use serde_json::{Map, Value, json};
use std::collections::BTreeMap;

/// What a reading that was taken back says.
const TAKEN_BACK: &str = "";

/// The log as a table.
pub(super) fn written(log: &Log) -> Value {
    let bars: Map<String, Value> = log.bars.iter().map(|(spot, bar)| (spot.id().to_string(), bar_of(bar))).collect();
    json!({ "bars": bars, "entries": log.entries.iter().map(entry_of).collect::<Vec<_>>() })
}

fn bar_of(bar: &BarState) -> Value {
    let reading = |(id, noted): (&&'static str, &Noted<Reading>)| {
        let value = noted.value.map_or(json!(TAKEN_BACK), |value| value_of(id, value));
        ((*id).to_string(), json!({ "is": value, "at": noted.at }))
    };
    let tick =
        |(key, noted): (&String, &Noted<()>)| (key.clone(), json!({ "is": noted.value.is_some(), "at": noted.at }));
    let readings: Map<String, Value> = bar.readings.iter().map(reading).collect();
    let ticks: Map<String, Value> = bar.ticks.iter().map(tick).collect();
    json!({ "readings": readings, "ticks": ticks })
}

fn value_of(id: &str, value: Reading) -> Value {
    match (value, reading_row(id).map(|row| row.holds)) {
        (Reading::Number(number), Some(ReadingKind::Number { kind, .. })) => number_of(number, kind),
        (Reading::Number(_), _) => json!(TAKEN_BACK),
        (Reading::Pick(id), _) => json!(id),
    }
}

fn entry_of(entry: &Entry) -> Value {
    let readings: Map<String, Value> =
        entry.readings.iter().map(|(id, value)| ((*id).to_string(), value_of(id, *value))).collect();
    let mut table = json!({
        "id": entry.id, "bar": entry.spot.id(), "at": entry.at, "what": entry.kind.id(), "code": entry.code,
        "readings": readings, "words": entry.words,
    });
    if let (Some(table), true) = (table.as_object_mut(), entry.withdrawn != Noted::default()) {
        table.insert("withdrawn".to_string(), json!(entry.is_withdrawn()));
        if !entry.withdrawn.at.is_empty() {
            table.insert("withdrawn_at".to_string(), json!(entry.withdrawn.at));
        }
    }
    table
}

/// Reads a log, and whether all of it could be read.
pub(super) fn read(table: &Value) -> (Log, bool) {
    let (mut log, mut whole) = (Log::default(), table.is_object());
    for (id, bar) in table.get("bars").and_then(Value::as_object).into_iter().flatten() {
        match Spot::of_id(id) {
            Some(spot) => {
                let state = bar_from(bar, &mut whole);
                log.bars.insert(spot, state);
            }
            None => whole = false,
        }
    }
    let entries = table.get("entries").and_then(Value::as_array).map(Vec::as_slice).unwrap_or_default();
    whole &= entries.len() <= MOST_ENTRIES;
    for entry in entries.iter().take(MOST_ENTRIES) {
        match entry_from(entry) {
            Some((entry, all)) => {
                whole &= all;
                log.entries.push(entry);
            }
            None => whole = false,
        }
    }
    (log, whole)
}

/// The time in a table. The later of two holds, so it must begin with a day that compares with others.
fn time_in(table: &Value) -> Option<String> {
    time_of(table, "at")
}

fn time_of(table: &Value, name: &str) -> Option<String> {
    let day =
        |text: &&str| text.get(..10).is_some_and(|day| day.bytes().all(|byte| byte.is_ascii_digit() || byte == b'-'));
    table.get(name).and_then(Value::as_str).filter(|text| is_time(text)).filter(day).map(str::to_string)
}

fn bar_from(table: &Value, whole: &mut bool) -> BarState {
    let mut bar = BarState::default();
    for (id, noted) in table.get("readings").and_then(Value::as_object).into_iter().flatten() {
        let row_and_value = reading_row(id).and_then(|row| Some((row, noted.get("is")?, time_in(noted)?)));
        let Some((row, is, at)) = row_and_value else {
            *whole = false;
            continue;
        };
        let value = reading_from(row, is);
        *whole &= value.is_some() || is.as_str() == Some(TAKEN_BACK);
        bar.readings.insert(row.id, Noted { value, at });
    }
    for (key, noted) in table.get("ticks").and_then(Value::as_object).into_iter().flatten() {
        match (noted.get("is").and_then(Value::as_bool), time_in(noted)) {
            (Some(is), Some(at)) => {
                bar.ticks.insert(one_line(key, LONGEST_KEY), Noted { value: is.then_some(()), at });
            }
            _ => *whole = false,
        }
    }
    bar
}

fn reading_from(row: &ReadingRow, value: &Value) -> Option<Reading> {
    let reading = match row.holds {
        ReadingKind::Number { kind, .. } => Reading::Number(read_number(value, kind)?),
        ReadingKind::Pick(_) => row.pick(value.as_str()?)?,
    };
    row.takes(reading).then_some(reading)
}

fn entry_from(table: &Value) -> Option<(Entry, bool)> {
    let words = |name: &str| table.get(name).and_then(Value::as_str).unwrap_or_default();
    let kind = EntryKind::ALL.into_iter().find(|kind| kind.id() == words("what"))?;
    let mut readings = BTreeMap::new();
    let given = table.get("readings").and_then(Value::as_object);
    for row in READINGS.iter().copied().flatten() {
        if let Some(reading) = given.and_then(|given| reading_from(row, given.get(row.id)?)) {
            readings.insert(row.id, reading);
        }
    }
    let all = given.is_none_or(|given| given.len() == readings.len());
    let entry = Entry {
        id: Some(words("id")).filter(|id| super::is_id(id))?.to_string(),
        spot: Spot::of_id(words("bar"))?,
        at: time_in(table)?,
        kind,
        code: one_line(words("code"), 60),
        readings,
        words: one_line(words("words"), LONGEST_WORDS),
        // The first logs tell no time: any later word holds.
        withdrawn: Noted {
            value: table.get("withdrawn").and_then(Value::as_bool).unwrap_or_default().then_some(()),
            at: time_of(table, "withdrawn_at").unwrap_or_default(),
        },
    };
    Some((entry, all))
}
