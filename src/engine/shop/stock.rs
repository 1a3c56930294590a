//! Which of the shop's own rod ends and bars a link can be made from.
