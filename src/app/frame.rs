//! What stands around every view: header, notices, the line that stays in sight, footer.

mod footer;
mod header;
mod notices;
mod summary;
#[cfg(test)]
mod tests;

pub(crate) use footer::Footer;
pub(crate) use header::Header;
pub(crate) use notices::Notices;
pub(crate) use summary::Summary;
