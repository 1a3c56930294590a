//! The engine as the browser runs it: the same answers, to the last digit, as on the host.
#![cfg(target_arch = "wasm32")]

use linkwright::engine::report;
use linkwright::quantity::{Kind, System, show};
use linkwright::{engine::reference, share};
use wasm_bindgen_test::{wasm_bindgen_test, wasm_bindgen_test_configure};

#[path = "math/bits.rs"]
mod bits;

wasm_bindgen_test_configure!(run_in_browser);

/// A driven-hard 4,100 lb rig with 38 in lowers; the worked example of the README.
const EXAMPLE: &str = "3&length=38in&weight=4100lb&use=hard&crc=6f47f8b8";

#[wasm_bindgen_test]
fn the_worked_example_comes_out_as_on_the_host() {
    let opened = share::from_fragment(EXAMPLE);
    assert!(opened.notices.is_empty(), "{:?}", opened.notices);
    let report = report(&opened.document);
    let answer = report.links[0].answer().expect("an answer");
    assert_eq!(show(answer.link.outside_diameter, Kind::Length, System::Inch), "2-1/4 in");
    assert_eq!(show(answer.link.bar, Kind::Length, System::Inch), "32-3/4 in");
    assert_eq!(answer.link.ends[0].thread.id, "1-1/4-12");
    assert_eq!(share::to_fragment(&opened.document), EXAMPLE);
}

/// As on the host, where `tests/math.rs` sums up the same.
#[wasm_bindgen_test]
fn sines_and_powers_are_those_of_the_host_to_the_last_bit() {
    assert_eq!(bits::sum(), bits::SUM);
}

#[wasm_bindgen_test]
fn every_outside_value_holds_in_the_browser() {
    for row in reference::all() {
        assert!(row.agrees(), "{}: expected {} {}", row.id, row.expected, row.unit);
    }
}

#[wasm_bindgen_test]
fn every_tabled_thread_value_is_accounted_for_in_the_browser() {
    for row in reference::tabled() {
        assert!(row.accounted_for(), "{}, {}: tabled {}", row.thread.id, row.what, row.tabled);
    }
}
