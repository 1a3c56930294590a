//! The rig from above, to scale: each link under its number in the list.

use super::drawing::both;
use super::known::Known;
use super::markup::Markup;
use super::pen::{Hang, Pen};
use super::state::{Bench, Whole};
use super::tag::{Piece, tag};
use super::{storage, words};
use linkwright::engine::math::{cosine, sine};
use linkwright::quantity::inch;
use linkwright::report::{LinkReport, Plan, Verdict};

/// Width of a tire, for the picture only.
const TIRE_WIDTH: f64 = inch(12.5);
/// As wide as a finger; on a phone, where the sheet is as wide as the screen, 48 px.
const TOUCH: f64 = 46.0;
/// Around a number, so that nothing runs into it.
const BALLOON: f64 = 16.0;
/// Height of the sheet where the rig lies on its side.
const LYING: f64 = 330.0;

/// The picture; touching a link opens it.
pub(super) fn plan(bench: Bench, open: impl Fn(usize) + 'static) -> Vec<Piece> {
    let drawn = Known::new(move || bench.whole.with(|whole| whole.as_ref().map(picture).unwrap_or_default()));
    let touched = move |event: leptos::ev::Event| {
        let at = storage::attribute(&event, "data-piece").and_then(|index| index.parse().ok());
        if let Some(index) = at {
            open(index);
        }
    };
    let help = "Lengths, angles, track and wheelbase to scale; where on its axle a link is bolted is assumed. Touch a number to open that link.";
    vec![
        tag("figure class='drawing plan'").on("click", touched).markup(move || drawn.get()),
        tag("p class=help").with(help),
    ]
}

fn picture(whole: &Whole) -> Markup {
    let listed: Vec<String> = whole
        .document
        .links
        .iter()
        .enumerate()
        .map(|(index, link)| format!("{} {}", index + 1, words::lower(&link.title())))
        .collect();
    let worst = whole.rig.worst_first.first().map_or(1, |index| index + 1);
    let said = format!(
        "The rig from above, drawn to scale, front axle first. The worst is number {worst}. {}.",
        listed.join(", ")
    );
    both(|class, width| drawn(whole, class, width, &said))
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
    fn new(plan: &Plan, width: f64) -> (Self, f64) {
        let lying = width > 600.0;
        let wide = plan.track + TIRE_WIDTH;
        let long = plan.wheelbase + plan.tire;
        let scale = if lying { ((LYING - 30.0) / wide).min((width - 40.0) / long) } else { (width - 40.0) / wide };
        let height = if lying { LYING } else { long * scale + 40.0 };
        let (across, along) = if lying { (height, width) } else { (width, height) };
        let front = (along - long * scale) / 2.0 + plan.tire / 2.0 * scale;
        (Self { lying, scale, middle: across / 2.0, front, wheelbase: plan.wheelbase }, height)
    }

    fn on_sheet(&self, [ahead, left]: [f64; 2]) -> (f64, f64) {
        let along = self.front + (self.wheelbase - ahead) * self.scale;
        if self.lying { (along, self.middle + left * self.scale) } else { (self.middle - left * self.scale, along) }
    }
}

fn drawn(whole: &Whole, class: &str, width: f64, said: &str) -> Markup {
    let plan = &whole.plan;
    let (frame, height) = Frame::new(plan, width);
    let mut pen = Pen::new();
    let tires = tires(plan, &frame);
    for (a, b) in &tires {
        pen.block("part", a.0, a.1, b.0, b.1);
    }
    for (name, axle) in [("front", plan.wheelbase), ("rear", 0.0)] {
        let half = plan.track / 2.0;
        let [a, b] = [half, -half].map(|left| frame.on_sheet([axle, left]));
        pen.line("edge", a.0, a.1, b.0, b.1);
        let beyond = if axle > 0.0 { axle + plan.tire / 2.0 } else { -plan.tire / 2.0 };
        let at = frame.on_sheet([beyond, 0.0]);
        // Outside of the tires, where no link reaches.
        let (hang, dx, dy) = match (frame.lying, axle > 0.0) {
            (true, true) => (Hang::End, -8.0, 4.0),
            (true, false) => (Hang::Start, 8.0, 4.0),
            (false, true) => (Hang::Middle, 0.0, -8.0),
            (false, false) => (Hang::Middle, 0.0, 16.0),
        };
        pen.text("faint", hang, at.0 + dx, at.1 + dy, name);
    }
    for placed in &plan.placed {
        let ((x1, y1), (x2, y2)) = (frame.on_sheet(placed.from), frame.on_sheet(placed.to));
        let kind = match whole.links.get(placed.link) {
            Some(LinkReport::Answer(answer)) if answer.verdict == Verdict::Fails => "piece fails",
            Some(LinkReport::Answer(answer)) if answer.verdict == Verdict::Close => "piece close",
            Some(LinkReport::Answer(answer)) if answer.verdict == Verdict::Bends => "piece bends",
            Some(LinkReport::Answer(_)) => "piece",
            Some(LinkReport::Impossible(_)) => "piece fails open",
            _ => "piece open",
        };
        pen.line(kind, x1, y1, x2, y2);
        pen.circle("eye", x1, y1, 4.0);
        pen.circle("eye", x2, y2, 4.0);
    }
    // Numbers last, so that no line runs through one.
    for (placed, (from, at)) in plan.placed.iter().zip(numbers(plan, &frame, &tires)) {
        if from != at {
            pen.line("leader", from.0, from.1, at.0, at.1);
        }
        pen.balloon(at.0, at.1, &(placed.link + 1).to_string());
        pen.touch_piece(placed.link, at.0, at.1, TOUCH / 2.0);
    }
    pen.svg(class, width, height, said)
}

/// A point on the sheet.
type Point = (f64, f64);

/// How far it is along both ways together.
fn distance(x: f64, y: f64) -> f64 {
    (x * x + y * y).sqrt()
}

fn apart(a: Point, b: Point) -> f64 {
    distance(a.0 - b.0, a.1 - b.1)
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

/// How far a point is outside of a block between two corners.
fn off_block(point: Point, (a, b): (Point, Point)) -> f64 {
    let out = |at: f64, a: f64, b: f64| (a.min(b) - at).max(at - a.max(b)).max(0.0);
    distance(out(point.0, a.0, b.0), out(point.1, a.1, b.1))
}

/// How far a point is from the line between two others.
fn off_line(point: Point, (a, b): (Point, Point)) -> f64 {
    let (x, y) = (b.0 - a.0, b.1 - a.1);
    let along = ((point.0 - a.0) * x + (point.1 - a.1) * y) / (x * x + y * y).max(1e-9);
    let along = along.clamp(0.0, 1.0);
    apart(point, (a.0 + along * x, a.1 + along * y))
}

/// Where each number stands, and the point of its link that it belongs to: on the link, or beside one that stands
/// upright; a finger apart from the others, off the tires and off other links as far as there is room.
fn numbers(plan: &Plan, frame: &Frame, tires: &[(Point, Point)]) -> Vec<(Point, Point)> {
    let lines: Vec<(Point, Point)> =
        plan.placed.iter().map(|placed| (frame.on_sheet(placed.from), frame.on_sheet(placed.to))).collect();
    let mut found: Vec<Option<(Point, Point)>> = vec![None; lines.len()];
    // The shorter a link is, the fewer places it has.
    let mut order: Vec<usize> = (0..lines.len()).collect();
    order.sort_by(|a, b| apart(lines[*a].0, lines[*a].1).total_cmp(&apart(lines[*b].0, lines[*b].1)));
    for own in order {
        let (a, b) = lines[own];
        let mut best = ((a, a), f64::NEG_INFINITY);
        for step in 0..36 {
            let (from, at) = if apart(a, b) < 1.0 {
                let (turn, far) = (f64::from(step % 12) * 30.0_f64.to_radians(), 24.0 + 16.0 * f64::from(step / 12));
                (a, (a.0 + far * cosine(turn), a.1 + far * sine(turn)))
            } else {
                // From the middle to both ends.
                let side = if step % 2 == 0 { 0.5 } else { -0.5 };
                let share = 0.5 + side * f64::from((step + 1) / 2) / 20.0;
                let at = (a.0 + share * (b.0 - a.0), a.1 + share * (b.1 - a.1));
                (at, at)
            };
            let others = found.iter().flatten().map(|(_, other)| apart(at, *other));
            let room = others.fold(TOUCH, f64::min) / TOUCH;
            let others = lines.iter().enumerate().filter(|(link, _)| *link != own).map(|(_, line)| *line);
            // What leads there keeps clear too, so that it crosses no other link.
            let half = ((from.0 + at.0) / 2.0, (from.1 + at.1) / 2.0);
            let clear = others.map(|line| off_line(at, line).min(off_line(half, line)));
            let clear = clear.fold(BALLOON, f64::min) / BALLOON;
            let dry = tires.iter().map(|tire| off_block(at, *tire)).fold(BALLOON, f64::min) / BALLOON;
            let good = 3.0 * room + clear + 2.0 * dry - 0.01 * f64::from(step);
            if good > best.1 {
                best = ((from, at), good);
            }
        }
        found[own] = Some(best.0);
    }
    found.into_iter().flatten().collect()
}
