//! The cut plan: which blanks come from which bar.
