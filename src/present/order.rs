//! The order: what is still needed, what is read back, what is confirmed, and what it costs.

pub mod code;
pub mod confirmation;
pub mod customer;
pub mod history;
pub mod lists;
pub mod message;
mod mounts;
pub mod needed;
pub mod not_taken;
pub mod quote;
pub mod read_back;
pub mod spoken;
