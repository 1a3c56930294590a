//! Comparing a value with its limit.

/// Slack of every comparison: two ways to work the same number out differ in their last digits.
pub const SLACK: f64 = 1e-9;

/// Whether a value is over a limit by more than [`SLACK`]: what lies exactly on its limit passes, and of two ends that
/// are alike the first one is named, everywhere.
pub const fn exceeds(value: f64, limit: f64) -> bool {
    value > limit + SLACK * limit.abs()
}
