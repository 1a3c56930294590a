//! Questions of a shop, each a pure function asked for by itself: the order's code, what stock fits, what it costs,
//! the steps at the machines, and how bars are cut. The answer for a link never rests on any of them.

pub mod as_built;
pub mod code;
pub mod cut_plan;
pub mod quote;
pub mod route;
pub mod stock;
