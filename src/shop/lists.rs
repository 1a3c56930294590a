//! The rows of the five lists of stock, and their columns.

use super::columns::{Holds, Pick, Picked, columns, options};
use super::money::Rate;
use crate::document::{Hand, ShankSteel};
use crate::engine::tables::materials::{self, Form, Material};
use crate::engine::tables::threads::{self, Thread};
use crate::quantity::{Kind, inch, lbf, mm};

/// A rod end with a male shank, as the shop measured it. Lengths SI.
#[derive(Debug, Clone, PartialEq, Default)]
pub struct RodEnd {
    /// What the shop calls it.
    pub name: String,
    /// Id of its shank's thread.
    pub thread: Option<&'static str>,
    /// Hole in the ball.
    pub bore: Option<f64>,
    /// Eye center to shank end.
    pub eye_to_end: Option<f64>,
    /// Full thread on the shank.
    pub thread_length: Option<f64>,
    /// Right-hand ones in stock.
    pub right: Option<u32>,
    /// Left-hand ones in stock.
    pub left: Option<u32>,
    /// Face to face of the ball.
    pub ball_width: Option<f64>,
    /// Across the round head.
    pub head_diameter: Option<f64>,
    /// Thickness of the head.
    pub head_thickness: Option<f64>,
    /// The maker's static radial rating.
    pub rating: Option<f64>,
    /// What its shank is made of.
    pub shank_steel: Option<ShankSteel>,
    /// Spacer that goes with it, on each side of the ball.
    pub spacer: Option<f64>,
    /// What such a spacer weighs, as a force.
    pub spacer_weight: Option<f64>,
    /// What one weighs, as a force.
    pub weight: Option<f64>,
    /// What one costs.
    pub price: Option<Rate>,
}

impl RodEnd {
    /// How many of one hand are in stock; `None` when nobody has counted.
    pub const fn held(&self, hand: Hand) -> Option<u32> {
        match hand {
            Hand::Right => self.right,
            Hand::Left => self.left,
        }
    }

    /// Its thread.
    pub fn thread(&self) -> Option<&'static Thread> {
        threads::find(self.thread?)
    }
}

/// Whether a piece of stock is as it was bought or what was left over.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Piece {
    /// A full length.
    Full,
    /// What a cut left over.
    Remnant,
}

impl Picked for Piece {
    const ALL: &'static [(Self, Pick)] = &[
        (Self::Full, Pick { id: "full", label: "Full length" }),
        (Self::Remnant, Pick { id: "remnant", label: "Remnant" }),
    ];
}

/// What a price is for one of.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Per {
    /// A piece.
    Piece,
    /// An end of a link.
    End,
    /// A whole order.
    Order,
    /// An inch.
    Inch,
    /// A foot.
    Foot,
    /// A millimeter.
    Millimeter,
    /// A meter.
    Meter,
    /// A pound.
    Pound,
    /// A kilogram.
    Kilogram,
}

impl Picked for Per {
    const ALL: &'static [(Self, Pick)] = &[
        (Self::Piece, Pick { id: "piece", label: "piece" }),
        (Self::End, Pick { id: "end", label: "end" }),
        (Self::Order, Pick { id: "order", label: "order" }),
        (Self::Inch, Pick { id: "in", label: "in" }),
        (Self::Foot, Pick { id: "ft", label: "ft" }),
        (Self::Millimeter, Pick { id: "mm", label: "mm" }),
        (Self::Meter, Pick { id: "m", label: "m" }),
        (Self::Pound, Pick { id: "lb", label: "lb" }),
        (Self::Kilogram, Pick { id: "kg", label: "kg" }),
    ];
}

/// Bar or tube of one size and length. Lengths SI.
#[derive(Debug, Clone, PartialEq, Default)]
pub struct Stock {
    /// What the shop calls it.
    pub name: String,
    /// Id of its metal.
    pub metal: Option<&'static str>,
    /// Outside diameter.
    pub outside_diameter: Option<f64>,
    /// Wall of a tube; nothing for a solid bar.
    pub wall: Option<f64>,
    /// How long a piece is.
    pub length: Option<f64>,
    /// Pieces in stock.
    pub count: Option<u32>,
    /// Full length or remnant; nothing said is a full length.
    pub piece: Option<Piece>,
    /// What it costs.
    pub price: Option<Rate>,
    /// For how much.
    pub per: Option<Per>,
}

impl Stock {
    /// What it is made of.
    pub fn metal(&self) -> Option<&'static Material> {
        materials::find(self.metal?)
    }

    /// Whether it is what a cut left over.
    pub fn is_remnant(&self) -> bool {
        self.piece == Some(Piece::Remnant)
    }
}

/// A threaded insert for the end of a tube. Lengths SI.
#[derive(Debug, Clone, PartialEq, Default)]
pub struct Insert {
    /// What the shop calls it.
    pub name: String,
    /// Id of its thread.
    pub thread: Option<&'static str>,
    /// Which way that is cut.
    pub hand: Option<Hand>,
    /// Outside diameter, to slip into a tube's bore.
    pub outside_diameter: Option<f64>,
    /// Length.
    pub length: Option<f64>,
    /// Pieces in stock.
    pub count: Option<u32>,
    /// What one weighs, as a force.
    pub weight: Option<f64>,
    /// What one costs.
    pub price: Option<Rate>,
}

/// A jam nut. Lengths SI.
#[derive(Debug, Clone, PartialEq, Default)]
pub struct Nut {
    /// What the shop calls it.
    pub name: String,
    /// Id of its thread.
    pub thread: Option<&'static str>,
    /// Which way that is cut.
    pub hand: Option<Hand>,
    /// Thickness.
    pub thickness: Option<f64>,
    /// Width across flats.
    pub across_flats: Option<f64>,
    /// Pieces in stock.
    pub count: Option<u32>,
    /// What one weighs, as a force.
    pub weight: Option<f64>,
    /// What one costs.
    pub price: Option<Rate>,
}

/// Every thread of a shank.
pub(super) fn thread_picks() -> Vec<Pick> {
    threads::ALL.iter().map(|row| Pick { id: row.id, label: row.label }).collect()
}

fn metals(form: Form) -> Vec<Pick> {
    let of_form = materials::ALL.iter().filter(|row| row.form == form);
    of_form.map(|row| Pick { id: row.id, label: row.label }).collect()
}

/// What stock is priced by: never by the piece, since blanks are cut from it.
fn per_measure() -> Vec<Pick> {
    let of_pieces = [Per::Piece, Per::End, Per::Order];
    Per::ALL.iter().filter(|(per, _)| !of_pieces.contains(per)).map(|(_, pick)| *pick).collect()
}

const THREAD: Holds = Holds::Pick(thread_picks);
const HAND: Holds = Holds::Pick(options::<Hand>);
/// As wide as a link's own inputs go, so that a rod end that is taken over is accepted there.
const BORE: Holds = Holds::length(inch(0.18), inch(2.5));
const STOCK_LENGTH: Holds = Holds::length(inch(1.0), inch(480.0));
const WEIGHT: Holds = Holds::Number { kind: Kind::Weight, least: 0.0, most: lbf(100.0) };
const DIAMETER: Holds = Holds::length(inch(0.5), inch(4.0));

columns! {
    /// Of rod ends.
    ROD_ENDS of RodEnd:
    "Name" name Holds::Text, needed;
    "Shank thread" thread THREAD, needed;
    "Bore" bore BORE, needed;
    "Eye center to shank end" eye_to_end Holds::length(inch(0.75), inch(12.0)), needed;
    "Thread length" thread_length Holds::length(inch(0.4), inch(10.0)), needed;
    "Right-hand in stock" right Holds::Count;
    "Left-hand in stock" left Holds::Count;
    "Ball width" ball_width Holds::length(inch(0.2), inch(3.5));
    "Head diameter" head_diameter Holds::length(inch(0.4), inch(8.0));
    "Head thickness" head_thickness Holds::length(inch(0.1), inch(4.0));
    "Static radial rating" rating Holds::Number { kind: Kind::Force, least: lbf(200.0), most: lbf(400_000.0) };
    "Shank steel" shank_steel Holds::Pick(options::<ShankSteel>);
    "Spacer on each side" spacer Holds::length(0.0, inch(2.0));
    "Weight of a spacer" spacer_weight WEIGHT;
    "Weight each" weight WEIGHT;
    "Price each" price Holds::Money;
}

/// The columns of stock, for bars and for tubes: a tube has a wall beside them.
macro_rules! stock_columns {
    ($(#[$doc:meta])* $name:ident of $form:expr; $($wall:tt)*) => {
        columns! {
            $(#[$doc])*
            $name of Stock:
            "Name" name Holds::Text, needed;
            "Metal" metal Holds::Pick(|| metals($form)), needed;
            "Outside diameter" outside_diameter DIAMETER, needed;
            $($wall)*
            "Length" length STOCK_LENGTH, needed;
            "In stock" count Holds::Count;
            "Kind" piece Holds::Pick(options::<Piece>);
            "Price" price Holds::Money;
            "Price per" per Holds::Pick(per_measure);
        }
    };
}

stock_columns! {
    /// Of solid bars.
    BARS of Form::Bar;
}

stock_columns! {
    /// Of tubes.
    TUBES of Form::Tube;
    "Wall" wall Holds::length(inch(0.03), inch(1.5)), needed;
}

columns! {
    /// Of threaded inserts.
    INSERTS of Insert:
    "Name" name Holds::Text, needed;
    "Thread" thread THREAD, needed;
    "Hand" hand HAND, needed;
    "Outside diameter" outside_diameter DIAMETER, needed;
    "Length" length Holds::length(inch(0.25), inch(10.0)), needed;
    "In stock" count Holds::Count;
    "Weight each" weight WEIGHT;
    "Price each" price Holds::Money;
}

columns! {
    /// Of jam nuts.
    NUTS of Nut:
    "Name" name Holds::Text, needed;
    "Thread" thread THREAD, needed;
    "Hand" hand HAND, needed;
    "Thickness" thickness Holds::length(mm(1.0), inch(2.0));
    "Across flats" across_flats Holds::length(mm(5.0), inch(4.0));
    "In stock" count Holds::Count;
    "Weight each" weight WEIGHT;
    "Price each" price Holds::Money;
}
