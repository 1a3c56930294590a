//! The time, and names that nothing else has.

use leptos::wasm_bindgen::JsValue;
use linkwright::store::Stamp;

const MONTHS: [&str; 12] = ["Jan", "Feb", "Mar", "Apr", "May", "Jun", "Jul", "Aug", "Sep", "Oct", "Nov", "Dec"];

/// Now, as ISO 8601 in UTC.
pub(crate) fn now() -> String {
    js_sys::Date::new_0().to_iso_string().into()
}

/// Such a time where the reader is: `Nov 25, 2026, 10:11 PM`; empty when it is none.
pub(crate) fn spoken_time(iso: &str) -> String {
    let date = js_sys::Date::new(&JsValue::from_str(iso));
    if date.get_time().is_nan() {
        return String::new();
    }
    format!("{}, {}", day_of(&date), hour_of(&date))
}

/// The time of day alone: `10:11 PM`; empty when it is none.
pub(crate) fn hour(iso: &str) -> String {
    let date = js_sys::Date::new(&JsValue::from_str(iso));
    if date.get_time().is_nan() { String::new() } else { hour_of(&date) }
}

/// Whether a time is of today, where the reader is.
pub(crate) fn is_today(iso: &str) -> bool {
    day_of(&js_sys::Date::new(&JsValue::from_str(iso))) == day_of(&js_sys::Date::new_0())
}

fn day_of(date: &js_sys::Date) -> String {
    let month = MONTHS.get(date.get_month() as usize).copied().unwrap_or_default();
    format!("{month} {}, {}", date.get_date(), date.get_full_year())
}

fn hour_of(date: &js_sys::Date) -> String {
    let (hours, half) = (date.get_hours(), if date.get_hours() < 12 { "AM" } else { "PM" });
    let hours = if hours % 12 == 0 { 12 } else { hours % 12 };
    format!("{hours}:{:02} {half}", date.get_minutes())
}

/// A name for something new: the time and enough of chance that even a thousand in one tick differ.
pub(crate) fn fresh_id() -> String {
    let chance = || (js_sys::Math::random() * 36_f64.powi(5)) as u64;
    [js_sys::Date::now() as u64, chance(), chance()].map(in_letters).concat()
}

/// The time and a name for something new.
pub(crate) fn stamp() -> Stamp {
    Stamp { now: now(), id: fresh_id() }
}

/// A number in small letters and digits.
fn in_letters(mut number: u64) -> String {
    let mut id = String::new();
    while number > 0 {
        id.insert(0, char::from_digit((number % 36) as u32, 36).unwrap_or_default());
        number /= 36;
    }
    id
}
