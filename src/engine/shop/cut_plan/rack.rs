//! From lists to the search and back: whole nanometers, lengths of stock, and bars with names on their blanks.

use super::choose::{Kind, Question, choose};
use super::pack::{Blanks, Budget, Fill};
use super::{Bar, Blank, MOST_BLANKS, Piece, Saw, Stock};

/// Longer than any bar, in meters: a longer length is a mistake.
const LONGEST: f64 = 50.0;

/// A length in nanometers; `None` where it is no length of a bar.
pub(super) fn nanometers(length: f64) -> Option<u64> {
    (length.is_finite() && (0.0..=LONGEST).contains(&length)).then(|| (length * 1e9).round() as u64)
}

pub(super) fn meters(nanometers: u64) -> f64 {
    nanometers as f64 / 1e9
}

/// The saw in nanometers.
#[derive(Clone, Copy)]
pub(super) struct Cuts {
    /// Width of a cut.
    pub(super) kerf: u64,
    /// Off a bar before its first blank.
    start: u64,
    /// At its end, the last cut included.
    end: u64,
}

impl Cuts {
    pub(super) fn new(saw: &Saw) -> Self {
        let [kerf, trim, grip] = [saw.kerf, saw.trim, saw.grip].map(|length| nanometers(length).unwrap_or(0));
        let with_cut = |length: u64| if length > 0 { length + kerf } else { 0 };
        Self { kerf, start: with_cut(trim), end: with_cut(trim.max(grip)) }
    }

    /// Room for blanks that each come with a cut: where nothing is held at the end, the last one needs none.
    pub(super) fn room(self, length: u64) -> u64 {
        (length + self.kerf).saturating_sub(self.start + self.end)
    }

    pub(super) fn left(self, length: u64, load: u64) -> u64 {
        length.saturating_sub(self.start + load)
    }
}

/// A length of stock in the search: remnants come first, the shortest before the longer ones.
#[derive(Debug, Clone)]
pub(super) struct Length {
    length: u64,
    /// What blanks may take of it, each with its cut.
    pub(super) room: u64,
    remnant: bool,
    limit: usize,
}

pub(super) fn kinds(stock: &[Stock], cuts: Cuts) -> Vec<Length> {
    let mut kinds: Vec<Length> = Vec::new();
    for stock in stock {
        let Some(length) = nanometers(stock.length) else { continue };
        let (room, limit) = (cuts.room(length), stock.count.unwrap_or(MOST_BLANKS).min(MOST_BLANKS));
        if room <= cuts.kerf || limit == 0 {
            continue;
        }
        match kinds.iter_mut().find(|kind| kind.length == length && kind.remnant == stock.remnant) {
            Some(kind) => kind.limit = (kind.limit + limit).min(MOST_BLANKS),
            None => kinds.push(Length { length, room, remnant: stock.remnant, limit }),
        }
    }
    kinds.sort_by_key(|kind| (!kind.remnant, kind.length));
    kinds
}

fn greatest_common_divisor(a: u64, b: u64) -> u64 {
    if b == 0 { a } else { greatest_common_divisor(b, a % b) }
}

/// A bar of the search: which length of stock, and how many blanks of each size.
pub(super) struct Filled {
    kind: usize,
    /// Sizes with their counts, the longest first.
    taken: Vec<(u64, usize)>,
}

/// The fills, what is left over for want of stock, the least number of new bars, and whether that is proven best.
pub(super) fn search(
    wanted: &[(u64, Blank)],
    kinds: &[Length],
    budget: &mut Budget,
) -> (Vec<Filled>, Vec<Blank>, usize, bool) {
    let mut sizes: Vec<(u64, usize)> = Vec::new();
    for (size, blank) in wanted {
        match sizes.iter_mut().find(|(other, _)| other == size) {
            Some((_, count)) => *count += blank.count,
            None => sizes.push((*size, blank.count)),
        }
    }
    sizes.sort_by_key(|(size, _)| std::cmp::Reverse(*size));
    let pieces: usize = sizes.iter().map(|(_, count)| count).sum();
    // In the largest unit in which all blanks are whole, sums lie close together.
    let unit = sizes.iter().fold(0, |unit, (size, _)| greatest_common_divisor(unit, *size)).max(1);
    let blanks = Blanks {
        sizes: sizes.iter().map(|(size, _)| size / unit).collect(),
        counts: sizes.iter().map(|(_, count)| *count).collect(),
    };
    let side = |remnant: bool| -> (Vec<usize>, Vec<Kind>) {
        let useful = |kind: &Length| kind.remnant == remnant && kind.room / unit >= blanks.shortest();
        let of = |(index, kind): (usize, &Length)| {
            (index, Kind { length: kind.length, room: kind.room / unit, limit: kind.limit.min(pieces) })
        };
        kinds.iter().enumerate().filter(|(_, kind)| useful(kind)).map(of).unzip()
    };
    let ((mut numbers, free), (more, bought)) = (side(true), side(false));
    numbers.extend(more);
    let chosen = choose(Question { blanks: &blanks, unit, free, bought }, budget);
    let taken = |fill: &Fill| -> Vec<(u64, usize)> {
        let counted = sizes.iter().zip(&fill.taken).map(|((size, _), taken)| (*size, *taken));
        counted.filter(|(_, taken)| *taken > 0).collect()
    };
    let bars =
        chosen.fills.iter().filter_map(|fill| Some(Filled { kind: *numbers.get(fill.room)?, taken: taken(fill) }));
    let bars = bars.filter(|bar| !bar.taken.is_empty()).collect();
    let mut over = Vec::new();
    for ((size, _), count) in sizes.iter().zip(&chosen.over) {
        let mut count = *count;
        // The last of a length go without, as they would at the saw.
        for (_, blank) in wanted.iter().rev().filter(|(other, _)| other == size) {
            let short = count.min(blank.count);
            if short > 0 {
                over.push(Blank { count: short, ..blank.clone() });
            }
            count -= short;
        }
    }
    (bars, over, chosen.at_least, chosen.proven)
}

/// The stock in the order in which it is taken: what has a price before what has none, the cheapest first.
pub(super) struct Rack(Vec<Stock>);

impl Rack {
    pub(super) fn new(stock: &[Stock]) -> Self {
        let mut rack = stock.to_vec();
        rack.sort_by(|a, b| (a.cost.is_none(), a.cost, &a.label).cmp(&(b.cost.is_none(), b.cost, &b.label)));
        Self(rack)
    }

    /// Takes a bar of a length off the rack.
    fn take(&mut self, kind: &Length) -> Option<Stock> {
        let is = |stock: &&mut Stock| {
            stock.remnant == kind.remnant
                && nanometers(stock.length) == Some(kind.length)
                && stock.count.is_none_or(|count| count > 0)
        };
        let stock = self.0.iter_mut().find(is)?;
        stock.count = stock.count.map(|count| count - 1);
        Some(Stock { count: Some(1), ..stock.clone() })
    }

    /// The bars in the order in which they are cut, each with its blanks.
    pub(super) fn bars(
        mut self,
        filled: &mut [Filled],
        wanted: &[(u64, Blank)],
        kinds: &[Length],
        cuts: Cuts,
        saw: &Saw,
    ) -> Vec<Bar> {
        // Remnants first, new bars from the longest; of one length the one with the longest blanks first.
        filled.sort_by(|a, b| a.kind.cmp(&b.kind).then_with(|| b.taken.cmp(&a.taken)));
        let mut waiting: Vec<(u64, Blank)> = wanted.to_vec();
        let mut bars = Vec::new();
        for one in filled.iter() {
            let Some((kind, stock)) = kinds.get(one.kind).and_then(|kind| Some((kind, self.take(kind)?))) else {
                continue;
            };
            let (mut at, mut pieces) = (cuts.start, Vec::new());
            for (size, count) in &one.taken {
                for _ in 0..*count {
                    let next = waiting.iter_mut().find(|(other, blank)| other == size && blank.count > 0);
                    let Some((_, blank)) = next else { continue };
                    blank.count -= 1;
                    pieces.push(Piece {
                        length: blank.length,
                        from: meters(at),
                        link: blank.link.clone(),
                        build: blank.build.clone(),
                        provisional: blank.provisional,
                    });
                    at += size;
                }
            }
            let left = cuts.left(kind.length, at - cuts.start);
            let kept = left > 0 && nanometers(saw.keep).is_some_and(|keep| left >= keep);
            bars.push(Bar { stock, pieces, left: meters(left), kept });
        }
        bars
    }
}
