//! What the sun does on one date at one site, in the order of the day: for the first screen and for Now.
//!
//! Skylines and rooms are not asked; the horizon is level. Heights are airless, of the sun's centre, as almanacs
//! have them.

pub mod ahead;
pub mod alarm;
pub mod backwards;
pub mod under_sky;
pub mod words;

use crate::sky::events::{CIVIL, Passage, RISE_AND_SET};
use crate::sky::sun::Sun;
use crate::units::{Bearing, Duration, Height, Instant, Span, Vector, World};

/// Under this height the sun counts as low. Common practice, no source.
pub const LOW_SUN: Height = Height::clamped(6.0);

/// Between this height and [`CIVIL`] the sky is blue and still bright. Common practice, no source.
pub const BLUE_FROM: Height = Height::clamped(-4.0);

/// Time between two points of the sun's path. Our own choice: under 3° apart.
const STEP: Duration = Duration::from_minutes(10);

/// Something the sun does.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum What {
    /// Blue hour before sunrise, from civil dawn on.
    MorningBlue,
    /// Upper limb comes over the level horizon.
    Sunrise,
    /// Up through [`LOW_SUN`].
    LowUntil,
    /// On the meridian.
    Highest,
    /// Down through [`LOW_SUN`].
    LowFrom,
    /// Upper limb goes below the level horizon.
    Sunset,
    /// Blue hour after sunset, until civil dusk.
    EveningBlue,
}

impl What {
    /// What it is called.
    pub const fn name(self) -> &'static str {
        match self {
            Self::MorningBlue | Self::EveningBlue => "blue hour",
            Self::Sunrise => "sunrise",
            Self::LowUntil => "sun over 6° high",
            Self::Highest => "sun at its highest",
            Self::LowFrom => "sun under 6° high",
            Self::Sunset => "sunset",
        }
    }
}

/// Something the sun does, and when.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Happening {
    /// What.
    pub what: What,
    /// When it is, or begins.
    pub at: Instant,
    /// When it ends, for what lasts.
    pub until: Option<Instant>,
}

/// What the sun does on a date, in order of time.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Today {
    /// What happens.
    pub happenings: Vec<Happening>,
    /// Rise and set, or that there is neither.
    pub sun: Passage,
}

impl Today {
    /// What the sun does in the course of `day`.
    pub fn of(sun: &Sun, day: Span) -> Self {
        let (rise_and_set, low) = (sun.passage(RISE_AND_SET, day), sun.passage(LOW_SUN, day));
        let (blue, civil) = (sun.passage(BLUE_FROM, day), sun.passage(CIVIL, day));
        let mut happenings: Vec<Happening> = [
            at(What::Sunrise, rise_and_set.up()),
            at(What::LowUntil, low.up()),
            at(What::Highest, &sun.transits(day)),
            at(What::LowFrom, low.down()),
            at(What::Sunset, rise_and_set.down()),
            lasting(What::MorningBlue, civil.up(), blue.up()),
            lasting(What::EveningBlue, blue.down(), civil.down()),
        ]
        .concat();
        crate::order::by_key(&mut happenings, |happening| happening.at);
        Self { happenings, sun: rise_and_set }
    }

    /// The first happening of a kind.
    pub fn first(&self, what: What) -> Option<Happening> {
        self.happenings.iter().copied().find(|happening| happening.what == what)
    }
}

/// Where the sun is seen in the course of `day`, every ten minutes, air included.
pub fn path(sun: &Sun, day: Span) -> Vec<(Instant, Vector<World>)> {
    let steps = day.duration().millis() / STEP.millis();
    let instant = |step: i64| day.start() + Duration::from_millis(step * STEP.millis());
    (0..=steps).map(|step| (instant(step), sun.apparent(instant(step)))).collect()
}

/// The instant at which a path passes a bearing, nearest in time to `near`; between its points it is taken as straight.
///
/// In the tropics a bearing may be passed twice a day, and others never: then nothing is found.
pub fn at_bearing(path: &[(Instant, Vector<World>)], bearing: Bearing, near: Instant) -> Option<Instant> {
    let passes = path.windows(2).filter_map(|pair| {
        let [(start, from), (end, to)] = [pair[0], pair[1]];
        let (whole, part) = (from.bearing().turn_to(to.bearing()), from.bearing().turn_to(bearing));
        let share = part.degrees() / whole.degrees();
        let passed = (0.0..=1.0).contains(&share);
        passed.then(|| start + Duration::from_millis(((end - start).millis() as f64 * share) as i64))
    });
    passes.min_by_key(|at| (*at - near).millis().abs())
}

fn at(what: What, instants: &[Instant]) -> Vec<Happening> {
    instants.iter().map(|at| Happening { what, at: *at, until: None }).collect()
}

/// Pairs each beginning with the first end after it; what runs over the day's end is left to the other day.
fn lasting(what: What, begins: &[Instant], ends: &[Instant]) -> Vec<Happening> {
    let end_of = |begin: &Instant| ends.iter().copied().find(|end| end > begin);
    begins
        .iter()
        .filter_map(|at| end_of(at).map(|end| Happening { what, at: *at, until: Some(end) }))
        .collect()
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::place::site::Site;
    use crate::units::{Latitude, Longitude};

    fn day_at(latitude: f64, date: &str) -> Today {
        let (latitude, longitude) = (Latitude::from_degrees(latitude), Longitude::from_degrees(11.0));
        let sun =
            Sun::new(Site { latitude: latitude.unwrap(), longitude: longitude.unwrap(), ..Site::default() });
        let start = Instant::parse(&format!("{date}T00:00:00Z")).unwrap();
        Today::of(&sun, Span::new(start, start + Duration::DAY).unwrap())
    }

    #[test]
    fn an_ordinary_day_has_its_order() {
        let kinds: Vec<What> = day_at(48.0, "2026-03-20").happenings.iter().map(|one| one.what).collect();
        use What::{EveningBlue, Highest, LowFrom, LowUntil, MorningBlue, Sunrise, Sunset};
        assert_eq!(kinds, [MorningBlue, Sunrise, LowUntil, Highest, LowFrom, Sunset, EveningBlue]);
    }

    #[test]
    fn polar_days_have_a_noon_and_no_sunset() {
        let summer = day_at(75.0, "2026-06-21");
        assert_eq!(summer.sun, Passage::AboveAllDay);
        assert!(summer.first(What::Highest).is_some() && summer.first(What::Sunset).is_none());
        let winter = day_at(75.0, "2026-12-21");
        assert_eq!(winter.sun, Passage::BelowAllDay);
        assert!(winter.first(What::LowFrom).is_none());
    }

    #[test]
    fn the_path_reaches_both_ends_of_a_short_day() {
        let start = Instant::parse("2027-03-28T00:00:00Z").unwrap();
        let day = Span::new(start, start + Duration::from_minutes(23 * 60)).unwrap();
        let path = path(&Sun::new(Site::default()), day);
        assert_eq!((path.first().unwrap().0, path.last().unwrap().0), (day.start(), day.end()));
    }
}
