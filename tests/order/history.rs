//! What was done with an order, by whom and when.

use crate::dice::Dice;
use crate::links::hard;
use linkwright::builds::{Build, from_text, to_text};
use linkwright::document::{Happened, History, MOST_STEPS, Order, Stage, Step, Yes};
use linkwright::present::order::history::{HistoryRow, history};
use linkwright::share::{Sent, from_fragment, to_fragment, to_send};

const CODE: &str = "K7QM-2XPA-B";

fn at(hour: usize) -> String {
    format!("2026-11-30T{hour:02}:00:00.000Z")
}

/// An order that went all the way, with one yes taken back on it.
fn gone_through() -> Order {
    let yes =
        |hour| Yes { by: "The owner".to_string(), at: at(hour), code: CODE.to_string(), snapshot: "3".to_string() };
    let mut order = Order::default();
    order.ask("The owner", &at(8), "");
    order.read_back_to("", &at(9), CODE);
    order.confirm(yes(10));
    order.take_back_yes("The owner", &at(11));
    order.confirm(yes(12));
    order.cut("The builder | bench 2", &at(13), CODE);
    order
}

#[test]
fn every_step_keeps_who_and_when() {
    let order = gone_through();
    let shown = history(&order, str::to_string);
    let row =
        |what: &str, hour, code: &str| HistoryRow { what: what.to_string(), when: at(hour), code: code.to_string() };
    let code = "Code K7QM-2XPA-B";
    assert_eq!(
        shown,
        [
            row("Asked for by The owner", 8, "No code yet"),
            row("Read back, nobody named", 9, code),
            row("Confirmed by The owner", 10, code),
            row("Yes taken back by The owner", 11, code),
            row("Confirmed by The owner", 12, code),
            row("Cut by The builder / bench 2", 13, code),
        ]
    );
    assert_eq!((order.stage, order.read_back.as_str()), (Stage::Cut, CODE));
}

#[test]
fn it_is_kept_in_link_and_file_and_never_sent() {
    let mut document = hard();
    *document.order = gone_through();
    document.order.yes.snapshot = linkwright::share::snapshot(&hard());
    let opened = from_fragment(&to_fragment(&document));
    assert!(opened.notices.is_empty() && opened.document == document, "{:?}", opened.notices);
    let build = Build { id: "b".to_string(), document: document.clone(), ..Build::default() };
    assert_eq!(from_text(&to_text(std::slice::from_ref(&build))).expect("a file").builds, [build]);
    let sent = to_send(&document, Sent { reference: true, remarks: true });
    assert_eq!(from_fragment(&sent).document.order.history, History::default());
}

#[test]
fn an_order_of_an_older_version_shows_its_yes() {
    let yes = Yes { by: "The owner".to_string(), at: at(10), code: CODE.to_string(), snapshot: "3".to_string() };
    let mut order = Order { yes, stage: Stage::Confirmed, ..Order::default() };
    let shown = history(&order, str::to_string);
    assert_eq!(shown.len(), 1);
    assert_eq!(shown[0].what, "Confirmed by The owner");
    // Taken back, it is not lost.
    order.take_back_yes("", "");
    let rows = history(&order, |_| String::new());
    assert!(rows.iter().all(|row| row.when == "Time not known"), "{rows:?}");
    let shown: Vec<String> = rows.into_iter().map(|row| row.what).collect();
    assert_eq!(shown, ["Confirmed by The owner", "Yes taken back, nobody named"]);
    assert_eq!(history(&Order::default(), str::to_string), []);
}

#[test]
fn a_history_reads_back_to_the_letter_or_is_refused() {
    let mut dice = Dice(31);
    for _ in 0..200 {
        let history = dice.order().history;
        assert_eq!(History::read(history.text()), Some(history.clone()));
    }
    for text in [
        "asked",
        "asked -",
        "sold - - X",
        "asked  - - X",
        "asked - - X | ",
        "asked ü - X",
        "asked - - X|Y",
        "| asked - -",
    ] {
        assert_eq!(History::read(text), None, "{text}");
    }
    assert_eq!(History::read("").map(|it| it.steps()), Some(Vec::new()));
}

#[test]
fn the_oldest_steps_go_first() {
    let mut history = History::default();
    for number in 0..MOST_STEPS + 3 {
        let what = Happened::Reached(Stage::ReadBack);
        history.add(&Step { what, by: format!("Caller {number}"), at: String::new(), code: String::new() });
    }
    let steps = history.steps();
    assert_eq!((steps.len(), steps[0].by.as_str()), (MOST_STEPS, "Caller 3"));
    assert_eq!(History::read(history.text()), Some(history));
}
