//! The route sheet on paper: alike steps said once, and a code for the link alone.

use super::made;
use crate::dice::Dice;
use crate::links::sized;
use linkwright::document::{Document, Hand, Link, Use};
use linkwright::engine::report;
use linkwright::engine::shop::code::{alone, code_of_link};
use linkwright::present::make::route::{self, Row};
use linkwright::present::words::Units;
use linkwright::quantity::{inch, lbf};

fn rows(document: &Document) -> Vec<Row> {
    let (answer, route) = made(document);
    route::sheet(document, 0, &answer, &route, Units::Both).steps
}

fn says<'a>(rows: &'a [Row], title: &str) -> &'a [String] {
    &rows.iter().find(|row| row.title == title).expect(title).says
}

#[test]
fn only_what_is_the_same_points_back() {
    let document = sized(2.0, "wide-12", "wide-12");
    let all = rows(&document);
    let once = route::said_once(&all);
    assert_eq!(all.len(), once.len());
    let drill = once.iter().find(|row| row.title == "Tap drill, end A ●").expect("drilled");
    assert_eq!(says(&once, "Tap drill, end B ■"), [format!("As step {}, at this end.", drill.number)]);
    // The hands differ: each says its own, and so does its gauge.
    for title in ["Tap, end A ●", "Tap, end B ■", "Gauge, end B ■", "Tap drill, end A ●"] {
        assert_eq!(says(&once, title), says(&all, title), "{title}");
    }
    // Threads of two sizes share nothing that has a size.
    let mixed = sized(2.0, "wide-12", "wide-14");
    assert_eq!(says(&route::said_once(&rows(&mixed)), "Tap drill, end B ■"), says(&rows(&mixed), "Tap drill, end B ■"));
    // Both of one hand: the tap points back too.
    let mut alike = document;
    alike.links[0].ends.iter_mut().for_each(|end| end.hand = Some(Hand::Right));
    assert!(says(&route::said_once(&rows(&alike)), "Tap, end B ■")[0].starts_with("As step "));
}

#[test]
fn nothing_that_is_measured_is_lost() {
    let document = sized(2.0, "wide-12", "wide-12");
    let (answer, route) = made(&document);
    let all = route::sheet(&document, 0, &answer, &route, Units::Both).measurements;
    let once = route::measured_once(&all);
    assert!(once.len() < all.len());
    for one in &all {
        let name = one.name.to_lowercase();
        let found = once.iter().filter(|it| it.step == one.step && it.asked == one.asked);
        assert!(found.into_iter().any(|it| it.name.to_lowercase().contains(&name)), "{one:?}");
    }
}

#[test]
fn a_link_alone_is_made_just_the_same() {
    let mut dice = Dice(19);
    let (mut alike, mut asked) = (0, 0);
    for _ in 0..40 {
        let mut rig = dice.rig();
        rig.links.truncate(4);
        (rig.rig.weight, rig.rig.usage) = (rig.rig.weight.or(Some(lbf(4100.0))), rig.rig.usage.or(Some(Use::Hard)));
        rig.links.iter_mut().for_each(|link: &mut Link| link.length = link.length.or(Some(inch(36.0))));
        for (at, link) in report(&rig).links.iter().enumerate() {
            let Some(answer) = link.answer() else { continue };
            asked += 1;
            let Some(one) = alone(&rig, at, answer) else { continue };
            alike += 1;
            assert_eq!(one.links, [rig.links[at].clone()]);
            assert!(one.order == linkwright::document::Document::default().order, "an order stays with the rig");
            let of_one = report(&one).links;
            let its = of_one[0].answer().expect("an answer");
            assert_eq!(code_of_link(&one, 0, its), code_of_link(&rig, at, answer));
            assert!((its.link.cut - answer.link.cut).abs() < 1e-12);
        }
    }
    assert!(asked > 40 && alike * 2 > asked, "{alike} of {asked}");
}
