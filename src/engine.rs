//! The engine: a pure function of the document. [`report`] is the door; [`along`], [`neighbors`],
//! [`firmness`], [`in_other_metals`] and [`sensitivity`] are asked only when somebody reads them.

use std::sync::Arc;

mod adjustment;
mod advice;
mod beyond;
mod bolt;
mod build;
mod checks;
mod cross_sections;
mod engagement;
mod firmness;
mod fitted;
pub mod fitting;
pub mod formula;
pub mod formulas;
mod geometry;
mod given;
mod habit;
mod loads;
pub mod math;
mod metals;
pub mod notation;
mod plan;
pub mod plastic;
mod profile;
pub mod reference;
mod rig;
pub mod roots;
mod sensitivity;
pub mod sentence;
pub mod shop;
mod sizing;
pub mod stepped;
pub mod tables;

use self::geometry::Section;
use self::given::{RodEndSpec, Values};
use self::sizing::SizedCandidate;
use crate::document::{Document, OWN_ROD_END};
use crate::engine::sentence::{Said, said};
use crate::inputs::{self, Scope};
use crate::report::{
    Along, Answer, Candidate, FewerSizes, Firmness, InMetal, LinkReport, Part, Plan, Report, RigReport, Sensitivity,
    Verdict, WholeRig,
};

/// Everything that follows from a document. Same document, same report, bit for bit.
pub fn report(document: &Document) -> Report {
    Report { links: (0..document.links.len()).map(|index| link_report(document, index)).collect() }
}

/// Everything about one link. It depends on the rig, on this link and, for an upper link, on whether a track bar is
/// entered at its axle: [`inputs::TRACK_BAR`].
pub fn report_on(document: &Document, index: usize) -> LinkReport {
    link_report(document, index)
}

/// Everything about the rig as a whole, from the reports on its links in their order.
pub fn rig(document: &Document, reports: &[LinkReport]) -> RigReport {
    rig::rig(document, reports)
}

/// Everything about every link and the rig. A link's report rests on the rig, on that link and on which axles have a
/// track bar: with the same of these it is taken over from `before`.
pub fn whole_rig(document: &Document, before: Option<&WholeRig>) -> WholeRig {
    whole_rig_with(document, before, None)
}

/// The same where the report on one link of this document is at hand, so that it is not worked out again.
pub fn whole_rig_with(
    document: &Document,
    before: Option<&WholeRig>,
    at_hand: Option<(usize, &LinkReport)>,
) -> WholeRig {
    let track_bars = |document: &Document| {
        let axles = inputs::places(document, Scope::Axle);
        axles.into_iter().map(|axle| inputs::TRACK_BAR.value(document, axle)).collect::<Vec<_>>()
    };
    let before = before
        .filter(|before| before.document.rig == document.rig && track_bars(&before.document) == track_bars(document));
    let known = |index: usize| {
        if let Some((_, report)) = at_hand.filter(|(of, _)| *of == index) {
            return Some(report.clone());
        }
        let link = document.links.get(index)?;
        let at = before?.document.links.iter().position(|other| other == link)?;
        before?.links.get(at).cloned()
    };
    let links: Vec<LinkReport> =
        (0..document.links.len()).map(|index| known(index).unwrap_or_else(|| link_report(document, index))).collect();
    WholeRig { document: document.clone(), rig: rig::rig(document, &links), plan: plan::plan(document), links }
}

/// Every part of one link, for all its pieces.
pub fn parts(document: &Document, index: usize, answer: &Answer) -> Vec<Part> {
    rig::parts(document, index, answer)
}

/// Ways to buy one rod-end size fewer. Many searches, so only asked when somebody wants to know.
pub fn fewer_sizes(document: &Document, reports: &[LinkReport]) -> Vec<FewerSizes> {
    rig::fewer_sizes(document, reports, report_on)
}

/// Where every link lies, seen from above.
pub fn plan(document: &Document) -> Plan {
    plan::plan(document)
}

/// Bending and strength along one link; empty when there is no answer, or when the compression alone buckles the link.
pub fn along(document: &Document, index: usize) -> Along {
    settled(document, index).map(|(section, joints)| build::along(document, index, section, joints)).unwrap_or_default()
}

/// One size down from a size for one link and one size up, where stock goes that far.
pub fn neighbors(document: &Document, index: usize, of: &Candidate) -> [Option<Candidate>; 2] {
    Values::new(document, index).map_or([None, None], |given| sizing::neighbors(&given, of))
}

/// The job of one link in other metals; empty when there is no answer. Many searches, so only asked when read.
pub fn in_other_metals(document: &Document, index: usize) -> Vec<InMetal> {
    settled(document, index)
        .map(|(section, _)| metals::compare(document, index, section.outside_diameter))
        .unwrap_or_default()
}

/// How each value moves the answer for one link, the strongest first; empty when there is no answer.
pub fn sensitivity(document: &Document, index: usize) -> Vec<Sensitivity> {
    settled(document, index)
        .map(|(section, joints)| sensitivity::rank(document, index, section, joints))
        .unwrap_or_default()
}

/// How far weight, length, drop and grip may each go before one link no longer holds; empty when there is no answer.
/// It takes as long as the answer itself.
pub fn firmness(document: &Document, index: usize) -> Vec<Firmness> {
    settled(document, index)
        .map(|(section, joints)| firmness::firmness(document, index, section, joints))
        .unwrap_or_default()
}

/// The section and the rod ends that a link is answered for.
fn settled(document: &Document, index: usize) -> Option<(Section, [RodEndSpec; 2])> {
    answered(&Values::new(document, index)?, document, index).ok().map(|answered| (answered.section, answered.joints))
}

/// A link that can be answered for, before anything is said about it.
struct Answered {
    search: sizing::Search,
    section: Section,
    joints: [RodEndSpec; 2],
    built: build::Built,
}

/// Settles size and rod ends and asks every question.
///
/// # Errors
/// What is told instead of an answer.
fn answered(given: &Values, document: &Document, index: usize) -> Result<Answered, LinkReport> {
    let mut needs = inputs::still_needed(document, index);
    needs.extend(own_rod_end_needs(given));
    if !needs.is_empty() {
        return Err(LinkReport::Needs(needs));
    }
    if let Some(why) = contradiction(given) {
        return Err(LinkReport::Impossible(why));
    }
    let search = sizing::search(given);
    let Some((section, joints)) = decided(given, &search) else {
        // Nothing could even be laid out: say why for the smallest rod end of all.
        return Err(LinkReport::Impossible(
            sizing::why_nothing_fits(given)
                .unwrap_or_else(|| said!["No link can be made of these entries: check the length and the rod ends."]),
        ));
    };
    let built = build::build(given, section, joints, build::Asked::Everything).map_err(LinkReport::Impossible)?;
    // Without the main question there is no answer worth showing; say what is in the way instead.
    if let Some(finding) = built.judged.main_question_open() {
        return Err(LinkReport::Impossible(finding.says.clone()));
    }
    Ok(Answered { search, section, joints, built })
}

fn link_report(document: &Document, index: usize) -> LinkReport {
    let Some(given) = Values::new(document, index) else { return LinkReport::Needs(Vec::new()) };
    let Answered { search, section, joints, built } = match answered(&given, document, index) {
        Ok(answered) => answered,
        Err(instead) => return instead,
    };
    let build::Built { made, stretches, judged } = built;
    let overridden = search.recommended.as_ref().is_some_and(|recommended| {
        (recommended.section.outside_diameter - section.outside_diameter).abs() > 1e-9
            || (recommended.section.wall - section.wall).abs() > 1e-9
            || recommended.joints[0].thread.id != joints[0].thread.id
            || recommended.joints[1].thread.id != joints[1].thread.id
    });
    let fitted = if search.recommended.is_none() {
        fitted::fitted(&given).and_then(|size| fitted::report(&given, &size))
    } else {
        None
    };
    let weakest = judged.highest(|finding| !finding.rule);
    let verdict = judged.verdict();
    let conditions = judged.conditions();
    let mut loads = judged.loads;
    loads.story = loads::story(&given, &loads);
    let mut answer = Answer {
        role: given.link.role,
        link: made,
        sizing: sizing::sizing(&search, fitted, overridden),
        loads,
        parts: cross_sections::parts(&stretches),
        findings: judged.findings,
        notes: judged.notes,
        weakest,
        verdict,
        conditions,
        beside_7075: None,
        cautions: Vec::new(),
        assumed: given.assumptions(),
    };
    if answer.verdict == Verdict::Bends && !overridden {
        answer.beside_7075 = metals::beside_7075(document, index, section, joints);
    }
    if let Some(recommended) = search.recommended.as_ref().filter(|_| !overridden)
        && answer.has_little_margin()
    {
        let the_bar = answer.weakest_finding().is_none_or(checks::of_the_bar);
        answer.sizing.next_up = sizing::next_up(&given, recommended, the_bar);
    }
    answer.cautions = advice::cautions(&answer, copied_end(&given));
    LinkReport::Answer(Arc::new(answer))
}

/// The end whose rod end is taken to be like the other's, since only that one was picked. Nothing is like a measured one.
fn copied_end(given: &Values) -> Option<usize> {
    match [given.chosen_joint(0), given.chosen_joint(1)] {
        [Some(a), None] if a.id != OWN_ROD_END => Some(1),
        [None, Some(b)] if b.id != OWN_ROD_END => Some(0),
        _ => None,
    }
}

/// Entries that cannot all be true, in a sentence that names them.
fn contradiction(given: &Values) -> Option<Said> {
    for (end, letter) in ["A", "B"].into_iter().enumerate() {
        let readings = [&inputs::OWN_THREAD_LENGTH, &inputs::OWN_EYE_TO_END, &inputs::OWN_BORE];
        let [thread, to_end, bore] = readings.map(|input| given.number_at(input, end));
        if given.link.ends.get(end).is_none_or(|chosen| chosen.rod_end != Some(OWN_ROD_END)) {
            continue;
        }
        if let (Some(thread), Some(to_end), Some(bore)) = (thread, to_end, bore)
            && thread > to_end - bore
        {
            return Some(said![
                "The readings of your rod end at ",
                (letter),
                " cannot be right: a thread of ",
                (thread, FineLength),
                " would reach into an eye whose center is ",
                (to_end, FineLength),
                " from the shank's end, around a hole of ",
                (bore, FineLength),
                ". Measure thread length and eye center to shank end again; they may be swapped."
            ]);
        }
    }
    let (lower, upper) = (given.known(&inputs::LOWER_HEIGHT), given.known(&inputs::UPPER_HEIGHT));
    if given.link.role.drives() && given.number(&inputs::OWN_AXIAL).is_none() && lower >= upper {
        return Some(said![
            "The lower links' mount at ",
            (lower, Length),
            " above the ground must lie below the upper links' at ",
            (upper, Length),
            ": check both heights under Loads."
        ]);
    }
    loads::refusal(given).or_else(|| checks::columns::bent_solid_bar(given))
}

/// The readings still missing for rod ends the user measured.
fn own_rod_end_needs(given: &Values) -> Vec<&'static str> {
    let mut needs = Vec::new();
    for (end, chosen) in given.link.ends.iter().enumerate() {
        if chosen.rod_end != Some(OWN_ROD_END) {
            continue;
        }
        let mut need = |missing: bool, id: &'static str| {
            if missing && !needs.contains(&id) {
                needs.push(id);
            }
        };
        need(chosen.own_thread.is_none(), inputs::OWN_THREAD.id);
        need(given.number_at(&inputs::OWN_EYE_TO_END, end).is_none(), inputs::OWN_EYE_TO_END.id);
        need(given.number_at(&inputs::OWN_THREAD_LENGTH, end).is_none(), inputs::OWN_THREAD_LENGTH.id);
        need(given.number_at(&inputs::OWN_BORE, end).is_none(), inputs::OWN_BORE.id);
    }
    needs
}

/// The section and rod ends to answer for: the user's where decided, else the recommended, else what is fitted where nothing passes.
fn decided(given: &Values, search: &sizing::Search) -> Option<(Section, [RodEndSpec; 2])> {
    let fallback = search.recommended.clone().or_else(|| fitted::fitted(given));
    let base: &SizedCandidate = fallback.as_ref()?;
    let mut section = base.section;
    if let Some(outside_diameter) = given.number(&inputs::OUTSIDE_DIAMETER) {
        section.outside_diameter = outside_diameter;
        if section.wall > 0.0 && given.number(&inputs::WALL).is_none() {
            section = sizing::tube_of(given, outside_diameter).unwrap_or(section);
        }
    }
    if section.wall > 0.0
        && let Some(wall) = given.number(&inputs::WALL)
    {
        section.wall = wall;
    }
    let chosen = [given.chosen_joint(0), given.chosen_joint(1)];
    let joints = match chosen {
        [None, None] if given.number(&inputs::OUTSIDE_DIAMETER).is_some() => {
            sizing::joint_for(given, section).unwrap_or(base.joints)
        }
        [a, b] => {
            // A pick from the table stands for both ends; a measured rod end is that one alone.
            let [like_a, like_b] = [a, b].map(|joint| joint.filter(|joint| joint.id != OWN_ROD_END));
            [a.or(like_b).unwrap_or(base.joints[0]), b.or(like_a).unwrap_or(base.joints[1])]
        }
    };
    Some((section, joints))
}
