//! The form's two controls: a number that keeps what was typed, and a choice.

use super::drafts::Typed;
use super::known::Known;
use super::moments::after;
use super::state::Bench;
use super::tag::{Piece, button, live, nothing, tag, words};
use super::words::{length, lower};
use leptos::prelude::*;
use linkwright::inputs::{At, Choice, DefaultKind, LENGTH, Number, Pick, Scope};
use linkwright::quantity::{Kind, System, inch, mm, plain, show, unit_name};
use std::time::Duration;

/// How long a pause makes a half-typed entry a finished one.
const PAUSE: Duration = Duration::from_millis(900);

/// The id of an input at a place: `length`, or `hand-b`.
pub(super) fn key(id: &str, scope: Scope, place: At) -> String {
    match scope {
        Scope::Axle => format!("{id}-{}", if place.axle == 0 { "front" } else { "rear" }),
        Scope::End => format!("{id}-{}", if place.end == 0 { "a" } else { "b" }),
        _ => id.to_string(),
    }
}

/// What a field says; only a field that says something else is written anew.
#[derive(Clone, PartialEq)]
struct Says {
    text: String,
    placeholder: String,
    standing: String,
    complaint: Option<String>,
    question: Option<String>,
    changed: bool,
}

impl Says {
    fn of(bench: Bench, input: &'static Number, place: At) -> Self {
        let system = bench.system.get();
        let (held, default) =
            bench.document.with(|document| ((input.get)(document, place), (input.default)(document, place)));
        let draft = bench.draft(input, place);
        let complaint = draft.as_ref().filter(|draft| draft.settled).and_then(|draft| draft.refused.as_ref());
        let question = draft.as_ref().and_then(|draft| input.question(&draft.text, system));
        let plainly = |value: Option<f64>| value.map(|value| read(value, input.kind, system)).unwrap_or_default();
        Self {
            complaint: complaint.map(|refused| input.sentence(refused, system)),
            question,
            text: draft.map_or_else(|| plainly(held), |draft| draft.text),
            placeholder: plainly(default),
            standing: standing(input, default, system),
            changed: held.is_some(),
        }
    }
}

/// A value that was not typed just now. What comes from the other units with more digits than anybody wrote is shown as
/// it is read elsewhere; the document keeps its bits.
fn read(value: f64, kind: Kind, system: System) -> String {
    let exact = plain(value, kind, system);
    let digits = exact.split_once('.').map_or(0, |(_, digits)| digits.len());
    let elsewhere = match (kind, system) {
        (Kind::Weight, _) if digits > 1 => show(value, kind, system),
        (Kind::Length, System::Metric) if digits > 2 => length(value, system),
        _ => return exact,
    };
    elsewhere.split(' ').next().map_or(exact, str::to_string)
}

/// A number the reader may enter.
pub(super) fn number(bench: Bench, input: &'static Number, place: At) -> Piece {
    let key = key(input.id, input.scope, place);
    let (id, error_id, help_id) = (format!("in-{key}"), format!("err-{key}"), format!("help-{key}"));
    let says = Known::new(move || Says::of(bench, input, place));
    let wrong = move || says.with(|says| says.complaint.is_some());
    let described = {
        let (error_id, help_id) = (error_id.clone(), help_id.clone());
        move || if wrong() { format!("{error_id} {help_id}") } else { help_id.clone() }
    };
    let entry = tag("input type=text autocomplete=off spellcheck=false enterkeyhint=done")
        .set("id", &id)
        .set("inputmode", keypad(input.kind))
        .value(move || says.with(|says| says.text.clone()))
        .attribute("placeholder", move || says.with(|says| says.placeholder.clone()))
        .attribute("aria-invalid", move || wrong().to_string())
        .attribute("aria-describedby", described)
        .on("input", move |event| typed(bench, input, place, event_target_value(&event)))
        .on("change", move |event| {
            let text = event_target_value(&event);
            bench.type_into(input, place, text.clone(), Typed::Left);
            bench.once_released(move || bench.finish(input, place, &text));
        });
    let error = live(move || match says.with(|says| says.complaint.clone()) {
        Some(sentence) => tag("p class=error role=alert").set("id", &error_id).with(&*sentence),
        None => nothing(),
    });
    let question = live(move || match says.with(|says| says.question.clone()) {
        Some(sentence) => tag("p class=help role=status").with(&*sentence),
        None => nothing(),
    });
    let whose = (input.id == LENGTH.id).then(|| words(move || of_several(bench, place.link)));
    tag("div class=field")
        .class("changed", move || says.with(|says| says.changed))
        .class("wrong", wrong)
        .with(tag("label").set("for", &id).with(input.label).with(whose))
        .with(
            tag("div class=entry")
                .with(stepper(bench, input, place, -1.0))
                .with(entry)
                .with(
                    tag("span class=unit aria-hidden=true")
                        .with(words(move || unit_name(input.kind, bench.system.get()).to_string())),
                )
                .with(stepper(bench, input, place, 1.0)),
        )
        .with(error)
        .with(question)
        .with(help(&help_id, input.help, move || says.with(|says| says.standing.clone())))
        .with(live(move || reset(bench, input, place, says.with(|says| says.changed))))
}

/// Of several links, whose length it is: drawing and picker may be out of sight.
fn of_several(bench: Bench, link: usize) -> String {
    bench.document.with(|document| match (document.links.len(), document.links.get(link)) {
        (several @ 2.., Some(this)) => format!(", {}, {} of {several}", lower(&this.title()), link + 1),
        _ => String::new(),
    })
}

/// What a field is for, and what follows from what is in it.
fn help(id: &str, about: &str, more: impl Fn() -> String + 'static) -> Piece {
    tag("p class=help").set("id", id).with(about).with(" ").with(words(more))
}

/// A pad that has the slash and the space, which fractions need; plain numbers get the numeric one.
const fn keypad(kind: Kind) -> &'static str {
    match kind {
        Kind::Length => "text",
        _ => "decimal",
    }
}

fn typed(bench: Bench, input: &'static Number, place: At, text: String) {
    bench.type_into(input, place, text.clone(), Typed::Key);
    after(PAUSE, move || bench.once_released(move || bench.finish(input, place, &text)));
}

/// What stands when the field is left empty, and how firm that is.
fn standing(input: &Number, default: Option<f64>, system: System) -> String {
    match (default, input.standing) {
        (_, DefaultKind::Asked) => String::new(),
        (Some(value), standing) => format!("Default {}: {}.", show(value, input.kind, system), standing.words()),
        (None, standing) => format!("Default: {}.", standing.words()),
    }
}

fn reset(bench: Bench, input: &'static Number, place: At, changed: bool) -> Piece {
    if !changed || input.standing == DefaultKind::Asked {
        return nothing();
    }
    button("button type=button class='quiet reset'", "Back to the default", move |_| {
        bench.type_into(input, place, String::new(), Typed::Whole);
    })
    .with(tag("span class=unseen").with(" for ").with(input.label))
}

/// A button that moves the length by the smallest step of a tape measure.
fn stepper(bench: Bench, input: &'static Number, place: At, direction: f64) -> Option<Piece> {
    if input.id != "length" {
        return None;
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
            bench.type_into(input, place, plain(next, input.kind, system), Typed::Whole);
        }
    };
    let words = move || words().to_string();
    // The sign is drawn by the style: the button's name says what it does.
    let open = if direction > 0.0 {
        "button type=button class='step longer'"
    } else {
        "button type=button class='step shorter'"
    };
    Some(tag(open).attribute("aria-label", words).attribute("title", words).on("click", step))
}

/// A choice from a list that folds away.
pub(super) fn choice(bench: Bench, choice: &'static Choice, place: At) -> Piece {
    let key = key(choice.id, choice.scope, place);
    let (id, help_id) = (format!("in-{key}"), format!("help-{key}"));
    let picked = picked(bench, choice, place);
    let options = (choice.options)();
    let open = bench.document.with_untracked(|document| (choice.default)(document, place)).is_none();
    let option = |id: &'static str, label: &str| {
        tag("option").set("value", id).flag("selected", move || picked.with(|picked| picked == id)).with(label)
    };
    let select = tag("select")
        .set("id", &id)
        .set("aria-describedby", &help_id)
        .value(move || picked.get())
        .on("change", move |event| pick(bench, choice, place, &event_target_value(&event)))
        .with(open.then(|| option("", "As recommended")))
        .with(options.iter().map(|pick| option(pick.id, pick.label)).collect::<Vec<_>>());
    tag("div class=field")
        .class("changed", move || bench.document.with(|document| (choice.get)(document, place).is_some()))
        .with(tag("label").set("for", &id).with(choice.label))
        .with(select)
        .with(help(&help_id, choice.help, move || picked.with(|picked| note(&options, picked).to_string())))
}

/// The id of what is picked; empty when nothing is.
fn picked(bench: Bench, choice: &'static Choice, place: At) -> Known<String> {
    Known::new(move || bench.document.with(|document| choice.value(document, place)).unwrap_or_default().to_string())
}

fn note(options: &[Pick], picked: &str) -> &'static str {
    options.iter().find(|option| option.id == picked).map_or("", |option| option.help)
}

fn pick(bench: Bench, choice: &'static Choice, place: At, id: &str) {
    bench.document.update(|document| {
        let default = (choice.default)(document, place);
        let wanted = if id.is_empty() || default == Some(id) { None } else { Some(id) };
        (choice.set)(document, place, wanted);
    });
    // What was typed into a field that this choice takes away is gone with it.
    bench.drop_hidden();
}

/// A choice of a few, all in sight: one tap.
pub(super) fn radios(bench: Bench, choice: &'static Choice, place: At) -> Piece {
    let id = format!("in-{}", choice.id);
    let help_id = format!("help-{}", choice.id);
    let picked = picked(bench, choice, place);
    let mut row = tag("div class=row");
    for option in (choice.options)() {
        let each = format!("{id}-{}", option.id);
        let ring = tag("input type=radio")
            .set("id", &each)
            .set("name", choice.id)
            .set("value", option.id)
            .switch("checked", move || picked.with(|picked| picked == option.id))
            .on("change", move |_| pick(bench, choice, place, option.id));
        let words = tag("span").with(tag("b").with(option.label)).with(tag("small").with(option.help));
        row = row.with(tag("label class=radio").set("for", &each).with(ring).with(words));
    }
    tag("fieldset class=radios")
        .set("id", &id)
        .set("aria-describedby", &help_id)
        .with(tag("legend").with(choice.label))
        .with(tag("p class=unseen").set("id", &help_id).with(choice.help))
        .with(row)
}
