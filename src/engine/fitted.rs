//! What is fitted where no stock size passes: by common practice, else the largest; what it is good to, what yields
//! first, and what would help.

use super::build::{self, Asked, Limit, build};
use super::given::Values;
use super::habit;
use super::roots::last_good;
use super::sentence::{Said, said};
use super::sizing::{self, SizedCandidate};
use super::tables::materials::Form;
use super::tables::practice::class;
use super::tables::{rod_ends, threads};
use crate::document::OWN_ROD_END;
use crate::inputs;
use crate::quantity::exceeds;
use crate::quantity::ksi;
use crate::report::{Finding, Fitted, Verdict};

/// What is fitted where nothing passes, so that it can be laid out and judged.
pub(super) fn fitted(given: &Values) -> Option<SizedCandidate> {
    let sized = habit::trade(given).filter(|trade| !trade.is_of_rod_ends());
    sized.and_then(|trade| sizing::usual_or_better(given, &trade)).or_else(|| sizing::largest(given))
}

/// What is to be told of it.
pub(super) fn report(given: &Values, size: &SizedCandidate) -> Option<Fitted> {
    let judged = build(given, size.section, size.joints, Asked::EveryQuestion).ok()?.judged;
    // A rule of thumb counts only when it is broken.
    let counts = |finding: &Finding| !finding.rule || finding.verdict == Verdict::Fails;
    let weakest = judged.findings.get(judged.highest(counts)?)?;
    let over = |finding: &&Finding| counts(finding) && finding.utilization.is_some_and(|used| exceeds(used, 1.0));
    let too_weak = judged.findings.iter().filter(over).filter(|finding| finding.id != weakest.id);
    Some(Fitted {
        habit: habit::trade(given),
        candidate: size.candidate.clone(),
        good_to: good_to(given, size),
        yields_first: weakest.part,
        verdict: judged.verdict(),
        cures: cures(given, size, weakest, &too_weak.collect::<Vec<_>>()),
        strengths_end: sizing::strengths_end_after(given, size.section),
    })
}

/// The heaviest rig this size passes on, with everything else as it is.
fn good_to(given: &Values, size: &SizedCandidate) -> Option<f64> {
    let shape = build::shape(given, size.section, size.joints, Asked::EveryQuestion).ok()?;
    let mut trial = given.document.clone();
    let over = |weight: f64| {
        (inputs::WEIGHT.set)(&mut trial, given.place, Some(weight));
        Values::new(&trial, given.place.link).map_or(f64::INFINITY, |given| build::over(&given, &shape, Limit::Passing))
    };
    last_good(given.known(&inputs::WEIGHT), inputs::WEIGHT.least, over)
}

/// Why this size, where nothing passes.
pub(super) fn governs(fitted: &Fitted) -> Said {
    let candidate = &fitted.candidate;
    let mut says = if fitted.verdict < Verdict::Bends {
        said!["No stock size passes every check without a condition. "]
    } else {
        said!["No stock size passes every check with these entries. "]
    };
    match &fitted.habit {
        Some(habit) => {
            says.extend(said!["Builders usually fit "]);
            says.extend(habit.words.clone());
            if !habit::is_usual(candidate.size(), candidate.thread, habit) {
                says.extend(said!["; the nearest to passing here is "]);
                says.extend(habit::named(candidate.size(), candidate.thread));
            }
        }
        None => {
            says.extend(said!["There is no common practice for this link in this metal; the largest in stock is "]);
            says.extend(habit::named(candidate.size(), candidate.thread));
        }
    }
    if let Some(ends) = &fitted.strengths_end {
        says.extend(said![", and "]);
        says.extend(ends.clone());
    }
    says.extend(said![". What yields first on it: ", (fitted.yields_first)]);
    if candidate.utilization.is_finite() {
        says.extend(said![", at ", (candidate.utilization, Percent), " utilization"]);
    }
    match fitted.good_to {
        Some(weight) => says.extend(said![". It is good to a rig of ", (weight, Weight), " used like this."]),
        None => says.extend(said![". It passes at no rig weight that can be entered."]),
    }
    for (index, cure) in fitted.cures.iter().enumerate() {
        says.extend(if index == 0 { said![" What would help, in this order: "] } else { said!["; "] });
        says.extend(cure.clone());
    }
    says.extend(said!["."]);
    says
}

/// Something that would help.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(super) enum Cure {
    LargerRodEnd,
    ShorterNeck,
    HeatTreated,
    HigherRating,
    LongerShank,
    FewerThreads,
    LargerBar,
    LargerBarOrSteel,
    ThickerWall,
    SmallerRodEnd,
    MilderFlats,
    ShorterLink,
    StraighterRoute,
    LongerLink,
    LongerLinkALittle,
    StrongerMetal,
    LargerBolt,
    StrongerBolt,
    ShorterSpacers,
    ThickerEars,
    HoleDepth,
    MoreTilt,
    LessFlex,
    Milder,
}

/// What helps when a check governs, the most helpful first. A shorter link or a stiffer metal does not help a shank, so
/// neither stands there.
pub(super) static CURES: &[(&[&str], &[Cure])] = &[
    (
        &["shank-bending"],
        &[Cure::LargerRodEnd, Cure::ShorterNeck, Cure::HeatTreated, Cure::Milder, Cure::LongerLinkALittle],
    ),
    (&["shank-tension"], &[Cure::LargerRodEnd, Cure::HeatTreated, Cure::Milder]),
    (&["eye"], &[Cure::LargerRodEnd, Cure::HeatTreated, Cure::Milder]),
    (&["maker-rating"], &[Cure::LargerRodEnd, Cure::HigherRating, Cure::Milder]),
    (&["engagement", "thread-stripping"], &[Cure::LongerShank, Cure::FewerThreads, Cure::LargerRodEnd, Cure::Milder]),
    (&["visible-threads"], &[Cure::FewerThreads]),
    (&["bar-bending", "tapped-end"], &[Cure::LargerBar, Cure::ShorterLink, Cure::StrongerMetal, Cure::Milder]),
    (&["wrench-flats"], &[Cure::MilderFlats, Cure::LargerBar, Cure::ShorterLink, Cure::StrongerMetal, Cure::Milder]),
    (&["bent-bar"], &[Cure::StraighterRoute, Cure::LargerBar, Cure::StrongerMetal, Cure::Milder]),
    (&["compression-yield"], &[Cure::LargerRodEnd, Cure::HeatTreated, Cure::LargerBar, Cure::Milder]),
    (&["buckling"], &[Cure::LargerBarOrSteel, Cure::ShorterLink, Cure::Milder]),
    (&["thin-tube"], &[Cure::ThickerWall]),
    (&["wall", "jam-nut-seat"], &[Cure::LargerBar, Cure::SmallerRodEnd]),
    (&["bolt-shear", "bolt-bending"], &[Cure::LargerBolt, Cure::StrongerBolt, Cure::ShorterSpacers, Cure::Milder]),
    (&["ear-bearing"], &[Cure::ThickerEars, Cure::LargerBolt, Cure::Milder]),
    (&["holes-meet", "bottoming"], &[Cure::HoleDepth, Cure::LongerLink]),
    (&["misalignment"], &[Cure::MoreTilt, Cure::LessFlex]),
];

/// What helps. Where several checks are over their limits, first what cures each, taken together, then only what helps all
/// of them.
fn cures(given: &Values, size: &SizedCandidate, weakest: &Finding, others: &[&Finding]) -> Vec<Said> {
    let news = |cure: &Cure| words(*cure, given, size).is_some();
    let first = |finding| listed(finding).iter().copied().find(news);
    let firsts: Vec<Cure> = std::iter::once(weakest).chain(others.iter().copied()).filter_map(first).collect();
    let mut together: Vec<&'static str> = Vec::new();
    for cure in firsts.iter().filter(|cure| !firsts.iter().any(|other| other.brings(**cure))) {
        together.extend(words(*cure, given, size).filter(|words| !together.contains(words)));
    }
    let helps_all = |cure: &&Cure| others.iter().all(|finding| listed(finding).contains(cure));
    let rest = listed(weakest).iter().filter(helps_all).filter_map(|cure| words(*cure, given, size));
    let rest = rest.filter(|words| !together.contains(words));
    std::iter::once(said![(together.join(" and "))]).chain(rest.map(|words| said![(words)])).collect()
}

impl Cure {
    /// Whether another cure comes with this one: larger rod ends have longer shanks and larger bolts.
    fn brings(self, other: Self) -> bool {
        match self {
            Self::LargerBar => other == Self::MilderFlats,
            Self::LargerBarOrSteel => matches!(other, Self::LargerBar | Self::MilderFlats),
            Self::LargerRodEnd => {
                matches!(other, Self::LongerShank | Self::FewerThreads | Self::LargerBolt | Self::HigherRating)
            }
            _ => false,
        }
    }
}

/// The cures of a check, the most helpful first.
fn listed(finding: &Finding) -> &'static [Cure] {
    CURES.iter().find(|(ids, _)| ids.contains(&finding.id)).map_or(&[Cure::Milder][..], |(_, cures)| *cures)
}

/// Aluminum is below this modulus and steel above it.
const STEEL_FROM: f64 = ksi(20e3);

/// The cure where the metal's published strengths end before its stock does.
const ANOTHER_METAL: &str = "another metal, one whose strength is published for a larger size";

/// A cure in words; `None` where it is no news.
fn words(cure: Cure, given: &Values, size: &SizedCandidate) -> Option<&'static str> {
    let (tube, largest) = (given.material().form == Form::Tube, sizing::is_largest(given, size.section));
    let end_of_strengths = largest && sizing::strengths_end_after(given, size.section).is_some();
    let words = match cure {
        Cure::LargerRodEnd => larger_rod_end(given, size),
        Cure::ShorterNeck => "fewer threads showing or a rod end with a shorter neck",
        Cure::HeatTreated if !exceeds(inputs::ALLOY_YIELD, given.shank_yield(0)) => return None,
        Cure::HeatTreated => "rod ends of heat-treated alloy",
        Cure::HigherRating => "a rod end with a higher rating",
        Cure::LongerShank => "a rod end with a longer threaded shank",
        Cure::FewerThreads => "fewer threads showing",
        Cure::LargerBar if end_of_strengths => ANOTHER_METAL,
        Cure::LargerBar if largest && tube => "a larger tube than is stocked",
        Cure::LargerBar if largest => "a larger bar than is stocked",
        Cure::LargerBar if tube => "a larger tube",
        Cure::LargerBarOrSteel if given.material().modulus_compression < STEEL_FROM => "a larger bar, or steel",
        Cure::LargerBar | Cure::LargerBarOrSteel => "a larger bar",
        Cure::ThickerWall => "a thicker wall",
        Cure::SmallerRodEnd => "a smaller rod end",
        Cure::MilderFlats => "wider or no wrench flats",
        Cure::ShorterLink => "a shorter link",
        Cure::StraighterRoute => "a straighter route, so that the bar bends less",
        Cure::LongerLink => "a longer link",
        Cure::LongerLinkALittle => "a longer link or a more flexible bar, which helps a little",
        Cure::StrongerMetal => "a stronger metal",
        Cure::LargerBolt => "a larger bolt",
        Cure::StrongerBolt => "a stronger bolt",
        Cure::ShorterSpacers => "shorter spacers",
        Cure::ThickerEars => "thicker bracket ears",
        Cure::HoleDepth => "another depth of the threaded holes",
        Cure::MoreTilt => "rod ends or spacers that let the ball tilt further",
        Cure::LessFlex => "less travel of the axle",
        Cure::Milder => "gentler use or a lighter rig",
    };
    Some(words)
}

/// A larger rod end, as far as the series and the bars that can be judged go.
fn larger_rod_end(given: &Values, size: &SizedCandidate) -> &'static str {
    let (family, now) = (given.family(), habit::smaller_class(&size.joints));
    let series = rod_ends::ALL.iter().filter(|row| row.family == family).filter_map(|row| threads::find(row.thread));
    let mut larger = series.filter(|thread| class(thread) > now).peekable();
    if given.link.ends.iter().any(|end| end.rod_end == Some(OWN_ROD_END)) {
        "a larger rod end"
    } else if larger.peek().is_none() {
        "a larger rod end than this series has"
    } else if !larger.any(|thread| size.section.takes(thread)) && sizing::is_largest(given, size.section) {
        ANOTHER_METAL
    } else {
        "a larger rod end"
    }
}
