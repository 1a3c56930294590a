//! Whether blanks fit into bars: a complete search that stops at a count of nodes, never at a time.
//!
//! Sizes and rooms are whole numbers, so a fit is exact. The longest blank left goes into some bar: each bar is tried,
//! and with each every fill that no other fill makes needless. A fill is needless when one more blank goes in, or when
//! one in it can be exchanged for a longer one, for whatever packs the rest then packs it as well (after Martello and
//! Toth, Knapsack Problems, 1990, section 8.3). What is wasted in all is known beforehand; a fill that wastes more is
//! cut off.

use std::collections::BTreeSet;

use super::weigh;

/// Steps after which it stays open how much of a room can be filled.
const MOST_STEPS_FOR_A_ROOM: usize = 3_000;

/// Steps of the search by sizes before weights are tried.
const QUICK: usize = 2_000;
/// More blanks than these are not searched by sizes to the end of the steps.
const MOST_BY_SIZES: usize = 60;

/// How many steps of searching are left.
#[derive(Debug)]
pub(super) struct Budget {
    /// Steps taken so far.
    pub(super) spent: usize,
    /// Steps that may be taken.
    pub(super) most: usize,
}

impl Budget {
    /// Takes one step; false when there is none left.
    pub(super) fn step(&mut self) -> bool {
        self.spend(1)
    }

    /// Takes several steps; false when there are not so many left.
    pub(super) fn spend(&mut self, steps: usize) -> bool {
        self.spent = self.spent.saturating_add(steps);
        self.spent <= self.most
    }
}

/// The blanks of one bar.
#[derive(Debug, Clone, PartialEq, Eq)]
pub(super) struct Fill {
    /// Which of the rooms it fills.
    pub(super) room: usize,
    /// How many blanks of each size.
    pub(super) taken: Vec<usize>,
}

/// What came of a search.
#[derive(Debug, Clone, PartialEq, Eq)]
pub(super) enum Outcome {
    /// Everything fits, like this.
    Packed(Vec<Fill>),
    /// There is no way.
    Impossible,
    /// The steps ran out first.
    GaveUp,
}

/// Blanks to pack: sizes, the longest first and each once, with how many there are of each.
#[derive(Debug, Clone)]
pub(super) struct Blanks {
    /// Sizes.
    pub(super) sizes: Vec<u64>,
    /// How many of each.
    pub(super) counts: Vec<usize>,
}

impl Blanks {
    /// The size of a fill.
    pub(super) fn load(&self, taken: &[usize]) -> u64 {
        self.sizes.iter().zip(taken).map(|(size, count)| size * *count as u64).sum()
    }

    /// The size of all of them.
    pub(super) fn total(&self) -> u64 {
        self.load(&self.counts)
    }

    /// The size of the shortest.
    pub(super) fn shortest(&self) -> u64 {
        self.sizes.last().copied().unwrap_or(0)
    }

    /// The most of a room that any of the blanks fill; the room itself where that takes too long to find.
    pub(super) fn most_of(&self, room: u64, budget: &mut Budget) -> u64 {
        let (mut best, mut own) = (0, Budget { spent: 0, most: MOST_STEPS_FOR_A_ROOM });
        let known = self.reach(0, 0, self.total(), room, &mut best, &mut own);
        budget.spent += own.spent;
        if known { best } else { room }
    }

    /// Tries the sizes from one on; false when the steps ran out.
    fn reach(&self, from: usize, load: u64, rest: u64, room: u64, best: &mut u64, budget: &mut Budget) -> bool {
        *best = (*best).max(load);
        if !budget.step() {
            return false;
        }
        let (Some(size), Some(count)) = (self.sizes.get(from), self.counts.get(from)) else { return true };
        let after = rest - size * *count as u64;
        let most = (*count as u64).min((room - load) / size);
        for taken in (0..=most).rev() {
            if *best == room || load + taken * size + after <= *best {
                break;
            }
            if !self.reach(from + 1, load + taken * size, after, room, best, budget) {
                return false;
            }
        }
        true
    }
}

/// Longest blank first, each into the bar where it leaves least: quick, and often good enough. What fits nowhere is
/// counted beside the fills.
pub(super) fn greedy(blanks: &Blanks, rooms: &[(u64, usize)]) -> (Vec<Fill>, Vec<usize>) {
    let mut open: Vec<(u64, Fill)> = Vec::new();
    let mut empty: Vec<(u64, usize)> = rooms.to_vec();
    let mut over = vec![0; blanks.sizes.len()];
    for (index, (&size, &count)) in blanks.sizes.iter().zip(&blanks.counts).enumerate() {
        for _ in 0..count {
            let fits = open.iter_mut().filter(|(left, _)| *left >= size).min_by_key(|(left, _)| *left);
            if let Some((left, fill)) = fits {
                *left -= size;
                fill.taken[index] += 1;
                continue;
            }
            let next = empty.iter_mut().enumerate().filter(|(_, (room, bars))| *bars > 0 && *room >= size);
            let Some((room, (wide, bars))) = next.min_by_key(|(_, (room, _))| *room) else {
                over[index] += 1;
                continue;
            };
            *bars -= 1;
            let mut taken = vec![0; blanks.sizes.len()];
            taken[index] = 1;
            open.push((*wide - size, Fill { room, taken }));
        }
    }
    (open.into_iter().map(|(_, fill)| fill).collect(), over)
}

/// Packs blanks into bars: rooms, each with how many bars have it.
pub(super) fn pack(blanks: &Blanks, rooms: &[(u64, usize)], budget: &mut Budget) -> Outcome {
    let room_left: u64 = rooms.iter().map(|(room, count)| room * *count as u64).sum();
    if blanks.total() > room_left {
        return Outcome::Impossible;
    }
    let (fills, over) = greedy(blanks, rooms);
    if over.iter().all(|count| *count == 0) {
        return Outcome::Packed(fills);
    }
    // Most are settled by sizes within a few steps, the others by weights; for what neither settles, the rest is spent.
    let mut quick = Budget { spent: 0, most: QUICK.min(budget.most.saturating_sub(budget.spent)) };
    let outcome = by_sizes(blanks, rooms, &mut quick);
    budget.spent += quick.spent.min(quick.most);
    if outcome != Outcome::GaveUp || !budget.step() {
        return outcome;
    }
    let mut share = Budget { spent: 0, most: budget.most.saturating_sub(budget.spent) / 2 };
    let outcome = weigh::pack(blanks, rooms, &mut share);
    budget.spent += share.spent.min(share.most);
    match outcome {
        Outcome::GaveUp if blanks.counts.iter().sum::<usize>() <= MOST_BY_SIZES => by_sizes(blanks, rooms, budget),
        outcome => outcome,
    }
}

/// The complete search by sizes.
fn by_sizes(blanks: &Blanks, rooms: &[(u64, usize)], budget: &mut Budget) -> Outcome {
    let mut narrow_first: Vec<usize> = (0..rooms.len()).collect();
    narrow_first.sort_by_key(|room| rooms[*room].0);
    let bars: Vec<usize> = rooms.iter().map(|(_, count)| *count).collect();
    // More kinds than a number has room for are more than are searched.
    let Some((places, state)) = places(blanks.counts.iter().chain(&bars)) else { return Outcome::GaveUp };
    let mut search = Search {
        sizes: &blanks.sizes,
        left: blanks.counts.clone(),
        size_left: blanks.total(),
        rooms: rooms.iter().map(|(room, _)| *room).collect(),
        bars,
        narrow_first,
        state,
        places,
        failed: BTreeSet::new(),
        fills: Vec::new(),
        budget,
    };
    match search.next_bar() {
        Step::Done => Outcome::Packed(search.fills),
        Step::NoWay => Outcome::Impossible,
        Step::Stopped => Outcome::GaveUp,
    }
}

/// What one of each kind counts in a number that holds how many there are of all, and that number.
fn places<'a>(counts: impl Iterator<Item = &'a usize>) -> Option<(Vec<u128>, u128)> {
    let (mut places, mut place, mut whole) = (Vec::new(), 1_u128, 0_u128);
    for count in counts {
        places.push(place);
        // Never more than the next place less one, which is checked.
        let next = place.checked_mul(*count as u128 + 1)?;
        whole += place * *count as u128;
        place = next;
    }
    Some((places, whole))
}

#[derive(PartialEq, Eq)]
enum Step {
    Done,
    NoWay,
    Stopped,
}

struct Search<'a> {
    sizes: &'a [u64],
    /// Blanks of each size that are in no bar yet, and their size in all.
    left: Vec<usize>,
    size_left: u64,
    rooms: Vec<u64>,
    /// Bars of each room that are still empty.
    bars: Vec<usize>,
    /// The rooms, the narrowest first.
    narrow_first: Vec<usize>,
    /// What is left, blanks and bars, as one number, and what one blank or bar of a kind counts in it.
    state: u128,
    places: Vec<u128>,
    /// What was left when it was found that there is no way on.
    failed: BTreeSet<u128>,
    fills: Vec<Fill>,
    budget: &'a mut Budget,
}

// Indexes below come from the ranges of vectors that are all as long as the sizes, or as the rooms.
impl Search<'_> {
    /// Takes an empty bar for the longest blank that is left.
    fn next_bar(&mut self) -> Step {
        let Some(first) = self.left.iter().position(|count| *count > 0) else { return Step::Done };
        let shortest = self.shortest();
        let open = (0..self.rooms.len()).filter(|bar| self.bars[*bar] > 0);
        let held_in_all: u64 = open.map(|bar| self.held(bar, shortest) * self.bars[bar] as u64).sum();
        let Some(slack) = held_in_all.checked_sub(self.size_left) else { return Step::NoWay };
        if self.too_many_long_ones() {
            return Step::NoWay;
        }
        let state = self.state;
        if !self.budget.step() {
            return Step::Stopped;
        }
        if self.failed.contains(&state) {
            return Step::NoWay;
        }
        for index in 0..self.narrow_first.len() {
            let bar = self.narrow_first[index];
            let room = self.rooms[bar];
            if self.bars[bar] == 0 || room < self.sizes[first] {
                continue;
            }
            let held = self.held(bar, shortest);
            self.bars[bar] -= 1;
            self.state -= self.places[self.sizes.len() + bar];
            self.fills.push(Fill { room: bar, taken: vec![0; self.sizes.len()] });
            self.take(first);
            // What no blanks can fill of this bar was not counted as slack.
            let step = self.fill(first, room - self.sizes[first], slack + room - held);
            if step != Step::NoWay {
                return step;
            }
            self.put_back(first);
            self.fills.pop();
            self.bars[bar] += 1;
            self.state += self.places[self.sizes.len() + bar];
        }
        self.failed.insert(state);
        Step::NoWay
    }

    /// Whether more blanks of some length or longer are left than the empty bars can hold.
    fn too_many_long_ones(&self) -> bool {
        let mut longer = 0;
        self.sizes.iter().zip(&self.left).filter(|(_, count)| **count > 0).any(|(size, count)| {
            longer += *count as u64;
            let held: u64 = self.rooms.iter().zip(&self.bars).map(|(room, bars)| room / size * *bars as u64).sum();
            longer > held
        })
    }

    /// Puts more blanks into the last bar, none longer than the one at `from`.
    fn fill(&mut self, from: usize, room: u64, slack: u64) -> Step {
        if !self.budget.step() {
            return Step::Stopped;
        }
        if room < 2 * self.shortest() {
            return self.last_blank(from, room, slack);
        }
        let mut rest: u64 = (from..self.sizes.len()).map(|index| self.sizes[index] * self.left[index] as u64).sum();
        for index in from..self.sizes.len() {
            if room > slack + rest {
                return Step::NoWay;
            }
            let size = self.sizes[index];
            if self.left[index] > 0 && size <= room {
                self.take(index);
                let step = self.fill(index, room - size, slack);
                if step != Step::NoWay {
                    return step;
                }
                self.put_back(index);
            }
            rest -= size * self.left[index] as u64;
        }
        if room > slack || self.is_needless(room) { Step::NoWay } else { self.next_bar() }
    }

    /// Where one more blank goes in at most, the longest that does is the only one to try.
    fn last_blank(&mut self, from: usize, room: u64, slack: u64) -> Step {
        let longest = self.longest(room);
        let left = longest.map_or(room, |index| room - self.sizes[index]);
        if left > slack || longest.is_some_and(|index| index < from) {
            return Step::NoWay;
        }
        let Some(index) = longest else {
            return if self.is_needless(room) { Step::NoWay } else { self.next_bar() };
        };
        self.take(index);
        let step = if self.is_needless(left) { Step::NoWay } else { self.next_bar() };
        if step == Step::NoWay {
            self.put_back(index);
        }
        step
    }

    /// The longest blank left that goes into a room.
    fn longest(&self, room: u64) -> Option<usize> {
        let from = self.sizes.partition_point(|size| *size > room);
        (from..self.sizes.len()).find(|index| self.left[*index] > 0)
    }

    /// The size of the shortest blank that is left.
    fn shortest(&self) -> u64 {
        let last = (0..self.sizes.len()).rev().find(|index| self.left[*index] > 0);
        last.map_or(u64::MAX / 4, |index| self.sizes[index])
    }

    /// The most of a bar that the blanks left can fill: known where one or two go in, else all of it.
    fn held(&self, bar: usize, shortest: u64) -> u64 {
        let room = self.rooms[bar];
        if room >= 3 * shortest {
            return room;
        }
        let mut best = self.longest(room).map_or(0, |index| self.sizes[index]);
        if room < 2 * shortest {
            return best;
        }
        let (mut long, mut short) = (0, self.sizes.len());
        while long < short {
            let sum = self.sizes[long] + self.sizes[short - 1];
            let there =
                if long + 1 == short { self.left[long] > 1 } else { self.left[long] > 0 && self.left[short - 1] > 0 };
            if there && sum <= room {
                best = best.max(sum);
            }
            if self.left[short - 1] == 0 || sum <= room && self.left[long] > 0 {
                short -= 1;
            } else {
                long += 1;
            }
        }
        best
    }

    /// Whether another fill makes the last one needless.
    fn is_needless(&self, room: u64) -> bool {
        let Some(fill) = self.fills.last() else { return true };
        // The shortest longer size that is left, of the sizes passed so far.
        let mut longer = None;
        for index in 0..self.sizes.len() {
            let size = self.sizes[index];
            if fill.taken[index] > 0 && longer.is_some_and(|longer: u64| longer - size <= room) {
                return true;
            }
            if self.left[index] > 0 {
                if size <= room {
                    return true;
                }
                longer = Some(size);
            }
        }
        false
    }

    fn take(&mut self, index: usize) {
        self.left[index] -= 1;
        self.state -= self.places[index];
        self.size_left -= self.sizes[index];
        if let Some(fill) = self.fills.last_mut() {
            fill.taken[index] += 1;
        }
    }

    fn put_back(&mut self, index: usize) {
        self.left[index] += 1;
        self.state += self.places[index];
        self.size_left += self.sizes[index];
        if let Some(fill) = self.fills.last_mut() {
            fill.taken[index] -= 1;
        }
    }
}
