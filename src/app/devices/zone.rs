//! Zones, asked of the browser's own calendar: its data stays current, and ours need not travel.
//!
//! One cached formatter per zone. It is made through `Reflect`, so that an unknown name is an answer, not a trap.

use std::cell::RefCell;
use std::collections::HashMap;

use chrono::NaiveDate;
use js_sys::{Array, Date, Object, Reflect};
use slantlight::units::{Duration, Instant};
use wasm_bindgen::JsValue;

use super::js;

thread_local! {
    /// Formatters by zone; `None` for a zone the browser does not know.
    static FORMATTERS: RefCell<HashMap<String, Option<JsValue>>> = RefCell::default();
}

/// Name of the zone the phone is set to.
pub fn of_the_phone() -> Option<String> {
    let formatter = js::construct(&class()?, &[]).ok()?;
    js::text(&js::call(&formatter, "resolvedOptions", &[])?, "timeZone")
}

/// All zones the browser knows; empty where it does not list them.
pub fn known() -> Vec<String> {
    let listed = js::member(&js::global(), "Intl")
        .and_then(|intl| js::call(&intl, "supportedValuesOf", &["timeZone".into()]));
    listed
        .map(|listed| Array::from(&listed).iter().filter_map(|name| name.as_string()).collect())
        .unwrap_or_default()
}

/// Whether the browser knows `zone`.
pub fn is_known(zone: &str) -> bool {
    formatter(zone).is_some()
}

/// Local time minus UTC in `zone` at `instant`; `None` for an unknown zone.
pub fn offset(zone: &str, instant: Instant) -> Option<Duration> {
    let date = Date::new(&JsValue::from_f64(instant.unix_millis() as f64));
    let parts = Array::from(&js::call(&formatter(zone)?, "formatToParts", &[date.into()])?);
    let part = |wanted: &str| {
        let found = parts.iter().find(|part| js::text(part, "type").as_deref() == Some(wanted))?;
        js::text(&found, "value")?.parse::<u32>().ok()
    };
    let year = part("year")?.try_into().ok()?;
    let day = NaiveDate::from_ymd_opt(year, part("month")?, part("day")?)?;
    // Some engines write midnight as 24.
    let local = day.and_hms_opt(part("hour")? % 24, part("minute")?, part("second")?)?;
    let whole_second = instant.unix_millis().div_euclid(1000) * 1000;
    Some(Instant::from_utc(local) - Instant::from_unix_millis(whole_second))
}

/// The cached formatter of `zone`.
fn formatter(zone: &str) -> Option<JsValue> {
    FORMATTERS.with_borrow_mut(|formatters| {
        formatters.entry(zone.to_owned()).or_insert_with(|| make_formatter(zone)).clone()
    })
}

fn make_formatter(zone: &str) -> Option<JsValue> {
    let options = Object::new();
    let numeric = ["year", "month", "day", "hour", "minute", "second"].map(|part| (part, "numeric"));
    let fixed =
        [("timeZone", zone), ("hourCycle", "h23"), ("calendar", "gregory"), ("numberingSystem", "latn")];
    for (name, value) in fixed.into_iter().chain(numeric) {
        Reflect::set(&options, &name.into(), &value.into()).ok()?;
    }
    js::construct(&class()?, &["en-US".into(), options.into()]).ok()
}

fn class() -> Option<JsValue> {
    js::path(&js::global(), &["Intl", "DateTimeFormat"])
}
