//! A choice from a list that folds away, and a choice of a few that are all in sight.

use crate::app::session::{Session, use_session};
use leptos::prelude::*;
use linkwright::document::Document;
use linkwright::inputs::edits::follow_pick;
use linkwright::inputs::{At, Choice, Group};
use linkwright::present::field::key;

/// What stands in a list of the order before somebody said anything.
const NOT_SAID: &str = "Not said yet";

/// The id of what is picked, or picked by default unless it is an answer that is asked for; empty when nothing is.
fn use_picked(choice: &'static Choice, place: At, answers: bool) -> Memo<String> {
    let session = use_session();
    let value = move |document: &Document| {
        if answers { (choice.get)(document, place) } else { choice.value(document, place) }
    };
    Memo::new(move |_| session.document.with(|document| value(document).unwrap_or_default().to_string()))
}

/// What stands in a list while nothing is picked and nothing is the default.
const fn undecided(choice: &Choice) -> &'static str {
    if matches!(choice.group, Group::Order) { NOT_SAID } else { "As recommended" }
}

/// Keeps a pick. In the form a pick of the default is none, so that links stay short; where the customer is asked an
/// answer is an answer, the usual one too.
fn pick(session: Session, choice: &'static Choice, place: At, id: &str, answers: bool) {
    session.edit(|document| {
        let default = (choice.default)(document, place);
        let wanted = (!id.is_empty() && (answers || default != Some(id))).then_some(id);
        (choice.set)(document, place, wanted);
        follow_pick(document, choice, place);
    });
    // What was typed into a field that this choice takes away is gone with it.
    session.drop_hidden();
}

/// A choice from a list that folds away.
#[component]
pub(crate) fn ChoiceField(
    /// The input.
    choice: &'static Choice,
    /// Where it is.
    place: At,
    /// Whether a pick answers a question of the order: then nothing counts as picked before somebody picks it.
    #[prop(optional)]
    answers: bool,
) -> impl IntoView {
    let session = use_session();
    let key = key(choice.id, choice.scope, place);
    let (id, help_id) = (format!("in-{key}"), format!("help-{key}"));
    let picked = use_picked(choice, place, answers);
    let options = (choice.options)();
    let has_no_default = session.document.with_untracked(|document| (choice.default)(document, place)).is_none();
    let nothing_picked = if answers && !has_no_default { NOT_SAID } else { undecided(choice) };
    let option = move |id: &'static str, label: &'static str| {
        view! { <option value=id selected=move || picked.with(|picked| picked == id)>{label}</option> }
    };
    let listed = options.iter().map(|pick| option(pick.id, pick.label)).collect_view();
    let note = move || {
        picked.with(|picked| options.iter().find(|option| option.id == picked).map_or("", |option| option.help))
    };
    let changed = move || session.document.with(|document| (choice.get)(document, place).is_some());
    view! {
        <div class="field" class:changed=changed>
            <label for=id.clone()>{choice.label}</label>
            <select
                id=id
                aria-describedby=help_id.clone()
                prop:value=move || picked.get()
                on:change:target=move |event| pick(session, choice, place, &event.target().value(), answers)
            >
                {(answers || has_no_default).then(|| option("", nothing_picked))}
                {listed}
            </select>
            <p class="help" id=help_id>{choice.help}" "{note}</p>
        </div>
    }
}

/// A choice of a few, all in sight: one tap.
#[component]
pub(crate) fn RadioField(
    /// The input.
    choice: &'static Choice,
    /// Where it is.
    place: At,
) -> impl IntoView {
    let session = use_session();
    let (id, help_id) = (format!("in-{}", choice.id), format!("help-{}", choice.id));
    let picked = use_picked(choice, place, false);
    let options = (choice.options)().into_iter().map(|option| {
        let each = format!("{id}-{}", option.id);
        view! {
            <label class="radio" for=each.clone()>
                <input
                    type="radio"
                    id=each.clone()
                    name=choice.id
                    value=option.id
                    prop:checked=move || picked.with(|picked| picked == option.id)
                    on:change=move |_| pick(session, choice, place, option.id, false)
                />
                <span>
                    <b>{option.label}</b>
                    <small>{option.help}</small>
                </span>
            </label>
        }
    });
    let options = options.collect_view();
    view! {
        <fieldset class="radios" id=id aria-describedby=help_id.clone()>
            <legend>{choice.label}</legend>
            <p class="unseen" id=help_id.clone()>{choice.help}</p>
            <div class="row">{options}</div>
        </fieldset>
    }
}
