//! What is entered about the rig as a whole: its name, its weight and use, and each axle.

use super::groups::FieldGroup;
use crate::app::fields::{ChoiceField, NameField, NumberField, RadioField};
use leptos::prelude::*;
use linkwright::inputs::{self, At, CHOICES, NUMBERS, Number, Scope};
use linkwright::present::field::CHANGE_A_DEFAULT;

/// The first entries of the rig.
#[component]
pub(crate) fn RigEntries() -> impl IntoView {
    view! {
        <form class="first" on:submit=|event| event.prevent_default()>
            <NameField />
            <NumberField input=&inputs::WEIGHT place=At::default() />
            <RadioField choice=&inputs::USAGE place=At::default() />
        </form>
    }
}

/// Values of the rig and its axles that have a default.
#[component]
pub(crate) fn RigGroups() -> impl IntoView {
    const RIG: [&Number; 4] = [&inputs::TIRE, &inputs::FRONT_SHARE, &inputs::TRACK, &inputs::WHEELBASE];
    let rig = || RIG.map(|input| view! { <NumberField input place=At::default() /> }).collect_view();
    let about = "Weight, mount heights, travel, track bar";
    view! {
        <h3 class="more-title">{CHANGE_A_DEFAULT}</h3>
        <FieldGroup name="Rig" about="Tires, weight on each axle, track, wheelbase">{rig()}</FieldGroup>
        <FieldGroup name="Front axle" about><AxleFields axle=0 /></FieldGroup>
        <FieldGroup name="Rear axle" about><AxleFields axle=1 /></FieldGroup>
    }
}

/// Everything that an axle has of its own.
#[component]
fn AxleFields(axle: usize) -> impl IntoView {
    let place = At::of_axle(axle);
    let choices = CHOICES.iter().filter(|row| row.scope == Scope::Axle);
    let numbers = NUMBERS.iter().filter(|row| row.scope == Scope::Axle);
    view! {
        {choices.map(|choice| view! { <ChoiceField choice place /> }).collect_view()}
        {numbers.map(|input| view! { <NumberField input place /> }).collect_view()}
    }
}
