//! Same light again: when else the sun stands where it stood, for pick-ups.
//!
//! All directions within x° of one direction are a single half-space, so this is the cheapest search of all.
//! The declination comes back on the other side of the solstice, at another time of the clock (handbook I8).

use chrono::{NaiveDate, NaiveDateTime};

use super::met;
use crate::maths;
use crate::place::cone::{Cone, HalfSpace};
use crate::place::zone::Zone;
use crate::plan::stage::Stage;
use crate::sky::sun::Sun;
use crate::units::{Degrees, Duration, Instant, Span, Spans, Vector, World};

/// How far apart two directions may be to pass for the same light. Common practice, no source.
pub const SAME: Degrees = Degrees::from_degrees(2.0);

/// The nearest instant is found to this. Our own choice.
const EXACT: Duration = Duration::from_millis(100);

/// A time at which the sun stands almost where it stood.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Again {
    /// When it is nearest.
    pub at: Instant,
    /// Local date of that instant.
    pub date: NaiveDate,
    /// How far apart the directions are then.
    pub apart: Degrees,
    /// How long it stays as near as was asked.
    pub span: Span,
}

/// Times within `range` at which the sun is within `near` of where it is at `shot`, the nearest first.
///
/// The mark must get (or lack) direct sun as the wish says. The passing to which `shot` itself belongs is left out.
pub fn again(sun: &Sun, stage: &Stage, shot: Instant, near: Degrees, range: Span) -> Vec<Again> {
    let then = sun.apparent(shot);
    let cap = Cone { sides: vec![HalfSpace { normal: then, least: maths::cos(near.radians()) }] };
    let others = Spans::gather(sun.spans(&cap, range).iter().filter(|span| !span.contains(shot)).collect());
    let mut found: Vec<Again> = met::as_direct_as_wished(sun, stage, &others, range)
        .iter()
        .map(|span| {
            let at = nearest(sun, then, span);
            let apart = sun.apparent(at).angle_to(then);
            Again { at, date: stage.zone.date(at), apart, span }
        })
        .collect();
    crate::order::by(&mut found, |a, b| {
        a.apart.degrees().total_cmp(&b.apart.degrees()).then(a.at.cmp(&b.at))
    });
    found
}

/// The instant of a shot of which date or time was typed anew: "we shot on … at …". What is no date or no time changes
/// nothing.
pub fn typed(zone: &Zone, shot: Instant, date: Option<&str>, time: Option<&str>) -> Instant {
    let now = zone.local(shot);
    let date = date.and_then(|text| text.parse().ok()).unwrap_or(now.date());
    let time = time.and_then(|text| text.parse().ok()).unwrap_or(now.time());
    zone.instant(NaiveDateTime::new(date, time)).first()
}

/// The instant of `span` at which the sun is nearest to `then`.
///
/// On its way through a small cap the sun comes nearer, then goes away: a search by thirds needs no slope.
fn nearest(sun: &Sun, then: Vector<World>, span: Span) -> Instant {
    let apart = |at: Instant| sun.apparent(at).angle_to(then).degrees();
    let (mut from, mut to) = (span.start(), span.end());
    while to - from > EXACT {
        let third = Duration::from_millis((to - from).millis() / 3);
        if apart(from + third) <= apart(to - third) {
            to = to - third;
        } else {
            from = from + third;
        }
    }
    from + Duration::from_millis((to - from).millis() / 2)
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::plan::fixture::{at, clock, field, loft, on, site, some_stage, span, wish};
    use crate::plan::wish::SunOnMark;
    use proptest::prelude::*;

    fn open_air(latitude: f64, longitude: f64) -> Stage {
        let mut stage = field();
        stage.site = site(latitude, longitude);
        stage.zone = clock(60, &[("2026-03-29T01:00:00Z", "2026-10-25T01:00:00Z")]);
        stage.wish = wish((0.0, 360.0), (-10.0, 90.0), SunOnMark::Any);
        stage
    }

    #[test]
    fn a_shot_is_typed_as_date_and_time() {
        let (zone, shot) = (crate::plan::fixture::lisbon(), crate::plan::fixture::at("2027-03-11T17:28:00Z"));
        let typed = |date, time| typed(&zone, shot, date, time);
        let then = crate::plan::fixture::at;
        assert_eq!(typed(Some("2026-07-02"), None), then("2026-07-02T16:28:00Z"), "summer time");
        assert_eq!(typed(None, Some("09:05")), then("2027-03-11T09:05:00Z"));
        assert_eq!(typed(Some(""), Some("soon")), shot);
    }

    #[test]
    fn the_mirror_date_beyond_the_solstice() {
        // Handbook T-I3.
        let stage = open_air(48.0, 11.0);
        let sun = Sun::new(stage.site);
        let range = span("2026-01-01T00:00:00Z", "2027-01-01T00:00:00Z");
        let found = again(&sun, &stage, at("2026-05-24T15:00:00Z"), SAME, range);
        let mirror = found.iter().find(|again| again.date == on(2026, 7, 18)).unwrap();
        assert!((mirror.at - at("2026-07-18T15:09:25Z")).minutes().abs() < 1.0, "{}", mirror.at);
        assert!(mirror.apart.degrees() < 0.15, "{}", mirror.apart.degrees());
        assert_ne!(found[0].date, on(2026, 5, 24), "not the day itself");
        assert!(found.windows(2).all(|pair| pair[0].apart <= pair[1].apart));
        assert!(found.iter().all(|again| again.apart <= SAME));
    }

    #[test]
    fn a_pick_up_through_a_window_must_be_lit() {
        let stage = loft();
        let sun = Sun::new(stage.site);
        let range = span("2027-01-01T00:00:00Z", "2028-01-01T00:00:00Z");
        let shot = met::sun_on_mark(&sun, &stage, span("2027-03-11T00:00:00Z", "2027-03-12T00:00:00Z"))
            .as_slice()[0];
        // Just inside the window's edge, so that not every near direction is in it.
        let found = again(&sun, &stage, shot.start() + Duration::from_minutes(2), SAME, range);
        assert!(found.len() > 5);
        for again in &found {
            let light = sun.apparent(again.span.middle());
            assert!(stage.openings.as_ref().unwrap().iter().any(|opening| opening.contains(light)));
        }
    }

    proptest! {
        #![proptest_config(ProptestConfig::with_cases(24))]

        #[test]
        fn agrees_with_every_minute(
            stage in some_stage(), shot in 0i64..525_600, near in 0.5..5.0f64, start in 0i64..350,
        ) {
            let stage = Stage { openings: None, ..open_air(stage.site.latitude.degrees(), stage.site.longitude.degrees()) };
            let sun = Sun::new(stage.site);
            let year = at("2027-01-01T00:00:00Z");
            let shot = year + Duration::from_minutes(shot);
            let from = year + Duration::from_minutes(start * 1440);
            let range = Span::new(from, from + Duration::from_minutes(4 * 1440)).unwrap();
            let found = again(&sun, &stage, shot, Degrees::from_degrees(near), range);
            let then = sun.apparent(shot);
            let mut least = 360.0f64;
            for minute in 0..4 * 1440 {
                let now = range.start() + Duration::from_minutes(minute);
                let apart = sun.apparent(now).angle_to(then).degrees();
                let listed = found.iter().any(|again| again.span.contains(now));
                let shot_itself = (now - shot).minutes().abs() < 180.0;
                if (apart - near).abs() > 0.01 && !shot_itself {
                    prop_assert_eq!(listed, apart < near, "{} {}", now, apart);
                    least = least.min(apart);
                }
            }
            if let Some(best) = found.first() {
                prop_assert!(best.apart.degrees() <= least + 1e-3, "{} {}", best.apart.degrees(), least);
            }
        }
    }
}
