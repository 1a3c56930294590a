//! After a hit: from what was seen and measured on one link, whether it may be driven, may limp home, or must stop.
//!
//! A bend in a steel tube is weighed as a bowed column and as a bent bar, both with the whole bow: what was measured, and
//! what no straight bar is free of. Everything else goes by looks, and the rules
//! for those are common practice: nobody publishes them for links.

mod looks;

use super::Standing;
use crate::document::{Document, Role};
use crate::engine::formula::{Line, Sheet};
use crate::engine::formulas::{bent, pins};
use crate::engine::sentence::{Said, said};
use crate::engine::tables::materials::Form;
use crate::engine::{build, settled};
use crate::inputs;
use crate::quantity::{self, inch};
use crate::report::{Answer, Verdict};
use crate::source::{Cite, OURS, Obtained, PRACTICE, cite};

pub use crate::engine::checks::bowed::{BowedBar, WithBow};
pub use looks::{DEEP_DENT, Look, SMALL_DENT};

/// A gap under a string that a tape cannot tell from none, m: its error.
pub const LEAST_SEEN: f64 = inch(1.0 / 32.0);
/// Bow over the length of the string at which builders reject a tube.
pub const REJECTED_BOW: f64 = 0.01;
/// The shortest string, as a share of eye to eye, that still tells the bow of the whole.
const SHORTEST_STRING: f64 = 0.5;
/// Share of its hinge moment up to which a bent tube is said to stand the next full hit.
const STANDS: f64 = 0.98;
/// How much a bow may grow on the way home, m: twice what a tape can miss.
pub const GROWN: f64 = inch(1.0 / 16.0);

const RULE: Cite = cite(&PRACTICE, "", Obtained::Practice);
const CHOICE: Cite = cite(&OURS, "no limit is published for links", Obtained::Assumption);

/// How a bar was scratched.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Gouge {
    /// Not at all.
    None,
    /// A fingernail slides over it.
    Blunt,
    /// Its edge catches a fingernail.
    Sharp,
}

/// What was seen and measured on a link after a hit; none where nobody looked. Lengths SI.
#[derive(Debug, Clone, Copy, PartialEq, Default)]
pub struct HitReadings {
    /// Deepest gap between the bar and a string stretched along it.
    pub bow: Option<f64>,
    /// Length of that string; the bar where it is not told.
    pub bow_span: Option<f64>,
    /// Whether a bend showed when the bar was turned or rolled.
    pub bend_seen: Option<bool>,
    /// Whether it has a kink, a wrinkle or a flat.
    pub kink: Option<bool>,
    /// Whether a crack shows.
    pub crack: Option<bool>,
    /// How it is scratched.
    pub gouge: Option<Gouge>,
    /// Depth of the deepest dent, 0 for none.
    pub dent: Option<f64>,
    /// Whether a shank is bent.
    pub shank_bent: Option<bool>,
    /// Whether a rod end's head is stretched, dented or cracked, or its ball sits loose or out.
    pub head: Option<bool>,
    /// Whether an eye no longer sits square to its bracket.
    pub eye_turned: Option<bool>,
    /// Whether a jam nut is loose, or a paint line across one is broken.
    pub nut_loose: Option<bool>,
    /// Whether a bolt, a bracket or a weld is damaged.
    pub mount_damaged: Option<bool>,
    /// Whether a joint knocks.
    pub play: Option<bool>,
    /// Whether something stands in a field that cannot be read.
    pub unreadable: bool,
}

/// What one look came to.
#[derive(Debug, Clone, PartialEq)]
pub struct Found {
    /// Which look.
    pub look: Look,
    /// How it stands by that alone.
    pub standing: Standing,
    /// What was found, and what follows.
    pub says: Said,
    /// Where the rule comes from.
    pub source: Cite,
}

/// Whether a link may be driven after a hit.
#[derive(Debug, Clone, PartialEq)]
pub struct AfterHit {
    /// The whole: a stop before all, then what is still to be looked at, then the worst of the looks.
    pub standing: Standing,
    /// What to do now.
    pub next: Said,
    /// Each look that was taken, the worst first.
    pub found: Vec<Found>,
    /// The looks that are still missing.
    pub missing: Vec<Look>,
    /// On what conditions it may limp home; empty for any other standing.
    pub limits: Vec<Said>,
    /// What the bow leaves of it, where one was measured.
    pub left: Option<WithBow>,
    /// Compression at which it buckled when it was straight.
    pub straight: Option<f64>,
    /// How the numbers came out.
    pub working: Vec<Line>,
}

/// The bar of a link as a bow is judged on it; none where its forces cannot be told. It takes as long as the answer.
pub fn bowed_bar(document: &Document, index: usize) -> Option<BowedBar> {
    let (section, joints) = settled(document, index)?;
    build::bowed_bar(document, index, section, joints)
}

/// What is known of the link that was hit.
struct Hit<'a> {
    answer: &'a Answer,
    bar: Option<&'a BowedBar>,
    readings: &'a HitReadings,
    /// Whether nothing else holds the axle or the wheels.
    critical: bool,
    /// Whether it is a tube that bends long before it breaks.
    ductile: bool,
}

/// Judges a link after a hit.
pub fn after_hit(answer: &Answer, bar: Option<&BowedBar>, readings: &HitReadings) -> AfterHit {
    let material = answer.link.material;
    let hit = Hit {
        answer,
        bar,
        readings,
        critical: inputs::has_no_second_path(answer.role),
        ductile: material.form == Form::Tube && material.ductile && bar.is_some_and(|bar| bar.ductile),
    };
    let mut sheet = Sheet::recording();
    let bow = hit.bow(&mut sheet);
    let left = bow.as_ref().and_then(|bow| Some(bar?.with_bow(bow.between_eyes, &mut sheet)));
    let mut found: Vec<Found> = Vec::new();
    let mut missing = Vec::new();
    for look in Look::ALL {
        let one = if look == Look::Bend { hit.bend(bow.as_ref(), left.as_ref()) } else { hit.look(look) };
        match one {
            Some(one) => found.push(one),
            None => missing.push(look),
        }
    }
    found.extend(hit.fails_undamaged());
    if readings.unreadable {
        let says = said!["A reading cannot be read: type it again."];
        found.push(Found { look: Look::Reading, standing: Standing::NotJudged, says, source: CHOICE });
    }
    found.sort_by_key(|found| std::cmp::Reverse(found.standing));
    let worst = found.iter().map(|found| found.standing).max().unwrap_or(Standing::NotJudged);
    let open = !missing.is_empty() || found.iter().any(|found| found.standing == Standing::NotJudged);
    // A limp home is only spoken of once everything that would forbid it was looked at.
    let standing = if worst != Standing::Stop && open { Standing::NotJudged } else { worst };
    // What a wrench puts right is no reason to throw the link away.
    let mut stops = found.iter().filter(|found| found.standing == Standing::Stop);
    let tightened = standing == Standing::Stop && stops.all(|found| matches!(found.look, Look::Nut | Look::Eye));
    AfterHit {
        standing,
        next: if tightened { tighten() } else { hit.next(standing) },
        limits: if standing == Standing::Watch { hit.limits(left.as_ref()) } else { Vec::new() },
        found,
        missing,
        straight: left.and_then(|_| bar.map(|bar| bar.straight)),
        left,
        working: sheet.lines,
    }
}

/// What to do where nothing but a nut or an eye keeps it from being driven.
fn tighten() -> Said {
    said![
        "Do not drive it like this. Square the eyes, read both ends under “Is it still safe?”, tighten both jam nuts, then answer this again."
    ]
}

/// A bow that was measured.
struct Bow {
    /// Deepest gap under the string, the least that can be told where a bend was seen without one.
    gap: f64,
    /// That over the length of the string.
    share: f64,
    /// From eye to eye.
    between_eyes: f64,
}

impl Hit<'_> {
    /// Length of the string; none where no such string can be stretched along this link.
    fn string(&self) -> Option<f64> {
        let link = &self.answer.link;
        let string = self.readings.bow_span.unwrap_or(link.bar);
        let fits =
            string.is_finite() && string >= SHORTEST_STRING * link.bar && !quantity::exceeds(string, link.length);
        fits.then_some(string)
    }

    /// The gap that was read; none where it is no reading.
    fn gap(&self) -> Option<f64> {
        self.readings.bow.filter(|gap| gap.is_finite() && *gap >= 0.0)
    }

    /// A gap that was read and that a string cannot tell from none.
    fn least_gap(&self) -> Option<f64> {
        self.gap().filter(|gap| *gap > 0.0 && !self.is_bent_by_design())
    }

    /// What such a gap comes to: nothing that steers or holds the axle sideways is passed with one.
    fn within_a_string(&self, gap: f64) -> Option<Found> {
        let (standing, says) = if self.critical {
            let says = said![
                (gap, FineLength),
                " of gap: check it against a straightedge; if it is there, scrap it. If it is not, enter 0."
            ];
            (Standing::NotJudged, says)
        } else {
            (Standing::Good, said![(gap, FineLength), " of gap is within what a string can tell."])
        };
        Some(Found { look: Look::Bend, standing, says, source: RULE })
    }

    /// Whether the bar is bent by design, so that a string tells nothing.
    fn is_bent_by_design(&self) -> bool {
        self.bar.is_some_and(|bar| bar.offset > 0.0)
    }

    /// Whether a bend shows, by string or by eye; none where neither was tried.
    fn shows_a_bend(&self) -> Option<bool> {
        let by_string = self.gap().filter(|_| !self.is_bent_by_design()).map(|gap| quantity::exceeds(gap, LEAST_SEEN));
        match (by_string, self.readings.bend_seen) {
            (Some(true), _) | (_, Some(true)) => Some(true),
            (Some(false), _) | (_, Some(false)) => Some(false),
            (None, None) => None,
        }
    }

    fn bow(&self, sheet: &mut Sheet) -> Option<Bow> {
        if self.shows_a_bend() != Some(true) || self.is_bent_by_design() {
            return None;
        }
        let (gap, string) = (self.gap()?.max(LEAST_SEEN), self.string()?);
        let share = sheet.work(&pins::LENGTH_SHARE, &[gap, string]);
        let between_eyes = sheet.work(&bent::BOW_BETWEEN_EYES, &[gap, self.answer.link.length, string]);
        Some(Bow { gap, share, between_eyes })
    }

    fn bend(&self, bow: Option<&Bow>, left: Option<&WithBow>) -> Option<Found> {
        let found = |standing, says, source| Some(Found { look: Look::Bend, standing, says, source });
        let unread = self.readings.bow.is_some() && self.gap().is_none();
        if unread && self.readings.bend_seen != Some(true) {
            return None;
        }
        if !self.shows_a_bend()? {
            if let Some(gap) = self.least_gap() {
                return self.within_a_string(gap);
            }
            return found(
                Standing::Good,
                said!["No bend that shows. A string and a tape tell no less than ", (LEAST_SEEN, FineLength), "."],
                RULE,
            );
        }
        if self.critical {
            let says = match self.answer.role {
                Role::TrackBar => {
                    said!["The track bar is bent. Bent track bars are scrap, and nothing else holds the axle sideways."]
                }
                _ => said!["A steering link is bent. Bent steering parts are scrap, however small the bend."],
            };
            return found(Standing::Stop, says, RULE);
        }
        if !self.ductile {
            let says = said![
                "The bar is bent for good. In ",
                (self.answer.link.material.label),
                " any bend that stays may have started a crack: replace it."
            ];
            return found(Standing::Stop, says, RULE);
        }
        let Some(bow) = bow else {
            let says = if self.gap().is_some() {
                said![
                    "A string for this link is from ",
                    (SHORTEST_STRING * self.answer.link.bar, Length),
                    " to ",
                    (self.answer.link.length, Length),
                    " long. Measure the string again."
                ]
            } else {
                said!["You saw a bend, and how deep it is decides. Measure it with a string."]
            };
            return found(Standing::NotJudged, says, RULE);
        };
        if quantity::exceeds(bow.share, REJECTED_BOW) {
            let says = said![
                "The bow is ",
                (bow.gap, FineLength),
                ", ",
                (bow.share, Percent),
                " of the string. Builders scrap a tube over ",
                (REJECTED_BOW, Percent),
                "."
            ];
            return found(Standing::Stop, says, RULE);
        }
        let Some(left) = left else {
            return found(Standing::NotJudged, said!["What the bow leaves of this link cannot be worked out."], CHOICE);
        };
        let (standing, says) = weigh(bow, left);
        found(standing, says, crate::engine::formulas::columns::PERRY_ROBERTSON_LOAD.formula.source)
    }

    /// A link that fails without any damage is not made good by a look.
    fn fails_undamaged(&self) -> Option<Found> {
        (self.answer.verdict == Verdict::Fails).then(|| {
            let part = self.answer.weakest_finding().map_or("a part of it", |finding| finding.part);
            let says = said!["By its numbers this link fails even undamaged: ", (part), ". See Size."];
            let standing = if self.critical { Standing::Stop } else { Standing::Watch };
            Found { look: Look::Size, standing, says, source: CHOICE }
        })
    }

    /// What to do now.
    fn next(&self, standing: Standing) -> Said {
        match (standing, self.answer.role) {
            (Standing::Good, role) if inputs::has_no_second_path(role) => said![
                "Nothing was found by what you looked at. Drive on slowly at first. If the steering pulls or the wheel sits off center, stop: something else is bent."
            ],
            (Standing::Good, _) if self.least_gap().is_some() => said![
                "Measure that gap again at the next stop and after the run: if it grows, the bar is bent. A crack can show later too."
            ],
            (Standing::Good, _) => said![
                "Nothing was found by what you looked at. Look again at the next stop and after the run: a crack can show later."
            ],
            (Standing::NotJudged, _) => {
                said!["Do not drive it before everything is looked at. Unchecked is not OK."]
            }
            (Standing::Watch, _) => {
                said!["Limp home within the limits below, then replace what is damaged before the next run."]
            }
            (Standing::Stop, role) if role.steers() => said![
                "Do not drive it, not even home. Fit a spare, or tow it with the steered wheels off the ground. Never straighten or weld a steering part."
            ],
            (Standing::Stop, Role::TrackBar) => said![
                "Do not drive it: an axle that nothing holds sideways steers the rig by itself. Fit a spare, or tow it. Never straighten or weld it."
            ],
            (Standing::Stop, _) => {
                said!["Do not drive on this link. Fit a spare, or recover the rig. Never straighten it and keep it."]
            }
        }
    }

    /// On what conditions it may limp home.
    fn limits(&self, left: Option<&WithBow>) -> Vec<Said> {
        let mut limits = vec![
            said!["Walking pace, low range, no public road, nobody aboard but the driver."],
            said!["No drops, no ledges, nothing that lands on a link. No winch or strap on it, no bursts of throttle."],
        ];
        if let Some([was, now]) = left.and_then(|left| left.yields_at) {
            limits.push(said![
                "A hit of ",
                (now.max(0.0), Force),
                " bends it further; straight, it stood ",
                (was, Force),
                "."
            ]);
        }
        limits.push(match left {
            Some(_) => said![
                "At every stop, and at least every mile, stretch the string again: over ",
                (GROWN, FineLength),
                " more bow than now, any crack or kink, and you stop."
            ],
            None => said![
                "At every stop, and at least every mile, look again: anything looser, longer or cracked, and you stop."
            ],
        });
        limits.push(said!["Replace the part before the next run. Never straighten it and keep it."]);
        limits
    }
}

/// Weighs a bow in a tube that bends before it breaks.
fn weigh(bow: &Bow, left: &WithBow) -> (Standing, Said) {
    let mut says = said![
        "The bow is ",
        (bow.gap, FineLength),
        ", ",
        (bow.share, Percent),
        " of the string. It buckles now at ",
        (left.buckles_at, Force),
        ", ",
        (left.left, Percent),
        " of what it took straight."
    ];
    let over = |used: f64| used.is_nan() || quantity::exceeds(used, 1.0);
    if over(left.column) {
        says.extend(said![" With its factor, the largest force along it is more than that."]);
    } else if over(left.force) {
        says.extend(said![" Bent like that, the force along it alone may bend it further."]);
    } else if over(left.hinge / STANDS) {
        says.extend(said![" The next hit it was sized for would fold it."]);
    } else {
        says.extend(said![" That is enough to get home, and no more."]);
        return (Standing::Watch, says);
    }
    (Standing::Stop, says)
}
