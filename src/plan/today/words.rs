//! The countdown in words: what is counted, what it holds, what ends it.
//!
//! The number itself is cut off, never rounded up: nobody shall be promised a second that is not there.

use super::ahead::{Ahead, Counted, Light};
use crate::place::skyline::Skyline;
use crate::place::zone::Zone;
use crate::plan::search::words as say;
use crate::plan::stage::Stage;
use crate::sky::search::SUN_RADIUS;
use crate::sky::sun::Sun;
use crate::units::{Duration, Height, Instant, Span};
use crate::words::{self, Clock};

/// A light that lasts longer is not counted: it does not end, as far as anybody on set cares. Our own choice.
const ENDLESS: Duration = Duration::from_minutes(36 * 60);

/// A countdown, ready to be read.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct Said {
    /// The instant to which the number counts; `None` where nothing is counted.
    pub counts_to: Option<Instant>,
    /// "to the slot, which then holds".
    pub what: String,
    /// "36 min", or nothing.
    pub holds: String,
    /// "¾ back, right. Ends 18:14, sun behind the skyline, ± 6 min."
    pub detail: String,
}

impl Said {
    /// The number: "10 min", "9:42"; empty where nothing is counted.
    pub fn big(&self, at: Instant) -> String {
        self.counts_to.map(|to| words::countdown(to - at)).unwrap_or_default()
    }

    /// The same for ears: "9 minutes".
    pub fn aloud(&self, at: Instant) -> String {
        self.counts_to.map(|to| words::countdown_aloud(to - at)).unwrap_or_default()
    }

    /// Until when the number stays as it is.
    pub fn stays_until(&self, at: Instant) -> Option<Instant> {
        self.counts_to.map(|to| at + words::countdown_holds(to - at))
    }
}

/// Whose light it is.
#[derive(Clone, Copy, Debug)]
pub struct Whose<'a> {
    /// The set-up, if one is at hand.
    pub stage: Option<&'a Stage>,
    /// The place's clock.
    pub zone: &'a Zone,
    /// What blocks the sky there.
    pub skyline: &'a Skyline,
    /// How the clock is written.
    pub clock: Clock,
}

/// What Now says at an instant.
pub fn said(ahead: &Ahead, sun: &Sun, whose: Whose<'_>, at: Instant) -> Said {
    let Some(counted) = ahead.counted(at).filter(|counted| counted.left(at) < ENDLESS) else {
        return endless(ahead, sun, whose, at);
    };
    let (what, holds) = match (counted.light, counted.inside) {
        (Light::Slot(..), true) => ("left of the slot", None),
        (Light::Slot(..), false) => ("to the slot, which then holds", Some(counted.span)),
        (Light::Sun, true) => ("of sun left", None),
        (Light::Sun, false) => ("to the sun, which then stays", Some(counted.span)),
        (Light::Blue, true) => ("of blue hour left", None),
        (Light::Blue, false) => ("to blue hour, which then holds", Some(counted.span)),
    };
    Said {
        counts_to: Some(at + counted.left(at)),
        what: what.to_owned(),
        holds: holds.map(|span| words::duration(span.duration())).unwrap_or_default(),
        detail: detail(ahead, sun, whose, (&counted, at)),
    }
}

/// Nothing begins or ends soon.
fn endless(ahead: &Ahead, sun: &Sun, whose: Whose<'_>, at: Instant) -> Said {
    let up = sun.apparent(at).height() > Height::default();
    let what = if up { "The sun does not go down today." } else { "The sun does not come up today." };
    let detail = next_slot(ahead, whose, at).unwrap_or_default();
    Said { what: what.to_owned(), detail, ..Said::default() }
}

/// What it looks like, what ends it and how surely; and where no slot is counted, when the next one is.
fn detail(ahead: &Ahead, sun: &Sun, whose: Whose<'_>, (counted, at): (&Counted<'_>, Instant)) -> String {
    let end = time(whose, counted.span.end());
    match (counted.light, whose.stage) {
        (Light::Slot(slot, edges), Some(stage)) => {
            let (light, why) = (say::light(&slot.light), say::ends(slot, stage));
            let unsure = say::outcome(edges).map(|what| format!(" It {what}.")).unwrap_or_default();
            let light = words::capital(&light);
            format!("{light}. Ends {end}, {why}, {}.{unsure}", words::plus_minus(edges.end))
        }
        (Light::Sun, _) => {
            let next = next_slot(ahead, whose, at).unwrap_or_default();
            format!("Ends {end}, {}. {next}", sun_ends(sun, whose, counted.span)).trim_end().to_owned()
        }
        _ => format!("Ends {end}. {}", next_slot(ahead, whose, at).unwrap_or_default()).trim_end().to_owned(),
    }
}

/// Whether a stretch of sun ends at the horizon or before.
fn sun_ends(sun: &Sun, whose: Whose<'_>, span: Span) -> &'static str {
    let height = sun.apparent(span.end()).height().degrees();
    let early = height > SUN_RADIUS.degrees() && !whose.skyline.is_level();
    if early { "behind the skyline" } else { "sunset" }
}

/// "Next slot Fri 12 Mar 2027, 17:20–17:56."
fn next_slot(ahead: &Ahead, whose: Whose<'_>, at: Instant) -> Option<String> {
    let (slot, stage) = (ahead.next_slot(at)?, whose.stage?);
    let day = if slot.date == whose.zone.date(at) { "today".to_owned() } else { words::date(slot.date) };
    Some(format!("Next slot {day}, {}.", say::clock(slot.span, stage, whose.clock)))
}

fn time(whose: Whose<'_>, at: Instant) -> String {
    words::clock(words::to_the_minute(whose.zone.local(at)).time(), whose.clock)
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::plan::fixture::{at, loft, on};

    fn big_at(text: &str) -> String {
        said_at(text).big(at(text))
    }

    fn said_at(text: &str) -> Said {
        let stage = loft();
        let sun = Sun::new(stage.site);
        let ahead = Ahead::of(&sun, Some(&stage), (&stage.zone, &stage.skyline), on(2027, 3, 11));
        let whose = Whose {
            stage: Some(&stage),
            zone: &stage.zone,
            skyline: &stage.skyline,
            clock: Clock::TwentyFour,
        };
        said(&ahead, &sun, whose, at(text))
    }

    #[test]
    fn it_names_what_it_counts_and_what_ends_it() {
        let stage = loft();
        let sun = Sun::new(stage.site);
        let ahead = Ahead::of(&sun, Some(&stage), (&stage.zone, &stage.skyline), on(2027, 3, 11));
        let slot = ahead.slots().next().unwrap().0;
        let early = slot.span.start() - Duration::from_minutes(12);
        let before = said_at(&early.to_string());
        assert_eq!(
            (before.big(early).as_str(), before.what.as_str()),
            ("12 min", "to the slot, which then holds")
        );
        assert_eq!(before.holds, words::duration(slot.hold()));
        assert!(before.detail.starts_with("¾ back, right. Ends 1"), "{}", before.detail);
        assert!(
            before.detail.contains(", sun below 4°, ± ") || before.detail.contains(", exact"),
            "{}",
            before.detail
        );
        let late = slot.span.end() - Duration::from_minutes(3);
        let within = said_at(&late.to_string());
        assert_eq!((within.big(late).as_str(), within.what.as_str()), ("3:00", "left of the slot"));
        assert!(within.holds.is_empty());
    }

    #[test]
    fn the_number_stays_until_it_says_so_and_not_longer() {
        for text in ["2027-03-11T14:03:21Z", "2027-03-11T17:31:07.25Z", "2027-03-11T18:30:00Z"] {
            let until = said_at(text).stays_until(at(text)).unwrap();
            assert!(until >= at(text));
            assert_eq!(big_at(&until.to_string()), big_at(text));
            let after = until + Duration::from_millis(1);
            assert_ne!(big_at(&after.to_string()), big_at(text));
        }
    }

    #[test]
    fn the_sun_s_own_end_is_sunset_and_the_next_slot_has_its_date() {
        let noon = said_at("2027-03-11T01:00:00Z");
        assert_eq!(noon.what, "to blue hour, which then holds", "{noon:?}");
        let late = said_at("2027-03-11T18:30:00Z");
        assert!(late.detail.contains("Next slot Fri 12 Mar 2027, "), "{late:?}");
    }
}
