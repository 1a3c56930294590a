//! Everything a report shows, gathered so that no number in it is none and no text shows that.

use linkwright::document::Document;
use linkwright::engine::fitting::fitting_steps;
use linkwright::engine::{self, formula::Line, sentence::Phrase, sentence::spoken};
use linkwright::quantity::{System, show};
use linkwright::report::{Answer, Candidate, LinkReport, Report};

/// Everything shown, as text in both systems; every number on the way must be one.
#[derive(Default)]
pub(crate) struct Shown {
    texts: Vec<String>,
    faults: Vec<String>,
}

impl Shown {
    fn number(&mut self, what: &str, value: f64) {
        if !value.is_finite() {
            self.faults.push(format!("{what} is {value}"));
        }
    }

    fn numbers(&mut self, values: &[(&str, f64)]) {
        values.iter().for_each(|(what, value)| self.number(what, *value));
    }

    fn said(&mut self, what: &str, said: &[Phrase]) {
        for piece in said {
            if let Phrase::Value(value, _) | Phrase::Trade(value) = piece {
                self.number(&format!("{piece:?} in “{}” of {what}", spoken(said, System::Inch)), *value);
            }
        }
        self.texts.extend([System::Inch, System::Metric].map(|system| spoken(said, system)));
        if said.is_empty() {
            self.faults.push(format!("{what} says nothing"));
        }
    }

    fn working(&mut self, what: &str, lines: &[Line]) {
        for line in lines {
            match line {
                Line::Worked { formula, given, result } => {
                    let at = format!("{} of {what} from {given:?}", formula.id);
                    given.iter().chain([result]).for_each(|value| self.number(&at, *value));
                    self.texts.push(show(*result, formula.result.kind, System::Inch));
                }
                Line::LookedUp { what: row, value, .. } | Line::Solved { what: row, value, .. } => {
                    self.number(&format!("{row} of {what}"), *value);
                }
                Line::Assumed { input, value, .. } => self.number(input, *value),
                Line::Result(said) | Line::Chose(said) => self.said(what, said),
            }
        }
    }

    fn candidate(&mut self, what: &str, candidate: Option<&Candidate>) {
        if let Some(it) = candidate {
            self.numbers(&[(what, it.outside_diameter), (what, it.wall), (what, it.utilization)]);
        }
    }

    fn answer(&mut self, answer: &Answer, document: &Document, index: usize) {
        let link = &answer.link;
        self.numbers(&[
            ("outside diameter", link.outside_diameter),
            ("bore", link.bore),
            ("length", link.length),
            ("bar", link.bar),
            ("cut", link.cut),
            ("bar weight", link.bar_weight),
            ("per turn", link.adjustment.per_turn),
        ]);
        for turns in [link.adjustment.turns_good, link.adjustment.turns_limit].concat() {
            self.number("turns", turns);
        }
        for reach in link.ends.iter().map(|end| end.reach).chain([link.adjustment.reach]) {
            for room in [reach.out_good, reach.in_good, reach.out_limit, reach.in_limit] {
                self.number("reach", room);
                if room < 0.0 {
                    self.faults.push(format!("room to wind is {room}"));
                }
            }
        }
        for end in &link.ends {
            self.numbers(&[
                ("engagement", end.engagement),
                ("least", end.least),
                ("most", end.most),
                ("visible", end.visible),
                ("visible threads", end.visible_threads),
                ("eye to face", end.eye_to_face),
                ("tapped", end.tapped_depth),
                ("drilled", end.drill_depth),
                ("drill point", end.drill_point),
            ]);
            end.marks.iter().for_each(|mark| self.number(mark.name, mark.length));
        }
        if let Some(flats) = link.flats {
            self.numbers(&[("flats", flats.start), ("flats", flats.length), ("flats", flats.width)]);
        }
        let loads = &answer.loads;
        self.numbers(&[
            ("axial", loads.axial),
            ("axial with strike", loads.axial_with_strike),
            ("strike weight", loads.strike_weight),
            ("drop", loads.drop),
            ("strike", loads.strike),
        ]);
        self.said("the story", &loads.story);
        self.working("the loads", &loads.working);
        for station in engine::along(document, index).stations {
            self.numbers(&[("moment", station.moment), ("strength", station.strength), ("use", station.utilization)]);
        }
        for finding in &answer.findings {
            self.said(finding.id, &finding.says);
            self.working(finding.id, &finding.working);
            finding.utilization.into_iter().chain(finding.station).for_each(|value| self.number(finding.id, value));
        }
        let sizing = &answer.sizing;
        self.said("what governs", &sizing.governs);
        self.candidate("by the numbers", sizing.by_numbers.as_ref());
        self.candidate("recommended", sizing.recommended.as_ref());
        let around = sizing.recommended.as_ref().map(|at| engine::neighbors(document, index, at)).unwrap_or_default();
        around.iter().for_each(|it| self.candidate("beside it", it.as_ref()));
        let firm = engine::firmness(document, index);
        firm.iter()
            .flat_map(|firm| firm.least.into_iter().chain(firm.most).map(|limit| (firm.input, limit)))
            .for_each(|(input, limit)| self.number(input, limit));
        answer.assumed.iter().for_each(|assumed| self.number(assumed.input, assumed.value));
        answer.cautions.iter().for_each(|said| self.said("a caution", said));
        let steps = fitting_steps::steps(document, index, answer);
        steps.iter().for_each(|step| self.said("the checklist", &step.words));
    }

    /// What is wrong with a report, as far as its numbers and words go.
    pub(crate) fn faults(document: &Document, report: &Report) -> Vec<String> {
        let mut shown = Self::default();
        for (index, link) in report.links.iter().enumerate() {
            match link {
                LinkReport::Needs(needs) if needs.is_empty() => shown.faults.push("needs nothing".to_string()),
                LinkReport::Needs(_) => {}
                LinkReport::Impossible(why) => shown.said("why not", why),
                LinkReport::Answer(answer) => shown.answer(answer, document, index),
            }
        }
        for text in &shown.texts {
            let odd = |word: &str| ["NaN", "inf", "—", "∞"].contains(&word.trim_matches([',', '.', ';', '-']));
            // A dash between words is a dash; instead of a number it stands before a unit or by itself.
            if text.split([' ', '\u{a0}']).any(|word| odd(word) && word != "—") || text.trim() == "—" {
                shown.faults.push(format!("shown: {text}"));
            }
        }
        shown.faults
    }
}
