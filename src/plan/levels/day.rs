//! The curves of a day: bright side, shadow side and ratio, while there is light.

use chrono::NaiveDate;

use super::sides::Levels;
use super::subject::Subject;
use crate::light::daylight::Sky;
use crate::light::ratio::Ratio;
use crate::sky::sun::Sun;
use crate::units::{Duration, Height, Instant, Lux, Span};

/// Between samples: by day, and where the light goes fast.
const STEP: Duration = Duration::from_minutes(20);
const FAST: Duration = Duration::from_minutes(4);

/// Under this height of the sun it goes fast (our choice: there a stop lasts under half an hour).
const LOW: Height = Height::clamped(8.0);

/// Lower than this the sun gives no light to shoot in (end of nautical twilight).
const NIGHT: Height = Height::clamped(-12.0);

/// One sample.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Sample {
    /// When.
    pub at: Instant,
    /// The same on the day's clock.
    pub clock: Duration,
    /// Light of the bright side.
    pub bright: Lux,
    /// Light of the shadow side.
    pub shadow: Lux,
    /// The ratio; `None` for sides alike.
    pub ratio: Option<Ratio>,
}

/// The samples of a date.
pub fn curve(subject: &Subject, sun: &Sun, sky: Sky, date: NaiveDate) -> Vec<Sample> {
    let Some(day) = subject.zone.day(date) else { return Vec::new() };
    times(sun, day)
        .into_iter()
        .map(|at| {
            let levels = Levels::of(subject, &subject.hour(sun, at, sky));
            Sample {
                at,
                clock: at - day.start(),
                bright: levels.bright().total(),
                shadow: levels.shadow().total(),
                ratio: levels.ratio(),
            }
        })
        .collect()
}

/// When to look: while there is light, closer where it goes fast.
fn times(sun: &Sun, day: Span) -> Vec<Instant> {
    let (mut all, mut at) = (Vec::new(), day.start());
    while at <= day.end() {
        let height = sun.apparent(at).height();
        if height >= NIGHT {
            all.push(at);
        }
        let fast = (NIGHT..LOW).contains(&height);
        // From the night a step must not pass over the dawn.
        at = at + if fast || height < NIGHT { FAST } else { STEP };
    }
    all
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::plan::levels::fixture;

    #[test]
    fn the_curve_rises_and_falls_with_the_day() {
        let subject = fixture::open(180.0);
        let date = NaiveDate::from_ymd_opt(2026, 3, 20).unwrap();
        let samples = curve(&subject, &Sun::new(subject.site), Sky::Overcast, date);
        assert!((60..120).contains(&samples.len()), "{}", samples.len());
        let brightest = samples.iter().max_by(|a, b| a.bright.lux().total_cmp(&b.bright.lux())).unwrap();
        // Local noon at 11° E, UTC: about 11:24.
        assert!((brightest.clock.minutes() - 684.0).abs() < 40.0, "{brightest:?}");
        assert!(samples.iter().all(|one| one.bright >= one.shadow));
    }
}
