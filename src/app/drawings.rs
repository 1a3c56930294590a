//! Drawings on the page: how one becomes SVG, and the one that leads the page.

mod leading;
mod view;

pub(crate) use leading::LeadingDrawing;
pub(crate) use view::DrawingView;
