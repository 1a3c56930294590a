//! What a bar bears once a hit has bent it: as a bowed column, as a bent bar under its force, and hit once more.

use super::{Case, columns, tube};
use crate::engine::cross_sections::CrossSection;
use crate::engine::formula::Sheet;
use crate::engine::formulas::{beams, bent, beyond, columns as column_formulas, pins, sections, stepped};
use crate::engine::sentence::said;
use crate::engine::stepped::Levers;
use crate::inputs;
use crate::quantity;

/// A bar as a bow is judged on it, SI.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct BowedBar {
    /// Eye to eye.
    pub length: f64,
    /// Outside diameter.
    pub outside_diameter: f64,
    /// Bore of a tube, 0 for a solid bar.
    pub bore: f64,
    /// Area of the section.
    pub area: f64,
    /// Second moment of area.
    pub second_moment: f64,
    /// Section modulus.
    pub modulus: f64,
    /// Yield strength in compression.
    pub yield_compression: f64,
    /// Yield strength in tension.
    pub yield_tension: f64,
    /// Compression at which it would buckle, were nothing to yield.
    pub critical: f64,
    /// Compression at which it buckles before the hit.
    pub straight: f64,
    /// Bow of a bar sold as straight, as a share of its length.
    pub straightness: f64,
    /// How far it lies off the line between its eyes by design.
    pub offset: f64,
    /// Largest tension or compression.
    pub axial: f64,
    /// Compression together with a hit.
    pub axial_with_strike: f64,
    /// The hit that it is sized for.
    pub strike: f64,
    /// Moment at mid-span for each unit of a hit, under that compression.
    pub lever: f64,
    /// Factor on buckling.
    pub column_factor: f64,
    /// Factor on yield.
    pub yield_factor: f64,
    /// Whether it is a tube that bends long before it breaks.
    pub ductile: bool,
}

/// What a bow leaves of a bar.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct WithBow {
    /// Bow from eye to eye, what no straight bar is free of included; everything here goes by it.
    pub bow: f64,
    /// Compression at which it buckles now.
    pub buckles_at: f64,
    /// The same as a share of what it was.
    pub left: f64,
    /// Its largest compression with its factor, over that.
    pub column: f64,
    /// Stress of that force on the bow, with the factor on yield, over the yield strength; infinite where it buckles.
    pub force: f64,
    /// Moment of the next full hit over that of a plastic hinge; 0 where no hit is assumed.
    pub hinge: f64,
    /// Stress under the next full hit over the yield strength, without a factor; 0 where no hit is assumed.
    pub hit: f64,
    /// Hits under which it first yielded, straight, and first yields on now; none where no hit is assumed.
    pub yields_at: Option<[f64; 2]>,
}

/// The bar of a link under its loads; none where its lengths or its forces cannot be told, or where its force alone
/// buckles it.
pub(in crate::engine) fn bowed_bar(case: &Case) -> Option<BowedBar> {
    let silent = &mut Sheet::silent();
    let loads = case.loads;
    if case.layout_out_of_range.is_some() || loads.axial_out_of_range.is_some() || loads.strike_out_of_range.is_some() {
        return None;
    }
    let section: CrossSection = case.stock.plain(silent);
    let levers = Levers::new(case.compression_steps, loads.axial_with_strike);
    if !levers.stand() {
        return None;
    }
    let middle = case.made.length / 2.0;
    let straight = columns::buckling_load(case, silent);
    if silent.out_of_range.is_some() {
        return None;
    }
    Some(BowedBar {
        length: case.made.length,
        outside_diameter: case.made.outside_diameter,
        bore: case.made.bore,
        area: section.area,
        second_moment: section.second_moment,
        modulus: section.modulus,
        yield_compression: section.yield_compression,
        yield_tension: section.yield_tension,
        critical: case.critical_load(),
        straight,
        straightness: case.given.known(&inputs::BOW),
        offset: columns::bend(case.given),
        axial: loads.axial,
        axial_with_strike: loads.axial_with_strike,
        strike: loads.strike,
        lever: levers.moment(middle, middle),
        column_factor: case.given.known(&inputs::COLUMN_FACTOR),
        yield_factor: case.given.known(&inputs::YIELD_FACTOR),
        ductile: tube::is_ductile(case, &section),
    })
}

impl BowedBar {
    /// What is left of it with a bow from eye to eye, of which a straight bar has nothing.
    pub fn with_bow(&self, bow: f64, sheet: &mut Sheet) -> WithBow {
        let straight = sheet.work(&column_formulas::STRAIGHTNESS, &[self.straightness, self.length]);
        let whole = sheet.work(&bent::WHOLE_BOW, &[straight, bow]);
        let buckles_at = self.buckles_at(whole, sheet);
        let left = sheet.work(&bent::CAPACITY_LEFT, &[buckles_at, self.straight]);
        let column = sheet.work(&pins::UTILIZATION, &[self.axial, self.column_factor, buckles_at]);
        let force = self.under_force(whole, sheet);
        let struck = (self.strike > 0.0).then(|| self.struck([straight, whole], sheet));
        WithBow {
            bow: whole,
            buckles_at,
            left,
            column,
            force,
            hinge: struck.map_or(0.0, |(hinge, _, _)| hinge),
            hit: struck.map_or(0.0, |(_, hit, _)| hit),
            yields_at: struck.map(|(_, _, yields_at)| yields_at),
        }
    }

    /// Compression at which it first yields as a bowed column; never more than when it was straight.
    pub fn buckles_at(&self, bow: f64, sheet: &mut Sheet) -> f64 {
        sheet.choose(|| said!["As a bowed column (Perry-Robertson), with the whole bow:"]);
        let radius = sheet.work(&sections::RADIUS_OF_GYRATION, &[self.second_moment, self.area]);
        let crookedness = sheet.work(&column_formulas::CROOKEDNESS, &[bow, self.outside_diameter / 2.0, radius]);
        let critical = sheet.work(&beams::AXIAL_STRESS, &[self.critical, self.area]);
        let half_sum = sheet.work(&column_formulas::PERRY_HALF_SUM, &[self.yield_compression, crookedness, critical]);
        let bowed = sheet
            .work(&column_formulas::PERRY_ROBERTSON_LOAD, &[self.area, half_sum, self.yield_compression, critical]);
        bowed.min(self.straight)
    }

    /// Share of its yield strength under the force along it alone, with the factor on yield before the amplification.
    pub fn under_force(&self, bow: f64, sheet: &mut Sheet) -> f64 {
        sheet.choose(|| {
            said!["As a bent bar under the largest force along it, with the whole bow and its factor on yield:"]
        });
        let load = sheet.work(&stepped::FACTORED_LOAD, &[self.yield_factor, self.axial]);
        if !quantity::exceeds(self.critical, load) {
            sheet.choose(|| said!["That force alone buckles it."]);
            return f64::INFINITY;
        }
        let pressed = sheet.work(&column_formulas::BENT_MOMENT, &[load, bow, self.critical]);
        let pulled = sheet.work(&column_formulas::BENT_MOMENT_TENSION, &[load, bow]);
        let share = |moment, yielding, sheet: &mut Sheet| {
            let stress = sheet.work(&beams::COMBINED_STRESS, &[load, self.area, moment, self.modulus]);
            sheet.work(&pins::STRESS_SHARE, &[stress, yielding])
        };
        share(pressed, self.yield_compression, sheet).max(share(pulled, self.yield_tension, sheet))
    }

    /// The next full hit on the side it bows to: share of the hinge, share of yield, and the hits to first yield, from the
    /// bow before the hit that bent it and from the one now.
    fn struck(&self, [straight, bow]: [f64; 2], sheet: &mut Sheet) -> (f64, f64, [f64; 2]) {
        sheet.choose(|| said!["Hit once more as hard as it is sized for, on the side it bows to, with the whole bow and without a factor:"]);
        let (load, yielding) = (self.axial_with_strike, self.yield_compression.min(self.yield_tension));
        let [of_straight, of_bow] =
            [straight, bow].map(|bow| sheet.work(&column_formulas::BENT_MOMENT, &[load, bow, self.critical]));
        let of_strike = sheet.work(&bent::STRIKE_MOMENT, &[self.strike, self.lever]);
        let moment = sheet.work(&bent::MOMENT_WITH_BOW, &[of_strike, of_bow]);
        let stress = sheet.work(&beams::COMBINED_STRESS, &[load, self.area, moment, self.modulus]);
        let hit = sheet.work(&pins::STRESS_SHARE, &[stress, yielding]);
        let plastic = sheet.work(&sections::RING_PLASTIC_MODULUS, &[self.outside_diameter, self.bore]);
        let most = sheet.work(&beyond::HINGE_MOMENT, &[yielding, plastic, load, self.area]);
        let hinge = sheet.work(&pins::MOMENT_SHARE, &[moment, most]);
        let yields_at = [of_straight, of_bow].map(|of_bow| {
            sheet.work(&bent::STRIKE_ON_BOW, &[self.modulus, yielding, load, self.area, of_bow, self.lever])
        });
        (hinge, hit, yields_at)
    }
}
