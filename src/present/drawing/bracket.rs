//! The bracket at one end, seen across its bolt: ears, spacers, ball and bolt, with the grip, to scale.

use super::rod_end;
use super::sketch::{Dimension, Label, Sketch};
use super::{Drawing, Layout, NARROW};
use crate::document::{Document, OWN_ROD_END, Spacers};
use crate::engine;
use crate::engine::tables::{bolt_threads, rod_ends};
use crate::inputs::{self, At, Number};
use crate::present::words;
use crate::quantity::System;
use crate::report::{Answer, EndGeometry, Part};

/// Height of a bolt's head and of its nut in bolt diameters, and the width of both, as most are made.
const HEAD: f64 = 0.65;
const NUT: f64 = 0.9;
const ACROSS: f64 = 1.5;
/// Width of the ball's flat faces in bores, for the picture only.
const FACE: f64 = 1.25;
/// The most that the rod end's head may take of the height.
const TALLEST: f64 = 150.0;
/// Half the height of an ear, in bolt diameters.
const EAR: f64 = 1.5;

/// What is clamped at one end. Lengths SI.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Stack {
    /// Thickness of an ear.
    pub ear: f64,
    /// Whether that was entered.
    pub ear_given: bool,
    /// Spacer on each side of the ball; 0 without one.
    pub spacer: f64,
    /// Diameter of its face on the ear.
    pub foot: f64,
    /// Whether it reaches into the ball.
    pub steps_down: bool,
    /// Room on each side that nothing fills.
    pub gap: f64,
    /// Width of the ball.
    pub ball: f64,
    /// Diameter of the bolt.
    pub bolt: f64,
    /// Thickness of the rod end's head, where it is known.
    pub head: Option<f64>,
}

impl Stack {
    /// What is clamped at an end of an answered link; `None` while only the user knows the bolt or its spacers.
    pub fn of(document: &Document, link: usize, answer: &Answer, index: usize) -> Option<Self> {
        let end = answer.link.ends.get(index)?;
        let at = At { end: index, ..At::of_link(document, link) };
        let value = |input: &'static Number| input.value(document, at);
        let [ear, spacer, gap] = [value(&inputs::EAR)?, value(&inputs::SPACER)?, value(&inputs::GAP)?];
        let kind = document.links.get(link)?.spacer_kind.unwrap_or_default();
        let steps_down = kind == Spacers::HighMisalignment;
        if steps_down && spacer <= 0.0 {
            return None;
        }
        let largest = || bolt_threads::for_bore(end.bore).map_or(end.bore, |size| size.diameter);
        let bolt = value(&inputs::BOLT_DIAMETER).or_else(|| (!steps_down).then(largest))?;
        // The engine knows how wide a spacer is taken to be.
        let parts = engine::parts(document, link, answer);
        let assumed = || {
            parts.iter().find_map(|part| match part {
                Part::Spacer { bore: Some(bore), foot, .. } if (bore - bolt).abs() < 1e-9 => *foot,
                _ => None,
            })
        };
        let foot = value(&inputs::SPACER_FOOT).or_else(assumed).unwrap_or(bolt);
        let ear_given = inputs::EAR.decided(document, at).is_some();
        let head = if end.rod_end_id == OWN_ROD_END {
            value(&inputs::OWN_HEAD_THICKNESS)
        } else {
            rod_ends::find(end.rod_end_id).map(|row| row.head_width)
        };
        Some(Self { ear, ear_given, spacer, foot, steps_down, gap, ball: end.ball_width, bolt, head })
    }

    /// Between the ears.
    pub fn between_ears(&self) -> f64 {
        self.ball + 2.0 * (self.spacer + self.gap)
    }

    /// The least length of the bolt without thread.
    pub fn grip(&self) -> f64 {
        self.between_ears() + 2.0 * self.ear
    }
}

/// The bracket at an end of an answered link; nothing while only the user knows its bolt or its spacers.
pub fn bracket(
    document: &Document,
    link: usize,
    answer: &Answer,
    index: usize,
    layout: Layout,
    system: System,
) -> Option<Drawing> {
    let stack = Stack::of(document, link, answer, index)?;
    Some(drawn(&stack, answer.link.ends.get(index)?, words::letter(index), layout, system))
}

fn drawn(stack: &Stack, end: &EndGeometry, letter: &str, layout: Layout, system: System) -> Drawing {
    let mut sketch = Sketch::new(NARROW, layout.detail_lettering());
    let length = |value: f64| words::length(value, system);
    let head = rod_end::head(end);
    let long = stack.grip() + (HEAD + NUT) * stack.bolt;
    let high = head.max(2.0 * EAR * stack.bolt).max(stack.foot);
    let scale = ((NARROW - 60.0) / long).min(TALLEST / high);
    let grip_row = sketch.over() + 2.0;
    let half = high / 2.0 * scale;
    let axis = grip_row + 10.0 + half;
    let middle = NARROW / 2.0 + (HEAD - NUT) / 2.0 * stack.bolt * scale;
    let view = View { stack, middle, axis, scale };
    let bottom = axis + half + 16.0;
    view.rod_end(&mut sketch, end, bottom);
    for side in [-1.0, 1.0] {
        view.spacer(&mut sketch, side, end.bore);
        view.ear(&mut sketch, side);
    }
    view.bolt(&mut sketch);
    let out = (stack.grip() / 2.0 + NUT * stack.bolt) * scale + 8.0;
    sketch.line("center", (middle - out, axis), (middle + out, axis));
    let ear = EAR * stack.bolt * scale;
    let across = |half: f64| [view.x(-1.0, half), view.x(1.0, half)];
    sketch.dimension(&Dimension {
        class: "",
        ends: across(stack.grip() / 2.0),
        parts: [axis - ear; 2],
        row: grip_row,
        words: &format!("grip {}", length(stack.grip())),
        label: Label::Over,
    });
    let gap_row = bottom + 8.0;
    sketch.dimension(&Dimension {
        class: "",
        ends: across(stack.between_ears() / 2.0),
        parts: [axis + ear; 2],
        row: gap_row,
        words: &format!("ears {} apart", length(stack.between_ears())),
        label: Label::Under,
    });
    let notes = notes(stack, system);
    let below = sketch.notes(gap_row + sketch.under() + 5.0, &notes);
    let ring = sketch.ring() + 2.0;
    sketch.balloon((ring, ring), letter);
    let spoken = format!(
        "The bracket at end {letter} across its bolt, to scale: {}; grip {}, {} between the ears.",
        notes.join("; "),
        length(stack.grip()),
        length(stack.between_ears())
    );
    sketch.finish("bracket", below + 3.0, spoken)
}

fn notes(stack: &Stack, system: System) -> Vec<String> {
    let length = |value: f64| words::length(value, system);
    let assumed = if stack.ear_given { "" } else { " (assumed)" };
    let mut notes = vec![
        format!("bolt {}", words::trade(stack.bolt, system)),
        format!("ears {} thick{assumed}", length(stack.ear)),
    ];
    if stack.spacer > 0.0 {
        let kind = if stack.steps_down { "high-misalignment spacers" } else { "spacers" };
        notes.push(format!("{kind}, {} each side", length(stack.spacer)));
    }
    if stack.gap > 0.0 {
        notes.push(format!("gap, {} each side", length(stack.gap)));
    }
    notes
}

/// The stack on the sheet.
struct View<'a> {
    stack: &'a Stack,
    middle: f64,
    axis: f64,
    scale: f64,
}

impl View<'_> {
    /// The place on the sheet of a point so far from the middle of the ball, to one side.
    fn x(&self, side: f64, from_middle: f64) -> f64 {
        self.middle + side * from_middle * self.scale
    }

    fn block(&self, sketch: &mut Sketch, class: &str, side: f64, along: [f64; 2], half: f64) {
        let half = half * self.scale;
        let [from, to] = along.map(|at| self.x(side, at));
        sketch.block(class, (from, self.axis - half), (to, self.axis + half));
    }

    /// The ball, the head on edge, and the shank toward the bar.
    fn rod_end(&self, sketch: &mut Sketch, end: &EndGeometry, bottom: f64) {
        // A ball cut to its width: nobody publishes how wide its flat faces are.
        let ball = self.stack.ball / 2.0;
        self.block(sketch, "part", 1.0, [-ball, ball], FACE * end.bore / 2.0);
        if let Some(thick) = self.stack.head {
            let head = rod_end::head(end) / 2.0;
            self.block(sketch, "part", 1.0, [-thick / 2.0, thick / 2.0], head);
            let (shank, neck) = (end.thread.major / 2.0 * self.scale, self.axis + head * self.scale);
            sketch.block("part", (self.middle - shank, neck), (self.middle + shank, bottom));
        }
    }

    fn spacer(&self, sketch: &mut Sketch, side: f64, bore: f64) {
        let stack = self.stack;
        if stack.spacer <= 0.0 {
            return;
        }
        let face = stack.ball / 2.0;
        let ear = face + stack.spacer;
        let foot = stack.foot / 2.0 * self.scale;
        // At the ball no wider than its flat face: a high-misalignment spacer narrows to the bore and reaches into it.
        let neck = if stack.steps_down { bore / 2.0 * self.scale } else { foot };
        let (near, far, axis) = (self.x(side, face), self.x(side, ear), self.axis);
        sketch.path(
            "part",
            vec![(near, axis - neck), (far, axis - foot), (far, axis + foot), (near, axis + neck)],
            true,
        );
        if stack.steps_down {
            for way in [-1.0, 1.0] {
                sketch.line("hidden", (near, axis + way * neck), (self.x(side, 0.0), axis + way * neck));
            }
        }
    }

    fn ear(&self, sketch: &mut Sketch, side: f64) {
        let inside = self.stack.between_ears() / 2.0;
        self.block(sketch, "part bar", side, [inside, inside + self.stack.ear], EAR * self.stack.bolt);
    }

    /// The bolt with its head on the left and its nut on the right, hidden where something is around it.
    fn bolt(&self, sketch: &mut Sketch) {
        let Stack { bolt, gap, ear, .. } = *self.stack;
        let outside = self.stack.grip() / 2.0;
        let shank = bolt / 2.0 * self.scale;
        for (side, high) in [(-1.0, HEAD), (1.0, NUT)] {
            self.block(sketch, "part", side, [outside, outside + high * bolt], ACROSS / 2.0 * bolt);
            let bare = (outside - ear - gap, outside - ear);
            for y in [self.axis - shank, self.axis + shank] {
                sketch.line("hidden", (self.x(side, 0.0), y), (self.x(side, outside), y));
                if gap > 0.0 {
                    sketch.line("edge", (self.x(side, bare.0), y), (self.x(side, bare.1), y));
                }
            }
        }
    }
}
