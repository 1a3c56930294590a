//! What a formula must show to be trusted; every fault found is told as a sentence.

use linkwright::engine::formula::{Condition, Example, Formula};
use linkwright::engine::notation::{self, Term};
use linkwright::quantity::{Exponents, Kind};

/// How many points text and code are compared at.
const POINTS: usize = 200;
/// Text and code may differ by rounding only.
const SAME: f64 = 1e-9;

/// A small generator of repeatable numbers (splitmix64).
pub(crate) struct Numbers(u64);

impl Numbers {
    /// A generator whose numbers depend on the name alone.
    pub(crate) fn named(name: &str) -> Self {
        Self(
            name.bytes()
                .fold(0xcbf2_9ce4_8422_2325, |hash, byte| (hash ^ u64::from(byte)).wrapping_mul(0x0100_0000_01b3)),
        )
    }

    fn next(&mut self) -> u64 {
        self.0 = self.0.wrapping_add(0x9e37_79b9_7f4a_7c15);
        let mut mixed = self.0;
        mixed = (mixed ^ (mixed >> 30)).wrapping_mul(0xbf58_476d_1ce4_e5b9);
        mixed = (mixed ^ (mixed >> 27)).wrapping_mul(0x94d0_49bb_1331_11eb);
        mixed ^ (mixed >> 31)
    }

    /// Evenly between two bounds.
    pub(crate) fn between(&mut self, low: f64, high: f64) -> f64 {
        let share = (self.next() >> 11) as f64 / (1_u64 << 53) as f64;
        low + share * (high - low)
    }

    /// A positive value over the decades that a kind of quantity takes.
    fn value(&mut self, kind: Kind) -> f64 {
        let (low, high) = match kind {
            Kind::Angle => return self.between(0.001, 3.2),
            Kind::Percent => (-2.0, 0.3),
            Kind::Count | Kind::Turns | Kind::InInches | Kind::InMillimeters => (-1.0, 1.5),
            Kind::Ratio | Kind::PerLength | Kind::InMicrometers => (-2.0, 2.0),
            Kind::Length | Kind::FineLength | Kind::AreaPerLength => (-3.0, 0.5),
            Kind::Area => (-6.0, -1.0),
            Kind::SectionModulus => (-7.0, -2.0),
            Kind::SecondMoment => (-10.0, -4.0),
            Kind::Force | Kind::Weight | Kind::Moment | Kind::Torque => (0.0, 6.0),
            Kind::WeightDensity | Kind::ForcePerLength | Kind::Stiffness => (3.0, 8.0),
            Kind::Compliance => (-9.0, -4.0),
            Kind::Stress | Kind::Pressure => (6.0, 11.5),
        };
        10_f64.powf(self.between(low, high))
    }

    /// Values for every symbol; some negative where asked, for conditions must be right there too.
    pub(crate) fn point(&mut self, formula: &Formula, signs: bool) -> Vec<f64> {
        let mut point = Vec::new();
        for symbol in formula.given {
            let sign = if signs && self.between(0.0, 1.0) < 0.2 { -1.0 } else { 1.0 };
            point.push(sign * self.value(symbol.kind));
        }
        point
    }
}

/// Everything wrong with a formula and its example.
pub(crate) fn faults(formula: &Formula, example: &Example) -> Vec<String> {
    let mut faults = Vec::new();
    match notation::parse(formula.text) {
        Err(misspelled) => faults.push(format!("text does not read: {misspelled:?}")),
        Ok(term) => {
            let printed = notation::text(&term);
            if notation::parse(&printed).as_ref() != Ok(&term) {
                faults.push(format!("prints as {printed}, which reads as something else"));
            }
            symbols(formula, &term, &mut faults);
            match notation::exponents(&term, &|name| kind_of(formula, name)) {
                Err(why) => faults.push(format!("units do not close: {why}")),
                Ok(found) if !notation::close(found, formula.result.kind.exponents()) => {
                    faults.push(format!("units come to {found:?}, declared {:?}", formula.result.kind.exponents()));
                }
                Ok(_) => {}
            }
            code(formula, &term, &mut faults);
        }
    }
    formula.holds.iter().for_each(|it| condition(formula, it, &mut faults));
    reproduced(formula, example, &mut faults);
    words(formula, &mut faults);
    if example.origin.trim().is_empty() {
        faults.push("the origin of its example is empty".to_string());
    }
    faults
}

/// The value of a symbol at a point.
pub(crate) fn value_of(formula: &Formula, point: &[f64], name: &str) -> Option<f64> {
    formula.given.iter().position(|symbol| symbol.name == name).and_then(|index| point.get(index).copied())
}

fn kind_of(formula: &Formula, name: &str) -> Option<Exponents> {
    formula.given.iter().find(|symbol| symbol.name == name).map(|symbol| symbol.kind.exponents())
}

fn symbols(formula: &Formula, term: &Term, faults: &mut Vec<String>) {
    let used = std::cell::RefCell::new(Vec::new());
    notation::text_with(term, &|name| {
        used.borrow_mut().push(name.to_string());
        name.to_string()
    });
    let used = used.into_inner();
    for (index, symbol) in formula.given.iter().enumerate() {
        if !used.iter().any(|name| name == symbol.name) {
            faults.push(format!("{} is given and not used", symbol.name));
        }
        if formula.given[..index].iter().any(|earlier| earlier.name == symbol.name) {
            faults.push(format!("{} is given twice", symbol.name));
        }
    }
    used.iter()
        .filter(|name| kind_of(formula, name).is_none())
        .for_each(|name| faults.push(format!("{name} is used and not given")));
}

fn code(formula: &Formula, term: &Term, faults: &mut Vec<String>) {
    let mut numbers = Numbers::named(formula.id);
    let mut compared = 0;
    for _ in 0..100 * POINTS {
        let point = numbers.point(formula, false);
        if compared == POINTS {
            return;
        }
        if formula.broken(&point).is_some() {
            continue;
        }
        compared += 1;
        let told = notation::evaluate(term, &|name| value_of(formula, &point, name)).unwrap_or(f64::NAN);
        let coded = (formula.code)(&point);
        let same = (told - coded).abs() <= SAME * coded.abs();
        if !same {
            return faults.push(format!("at {point:?} text gives {told}, code gives {coded}"));
        }
    }
    faults.push(format!("only {compared} points meet its conditions"));
}

fn condition(formula: &Formula, condition: &Condition, faults: &mut Vec<String>) {
    let comparison = match notation::comparison(condition.text) {
        Ok(comparison) => comparison,
        Err(misspelled) => return faults.push(format!("condition {} does not read: {misspelled:?}", condition.text)),
    };
    let units = |term: &Term| notation::exponents(term, &|name| kind_of(formula, name));
    match (units(&comparison.left), units(&comparison.right)) {
        // Zero is zero in every unit.
        (Ok(_), Ok(_)) if matches!(comparison.right, Term::Number(..)) && condition.text.ends_with(" 0") => {}
        (Ok(left), Ok(right)) if notation::close(left, right) => {}
        sides => faults.push(format!("condition {} compares unlike units: {sides:?}", condition.text)),
    }
    let mut numbers = Numbers::named(condition.text);
    let mut seen = [false; 2];
    for _ in 0..20 * POINTS {
        let point = numbers.point(formula, true);
        let coded = (condition.test)(&point);
        seen[usize::from(coded)] = true;
        if comparison.holds(&|name| value_of(formula, &point, name)) != Some(coded) {
            return faults.push(format!("condition {} and its code disagree at {point:?}", condition.text));
        }
    }
    if seen != [true; 2] {
        faults.push(format!("condition {} never changes its answer", condition.text));
    }
}

/// Half of the last digit printed, which is all that a printed number promises.
pub(crate) fn half_of_last_digit(printed: &str) -> f64 {
    let (mantissa, exponent) = printed.split_once('e').unwrap_or((printed, "0"));
    let decimals = mantissa.split_once('.').map_or(0, |(_, decimals)| decimals.len());
    0.5 * 10_f64.powi(exponent.parse::<i32>().unwrap_or_default() - decimals as i32)
}

fn reproduced(formula: &Formula, example: &Example, faults: &mut Vec<String>) {
    if example.given.len() != formula.given.len() {
        return faults.push("its example gives another number of values".to_string());
    }
    if let Some(condition) = formula.broken(example.given) {
        faults.push(format!("its example breaks {}", condition.text));
    }
    let found = (formula.code)(example.given) / example.unit;
    let printed: f64 = example.gives.parse().unwrap_or(f64::NAN);
    // The last bits of a division must not decide about a number that ends in a five.
    let promised = half_of_last_digit(example.gives) * (1.0 + 1e-9);
    let reproduced = (found - printed).abs() <= promised;
    if !reproduced {
        faults.push(format!("its example gives {}, code gives {found}", example.gives));
    }
}

fn words(formula: &Formula, faults: &mut Vec<String>) {
    let mut say = |what: &str, words: &str| {
        if words.trim().is_empty() {
            faults.push(format!("{what} is empty"));
        }
    };
    say("what it gives", formula.says);
    say("the name of its result", formula.result.name);
    say("the place in its source", formula.source.place);
    for symbol in formula.given {
        say(symbol.name, symbol.meaning);
    }
}
