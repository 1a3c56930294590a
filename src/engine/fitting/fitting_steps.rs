//! Fitting a link, step by step, in the order of the work: one list for the screen, the sheet and the text.

mod bolt;
mod closing;

pub use bolt::{BoltJudged, bolt_in_its_ears};
pub use closing::{Progress, progress};

use super::hands::nut_tightens;
use super::torque_card::{hold, jam_nut_source};
use crate::document::Document;
use crate::engine::fitting::{quarters, quarters_below};
use crate::engine::formula::{Line, Sheet};
use crate::engine::given::Values;
use crate::engine::sentence::{Said, said};
use crate::engine::tables::jam_torque;
use crate::quantity::{exceeds, inch};
use crate::report::{Answer, EndGeometry, StopBy, Verdict};

/// One step of the work.
#[derive(Debug, Clone, PartialEq)]
pub struct Step {
    /// Never reused once released.
    pub id: &'static str,
    /// What to do.
    pub words: Said,
    /// Why, or where a number comes from.
    pub why: Option<Said>,
    /// Whether it is the thing that is said first and done last.
    pub last_and_first: bool,
    /// Where it is shown.
    pub shown: Shown,
}

/// Where a step is shown: a sheet of paper has room for what differs from link to link.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Shown {
    /// Wherever the list is.
    Everywhere,
    /// In the Fit view, where there is room for each thing by itself.
    OnScreen,
    /// On the printed sheet, which says in one line what the view says in several or elsewhere.
    OnPaper,
}

impl Step {
    /// Whether it is shown in the Fit view.
    pub fn is_on_screen(&self) -> bool {
        self.shown != Shown::OnPaper
    }

    /// Whether it is work to tick; what is said first is a notice, done only at the end of the list.
    pub fn is_ticked(&self) -> bool {
        self.id != JAM_NUTS_FIRST
    }

    /// Whether it is printed.
    pub fn is_on_paper(&self) -> bool {
        self.shown != Shown::OnScreen
    }

    fn everywhere(id: &'static str, words: Said) -> Self {
        Self { id, words, why: None, last_and_first: false, shown: Shown::Everywhere }
    }

    fn on_screen(id: &'static str, words: Said) -> Self {
        Self { shown: Shown::OnScreen, ..Self::everywhere(id, words) }
    }

    fn on_paper(id: &'static str, words: Said) -> Self {
        Self { shown: Shown::OnPaper, ..Self::everywhere(id, words) }
    }

    fn because(self, why: Said) -> Self {
        Self { why: Some(why), ..self }
    }
}

/// The id of the one line that stands in place of all steps where a link fails.
pub const DO_NOT_FIT: &str = "do-not-fit";

/// The id of what is said first: both jam nuts.
pub const JAM_NUTS_FIRST: &str = "jam-nuts-first";
/// The id of what is done last: both jam nuts.
pub const JAM_NUTS_LAST: &str = "jam-nuts-last";

/// Clearance to a tire (common practice, no source).
pub const TIRE_CLEARANCE: f64 = inch(1.0);

/// The steps of fitting a link.
pub fn steps(document: &Document, index: usize, answer: &Answer) -> Vec<Step> {
    // Nobody should be led through fitting a link that does not hold.
    if answer.verdict == Verdict::Fails {
        let words = said!["Do not fit this link: a part of it fails above. Change the size or the entries first."];
        return vec![Step::everywhere(DO_NOT_FIT, words)];
    }
    let mut steps = Vec::new();
    begin(answer, &mut steps);
    screw_in(answer, &mut steps);
    if let Some(given) = Values::new(document, index) {
        bolt::steps(&given, answer, &mut steps);
    }
    full_travel(answer, &mut steps);
    tighten(answer, &mut steps);
    closing::steps(answer, &mut steps);
    steps
}

fn begin(answer: &Answer, steps: &mut Vec<Step>) {
    let link = &answer.link;
    let [a, b] = &link.ends;
    let first = said![
        "Both jam nuts tight against the bar: nothing else holds the link at its length. You tighten them last; they are the first thing to check from then on."
    ];
    steps.push(Step { last_and_first: true, ..Step::everywhere(JAM_NUTS_FIRST, first) }.because(said![
        "A loose nut lets the thread hammer until it strips or winds out (common practice, no source)."
    ]));
    if answer.role.steers() {
        let words = said![
            "This link steers. Check that your local rules allow rod ends here; if in doubt, stop and ask a licensed engineer."
        ];
        steps.push(Step::on_screen("steering-rules", words));
    }
    if link.provisional {
        steps.push(Step::everywhere("measure-rod-ends", said!["Measure your rod ends before you saw: eye center to shank end, and thread length. Bar and cut length stand on a published series until then."]));
    }
    steps.push(Step::everywhere(
        "ride-height",
        said![
            "Rig at ride height, on its tires. Measure hole center to hole center again: ",
            (link.length, Length),
            "."
        ],
    ));
    steps.push(Step::everywhere(
        "nuts-on",
        said![
            "Jam nut on each shank first, all the way up: ",
            (a.hand.words()),
            " at end A, ",
            (b.hand.words()),
            " at end B."
        ],
    ));
}

fn ends(answer: &Answer) -> [(&'static str, &EndGeometry, usize); 2] {
    let [a, b] = &answer.link.ends;
    [("A", a, 0), ("B", b, 1)]
}

fn screw_in(answer: &Answer, steps: &mut Vec<Step>) {
    let link = &answer.link;
    steps.push(
        Step::everywhere(
            "by-hand",
            said!["Blow the chips out of both holes. Anti-seize on the shanks; each starts by hand for three or four turns."],
        )
        .because(said!["A thread that is forced in its first turns tears (common practice, no source)."]),
    );
    steps.push(Step::everywhere(
        "evenly",
        said![
            "Screw both ends in evenly until the eyes are ",
            (link.length, Length),
            " apart, center to center, and both eyes sit square to their brackets."
        ],
    ));
    for (letter, end, index) in ends(answer) {
        steps.push(Step::everywhere(
            ["ruler-a", "ruler-b"][index],
            said![
                "End ",
                (letter),
                ": ruler from eye center to bar face reads ",
                (end.eye_to_face, Length),
                ", which puts ",
                (end.engagement, FineLength),
                " of thread in the bar."
            ],
        ));
    }
    let [a, b] = ends(answer).map(|(_, end, _)| (most_showing(end), end));
    let (most, by) = if exceeds(a.0, b.0) { b } else { a };
    steps.push(
        Step::everywhere(
            "threads-showing",
            said![
                "No more than ",
                (quarters(most)),
                " threads show past either jam nut, and about as many at A as at B."
            ],
        )
        .because(said!["That limit: ", (stop_words(by.stop.by)), "."]),
    );
    steps.push(
        Step::on_screen(
            "clocking",
            said!["Bolts in by hand. Roll the bar between its stops: it must roll as far one way as the other. If not, turn one eye until it does."],
        )
        .because(said!["An eye that is not square binds on one side first, and its jam nut comes loose (common practice, no source)."]),
    );
}

/// The most threads that may show at an end, in quarters.
pub(super) fn most_showing(end: &EndGeometry) -> f64 {
    quarters_below(end.stop.visible_threads.max(end.visible_threads))
}

/// What sets the most threads that may show.
const fn stop_words(by: StopBy) -> &'static str {
    match by {
        StopBy::VisibleThreads => "three threads showing (common practice, no source)",
        StopBy::Engagement => "the least thread this link needs in its bar, under Checks and sources",
        StopBy::ShankBending => "the shank bends beyond it, under Checks and sources",
    }
}

/// Ramps and locks, before anything is tightened for good.
fn full_travel(answer: &Answer, steps: &mut Vec<Step>) {
    let mut words = said![
        "Full droop, full stuff, and one wheel up with the other down, then the other way round: neither ball binds, no head touches an ear."
    ];
    if let Some((asked, tilts)) = misalignment(answer) {
        words.extend(said![" Each rod end needs ", (asked, Angle), " of misalignment and has ", (tilts, Angle), "."]);
    }
    steps.push(
        Step::on_screen("full-travel", words)
            .because(said!["A rod end out of misalignment twists the link and loosens the jam nut at its end. Look closely: the misalignment a rod end has is mostly common practice, no source."]),
    );
    steps.push(
        Step::on_screen(
            "tire-clearance",
            said![
                "Tires clear the link by ",
                (TIRE_CLEARANCE, Length),
                " or more at full lock and full travel, both ways."
            ],
        )
        .because(said!["Some road rules forbid tire contact; the clearance is common practice, no source."]),
    );
    steps.push(Step::on_screen(
        "brake-lines",
        said!["Brake lines, wires and hoses: slack at full droop, nothing rubs, nothing is tied to the link. No other link touches it."],
    ));
    if answer.role.steers() {
        steps.push(Step::on_screen(
            "lock-to-lock",
            said!["Steering lock to lock, at ride height, full droop and full stuff: the stops stop it, never a ball or the link."],
        ));
    }
    steps.push(Step::on_paper(
        "nothing-touches",
        said!["Nothing touches a tire, a brake line or the other links, at full lock and full travel both ways."],
    ));
}

/// What each ball is asked for and what the one that runs out first may lean, where that was worked out.
pub fn misalignment(answer: &Answer) -> Option<(f64, f64)> {
    let finding = answer.findings.iter().find(|finding| finding.id == "misalignment")?;
    finding.utilization?;
    finding.working.iter().rev().find_map(|line| match line {
        Line::Worked { formula, given, .. } if formula.id == "TILT_SHARE" => match given.as_slice() {
            [asked, may] => Some((*asked, *may)),
            _ => None,
        },
        _ => None,
    })
}

fn tighten(answer: &Answer, steps: &mut Vec<Step>) {
    for (letter, end, index) in ends(answer) {
        let torque = jam_torque::range(end.thread, &mut Sheet::silent());
        let step = Step::everywhere(
            ["jam-nut-a", "jam-nut-b"][index],
            said![
                "End ",
                (letter),
                ": ",
                (hold(answer)),
                " and tighten the jam nut ",
                (nut_tightens(end.hand).words()),
                ", seen from the eye, to between ",
                (torque.least, Torque),
                " and ",
                (torque.most, Torque),
                ", anti-seize on the shank."
            ],
        );
        let source = jam_nut_source(end.thread).words();
        let why = said!["Torque: ", (source), ", less 30 % with anti-seize (common practice, no source)."];
        steps.push(Step { last_and_first: true, ..step }.because(why));
    }
    steps.push(Step::everywhere(
        "witness-lines",
        said!["Paint a line across each jam nut and the bar, so that a nut that moves shows."],
    ));
}
