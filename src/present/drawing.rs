//! Drawings as plain data: lines, circles, texts and places to touch, laid out on a sheet, ready to become SVG.
//!
//! A mark carries a class; the style sheets decide weight, dash and color. Sizes of letters stand here, since the
//! layout leaves room for them.

pub mod as_fitted;
pub mod axle;
pub mod bars;
pub mod bending;
pub mod bracket;
pub mod code;
pub mod end;
pub mod failure;
pub mod guide;
pub mod link;
pub mod plan;
pub mod plot;
mod rod_end;
mod sketch;
pub mod string;
mod touch;

pub use touch::{Touch, check_of};

/// A point on the sheet: to the right, and down.
pub type Point = (f64, f64);

/// A finished drawing.
#[derive(Debug, Clone, PartialEq, Default)]
pub struct Drawing {
    /// Its class: on the whole drawing, not on its marks.
    pub class: String,
    /// Width of the sheet. Marks go by this unit.
    pub width: f64,
    /// Height of the sheet.
    pub height: f64,
    /// What the drawing says, in words.
    pub words: String,
    /// Width of one unit on paper in millimeters, where that is fixed.
    pub millimeters: Option<f64>,
    /// What is drawn, the lowest first.
    pub marks: Vec<Mark>,
}

impl Drawing {
    /// Whether nothing is drawn.
    pub const fn is_empty(&self) -> bool {
        self.marks.is_empty()
    }
}

/// One thing on the sheet.
#[derive(Debug, Clone, PartialEq)]
pub enum Mark {
    /// A straight line.
    Line {
        /// Its class.
        class: String,
        /// Where it begins.
        from: Point,
        /// Where it ends.
        to: Point,
    },
    /// A line through points.
    Path {
        /// Its class.
        class: String,
        /// Its corners.
        points: Vec<Point>,
        /// Whether it goes back to where it began.
        closed: bool,
    },
    /// Many rectangles of one class.
    Blocks {
        /// Their class.
        class: String,
        /// Each by its upper left and its lower right corner.
        blocks: Vec<(Point, Point)>,
    },
    /// A circle.
    Circle {
        /// Its class.
        class: String,
        /// Its center.
        center: Point,
        /// Its radius.
        radius: f64,
    },
    /// Words on one line.
    Text {
        /// Their class.
        class: String,
        /// What of the words is at the point.
        anchor: Anchor,
        /// The point, on the line that the letters stand on.
        at: Point,
        /// Height of the letters.
        size: f64,
        /// The words.
        words: String,
    },
    /// A place that can be touched.
    Touch {
        /// What is meant.
        touch: Touch,
        /// Where it is.
        area: Area,
    },
}

/// What of a text is at its point.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Anchor {
    /// Where it begins.
    Start,
    /// Its middle.
    Middle,
    /// Where it ends.
    End,
}

/// The shape of a place that can be touched.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum Area {
    /// Between an upper left and a lower right corner.
    Block(Point, Point),
    /// Around a center, with a radius.
    Circle(Point, f64),
}

/// For which screen a drawing is laid out.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Layout {
    /// For a phone.
    Narrow,
    /// For a desk, and for paper.
    Wide,
}

/// Width of a sheet for a phone: about as many pixels as its screen leaves.
pub const NARROW: f64 = 344.0;

/// Height of the letters on it: 16 pixels where a sheet is shown 328 pixels wide, as inside the page of a phone of 360.
pub const LETTERING: f64 = 17.0;

impl Layout {
    /// Both.
    pub const ALL: [Self; 2] = [Self::Narrow, Self::Wide];

    /// The class by which the style sheets show one of two drawings.
    pub const fn class(self) -> &'static str {
        match self {
            Self::Narrow => "narrow",
            Self::Wide => "wide",
        }
    }

    /// Width of the sheet.
    pub const fn width(self) -> f64 {
        match self {
            Self::Narrow => NARROW,
            Self::Wide => 640.0,
        }
    }

    /// Height of the letters on the detail of one end, which is as wide as a phone's sheet: on a desk it is shown larger
    /// than that, and on paper it must leave room for the rest.
    pub const fn detail_lettering(self) -> f64 {
        match self {
            Self::Narrow => LETTERING,
            Self::Wide => 13.0,
        }
    }

    /// Height of the letters: on a wide sheet 16 pixels where the page leaves it least room, 488 pixels beside the entries
    /// on a screen of 1024.
    pub const fn lettering(self) -> f64 {
        match self {
            Self::Narrow => LETTERING,
            Self::Wide => 21.0,
        }
    }
}
