//! From what is wanted of an axle or its wheels to the change of length of the links that do it.

mod could;
mod side_view;

pub use could::{Could, Move, Turns};
pub use side_view::{Arm, SideView, Slopes};

use super::Standing;
use crate::document::{Document, Position, Role};
use crate::engine::formula::{Line, Sheet};
use crate::engine::formulas::turning as formulas;
use crate::engine::sentence::{Said, said};
use crate::inputs::{self, At};
use crate::quantity::{DEGREE, exceeds, inch};

/// What is wanted.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum Wanted {
    /// The pinion up by an angle; down where it is negative.
    PinionUp(f64),
    /// More caster by an angle: the steering axis leans back at its top.
    Caster(f64),
    /// The axle forward by a length; back where it is negative.
    Forward(f64),
    /// The axle away from the frame's end of its track bar by a length; toward it where it is negative.
    AwayFromFrameEnd(f64),
    /// More toe-in by a length, both wheels together, across the tires; toe-out where it is negative.
    ToeIn(f64),
}

/// Which links tilt an axle.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Through {
    /// The uppers alone.
    Uppers,
    /// The lowers alone.
    Lowers,
    /// Both, in opposite directions, so that the middle of the axle stays where it is.
    Both,
}

/// The change of one link.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct LinkChange {
    /// What it locates.
    pub role: Role,
    /// Which link of the document; none where the build does not hold it.
    pub link: Option<usize>,
    /// How much longer it becomes; shorter where it is negative.
    pub change: f64,
}

/// What a wish asks of the links.
#[derive(Debug, Clone, PartialEq)]
pub struct Moved {
    /// Good where it could be worked out.
    pub standing: Standing,
    /// The change of each link.
    pub changes: Vec<LinkChange>,
    /// How far the axle is tilted, pinion up.
    pub tilt: f64,
    /// How far its middle goes forward.
    pub forward: f64,
    /// What happens beside what was wanted.
    pub says: Vec<Said>,
    /// What to mind.
    pub cautions: Vec<Said>,
    /// What was taken for granted.
    pub assumed: Vec<Said>,
    /// Why it cannot be worked out.
    pub instead: Option<Said>,
    /// How the numbers came out.
    pub working: Vec<Line>,
}

/// The largest tilt that is worked out; more is a mistake or another axle.
const MOST_TILT: f64 = 15.0 * DEGREE;
/// The same for a shift of the axle, and for toe.
const MOST_SHIFT: f64 = inch(6.0);
const MOST_TOE: f64 = inch(3.0);

/// What a wish asks of the links around one link of the document.
pub fn move_by(document: &Document, index: usize, wanted: Wanted, through: Through, slopes: Slopes) -> Moved {
    let mut sheet = Sheet::recording();
    let result = match wanted {
        Wanted::PinionUp(tilt) => tilted(document, index, tilt, through, slopes, &mut sheet),
        Wanted::Caster(caster) => match document.links.get(index).map(|link| link.position) {
            Some(Position::Front) => tilted(document, index, -caster, through, slopes, &mut sheet),
            _ => Err(said!["Caster belongs to the axle that steers: pick a link of the front axle."]),
        },
        Wanted::Forward(shift) => shifted(document, index, shift, slopes, &mut sheet),
        Wanted::AwayFromFrameEnd(shift) => sideways(document, index, shift, &mut sheet),
        Wanted::ToeIn(toe) => toed(document, index, toe, &mut sheet),
    };
    let out_of_range = sheet.out_of_range.take();
    let mut moved = match (result, out_of_range) {
        (Ok(moved), None) => moved,
        (Err(why), _) | (Ok(_), Some(why)) => Moved { standing: Standing::NotJudged, instead: Some(why), ..nothing() },
    };
    moved.working = std::mem::take(&mut sheet.lines);
    moved
}

const fn nothing() -> Moved {
    Moved {
        standing: Standing::Good,
        changes: Vec::new(),
        tilt: 0.0,
        forward: 0.0,
        says: Vec::new(),
        cautions: Vec::new(),
        assumed: Vec::new(),
        instead: None,
        working: Vec::new(),
    }
}

/// `forward` on the rear axle is toward the frame's end of its links, on the front axle away from it.
fn toward_frame(document: &Document, index: usize) -> f64 {
    match document.links.get(index).map(|link| link.position) {
        Some(Position::Rear) => 1.0,
        _ => -1.0,
    }
}

fn within(value: f64, most: f64, what: &'static str) -> Result<(), Said> {
    if value.is_finite() && !exceeds(value.abs(), most) {
        return Ok(());
    }
    Err(said!["That is more than this works out for ", (what), ": enter a smaller change, and take it in steps."])
}

/// Pinion and caster: the axle is tilted.
fn tilted(
    document: &Document,
    index: usize,
    tilt: f64,
    through: Through,
    slopes: Slopes,
    sheet: &mut Sheet,
) -> Result<Moved, Said> {
    within(tilt, MOST_TILT, "an angle, 15° at most")?;
    let view = SideView::of(document, index, slopes)?;
    let shift = view.shift(tilt, through, sheet);
    let mut changes = Vec::new();
    if through != Through::Lowers {
        changes.extend(view.changes(document, index, Role::Upper, tilt, shift, sheet));
    }
    if through != Through::Uppers {
        changes.extend(view.changes(document, index, Role::Lower, tilt, shift, sheet));
    }
    let forward = shift * toward_frame(document, index);
    let mut says = Vec::new();
    if exceeds(forward.abs(), inch(0.005)) {
        says.push(moves_along(forward));
    }
    let front = document.links.get(index).is_some_and(|link| link.position == Position::Front);
    if front {
        says.push(if tilt > 0.0 {
            said![
                "Caster goes down by the same ",
                (tilt, Angle),
                ": on a front axle pinion and caster are one turn of the same housing."
            ]
        } else {
            said![
                "The pinion goes down by the same ",
                (-tilt, Angle),
                ": on a front axle pinion and caster are one turn of the same housing."
            ]
        });
    }
    let mut cautions = vec![said![
        "Common practice for the driveshaft, no source here: each U-joint under 3°, the two within 1° of each other, never quite 0. With a double-cardan joint at the transfer case the pinion points at it; set 1 to 2° low, since it rises under power. Turn the shaft by hand and look for bind at full droop."
    ]];
    if front {
        cautions.push(said!["Caster and steering geometry are safety critical: stay within what the axle's maker allows, and have it measured on an alignment rack."]);
    }
    cautions.push(said!["Check the shocks, springs, brake lines and the shaft's slip for room afterwards."]);
    Ok(Moved { changes, tilt, forward, says, cautions, assumed: view.assumed, ..nothing() })
}

fn moves_along(forward: f64) -> Said {
    said![
        "The middle of the axle goes ",
        (forward.abs(), FineLength),
        (if forward > 0.0 { " forward" } else { " back" }),
        " with it, on both sides alike."
    ]
}

/// Fore and aft: all uppers and lowers change so that the axle keeps its tilt.
fn shifted(document: &Document, index: usize, forward: f64, slopes: Slopes, sheet: &mut Sheet) -> Result<Moved, Said> {
    within(forward, MOST_SHIFT, "a shift of the axle, 6 in at most")?;
    let view = SideView::of(document, index, slopes)?;
    let shift = forward * toward_frame(document, index);
    let mut changes = view.changes(document, index, Role::Lower, 0.0, shift, sheet);
    changes.extend(view.changes(document, index, Role::Upper, 0.0, shift, sheet));
    let says = vec![said![
        "Lowers and uppers move together, so pinion and caster stay but for the rounding to whole flats: check them afterwards. Loosen all their jam nuts before you turn any."
    ]];
    let cautions = vec![said![
        "Measure from the frame to the axle on both sides afterwards: both sides alike, and the same diagonally. Check tire clearance, the track bar, shocks and the driveshaft's slip."
    ]];
    Ok(Moved { changes, forward, says, cautions, assumed: view.assumed, ..nothing() })
}

/// The link of a role at the axle of another link, the link itself before all others.
pub fn of_role(document: &Document, index: usize, role: Role) -> Vec<usize> {
    let Some(position) = document.links.get(index).map(|link| link.position) else { return Vec::new() };
    let is = |link: usize| document.links.get(link).is_some_and(|of| of.role == role && of.position == position);
    let own = Some(index).filter(|index| is(*index));
    own.into_iter().chain((0..document.links.len()).filter(|link| *link != index && is(*link))).collect()
}

fn first_of_role(document: &Document, index: usize, role: Role, name: &'static str) -> Result<usize, Said> {
    of_role(document, index, role).first().copied().ok_or_else(|| {
        said!["This needs the ", (name), " of this axle in the build: add it with its length, then ask again."]
    })
}

/// Side to side: the track bar.
fn sideways(document: &Document, index: usize, shift: f64, sheet: &mut Sheet) -> Result<Moved, Said> {
    within(shift, MOST_SHIFT, "a shift of the axle, 6 in at most")?;
    let bar = first_of_role(document, index, Role::TrackBar, "track bar")?;
    let at = At::of_link(document, bar);
    let (Some(length), Some(slope)) = (inputs::LENGTH.value(document, at), inputs::SLOPE.value(document, at)) else {
        return Err(said!["Enter the track bar's length first: hole to hole at ride height."]);
    };
    let there = sheet.work(&formulas::TRACK_BAR_THERE, &[length, slope, shift]);
    let mut assumed = Vec::new();
    if inputs::SLOPE.decided(document, at).is_none() {
        assumed.push(said!["The track bar is taken to lie ", (slope, Angle), " from level, seen from the front."]);
    }
    assumed.push(said!["The springs hold the axle at its height."]);
    let changes = vec![LinkChange { role: Role::TrackBar, link: Some(bar), change: there - length }];
    let mut says = vec![said!["A longer track bar pushes the axle away from the bar's frame end."]];
    let mut cautions = vec![said![
        "Take the springs' own lean out first: level ground, both sides alike, the rig rocked once. Measure from the frame to the tire on both sides."
    ]];
    if document.links.get(bar).is_some_and(|link| link.position == Position::Front) {
        says.push(said!["The drag link then no longer suits: set it so that the steering wheel is straight again, with the same slope as the track bar."]);
        cautions.push(said!["Steering wheel off center after this is no cosmetic fault: the box must sit on its center. Set the drag link before you drive on a road."]);
    }
    Ok(Moved { changes, says, cautions, assumed, ..nothing() })
}

/// Toe: the tie rod.
fn toed(document: &Document, index: usize, toe: f64, sheet: &mut Sheet) -> Result<Moved, Said> {
    within(toe, MOST_TOE, "toe, 3 in at most")?;
    let rod = first_of_role(document, index, Role::TieRod, "tie rod")?;
    let at = At::of_link(document, rod);
    let (Some(arm), Some(tire)) = (inputs::STEERING_ARM.value(document, at), inputs::TIRE.value(document, at)) else {
        return Err(said!["Enter tire diameter and steering arm first."]);
    };
    if document.links.get(rod).is_none_or(|link| link.tie_rod_side.is_none()) {
        return Err(said![
            "Say first whether the tie rod runs ahead of the axle or behind it: the way to turn depends on it. It is asked above."
        ]);
    }
    let ahead = inputs::TIE_ROD_SIDE.value(document, at) != Some("behind");
    let change = sheet.work(&formulas::TIE_ROD_CHANGE, &[toe, arm, tire]);
    // Behind the axle a longer rod pushes the back of the wheels apart, which is toe-in.
    let change = if ahead { -change } else { change };
    let mut assumed = vec![said!["The steering arms are taken to point straight along the rig."]];
    if inputs::STEERING_ARM.decided(document, at).is_none() {
        assumed.push(said!["Steering arm taken as ", (arm, Length), ": measure it."]);
    }
    if inputs::TIRE.decided(document, at).is_none() {
        assumed.push(said!["Tire diameter taken as ", (tire, Length), ": measure it."]);
    }
    let says = vec![
        if ahead {
            said!["Ahead of the axle a longer tie rod is toe-out, a shorter one toe-in."]
        } else {
            said!["Behind the axle a longer tie rod is toe-in, a shorter one toe-out."]
        },
        said![
            "Both wheels take their half once it rolls. Then set the drag link so that the steering wheel is straight."
        ],
    ];
    let cautions = vec![said![
        "Roll the rig ahead 20 ft and measure toe again, front and back of the tires at hub height. The axle's maker says what toe it wants; tires and steering show it when it is wrong."
    ]];
    let changes = vec![LinkChange { role: Role::TieRod, link: Some(rod), change }];
    Ok(Moved { changes, says, cautions, assumed, ..nothing() })
}
