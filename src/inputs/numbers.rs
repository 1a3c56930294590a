//! The rows of numbers, with range, default and how firm that default is.

use super::{At, DefaultKind, Group, Number, STEERING_BOX, Scope, TIE_ROD_SIDE, TRACK_BAR, USAGE};
use crate::document::{Document, OWN_ROD_END, Role, ShankSteel, Side, Use};
use crate::engine::tables::uses;
use crate::quantity;
use crate::quantity::{INCH, Kind, POUND_FORCE, deg, inch, ksi, lbf, lbf_in, psi};

macro_rules! accessor {
    (Rig, $field:ident) => {
        (
            |document: &Document, _: At| document.rig.$field,
            |document: &mut Document, _: At, value| document.rig.$field = value,
        )
    };
    (Axle, $field:ident) => {
        (
            |document: &Document, place: At| document.rig.axles.get(place.axle).and_then(|axle| axle.$field),
            |document: &mut Document, place: At, value| {
                if let Some(axle) = document.rig.axles.get_mut(place.axle) {
                    axle.$field = value;
                }
            },
        )
    };
    (Link, $field:ident) => {
        (
            |document: &Document, place: At| document.links.get(place.link).and_then(|link| link.$field),
            |document: &mut Document, place: At, value| {
                if let Some(link) = document.links.get_mut(place.link) {
                    link.$field = value;
                }
            },
        )
    };
    (End, $field:ident) => {
        (
            |document: &Document, place: At| {
                document.links.get(place.link).and_then(|link| link.ends.get(place.end)).and_then(|end| end.$field)
            },
            |document: &mut Document, place: At, value| {
                if let Some(end) = document.links.get_mut(place.link).and_then(|link| link.ends.get_mut(place.end)) {
                    end.$field = value;
                }
            },
        )
    };
}

macro_rules! numbers {
    ($($id:ident $key:literal $label:literal, $group:ident, $scope:ident.$field:ident: $kind:ident $least:expr => $most:expr,
        $default_kind:ident $default:expr, $help:literal;)*) => {
        $(
            #[doc = $help]
            pub static $id: Number = {
                const ACCESS: (fn(&Document, At) -> Option<f64>, fn(&mut Document, At, Option<f64>)) = accessor!($scope, $field);
                Number {
                    id: $key, label: $label, kind: Kind::$kind, least: $least, most: $most, help: $help,
                    scope: Scope::$scope, group: Group::$group, default_kind: DefaultKind::$default_kind,
                    get: ACCESS.0, set: ACCESS.1, default: $default,
                }
            };
        )*
        /// Every number input, in the order of the form.
        pub static NUMBERS: &[&Number] = &[$(&$id),*];
    };
}

/// The tire that the default mount heights belong to.
const REFERENCE_TIRE: f64 = inch(37.0);

/// Breaking strength of a heat-treated alloy shank.
const ALLOY_SHANK: f64 = ksi(150.0);
/// Yield strength of a heat-treated alloy shank.
pub const ALLOY_YIELD: f64 = YIELD_SHARE * ALLOY_SHANK;
/// Breaking and yield strength of a shank of which nothing is known: between cold-drawn 1018 and 1020.
const UNKNOWN_SHANK: [f64; 2] = [ksi(65.0), ksi(57.0)];

/// Yield strength of a rod-end shank as a share of its breaking strength, where only that is given.
const YIELD_SHARE: f64 = 0.88;

/// What is known of a shank's steel: a rod end to be bought is ordered as alloy, of one that is there nobody knows.
pub fn shank_steel(document: &Document, place: At) -> ShankSteel {
    let Some(end) = document.links.get(place.link).and_then(|link| link.ends.get(place.end)) else {
        return ShankSteel::NotKnown;
    };
    let usual = if end.rod_end == Some(OWN_ROD_END) { ShankSteel::NotKnown } else { ShankSteel::Alloy };
    end.shank_steel.unwrap_or(usual)
}

fn shank_yield(document: &Document, place: At) -> Option<f64> {
    let decided = SHANK_ULTIMATE.decided(document, place);
    match (shank_steel(document, place), decided) {
        (ShankSteel::NotKnown, None) => Some(UNKNOWN_SHANK[1]),
        _ => SHANK_ULTIMATE.value(document, place).map(|ultimate| YIELD_SHARE * ultimate),
    }
}

/// Whether nothing else holds the axle or the wheels when a link of this role breaks.
pub const fn has_no_second_path(role: Role) -> bool {
    role.steers() || matches!(role, Role::TrackBar)
}

/// The deflection of the rest under the rig's weight, from what earlier versions asked for.
fn former_rest_deflection(document: &Document) -> Option<f64> {
    Some(document.rig.give? * WEIGHT.value(document, At::default())? / lbf(1000.0))
}

fn steers(document: &Document, place: At) -> bool {
    document.links.get(place.link).is_some_and(|link| link.role.steers())
}

/// Pounds-force for each inch, to newtons per meter, with the rounding of what is typed.
const fn lbf_per_inch(value: f64) -> f64 {
    value * POUND_FORCE / INCH
}

/// What the steering pushes with, by its kind.
fn box_force(document: &Document, place: At) -> Option<f64> {
    let power = STEERING_BOX.value(document, place)? == "power";
    Some(if power { BOX_TORQUE / PITMAN_ARM } else { RACK_FORCE })
}

fn usage(document: &Document) -> Option<&'static uses::Scenario> {
    document.rig.usage.map(uses::scenario)
}

fn role(document: &Document, place: At) -> Option<Role> {
    document.links.get(place.link).map(|link| link.role)
}

/// Whether a link is one of two or more upper links that hold their axle sideways, for want of a track bar.
pub fn holds_sideways(document: &Document, place: At) -> bool {
    role(document, place) == Some(Role::Upper)
        && TRACK_BAR.value(document, place) != Some("yes")
        && COUNT.value(document, place).is_some_and(|count| !quantity::exceeds(2.0, count))
}

/// Half the angle between converging upper links, when nobody gives it (common practice: at least 20° a side).
const CONVERGING: f64 = deg(30.0);

/// Output torque of a power steering box, and the length of its pitman arm (common practice, no source).
pub const BOX_TORQUE: f64 = lbf_in(20_000.0);
/// See [`BOX_TORQUE`].
pub const PITMAN_ARM: f64 = inch(6.0);
/// Force of a rack, or of a box without assist, on its link.
const RACK_FORCE: f64 = lbf(1500.0);

/// What share of a lower link's strike an upper link or a tie rod takes. A tie rod behind the axle is shielded by it.
fn part_of_strike(document: &Document, place: At) -> f64 {
    match (role(document, place), TIE_ROD_SIDE.value(document, place)) {
        (Some(Role::TieRod), Some("ahead")) => 0.20,
        (Some(Role::TieRod), _) => 0.10,
        _ => 0.15,
    }
}

/// Factor on buckling. Nothing holds the wheels or the axle when steering or a track bar buckles, so these take the
/// safety factor of AISC's allowable strength design for columns.
fn column_factor(document: &Document, place: At) -> f64 {
    if role(document, place).is_some_and(has_no_second_path) { 1.67 } else { 1.5 }
}

/// Share of the rig's weight that braking or a climb moves onto an axle, when nobody says better.
const SHIFTED: f64 = 0.1;

/// Share of the weight on an axle, standing level.
fn level_share(document: &Document, place: At) -> Option<f64> {
    let front = FRONT_SHARE.value(document, At::default())?;
    Some(if place.axle == 0 { front } else { 1.0 - front })
}

fn scaled(document: &Document, height: f64) -> Option<f64> {
    let tire = TIRE.value(document, At::default())?;
    Some(height * tire / REFERENCE_TIRE)
}

numbers! {
    LENGTH "length" "Mount to mount", First, Link.length: Length inch(6.0) => inch(96.0), Asked |_, _| None,
        "Center of one bolt hole to center of the other, on the rig at ride height, standing on its tires.";
    WEIGHT "weight" "Rig weight, loaded", First, Rig.weight: Weight lbf(500.0) => lbf(20000.0), Asked |_, _| None,
        "As driven: people, fuel, spare and gear included.";

    QUANTITY "quantity" "How many to make", Side, Link.quantity: Count 1.0 => 200.0, Follows |document, place| document.links.get(place.link).map(|link| if link.seated() == Side::Both { 2.0 } else { 1.0 }),
        "Two for a pair. Count a spare here if you want one made.";
    OUTSIDE_DIAMETER "od" "Outside diameter", Bar, Link.outside_diameter: FineLength inch(0.5) => inch(4.0), Follows |_, _| None,
        "Outside diameter of the bar or tube. Empty takes the recommended size.";
    WALL "wall" "Tube wall", Bar, Link.wall: FineLength inch(0.03) => inch(1.5), Follows |_, _| None,
        "Wall of the tube. Empty takes the recommended size; a solid bar has none.";

    VISIBLE_THREADS "visible" "Visible threads as set", Ends, Link.visible_threads: Ratio 0.0 => 6.0, Assumed |_, _| Some(1.5),
        "Threads showing past the jam nut as first set. Half way in the window of 0 to 3 leaves room both ways.";
    SHANK_ULTIMATE "shank-ultimate" "Rod-end shank, tensile strength", Ends, Link.shank_ultimate: Stress ksi(30.0) => ksi(260.0), Assumed |document, place| Some(if shank_steel(document, place) == ShankSteel::Alloy { ALLOY_SHANK } else { UNKNOWN_SHANK[0] }),
        "Of the rod end's steel. 150 ksi is usual for heat-treated alloy; 4130 does not harden that far over 1/2 in thick, so ask the maker. 65 ksi where the steel is not known.";
    SHANK_YIELD "shank-yield" "Rod-end shank, yield strength", Ends, Link.shank_yield: Stress ksi(20.0) => ksi(240.0), Assumed shank_yield,
        "Stress at which the shank yields. Taken as 0.88 of its breaking strength, as 132 is of 150 ksi; 57 ksi where the steel is not known.";
    INSERT_SHEAR "insert-shear" "Welded insert, shear strength", Ends, Link.insert_shear: Stress ksi(15.0) => ksi(120.0), Assumed |_, _| Some(ksi(45.0)),
        "Of the threaded steel insert welded into a tube. 45 ksi is 0.6 of cold-drawn 1026 with its thread half a diameter clear of the weld; 38 for cold-drawn 1018; 35 when the steel is hot-rolled or not known, or the weld runs over the thread.";
    BUNG_FLANGE "bung-flange" "Flange of a shouldered bung, thickness", Ends, Link.bung_flange: FineLength inch(1.0 / 32.0) => inch(1.0), Assumed |_, _| Some(inch(0.25)),
        "How far the bung stands out of the tube. The tube is sawn shorter by it at each end that has one. Assumed until you measure yours.";
    LEAD_THREADS "lead" "Lead chamfer of the shank, in threads", Ends, Link.lead_threads: Ratio 0.0 => 4.0, Assumed |_, _| Some(1.0),
        "Threads at the shank's end that are not full and do not count as engaged.";
    COUNTERSINK "countersink" "Countersink, wider than the thread by", Ends, Link.countersink: FineLength 0.0 => inch(0.5), Assumed |_, _| Some(inch(1.0 / 64.0)),
        "A 90° countersink at the mouth of the hole; its depth does not count as engaged.";
    TAPPED_DEPTH "tapped" "Tapped depth, full thread", Ends, End.tapped_depth: FineLength inch(0.25) => inch(8.0), Practice |_, _| None,
        "Depth of full thread in the bar. Empty takes the shank's whole thread and two pitches, to the next 1/8 in.";
    LEAST_ENGAGEMENT "least" "Least engagement you require", Ends, End.least_engagement: FineLength 0.0 => inch(6.0), Follows |_, _| Some(0.0),
        "If you want more thread in the bar than strength asks for.";
    RATING "rating" "Maker's static radial rating", Ends, End.rating: Force lbf(200.0) => lbf(400_000.0), Asked |_, _| None,
        "From the rod end's maker. Ratings of different makers are not measured alike.";
    OWN_EYE_TO_END "own-f" "Eye center to shank end", Ends, End.own_eye_to_end: FineLength inch(0.75) => inch(12.0), Asked |_, _| None,
        "Caliper reading on your rod end.";
    OWN_THREAD_LENGTH "own-t" "Thread length", Ends, End.own_thread_length: FineLength inch(0.4) => inch(10.0), Asked |_, _| None,
        "Caliper reading on your rod end: full thread on the shank.";
    OWN_BORE "own-bore" "Bore", Ends, End.own_bore: FineLength inch(0.18) => inch(2.5), Asked |_, _| None,
        "Hole in the ball: the bolt's size.";
    OWN_BALL_WIDTH "own-ball" "Ball width", Ends, End.own_ball_width: FineLength inch(0.2) => inch(3.5), Asked |_, _| None,
        "Face to face of the ball.";
    OWN_HEAD_DIAMETER "own-head" "Head diameter", Ends, End.own_head_diameter: FineLength inch(0.4) => inch(8.0), Asked |_, _| None,
        "Across the round head, for the strength of the eye.";
    OWN_HEAD_THICKNESS "own-head-thick" "Head thickness", Ends, End.own_head_thickness: FineLength inch(0.1) => inch(4.0), Asked |_, _| None,
        "Face to face of the head, beside the ball; for the strength of the eye.";
    OWN_RACE_BORE "own-race" "Hole in the head", Ends, End.own_race_bore: FineLength inch(0.25) => inch(6.0), Assumed |_, _| None,
        "Across the race that holds the ball: the seam on the face of the head. Empty takes 1.32 × √(bore² + ball width²), the largest ratio among the published rows that print it.";

    EAR "ear" "Bracket ear thickness", Bracket, Link.ear: FineLength inch(0.05) => inch(2.0), Assumed |_, _| Some(inch(0.25)),
        "Thickness of one ear of the bracket.";
    SPACER "spacer" "Spacer each side of the ball", Bracket, Link.spacer: FineLength 0.0 => inch(2.0), Assumed |_, _| Some(0.0),
        "Spacer between ball and ear. The longer, the more the bolt bends.";
    GAP "gap" "Gap not filled, each side", Bracket, Link.gap: FineLength 0.0 => inch(1.0), Assumed |_, _| Some(0.0),
        "Room between spacer or ball and ear that nothing fills. Shim it: an open gap bends the bolt and spoils its clamp.";
    BOLT_DIAMETER "bolt-diameter" "Bolt diameter", Bracket, End.bolt_diameter: FineLength inch(0.18) => inch(2.5), Follows |_, _| None,
        "Of the bolt through this eye. Empty takes the largest standard bolt that fits the bore; with high-misalignment spacers only you know it.";
    SPACER_FOOT "spacer-foot" "Spacer, diameter on the ear", Bracket, End.spacer_foot: FineLength inch(0.2) => inch(4.0), Assumed |_, _| None,
        "Where the spacer, or the ball without one, presses on the ear. Empty takes 1.6 times the bolt, an assumption. The wider, the more the clamped stack bears.";

    TILT "tilt" "Rod-end misalignment, each way", Bracket, End.tilt: Angle deg(1.0) => deg(45.0), Practice |_, _| None,
        "How far the ball may lean from square, in its bracket, before something touches. Empty takes 30° with high-misalignment spacers, 12° with plain ones and 5.5° without, or for the last two what the rod end's table gives if that is less.";
    FLEX "flex" "Wheel travel, one up and one down", Bracket, Axle.flex: Length 0.0 => inch(24.0), Assumed |_, _| Some(inch(5.0)),
        "How far each wheel of the axle goes from ride height when the rig is twisted.";
    TRACK "track" "Track width", Bracket, Rig.track: Length inch(30.0) => inch(120.0), Assumed |_, _| Some(inch(65.0)),
        "Middle of one tire to middle of the other.";

    WHEELBASE "wheelbase" "Wheelbase", Bracket, Rig.wheelbase: Length inch(50.0) => inch(240.0), Assumed |_, _| Some(inch(105.0)),
        "From axle to axle. Only the picture of the rig rests on it.";

    TIRE "tire" "Tire diameter", Loads, Rig.tire: Length inch(20.0) => inch(66.0), Assumed |_, _| Some(REFERENCE_TIRE),
        "Sets how high the link mounts are taken to be.";
    TRACTION "traction" "Tire grip (friction)", Loads, Rig.traction: Ratio 0.2 => 2.0, Assumed |_, _| Some(1.0),
        "Friction between tire and ground. Grip, not horsepower, sets the limit.";
    FRONT_SHARE "front-share" "Weight on the front axle, standing level", Loads, Rig.front_share: Percent 0.2 => 0.8, Assumed |_, _| Some(0.5),
        "From a scale under each axle. The rear axle carries the rest.";
    AXLE_SHARE "axle-share" "Weight on this axle at worst", Loads, Axle.share: Percent 0.2 => 1.0, Assumed |document, place| level_share(document, place).map(|share| share + SHIFTED),
        "Braking, a ledge or a climb moves weight onto it: taken as a tenth of the rig. A steep climb can put nearly all of it on one axle.";
    LOWER_HEIGHT "lower-height" "Lower mount height at the axle", Loads, Axle.lower_height: Length inch(4.0) => inch(60.0), Assumed |document, _| scaled(document, inch(17.0)),
        "Above the ground. The closer the upper mount is to it, the larger the force in both links.";
    UPPER_HEIGHT "upper-height" "Upper mount height at the axle", Loads, Axle.upper_height: Length inch(6.0) => inch(90.0), Assumed |document, _| scaled(document, inch(26.0)),
        "Above the ground.";
    COUNT "count" "Links sharing the load", Loads, Link.count: Count 1.0 => 4.0, Assumed |document, place| document.links.get(place.link).map(|link| if link.seated() == Side::Middle { 1.0 } else { 2.0 }),
        "How many links like this one do the same work on the axle.";
    PLAN_ANGLE "plan-angle" "Angle seen from above", Loads, Link.plan_angle: Angle 0.0 => deg(70.0), Assumed |document, place| Some(if holds_sideways(document, place) { CONVERGING } else { 0.0 }),
        "Between this link and straight ahead. Uppers that hold the axle sideways, without a track bar, are taken at 30°.";
    UNEVEN "uneven" "Uneven traction factor", Loads, Link.uneven: Ratio 1.0 => 3.0, Assumed |_, _| Some(1.0),
        "When one wheel grips and the other spins, one link takes more than its even share.";
    GRIP_OFFSET "grip-offset" "Grip acts off center by", Loads, Axle.grip_offset: Length 0.0 => inch(60.0), Assumed |_, _| Some(0.0),
        "0 when both wheels grip alike. Half the track width puts all the grip at one wheel, which loads the lower link on that side more.";
    LOWER_SPREAD "lower-spread" "Distance between the lower links", Loads, Axle.lower_spread: Length inch(8.0) => inch(120.0), Assumed |_, _| Some(inch(40.0)),
        "At the axle, center to center. Counts only when the grip acts off center.";
    SLOPE "bar-slope" "Slope, seen from the front", Loads, Link.slope: Angle 0.0 => deg(45.0), Assumed |_, _| Some(0.0),
        "Of a track bar, at ride height: 0 is level. The steeper it is, the more force it takes to hold the axle.";
    SHOCK "shock" "Shock factor on traction", Loads, Rig.shock: Ratio 1.0 => 6.0, Assumed |document, _| usage(document).map(|row| row.shock),
        "What bouncing and grabbing multiply the steady force by.";
    STRIKE_SHARE "strike-share" "Share of the rig that strikes a lower link", Loads, Rig.strike_share: Percent 0.0 => 2.0, Assumed |_, _| Some(uses::STRIKE_SHARE),
        "As a share of the rig's weight. Chosen with the drop and the deflection of the rest so that sizes come out as builders fit them: those three fix the force together, not one by one.";
    DROP "drop" "Drop before it lands", Loads, Rig.drop: FineLength 0.0 => inch(36.0), Assumed |document, _| usage(document).map(|row| row.drop),
        "Set down without a drop already counts double.";
    UPPER_STRIKE "upper-strike" "Of that, an upper link or tie rod takes", Loads, Rig.upper_strike: Percent 0.0 => 1.0, Assumed |document, place| Some(part_of_strike(document, place)),
        "As a share of a lower link's strike: 15 % for an upper link, 20 % for a tie rod ahead of the axle, 10 % behind it.";
    STRIKE_ZONE "strike-zone" "Nearest the hit can be to an eye", Loads, Rig.strike_zone: Percent 0.01 => 0.5, Assumed |_, _| Some(0.25),
        "As a share of the length: 25 % is anywhere in the middle half.";
    AXIAL_SHARE_WITH_STRIKE "together" "Axial force acting with the strike", Loads, Rig.axial_share_with_strike: Percent 0.0 => 1.0, Assumed |_, _| Some(0.5),
        "Share of the largest tension or compression that acts at the same moment.";
    REST_DEFLECTION "rest-deflection" "Deflection of tires, springs and frame under the rig's weight", Loads, Rig.rest_deflection: FineLength 0.0 => inch(24.0), Assumed |document, _| former_rest_deflection(document).or(Some(inch(1.0))),
        "What gives way beside the link when it is hit: all of it, under the whole weight. 1 in is of the right order for aired-down tires, an argument of magnitude and no measurement. Zero is the hardest case.";
    GIVE "give" "Deflection of the rest under 1,000 lbf", Former, Rig.give: FineLength 0.0 => inch(12.0), Follows |_, _| None,
        "Asked for by earlier versions: kept, and converted to the deflection under the rig's weight.";
    STEERING_ARM "steering-arm" "Steering arm", Loads, Rig.steering_arm: Length inch(2.0) => inch(16.0), Assumed |_, _| Some(inch(6.5)),
        "From the steering axis to the tie rod's hole on the knuckle.";
    SCRUB "scrub" "Steering axis to middle of the tire", Loads, Rig.scrub: Length 0.0 => inch(16.0), Assumed |_, _| Some(inch(4.0)),
        "On the ground, seen from the front. Wheels that stand further out make it longer.";
    PATCH "patch" "Tire contact patch", Loads, Rig.patch: Length inch(1.0) => inch(30.0), Assumed |_, _| Some(inch(10.0)),
        "Across the contact patch, as a circle; aired down it grows.";
    CYLINDER_BORE "cylinder-bore" "Hydraulic ram, bore", Loads, Rig.cylinder_bore: FineLength inch(0.5) => inch(6.0), Asked |_, _| None,
        "Of a hydraulic ram that pushes on this link. Empty when there is none.";
    CYLINDER_ROD "cylinder-rod" "Hydraulic ram, rod", Loads, Rig.cylinder_rod: FineLength 0.0 => inch(4.0), Assumed |_, _| Some(0.0),
        "Kept from older links. The full bore is counted whatever the rod, since one side of the ram pushes with all of it.";
    CYLINDER_PRESSURE "cylinder-pressure" "Hydraulic ram, pressure", Loads, Rig.cylinder_pressure: Pressure psi(100.0) => psi(6000.0), Assumed |_, _| Some(psi(1500.0)),
        "The pump's relief pressure.";
    BOX_FORCE "box-force" "Steering box, force at its arm", Loads, Rig.box_force: Force lbf(50.0) => lbf(50_000.0), Assumed |document, place| box_force(document, place),
        "Its greatest output torque over the length of its pitman arm. Follows the kind of steering until you enter it.";
    SWAY_RATE "sway-rate" "Sway bar rate", Loads, Rig.sway_rate: Stiffness lbf_per_inch(5.0) => lbf_per_inch(5000.0), Assumed |_, _| Some(lbf_per_inch(200.0)),
        "Force at the end of one arm over the travel of that end.";
    BEND_OFFSET "bend-offset" "Bent bar, offset from straight", Loads, Link.bend_offset: FineLength 0.0 => inch(12.0), Assumed |_, _| Some(0.0),
        "How far the bar lies off the straight line from eye to eye where it is bent around something. 0 for a straight bar.";
    OWN_AXIAL "own-axial" "Your own axial force", Loads, Link.own_axial: Force 0.0 => lbf(200_000.0), Asked |_, _| None,
        "Tension or compression along the link; replaces the computed one.";
    OWN_STRIKE "own-strike" "Your own strike on the bar", Loads, Link.own_strike: Force 0.0 => lbf(200_000.0), Asked |_, _| None,
        "Replaces the computed strike.";

    YIELD_FACTOR "yield-factor" "Safety factor on yield", Factors, Rig.yield_factor: Ratio 1.0 => 5.0, Assumed |_, _| Some(1.25),
        "How much stronger than the loads every part must be before it yields.";
    ULTIMATE_FACTOR "ultimate-factor" "Safety factor on ultimate strength", Factors, Rig.ultimate_factor: Ratio 1.0 => 8.0, Assumed |_, _| Some(2.0),
        "How much stronger bolts in shear and bracket ears must be.";
    THREAD_FACTOR "thread-factor" "Safety factor on thread stripping", Factors, Link.thread_factor: Ratio 1.0 => 8.0, Assumed |document, place| Some(if document.links.get(place.link).is_some_and(|link| has_no_second_path(link.role)) { 3.0 } else { 2.0 }),
        "How much more than the largest tension the engaged thread must bear: 2, and 3 for steering and track bars.";
    COLUMN_FACTOR "column-factor" "Safety factor on buckling", Factors, Rig.column_factor: Ratio 1.0 => 6.0, Assumed |document, place| Some(column_factor(document, place)),
        "How much more compression than the largest load the link must take before it buckles. 1.5; for steering and track bars 1.67, as in AISC's allowable strength design (from memory).";
    BOW "bow" "Bow of a straight link, over its length", Factors, Link.bow: Percent 0.0 => 0.02, Assumed |_, _| Some(0.002),
        "No bar is quite straight: 0.2 % is a 500th of the length. A bow makes a link buckle earlier.";
    RATING_FACTOR "rating-factor" "Safety factor on a maker's rating", Factors, Rig.rating_factor: Ratio 1.0 => 12.0, Assumed |document, place| Some(if steers(document, place) { 5.0 } else { 3.0 }),
        "3 is a general figure, 5 for steering. Where the force goes both ways makers ask for 5 to 8: go by your maker's sheet.";

    ROUNDING "rounding" "Bar length to the nearest", Shop, Link.rounding: FineLength inch(0.001) => inch(0.5), Assumed |_, _| Some(inch(1.0 / 32.0)),
        "The bar is rounded to this and the engagement worked out again.";
    FACING "facing" "Facing stock at each end", Shop, Link.facing: FineLength 0.0 => inch(0.5), Assumed |_, _| Some(inch(1.0 / 16.0)),
        "How much longer than finished length the saw leaves the bar, for facing in the lathe.";
    FLATS_WIDTH "flats-width" "Wrench flats, across", Shop, Link.flats_width: FineLength inch(0.3) => inch(4.0), Practice |_, _| None,
        "Empty takes 1/4 in less than the diameter, but no less than 0.7 of it.";
    FLATS_LENGTH "flats-length" "Wrench flats, length", Shop, Link.flats_length: FineLength inch(0.25) => inch(4.0), Practice |_, _| Some(inch(1.0)),
        "Along the bar.";
    FLATS_START "flats-start" "Wrench flats begin, from face A", Shop, Link.flats_start: FineLength 0.0 => inch(96.0), Assumed |_, _| None,
        "Empty puts them just past the drilled hole.";
    SKIM "skim" "Skim pass, off the diameter", Shop, Link.skim: FineLength 0.0 => inch(0.25), Assumed |_, _| Some(0.0),
        "Turned off the whole bar to clean it up or to fit a bend die. The answer is worked out with what is left.";
}

/// Whether the three first entries are there; if not, which are missing.
pub fn still_needed(document: &Document, link: usize) -> Vec<&'static str> {
    let place = At::of_link(document, link);
    let mut missing = Vec::new();
    if LENGTH.value(document, place).is_none() {
        missing.push(LENGTH.id);
    }
    missing.extend(still_needed_by_rig(document));
    missing
}

/// What is missing of the first entries that every link of the rig shares.
pub fn still_needed_by_rig(document: &Document) -> Vec<&'static str> {
    let mut missing = Vec::new();
    if WEIGHT.value(document, At::default()).is_none() {
        missing.push(WEIGHT.id);
    }
    if (document.rig.usage as Option<Use>).is_none() {
        missing.push(USAGE.id);
    }
    missing
}

/// The link to turn to after this one: the next that still lacks its length, round the rig; where none does, the next in
/// order. None after the last.
pub fn next_link(document: &Document, link: usize) -> Option<usize> {
    let count = document.links.len();
    let lacks = |other: &usize| LENGTH.value(document, At::of_link(document, *other)).is_none();
    (1..count).map(|step| (link + step) % count).find(lacks).or_else(|| Some(link + 1).filter(|next| *next < count))
}
