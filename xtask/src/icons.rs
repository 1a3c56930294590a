//! The icon as PNG pictures, for home screens that take no SVG: rendered from style/icon.svg.

use crate::Outcome;
use resvg::tiny_skia::{Color, Pixmap, Transform};
use resvg::usvg::{Options, Tree};

/// How much of a maskable picture's width the drawing takes: its two eyes then lie within the middle circle of 80 % that
/// every system shows.
const MASKABLE_SCALE: f32 = 0.69;

/// What a picture is for, in the words of the web manifest.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Purpose {
    /// Shown as it is.
    Any,
    /// Cut to a circle, or to whatever shape the system gives its icons.
    Maskable,
}

/// The drawing, a square with a background of one color.
#[derive(Debug)]
pub struct Icon(Tree);

impl Icon {
    /// Reads the drawing.
    pub fn read(svg: &str) -> Outcome<Icon> {
        let tree = Tree::from_str(svg, &Options::default());
        tree.map(Icon).map_err(|reason| format!("style/icon.svg cannot be read ({reason})"))
    }

    /// A PNG picture of that many pixels a side.
    pub fn png(&self, size: u32, purpose: Purpose) -> Outcome<Vec<u8>> {
        let picture = self.render(size, purpose)?;
        picture.encode_png().map_err(|reason| format!("style/icon.svg cannot be written as PNG ({reason})"))
    }

    fn render(&self, size: u32, purpose: Purpose) -> Outcome<Pixmap> {
        let mut picture = Pixmap::new(size, size).ok_or_else(|| format!("an icon cannot be {size} pixels wide"))?;
        let side = size as f32;
        let scale = side / self.0.size().width();
        resvg::render(&self.0, Transform::from_scale(scale, scale), &mut picture.as_mut());
        if purpose == Purpose::Maskable {
            // The background goes on around the smaller drawing.
            picture.fill(corner(&picture));
            let scale = scale * MASKABLE_SCALE;
            let margin = side * (1.0 - MASKABLE_SCALE) / 2.0;
            let centered = Transform::from_row(scale, 0.0, 0.0, scale, margin, margin);
            resvg::render(&self.0, centered, &mut picture.as_mut());
        }
        Ok(picture)
    }
}

fn corner(picture: &Pixmap) -> Color {
    picture.pixel(0, 0).map_or(Color::TRANSPARENT, |pixel| {
        let pixel = pixel.demultiply();
        Color::from_rgba8(pixel.red(), pixel.green(), pixel.blue(), pixel.alpha())
    })
}

#[cfg(test)]
mod tests {
    use super::*;

    const ICON: &str = include_str!("../../style/icon.svg");

    #[test]
    fn the_icon_is_painted_where_it_is_drawn() -> Outcome {
        // A pixel for each of the drawing's units.
        let picture = Icon::read(ICON)?.render(64, Purpose::Any)?;
        let at = |x, y| picture.pixel(x, y).ok_or("outside the picture");
        let background = at(1, 1)?;
        assert_eq!(at(51, 13)?, at(13, 51)?, "both holes");
        assert_ne!(at(51, 13)?, background, "a hole");
        assert_ne!(at(32, 32)?, background, "the bar");
        assert_eq!(at(59, 13)?, at(32, 32)?, "an eye's rim has the bar's color");
        assert_eq!(at(55, 13)?, background, "inside the rim is background");
        Ok(())
    }

    #[test]
    fn a_picture_has_the_size_asked_for_and_nothing_shines_through() -> Outcome {
        for purpose in [Purpose::Any, Purpose::Maskable] {
            let png = Icon::read(ICON)?.png(192, purpose)?;
            let picture = Pixmap::decode_png(&png).map_err(|reason| reason.to_string())?;
            assert_eq!((picture.width(), picture.height()), (192, 192), "{purpose:?}");
            assert!(picture.pixels().iter().all(|pixel| pixel.is_opaque()), "{purpose:?}");
        }
        Ok(())
    }

    #[test]
    fn a_maskable_icon_stays_within_the_circle_that_is_never_cut() -> Outcome {
        let icon = Icon::read(ICON)?;
        assert!(reach(&icon.render(200, Purpose::Any)?) > 0.4, "or it need not be made smaller");
        let reach = reach(&icon.render(200, Purpose::Maskable)?);
        assert!((0.38..=0.4).contains(&reach), "{reach}");
        Ok(())
    }

    /// How far from the middle a picture differs from its background, as a part of its width.
    fn reach(picture: &Pixmap) -> f64 {
        let (width, background) = (picture.width() as usize, picture.pixels()[0]);
        let drawn = picture.pixels().iter().enumerate().filter(|(_, pixel)| **pixel != background);
        let middle = width as f64 / 2.0;
        let from_middle = |at: usize| (at as f64 + 0.5) - middle;
        let farthest = drawn.map(|(at, _)| from_middle(at % width).hypot(from_middle(at / width)));
        farthest.fold(0.0, f64::max) / width as f64
    }

    #[test]
    fn what_is_no_drawing_is_refused() {
        assert!(Icon::read("<svg viewBox=\"0 0 8 8\">").is_err_and(|it| it.contains("style/icon.svg")));
    }
}
