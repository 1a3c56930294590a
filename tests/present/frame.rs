//! What stands around every view, as whole sentences.

use linkwright::present::frame::{earlier_entries, log_not_stored, not_stored, other_tab};
use linkwright::present::sending::handed_on;
use linkwright::present::waiting::Part;
use linkwright::store::Refused;

#[test]
fn the_notices_are_whole_sentences() {
    let blocked = "This browser keeps nothing for this page, as in a private window. You can go on: your entries are in the address above. To keep them, copy the link, or export a file from Saved.";
    let cases = [
        (earlier_entries(true).to_string(), "This came by a link. Your own earlier entries are kept, in the bin too."),
        (earlier_entries(false).to_string(), "Your own earlier entries are kept, in the bin too."),
        (
            other_tab("Rig of 4,200 lb, driven slowly"),
            "Another tab has something else open: Rig of 4,200 lb, driven slowly. This tab keeps its own entries.",
        ),
        (not_stored(Refused::Blocked), blocked),
    ];
    for (sentence, wanted) in cases {
        assert_eq!(sentence, wanted);
    }
    for why in [Refused::Blocked, Refused::Full] {
        let says = log_not_stored(why);
        assert!(!says.contains("address") && says.ends_with("export the build as a file now."), "{says}");
    }
    assert!(not_stored(Refused::Full).starts_with("The space this browser gives to the page is full"));
}

#[test]
fn what_is_handed_on_says_when_an_entry_is_not_in_there() {
    assert_eq!(handed_on("Handed over.", false), "Handed over.");
    let stale = "Handed over. One of your entries is not taken yet: in its place stands the last good one.";
    assert_eq!(handed_on("Handed over.", true), stale);
}

/// No answer is taken back because a part of the page did not come, and each part is named in all three sentences.
#[test]
fn a_part_that_is_not_here_is_named_and_the_answer_stays_valid() {
    for part in [Part::Below, Part::Prove, Part::Rig, Part::Saved] {
        let (name, _) = part.on_its_way().split_once(" is on its way").expect("a part on its way");
        assert!(part.missing().starts_with(name) && part.not_printed().starts_with(name), "{part:?}");
        assert!(part.missing().ends_with("is valid without it."), "{part:?}");
    }
}
