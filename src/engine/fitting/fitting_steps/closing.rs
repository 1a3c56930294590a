//! The end of the list, and how far somebody got in it.

use super::{DO_NOT_FIT, JAM_NUTS_LAST, Step};
use crate::engine::fitting::Standing;
use crate::engine::sentence::{Said, said};
use crate::report::Answer;

pub(super) fn steps(answer: &Answer, steps: &mut Vec<Step>) {
    if answer.role.steers() {
        steps.push(Step::on_screen(
            "steering-locks",
            said!["Cotter pins in, spread, and new lock nuts on every steering joint you opened; wheel straight, toe measured."],
        ));
    }
    let first_drive = said![
        "After the first drive, and before every trip: both lines still straight, both nuts tight, no more thread showing than today."
    ];
    steps.push(Step::on_paper("first-drive", first_drive));
    let last = said!["Last of all, wrench on both jam nuts once more, A and B. Neither moves. Only now drive."];
    steps.push(Step { last_and_first: true, ..Step::on_screen(JAM_NUTS_LAST, last) });
}

/// How far somebody got.
#[derive(Debug, Clone, PartialEq)]
pub struct Progress {
    /// Good only where every step is ticked; a stop where a jam nut is not.
    pub standing: Standing,
    /// Steps done.
    pub done: usize,
    /// Steps there are.
    pub of: usize,
    /// What follows.
    pub says: Said,
}

/// Sums up the steps that are shown, each ticked or not.
pub fn progress(steps: &[Step], ticked: &[bool]) -> Progress {
    let is_done = |at: usize| ticked.get(at).copied().unwrap_or(false);
    let (of, done) = (steps.len(), (0..steps.len()).filter(|at| is_done(*at)).count());
    let at = |standing, says| Progress { standing, done, of, says };
    if let [only] = steps
        && only.id == DO_NOT_FIT
    {
        return at(Standing::Stop, only.words.clone());
    }
    if of == 0 {
        return at(Standing::NotJudged, said!["There is nothing to fit yet."]);
    }
    let open = |id: &str| steps.iter().enumerate().any(|(at, step)| step.id == id && !is_done(at));
    let nuts: Vec<&str> =
        [("jam-nut-a", "A"), ("jam-nut-b", "B")].into_iter().filter(|(id, _)| open(id)).map(|(_, end)| end).collect();
    if !nuts.is_empty() {
        let says = match nuts.as_slice() {
            [one] => said!["Do not drive: the jam nut at ", (*one), " is not ticked as tight."],
            _ => said!["Do not drive: the jam nuts at A and B are not ticked as tight."],
        };
        return at(Standing::Stop, says);
    }
    if open(JAM_NUTS_LAST) {
        let says = said!["Do not drive yet: the wrench has not been on both jam nuts a last time."];
        return at(Standing::Stop, says);
    }
    if done < of {
        let says = said![((of - done).to_string()), " steps are not ticked: not judged as fitted."];
        return at(Standing::NotJudged, says);
    }
    at(Standing::Good, said!["Every step is ticked. Put it into the log, and look again after the first drive."])
}
