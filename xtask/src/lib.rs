//! What `cargo xtask` does, as a library, so that the browser journeys serve the page with the same code.
//!
//! Reading order: [`tools`] installs what is missing, [`build`] makes the page, [`split`] cuts its program in two,
//! [`dress`] puts what is published together ([`policy`], [`worker`], [`single`],
//! [`icons`], [`digest`]), [`serve`] shows it, [`suite`] tests everything, [`measure`] times it. Underneath: [`server`]
//! speaks HTTP, [`run`] starts programs.

pub mod build;
pub mod digest;
pub mod dress;
pub mod icons;
pub mod measure;
pub mod policy;
pub mod run;
pub mod serve;
pub mod server;
pub mod single;
pub mod split;
pub mod suite;
pub mod tools;
pub mod worker;

use std::path::{Path, PathBuf};

/// What a task ends with: nothing more to say, or one sentence that names the fix.
pub type Outcome<T = ()> = Result<T, String>;

/// The top of the repository.
#[must_use]
pub fn root() -> PathBuf {
    let here = Path::new(env!("CARGO_MANIFEST_DIR"));
    here.parent().unwrap_or(here).to_path_buf()
}

/// Whether these words stand somewhere in bytes.
fn holds(bytes: &[u8], words: &str) -> bool {
    bytes.windows(words.len()).any(|piece| piece == words.as_bytes())
}
