//! What a shop has set, kept as lines and read back.

use linkwright::engine::shop::route::Machine;
use linkwright::engine::shop::route::machine::{
    self, LEAST_RPM, MOST_RPM, MOST_TAP_RPM, Refused, SAW_KERF, SETTINGS, STOCK_LENGTH, of_the_route,
};
use linkwright::present::make::machine::{field, take};
use linkwright::quantity::{System, inch, mm};

#[test]
fn what_is_set_comes_back_bit_for_bit() {
    let mut all = Machine::default();
    for (at, setting) in SETTINGS.iter().enumerate() {
        let [least, most] = setting.range;
        assert_eq!(all.set(setting, Some(least + (most - least) * (at as f64 + 1.0) / 37.0)), Ok(()), "{}", setting.id);
    }
    let text = machine::write(&all);
    assert_eq!(text.lines().count(), SETTINGS.len());
    assert_eq!(machine::read(&text), all);
    assert_eq!(machine::write(&Machine::default()), "", "what is not set is not kept");
    let mut one = Machine::default();
    assert_eq!(one.set(&SAW_KERF, Some(mm(2.0))), Ok(()));
    assert_eq!(machine::write(&one), "saw-kerf=0.002\n");
}

#[test]
fn what_cannot_be_read_leaves_the_default() {
    let cases = [
        "",
        "no line of ours",
        "most-rpm",
        "most-rpm=",
        "most-rpm=fast",
        "most-rpm=NaN",
        "most-rpm=inf",
        "most-rpm=-100",
        "most-rpm=1e300",
        "of-another-version=12",
        "=1200",
        "\u{0}most-rpm=1200",
    ];
    for text in cases {
        assert_eq!(machine::read(text), Machine::default(), "{text:?}");
    }
    let read = machine::read("most-rpm=900\r\nrubbish\n saw-kerf = 0.001 \nmost-rpm=1200");
    assert!((read.in_force(&MOST_RPM) - 1200.0).abs() < 1e-9, "the last one stands");
    assert!((read.in_force(&SAW_KERF) - mm(1.0)).abs() < 1e-12);
}

#[test]
fn a_field_takes_what_people_type() {
    let mut machine = Machine::default();
    let mut typed = |setting, text: &str, system| take(&mut machine, setting, text, system).err();
    for (text, system) in [("20 ft", System::Inch), ("240", System::Inch), ("6096", System::Metric)] {
        assert_eq!(typed(&STOCK_LENGTH, text, system), None, "{text}");
    }
    assert_eq!(typed(&MOST_RPM, "1,200 rpm", System::Inch), None);
    for (setting, text, says) in [
        (&STOCK_LENGTH, "2", "between"),
        (&STOCK_LENGTH, "12 lb", "weight"),
        (&MOST_RPM, "40000", "30,000 rpm"),
        (&MOST_RPM, "fast", "fast"),
    ] {
        let sentence = typed(setting, text, System::Inch).unwrap_or_default();
        assert!(sentence.contains(says), "{text}: {sentence}");
    }
    assert!((machine.in_force(&STOCK_LENGTH) - inch(240.0)).abs() < 1e-9, "a bad entry changes nothing");
    let shown = field(&machine, &STOCK_LENGTH, System::Inch);
    assert_eq!((shown.text.as_str(), shown.placeholder.as_str(), shown.unit), ("240", "144", "in"));
    assert!(shown.help.contains("144"), "{}", shown.help);
    assert_eq!(take(&mut machine, &STOCK_LENGTH, " ", System::Inch), Ok(()));
    assert_eq!(machine.decided(&STOCK_LENGTH), None);
}

/// Between a slowest speed and a fastest one below it no speed is left: whoever enters either is told which other stands
/// in the way, and nothing changes.
#[test]
fn a_slowest_speed_above_the_fastest_is_refused() {
    let told = |machine: &mut Machine, setting, text: &str| take(machine, setting, text, System::Inch).err();
    let mut machine = Machine::default();
    for (setting, text, says) in [
        (
            &LEAST_RPM,
            "2000",
            "2,000 rpm would be above the fastest spindle speed, 1,800 rpm: no speed would be left. Change the fastest spindle speed first, or enter another.",
        ),
        (&LEAST_RPM, "301", "above the fastest spindle speed for tapping, 300 rpm"),
        (&MOST_RPM, "59", "59 rpm would be below the slowest spindle speed, 60 rpm"),
        (&MOST_TAP_RPM, "5", "5 rpm would be below the slowest spindle speed, 60 rpm"),
    ] {
        let sentence = told(&mut machine, setting, text).unwrap_or_default();
        assert!(sentence.contains(says), "{text}: {sentence}");
        assert_eq!(machine, Machine::default());
    }
    for (setting, text) in [(&LEAST_RPM, "300"), (&MOST_RPM, "300"), (&MOST_RPM, "3000"), (&MOST_TAP_RPM, "2500")] {
        assert_eq!(told(&mut machine, setting, text), None, "{text}: as fast as slow is a speed");
    }
    assert_eq!(told(&mut machine, &LEAST_RPM, "2500"), None);
    // What is taken back is a default that the other may not be above either.
    let sentence = told(&mut machine, &MOST_RPM, "").unwrap_or_default();
    assert!(sentence.starts_with("1,800 rpm would be below the slowest spindle speed, 2,500 rpm"), "{sentence}");
    let set = |machine: &mut Machine| machine.set(&MOST_RPM, Some(2000.0));
    assert_eq!(set(&mut machine), Err(Refused::Crossed { slowest: &LEAST_RPM, fastest: &MOST_RPM }));
    // All at once they go, and what an earlier page kept crossed is read as nothing.
    machine.reset(of_the_route());
    assert_eq!(machine, Machine::default());
    for text in ["least-rpm=2000\nmost-rpm=900", "most-rpm=900\nleast-rpm=2000", "least-rpm=2000", "most-rpm=50"] {
        assert_eq!(machine::read(text), Machine::default(), "{text:?}");
    }
    assert_eq!(machine::read("least-rpm=30\nmost-rpm=50\nmost-tap-rpm=40").decided(&MOST_RPM), Some(50.0));
}
