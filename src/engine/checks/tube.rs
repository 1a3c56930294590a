//! Steel tube: it yields, then bends, and only then fails; and what its weld leaves of it.

use super::bar::in_the_hole;
use super::columns;
use super::{Case, Outcome, actions_with, buckles, worst};
use crate::document::Use;
use crate::engine::cross_sections::{CrossSection, Stretch, StretchKind};
use crate::engine::formula::{Line, Sheet};
use crate::engine::formulas::columns::COMPACT_TUBE;
use crate::engine::formulas::{beyond, pins, sections};
use crate::engine::loads;
use crate::engine::plastic;
use crate::engine::sentence::{Said, said};
use crate::engine::stepped::{self, Levers};
use crate::engine::tables::materials::Form;
use crate::inputs;
use crate::quantity;
use crate::quantity::{Kind, inch};
use crate::report::Verdict;

/// Elongation at break from which a steel counts as ductile.
const LEAST_ELONGATION: f64 = 0.05;
/// Share of the hinge moment up to which a tube is said to carry on, and up to which a search recommends it.
const CARRIES_ON: f64 = 0.98;
const RECOMMENDED: f64 = 0.90;
/// Permanent set, as a share of the length, at which builders reject a tube, and up to which a search recommends it.
const REJECTED_SET: f64 = 1.0 / 100.0;
const RECOMMENDED_SET: f64 = 1.0 / 400.0;
/// A bow smaller than this is not worth telling, m.
const LEAST_BOW: f64 = 1e-4;

/// Smaller sets are told as less than this.
const LEAST_SHOWN_SET: f64 = inch(0.001);

/// Whether the bar is a tube that bends long before it breaks: ductile steel, and a wall that does not buckle first.
pub(super) fn is_ductile(case: &Case, section: &CrossSection) -> bool {
    let made = case.made;
    made.material.form == Form::Tube
        && case.strength.elongation.is_some_and(|stretch| stretch >= LEAST_ELONGATION)
        && !quantity::exceeds(
            made.outside_diameter / made.wall,
            COMPACT_TUBE.value(&[made.material.modulus_compression, section.yield_compression]),
        )
}

/// Whether nothing else holds the axle or the wheels: such a tube is scrap once it is bent.
fn no_bend_band(case: &Case) -> bool {
    inputs::has_no_second_path(case.given.link.role)
}

/// Factor in the loads with which a stretch of tube is judged: none where it bends before it breaks. Beside a weld there
/// is no bend band either way, but a link with nothing behind it keeps the factor.
pub(in crate::engine) fn factor(case: &Case, stretch: &Stretch) -> f64 {
    let usual = case.given.known(&inputs::YIELD_FACTOR);
    match stretch.kind {
        StretchKind::Tube if is_ductile(case, &stretch.section) => 1.0,
        StretchKind::Weld if !no_bend_band(case) => 1.0,
        _ => usual,
    }
}

/// Bending at mid-span. Yielding is judged without a factor, since steel gives its warning by bending; with the factor
/// the tube passes outright.
pub(super) fn bending(case: &Case, section: CrossSection, sheet: &mut Sheet) -> Outcome {
    let middle = case.made.length / 2.0;
    let factor = case.given.known(&inputs::YIELD_FACTOR);
    let levers = Levers::new(case.compression_steps, case.axial_with_strike());
    let Some(actions) = actions_with(case, middle, 1.0, &levers, sheet) else { return buckles(case, sheet) };
    let (used, stress) = worst(&section, &actions, sheet);
    sheet.choose(|| said!["The same with the factor on yield in all loads, which decides whether it passes outright:"]);
    let Some(factored) = actions_with(case, middle, factor, case.levers, sheet) else { return buckles(case, sheet) };
    let (with_factor, _) = worst(&section, &factored, sheet);
    let yielding = section.yield_compression.min(section.yield_tension);
    sheet.choose(|| {
        said!["With the factor on yield in all loads it would be ", (with_factor, Percent), " of its yield strength."]
    });
    if case.strike() <= 0.0 {
        let says = sheet.remark(|| {
            said![
                "No strike is assumed. In tension and compression, without a factor, the tube works at ",
                (stress, Stress),
                "; it yields at ",
                (yielding, Stress),
                "."
            ]
        });
        let verdict = if quantity::exceeds(with_factor, 1.0) { Verdict::Close } else { Verdict::Passes };
        return Outcome {
            verdict: Some(verdict),
            recommendable: !no_bend_band(case) || verdict == Verdict::Passes,
            ..Outcome::new(used, Some(middle), says)
        };
    }
    let hinge = hinge(case, &section, actions.in_compression, sheet);
    let set = if quantity::exceeds(used, 1.0) { permanent_set(case, &section, &levers, sheet) } else { 0.0 };
    let length = case.made.length;
    // Bent, the link must hold in compression once more.
    let column = if set > 0.0 && set.is_finite() { columns::used_after_set(case, &section, set, sheet) } else { 0.0 };
    let to_failure = if no_bend_band(case) {
        used
    } else {
        (hinge.share / CARRIES_ON).max(set / (REJECTED_SET * length)).max(column)
    };
    let verdict = if !quantity::exceeds(with_factor, 1.0) {
        Verdict::Passes
    } else if !quantity::exceeds(used, 1.0) {
        Verdict::Close
    } else {
        Verdict::Bends
    };
    let gentle = matches!(case.given.document.rig.usage, Some(Use::Easy | Use::Slow));
    let small_bend =
        gentle && !quantity::exceeds(hinge.share, RECOMMENDED) && !quantity::exceeds(set, RECOMMENDED_SET * length);
    let recommendable = match verdict {
        Verdict::Passes => true,
        Verdict::Close => !no_bend_band(case),
        _ => !no_bend_band(case) && small_bend,
    };
    let fails = quantity::exceeds(to_failure, 1.0);
    let bow = if fails && sheet.is_recording() { bow_by_energy(case, hinge, sheet) } else { Bow::NotTold };
    let bent = Bent { column, bow, stress, yielding, set, hinge };
    let says = sheet.remark(|| if fails { bent.fails(case) } else { bent.carries_on(case, verdict) });
    Outcome {
        to_failure: Some(if to_failure.is_nan() { f64::INFINITY } else { to_failure }),
        verdict: Some(verdict),
        recommendable,
        ..Outcome::new(used, Some(middle), says)
    }
}

/// The plastic hinge that would form at mid-span.
#[derive(Clone, Copy)]
struct Hinge {
    /// Strike that forms it.
    strike: f64,
    /// Moment of the strike over that of the hinge.
    share: f64,
}

fn hinge(case: &Case, section: &CrossSection, moment: f64, sheet: &mut Sheet) -> Hinge {
    let modulus = sheet.work(&sections::RING_PLASTIC_MODULUS, &[case.made.outside_diameter, case.made.bore]);
    let yielding = section.yield_compression.min(section.yield_tension);
    let axial = case.axial_with_strike();
    let most = sheet.work(&beyond::HINGE_MOMENT, &[yielding, modulus, axial, section.area]);
    let strike = sheet.work(&beyond::HINGE_STRIKE, &[case.strike(), most, moment]);
    Hinge { strike, share: sheet.work(&pins::MOMENT_SHARE, &[moment, most]) }
}

fn permanent_set(case: &Case, section: &CrossSection, levers: &Levers, sheet: &mut Sheet) -> f64 {
    let tube = plastic::Tube {
        outside_diameter: case.made.outside_diameter,
        bore: case.made.bore,
        modulus: section.modulus_tension,
        yield_strength: section.yield_compression.min(section.yield_tension),
    };
    let (length, strike) = (case.made.length, case.strike());
    let set = tube.permanent_set(length, case.axial_with_strike(), |x| strike * levers.moment(x, length / 2.0));
    if set.is_infinite() {
        sheet.choose(|| said!["Under this moment the section turns into a hinge, so no permanent set can be given."]);
        return set;
    }
    sheet.record(|| Line::Solved {
        what: "Permanent set at mid-span",
        value: set,
        kind: Kind::FineLength,
        how: "the plastic part of the curvature, elastic-perfectly-plastic with the compression balanced at each place, summed against the moment of a unit load at mid-span",
    });
    set
}

/// What the energy of the hit leaves beside the permanent set.
#[derive(Clone, Copy)]
enum Bow {
    /// The hinge does not even hold the weight at rest.
    CollapsesUnderItsWeight,
    /// A bow, m.
    About(f64),
    /// No hinge forms, the strike is the user's own, or the bow comes to next to nothing while the set is large already.
    NotTold,
}

fn bow_by_energy(case: &Case, hinge: Hinge, sheet: &mut Sheet) -> Bow {
    let weight = case.loads.strike_weight;
    if case.given.number(&inputs::OWN_STRIKE).is_some() || hinge.share <= 1.0 {
        return Bow::NotTold;
    }
    if hinge.strike <= weight {
        return Bow::CollapsesUnderItsWeight;
    }
    let link = stepped::deflection_per_force(case.bending, case.made.length / 2.0);
    let rest = loads::rest_compliance(case.given, sheet);
    let deflection = sheet.work(&beyond::HINGE_DEFLECTION, &[hinge.strike, link, rest]);
    let bow = sheet.work(&beyond::BOW_BY_ENERGY, &[weight, case.loads.drop, deflection, hinge.strike]);
    if bow > LEAST_BOW { Bow::About(bow) } else { Bow::NotTold }
}

struct Bent {
    column: f64,
    bow: Bow,
    stress: f64,
    yielding: f64,
    set: f64,
    hinge: Hinge,
}

impl Bent {
    fn carries_on(&self, case: &Case, verdict: Verdict) -> Said {
        let hinge = said![
            " A plastic hinge forms at ",
            (self.hinge.strike, Force),
            ", ",
            (self.hinge.strike / case.loads.strike, Ratio),
            " times the hit."
        ];
        let mut says = match verdict {
            Verdict::Passes => said![
                "The hit works the tube at ",
                (self.stress, Stress),
                " without a factor; it yields at ",
                (self.yielding, Stress),
                "."
            ],
            Verdict::Close => said![
                "The hit works the tube at ",
                (self.stress, Stress),
                "; it yields at ",
                (self.yielding, Stress),
                ". It stays straight, with no reserve."
            ],
            _ => said![
                "The hit takes the tube past its yield strength of ",
                (self.yielding, Stress),
                ": it keeps a permanent set of ",
                (if self.set < LEAST_SHOWN_SET { "less than " } else { "" }),
                (self.set.max(LEAST_SHOWN_SET), FineLength),
                " and carries on."
            ],
        };
        says.extend(hinge);
        if verdict == Verdict::Bends {
            says.extend(said![" The set grows fast from there: check it with a string after every hard day."]);
        }
        says
    }

    fn fails(&self, case: &Case) -> Said {
        if no_bend_band(case) {
            return said![
                "The loads take the tube to ",
                (self.stress, Stress),
                ", past its yield strength of ",
                (self.yielding, Stress),
                ": it bends, and a bent steering link or track bar is scrap."
            ];
        }
        let mut says = said![
            "The hit of ",
            (case.loads.strike, Force),
            " bends the tube too far: a plastic hinge forms at ",
            (self.hinge.strike, Force),
            "."
        ];
        says.extend(match self.bow {
            Bow::CollapsesUnderItsWeight => said![" It collapses under the weight alone."],
            Bow::About(bow) => said![" By energy the hit leaves a bow of about ", (bow, FineLength), "."],
            // Just above the hinge that comes to next to nothing, while the permanent set is large already.
            Bow::NotTold if self.set.is_finite() && self.set > 0.0 => {
                said![" The permanent set is ", (self.set, FineLength), "."]
            }
            Bow::NotTold => said![" The permanent set is over ", (REJECTED_SET * case.made.length, FineLength), "."],
        });
        if quantity::exceeds(self.column, 1.0) {
            says.extend(said![" Bent like that, it no longer carries its largest compression."]);
        }
        says
    }
}

/// Beside the weld of an insert the tube has no bend band: all strain would gather there.
pub(super) fn beside_weld(case: &Case, sheet: &mut Sheet) -> Outcome {
    let Some(section) = case.stock.welded(sheet) else {
        return Outcome::unanswered(said![
            "No published strength beside a weld is held for this tube, so its ends cannot be judged."
        ]);
    };
    let factor = if no_bend_band(case) { case.given.known(&inputs::YIELD_FACTOR) } else { 1.0 };
    let levers = Levers::new(case.compression_steps, factor * case.axial_with_strike());
    let welded = |_: &_, _: &mut Sheet| section;
    let yielding = section.yield_compression.min(section.yield_tension);
    let outcome = in_the_hole(case, sheet, factor, &levers, &[(|end| end.tapped_depth, &welded)], |stress| {
        said![
            "Where the threaded insert is welded in, the tube works at ",
            (stress, Stress),
            "; beside the weld it yields at ",
            (yielding, Stress),
            "."
        ]
    });
    let instead = case.stock.beside_weld.map(|row| ("Tube beside its weld", row.cite));
    Outcome { part: Some("tube beside its weld"), instead, ..outcome }
}
