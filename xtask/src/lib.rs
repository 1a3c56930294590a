//! What `cargo xtask` does, as a library, so that the browser journeys serve the page with the same code.
//!
//! Reading order: [`tools`] installs what is missing, and [`build`] makes the page: [`split`] cuts its program in two,
//! [`built`] reads what Trunk made, [`publish`] puts together what is published ([`page`], [`policy`], [`icons`],
//! [`worker`], and [`single`], the page in one file). [`serve`] shows the page, [`suite`] tests everything, [`measure`]
//! times the page. They all use [`run`], which starts programs, [`files`], [`digest`] and [`server`].

pub mod build;
pub mod built;
pub mod digest;
pub mod files;
pub mod icons;
pub mod measure;
pub mod page;
pub mod policy;
pub mod publish;
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
