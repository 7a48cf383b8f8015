//! Shot and reverse: two set-ups across the same line, both with the light they wish, on one date with one camera.
//!
//! Where both are backlit the sun must cross the line in between. If the day has no two such times, the nearest way
//! out is looked for: the line turned by whole degrees, or another mark.

use chrono::NaiveDate;

use crate::plan::search;
use crate::plan::search::slot::Slot;
use crate::plan::stage::Stage;
use crate::plan::wish::DateRange;
use crate::sky::sun::Sun;
use crate::units::{Bearing, Degrees, Duration, Instant};

/// Furthest that the line is turned in search of a way, degrees. Our own choice: then it is another scene.
const TURN: i32 = 90;

/// When each of the two is shot.
#[derive(Clone, Debug, PartialEq)]
pub struct Times {
    /// The slot of the shot.
    pub shot: Slot,
    /// The slot of the reverse.
    pub reverse: Slot,
    /// From the end of the one to the begin of the other, if each is shot as near to the other as can be.
    pub between: Duration,
}

/// How shot and reverse can both have their light.
#[derive(Clone, Debug, PartialEq)]
pub struct Both {
    /// As they stand.
    pub as_they_are: Option<Times>,
    /// With the line turned clockwise by as little as possible.
    pub turned: Option<(Degrees, Times)>,
    /// On the nearest other mark (its place in the list).
    pub elsewhere: Option<(usize, Times)>,
}

/// The stage of the reverse: the same subject seen from across the line.
pub fn reverse_of(shot: &Stage) -> Stage {
    shot.looking(shot.lens.reversed())
}

/// How shot and reverse can both have their light on `date`; `others` are the same two on other marks, the nearest
/// first, and are asked only if the day has no two times as they are.
pub fn both(sun: &Sun, pair: [&Stage; 2], others: &[[Stage; 2]], date: NaiveDate) -> Both {
    let as_they_are = times(sun, pair, date);
    if as_they_are.is_some() {
        return Both { as_they_are, turned: None, elsewhere: None };
    }
    let turned = (1..=TURN).flat_map(|by| [by, -by]).find_map(|by| {
        let by = Degrees::from_degrees(f64::from(by));
        let [shot, reverse] = pair.map(|stage| turned(stage, by));
        Some((by, times(sun, [&shot, &reverse], date)?))
    });
    let elsewhere = others.iter().enumerate().find_map(|(place, [shot, reverse])| {
        // The sun of one place: marks of a location share it.
        Some((place, times(sun, [shot, reverse], date)?))
    });
    Both { as_they_are, turned, elsewhere }
}

/// Two slots of a date that one camera can shoot one after the other with the least wait.
pub fn times(sun: &Sun, pair: [&Stage; 2], date: NaiveDate) -> Option<Times> {
    let day = [DateRange { from: date, to: date }];
    let [shots, reverses] = pair.map(|stage| search::slots(sun, stage, &day));
    let takes = pair.map(|stage| stage.takes);
    let pairs = shots.iter().flat_map(|shot| reverses.iter().map(move |reverse| (shot, reverse)));
    let timed = pairs.filter_map(|(shot, reverse)| {
        let between = wait(shot, reverse, takes)?;
        Some(Times { shot: shot.clone(), reverse: reverse.clone(), between })
    });
    timed.min_by_key(|times| times.between)
}

/// The least wait between the two, whichever goes first; `None` if one camera cannot do both.
fn wait(shot: &Slot, reverse: &Slot, [shot_takes, reverse_takes]: [Duration; 2]) -> Option<Duration> {
    let after = |first: &Slot, second: &Slot, [one, two]: [Duration; 2]| -> Option<Duration> {
        let earliest: Instant = first.span.start() + one;
        // The second may start from its own begin or once the first is done, and must still end in its slot.
        let latest_start = second.span.end() - two;
        (earliest <= latest_start).then(|| (second.span.start() - first.span.end()).max(Duration::ZERO))
    };
    let takes = [shot_takes, reverse_takes];
    let (one, other) = (after(shot, reverse, takes), after(reverse, shot, [reverse_takes, shot_takes]));
    one.into_iter().chain(other).min()
}

/// Lens and nose turned together; the sun stays.
fn turned(stage: &Stage, by: Degrees) -> Stage {
    let turn = |bearing: Bearing| bearing.turned(by);
    let mut turned = stage.looking(turn(stage.lens));
    if let Some(facing) = &mut turned.shot.facing {
        facing.bearing = turn(facing.bearing);
    }
    turned
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::plan::calendar;
    use crate::plan::fixture::{field, on, wish};
    use crate::plan::search::reason::Question;
    use crate::plan::wish::SunOnMark;
    use crate::units::Span;
    use proptest::prelude::*;

    fn backlit(lens: f64, heights: (f64, f64), minutes: i64) -> Stage {
        Stage {
            lens: Bearing::from_degrees(lens),
            wish: wish((135.0, 225.0), heights, SunOnMark::Yes),
            takes: Duration::from_minutes(minutes),
            ..field()
        }
    }

    /// Whether some minute starts the one and another the other, asked minute by minute.
    fn by_minutes(sun: &Sun, pair: [&Stage; 2], day: Span) -> bool {
        let granted = pair.map(|stage| {
            let question = Question::new(stage);
            let minutes =
                (0..).map(|n| day.start() + Duration::from_minutes(n)).take_while(|at| *at < day.end());
            minutes.map(|at| question.holds(sun, at)).collect::<Vec<bool>>()
        });
        let takes = pair.map(|stage| stage.takes.minutes() as usize);
        let starts = |which: usize| -> Vec<usize> {
            let all = &granted[which];
            (0..all.len().saturating_sub(takes[which]))
                .filter(|n| all[*n..=*n + takes[which]].iter().all(|on| *on))
                .collect()
        };
        let (one, two) = (starts(0), starts(1));
        one.iter().any(|a| two.iter().any(|b| a + takes[0] <= *b || b + takes[1] <= *a))
    }

    proptest! {
        #![proptest_config(ProptestConfig::with_cases(8))]
        #[test]
        fn the_least_turn_is_that_of_asking_every_minute(
            lens in 0.0..360.0f64, low in 2.0..15.0f64, more in 5.0..30.0f64, minutes in 5i64..60, day in 0i64..365,
        ) {
            let shot = backlit(lens, (low, low + more), minutes);
            let reverse = reverse_of(&shot);
            let date = calendar::moved(on(2027, 1, 1), day);
            let sun = Sun::new(shot.site);
            let found = both(&sun, [&shot, &reverse], &[], date);
            let whole = calendar::whole(&shot.zone, DateRange { from: date, to: date }).unwrap();
            // Minutes know edges to a minute: they are asked for two minutes more, which they must not find, and for
            // two less, which they must.
            let asked = |by: f64, minutes: i64| {
                let at = |stage: &Stage| Stage { takes: Duration::from_minutes(minutes.max(1)), ..turned(stage, Degrees::from_degrees(by)) };
                by_minutes(&sun, [&at(&shot), &at(&reverse)], whole)
            };
            let least = match (&found.as_they_are, &found.turned) {
                (Some(_), _) => Some(0),
                (_, Some((by, _))) => Some(by.degrees() as i64),
                _ => None,
            };
            let nearer = least.map_or(TURN as i64, |by| by.abs() - 1);
            for by in (0..=nearer).flat_map(|by| [by, -by]).filter(|_| nearer >= 0) {
                prop_assert!(!asked(by as f64, minutes + 2), "{by} would do, found {least:?}");
            }
            if let Some(by) = least {
                prop_assert!(asked(by as f64, minutes - 2), "{by} does not do");
            }
        }
    }

    #[test]
    fn a_line_from_north_to_south_has_a_morning_and_an_evening() {
        let shot = backlit(90.0, (5.0, 35.0), 20);
        let found = both(&Sun::new(shot.site), [&shot, &reverse_of(&shot)], &[], on(2027, 5, 20));
        let times = found.as_they_are.unwrap();
        assert!(
            times.shot.span.end() < times.reverse.span.start(),
            "east in the morning, west in the evening"
        );
        assert!(times.between > Duration::from_minutes(120));
    }

    #[test]
    fn a_line_to_the_noon_sun_is_turned_as_little_as_will_do() {
        // North of the tropics the sun is never in the north: one of the two is never backlit.
        let shot = backlit(180.0, (5.0, 60.0), 20);
        let reverse = reverse_of(&shot);
        let found = both(&Sun::new(shot.site), [&shot, &reverse], &[], on(2027, 3, 20));
        assert!(found.as_they_are.is_none());
        let (by, _) = found.turned.unwrap();
        assert!((20.0..90.0).contains(&by.degrees().abs()), "{}", by.degrees());
        let other = Stage { lens: Bearing::from_degrees(90.0), ..shot.clone() };
        let others = [[other.clone(), reverse_of(&other)]];
        assert_eq!(
            both(&Sun::new(shot.site), [&shot, &reverse], &others, on(2027, 3, 20)).elsewhere.unwrap().0,
            0
        );
    }
}
