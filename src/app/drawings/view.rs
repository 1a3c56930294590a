//! A drawing as SVG. The style sheets decide weight, dash and color by the classes.

use leptos::prelude::*;
use linkwright::present::drawing::{Anchor, Area, Drawing, Mark, Point, Touch};

/// The drawing, named by what it says in words.
#[component]
pub(crate) fn DrawingView(
    /// What is drawn; every mark reads it, so it should be a memo.
    #[prop(into)]
    drawing: Signal<Drawing>,
    /// What a touch on it does.
    #[prop(optional, into)]
    on_touch: Option<Callback<Touch>>,
) -> impl IntoView {
    let view_box = move || drawing.with(|drawing| format!("0 0 {:.0} {:.0}", drawing.width, drawing.height));
    let on_paper = move |side: fn(&Drawing) -> f64| {
        move || drawing.with(|drawing| drawing.millimeters.map(|unit| format!("{:.1}mm", unit * side(drawing))))
    };
    let slots =
        Memo::new(move |_| drawing.with(|drawing| drawing.marks.iter().enumerate().map(Slot::of).collect::<Vec<_>>()));
    view! {
        <svg
            class=move || drawing.with(|drawing| drawing.class.clone())
            viewBox=view_box
            width=on_paper(|drawing| drawing.width)
            height=on_paper(|drawing| drawing.height)
            role="img"
            aria-label=move || drawing.with(|drawing| drawing.words.clone())
        >
            <For each=move || slots.get() key=Slot::clone let(slot)>
                {shown(slot, drawing, on_touch)}
            </For>
        </svg>
    }
}

/// The place of a mark in its drawing, with what of it a key seldom changes.
#[derive(Debug, Clone, PartialEq, Eq, Hash)]
struct Slot {
    index: usize,
    class: String,
    shape: Shape,
}

/// The element that a mark becomes.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
enum Shape {
    Path,
    Circle,
    Text(&'static str),
    TouchBlock(Touch),
    TouchCircle(Touch),
}

impl Slot {
    fn of((index, mark): (usize, &Mark)) -> Self {
        let (class, shape) = match mark {
            Mark::Line { class, .. } | Mark::Path { class, .. } | Mark::Blocks { class, .. } => {
                (class.as_str(), Shape::Path)
            }
            Mark::Circle { class, .. } => (class.as_str(), Shape::Circle),
            Mark::Text { class, anchor, .. } => (class.as_str(), Shape::Text(anchored(*anchor))),
            Mark::Touch { touch, area: Area::Block(..) } => ("touch", Shape::TouchBlock(*touch)),
            Mark::Touch { touch, area: Area::Circle(..) } => ("touch", Shape::TouchCircle(*touch)),
        };
        Self { index, class: class.to_string(), shape }
    }
}

/// One mark, whose coordinates and words follow the drawing.
fn shown(slot: Slot, drawing: Signal<Drawing>, on_touch: Option<Callback<Touch>>) -> AnyView {
    let Slot { index, class, shape } = slot;
    let of = move |of: fn(&Mark) -> String| {
        move || drawing.with(|drawing| drawing.marks.get(index).map(of).unwrap_or_default())
    };
    let (part, link, metal) = match shape {
        Shape::TouchBlock(touch) | Shape::TouchCircle(touch) => named(touch),
        Shape::Path | Shape::Circle | Shape::Text(_) => (None, None, None),
    };
    let on_click = move |touch| {
        move |_| {
            if let Some(on_touch) = on_touch {
                on_touch.run(touch);
            }
        }
    };
    match shape {
        Shape::Path => view! { <path class=class d=of(outline) /> }.into_any(),
        Shape::Circle => view! { <circle class=class cx=of(x) cy=of(y) r=of(radius) /> }.into_any(),
        Shape::Text(anchor) => view! {
            <text class=class text-anchor=anchor x=of(x) y=of(y) font-size=of(size)>
                {of(words)}
            </text>
        }
        .into_any(),
        Shape::TouchBlock(touch) => view! {
            <path
                class=class
                data-part=part
                data-piece=link
                data-metal=metal
                d=of(outline)
                on:click=on_click(touch)
            />
        }
        .into_any(),
        Shape::TouchCircle(touch) => view! {
            <circle
                class=class
                data-part=part
                data-piece=link
                data-metal=metal
                cx=of(x)
                cy=of(y)
                r=of(radius)
                on:click=on_click(touch)
            />
        }
        .into_any(),
    }
}

/// What a touch means, as data attributes for tests.
fn named(touch: Touch) -> (Option<&'static str>, Option<String>, Option<&'static str>) {
    match touch {
        Touch::Part(part) => (Some(part), None, None),
        Touch::Link(link) => (None, Some(link.to_string()), None),
        Touch::Metal(metal) => (None, None, Some(metal)),
    }
}

fn outline(mark: &Mark) -> String {
    match mark {
        Mark::Line { from, to, .. } => line(&[*from, *to], false),
        Mark::Path { points, closed, .. } => line(points, *closed),
        Mark::Blocks { blocks, .. } => blocks.iter().map(|(a, b)| block(*a, *b)).collect(),
        Mark::Touch { area: Area::Block(a, b), .. } => block(*a, *b),
        Mark::Touch { area: Area::Circle(..), .. } | Mark::Circle { .. } | Mark::Text { .. } => String::new(),
    }
}

/// Where a circle has its center, and a text its point.
fn point(mark: &Mark) -> Point {
    match mark {
        Mark::Circle { center, .. } | Mark::Touch { area: Area::Circle(center, _), .. } => *center,
        Mark::Text { at, .. } => *at,
        _ => (0.0, 0.0),
    }
}

fn x(mark: &Mark) -> String {
    short(point(mark).0)
}

fn y(mark: &Mark) -> String {
    short(point(mark).1)
}

fn radius(mark: &Mark) -> String {
    match mark {
        Mark::Circle { radius, .. } | Mark::Touch { area: Area::Circle(_, radius), .. } => short(*radius),
        _ => String::new(),
    }
}

fn size(mark: &Mark) -> String {
    if let Mark::Text { size, .. } = mark { short(*size) } else { String::new() }
}

fn words(mark: &Mark) -> String {
    if let Mark::Text { words, .. } = mark { words.clone() } else { String::new() }
}

/// A coordinate to hundredths, finer than any screen.
fn short(place: f64) -> String {
    format!("{place:.2}")
}

/// A line through points.
fn line(points: &[Point], closed: bool) -> String {
    let mut path = String::new();
    for (index, (x, y)) in points.iter().enumerate() {
        path += if index == 0 { "M" } else { "L" };
        path += &format!("{x:.2} {y:.2}");
    }
    if closed { path + "Z" } else { path }
}

/// A rectangle between two corners.
fn block(a: Point, b: Point) -> String {
    format!("M{:.2} {:.2}H{:.2}V{:.2}H{:.2}Z", a.0, a.1, b.0, b.1, a.0)
}

fn anchored(anchor: Anchor) -> &'static str {
    match anchor {
        Anchor::Start => "start",
        Anchor::Middle => "middle",
        Anchor::End => "end",
    }
}
