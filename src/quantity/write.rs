//! Writes values for reading eyes and for input fields.

use super::{DEGREE, INCH, KSI, Kind, POUND_FORCE, STANDARD_GRAVITY};

/// Which units a bare number takes and a value is shown in.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default)]
pub enum System {
    /// Inches and their fractions, pounds, ksi.
    #[default]
    Inch,
    /// Millimeters, kilograms, newtons, MPa.
    Metric,
}

/// What stands in place of a value that is not a number.
const NOTHING: &str = "—";

/// One unit of a kind as `times / over` in SI, and its name. Two factors rather than one, because
/// dividing by 1000 gives the nearest float to "927.1 mm" and multiplying by 0.001 does not.
pub(super) const fn unit(kind: Kind, system: System) -> (f64, f64, &'static str) {
    use Kind::*;
    use System::*;
    match (kind, system) {
        (Ratio | Count, _) => (1.0, 1.0, ""),
        (Percent, _) => (1.0, 100.0, "%"),
        (Turns, _) => (1.0, 1.0, "turns"),
        (Angle, _) => (DEGREE, 1.0, "°"),
        (InInches, _) => (1.0, 1.0, "in"),
        (InMillimeters, _) => (1.0, 1.0, "mm"),
        (InMicrometers, _) => (1.0, 1.0, "µm"),
        (Length | FineLength, Inch) => (INCH, 1.0, "in"),
        (Length | FineLength, Metric) => (1.0, 1e3, "mm"),
        (PerLength, Inch) => (1.0, INCH, "1/in"),
        (PerLength, Metric) => (1e3, 1.0, "1/mm"),
        (Area, Inch) => (INCH * INCH, 1.0, "in²"),
        (Area, Metric) => (1.0, 1e6, "mm²"),
        (AreaPerLength, Inch) => (INCH, 1.0, "in²/in"),
        (AreaPerLength, Metric) => (1.0, 1e3, "mm²/mm"),
        (SectionModulus, Inch) => (INCH * INCH * INCH, 1.0, "in³"),
        (SectionModulus, Metric) => (1.0, 1e9, "mm³"),
        (SecondMoment, Inch) => (INCH * INCH * INCH * INCH, 1.0, "in⁴"),
        (SecondMoment, Metric) => (1.0, 1e12, "mm⁴"),
        (Force, Inch) => (POUND_FORCE, 1.0, "lbf"),
        (Force, Metric) => (1.0, 1.0, "N"),
        (Weight, Inch) => (POUND_FORCE, 1.0, "lb"),
        (Weight, Metric) => (STANDARD_GRAVITY, 1.0, "kg"),
        (WeightDensity, Inch) => (POUND_FORCE, INCH * INCH * INCH, "lb/in³"),
        (WeightDensity, Metric) => (STANDARD_GRAVITY, 1.0, "kg/m³"),
        (ForcePerLength | Stiffness, Inch) => (POUND_FORCE, INCH, "lbf/in"),
        (ForcePerLength | Stiffness, Metric) => (1e3, 1.0, "N/mm"),
        (Compliance, Inch) => (INCH, 1e3 * POUND_FORCE, "in per 1,000 lbf"),
        (Compliance, Metric) => (1.0, 1e6, "mm/kN"),
        (Stress, Inch) => (KSI, 1.0, "ksi"),
        (Pressure, Inch) => (KSI, 1e3, "psi"),
        (Stress | Pressure, Metric) => (1e6, 1.0, "MPa"),
        (Moment, Inch) => (POUND_FORCE * INCH, 1.0, "lbf·in"),
        (Moment | Torque, Metric) => (1.0, 1.0, "N·m"),
        (Torque, Inch) => (POUND_FORCE * 12.0 * INCH, 1.0, "lbf·ft"),
    }
}

/// The unit that a bare number takes, for showing beside a field; empty for plain numbers.
pub const fn unit_name(kind: Kind, system: System) -> &'static str {
    unit(kind, system).2
}

/// Whether thousands are set off by a comma. Lengths, angles and shares never are, so that a comma
/// in them can be read as a decimal comma and nothing shown here reads back as something else.
pub(super) const fn grouped(kind: Kind) -> bool {
    use Kind::*;
    !matches!(kind, Length | FineLength | InInches | InMillimeters | InMicrometers | Angle | Percent | Ratio | Turns)
}

/// A value, SI, with its unit, to the digits it deserves; `—` when it is not finite.
pub fn show(value: f64, kind: Kind, system: System) -> String {
    written(value, kind, system, false)
}

/// The same one step finer: inches in thousandths, millimeters in hundredths, the rest to five digits.
pub fn show_fine(value: f64, kind: Kind, system: System) -> String {
    written(value, kind, system, true)
}

fn written(value: f64, kind: Kind, system: System, fine: bool) -> String {
    let (times, over, mut name) = unit(kind, system);
    let mut shown = value * over / times;
    if !shown.is_finite() {
        return NOTHING.to_string();
    }
    // Compared as rounded, so that 999.99 N is 1 kN and never 1,000 N.
    let kilo = match (kind, system) {
        (Kind::Force, System::Metric) => Some("kN"),
        (Kind::Moment, System::Metric) => Some("kN·m"),
        (Kind::Pressure, System::Inch) => Some("ksi"),
        _ => None,
    };
    // People speak of 5,400 psi, but of 30 ksi.
    let from = if kind == Kind::Pressure { 10.0 } else { 1.0 };
    if let (Some(kilo), true) = (kilo, shown.abs() >= from * if fine { 999.995 } else { 999.95 }) {
        shown /= 1000.0;
        name = kilo;
    }
    let step = usize::from(fine);
    let number = match kind {
        Kind::Length => match (system, fine) {
            (System::Inch, false) => fraction(value),
            (System::Inch, true) => rounded(shown, 3),
            (System::Metric, false) => rounded(shown, 1),
            (System::Metric, true) => rounded(shown, 2),
        },
        Kind::FineLength => rounded(shown, step + if system == System::Inch { 3 } else { 2 }),
        Kind::InInches => rounded(shown, 4 + step),
        Kind::InMillimeters => rounded(shown, 3 + step),
        _ if fine => significant(shown, 5),
        Kind::Turns => mixed(shown, 4, '-'),
        Kind::Count => trimmed(rounded(shown, 2)),
        Kind::Weight => rounded(shown, usize::from(shown.abs() < 99.95)),
        Kind::Stress | Kind::Pressure | Kind::Moment | Kind::Torque => three(shown),
        Kind::Ratio | Kind::Percent | Kind::Angle | Kind::InMicrometers => three(shown),
        _ => significant(shown, 4),
    };
    let number = if grouped(kind) { with_commas(&number) } else { number };
    match kind {
        Kind::Ratio | Kind::Count => number,
        Kind::Angle => number + name,
        Kind::Turns if one_or_less(&number) => number + " turn",
        _ => format!("{number} {name}"),
    }
}

/// People say "1/2 turn" and "1 turn" but "0 turns".
fn one_or_less(number: &str) -> bool {
    number == "1" || (number.contains('/') && !number.trim_start_matches('-').contains('-'))
}

/// A length, SI, in inches to the nearest 1/32 in lowest terms and without a unit: `36-1/2`.
pub fn fraction(value: f64) -> String {
    mixed(value / INCH, 32, '-')
}

/// A number to the nearest `1 / parts` in lowest terms, with `joint` before the fraction.
fn mixed(value: f64, parts: u64, joint: char) -> String {
    if !value.is_finite() {
        return NOTHING.to_string();
    }
    if value.abs() >= 1e9 {
        return significant(value, 4);
    }
    // Small enough to be exact: at most 1e9 times 64.
    let count = (value.abs() * parts as f64).round() as u64;
    let (whole, mut over, mut under) = (count / parts, count % parts, parts);
    while over > 0 && over % 2 == 0 && under % 2 == 0 {
        over /= 2;
        under /= 2;
    }
    let text = match (whole, over) {
        (_, 0) => whole.to_string(),
        (0, _) => format!("{over}/{under}"),
        _ => format!("{whole}{joint}{over}/{under}"),
    };
    signed(value, text)
}

/// What one would type into a field for this value: no unit, no commas, `36 1/2` for an inch length
/// that is a multiple of 1/64, else decimals. Empty when the value is not finite, as a field would be.
pub fn plain(value: f64, kind: Kind, system: System) -> String {
    let (times, over, _) = unit(kind, system);
    let shown = value * over / times;
    if !shown.is_finite() {
        return String::new();
    }
    if kind == Kind::Length && system == System::Inch && (shown - (shown * 64.0).round() / 64.0).abs() < 1e-6 {
        return mixed(shown, 64, ' ');
    }
    // Four decimals serve everything but small values, which keep five digits.
    let (mut places, mut scaled) = (4, shown.abs() * 1e4);
    while scaled < 1e4 && places < 12 {
        scaled *= 10.0;
        places += 1;
    }
    signed(shown, trimmed(format!("{:.places$}", shown.abs())))
}

/// A number with a fixed count of decimals; what lies halfway goes up, whatever its last bits say.
fn rounded(value: f64, places: usize) -> String {
    if value.abs() >= 1e9 {
        return significant(value, 4);
    }
    signed(value, format!("{:.places$}", value.abs() * (1.0 + 1e-12)))
}

/// Three digits, or four where they are all whole: 58.4, 403, 1034.
fn three(value: f64) -> String {
    let four_whole = value.abs() >= 999.95;
    significant(value, if four_whole { 4 } else { 3 })
}

/// At most so many significant digits, without zeros at the end; an exponent only outside 1e-4 to 1e9.
fn significant(value: f64, digits: usize) -> String {
    let size = value.abs();
    // What is left of a sum that should be nothing.
    if size < 1e-12 {
        return "0".to_string();
    }
    // Rounded before it is counted, so 9.9999 has the power of 10.
    let (mantissa, power) = scientific(size, digits.saturating_sub(1));
    let spare = digits as i64 - 1 - power;
    signed(
        value,
        if !(-4..9).contains(&power) {
            format!("{}e{power}", trimmed(mantissa))
        } else if spare > 0 {
            trimmed(format!("{size:.*}", spare as usize))
        } else {
            mantissa.chars().filter(|c| *c != '.').chain((spare..0).map(|_| '0')).collect()
        },
    )
}

/// A number with one digit before the point and so many after it, and the power of ten to multiply that by.
fn scientific(value: f64, places: usize) -> (String, i64) {
    let text = format!("{value:.places$e}");
    let (mantissa, power) = text.split_once('e').unwrap_or((&text, "0"));
    (mantissa.to_string(), power.parse().unwrap_or(0))
}

/// Without zeros after the point that say nothing.
pub fn trimmed(text: String) -> String {
    if text.contains('.') { text.trim_end_matches('0').trim_end_matches('.').to_string() } else { text }
}

/// The minus sign goes only before something that is not zero as written.
fn signed(value: f64, text: String) -> String {
    let nothing = text.chars().all(|c| matches!(c, '0' | '.'));
    if value < 0.0 && !nothing { format!("-{text}") } else { text }
}

/// With a comma between thousands.
fn with_commas(text: &str) -> String {
    let end = text.find(['.', 'e']).unwrap_or(text.len());
    let mut result = String::new();
    for (place, character) in text.char_indices() {
        let before_a_group = place > 0 && place < end && (end - place).is_multiple_of(3);
        if before_a_group && !result.ends_with('-') {
            result.push(',');
        }
        result.push(character);
    }
    result
}

/// Whether a count of steps is a whole number to anybody who measures.
fn lies(steps: f64, slack: f64) -> bool {
    (steps - steps.round()).abs() < slack
}

/// A length that is made or measured: inches in fractions where it lies on one, else in thousandths; millimeters in
/// tenths.
pub fn measured(value: f64, system: System) -> String {
    // Tables print 1-5/16 in as 1.312.
    let odd = system == System::Inch && !lies(value / INCH * 32.0, 0.02);
    show(value, if odd { Kind::FineLength } else { Kind::Length }, system)
}

/// A fit or a thread: inches as in a list, millimeters to the last digit that a caliper reads.
pub fn fit(value: f64, system: System) -> String {
    if system == System::Inch { measured(value, system) } else { show(value, Kind::FineLength, system) }
}

/// The size of something bought, by the name it is sold under in either system: `1-3/8 in (34.9 mm)`.
pub fn trade(value: f64, system: System) -> String {
    let (inches, millimeters) = (value / INCH, value * 1e3);
    let [inch, metric] = [System::Inch, System::Metric].map(|system| measured(value, system));
    let by_inches = (lies(inches * 32.0, 1e-6) && !lies(millimeters, 1e-6))
        || (lies(inches * 1e3, 1e-6) && !lies(millimeters * 10.0, 1e-6));
    let name = metric.replace(".0 ", " ");
    match system {
        System::Metric if by_inches => format!("{inch} ({metric})"),
        System::Inch if !by_inches && lies(millimeters * 2.0, 1e-6) => format!("{name} ({inch})"),
        System::Metric if lies(millimeters, 1e-6) => name,
        System::Metric => metric,
        System::Inch => inch,
    }
}

/// What to buy for pieces of a length each: the sum of them as they are shown, up to the next step of a tape.
pub fn in_all(pieces: impl Iterator<Item = (f64, f64)>, system: System) -> String {
    let shown = |value: f64| (value * 1e4 * (1.0 + 1e-12)).round() / 1e4;
    let sum: f64 = match system {
        System::Inch => pieces.map(|(count, each)| count * each).sum(),
        System::Metric => pieces.map(|(count, each)| count * shown(each)).sum(),
    };
    match system {
        System::Inch => show((sum / INCH * 32.0 - 0.02).ceil() / 32.0 * INCH, Kind::Length, system),
        System::Metric => format!("{:.0} mm", (sum * 1e3 - 1e-6).ceil()),
    }
}

/// The text of a limit, with its unit: never more than the value, so that a reader who keeps to it keeps to the limit.
pub fn show_at_most(value: f64, kind: Kind, system: System) -> String {
    let (times, over, _) = unit(kind, system);
    let one = times / over;
    let step = match (kind, system) {
        (Kind::Length, System::Inch) => crate::quantity::INCH / 32.0,
        (Kind::Turns, _) => 0.25,
        (Kind::Weight, _) => one,
        (Kind::Length | Kind::FineLength, _) => one / if system == System::Inch { 1e3 } else { 10.0 },
        // Three digits, as the other kinds are shown with.
        _ if value > 0.0 => {
            let last_digit = scientific(value / one, 17).1 - 2;
            one * format!("1e{last_digit}").parse().unwrap_or(1.0)
        }
        _ => one,
    };
    // A value that already lies on the step stays on it in spite of its last bits.
    show((value / step + 1e-6).floor() * step, kind, system)
}
