//! The icon as pictures of dots, for home screens that take no drawing: painted from style/icon.svg.

use crate::Outcome;

/// Samples a dot is painted with, each way.
const FINE: u32 = 4;

type Color = [u8; 3];

/// A filled shape, in the drawing's own units.
#[derive(Clone, Copy, Debug, PartialEq)]
enum Shape {
    Everything,
    /// All within a distance of a line.
    Line([f64; 4], f64),
    /// All between two distances from a point.
    Ring([f64; 2], f64, f64),
}

impl Shape {
    fn covers(self, x: f64, y: f64) -> bool {
        match self {
            Shape::Everything => true,
            Shape::Line([ax, ay, bx, by], half) => {
                let (dx, dy) = (bx - ax, by - ay);
                let along = ((x - ax) * dx + (y - ay) * dy) / (dx * dx + dy * dy);
                let across = ((x - ax) * dy - (y - ay) * dx) / dx.hypot(dy);
                (0.0..=1.0).contains(&along) && across.abs() <= half
            }
            Shape::Ring([cx, cy], inner, outer) => (inner..=outer).contains(&(x - cx).hypot(y - cy)),
        }
    }
}

/// What the icon is made of, from the back to the front, and the side of its square.
#[derive(Debug)]
pub struct Icon {
    shapes: Vec<(Shape, Color)>,
    side: f64,
}

impl Icon {
    /// Reads a drawing of one square background, straight lines and circles.
    pub fn read(svg: &str) -> Outcome<Icon> {
        let mut icon = Icon { shapes: Vec::new(), side: 0.0 };
        // Attributes of the group around, which its shapes take over.
        let mut group = String::new();
        for tag in svg.split('<').skip(1) {
            let tag = tag.split('>').next().unwrap_or_default();
            let get = |name: &str| attribute(tag, name).or_else(|| attribute(&group, name)).unwrap_or_default();
            let number = |name: &str| number(get(name), tag);
            match tag.split([' ', '/']).find(|word| !word.is_empty()).unwrap_or_default() {
                "svg" if tag.starts_with('s') => {
                    icon.side = numbers(get("viewBox"), tag)?.get(2).copied().unwrap_or_default();
                }
                "g" if tag.starts_with('/') => group.clear(),
                "g" => group = tag.to_owned(),
                "rect" if get("x").is_empty() => icon.shapes.push((Shape::Everything, color(get("fill"), tag)?)),
                "path" => {
                    let line = get("d").strip_prefix('M').ok_or_else(|| unknown(tag))?;
                    let ends = numbers(line, tag)?.try_into().map_err(|_| unknown(tag))?;
                    icon.shapes.push((Shape::Line(ends, number("stroke-width")? / 2.0), color(get("stroke"), tag)?));
                }
                "circle" => {
                    let (center, radius) = ([number("cx")?, number("cy")?], number("r")?);
                    icon.shapes.push((Shape::Ring(center, 0.0, radius), color(get("fill"), tag)?));
                    if !get("stroke").is_empty() {
                        let half = number("stroke-width")? / 2.0;
                        let ring = Shape::Ring(center, radius - half, radius + half);
                        icon.shapes.push((ring, color(get("stroke"), tag)?));
                    }
                }
                "svg" => {}
                _ => return Err(unknown(tag)),
            }
        }
        Ok(icon)
    }

    /// A picture of that many dots a side. A `maskable` one keeps the drawing within the middle
    /// circle of 80 % that no system cuts off.
    pub fn png(&self, dots: u32, maskable: bool) -> Outcome<Vec<u8>> {
        let reach = if maskable { 0.4 / self.reach() } else { 1.0 };
        let step = self.side / f64::from(dots * FINE) / reach;
        let shown = self.side / reach;
        let start = (self.side - shown) / 2.0;
        let mut palette: Vec<Color> = Vec::new();
        let mut rows: Vec<u8> = Vec::new();
        for row in 0..dots {
            // Every row of the format begins with how it was filtered: not at all.
            rows.push(0);
            for column in 0..dots {
                let mut sum = [0_u32; 3];
                for sample in 0..FINE * FINE {
                    let at = |dot: u32, part: u32| start + (f64::from(dot * FINE + part) + 0.5) * step;
                    let color = self.color(at(column, sample % FINE), at(row, sample / FINE));
                    for (sum, part) in sum.iter_mut().zip(color) {
                        *sum += u32::from(part);
                    }
                }
                let color = sum.map(|part| u8::try_from((part + FINE * FINE / 2) / (FINE * FINE)).unwrap_or(u8::MAX));
                let index = palette.iter().position(|known| *known == color).unwrap_or_else(|| {
                    palette.push(color);
                    palette.len() - 1
                });
                let index = u8::try_from(index).map_err(|_| "style/icon.svg has too many colors for its pictures")?;
                rows.push(index);
            }
        }
        Ok(png(dots, &palette, &rows))
    }

    /// How far the drawing reaches from the middle, as a part of its side.
    fn reach(&self) -> f64 {
        let middle = self.side / 2.0;
        let farthest = self.shapes.iter().map(|(shape, _)| match shape {
            Shape::Everything => 0.0,
            Shape::Line([ax, ay, bx, by], half) => {
                (ax - middle).hypot(ay - middle).max((bx - middle).hypot(by - middle)) + half
            }
            Shape::Ring([cx, cy], _, outer) => (cx - middle).hypot(cy - middle) + outer,
        });
        farthest.fold(0.0, f64::max) / self.side
    }

    fn color(&self, x: f64, y: f64) -> Color {
        let top = self.shapes.iter().rev().find(|(shape, _)| shape.covers(x, y));
        top.map_or([0; 3], |(_, color)| *color)
    }
}

fn unknown(tag: &str) -> String {
    format!("style/icon.svg has <{tag}>, which xtask/src/icons.rs does not know how to paint")
}

/// An attribute's text.
fn attribute<'a>(tag: &'a str, name: &str) -> Option<&'a str> {
    tag.split_once(&format!(" {name}=\""))?.1.split('"').next()
}

fn number(text: &str, tag: &str) -> Outcome<f64> {
    text.parse().map_err(|_| unknown(tag))
}

fn numbers(text: &str, tag: &str) -> Outcome<Vec<f64>> {
    text.split_whitespace().map(|part| number(part, tag)).collect()
}

fn color(text: &str, tag: &str) -> Outcome<Color> {
    let value = text.strip_prefix('#').filter(|it| it.len() == 6).and_then(|it| u32::from_str_radix(it, 16).ok());
    let [_, parts @ ..] = value.ok_or_else(|| unknown(tag))?.to_be_bytes();
    Ok(parts)
}

/// A picture with a palette in the PNG format.
fn png(dots: u32, palette: &[Color], rows: &[u8]) -> Vec<u8> {
    let mut file = b"\x89PNG\r\n\x1a\n".to_vec();
    let mut chunk = |name: &[u8], bytes: &[u8]| {
        file.extend(u32::try_from(bytes.len()).unwrap_or(u32::MAX).to_be_bytes());
        let checked = [name, bytes].concat();
        file.extend(&checked);
        file.extend(crc(&checked).to_be_bytes());
    };
    // Eight bits a dot, colors by their number in the palette.
    chunk(b"IHDR", &[&dots.to_be_bytes()[..], &dots.to_be_bytes(), &[8, 3, 0, 0, 0]].concat());
    chunk(b"PLTE", palette.as_flattened());
    chunk(b"IDAT", &miniz_oxide::deflate::compress_to_vec_zlib(rows, 10));
    chunk(b"IEND", &[]);
    file
}

/// The check that the PNG format asks for.
fn crc(bytes: &[u8]) -> u32 {
    !bytes.iter().fold(u32::MAX, |crc, byte| {
        (0..8).fold(crc ^ u32::from(*byte), |crc, _| if crc & 1 == 1 { (crc >> 1) ^ 0xedb8_8320 } else { crc >> 1 })
    })
}

#[cfg(test)]
mod tests {
    use super::*;

    const ICON: &str = include_str!("../../style/icon.svg");

    #[test]
    fn the_icon_is_painted_where_it_is_drawn() -> Outcome {
        let icon = Icon::read(ICON)?;
        let paper = icon.color(1.0, 1.0);
        assert_eq!(icon.color(51.0, 13.0), icon.color(13.0, 51.0), "both holes");
        assert_ne!(icon.color(32.0, 32.0), paper, "the bar");
        assert_eq!(icon.color(57.0, 13.0 + 0.5), icon.color(32.0, 32.0), "an eye's rim has the bar's color");
        assert_eq!(icon.color(51.0, 13.0 + 4.5), paper, "inside the rim is paper");
        Ok(())
    }

    #[test]
    fn a_maskable_icon_stays_within_the_circle_that_is_never_cut() -> Outcome {
        let icon = Icon::read(ICON)?;
        assert!(icon.reach() > 0.4, "or nothing would be made smaller");
        let rows =
            miniz_oxide::inflate::decompress_to_vec_zlib(&data(&icon.png(100, true)?)).map_err(|it| it.to_string())?;
        for (row, line) in rows.chunks(101).enumerate() {
            for (column, dot) in line[1..].iter().enumerate() {
                let away = (row as f64 - 49.5).hypot(column as f64 - 49.5);
                // The first dot is the background.
                assert!(away < 41.0 || *dot == 0, "dot {column}, {row}");
            }
        }
        Ok(())
    }

    #[test]
    fn the_check_is_the_formats() {
        // The closing chunk is the same in every picture.
        assert_eq!(crc(b"IEND"), 0xae42_6082);
    }

    #[test]
    fn what_cannot_be_painted_is_named() {
        let text = Icon::read("<svg viewBox=\"0 0 8 8\"><ellipse rx=\"2\"/></svg>").err();
        assert!(text.is_some_and(|it| it.contains("ellipse")));
    }

    /// The packed dots of a picture.
    fn data(png: &[u8]) -> Vec<u8> {
        let at = png.windows(4).position(|it| it == b"IDAT").unwrap_or_default();
        png[at + 4..png.len() - 16].to_vec()
    }
}
