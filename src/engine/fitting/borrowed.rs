//! Whether a borrowed part fits: a rod end into one end of a link, or a whole link in the place of another.

use super::Standing;
use crate::document::{Document, Hand, Spacers};
use crate::engine::formula::{Line, Sheet};
use crate::engine::formulas::lengths;
use crate::engine::geometry::MOST_VISIBLE_THREADS;
use crate::engine::given::Values;
use crate::engine::sentence::{Said, said};
use crate::engine::tables::threads::{self, Thread};
use crate::inputs::{self, At};
use crate::quantity::{exceeds, inch};
use crate::report::{Answer, EndGeometry};

/// How far readings of the same part may differ, m.
const SAME: f64 = inch(1.0 / 64.0);
/// Threads whose diameters differ by no more than this share look alike.
const LOOKS_ALIKE: f64 = 0.06;

/// A rod end that somebody lends, as far as it was measured. Lengths SI.
#[derive(Debug, Clone, Copy, PartialEq, Default)]
pub struct BorrowedRodEnd {
    /// Id of its thread.
    pub thread: Option<&'static str>,
    /// Which way it is cut.
    pub hand: Option<Hand>,
    /// Eye center to shank end.
    pub eye_to_end: Option<f64>,
    /// Thread length of its shank.
    pub thread_length: Option<f64>,
    /// Hole in its ball.
    pub bore: Option<f64>,
    /// Face to face of its ball.
    pub ball_width: Option<f64>,
    /// Whether it is stamped as heat-treated alloy; false where nobody knows its steel.
    pub heat_treated: Option<bool>,
}

/// A link that somebody lends. Lengths SI.
#[derive(Debug, Clone, Copy, PartialEq, Default)]
pub struct BorrowedLink {
    /// Eye to eye at its shortest good setting.
    pub shortest: Option<f64>,
    /// Eye to eye at its longest good setting.
    pub longest: Option<f64>,
}

/// What one question about a borrowed part came to.
#[derive(Debug, Clone, PartialEq)]
pub struct Point {
    /// How it stands by that alone.
    pub standing: Standing,
    /// The answer.
    pub says: Said,
}

/// What lengths a borrowed rod end gives, eye to eye, the other end left as it is.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct BorrowedLengths {
    /// Wound in as far as it goes.
    pub shortest: f64,
    /// Wound to the same threads showing.
    pub same_showing: f64,
    /// Wound out to its stop.
    pub longest: f64,
    /// Full thread engaged at the length the link has; none where it does not get there.
    pub engagement: Option<f64>,
}

/// Whether a borrowed part fits.
#[derive(Debug, Clone, PartialEq)]
pub struct Borrowed {
    /// The whole: a stop before all, then what is not known, then the worst of the points.
    pub standing: Standing,
    /// Each question that could be answered, the worst first.
    pub points: Vec<Point>,
    /// What still has to be read off it.
    pub missing: Vec<&'static str>,
    /// The lengths it gives.
    pub lengths: Option<BorrowedLengths>,
    /// How the numbers came out.
    pub working: Vec<Line>,
}

impl Borrowed {
    fn of(points: Vec<Point>, missing: Vec<&'static str>, lengths: Option<BorrowedLengths>, sheet: Sheet) -> Self {
        let worst = points.iter().map(|point| point.standing).max().unwrap_or(Standing::NotJudged);
        let standing = if worst != Standing::Stop && !missing.is_empty() { Standing::NotJudged } else { worst };
        let mut points = points;
        points.sort_by_key(|point| std::cmp::Reverse(point.standing));
        Self { standing, points, missing, lengths, working: sheet.lines }
    }
}

const fn point(standing: Standing, says: Said) -> Point {
    Point { standing, says }
}

/// Judges a borrowed rod end for an end of a link, 0 for A.
pub fn rod_end(document: &Document, index: usize, answer: &Answer, end: usize, part: &BorrowedRodEnd) -> Borrowed {
    let Some(made) = answer.link.ends.get(end) else {
        return Borrowed::of(Vec::new(), vec!["the end"], None, Sheet::silent());
    };
    let (mut points, mut missing) = (Vec::new(), Vec::new());
    let positive = |value: Option<f64>| value.filter(|value| value.is_finite() && *value > 0.0);
    let mut ask = |point: Option<Point>, what| match point {
        Some(point) => points.push(point),
        None => missing.push(what),
    };
    let thread = part.thread.and_then(threads::find);
    ask(thread.map(|thread| thread_fits(thread, made.thread)), "its thread");
    ask(part.hand.map(|hand| hand_fits(hand, made.hand)), "its hand of thread");
    let bolt = Values::new(document, index).and_then(|given| given.bolt(end, made.bore)).map(|bolt| bolt.diameter);
    let steers = inputs::has_no_second_path(answer.role);
    ask(positive(part.bore).map(|bore| bore_fits(bore, bolt, made.bore, steers)), "its bore");
    let place = At { end, ..At::of_link(document, index) };
    let value = |input: &'static inputs::Number| input.value(document, place).unwrap_or(0.0);
    let spacers = value(&inputs::SPACER) + value(&inputs::GAP);
    let room = made.ball_width + 2.0 * spacers;
    let reaches_in = Values::new(document, index).is_some_and(|given| given.spacers() == Spacers::HighMisalignment);
    ask(positive(part.ball_width).map(|ball| ball_fits(ball, made.ball_width, room, reaches_in)), "its ball width");
    ask(part.heat_treated.map(|known| steel_holds(known, steers)), "whether it is stamped heat-treated alloy");
    let mut sheet = Sheet::recording();
    let lengths = match (positive(part.eye_to_end), positive(part.thread_length)) {
        (Some(to_end), Some(thread_length)) if thread_length >= to_end => {
            points.push(point(
                Standing::NotJudged,
                said!["The thread cannot be as long as from eye center to shank end: measure both again."],
            ));
            None
        }
        // Of a thread that does not fit, no length is told.
        (Some(to_end), Some(thread_length)) if thread.is_none_or(|thread| thread.id == made.thread.id) => {
            let (lengths, says) = wound(answer, made, to_end, thread_length, &mut sheet);
            points.push(says);
            lengths
        }
        (to_end, thread_length) => {
            if to_end.is_none() {
                missing.push("eye center to shank end");
            }
            if thread_length.is_none() {
                missing.push("its thread length");
            }
            None
        }
    };
    Borrowed::of(points, missing, lengths, sheet)
}

fn thread_fits(part: &'static Thread, hole: &'static Thread) -> Point {
    if part.id == hole.id {
        return point(Standing::Good, said!["The thread is the same: ", (hole.label), "."]);
    }
    let mut says = said!["It does not fit: its thread is ", (part.label), ", the hole is ", (hole.label), "."];
    let (near, pitch) = (
        (part.major - hole.major).abs() <= LOOKS_ALIKE * hole.major,
        (part.pitch - hole.pitch).abs() <= 0.01 * hole.pitch,
    );
    if near && !pitch {
        says.extend(said![
            " The two look alike and start by hand, then bind. Never force it: it strips the bar. Measure the pitch."
        ]);
    } else if near {
        says.extend(said![" The two look alike. Never force it."]);
    }
    point(Standing::Stop, says)
}

fn hand_fits(part: Hand, hole: Hand) -> Point {
    if part == hole {
        return point(Standing::Good, said!["Same hand: ", (hole.words()), "."]);
    }
    point(
        Standing::Stop,
        said![
            "Wrong hand: the part is ",
            (part.words()),
            ", the hole is ",
            (hole.words()),
            ". It cannot start. Never force it."
        ],
    )
}

fn bore_fits(bore: f64, bolt: Option<f64>, present: f64, steers: bool) -> Point {
    if let Some(bolt) = bolt
        && exceeds(bolt, bore + SAME / 4.0)
    {
        return point(
            Standing::Stop,
            said![
                "The bolt of ",
                (bolt, FineLength),
                " does not go through its bore of ",
                (bore, FineLength),
                ". Never drill out a ball, and never fit a smaller bolt loose."
            ],
        );
    }
    if (bore - present).abs() <= SAME {
        return point(
            Standing::Good,
            said!["Its bore is that of the rod end it replaces: ", (present, FineLength), "."],
        );
    }
    if bore < present {
        return point(
            Standing::Watch,
            said![
                "Its bore of ",
                (bore, FineLength),
                " takes the bolt, but the spacers were made for ",
                (present, FineLength),
                ": use spacers that fit both."
            ],
        );
    }
    point(
        if steers { Standing::Stop } else { Standing::Watch },
        said![
            "Its bore of ",
            (bore, FineLength),
            " is larger than the ",
            (present, FineLength),
            " it replaces. Only with a steel sleeve that fills it",
            (if steers { ", and not in this link: nothing backs it up." } else { "; loose, the holes wear oval." })
        ],
    )
}

/// A low-carbon rod end looks the same as one of heat-treated alloy.
fn steel_holds(known: bool, steers: bool) -> Point {
    if known {
        return point(Standing::Good, said!["Stamped heat-treated alloy."]);
    }
    if steers {
        return point(
            Standing::Stop,
            said![
                "Its steel is not known, and nothing backs this link up: a low-carbon shank breaks first. Only a rod end stamped heat-treated alloy goes in here."
            ],
        );
    }
    point(
        Standing::Watch,
        said![
            "Its steel is not known: a low-carbon shank breaks first. Home at walking pace, then fit a heat-treated alloy rod end."
        ],
    )
}

fn ball_fits(ball: f64, present: f64, room: f64, reaches_in: bool) -> Point {
    if exceeds(ball, room + SAME) {
        return point(
            Standing::Stop,
            said![
                "Its ball is ",
                (ball, FineLength),
                " wide and the bracket gap is ",
                (room, FineLength),
                ": it does not go between the ears. Do not grind the ball."
            ],
        );
    }
    if (ball - present).abs() <= SAME && !reaches_in || (ball - room).abs() <= SAME {
        return point(Standing::Good, said!["Its ball fills the place: ", (ball, FineLength), " wide."]);
    }
    if (ball - present).abs() <= SAME {
        return point(Standing::Good, said!["Its ball is as wide as the one it replaces; keep the same spacers."]);
    }
    point(
        Standing::Watch,
        said![
            "Its ball is ",
            (ball, FineLength),
            " wide in a gap of ",
            (room, FineLength),
            ": it needs ",
            ((room - ball).max(0.0) / 2.0, FineLength),
            " of steel spacer on each side. Never draw the ears together with the bolt."
        ],
    )
}

/// The lengths it gives, and whether the link's own is among them.
fn wound(
    answer: &Answer,
    made: &EndGeometry,
    to_end: f64,
    thread_length: f64,
    sheet: &mut Sheet,
) -> (Option<BorrowedLengths>, Point) {
    let link = &answer.link;
    let pitch = made.thread.pitch;
    let face = |inserted: f64, sheet: &mut Sheet| sheet.work(&lengths::EYE_TO_FACE, &[to_end, inserted]);
    let eye_to_eye = |face: f64| link.length - made.eye_to_face + face;
    let by_hole = sheet.work(&lengths::MOST_BY_HOLE, &[made.tapped_depth, pitch]);
    let by_thread = thread_length - made.jam_nut;
    let (deepest, least) = (by_thread.min(by_hole), made.least + made.not_full);
    if exceeds(least, deepest) {
        let says = said![
            "Its shank is too short: with the jam nut on, ",
            ((deepest - made.not_full).max(0.0), FineLength),
            " of full thread goes in, and the link needs ",
            (made.least, FineLength),
            "."
        ];
        return (None, point(Standing::Stop, says));
    }
    let three = by_thread - MOST_VISIBLE_THREADS * pitch;
    let stop = least.max(three).min(deepest);
    let same = sheet
        .work(&lengths::DESIGN_ENGAGEMENT, &[thread_length, made.jam_nut, made.visible_threads, pitch])
        .max(stop)
        .min(deepest);
    let [shortest, same_face, longest] = [deepest, same, stop].map(|inserted| face(inserted, sheet));
    // What the shank has in the bar when the eye sits where the old one sat.
    let here = sheet.work(&lengths::ENGAGEMENT_FROM_OUTSIDE, &[to_end, made.eye_to_face]);
    let reaches = !exceeds(here, deepest) && !exceeds(stop, here);
    let told = BorrowedLengths {
        shortest: eye_to_eye(shortest),
        same_showing: eye_to_eye(same_face),
        longest: eye_to_eye(longest),
        engagement: reaches.then_some(here - made.not_full),
    };
    let says = if reaches {
        point(
            Standing::Good,
            said![
                "At the length the link has, ",
                (link.length, Length),
                ", it has ",
                (here - made.not_full, FineLength),
                " of full thread in the bar; ",
                (made.least, FineLength),
                " is needed."
            ],
        )
    } else if exceeds(here, deepest) {
        point(
            Standing::Watch,
            said![
                "It does not go in far enough for ",
                (link.length, Length),
                ": wound right in, the link comes out at ",
                (told.shortest, Length),
                ". Set the other end shorter if that has room."
            ],
        )
    } else {
        point(
            Standing::Watch,
            said![
                "It must not be wound out to ",
                (link.length, Length),
                ": at its stop the link comes out at ",
                (told.longest, Length),
                ". Set the other end longer if that has room."
            ],
        )
    };
    (Some(told), says)
}

/// Judges a borrowed link by its length. Its metal and its threads are not known, so it is never better than for the way
/// home.
pub fn whole_link(answer: &Answer, part: &BorrowedLink) -> Borrowed {
    let wanted = answer.link.length;
    let reading = |value: Option<f64>| value.filter(|value| value.is_finite() && *value > 0.0);
    let (shortest, longest) = (reading(part.shortest), reading(part.longest));
    let mut points = Vec::new();
    let mut missing = Vec::new();
    match (shortest, longest) {
        (Some(shortest), Some(longest)) if exceeds(shortest, longest) => {
            points.push(point(
                Standing::NotJudged,
                said!["Its shortest setting is longer than its longest: measure both again."],
            ));
        }
        (Some(shortest), _) if exceeds(shortest, wanted + SAME) => {
            points.push(point(
                Standing::Stop,
                said![
                    "Too long: at its shortest it is ",
                    (shortest - wanted, FineLength),
                    " longer than the ",
                    (wanted, Length),
                    " this place needs."
                ],
            ));
        }
        (_, Some(longest)) if exceeds(wanted, longest + SAME) => {
            points.push(point(
                Standing::Stop,
                said![
                    "Too short: at its longest it lacks ",
                    (wanted - longest, FineLength),
                    " to the ",
                    (wanted, Length),
                    " this place needs. Never wind an end out past its stop."
                ],
            ));
        }
        (shortest, longest) => {
            if shortest.is_none() {
                missing.push("its shortest eye to eye");
            }
            if longest.is_none() {
                missing.push("its longest eye to eye, three threads showing at each end");
            }
            if missing.is_empty() {
                points.push(point(
                    Standing::Watch,
                    said![
                        "It can be set to ",
                        (wanted, Length),
                        ". Its bar, threads and rod ends are not judged here: home at walking pace, then take it off."
                    ],
                ));
            }
        }
    }
    if inputs::has_no_second_path(answer.role) {
        points.push(point(
            Standing::Watch,
            said!["Nothing backs this link up. Borrow only a whole link that was made for this place."],
        ));
    }
    Borrowed::of(points, missing, None, Sheet::silent())
}
