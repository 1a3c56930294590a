//! Header and notices by themselves, in a browser.

use super::{Header, Notices, Summary};
use crate::app::fields::{provide_in_sight, stands_in_sight};
use crate::app::mounted::{EXAMPLE, Mounted};
use crate::app::session::View;
use leptos::prelude::*;
use linkwright::present::fit::Place;
use linkwright::quantity::System;
use linkwright::report::Verdict;
use wasm_bindgen_test::wasm_bindgen_test;

#[wasm_bindgen_test]
async fn the_header_turns_to_a_view_and_to_other_units() {
    let mounted = Mounted::with(EXAMPLE, || view! { <Header /> }.into_any()).await;
    assert_eq!(mounted.count("nav button"), View::ALL.len() as u32);
    mounted.click("#view-prove").await;
    assert_eq!(mounted.session.view.get_untracked(), View::Prove);
    assert_eq!(mounted.count("[aria-current=page]"), 1);
    assert_eq!(mounted.attribute("#view-prove", "aria-current"), "page");
    mounted.click("#units-metric").await;
    assert_eq!(mounted.session.units.get_untracked(), System::Metric);
    assert_eq!(mounted.attribute("#units-metric", "aria-pressed"), "true");
    assert_eq!(mounted.attribute("#units-inch", "aria-pressed"), "false");
}

#[wasm_bindgen_test]
async fn a_damaged_link_says_so_until_its_numbers_were_compared() {
    let unchecked = EXAMPLE.split_once("&crc").expect("a check").0;
    let mounted = Mounted::with(unchecked, || view! { <Notices /> }.into_any()).await;
    assert!(mounted.text(".unverified").contains("Compare every number"), "{}", mounted.text("#notices"));
    mounted.click("#compared").await;
    assert_eq!(mounted.count(".unverified"), 0);
}

fn a_place_with_its_line() -> AnyView {
    provide_in_sight();
    let open = RwSignal::new(true);
    let place = move || {
        stands_in_sight(|| Some((Verdict::Fails, "Stop")));
        view! { <button type="button" id="leave" on:click=move |_| open.set(false)></button> }
    };
    view! {
        <Show when=move || open.get()>{place()}</Show>
        <Summary line=Signal::derive(|| "Front lower left".to_string()) />
    }
    .into_any()
}

#[wasm_bindgen_test]
async fn in_a_place_of_fit_the_line_tells_how_the_bar_stands() {
    let mounted = Mounted::with(EXAMPLE, a_place_with_its_line).await;
    assert_eq!((mounted.text("#summary").as_str(), mounted.count("#summary-back")), ("Front lower left", 0));
    mounted.session.view.set(View::Fit);
    mounted.session.fit_place.set(Some(Place::Safe));
    mounted.settle().await;
    assert_eq!((mounted.text("#summary .word").as_str(), mounted.count("#summary .shape svg")), ("Stop", 1));
    mounted.click("#leave").await;
    assert_eq!(mounted.text("#summary"), "Front lower left", "nothing is judged any more");
    mounted.click("#summary-back").await;
    assert_eq!((mounted.session.fit_place.get_untracked(), mounted.count("#summary-back")), (None, 0));
}
