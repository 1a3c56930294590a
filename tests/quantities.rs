//! What people type is read as they mean it, what cannot be meant is refused, and what is shown is right.

#[path = "quantities/tables.rs"]
mod tables;

use linkwright::inputs::LENGTH;
use linkwright::quantity::Kind::*;
use linkwright::quantity::System::{self, Inch, Metric};
use linkwright::quantity::{
    Kind, fit, fraction, in_all, inch, measured, mm, plain, read, reading, show, show_fine, trade, unit_name,
};
use tables::{KINDS, PLAIN, READS, REFUSED, SHOWN, SHOWN_FINE};

fn near(one: f64, other: f64) -> bool {
    (one - other).abs() <= 1e-12 * other.abs()
}

#[test]
fn what_people_type_is_read() {
    for (text, kind, system, expected) in READS {
        let value = read(text, *kind, *system);
        let right = value.as_ref().is_ok_and(|value| near(*value, *expected));
        assert!(right, "{text:?} as {kind:?} in {system:?} gives {value:?}, not {expected}");
    }
}

#[test]
fn inches_are_said_to_be_assumed() {
    for (text, kind, system, assumed) in [
        ("36 1/2", Length, Metric, true),
        ("-1/16", FineLength, Metric, true),
        ("½", Length, Metric, true),
        ("36 1/2", Length, Inch, false),
        ("36 1/2 in", Length, Metric, false),
        ("36 1/2 mm", Length, Metric, false),
        ("3' 1/2", Length, Metric, false),
        ("927", Length, Metric, false),
        ("1/2", Weight, Metric, false),
    ] {
        let reading = reading(text, kind, system);
        assert_eq!(reading.map(|reading| reading.inches_assumed), Ok(assumed), "{text:?} as {kind:?} in {system:?}");
    }
    let said = LENGTH.question("36 1/2", Metric);
    let expected = "36-1/2 in? A fraction is read as inches, here 927.1 mm; for millimeters type a decimal.";
    assert_eq!(said.as_deref(), Some(expected));
    assert_eq!((LENGTH.question("36 1/2", Inch), LENGTH.question("four", Metric)), (None, None));
    assert_eq!(LENGTH.read("36 1/2", Metric), Ok(Some(inch(36.5))));
    assert!(LENGTH.read("4 300", Inch).is_err(), "4300 in is out of range");
}

#[test]
fn what_cannot_be_meant_is_refused_with_a_sentence() {
    for (text, kind, fragment) in REFUSED {
        let sentence = match read(text, *kind, Inch) {
            Ok(value) => format!("read as {value}"),
            Err(misread) => misread.sentence(),
        };
        assert!(sentence.contains(fragment), "{text:?} as {kind:?}: {sentence}");
        assert!(sentence.ends_with('.') && sentence.chars().count() < 140, "{sentence}");
    }
    for long in ["9".repeat(10_000), "1/in".repeat(10_000), "m ".repeat(10_000)] {
        for kind in KINDS {
            let sentence = read(&long, *kind, Inch).err().map(|misread| misread.sentence()).unwrap_or_default();
            assert!(sentence.starts_with("That is too long to be one number; this"), "{kind:?}: {sentence}");
        }
    }
}

#[test]
fn values_are_shown_as_people_write_them() {
    for (value, kind, system, expected) in SHOWN {
        assert_eq!(show(*value, *kind, *system), *expected, "{value} as {kind:?} in {system:?}");
    }
    for (value, kind, system, expected) in SHOWN_FINE {
        assert_eq!(show_fine(*value, *kind, *system), *expected, "{value} as {kind:?} in {system:?}");
    }
    for (value, kind, system, expected) in PLAIN {
        assert_eq!(plain(*value, *kind, *system), *expected, "{value} as {kind:?} in {system:?}");
    }
    assert_eq!(fraction(inch(36.5)), "36-1/2");
    assert_eq!(fraction(f64::NAN), "—");
    assert_eq!((unit_name(Length, Inch), unit_name(Force, Metric), unit_name(Ratio, Inch)), ("in", "N", ""));
    assert_eq!(System::default(), Inch);
}

#[test]
fn one_length_is_written_one_way() {
    // 15/16 in and a quarter inch lie halfway between two steps; the last bits of a sum must not decide.
    for value in [inch(15.0 / 16.0), inch(1.5) - inch(9.0 / 16.0), inch(0.3125) * 3.0] {
        assert_eq!(show(value, FineLength, Inch), "0.938 in");
    }
    assert_eq!((measured(inch(0.25), Metric), measured(inch(44.0), Metric)), ("6.4 mm".into(), "1117.6 mm".into()));
    for (value, expected) in [(1.3125, "1-5/16 in"), (1.312, "1-5/16 in"), (0.938, "15/16 in"), (1.237, "1.237 in")] {
        assert_eq!(measured(inch(value), Inch), expected);
        assert_eq!(fit(inch(value), Inch), expected);
    }
    assert_eq!((fit(mm(38.104), Metric), fit(inch(0.25), Metric)), ("38.10 mm".into(), "6.35 mm".into()));
}

#[test]
fn what_is_bought_keeps_its_name() {
    for (value, system, expected) in [
        (inch(1.375), Metric, "1-3/8 in (34.9 mm)"),
        (inch(1.375), Inch, "1-3/8 in"),
        (inch(0.3125), Metric, "5/16 in (7.9 mm)"),
        (inch(2.5), Metric, "2-1/2 in (63.5 mm)"),
        (inch(0.12), Metric, "0.120 in (3.0 mm)"),
        (mm(12.0), Inch, "12 mm (0.472 in)"),
        (mm(12.0), Metric, "12 mm"),
        (mm(50.0), Inch, "50 mm (1-31/32 in)"),
        (mm(33.3), Metric, "33.3 mm"),
    ] {
        assert_eq!(trade(value, system), expected);
    }
}

#[test]
fn a_total_is_never_less_than_what_is_shown() {
    let cuts = [(2.0, inch(44.1875)), (1.0, mm(919.24)), (1.0, mm(411.15))];
    // 2 · 1122.4 + 919.2 + 411.2
    assert_eq!(in_all(cuts.into_iter(), Metric), "3576 mm");
    assert_eq!(in_all([(2.0, inch(35.125)), (2.0, inch(32.875))].into_iter(), Inch), "136 in");
    assert_eq!(in_all([(3.0, inch(12.3456))].into_iter(), Inch), "37-1/16 in");
}

/// Reads back, and is the same to a share of its size.
fn reads_back(text: &str, kind: Kind, system: System, value: f64, share: f64) {
    let back = read(text, kind, system);
    let same = back.as_ref().is_ok_and(|back| (back - value).abs() <= share * value.abs());
    assert!(same, "{text:?} as {kind:?} in {system:?} gives {back:?}, not {value}");
}

#[test]
fn a_field_gives_back_what_was_put_in() {
    for count in 0..=120 * 32 {
        let value = inch(f64::from(count) / 32.0);
        reads_back(&plain(value, Length, Inch), Length, Inch, value, 1e-12);
        reads_back(&show(value, Length, Inch), Length, Metric, value, 1e-12);
    }
    for count in 0..=15_000 {
        let value = mm(f64::from(count) / 10.0);
        reads_back(&plain(value, Length, Metric), Length, Metric, value, 1e-12);
        reads_back(&format!("{} mm", plain(value, Length, Metric)), Length, Inch, value, 1e-12);
    }
}

/// A small linear congruential generator (Knuth's MMIX constants), so that every run is the same.
struct Dice(u64);

impl Dice {
    fn roll(&mut self, sides: usize) -> usize {
        self.0 = self.0.wrapping_mul(6_364_136_223_846_793_005).wrapping_add(1_442_695_040_888_963_407);
        (self.0 >> 33) as usize % sides
    }
}

#[test]
fn what_is_shown_reads_back_in_either_system() {
    let mut dice = Dice(1);
    for round in 0..20_000 {
        let (kind, system) = (KINDS[round % KINDS.len()], if dice.roll(2) == 0 { Inch } else { Metric });
        // From 1 to 99,999 of whatever the field's unit is.
        let typed = (dice.roll(90_000) + 10_000) as f64 / [1.0, 10.0, 100.0, 1e3, 1e4][dice.roll(5)];
        let Ok(value) = read(&format!("{typed:.4}"), kind, system) else { panic!("{typed} as {kind:?}") };
        reads_back(&plain(value, kind, system), kind, system, value, 1e-4);
        // The other system: what is shown carries its own unit. Fractions and tenths of small things are coarse.
        let other = if system == Inch { Metric } else { Inch };
        let fine = show_fine(value, kind, system);
        let coarse = matches!(kind, Length | FineLength | InInches | InMillimeters);
        reads_back(&fine, kind, other, value, if coarse { 6e-3 } else { 1e-4 });
        if !matches!(kind, Length | FineLength | Weight | Turns | Count) {
            reads_back(&show(value, kind, system), kind, other, value, 6e-3);
        }
    }
}

#[test]
fn nothing_typed_and_nothing_shown_goes_wrong() {
    #[rustfmt::skip]
    const PIECES: &[&str] = &[
        "1", "0", "36", "9", "/", "⁄", " ", "\u{a0}", "-", "−", "+", ".", ",", "'", "\"", "″", "½", "⅞", "in", "ft", "mm", "m", "lb",
        "N", "°", "%", "#", "·", "²", "2", "^", "e", "inf", "nan", "３", "／", "😀", "é", "\u{202e}", "\u{0}", "ß", "ton", "s", "x",
        "1/in", "in per 1,000 lbf", "''",
    ];
    let mut dice = Dice(2);
    for round in 0..20_000 {
        let text: String = (0..dice.roll(9)).map(|_| PIECES[dice.roll(PIECES.len())]).collect();
        let bytes: Vec<u8> = (0..dice.roll(12)).map(|_| dice.roll(256) as u8).collect();
        for text in [text, String::from_utf8_lossy(&bytes).into_owned()] {
            match read(&text, KINDS[round % KINDS.len()], Inch) {
                Ok(value) => assert!(value.is_finite(), "{text:?}"),
                Err(misread) => assert!(misread.sentence().chars().count() < 140, "{text:?}: {}", misread.sentence()),
            }
        }
    }
    for _ in 0..1_000 {
        let bits = (dice.roll(1 << 31) as u64) << 33 | (dice.roll(1 << 31) as u64) << 2;
        let value = f64::from_bits(bits);
        for kind in KINDS {
            for text in [show(value, *kind, Inch), show_fine(value, *kind, Metric), plain(value, *kind, Metric)] {
                let zero = text.starts_with('-') && !text.contains(|c: char| ('1'..='9').contains(&c));
                assert!(!text.contains("NaN") && !text.contains("inf") && !zero, "{value:e} as {kind:?}: {text}");
            }
        }
    }
}
