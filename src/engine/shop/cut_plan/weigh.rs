//! Whether blanks fit into bars, by weights: where the search by sizes takes too long.
//!
//! Give each size a weight. No bar holds more weight than its heaviest fill; so where the blanks weigh more than all bars
//! hold, there is no way. Where they weigh nearly as much, only fills that are nearly as heavy as the heaviest can be part
//! of a way: few are left, and a search among these is short. A linear program finds weights under which least is wasted
//! (Gilmore and Gomory 1961, the dual of their program); all that is concluded from them is reckoned in whole numbers.

use std::collections::BTreeSet;

use super::pack::{Blanks, Budget, Fill, Outcome};
use super::simplex::{Column, weights};

/// More ways than these to fill a bar are not written out.
const MOST_FILLS: usize = 12_000;
/// More different sizes than these are not weighed.
const MOST_SIZES: usize = 48;
/// Weight of all blanks together, nearly.
const WHOLE: f64 = 1e9;
/// Columns or candidates that are looked at for what one step of the search by sizes takes.
const LOOKS_IN_A_STEP: usize = 32;

/// Packs blanks into bars: rooms, each with how many bars have it.
pub(super) fn pack(blanks: &Blanks, rooms: &[(u64, usize)], budget: &mut Budget) -> Outcome {
    if blanks.sizes.len() > MOST_SIZES {
        return Outcome::GaveUp;
    }
    let mut columns = Vec::new();
    for (room, (wide, bars)) in rooms.iter().enumerate() {
        if *bars > 0 && !heaviest(blanks, room, *wide, &mut columns, budget) {
            return Outcome::GaveUp;
        }
    }
    let bars: Vec<usize> = rooms.iter().map(|(_, bars)| *bars).collect();
    // Each look of the program at its columns is work.
    let looks = 4 * (blanks.sizes.len() + bars.len()) * columns.len() / LOOKS_IN_A_STEP;
    if !budget.spend(looks / 16) {
        return Outcome::GaveUp;
    }
    let Some(found) = weights(&blanks.counts, &bars, &columns) else { return Outcome::GaveUp };
    let weights: Vec<i64> = found.into_iter().map(|weight| (weight * WHOLE) as i64).collect();
    let mut search = Search::new(blanks, rooms, &weights, &columns, budget);
    let mut left = blanks.counts.clone();
    match search.go(&mut left, &mut bars.clone()) {
        Some(true) => Outcome::Packed(search.fills),
        Some(false) => Outcome::Impossible,
        None => Outcome::GaveUp,
    }
}

/// Writes out every fill of a room into which nothing more goes; false where there are too many.
fn heaviest(blanks: &Blanks, room: usize, wide: u64, columns: &mut Vec<Column>, budget: &mut Budget) -> bool {
    let mut rest: Vec<u64> = vec![0; blanks.sizes.len() + 1];
    for index in (0..blanks.sizes.len()).rev() {
        rest[index] = rest[index + 1] + blanks.sizes[index] * blanks.counts[index] as u64;
    }
    let mut list = List { blanks, room, rest, columns, budget, looks: 0 };
    list.fill(0, wide, u64::MAX, &mut vec![0; blanks.sizes.len()])
}

struct List<'a> {
    blanks: &'a Blanks,
    room: usize,
    /// Size of all blanks from a size on.
    rest: Vec<u64>,
    columns: &'a mut Vec<Column>,
    budget: &'a mut Budget,
    looks: usize,
}

impl List<'_> {
    /// Tries the sizes from one on; in the end less than `under` must be left, or another blank went in.
    fn fill(&mut self, from: usize, room: u64, under: u64, taken: &mut Vec<usize>) -> bool {
        self.looks += 1;
        if self.looks.is_multiple_of(LOOKS_IN_A_STEP) && !self.budget.step() {
            return false;
        }
        if room.saturating_sub(self.rest[from]) >= under {
            return true;
        }
        let Some(size) = self.blanks.sizes.get(from).copied() else {
            self.columns.push(Column { room: self.room, taken: taken.clone() });
            return self.columns.len() <= MOST_FILLS;
        };
        let there = self.blanks.counts[from];
        let most = there.min((room / size) as usize);
        for count in (0..=most).rev() {
            taken[from] = count;
            let under = if count < there { under.min(size) } else { under };
            if !self.fill(from + 1, room - count as u64 * size, under, taken) {
                return false;
            }
        }
        taken[from] = 0;
        true
    }
}

/// The search among heavy fills.
struct Search<'a> {
    blanks: &'a Blanks,
    weights: &'a [i64],
    /// Width of each room, and the weight of its heaviest fill.
    rooms: Vec<(u64, i64)>,
    /// Fills that may be part of a way.
    columns: Vec<&'a Column>,
    /// What was left, blanks and bars, when it was found that there is no way on.
    failed: BTreeSet<(Vec<usize>, Vec<usize>)>,
    fills: Vec<Fill>,
    budget: &'a mut Budget,
}

impl<'a> Search<'a> {
    fn new(
        blanks: &'a Blanks,
        rooms: &[(u64, usize)],
        weights: &'a [i64],
        columns: &'a [Column],
        budget: &'a mut Budget,
    ) -> Self {
        let of_room = |room: usize| columns.iter().filter(move |column| column.room == room);
        let heaviest = |room: usize| of_room(room).map(|column| weigh(weights, &column.taken)).max().unwrap_or(0);
        let rooms: Vec<(u64, i64, usize)> =
            rooms.iter().enumerate().map(|(room, (wide, bars))| (*wide, heaviest(room), *bars)).collect();
        let held: i64 = rooms.iter().map(|(_, heaviest, bars)| heaviest * *bars as i64).sum();
        let spare = held - weigh(weights, &blanks.counts);
        let wasted = |column: &Column| rooms[column.room].1 - weigh(weights, &column.taken);
        let columns = columns.iter().filter(|column| wasted(column) <= spare).collect();
        let rooms = rooms.iter().map(|(wide, heaviest, _)| (*wide, *heaviest)).collect();
        Self { blanks, weights, rooms, columns, failed: BTreeSet::new(), fills: Vec::new(), budget }
    }

    /// Whether what is left goes into the bars that are empty; nothing where the steps ran out.
    fn go(&mut self, left: &mut [usize], bars: &mut [usize]) -> Option<bool> {
        if left.iter().all(|count| *count == 0) {
            return Some(true);
        }
        if !self.budget.step() {
            return None;
        }
        let of_bars = |of: fn(&(u64, i64)) -> i64| -> i64 {
            self.rooms.iter().zip(&*bars).map(|(room, bars)| of(room) * *bars as i64).sum()
        };
        let spare_weight = of_bars(|room| room.1) - weigh(self.weights, left);
        let spare_size = of_bars(|room| room.0 as i64) - self.blanks.load(left) as i64;
        if spare_weight < 0 || spare_size < 0 {
            return Some(false);
        }
        let state = (left.to_vec(), bars.to_vec());
        if self.failed.contains(&state) {
            return Some(false);
        }
        if !self.budget.spend(self.columns.len() / LOOKS_IN_A_STEP) {
            return None;
        }
        for (_, room, taken) in self.candidates(left, bars, [spare_weight, spare_size]) {
            left.iter_mut().zip(&taken).for_each(|(left, taken)| *left -= taken);
            bars[room] -= 1;
            self.fills.push(Fill { room, taken: taken.clone() });
            let found = self.go(left, bars);
            if found != Some(false) {
                return found;
            }
            self.fills.pop();
            bars[room] += 1;
            left.iter_mut().zip(&taken).for_each(|(left, taken)| *left += taken);
        }
        self.failed.insert(state);
        Some(false)
    }

    /// Fills for a bar that takes a blank of the size that fewest fills take, the one that wastes least first.
    fn candidates(&self, left: &[usize], bars: &[usize], spare: [i64; 2]) -> Vec<(i64, usize, Vec<usize>)> {
        let mut takers = vec![0_usize; left.len()];
        let mut fits: Vec<(i64, &Column)> = Vec::new();
        for column in self.columns.iter().filter(|column| bars[column.room] > 0) {
            let (wide, heaviest) = self.rooms[column.room];
            let mut wasted = [heaviest, wide as i64];
            for (size, (taken, left)) in column.taken.iter().zip(left).enumerate() {
                let taken = *taken.min(left) as i64;
                wasted[0] -= taken * self.weights[size];
                wasted[1] -= taken * self.blanks.sizes[size] as i64;
            }
            if wasted[0] <= spare[0] && wasted[1] <= spare[1] {
                fits.push((wasted[0], column));
                column.taken.iter().zip(&mut takers).for_each(|(taken, takers)| *takers += usize::from(*taken > 0));
            }
        }
        let wanted = (0..left.len()).filter(|size| left[*size] > 0).min_by_key(|size| takers[*size]);
        let Some(size) = wanted else { return Vec::new() };
        let clipped = |(wasted, column): (i64, &Column)| {
            let taken = column.taken.iter().zip(left).map(|(taken, left)| *taken.min(left)).collect();
            (wasted, column.room, taken)
        };
        let mut found: Vec<(i64, usize, Vec<usize>)> =
            fits.into_iter().filter(|(_, column)| column.taken[size] > 0).map(clipped).collect();
        found.sort();
        found.dedup();
        found
    }
}

fn weigh(weights: &[i64], taken: &[usize]) -> i64 {
    weights.iter().zip(taken).map(|(weight, taken)| weight * *taken as i64).sum()
}
