//! The Size view's rows say what the report says, in either unit system, for whole links and for random rigs.

use crate::dice;
use crate::links::{answer as answered, hard, sized};
use linkwright::document::{Document, Hand, Role};
use linkwright::engine::{self, fitting::fitting_steps};
use linkwright::present::answer::Head;
use linkwright::present::ends::Reached;
use linkwright::present::parts::{Amount, BOLT_LENGTH, PartRow};
use linkwright::present::words::Units;
use linkwright::present::{adjustment, answer, checklist, ends, parts, sheet, sizes, text};
use linkwright::quantity::{Kind, System, inch, measured, show};
use linkwright::report::{Answer, LinkReport, Part, Verdict};

const SYSTEMS: [System; 2] = [System::Inch, System::Metric];

/// A few whole links that differ in what is told of them.
fn whole_links() -> Vec<Document> {
    let mut same_hands = hard();
    same_hands.links[0].ends[1].hand = Some(Hand::Right);
    same_hands.links[0].ends[0].hand = Some(Hand::Right);
    let mut tie_rod = hard();
    tie_rod.links[0].role = Role::TieRod;
    vec![hard(), sized(1.25, "3/4-16", "3/4-16"), sized(2.0, "1-1/4-12", "7/8-14"), same_hands, tie_rod]
}

/// The value of a cell of the plate.
fn cell<'a>(head: &'a Head, id: &str) -> &'a str {
    head.plate.iter().find(|cell| cell.id == id).map(|cell| cell.value.as_str()).expect("on the plate")
}

#[test]
fn the_plate_shows_the_report() {
    for document in whole_links() {
        let told = answered(&document);
        for system in SYSTEMS {
            let head = answer::head(&document, 0, &told, system);
            assert_eq!(cell(&head, "eye-to-eye"), measured(told.link.length, system));
            assert_eq!(cell(&head, "bar-length"), measured(told.link.bar, system));
            assert_eq!(cell(&head, "cut-length"), measured(told.link.cut, system));
            assert_eq!(cell(&head, "bar-weight"), show(told.link.bar_weight, Kind::Weight, system));
            assert_eq!(head.plate.iter().filter(|cell| cell.main).count(), 3, "three lengths stand out");
            assert_eq!((head.verdict, head.word), (told.verdict, told.word()));
            assert!(head.warning.is_some() || told.verdict != Verdict::Fails, "a link that fails says so in front");
        }
    }
}

#[test]
fn the_worked_example_reads_as_it_always_did() {
    let told = answered(&hard());
    let head = answer::head(&hard(), 0, &told, System::Inch);
    assert_eq!(head.name, "Front lower links, 2 pieces");
    assert_eq!(head.headline, "2-1/4 in 7075-T6/T651 bar, 1-1/4-12 rod ends, RH at A and LH at B");
    assert_eq!(cell(&head, "bar-length"), "32-3/4 in");
    assert_eq!(head.kicker, "Recommended for a rig of 4,100 lb, driven hard");
    assert!(head.weakest.starts_with("Weakest: "), "{}", head.weakest);
    assert_eq!(head.warning, None);
    let ends = ends::ends(&told.link, System::Inch);
    assert!(ends.shop_summary.starts_with("tap "), "{}", ends.shop_summary);
    let shop: Vec<&str> = ends.ends[0].shop.iter().map(|row| row.value.as_str()).collect();
    assert!(shop.contains(&"1-11/64 in, 1.172 in across") && shop.contains(&"3-1/8 in deep"), "{shop:?}");
    assert!(ends.shop_summary.replace('\u{2060}', "").contains("3-1/8 in"), "{}", ends.shop_summary);
}

#[test]
fn every_caution_and_every_step_is_there_once() {
    for document in whole_links() {
        let told = answered(&document);
        for system in SYSTEMS {
            let cautions = answer::cautions(&told, system);
            assert_eq!(cautions.first.len() + cautions.rest.len(), told.cautions.len());
            assert_eq!(cautions.more.is_some(), !cautions.rest.is_empty());
            let (steps, list) =
                (checklist::steps(&document, 0, &told, system), fitting_steps::steps(&document, 0, &told));
            assert_eq!(steps.len(), list.iter().filter(|step| step.is_on_paper()).count());
            let essentials = checklist::essentials(&document, 0, &told, system);
            assert!(!essentials.is_empty() && essentials.iter().all(|words| steps.contains(words)));
        }
        assert!(checklist::summary(&document, 0, &told).contains("step"));
    }
}

#[test]
fn the_text_of_parts_is_their_rows() {
    for document in whole_links() {
        let told = answered(&document);
        let bought = engine::parts(&document, 0, &told);
        let rows = parts::rows(&bought, Units::Both);
        let lines = parts::text(&bought);
        assert_eq!(lines.len(), rows.len() + 1);
        assert_eq!(lines.last().map(String::as_str), Some(BOLT_LENGTH));
        for (line, PartRow { name, amount }) in lines.iter().zip(&rows) {
            assert_eq!(*line, format!("{name}: {}", amount.words()));
        }
        for (row, part) in rows.iter().zip(&bought) {
            match (&row.amount, part) {
                (Amount::Saw(saw), Part::Bar { cuts, .. }) => {
                    assert!(cuts.iter().all(|cut| saw.contains(&measured(cut.length, System::Inch))), "{saw}");
                }
                (Amount::Pieces(count), part) => assert_eq!(*count, part.count()),
                (amount, part) => panic!("{amount:?} of {part:?}"),
            }
        }
    }
}

#[test]
fn what_is_sent_has_both_units_and_says_how_far_to_trust_it() {
    for document in whole_links() {
        let told = answered(&document);
        let sent = text::plain_text(&document, 0, &told, false, Some("https://example.org/#3".to_string()));
        for value in [told.link.length, told.link.bar, told.link.cut] {
            let both = format!("{} ({})", measured(value, System::Inch), measured(value, System::Metric));
            assert!(sent.contains(&both), "{both} is missing in {sent}");
        }
        assert!(sent.contains(text::DISCLAIMER) && sent.ends_with("https://example.org/#3"), "{sent}");
        assert!(sent.contains(told.word()), "{sent}");
        let stale = text::plain_text(&document, 0, &told, true, None);
        assert!(stale.starts_with(answer::STALE) && stale.ends_with(text::DISCLAIMER), "{stale}");
    }
}

#[test]
fn each_end_has_its_scale_with_the_link_as_set_in_it_once() {
    for document in whole_links() {
        let told = answered(&document);
        let ends = ends::ends(&told.link, System::Inch);
        assert_eq!(ends.ends.len(), 2);
        for (rows, end) in ends.ends.iter().zip(&told.link.ends) {
            let count = |reached| rows.scale.iter().filter(|mark| mark.reached == reached).count();
            let reached = end.marks.iter().filter(|mark| mark.reached).count();
            assert_eq!(count(Reached::AsSet), 1);
            assert_eq!((count(Reached::Yes), count(Reached::No)), (reached, end.marks.len() - reached));
            let set = rows.scale.iter().position(|mark| mark.reached == Reached::AsSet);
            assert_eq!(set, Some(end.marks.len() - reached), "what is missed stands above it");
            let all = ends::rows(end, told.link.bore > 0.0, System::Inch);
            assert_eq!(all.len(), rows.set.len() + rows.shop.len());
        }
    }
}

#[test]
fn turns_stand_only_where_turning_the_bar_changes_the_length() {
    for document in whole_links() {
        let told = answered(&document);
        let rows = adjustment::adjustment(&told, System::Inch);
        let names: Vec<&str> = rows.rows.iter().map(|row| row.name).collect();
        assert_eq!(names, ["Longer", "Shorter"]);
        for row in &rows.rows {
            assert_eq!(row.good.turns.is_some(), told.link.adjustment.opposite_hands);
        }
        assert_eq!(rows.how.contains("One turn changes"), told.link.adjustment.turning.is_some(), "{}", rows.how);
    }
}

#[test]
fn the_size_to_take_stands_among_its_neighbors() {
    let document = hard();
    let told = answered(&document);
    let recommended = told.sizing.recommended.clone().expect("a recommendation");
    let around = engine::neighbors(&document, 0, &recommended);
    let why = sizes::why(&told, &around, System::Inch);
    let chosen: Vec<&str> = why.candidates.iter().filter(|row| row.recommended).map(|row| row.bar.as_str()).collect();
    assert_eq!(chosen, [measured(recommended.outside_diameter, System::Inch)]);
    assert!(why.candidates.iter().any(|row| row.name == "One size up"));
    assert_eq!(why.chosen, None);
    let sizes: Vec<(&str, &str)> = why.candidates.iter().map(|row| (row.bar.as_str(), row.thread)).collect();
    assert!(sizes.windows(2).all(|pair| pair[0] != pair[1]), "no size stands there twice: {sizes:?}");
    let usual = why.practice.expect("what builders fit");
    assert!(usual.contains("no source") && !(why.governs.contains("usually fit") && usual.contains("usually fit")));

    let rows = engine::firmness(&document, 0);
    let margin = sizes::margin(&rows, true, System::Inch).expect("a margin");
    assert_eq!(margin.rows.len(), rows.len());
    assert!(margin.rows.iter().all(|row| row.now != "…" && !row.within.is_empty()));
    assert!(margin.summary.contains(&margin.rows[0].within), "{}", margin.summary);
    let old = sizes::margin(&rows, false, System::Inch).expect("a margin");
    assert!(old.rows.iter().all(|row| row.now == "…" && row.within == "…"), "no old number beside a new answer");

    let assumed = sizes::assumed(&told.assumed, System::Metric);
    assert_eq!(assumed.len(), told.assumed.len());
    assert!(assumed.iter().all(|row| row.changed == (row.source == "your entry")));
}

#[test]
fn a_link_shows_its_own_size_where_that_was_chosen() {
    let document = sized(1.25, "3/4-16", "3/4-16");
    let told = answered(&document);
    let head = answer::head(&document, 0, &told, System::Inch);
    assert!(head.kicker.starts_with("Your own size for"), "{}", head.kicker);
    assert!(sizes::why(&told, &[None, None], System::Inch).chosen.is_some());
}

#[test]
fn parts_of_the_rig_count_what_is_left_out() {
    let mut document = hard();
    document.links.push(document.links[0].clone());
    document.links[1].length = None;
    let whole = engine::whole_rig(&document, None);
    let rows = parts::whole_rig(&whole, System::Inch).expect("parts");
    assert_eq!(rows.missing.as_deref(), Some("2 of 4 links have no answer: their parts are not counted here."));
    assert!(rows.weight.contains(&show(whole.rig.weight, Kind::Weight, System::Inch)), "{}", rows.weight);
    document.links[0].length = None;
    assert_eq!(parts::whole_rig(&engine::whole_rig(&document, None), System::Inch), None);
    document = hard();
    document.links[0].length = Some(inch(38.0));
    assert_eq!(parts::whole_rig(&engine::whole_rig(&document, None), System::Inch).and_then(|rig| rig.missing), None);
}

/// Everything the Size view writes for one answer.
fn everything(document: &Document, at: usize, told: &Answer, system: System) -> Vec<String> {
    let sheet = sheet::sheet(document, at, told, system);
    let mut all = vec![sheet.head.name, sheet.head.kicker, sheet.head.headline, sheet.head.story];
    all.extend(sheet.head.plate.into_iter().map(|cell| cell.value));
    all.extend(sheet.head.buckling.map(|(_, words)| words));
    all.extend([sheet.ends.summary, sheet.ends.shop_summary, sheet.parts.title, sheet.parts.summary]);
    all.extend(sheet.ends.flats);
    for end in sheet.ends.ends {
        all.extend([end.letter, end.title]);
        all.extend(end.set.into_iter().chain(end.shop).map(|row| row.value));
        all.extend(end.scale.into_iter().flat_map(|mark| [mark.length, mark.name]));
    }
    all.extend(sheet.parts.rows.into_iter().flat_map(|row| [row.name, row.amount.words()]));
    for row in sheet.adjustment.rows {
        let turns = [row.good.turns, row.limit.turns].into_iter().flatten();
        all.extend([row.good.length, row.limit.length].into_iter().chain(turns));
    }
    all.push(sheet.adjustment.how);
    all.extend(sheet.cautions);
    all.extend(sheet.steps);
    let cautions = answer::cautions(told, system);
    all.extend(cautions.first.into_iter().chain(cautions.rest).chain(cautions.more));
    let why = sizes::why(told, &[told.sizing.by_numbers.clone(), None], system);
    all.push(why.governs);
    all.extend(why.practice);
    all.extend(why.candidates.into_iter().flat_map(|row| [row.bar, row.utilization]));
    all.extend(sizes::assumed(&told.assumed, system).into_iter().flat_map(|row| [row.now, row.name.to_string()]));
    all.extend(text::plain_text(document, at, told, false, None).lines().map(str::to_string));
    all
}

/// Whether a word is no number a person reads.
fn is_no_number(word: &str) -> bool {
    let word = word.trim_matches(|letter: char| !letter.is_ascii_alphanumeric());
    ["NaN", "nan", "inf", "Inf", "infinity"].contains(&word)
}

#[test]
fn no_rig_shows_an_empty_row_or_no_number() {
    dice::in_four_threads(0x51ce, |mut dice| {
        let mut told = 0;
        for _ in 0..150 {
            let mut document = dice.rig();
            // So that most have an answer, and the name is no number by chance.
            document.name = "Rig".to_string();
            document.rig.weight = document.rig.weight.or(hard().rig.weight);
            document.rig.usage = document.rig.usage.or(hard().rig.usage);
            document.links.truncate(3);
            document.links.iter_mut().for_each(|link| link.length = link.length.or(Some(inch(38.0))));
            for (at, report) in engine::report(&document).links.iter().enumerate() {
                let LinkReport::Answer(answer) = report else { continue };
                told += 1;
                for line in SYSTEMS.into_iter().flat_map(|system| everything(&document, at, answer, system)) {
                    assert!(!line.trim().is_empty(), "an empty row for {document:?}");
                    assert!(!line.split([' ', '(', ',', ';']).any(is_no_number), "{line} for {document:?}");
                }
            }
        }
        assert!(told > 50, "only {told} links had an answer");
    });
}
