//! Drawings on the page: how one becomes SVG, and the one that leads the page.

mod leading;
mod view;

pub(crate) use leading::LeadingDrawing;
#[allow(unused_imports, reason = "for the views that have drawings of their own")]
pub(crate) use view::DrawingView;
