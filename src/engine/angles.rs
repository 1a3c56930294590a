//! Sine, cosine and tangent under the name of their module from before; see [`math`](super::math).

pub use super::math::{cosine, sine, tangent};
