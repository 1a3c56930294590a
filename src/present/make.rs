//! Making it: the route sheet, the cut plan, labels, and files for the shop.

pub mod cut_list;
pub mod cut_plan;
pub mod dxf;
pub mod head;
pub mod labels;
pub mod machine;
pub mod plan;
pub mod record;
pub mod route;
