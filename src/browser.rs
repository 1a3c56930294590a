//! What touches the browser: plain functions over web-sys, with no view code.

pub(crate) mod address;
pub(crate) mod clipboard;
pub(crate) mod clock;
pub(crate) mod files;
pub(crate) mod page;
pub(crate) mod storage;
#[cfg(test)]
pub(crate) mod tested;
pub(crate) mod window;
