//! The form's two controls: a number that keeps what was typed, and a choice.

use super::state::{Bench, Draft};
use leptos::prelude::*;
use linkwright::inputs::{Choice, Number, Pick, Place, Scope, Standing};
use linkwright::quantity::{Kind, System, inch, mm, plain, show, unit_name};
use std::time::Duration;

/// How long a pause makes a half-typed entry a finished one.
const PAUSE: Duration = Duration::from_millis(900);

/// The id of an input at a place: `length`, or `hand-b`.
pub(super) fn key(id: &str, scope: Scope, place: Place) -> String {
    match scope {
        Scope::Axle => format!("{id}-{}", if place.axle == 0 { "front" } else { "rear" }),
        Scope::End => format!("{id}-{}", if place.end == 0 { "a" } else { "b" }),
        _ => id.to_string(),
    }
}

/// A number the reader may enter.
#[component]
pub(super) fn NumberField(input: &'static Number, place: Place) -> impl IntoView {
    let bench = Bench::here();
    let key = key(input.id, input.scope, place);
    let (id, error_id, help_id) = (format!("in-{key}"), format!("err-{key}"), format!("help-{key}"));
    let held = Memo::new(move |_| bench.document.with(|document| (input.get)(document, place)));
    let draft = Memo::new(move |_| bench.draft(input.id, place, held.get()));
    let complaint = Memo::new(move |_| complaint(bench, input, draft.get()));
    let described = {
        let (error_id, help_id) = (error_id.clone(), help_id.clone());
        move || if complaint.with(Option::is_some) { format!("{error_id} {help_id}") } else { help_id.clone() }
    };
    view! {
        <div class="field" class:changed=move || held.get().is_some() class:wrong=move || complaint.with(Option::is_some)>
            <label for=id.clone()>{input.label}</label>
            <div class="entry">
                {stepper(bench, input, place, -1.0)}
                <input id=id type="text" inputmode=keypad(input.kind) autocomplete="off" spellcheck="false" enterkeyhint="done"
                    prop:value=move || shown(bench, input, draft.get(), held.get())
                    placeholder=move || placeholder(bench, input, place)
                    aria-invalid=move || complaint.with(Option::is_some).to_string()
                    aria-describedby=described
                    on:input=move |event| typed(bench, input, place, event_target_value(&event))
                    on:change=move |event| bench.type_into(input, place, event_target_value(&event), true)/>
                <span class="unit" aria-hidden="true">{move || unit_name(input.kind, bench.system.get())}</span>
                {stepper(bench, input, place, 1.0)}
            </div>
            {move || complaint.get().map(|sentence| view! { <p class="error" role="alert" id=error_id.clone()>{sentence}</p> })}
            <p class="help" id=help_id>{input.help}" "{move || standing(bench, input, place)}</p>
            {move || reset(bench, input, place, held.get().is_some())}
        </div>
    }
    .into_any()
}

/// A pad that has the slash and the space, which fractions need; plain numbers get the numeric one.
const fn keypad(kind: Kind) -> &'static str {
    match kind {
        Kind::Length => "text",
        _ => "decimal",
    }
}

fn typed(bench: Bench, input: &'static Number, place: Place, text: String) {
    bench.type_into(input, place, text.clone(), false);
    let system = bench.system.get_untracked();
    set_timeout(
        move || {
            let still = bench.drafts.try_with_untracked(|drafts| {
                drafts
                    .iter()
                    .any(|draft| draft.id == input.id && draft.place == place && draft.text == text && !draft.settled)
            });
            // Units switched in the pause would read the same digits as another value.
            if still == Some(true) && bench.system.try_get_untracked() == Some(system) {
                bench.type_into(input, place, text, true);
            }
        },
        PAUSE,
    );
}

fn shown(bench: Bench, input: &'static Number, draft: Option<Draft>, held: Option<f64>) -> String {
    let written = || held.map(|value| plain(value, input.kind, bench.system.get())).unwrap_or_default();
    draft.map_or_else(written, |draft| draft.text)
}

fn complaint(bench: Bench, input: &'static Number, draft: Option<Draft>) -> Option<String> {
    let draft = draft.filter(|draft| draft.settled)?;
    Some(input.sentence(&draft.refused?, bench.system.get()))
}

fn placeholder(bench: Bench, input: &'static Number, place: Place) -> String {
    let system = bench.system.get();
    bench
        .document
        .with(|document| (input.default)(document, place))
        .map(|value| plain(value, input.kind, system))
        .unwrap_or_default()
}

/// What stands when the field is left empty, and how firm that is.
fn standing(bench: Bench, input: &'static Number, place: Place) -> String {
    let default = bench.document.with(|document| (input.default)(document, place));
    match (default, input.standing) {
        (_, Standing::Asked) => String::new(),
        (Some(value), standing) => {
            format!("Default {}: {}.", show(value, input.kind, bench.system.get()), standing.words())
        }
        (None, standing) => format!("Default: {}.", standing.words()),
    }
}

fn reset(bench: Bench, input: &'static Number, place: Place, changed: bool) -> AnyView {
    if !changed || input.standing == Standing::Asked {
        return ().into_any();
    }
    view! {
        <button type="button" class="quiet reset" on:click=move |_| bench.type_into(input, place, String::new(), true)>
            "Back to the default"<span class="unseen">" for "{input.label}</span>
        </button>
    }
    .into_any()
}

/// A button that moves the length by the smallest step of a tape measure.
fn stepper(bench: Bench, input: &'static Number, place: Place, direction: f64) -> AnyView {
    if input.id != "length" {
        return ().into_any();
    }
    let words = move || match (bench.system.get(), direction > 0.0) {
        (System::Inch, true) => "1/16 in longer",
        (System::Inch, false) => "1/16 in shorter",
        (System::Metric, true) => "1 mm longer",
        (System::Metric, false) => "1 mm shorter",
    };
    let step = move |_| {
        let system = bench.system.get_untracked();
        let size = if system == System::Inch { inch(1.0 / 16.0) } else { mm(1.0) };
        if let Some(held) = bench.document.with_untracked(|document| (input.get)(document, place)) {
            let next = ((held / size).round() + direction) * size;
            bench.type_into(input, place, plain(next, input.kind, system), true);
        }
    };
    view! { <button type="button" class="step" aria-label=words title=words on:click=step><span aria-hidden="true">{if direction > 0.0 { "+" } else { "−" }}</span></button> }.into_any()
}

/// A choice from a list that folds away.
#[component]
pub(super) fn ChoiceField(choice: &'static Choice, place: Place) -> impl IntoView {
    let bench = Bench::here();
    let key = key(choice.id, choice.scope, place);
    let (id, help_id) = (format!("in-{key}"), format!("help-{key}"));
    let picked = Memo::new(move |_| bench.document.with(|document| choice.value(document, place)).unwrap_or_default());
    let changed = move || bench.document.with(|document| (choice.get)(document, place).is_some());
    let options = (choice.options)();
    let notes: Vec<Pick> = options.clone();
    let open = bench.document.with_untracked(|document| (choice.default)(document, place)).is_none();
    view! {
        <div class="field" class:changed=changed>
            <label for=id.clone()>{choice.label}</label>
            <select id=id aria-describedby=help_id.clone() prop:value=move || picked.get()
                on:change=move |event| pick(bench, choice, place, &event_target_value(&event))>
                {open.then(|| view! { <option value="" selected=move || picked.get().is_empty()>"As recommended"</option> })}
                {options.into_iter().map(|option| view! {
                    <option value=option.id selected=move || picked.get() == option.id>{option.label}</option>
                }).collect_view()}
            </select>
            <p class="help" id=help_id>{choice.help}" "{move || note(&notes, picked.get())}</p>
        </div>
    }
    .into_any()
}

fn note(options: &[Pick], picked: &str) -> &'static str {
    options.iter().find(|option| option.id == picked).map_or("", |option| option.help)
}

fn pick(bench: Bench, choice: &'static Choice, place: Place, id: &str) {
    bench.document.update(|document| {
        let default = (choice.default)(document, place);
        let wanted = if id.is_empty() || default == Some(id) { None } else { Some(id) };
        (choice.set)(document, place, wanted);
    });
    // A refused entry may stand in a field that this choice takes away.
    bench.drafts.update(|drafts| drafts.retain(|draft| draft.refused.is_none()));
}

/// A choice of a few, all in sight: one tap.
#[component]
pub(super) fn RadioField(choice: &'static Choice, place: Place) -> impl IntoView {
    let bench = Bench::here();
    let id = format!("in-{}", choice.id);
    let help_id = format!("help-{}", choice.id);
    let described = help_id.clone();
    let picked = Memo::new(move |_| bench.document.with(|document| choice.value(document, place)).unwrap_or_default());
    let one = {
        let id = id.clone();
        move |option: Pick| {
            let each = format!("{id}-{}", option.id);
            let label_for = each.clone();
            view! {
                <label class="radio" for=label_for>
                    <input type="radio" id=each name=choice.id value=option.id prop:checked=move || picked.get() == option.id
                        on:change=move |_| pick(bench, choice, place, option.id)/>
                    <span><b>{option.label}</b><small>{option.help}</small></span>
                </label>
            }
        }
    };
    view! {
        <fieldset class="radios" id=id aria-describedby=described>
            <legend>{choice.label}</legend>
            <p class="unseen" id=help_id>{choice.help}</p>
            <div class="row">{(choice.options)().into_iter().map(one).collect_view()}</div>
        </fieldset>
    }
    .into_any()
}
