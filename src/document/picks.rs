//! What may be picked: use, role, place, hand, steel, bolt and stock.

/// How hard the rig is used.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Use {
    /// Graded tracks and easy trails.
    Easy,
    /// Slow work over rocks.
    Slow,
    /// Driven hard over rough ground.
    Hard,
    /// Raced, bounced or jumped.
    Punished,
}

/// What a link locates.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default)]
pub enum Role {
    /// Below the axle's center, where rocks are.
    #[default]
    Lower,
    /// Above the axle.
    Upper,
    /// Across the rig: keeps the axle from going sideways.
    TrackBar,
    /// From knuckle to knuckle.
    TieRod,
    /// From the steering box to the knuckle.
    DragLink,
    /// From the sway bar's end to the axle.
    SwayLink,
}

impl Role {
    /// Whether wheels would no longer go where they are pointed if it broke.
    pub const fn steers(self) -> bool {
        matches!(self, Self::TieRod | Self::DragLink)
    }

    /// Whether it runs along the rig and holds the axle against drive and brakes.
    pub const fn drives(self) -> bool {
        matches!(self, Self::Lower | Self::Upper)
    }
}

/// At which axle.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default)]
pub enum Position {
    /// The axle that steers.
    #[default]
    Front,
    /// The other one.
    Rear,
}

impl Position {
    /// Both, front first.
    pub const ALL: [Self; 2] = [Self::Front, Self::Rear];

    /// Its place in [`Rig::axles`].
    pub const fn index(self) -> usize {
        match self {
            Self::Front => 0,
            Self::Rear => 1,
        }
    }

    /// `front` or `rear`.
    pub const fn word(self) -> &'static str {
        match self {
            Self::Front => "front",
            Self::Rear => "rear",
        }
    }
}

/// Where across the rig, as somebody in the driver's seat sees it.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Side {
    /// One on each side, alike: entered once.
    Both,
    /// On the left.
    Left,
    /// On the right.
    Right,
    /// A single one, in the middle or from side to side.
    Middle,
}

/// Whether an axle has a track bar.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum TrackBar {
    /// It has one.
    Fitted,
    /// It has none: its upper links hold it sideways.
    Absent,
    /// Nobody has said.
    Unknown,
}

/// What turns the steering.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum SteeringBox {
    /// A box with hydraulic assist.
    Power,
    /// A rack, or a box without assist.
    Unassisted,
}

/// On which side of its axle a tie rod runs.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum TieRodSide {
    /// Ahead of it, where rocks come first.
    Ahead,
    /// Behind it.
    Behind,
}

/// How the rate of a sway bar was measured.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum SwayMeasured {
    /// Both arms moved, in opposite directions.
    BothArms,
    /// One arm moved, the other held.
    OneArm,
}

/// Which way a thread is cut.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Hand {
    /// Tightens clockwise.
    Right,
    /// Tightens counterclockwise.
    Left,
}

impl Hand {
    /// The hand in full.
    pub const fn words(self) -> &'static str {
        match self {
            Self::Right => "right-hand",
            Self::Left => "left-hand",
        }
    }
}

/// What is known of the steel of a rod end's shank.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum ShankSteel {
    /// Heat-treated alloy: stamped, or on its maker's sheet.
    Alloy,
    /// Not known, or low-carbon.
    NotKnown,
}

/// What stands between ball and ears.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default)]
pub enum Spacers {
    /// Bored for a bolt as large as the eye's bore.
    #[default]
    Plain,
    /// Reach into the ball and step the bolt down, so that the ball tilts further.
    HighMisalignment,
}

/// Thread of the bolt through an eye.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default)]
pub enum BoltSeries {
    /// UNF, or a fine metric pitch.
    #[default]
    Fine,
    /// UNC, or the coarse metric pitch.
    Coarse,
}

/// Which sizes of bar are sold where the link is made.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Stock {
    /// By the fraction of an inch.
    Inch,
    /// By the millimeter.
    Metric,
}

impl BoltSeries {
    /// As a parts list says it.
    pub const fn words(self) -> &'static str {
        match self {
            Self::Fine => "fine thread",
            Self::Coarse => "coarse thread",
        }
    }
}

/// How a bar is finished.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default)]
pub enum Finish {
    /// As it leaves the lathe or the mill.
    #[default]
    AsTurned,
    /// Polished.
    Polished,
    /// Anodized after the threads were cut.
    Anodized,
}

/// Who brings a rod end.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum SuppliedBy {
    /// The shop.
    Shop,
    /// The customer: its sizes are theirs to measure.
    Customer,
    /// Nobody has said.
    NotKnown,
}

/// What the length that was given was measured on.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum MeasuredOn {
    /// The rig, hole center to hole center, at ride height.
    Rig,
    /// The old link, eye center to eye center.
    OldLink,
    /// Nobody has said.
    NotKnown,
}
