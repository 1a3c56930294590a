//! Readings on the rig by themselves, in a browser.

use super::Fit;
use super::hit::AfterAHit;
use super::log::LogSection;
use super::number::NumberField;
use super::reading::ReadingField;
use super::safe::Safe;
use super::state::{Draft, provide_fitting, use_fitting};
use crate::app::mounted::{EXAMPLE, Mounted};
use crate::app::session::View;
use crate::browser::storage;
use leptos::prelude::*;
use linkwright::log::EntryKind;
use linkwright::quantity::{Kind, System, inch};
use wasm_bindgen_test::wasm_bindgen_test;

fn face_and_nut() -> AnyView {
    let fitting = provide_fitting();
    let face = move || fitting.number("face-a").map_or("none".to_string(), |face| format!("{face:.6}"));
    view! {
        <ReadingField of="face-a" />
        <ReadingField of="nut-a" />
        <p id="noted">{face}</p>
    }
    .into_any()
}

#[wasm_bindgen_test]
async fn a_reading_is_noted_while_it_is_typed_and_refused_once_it_is_left() {
    let mounted = Mounted::with(EXAMPLE, face_and_nut).await;
    assert_eq!(mounted.text("#noted"), "none");
    mounted.type_into("#in-face-a", "2 5/8").await;
    assert_eq!(mounted.text("#noted"), format!("{:.6}", inch(2.625)));
    // What cannot be read is no reading: the one before must not go on counting.
    mounted.type_into("#in-face-a", "2 5/8 and").await;
    assert_eq!((mounted.text("#noted").as_str(), mounted.count(".error")), ("none", 0));
    mounted.enter("#in-face-a", "900").await;
    assert_eq!((mounted.count(".error[role=alert]"), mounted.value("#in-face-a").as_str()), (1, "900"));
    assert_eq!(mounted.attribute("#in-face-a", "aria-describedby"), "error-in-face-a help-in-face-a");
    assert_eq!(mounted.count("#error-in-face-a"), 1);
    mounted.enter("#in-face-a", "66.675 mm").await;
    assert_eq!((mounted.count(".error"), mounted.text("#noted")), (0, format!("{:.6}", inch(2.625))));
    mounted.session.switch_units(System::Metric);
    mounted.settle().await;
    assert_eq!((mounted.value("#in-face-a").as_str(), mounted.text(".unit").as_str()), ("66.675", "mm"));
}

#[wasm_bindgen_test]
async fn a_pick_can_be_taken_back() {
    let mounted = Mounted::with(EXAMPLE, face_and_nut).await;
    assert_eq!((mounted.count("input:checked"), mounted.count("fieldset button")), (0, 0));
    mounted.click("#in-nut-a-yes").await;
    assert_eq!(mounted.count("#in-nut-a-yes:checked"), 1);
    assert!(mounted.text("fieldset button").starts_with("Clear this answer"));
    mounted.click("fieldset button").await;
    assert_eq!(mounted.count("input:checked"), 0);
}

#[wasm_bindgen_test]
async fn both_nuts_are_answered_at_once_and_the_verdict_has_the_focus() {
    let mounted = Mounted::with(EXAMPLE, the_check).await;
    mounted.click("#both-tight").await;
    mounted.settle().await;
    assert_eq!((mounted.count("#both-tight"), mounted.count("#in-nut-a-yes:checked")), (0, 1));
    assert_eq!(mounted.count("#safe-verdict:focus"), 1);
}

#[wasm_bindgen_test]
async fn which_recheck_it_is_has_no_answer_to_clear() {
    let kind = || {
        provide_fitting();
        view! { <ReadingField of="recheck-kind" /> }.into_any()
    };
    let mounted = Mounted::with(EXAMPLE, kind).await;
    mounted.click("#in-recheck-kind-half-year").await;
    assert_eq!((mounted.count("input:checked"), mounted.count("button")), (1, 0));
}

#[wasm_bindgen_test]
async fn a_field_may_go_while_somebody_types() {
    let field = || {
        let here = RwSignal::new(true);
        let take = move |text: String| {
            here.set(text != "go");
            Ok(())
        };
        let shown = Signal::derive(String::new);
        let number = move || {
            let id = "wish".to_string();
            view! { <NumberField id label="Wish" help="" kind=Kind::Length shown take=Callback::new(take) /> }
        };
        view! { <Show when=move || here.get()>{number()}</Show> }.into_any()
    };
    let mounted = Mounted::with("", field).await;
    mounted.type_into("#wish", "go").await;
    assert_eq!(mounted.count("#wish"), 0);
}

#[wasm_bindgen_test]
async fn the_log_tells_what_was_done() {
    let log = || {
        provide_fitting();
        let fitting = use_fitting();
        let turned = move |_| {
            let _ = fitting.record(&Draft::of_words(EntryKind::Turned, "Two turns longer".to_string()));
        };
        view! {
            <button type="button" id="turned" on:click=turned></button>
            <LogSection />
        }
        .into_any()
    };
    let mounted = Mounted::with(EXAMPLE, log).await;
    mounted.click("#fit-log > summary").await;
    assert_eq!((mounted.text("#fit-log > summary").as_str(), mounted.count("#copy-with-log")), ("Log", 0));
    mounted.click("#turned").await;
    assert_eq!(mounted.text("#fit-log > summary"), "Log: 1 entry");
    assert!(mounted.text(".log li").contains("Two turns longer"));
    assert_eq!(mounted.count("#copy-with-log"), 1);
    // One press takes it out, and the same button puts it back.
    mounted.click(".log li button").await;
    assert_eq!(mounted.text("#fit-log > summary"), "Log");
    assert!(mounted.text(".log li button").starts_with("Undo"));
    mounted.settle().await;
    mounted.settle().await;
    assert_eq!(mounted.text("#log-done"), "Taken out.");
    mounted.click(".log li button").await;
    assert_eq!(mounted.text("#fit-log > summary"), "Log: 1 entry");
    assert!(mounted.text(".log li button").starts_with("Take it out"));
}

fn the_check() -> AnyView {
    provide_fitting();
    view! {
        <Safe />
        <LogSection />
    }
    .into_any()
}

#[wasm_bindgen_test]
async fn the_same_readings_go_into_the_log_once() {
    let mounted = Mounted::with(EXAMPLE, the_check).await;
    mounted.click("#in-nut-a-yes").await;
    mounted.click("#safe-log").await;
    assert!(mounted.text("#safe-log + .done").starts_with("In the log, "), "{}", mounted.text("#safe-log + .done"));
    assert_eq!(mounted.attribute("#safe-log", "aria-disabled"), "true");
    mounted.click("#safe-log").await;
    assert!(mounted.text("#safe-log + .done").starts_with("Already in the log, "));
    assert_eq!(mounted.text("#fit-log > summary"), "Log: 1 entry");
    mounted.click("#in-nut-b-yes").await;
    assert_eq!(mounted.text("#safe-log + .done"), "", "something changed");
    mounted.click("#safe-log").await;
    assert_eq!(mounted.text("#fit-log > summary"), "Log: 2 entries");
}

#[wasm_bindgen_test]
async fn a_full_browser_is_told_at_the_button() {
    let mounted = Mounted::with(EXAMPLE, the_check).await;
    mounted.click("#in-nut-a-yes").await;
    storage::fill();
    mounted.click("#safe-log").await;
    let says = mounted.text("#safe-log + .done");
    storage::forget_everything();
    assert_eq!(says, "Not kept: this browser is full. Export the build as a file now.");
    assert!(mounted.session.unkept_log.with_untracked(Option::is_some));
    assert!(mounted.count(".export-unkept") > 0);
    // Once there is room, the next press keeps it.
    mounted.click("#safe-log").await;
    assert!(mounted.text("#safe-log + .done").starts_with("Already in the log, "));
    assert_eq!((mounted.count(".export-unkept"), mounted.text("#fit-log > summary").as_str()), (0, "Log: 1 entry"));
    assert!(mounted.session.unkept_log.with_untracked(Option::is_none));
}

#[wasm_bindgen_test]
async fn without_a_link_fit_leads_to_it_and_keeps_open_what_needs_none() {
    let mounted = Mounted::with("", || view! { <Fit /> }.into_any()).await;
    assert_eq!((mounted.count(".places"), mounted.count("#fit-log"), mounted.count("[name=bar]")), (0, 0, 0));
    mounted.click("#fit-looks > summary").await;
    assert!(mounted.text("#fit-looks").contains("do not drive on it"));
    mounted.click("#broken > summary").await;
    mounted.click("#broken-shank-broken").await;
    assert!(mounted.text("#broken-told").contains("What happened"));
    assert_eq!(mounted.count("#broken-told .verdict"), 0, "nothing is judged");
    mounted.session.view.set(View::Fit);
    mounted.click("#fit-enter").await;
    assert_eq!(mounted.session.view.get_untracked(), View::Size);
}

fn after_a_hit() -> AnyView {
    provide_fitting();
    view! { <AfterAHit /> }.into_any()
}

#[wasm_bindgen_test]
async fn nothing_drives_on_by_a_gap_that_cannot_be_read_or_was_not_measured() {
    let mounted = Mounted::with(EXAMPLE, after_a_hit).await;
    mounted.click("#hit-all-clean").await;
    assert!(mounted.text("#hit-verdict").contains("Not judged"), "{}", mounted.text("#hit-verdict"));
    for hostile in ["50", "-1", "abc", "1/"] {
        mounted.enter("#in-hit-bow", hostile).await;
        let told = mounted.text("#hit-verdict");
        assert!(told.contains("Not judged") && told.contains("type it again"), "{hostile}: {told}");
    }
    mounted.enter("#in-hit-bow", "0").await;
    assert!(mounted.text("#hit-verdict").contains("Drive on"), "{}", mounted.text("#hit-verdict"));
    mounted.click("#in-hit-crack-yes").await;
    assert!(mounted.text("#hit-verdict").contains("Stop"));
}
