//! A set-up under the sky that there is: what of its light is left when a cloud comes over, and when.
//!
//! No weather is known: the sky is somebody's word, and holds until they say otherwise. Under a closed cloud the light
//! has no direction, so that arc and heights of a wish mean nothing there; what it asks of the clock still holds.

use super::calendar;
use super::met::met;
use super::on_mark;
use super::stage::Stage;
use super::wish::{Sky, SunOnMark};
use crate::place::skyline::Skyline;
use crate::sky::sun::Sun;
use crate::units::{Span, Spans};

/// What a sky makes of a wish.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Light {
    /// It comes as planned.
    AsPlanned,
    /// It has no direction: any daylight does.
    Flat,
    /// The wish asks for the sun itself.
    NeedsTheSun,
    /// The wish asks for another sky.
    NeedsAnotherSky,
}

impl Light {
    /// Of the wish of `stage` under `sky`.
    pub fn of(stage: &Stage, sky: Sky) -> Self {
        let wished = stage.wish.sky;
        let (asks_sun, below) =
            (stage.wish.sun_on_mark != SunOnMark::No, stage.wish.heights.to.degrees() <= 0.0);
        match sky {
            Sky::Overcast if !matches!(wished, Sky::Any | Sky::Overcast) => Self::NeedsAnotherSky,
            // Blue hour comes under a cloud as well, only darker.
            Sky::Overcast if below => Self::AsPlanned,
            // A wish that takes the sun either way took its direction from it: a shaft, say.
            Sky::Overcast if asks_sun && wished != Sky::Overcast => Self::NeedsTheSun,
            Sky::Overcast => Self::Flat,
            Sky::Any => Self::AsPlanned,
            _ if wished == Sky::Overcast || (wished == Sky::Clear && sky != Sky::Clear) => {
                Self::NeedsAnotherSky
            }
            _ => Self::AsPlanned,
        }
    }

    /// Why it cannot be had, for a list of what is dropped.
    pub const fn trouble(self) -> Option<&'static str> {
        match self {
            Self::AsPlanned | Self::Flat => None,
            Self::NeedsTheSun => Some("needs the sun"),
            Self::NeedsAnotherSky => Some("needs another sky"),
        }
    }
}

/// When the set-up can be shot within `within` under `sky`.
pub fn windows(sun: &Sun, stage: &Stage, sky: Sky, within: Span) -> Spans {
    match Light::of(stage, sky) {
        Light::AsPlanned => met(sun, stage, within),
        Light::NeedsTheSun | Light::NeedsAnotherSky => Spans::none(),
        Light::Flat => {
            let day = on_mark::sun_up(sun, &Skyline::default(), within);
            let hours = stage.wish.hours.map(|hours| calendar::hours(&stage.zone, hours, within));
            hours.map_or(day.clone(), |hours| day.and(&hours))
        }
    }
}

#[cfg(test)]
mod tests {
    use super::super::fixture::{field, loft, span};
    use super::super::wish::{SunOnMark, Wish};
    use super::*;

    fn with(stage: Stage, sun_on_mark: SunOnMark, sky: Sky) -> Stage {
        Stage { wish: Wish { sun_on_mark, sky, ..stage.wish.clone() }, ..stage }
    }

    #[test]
    fn a_cloud_takes_the_sun_and_leaves_what_asked_for_none() {
        let shaft = with(loft(), SunOnMark::Yes, Sky::Any);
        let wrap = with(loft(), SunOnMark::No, Sky::Any);
        assert_eq!(Light::of(&shaft, Sky::Overcast), Light::NeedsTheSun);
        assert_eq!(Light::of(&wrap, Sky::Overcast), Light::Flat);
        assert_eq!(
            Light::of(&with(loft(), SunOnMark::No, Sky::Clear), Sky::Overcast),
            Light::NeedsAnotherSky
        );
        assert_eq!(Light::of(&with(field(), SunOnMark::Any, Sky::Any), Sky::Overcast), Light::NeedsTheSun);
        assert_eq!(Light::of(&with(field(), SunOnMark::Any, Sky::Overcast), Sky::Overcast), Light::Flat);
        let day = span("2027-03-11T00:00:00Z", "2027-03-12T00:00:00Z");
        let sun = Sun::new(wrap.site);
        assert!(windows(&sun, &shaft, Sky::Overcast, day).is_empty());
        let hours = windows(&sun, &wrap, Sky::Overcast, day).total().minutes() / 60.0;
        assert!((11.0..12.5).contains(&hours), "all of a March day: {hours}");
    }

    #[test]
    fn without_a_cloud_everything_is_as_planned_but_what_waited_for_one() {
        let day = span("2027-03-11T00:00:00Z", "2027-03-12T00:00:00Z");
        let stage = with(loft(), SunOnMark::Yes, Sky::Any);
        let sun = Sun::new(stage.site);
        assert_eq!(windows(&sun, &stage, Sky::Clear, day), met(&sun, &stage, day));
        assert_eq!(
            Light::of(&with(loft(), SunOnMark::No, Sky::Overcast), Sky::Clear),
            Light::NeedsAnotherSky
        );
        assert_eq!(Light::of(&with(loft(), SunOnMark::Yes, Sky::Clear), Sky::Hazy), Light::NeedsAnotherSky);
        assert_eq!(Light::of(&with(loft(), SunOnMark::Yes, Sky::Hazy), Sky::Hazy), Light::AsPlanned);
    }
}
