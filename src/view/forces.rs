//! The axle with its forces, to scale, and what was assumed in words.

use super::markup::{Markup, element, said, unbroken};
use super::pen::{Hang, Pen};
use super::state::Bench;
use super::words;
use linkwright::quantity::{Kind, System, show};
use linkwright::report::{Answer, Axle};

/// Width and height of the sheet.
const SHEET: (f64, f64) = (344.0, 230.0);
/// Length of the longest arrow.
const LONGEST: f64 = 120.0;

/// The picture and the story under it.
pub(super) fn forces(bench: Bench) -> Markup {
    let system = bench.system.get();
    bench
        .with_answer(|answer| {
            let story = said("b", "Sized for: ") + unbroken(&bench.say(&answer.loads.story));
            let changed = words::changed("p", &answer.loads.axial_changed, &answer.loads.strike_changed);
            picture(answer, system) + element("p class=\"story\"", story) + changed
        })
        .unwrap_or_default()
}

fn picture(answer: &Answer, system: System) -> Markup {
    let Some(axle) = &answer.loads.axle else { return Markup::default() };
    let shown = |force| show(force, Kind::Force, system);
    let words = format!(
        "The axle from the side. The ground pushes the tires with {}. That would turn the axle over, so the lower links hold it back with {} and the upper links push it the other way with {}; the three are in balance. The higher the lower mount and the closer the upper one is to it, the more both links have to bear. Shock comes on top.",
        shown(axle.traction),
        shown(axle.lower),
        shown(axle.upper)
    );
    element("figure class=\"drawing axle\"", drawn(axle, &shown, &words)) + said("p", words)
}

fn drawn(axle: &Axle, shown: &impl Fn(f64) -> String, words: &str) -> Markup {
    let (width, height) = SHEET;
    let mut pen = Pen::new();
    let ground = height - 24.0;
    let tallest = axle.tire.max(axle.upper_height);
    let scale = (ground - 22.0) / tallest;
    let y = |above: f64| ground - above * scale;
    let hub = 0.36 * width;
    pen.line("edge", 8.0, ground, width - 8.0, ground);
    pen.circle("part", hub, y(axle.tire / 2.0), axle.tire / 2.0 * scale);
    pen.circle("part", hub, y(axle.tire / 2.0), 0.16 * axle.tire * scale);
    // A bracket from the lower mount to the upper one carries both links.
    pen.line("bracket", hub, y(axle.lower_height.min(axle.tire / 2.0)), hub, y(axle.upper_height));
    for (above, force, name, away) in
        [(axle.upper_height, axle.upper, "upper links", true), (axle.lower_height, axle.lower, "lower links", false)]
    {
        let at = y(above);
        pen.line("rod", hub, at, width - 30.0, at);
        pen.circle("hole", hub, at, 4.0);
        let long = LONGEST * force / axle.lower.max(axle.traction);
        // The links reach toward the middle of the rig, on the right.
        let (from, to) = if away { (hub + 20.0, hub + 20.0 + long) } else { (hub + 20.0 + long, hub + 20.0) };
        force_arrow(&mut pen, from, to, at);
        pen.text("size", Hang::End, width - 6.0, at - 8.0, &format!("{name} {}", shown(force)));
    }
    let long = LONGEST * axle.traction / axle.lower.max(axle.traction);
    force_arrow(&mut pen, hub + 6.0, hub + 6.0 + long, ground + 7.0);
    pen.text("size", Hang::Start, 8.0, ground + 19.0, &format!("ground {}", shown(axle.traction)));
    pen.svg("", width, height, words)
}

fn force_arrow(pen: &mut Pen, from: f64, to: f64, y: f64) {
    pen.line("force", from, y, to, y);
    pen.arrow("strike", to, y, if to > from { -10.0 } else { 10.0 }, 0.0);
}
