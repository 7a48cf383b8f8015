//! A set-up under the sky that there is: what of its light is left when a cloud comes over, and when.
//!
//! No weather is known: the sky is somebody's word, and holds until they say otherwise. Under a closed cloud the light
//! has no direction, so that arc and heights of a wish mean nothing there; what it asks of the clock still holds. A wish for
//! no sun on the mark is met by it, unless what it wants is the sun beside the mark.

use crate::place::skyline::Skyline;
use crate::plan::calendar;
use crate::plan::search::met::met;
use crate::plan::search::on_mark;
use crate::plan::stage::Stage;
use crate::plan::wish::{Arc, Sky, SunOnMark};
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
        let below = stage.wish.heights.to.degrees() <= 0.0;
        let asks_sun = stage.wish.sun_on_mark != SunOnMark::No || is_behind(stage.wish.arc);
        match sky {
            Sky::Overcast if !matches!(wished, Sky::Any | Sky::Overcast) => Self::NeedsAnotherSky,
            // Blue hour comes under a cloud as well, only darker.
            Sky::Overcast if below => Self::AsPlanned,
            // A wish that takes the sun either way took its direction from it.
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

/// Whether a wish lies behind the subject alone. Where it wants no sun on the mark, light from there is wanted for its own
/// sake: a shaft, a bright edge on a wall. A cloud has none of it to give, while the wrap of a window it leaves.
fn is_behind(arc: Arc) -> bool {
    arc.from.degrees() >= 90.0 && arc.to.degrees() <= 270.0
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
    use super::*;
    use crate::plan::fixture::{field, loft, span};
    use crate::plan::wish::presets::PRESETS;
    use crate::plan::wish::{SunOnMark, Wish};
    use crate::units::Degrees;

    fn with(stage: Stage, sun_on_mark: SunOnMark, sky: Sky) -> Stage {
        Stage { wish: Wish { sun_on_mark, sky, ..stage.wish.clone() }, ..stage }
    }

    #[test]
    fn a_cloud_takes_the_sun_and_leaves_what_asked_for_none() {
        let shaft = with(loft(), SunOnMark::Yes, Sky::Any);
        let from_the_side =
            Arc { from: Degrees::from_degrees(22.5), to: Degrees::from_degrees(112.5), either_side: true };
        let wish = Wish { arc: from_the_side, ..loft().wish };
        let wrap = with(Stage { wish, ..loft() }, SunOnMark::No, Sky::Any);
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
    fn of_the_ready_made_wishes_a_cloud_leaves_those_that_are_about_the_sky() {
        let under = |id: &str| {
            let preset = PRESETS.iter().find(|preset| preset.id == id).unwrap();
            let stage = loft();
            Light::of(&Stage { wish: preset.fill(&stage.wish), ..stage }, Sky::Overcast)
        };
        for id in ["rim", "three-quarter-back", "split", "shaft", "silhouette", "flat"] {
            assert_eq!(under(id), Light::NeedsTheSun, "{id}");
        }
        assert_eq!(under("window-wrap"), Light::Flat);
        assert_eq!(under("blue-hour"), Light::AsPlanned);
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
