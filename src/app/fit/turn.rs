//! Turn it: from the length it has to the one that is wanted.

mod answer;
mod wish;

use super::into_log::ExportUnkept;
use super::reading::ReadingField;
use super::state::{Fitting, use_fitting};
use crate::app::fields::stands_in_sight;
use crate::app::fields::{Fold, InputField};
use crate::app::session::{Session, use_session};
use answer::Answers;
use leptos::prelude::*;
use linkwright::document::Role;
use linkwright::engine::fitting::as_fitted::Readings;
use linkwright::engine::fitting::moves::{Slopes, Through, of_role};
use linkwright::inputs::{self, At, Input};
use linkwright::log::Spot;
use linkwright::present::fit::log::{TURNED_UNREAD, is_turned_unread};
use linkwright::present::fit::safe::{EYE_TO_EYE, readings};
use linkwright::present::fit::turn::{
    Ask, Asked, FRAME_END, Known, SLOPES, THROUGH, TurnAnswer, answer, asks, usual_through,
};
use wish::WishField;

/// What is being asked.
#[derive(Clone, Copy)]
struct Asking {
    ask: RwSignal<Ask>,
    value: RwSignal<Option<f64>>,
    typed: RwSignal<String>,
    other_way: RwSignal<bool>,
    through: RwSignal<Option<Through>>,
    /// What was said when it was last turned here.
    turned: RwSignal<Option<String>>,
}

/// The place.
#[component]
pub(super) fn TurnIt() -> impl IntoView {
    let (session, fitting) = (use_session(), use_fitting());
    let asking = Asking {
        ask: RwSignal::new(Ask::Longer),
        value: RwSignal::new(None),
        typed: RwSignal::new(String::new()),
        other_way: RwSignal::new(false),
        through: RwSignal::new(None),
        turned: RwSignal::new(None),
    };
    let offered = Memo::new(move |_| session.document.with(|document| asks(document, session.link.get())));
    // Another link may not have what was asked of this one.
    let ask = Memo::new(move |_| {
        let ask = asking.ask.get();
        if offered.with(|asks| asks.contains(&ask)) { ask } else { Ask::Longer }
    });
    let told = Memo::new(move |_| told(session, fitting, asking, ask.get()));
    let just_turned = move || asking.turned.get().filter(|_| asking.value.read().is_none());
    let turned_unread = move || fitting.spot().is_some_and(|spot| fitting.log.with(|log| is_turned_unread(log, &spot)));
    // A turn that was made is not asked for a second time, and no number passes from one question to another.
    let empty = move || {
        asking.value.set(None);
        asking.typed.set(String::new());
    };
    let on_turned = Callback::new(move |said: String| {
        empty();
        asking.turned.set(Some(said));
    });
    let pick = move |of: Ask| {
        let question = of.question();
        let id = format!("ask-{}", question.id);
        let change = move |_| {
            empty();
            asking.other_way.set(false);
            asking.ask.set(of);
        };
        view! {
            <label class="radio" for=id.clone()>
                <input type="radio" name="ask" id=id.clone() prop:checked=move || ask.get() == of on:change=change />
                <span><b>{question.title}</b></span>
            </label>
        }
    };
    stands_in_sight(move || {
        let spot = fitting.spot();
        told.with(|told| {
            let bars = &told.as_ref()?.links;
            bars.iter().find(|bar| bar.spot == spot).or(bars.first()).map(|bar| (bar.mark, bar.word))
        })
    });
    view! {
        <fieldset class="radios asks on-screen">
            <legend>"What do you want to change?"</legend>
            <div class="row">{move || offered.get().into_iter().map(pick).collect_view()}</div>
        </fieldset>
        {move || view! { <Ways asking ask=ask.get() /> }}
        {move || view! { <WishField ask=ask.get() typed=asking.typed value=asking.value /> }}
        <p role="status" class="turn-done">{just_turned}</p>
        <ExportUnkept />
        <Show when=turned_unread><p class="stop" id="turned-unread">{TURNED_UNREAD}</p></Show>
        <Answers told on_turned />
        {move || view! { <Basis ask=ask.get() /> }}
    }
}

/// The two ways of a question, the links that tilt, and the frame's end of a track bar.
#[component]
fn Ways(asking: Asking, ask: Ask) -> impl IntoView {
    let session = use_session();
    let ways = ask.question().ways.map(|ways| {
        let way = move |(index, title): (usize, &'static str)| {
            let id = format!("way-{index}");
            view! {
                <label class="radio" for=id.clone()>
                    <input
                        type="radio"
                        name="way"
                        id=id.clone()
                        prop:checked=move || asking.other_way.get() == (index == 1)
                        on:change=move |_| asking.other_way.set(index == 1)
                    />
                    <span><b>{title}</b></span>
                </label>
            }
        };
        view! {
            <fieldset class="radios on-screen">
                <legend class="unseen">"Which way"</legend>
                <div class="row">{ways.into_iter().enumerate().map(way).collect_view()}</div>
            </fieldset>
        }
    });
    let through = matches!(ask, Ask::Pinion | Ask::Caster).then(|| {
        let usual = move || session.document.with(|document| usual_through(document, session.link.get()));
        let one = move |(of, id, title): (Through, &'static str, &'static str)| {
            let id = format!("through-{id}");
            view! {
                <label class="radio" for=id.clone()>
                    <input
                        type="radio"
                        name="through"
                        id=id.clone()
                        prop:checked=move || asking.through.get().unwrap_or_else(usual) == of
                        on:change=move |_| asking.through.set(Some(of))
                    />
                    <span><b>{title}</b></span>
                </label>
            }
        };
        view! {
            <fieldset class="radios on-screen">
                <legend class="unseen">"Which links"</legend>
                <div class="row">{THROUGH.map(one).into_iter().collect_view()}</div>
            </fieldset>
        }
    });
    let frame_end = (ask == Ask::Sideways).then(|| view! { <ReadingField of=FRAME_END /> });
    let now = (ask == Ask::Length).then(|| view! { <ReadingField of=EYE_TO_EYE /> });
    // Which way to turn depends on it, so that it is asked in sight.
    let side = (ask == Ask::Toe).then(|| {
        let place = move || {
            session.document.with(|document| {
                let tie_rod = of_role(document, session.link.get(), Role::TieRod);
                tie_rod.first().map(|link| At::of_link(document, *link))
            })
        };
        move || place().map(|place| view! { <InputField input=Input::Choice(&inputs::TIE_ROD_SIDE) place /> })
    });
    view! { {ways}{through}{frame_end}{side}{now} }
}

/// What an answer about an axle rests on, to be put right in place.
#[component]
fn Basis(ask: Ask) -> impl IntoView {
    let session = use_session();
    // Each with the role of the link that it is entered for; none where it is of the axle or the rig.
    let inputs: &'static [(Input, Option<Role>)] = match ask {
        Ask::Length | Ask::Longer => return ().into_any(),
        Ask::Pinion | Ask::Caster | Ask::Forward => {
            const {
                &[
                    (Input::Number(&inputs::LOWER_HEIGHT), None),
                    (Input::Number(&inputs::UPPER_HEIGHT), None),
                    (Input::Number(&inputs::TIRE), None),
                    (Input::Number(&inputs::PLAN_ANGLE), Some(Role::Upper)),
                ]
            }
        }
        Ask::Sideways => const { &[(Input::Number(&inputs::SLOPE), Some(Role::TrackBar))] },
        Ask::Toe => const { &[(Input::Number(&inputs::STEERING_ARM), None), (Input::Number(&inputs::TIRE), None)] },
    };
    let slopes = matches!(ask, Ask::Pinion | Ask::Caster | Ask::Forward);
    let place = move |role: Option<Role>| {
        session.document.with(|document| {
            let current = session.link.get();
            match role {
                None => Some(At::of_link(document, current)),
                Some(role) => of_role(document, current, role).first().map(|link| At::of_link(document, *link)),
            }
        })
    };
    let field = move |(input, role): &'static (Input, Option<Role>)| {
        move || place(*role).map(|place| view! { <InputField input=*input place=place /> })
    };
    view! {
        <Fold summary="Measured on the rig" id="turn-basis">
            {inputs.iter().map(field).collect_view()}
            {slopes.then(|| SLOPES.map(|of| view! { <ReadingField of /> }).into_iter().collect_view())}
        </Fold>
    }
    .into_any()
}

/// What was read on a bar.
fn readings_of(fitting: Fitting, spot: &Spot) -> Readings {
    fitting.log.with(|log| {
        let picked = |id: &str| log.reading(spot, id)?.picked();
        readings(|id| log.reading(spot, id)?.number(), |id| picked(id).map(|picked| picked == "yes"))
    })
}

/// The answer; none before a number was entered.
fn told(session: Session, fitting: Fitting, asking: Asking, ask: Ask) -> Option<TurnAnswer> {
    let (value, link, system) = (asking.value.get()?, session.link.get(), session.units.get());
    session.document.with(|document| {
        let [lower, upper] = SLOPES.map(|id| fitting.number(id));
        let asked = Asked {
            ask,
            value,
            other_way: asking.other_way.get(),
            through: asking.through.get().unwrap_or_else(|| usual_through(document, link)),
            slopes: Slopes { lower, upper },
            frame_end_left: fitting.picked(FRAME_END).map(|picked| picked == "left"),
        };
        let answers = |of: usize| {
            if of == link {
                return session.answer.with(|answer| answer.as_deref().cloned());
            }
            session.rig.with(|whole| whole.links.get(of)?.answer().cloned())
        };
        let chosen = fitting.spot();
        let known = Known {
            answers: &answers,
            readings: &|spot| readings_of(fitting, spot),
            hit: &|spot| fitting.log.with(|log| log.open_hit(spot).is_some()),
            chosen: chosen.as_ref(),
        };
        Some(answer(document, link, &asked, known, system))
    })
}
