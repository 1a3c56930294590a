//! Finding where something crosses zero.

/// The last value, to within `hair`, at which something is not yet over 0, between a value with what it is there and
/// another with what it is there: by the line between them as long as that gains ground, else by halving, which a
/// jump needs.
pub(super) fn crossing(
    (mut good, mut under): (f64, f64),
    (mut bad, mut above): (f64, f64),
    hair: f64,
    mut over: impl FnMut(f64) -> f64,
) -> f64 {
    // Which end moved last, and whether the last step gained enough.
    let (mut moved, mut gained) = (0.0, true);
    while bad - good > hair {
        let width = bad - good;
        let line = good + width * under / (under - above);
        let value = if gained && above.is_finite() {
            line.clamp(good + 0.4 * hair, bad - 0.4 * hair)
        } else {
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
        gained = !gained || bad - good < 0.75 * width;
    }
    good
}
