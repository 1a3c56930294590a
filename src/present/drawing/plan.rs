//! The rig from above, to scale: each link under its number in the list.

mod numbers;

use self::numbers::Balloons;
use super::sketch::Sketch;
use super::{Anchor, Area, Drawing, Layout, Point, Touch};
use crate::present::words;
use crate::quantity::inch;
use crate::report::{LinkReport, Plan, Verdict, WholeRig};

/// Width of a tire, for the picture only.
const TIRE_WIDTH: f64 = inch(12.5);
/// Across a place to touch: as wide as a finger. On a phone, where the sheet is as wide as the screen, 48 px.
const TOUCH: f64 = 46.0;
/// Height of the sheet where the rig lies on its side.
const LYING: f64 = 300.0;
/// What the rig keeps off the edges of the sheet beside it.
const BESIDE: f64 = 20.0;

/// The whole rig.
pub fn plan(whole: &WholeRig, layout: Layout) -> Drawing {
    let plan = &whole.plan;
    let mut sketch = Sketch::new(layout.width(), layout.lettering());
    let (frame, height) = Frame::new(plan, &sketch, layout);
    let tires = tires(plan, &frame);
    for (a, b) in &tires {
        sketch.block("part", *a, *b);
    }
    axles(&mut sketch, plan, &frame);
    let links: Vec<(Point, Point)> =
        plan.placed.iter().map(|placed| (frame.on_sheet(placed.from), frame.on_sheet(placed.to))).collect();
    for (placed, (from, to)) in plan.placed.iter().zip(&links) {
        sketch.line(class(whole.links.get(placed.link)), *from, *to);
        sketch.circle("eye", *from, 4.0);
        sketch.circle("eye", *to, 4.0);
    }
    // Numbers last, so that no line runs through one.
    let ring = sketch.ring();
    let balloons = Balloons { ring, touch: TOUCH, sheet: (layout.width(), height) };
    let numbers = balloons.place(&links, &tires);
    for (from, at) in &numbers {
        let far = numbers::apart(*from, *at);
        if far > ring {
            // As far as the ring.
            let share = 1.0 - ring / far;
            sketch.line("leader", *from, (from.0 + share * (at.0 - from.0), from.1 + share * (at.1 - from.1)));
        }
    }
    for (placed, (_, at)) in plan.placed.iter().zip(&numbers) {
        sketch.balloon(*at, &(placed.link + 1).to_string());
        sketch.touch(Touch::Link(placed.link), Area::Circle(*at, TOUCH / 2.0));
    }
    sketch.finish(layout.class(), height, spoken(whole))
}

/// The class of a link: by how it came out, broken while there is no answer.
fn class(report: Option<&LinkReport>) -> &'static str {
    match report {
        Some(LinkReport::Answer(answer)) => match answer.verdict {
            Verdict::Fails => "piece fails",
            Verdict::Close => "piece close",
            Verdict::Bends => "piece bends",
            Verdict::Passes | Verdict::Unanswered => "piece",
        },
        Some(LinkReport::Impossible(_)) => "piece fails open",
        _ => "piece open",
    }
}

/// The axles with their names outside of the tires, where no link reaches.
fn axles(sketch: &mut Sketch, plan: &Plan, frame: &Frame) {
    for (name, axle) in [("front", plan.wheelbase), ("rear", 0.0)] {
        let half = plan.track / 2.0;
        let [a, b] = [half, -half].map(|left| frame.on_sheet([axle, left]));
        sketch.line("edge", a, b);
        let beyond = if axle > 0.0 { axle + plan.tire / 2.0 } else { -plan.tire / 2.0 };
        let at = frame.on_sheet([beyond, 0.0]);
        let level = sketch.ascent() / 2.0;
        let (anchor, dx, dy) = match (frame.lying, axle > 0.0) {
            (true, true) => (Anchor::End, -8.0, level),
            (true, false) => (Anchor::Start, 8.0, level),
            (false, true) => (Anchor::Middle, 0.0, -8.0),
            (false, false) => (Anchor::Middle, 0.0, 6.0 + sketch.ascent()),
        };
        sketch.text("faint", anchor, (at.0 + dx, at.1 + dy), name);
    }
}

fn spoken(whole: &WholeRig) -> String {
    let links = whole.document.links.iter().enumerate();
    let listed: Vec<String> =
        links.map(|(index, link)| format!("{} {}", index + 1, words::lower(&link.title()))).collect();
    let worst = whole.rig.worst_first.first().map_or(1, |index| index + 1);
    format!("The rig from above, drawn to scale, front axle first. The worst is number {worst}. {}.", listed.join(", "))
}

/// From meters on the rig to the sheet: standing with the front up on a phone, lying with the front left on a desk.
struct Frame {
    lying: bool,
    scale: f64,
    middle: f64,
    front: f64,
    wheelbase: f64,
}

impl Frame {
    /// With the height of the sheet.
    fn new(plan: &Plan, sketch: &Sketch, layout: Layout) -> (Self, f64) {
        let (lying, width) = (layout == Layout::Wide, layout.width());
        let wide = plan.track + TIRE_WIDTH;
        let long = plan.wheelbase + plan.tire;
        // The names of the axles stand before and behind the rig.
        let names = if lying { sketch.width_of("front") + 14.0 } else { sketch.line_height() + 8.0 };
        let (scale, height) = if lying {
            (((LYING - 2.0 * BESIDE) / wide).min((width - 2.0 * names) / long), LYING)
        } else {
            let scale = (width - 2.0 * BESIDE) / wide;
            (scale, long * scale + 2.0 * names)
        };
        let (across, along) = if lying { (height, width) } else { (width, height) };
        let front = (along - long * scale) / 2.0 + plan.tire / 2.0 * scale;
        (Self { lying, scale, middle: across / 2.0, front, wheelbase: plan.wheelbase }, height)
    }

    fn on_sheet(&self, [ahead, left]: [f64; 2]) -> Point {
        let along = self.front + (self.wheelbase - ahead) * self.scale;
        if self.lying { (along, self.middle + left * self.scale) } else { (self.middle - left * self.scale, along) }
    }
}

/// The four tires, each by two corners.
fn tires(plan: &Plan, frame: &Frame) -> Vec<(Point, Point)> {
    let half = plan.track / 2.0;
    let wheels = [(plan.wheelbase, half), (plan.wheelbase, -half), (0.0, half), (0.0, -half)];
    let tire = |(axle, left): (f64, f64)| {
        let corner = |way: f64| frame.on_sheet([axle + way * plan.tire / 2.0, left + way * TIRE_WIDTH / 2.0]);
        (corner(1.0), corner(-1.0))
    };
    wheels.map(tire).to_vec()
}
