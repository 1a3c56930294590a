//! The shop's lists as tables of the page, what a link can be made from, and what of it is in stock.

use crate::document::Hand;
use crate::engine::shop::route::Machine;
use crate::engine::shop::route::machine::{SAW_GRIP, SAW_KERF, SAW_TRIM};
use crate::engine::shop::stock::{Held, MOST_REPORTS, Needed, Offer, Offers, Wanted};
use crate::present::words::{length, short, size, still_needed, thread};
use crate::quantity::{self, System, show, unit_name};
use crate::shop::columns::{Holds, Pick};
use crate::shop::lines::Landed;
use crate::shop::{self, Cell, Heading, Kind, Lists};

/// Said above a table that holds nothing yet.
pub const EMPTY: &str = "Nothing is entered yet. Import a CSV file, add a row, or look at the invented rows.";

/// Said beside the button that puts invented rows in.
pub const DEMO: &str = "Invented rows, each with “Demo” in its name, to see what the lists do.";

/// Where the lists are kept.
pub const KEPT_HERE: &str =
    "Kept on this device only, and never in a link. Each list is a CSV file that any spreadsheet opens.";

/// Said while the lists are searched.
pub const SEARCHING: &str = "Searching …";

/// Said beneath what can be made from the lists.
pub const OFFERS_HELP: &str =
    "Taking one writes its measured sizes into the entries, so the link opens to the same numbers anywhere.";

/// Which saw blanks are counted with: the one that the shop has set, or what is assumed.
pub fn saw_used(machine: &Machine, system: System) -> String {
    let saw = machine.saw();
    let [kerf, trim, grip] = [saw.kerf, saw.trim, saw.grip].map(|value| length(value, system));
    let parts = [(&SAW_KERF, "kerf"), (&SAW_TRIM, "trimmed ends"), (&SAW_GRIP, "grip")];
    let open = parts.into_iter().filter(|(setting, _)| machine.decided(setting).is_none());
    let open: Vec<&str> = open.map(|(_, name)| name).collect();
    match open.len() {
        0 => format!(
            "Blanks are counted with your own saw, as set in the Make view: {kerf} kerf, {trim} off both ends of every bar, {grip} held at the last cut."
        ),
        assumed if assumed == parts.len() => format!(
            "Blanks are counted with an assumed saw (common practice, no source): {kerf} kerf, {trim} off both ends of every bar, {grip} held at the last cut. Set your own in the Make view."
        ),
        _ => format!(
            "Blanks are counted with your own saw, as set in the Make view: {kerf} kerf, {trim} off both ends of every bar, {grip} held at the last cut. Still assumed (common practice, no source): {}.",
            open.join(", ")
        ),
    }
}

/// A list in a line, for the fold that holds it.
pub fn summary(lists: &Lists, kind: Kind) -> String {
    match shop::rows(lists, kind) {
        0 => format!("{}: none yet", kind.label()),
        1 => format!("{}: 1 row", kind.label()),
        rows => format!("{}: {} rows", kind.label(), count_words(rows)),
    }
}

/// Said where the browser refuses to keep a list.
pub fn not_kept(why: &str) -> String {
    format!("{why} This list is not kept: export it as a file.")
}

/// A column of the table.
#[derive(Debug, Clone, PartialEq)]
pub struct ListColumn {
    /// Its heading with the unit that a bare number has.
    pub heading: String,
    /// What may be picked in it; empty where it is typed.
    pub options: Vec<Pick>,
    /// Whether it holds numbers, which stand to the right.
    pub is_number: bool,
    /// Whether a row is of no use without it.
    pub needed: bool,
}

/// A row of the table.
#[derive(Debug, Clone, PartialEq)]
pub struct ListRow {
    /// Its cells, as one would type them.
    pub cells: Vec<Cell>,
    /// What keeps it from being used.
    pub complaint: Option<String>,
}

/// The columns of a list in the reader's units.
pub fn columns(kind: Kind, system: System) -> Vec<ListColumn> {
    let column = |heading: Heading| {
        let unit = match heading.holds {
            Holds::Number { kind, .. } => unit_name(kind, system),
            other => other.unit(),
        };
        ListColumn {
            heading: if unit.is_empty() { heading.name.to_string() } else { format!("{} ({unit})", heading.name) },
            options: if let Holds::Pick(options) = heading.holds { options() } else { Vec::new() },
            is_number: !matches!(heading.holds, Holds::Text | Holds::Pick(_)),
            needed: heading.needed,
        }
    };
    shop::headings(kind).into_iter().map(column).collect()
}

/// A row of a list in the reader's units; empty where there is none.
pub fn row(lists: &Lists, kind: Kind, place: usize, system: System) -> ListRow {
    let cells = (0..).map_while(|column| shop::cell(lists, kind, place, column, system));
    ListRow { cells: cells.collect(), complaint: shop::complaint(lists, kind, place) }
}

/// As many rows as are shown at once.
pub const ROWS_OF_A_PAGE: usize = 15;

/// The rows of a list that are shown at once.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default)]
pub struct Page {
    /// Which page it is; the first is 0.
    pub number: usize,
    /// The place of its first row among those that were found.
    pub from: usize,
    /// The place after its last row.
    pub to: usize,
    /// How many rows were found.
    pub found: usize,
    /// How many pages there are.
    pub pages: usize,
}

/// A page of what was found; the last one where the number is beyond it.
pub fn page(number: usize, found: usize) -> Page {
    let pages = found.div_ceil(ROWS_OF_A_PAGE).max(1);
    let number = number.min(pages - 1);
    let from = number * ROWS_OF_A_PAGE;
    Page { number, from, to: found.min(from + ROWS_OF_A_PAGE), found, pages }
}

impl Page {
    /// Which rows they are: `Rows 26 to 50 of 312 found, 5,000 in all`.
    pub fn words(&self, all: usize) -> String {
        let [first, last, found] = [self.from + 1, self.to, self.found].map(count_words);
        match (self.found, self.found == all) {
            (0, _) => NONE_FOUND.to_string(),
            (_, true) => format!("Rows {first} to {last} of {found}"),
            (_, false) => format!("Rows {first} to {last} of {found} found, {} in all", count_words(all)),
        }
    }
}

/// A count with its thousands apart: `5,000`.
fn count_words(count: usize) -> String {
    show(count as f64, quantity::Kind::Count, System::Inch)
}

/// Said where no row has the words that were looked for.
pub const NONE_FOUND: &str = "No row has these words.";

/// Said where a row is not taken away.
pub const CHANGED_ELSEWHERE: &str = "Another tab changed this row, so it was not removed. It is shown as it is now: remove it again if you still want to.";

/// What is said where an edit landed in another row than the one that was read.
pub const fn landed(landed: Landed) -> Option<&'static str> {
    match landed {
        Landed::InPlace => None,
        Landed::Below => Some(
            "Another tab changed this row while you typed. Both are kept, and yours stands right below it: remove the one that is wrong.",
        ),
        Landed::AtTheEnd => Some(
            "Another tab removed this row while you typed. Yours is kept as the last row: remove it if it is no longer wanted.",
        ),
    }
}

/// What a file of a list is called.
pub fn file_name(kind: Kind) -> String {
    format!("linkwright-{}.csv", kind.id())
}

/// One thing that a link can be made from.
#[derive(Debug, Clone, PartialEq)]
pub struct OfferRow {
    /// The rod ends and the bar.
    pub name: String,
    /// How the link comes out, whether it is as large as usual, bar and cut length, whether they are final, and what is in
    /// stock or has to be ordered.
    pub says: String,
}

/// The rows of a search.
pub fn offers(found: &Offers, system: System) -> Vec<OfferRow> {
    found.offers.iter().map(|offer| offer_row(offer, system)).collect()
}

/// What is said beneath the rows of a search.
pub fn remark(found: &Offers) -> Option<String> {
    if !found.needs.is_empty() {
        return Some(still_needed(&found.needs));
    }
    if !found.complete {
        return Some(format!("These are the likeliest: {MOST_REPORTS} combinations were tried, and there are more."));
    }
    found.offers.is_empty().then(|| match found.reports {
        0 => "The lists hold nothing that fits this link’s metal, sizes and rod ends.".to_string(),
        1 => "One combination of the lists was tried, and it does not pass every check.".to_string(),
        tried => format!("{tried} combinations of the lists were tried, and none passes every check."),
    })
}

fn offer_row(offer: &Offer, system: System) -> OfferRow {
    let bar = size(offer.size.outside_diameter, offer.size.wall, system);
    let name = match &offer.rod_ends {
        [Some(a), Some(b)] if a == b => format!("{} at both ends, {bar}", a.name),
        [Some(a), Some(b)] => format!("{} at A, {} at B, {bar}", a.name, b.name),
        [Some(a), None] => format!("{} at A, {bar}", a.name),
        [None, Some(b)] => format!("{} at B, {bar}", b.name),
        [None, None] => bar,
    };
    let [made, sawn] = [offer.bar, offer.cut].map(|value| length(value, system));
    let (word, stock) = (offer.word, stock(&offer.needed, system));
    let says = match (offer.as_large_as_usual, offer.is_final) {
        (true, true) => format!("{word}. Bar {made}, saw {sawn}: final, the rod ends are measured. {stock}"),
        (true, false) => {
            format!("{word}. Bar {made}, saw {sawn}: not final until both rod ends are measured. {stock}")
        }
        (false, true) => format!(
            "{word}; smaller than builders usually fit. Bar {made}, saw {sawn}: final, the rod ends are measured. {stock}"
        ),
        (false, false) => format!(
            "{word}; smaller than builders usually fit. Bar {made}, saw {sawn}: not final until both rod ends are measured. {stock}"
        ),
    };
    OfferRow { name, says }
}

/// What is in stock and what has to be ordered, in a sentence or two.
pub fn stock(needed: &[Needed], system: System) -> String {
    match ordered_and_uncounted(needed, system) {
        [None, None] => "In stock.".to_string(),
        [Some(ordered), None] => format!("To order: {ordered}."),
        [None, Some(uncounted)] => format!("Listed, but not counted: {uncounted}."),
        [Some(ordered), Some(uncounted)] => format!("To order: {ordered}. Listed, but not counted: {uncounted}."),
    }
}

/// The same of a link as it is entered.
pub fn as_it_stands(needed: &[Needed], system: System) -> String {
    match ordered_and_uncounted(needed, system) {
        [None, None] => "As it stands, everything for it is in stock.".to_string(),
        [Some(ordered), None] => format!("As it stands, there is to order: {ordered}."),
        [None, Some(uncounted)] => format!("As it stands, this is listed, but not counted: {uncounted}."),
        [Some(ordered), Some(uncounted)] => {
            format!("As it stands, there is to order: {ordered}. Listed, but not counted: {uncounted}.")
        }
    }
}

/// What has to be ordered, and what is listed without a count; `None` where there is none of it.
fn ordered_and_uncounted(needed: &[Needed], system: System) -> [Option<String>; 2] {
    let ordered = needed.iter().filter(|part| part.to_order().is_some_and(|count| count > 0));
    let ordered: Vec<String> = ordered.map(|part| to_order(part, system)).collect();
    let uncounted = needed.iter().filter(|part| part.held == Held::Uncounted);
    let uncounted: Vec<String> = uncounted.map(|part| counted(part.count, &part.what, system)).collect();
    [ordered, uncounted].map(|parts| (!parts.is_empty()).then(|| parts.join("; ")))
}

fn to_order(part: &Needed, system: System) -> String {
    let words = counted(part.to_order().unwrap_or(part.count), &part.what, system);
    match part.held {
        Held::OtherLengths(held) => format!("{words} ({held} in stock have other lengths, which change the bar)"),
        Held::Counted(held) if held > 0 => format!("{words} ({held} in stock)"),
        _ => words,
    }
}

/// So many of a part: `2 rod ends, 1-1/4-12 left-hand`.
fn counted(count: usize, what: &Wanted, system: System) -> String {
    let some = |one: &str, many: &str| if count == 1 { format!("1 {one}") } else { format!("{count} {many}") };
    let cut =
        |its: &'static crate::engine::tables::threads::Thread, hand: &Hand| format!("{} {}", thread(its), hand.words());
    match what {
        Wanted::RodEnd { thread, hand, .. } => format!("{}, {}", some("rod end", "rod ends"), cut(thread, hand)),
        Wanted::JamNut { thread, hand } => format!("{}, {}", some("jam nut", "jam nuts"), cut(thread, hand)),
        Wanted::Insert { thread, hand, flange, .. } => {
            let inserts = match *flange > 0.0 {
                true => some("shouldered bung", "shouldered bungs"),
                false => some("threaded insert", "threaded inserts"),
            };
            format!("{inserts}, {}", cut(thread, hand))
        }
        Wanted::Blank { metal, size: its, length: long } => {
            let blanks = some("blank", "blanks");
            let (across, long) = (size(its.outside_diameter, its.wall, system), length(*long, system));
            format!("{blanks} of {long}, {across} {}", short(metal))
        }
    }
}
