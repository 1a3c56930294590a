//! What a shop has and charges: its files, its money, what a link can be made from, and what an order costs.

mod dice;
#[path = "shop/lists.rs"]
mod lists;
#[path = "shop/money.rs"]
mod money;
#[path = "shop/quote.rs"]
mod quote;
#[path = "shop/rows.rs"]
mod rows;
#[path = "shop/shown.rs"]
mod shown;
#[path = "shop/stock.rs"]
mod stock;
