//! What each stretch of a link is made of: its section, its metal and where it begins and ends.

use super::formula::Sheet;
use super::formulas::threads::BASIC_MINOR_DIAMETER;
use super::formulas::{pins, sections};
use super::sentence::{Said, said};
use super::stepped::Step;
use super::tables::materials::{Form, Strength};
use crate::quantity::{Kind, ksi};
use crate::report::{EndGeometry, Flats, LinkGeometry, PartAlong};
use crate::source::{Cite, MIL_HDBK_5J, Obtained, cite};

/// Modulus of elasticity of a rod end's shank, as of any alloy steel.
const SHANK_MODULUS: f64 = ksi(29_000.0);
const SHANK_MODULUS_SOURCE: Cite = cite(&MIL_HDBK_5J, "Table 2.3.1.0(c1), alloy steel", Obtained::Copied);

/// A section with what its metal bears.
#[derive(Debug, Clone, Copy)]
pub(super) struct CrossSection {
    pub(super) area: f64,
    pub(super) second_moment: f64,
    pub(super) modulus: f64,
    pub(super) yield_tension: f64,
    pub(super) yield_compression: f64,
    pub(super) modulus_tension: f64,
    pub(super) modulus_compression: f64,
}

/// A stretch of a link of one section; stations from eye A.
#[derive(Debug, Clone)]
pub(super) struct Stretch {
    pub(super) from: f64,
    pub(super) to: f64,
    pub(super) part: &'static str,
    pub(super) kind: StretchKind,
    pub(super) section: CrossSection,
}

/// What a stretch is.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) enum StretchKind {
    /// A rod end's shank.
    Shank,
    /// Solid bar.
    Bar,
    /// Solid bar around a threaded hole.
    Hole,
    /// Wrench flats on solid bar.
    Flats,
    /// Tube away from its welds.
    Tube,
    /// Tube beside a weld.
    Weld,
}

/// The sections of one link, with what they are made of.
pub(super) struct SectionBuilder<'a> {
    pub(super) made: &'a LinkGeometry,
    pub(super) strength: &'a Strength,
    /// Strength of a tube beside its weld.
    pub(super) beside_weld: Option<&'a Strength>,
}

impl SectionBuilder<'_> {
    fn of_strength(&self, row: &Strength, sheet: &mut Sheet) -> [f64; 2] {
        let label = self.made.material.label;
        [
            sheet.look_up("Yield strength in tension", row.yield_tension, Kind::Stress, label, row.cite),
            sheet.look_up("Yield strength in compression", row.yield_compression, Kind::Stress, label, row.cite),
        ]
    }

    fn ring_of(&self, bore: f64, row: &Strength, sheet: &mut Sheet) -> CrossSection {
        let size = [self.made.outside_diameter, bore];
        let [yield_tension, yield_compression] = self.of_strength(row, sheet);
        CrossSection {
            area: sheet.work(&sections::RING_AREA, &size),
            second_moment: sheet.work(&sections::RING_SECOND_MOMENT, &size),
            modulus: sheet.work(&sections::RING_SECTION_MODULUS, &size),
            yield_tension,
            yield_compression,
            modulus_tension: self.made.material.modulus,
            modulus_compression: self.made.material.modulus_compression,
        }
    }

    /// The bar, or the tube away from its welds.
    pub(super) fn plain(&self, sheet: &mut Sheet) -> CrossSection {
        self.ring_of(self.made.bore, self.strength, sheet)
    }

    /// The bar around a tapped hole; the thread in it is not counted on.
    pub(super) fn tapped(&self, end: &EndGeometry, sheet: &mut Sheet) -> CrossSection {
        self.ring_of(end.thread.major, self.strength, sheet)
    }

    /// The bar around the drilled hole, below its thread.
    pub(super) fn drilled(&self, end: &EndGeometry, sheet: &mut Sheet) -> CrossSection {
        let hole = sheet.work(&BASIC_MINOR_DIAMETER, &[end.thread.major, end.thread.pitch]);
        self.ring_of(hole, self.strength, sheet)
    }

    /// The tube where its threaded insert is welded in; `None` when no strength beside a weld is held.
    pub(super) fn welded(&self, sheet: &mut Sheet) -> Option<CrossSection> {
        Some(self.ring_of(self.made.bore, self.beside_weld?, sheet))
    }

    /// The bar at its wrench flats, the weak way, with a hole where they lie over one.
    pub(super) fn flats(&self, width: f64, bore: f64, sheet: &mut Sheet) -> CrossSection {
        let outside = self.made.outside_diameter;
        let [yield_tension, yield_compression] = self.of_strength(self.strength, sheet);
        let angle = sheet.work(&sections::FLATS_HALF_ANGLE, &[width, outside]);
        let second_moment = sheet.work(&sections::FLATS_WEAK_SECOND_MOMENT, &[outside, angle, bore]);
        CrossSection {
            area: sheet.work(&sections::FLATS_AREA, &[outside, angle, bore]),
            second_moment,
            modulus: sheet.work(&sections::FLATS_WEAK_MODULUS, &[second_moment, width]),
            yield_tension,
            yield_compression,
            modulus_tension: self.made.material.modulus,
            modulus_compression: self.made.material.modulus_compression,
        }
    }

    /// The rod end's shank, on the bottom of its thread; its head is taken to be no stiffer.
    pub(super) fn shank(&self, end: &EndGeometry, yielding: f64, sheet: &mut Sheet) -> CrossSection {
        let minor = end.thread.external_minor();
        let modulus = sheet.look_up(
            "Stiffness of the shank's steel",
            SHANK_MODULUS,
            Kind::Stress,
            "alloy steel",
            SHANK_MODULUS_SOURCE,
        );
        CrossSection {
            area: sheet.look_up(
                "Tensile stress area of the shank",
                end.thread.tensile_stress_area(),
                Kind::Area,
                end.thread.label,
                end.thread.cite,
            ),
            second_moment: sheet.work(&sections::RING_SECOND_MOMENT, &[minor, 0.0]),
            modulus: sheet.work(&pins::ROUND_MODULUS, &[minor]),
            yield_tension: yielding,
            yield_compression: yielding,
            modulus_tension: modulus,
            modulus_compression: modulus,
        }
    }

    /// The hole under a place of the bar, so far from each face: its thread, below that its drill, 0 in whole metal.
    fn hole_at(&self, from_faces: [f64; 2]) -> f64 {
        let hole = |end: &EndGeometry, depth: f64| {
            if depth < end.tapped_depth {
                end.thread.major
            } else if depth < end.drill_point {
                BASIC_MINOR_DIAMETER.value(&[end.thread.major, end.thread.pitch])
            } else {
                0.0
            }
        };
        hole(&self.made.ends[0], from_faces[0]).max(hole(&self.made.ends[1], from_faces[1]))
    }

    /// Where the flats lie, from face A, and the hole under each part of them.
    pub(super) fn flats_stretches(&self) -> Vec<(f64, f64, f64)> {
        let made = self.made;
        let Some(flats) = made.flats else { return Vec::new() };
        let (from, to) = (flats.start, flats.start + flats.length);
        let [a, b] = &made.ends;
        let cuts = [a.tapped_depth, a.drill_point, made.bar - b.tapped_depth, made.bar - b.drill_point];
        pieces_between(from, to, &cuts)
            .map(|(from, to)| (from, to, self.hole_at([(from + to) / 2.0, made.bar - (from + to) / 2.0])))
            .collect()
    }

    /// The link from eye to eye.
    ///
    /// # Errors
    /// A sentence when some stretch has no metal left.
    pub(super) fn along(&self) -> Result<Vec<Stretch>, Said> {
        let made = self.made;
        let [a, b] = &made.ends;
        let (face_a, face_b) = (a.eye_to_face, made.length - b.eye_to_face);
        let flats = made.cut_flats();
        let flats_at = flats.map_or([0.0; 2], |flats| [face_a + flats.start, face_a + flats.start + flats.length]);
        let cuts = [
            face_a,
            face_b,
            face_a + a.tapped_depth,
            face_b - b.tapped_depth,
            face_a + a.drill_point,
            face_b - b.drill_point,
            flats_at[0],
            flats_at[1],
        ];
        let mut stretches = Vec::with_capacity(cuts.len() + 1);
        for (from, to) in pieces_between(0.0, made.length, &cuts) {
            let middle = (from + to) / 2.0;
            let on_flats = flats.filter(|_| flats_at[0] < middle && middle < flats_at[1]);
            let (part, kind, section) = if middle < face_a {
                ("shank at end A", StretchKind::Shank, self.shank(a, a.shank_yield, &mut Sheet::silent()))
            } else if middle > face_b {
                ("shank at end B", StretchKind::Shank, self.shank(b, b.shank_yield, &mut Sheet::silent()))
            } else {
                self.along_bar([middle - face_a, face_b - middle], on_flats)
            };
            let on_bar = face_a < middle && middle < face_b;
            let open = flats.is_some_and(|flats| {
                on_bar && on_flats.is_some() && self.hole_at([middle - face_a, face_b - middle]) >= flats.width
            });
            // What is no number is no metal either.
            if section.second_moment > 0.0 && !open {
                stretches.push(Stretch { from, to, part, kind, section });
            } else {
                return Err(no_metal(self, kind));
            }
        }
        Ok(stretches)
    }

    fn along_bar(&self, from_faces: [f64; 2], flats: Option<Flats>) -> (&'static str, StretchKind, CrossSection) {
        let silent = &mut Sheet::silent();
        let ends = &self.made.ends;
        if self.made.material.form == Form::Tube {
            let in_weld = from_faces[0] < ends[0].tapped_depth || from_faces[1] < ends[1].tapped_depth;
            let welded = if in_weld { self.welded(silent) } else { None };
            return welded.map_or_else(
                || ("tube", StretchKind::Tube, self.plain(silent)),
                |section| ("tube beside its weld", StretchKind::Weld, section),
            );
        }
        let hole = self.hole_at(from_faces);
        match flats {
            Some(flats) => ("wrench flats", StretchKind::Flats, self.flats(flats.width, hole, silent)),
            None if hole > 0.0 => {
                ("bar at the threaded hole", StretchKind::Hole, self.ring_of(hole, self.strength, silent))
            }
            None => ("plain bar", StretchKind::Bar, self.plain(silent)),
        }
    }
}

/// The parts that stretches are, those of one part that follow each other together.
pub(super) fn parts(stretches: &[Stretch]) -> Vec<PartAlong> {
    let one = |same: &[Stretch]| {
        let (first, last) = (same.first()?, same.last()?);
        Some(PartAlong { part: first.part, from: first.from, to: last.to })
    };
    stretches.chunk_by(|a, b| a.part == b.part).filter_map(one).collect()
}

/// The pieces between two places, cut where asked.
fn pieces_between(from: f64, to: f64, cuts: &[f64]) -> impl Iterator<Item = (f64, f64)> + use<> {
    let mut places = Vec::with_capacity(cuts.len() + 2);
    places.extend(cuts.iter().copied().filter(|cut| *cut > from && *cut < to));
    places.extend([from, to]);
    places.sort_by(f64::total_cmp);
    // Places that fall together leave no piece between them.
    places.dedup_by(|next, last| *next - *last < 1e-9);
    (1..places.len()).map(move |index| (places[index - 1], places[index]))
}

fn no_metal(stock: &SectionBuilder, kind: StretchKind) -> Said {
    let made = stock.made;
    if kind == StretchKind::Flats {
        let clear = made.ends[0].drill_point.max(made.ends[1].drill_point);
        return said![
            "The flats are cut into the threaded hole. Leave more between them, or move them past ",
            (clear, Length),
            " from the face."
        ];
    }
    let hole = made.ends[0].thread.major.max(made.ends[1].thread.major);
    said![
        "A threaded hole of ",
        (hole, FineLength),
        " leaves no metal in a bar of ",
        (made.outside_diameter, FineLength),
        ". Take a thicker bar or a smaller rod end."
    ]
}

/// The steps of a link as it bends under a strike.
pub(super) fn bending_steps(stretches: &[Stretch]) -> Vec<Step> {
    steps(stretches, |section| section.modulus_tension)
}

/// The steps of a link in compression.
pub(super) fn compression_steps(stretches: &[Stretch]) -> Vec<Step> {
    steps(stretches, |section| section.modulus_compression)
}

fn steps(stretches: &[Stretch], modulus: fn(&CrossSection) -> f64) -> Vec<Step> {
    stretches
        .iter()
        .map(|stretch| Step {
            length: stretch.to - stretch.from,
            modulus: modulus(&stretch.section),
            second_moment: stretch.section.second_moment,
        })
        .collect()
}
