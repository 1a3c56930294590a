//! Bars that are turned together: both of a pair, or all that move an axle. Each goes by its own readings.

use super::{Place, Turned, Wish, turn};
use crate::engine::fitting::Standing;
use crate::engine::fitting::as_fitted::Readings;
use crate::engine::sentence::said;
use crate::report::LinkGeometry;

/// Turns every bar that a link stands for: the one that is looked at, then the other of its pair, from what was read on
/// each. One that nobody read is turned by as much as the first, and nothing of it is judged.
pub fn turn_bars(link: &LinkGeometry, bars: &[Readings], wish: Wish, place: Place) -> Vec<Turned> {
    let Some((first, others)) = bars.split_first() else { return Vec::new() };
    let turned = turn(link, first, wish, place);
    let other = |readings: &Readings| {
        if readings.tell_a_setting() {
            return turn(link, readings, wish, place);
        }
        by_as_much(turn(link, first, Wish::Longer(turned.wanted), place))
    };
    let others: Vec<Turned> = others.iter().map(other).collect();
    std::iter::once(turned).chain(others).collect()
}

/// The turn of a bar that nobody read: that of the other bar, without a word on what shows there.
fn by_as_much(turned: Turned) -> Turned {
    // Why the other is refused says nothing of this one, which is held back with it.
    let (standing, instead) = if turned.is_refused() {
        (Standing::NotJudged, None)
    } else {
        (turned.standing.max(Standing::NotJudged), turned.instead.clone())
    };
    Turned {
        standing,
        instead,
        alike: true,
        same_hand: None,
        order: None,
        open: vec![said![
            "Nothing was read on this bar: it is turned by as much as the other. What shows on it afterwards and where it stops is not judged. Read both its ends before you turn it."
        ]],
        steps: Vec::new(),
        working: Vec::new(),
        ..turned
    }
}

/// Holds every turn back where one of them is refused: one bar alone sets an axle crooked or a wheel out of line.
pub fn hold_back(turned: &mut [Turned]) {
    if !turned.iter().any(Turned::is_refused) {
        return;
    }
    for one in turned.iter_mut().filter(|one| !one.is_refused()) {
        (one.standing, one.way, one.change, one.length) = (Standing::Stop, None, 0.0, one.from.length);
        (one.tape_turns, one.half_turn, one.order) = (None, None, None);
        one.steps = Vec::new();
        if one.alike {
            one.open = vec![said!["Nothing was read on this bar."]];
        }
        one.instead = Some(said!["Do not turn this one by itself: another bar cannot take its part of the change."]);
    }
}
