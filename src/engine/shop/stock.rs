//! Which of the shop's own rod ends and bars a link can be made from, and what of a link is in stock.
//!
//! The search is a question of its own: no answer rests on it. It writes measured sizes into a copy of the document, as
//! somebody would type them, and asks for the report on that; what is taken over is that copy.

mod needed;

use crate::document::{Document, End, Hand, OWN_ROD_END, SuppliedBy};
use crate::engine;
use crate::engine::shop::cut_plan::Saw;
use crate::engine::tables::materials::{self, Form};
use crate::engine::tables::practice::{self, GoesBy, Size};
use crate::engine::tables::{rod_ends, threads};
use crate::inputs::{self, At};
use crate::quantity::exceeds;
use crate::report::{Answer, LinkReport, Verdict};
use crate::shop::{Lists, ROD_ENDS, RodEnd, Stock};
pub use needed::{Held, Needed, Wanted, standing};
pub(super) use needed::{is_theirs, listed, of_size, slips_in, usable};

/// Reports that one search asks for at most. What is likeliest to pass and be taken is asked first: rod ends no smaller
/// than what holds by the numbers, in stock before those that are not, the smallest first; each in the smallest bar first.
pub const MOST_REPORTS: usize = 60;

/// Readings within a hundredth of a millimeter are one reading.
const SAME: f64 = 1e-5;

/// What a link could be made from.
#[derive(Debug, Clone, PartialEq)]
pub struct Offer {
    /// The rod end of the list at each end; `None` where the one that was decided stays, or none is listed.
    pub rod_ends: [Option<RodEnd>; 2],
    /// The bar or tube of the list; `None` where none of the metal is listed, so that one must be ordered.
    pub stock: Option<Stock>,
    /// Size of the bar or tube.
    pub size: Size,
    /// How the link comes out.
    pub verdict: Verdict,
    /// The word for it.
    pub word: &'static str,
    /// Finished length of the bar.
    pub bar: f64,
    /// Length to saw.
    pub cut: f64,
    /// Whether these lengths are final: the rod ends at both ends are measured.
    pub is_final: bool,
    /// Whether it is as large as what builders usually fit for the job, where they have a habit.
    pub as_large_as_usual: bool,
    /// Everything the shop has to bring for it, and what of that is in stock.
    pub needed: Vec<Needed>,
}

impl Offer {
    /// Whether nothing has to be ordered and everything is counted.
    pub fn is_in_stock(&self) -> bool {
        self.needed.iter().all(|needed| needed.to_order() == Some(0))
    }

    /// The thickest of its threads, which it is ranked by after its bar.
    fn thread(&self) -> f64 {
        thickest(self.rod_ends.each_ref().map(Option::as_ref))
    }
}

/// What a search found.
#[derive(Debug, Clone, PartialEq, Default)]
pub struct Offers {
    /// What passes: as large as usual before smaller, then the smallest bar, then the smallest thread, then what is in
    /// stock.
    pub offers: Vec<Offer>,
    /// How many reports were asked for.
    pub reports: usize,
    /// Whether everything the lists allow was asked; else there may be more, see [`MOST_REPORTS`].
    pub complete: bool,
    /// Entries that are missing before anything can be asked; their input ids.
    pub needs: Vec<&'static str>,
}

/// Rod ends for both ends; `None` leaves an end as it is.
type Pair<'a> = [Option<&'a RodEnd>; 2];

/// The thickest thread of rod ends.
fn thickest(pair: Pair) -> f64 {
    let major = |end: &RodEnd| end.thread().map_or(0.0, |thread| thread.major);
    pair.into_iter().flatten().map(major).fold(0.0, f64::max)
}

/// Everything of the lists that a link can be made from so that it passes, at most one bar for each choice of rod ends:
/// the smallest. How many blanks the stock gives goes by the saw.
pub fn offers(document: &Document, link: usize, lists: &Lists, saw: &Saw) -> Offers {
    let mut found = Offers { complete: true, ..Offers::default() };
    if document.links.get(link).is_none() {
        return found;
    }
    let (mut pairs, bars) = (pairs(document, link, lists), bars(document, link, lists));
    if pairs.is_empty() || (bars.iter().all(Option::is_none) && pairs.iter().all(|pair| *pair == [None, None])) {
        return found;
    }
    found.reports = 1;
    match engine::report_on(document, link) {
        LinkReport::Needs(needs) => {
            found.needs = needs;
            return found;
        }
        LinkReport::Answer(answer) => {
            let least = answer.sizing.by_numbers.as_ref().and_then(|it| threads::find(it.thread));
            // A stable sort: what was in order before stays so.
            pairs.sort_by_key(|pair| least.is_some_and(|least| exceeds(least.major, thickest(*pair))));
        }
        LinkReport::Impossible(_) => {}
    }
    for pair in pairs {
        for bar in &bars {
            if found.reports >= MOST_REPORTS {
                found.complete = false;
                return ranked(found);
            }
            let trial = tried(document, link, pair, *bar);
            found.reports += 1;
            match engine::report_on(&trial, link) {
                LinkReport::Answer(answer) if answer.findings.iter().all(|finding| finding.recommendable) => {
                    found.offers.push(offer(
                        needed::needed(&trial, link, &answer, lists, saw, pair),
                        pair,
                        *bar,
                        &answer,
                    ));
                    break;
                }
                // Rod ends too long for this link, or a check that fails.
                _ => {}
            }
        }
    }
    ranked(found)
}

fn ranked(mut found: Offers) -> Offers {
    found.offers.sort_by(|a, b| {
        let usual = b.as_large_as_usual.cmp(&a.as_large_as_usual);
        let size = || a.size.modulus().total_cmp(&b.size.modulus()).then(a.thread().total_cmp(&b.thread()));
        usual.then_with(size).then(b.is_in_stock().cmp(&a.is_in_stock()))
    });
    found
}

/// A document in which an offer is taken: its measured sizes stand in the link, so that it opens to the same numbers
/// anywhere.
pub fn take(document: &Document, link: usize, offer: &Offer) -> Document {
    let [a, b] = &offer.rod_ends;
    tried(document, link, [a.as_ref(), b.as_ref()], offer.stock.as_ref())
}

/// The document with rod ends and a bar written in as somebody would type them.
fn tried(document: &Document, link: usize, pair: Pair, bar: Option<&Stock>) -> Document {
    let mut document = document.clone();
    let Some(chosen) = document.links.get_mut(link) else { return document };
    for (end, rod_end) in chosen.ends.iter_mut().zip(pair) {
        if let Some(rod_end) = rod_end {
            write_in(end, rod_end);
        }
    }
    // The bracket may have been measured with other spacers than those that come along.
    if chosen.spacer.is_none()
        && let [Some(a), Some(b)] = pair.map(|rod_end| rod_end.and_then(|it| it.spacer))
        && !exceeds((a - b).abs(), SAME)
    {
        chosen.spacer = Some(a);
    }
    if let Some(bar) = bar {
        (chosen.outside_diameter, chosen.wall) = (bar.outside_diameter, bar.wall);
    }
    document
}

/// Puts a measured rod end of the shop at an end.
fn write_in(end: &mut End, rod_end: &RodEnd) {
    end.rod_end = Some(OWN_ROD_END);
    end.supplied_by = Some(SuppliedBy::Shop);
    end.shank_steel = rod_end.shank_steel;
    end.rating = rod_end.rating;
    end.own_thread = rod_end.thread;
    end.own_bore = rod_end.bore;
    end.own_eye_to_end = rod_end.eye_to_end;
    end.own_thread_length = rod_end.thread_length;
    end.own_ball_width = rod_end.ball_width;
    end.own_head_diameter = rod_end.head_diameter;
    end.own_head_thickness = rod_end.head_thickness;
    end.own_race_bore = None;
}

/// Whether the rod end at an end was measured and is not the shop's, so that it stays.
fn stays(end: &End) -> bool {
    end.rod_end == Some(OWN_ROD_END) && end.supplied_by != Some(SuppliedBy::Shop)
}

/// Whether a rod end of the list may go to an end: any, or one of the thread and bore that were decided.
fn may_go(end: &End, rod_end: &RodEnd) -> bool {
    let Some(row) = end.rod_end.and_then(rod_ends::find) else { return true };
    rod_end.thread == Some(row.thread) && rod_end.bore.is_some_and(|bore| !exceeds((bore - row.bore).abs(), SAME))
}

/// The rod ends to ask for, the likeliest first.
fn pairs<'a>(document: &Document, link: usize, lists: &'a Lists) -> Vec<Pair<'a>> {
    let Some(chosen) = document.links.get(link) else { return Vec::new() };
    let pieces = inputs::pieces_of(document, link);
    let listed: Vec<&RodEnd> =
        lists.rod_ends.rows.iter().filter(|entry| entry.lacks(ROD_ENDS).is_empty()).map(|entry| &entry.row).collect();
    let of_end = |end: usize| -> Vec<Option<&RodEnd>> {
        match chosen.ends.get(end) {
            Some(end) if stays(end) => vec![None],
            Some(end) => {
                let may: Vec<_> = listed.iter().copied().filter(|it| may_go(end, it)).map(Some).collect();
                if listed.is_empty() { vec![None] } else { may }
            }
            None => Vec::new(),
        }
    };
    let hands = [0, 1].map(|end| hand(document, link, end));
    let each = if hands[0] == hands[1] { 2 * pieces } else { pieces };
    let enough = |rod_end: &RodEnd, hand: Hand| rod_end.held(hand).is_some_and(|held| held as usize >= each);
    let both = |rod_end: &RodEnd| hands.iter().all(|hand| enough(rod_end, *hand));
    let mut pairs: Vec<(bool, f64, Pair<'a>)> = Vec::new();
    for a in of_end(0) {
        for b in of_end(1) {
            let (kept, stocked) = match (a, b) {
                // Two kinds in one link only where neither kind is in stock in both hands.
                (Some(a), Some(b)) if !std::ptr::eq(a, b) => {
                    let alike =
                        a.thread == b.thread && a.bore.zip(b.bore).is_some_and(|(a, b)| !exceeds((a - b).abs(), SAME));
                    let each_in_stock = enough(a, hands[0]) && enough(b, hands[1]);
                    (alike && each_in_stock && !both(a) && !both(b), true)
                }
                (Some(both_ends), Some(_)) => (true, both(both_ends)),
                (Some(one), None) => (true, enough(one, hands[0])),
                (None, Some(one)) => (true, enough(one, hands[1])),
                (None, None) => (true, true),
            };
            if kept {
                pairs.push((!stocked, thickest([a, b]), [a, b]));
            }
        }
    }
    pairs.sort_by(|a, b| a.0.cmp(&b.0).then(a.1.total_cmp(&b.1)));
    pairs.into_iter().map(|(.., pair)| pair).collect()
}

/// The bars or tubes of the link's metal to ask for, smallest section modulus first, a size once; a size that was decided
/// stays. `None` where none is listed: the recommendation decides then.
fn bars<'a>(document: &Document, link: usize, lists: &'a Lists) -> Vec<Option<&'a Stock>> {
    let place = At::of_link(document, link);
    let Some(metal) = inputs::MATERIAL.value(document, place).and_then(materials::find) else { return vec![None] };
    let decided = [&inputs::OUTSIDE_DIAMETER, &inputs::WALL].map(|input| input.decided(document, place));
    let same = |decided: Option<f64>, its: Option<f64>| {
        decided.is_none_or(|decided| its.is_some_and(|its| !exceeds((its - decided).abs(), SAME)))
    };
    let mut bars: Vec<&Stock> = needed::stock_of(lists, metal)
        .filter(|bar| same(decided[0], bar.outside_diameter) && (metal.form == Form::Bar || same(decided[1], bar.wall)))
        .collect();
    bars.sort_by(|a, b| size(a).modulus().total_cmp(&size(b).modulus()));
    bars.dedup_by(|a, b| needed::same_size(a, size(b)));
    if bars.is_empty() { vec![None] } else { bars.into_iter().map(Some).collect() }
}

/// The size of a bar or tube.
fn size(bar: &Stock) -> Size {
    Size { outside_diameter: bar.outside_diameter.unwrap_or(0.0), wall: bar.wall.unwrap_or(0.0) }
}

fn offer(needed: Vec<Needed>, pair: Pair, bar: Option<&Stock>, answer: &Answer) -> Offer {
    let made = &answer.link;
    let blank = needed.iter().find_map(|part| match &part.what {
        Wanted::Blank { size, .. } => Some(*size),
        _ => None,
    });
    let size = blank.unwrap_or(Size { outside_diameter: made.outside_diameter, wall: made.wall });
    let as_large_as_usual = answer.sizing.by_trade.as_ref().is_none_or(|usual| {
        let threads = made.ends.iter().all(|end| practice::class(end.thread) >= usual.class);
        threads && (usual.goes_by == GoesBy::RodEnds || size.is_as_large_as(usual.least))
    });
    Offer {
        rod_ends: pair.map(Option::<&RodEnd>::cloned),
        stock: bar.cloned(),
        size,
        verdict: answer.verdict,
        word: answer.word(),
        bar: made.bar,
        cut: made.cut,
        is_final: !made.provisional,
        as_large_as_usual,
        needed,
    }
}

/// The hand of thread at an end.
fn hand(document: &Document, link: usize, end: usize) -> Hand {
    let place = At { end, ..At::of_link(document, link) };
    if inputs::HAND.value(document, place) == Some("lh") { Hand::Left } else { Hand::Right }
}

/// The thread with an id, if there is one.
fn thread_of(id: Option<&'static str>) -> Option<&'static threads::Thread> {
    threads::find(id?)
}
