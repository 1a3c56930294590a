//! T.
use linkwright::engine::{report};
use linkwright::engine::shop::{quote::quote, stock::{offers, take}};
use linkwright::present::order::quote::text;
use linkwright::quantity::System;
use linkwright::shop::demo;
use super::stock::hard;

#[test]
fn print() {
    let lists = demo::lists();
    let d = take(&hard(), 0, &offers(&hard(), 0, &lists).offers[0]);
    let q = quote(&d, &report(&d).links, &lists);
    println!("{}", text(&q, &d, System::Inch).join("\n"));
    let q = quote(&d, &report(&d).links, &Default::default());
    println!("{}", text(&q, &d, System::Metric).join("\n"));
}
