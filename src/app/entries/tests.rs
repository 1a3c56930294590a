//! The form's own parts by themselves, in a browser.

use super::UndoButtons;
use crate::app::mounted::{EXAMPLE, Mounted};
use leptos::prelude::*;
use linkwright::quantity::inch;
use wasm_bindgen_test::wasm_bindgen_test;

#[wasm_bindgen_test]
async fn undo_takes_an_edit_back_and_stays_in_reach() {
    let mounted = Mounted::with(EXAMPLE, || view! { <UndoButtons ids=true /> }.into_any()).await;
    let length = || mounted.session.document.with_untracked(|document| document.links[0].length);
    assert_eq!(mounted.attribute("#undo", "aria-disabled"), "true");
    mounted.session.edit(|document| document.links[0].length = Some(inch(40.0)));
    mounted.settle().await;
    assert_eq!(mounted.attribute("#undo", "aria-disabled"), "false");
    mounted.click("#undo").await;
    assert_eq!(length(), Some(inch(38.0)));
    assert_eq!((mounted.attribute("#undo", "aria-disabled").as_str(), mounted.count("#undo[disabled]")), ("true", 0));
    mounted.click("#redo").await;
    assert_eq!(length(), Some(inch(40.0)));
}
