//! What builders usually fit, by role, metal, use and rig weight: common practice, no source.

use super::materials::{HabitMetal, Material, Speaks};
use super::threads::{self, Thread};
use crate::document::{Role, Use};
use crate::engine::formulas::sections;
use crate::quantity::exceeds;
use crate::quantity::{System, inch, lbf, mm};
use crate::source::{Cite, Obtained, PRACTICE, cite};

/// Where every row and rule of this file comes from.
pub const CITE: Cite = cite(&PRACTICE, "what builders usually fit", Obtained::Practice);

/// A bar or a tube.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Size {
    /// Outside diameter, m.
    pub outside_diameter: f64,
    /// Wall, m; 0 for a solid bar.
    pub wall: f64,
}

/// A metric bar this much thinner than the one that is usual counts as the same size, as a share of its diameter
/// (assumption): 50 mm is sold where 2 in is not, and is 1.6 % thinner.
pub const SAME_SIZE: f64 = 0.03;

impl Size {
    /// Section modulus, m³: sizes are compared by it, since a diameter says nothing about a tube's wall.
    pub fn modulus(self) -> f64 {
        let bore = if self.wall > 0.0 { (self.outside_diameter - 2.0 * self.wall).max(0.0) } else { 0.0 };
        sections::RING_SECTION_MODULUS.value(&[self.outside_diameter, bore])
    }

    /// Whether it is at least as large as another, by section modulus; a bar within [`SAME_SIZE`] of another is.
    pub fn is_as_large_as(self, other: Self) -> bool {
        let bars = self.wall <= 0.0 && other.wall <= 0.0;
        let nearly = bars && !exceeds((1.0 - SAME_SIZE) * other.outside_diameter, self.outside_diameter);
        nearly || !exceeds(other.modulus(), self.modulus())
    }
}

/// What builders usually fit for one job.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Habit {
    /// The least they fit.
    pub least: Size,
    /// The most they usually fit.
    pub most: Size,
    /// Id of the rod ends' thread.
    pub thread: &'static str,
    /// What it goes by.
    pub goes_by: GoesBy,
}

/// What a habit goes by.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum GoesBy {
    /// The rig's weight and its use.
    WeightAndUse,
    /// The same, one size less because the link is short.
    ShortLink,
    /// A hydraulic ram on the link, whatever the weight.
    Ram,
    /// What they fit in another metal, by its name: nobody fits less of one that is weaker or less known.
    OtherMetal(&'static str),
    /// The rod ends alone: what the rig asks of them does not depend on the bar's metal.
    RodEnds,
}

/// What a habit is looked up by.
#[derive(Debug, Clone, Copy)]
pub struct Job<'a> {
    /// What the link locates.
    pub role: Role,
    /// What it is made of.
    pub material: &'a Material,
    /// How the rig is used.
    pub usage: Use,
    /// What the rig weighs, N.
    pub weight: f64,
    /// Mount to mount, m.
    pub length: f64,
    /// Whether a hydraulic ram pushes on it.
    pub ram: bool,
}

/// One cell of the table: the least size, and the thread.
type Fit = (Size, &'static str);

/// The rows of one role in one metal: driven gently (easy trails and slow crawling), hard, and punished.
struct Group {
    roles: &'static [Role],
    metal: HabitMetal,
    rows: [[Fit; 5]; 3],
}

const T38: &str = "3/8-24";
const T12: &str = "1/2-20";
const T58: &str = "5/8-18";
const T34: &str = "3/4-16";
const T78: &str = "7/8-14";
const T114: &str = "1-1/4-12";

const fn bar(diameter: f64, thread: &'static str) -> Fit {
    (Size { outside_diameter: inch(diameter), wall: 0.0 }, thread)
}

const fn tube(diameter: f64, wall: f64, thread: &'static str) -> Fit {
    (Size { outside_diameter: inch(diameter), wall: inch(wall) }, thread)
}

/// Where the columns of the table begin; each holds its lower edge.
const BANDS: [f64; 4] = [lbf(2500.0), lbf(3500.0), lbf(4200.0), lbf(5500.0)];

/// Least outside diameter, wall of a tube, and rod-end thread.
#[rustfmt::skip]
static GROUPS: &[Group] = &[
    Group { roles: &[Role::Lower], metal: HabitMetal::Solid7075, rows: [
        // under 2,500 lb 2,500            3,500            4,200            5,500 up
        [bar(1.50, T34),  bar(2.00, T78),  bar(2.00, T114), bar(2.00, T114), bar(2.25, T114)], // gentle
        [bar(1.50, T78),  bar(2.00, T114), bar(2.25, T114), bar(2.50, T114), bar(2.50, T114)], // hard
        [bar(1.50, T78),  bar(2.25, T114), bar(2.50, T114), bar(2.50, T114), bar(2.50, T114)], // punished
    ] },
    Group { roles: &[Role::Lower], metal: HabitMetal::Drawn, rows: [
        // under 2,500 lb         2,500                    3,500                    4,200                    5,500 up
        [tube(1.50, 0.120, T34),  tube(1.75, 0.250, T78),  tube(2.00, 0.250, T114), tube(2.00, 0.250, T114), tube(2.25, 0.250, T114)], // gentle
        [tube(1.50, 0.188, T34),  tube(2.00, 0.250, T114), tube(2.00, 0.250, T114), tube(2.25, 0.250, T114), tube(2.25, 0.375, T114)], // hard
        [tube(1.75, 0.188, T78),  tube(2.00, 0.250, T114), tube(2.25, 0.250, T114), tube(2.25, 0.375, T114), tube(2.50, 0.375, T114)], // punished
    ] },
    Group { roles: &[Role::Lower], metal: HabitMetal::Hardened, rows: [
        // under 2,500 lb         2,500                    3,500                    4,200                    5,500 up
        [tube(1.50, 0.095, T34),  tube(1.75, 0.120, T78),  tube(1.75, 0.188, T78),  tube(2.00, 0.188, T114), tube(2.00, 0.250, T114)], // gentle
        [tube(1.50, 0.120, T34),  tube(1.75, 0.120, T78),  tube(2.00, 0.188, T114), tube(2.00, 0.250, T114), tube(2.00, 0.250, T114)], // hard
        [tube(1.50, 0.120, T78),  tube(1.75, 0.188, T78),  tube(2.00, 0.250, T114), tube(2.00, 0.250, T114), tube(2.25, 0.250, T114)], // punished
    ] },
    Group { roles: &[Role::Upper], metal: HabitMetal::Solid7075, rows: [
        // under 2,500 lb 2,500            3,500            4,200            5,500 up
        [bar(1.25, T58),  bar(1.75, T34),  bar(1.75, T78),  bar(1.75, T78),  bar(2.00, T78) ], // gentle
        [bar(1.25, T34),  bar(1.75, T78),  bar(1.75, T78),  bar(2.00, T78),  bar(2.00, T114)], // hard
        [bar(1.25, T34),  bar(1.75, T78),  bar(2.00, T78),  bar(2.00, T114), bar(2.00, T114)], // punished
    ] },
    Group { roles: &[Role::Upper], metal: HabitMetal::Drawn, rows: [
        // under 2,500 lb         2,500                    3,500                    4,200                    5,500 up
        [tube(1.25, 0.120, T58),  tube(1.50, 0.188, T34),  tube(1.75, 0.188, T78),  tube(1.75, 0.250, T78),  tube(1.75, 0.250, T78) ], // gentle
        [tube(1.25, 0.120, T34),  tube(1.75, 0.188, T78),  tube(1.75, 0.250, T78),  tube(1.75, 0.250, T78),  tube(2.00, 0.250, T114)], // hard
        [tube(1.50, 0.120, T34),  tube(1.75, 0.250, T78),  tube(1.75, 0.250, T78),  tube(2.00, 0.250, T114), tube(2.00, 0.250, T114)], // punished
    ] },
    Group { roles: &[Role::Upper], metal: HabitMetal::Hardened, rows: [
        // under 2,500 lb         2,500                    3,500                    4,200                    5,500 up
        [tube(1.25, 0.095, T58),  tube(1.50, 0.095, T34),  tube(1.50, 0.120, T78),  tube(1.75, 0.120, T78),  tube(1.75, 0.188, T78) ], // gentle
        [tube(1.25, 0.120, T34),  tube(1.50, 0.120, T34),  tube(1.75, 0.120, T78),  tube(1.75, 0.188, T78),  tube(2.00, 0.188, T114)], // hard
        [tube(1.25, 0.120, T34),  tube(1.50, 0.120, T78),  tube(1.75, 0.188, T78),  tube(2.00, 0.188, T114), tube(2.00, 0.250, T114)], // punished
    ] },
    Group { roles: &[Role::TieRod, Role::DragLink], metal: HabitMetal::Solid7075, rows: [
        // under 2,500 lb2,500           3,500           4,200           5,500 up
        [bar(1.25, T34), bar(1.25, T34), bar(1.50, T34), bar(1.50, T78), bar(1.50, T78)], // gentle
        [bar(1.25, T34), bar(1.50, T34), bar(1.50, T78), bar(1.50, T78), bar(1.75, T78)], // hard
        [bar(1.25, T34), bar(1.50, T78), bar(1.50, T78), bar(1.75, T78), bar(1.75, T78)], // punished
    ] },
    Group { roles: &[Role::TieRod, Role::DragLink], metal: HabitMetal::Drawn, rows: [
        // under 2,500 lb        2,500                   3,500                   4,200                   5,500 up
        [tube(1.25, 0.120, T34), tube(1.50, 0.188, T34), tube(1.50, 0.250, T34), tube(1.75, 0.188, T78), tube(1.75, 0.188, T78)], // gentle
        [tube(1.25, 0.120, T34), tube(1.50, 0.250, T34), tube(1.75, 0.188, T78), tube(1.75, 0.188, T78), tube(1.75, 0.250, T78)], // hard
        [tube(1.50, 0.120, T34), tube(1.75, 0.188, T78), tube(1.75, 0.188, T78), tube(1.75, 0.250, T78), tube(1.75, 0.250, T78)], // punished
    ] },
    Group { roles: &[Role::TrackBar], metal: HabitMetal::Solid7075, rows: [
        // under 2,500 lb 2,500            3,500            4,200            5,500 up
        [bar(1.25, T58),  bar(1.25, T34),  bar(1.50, T78),  bar(1.50, T78),  bar(1.75, T78) ], // gentle
        [bar(1.25, T34),  bar(1.50, T78),  bar(1.50, T78),  bar(1.75, T78),  bar(2.00, T114)], // hard
        [bar(1.25, T34),  bar(1.50, T78),  bar(1.75, T78),  bar(2.00, T114), bar(2.00, T114)], // punished
    ] },
    Group { roles: &[Role::TrackBar], metal: HabitMetal::Drawn, rows: [
        // under 2,500 lb         2,500                    3,500                    4,200                    5,500 up
        [tube(1.25, 0.120, T58),  tube(1.50, 0.120, T34),  tube(1.75, 0.188, T78),  tube(1.75, 0.188, T78),  tube(1.75, 0.188, T78) ], // gentle
        [tube(1.25, 0.120, T34),  tube(1.75, 0.188, T78),  tube(1.75, 0.188, T78),  tube(1.75, 0.188, T78),  tube(2.00, 0.250, T114)], // hard
        [tube(1.50, 0.120, T34),  tube(1.75, 0.188, T78),  tube(1.75, 0.188, T78),  tube(2.00, 0.250, T114), tube(2.00, 0.250, T114)], // punished
    ] },
    Group { roles: &[Role::SwayLink], metal: HabitMetal::Solid7075, rows: [
        // under 2,500 lb2,500           3,500           4,200           5,500 up
        [bar(0.75, T38), bar(0.75, T12), bar(1.00, T12), bar(1.00, T12), bar(1.00, T58)], // gentle
        [bar(0.75, T38), bar(0.75, T12), bar(1.00, T12), bar(1.00, T58), bar(1.00, T58)], // hard
        [bar(0.75, T12), bar(1.00, T12), bar(1.00, T58), bar(1.00, T58), bar(1.00, T58)], // punished
    ] },
    Group { roles: &[Role::SwayLink], metal: HabitMetal::Drawn, rows: [
        // under 2,500 lb        2,500                   3,500                   4,200                   5,500 up
        [tube(1.00, 0.120, T38), tube(1.00, 0.120, T12), tube(1.00, 0.120, T12), tube(1.00, 0.120, T12), tube(1.25, 0.120, T58)], // gentle
        [tube(1.00, 0.120, T38), tube(1.00, 0.120, T12), tube(1.00, 0.120, T12), tube(1.25, 0.120, T58), tube(1.25, 0.120, T58)], // hard
        [tube(1.00, 0.120, T12), tube(1.00, 0.120, T12), tube(1.25, 0.120, T58), tube(1.25, 0.120, T58), tube(1.25, 0.120, T58)], // punished
    ] },
];

/// On a link with a ram, whatever the rig weighs.
const RAM_BAR: Fit = bar(1.75, T78);
const RAM_TUBE: Fit = tube(1.75, 0.250, T78);

/// What is usual runs to this much more than the least.
const USUAL_RANGE: f64 = inch(0.25);

/// Lower links of 7075 shorter than this are fitted a step thinner, as long as their rod ends go into that.
const SHORT: f64 = inch(30.0);
const SHORT_STEP: f64 = inch(0.25);
/// A bar takes a rod end from this many thread diameters up: a quarter of the thread is left around it, and the jam nut
/// finds a seat. So a bar with 1-1/4 rod ends stays at 2 in.
pub const BAR_FOR_THREAD: f64 = 1.5;

/// What builders usually fit for a job; `None` where they have no habit.
pub fn for_job(job: &Job) -> Option<Habit> {
    let (metal, speaks) = job.material.habit;
    let own = in_metal(metal, job)?;
    match speaks {
        Speaks::OfItself => Some(own),
        Speaks::AsLeast if own.goes_by == GoesBy::Ram => Some(own),
        Speaks::AsLeast => Some(Habit { goes_by: GoesBy::OtherMetal(metal.name()), ..own }),
        Speaks::OfRodEnds => {
            let least = Size { outside_diameter: BAR_FOR_THREAD * threads::find(own.thread)?.major, wall: 0.0 };
            Some(Habit { least, goes_by: GoesBy::RodEnds, ..own })
        }
    }
}

/// The habit of a metal that has one.
fn in_metal(metal: HabitMetal, job: &Job) -> Option<Habit> {
    let steers = matches!(job.role, Role::TieRod | Role::DragLink);
    if steers && job.ram {
        return Some(habit(if metal == HabitMetal::Solid7075 { RAM_BAR } else { RAM_TUBE }, GoesBy::Ram));
    }
    // Only suspension links are made of hardened tube thinner than of drawn.
    let metal = if metal == HabitMetal::Hardened && !job.role.drives() { HabitMetal::Drawn } else { metal };
    let group = GROUPS.iter().find(|group| group.metal == metal && group.roles.contains(&job.role))?;
    let row = match job.usage {
        Use::Easy | Use::Slow => &group.rows[0],
        Use::Hard => &group.rows[1],
        Use::Punished => &group.rows[2],
    };
    let band = BANDS.iter().filter(|edge| !exceeds(**edge, job.weight)).count();
    let (mut size, thread) = *row.get(band)?;
    if job.role == Role::Lower && metal == HabitMetal::Solid7075 && exceeds(SHORT, job.length) {
        let less = size.outside_diameter - SHORT_STEP;
        if !exceeds(BAR_FOR_THREAD * threads::find(thread)?.major, less) {
            size.outside_diameter = less;
            return Some(habit((size, thread), GoesBy::ShortLink));
        }
    }
    Some(habit((size, thread), GoesBy::WeightAndUse))
}

fn habit((least, thread): Fit, goes_by: GoesBy) -> Habit {
    let most = Size { outside_diameter: least.outside_diameter + USUAL_RANGE, ..least };
    Habit { least, most, thread, goes_by }
}

/// Where each class of threads begins, in inches and in millimeters.
const CLASSES: [(f64, f64); 8] = [
    (inch(0.375), mm(10.0)),
    (inch(0.5), mm(12.0)),
    (inch(0.625), mm(16.0)),
    (inch(0.75), mm(18.0)),
    (inch(0.875), mm(22.0)),
    (inch(1.0), mm(24.0)),
    (inch(1.25), mm(30.0)),
    (inch(1.5), mm(36.0)),
];

/// The class of a thread, by which inch and metric threads are compared: 0 is 3/8 and M10, 6 is 1-1/4 and M30, and
/// `None`, which is less than any, is thinner than those. A thread between two classes (7/16, 9/16, 1-1/8, M27) counts
/// with the lower one, so that it never passes for more than it is; 1-12 and 1-14 are one class.
pub fn class(thread: &Thread) -> Option<usize> {
    CLASSES.iter().rposition(|(inches, millimeters)| {
        let begins = if thread.system == System::Inch { *inches } else { *millimeters };
        !exceeds(begins, thread.major)
    })
}
