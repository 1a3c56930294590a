//! Pinion, caster, shift, side shift and toe, beside a solver that knows nothing of the engine's formulas.

use crate::rig::{document, words};
use linkwright::document::{Document, Link, Position, Role, Side, TieRodSide};
use linkwright::engine::fitting::Standing;
use linkwright::engine::fitting::moves::{Moved, SideView, Slopes, Through, Wanted, move_by};
use linkwright::quantity::{deg, inch};

/// A rig with lowers and uppers at one axle.
pub(crate) struct Rig {
    lower: f64,
    upper: f64,
    slopes: [f64; 2],
    plan: f64,
    heights: [f64; 2],
    tire: f64,
    position: Position,
}

impl Rig {
    pub(crate) fn document(&self) -> Document {
        let mut document = document();
        document.rig.tire = Some(self.tire);
        for axle in &mut document.rig.axles {
            (axle.lower_height, axle.upper_height) = (Some(self.heights[0]), Some(self.heights[1]));
        }
        let at = |role, length, plan| Link {
            role,
            position: self.position,
            length: Some(length),
            plan_angle: Some(plan),
            seat: Some(Side::Both),
            ..document.links[0].clone()
        };
        document.links = vec![at(Role::Upper, self.upper, self.plan), at(Role::Lower, self.lower, 0.0)];
        document
    }

    pub(crate) fn slopes(&self) -> Slopes {
        Slopes { lower: Some(self.slopes[0]), upper: Some(self.slopes[1]) }
    }

    fn ask(&self, wanted: Wanted, through: Through) -> Moved {
        move_by(&self.document(), 0, wanted, through, self.slopes())
    }

    /// Where each link's frame end is, in space: x toward the middle of the rig, y across, z up, from the axle's middle.
    fn frame(&self) -> [[f64; 3]; 2] {
        let at = |length: f64, plan: f64, slope: f64, height: f64| {
            let flat = length * plan.cos();
            [flat * slope.cos(), length * plan.sin(), height - self.tire / 2.0 + flat * slope.sin()]
        };
        [
            at(self.lower, 0.0, self.slopes[0], self.heights[0]),
            at(self.upper, self.plan, self.slopes[1], self.heights[1]),
        ]
    }

    /// Lengths of lower and upper with the axle moved by x and tilted, by turning its mounts as complex numbers.
    fn lengths(&self, x: f64, tilt: f64) -> [f64; 2] {
        let frame = self.frame();
        [0, 1].map(|link| {
            // The nose, toward +x, goes up: from +x toward +z.
            let (re, im) = (0.0, self.heights[link] - self.tire / 2.0);
            let (turned_x, turned_z) = (re * tilt.cos() - im * tilt.sin(), re * tilt.sin() + im * tilt.cos());
            let [fx, fy, fz] = frame[link];
            ((fx - x - turned_x).powi(2) + fy * fy + (fz - turned_z).powi(2)).sqrt()
        })
    }

    /// Where the axle goes when its links have these lengths: Newton's steps on both lengths at once, slopes by
    /// differences.
    fn solve(&self, wanted: [f64; 2]) -> (f64, f64) {
        let (mut x, mut tilt) = (0.0, 0.0);
        for _ in 0..60 {
            let off = |x: f64, tilt: f64| {
                let lengths = self.lengths(x, tilt);
                [lengths[0] - wanted[0], lengths[1] - wanted[1]]
            };
            let (h, k) = (1e-6, 1e-6);
            let here = off(x, tilt);
            let by_x = [0, 1].map(|i| (off(x + h, tilt)[i] - off(x - h, tilt)[i]) / (2.0 * h));
            let by_tilt = [0, 1].map(|i| (off(x, tilt + k)[i] - off(x, tilt - k)[i]) / (2.0 * k));
            let determinant = by_x[0] * by_tilt[1] - by_x[1] * by_tilt[0];
            x -= (here[0] * by_tilt[1] - here[1] * by_tilt[0]) / determinant;
            tilt -= (by_x[0] * here[1] - by_x[1] * here[0]) / determinant;
        }
        (x, tilt)
    }
}

/// Where an axle stands.
pub(crate) struct Solved {
    pub(crate) tilt: f64,
}

impl Rig {
    /// Where it goes when its lowers and uppers are so much longer.
    pub(crate) fn solved(&self, lower: f64, upper: f64) -> Solved {
        Solved { tilt: self.solve([self.lower + lower, self.upper + upper]).1 }
    }
}

/// Numbers that look like chance.
struct Dice(u64);

impl Dice {
    fn between(&mut self, least: f64, most: f64) -> f64 {
        self.0 = self.0.wrapping_mul(6_364_136_223_846_793_005).wrapping_add(1_442_695_040_888_963_407);
        least + (most - least) * (self.0 >> 11) as f64 / (1_u64 << 53) as f64
    }

    fn rig(&mut self) -> Rig {
        let tire = inch(self.between(30.0, 44.0));
        let low = self.between(10.0, 18.0);
        Rig {
            lower: inch(self.between(20.0, 50.0)),
            upper: inch(self.between(16.0, 48.0)),
            slopes: [deg(self.between(-8.0, 18.0)), deg(self.between(-8.0, 18.0))],
            plan: deg(self.between(0.0, 40.0)),
            heights: [inch(low), inch(low + self.between(5.0, 12.0))],
            tire,
            position: if self.between(0.0, 1.0) < 0.5 { Position::Front } else { Position::Rear },
        }
    }
}

fn change(moved: &Moved, role: Role) -> f64 {
    moved.changes.iter().find(|change| change.role == role).map_or(0.0, |change| change.change)
}

#[test]
fn two_hundred_axles_stand_where_an_independent_solver_puts_them() {
    let mut dice = Dice(20);
    for number in 0..200 {
        let rig = dice.rig();
        let tilt = deg(dice.between(-5.0, 5.0));
        let through = [Through::Uppers, Through::Lowers, Through::Both][number % 3];
        let toward = if rig.position == Position::Rear { 1.0 } else { -1.0 };
        let moved = rig.ask(Wanted::PinionUp(tilt), through);
        assert_eq!(moved.standing, Standing::Good, "{number}: {:?}", moved.instead);
        let wanted = [rig.lower + change(&moved, Role::Lower), rig.upper + change(&moved, Role::Upper)];
        let (x, solved) = rig.solve(wanted);
        assert!((solved - tilt).abs() < 1e-8, "{number}: {solved} {tilt}");
        assert!((x * toward - moved.forward).abs() < 1e-8, "{number}: {x} {}", moved.forward);
        // And back: the tilt that the change gives.
        let view = SideView::of(&rig.document(), 0, rig.slopes()).expect("a view");
        if through != Through::Both {
            let role = if through == Through::Uppers { Role::Upper } else { Role::Lower };
            let back = view.tilt_of(change(&moved, role), through).expect("within reach");
            assert!((back - tilt).abs() < 1e-7, "{number}: {back} {tilt}");
        }
        let shift = inch(dice.between(-2.0, 2.0));
        let moved = rig.ask(Wanted::Forward(shift), Through::Uppers);
        let wanted = [rig.lower + change(&moved, Role::Lower), rig.upper + change(&moved, Role::Upper)];
        let (x, solved) = rig.solve(wanted);
        assert!((x * toward - shift).abs() < 1e-8 && solved.abs() < 1e-8, "{number}: {x} {solved}");
    }
}

/// A 3-link on level links, 37 in tires.
pub(crate) fn level(position: Position, spacing: f64) -> Rig {
    Rig {
        lower: inch(40.0),
        upper: inch(36.0),
        slopes: [0.0; 2],
        plan: 0.0,
        heights: [inch(15.0), inch(15.0 + spacing)],
        tire: inch(37.0),
        position,
    }
}

/// The trade's table of degrees for a turn of both uppers, atan(2P / spacing): it takes the lower mount as a hinge that
/// stays, so it agrees to a hundredth of a degree, and not to the last digit.
#[test]
fn a_turn_of_the_uppers_tilts_as_the_trade_prints_it() {
    let table = [(16.0, [1.19, 0.90, 0.72]), (14.0, [1.36, 1.02, 0.82]), (12.0, [1.59, 1.19, 0.95])];
    let mut furthest: f64 = 0.0;
    for (threads, degrees) in table {
        for (spacing, prints) in [6.0, 8.0, 10.0].into_iter().zip(degrees) {
            let rig = level(Position::Rear, spacing);
            let view = SideView::of(&rig.document(), 0, rig.slopes()).expect("a view");
            let tilt = view.tilt_of(inch(2.0 / threads), Through::Uppers).expect("within reach");
            furthest = furthest.max((tilt / deg(1.0) - prints).abs());
        }
    }
    assert!(furthest < 0.015, "{furthest}");
    assert!(furthest > 1e-6, "the table is an approximation");
}

#[test]
fn signs_are_those_of_a_rig() {
    for position in Position::ALL {
        let rig = level(position, 9.0);
        let up = rig.ask(Wanted::PinionUp(deg(2.0)), Through::Uppers);
        assert!(change(&up, Role::Upper) > 0.0 && change(&up, Role::Lower) == 0.0, "longer uppers: pinion up");
        let lowers = rig.ask(Wanted::PinionUp(deg(2.0)), Through::Lowers);
        assert!(change(&lowers, Role::Lower) < 0.0 && change(&lowers, Role::Upper) == 0.0);
        let both = rig.ask(Wanted::PinionUp(deg(2.0)), Through::Both);
        assert!(change(&both, Role::Lower) < 0.0 && change(&both, Role::Upper) > 0.0 && both.forward == 0.0);
        let forward = rig.ask(Wanted::Forward(inch(0.5)), Through::Uppers);
        let sign = if position == Position::Rear { -1.0 } else { 1.0 };
        for role in [Role::Lower, Role::Upper] {
            assert!((change(&forward, role) - sign * inch(0.5)).abs() < 1e-12, "level links change by the shift");
        }
    }
    // More caster leans the steering axis back, which brings a front pinion down: shorter uppers.
    let front = level(Position::Front, 9.0);
    let caster = front.ask(Wanted::Caster(deg(2.0)), Through::Uppers);
    assert!(change(&caster, Role::Upper) < 0.0 && (caster.tilt + deg(2.0)).abs() < 1e-12);
    assert!(caster.says.iter().any(|says| words(says).contains("The pinion goes down by the same 2°")));
    let pinion = front.ask(Wanted::PinionUp(deg(2.0)), Through::Uppers);
    assert!(pinion.says.iter().any(|says| words(says).contains("Caster goes down by the same 2°")));
    let rear = level(Position::Rear, 9.0).ask(Wanted::Caster(deg(2.0)), Through::Uppers);
    assert_eq!(rear.standing, Standing::NotJudged);
    assert!(words(&rear.instead.expect("why")).contains("Caster belongs to the axle that steers"));
}

fn one(role: Role, length: f64) -> Document {
    let mut document = document();
    let link = &mut document.links[0];
    (link.role, link.length, link.position) = (role, Some(length), Position::Front);
    document
}

/// A track bar as a circle around its frame end.
#[test]
fn a_track_bar_moves_the_axle_along_its_circle() {
    for slope in [0.0, 5.0, 12.0, 25.0] {
        for shift in [-1.0, -0.25, 0.5, 1.0] {
            let mut document = one(Role::TrackBar, inch(34.0));
            document.links[0].slope = Some(deg(slope));
            let moved =
                move_by(&document, 0, Wanted::AwayFromFrameEnd(inch(shift)), Through::Uppers, Slopes::default());
            let longer = inch(34.0) + change(&moved, Role::TrackBar);
            // At its height the axle lies where the longer circle crosses that height.
            let height = inch(34.0) * deg(slope).sin();
            let crossing = (longer * longer - height * height).sqrt() - inch(34.0) * deg(slope).cos();
            assert!((crossing - inch(shift)).abs() < 1e-12, "{slope} {shift}");
            // About change · cos(slope), as the trade has it.
            assert!((change(&moved, Role::TrackBar) - inch(shift) * deg(slope).cos()).abs() < inch(0.01));
            assert!(moved.says.iter().any(|says| words(says).contains("drag link")));
        }
    }
}

/// Toe from the angle of both wheels, by sines.
#[test]
fn a_tie_rod_sets_toe_by_its_arms() {
    for (side, sign) in [(TieRodSide::Behind, 1.0), (TieRodSide::Ahead, -1.0)] {
        let mut document = one(Role::TieRod, inch(50.0));
        document.links[0].tie_rod_side = Some(side);
        (document.rig.tire, document.rig.steering_arm) = (Some(inch(37.0)), Some(inch(6.5)));
        for toe in [0.125, -0.25] {
            let moved = move_by(&document, 0, Wanted::ToeIn(inch(toe)), Through::Uppers, Slopes::default());
            let angle = (inch(toe) / 2.0 / inch(37.0)).asin();
            let by_arms = 2.0 * inch(6.5) * angle.sin() * sign;
            assert!((change(&moved, Role::TieRod) - by_arms).abs() < 1e-12, "{side:?} {toe}");
            assert!(moved.says.iter().any(|says| words(says).contains("drag link")));
        }
    }
}

#[test]
fn what_is_missing_or_too_much_is_said() {
    let rig = level(Position::Front, 9.0);
    let cases = [
        (rig.document(), Wanted::PinionUp(deg(40.0)), "15° at most"),
        (rig.document(), Wanted::Forward(f64::NAN), "smaller change"),
        (rig.document(), Wanted::AwayFromFrameEnd(inch(0.5)), "track bar of this axle"),
        (rig.document(), Wanted::ToeIn(inch(0.1)), "tie rod of this axle"),
        (one(Role::TieRod, inch(50.0)), Wanted::PinionUp(deg(1.0)), "lower or an upper link"),
        (level(Position::Front, -3.0).document(), Wanted::PinionUp(deg(1.0)), "must lie below"),
    ];
    for (document, wanted, says) in cases {
        let moved = move_by(&document, 0, wanted, Through::Uppers, Slopes::default());
        assert_eq!((moved.standing, moved.changes.len()), (Standing::NotJudged, 0), "{says}");
        let why = words(&moved.instead.expect("a reason"));
        assert!(why.contains(says), "{why}");
    }
    // What was taken for granted is told.
    let bare =
        move_by(&one(Role::Upper, inch(34.0)), 0, Wanted::PinionUp(deg(1.0)), Through::Uppers, Slopes::default());
    let assumed: Vec<String> = bare.assumed.iter().map(|assumed| words(assumed)).collect();
    for must in
        ["Lower mount height", "Upper mount height", "lowers are not in this build", "uppers are taken to be level"]
    {
        assert!(assumed.iter().any(|words| words.contains(must)), "{must}: {assumed:?}");
    }
}
