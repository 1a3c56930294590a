//! Weights for blanks by which bars are as nearly filled as can be: a small linear program, by the revised simplex method.
//!
//! Of all weights that count the demand as 1, those under which the bars together hold least. What comes out is only a
//! proposal in floating-point numbers: whoever uses it reckons in whole numbers, and whatever the weights are, what follows
//! from them is true.

/// Below this a reduced cost or a pivot is taken for nothing.
const NOTHING: f64 = 1e-9;

/// One way to fill a bar of a kind.
#[derive(Debug, Clone, PartialEq, Eq)]
pub(super) struct Column {
    /// Which kind of bar.
    pub(super) room: usize,
    /// How many blanks of each size.
    pub(super) taken: Vec<usize>,
}

/// What may enter the basis.
#[derive(Clone, Copy)]
enum Entering {
    /// The share of the demand that is covered.
    Share,
    /// A column by its number.
    Column(usize),
    /// The slack of a row.
    Slack(usize),
}

/// How near to the best the weights must come before the program stops.
const NEAR: f64 = 1e-4;

/// The program: cover as large a multiple of the demand as the bars allow.
struct Program<'a> {
    counts: &'a [usize],
    columns: &'a [Column],
    /// How many blanks of each size a column takes, one column after the other.
    taken: Vec<f64>,
    /// How many bars there are of each kind.
    bars: &'a [usize],
    /// The inverse of the basis, row by row, and the values of its variables.
    inverse: Vec<Vec<f64>>,
    values: Vec<f64>,
    /// The row in which the share stands, once it is in the basis.
    share: Option<usize>,
}

/// A weight for each size, or nothing where none was found; `bars` says how many bars of each kind there are.
pub(super) fn weights(counts: &[usize], bars: &[usize], columns: &[Column]) -> Option<Vec<f64>> {
    let rows = counts.len() + bars.len();
    let unit = |row: usize| (0..rows).map(|column| if row == column { 1.0 } else { 0.0 }).collect();
    // A little more than nothing in each row, and in each another little, so that no step stands still.
    let little = |row: usize| 1e-7 * (row as f64 + 1.0);
    let limit = |row: usize| bars.get(row.wrapping_sub(counts.len())).map_or(0.0, |bars| *bars as f64);
    let mut program = Program {
        counts,
        columns,
        taken: columns.iter().flat_map(|column| column.taken.iter().map(|taken| *taken as f64)).collect(),
        bars,
        inverse: (0..rows).map(unit).collect(),
        values: (0..rows).map(|row| limit(row) + little(row)).collect(),
        share: None,
    };
    for _ in 0..40 * rows {
        let entering = program.entering();
        if entering.is_empty() {
            break;
        }
        // A look at all columns costs more than a step: those that were best of their kind go in as well, while they help.
        for entering in entering {
            if program.gain(entering) > NOTHING && !program.pivot(entering) {
                return None;
            }
        }
    }
    let found = program.inverse.get(program.share?)?;
    Some(found.iter().take(counts.len()).map(|weight| weight.max(0.0)).collect())
}

impl Program<'_> {
    /// What betters the share most of each kind of bar, the first of those that do it equally; nothing where nothing does.
    fn entering(&self) -> Vec<Entering> {
        let Some(prices) = self.share.and_then(|row| self.inverse.get(row)) else { return vec![Entering::Share] };
        let (of_sizes, of_bars) = prices.split_at(self.counts.len());
        let mut best: Vec<Option<(f64, Entering)>> = vec![None; self.bars.len()];
        let mut heaviest = vec![0.0_f64; self.bars.len()];
        for ((number, column), taken) in self.columns.iter().enumerate().zip(self.taken.chunks(self.counts.len())) {
            let held: f64 = of_sizes.iter().zip(taken).map(|(price, taken)| price * taken).sum();
            if held > heaviest[column.room] {
                heaviest[column.room] = held;
                let gain = held - of_bars[column.room];
                best[column.room] = (gain > NOTHING).then_some((gain, Entering::Column(number)));
            }
        }
        if self.is_settled(of_sizes, &heaviest) {
            return Vec::new();
        }
        let slack = |(row, price): (usize, &f64)| (-price > NOTHING).then_some((-price, Entering::Slack(row)));
        let mut found: Vec<(f64, Entering)> = best.into_iter().flatten().collect();
        found.extend(prices.iter().enumerate().filter_map(slack));
        found.sort_by(|a, b| b.0.total_cmp(&a.0));
        found.into_iter().map(|(_, entering)| entering).collect()
    }

    /// By how much the share grows with what would enter, as the prices stand.
    fn gain(&self, entering: Entering) -> f64 {
        let Some(prices) = self.share.and_then(|row| self.inverse.get(row)) else { return f64::INFINITY };
        let (of_sizes, of_bars) = prices.split_at(self.counts.len());
        match entering {
            Entering::Share => 0.0,
            Entering::Slack(row) => -prices[row],
            Entering::Column(number) => {
                let column = &self.columns[number];
                let held: f64 = of_sizes.iter().zip(&column.taken).map(|(price, taken)| price * *taken as f64).sum();
                held - of_bars[column.room]
            }
        }
    }

    /// Whether these weights already say that the bars do not suffice, or are nearly the best.
    fn is_settled(&self, weights: &[f64], heaviest: &[f64]) -> bool {
        if weights.iter().any(|weight| *weight < 0.0) {
            return false;
        }
        let demand: f64 = weights.iter().zip(self.counts).map(|(weight, count)| weight * *count as f64).sum();
        let held: f64 = heaviest.iter().zip(self.bars).map(|(heaviest, bars)| heaviest * *bars as f64).sum();
        let share = self.share.and_then(|row| self.values.get(row)).copied().unwrap_or(0.0);
        held < demand * (1.0 - 1e-7) || held < demand * (share + NEAR)
    }

    /// The coefficient of what enters in a row of the program.
    fn coefficient(&self, entering: Entering, row: usize) -> f64 {
        let size = row < self.counts.len();
        match entering {
            Entering::Share if size => self.counts[row] as f64,
            Entering::Share => 0.0,
            Entering::Column(number) if size => -(self.columns[number].taken[row] as f64),
            Entering::Column(number) => f64::from(u8::from(self.columns[number].room == row - self.counts.len())),
            Entering::Slack(of) => f64::from(u8::from(of == row)),
        }
    }

    /// Takes it into the basis; false where nothing limits it, which only a numeric fault brings about.
    fn pivot(&mut self, entering: Entering) -> bool {
        let rows = self.values.len();
        let column: Vec<f64> = (0..rows).map(|row| self.coefficient(entering, row)).collect();
        let product = |line: &Vec<f64>| line.iter().zip(&column).map(|(a, b)| a * b).sum::<f64>();
        let steps: Vec<f64> = self.inverse.iter().map(product).collect();
        let ratio = |row: &usize| self.values[*row] / steps[*row];
        let leaving = (0..rows).filter(|row| steps[*row] > NOTHING);
        let Some(leaving) = leaving.min_by(|a, b| ratio(a).total_cmp(&ratio(b))) else { return false };
        let by = steps[leaving];
        self.inverse[leaving].iter_mut().for_each(|cell| *cell /= by);
        self.values[leaving] /= by;
        let (pivot, value) = (self.inverse[leaving].clone(), self.values[leaving]);
        for row in (0..rows).filter(|row| *row != leaving) {
            let times = steps[row];
            if times == 0.0 {
                continue;
            }
            self.inverse[row].iter_mut().zip(&pivot).for_each(|(cell, from)| *cell -= times * from);
            self.values[row] = (self.values[row] - times * value).max(0.0);
        }
        match entering {
            Entering::Share => self.share = Some(leaving),
            _ if self.share == Some(leaving) => self.share = None,
            _ => {}
        }
        true
    }
}
