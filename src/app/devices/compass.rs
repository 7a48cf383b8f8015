//! The compass: where the phone's long edge points, true, averaged over the last two seconds, with what the phone says
//! of its own exactness.

use std::collections::VecDeque;

use leptos::prelude::*;
use slantlight::place::aim::{Aim, aim};
use slantlight::place::heading::Attitude;
use slantlight::place::site::Site;
use slantlight::sky::declination::declination;
use slantlight::units::{Bearing, Degrees, Height, MagneticBearing};

use super::clock;
use super::orientation::{self, Reading};

/// Readings older than this no longer count, milliseconds.
const WINDOW_MS: i64 = 2000;

/// Reads the compass until the owner of the calling component goes; `None` while there is no reading.
///
/// `off` is how much the compass reads too little here, by a shadow.
pub fn aimed(site: Signal<Option<Site>>, off: Signal<Degrees>) -> ReadSignal<Option<Aim>> {
    let (shown, set_shown) = signal(None);
    let readings = StoredValue::new(VecDeque::<(i64, (Bearing, Height))>::new());
    orientation::watch(move |reading| {
        let now = clock::now();
        let turn = site.get_untracked().map_or(Degrees::default(), |site| declination(site, now).value);
        let turn = Degrees::from_degrees(turn.degrees() + off.get_untracked().degrees());
        let Some(read) = direction(&reading, turn) else { return };
        let stated = reading.compass_accuracy.map(Degrees::from_degrees);
        let mean = readings.try_update_value(|readings| {
            readings.push_back((now.unix_millis(), read));
            while readings.front().is_some_and(|(at, _)| now.unix_millis() - at > WINDOW_MS) {
                readings.pop_front();
            }
            let recent: Vec<_> = readings.iter().map(|(_, read)| *read).collect();
            aim(&recent).map(|aim| Aim { stated, ..aim })
        });
        set_shown.set(mean.flatten());
    });
    shown
}

/// The true direction of one reading.
fn direction(reading: &Reading, declination: Degrees) -> Option<(Bearing, Height)> {
    let [alpha, beta, gamma] = [reading.alpha, reading.beta, reading.gamma].map(Degrees::from_degrees);
    let edge = Attitude { alpha, beta, gamma }.long_edge();
    let magnetic = match reading.compass_heading {
        Some(heading) => MagneticBearing::from_degrees(heading),
        None => edge.bearing?,
    };
    Some((magnetic.to_true(declination), edge.height))
}
