//! A drawing as SVG. The style sheets decide weight, dash and color by the classes.

use leptos::prelude::*;
use linkwright::present::drawing::{Anchor, Area, Drawing, Mark, Point, Touch};

/// The drawing, named by what it says in words.
#[component]
pub(crate) fn DrawingView(
    /// What is drawn.
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
    let marks = move || drawing.with(|drawing| drawing.marks.iter().map(|mark| shown(mark, on_touch)).collect_view());
    view! {
        <svg
            class=move || drawing.with(|drawing| drawing.class.clone())
            viewBox=view_box
            width=on_paper(|drawing| drawing.width)
            height=on_paper(|drawing| drawing.height)
            role="img"
            aria-label=move || drawing.with(|drawing| drawing.words.clone())
        >
            {marks}
        </svg>
    }
}

/// One mark.
fn shown(mark: &Mark, on_touch: Option<Callback<Touch>>) -> AnyView {
    match mark {
        Mark::Line { class, from, to } => {
            view! { <path class=class.clone() d=line(&[*from, *to], false) /> }.into_any()
        }
        Mark::Path { class, points, closed } => {
            view! { <path class=class.clone() d=line(points, *closed) /> }.into_any()
        }
        Mark::Blocks { class, blocks } => {
            let outlines: String = blocks.iter().map(|(a, b)| block(*a, *b)).collect();
            view! { <path class=class.clone() d=outlines /> }.into_any()
        }
        Mark::Circle { class, center, radius } => view! {
            <circle class=class.clone() cx=short(center.0) cy=short(center.1) r=short(*radius) />
        }
        .into_any(),
        Mark::Text { class, anchor, at, size, words } => view! {
            <text
                class=class.clone()
                text-anchor=anchored(*anchor)
                x=short(at.0)
                y=short(at.1)
                font-size=short(*size)
            >
                {words.clone()}
            </text>
        }
        .into_any(),
        Mark::Touch { touch, area } => touched(*touch, *area, on_touch),
    }
}

/// A place to touch, with what it means as data for whoever looks from outside.
fn touched(touch: Touch, area: Area, on_touch: Option<Callback<Touch>>) -> AnyView {
    let (part, link, metal) = match touch {
        Touch::Part(part) => (Some(part), None, None),
        Touch::Link(link) => (None, Some(link.to_string()), None),
        Touch::Metal(metal) => (None, None, Some(metal)),
    };
    let on_click = move |_| {
        if let Some(on_touch) = on_touch {
            on_touch.run(touch);
        }
    };
    match area {
        Area::Block(a, b) => view! {
            <path
                class="touch"
                data-part=part
                data-piece=link
                data-metal=metal
                d=block(a, b)
                on:click=on_click
            />
        }
        .into_any(),
        Area::Circle(center, radius) => view! {
            <circle
                class="touch"
                data-part=part
                data-piece=link
                data-metal=metal
                cx=short(center.0)
                cy=short(center.1)
                r=short(radius)
                on:click=on_click
            />
        }
        .into_any(),
    }
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
