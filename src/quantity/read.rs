//! Reads what people type with dirty hands: `36-1/2"`, `3' 0 1/2`, `927 mm`, `4,200 lb`.
//!
//! What could be meant in two ways is read like this, and the same for every field of a kind:
//! - One comma before exactly three digits sets off thousands where [`super::show`] writes them
//!   (`4,200` lb, `66,000 psi`), and is a decimal comma in lengths, angles and shares, which are
//!   never shown with thousands (`1,250` in is 1-1/4 in). Every other single comma is a decimal comma.
//! - `36 - 1/2` is thirty-six and a half; nothing is ever subtracted. A leading sign is the sign of all.
//! - `11/2` is refused in lengths, because it is 1 1/2 with the space forgotten as often as it is 5.5.
//! - `ton` is refused; `t` and `tonne` are 1000 kg.
//! - Where thousands are set off by a comma, `4.3k` is 4,300. A space before exactly three digits sets off thousands
//!   in every field: `4 300`; before a fraction it does not: `36 100/128`.
//! - A fraction without a unit is inches, in a field of millimeters too, and [`Reading::inches_assumed`] says so: nobody
//!   measures 36 1/2 mm.
//! - Pounds and kilograms are forces at standard gravity, in weights and in forces alike.

mod misread;
mod text;
mod units;

use super::{INCH, Kind, System, unit_name, write};
use misread::echo;
use text::{decimal, tidied};
use units::{FEET, INCHES, Measure, Unit, word};

pub use misread::Misread;

/// What a text was read as.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Reading {
    /// The value, SI.
    pub value: f64,
    /// Whether a fraction without a unit was taken as inches where a bare number is millimeters.
    pub inches_assumed: bool,
}

/// The value, SI, of what was typed; a number without a unit takes the one of `system`.
///
/// # Errors
/// As [`reading`].
pub fn read(text: &str, kind: Kind, system: System) -> Result<f64, Misread> {
    reading(text, kind, system).map(|reading| reading.value)
}

/// What was typed, read: its value and what had to be assumed. A number without a unit takes the one of `system`.
///
/// # Errors
/// When the text is not exactly one finite number, or its unit measures something else than `kind`.
/// Whether the value makes sense for a field is not asked here; negative values are read.
pub fn reading(text: &str, kind: Kind, system: System) -> Result<Reading, Misread> {
    let (number, system) = without_wordless_unit(text, kind).unwrap_or((text, system));
    let tidy = tidied(number).ok_or(Misread::TooLong { kind })?;
    if tidy.trim().is_empty() {
        return Err(Misread::Empty { kind });
    }
    Reader { typed: text, kind, rest: tidy.trim() }.value(system)
}

/// The number before `1/in` or `in per 1,000 lbf`, which no grammar of words covers.
fn without_wordless_unit(text: &str, kind: Kind) -> Option<(&str, System)> {
    if !matches!(kind, Kind::PerLength | Kind::Compliance) {
        return None;
    }
    let before = |system| Some((text.trim_end().strip_suffix(unit_name(kind, system))?, system));
    before(System::Inch).or_else(|| before(System::Metric))
}

/// A bare number of the unit that `system` has for the kind.
fn in_si(number: f64, kind: Kind, system: System) -> f64 {
    let (times, over, _) = write::unit(kind, system);
    number * times / over
}

/// What is left to read of one text.
#[derive(Clone, Copy)]
struct Reader<'a> {
    typed: &'a str,
    kind: Kind,
    rest: &'a str,
}

impl<'a> Reader<'a> {
    fn value(mut self, system: System) -> Result<Reading, Misread> {
        let negative = self.skip('-');
        if !negative {
            self.skip('+');
        }
        self.spaces();
        let start = self.rest;
        let number = self.number()?;
        let fraction = start.strip_suffix(self.rest).is_some_and(|typed| typed.contains('/'));
        let number = number * self.thousands();
        let mut inches_assumed = false;
        let size = match self.unit()? {
            None if fraction && system == System::Metric && matches!(self.kind, Kind::Length | Kind::FineLength) => {
                inches_assumed = true;
                number * INCH
            }
            None => in_si(number, self.kind, system),
            Some((unit, name)) => {
                let mut size = number * unit.times / unit.over;
                if FEET.contains(&name) {
                    // One product of whole inches, so that 3' 2" is exactly 38 in.
                    size = (12.0 * number + self.inches()?) * INCH;
                }
                if unit.measure != Measure::of(self.kind) {
                    return Err(Misread::WrongUnit { read: echo(self.typed), noun: unit.noun, kind: self.kind });
                }
                // Standards that hold in one unit only take a bare number of it.
                match self.kind {
                    Kind::InInches => size / INCH,
                    Kind::InMillimeters => size * 1e3,
                    Kind::InMicrometers => size * 1e6,
                    _ => size,
                }
            }
        };
        self.end()?;
        Ok(Reading { value: if negative { -size } else { size }, inches_assumed })
    }

    /// How many inches follow feet; the hyphen of `3'-6"` only joins.
    fn inches(&mut self) -> Result<f64, Misread> {
        self.rest = self.rest.trim_start_matches([' ', '.', ',']);
        if self.rest.is_empty() {
            return Ok(0.0);
        }
        self.skip('-');
        self.spaces();
        let number = self.number()?;
        if self.unit()?.is_some_and(|(_, name)| !INCHES.contains(&name)) {
            return Err(Misread::TwoNumbers { read: echo(self.typed), kind: self.kind });
        }
        if number >= 12.0 {
            return Err(Misread::TooManyInches { read: echo(self.typed) });
        }
        Ok(number)
    }

    /// `36`, `36.5`, `1/2`, `36 1/2` or `36-1/2`.
    fn number(&mut self) -> Result<f64, Misread> {
        let run = self.run();
        if let Some(below) = self.denominator()? {
            return self.fraction(&run, below, false);
        }
        let mut ahead = *self;
        ahead.spaces();
        ahead.skip('-');
        ahead.spaces();
        let above = ahead.take(|c| c.is_ascii_digit());
        if let Some(below) = if above.is_empty() { None } else { ahead.denominator()? } {
            *self = ahead;
            return Ok(self.whole(&run)? + self.fraction(above, below, true)?);
        }
        decimal(&run, write::grouped(self.kind)).ok_or_else(|| self.garbage())
    }

    /// Digits with their marks. Thousands set off by spaces are put together: `4 300.5`.
    fn run(&mut self) -> String {
        let marked = |c: char| c.is_ascii_digit() || matches!(c, '.' | ',');
        let mut run = self.take(marked).to_string();
        let mut open = run.len() <= 3 && !run.starts_with('0') && run.bytes().all(|byte| byte.is_ascii_digit());
        while open && !run.is_empty() {
            let mut ahead = *self;
            let group = if ahead.skip(' ') { ahead.take(marked) } else { "" };
            let digits = group.find(['.', ',']).unwrap_or(group.len());
            if digits != 3 || ahead.rest.trim_start().starts_with('/') {
                break;
            }
            *self = ahead;
            run.push_str(group);
            open = digits == group.len();
        }
        run
    }

    /// The 1,000 of a `k` that follows a number of a kind that is large enough for it, else 1.
    fn thousands(&mut self) -> f64 {
        let mut ahead = *self;
        ahead.spaces();
        if write::grouped(self.kind) && ahead.take(|c| c.is_ascii_alphabetic()) == "k" {
            *self = ahead;
            return 1000.0;
        }
        1.0
    }

    /// What stands below a slash, if there is a slash.
    fn denominator(&mut self) -> Result<Option<f64>, Misread> {
        let mut ahead = *self;
        ahead.spaces();
        if !ahead.skip('/') {
            return Ok(None);
        }
        ahead.spaces();
        let below = ahead.take(|c| c.is_ascii_digit() || matches!(c, '.' | ','));
        *self = ahead;
        // A point may end "36 1/2." but not stand inside "1/2.5".
        self.whole(below.strip_suffix('.').unwrap_or(below)).map(Some)
    }

    /// A fraction from what stands above and below; after whole inches it must be less than one.
    fn fraction(&self, above: &str, below: f64, mixed: bool) -> Result<f64, Misread> {
        let over = self.whole(above)?;
        if below < 0.5 {
            return Err(Misread::DivisionByZero { read: echo(self.typed) });
        }
        if over >= below {
            if mixed {
                return Err(self.garbage());
            }
            if above.len() > 1 && Measure::of(self.kind) == Measure::Powers(0, 1) {
                return Err(Misread::MissingSpace { read: echo(self.typed) });
            }
        }
        Ok(over / below)
    }

    /// Digits alone.
    fn whole(&self, digits: &str) -> Result<f64, Misread> {
        let number = if digits.bytes().all(|byte| byte.is_ascii_digit()) { digits.parse().ok() } else { None };
        number.ok_or_else(|| self.garbage())
    }

    /// The unit, if one follows, and its word if it is a single one.
    fn unit(&mut self) -> Result<Option<(Unit, &'a str)>, Misread> {
        let mut ahead = *self;
        ahead.spaces();
        ahead.skip('-'); // As in "36-inch".
        let Some((mut unit, mut name)) = ahead.factor()? else { return Ok(None) };
        loop {
            *self = ahead;
            ahead.spaces();
            let per = ahead.skip('/');
            let _joined = per || ahead.skip('·') || ahead.skip('-') || ahead.skip('.');
            ahead.spaces();
            let Some((other, _)) = ahead.factor()? else { return Ok(Some((unit, name))) };
            unit = unit.combined(other, per).ok_or_else(|| self.garbage())?;
            name = "";
        }
    }

    /// One word of a unit with its power, if a word follows.
    fn factor(&mut self) -> Result<Option<(Unit, &'a str)>, Misread> {
        let start = self.rest;
        let mut name = self.take(|c| c.is_ascii_alphabetic());
        if name.is_empty() {
            let symbol = start.chars().next().filter(|c| matches!(c, '"' | '\'' | '#' | '%' | '°'));
            let Some(symbol) = symbol else { return Ok(None) };
            (name, self.rest) = start.split_at_checked(symbol.len_utf8()).unwrap_or((start, ""));
        }
        if matches!(name, "ton" | "tons") {
            return Err(Misread::AmbiguousUnit { unit: name.to_string() });
        }
        let unknown = || Misread::UnknownUnit { unit: echo(start), kind: self.kind };
        let unit = word(name).ok_or_else(unknown)?;
        let Some(exponent) = self.exponent(name) else { return Ok(Some((unit, name))) };
        let raised = unit.power(exponent).ok_or_else(|| self.garbage())?;
        Ok(Some((raised, "")))
    }

    /// The 2 of `mm²`, `mm2` and `mm^2`; the 6 of `3 ft6` and the 2 of `1m20` are no powers.
    fn exponent(&mut self, name: &str) -> Option<i32> {
        for (exponent, raised, digit) in [(2, '²', '2'), (3, '³', '3'), (4, '⁴', '4')] {
            let mut ahead = *self;
            let flat = !ahead.skip(raised);
            if flat {
                let marked = ahead.skip('^') || name.ends_with(['m', 'n']);
                let goes_on = |c: char| c.is_ascii_digit() || matches!(c, '.' | ',');
                if !marked || !ahead.skip(digit) || ahead.rest.starts_with(goes_on) {
                    continue;
                }
            }
            *self = ahead;
            return Some(exponent);
        }
        None
    }

    /// Nothing more may follow but the point of an abbreviation.
    fn end(&self) -> Result<(), Misread> {
        let rest = self.rest.trim();
        if rest.is_empty() || rest == "." {
            return Ok(());
        }
        let number_follows =
            rest.trim_start_matches([' ', '-', '+', '.', ',']).starts_with(|c: char| c.is_ascii_digit());
        if number_follows {
            return Err(Misread::TwoNumbers { read: echo(self.typed), kind: self.kind });
        }
        Err(self.garbage())
    }

    fn garbage(&self) -> Misread {
        Misread::NotANumber { read: echo(self.typed), kind: self.kind }
    }

    fn skip(&mut self, wanted: char) -> bool {
        let after = self.rest.strip_prefix(wanted);
        self.rest = after.unwrap_or(self.rest);
        after.is_some()
    }

    fn spaces(&mut self) {
        self.rest = self.rest.trim_start();
    }

    fn take(&mut self, wanted: impl Fn(char) -> bool) -> &'a str {
        let end = self.rest.find(|c| !wanted(c)).unwrap_or(self.rest.len());
        let (taken, rest) = self.rest.split_at_checked(end).unwrap_or((self.rest, ""));
        self.rest = rest;
        taken
    }
}
