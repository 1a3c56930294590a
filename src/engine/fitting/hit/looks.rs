//! The looks to take after a hit, in their order, and what each comes to but for the bend.

use super::{CHOICE, Found, Gouge, Hit, RULE};
use crate::document::Role;
use crate::engine::fitting::Standing;
use crate::engine::sentence::{Said, said};
use crate::engine::tables::materials::Form;
use crate::quantity::{self, inch};

/// A dent up to here is small: share of the outside diameter, and of the wall of a tube.
pub const SMALL_DENT: [f64; 2] = [0.02, 0.25];
/// A dent over this is more than a tube may limp home with: the same shares.
pub const DEEP_DENT: [f64; 2] = [0.05, 0.5];
/// What one vehicle maker allows a ball joint to move up and down before it is replaced.
const ONE_MAKERS_PLAY: f64 = inch(0.02);

/// A look to take after a hit.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Look {
    /// Along the bar, for a bend.
    Bend,
    /// For a kink or a wrinkle.
    Kink,
    /// For cracks.
    Crack,
    /// For gouges.
    Gouge,
    /// For dents.
    Dent,
    /// At the shanks.
    Shank,
    /// At the heads.
    Head,
    /// Whether the eyes sit square.
    Eye,
    /// At the jam nuts and their paint lines.
    Nut,
    /// At bolts, brackets and welds.
    Mount,
    /// For play.
    Play,
    /// At a reading that cannot be read; no look, it follows from what stands in its field.
    Reading,
    /// Whether it was strong enough to begin with; no look, it follows from the answer.
    Size,
}

impl Look {
    /// Every look, in the order they are taken.
    pub const ALL: [Self; 11] = [
        Self::Bend,
        Self::Kink,
        Self::Crack,
        Self::Gouge,
        Self::Dent,
        Self::Shank,
        Self::Head,
        Self::Eye,
        Self::Nut,
        Self::Mount,
        Self::Play,
    ];

    /// What it is for, as it is named when it is missing.
    pub const fn words(self) -> &'static str {
        match self {
            Self::Bend => "a bend, by string or by turning the bar",
            Self::Kink => "a kink or wrinkle",
            Self::Crack => "cracks",
            Self::Gouge => "gouges",
            Self::Dent => "dents, and how deep",
            Self::Shank => "bent shanks",
            Self::Head => "damaged rod-end heads",
            Self::Eye => "eyes out of square",
            Self::Nut => "loose jam nuts",
            Self::Mount => "damaged bolts, brackets or welds",
            Self::Play => "play",
            Self::Reading => "a reading",
            Self::Size => "its size",
        }
    }
}

impl Hit<'_> {
    /// What a look came to; none where it was not taken.
    pub(super) fn look(&self, look: Look) -> Option<Found> {
        let readings = self.readings;
        let (standing, says, source) = match look {
            Look::Kink => self.plain(readings.kink?, "No kink.", "A kink, wrinkle or flat: the section is gone there."),
            Look::Crack => self.plain(readings.crack?, "No crack seen.", "A crack. It is finished, whatever its size."),
            Look::Shank => {
                self.plain(readings.shank_bent?, "Shanks straight.", "A bent shank breaks at the jam nut next.")
            }
            Look::Head => self.plain(
                readings.head?,
                "Heads round, balls held.",
                "A stretched, dented or cracked head, or a ball that comes out: the rod end is scrap.",
            ),
            Look::Eye => self.eye(readings.eye_turned?),
            Look::Nut => self.plain(
                readings.nut_loose?,
                "Jam nuts tight, paint lines whole.",
                "A loose jam nut or a broken paint line: the end may have turned. Read both ends under “Is it still safe?” and tighten the nut before it moves.",
            ),
            Look::Mount => self.plain(
                readings.mount_damaged?,
                "Bolts, brackets and welds whole.",
                "A damaged bolt, bracket or weld: it no longer holds the link. Replace the bolt, or have the weld repaired, before it moves.",
            ),
            Look::Play => self.play(readings.play?),
            Look::Gouge => self.gouge(readings.gouge?),
            Look::Dent => return self.dent(readings.dent.filter(|depth| depth.is_finite() && *depth >= 0.0)?),
            Look::Bend | Look::Reading | Look::Size => return None,
        };
        Some(Found { look, standing, says, source })
    }

    /// A look that stops any link.
    fn plain(&self, bad: bool, good: &'static str, stop: &'static str) -> (Standing, Said, crate::source::Cite) {
        if bad { (Standing::Stop, said![(stop)], RULE) } else { (Standing::Good, said![(good)], RULE) }
    }

    fn eye(&self, turned: bool) -> (Standing, Said, crate::source::Cite) {
        if !turned {
            return (Standing::Good, said!["Both eyes square to their brackets."], RULE);
        }
        if self.critical {
            return (
                Standing::Stop,
                said![
                    "An eye sits out of square: the bar has turned on its threads, or a shank is twisted. Find out which before it moves."
                ],
                RULE,
            );
        }
        (
            Standing::Stop,
            said!["An eye sits out of square: the bar has turned on its threads, so a jam nut let go."],
            RULE,
        )
    }

    fn play(&self, knocks: bool) -> (Standing, Said, crate::source::Cite) {
        if !knocks {
            return (Standing::Good, said!["No play felt."], RULE);
        }
        if self.critical {
            let mut says = match self.answer.role {
                Role::TrackBar => said!["A joint of the track bar knocks: replace that rod end before it moves."],
                _ => said!["A steering joint knocks: replace that rod end before it moves."],
            };
            says.extend(said![
                " One vehicle maker replaces its ball joints at ",
                (ONE_MAKERS_PLAY, FineLength),
                " up and down; that is no limit for a rod end."
            ]);
            return (Standing::Stop, says, RULE);
        }
        (
            Standing::Watch,
            said![
                "A joint knocks. Check its bolt is tight; if it still knocks, replace that rod end before the next drive."
            ],
            RULE,
        )
    }

    fn gouge(&self, gouge: Gouge) -> (Standing, Said, crate::source::Cite) {
        match gouge {
            Gouge::None => (Standing::Good, said!["No gouge."], RULE),
            Gouge::Blunt => (
                Standing::Good,
                said!["A scratch with blunt edges. Smooth it along the bar, and look there for cracks each trip."],
                RULE,
            ),
            Gouge::Sharp if self.critical => {
                (Standing::Stop, said!["A sharp gouge in a link that nothing backs up: a crack starts there."], RULE)
            }
            Gouge::Sharp if !self.ductile => (
                Standing::Stop,
                said!["A sharp gouge in ", (self.answer.link.material.label), ": a crack starts there. Replace it."],
                RULE,
            ),
            Gouge::Sharp => (
                Standing::Watch,
                said![
                    "A sharp gouge in the tube: a crack starts there. File its edges smooth along the tube, and replace it before the next run."
                ],
                CHOICE,
            ),
        }
    }

    fn dent(&self, depth: f64) -> Option<Found> {
        let link = &self.answer.link;
        let tube = link.material.form == Form::Tube;
        // Of a tube also its wall counts.
        let within = |[of_diameter, of_wall]: [f64; 2]| {
            let by_diameter = of_diameter * link.outside_diameter;
            if tube { by_diameter.min(of_wall * link.wall) } else { by_diameter }
        };
        let (small, deep) = (within(SMALL_DENT), within(DEEP_DENT));
        let found = |standing, says| Some(Found { look: Look::Dent, standing, says, source: CHOICE });
        if depth <= 0.0 {
            return found(Standing::Good, said!["No dent."]);
        }
        if !quantity::exceeds(depth, small) {
            return found(
                Standing::Good,
                said!["A dent of ", (depth, FineLength), ", small enough to keep: up to ", (small, FineLength), "."],
            );
        }
        if self.critical || !self.ductile {
            let mut says = said!["A dent of ", (depth, FineLength), " is over the ", (small, FineLength)];
            says.extend(if self.critical {
                said![" taken for small, in a link that nothing backs up."]
            } else {
                said![" taken for small, in a metal that cracks."]
            });
            return found(Standing::Stop, says);
        }
        if quantity::exceeds(depth, deep) {
            return found(
                Standing::Stop,
                said![
                    "A dent of ",
                    (depth, FineLength),
                    " is over ",
                    (deep, FineLength),
                    ": the tube folds there next."
                ],
            );
        }
        found(
            Standing::Watch,
            said![
                "A dent of ",
                (depth, FineLength),
                " is over the ",
                (small, FineLength),
                " taken for small. Replace the tube before the next run."
            ],
        )
    }
}
