//! Fields and other small parts that several views use. They know inputs and props, not views.

mod choice;
mod copy;
mod fold;
mod fractions;
mod in_sight;
mod input;
mod name;
mod number;
mod order_text;
mod paper;
mod phrases;
mod stale;
mod step;
#[cfg(test)]
mod tests;
mod verdict;

pub(crate) use choice::{ChoiceField, RadioField};
pub(crate) use copy::{CopyButton, say_again};
pub(crate) use fold::Fold;
pub(crate) use in_sight::{InSight, provide_in_sight, stands_in_sight};
pub(crate) use input::InputField;
pub(crate) use name::NameField;
pub(crate) use number::NumberField;
pub(crate) use order_text::OrderField;
pub(crate) use paper::PaperPart;
pub(crate) use phrases::Phrases;
pub(crate) use stale::StaleNote;
pub(crate) use verdict::VerdictMark;
