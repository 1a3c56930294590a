//! What builders usually fit for a link, and what is said of it beside the smallest that passes.

use super::geometry::Section;
use super::given::{RodEndSpec, Values};
use super::sentence::{Said, said};
use super::tables::inserts;
use super::tables::materials::{Material, SizeMeans, Strength};
use super::tables::practice::{self, GoesBy, Job, Size, class};
use super::tables::threads::{self, Thread};
use crate::document::{Role, Use};
use crate::inputs;
use crate::quantity::exceeds;
use crate::report::Trade;

/// What builders usually fit for this link; `None` where they have no habit.
pub(super) fn trade(given: &Values) -> Option<Trade> {
    let usage = given.document.rig.usage?;
    let habit = practice::for_job(&Job {
        role: given.link.role,
        material: given.material(),
        usage,
        weight: given.known(&inputs::WEIGHT),
        length: given.known(&inputs::LENGTH),
        ram: given.number(&inputs::CYLINDER_BORE).is_some(),
    })?;
    let thread = threads::find(habit.thread)?;
    let name = match habit.goes_by {
        GoesBy::RodEnds => said![(thread.id), " rod ends"],
        GoesBy::OtherMetal(metal) => {
            let mut says = said!["at least "];
            says.extend(named(habit.least, thread.id));
            says.extend(said![", as in ", (metal), ","]);
            says
        }
        _ => named(habit.least, thread.id),
    };
    let mut words = name.clone();
    words.extend(match habit.goes_by {
        GoesBy::WeightAndUse | GoesBy::OtherMetal(_) => said![" for a rig of this weight, ", (driven(usage))],
        GoesBy::ShortLink => said![" for a link this short on a rig of this weight, ", (driven(usage))],
        GoesBy::Ram => said![" on a link with a hydraulic ram, whatever the rig weighs"],
        GoesBy::RodEnds => said![", whatever the bar is made of, for a rig of this weight, ", (driven(usage))],
    });
    let practice::Habit { least, most, goes_by, .. } = habit;
    Some(Trade { least, most, thread: thread.id, class: class(thread), goes_by, name, words })
}

/// How a rig is used, after a comma.
const fn driven(usage: Use) -> &'static str {
    match usage {
        Use::Easy => "on easy trails",
        Use::Slow => "crawling slowly",
        Use::Hard => "driven hard",
        Use::Punished => "raced or jumped",
    }
}

/// A size with its rod ends: `2 in by 1/4 in wall with 1-1/4-12 rod ends`.
pub(super) fn named(size: Size, thread: &'static str) -> Said {
    if size.wall > 0.0 {
        said![(size.outside_diameter, Trade), " by ", (size.wall, Trade), " wall with ", (thread), " rod ends"]
    } else {
        said![(size.outside_diameter, Trade), " with ", (thread), " rod ends"]
    }
}

impl Section {
    /// The same as the tables have it.
    pub(super) const fn size(self) -> Size {
        Size { outside_diameter: self.outside_diameter, wall: self.wall }
    }

    /// The strengths of a material in this section; `None` where none is published.
    pub(super) fn strength(self, material: &Material) -> Option<&'static Strength> {
        let wall = if self.wall > 0.0 { self.wall } else { self.outside_diameter / 2.0 };
        material.strength(self.outside_diameter, wall)
    }

    /// Whether a rod end goes in: enough bar around its thread, or room for an insert in the tube.
    pub(super) fn takes(self, thread: &Thread) -> bool {
        if self.wall > 0.0 {
            !exceeds(inserts::least_bore(thread.major), self.bore())
        } else {
            !exceeds(practice::BAR_FOR_THREAD * thread.major, self.outside_diameter)
        }
    }
}

/// Class of the smaller thread of a pair: a link is as good as its weaker end.
pub(super) fn smaller_class(joints: &[RodEndSpec; 2]) -> Option<usize> {
    class(joints[0].thread).min(class(joints[1].thread))
}

/// Class of the larger thread of a pair.
pub(super) fn larger_class(joints: &[RodEndSpec; 2]) -> Option<usize> {
    class(joints[0].thread).max(class(joints[1].thread))
}

/// A size and a pair of rod ends, as they are compared with a habit.
#[derive(Clone, Copy)]
pub(super) struct Pick {
    pub(super) size: Size,
    pub(super) thread: &'static str,
    pub(super) class: Option<usize>,
    /// The part with the highest utilization.
    pub(super) decides: &'static str,
}

impl Pick {
    /// Whether it is at least what is usual, bar and rod ends.
    pub(super) fn reaches(&self, trade: &Trade) -> bool {
        self.size.is_as_large_as(trade.least) && self.class >= trade.class
    }

    fn named(&self) -> Said {
        named(self.size, self.thread)
    }
}

/// Whether a size and its rod ends are just what is usual, under the same names.
pub(super) fn is_usual(size: Size, thread: &'static str, trade: &Trade) -> bool {
    let near = |a: f64, b: f64| !exceeds((a - b).abs(), 1e-6);
    let size_is = near(size.outside_diameter, trade.least.outside_diameter) && near(size.wall, trade.least.wall);
    (size_is || trade.is_of_rod_ends()) && thread == trade.thread
}

/// Steering links and track bars, where the smallest that passes is nobody's answer.
pub(super) const fn is_one_answer(role: Role) -> bool {
    inputs::has_no_second_path(role)
}

/// Said where the smallest that passes is no less than what is usual.
pub(super) fn calculation_reaches(numbers: &Pick, trade: &Trade, chosen: bool) -> Said {
    let larger_than = |usual: Size| !trade.is_of_rod_ends() && !usual.is_as_large_as(numbers.size);
    let larger = larger_than(trade.most) || (!chosen && numbers.class > trade.class);
    let mut says = if !larger && larger_than(trade.least) {
        let mut says = said!["The calculation decides, within what builders fit: it asks for "];
        says.extend(numbers.named());
        says.extend(said![". Highest utilization: ", (numbers.decides), ". Builders usually fit "]);
        says
    } else if larger {
        let mut says = said!["The calculation decides: it asks for "];
        says.extend(numbers.named());
        says.extend(said![", more than common practice. Highest utilization: ", (numbers.decides)]);
        says.extend(said![". Builders usually fit "]);
        says
    } else {
        said!["Calculation and common practice agree: builders usually fit "]
    };
    says.extend(trade.words.clone());
    says.extend(said!["."]);
    says
}

/// Said where what is usual is more than the smallest that passes, and something that is no less than both was found.
pub(super) fn practice_decides(role: Role, numbers: &Pick, found: &Pick, trade: &Trade) -> Said {
    let mut says = if is_one_answer(role) {
        let mut says = said!["Common practice for this job is "];
        says.extend(trade.name.clone());
        says
    } else {
        let mut says = said!["Common practice decides: builders usually fit "];
        says.extend(trade.words.clone());
        says.extend(said![". Smallest that passes: "]);
        says.extend(numbers.named());
        says
    };
    match (is_usual(found.size, found.thread, trade), is_one_answer(role)) {
        (true, true) => says.extend(said!["; it passes every check."]),
        (true, false) => says.extend(said![
            ". The larger of the two is recommended: common practice also covers hits that this scenario does not."
        ]),
        (false, _) => {
            says.extend(said![". Recommended, and passing every check, is "]);
            says.extend(found.named());
            says.extend(said!["."]);
        }
    }
    if found.class < trade.class {
        says.extend(said![
            " Its rod ends are smaller than builders usually fit; no larger ones are to choose from here."
        ]);
    }
    says
}

/// Said where nothing that is as large as what is usual passes; `nearest` is as near to it as passes, `ends` tells how
/// far as strengths are published, where that is why.
pub(super) fn practice_fails(numbers: &Pick, nearest: Option<&Pick>, trade: &Trade, ends: Option<Said>) -> Said {
    let mut says = said!["Builders usually fit "];
    says.extend(trade.words.clone());
    match ends {
        Some(ends) => {
            says.extend(said![", but "]);
            says.extend(ends);
            says.extend(said![". "]);
        }
        None => says.extend(said![", but no stock pair of bar and rod ends gives both and passes every check here. "]),
    }
    match nearest {
        Some(nearest) => {
            says.extend(said!["Recommended is what comes nearest to that and passes: "]);
            says.extend(nearest.named());
        }
        None => {
            says.extend(said!["Smallest that passes: "]);
            says.extend(numbers.named());
        }
    }
    says.extend(said!["."]);
    says
}

/// Where no strength is published for any of some sections: up to where it is.
pub(super) fn strengths_end(given: &Values, sections: &[Section]) -> Option<Said> {
    let material = given.material();
    if sections.is_empty() || sections.iter().any(|section| section.strength(material).is_some()) {
        return None;
    }
    let up_to = material.rows.last()?.up_to;
    let what = match material.size_means {
        SizeMeans::Wall => " wall",
        SizeMeans::Diameter => " diameter",
    };
    Some(said!["no published strength is held for ", (material.label), ", over ", (up_to, FineLength), (what)])
}
