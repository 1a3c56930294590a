//! The file format: DXF of AutoCAD Release 12 (AC1009) in ASCII, pairs of a group code and a value, one a line.
//!
//! Release 12 is what every program and controller reads. It knows no units; a text in the drawing says them.

use std::fmt::Write as _;

/// A place in the drawing, in its units.
pub(super) type Point = (f64, f64);

/// The longest text that Release 12 reads.
const LONGEST_TEXT: usize = 255;

/// What a line or a text belongs to, by the names that drawings usually give their layers.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) enum Layer {
    /// Edges that are seen.
    Outline,
    /// Edges inside the part.
    Hidden,
    /// Axes.
    Center,
    /// Sizes.
    Dimension,
    /// Notes.
    Text,
}

impl Layer {
    const ALL: [Self; 5] = [Self::Outline, Self::Hidden, Self::Center, Self::Dimension, Self::Text];

    const fn name(self) -> &'static str {
        match self {
            Self::Outline => "OUTLINE",
            Self::Hidden => "HIDDEN",
            Self::Center => "CENTER",
            Self::Dimension => "DIMENSION",
            Self::Text => "TEXT",
        }
    }

    /// Its line type, and its color by the numbers of the format: 7 is black or white, 3 green, 1 red, 5 blue.
    const fn looks(self) -> (&'static str, u8) {
        match self {
            Self::Outline => ("CONTINUOUS", 7),
            Self::Hidden => ("HIDDEN", 3),
            Self::Center => ("CENTER", 1),
            Self::Dimension => ("CONTINUOUS", 5),
            Self::Text => ("CONTINUOUS", 7),
        }
    }
}

/// What of a text is at its point.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) enum Anchor {
    /// Where it begins.
    Start,
    /// Its middle.
    Middle,
    /// Where it ends.
    End,
}

/// A file in the making.
#[derive(Debug, Default)]
pub(super) struct File {
    entities: String,
    corners: Option<(Point, Point)>,
}

/// One pair.
fn pair(text: &mut String, code: u16, value: &str) {
    // Writing to memory does not fail.
    let _ = write!(text, "{code:>3}\r\n{value}\r\n");
}

fn number(text: &mut String, code: u16, value: f64) {
    // No minus before nothing.
    pair(text, code, &format!("{:.6}", if value.abs() < 5e-7 { 0.0 } else { value }));
}

fn point(text: &mut String, code: u16, (x, y): Point) {
    number(text, code, x);
    number(text, code + 10, y);
    number(text, code + 20, 0.0);
}

/// Words as the format reads them: one line of ASCII; other letters by their number; signs that would be read as a
/// command of the format stand as plain ones.
pub(super) fn escaped(words: &str) -> String {
    let mut safe = String::new();
    for letter in words.chars() {
        match letter {
            // A caret is the beginning of a control letter, with a space behind it is one.
            '^' => safe.push_str("^ "),
            // Two percent signs begin a command: three are one percent sign.
            '%' => safe.push_str("%%%"),
            '\\' => safe.push('/'),
            '×' => safe.push('x'),
            ' '..='~' => safe.push(letter),
            letter if letter.is_control() => safe.push(' '),
            letter if u32::from(letter) <= 0xffff => {
                let _ = write!(safe, "\\U+{:04X}", u32::from(letter));
            }
            _ => safe.push('?'),
        }
        if safe.len() > LONGEST_TEXT - 8 {
            break;
        }
    }
    safe
}

impl File {
    fn reach(&mut self, (x, y): Point) {
        let (low, high) = self.corners.get_or_insert(((x, y), (x, y)));
        *low = (low.0.min(x), low.1.min(y));
        *high = (high.0.max(x), high.1.max(y));
    }

    /// A straight line.
    pub(super) fn line(&mut self, layer: Layer, from: Point, to: Point) {
        self.reach(from);
        self.reach(to);
        pair(&mut self.entities, 0, "LINE");
        pair(&mut self.entities, 8, layer.name());
        point(&mut self.entities, 10, from);
        point(&mut self.entities, 11, to);
    }

    /// A rectangle between two corners.
    pub(super) fn block(&mut self, layer: Layer, a: Point, b: Point) {
        let corners = [a, (b.0, a.1), b, (a.0, b.1), a];
        corners.windows(2).for_each(|side| self.line(layer, side[0], side[1]));
    }

    /// Words on one line.
    pub(super) fn text(&mut self, layer: Layer, anchor: Anchor, at: Point, height: f64, words: &str) {
        self.reach(at);
        self.reach((at.0, at.1 + height));
        let text = &mut self.entities;
        pair(text, 0, "TEXT");
        pair(text, 8, layer.name());
        point(text, 10, at);
        number(text, 40, height);
        pair(text, 1, &escaped(words));
        if anchor != Anchor::Start {
            pair(text, 72, if anchor == Anchor::Middle { "1" } else { "2" });
            point(text, 11, at);
        }
    }

    /// The finished file; dashes as long as this.
    pub(super) fn finish(self, dash: f64) -> String {
        let mut text = String::new();
        let (low, high) = self.corners.unwrap_or_default();
        pair(&mut text, 0, "SECTION");
        pair(&mut text, 2, "HEADER");
        pair(&mut text, 9, "$ACADVER");
        pair(&mut text, 1, "AC1009");
        for (name, at) in [("$EXTMIN", low), ("$EXTMAX", high)] {
            pair(&mut text, 9, name);
            point(&mut text, 10, at);
        }
        for (name, at) in [("$LIMMIN", low), ("$LIMMAX", high)] {
            pair(&mut text, 9, name);
            number(&mut text, 10, at.0);
            number(&mut text, 20, at.1);
        }
        pair(&mut text, 0, "ENDSEC");
        tables(&mut text, dash);
        pair(&mut text, 0, "SECTION");
        pair(&mut text, 2, "ENTITIES");
        text.push_str(&self.entities);
        pair(&mut text, 0, "ENDSEC");
        pair(&mut text, 0, "EOF");
        text
    }
}

/// Line types, layers and the letters' style.
fn tables(text: &mut String, dash: f64) {
    pair(text, 0, "SECTION");
    pair(text, 2, "TABLES");
    let (gap, long, short) = (dash / 2.0, 4.0 * dash, 0.7 * dash);
    let types: [(&str, &str, &[f64]); 3] = [
        ("CONTINUOUS", "Solid line", &[]),
        ("HIDDEN", "Hidden __ __ __", &[dash, -gap]),
        ("CENTER", "Center ____ _ ____", &[long, -gap, short, -gap]),
    ];
    table(text, "LTYPE", types.len());
    for (name, says, dashes) in types {
        pair(text, 0, "LTYPE");
        pair(text, 2, name);
        pair(text, 70, "0");
        pair(text, 3, says);
        pair(text, 72, "65");
        pair(text, 73, &dashes.len().to_string());
        number(text, 40, dashes.iter().map(|dash| dash.abs()).sum());
        dashes.iter().for_each(|dash| number(text, 49, *dash));
    }
    pair(text, 0, "ENDTAB");
    table(text, "LAYER", Layer::ALL.len() + 1);
    // Every drawing has a layer 0.
    let layers = [("0", ("CONTINUOUS", 7))].into_iter().chain(Layer::ALL.map(|layer| (layer.name(), layer.looks())));
    for (name, (line, color)) in layers {
        pair(text, 0, "LAYER");
        pair(text, 2, name);
        pair(text, 70, "0");
        pair(text, 62, &color.to_string());
        pair(text, 6, line);
    }
    pair(text, 0, "ENDTAB");
    table(text, "STYLE", 1);
    pair(text, 0, "STYLE");
    pair(text, 2, "STANDARD");
    pair(text, 70, "0");
    for (code, value) in [(40, 0.0), (41, 1.0), (50, 0.0)] {
        number(text, code, value);
    }
    pair(text, 71, "0");
    number(text, 42, dash);
    pair(text, 3, "txt");
    pair(text, 4, "");
    pair(text, 0, "ENDTAB");
    pair(text, 0, "ENDSEC");
}

fn table(text: &mut String, name: &str, entries: usize) {
    pair(text, 0, "TABLE");
    pair(text, 2, name);
    pair(text, 70, &entries.to_string());
}
