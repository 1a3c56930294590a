//! Which bar to order where the one that is fitted is too short or too long.

use super::SET_AT;
use crate::document::OWN_ROD_END;
use crate::engine::formula::Sheet;
use crate::engine::formulas::lengths;
use crate::engine::sentence::{Said, said};
use crate::quantity::{exceeds, inch};
use crate::report::LinkGeometry;

/// A bar to order.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct OrderBar {
    /// Its finished length, face to face.
    pub bar: f64,
    /// Eye to eye that it is for.
    pub length: f64,
    /// Threads that then show at each end.
    pub visible_threads: [f64; 2],
    /// Whether it waits until the rod ends are measured.
    pub provisional: bool,
}

/// The bar, in steps of 1/32 in, that puts both ends to 1-1/2 threads showing, or to their stop where that comes first, at a length eye to eye.
///
/// # Errors
/// Why no length of bar helps.
pub(in crate::engine::fitting) fn bar_for(
    link: &LinkGeometry,
    length: f64,
    sheet: &mut Sheet,
) -> Result<OrderBar, Said> {
    let mut inserted = [0.0; 2];
    for (index, end) in link.ends.iter().enumerate() {
        let set = [end.thread_length, end.jam_nut, SET_AT, end.thread.pitch];
        // Deeper where the shank's own stop comes first, and no deeper than the hole.
        let design = sheet.work(&lengths::DESIGN_ENGAGEMENT, &set);
        let wanted = design.max(end.stop.inserted).min(end.most + end.not_full);
        if exceeds(end.least + end.not_full, wanted) {
            return Err(said![
                "No length of bar helps: with 1-1/2 threads showing, the shank at ",
                (["A", "B"][index]),
                " is too short to reach the least engagement. Take a rod end with more thread."
            ]);
        }
        inserted[index] = wanted;
    }
    let faces = [0, 1].map(|index| {
        let end = &link.ends[index];
        sheet.work(&lengths::EYE_TO_FACE, &[end.eye_to_end, inserted[index]])
    });
    let exact = sheet.work(&lengths::BAR_LENGTH, &[length, faces[0], faces[1]]);
    let step = inch(1.0 / 32.0);
    // A length that already lies on the step stays on it in spite of the last bits.
    let bar = (exact / step - 1e-9).ceil() * step;
    if !exceeds(bar, inch(1.0)) {
        return Err(said![
            "These rod ends leave no bar between them at ",
            (length, Length),
            ". Measure eye to eye again."
        ]);
    }
    sheet.choose(|| said!["Rounded up to the next 1/32 in: ", (bar, Length), "."]);
    let deeper = (bar - exact) / 2.0;
    let visible_threads = [0, 1].map(|index| {
        let end = &link.ends[index];
        (end.thread_length - end.jam_nut - inserted[index] - deeper) / end.thread.pitch
    });
    let provisional = link.ends.iter().any(|end| end.rod_end_id != OWN_ROD_END);
    Ok(OrderBar { bar, length, visible_threads, provisional })
}
