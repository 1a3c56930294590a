//! Header and notices by themselves, in a browser.

use super::{Header, Notices};
use crate::app::mounted::{EXAMPLE, Mounted};
use crate::app::session::View;
use leptos::prelude::*;
use linkwright::quantity::System;
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
