//! What is read back, in full and as a short message.

use crate::dice::{self, Dice};
use crate::links::sized;
use linkwright::document::{Document, Hand, MeasuredOn, OWN_ROD_END, Position, Role, SuppliedBy, Use};
use linkwright::engine::report;
use linkwright::engine::shop::code::{code_of_link, code_of_rig};
use linkwright::present::order::confirmation::text;
use linkwright::present::order::message::{SHORTEST_TEXT, messages, short_text};
use linkwright::present::order::read_back::{link_lines, script, sections, since_first_said};
use linkwright::present::words::{hand_mark, length, pieces};
use linkwright::quantity::{System, inch, lbf};
use linkwright::share::{Sent, snapshot};

/// A link as it may be asked for.
fn asked() -> Document {
    let mut document = sized(2.0, "wide-16", "wide-14");
    (document.rig.weight, document.rig.usage) = (Some(lbf(2000.0)), Some(Use::Easy));
    document.links[0].length = Some(inch(36.5));
    document.links[0].measured_on = Some(MeasuredOn::Rig);
    document.links[0].ends[0].supplied_by = Some(SuppliedBy::Shop);
    document
}

fn read(document: &Document, system: System) -> Vec<String> {
    let reports = report(document).links;
    script(document, &reports, code_of_rig(document, &reports), system)
}

#[test]
fn a_script_says_every_number_in_words_and_figures() {
    let lines = read(&asked(), System::Inch);
    for line in [
        "For a rig of 2,000 lb, easy trails.",
        "Front lower links: two pieces.",
        "Mount to mount on the rig: thirty-six and a half, that is 36.500 inches, hole center to hole center; measured on the rig at ride height.",
        "Eye to eye of the finished link, as set: thirty-six and a half, that is 36.500 inches, eye center to eye center.",
        "Made of 2 in 7075-T6/T651 bar, as turned.",
        "Outside diameter: two, that is 2.000 inches.",
        "End A: one and a quarter, twelve threads to the inch, that is 1-1/4-12; right-hand thread at end A: it tightens clockwise; the rod end comes from us.",
        "End B: seven eighths, fourteen, one-four, threads to the inch, that is 7/8-14; left-hand thread at end B: it tightens counterclockwise; nobody has said whose the rod end is.",
        "Is every one of these right?",
    ] {
        assert!(lines.iter().any(|other| other == line), "{line}\n{lines:#?}");
    }
    assert!(!lines.iter().any(|line| line.contains("under Rod ends")), "an instruction for the page: {lines:#?}");
    let metric = read(&asked(), System::Metric);
    let line = "Mount to mount on the rig: nine hundred twenty-seven point one millimeters, that is 927.1 mm, hole center to hole center; measured on the rig at ride height.";
    assert!(metric.iter().any(|other| other == line), "{metric:#?}");
}

/// A rig of three links, the last of which cannot be made yet.
fn three() -> Document {
    let mut document = asked();
    let mut rear = document.links[0].clone();
    (rear.position, rear.length) = (Position::Rear, Some(inch(24.25)));
    let mut open = rear.clone();
    (open.role, open.length) = (Role::Upper, None);
    document.links.extend([rear, open]);
    document
}

#[test]
fn every_link_of_a_rig_is_read_back_under_a_heading() {
    let document = three();
    let reports = report(&document).links;
    let told = sections(&document, &reports, None, System::Inch);
    let headings: Vec<&str> = told.iter().map(|section| section.heading.as_str()).collect();
    let links = ["Link 1 of 3: Front lower links", "Link 2 of 3: Rear lower links", "Link 3 of 3: Rear upper links"];
    assert_eq!(headings, ["Rig", links[0], links[1], links[2], "Order"]);
    assert!(told[1].lines.iter().any(|line| line.starts_with("Mount to mount on the rig: thirty-six and a half")));
    assert!(told[2].lines.iter().any(|line| line.starts_with("Mount to mount on the rig: twenty-four and a quarter")));
    assert_eq!(told[3].lines, ["Rear upper links: this link cannot be made from what is entered so far."]);
    let text = read(&document, System::Inch).join("\n");
    for heading in links {
        assert!(text.contains(&format!("\n\n{heading}\n")), "{heading}: {text}");
    }
    // One link is not one of several.
    let one = sections(&asked(), &report(&asked()).links, None, System::Inch);
    assert_eq!(one[1].heading, "Front lower links");
}

#[test]
fn every_link_of_a_rig_has_a_message_of_its_own() {
    let document = three();
    let reports = report(&document).links;
    let told = messages(&document, &reports, System::Inch);
    assert_eq!(told.len(), 3);
    let lengths = ["Mount to mount and eye to eye 36-1/2 in.", "Mount to mount and eye to eye 24-1/4 in."];
    for (link, length) in lengths.into_iter().enumerate() {
        let text = told[link].text.as_deref().expect("a message");
        let code = code_of_link(&document, link, reports[link].answer().expect("an answer")).written();
        assert!(text.starts_with(&format!("Link code {code}: ")) && text.contains(length), "{text}");
        assert!(text.chars().count() <= SHORTEST_TEXT && text.is_ascii(), "{text}");
        assert!(lengths.iter().all(|other| *other == length || !text.contains(other)), "{text}");
    }
    assert_eq!((told[2].heading.as_str(), &told[2].text), ("Link 3 of 3: Rear upper links", &None));
    assert_eq!(messages(&asked(), &report(&asked()).links, System::Metric).len(), 1);
}

#[test]
fn two_ends_of_one_hand_are_said_aloud() {
    let mut document = asked();
    document.links[0].ends[1].hand = Some(Hand::Right);
    let lines = read(&document, System::Inch);
    assert!(lines.iter().any(|line| line.starts_with("Both ends are right-hand")), "{lines:#?}");
}

#[test]
fn a_link_that_fails_is_not_read_back_as_if_it_passed() {
    let mut document = asked();
    document.links[0].outside_diameter = Some(inch(1.0));
    document.links[0].ends.iter_mut().for_each(|end| end.rod_end = Some("wide-08"));
    let lines = read(&document, System::Inch);
    let fails = "This link fails as entered. I cannot take the order.";
    assert_eq!(lines.last().map(String::as_str), Some(fails), "{lines:#?}");
    assert!(!lines.iter().any(|line| line.contains("right?") || line.contains("order code")), "{lines:#?}");
    // Of several links the others are still heard, and nobody is asked for a yes.
    document.links.push(asked().links[0].clone());
    let lines = read(&document, System::Inch);
    assert!(lines.iter().any(|line| line == fails) && !lines.iter().any(|line| line.contains("right?")), "{lines:#?}");
    assert_eq!(lines.last().map(String::as_str), Some("I cannot take the order."));
}

#[test]
fn what_was_first_said_is_held_against_it() {
    let mut document = asked();
    assert_eq!(since_first_said(&document, System::Inch), Vec::<String>::new(), "nothing was kept");
    document.order.first_said = snapshot(&document);
    assert_eq!(since_first_said(&document, System::Inch), ["Nothing that you first said has changed."]);
    // What was open then takes nothing back.
    document.links[0].quantity = Some(2.0);
    document.links[0].length = Some(inch(37.0));
    let changed = ["Changed since you first said it: Front lower links: Mount to mount: 37 in, before 36-1/2 in."];
    assert_eq!(since_first_said(&document, System::Inch), changed);
    let metric = ["Changed since you first said it: Front lower links: Mount to mount: 939.8 mm, before 927.1 mm."];
    assert_eq!(since_first_said(&document, System::Metric), metric);
    document.order.first_said = "3&weight=41".to_string();
    assert!(since_first_said(&document, System::Inch)[0].contains("can no longer be read"));
    document.order.first_said = snapshot(&Document::default());
    assert_eq!(since_first_said(&document, System::Inch), Vec::<String>::new(), "the call began with nothing said");
}

#[test]
fn without_an_answer_nothing_is_read_back_as_made() {
    let mut document = asked();
    document.links[0].length = None;
    let lines = read(&document, System::Inch);
    assert!(lines.contains(&"Front lower links: this link cannot be made from what is entered so far.".to_string()));
    assert!(lines.contains(&"There is no order code yet: something is still missing.".to_string()));
}

#[test]
fn a_short_text_reads_like_this() {
    let mut document = asked();
    (document.rig.weight, document.rig.usage) = (Some(lbf(2000.0)), Some(Use::Easy));
    let reports = report(&document).links;
    let code = code_of_rig(&document, &reports).expect("a code");
    let text = short_text(&document, 0, reports[0].answer().expect("an answer"), code, System::Inch);
    let (written, bar) = (code.written(), length(reports[0].answer().expect("an answer").link.bar, System::Inch));
    assert!(
        text.starts_with(&format!(
            "Order {written}: front lower links, 2 pieces. Mount to mount and eye to eye 36-1/2 in. Bar {bar} face to face. A: 1-1/4-12 RH. B: 7/8-14 LH."
        )),
        "{text}"
    );
    assert!(text.ends_with("All right? Answer yes."), "{text}");
    // One link of several has a code of its own, which is not that of the order.
    let mut rig = document;
    rig.links.push(rig.links[0].clone());
    let (text, of_link) = (short_text(&rig, 0, reports[0].answer().expect("an answer"), code, System::Inch), written);
    assert!(text.starts_with(&format!("Link code {of_link}: front lower links")), "{text}");
}

#[test]
fn a_short_text_fits_a_message_and_has_all_that_must_be_right() {
    dice::in_four_threads(480, |mut dice: Dice| {
        let mut made = 0;
        while made < 15 {
            let mut document = dice.rig();
            document.links.truncate(1);
            (document.rig.weight, document.rig.usage) = (Some(lbf(4100.0)), Some(Use::Slow));
            document.links[0].length = document.links[0].length.or(Some(inch(30.0)));
            let reports = report(&document).links;
            let (Some(answer), Some(code)) = (reports[0].answer(), code_of_rig(&document, &reports)) else { continue };
            made += 1;
            for system in [System::Inch, System::Metric] {
                let text = short_text(&document, 0, answer, code, system);
                assert!(text.chars().count() <= SHORTEST_TEXT && text.is_ascii(), "{text}");
                let [given, bar] = [answer.link.length, answer.link.bar].map(|value| length(value, system));
                let ends = [0, 1].map(|end| {
                    let made = &answer.link.ends[end];
                    format!("{}: {} {}.", ["A", "B"][end], made.thread.id, hand_mark(made.hand))
                });
                let count = document.links[0].quantity.map_or_else(
                    || if document.links[0].seated() == linkwright::document::Side::Both { 2 } else { 1 },
                    |count| count as usize,
                );
                let must = [
                    code.written(),
                    format!("Mount to mount and eye to eye {given}."),
                    format!("Bar {bar} face to face."),
                    pieces(count),
                ];
                for part in must.iter().chain(&ends) {
                    assert!(text.contains(part.as_str()), "{part}: {text}");
                }
            }
        }
    });
}

/// What the customer measured and what goes into the mounts stands in everything that they are asked to agree to.
#[test]
fn readings_bolts_and_spacers_are_told_everywhere() {
    let mut document = asked();
    let link = &mut document.links[0];
    (link.spacer, link.gap) = (Some(inch(0.25)), Some(inch(0.125)));
    link.ends[0].bolt_diameter = Some(inch(0.875));
    link.ends[0].hand = Some(Hand::Right);
    let end = &mut link.ends[1];
    (end.rod_end, end.own_thread, end.hand) = (Some(OWN_ROD_END), Some("1-1/4-12"), Some(Hand::Right));
    (end.own_eye_to_end, end.own_thread_length, end.own_bore) = (Some(inch(3.9)), Some(inch(2.4)), Some(inch(1.0)));
    (end.supplied_by, document.order.wanted) = (Some(SuppliedBy::Customer), "2026-12-24".to_string());
    let reports = report(&document).links;
    let answer = reports[0].answer().expect("an answer");
    let code = code_of_link(&document, 0, answer);
    let message = short_text(&document, 0, answer, code, System::Inch);
    let confirmation = text(&document, &reports, Some(code), Sent::default(), "", None);
    let hands = "BOTH ENDS RIGHT-HAND: turning the bar does not change its length.";
    for part in [
        "Your rod end at B: 3.900 in eye center to shank end, 2.400 in of thread, 1 in bore.",
        "Bolt 7/8 in at A.",
        "Spacer 1/4 in and gap 1/8 in on each side.",
        hands,
    ] {
        assert!(message.contains(part), "{part}: {message}");
    }
    assert!(message.ends_with("All right? Answer yes.") || message.ends_with("Do not answer yes."), "{message}");
    for part in
        ["Your rod end at B: 3.900 in (99.06 mm) eye center to shank end", "Bolt 7/8 in", "Spacer 1/4 in", hands]
    {
        assert!(confirmation.contains(part), "{part}: {confirmation}");
    }
    assert!(confirmation.contains("\nWanted by: December 24, 2026\n"), "{confirmation}");
    let lines = link_lines(&document, 0, answer, System::Inch);
    let spoken = "Your rod end at B: three point nine, that is 3.900 inches eye center to shank end, two point four, that is 2.400 inches of thread, one, that is 1.000 inches bore.";
    assert!(lines.iter().any(|line| line == spoken), "{lines:#?}");
    assert!(lines.iter().any(|line| line == "Bolt seven eighths, that is 0.875 inches at A."), "{lines:#?}");
}
