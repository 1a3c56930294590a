//! Every link in a row, the worst first: opened, copied, set apart, joined and taken away.

use super::{numbered, open, rig_adding};
use crate::view::changing::Changing;
use crate::view::known::Known;
use crate::view::markup::{Markup, element, phrases, plain, said};
use crate::view::state::{Bench, Whole};
use crate::view::tag::{Piece, button, live, nothing, several, tag, words as live_words};
use crate::view::{storage, verdict, words};
use linkwright::document::{Document, Link, Position, Side};
use linkwright::layouts;
use linkwright::quantity::System;
use linkwright::report::{Answer, LinkReport};

/// Every row, and what was just done to one of them.
pub(super) fn rows(bench: Bench) -> Piece {
    let done = Changing::new(None::<Done>);
    let order = Known::new(move || bench.whole.with(|whole| whole.as_ref().map(|whole| whole.rig.worst_first.clone())));
    let lately = Known::new(move || done.get().filter(|done| bench.document.with(|now| *now == done.after)));
    live(move || {
        let order = order.get().unwrap_or_default();
        let mut list: Vec<Piece> = order.iter().map(|index| one(bench, done, *index)).collect();
        if let Some(done) = lately.get() {
            let below = done.below.and_then(|link| order.iter().position(|index| *index == link));
            list.insert(below.map_or(done.rank, |row| row + 1).min(list.len()), told(bench, &done));
        }
        several().with(list)
    })
}

/// What was done to a link, and how to take it back for as long as nothing else changed.
#[derive(Clone, PartialEq)]
struct Done {
    /// The link that was pressed.
    index: usize,
    /// Its place in the list, where this stands if it is gone.
    rank: usize,
    /// Below which link this stands.
    below: Option<usize>,
    said: String,
    before: Document,
    after: Document,
}

/// A change of the rig by a link's row; gives where the link is that it made.
type Change = fn(&mut Document, usize) -> Option<usize>;
/// What came of it: the rig before and after, the link that was pressed, and where the one is that was made.
type Tell = fn(System, [&Document; 2], usize, Option<usize>) -> String;

/// Changes the rig, and says so where the finger is.
fn change(bench: Bench, done: Changing<Option<Done>>, index: usize, change: Change, tell: Tell) {
    let before = bench.document.get_untracked();
    let place = |whole: &Whole| whole.rig.worst_first.iter().position(|other| *other == index);
    let rank = bench.whole.with_untracked(|whole| whole.as_ref().and_then(place)).unwrap_or(0);
    let mut made = None;
    bench.rearrange(|rig| made = change(rig, index));
    let after = bench.document.get_untracked();
    let said = tell(bench.system.get_untracked(), [&before, &after], index, made);
    let gone = after.links.len() < before.links.len();
    let below = if gone { made } else { Some(index) };
    storage::show_soon(if after == before { "gone" } else { "undo-remove" }.to_string());
    done.set(Some(Done { index, rank, below, said, before, after }));
}

/// Stands where it was done, so that nothing else comes under the finger.
fn told(bench: Bench, done: &Done) -> Piece {
    let (index, before) = (done.index, done.before.clone());
    let undo = move |_| {
        bench.rearrange(|now| *now = before.clone());
        storage::show_soon(format!("open-{index}"));
    };
    let undo = || button("button type=button id=undo-remove aria-describedby=gone", "Undo", undo);
    tag("li class=gone")
        .with(tag("p id=gone tabindex=-1").with(&*done.said))
        .with((done.before != done.after).then(undo))
}

fn removed(_: System, [before, _]: [&Document; 2], index: usize, _: Option<usize>) -> String {
    format!("{} removed.", title(before, index))
}

/// A copy that took the place of another link says what was there.
fn copied(system: System, [before, after]: [&Document; 2], _: usize, made: Option<usize>) -> String {
    let Some((made, link)) = made.and_then(|made| Some((made, after.links.get(made)?))) else {
        return rig_adding::no_room();
    };
    let (title, were) = (link.title(), if link.seated() == Side::Both { "were" } else { "was" });
    let now = long(link, system);
    match before.links.get(made) {
        None => format!("{title} added."),
        Some(old) if old == link => format!("{title} {were} the same already."),
        Some(old) if long(old, system) == now => format!("{title} {were} {now} too; now alike in everything else."),
        Some(old) => format!("{title} {were} {}, now {now}.", long(old, system)),
    }
}

fn apart(_: System, [before, _]: [&Document; 2], index: usize, made: Option<usize>) -> String {
    match made {
        Some(_) => format!("{} are two entries now: left and right.", title(before, index)),
        None => rig_adding::no_room(),
    }
}

fn joined(system: System, [before, after]: [&Document; 2], index: usize, made: Option<usize>) -> String {
    let Some(pair) = made.and_then(|made| after.links.get(made)) else { return String::new() };
    let other = layouts::at_other_side(before, index).and_then(|other| before.links.get(other));
    let (now, other) = (long(pair, system), other.map(|other| (other.title(), long(other, system))));
    let lost = other.filter(|(_, long)| *long != now).map(|(title, long)| format!(" {title} was {long}."));
    format!("{} are one entry again: {now}.{}", pair.title(), lost.unwrap_or_default())
}

/// A link's length, for a sentence.
fn long(link: &Link, system: System) -> String {
    link.length.map_or("without a length".to_string(), |length| words::length(length, system))
}

fn title(document: &Document, index: usize) -> String {
    document.links.get(index).map(Link::title).unwrap_or_default()
}

/// What a button to copy is called; it names what would be written over.
fn copy_label(document: &Document, there: Option<usize>, to: &str, system: System) -> String {
    let Some(link) = there.and_then(|there| document.links.get(there)) else { return format!("Copy to the {to}") };
    let length = link.length.map(|length| format!(" ({})", words::length(length, system))).unwrap_or_default();
    format!("Copy over the {}{length}", words::lower(&link.title()))
}

/// A button that does not call for attention.
const QUIET: &str = "button type=button class=quiet";

/// One link: how it stands, what it is, and what can be done with it.
fn one(bench: Bench, done: Changing<Option<Done>>, index: usize) -> Piece {
    let text = Known::new(move || {
        bench.whole.with(|whole| whole.as_ref().map(|whole| line(bench, whole, index)).unwrap_or_default())
    });
    let title = move || bench.document.with(|document| title(document, index));
    let other_axle = move || {
        let system = bench.system.get();
        bench.document.with(|document| {
            let front = document.links.get(index).is_some_and(|link| link.position == Position::Front);
            let there = layouts::at_other_axle(document, index);
            copy_label(document, there, if front { "rear" } else { "front" }, system)
        })
    };
    // Said aloud, each button names its link.
    let unseen = move |before: &str| tag("span class=unseen").with(before).with(live_words(title));
    let act = move |open: &'static str, what: Change, tell: Tell| {
        tag(open).on("click", move |_| change(bench, done, index, what, tell))
    };
    let sides = Known::new(move || {
        let system = bench.system.get();
        bench.document.with(|document| {
            let seat = document.links.get(index)?.seated();
            let there = layouts::at_other_side(document, index);
            let label = match seat {
                Side::Both => "Set left and right apart".to_string(),
                Side::Left => copy_label(document, there, "right", system),
                Side::Right => copy_label(document, there, "left", system),
                Side::Middle => return None,
            };
            Some((label, seat == Side::Both, there.is_some()))
        })
    });
    let aside = live(move || {
        let Some((label, pair, twin)) = sides.get() else { return nothing() };
        let (what, tell): (Change, Tell) =
            if pair { (layouts::set_apart, apart) } else { (layouts::to_other_side, copied) };
        let first = act(QUIET, what, tell).with(&*label).with(unseen(": "));
        let join = || act(QUIET, layouts::join, joined).with("Join left and right").with(unseen(": "));
        several().with(first).with(twin.then(join))
    });
    let remove: Change = |rig, index| {
        layouts::remove(rig, index);
        None
    };
    let buttons = tag("div class=buttons")
        .with(
            button("button type=button class=open", "Open", move |_| open(bench, index))
                .set("id", &format!("open-{index}"))
                .with(unseen(" ")),
        )
        .with(act(QUIET, layouts::to_other_axle, copied).with(live_words(other_axle)).with(unseen(": ")))
        .with(aside)
        .with(act("button type=button class='quiet remove'", remove, removed).with("Remove").with(unseen(" ")));
    tag("li").set("data-link", &index.to_string()).with(tag("div").markup(move || text.get())).with(buttons)
}

fn line(bench: Bench, whole: &Whole, index: usize) -> Markup {
    let system = bench.system.get();
    let title = numbered(&whole.document, index);
    let (mark, size, says) = match whole.links.get(index) {
        Some(LinkReport::Answer(answer)) => {
            let length = words::length(answer.link.length, system);
            let cut = words::length(answer.link.cut, system);
            let size = phrases(&format!("{length}: {}", words::headline(&answer.link, system)));
            let size = size + plain(" ") + said("b", format!("Saw to {cut}"));
            (verdict::mark(answer.verdict, answer.word()), size, rests_on(answer, system))
        }
        Some(LinkReport::Impossible(why)) => {
            (Markup::default(), phrases("No link can be made of these entries."), bench.say(why))
        }
        Some(LinkReport::Needs(needs)) => (Markup::default(), phrases(&words::still_needed(needs)), String::new()),
        None => Default::default(),
    };
    element("div class=\"rig-line\"", said("h4", title) + mark)
        + element("p class=\"rig-size phrases\"", size)
        + said("p class=\"help\"", says)
}

/// What a verdict rests on. Whether a push folds a steering link is told, and once.
fn rests_on(answer: &Answer, system: System) -> String {
    let weakest = words::weakest(answer, system);
    let governs = answer.weakest_finding();
    match words::buckling(answer, system) {
        Some((verdict, words)) if answer.buckling() != governs => {
            format!("{weakest} {words}, {}.", words::lower(verdict.word()))
        }
        _ => weakest,
    }
}
