//! The order: what is still needed, what is read back, what is confirmed, and what it costs.

pub mod lists;
pub mod quote;
