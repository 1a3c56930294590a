//! The order: what is kept and what is sent, what is still needed, numbers as they are said, its code, and the yes.

#[path = "order/check_sign.rs"]
mod check_sign;
#[path = "order/code.rs"]
mod code;
#[path = "order/confirmation.rs"]
mod confirmation;
mod dice;
#[path = "order/history.rs"]
mod history;
#[path = "order/kept.rs"]
mod kept;
#[allow(dead_code, reason = "only its links are needed here")]
mod links;
#[path = "order/needed.rs"]
mod needed;
#[path = "order/read_back.rs"]
mod read_back;
#[path = "order/spoken.rs"]
mod spoken;
