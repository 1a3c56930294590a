//! The rig from above, to scale: each link under its number in the list.

use super::drawing::both;
use super::known::Known;
use super::pen::{Hang, Pen};
use super::state::{Bench, Whole};
use super::tag::tag;
use super::{storage, words};
use leptos::prelude::*;
use linkwright::quantity::inch;
use linkwright::report::{LinkReport, Plan, Verdict};

/// Width of a tire, for the picture only.
const TIRE_WIDTH: f64 = inch(12.5);
/// Height of the sheet where the rig lies on its side.
const LYING: f64 = 330.0;

/// The picture; touching a link opens it.
pub(super) fn plan(bench: Bench, open: impl Fn(usize) + Send + 'static) -> Vec<AnyView> {
    let drawn =
        Known::new(move || bench.whole.with(|whole| whole.as_ref().map(|whole| picture(whole)).unwrap_or_default()));
    let touched = move |event: leptos::ev::Event| {
        let at = storage::attribute(&event, "data-piece").and_then(|index| index.parse().ok());
        if let Some(index) = at {
            open(index);
        }
    };
    let help = "Lengths, angles, track and wheelbase to scale; where on its axle a link is bolted is assumed. Touch a number to open that link.";
    vec![
        tag("figure class='drawing plan'").on("click", touched).markup(move || drawn.get()).into_any(),
        tag("p class=help").with(help).into_any(),
    ]
}

fn picture(whole: &Whole) -> String {
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

fn drawn(whole: &Whole, class: &str, width: f64, said: &str) -> String {
    let plan = &whole.plan;
    let (frame, height) = Frame::new(plan, width);
    let mut pen = Pen::new();
    for (name, axle) in [("front", plan.wheelbase), ("rear", 0.0)] {
        let half = plan.track / 2.0;
        let [a, b] = [half, -half].map(|left| frame.on_sheet([axle, left]));
        pen.line("edge", a.0, a.1, b.0, b.1);
        for left in [half, -half] {
            let corner =
                |ahead: f64, out: f64| frame.on_sheet([axle + ahead * plan.tire / 2.0, left + out * TIRE_WIDTH / 2.0]);
            let (a, b) = (corner(1.0, 1.0), corner(-1.0, -1.0));
            pen.block("part", a.0, a.1, b.0, b.1);
        }
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
            Some(LinkReport::Answer(_)) => "piece",
            Some(LinkReport::Impossible(_)) => "piece fails open",
            _ => "piece open",
        };
        pen.line(kind, x1, y1, x2, y2);
        pen.circle("eye", x1, y1, 4.0);
        pen.circle("eye", x2, y2, 4.0);
    }
    // Numbers last, so that no line runs through one.
    for placed in &plan.placed {
        let ((x1, y1), (x2, y2)) = (frame.on_sheet(placed.from), frame.on_sheet(placed.to));
        // A link that stands upright shows its number beside it.
        let upright = (x1 - x2).abs() + (y1 - y2).abs() < 1.0;
        let (x, y) =
            ((x1 + x2) / 2.0 + if upright { 12.0 } else { 0.0 }, (y1 + y2) / 2.0 + if upright { 12.0 } else { 0.0 });
        pen.balloon(x, y, &(placed.link + 1).to_string());
        pen.touch_piece(placed.link, x, y);
    }
    pen.svg(class, width, height, said)
}
