//! The answer, in the order a reader asks: what to buy, does it hold, how far it turns, why.
//! What only stands there to be read is markup; what folds, ticks or copies is a tag.

use super::changing::Changing;
use super::known::Known;
use super::markup::{Markup, Row, element, pair, phrases, plain, said, sentence, table, unbroken};
use super::prove::stale_note;
use super::state::{Bench, Leaf};
use super::tag::{Piece, button, live, several, tag};
use super::{checklist, ends, form, rest, rig_parts, send, sizes, storage, verdict, words};
use linkwright::engine::sentence::Said;
use linkwright::quantity::{Kind, System};
use linkwright::report::{Answer, LinkGeometry, Verdict};

/// The whole answer. Its sections stay; each is written anew only when its own words change.
pub(super) fn answer(bench: Bench) -> Piece {
    let [first, rest] = [cautions_first, cautions_rest].map(|tell| part(bench, tell));
    let more = part(bench, |_, answer| {
        plain(format!("{} more cautions before you cut", answer.cautions.len() - shown_first(answer)))
    });
    let lead =
        Known::new(move || bench.first_answer().map(|answer| head(bench, bench.at.get(), &answer)).unwrap_or_default());
    let sheet = move || if bench.printing.get() { rest::sheet(bench) } else { Markup::default() };
    // Somebody who prints the proof wants it too.
    let alone = move || {
        // Not before it is written: else nothing at all would be printed.
        let written = bench.printing.get() && bench.part().is_some();
        bench.leaf.get() == Leaf::Size && !bench.laid_open.get() && written
    };
    several()
        .with(tag("div class='sheets own'").class("alone", alone).markup(sheet))
        .with(stale_note(bench))
        .with(tag("div").markup(move || lead.get()))
        .with(
            tag("section class=cautions aria-label='Before you act on this'")
                .with(tag("ul").markup(move || first.get()))
                .with(folded(bench, more, rest)),
        )
        .with(live(move || rest::view(bench, Leaf::Size)))
}

/// What stands below the answer itself.
pub(super) fn below(bench: Bench) -> Piece {
    let parts = part(bench, |bench, answer| rig_parts::of_link(bench, bench.at.get(), answer));
    let sections = [
        ("section class=part-of id=below tabindex=-1", part(bench, adjustment)),
        ("section class=part-of", sizes::why(bench)),
        ("section class='part-of ends-part'", part(bench, ends::ends)),
        ("section class=part-of id=link-parts", parts),
    ];
    let why = button("button type=button id=to-prove", "See why: every check and its working", move |_| {
        bench.turn_to(Leaf::Prove);
    });
    let assumed = part(bench, |_, answer| {
        plain(format!("{} assumed values you can change under “Change a default”", answer.assumed.len()))
    });
    let section = |(open, markup): (_, Known<Markup>)| tag(open).markup(move || markup.get());
    several()
        .with(Vec::from(sections.map(section)))
        .with(
            tag("section class=part-of")
                .with(tag("h3").with("Checks and sources"))
                .with(tag("p").with(why))
                .with(folded(bench, assumed, part(bench, |bench, answer| sizes::assumed(bench, &answer.assumed)))),
        )
        .with(checklist::checklist(bench))
        .with(send::send(bench))
        .with(form::around(bench))
}

/// Writes a part of the answer.
type Tell = Box<dyn Fn(Bench, &Answer) -> Markup + Send + Sync>;

/// Markup that follows from the answer, a moment later.
pub(super) fn part(bench: Bench, tell: impl Fn(Bench, &Answer) -> Markup + Send + Sync + 'static) -> Known<Markup> {
    // One kind for all parts, so that a phone fetches the code once.
    fn known(bench: Bench, tell: Tell) -> Known<Markup> {
        bench.pace.calm(Known::new(move || bench.with_answer(|answer| tell(bench, answer)).unwrap_or_default()))
    }
    known(bench, Box::new(tell))
}

/// How many cautions stand in sight: the most urgent ones, before the rest.
fn shown_first(answer: &Answer) -> usize {
    let urgent = answer.verdict == Verdict::Fails || !answer.link.adjustment.opposite_hands || answer.role.steers();
    (if urgent { 2 } else { 1 }).min(answer.cautions.len())
}

pub(super) fn cautions_first(bench: Bench, answer: &Answer) -> Markup {
    list(bench, &answer.cautions[..shown_first(answer)])
}

fn cautions_rest(bench: Bench, answer: &Answer) -> Markup {
    element("ul", list(bench, &answer.cautions[shown_first(answer)..]))
}

fn list(bench: Bench, sentences: &[Said]) -> Markup {
    sentences.iter().map(|said| sentence("li", &bench.say(said))).collect()
}

/// What is one tap away on a screen, and always there on paper.
fn folded(bench: Bench, name: Known<Markup>, inside: Known<Markup>) -> Piece {
    // What the reader opened stays open when the paper is done.
    let open = Changing::new(false);
    tag("details")
        .switch("open", move || bench.printing.get() || open.get())
        .on("toggle", move |event| {
            if !bench.printing.get_untracked() {
                open.set(storage::is_open(&event));
            }
        })
        .with(tag("summary").markup(move || name.get()))
        .with(tag("div").markup(move || inside.get()))
}

/// Which link it is, what to buy, whether it holds, and the hit it is sized for.
fn head(bench: Bench, at: usize, answer: &Answer) -> Markup {
    let name = bench.document.with(|document| words::sheet_name(document, at));
    let story = said("b", "Sized for: ") + unbroken(&bench.say(&answer.loads.story));
    said("p class=\"sheet-name\"", name)
        + printed(bench)
        + standing(bench, answer)
        + element("p class=\"story\"", story)
}

/// What to buy, whether it holds, and the lengths.
pub(super) fn standing(bench: Bench, answer: &Answer) -> Markup {
    let system = bench.system.get();
    let job = bench.document.with(|document| words::job(document, system));
    let kind = match (answer.sizing.overridden, &answer.sizing.recommended) {
        (true, _) => "Your own size",
        (false, Some(_)) => "Recommended",
        (false, None) => "Not a recommendation",
    };
    let headline = words::headline(&answer.link, system);
    let judged =
        verdict::mark(answer.verdict, answer.word()) + said("p id=\"weakest\"", words::weakest(answer, system));
    // Whether a push folds a steering link is told once.
    let governs = answer.buckling() == answer.weakest_finding();
    said("p class=\"kicker\"", format!("{kind} for a rig of {job}"))
        + nothing_holds(answer)
        + element("h2 class=\"phrases\" id=\"headline\"", phrases(&headline))
        + element("div class=\"judged\"", judged)
        + if governs { Markup::default() } else { verdict::buckling(answer, system) }
        + plate(bench, &answer.link)
}

/// When it was printed, on paper, for the newer of two sheets counts; and how far to trust it.
pub(super) fn printed(bench: Bench) -> Markup {
    if !bench.printing.get() {
        return Markup::default();
    }
    let time = storage::spoken_time(&storage::now());
    let trust = "An estimate for planning: makers’ ratings, local rules and a licensed engineer come first.";
    said("p class=\"printed\"", format!("Printed {time} by Linkwright. {trust}"))
}

/// A warning in front of a link that does not hold.
fn nothing_holds(answer: &Answer) -> Markup {
    let nothing = answer.sizing.recommended.is_none() && !answer.sizing.overridden;
    if answer.verdict != Verdict::Fails && !nothing {
        return Markup::default();
    }
    let words = match (&answer.sizing.recommended, answer.sizing.overridden) {
        (None, _) => {
            "No stock size passes every check. This is what is fitted all the same, to show what yields first."
        }
        (Some(_), true) => "The size you chose fails. Clear it to see the recommended one.",
        (Some(_), false) => "This link fails as entered.",
    };
    said("p class=\"stop\"", words)
}

/// The title block: what is read back over a phone or copied onto the bar.
fn plate(bench: Bench, made: &LinkGeometry) -> Markup {
    let length = |value: f64| words::length(value, bench.system.get());
    let [a, b] = made.ends.each_ref().map(|end| words::thread(end.thread));
    let threads = if a == b { a.to_string() } else { format!("{a} at A, {b} at B") };
    let eyes = pair("Eye to eye", "dd class=\"main\" id=\"eye-to-eye\"", length(made.length));
    // A length that rests on a published series is not the headline.
    let [bar, cut] = if made.provisional {
        ["Bar, face to face, provisional", "Saw to, provisional"]
    } else {
        ["Bar, face to face", "Saw to"]
    };
    let bar = pair(bar, "dd class=\"main\" id=\"bar-length\"", length(made.bar));
    let cut = pair(cut, "dd class=\"main\" id=\"cut-length\"", length(made.cut));
    let cells = eyes
        + bar
        + cut
        + pair("Bar", "dd", words::size(made.outside_diameter, made.wall, bench.system.get()))
        + pair("Rod ends", "dd", &threads)
        + pair("Weight of the bar", "dd id=\"bar-weight\"", bench.show(made.bar_weight, Kind::Weight));
    let measure = if made.provisional { said("p class=\"provisional\"", MEASURE_FIRST) } else { Markup::default() };
    element("dl class=\"plate\"", cells) + measure
}

/// Beside lengths that stand only until the rod ends are measured.
const MEASURE_FIRST: &str =
    "Measure your rod ends before you saw: bar and saw length rest on a published series until then.";

/// How far the link can be made longer and shorter, and how many turns that is.
pub(super) fn adjustment(bench: Bench, answer: &Answer) -> Markup {
    let made = &answer.link;
    let adjustment = &made.adjustment;
    let kind = if bench.system.get() == System::Inch { Kind::FineLength } else { Kind::Length };
    let reach = adjustment.reach;
    let cell = |length: f64, turns: f64| {
        let turned = adjustment.opposite_hands.then(|| said("span", bench.show_at_most(turns, Kind::Turns)));
        said("b", bench.show_at_most(length, kind)) + turned.unwrap_or_default()
    };
    let rows = [("Longer", 0, reach.out_good, reach.out_limit), ("Shorter", 1, reach.in_good, reach.in_limit)];
    let rows = rows.map(|(about, way, good, limit)| Row {
        class: "",
        about,
        cells: [cell(good, adjustment.turns_good[way]), cell(limit, adjustment.turns_limit[way])],
    });
    let how = if let Some(turning) = adjustment.turning {
        let per_turn = bench.show(adjustment.per_turn, Kind::FineLength);
        format!("{turning} One turn changes the length by {per_turn}. Loosen both jam nuts first.")
    } else {
        "Both ends have the same hand: turning the bar does not change the length. Unbolt one eye and turn it to set the length."
            .to_string()
    };
    let caption = "Good practice keeps 0 to 3 threads showing. The hard limit is where you stop.";
    said("h3", "How far it adjusts")
        + table(
            "table class=\"adjust\" id=\"adjustment\"",
            caption,
            ["", "Good practice", "Hard limit"],
            Vec::from(rows),
        )
        + said("p", how)
}
