//! What an order costs, from the shop's own price book.
