//! Making it: the route sheet, the cut plan, labels, and files for the shop.

pub mod route;
