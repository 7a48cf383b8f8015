//! The sentences beneath the levels: modelling, tones, the window against the room, the evening, wet floor and haze.

use super::dusk;
use super::exposure::{Tones, window_view};
use super::hour::{Hour, is_clear};
use super::say;
use super::sheet::Asked;
use super::sides::Levels;
use super::towards::{self, Shaft};
use crate::light::patch::beams;
use crate::light::relative::LensFrame;
use crate::units::{Duration, Instant, Lux};
use crate::words;
use crate::words::stops as numbers;

/// How far ahead a wetted floor is told of (our choice: a set-up's takes).
const WET_AHEAD: i64 = 60;

impl Asked<'_> {
    /// Sentences with their headings.
    pub(super) fn notes(&self, levels: &Levels, hour: &Hour) -> Vec<(&'static str, String)> {
        let key = levels.bright().total();
        let mut notes = vec![("Light", say::modelling(levels))];
        notes.extend(tones(key, levels).map(|said| ("Tones", said)));
        notes.extend(levels.room.map(|own| ("Room", room(own))));
        notes.extend(self.window(key, hour).map(|said| ("Window", said)));
        notes.extend(self.evening(key).map(|said| ("Evening", said)));
        notes.extend(self.wet_floor(levels).map(|said| ("Wet floor", said)));
        notes.extend(self.haze(levels, hour).map(|said| ("Haze", said)));
        notes
    }

    fn window(&self, key: Lux, hour: &Hour) -> Option<String> {
        self.subject.inside.as_ref()?;
        let window = window_view(
            hour.mean_luminance(&self.subject.sees_at(hour.at).view, self.subject.lens.level())?,
            key,
        );
        let side = if window.over.stops() < 0.0 { "under" } else { "over" };
        let (over, nd) = (numbers::stops(window.over), numbers::nd(window.nd));
        Some(format!("its view {over} {side} the key; {nd} on the glass"))
    }

    /// How fast the light goes in the hours ahead.
    fn evening(&self, now: Lux) -> Option<String> {
        let fall = dusk::fall(&self.ahead(now))?;
        Some(say::fall(fall, &self.clock(fall.from)))
    }

    /// Where a wet floor mirrors sun, windows and lamps, and when it is to be wetted again.
    fn wet_floor(&self, levels: &Levels) -> Option<String> {
        let all = towards::wet(self.subject, levels.sun.as_ref().map(|(sun, _)| *sun));
        let (shown, hidden): (Vec<_>, Vec<_>) = all.into_iter().partition(|wet| wet.in_frame);
        let say = |wet: &towards::Wet| {
            let far = words::length(wet.distance, self.style.units);
            let gain = numbers::stops(wet.gain);
            format!("{} {far} before the lens, {gain} more than straight down", wet.of)
        };
        let shown: Vec<String> = shown.iter().map(say).collect();
        let hidden: Vec<String> = hidden.into_iter().map(|wet| wet.of).collect();
        let in_picture = match shown.is_empty() {
            true => "mirrors nothing in the picture".to_owned(),
            false => format!("mirrors in the picture {}", shown.join("; ")),
        };
        let out =
            if hidden.is_empty() { String::new() } else { format!("; out of it {}", hidden.join(", ")) };
        let again = self.subject.rig.wet_minutes.map(|minutes| self.wet_again(i64::from(minutes)));
        let caution = "Slippery: no cables in the wet.";
        (!shown.is_empty() || !hidden.is_empty() || again.is_some())
            .then(|| format!("{in_picture}{out}. {}{caution}", again.unwrap_or_default()))
    }

    /// "Wet it again at 18:00, 18:20. " by the user's word for how long a pass lasts.
    fn wet_again(&self, minutes: i64) -> String {
        let times = (1..).map(|n| n * minutes.max(1)).take_while(|after| *after <= WET_AHEAD.max(minutes));
        let clock = |after| self.clock(self.at + Duration::from_minutes(after));
        format!("Wet it now, then at {}. ", times.map(clock).collect::<Vec<_>>().join(", "))
    }

    /// In a room a shaft is there as soon as the sun comes in, whether or not it reaches the mark.
    fn haze(&self, levels: &Levels, hour: &Hour) -> Option<String> {
        let sun = hour.sun;
        let room = self.subject.inside.as_ref().and_then(|inside| inside.room.as_ref());
        let clear = is_clear(&self.subject.sees_at(hour.at).skyline, sun);
        let comes_in =
            room.is_some_and(|(room, _)| clear && !beams(room, room.room_from_world(sun)).is_empty());
        let lens = LensFrame::new(self.subject.lens, self.subject.tilt);
        let say = || {
            let shaft = say::shaft(Shaft::of(lens, sun));
            format!(
                "A shaft shows {shaft}. The least haze that works; tell everyone, ask first who answers the smoke alarm, and air the room."
            )
        };
        (comes_in || levels.sun.is_some()).then(say)
    }

    fn clock(&self, at: Instant) -> String {
        words::clock(words::to_the_minute(self.subject.zone.local(at)).time(), self.style.clock)
    }
}

/// A room's own light.
fn room(own: Lux) -> String {
    format!("walls, floor and ceiling add about {} on every side, an estimate", numbers::lux(own))
}

/// Where white and dark cloth land.
fn tones(key: Lux, levels: &Levels) -> Option<String> {
    let tones = Tones::of(key, levels.shadow().total());
    let [up, down] = [tones.highlight, tones.shadow].map(numbers::thirds);
    let said = format!("white {up} over, dark cloth in the shadow {down} under middle grey");
    tones.shadow.stops().is_finite().then_some(said)
}
