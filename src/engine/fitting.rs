//! Questions of whoever fits a link and keeps it: each asked for by itself, from readings on the rig.
//!
//! Nothing here changes a size. Readings come in as arguments, and so do dates.

pub mod as_fitted;
pub mod borrowed;
pub mod card;
pub mod dates;
pub mod failures;
pub mod fitting_steps;
pub mod hands;
pub mod hit;
pub mod identify;
pub mod measuring;
pub mod moves;
pub mod recheck;
pub mod spares;
pub mod torque_card;
pub mod turn;

/// How something on the rig stands; the best first, so that the greatest of several is that of the whole. What was not
/// measured is never good.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
pub enum Standing {
    /// In order.
    Good,
    /// It cannot be said: a reading is missing, or contradicts another.
    NotJudged,
    /// It may be driven, with something to put right or to keep an eye on.
    Watch,
    /// It must not be driven as it is.
    Stop,
}

/// A count of threads or turns in quarters, as it is read off a thread: `2-3/4`.
pub fn quarters(count: f64) -> String {
    let fourths = (count.max(0.0) * 4.0).round();
    let (whole, part) = ((fourths / 4.0).floor(), fourths.rem_euclid(4.0));
    let part = ["", "1/4", "1/2", "3/4"].get(part as usize).copied().unwrap_or_default();
    match (whole, part) {
        (whole, "") => format!("{whole:.0}"),
        (0.0, part) => part.to_string(),
        (whole, part) => format!("{whole:.0}-{part}"),
    }
}

/// The quarters below a count, for what must never be said to be more than it is.
pub fn quarters_below(count: f64) -> f64 {
    (count.max(0.0) * 4.0 + 1e-9).floor() / 4.0
}

/// Whether a count in quarters is said of one thread: a half, one; not of none, and not of two.
fn is_one(count: f64) -> bool {
    (1.0..=4.0).contains(&(count * 4.0).round())
}

/// `2-3/4 threads`, `1/2 thread`.
pub fn threads(count: f64) -> String {
    format!("{} {}", quarters(count), if is_one(count) { "thread" } else { "threads" })
}

/// `2-3/4 threads show`, `1 thread shows`.
pub fn threads_show(count: f64) -> String {
    format!("{} {}", threads(count), if is_one(count) { "shows" } else { "show" })
}
