//! What a link weighs as sawn and as finished.

use super::{Shop, ends};
use crate::engine::formula::Sheet;
use crate::engine::formulas::{lengths, machining, sections};
use crate::inputs;

/// Weight of what is sawn off the stock.
pub(super) fn blank(shop: &Shop, sheet: &mut Sheet) -> f64 {
    let made = shop.made;
    let area = sheet.work(&sections::RING_AREA, &[made.stock_diameter, made.bore]);
    sheet.work(&lengths::BAR_WEIGHT, &[made.material.density, area, made.cut])
}

/// Weight of a bar as finished: drilled, tapped, countersunk, with its wrench flats. What the tap's chamfer leaves of a
/// thread past its full depth is not counted.
pub(super) fn finished(shop: &Shop, sheet: &mut Sheet) -> f64 {
    let made = shop.made;
    let area = sheet.work(&sections::RING_AREA, &[made.outside_diameter, 0.0]);
    let [a, b] = [0, 1].map(|end| hole(shop, end, sheet));
    let flats = made.cut_flats().map_or(0.0, |flats| {
        let angle = sheet.work(&sections::FLATS_HALF_ANGLE, &[flats.width, made.outside_diameter]);
        let left = sheet.work(&sections::FLATS_AREA, &[made.outside_diameter, angle, 0.0]);
        sheet.work(&machining::FLATS_VOLUME, &[area, left, flats.length])
    });
    sheet.work(&machining::FINISHED_WEIGHT, &[made.material.density, area, made.bar, a, b, flats])
}

/// Volume of the threaded hole at an end.
fn hole(shop: &Shop, end: usize, sheet: &mut Sheet) -> f64 {
    let made = &shop.made.ends[end];
    let drill = ends::drill_diameter(made);
    let point = sheet.work(&machining::DRILL_POINT, &[drill, ends::POINTS[0]]);
    let drilled = sheet.work(&machining::DRILLED_VOLUME, &[drill, made.drill_depth, point]);
    let groove = sheet.work(&machining::TAPPED_AREA, &[made.thread.major, drill, made.thread.pitch]);
    let across = sheet.work(&machining::COUNTERSINK_DIAMETER, &[made.thread.major, shop.known(&inputs::COUNTERSINK)]);
    let deep = sheet.work(&lengths::COUNTERSINK_DEPTH, &[across, drill]);
    let countersink = sheet.work(&machining::COUNTERSINK_VOLUME, &[across, drill]);
    sheet.work(&machining::THREADED_VOLUME, &[drilled, groove, made.tapped_depth, deep, countersink])
}
