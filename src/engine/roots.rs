//! Finding where something crosses zero.

/// Steps along the line that may gain little before the bracket is halved; fewer are slow on curves, more on jumps.
const PATIENCE: u32 = 3;

/// The last value, to within `hair`, at which something is not yet over 0, between a value with what it is there and
/// another with what it is there: by the line between them as long as that gains ground, else by halving, which a
/// jump needs.
pub fn crossing(
    (mut good, mut under): (f64, f64),
    (mut bad, mut above): (f64, f64),
    hair: f64,
    mut over: impl FnMut(f64) -> f64,
) -> f64 {
    // Which end moved last, and how many steps in a row gained little.
    let (mut moved, mut poor) = (0.0, 0);
    while bad - good > hair {
        let width = bad - good;
        let line = good + width * under / (under - above);
        let value = if poor < PATIENCE && above.is_finite() {
            line.max(good + 0.4 * hair).min(bad - 0.4 * hair)
        } else {
            poor = 0;
            good + 0.5 * width
        };
        let found = over(value);
        // An end that stays put twice counts half, or the line would creep toward it for ever.
        if found > 0.0 {
            (bad, above) = (value, found);
            under *= if moved > 0.0 { 0.5 } else { 1.0 };
        } else {
            (good, under) = (value, found);
            above *= if moved < 0.0 { 0.5 } else { 1.0 };
        }
        moved = if found > 0.0 { 1.0 } else { -1.0 };
        if bad - good >= width {
            break;
        }
        poor = if bad - good < 0.5 * width { 0 } else { poor + 1 };
    }
    good
}

/// Steps in which [`last_good`] first looks for a value that will do.
const LOOKS: u32 = 32;

/// The greatest value that is not over 0, going down from `now`, where it is, to `least`; `None` when none of those
/// tried is.
pub fn last_good(now: f64, least: f64, mut over: impl FnMut(f64) -> f64) -> Option<f64> {
    let mut bad = (now, over(now));
    for count in 1..=LOOKS {
        let value = now - (now - least) * f64::from(count) / f64::from(LOOKS);
        let next = (value, over(value));
        if next.1 <= 0.0 {
            return Some(crossing(next, bad, 1e-9 * (now - least).abs(), &mut over));
        }
        bad = next;
    }
    None
}
