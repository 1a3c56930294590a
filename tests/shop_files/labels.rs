//! Labels: what stands on them, that it fits, and that no size is cut short.

use linkwright::document::{Document, Hand};
use linkwright::engine::report_on;
use linkwright::present::make::labels::{Label, Line, SIZES, label};
use linkwright::quantity::System;
use linkwright::report::Answer;

use super::links::sized;
use super::{SYSTEMS, rigs};

const LINK: &str = "https://example.org/#2&use=hard";

fn of(document: &Document, at: usize, answer: &Answer, size: &str, system: System) -> Label {
    let size = SIZES.iter().find(|row| row.id == size).expect("a size");
    label(document, at, answer, "ABCD-EFGH-J", LINK, size, system)
}

fn line(label: &Label, line: Line) -> &str {
    label.lines.iter().find(|(other, _)| *other == line).map_or("", |(_, text)| text)
}

#[test]
fn a_label_tells_lengths_threads_hands_and_what_may_show() {
    let mut document = sized(2.0, "wide-16", "wide-16");
    document.name = "Demo crawler".to_string();
    document.links[0].ends[0].hand = Some(Hand::Left);
    document.links[0].ends[1].hand = Some(Hand::Right);
    let report = report_on(&document, 0);
    let Some(answer) = report.answer() else { panic!("{report:?}") };
    let told = of(&document, 0, answer, "4x6", System::Inch);
    assert_eq!(line(&told, Line::Code), "ABCD-EFGH-J");
    assert_eq!(line(&told, Line::Rig), "Demo crawler");
    assert_eq!(line(&told, Line::Link), "Front lower links");
    assert_eq!(line(&told, Line::EyeToEye), "Eye to eye 38 in (965.2 mm)");
    assert!(line(&told, Line::Bar).starts_with("Bar about "), "table rod ends: {}", line(&told, Line::Bar));
    assert!(line(&told, Line::EndA).ends_with(" LH") && line(&told, Line::EndB).ends_with(" RH"));
    let most = answer.link.ends[0].stop.visible_threads;
    assert!(most < 10.0);
    assert!(line(&told, Line::MostShowing).contains("threads showing"), "{}", line(&told, Line::MostShowing));
    assert_eq!(told.link.as_deref(), Some(LINK));
    assert_eq!(of(&document, 0, answer, "2x1", System::Inch).link, None, "no room for a code");
}

#[test]
fn every_line_fits_its_label() {
    let mut seen = 0;
    for document in rigs(31, 10) {
        for at in 0..document.links.len() {
            let report = report_on(&document, at);
            let Some(answer) = report.answer() else { continue };
            for size in &SIZES {
                assert!(size.lines.len() <= size.most_lines(), "{} has too many lines", size.id);
                for system in SYSTEMS {
                    let told = of(&document, at, answer, size.id, system);
                    for (line, text) in &told.lines {
                        assert!(text.chars().count() <= size.letters(), "{}, {line:?}: {text:?}", size.id);
                        let cut = text.ends_with('…');
                        assert!(!cut || matches!(line, Line::Rig | Line::Link), "{line:?} is cut short: {text}");
                        seen += 1;
                    }
                    for needed in [Line::Code, Line::EyeToEye, Line::Bar, Line::EndA, Line::EndB, Line::MostShowing] {
                        assert!(!line(&told, needed).is_empty(), "{} lacks {needed:?}", size.id);
                    }
                }
            }
        }
    }
    assert!(seen > 1000, "only {seen} lines");
}

#[test]
fn what_may_show_is_rounded_down() {
    for document in rigs(37, 8) {
        for at in 0..document.links.len() {
            let report = report_on(&document, at);
            let Some(answer) = report.answer() else { continue };
            let told = of(&document, at, answer, "4x6", System::Inch);
            let said = line(&told, Line::MostShowing);
            // Every number in the line is at most what the stop of one of the ends allows.
            let most = answer.link.ends.iter().map(|end| end.stop.visible_threads.max(0.0)).fold(0.0, f64::max);
            let numbers = said
                .split(|c: char| !(c.is_ascii_digit() || c == '/' || c == '-'))
                .filter(|word| word.starts_with(|c: char| c.is_ascii_digit()));
            for word in numbers {
                let value = word.split('-').map(|part| match part.split_once('/') {
                    Some((over, under)) => {
                        over.parse::<f64>().expect("a number") / under.parse::<f64>().expect("a number")
                    }
                    None => part.parse().expect("a number"),
                });
                assert!(value.sum::<f64>() <= most + 1e-5, "{said}: {most}");
            }
        }
    }
}
