//! The questions about each end: whose rod end, which thread and hand, which bolt and bracket.

use super::{NOTHING, Row, State, known_or_missing, number, taken};
use crate::document::{Document, OWN_ROD_END, Spacers, SuppliedBy};
use crate::engine::tables::{bolt_threads, threads};
use crate::inputs::{
    At, BOLT_DIAMETER, GAP, HAND, OWN_BORE, OWN_EYE_TO_END, OWN_THREAD, OWN_THREAD_LENGTH, ROD_END, SPACER,
    SPACER_KIND, SUPPLIED_BY,
};
use crate::present::words::{self, letter};
use crate::quantity::{Kind, System};
use crate::report::{EndGeometry, LinkReport};

/// What is worked out for an end, if the link has an answer.
fn made(report: &LinkReport, end: usize) -> Option<&EndGeometry> {
    report.answer()?.link.ends.get(end)
}

/// A question about one end.
fn asked(question: String, known: (String, State), inputs: &[&'static str], place: At) -> Row {
    Row { end: Some(place.end), ..Row::new(&question, known, inputs) }
}

/// Whose rod end it is; of one that the customer brings, its three readings.
pub(super) fn rod_end(document: &Document, place: At, report: &LinkReport, system: System) -> Vec<Row> {
    let end = document.links.get(place.link).and_then(|link| link.ends.get(place.end));
    let letter = letter(place.end);
    let (whose, state) = known_or_missing(&SUPPLIED_BY, document, place);
    let name = made(report, place.end).map(|end| end.rod_end).unwrap_or_default();
    let whose = if name.is_empty() || state != State::Said { whose } else { format!("{whose}: {name}") };
    let mut rows =
        vec![asked(format!("Whose rod end goes on end {letter}?"), (whose, state), &[SUPPLIED_BY.id], place)];
    let picked = end.and_then(|end| end.rod_end);
    let customers = end.is_some_and(|end| end.supplied_by == Some(SuppliedBy::Customer));
    if !customers && picked != Some(OWN_ROD_END) {
        return rows;
    }
    // A table's row says nothing of a rod end that is in somebody's hand.
    let measured = picked == Some(OWN_ROD_END);
    let readings = [
        (&OWN_EYE_TO_END, format!("How far is it from eye center to shank end on the rod end at {letter}?")),
        (&OWN_THREAD_LENGTH, format!("How long is the thread of the rod end at {letter}?")),
        (&OWN_BORE, format!("How wide is the hole in the ball at {letter}?")),
    ];
    for (at, (input, question)) in readings.into_iter().enumerate() {
        let known = number(input, document, place, system);
        let known = match (measured, made(report, place.end)) {
            (true, _) => known,
            (false, made) => (not_measured(made, input.id, system), State::Missing),
        };
        // Each field stands once.
        let inputs: &[&'static str] = if at == 0 { &[ROD_END.id, input.id] } else { &[input.id] };
        rows.push(asked(question, known, inputs, place));
    }
    rows
}

/// What stands in for a reading of the customer's rod end.
fn not_measured(made: Option<&EndGeometry>, id: &str, system: System) -> String {
    let Some(made) = made else { return NOTHING.to_string() };
    let value = if id == OWN_EYE_TO_END.id {
        made.eye_to_end
    } else if id == OWN_THREAD_LENGTH.id {
        made.thread_length
    } else {
        made.bore
    };
    let value = words::value(value, Kind::FineLength, system);
    format!("Taken as {value} from a table, not measured on the customer’s own.")
}

/// Which thread and hand.
pub(super) fn thread(document: &Document, place: At, report: &LinkReport) -> Row {
    let question = format!("Which thread, and which hand, at end {}?", letter(place.end));
    let end = document.links.get(place.link).and_then(|link| link.ends.get(place.end));
    let own = end.is_some_and(|end| end.rod_end == Some(OWN_ROD_END));
    let customers = end.is_some_and(|end| end.supplied_by == Some(SuppliedBy::Customer));
    let thread_said = end.is_some_and(|end| if own { end.own_thread.is_some() } else { end.rod_end.is_some() });
    let hand_said = (HAND.get)(document, place).is_some();
    let own_thread = end.filter(|_| own).and_then(|end| end.own_thread).and_then(threads::find);
    let thread = own_thread.or_else(|| made(report, place.end).map(|end| end.thread)).map(words::thread);
    let left = HAND.value(document, place) == Some("lh");
    let hand = if left { "left-hand" } else { "right-hand" };
    let known = match thread {
        Some(thread) => format!("{thread}, {hand}"),
        None => format!("A {hand} thread, its size follows from the bar"),
    };
    // What the customer's own rod end has must be read off it, thread and hand.
    let must_be_read = (own && !thread_said) || (customers && !(own && thread_said && hand_said));
    let known = match (must_be_read, thread_said, hand_said) {
        (true, _, _) => (format!("{known}: to be read off the customer’s own."), State::Missing),
        (false, true, true) => (known, State::Said),
        (false, true, false) => (format!("{known}: the hand was not asked."), State::ByDefault),
        (false, false, true) => (format!("{known}: the thread was not asked."), State::ByDefault),
        (false, false, false) => (taken(&words::lower(&known)), State::ByDefault),
    };
    let thread_input = if own { OWN_THREAD.id } else { ROD_END.id };
    asked(question, known, &[thread_input, HAND.id], place)
}

/// Which bolt goes through an end.
pub(super) fn bolt(document: &Document, place: At, report: &LinkReport, system: System) -> Row {
    let letter = letter(place.end);
    let (known, mut state) = number(&BOLT_DIAMETER, document, place, system);
    let stepped =
        document.links.get(place.link).is_some_and(|link| link.spacer_kind == Some(Spacers::HighMisalignment));
    let bore = made(report, place.end).map(|end| end.bore);
    let known = match (state, bore) {
        (State::Missing, _) if stepped => {
            "High-misalignment spacers step the bolt down: only the customer knows it.".to_string()
        }
        (State::Missing, bore) => {
            state = State::ByDefault;
            match bore.and_then(bolt_threads::for_bore).map(|size| size.diameter) {
                Some(bolt) => taken(&words::trade(bolt, system)),
                None => taken("the largest standard bolt that fits the bore"),
            }
        }
        _ => known,
    };
    asked(format!("Which bolt goes through end {letter}?"), (known, state), &[BOLT_DIAMETER.id], place)
}

/// What fills the brackets, which are entered once for both ends.
pub(super) fn bracket(document: &Document, place: At, report: &LinkReport, system: System) -> Row {
    let sides = [(&SPACER, "spacer"), (&GAP, "open gap")].map(|(input, name)| {
        let value = input.value(document, place).filter(|value| *value > 0.0);
        let filled = match value {
            Some(value) => format!("a {} {name}", words::value(value, input.kind, system)),
            None => format!("no {name}"),
        };
        (filled, input.decided(document, place).is_some())
    });
    let [(spacer, spacer_said), (gap, gap_said)] = sides;
    let ball = made(report, place.end).map(|end| words::value(end.ball_width, Kind::FineLength, system));
    let filled = match ball {
        Some(ball) => format!("A ball {ball} wide with {spacer} and {gap} on each side"),
        None => format!("The ball with {spacer} and {gap} on each side"),
    };
    let known = match (spacer_said, gap_said) {
        (true, true) => (filled, State::Said),
        (false, false) => (taken(&words::lower(&filled)), State::ByDefault),
        (true, false) => (format!("{filled}; the gap was not asked."), State::ByDefault),
        (false, true) => (format!("{filled}; the spacer was not asked."), State::ByDefault),
    };
    Row::new("What fills each bracket, from ear to ear?", known, &[SPACER.id, GAP.id, SPACER_KIND.id])
}
