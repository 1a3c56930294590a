//! The shop in words: tables, offers, what is in stock, and a quote as text.

use linkwright::document::{Finish, Link};
use linkwright::engine::report;
use linkwright::engine::shop::cut_plan::Saw;
use linkwright::engine::shop::quote::quote;
use linkwright::engine::shop::route::Machine;
use linkwright::engine::shop::route::machine::{SAW_GRIP, SAW_KERF, SAW_TRIM};
use linkwright::engine::shop::stock::{Held, Needed, Wanted, offers, take};
use linkwright::present::order::customer::{customer_quote, text as as_text};
use linkwright::present::order::{lists as shown, quote as quoted};
use linkwright::quantity::{System, inch, mm};
use linkwright::shop::{Kind, Lists, add_row, demo, rows};

use super::stock::hard;

#[test]
fn a_table_has_a_cell_for_each_column() {
    let mut lists = demo::lists();
    for kind in Kind::ALL {
        add_row(&mut lists, kind);
        for system in [System::Inch, System::Metric] {
            let columns = shown::columns(kind, system).len();
            let all = (0..rows(&lists, kind)).map(|place| shown::row(&lists, kind, place, system));
            let all: Vec<shown::ListRow> = all.collect();
            assert!(all.iter().all(|row| row.cells.len() == columns), "{kind:?}");
            let last = all.last().and_then(|row| row.complaint.clone());
            assert!(last.is_some_and(|it| it.starts_with("Not used until you enter or correct: Name")), "{kind:?}");
        }
    }
    let heads = |system| {
        let columns = shown::columns(Kind::RodEnds, system);
        columns.into_iter().map(|it| it.heading).take(5).collect::<Vec<_>>().join(", ")
    };
    assert_eq!(heads(System::Inch), "Name, Shank thread, Bore (in), Eye center to shank end (in), Thread length (in)");
    assert_eq!(
        heads(System::Metric),
        "Name, Shank thread, Bore (mm), Eye center to shank end (mm), Thread length (mm)"
    );
}

#[test]
fn a_long_list_is_shown_a_page_at_a_time() {
    for (number, found, shown, words) in [
        (0, 15, (0, 0..15, 1), "Rows 1 to 15 of 15 found, 5,000 in all"),
        (0, 5_000, (0, 0..15, 334), "Rows 1 to 15 of 5,000"),
        (1, 5_000, (1, 15..30, 334), "Rows 16 to 30 of 5,000"),
        (usize::MAX, 4_990, (332, 4_980..4_990, 333), "Rows 4,981 to 4,990 of 4,990 found, 5,000 in all"),
        (3, 0, (0, 0..0, 1), shown::NONE_FOUND),
        (3, 17, (1, 15..17, 2), "Rows 16 to 17 of 17 found, 5,000 in all"),
    ] {
        let page = shown::page(number, found);
        assert_eq!((page.number, page.from..page.to, page.pages), shown, "{number} of {found}");
        assert_eq!(page.words(5_000), words);
    }
}

#[test]
fn an_offer_reads_like_a_sentence() {
    let found = offers(&hard(), 0, &demo::lists(), &Saw::ASSUMED);
    let row = &shown::offers(&found, System::Inch)[0];
    assert_eq!(row.name, "Demo, 1-1/4 shank at both ends, 2-1/4 in");
    assert_eq!(row.says, "Passes. Bar 32-13/16 in, saw 32-15/16 in: final, the rod ends are measured. In stock.");
    assert_eq!(
        shown::as_it_stands(&found.offers[0].needed, System::Inch),
        "As it stands, everything for it is in stock."
    );
    assert_eq!(shown::remark(&found), None);
    let mut few = demo::lists();
    (few.rod_ends.rows[2].row.left, few.bars.rows[2].row.count, few.nuts.rows[0].row.count) = (Some(1), Some(0), None);
    let found = offers(&hard(), 0, &few, &Saw::ASSUMED);
    let names_it = |name: &str| name.contains("1-1/4 shank at");
    let at = shown::offers(&found, System::Inch).iter().position(|row| names_it(&row.name)).expect("it");
    assert_eq!(
        shown::stock(&found.offers[at].needed, System::Inch),
        "To order: 2 blanks of 32-15/16 in, 2-1/4 in 7075-T6/T651 bar; 1 rod end, 1-1/4-12 left-hand (1 in stock). Listed, but not counted: 2 jam nuts, 1-1/4-12 right-hand."
    );
    assert_eq!(
        shown::as_it_stands(&found.offers[at].needed, System::Inch),
        "As it stands, there is to order: 2 blanks of 32-15/16 in, 2-1/4 in 7075-T6/T651 bar; 1 rod end, 1-1/4-12 left-hand (1 in stock). Listed, but not counted: 2 jam nuts, 1-1/4-12 right-hand."
    );
    let nothing = offers(&hard(), 0, &Lists::default(), &Saw::ASSUMED);
    assert_eq!(
        shown::remark(&nothing).as_deref(),
        Some("The lists hold nothing that fits this link’s metal, sizes and rod ends.")
    );
}

#[test]
fn the_saw_that_blanks_are_counted_with_is_named() {
    let mut machine = Machine::default();
    assert_eq!(
        shown::saw_used(&machine, System::Inch),
        "Blanks are counted with an assumed saw (common practice, no source): 1/16 in kerf, 1/8 in off both ends of every bar, 2 in held at the last cut. Set your own in the Make view."
    );
    assert_eq!(machine.set(&SAW_KERF, Some(inch(0.125))), Ok(()));
    assert_eq!(
        shown::saw_used(&machine, System::Inch),
        "Blanks are counted with your own saw, as set in the Make view: 1/8 in kerf, 1/8 in off both ends of every bar, 2 in held at the last cut. Still assumed (common practice, no source): trimmed ends, grip."
    );
    assert_eq!([machine.set(&SAW_TRIM, Some(0.0)), machine.set(&SAW_GRIP, Some(mm(60.0)))], [Ok(()); 2]);
    assert_eq!(
        shown::saw_used(&machine, System::Metric),
        "Blanks are counted with your own saw, as set in the Make view: 3.2 mm kerf, 0.0 mm off both ends of every bar, 60.0 mm held at the last cut."
    );
}

/// A saw that holds more at its last cut leaves fewer blanks in the same bars; no answer rests on it.
#[test]
fn the_saw_that_is_set_counts_the_blanks() {
    let mut lists = demo::lists();
    lists.bars.rows.retain(|entry| entry.row.name == "Demo 2-1/4 bar");
    let answered = report(&hard());
    let mut machine = Machine::default();
    let found = |machine: &Machine| {
        let found = offers(&hard(), 0, &lists, &machine.saw());
        let part = |part: &&Needed| matches!(part.what, Wanted::Blank { .. });
        found.offers[0].needed.iter().find(part).map(|part| part.held)
    };
    let usual = found(&machine);
    assert_eq!(machine.set(&SAW_GRIP, Some(inch(24.0))), Ok(()));
    let Some((Held::Counted(usual), Held::Counted(fewer))) = usual.zip(found(&machine)) else { panic!("counted") };
    assert!(fewer < usual, "{fewer} and {usual}");
    assert!(report(&hard()) == answered);
}

#[test]
fn a_quote_as_text() {
    let document = take(&hard(), 0, &offers(&hard(), 0, &demo::lists(), &Saw::ASSUMED).offers[0]);
    let mut lists = demo::lists();
    lists.prices.rows.retain(|entry| !["Demo bolt", "Demo lock nut", "Demo tax"].contains(&entry.row.name.as_str()));
    let reports = report(&document).links;
    let quote = quote(&document, &reports, &lists);
    let text = as_text(&customer_quote(&document, &reports, &quote, &[], System::Inch)).join("\n");
    for part in [
        "Front lower links, Demo 7075 bar, any size: 26.454 lb at 11.50 per lb = 304.22",
        "Front lower links, Demo saw cut: 2 at 4.00 each = 8.00",
        "Front lower links, Demo, 1-1/4 shank, left-hand: 2 at 64.00 each = 128.00",
        "Demo order: 1 at 12.00 each = 12.00",
        "Total: 803.20\nThe total is without bolts and lock nuts.\nShipping is charged on 38.4 lb.\nNo tax is added.",
        "Lead time: 5 working days.",
        quoted::ROUNDING,
    ] {
        assert!(text.contains(part), "{part}\nis not in\n{text}");
    }
    assert!(!text.contains('$') && !text.contains('€'), "no currency");
    // What only the shop should know stands on its screen alone.
    let table = quoted::table(&quote, &document, System::Inch);
    let on_screen =
        [table.lacking, table.weighed].into_iter().flatten().chain(table.remarks).collect::<Vec<_>>().join("\n");
    for hint in [
        "The total is without bolts and lock nuts, for which the price book has no price.",
        "Shipping is charged on 38.4 lb: the bars, and the parts whose weight your lists give. Not weighed: jam nuts, bolts, lock nuts and packing.",
        "The price book has no tax, so none is added.",
    ] {
        assert!(on_screen.contains(hint) && !text.contains(hint), "{hint}\n{on_screen}");
    }
    assert!(!text.contains("price book") && !text.contains("list of stock"), "{text}");
}

#[test]
fn what_is_missing_for_some_links_names_them() {
    let mut document = take(&hard(), 0, &offers(&hard(), 0, &demo::lists(), &Saw::ASSUMED).offers[0]);
    document.links.push(Link {
        finish: Some(Finish::Polished),
        position: linkwright::document::Position::Rear,
        ..document.links[0].clone()
    });
    document.links.push(Link::default());
    let mut lists = demo::lists();
    lists.prices.rows.retain(|entry| entry.row.name != "Demo polish");
    let quote = quote(&document, &report(&document).links, &lists);
    assert_eq!(quoted::without(&quote, &document).as_deref(), Some("polishing for rear lower links"));
    let table = quoted::table(&quote, &document, System::Metric);
    assert!(
        table
            .lacking
            .as_deref()
            .unwrap_or_default()
            .starts_with("The total is without polishing for rear lower links, for which"),
        "{table:?}"
    );
    assert!(table.remarks.iter().any(|line| line == "One entry has no answer yet and is not in this quote."));
    assert_eq!(table.total_label, "Total (2 links are not in this quote)");
    let none = customer_quote(&document, &[], &linkwright::engine::shop::quote::Quote::default(), &[], System::Inch);
    assert_eq!(as_text(&none), [quoted::NOTHING]);
}

/// A customer's paper says what is made, by which day, with which bolts; and what keeps it from being made.
#[test]
fn a_quote_says_what_it_is_for() {
    let mut document = take(&hard(), 0, &offers(&hard(), 0, &demo::lists(), &Saw::ASSUMED).offers[0]);
    document.order.reference = "Job 41".to_string();
    document.order.wanted = "2026-12-24".to_string();
    document.links[0].spacer = Some(inch(0.25));
    let lists = demo::lists();
    let quoted = |document: &linkwright::document::Document, changed: &[String]| {
        let reports = report(document).links;
        customer_quote(document, &reports, &quote(document, &reports, &lists), changed, System::Inch)
    };
    let said = quoted(&document, &[]);
    let text = as_text(&said).join("\n");
    for part in [
        "Your reference: Job 41",
        "Wanted by: ",
        "Front lower links, 2 pieces",
        "2-1/4 in",
        "1-1/4-12",
        "RH at A and LH at B",
        "38 in",
    ] {
        assert!(text.contains(part), "{part}\nis not in\n{text}");
    }
    let named = |what: &str| said.table.rows.iter().find(|row| row.what.starts_with(what)).map(|row| row.what.as_str());
    assert_eq!(named("Demo bolt"), Some("Demo bolt, 1 in"));
    assert_eq!(named("Demo lock nut"), Some("Demo lock nut, 1 in"));
    assert_eq!((said.stops.len(), said.table.total_label.as_str()), (0, "Total"));
    // A bar too thin for the job.
    document.links[0].outside_diameter = Some(inch(1.75));
    let stops = quoted(&document, &["Changed since the yes.".to_string(), "Length".to_string()]).stops;
    assert_eq!(stops.len(), 2, "{stops:?}");
    assert_eq!(stops[0], "Changed since the yes.");
    assert!(stops[1].starts_with("Front lower links, 2 pieces: it fails as entered."), "{stops:?}");
}
