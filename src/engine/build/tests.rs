//! What only the inside of the engine shows: a silent answer beside a recorded one, and forces beyond their formulas.

#[path = "../../../tests/dice/mod.rs"]
mod dice;

use super::super::fitted;
use super::*;
use crate::document::{Role, Use};
use crate::engine::tables::rod_ends;
use crate::inputs::At;
use crate::quantity::{inch, lbf};
use dice::Dice;

const SECTION: Section = Section { outside_diameter: inch(2.0), wall: 0.0 };

/// A link of 38 in on a rig of 4,100 lb.
fn document(role: Role) -> Document {
    let mut document = Document::default();
    (document.rig.weight, document.rig.usage) = (Some(lbf(4100.0)), Some(Use::Hard));
    (document.links[0].length, document.links[0].role) = (Some(inch(38.0)), role);
    document
}

fn judged(document: &Document, index: usize, section: Section, asked: Asked) -> Option<Vec<Finding>> {
    let given = Values::new(document, index)?;
    let fallback = rod_ends::find("wide-12").and_then(RodEndSpec::of_table)?;
    let joints = [0, 1].map(|end| given.chosen_joint(end).unwrap_or(fallback));
    build(&given, section, joints, asked).ok().map(|built| built.judged.findings)
}

/// The ids of the checks that came out with a verdict.
fn answered(findings: &[Finding]) -> Vec<&'static str> {
    let answered = |finding: &&Finding| finding.verdict != Verdict::Unanswered;
    findings.iter().filter(answered).map(|finding| finding.id).collect()
}

#[test]
fn what_does_not_rest_on_an_impossible_force_is_answered() {
    for asked in [Asked::EveryQuestion, Asked::Everything] {
        let mut bad = document(Role::Lower);
        let before = judged(&bad, 0, SECTION, asked).unwrap_or_default();
        // Lower links mounted above the upper ones: the formula for their force does not hold.
        let place = At::of_link(&bad, 0);
        for (input, height) in [(&inputs::LOWER_HEIGHT, inch(26.0)), (&inputs::UPPER_HEIGHT, inch(20.0))] {
            (input.set)(&mut bad, place, Some(height));
        }
        let after = judged(&bad, 0, SECTION, asked).unwrap_or_default();
        let answered = answered(&after);
        for id in ["visible-threads", "wall", "bottoming", "holes-meet", "jam-nut-seat"] {
            assert!(answered.contains(&id), "{id} rests on no force: {answered:?}");
            let one = |all: &[Finding]| all.iter().find(|it| it.id == id).map(|it| (it.verdict, it.utilization));
            assert_eq!(one(&before), one(&after), "{id}");
        }
        for id in ["bar-bending", "buckling", "shank-tension", "shank-bending", "engagement", "thread-stripping", "eye"]
        {
            let open = after.iter().find(|it| it.id == id);
            assert!(open.is_some_and(|it| it.verdict == Verdict::Unanswered && !it.says.is_empty()), "{id}: {open:?}");
        }
    }
}

#[test]
fn a_strike_beyond_its_formula_leaves_the_force_along_the_link() {
    let mut bad = document(Role::Lower);
    // Without a weight there is no strike, while the force along the link is entered.
    (bad.rig.weight, bad.links[0].own_axial) = (None, Some(lbf(4000.0)));
    let findings = judged(&bad, 0, SECTION, Asked::EveryQuestion).unwrap_or_default();
    let answered = answered(&findings);
    for id in ["buckling", "shank-tension", "thread-stripping", "engagement", "visible-threads", "wall"] {
        assert!(answered.contains(&id), "{id} rests on no strike: {answered:?}");
    }
    for id in ["bar-bending", "shank-bending", "eye"] {
        assert!(!answered.contains(&id), "{id} rests on the strike: {answered:?}");
    }
}

/// A search must not recommend by other verdicts than the page shows.
#[test]
fn verdicts_are_the_same_silent_or_recorded() {
    let mut dice = Dice(20_260_117);
    let (mut compared, mut conditions) = (0, 0);
    for _ in 0..350 {
        let mut rig = dice.rig();
        (rig.rig.weight, rig.rig.usage) = (rig.rig.weight.or(Some(lbf(4100.0))), rig.rig.usage.or(Some(Use::Hard)));
        for index in 0..rig.links.len().min(4) {
            let link = &mut rig.links[index];
            link.length = link.length.or(Some(inch(24.0 + 4.0 * index as f64)));
            let section = Section { outside_diameter: inch([1.25, 1.5, 1.75, 2.0, 2.5][dice.next(5)]), wall: 0.0 };
            let [silent, recorded] = [Asked::EveryQuestion, Asked::Everything]
                .map(|asked| judged(&rig, index, section, asked).unwrap_or_default());
            assert_eq!(silent.len(), recorded.len());
            for (silent, recorded) in silent.iter().zip(&recorded) {
                assert_eq!(
                    (silent.id, silent.verdict, silent.utilization, silent.to_failure, silent.recommendable),
                    (recorded.id, recorded.verdict, recorded.utilization, recorded.to_failure, recorded.recommendable),
                    "{rig:?}"
                );
                assert_eq!(silent.condition.is_some(), recorded.condition.is_some(), "{}", silent.id);
                conditions += usize::from(recorded.condition.is_some());
            }
            compared += recorded.len();
        }
    }
    assert!(compared > 3000 && conditions >= 10, "{compared} findings, {conditions} on a condition");
}

/// Whoever is told that a check fails is told what would help.
#[test]
fn every_check_has_cures() {
    for check in checks::all() {
        assert!(fitted::CURES.iter().any(|(ids, _)| ids.contains(&check.id)), "{} has no cure", check.id);
    }
}

/// Which checks rest on the lengths of a layout, written out: a force along the link does not.
#[test]
fn what_rests_on_no_length_is_answered_without_one() {
    let mut document = document(Role::SwayLink);
    (document.rig.weight, document.links[0].own_axial) = (None, Some(lbf(900.0)));
    let findings = judged_without_a_length(&document).unwrap_or_default();
    let answered = answered(&findings);
    for id in ["shank-tension", "jam-nut-seat", "wall"] {
        assert!(answered.contains(&id), "{id} rests on no length: {answered:?}");
    }
    for id in ["buckling", "engagement", "thread-stripping", "visible-threads", "bottoming"] {
        assert!(!answered.contains(&id), "{id} rests on lengths: {answered:?}");
    }
}

/// What is judged of a link that was laid out with a length that cannot be.
fn judged_without_a_length(document: &Document) -> Option<Vec<Finding>> {
    let given = Values::new(document, 0)?;
    let rod_end = rod_ends::find("wide-12").and_then(RodEndSpec::of_table)?;
    let laid_out = shape(&given, SECTION, [rod_end; 2], Asked::Everything).ok()?;
    let laid_out = LaidOutLink { out_of_range: Some(said!["a length that cannot be"]), ..laid_out };
    Some(judge(&given, &laid_out, Asked::Everything).findings)
}
