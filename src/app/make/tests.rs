//! What the shop prints and takes away by itself, in a browser.

use super::Make;
use crate::app::fields::NumberField;
use crate::app::mounted::{EXAMPLE, Mounted};
use leptos::prelude::*;
use linkwright::inputs::{At, LENGTH};
use wasm_bindgen_test::wasm_bindgen_test;

/// Every button that lets something out of the view.
const OUTLETS: [&str; 5] = ["print-route", "print-labels", "print-record", "file-dxf", "file-parts"];

fn make_and_length() -> AnyView {
    view! {
        <NumberField input=&LENGTH place=At::default() />
        <Make />
    }
    .into_any()
}

#[wasm_bindgen_test]
async fn nothing_goes_out_while_an_entry_was_not_taken() {
    let mounted = Mounted::with(EXAMPLE, make_and_length).await;
    let shut = || OUTLETS.map(|id| mounted.count(&format!("#{id}[disabled]")));
    assert_eq!((shut(), mounted.text("#make-not-taken").as_str()), ([0; 5], ""));
    mounted.enter("#in-length", "2000").await;
    assert_eq!(shut(), [1; 5]);
    let said = mounted.text("#make-not-taken");
    assert!(said.contains("2000 was not taken; this order is for 38 in."), "{said}");
    mounted.enter("#in-length", "40").await;
    assert_eq!((shut(), mounted.text("#make-not-taken").as_str()), ([0; 5], ""));
}
