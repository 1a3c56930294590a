//! An axle and its links seen from the side: a rigid body whose middle the springs hold at its height.

use super::{LinkChange, Through, of_role};
use crate::document::{Document, Role};
use crate::engine::formula::Sheet;
use crate::engine::formulas::turning as formulas;
use crate::engine::roots::crossing;
use crate::engine::sentence::{Said, said};
use crate::inputs::{self, At};
use crate::quantity::{DEGREE, exceeds};

/// Slopes read on the rig, seen from the side; positive where the frame's end is higher. Level where nothing was read.
#[derive(Debug, Clone, Copy, PartialEq, Default)]
pub struct Slopes {
    /// Of the lowers.
    pub lower: Option<f64>,
    /// Of the uppers.
    pub upper: Option<f64>,
}

/// A pair of links as one, seen from the side.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Arm {
    /// Eye to eye.
    pub length: f64,
    /// Angle to straight ahead, seen from above.
    pub plan: f64,
    /// Slope up toward the frame.
    pub slope: f64,
    /// Height of its mount over the middle of the axle; negative under it.
    pub over_middle: f64,
}

/// An axle seen from the side.
#[derive(Debug, Clone, PartialEq)]
pub struct SideView {
    /// The lowers.
    pub lower: Arm,
    /// The uppers.
    pub upper: Arm,
    /// What was taken for granted.
    pub assumed: Vec<Said>,
}

impl SideView {
    /// The axle that a link of the document belongs to.
    ///
    /// # Errors
    /// What is missing, or cannot be.
    pub fn of(document: &Document, index: usize, slopes: Slopes) -> Result<Self, Said> {
        let at = At::of_link(document, index);
        let height = |input: &'static inputs::Number| input.value(document, at).unwrap_or(f64::NAN);
        let (low, high, tire) = (height(&inputs::LOWER_HEIGHT), height(&inputs::UPPER_HEIGHT), height(&inputs::TIRE));
        if !exceeds(high, low) {
            return Err(said![
                "The lower links' mount at ",
                (low, Length),
                " above the ground must lie below the upper links' at ",
                (high, Length),
                ": check both heights."
            ]);
        }
        let mut assumed = vec![said![
            "Seen from the side: the axle is rigid, its mounts lie straight above each other, its middle is half a tire above the ground and the springs hold it there, and links and pinion point to the middle of the rig."
        ]];
        for (input, what) in
            [(&inputs::LOWER_HEIGHT, "Lower mount height"), (&inputs::UPPER_HEIGHT, "Upper mount height")]
        {
            if input.decided(document, at).is_none() {
                assumed.push(said![(what), " taken as ", (height(input), Length), " above the ground: measure it."]);
            }
        }
        let lengths = [Role::Lower, Role::Upper].map(|role| {
            of_role(document, index, role)
                .into_iter()
                .find_map(|link| Some((link, inputs::LENGTH.value(document, At::of_link(document, link))?)))
        });
        let [lower, upper] = match lengths {
            [Some(lower), Some(upper)] => [lower, upper],
            [Some(known), None] => {
                assumed.push(said!["The uppers are not in this build: taken as long as the lowers."]);
                [known; 2]
            }
            [None, Some(known)] => {
                assumed.push(said!["The lowers are not in this build: taken as long as the uppers."]);
                [known; 2]
            }
            [None, None] => {
                return Err(said![
                    "This needs a lower or an upper link of this axle with its length: add it to the build."
                ]);
            }
        };
        for (slope, name) in [(slopes.lower, "lowers"), (slopes.upper, "uppers")] {
            if slope.is_none() {
                assumed.push(said!["The ", (name), " are taken to be level, seen from the side."]);
            }
        }
        for ((link, _), name) in [(lower, "lowers"), (upper, "uppers")] {
            let at = At::of_link(document, link);
            let angle = inputs::PLAN_ANGLE.value(document, at).unwrap_or(0.0);
            if angle > 0.0 && inputs::PLAN_ANGLE.decided(document, at).is_none() {
                assumed.push(said![
                    "The ",
                    (name),
                    " are taken to converge at ",
                    (angle, Angle),
                    ", seen from above: measure it."
                ]);
            }
        }
        let middle = tire / 2.0;
        let arm = |(link, length): (usize, f64), slope: Option<f64>, height: f64| Arm {
            length,
            plan: inputs::PLAN_ANGLE.value(document, At::of_link(document, link)).unwrap_or(0.0),
            slope: slope.unwrap_or(0.0),
            over_middle: height - middle,
        };
        Ok(Self { lower: arm(lower, slopes.lower, low), upper: arm(upper, slopes.upper, high), assumed })
    }

    /// How far the middle of the axle goes toward the frame's end of its links when it is tilted.
    pub fn shift(&self, tilt: f64, through: Through, sheet: &mut Sheet) -> f64 {
        let stays = match through {
            Through::Uppers => self.lower,
            Through::Lowers => self.upper,
            // Both change, so that the middle stays.
            Through::Both => return 0.0,
        };
        let [run, rise, _] = stays.reach(sheet);
        sheet.work(&formulas::AXLE_SHIFT, &[run, rise, stays.over_middle, tilt])
    }

    /// The change of every link of a role, for a tilt and a shift.
    pub(super) fn changes(
        &self,
        document: &Document,
        index: usize,
        role: Role,
        tilt: f64,
        shift: f64,
        sheet: &mut Sheet,
    ) -> Vec<LinkChange> {
        let arm = if role == Role::Upper { self.upper } else { self.lower };
        let links = of_role(document, index, role);
        let mut change = |link: Option<usize>| {
            let length = link.and_then(|link| inputs::LENGTH.value(document, At::of_link(document, link)));
            let arm = Arm { length: length.unwrap_or(arm.length), ..arm };
            LinkChange { role, link, change: arm.there(tilt, shift, sheet) - arm.length }
        };
        if links.is_empty() { vec![change(None)] } else { links.into_iter().map(|link| change(Some(link))).collect() }
    }

    /// The tilt that a change of the uppers alone, or of the lowers alone, gives; none where it is out of reach.
    pub fn tilt_of(&self, change: f64, through: Through) -> Option<f64> {
        let moved = match through {
            Through::Uppers => self.upper,
            Through::Lowers => self.lower,
            Through::Both => return None,
        };
        let gives = |tilt: f64| {
            let sheet = &mut Sheet::silent();
            let shift = self.shift(tilt, through, sheet);
            moved.there(tilt, shift, sheet) - moved.length
        };
        if change == 0.0 {
            return Some(0.0);
        }
        // Longer uppers and shorter lowers bring the pinion up.
        let up = if (change > 0.0) == (through == Through::Uppers) { 1.0 } else { -1.0 };
        let over = |tilt: f64| (gives(up * tilt) - change) * change.signum();
        let most = 30.0 * DEGREE;
        let above = over(most);
        (above > 0.0).then(|| up * crossing((0.0, -change.abs()), (most, above), 1e-9, over))
    }
}

impl Arm {
    /// Run along the rig, rise toward the frame, reach across the rig.
    fn reach(self, sheet: &mut Sheet) -> [f64; 3] {
        let Self { length, plan, slope, .. } = self;
        [
            sheet.work(&formulas::LINK_RUN, &[length, plan, slope]),
            sheet.work(&formulas::LINK_RISE, &[length, plan, slope]),
            sheet.work(&formulas::LINK_ACROSS, &[length, plan]),
        ]
    }

    /// Its length with the axle tilted and moved.
    pub fn there(self, tilt: f64, shift: f64, sheet: &mut Sheet) -> f64 {
        let [run, rise, across] = self.reach(sheet);
        sheet.work(&formulas::LENGTH_THERE, &[run, rise, across, self.over_middle, tilt, shift])
    }
}
