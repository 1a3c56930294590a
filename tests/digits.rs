//! Numbers leave as digits and come back as the same numbers, bit for bit: in links, and in what a field is given.

mod dice;

use linkwright::document::Document;
use linkwright::quantity::{Kind, System, plain, read};
use linkwright::share::{from_fragment, to_fragment};

/// A weight that a link takes, of any bits.
fn weight(dice: &mut dice::Dice) -> f64 {
    let mut part = || dice.next(1 << 26) as f64 / f64::from(1 << 26);
    3_000.0 + 60_000.0 * (part() + part() / f64::from(1 << 26))
}

#[test]
fn a_link_brings_every_bit_back() {
    dice::in_four_threads(1_905, |mut dice| {
        for _ in 0..20_000 {
            let mut document = Document::default();
            document.rig.weight = Some(weight(&mut dice));
            let back = from_fragment(&to_fragment(&document)).document.rig.weight;
            assert_eq!(back.map(f64::to_bits), document.rig.weight.map(f64::to_bits), "{:?}", document.rig.weight);
        }
    });
}

#[test]
fn a_field_brings_its_digits_back() {
    dice::in_four_threads(2_611, |mut dice| {
        for _ in 0..20_000 {
            let value = weight(&mut dice);
            for system in [System::Inch, System::Metric] {
                let written = plain(value, Kind::Weight, system);
                let back = read(&written, Kind::Weight, system).expect("its own digits");
                assert!((back - value).abs() <= 5e-4, "{written}: {back} instead of {value}");
                assert_eq!(plain(back, Kind::Weight, system), written, "written once more");
            }
        }
    });
}
