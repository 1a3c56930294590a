//! What the shop has to bring for a link, and how much of it is in stock.

use super::{Pair, SAME, stays, thread_of};
use crate::document::{Document, End, Hand, SuppliedBy};
use crate::engine;
use crate::engine::shop::cut_plan::Saw;
use crate::engine::tables::jam_nuts;
use crate::engine::tables::materials::{Form, Material};
use crate::engine::tables::practice::Size;
use crate::engine::tables::threads::Thread;
use crate::inputs::pieces_of;
use crate::quantity::{exceeds, inch};
use crate::report::{Answer, EndGeometry, Part};
use crate::shop::prices::Sought;
use crate::shop::{BARS, Entry, INSERTS, Lists, NUTS, ROD_ENDS, RodEnd, Stock, TUBES};

/// How much smaller than the tube's bore an insert may be that slips in (assumption).
const SLIP: f64 = inch(0.010);

/// A part that the shop brings. Lengths SI.
#[derive(Debug, Clone, PartialEq)]
pub enum Wanted {
    /// Rod ends.
    RodEnd {
        /// What it is called.
        name: String,
        /// Thread of its shank.
        thread: &'static Thread,
        /// Which way that is cut.
        hand: Hand,
        /// Hole in the ball.
        bore: f64,
        /// Eye center to shank end.
        eye_to_end: f64,
        /// Full thread on the shank.
        thread_length: f64,
    },
    /// Blanks of bar or tube.
    Blank {
        /// The metal.
        metal: &'static Material,
        /// Size.
        size: Size,
        /// Length to saw.
        length: f64,
    },
    /// Jam nuts.
    JamNut {
        /// Its thread.
        thread: &'static Thread,
        /// Which way it is cut.
        hand: Hand,
    },
    /// Threaded inserts.
    Insert {
        /// Its thread.
        thread: &'static Thread,
        /// Which way it is cut.
        hand: Hand,
        /// As wide as the tube's bore.
        outside_diameter: f64,
        /// As long as its thread.
        length: f64,
        /// How thick its flange is, 0 for a plain insert. The list holds inserts without a flange.
        flange: f64,
    },
}

/// What of a part is in stock.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Held {
    /// So many.
    Counted(usize),
    /// Some are listed, but nobody has counted them.
    Uncounted,
    /// None is listed.
    NotListed,
    /// Only rod ends of the same thread and bore whose lengths differ, so that the bar would change: so many.
    OtherLengths(usize),
}

/// A part that is needed.
#[derive(Debug, Clone, PartialEq)]
pub struct Needed {
    /// What it is.
    pub what: Wanted,
    /// How many.
    pub count: usize,
    /// What is in stock.
    pub held: Held,
}

impl Needed {
    /// How many have to be ordered; `None` while nobody has counted.
    pub const fn to_order(&self) -> Option<usize> {
        match self.held {
            Held::Counted(held) => Some(self.count.saturating_sub(held)),
            Held::Uncounted => None,
            Held::NotListed | Held::OtherLengths(_) => Some(self.count),
        }
    }
}

/// What a link as it is answered for needs of the shop, and what of that is in stock. Bolts, lock nuts and spacers are in
/// no list.
pub fn standing(document: &Document, link: usize, answer: &Answer, lists: &Lists, saw: &Saw) -> Vec<Needed> {
    needed(document, link, answer, lists, saw, [None, None])
}

/// The same with rod ends that were chosen from the list.
pub(super) fn needed(
    document: &Document,
    link: usize,
    answer: &Answer,
    lists: &Lists,
    saw: &Saw,
    pair: Pair,
) -> Vec<Needed> {
    let mut needed: Vec<Needed> = Vec::new();
    let Some(chosen) = document.links.get(link) else { return needed };
    let (pieces, made) = (pieces_of(document, link), &answer.link);
    // Of one kind from both ends together, so that stock is not counted twice.
    let mut add = |what: Wanted, count: usize| match needed.iter_mut().find(|it| it.what == what) {
        Some(same) => same.count += count,
        None => needed.push(Needed { what, count, held: Held::NotListed }),
    };
    for part in engine::parts(document, link, answer) {
        if let Part::Bar { material, outside_diameter, wall, cuts } = part {
            let size = Size { outside_diameter, wall };
            cuts.iter().for_each(|cut| add(Wanted::Blank { metal: material, size, length: cut.length }, cut.count));
        }
    }
    for ((end, decided), rod_end) in made.ends.iter().zip(&chosen.ends).zip(pair) {
        let (thread, hand) = (end.thread, end.hand);
        if !is_theirs(decided) {
            let name = rod_end.or_else(|| listed(lists, end)).map_or(end.rod_end.to_string(), |it| it.name.clone());
            let (bore, eye_to_end, thread_length) = (end.bore, end.eye_to_end, end.thread_length);
            add(Wanted::RodEnd { name, thread, hand, bore, eye_to_end, thread_length }, pieces);
        }
        add(Wanted::JamNut { thread, hand }, pieces);
        if let Some(insert) = end.insert {
            let (outside_diameter, length, flange) = (insert.outside_diameter, insert.length, insert.shoulder);
            add(Wanted::Insert { thread, hand, outside_diameter, length, flange }, pieces);
        }
    }
    for part in &mut needed {
        part.held = held(&part.what, part.count, lists, saw);
    }
    needed
}

/// Whether the customer brings the rod end at an end: said so, or measured and not said to be the shop's.
pub(in super::super) fn is_theirs(end: &End) -> bool {
    stays(end) || end.supplied_by == Some(SuppliedBy::Customer)
}

/// The rod end of the list that is measured like one that is answered for.
pub(in super::super) fn listed<'a>(lists: &'a Lists, end: &EndGeometry) -> Option<&'a RodEnd> {
    usable(&lists.rod_ends.rows, ROD_ENDS)
        .find(|it| is_of_size(it, end.thread, end.bore) && has_lengths(it, end.eye_to_end, end.thread_length))
}

/// The bars or tubes of a metal and a size.
pub(in super::super) fn of_size<'a>(
    lists: &'a Lists,
    metal: &'static Material,
    sought: Sought,
) -> impl Iterator<Item = &'a Stock> {
    let size = Size { outside_diameter: sought.outside_diameter.unwrap_or(0.0), wall: sought.wall.unwrap_or(0.0) };
    stock_of(lists, metal).filter(move |bar| same_size(bar, size))
}

/// Whether an insert of an outside diameter slips into a bore without rattling.
pub(in super::super) fn slips_in(outside: f64, bore: f64) -> bool {
    !exceeds(outside, bore + SAME) && !exceeds(bore - SLIP, outside)
}

/// Rows of a list that lack nothing.
pub(in super::super) fn usable<'a, R>(
    rows: &'a [Entry<R>],
    columns: &'static [crate::shop::columns::Column<R>],
) -> impl Iterator<Item = &'a R> {
    rows.iter().filter(move |entry| entry.lacks(columns).is_empty()).map(|entry| &entry.row)
}

/// The bars or tubes of a metal.
pub(super) fn stock_of<'a>(lists: &'a Lists, metal: &'static Material) -> impl Iterator<Item = &'a Stock> {
    let (list, columns) = if metal.form == Form::Tube { (&lists.tubes, TUBES) } else { (&lists.bars, BARS) };
    usable(&list.rows, columns).filter(move |bar| bar.metal == Some(metal.id))
}

/// Whether two readings are one to anybody who measures.
fn near(reading: Option<f64>, other: f64) -> bool {
    reading.is_some_and(|reading| !exceeds((reading - other).abs(), SAME))
}

/// Whether a piece of stock has a size.
pub(super) fn same_size(bar: &Stock, size: Size) -> bool {
    near(bar.outside_diameter, size.outside_diameter) && near(Some(bar.wall.unwrap_or(0.0)), size.wall)
}

/// Whether a rod end of the list is of a thread and a bore.
fn is_of_size(rod_end: &RodEnd, thread: &Thread, bore: f64) -> bool {
    rod_end.thread == Some(thread.id) && near(rod_end.bore, bore)
}

/// Whether it has these lengths, so that a bar worked out with them stays as it is.
fn has_lengths(rod_end: &RodEnd, eye_to_end: f64, thread_length: f64) -> bool {
    near(rod_end.eye_to_end, eye_to_end) && near(rod_end.thread_length, thread_length)
}

/// How many are in stock of rows that fit, as their counts tell.
fn counted(counts: impl Iterator<Item = Option<u32>>, wanted: usize) -> Held {
    let (mut sum, mut rows, mut uncounted) = (0_usize, 0, false);
    for count in counts {
        rows += 1;
        sum = sum.saturating_add(count.unwrap_or(0) as usize);
        uncounted |= count.is_none();
    }
    match (rows, uncounted && sum < wanted) {
        (0, _) => Held::NotListed,
        (_, true) => Held::Uncounted,
        (_, false) => Held::Counted(sum),
    }
}

fn held(what: &Wanted, wanted: usize, lists: &Lists, saw: &Saw) -> Held {
    match what {
        Wanted::RodEnd { thread, hand, bore, eye_to_end, thread_length, .. } => {
            let rows = || usable(&lists.rod_ends.rows, ROD_ENDS).filter(|it| is_of_size(it, thread, *bore));
            let alike = rows().filter(|it| has_lengths(it, *eye_to_end, *thread_length));
            match counted(alike.map(|it| it.held(*hand)), wanted) {
                Held::NotListed => match rows().filter_map(|it| it.held(*hand)).map(|held| held as usize).sum() {
                    0 => Held::NotListed,
                    others => Held::OtherLengths(others),
                },
                held => held,
            }
        }
        Wanted::Blank { metal, size, length } => {
            let of_size = stock_of(lists, metal).filter(|bar| same_size(bar, *size));
            let blanks = of_size.map(|bar| bar.count.map(|count| count.saturating_mul(blanks_of(bar, *length, saw))));
            counted(blanks, wanted)
        }
        Wanted::JamNut { thread, hand } => {
            let standard = jam_nuts::for_thread(thread);
            // The link is laid out with the standard's thickness: another nut would move the eye.
            let fits = |thickness: Option<f64>| match (thickness, standard) {
                (Some(thickness), Some(nut)) => {
                    let least = nut.thickness_min.unwrap_or(nut.thickness);
                    !exceeds(thickness, nut.thickness_max + SAME) && !exceeds(least - SAME, thickness)
                }
                _ => true,
            };
            let alike = usable(&lists.nuts.rows, NUTS)
                .filter(|nut| thread_of(nut.thread).is_some_and(|its| its.id == thread.id))
                .filter(|nut| nut.hand == Some(*hand) && fits(nut.thickness));
            counted(alike.map(|nut| nut.count), wanted)
        }
        Wanted::Insert { flange, .. } if *flange > 0.0 => Held::NotListed,
        Wanted::Insert { thread, hand, outside_diameter, length, .. } => {
            let alike = usable(&lists.inserts.rows, INSERTS)
                .filter(|insert| insert.thread == Some(thread.id) && insert.hand == Some(*hand))
                .filter(|insert| insert.outside_diameter.is_some_and(|its| slips_in(its, *outside_diameter)))
                .filter(|insert| insert.length.is_some_and(|its| !exceeds(length - SAME, its)));
            counted(alike.map(|insert| insert.count), wanted)
        }
    }
}

/// Blanks that one piece of stock gives: what is trimmed off its ends and what the saw holds at the last cut is gone.
fn blanks_of(bar: &Stock, blank: f64, saw: &Saw) -> u32 {
    u32::try_from(bar.length.map_or(0, |length| saw.blanks_of(length, blank))).unwrap_or(u32::MAX)
}
