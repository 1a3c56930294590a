//! What the page says around a cut plan.

use crate::engine::shop::cut_plan::from_lists::Taken;

/// Said where no full bar of a size is listed.
pub const ASSUMED: &str = "Your lists hold no full bar of this size: where the plan takes one, its length is assumed, and that there are enough.";

/// Said once what a plan was made of has changed.
pub const CHANGED: &str = "Something changed since this plan was made. Plan the cuts again.";

/// Said where there is nothing to plan.
pub const NOTHING: &str = "There is nothing to cut yet: no link here has an answer.";

/// Said beside the button that changes the lists.
pub const REMNANTS_FIRST: &str =
    "Takes the bars that are used off your lists and adds what is kept as remnants; the next plan uses those first.";

/// What was done to the lists.
pub fn taken(taken: Taken) -> String {
    let many = |count: usize, what: &str| if count == 1 { format!("1 {what}") } else { format!("{count} {what}s") };
    match (taken.used, taken.kept) {
        (0, 0) => "Nothing was long enough to keep, and no bar of your lists was used.".to_string(),
        (0, kept) => format!("{} put into the list. The bars themselves were not in it.", many(kept, "remnant")),
        (used, 0) => format!("{} taken off the list; nothing was long enough to keep.", many(used, "bar")),
        (used, kept) => format!("{} taken off the list, {} put into it.", many(used, "bar"), many(kept, "remnant")),
    }
}
