//! The fields by themselves, in a browser.

use super::{ChoiceField, Fold, NumberField, RadioField, VerdictMark};
use crate::app::mounted::{EXAMPLE, Mounted};
use leptos::prelude::*;
use linkwright::document::Document;
use linkwright::inputs::{At, CHOICES, Choice, LENGTH, USAGE};
use linkwright::quantity::{System, inch};
use linkwright::report::Verdict;
use wasm_bindgen_test::{wasm_bindgen_test, wasm_bindgen_test_configure};

wasm_bindgen_test_configure!(run_in_browser);

fn length_of(mounted: &Mounted) -> Option<f64> {
    mounted.session.document.with_untracked(|document: &Document| document.links[0].length)
}

fn length_field() -> AnyView {
    view! { <NumberField input=&LENGTH place=At::default() /> }.into_any()
}

fn choice(id: &str) -> &'static Choice {
    CHOICES.iter().find(|choice| choice.id == id).expect("a choice")
}

#[wasm_bindgen_test]
async fn a_verdict_is_a_word_and_a_shape() {
    let mounted = Mounted::with("", || view! { <VerdictMark verdict=Verdict::Fails word="Stop" /> }.into_any()).await;
    assert_eq!((mounted.text(".verdict.fails"), mounted.count("svg path")), ("Stop".to_string(), 2));
}

#[wasm_bindgen_test]
async fn a_length_is_taken_as_people_say_it() {
    let mounted = Mounted::with(EXAMPLE, length_field).await;
    assert_eq!(mounted.value("#in-length"), "38");
    for (typed, inches) in [("36 1/2", 36.5), ("36-1/2\"", 36.5), ("3' 0-1/2\"", 36.5), ("92.71 cm", 36.5)] {
        mounted.enter("#in-length", typed).await;
        let length = length_of(&mounted).expect("a length");
        assert!((length - inch(inches)).abs() < 1e-9, "{typed}: {length}");
        assert_eq!(mounted.count(".error"), 0, "{typed}");
    }
    mounted.session.switch_units(System::Metric);
    mounted.settle().await;
    assert_eq!((mounted.value("#in-length").as_str(), mounted.text(".unit").as_str()), ("927.1", "mm"));
}

#[wasm_bindgen_test]
async fn a_half_typed_entry_is_not_refused_before_it_is_left() {
    let mounted = Mounted::with(EXAMPLE, length_field).await;
    mounted.type_into("#in-length", "36 1/").await;
    assert_eq!((mounted.count(".error"), mounted.attribute("#in-length", "aria-invalid").as_str()), (0, "false"));
    mounted.enter("#in-length", "36 1/").await;
    assert_eq!(
        (mounted.count(".error[role=alert]"), mounted.attribute("#in-length", "aria-invalid").as_str()),
        (1, "true")
    );
    assert_eq!(mounted.value("#in-length"), "36 1/", "what was typed stands");
    mounted.enter("#in-length", "36 1/2").await;
    assert_eq!(mounted.count(".error"), 0);
}

#[wasm_bindgen_test]
async fn the_smallest_step_of_a_tape_moves_the_length() {
    let mounted = Mounted::with(EXAMPLE, length_field).await;
    mounted.click(".step.longer").await;
    let length = length_of(&mounted).expect("a length");
    assert!(length > inch(38.0) && length < inch(38.3), "{length}");
    mounted.click(".step.shorter").await;
    assert_eq!(length_of(&mounted), Some(inch(38.0)));
}

#[wasm_bindgen_test]
async fn radio_buttons_show_and_set_what_is_decided() {
    let mounted =
        Mounted::with(EXAMPLE, || view! { <RadioField choice=&USAGE place=At::default() /> }.into_any()).await;
    let options = (USAGE.options)();
    assert_eq!(mounted.count("input[type=radio]"), u32::try_from(options.len()).expect("a few"));
    assert_eq!(mounted.count("input:checked"), 1);
    let other = options.iter().find(|option| option.id != "hard").expect("another use").id;
    mounted.click(&format!("#in-use-{other}")).await;
    let now = mounted.session.document.with_untracked(|document| USAGE.value(document, At::default()));
    assert_eq!(now, Some(other));
}

#[wasm_bindgen_test]
async fn a_list_says_what_each_pick_means() {
    let metal = || view! { <ChoiceField choice=choice("metal") place=At::default() /> }.into_any();
    let mounted = Mounted::with(EXAMPLE, metal).await;
    let options = (choice("metal").options)();
    let last = options.last().expect("a metal").id;
    mounted.enter("select", last).await;
    let now = mounted.session.document.with_untracked(|document| (choice("metal").get)(document, At::default()));
    assert_eq!(now, Some(last));
    assert_eq!(mounted.attribute("select", "aria-describedby"), mounted.attribute(".help", "id"));
}

#[wasm_bindgen_test]
async fn a_fold_makes_its_inside_when_it_is_opened_or_printed() {
    let fold = || view! { <Fold summary="More">"Inside"</Fold> }.into_any();
    let mounted = Mounted::with("", fold).await;
    assert_eq!(mounted.count("details > div"), 0);
    mounted.session.printing.set(true);
    mounted.settle().await;
    assert_eq!(mounted.text("details > div"), "Inside");
}
