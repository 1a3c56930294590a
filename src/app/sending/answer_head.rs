//! What to buy, whether it passes, and the plate of sizes: the answer on the screen and on each printed sheet.

use crate::app::fields::{Phrases, VerdictMark};
use leptos::prelude::*;
use linkwright::present::answer::{Cell, Head};

/// The answer from whose choice the size is to its plate. Only the words that differ are written at a key.
#[component]
pub(crate) fn AnswerHead(
    /// The answer; nothing is shown without one.
    #[prop(into)]
    head: Signal<Option<Head>>,
    /// Whether it is the one on the screen: its parts have ids, which stand on a page once.
    on_screen: bool,
) -> impl IntoView {
    let id = move |id: &'static str| on_screen.then_some(id);
    let warning = Memo::new(move |_| head.with(|head| head.as_ref().and_then(|head| head.warning)));
    let headline = Memo::new(move |_| said(head, |head| head.headline.clone()));
    let judged = Memo::new(move |_| head.with(|head| head.as_ref().map(|head| (head.verdict, head.word))));
    let buckling = Memo::new(move |_| head.with(|head| head.as_ref().and_then(|head| head.buckling.clone())));
    let provisional = Memo::new(move |_| head.with(|head| head.as_ref().and_then(|head| head.provisional)));
    let cells = move || head.with(|head| head.as_ref().map_or(0, |head| head.plate.len()));

    view! {
        <p class="kicker">{move || said(head, |head| head.kicker.clone())}</p>
        {move || warning.get().map(|warning| view! { <p class="stop">{warning}</p> })}
        <h2 class="headline phrases" id=id("headline")>{move || view! { <Phrases text=headline.get() /> }}</h2>
        <div class="judged">
            {move || judged.get().map(|(verdict, word)| view! { <VerdictMark verdict word /> })}
        </div>
        {move || {
            buckling
                .get()
                .map(|(verdict, words)| {
                    view! { <p class="buckling"><span>{words}</span><VerdictMark verdict word=verdict.word() /></p> }
                })
        }}
        <dl class="plate">
            <For each=move || 0..cells() key=|index| *index let(index)>
                <PlateCell head index on_screen />
            </For>
        </dl>
        <p class="weakest" id=id("weakest")>{move || said(head, |head| head.weakest.clone())}</p>
        {move || provisional.get().map(|note| view! { <p class="provisional">{note}</p> })}
    }
}

/// Something of the answer in words.
fn said(head: Signal<Option<Head>>, of: impl Fn(&Head) -> String) -> String {
    head.with(|head| head.as_ref().map(of).unwrap_or_default())
}

/// One size on the plate.
#[component]
fn PlateCell(
    /// The answer.
    head: Signal<Option<Head>>,
    /// Which size it is.
    index: usize,
    /// Whether it has its id.
    on_screen: bool,
) -> impl IntoView {
    let cell = Memo::new(move |_| head.with(|head| head.as_ref()?.plate.get(index).cloned()));
    let of =
        move |of: fn(&Cell) -> &str| move || cell.with(|cell| cell.as_ref().map(of).unwrap_or_default().to_string());
    let id = cell.with_untracked(|cell| cell.as_ref().map(|cell| cell.id)).filter(|_| on_screen);

    view! {
        <div>
            <dt>{of(|cell| cell.name)}</dt>
            <dd class:main=move || cell.with(|cell| cell.as_ref().is_some_and(|cell| cell.main)) id=id>
                {of(|cell| &cell.value)}
            </dd>
        </div>
    }
}
