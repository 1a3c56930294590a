//! What a shop has and charges: its files, its money, what a link can be made from, and what an order costs.

#[path = "shop/lists.rs"]
mod lists;
#[path = "shop/money.rs"]
mod money;
#[path = "shop/stock.rs"]
mod stock;
