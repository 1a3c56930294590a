//! The link as a whole: whether both ends are alike, where its stops are, whether its bar is the right one.

use super::{About, AsFitted, COUNT, EndAsFitted, OrderBar, Readings, Remark, Standing, TAPE, UNEVEN, bar_for, settle};
use crate::engine::fitting::hands::eye_unscrews;
use crate::engine::fitting::threads;
use crate::engine::fitting::turn::half_turns;
use crate::engine::formula::{Line, Sheet};
use crate::engine::formulas::lengths;
use crate::engine::sentence::{Said, said};
use crate::quantity::exceeds;
use crate::report::LinkGeometry;

/// Readings that make up a bar's length, each of which a tape may be off by.
const TAPES: f64 = 3.0;

/// The verdict on the whole link, from both ends.
pub(super) fn whole(link: &LinkGeometry, readings: &Readings, ends: [EndAsFitted; 2], mut sheet: Sheet) -> AsFitted {
    let mut remarks = Vec::new();
    let mut add = |standing, about, says| remarks.push(Remark { standing, about, says });
    sheet.choose(|| {
        said![
            "A tape is taken to be off by up to ",
            (TAPE, FineLength),
            " and a count by up to ",
            (threads(COUNT)),
            ": assumptions. Jam nuts are taken as thick as their standard allows."
        ]
    });
    if readings.unreadable {
        add(Standing::NotJudged, About::Reading, said!["A reading cannot be read: type it again."]);
    }
    if !link.adjustment.opposite_hands {
        add(
            Standing::Watch,
            About::Hands,
            said![
                "Both ends have the same hand: turning the bar winds one out while the other goes in, and one end can unscrew without anybody noticing. Look at both nuts before every drive."
            ],
        );
    }
    let faces = [ends[0].eye_to_face, ends[1].eye_to_face];
    let both = faces[0].zip(faces[1]);
    if let Some((a, b)) = ends[0].visible_threads.zip(ends[1].visible_threads)
        && exceeds((a - b).abs(), UNEVEN)
    {
        add(Standing::Watch, About::Evenness, how_to_even(link, [a, b]));
    }
    let bar = readings.eye_to_eye.zip(both).map(|(length, (a, b))| sheet.work(&lengths::BAR_LENGTH, &[length, a, b]));
    if let Some(bar) = bar
        && exceeds((bar - link.bar).abs(), TAPES * TAPE)
    {
        add(
            Standing::NotJudged,
            About::Bar,
            said![
                "This is not the bar of this build, or a reading is off: eye to eye less both ends leaves a bar of ",
                (bar, Length),
                ", and the build has ",
                (link.bar, Length),
                ". Measure face to face; if it differs, enter the link as it is, for its holes may differ too."
            ],
        );
    }
    let length = readings.eye_to_eye.or_else(|| both.map(|(a, b)| sheet.work(&lengths::EYE_TO_EYE, &[link.bar, a, b])));
    let stops = length.and_then(|length| stops(link, &ends, length));
    // Where an end is past its stop on one side and the other on the other, turning the bar has no range.
    let stops = stops.filter(|[shorter, longer]| !exceeds(*shorter, *longer));
    if stops.is_none() && ends.iter().all(|end| end.inserted.is_some()) {
        let says = said![
            "No safe range by turning the bar: one end is past its stop. Wind that end back by its own eye first, with its bolt out."
        ];
        add(Standing::Watch, About::Stop, says);
    }
    let contradicted = |remark: &Remark| remark.standing == Standing::NotJudged && remark.about == About::Reading;
    // No bar is named by readings that cannot be true together, nor by an end that is not in the bar at all.
    let trusted = !readings.unreadable
        && bar.is_none_or(|bar| !exceeds((bar - link.bar).abs(), TAPES * TAPE))
        && !ends.iter().flat_map(|end| &end.remarks).any(contradicted);
    let wanted = length.filter(|_| trusted).and_then(|length| order(link, &ends, length, &mut add, &mut sheet));
    let order = wanted.map(|(order, _)| order);
    let back_to = wanted.filter(|(_, reaches)| *reaches).map(|_| link.length);
    let whole = settle(&mut remarks);
    let standing = ends.iter().map(|end| end.standing).fold(whole, Standing::max);
    let unjudged =
        ends.iter().flat_map(|end| &end.remarks).chain(&remarks).any(|remark| remark.standing == Standing::NotJudged);
    // A formula that was used where it does not hold is no judgement.
    let out_of_range = sheet.out_of_range.take();
    if let Some(says) = out_of_range.clone() {
        remarks.push(Remark { standing: Standing::NotJudged, about: About::Reading, says });
    }
    let standing = if out_of_range.is_some() { standing.max(Standing::NotJudged) } else { standing };
    let working: Vec<Line> = std::mem::take(&mut sheet.lines);
    let unjudged = unjudged || out_of_range.is_some();
    AsFitted { standing, unjudged, ends, remarks, length, stops, bar, order, back_to, working }
}

/// What brings both ends to the same count again without changing the length.
fn how_to_even(link: &LinkGeometry, visible: [f64; 2]) -> Said {
    let more = usize::from(visible[1] > visible[0]);
    let [letter, other] = if more == 0 { ["A", "B"] } else { ["B", "A"] };
    let apart = (visible[0] - visible[1]).abs();
    if !link.adjustment.opposite_hands {
        return said![
            "End ",
            (letter),
            " shows ",
            (threads(apart)),
            " more than ",
            (other),
            ". With ends of one hand, turn the bar so that ",
            (letter),
            " goes in; ",
            (other),
            " comes out by as much."
        ];
    }
    // Each half turn of the eye takes half a thread from that end; the bar then gives the length back.
    let half = (apart * 2.0).round().clamp(1.0, 1000.0) as u32;
    let inward = eye_unscrews(link.ends[more].hand).opposite();
    said![
        "End ",
        (letter),
        " shows ",
        (threads(apart)),
        " more than ",
        (other),
        ". To even them: support the axle, unbolt the eye at ",
        (letter),
        ", loosen its nut, turn that eye ",
        (half_turns(half)),
        " ",
        (inward.words()),
        ", seen from it, bolt it up, and turn the bar back to length."
    ]
}

/// Eye to eye at the shorter and the longer stop, from where both ends are now: also where one is passed already.
fn stops(link: &LinkGeometry, ends: &[EndAsFitted; 2], length: f64) -> Option<[f64; 2]> {
    let (a, b) = ends[0].inserted.zip(ends[1].inserted)?;
    let inserted = [a, b];
    let out = [0, 1].map(|end| inserted[end] - link.ends[end].stop.inserted);
    let inward = [0, 1].map(|end| link.ends[end].most + link.ends[end].not_full - inserted[end]);
    if !link.adjustment.opposite_hands {
        return Some([length - inward[0] - inward[1], length + out[0] + out[1]]);
    }
    // Turning the bar moves both ends, and the one with less room stops it.
    let pitches = link.ends.each_ref().map(|end| end.thread.pitch);
    let turns = |room: [f64; 2]| (room[0] / pitches[0]).min(room[1] / pitches[1]);
    let per_turn = pitches[0] + pitches[1];
    Some([length - turns(inward) * per_turn, length + turns(out) * per_turn])
}

/// Whether the bar itself is too short or too long for the length it is set to: then evening the ends does not help. With
/// whether it reaches the length of the build.
fn order(
    link: &LinkGeometry,
    ends: &[EndAsFitted; 2],
    length: f64,
    add: &mut impl FnMut(Standing, About, Said),
    sheet: &mut Sheet,
) -> Option<(OrderBar, bool)> {
    let (a, b) = ends[0].inserted.zip(ends[1].inserted)?;
    let in_bar = a + b;
    let [least, most] = [
        link.ends.iter().map(|end| end.stop.inserted).sum::<f64>(),
        link.ends.iter().map(|end| end.most + end.not_full).sum::<f64>(),
    ];
    let word = if exceeds(least, in_bar) {
        "too short"
    } else if exceeds(in_bar, most) {
        "too long"
    } else {
        return None;
    };
    match bar_for(link, length, sheet) {
        Ok(order) => {
            // What is wrong with the ends stands with the ends; this is what helps.
            let says = too(word, &order);
            // The same bar may reach the length that the build has.
            let in_bar_there = in_bar + length - link.length;
            if !exceeds(least, in_bar_there) && !exceeds(in_bar_there, most) {
                let mut back = said![
                    "This bar reaches the ",
                    (link.length, Length),
                    " of this build: set both ends alike and turn it back. If you want the length it has now: "
                ];
                back.extend(says);
                add(Standing::Watch, About::Bar, back);
                return Some((order, true));
            }
            add(Standing::Watch, About::Bar, says);
            Some((order, false))
        }
        Err(why) => {
            add(Standing::Watch, About::Bar, why);
            None
        }
    }
}

/// `This bar is too short: order one of 33-1/8 in.`
pub(in crate::engine::fitting) fn too(word: &'static str, order: &OrderBar) -> Said {
    said![
        "This bar is ",
        (word),
        " for ",
        (order.length, Length),
        " eye to eye: order one of ",
        (order.bar, Length),
        ".",
        (if order.provisional {
            " Measure the rod ends before you order: their series stands in for them."
        } else {
            ""
        })
    ]
}
