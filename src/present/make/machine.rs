//! What a shop has set of its machines, as fields of a form.

use super::super::words;
use crate::engine::shop::route::Machine;
use crate::engine::shop::route::machine::{Measures, Refused, Setting};
use crate::quantity::{Kind, System, plain, read, show, unit_name};

/// Said above the fields.
pub const HELP: &str = "Assumed until you set your own; kept on this device only. An answer never depends on them.";

/// Said where the browser refuses to keep the settings.
pub fn not_kept(why: &str) -> String {
    format!("{why} Your settings are not kept: they are gone once you leave this view.")
}

/// What a field of a setting shows.
#[derive(Debug, Clone, PartialEq, Eq, Default)]
pub struct SettingField {
    /// What is set; empty while the default stands.
    pub text: String,
    /// The default, shown faint.
    pub placeholder: String,
    /// The unit of a bare number.
    pub unit: &'static str,
    /// The default and what stands behind it.
    pub help: String,
}

const fn kind(measures: Measures) -> Kind {
    match measures {
        Measures::Length => Kind::FineLength,
        Measures::Rpm | Measures::Minutes => Kind::Count,
    }
}

/// The unit of a setting.
pub const fn unit(setting: &Setting, system: System) -> &'static str {
    match setting.measures {
        Measures::Rpm => "rpm",
        Measures::Minutes => "min",
        Measures::Length => unit_name(Kind::FineLength, system),
    }
}

fn with_unit(setting: &Setting, value: f64, system: System) -> String {
    match setting.measures {
        Measures::Length => format!("{} {}", plain(value, Kind::FineLength, system), unit(setting, system)),
        _ => format!("{} {}", show(value, Kind::Count, system), unit(setting, system)),
    }
}

/// The field of a setting.
pub fn field(machine: &Machine, setting: &Setting, system: System) -> SettingField {
    let text = |value: f64| plain(value, kind(setting.measures), system);
    SettingField {
        text: machine.decided(setting).map(text).unwrap_or_default(),
        placeholder: text(setting.default),
        unit: unit(setting, system),
        help: format!("Default {}: {}.", with_unit(setting, setting.default, system), setting.cite.words()),
    }
}

/// Takes over what was typed into the field of a setting; empty text brings the default back.
///
/// # Errors
/// A sentence that says what was read and what would work; the setting then stays as it is.
pub fn take(machine: &mut Machine, setting: &'static Setting, typed: &str, system: System) -> Result<(), String> {
    if typed.trim().is_empty() {
        return machine.set(setting, None).map_err(|why| refused(machine, setting, setting.default, why, system));
    }
    let bare =
        if setting.measures == Measures::Length { typed } else { typed.trim().trim_end_matches(unit(setting, system)) };
    let value = read(bare, kind(setting.measures), system).map_err(|misread| misread.sentence())?;
    machine.set(setting, Some(value)).map_err(|why| refused(machine, setting, value, why, system))
}

/// What was read and what would work.
fn refused(machine: &Machine, setting: &'static Setting, value: f64, why: Refused, system: System) -> String {
    let read = with_unit(setting, value, system);
    match why {
        Refused::OutOfRange => {
            let [least, most] = setting.range.map(|limit| with_unit(setting, limit, system));
            format!("I read {read}. It must lie between {least} and {most}.")
        }
        Refused::Crossed { slowest, fastest } => {
            let (other, way) = if slowest == setting { (fastest, "above") } else { (slowest, "below") };
            let set = with_unit(other, machine.in_force(other), system);
            let name = words::lower(other.label);
            format!(
                "{read} would be {way} the {name}, {set}: no speed would be left. Change the {name} first, or enter another."
            )
        }
    }
}

/// How many of some settings the shop has set, for the fold that holds them.
pub fn summary(what: &str, machine: &Machine, settings: impl Iterator<Item = &'static Setting>) -> String {
    match settings.filter(|setting| machine.decided(setting).is_some()).count() {
        0 => format!("{what}: all assumed"),
        1 => format!("{what}: 1 is yours"),
        count => format!("{what}: {count} are yours"),
    }
}
