//! The price book: what a shop charges for, and by what measure. No price is built in, and there is no currency.

use super::columns::{Holds, Pick, Picked, columns, options};
use super::lists::{Per, thread_picks};
use super::money::Rate;
use super::table::Table;
use crate::engine::tables::materials;
use crate::quantity::{exceeds, inch};

/// A row of the price book. What it names narrows down what it is for: the row that names most goes before the others.
#[derive(Debug, Clone, PartialEq, Default)]
pub struct Price {
    /// What the shop calls it.
    pub name: String,
    /// What is charged for.
    pub charge: Option<Charge>,
    /// Only for this metal, by its id.
    pub metal: Option<&'static str>,
    /// Only for this outside diameter.
    pub outside_diameter: Option<f64>,
    /// Only for this wall.
    pub wall: Option<f64>,
    /// Only for this thread, by its id.
    pub thread: Option<&'static str>,
    /// What it costs; 0 says that it is included elsewhere.
    pub price: Option<Rate>,
    /// For how much.
    pub per: Option<Per>,
    /// From so many links on.
    pub from: Option<u32>,
    /// So many percent, for breaks and taxes.
    pub percent: Option<Rate>,
    /// Working days that it takes.
    pub days: Option<u32>,
}

/// The price book.
pub type PriceBook = Table<Price>;

/// What may be charged for.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
pub enum Charge {
    /// Bar or tube.
    Material,
    /// Sawing to length.
    Saw,
    /// Facing.
    Face,
    /// Drilling and tapping.
    DrillAndTap,
    /// Milling the wrench flats.
    Flats,
    /// Turning the whole bar.
    Skim,
    /// Welding an insert into a tube.
    Weld,
    /// Setting machines up.
    SetUp,
    /// Polishing.
    Polish,
    /// Anodizing.
    Anodize,
    /// A rod end.
    RodEnd,
    /// A jam nut.
    JamNut,
    /// A threaded insert.
    Insert,
    /// A bolt through an eye.
    Bolt,
    /// A lock nut for that bolt.
    LockNut,
    /// A spacer beside a ball.
    Spacer,
    /// What an order costs by itself.
    Order,
    /// Packing.
    Packing,
    /// Shipping.
    Shipping,
    /// The least an order comes to.
    Least,
    /// Percent off from so many links on.
    Break,
    /// Tax on everything but shipping.
    Tax,
    /// Tax on everything, shipping included.
    TaxWithShipping,
    /// Days until it leaves.
    LeadTime,
}

/// What a kind of charge is counted by.
const BY_LENGTH_OR_WEIGHT: &[Per] =
    &[Per::Foot, Per::Inch, Per::Millimeter, Per::Meter, Per::Pound, Per::Kilogram, Per::Piece];
const BY_END: &[Per] = &[Per::End, Per::Piece, Per::Order];
const BY_PIECE: &[Per] = &[Per::Piece, Per::Order];
const BY_PIECE_OR_LENGTH: &[Per] = &[Per::Piece, Per::Inch, Per::Foot, Per::Millimeter, Per::Meter, Per::Order];
const BY_ITSELF: &[Per] = &[Per::Piece];
const BY_ORDER: &[Per] = &[Per::Order, Per::Piece];
const BY_WEIGHT: &[Per] = &[Per::Order, Per::Pound, Per::Kilogram, Per::Piece];
const ONCE: &[Per] = &[Per::Order];

/// Each charge with its id, label, and what it may be counted by, the usual one first; none for what is no price.
const CHARGES: [(Charge, &str, &str, &[Per]); 24] = [
    (Charge::Material, "material", "Material", BY_LENGTH_OR_WEIGHT),
    (Charge::Saw, "saw", "Saw", BY_PIECE),
    (Charge::Face, "face", "Face", BY_END),
    (Charge::DrillAndTap, "drill-and-tap", "Drill and tap", BY_END),
    (Charge::Flats, "flats", "Mill flats", BY_PIECE),
    (Charge::Skim, "skim", "Skim pass", BY_PIECE_OR_LENGTH),
    (Charge::Weld, "weld", "Weld insert", BY_END),
    (Charge::SetUp, "set-up", "Set up", BY_ORDER),
    (Charge::Polish, "polish", "Polish", BY_PIECE_OR_LENGTH),
    (Charge::Anodize, "anodize", "Anodize", BY_PIECE_OR_LENGTH),
    (Charge::RodEnd, "rod-end", "Rod end", BY_ITSELF),
    (Charge::JamNut, "jam-nut", "Jam nut", BY_ITSELF),
    (Charge::Insert, "insert", "Threaded insert", BY_ITSELF),
    (Charge::Bolt, "bolt", "Bolt", BY_ITSELF),
    (Charge::LockNut, "lock-nut", "Lock nut", BY_ITSELF),
    (Charge::Spacer, "spacer", "Spacer", BY_ITSELF),
    (Charge::Order, "order", "Each order", ONCE),
    (Charge::Packing, "packing", "Packing", BY_ORDER),
    (Charge::Shipping, "shipping", "Shipping", BY_WEIGHT),
    (Charge::Least, "least", "Least order", ONCE),
    (Charge::Break, "break", "Quantity break", &[]),
    (Charge::Tax, "tax", "Tax without shipping", &[]),
    (Charge::TaxWithShipping, "tax-with-shipping", "Tax with shipping", &[]),
    (Charge::LeadTime, "lead-time", "Lead time", &[]),
];

impl Picked for Charge {
    const ALL: &'static [(Self, Pick)] = &{
        let mut all = [(Self::Material, Pick { id: "", label: "" }); CHARGES.len()];
        let mut at = 0;
        while at < CHARGES.len() {
            let (charge, id, label, _) = CHARGES[at];
            all[at] = (charge, Pick { id, label });
            at += 1;
        }
        all
    };
}

impl Charge {
    /// As a price book names it.
    pub fn label(self) -> &'static str {
        CHARGES.iter().find(|(charge, ..)| *charge == self).map_or("", |(_, _, label, _)| label)
    }

    /// What it may be counted by, the usual one first; nothing where it is no price.
    pub fn counted_by(self) -> &'static [Per] {
        CHARGES.iter().find(|(charge, ..)| *charge == self).map_or(&[], |(.., by)| by)
    }
}

/// What a price is looked for.
#[derive(Debug, Clone, Copy, PartialEq, Default)]
pub struct Sought {
    /// Id of the metal of the link.
    pub metal: Option<&'static str>,
    /// Outside diameter of the bar or tube.
    pub outside_diameter: Option<f64>,
    /// Wall of the tube.
    pub wall: Option<f64>,
    /// Id of the thread.
    pub thread: Option<&'static str>,
}

/// Sizes within a hundredth of a millimeter are one size of stock.
const SAME_SIZE: f64 = 1e-5;

impl Price {
    /// What keeps a row from being used, in a sentence; `None` when it can be.
    pub fn complaint(&self) -> Option<String> {
        let charge = self.charge?;
        let by = charge.counted_by();
        let label = charge.label();
        if charge == Charge::LeadTime {
            return self.days.is_none().then(|| format!("{label}: enter the days."));
        }
        if by.is_empty() {
            if self.percent.is_none() {
                return Some(format!("{label}: enter the percent."));
            }
            let open = charge == Charge::Break && self.from.is_none();
            return open.then(|| format!("{label}: enter from how many links on."));
        }
        if self.price.is_none() {
            return Some(format!("{label}: enter a price, or 0 where it is included in another."));
        }
        self.per.filter(|per| !by.contains(per)).map(|_| {
            let may: Vec<&str> = by.iter().filter_map(|per| label_of(*per)).collect();
            format!("{label} may be charged per {}.", may.join(", "))
        })
    }

    /// What it is counted by.
    pub fn per(&self) -> Option<Per> {
        self.per.or_else(|| self.charge.and_then(|charge| charge.counted_by().first().copied()))
    }

    /// How closely it is for what is sought: how many things it names that agree; `None` when one does not.
    fn fits(&self, sought: &Sought) -> Option<usize> {
        let id = |own: Option<&str>, other: Option<&str>| match (own, other) {
            (None, _) => Some(0),
            (Some(own), Some(other)) => (own == other).then_some(1),
            (Some(_), None) => None,
        };
        let size = |own: Option<f64>, other: Option<f64>| match (own, other) {
            (None, _) => Some(0),
            (Some(own), Some(other)) => (!exceeds((own - other).abs(), SAME_SIZE)).then_some(1),
            (Some(_), None) => None,
        };
        Some(
            id(self.metal, sought.metal)?
                + id(self.thread, sought.thread)?
                + size(self.outside_diameter, sought.outside_diameter)?
                + size(self.wall, sought.wall)?,
        )
    }
}

/// As a price says it.
pub fn label_of(per: Per) -> Option<&'static str> {
    Per::ALL.iter().find(|(of, _)| *of == per).map(|(_, pick)| pick.label)
}

impl PriceBook {
    /// The rows of a charge that can be used, in the order of the book.
    pub fn of(&self, charge: Charge) -> impl Iterator<Item = &Price> {
        let usable = self.rows.iter().filter(|entry| entry.unread.is_empty()).map(|entry| &entry.row);
        usable.filter(move |row| row.charge == Some(charge) && row.complaint().is_none())
    }

    /// The row for what is sought: the one that names most of it; of those the one that begins at the most links, which
    /// the order must reach; of those the first.
    pub fn find(&self, charge: Charge, sought: &Sought, links: u32) -> Option<&Price> {
        let mut best: Option<(usize, u32, &Price)> = None;
        for row in self.of(charge) {
            let from = row.from.unwrap_or(0);
            let Some(fits) = row.fits(sought).filter(|_| from <= links) else { continue };
            if best.is_none_or(|(most, least, _)| (fits, from) > (most, least)) {
                best = Some((fits, from, row));
            }
        }
        best.map(|(.., row)| row)
    }
}

fn metals() -> Vec<Pick> {
    materials::ALL.iter().map(|row| Pick { id: row.id, label: row.label }).collect()
}

columns! {
    /// Of the price book.
    PRICES of Price:
    "Name" name Holds::Text, needed;
    "Charge" charge Holds::Pick(options::<Charge>), needed;
    "Metal" metal Holds::Pick(metals);
    "Outside diameter" outside_diameter Holds::length(inch(0.5), inch(4.0));
    "Wall" wall Holds::length(inch(0.03), inch(1.5));
    "Thread" thread Holds::Pick(thread_picks);
    "Price" price Holds::Money;
    "Per" per Holds::Pick(options::<Per>);
    "From links" from Holds::Count;
    "Percent" percent Holds::Percent;
    "Days" days Holds::Count;
}
