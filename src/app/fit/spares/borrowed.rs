//! Will a borrowed part fit? What is read off it stays here while the place is open, and nowhere else.

use super::super::number::NumberField;
use super::super::state::use_fitting;
use crate::app::fields::{Fold, VerdictMark};
use crate::app::session::use_session;
use leptos::prelude::*;
use linkwright::document::Hand;
use linkwright::engine::fitting::borrowed::{BorrowedLink, BorrowedRodEnd};
use linkwright::log::{Reading, ReadingKind, ReadingRow};
use linkwright::present::fit::reading;
use linkwright::present::fit::spares::{
    HANDS, LINK, Lent, MEASURED, ROD_END, STEEL, STEELS, of_series, rod_end, series, thread_of, thread_picks,
    whole_link,
};
use linkwright::report::Verdict;

/// A borrowed rod end into one end of this link.
#[component]
pub(super) fn BorrowedRodEndForm() -> impl IntoView {
    let (session, fitting) = (use_session(), use_fitting());
    let end = RwSignal::new(0_usize);
    let hand = RwSignal::new(None::<Hand>);
    let steel = RwSignal::new(None::<bool>);
    let listed = RwSignal::new(String::new());
    let thread = RwSignal::new(None::<&'static str>);
    let numbers = RwSignal::new([None::<f64>; 4]);
    let part = Memo::new(move |_| {
        let part = of_series(&listed.read(), hand.get()).unwrap_or_else(|| {
            let [eye_to_end, thread_length, bore, ball_width] = numbers.get();
            let (thread, hand) = (thread.get(), hand.get());
            BorrowedRodEnd { thread, hand, eye_to_end, thread_length, bore, ball_width, heat_treated: None }
        });
        BorrowedRodEnd { heat_treated: steel.get(), ..part }
    });
    let lent = move || {
        let (index, system) = (session.link.get(), session.units.get());
        session.answer.with(|answer| {
            let answer = answer.as_deref()?;
            session.document.with(|document| {
                Some(rod_end(document, index, answer, end.get(), &part.get(), system).unless_hit(fitting.hit.get()))
            })
        })
    };
    let pick_hand = move |id: &'static str| hand.set(Some(if id == "left" { Hand::Left } else { Hand::Right }));
    let pick_end = move |id: &'static str| end.set(usize::from(id == "b"));
    let picked_hand = move || {
        hand.get().map(|hand| match hand {
            Hand::Left => "left",
            Hand::Right => "right",
        })
    };
    let picked_steel = move || steel.get().map(|known| if known { "yes" } else { "unknown" });
    let measured = move || of_series(&listed.read(), None).is_none();
    let field = move |at: usize| {
        let take = move |value| numbers.update(|numbers| numbers[at] = value);
        view! { <LentNumber row=&ROD_END[at] value=Signal::derive(move || numbers.get()[at]) take=Callback::new(take) /> }
    };
    view! {
        <Fold summary="Will a borrowed rod end fit?" id="lend-rod-end">
            <div id="lend-verdict" aria-live="polite">{move || lent().map(|lent| view! { <Told lent /> })}</div>
            <Picks
                id="lend-end"
                legend="Into which end"
                picks=&[("a", "End A"), ("b", "End B")]
                picked=Signal::derive(move || Some(if end.get() == 0 { "a" } else { "b" }))
                take=Callback::new(pick_end)
            />
            <Picks
                id="lend-hand"
                legend="Its hand"
                picks=&HANDS
                picked=Signal::derive(picked_hand)
                take=Callback::new(pick_hand)
            />
            <Picks
                id="lend-steel"
                legend=STEEL
                picks=&STEELS
                picked=Signal::derive(picked_steel)
                take=Callback::new(move |id: &'static str| steel.set(Some(id == "yes")))
            />
            <Listed
                id="lend-listed"
                label="Which rod end"
                none=MEASURED
                rows=series()
                take=Callback::new(move |id: String| listed.set(id))
            />
            <Show when=measured>
                <Listed
                    id="lend-thread"
                    label="Its thread, by caliper and pitch gauge"
                    none="Not known"
                    rows=thread_picks()
                    take=Callback::new(move |id: String| thread.set(thread_of(&id)))
                />
                {[0, 1, 2, 3].map(field).into_iter().collect_view()}
            </Show>
        </Fold>
    }
}

/// A borrowed link in the place of this one.
#[component]
pub(super) fn BorrowedLinkForm() -> impl IntoView {
    let (session, fitting) = (use_session(), use_fitting());
    let part = RwSignal::new(BorrowedLink::default());
    let lent = move || {
        let system = session.units.get();
        session
            .answer
            .with(|answer| Some(whole_link(answer.as_deref()?, &part.get(), system).unless_hit(fitting.hit.get())))
    };
    view! {
        <Fold summary="Will a borrowed link fit?" id="lend-link">
            <div id="lend-link-verdict" aria-live="polite">{move || lent().map(|lent| view! { <Told lent /> })}</div>
            <LentNumber
                row=&LINK[0]
                value=Signal::derive(move || part.get().shortest)
                take=Callback::new(move |value| part.update(|part| part.shortest = value))
            />
            <LentNumber
                row=&LINK[1]
                value=Signal::derive(move || part.get().longest)
                take=Callback::new(move |value| part.update(|part| part.longest = value))
            />
        </Fold>
    }
}

/// What it comes to.
#[component]
fn Told(lent: Lent) -> impl IntoView {
    let Lent { mark, word, missing, points, lengths } = lent;
    let point = |(verdict, words): (Verdict, String)| {
        let class = linkwright::present::verdict::class(verdict);
        view! { <li class=class>{words}</li> }
    };
    let length = |(name, value): (&'static str, String)| view! { <div><dt>{name}</dt><dd>{value}</dd></div> };
    view! {
        <p class="judged"><VerdictMark verdict=mark word /></p>
        {(!missing.is_empty()).then(|| view! { <p class="fit-reason">{missing}</p> })}
        <ul class="lent-points">{points.into_iter().map(point).collect_view()}</ul>
        <dl class="left">{lengths.into_iter().map(length).collect_view()}</dl>
    }
}

/// A few choices as radio buttons.
#[component]
fn Picks(
    id: &'static str,
    legend: &'static str,
    picks: &'static [(&'static str, &'static str)],
    picked: Signal<Option<&'static str>>,
    take: Callback<&'static str>,
) -> impl IntoView {
    let pick = move |(of, label): (&'static str, &'static str)| {
        let each = format!("{id}-{of}");
        view! {
            <label class="radio" for=each.clone()>
                <input
                    type="radio"
                    id=each.clone()
                    name=id
                    prop:checked=move || picked.get() == Some(of)
                    on:change=move |_| take.run(of)
                />
                <span><b>{label}</b></span>
            </label>
        }
    };
    view! {
        <fieldset class="radios" id=id>
            <legend>{legend}</legend>
            <div class="row">{picks.iter().copied().map(pick).collect_view()}</div>
        </fieldset>
    }
}

/// Many choices as a list.
#[component]
fn Listed(
    id: &'static str,
    label: &'static str,
    none: &'static str,
    rows: Vec<(&'static str, &'static str)>,
    take: Callback<String>,
) -> impl IntoView {
    let row = |(id, label): (&'static str, &'static str)| view! { <option value=id>{label}</option> };
    view! {
        <div class="field">
            <label for=id>{label}</label>
            <div class="entry">
                <select id=id on:change:target=move |event| take.run(event.target().value())>
                    <option value="">{none}</option>
                    {rows.into_iter().map(row).collect_view()}
                </select>
            </div>
        </div>
    }
}

/// A number read off a borrowed part.
#[component]
fn LentNumber(row: &'static ReadingRow, value: Signal<Option<f64>>, take: Callback<Option<f64>>) -> impl IntoView {
    let session = use_session();
    let ReadingKind::Number { kind, .. } = row.holds else { return ().into_any() };
    let on_text = move |text: String| {
        let read = reading::read(row, &text, session.units.get_untracked());
        // What cannot be read is no reading: the one before must not go on counting.
        take.run(read.as_ref().ok().copied().flatten().and_then(Reading::number));
        read.map(|_| ())
    };
    let shown = move || reading::typed(row, value.get().map(Reading::Number), session.units.get());
    view! {
        <NumberField
            id=format!("in-{}", row.id)
            label=row.label
            help=row.help
            kind
            shown=Signal::derive(shown)
            take=Callback::new(on_text)
        />
    }
    .into_any()
}
