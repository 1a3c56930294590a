//! Labels for the finished parts, in the sizes of label printers.

use super::links::{address_of, current, every_answer};
use super::stops::use_stopped;
use crate::app::drawings::DrawingView;
use crate::app::fields::PaperPart;
use crate::app::session::{Session, use_session, use_slow};
use leptos::prelude::*;
use linkwright::document::Document;
use linkwright::engine::shop::code::code_of_link;
use linkwright::inputs::pieces_of;
use linkwright::present::drawing::code;
use linkwright::present::make::labels::{HELP, Label, LabelSize, NOT_PRINTED, SIZES, label, print};
use linkwright::quantity::System;
use linkwright::report::Answer;
use std::sync::Arc;

/// Which labels are printed.
#[derive(Clone, Copy, PartialEq)]
struct Wanted {
    /// Which of the sizes.
    size: usize,
    /// Those of every link, or of the current one.
    every_link: bool,
    /// One for each piece, or one for each link.
    each_piece: bool,
}

/// The section.
#[component]
pub(super) fn Labels() -> impl IntoView {
    let session = use_session();
    let wanted = RwSignal::new(Wanted { size: 0, every_link: true, each_piece: true });
    let several = move || session.document.with(|document| document.links.len() > 1);
    let chosen = Memo::new(move |_| wanted.get().size);
    // Its address takes another answer, so it is not made anew at every key.
    let shown = use_slow(Signal::from(true), move |document, link| {
        let (size, system) = (SIZES.get(chosen.get())?, session.units.get());
        let answer = session.answer_then(document, link)?;
        Some((size, label_of(session, document, link, &answer, size, system)))
    });
    let stopped = use_stopped();
    let preview = move || shown.get().flatten().map(|(size, label)| view! { <OneLabel label size /> });
    let count = move || {
        if wanted.get().every_link {
            session.rig.track();
        }
        session.answer.track();
        print(printed(session, wanted.get()).len())
    };
    let size = move |(at, size): (usize, &'static LabelSize)| {
        view! {
            <option value=at.to_string() selected=move || wanted.get().size == at>{size.name}</option>
        }
    };
    let choose = move |name: &str| wanted.update(|wanted| wanted.size = name.parse().unwrap_or(0));
    let box_of = move |id: &'static str, words: &'static str, get: fn(&Wanted) -> bool, set: fn(&mut Wanted, bool)| {
        view! {
            <label>
                <input
                    type="checkbox"
                    id=id
                    prop:checked=move || wanted.with(get)
                    on:change:target=move |event| wanted.update(|wanted| set(wanted, event.target().checked()))
                />
                <span>{words}</span>
            </label>
        }
    };
    view! {
        <section class="part-of" id="labels" tabindex="-1">
            <h3>"Labels"</h3>
            <div class="field on-screen">
                <label for="label-size">"Size of the label"</label>
                <select id="label-size" on:change:target=move |event| choose(&event.target().value())>
                    {SIZES.iter().enumerate().map(size).collect_view()}
                </select>
            </div>
            <div class="ticks on-screen">
                <Show when=several>
                    {box_of("label-every-link", "Every link of the rig", |it| it.every_link, |it, on| it.every_link = on)}
                </Show>
                {box_of("label-each-piece", "One for each piece", |it| it.each_piece, |it, on| it.each_piece = on)}
            </div>
            <figure class="label-preview" aria-label="One of them">{preview}</figure>
            <div class="buttons">
                <button
                    type="button"
                    id="print-labels"
                    disabled=move || stopped.get()
                    on:click=move |_| session.print_part("labels")
                >
                    {count}
                </button>
            </div>
            <Show when=move || stopped.get()>
                <p class="stop">{NOT_PRINTED}</p>
            </Show>
            <p class="help">{HELP}</p>
        </section>
        <PaperPart name="labels"><PrintedLabels wanted=wanted.get_untracked() /></PaperPart>
    }
}

/// The links whose labels are printed, each as often as it is. Nothing is tracked.
fn printed(session: Session, wanted: Wanted) -> Vec<(usize, Arc<Answer>)> {
    let links = if wanted.every_link { every_answer(session) } else { current(session) };
    let pieces = |index: usize| session.document.with_untracked(|document| pieces_of(document, index));
    let many = |(index, answer): (usize, Arc<Answer>)| {
        let count = if wanted.each_piece { pieces(index) } else { 1 };
        std::iter::repeat_n((index, answer), count)
    };
    links.into_iter().flat_map(many).collect()
}

/// Every label, a page each.
#[component]
fn PrintedLabels(
    /// Which.
    wanted: Wanted,
) -> impl IntoView {
    let session = use_session();
    let labels = SIZES.get(wanted.size).map(|size| {
        let one = move |(index, answer): (usize, Arc<Answer>)| {
            let system = session.units.get_untracked();
            let label =
                session.document.with_untracked(|document| label_of(session, document, index, &answer, size, system));
            view! { <OneLabel label size /> }
        };
        printed(session, wanted).into_iter().map(one).collect_view()
    });
    view! { <div class="labels">{labels}</div> }
}

/// What stands on the label of a link.
fn label_of(
    session: Session,
    document: &Document,
    index: usize,
    answer: &Answer,
    size: &LabelSize,
    system: System,
) -> Label {
    let code = code_of_link(document, index, answer).written();
    let link = address_of(session, document, index, answer).unwrap_or_default();
    label(document, index, answer, &code, &link, size, system)
}

/// One label.
#[component]
fn OneLabel(
    /// What stands on it.
    label: Label,
    /// Its size.
    size: &'static LabelSize,
) -> impl IntoView {
    let camera = label.link.filter(|link| !link.is_empty()).and_then(|link| code::code(&link));
    let line = |(at, (_, words)): (usize, (_, String))| {
        if at == 0 { view! { <b>{words}</b> }.into_any() } else { view! { <span>{words}</span> }.into_any() }
    };
    view! {
        <div class=format!("label of-{}", size.id)>
            <div class="label-lines">{label.lines.into_iter().enumerate().map(line).collect_view()}</div>
            {camera.map(|drawing| view! { <div class="camera"><DrawingView drawing /></div> })}
        </div>
    }
}
