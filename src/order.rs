//! Putting a handful of things in order, and a value between two others. The standard sort is made for millions and
//! costs a phone six kilobytes for each kind of thing sorted.

use std::cmp::Ordering;

/// Sorts in place; equal things stay in their order.
pub fn by<T>(things: &mut [T], compare: impl Fn(&T, &T) -> Ordering) {
    for next in 1..things.len() {
        let mut at = next;
        while at > 0 && compare(&things[at - 1], &things[at]) == Ordering::Greater {
            things.swap(at - 1, at);
            at -= 1;
        }
    }
}

/// The value within bounds; the upper one where they cross, the lower one where it is no number. The standard library's
/// `clamp` panics there, and its message would bring a second printer of numbers to a phone.
pub const fn between(value: f64, low: f64, high: f64) -> f64 {
    value.max(low).min(high)
}

/// Slack of every comparison: two ways to work the same number out differ in their last digits.
pub const SLACK: f64 = 1e-9;

/// Whether a value is over a limit by more than [`SLACK`]: what lies exactly on its limit passes, and of two ends that
/// are alike the first one is named, everywhere.
pub const fn exceeds(value: f64, limit: f64) -> bool {
    value > limit + SLACK * limit.abs()
}
