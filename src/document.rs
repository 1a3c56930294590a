//! What the user decides, and nothing else: plain data in SI, `None` where the default stands.

mod day;
mod history;
mod order;
mod picks;
mod piece;

pub use day::*;
pub use history::*;
pub use order::*;
pub use picks::*;
pub use piece::*;

/// A rig and its links.
#[derive(Debug, Clone, PartialEq)]
pub struct Document {
    /// What its owner calls it; empty when it has no name. See [`tidy_name`].
    pub name: String,
    /// What is known about the whole rig; in a box, so that what holds a document is small.
    pub rig: Box<Rig>,
    /// The links, at least one.
    pub links: Vec<Link>,
    /// What an order says beside all that; no number of any report rests on it. In a box for the same reason.
    pub order: Box<Order>,
}

impl Default for Document {
    fn default() -> Self {
        Self { name: String::new(), rig: Box::default(), links: vec![Link::default()], order: Box::default() }
    }
}

/// The longest name, in characters.
pub const LONGEST_NAME: usize = 60;

/// More links than any rig has; a larger count is a mistake or an attack.
pub const MOST_LINKS: usize = 40;

/// A name as it is kept: one line, no spaces around it, at most [`LONGEST_NAME`] characters.
pub fn tidy_name(name: &str) -> String {
    // Joiners shape letters within a word; alone they are nothing.
    let joiners = |c: char| matches!(c, '\u{200c}' | '\u{200d}');
    let name = one_line(name, LONGEST_NAME);
    if name.chars().all(|c| joiners(c) || c == ' ') { String::new() } else { name }
}

/// Words on one line, without marks that hide or turn the reading direction, cut to a number of letters.
pub fn one_line(words: &str, longest: usize) -> String {
    let seen = words.chars().filter(|c| !is_unseen(*c));
    let line: String = seen.map(|c| if c.is_control() { ' ' } else { c }).collect();
    let words: Vec<&str> = line.split_whitespace().collect();
    words.join(" ").chars().take(longest).collect::<String>().trim_end().to_string()
}

/// Marks that show nothing but turn the reading direction or hide in a name.
const fn is_unseen(c: char) -> bool {
    matches!(
        c,
        '\u{ad}' | '\u{61c}' | '\u{115f}' | '\u{1160}' | '\u{17b4}' | '\u{17b5}' | '\u{180e}' | '\u{200b}'
            | '\u{200e}' | '\u{200f}' | '\u{202a}'..='\u{202e}' | '\u{2060}'..='\u{206f}' | '\u{2800}' | '\u{3164}'
            | '\u{feff}' | '\u{ffa0}'
    )
}

/// The whole rig. Every number is SI; weights are forces in newtons.
#[derive(Debug, Clone, PartialEq, Default)]
pub struct Rig {
    /// Weight as driven, with people, fuel and gear.
    pub weight: Option<f64>,
    /// How it is used.
    pub usage: Option<Use>,
    /// Tire diameter.
    pub tire: Option<f64>,
    /// Grip between tire and ground.
    pub traction: Option<f64>,
    /// Share of the weight on the front axle, standing level.
    pub front_share: Option<f64>,
    /// From axle to axle.
    pub wheelbase: Option<f64>,
    /// The front axle and the rear one.
    pub axles: [Axle; 2],
    /// What shock multiplies traction by.
    pub shock: Option<f64>,
    /// Share of the rig's weight that comes down on a lower link.
    pub strike_share: Option<f64>,
    /// How far it falls before it lands.
    pub drop: Option<f64>,
    /// How far tires, springs and frame deflect under the rig's whole weight.
    pub rest_deflection: Option<f64>,
    /// The same as earlier versions asked for it: the deflection under 1,000 lbf.
    pub give: Option<f64>,
    /// Distance from each eye, as a share of the length, where a strike may first fall.
    pub strike_zone: Option<f64>,
    /// Share of the force along the link that acts at the moment of a strike.
    pub axial_share_with_strike: Option<f64>,
    /// What an upper link takes of a lower link's strike.
    pub upper_strike: Option<f64>,
    /// Middle of one tire to middle of the other on an axle.
    pub track: Option<f64>,
    /// From the steering axis to the tie rod's hole on the knuckle.
    pub steering_arm: Option<f64>,
    /// From the steering axis to the middle of the tire, on the ground.
    pub scrub: Option<f64>,
    /// Across the tire's print on the ground.
    pub patch: Option<f64>,
    /// Bore of a hydraulic assist cylinder.
    pub cylinder_bore: Option<f64>,
    /// Rod of that cylinder, where it leaves at both ends.
    pub cylinder_rod: Option<f64>,
    /// Its greatest pressure.
    pub cylinder_pressure: Option<f64>,
    /// What turns the steering.
    pub steering_box: Option<SteeringBox>,
    /// What the steering box pushes with at its arm.
    pub box_force: Option<f64>,
    /// Stiffness of the sway bar at its end: force over travel.
    pub sway_rate: Option<f64>,
    /// How that was measured.
    pub sway_measured: Option<SwayMeasured>,
    /// Factor on first yield.
    pub yield_factor: Option<f64>,
    /// Factor on breaking and stripping.
    pub ultimate_factor: Option<f64>,
    /// Factor on buckling.
    pub column_factor: Option<f64>,
    /// Factor on a maker's static rating.
    pub rating_factor: Option<f64>,
}

/// One axle of the rig.
#[derive(Debug, Clone, PartialEq, Default)]
pub struct Axle {
    /// Share of the rig's weight on it at the worst moment.
    pub share: Option<f64>,
    /// Height of the lower links' mounts on it above the ground.
    pub lower_height: Option<f64>,
    /// Height of the upper links' mounts on it above the ground.
    pub upper_height: Option<f64>,
    /// How far each of its wheels goes from ride height, one up and the other down.
    pub flex: Option<f64>,
    /// Whether it has a track bar.
    pub track_bar: Option<TrackBar>,
    /// How far to one side of the middle its grip acts.
    pub grip_offset: Option<f64>,
    /// Distance between its lower links.
    pub lower_spread: Option<f64>,
}

/// One link, or several alike.
#[derive(Debug, Clone, PartialEq, Default)]
pub struct Link {
    /// What it locates.
    pub role: Role,
    /// At which axle.
    pub position: Position,
    /// Whether somebody said that it is a lower link, which it is taken as otherwise.
    pub role_said: bool,
    /// Whether somebody said that it is at the front axle, where it is taken to be otherwise.
    pub position_said: bool,
    /// Where across the rig.
    pub seat: Option<Side>,
    /// Pieces to make of it.
    pub quantity: Option<f64>,
    /// Hole center to hole center on the rig, at ride height.
    pub length: Option<f64>,
    /// Links that share the load at this place.
    pub count: Option<f64>,
    /// Angle to straight ahead, seen from above.
    pub plan_angle: Option<f64>,
    /// How much more than an even share one link may take.
    pub uneven: Option<f64>,
    /// Slope of a bar that runs across the rig, seen from the front.
    pub slope: Option<f64>,
    /// On which side of the axle a tie rod runs.
    pub tie_rod_side: Option<TieRodSide>,
    /// How far a bent bar lies off the straight line between its eyes.
    pub bend_offset: Option<f64>,
    /// Bow of a bar sold as straight, as a share of its length.
    pub bow: Option<f64>,
    /// Push or pull along the link, replacing the computed one.
    pub own_axial: Option<f64>,
    /// Strike on the bar, replacing the computed one.
    pub own_strike: Option<f64>,
    /// Id of a row in the materials table.
    pub material: Option<&'static str>,
    /// Outside diameter of the bar or tube.
    pub outside_diameter: Option<f64>,
    /// Wall of the tube; no meaning for a bar.
    pub wall: Option<f64>,
    /// Which table of rod ends to choose from.
    pub family: Option<&'static str>,
    /// Ultimate strength of the rod-end shank.
    pub shank_ultimate: Option<f64>,
    /// Yield strength of the rod-end shank.
    pub shank_yield: Option<f64>,
    /// The shear strength of the threaded insert welded into a tube.
    pub insert_shear: Option<f64>,
    /// How thick the flanges of its shouldered bungs are.
    pub bung_flange: Option<f64>,
    /// Whether its inserts are held by rosette welds too, through holes in the tube.
    pub rosette_welds: bool,
    /// Factor on stripping of threads.
    pub thread_factor: Option<f64>,
    /// Threads at the end of a shank that its lead chamfer takes.
    pub lead_threads: Option<f64>,
    /// How much wider than its thread a hole is countersunk.
    pub countersink: Option<f64>,
    /// Whether a hardened tube is hardened again after its inserts are welded in.
    pub hardened_after_welding: bool,
    /// Visible threads wanted at each end as first set.
    pub visible_threads: Option<f64>,
    /// Step to which the bar length is rounded.
    pub rounding: Option<f64>,
    /// Allowance for facing each end of the blank.
    pub facing: Option<f64>,
    /// Width across the wrench flats.
    pub flats_width: Option<f64>,
    /// Length of the wrench flats.
    pub flats_length: Option<f64>,
    /// Distance from the face at end A to where the flats begin.
    pub flats_start: Option<f64>,
    /// Id of the bolt grade.
    pub bolt: Option<&'static str>,
    /// Thickness of each bracket ear.
    pub ear: Option<f64>,
    /// Spacer on each side of the ball.
    pub spacer: Option<f64>,
    /// What kind of spacer that is.
    pub spacer_kind: Option<Spacers>,
    /// Room between the stack and the ears that nothing fills, on each side.
    pub gap: Option<f64>,
    /// Thread of the bolts.
    pub bolt_series: Option<BoltSeries>,
    /// Whether bars of inch or of metric sizes are chosen from.
    pub stock: Option<Stock>,
    /// What is turned off the whole bar, across its diameter.
    pub skim: Option<f64>,
    /// How it is finished.
    pub finish: Option<Finish>,
    /// What its length was measured on.
    pub measured_on: Option<MeasuredOn>,
    /// The pieces of it that were made, as they were measured.
    pub made: Vec<Piece>,
    /// Left end and right end as drawn.
    pub ends: [End; 2],
}

impl Link {
    /// Where across the rig it is: as decided, else as links of its role usually are.
    pub fn seated(&self) -> Side {
        let usual = match self.role {
            Role::Lower | Role::Upper | Role::SwayLink => Side::Both,
            Role::TrackBar | Role::TieRod | Role::DragLink => Side::Middle,
        };
        self.seat.unwrap_or(usual)
    }

    /// Which link of the rig it is: `Left front lower link`.
    pub fn title(&self) -> String {
        let (seat, many) = match self.seated() {
            Side::Both => ("", "s"),
            Side::Left => ("left ", ""),
            Side::Right => ("right ", ""),
            Side::Middle => ("", ""),
        };
        let role = match self.role {
            Role::Lower => "lower link",
            Role::Upper => "upper link",
            Role::TrackBar => "track bar",
            Role::TieRod => "tie rod",
            Role::DragLink => "drag link",
            Role::SwayLink => "sway-bar end link",
        };
        let mut words = format!("{seat}{} {role}{many}", self.position.word());
        if let Some(first) = words.get_mut(..1) {
            first.make_ascii_uppercase();
        }
        words
    }
}

/// One end of a link.
#[derive(Debug, Clone, PartialEq, Default)]
pub struct End {
    /// Id of a row in the rod-end table, or [`OWN_ROD_END`].
    pub rod_end: Option<&'static str>,
    /// Which way its thread is cut.
    pub hand: Option<Hand>,
    /// What its shank is made of.
    pub shank_steel: Option<ShankSteel>,
    /// Who brings it.
    pub supplied_by: Option<SuppliedBy>,
    /// Id of what is welded into a tube at this end.
    pub insert: Option<&'static str>,
    /// Depth of full thread in the bar.
    pub tapped_depth: Option<f64>,
    /// Least engagement the user insists on.
    pub least_engagement: Option<f64>,
    /// The maker's static radial rating.
    pub rating: Option<f64>,
    /// How far its ball tilts each way in its bracket.
    pub tilt: Option<f64>,
    /// Diameter of the bolt through its eye.
    pub bolt_diameter: Option<f64>,
    /// Diameter of the spacer's face on the ear.
    pub spacer_foot: Option<f64>,
    /// Thread of the user's own rod end.
    pub own_thread: Option<&'static str>,
    /// Eye center to shank end of the user's own rod end.
    pub own_eye_to_end: Option<f64>,
    /// Thread length of the user's own rod end.
    pub own_thread_length: Option<f64>,
    /// Bore of the user's own rod end.
    pub own_bore: Option<f64>,
    /// Ball width of the user's own rod end.
    pub own_ball_width: Option<f64>,
    /// Head diameter of the user's own rod end.
    pub own_head_diameter: Option<f64>,
    /// Head thickness of the user's own rod end.
    pub own_head_thickness: Option<f64>,
    /// Hole in the head of the user's own rod end, which holds the race.
    pub own_race_bore: Option<f64>,
}

/// The id that stands for a rod end which the user measured.
pub const OWN_ROD_END: &str = "mine";
