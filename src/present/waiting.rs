//! What stands in the place of a part of the page that is loaded later, until it is here.

/// What is loaded after the first answer.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Part {
    /// What stands below the answer in the Size view.
    Below,
    /// The Prove view.
    Prove,
    /// The Order view.
    Order,
    /// The Make view.
    Make,
    /// The Fit view.
    Fit,
    /// The Rig view.
    Rig,
    /// The Saved view.
    Saved,
}

impl Part {
    /// Said while it comes.
    pub const fn on_its_way(self) -> &'static str {
        match self {
            Self::Below => "The rest of the answer, from how far it adjusts to the fitting, is on its way …",
            Self::Prove => "The view of every check with its working is on its way …",
            Self::Order => "The view of the order is on its way …",
            Self::Make => "The view of how it is made is on its way …",
            Self::Fit => "The view of fitting and checking is on its way …",
            Self::Rig => "The view of the whole rig is on its way …",
            Self::Saved => "The view of your saved builds is on its way …",
        }
    }

    /// Said where it did not come.
    pub const fn missing(self) -> &'static str {
        match self {
            Self::Below => {
                "The rest of the answer, from how far it adjusts to the fitting, did not arrive: the connection may have broken. What stands above is valid without it."
            }
            Self::Prove => {
                "The view of every check with its working did not arrive: the connection may have broken. The answer in the Size view is valid without it."
            }
            Self::Order => {
                "The view of the order did not arrive: the connection may have broken. The answer in the Size view is valid without it."
            }
            Self::Make => {
                "The view of how it is made did not arrive: the connection may have broken. The answer in the Size view is valid without it."
            }
            Self::Fit => {
                "The view of fitting and checking did not arrive: the connection may have broken. The answer in the Size view is valid without it."
            }
            Self::Rig => {
                "The view of the whole rig did not arrive: the connection may have broken. The answer in the Size view is valid without it."
            }
            Self::Saved => {
                "The view of your saved builds did not arrive: the connection may have broken. The answer in the Size view is valid without it."
            }
        }
    }

    /// Said on paper that was printed before it came.
    pub const fn not_printed(self) -> &'static str {
        match self {
            Self::Below => {
                "The rest of the answer, from how far it adjusts to the fitting, had not arrived when this was printed. Print it again once it is on the screen."
            }
            Self::Prove => {
                "The view of every check with its working had not arrived when this was printed. Print it again once it is on the screen."
            }
            Self::Order => {
                "The view of the order had not arrived when this was printed. Print it again once it is on the screen."
            }
            Self::Make => {
                "The view of how it is made had not arrived when this was printed. Print it again once it is on the screen."
            }
            Self::Fit => {
                "The view of fitting and checking had not arrived when this was printed. Print it again once it is on the screen."
            }
            Self::Rig => {
                "The view of the whole rig had not arrived when this was printed. Print it again once it is on the screen."
            }
            Self::Saved => {
                "The view of your saved builds had not arrived when this was printed. Print it again once it is on the screen."
            }
        }
    }
}

/// Said once it takes long.
pub const SLOW: &str =
    "This takes long: the signal may be weak. If it does not come, load the page again; your entries stay.";

/// What else helps where it did not come.
pub const LOAD_AGAIN: &str = "If that does not help, load the page again. Your entries stay.";

/// In the line that stays in sight, while the open view comes.
pub const LOADING: &str = "Loading …";

/// In the line that stays in sight, where the open view did not come.
pub const NOT_LOADED: &str = "A part of the page did not arrive.";
