//! A cut plan as rows and sentences.

use crate::engine::shop::cut_plan::{Bar, CutPlan, Demands, Piece, Saw, Why};
use crate::present::words::{Units, length, lower, short, size, value};
use crate::quantity::{INCH, Kind, System};

/// The title of the view's section.
pub const TITLE: &str = "Cut plan";

/// What the plan goes by.
pub const GOES_BY: &str = "Remnants are used first; then as few new bars as possible, the shortest in all; then the largest single piece is left over.";

/// How the bars of one metal and size are cut, in words.
#[derive(Debug, Clone, PartialEq)]
pub struct PlanRows {
    /// `2 in 7075-T6/T651 bar`.
    pub title: String,
    /// `3 bars of 12 ft; proven: no plan needs fewer`.
    pub summary: String,
    /// What is worth knowing of the plan, in sentences.
    pub sentences: Vec<String>,
    /// A row for all bars that are cut alike.
    pub bars: Vec<BarRow>,
    /// Blanks that are not cut, and why: to be shown loudly.
    pub not_cut: Vec<String>,
    /// What the saw was taken to need.
    pub saw: String,
}

/// Bars that are cut alike.
#[derive(Debug, Clone, PartialEq)]
pub struct BarRow {
    /// How many.
    pub count: usize,
    /// `12 ft bar`, `remnant of 41 in`.
    pub bar: String,
    /// `2 × 40 in (front lower links), 36 in (rear upper links)`.
    pub cuts: String,
    /// `17-1/2 in, keep`.
    pub left: String,
}

/// A plan in words.
pub fn rows(plan: &CutPlan, units: impl Into<Units>) -> PlanRows {
    let units = units.into();
    PlanRows {
        title: title(plan, units),
        summary: summary(plan, units),
        sentences: sentences(plan, units),
        bars: alike(plan).into_iter().map(|(bar, count)| bar_row(bar, count, units)).collect(),
        not_cut: plan
            .not_cut
            .iter()
            .map(|not| {
                let (many, each) = (not.blank.count, length(not.blank.length, units));
                format!("Not cut: {many} × {each} for {}. {}", whose(&not.blank.link, &not.blank.build), why(not.why))
            })
            .collect(),
        saw: saw(&plan.saw, units),
    }
}

/// Said of entries that no plan contains; none where there are none.
pub fn open(demands: &Demands) -> Option<String> {
    match demands.open {
        0 => None,
        1 => Some("1 entry has no answer yet: its blanks are not in the plan.".to_string()),
        open => Some(format!("{open} entries have no answer yet: their blanks are not in the plan.")),
    }
}

fn title(plan: &CutPlan, units: Units) -> String {
    format!("{} {}", size(plan.outside_diameter, plan.wall, units), short(plan.material))
}

/// The length of a bar as it is sold: whole feet in inches.
fn bar_length(bar: f64, units: Units) -> String {
    let feet = bar / (12.0 * INCH);
    let whole = (feet - feet.round()).abs() < 1e-6 && feet > 1.5;
    match units {
        Units::In(System::Inch) if whole => format!("{feet:.0} ft"),
        Units::Both if whole => format!("{feet:.0} ft ({})", length(bar, System::Metric)),
        _ => length(bar, units),
    }
}

/// Bars that are cut alike, each with how many there are, in the order of the plan.
pub(in crate::present) fn alike(plan: &CutPlan) -> Vec<(&Bar, usize)> {
    let mut alike: Vec<(&Bar, usize)> = Vec::new();
    let blanks = |bar: &Bar| -> Vec<(f64, String, String)> {
        bar.pieces.iter().map(|piece| (piece.length, piece.link.clone(), piece.build.clone())).collect()
    };
    for bar in &plan.bars {
        let same = |other: &Bar| {
            other.stock.remnant == bar.stock.remnant
                && (other.stock.length - bar.stock.length).abs() < 1e-9
                && other.stock.label == bar.stock.label
                && blanks(other) == blanks(bar)
        };
        match alike.last_mut() {
            Some((other, count)) if same(other) => *count += 1,
            _ => alike.push((bar, 1)),
        }
    }
    alike
}

fn bar_row(bar: &Bar, count: usize, units: Units) -> BarRow {
    BarRow { count, bar: bar_name(bar, units), cuts: cuts(&bar.pieces, units), left: left(bar, units) }
}

pub(in crate::present) fn bar_name(bar: &Bar, units: Units) -> String {
    let long = bar_length(bar.stock.length, units);
    let name = if bar.stock.remnant { format!("remnant of {long}") } else { format!("{long} bar") };
    if bar.stock.label.is_empty() { name } else { format!("{name}, {}", bar.stock.label) }
}

/// The blanks of a bar in their order, those alike together.
fn cuts(pieces: &[Piece], units: Units) -> String {
    let mut alike: Vec<(&Piece, usize)> = Vec::new();
    for piece in pieces {
        match alike.last_mut() {
            Some((other, count))
                if (other.length - piece.length).abs() < 1e-9
                    && other.link == piece.link
                    && other.build == piece.build =>
            {
                *count += 1;
            }
            _ => alike.push((piece, 1)),
        }
    }
    let one = |(piece, count): (&Piece, usize)| {
        let (each, whose) = (length(piece.length, units), whose(&piece.link, &piece.build));
        format!("{count} × {each} ({whose})")
    };
    alike.into_iter().map(one).collect::<Vec<_>>().join(", ")
}

fn whose(link: &str, build: &str) -> String {
    if build.is_empty() { lower(link) } else { format!("{build}: {}", lower(link)) }
}

pub(in crate::present) fn left(bar: &Bar, units: Units) -> String {
    let left = length(bar.left, units);
    if bar.left < 5e-5 {
        "nothing".to_string()
    } else if bar.kept {
        format!("{left}, keep")
    } else {
        format!("{left}, scrap")
    }
}

const fn why(why: Why) -> &'static str {
    match why {
        Why::NoStock => "No stock of this size is entered.",
        Why::TooLong => "No bar is long enough once ends and grip are taken off.",
        Why::UsedUp => "The stock is used up: buy more.",
        Why::NoLength => "Its length is not one that can be sawn.",
        Why::TooMany => "There are more blanks than one plan is made for: make two.",
    }
}

/// `1 bar of 12 ft`, `3 bars of 20 ft`.
fn many(count: usize, what: &str, of: &str) -> String {
    if count == 1 { format!("1 {what} of {of}") } else { format!("{count} {what}s of {of}") }
}

/// What is taken from the rack: `1 remnant of 41 in, 3 bars of 12 ft`.
fn taken(plan: &CutPlan, units: Units) -> String {
    let mut kinds: Vec<(&Bar, usize)> = Vec::new();
    for bar in &plan.bars {
        let same = |other: &Bar| {
            other.stock.remnant == bar.stock.remnant && (other.stock.length - bar.stock.length).abs() < 1e-9
        };
        match kinds.iter_mut().find(|(other, _)| same(other)) {
            Some((_, count)) => *count += 1,
            None => kinds.push((bar, 1)),
        }
    }
    let one = |(bar, count): (&Bar, usize)| {
        many(count, if bar.stock.remnant { "remnant" } else { "bar" }, &bar_length(bar.stock.length, units))
    };
    kinds.into_iter().map(one).collect::<Vec<_>>().join(", ")
}

fn summary(plan: &CutPlan, units: Units) -> String {
    if plan.bars.is_empty() {
        return "Nothing is cut.".to_string();
    }
    let taken = taken(plan, units);
    if !plan.not_cut.is_empty() {
        format!("{taken}; not every blank is cut")
    } else if plan.totals.new_bars == 0 {
        format!("{taken}; no new bar is needed")
    } else if plan.fewest_is_proven() {
        format!("{taken}; proven: no plan needs fewer new bars")
    } else {
        format!("{taken}; not proven: at least {} new bars are needed", plan.at_least)
    }
}

fn sentences(plan: &CutPlan, units: Units) -> Vec<String> {
    let mut told = Vec::new();
    if plan.bars.is_empty() {
        return told;
    }
    let totals = &plan.totals;
    let largest = plan.bars.iter().map(|bar| bar.left).fold(0.0, f64::max);
    if plan.proven {
        told.push(format!(
            "The largest piece left is {}; of plans that use as little bar, none leaves a larger one.",
            length(largest, units)
        ));
    } else if plan.not_cut.is_empty() {
        told.push(format!(
            "The largest piece left is {}; a plan that uses as little bar and leaves a larger one is not ruled out.",
            length(largest, units)
        ));
    }
    told.push(format!(
        "Blanks {}, kept {}, waste {} ({:.1} % of what is cut): cuts, trimmed ends and short pieces.",
        length(totals.blanks, units),
        length(totals.kept, units),
        length(totals.waste, units),
        100.0 * totals.waste / totals.bars.max(f64::MIN_POSITIVE),
    ));
    let weight = |force: f64| match units {
        Units::In(system) => value(force, Kind::Weight, system),
        Units::Both => crate::present::words::both(force, Kind::Weight),
    };
    told.push(match totals.new_bars {
        0 => format!("The blanks weigh {}.", weight(totals.weight_cut)),
        _ => format!("New bars weigh {}, the blanks {}.", weight(totals.weight_bought), weight(totals.weight_cut)),
    });
    match totals.cost {
        _ if totals.new_bars == 0 => {}
        Some(cost) => told.push(format!("New bars cost {cost}.")),
        None => told.push("What the new bars cost is not known: not every one has a price.".to_string()),
    }
    if plan.bars.iter().flat_map(|bar| &bar.pieces).any(|piece| piece.provisional) {
        told.push("Some lengths stand only until their rod ends are measured: measure before you saw.".to_string());
    }
    told
}

fn saw(saw: &Saw, units: Units) -> String {
    let [kerf, trim, grip, keep] = [saw.kerf, saw.trim, saw.grip, saw.keep].map(|value| length(value, units));
    let assumed = if *saw == Saw::ASSUMED { " Assumed: common practice, no source." } else { "" };
    format!(
        "Saw: {kerf} kerf, {trim} off both ends of every bar, {grip} held at the last cut; pieces from {keep} on are kept.{assumed}"
    )
}
