//! Links for the tests: invented rigs, answered by the engine.

use linkwright::document::{Document, Hand, OWN_ROD_END, Role, Use};
use linkwright::engine::fitting::as_fitted::Readings;
use linkwright::engine::report_on;
use linkwright::engine::sentence::{Phrase, spoken};
use linkwright::quantity::{System, inch, lbf};
use linkwright::report::LinkGeometry;

/// A lower link with measured 1-1/4-12 rod ends: F 4-1/8 in, T 2-1/2 in.
pub(crate) fn document() -> Document {
    let mut document = Document::default();
    (document.rig.weight, document.rig.usage) = (Some(lbf(2500.0)), Some(Use::Easy));
    let link = &mut document.links[0];
    (link.role, link.length) = (Role::Lower, Some(inch(38.0)));
    (link.outside_diameter, link.material) = (Some(inch(2.0)), Some("7075-t6"));
    for end in &mut link.ends {
        (end.rod_end, end.own_thread) = (Some(OWN_ROD_END), Some("1-1/4-12"));
        (end.own_eye_to_end, end.own_thread_length) = (Some(inch(4.125)), Some(inch(2.5)));
        end.own_bore = Some(inch(1.0));
    }
    document
}

/// The same with ends of these hands.
pub(crate) fn with_hands(hands: [Hand; 2]) -> Document {
    let mut document = document();
    document.links[0].ends.iter_mut().zip(hands).for_each(|(end, hand)| end.hand = Some(hand));
    document
}

/// The same with rod ends of a published series, not measured.
pub(crate) fn of_a_series() -> Document {
    let mut document = document();
    document.links[0].ends.iter_mut().for_each(|end| end.rod_end = Some("wide-14"));
    document
}

/// What the engine lays out.
pub(crate) fn link(document: &Document) -> LinkGeometry {
    report_on(document, 0).answer().expect("an answer").link.clone()
}

/// Every reading taken, with this many threads showing at each end and both nuts tight.
pub(crate) fn read(link: &LinkGeometry, threads: [f64; 2]) -> Readings {
    let face = [0, 1].map(|index| {
        let end = &link.ends[index];
        let inserted = end.thread_length - end.jam_nut - threads[index] * end.thread.pitch;
        end.eye_to_end - inserted
    });
    Readings {
        face: face.map(Some),
        visible: threads.map(Some),
        eye_to_eye: Some(link.bar + face[0] + face[1]),
        nut_tight: [Some(true); 2],
        unreadable: false,
    }
}

/// A sentence in inches.
pub(crate) fn words(said: &[Phrase]) -> String {
    spoken(said, System::Inch)
}
