//! What a link can be made from: cases by hand, and that what is taken opens to the same numbers.

use linkwright::document::{Document, OWN_ROD_END, SuppliedBy, Use};
use linkwright::engine::report_on;
use linkwright::engine::shop::stock::{Held, MOST_REPORTS, Needed, Wanted, offers, standing, take};
use linkwright::quantity::{inch, lbf};
use linkwright::report::Answer;
use linkwright::share;
use linkwright::shop::{Kind, Lists, demo, read};

/// A 4,100 lb rig, driven hard, 38 in: the worked example.
fn hard() -> Document {
    let mut document = Document::default();
    (document.rig.weight, document.rig.usage) = (Some(lbf(4100.0)), Some(Use::Hard));
    document.links[0].length = Some(inch(38.0));
    document
}

fn answer(document: &Document) -> Answer {
    report_on(document, 0).answer().expect("an answer").clone()
}

/// Lists with nothing but what is given.
fn lists(files: &[(Kind, &str)]) -> Lists {
    let mut lists = Lists::default();
    for (kind, text) in files {
        let told = read(&mut lists, *kind, text).expect("a list");
        assert!(told.is_empty(), "{told:?}");
    }
    lists
}

const ROD_ENDS: &str = "Name,Shank thread,Bore (in),Eye center to shank end (in),Thread length (in),\
    Right-hand in stock,Left-hand in stock,Ball width (in),Head diameter (in),Shank steel\n";
const BARS: &str = "Name,Metal,Outside diameter (in),Length (in),In stock\n";

fn rod_end(line: &str) -> String {
    format!("{ROD_ENDS}{line}\n")
}

#[test]
fn the_invented_lists_make_the_worked_example() {
    let began = std::time::Instant::now();
    let found = offers(&hard(), 0, &demo::lists());
    println!("{} reports in {:?}", found.reports, began.elapsed());
    for offer in &found.offers {
        println!("{:?} {:?} {} {} {}", offer.rod_ends[0].as_ref().map(|it| &it.name), offer.size, offer.word, offer.is_in_stock(), offer.as_large_as_usual);
        for needed in &offer.needed { println!("   {needed:?}"); }
    }
    assert!(found.complete && !found.offers.is_empty());
}
