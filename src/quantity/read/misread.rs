//! Why something typed is not a value, said so that the next try works.

use crate::quantity::{Kind, System, unit_name};

/// Why a text could not be read. `read` and `unit` hold what was typed, cut to 24 characters.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum Misread {
    /// Nothing was typed.
    Empty {
        /// What the field takes.
        kind: Kind,
    },
    /// More was typed than any value needs.
    TooLong {
        /// What the field takes.
        kind: Kind,
    },
    /// There is no number in it, or something around the number makes no sense.
    NotANumber {
        /// What was typed.
        read: String,
        /// What the field takes.
        kind: Kind,
    },
    /// Two numbers where one is wanted.
    TwoNumbers {
        /// What was typed.
        read: String,
        /// What the field takes.
        kind: Kind,
    },
    /// Feet followed by a foot or more of inches.
    TooManyInches {
        /// What was typed.
        read: String,
    },
    /// A fraction with nothing but zeros below its line.
    DivisionByZero {
        /// What was typed.
        read: String,
    },
    /// `11/2`, which may be 1 1/2 typed without its space.
    MissingSpace {
        /// What was typed.
        read: String,
    },
    /// A word after the number that is no unit known here.
    UnknownUnit {
        /// The word.
        unit: String,
        /// What the field takes.
        kind: Kind,
    },
    /// `ton`, which is three different weights.
    AmbiguousUnit {
        /// The word.
        unit: String,
    },
    /// A unit of something else.
    WrongUnit {
        /// What was typed.
        read: String,
        /// What the unit measures, with its article: "a weight".
        noun: &'static str,
        /// What the field takes.
        kind: Kind,
    },
}

impl Misread {
    /// A short sentence that says what was read and what would work.
    pub fn sentence(&self) -> String {
        match self {
            Self::Empty { kind } => format!("Nothing is typed here; this field takes {}.", takes(*kind)),
            Self::TooManyInches { read } => {
                format!(
                    "In “{read}” a foot or more of inches follows the feet. Type it all in inches, or count the feet again."
                )
            }
            Self::TooLong { kind } => format!("That is too long to be one number; this field takes {}.", takes(*kind)),
            Self::NotANumber { read, kind } => {
                format!("“{read}” does not read as a number; this field takes {}.", takes(*kind))
            }
            Self::TwoNumbers { read, kind } => {
                format!("“{read}” is more than one number; this field takes {}.", takes(*kind))
            }
            Self::DivisionByZero { read } => {
                format!("“{read}” divides by zero; the bottom of a fraction is a number such as 2, 16 or 32.")
            }
            Self::MissingSpace { read } => {
                format!("“{read}” may lack a space; write it as in 36 1/2, or as a decimal.")
            }
            Self::UnknownUnit { unit, kind } => {
                format!("“{unit}” is not a unit known here; this field takes {}.", takes(*kind))
            }
            Self::AmbiguousUnit { unit } => {
                format!("A “{unit}” can be 2,000 lb, 2,240 lb or 1,000 kg; write the weight in lb or kg.")
            }
            Self::WrongUnit { read, noun, kind } => {
                format!("“{read}” is {noun}; this field takes {}.", takes(*kind))
            }
        }
    }
}

/// What a field of this kind takes, with examples that read.
fn takes(kind: Kind) -> String {
    let fixed = match kind {
        Kind::Length => "a length such as 36 1/2, 3' 0 1/2\" or 927 mm",
        Kind::FineLength | Kind::InInches | Kind::InMillimeters | Kind::InMicrometers => {
            "a length such as 0.015 in, 1/64 or 0.4 mm"
        }
        Kind::Weight => "a weight such as 4,200 lb or 1,905 kg",
        Kind::Force => "a force such as 5,400 lbf or 24 kN",
        Kind::Stress => "a stress such as 66 ksi or 455 MPa",
        Kind::Pressure => "a pressure such as 1,500 psi, 103 bar or 10.3 MPa",
        Kind::Angle => "an angle in degrees such as 12.5",
        Kind::Torque => "a torque such as 120 lbf·ft or 163 N·m",
        Kind::Moment => "a moment such as 5,000 lbf·in or 565 N·m",
        Kind::Stiffness | Kind::ForcePerLength => "a number such as 500 lbf/in or 88 N/mm",
        Kind::Compliance => "a number such as 0.25 in per 1,000 lbf or 1.4 mm/kN",
        Kind::Percent => "a percentage such as 60 or 60 %",
        Kind::Ratio => "a plain number such as 1.5",
        Kind::Count => "a plain number such as 2",
        Kind::Turns => "a number of turns such as 2 1/4",
        other => {
            return format!("a number in {} or {}", unit_name(other, System::Inch), unit_name(other, System::Metric));
        }
    };
    fixed.to_string()
}

/// What was typed, safe to show in a sentence: at most 24 characters and nothing that turns or breaks it.
pub(super) fn echo(typed: &str) -> String {
    const MOST: usize = 24;
    let shown = |c: &char| !c.is_control() && !super::text::is_invisible(*c);
    let mut characters = typed.trim().chars().filter(shown);
    let mut text: String = characters.by_ref().take(MOST).collect();
    if characters.next().is_some() {
        text.pop();
        text.push('…');
    }
    text
}
