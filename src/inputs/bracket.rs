//! The choices of bolt, spacers and stock that follow from whether the rod ends are inch or metric.

use super::choices::{Choice, Option, id_of, link_of, of_id};
use super::{At, BOLT_DIAMETER, Group, OWN_BORE, Scope};
use crate::document::{BoltSeries, Document, OWN_ROD_END, Spacers, Stock};
use crate::engine::tables::{bolt_threads, rod_ends, threads};
use crate::quantity::System;

const SPACER_KINDS: [(Spacers, Option); 2] = [
    (Spacers::Plain, Option { id: "plain", label: "Plain, or none", help: "The bolt fills the bore." }),
    (
        Spacers::HighMisalignment,
        Option {
            id: "high-misalignment",
            label: "High-misalignment",
            help: "They reach into the ball and take a smaller bolt: enter its diameter.",
        },
    ),
];

const SERIES: [(BoltSeries, Option); 2] = [
    (BoltSeries::Fine, Option { id: "fine", label: "Fine", help: "UNF, or a fine metric pitch." }),
    (BoltSeries::Coarse, Option { id: "coarse", label: "Coarse", help: "UNC, or the coarse metric pitch." }),
];

const STOCKS: [(Stock, Option); 2] = [
    (Stock::Inch, Option { id: "inch", label: "Inch sizes", help: "" }),
    (Stock::Metric, Option { id: "metric", label: "Metric sizes", help: "" }),
];

/// A choice of a link that is kept as a value of its own type.
macro_rules! link_choice {
    ($(#[doc = $doc:literal])+ $id:ident $key:literal $label:literal, $group:ident $table:ident $field:ident, $default:expr, $help:literal) => {
        $(#[doc = $doc])+
        pub static $id: Choice = Choice {
            id: $key,
            label: $label,
            help: $help,
            scope: Scope::Link,
            group: Group::$group,
            options: || $table.map(|(_, option)| option).to_vec(),
            get: |document, place| id_of(&$table, &document.links.get(place.link)?.$field?),
            set: |document, place, id| {
                let picked = match id {
                    None => None,
                    Some(id) => match of_id(&$table, id) {
                        None => return false,
                        found => found,
                    },
                };
                link_of(document, place).map(|link| link.$field = picked).is_some()
            },
            default: |document, place| {
                let default: fn(&Document, At) -> _ = $default;
                id_of(&$table, &default(document, place))
            },
        };
    };
}

link_choice! {
    /// What stands between ball and ears.
    SPACER_KIND "spacer-kind" "Kind of spacer", Bracket SPACER_KINDS spacer_kind,
    |_, _| Spacers::default(), "High-misalignment spacers step the bolt down so that the ball tilts further."
}

link_choice! {
    /// Thread of the bolts.
    BOLT_SERIES "bolt-thread" "Bolt thread", Bracket SERIES bolt_series,
    |_, _| BoltSeries::default(), "Fine is assumed. A coarse thread clamps about a tenth less."
}

link_choice! {
    /// Which bars the recommendation searches.
    STOCK "stock" "Bars to choose from", Bar STOCKS stock,
    usual_stock, "Follows the rod ends: metric bars for metric rod ends. Tubes are listed in inch sizes only."
}

/// Whether a link's bars are chosen from inch or from metric sizes.
pub fn stock_of(document: &Document, place: At) -> Stock {
    let decided = document.links.get(place.link).and_then(|link| link.stock);
    decided.unwrap_or_else(|| usual_stock(document, place))
}

/// The stock that goes with a link's rod ends.
fn usual_stock(document: &Document, place: At) -> Stock {
    let chosen = |end: usize| {
        let end = document.links.get(place.link)?.ends.get(end)?;
        let thread = if end.rod_end? == OWN_ROD_END { end.own_thread? } else { rod_ends::find(end.rod_end?)?.thread };
        threads::find(thread).map(|thread| thread.system)
    };
    match chosen(0).or_else(|| chosen(1)).unwrap_or_else(|| family_system(document, place)) {
        System::Inch => Stock::Inch,
        System::Metric => Stock::Metric,
    }
}

/// The system of the bolts, by the first end that settles it; each end's own bolt may still differ.
pub(super) fn bolt_system(document: &Document, place: At) -> System {
    let of_end = |index: usize| {
        let at = At { end: index, ..place };
        if let Some(diameter) = BOLT_DIAMETER.decided(document, at) {
            return Some(bolt_threads::system_of(diameter));
        }
        let end = document.links.get(place.link)?.ends.get(index)?;
        let own = end.rod_end? == OWN_ROD_END;
        let bore = if own { OWN_BORE.decided(document, at)? } else { rod_ends::find(end.rod_end?)?.bore };
        Some(bolt_threads::for_bore(bore).map_or_else(|| bolt_threads::system_of(bore), |size| size.system))
    };
    of_end(0).or_else(|| of_end(1)).unwrap_or_else(|| family_system(document, place))
}

/// The system of the rod ends that a link's are chosen from.
fn family_system(document: &Document, place: At) -> System {
    let family = document.links.get(place.link).and_then(|link| link.family);
    if family == Some(rod_ends::Family::SeriesK.id()) { System::Metric } else { System::Inch }
}
