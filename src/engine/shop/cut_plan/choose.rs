//! Which bars are cut, and how: fewest bars bought, then shortest in all, then the largest piece left of one.

use super::pack::{Blanks, Budget, Fill, Outcome, greedy, pack};

/// More ways than these to put stock lengths together are not looked through.
const MOST_SETS: usize = 3_000;

/// A piece that is longer by less than this, in nanometers, counts as no longer: no saw cuts so close.
pub(super) const CLOSE: u64 = 500_000;

/// Bars of one length.
#[derive(Debug, Clone)]
pub(super) struct Kind {
    /// Length in nanometers.
    pub(super) length: u64,
    /// Room for blanks with their kerfs.
    pub(super) room: u64,
    /// How many there are.
    pub(super) limit: usize,
}

/// What is cut from which kind.
#[derive(Debug)]
pub(super) struct Chosen {
    /// A fill for each bar; rooms are numbered through the free kinds and then the bought ones.
    pub(super) fills: Vec<Fill>,
    /// No plan buys fewer bars than this.
    pub(super) at_least: usize,
    /// Whether no plan is better.
    pub(super) proven: bool,
    /// Blanks of each size that no bar is left for.
    pub(super) over: Vec<usize>,
}

/// A list of blanks with the bars it may be cut from.
pub(super) struct Question<'a> {
    /// What is to be cut.
    pub(super) blanks: &'a Blanks,
    /// Nanometers in one unit of sizes and rooms.
    pub(super) unit: u64,
    /// Bars that cost nothing.
    pub(super) free: Vec<Kind>,
    /// Bars of which as few as possible are to be taken.
    pub(super) bought: Vec<Kind>,
}

/// The best plan that the steps suffice to find.
pub(super) fn choose(mut question: Question, budget: &mut Budget) -> Chosen {
    // No bar is filled further than its blanks can: that leaves less to waste.
    for kind in question.free.iter_mut().chain(&mut question.bought) {
        kind.room = question.blanks.most_of(kind.room, budget);
    }
    let blanks = question.blanks;
    let most = question.bought.iter().map(|kind| kind.limit).sum::<usize>().min(blanks.counts.iter().sum());
    let mut not_refuted = None;
    for count in question.fewest()..=most {
        for set in question.sets(count) {
            let mut share = Budget { spent: 0, most: budget.most.saturating_sub(budget.spent) / 2 };
            let outcome = pack(blanks, &question.rooms(&set), &mut share);
            budget.spent += share.spent.min(share.most);
            match outcome {
                Outcome::Impossible => {}
                Outcome::GaveUp => {
                    not_refuted.get_or_insert(count);
                }
                Outcome::Packed(_) if count == 0 && !question.free.is_empty() => {
                    // What is there suffices: the same is asked of it.
                    let remnants = Question { free: Vec::new(), bought: question.free, ..question };
                    let chosen = choose(remnants, budget);
                    return Chosen { at_least: 0, ..chosen };
                }
                Outcome::Packed(fills) => {
                    let (fills, largest) = question.largest_left(&set, fills, budget);
                    let proven = largest && not_refuted.is_none();
                    let over = vec![0; blanks.sizes.len()];
                    return Chosen { fills, at_least: not_refuted.unwrap_or(count), proven, over };
                }
            }
        }
    }
    // Not enough bars: as many blanks as the quick way finds room for.
    let all: Vec<usize> = question.bought.iter().map(|kind| kind.limit).collect();
    let (fills, over) = greedy(blanks, &question.rooms(&all));
    Chosen { fills, at_least: not_refuted.unwrap_or(most), proven: false, over }
}

impl Question<'_> {
    /// The least bars bought for which there is room at all.
    fn fewest(&self) -> usize {
        let free: u64 = self.free.iter().map(|kind| kind.room * kind.limit as u64).sum();
        let widest = self.bought.iter().map(|kind| kind.room).max().unwrap_or(0);
        match (self.blanks.total().saturating_sub(free), widest) {
            (0, _) | (_, 0) => 0,
            (rest, widest) => rest.div_ceil(widest) as usize,
        }
    }

    /// Every way to buy so many bars, the shortest in all first.
    fn sets(&self, count: usize) -> Vec<Vec<usize>> {
        fn go(kinds: &[Kind], count: usize, set: &mut Vec<usize>, found: &mut Vec<Vec<usize>>) {
            let Some((kind, more)) = kinds.split_first() else {
                if count == 0 {
                    found.push(set.clone());
                }
                return;
            };
            let held: usize = more.iter().map(|kind| kind.limit).sum();
            for taken in count.saturating_sub(held)..=count.min(kind.limit) {
                if found.len() >= MOST_SETS {
                    return;
                }
                set.push(taken);
                go(more, count - taken, set, found);
                set.pop();
            }
        }
        let mut found = Vec::new();
        go(&self.bought, count, &mut Vec::new(), &mut found);
        let long =
            |set: &Vec<usize>| set.iter().zip(&self.bought).map(|(n, kind)| *n as u64 * kind.length).sum::<u64>();
        found.sort_by_cached_key(long);
        found
    }

    /// Every kind with its room and how many bars of it are open.
    fn rooms(&self, set: &[usize]) -> Vec<(u64, usize)> {
        let free = self.free.iter().map(|kind| (kind.room, kind.limit));
        free.chain(self.bought.iter().zip(set).map(|(kind, count)| (kind.room, *count))).collect()
    }

    /// The largest piece that a plan leaves of a bought bar.
    fn left(&self, fills: &[Fill]) -> u64 {
        let left = |fill: &Fill| {
            let kind = self.bought.get(fill.room.checked_sub(self.free.len())?)?;
            Some(kind.length.saturating_sub(self.blanks.load(&fill.taken) * self.unit))
        };
        fills.iter().filter_map(left).max().unwrap_or(0)
    }

    /// Of the plans that buy this set, one that leaves the largest piece; and whether none leaves a larger one.
    fn largest_left(&self, set: &[usize], mut fills: Vec<Fill>, budget: &mut Budget) -> (Vec<Fill>, bool) {
        let mut proven = true;
        let total = self.blanks.total();
        for (index, kind) in self.bought.iter().enumerate().filter(|(index, _)| set[*index] > 0) {
            let mut others = set.to_vec();
            others[index] -= 1;
            let mut rooms = self.rooms(&others);
            let held: u64 = rooms.iter().map(|(room, count)| room * *count as u64).sum();
            // The least that goes into one bar of this kind, as sums of blanks allow.
            let at_least = |load: u64, budget: &mut Budget| {
                total.saturating_sub(self.blanks.most_of(total.saturating_sub(load), budget))
            };
            let mut low = at_least(total.saturating_sub(held).max(self.blanks.shortest()), budget);
            let mut first = true;
            while let Some(better) = kind.length.checked_sub(self.left(&fills) + CLOSE) {
                let high = (better / self.unit).min(kind.room);
                if low > high {
                    break;
                }
                // The least first, which often does; then half of what is left to ask.
                let aim = if first { high.min(low + CLOSE / self.unit) } else { u64::midpoint(low, high) };
                first = false;
                rooms.push((aim, 1));
                let mut share = Budget { spent: 0, most: budget.most.saturating_sub(budget.spent) / 2 };
                let outcome = pack(self.blanks, &rooms, &mut share);
                budget.spent += share.spent.min(share.most);
                rooms.pop();
                match outcome {
                    Outcome::Packed(found) => {
                        let found = self.renumbered(found, index);
                        if self.left(&found) < self.left(&fills) + CLOSE {
                            // A bar fewer does, which the steps before did not suffice to find.
                            proven = false;
                            break;
                        }
                        fills = found;
                    }
                    Outcome::Impossible => low = at_least(aim + 1, budget),
                    Outcome::GaveUp => {
                        proven = false;
                        low = at_least(aim + 1, budget);
                    }
                }
            }
        }
        (fills, proven)
    }

    /// Fills in which the bar that was made narrower is one of its kind again.
    fn renumbered(&self, mut fills: Vec<Fill>, kind: usize) -> Vec<Fill> {
        let narrower = self.free.len() + self.bought.len();
        fills.iter_mut().filter(|fill| fill.room == narrower).for_each(|fill| fill.room = self.free.len() + kind);
        fills
    }
}
