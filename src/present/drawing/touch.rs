//! What a touch on a drawing means.

/// What was touched.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
pub enum Touch {
    /// A part of a link, by its name.
    Part(&'static str),
    /// A link of the rig, by its place in the document.
    Link(usize),
    /// A metal, by its id.
    Metal(&'static str),
}

/// The eye of a link, which no report lists among the parts along it.
pub(super) const EYE: &str = "eye";

/// The check that judges each part of a link.
const CHECKS: [(&str, &str); 8] = [
    (EYE, "eye"),
    ("shank at end A", "shank-bending"),
    ("shank at end B", "shank-bending"),
    ("bar at the threaded hole", "tapped-end"),
    ("wrench flats", "wrench-flats"),
    ("plain bar", "bar-bending"),
    ("tube", "bar-bending"),
    ("tube beside its weld", "tapped-end"),
];

/// The id of the check that judges a part of a link.
pub fn check_of(part: &str) -> Option<&'static str> {
    CHECKS.iter().find(|(name, _)| *name == part).map(|(_, check)| *check)
}
