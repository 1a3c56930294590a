//! What an order says beside the sizes: who wants it and when, how far it is, and the yes that it was given.

use super::{Happened, History, Step, is_date, one_line};

/// The longest customer reference, in letters.
pub const LONGEST_REFERENCE: usize = 60;

/// The longest remarks, in letters.
pub const LONGEST_REMARKS: usize = 400;

/// The longest snapshot of entries: as much as the longest link holds.
pub const LONGEST_SNAPSHOT: usize = 60_000;

/// The longest order code as it is written.
const LONGEST_CODE: usize = 24;

/// The order that a document belongs to. No number of any report rests on it.
#[derive(Debug, Clone, PartialEq, Eq, Default)]
pub struct Order {
    /// The customer's own reference, on one line; empty when there is none.
    pub reference: String,
    /// What else the shop should know, on one line.
    pub remarks: String,
    /// The day it is wanted, as ISO 8601: `2026-12-24`; empty when nobody has said.
    pub wanted: String,
    /// How far it is.
    pub stage: Stage,
    /// The order code that was read back; empty when nothing was.
    pub read_back: String,
    /// The customer's yes.
    pub yes: Yes,
    /// What was said when the call began, as a snapshot of the entries; empty when none was taken.
    pub first_said: String,
    /// What was done with it, by whom and when. Orders of older versions have none.
    pub history: History,
}

impl Order {
    /// Notes who asked for it, and when.
    pub fn ask(&mut self, by: &str, at: &str, code: &str) {
        self.note(Happened::Reached(Stage::Asked), [by, at, code]);
    }

    /// Notes that every number of what has this code was read back, to whom and when.
    pub fn read_back_to(&mut self, by: &str, at: &str, code: &str) {
        self.read_back = code.to_string();
        self.stage = Stage::ReadBack;
        self.note(Happened::Reached(Stage::ReadBack), [by, at, code]);
    }

    /// Takes a yes over: the order is confirmed.
    pub fn confirm(&mut self, yes: Yes) {
        self.note(Happened::Reached(Stage::Confirmed), [&yes.by, &yes.at, &yes.code]);
        self.yes = yes;
        self.stage = Stage::Confirmed;
    }

    /// Notes that it is cut, by whom and when.
    pub fn cut(&mut self, by: &str, at: &str, code: &str) {
        self.stage = Stage::Cut;
        self.note(Happened::Reached(Stage::Cut), [by, at, code]);
    }

    /// Takes the yes back. What else was said stays, and what was read back stays read back; the history keeps the yes.
    pub fn take_back_yes(&mut self, by: &str, at: &str) {
        let steps = self.steps();
        // A yes of an older version stands in no history yet.
        if let Some(yes) = steps.last().filter(|_| steps.len() > self.history.steps().len()) {
            self.history.add(yes);
        }
        let code = std::mem::take(&mut self.yes).code;
        self.stage = self.stage.min(Stage::ReadBack);
        self.note(Happened::YesTakenBack, [by, at, &code]);
    }

    /// Notes that what changed since the yes was read back: the yes was to something else, so it is taken back with it.
    pub fn read_back_again(&mut self, by: &str, at: &str, code: &str) {
        self.take_back_yes(by, at);
        self.read_back_to(by, at, code);
    }

    /// What was done with it, the oldest first; the yes of an older version, which kept nothing else, stands last.
    pub fn steps(&self) -> Vec<Step> {
        let mut steps = self.history.steps();
        let yes = Happened::Reached(Stage::Confirmed);
        let noted = steps.iter().any(|step| step.what == yes && step.at == self.yes.at && step.code == self.yes.code);
        if self.yes.is_given() && !noted {
            let Yes { by, at, code, .. } = self.yes.clone();
            steps.push(Step { what: yes, by, at, code });
        }
        steps
    }

    fn note(&mut self, what: Happened, [by, at, code]: [&str; 3]) {
        self.history.add(&Step { what, by: by.to_string(), at: at.to_string(), code: code.to_string() });
    }
}

/// How far an order is.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Default)]
pub enum Stage {
    /// It was asked for.
    #[default]
    Asked,
    /// Every number was read back.
    ReadBack,
    /// The customer said yes.
    Confirmed,
    /// The bar is sawn.
    Cut,
}

impl Stage {
    /// Every stage, in order.
    pub const ALL: [Self; 4] = [Self::Asked, Self::ReadBack, Self::Confirmed, Self::Cut];

    /// Never reused once released: links and files carry it.
    pub const fn id(self) -> &'static str {
        match self {
            Self::Asked => "asked",
            Self::ReadBack => "read-back",
            Self::Confirmed => "confirmed",
            Self::Cut => "cut",
        }
    }

    /// As the page says it.
    pub const fn label(self) -> &'static str {
        match self {
            Self::Asked => "Asked for",
            Self::ReadBack => "Read back",
            Self::Confirmed => "Confirmed",
            Self::Cut => "Cut",
        }
    }
}

/// A yes to an order, and to what it was said.
#[derive(Debug, Clone, PartialEq, Eq, Default)]
pub struct Yes {
    /// Who said it.
    pub by: String,
    /// When, as ISO 8601.
    pub at: String,
    /// The order code then.
    pub code: String,
    /// What was confirmed, as a snapshot of the entries; empty while there is no yes.
    pub snapshot: String,
}

impl Yes {
    /// Whether it was given.
    pub const fn is_given(&self) -> bool {
        !self.snapshot.is_empty()
    }
}

/// One text of an order, as links, files and differences carry it.
pub struct OrderText {
    /// Never reused once released.
    pub id: &'static str,
    /// As the page says it.
    pub label: &'static str,
    /// The text; empty when there is none.
    pub get: fn(&Order) -> &str,
    /// Takes a text over; one that is none of these is refused, and gives `false`.
    pub set: fn(&mut Order, &str) -> bool,
}

impl OrderText {
    /// Whether it is a day of the calendar.
    pub fn is_day(&self) -> bool {
        self.id == "order-wanted"
    }

    /// Takes over what was typed, tidied; what cannot stand there changes nothing. An empty text takes it back.
    pub fn take(&self, order: &mut Order, typed: &str) -> bool {
        (self.set)(order, &tidy_remarks(typed)) || (self.set)(order, &tidy_reference(typed))
    }
}

/// Every text of an order, in the order in which links carry them.
pub static ORDER_TEXTS: [OrderText; 11] = [
    OrderText {
        id: "order-reference",
        label: "Customer reference",
        get: |order| &order.reference,
        set: |order, text| keep(&mut order.reference, text, tidy_reference(text) == text),
    },
    OrderText {
        id: "order-remarks",
        label: "Remarks",
        get: |order| &order.remarks,
        set: |order, text| keep(&mut order.remarks, text, tidy_remarks(text) == text),
    },
    OrderText {
        id: "order-wanted",
        label: "Wanted by",
        get: |order| &order.wanted,
        set: |order, text| keep(&mut order.wanted, text, is_date(text)),
    },
    OrderText {
        id: "order-stage",
        label: "Stage",
        get: |order| if order.stage == Stage::default() { "" } else { order.stage.id() },
        set: |order, text| {
            let stage = Stage::ALL.into_iter().find(|stage| stage.id() == text);
            order.stage = stage.unwrap_or(order.stage);
            stage.is_some()
        },
    },
    OrderText {
        id: "order-read",
        label: "Code read back",
        get: |order| &order.read_back,
        set: |order, text| keep(&mut order.read_back, text, is_code(text)),
    },
    OrderText {
        id: "yes-by",
        label: "Confirmed by",
        get: |order| &order.yes.by,
        set: |order, text| keep(&mut order.yes.by, text, tidy_reference(text) == text),
    },
    OrderText {
        id: "yes-at",
        label: "Confirmed at",
        get: |order| &order.yes.at,
        set: |order, text| keep(&mut order.yes.at, text, is_time(text)),
    },
    OrderText {
        id: "yes-code",
        label: "Code confirmed",
        get: |order| &order.yes.code,
        set: |order, text| keep(&mut order.yes.code, text, is_code(text)),
    },
    OrderText {
        id: "yes-to",
        label: "What was confirmed",
        get: |order| &order.yes.snapshot,
        set: |order, text| keep(&mut order.yes.snapshot, text, is_snapshot(text)),
    },
    OrderText {
        id: "first-said",
        label: "What was first said",
        get: |order| &order.first_said,
        set: |order, text| keep(&mut order.first_said, text, is_snapshot(text)),
    },
    OrderText {
        id: "order-history",
        label: "What was done, by whom and when",
        get: |order| order.history.text(),
        set: |order, text| match History::read(text) {
            Some(history) => {
                order.history = history;
                true
            }
            None => false,
        },
    },
];

/// Keeps a text that may stand there.
fn keep(kept: &mut String, text: &str, may: bool) -> bool {
    if may {
        *kept = text.to_string();
    }
    may
}

/// A customer reference or a person's name as it is kept.
pub fn tidy_reference(text: &str) -> String {
    one_line(text, LONGEST_REFERENCE)
}

/// Remarks as they are kept.
pub fn tidy_remarks(text: &str) -> String {
    one_line(text, LONGEST_REMARKS)
}

/// Whether a text can be a time, as ISO 8601 writes it.
pub fn is_time(text: &str) -> bool {
    text.len() <= 40
        && text.bytes().all(|byte| byte.is_ascii_alphanumeric() || matches!(byte, b'-' | b':' | b'.' | b'+'))
}

/// Whether a text can be an order code as it is written.
pub(super) fn is_code(text: &str) -> bool {
    text.len() <= LONGEST_CODE && text.bytes().all(|byte| byte.is_ascii_alphanumeric() || byte == b'-')
}

/// Whether a text can be a snapshot. Whether it can be opened shows where it is read.
fn is_snapshot(text: &str) -> bool {
    text.len() <= LONGEST_SNAPSHOT && text.bytes().all(|byte| byte.is_ascii_graphic())
}
