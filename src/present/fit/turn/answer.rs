//! The answer to a question, bar by bar.

use super::bar::{LinkTurn, OfBar, all, longer, name, of_change, of_turned};
use super::{Ask, THROUGH};
use crate::document::{Document, Link, Side};
use crate::engine::fitting::as_fitted::Readings;
use crate::engine::fitting::moves::{Could, LinkChange, Move, Moved, SideView, Slopes, Through, Wanted, move_by};
use crate::engine::fitting::turn::{Place, Turned, Wish, hold_back, turn_bars};
use crate::log::{Spot, bars};
use crate::present::fit::own_rod_end;
use crate::present::words::{length, lower, say};
use crate::present::working::{self, Step};
use crate::quantity::{Kind, System, fit, show};
use crate::report::Answer;

/// What was asked.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Asked {
    /// The question.
    pub ask: Ask,
    /// Its number, SI.
    pub value: f64,
    /// Whether it is the second of its two ways.
    pub other_way: bool,
    /// Which links tilt the axle.
    pub through: Through,
    /// Slopes read on the rig.
    pub slopes: Slopes,
    /// Whether the frame's end of the track bar is on the left; none where nobody said.
    pub frame_end_left: Option<bool>,
}

/// The whole answer.
#[derive(Debug, Clone, PartialEq, Default)]
pub struct TurnAnswer {
    /// Why there is none.
    pub instead: Option<String>,
    /// Bar by bar, the one that is looked at first.
    pub links: Vec<LinkTurn>,
    /// Where a bar cannot take its part: what could do it instead, or what to order.
    pub could: Vec<String>,
    /// What happens beside what was wanted.
    pub says: Vec<String>,
    /// What to mind at the axle.
    pub cautions: Vec<String>,
    /// What was taken for granted.
    pub assumed: Vec<String>,
    /// How the changes of length came out.
    pub working: Vec<Step>,
}

/// What is known of the rig beside its document.
#[derive(Clone, Copy)]
pub struct Known<'a> {
    /// The answer for a link of the document.
    pub answers: &'a dyn Fn(usize) -> Option<Answer>,
    /// What was read on a bar.
    pub readings: &'a dyn Fn(&Spot) -> Readings,
    /// Whether a hit is open against a bar.
    pub hit: &'a dyn Fn(&Spot) -> bool,
    /// The bar that is looked at.
    pub chosen: Option<&'a Spot>,
}

impl Known<'_> {
    /// The bars that a link stands for with their names, the one that is looked at first.
    fn bars(&self, document: &Document, link: usize) -> Vec<(Spot, String)> {
        let mut bars = bars(document, link);
        bars.sort_by_key(|(spot, _)| Some(spot) != self.chosen);
        bars
    }

    /// What is to be turned at the bars of a link, in the order of `bars`; nothing where it has no answer.
    fn turned(&self, document: &Document, link: usize, wish: Wish) -> Vec<Turned> {
        let (Some(made), Some(of)) = ((self.answers)(link), document.links.get(link)) else { return Vec::new() };
        let place = Place { role: of.role, pair: of.seated() == Side::Both };
        let readings: Vec<Readings> = self.bars(document, link).iter().map(|(spot, _)| (self.readings)(spot)).collect();
        turn_bars(&made.link, &readings, wish, place)
    }

    fn of_bar(&self, link: usize, (spot, title): (Spot, String)) -> Option<OfBar> {
        let made = (self.answers)(link)?.link;
        let hands = made.ends.each_ref().map(|end| end.hand);
        let unmeasured = own_rod_end::of_link(link, &made);
        Some(OfBar { link, hit: (self.hit)(&spot), spot, title, hands, unmeasured })
    }
}

/// One part of what is done: the change of a link, and the turns of its bars.
struct Part {
    change: LinkChange,
    turned: Vec<Turned>,
}

/// The answer.
pub fn answer(document: &Document, index: usize, asked: &Asked, known: Known, system: System) -> TurnAnswer {
    let sign = if asked.other_way { -1.0 } else { 1.0 };
    let wanted = match goal(asked, sign) {
        Ok(Goal::Wish(wish)) => {
            let role = document.links.get(index).map(|link| link.role).unwrap_or_default();
            let change = LinkChange { role, link: Some(index), change: 0.0 };
            let mut parts = [Part { change, turned: known.turned(document, index, wish) }];
            hold(&mut parts);
            let links = told(document, &parts, known, |_| String::new(), system);
            return TurnAnswer { links, ..TurnAnswer::default() };
        }
        Ok(Goal::Move(wanted)) => wanted,
        Err(why) => return TurnAnswer { instead: Some(why.to_string()), ..TurnAnswer::default() },
    };
    let moved = move_by(document, index, wanted, asked.through, asked.slopes);
    let mut changes = moved.changes.clone();
    changes.sort_by_key(|change| change.link != Some(index));
    let by = |link: usize, change: f64| known.turned(document, link, Wish::Longer(change));
    let part = |change: LinkChange| Part {
        change,
        turned: change.link.map(|link| by(link, change.change)).unwrap_or_default(),
    };
    let mut parts: Vec<Part> = changes.into_iter().map(part).collect();
    let refused: Vec<(usize, Turned)> = parts
        .iter()
        .filter_map(|part| Some((part.change.link?, part.turned.iter().find(|one| one.is_refused())?.clone())))
        .collect();
    hold(&mut parts);
    let links = told(document, &parts, known, |turned| reached(document, index, asked, turned, system), system);
    let could = if refused.is_empty() {
        Vec::new()
    } else {
        let wish = Move { document, index, wanted, through: asked.through, slopes: asked.slopes };
        instead(&wish, &refused, &by, system)
    };
    TurnAnswer { could, ..of_moved(&moved, links, system) }
}

/// Holds every bar back where one of them cannot be turned that far.
fn hold(parts: &mut [Part]) {
    let mut turned: Vec<Turned> = parts.iter().flat_map(|part| part.turned.clone()).collect();
    hold_back(&mut turned);
    let mut turned = turned.into_iter();
    for one in parts.iter_mut().flat_map(|part| &mut part.turned) {
        if let Some(held) = turned.next() {
            *one = held;
        }
    }
}

/// Every bar in words; `also` adds to what its turn gives.
fn told(
    document: &Document,
    parts: &[Part],
    known: Known,
    also: impl Fn(&Turned) -> String,
    system: System,
) -> Vec<LinkTurn> {
    let mut links = Vec::new();
    for part in parts {
        let Some(link) = part.change.link.filter(|_| !part.turned.is_empty()) else {
            links.push(of_change(document, &part.change, system));
            continue;
        };
        for (number, (turned, bar)) in part.turned.iter().zip(known.bars(document, link)).enumerate() {
            let Some(bar) = known.of_bar(link, bar) else { continue };
            let mut told = of_turned(turned, bar, system);
            if number > 0 {
                // Both bars of a pair have the same rod ends, and the same to mind: once is enough.
                (told.unmeasured, told.cautions) = (Vec::new(), Vec::new());
            }
            told.gives = told.gives.map(|gives| gives + &also(turned));
            links.push(told);
        }
    }
    // Bars that are turned together are as good as the worst of them, and no better than the one that is looked at.
    if links.iter().any(|told| told.hit) || known.chosen.is_some_and(known.hit) {
        links.iter_mut().for_each(LinkTurn::take_the_green);
    }
    links
}

/// What could do it where a bar cannot take its part: the other links, or less of it, or another bar.
fn instead(
    wish: &Move,
    refused: &[(usize, Turned)],
    turns: &dyn Fn(usize, f64) -> Vec<Turned>,
    system: System,
) -> Vec<String> {
    let could = wish.could(turns);
    if !could.is_empty() {
        return could.iter().map(|could| of_could(wish.document, could, system)).collect();
    }
    let mut says = vec![match wish.wanted {
        Wanted::PinionUp(_) | Wanted::Caster(_) => {
            "Neither the uppers, nor the lowers, nor both opposite ways reach this with the bars that are on it."
                .to_string()
        }
        _ => "No other link does this: these bars are what moves it.".to_string(),
    }];
    if let Some(most) = wish.most(turns) {
        let most = match wish.wanted {
            Wanted::PinionUp(_) | Wanted::Caster(_) => show(most.abs(), Kind::Angle, system),
            _ => fit(most.abs(), system),
        };
        says.push(format!("The most of it that these bars take is {most}."));
    }
    says.extend(refused.iter().map(|(link, turned)| {
        let title = wish.document.links.get(*link).map(Link::title).unwrap_or_default();
        match turned.order {
            Some(order) => format!(
                "{title}: order bars of {} for {} eye to eye.{}",
                length(order.bar, system),
                fit(order.length, system),
                if order.provisional { " Measure the rod ends before you order." } else { "" }
            ),
            None => format!("{title}: {}", turned.instead.as_ref().map(|why| say(why, system)).unwrap_or_default()),
        }
    }));
    says
}

/// Another way, with how much each.
fn of_could(document: &Document, could: &Could, system: System) -> String {
    let with = THROUGH.iter().find(|(through, _, _)| *through == could.through).map_or("", |(_, _, title)| title);
    let each: Vec<String> = could
        .changes
        .iter()
        .map(|change| {
            let of = change.link.and_then(|link| document.links.get(link));
            // Both bars of a pair, and those that the build does not hold.
            let each = if of.is_none_or(|link| link.seated() == Side::Both) { " each" } else { "" };
            format!("{}{each} {}", lower(&name(document, change)), longer(change.change, system))
        })
        .collect();
    let stands = if !could.known {
        " Not judged: this build does not hold all of them."
    } else if could.judged {
        ""
    } else {
        " Not judged: not everything was read or measured there."
    };
    format!("{with} it can be done: {}. Pick that above.{stands}", each.join(", "))
}

/// What is asked of the one link, or of the axle.
enum Goal {
    Wish(Wish),
    Move(Wanted),
}

fn goal(asked: &Asked, sign: f64) -> Result<Goal, &'static str> {
    let value = sign * asked.value;
    Ok(Goal::Move(match asked.ask {
        Ask::Length => return Ok(Goal::Wish(Wish::Length(asked.value))),
        Ask::Longer => return Ok(Goal::Wish(Wish::Longer(value))),
        Ask::Pinion => Wanted::PinionUp(value),
        Ask::Caster => Wanted::Caster(value),
        Ask::Forward => Wanted::Forward(value),
        Ask::Toe => Wanted::ToeIn(value),
        Ask::Sideways => match asked.frame_end_left {
            // To the left is away from a frame's end on the right.
            Some(left) => Wanted::AwayFromFrameEnd(if left { -value } else { value }),
            None => return Err("Not judged: say on which side the track bar is bolted to the frame."),
        },
    }))
}

/// What a tilt by one pair really comes to, once it is rounded to flats.
fn reached(document: &Document, index: usize, asked: &Asked, turned: &Turned, system: System) -> String {
    // Toe goes with the length, so what whole flats give of the one they give of the other.
    if asked.ask == Ask::Toe && turned.way.is_some() && turned.wanted != 0.0 {
        let toe = asked.value * turned.change / turned.wanted;
        return format!(" That changes toe by {}.", fit(toe, system));
    }
    let tilts = matches!(asked.ask, Ask::Pinion | Ask::Caster);
    let view = SideView::of(document, index, asked.slopes).ok().filter(|_| tilts && turned.way.is_some());
    let tilt = view.and_then(|view| view.tilt_of(turned.change, asked.through));
    tilt.map(|tilt| format!(" That tilts the axle by {}.", show(tilt.abs(), Kind::Angle, system))).unwrap_or_default()
}

fn of_moved(moved: &Moved, links: Vec<LinkTurn>, system: System) -> TurnAnswer {
    TurnAnswer {
        instead: moved.instead.as_ref().map(|why| format!("Not judged: {}", say(why, system))),
        links,
        could: Vec::new(),
        says: all(&moved.says, system),
        cautions: all(&moved.cautions, system),
        assumed: all(&moved.assumed, system),
        working: working::steps(&moved.working, system),
    }
}
