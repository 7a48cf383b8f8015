//! Cutting together, in words: the match hold, the order of a scene's set-ups, shot and reverse.

use super::reverse::{Both, Times};
use super::steps::{apart, in_steps};
use super::{Match, Part};
use crate::plan::search::words as say;
use crate::plan::stage::Stage;
use crate::units::{Duration, Span, Spans};
use crate::words::{self, Clock, Units};

/// "Light as wished 16:40–18:10. Takes cut together for 24 min: 17:02–17:26."
pub fn hold(held: &Match<'_>, met: &Spans, stage: &Stage, style: Clock) -> String {
    let longest = met.iter().filter_map(|light| held.hold(light)).max_by_key(|span| span.duration());
    let Some(longest) = longest else {
        return "No light as wished on this day: tap a slot above, and it stands here.".to_owned();
    };
    let all: Vec<String> = met.iter().map(|span| say::clock(span, stage, style)).collect();
    let (long, clock) = (words::duration(longest.duration()), say::clock(longest, stage, style));
    format!("Light as wished {}. Takes cut together for {long}: {clock}.", all.join(", "))
}

/// "Takes of all 2 set-ups of this scene, each by its own lens and lamps, cut together for 12 min: 17:05–17:17." Nothing
/// of a set-up alone.
pub fn together(held: &Match<'_>, parts: &[Part], stage: &Stage, style: Clock) -> Option<String> {
    let common = parts.iter().map(|part| part.met.clone()).reduce(|all, one| all.and(&one));
    let common = common.filter(|_| parts.len() > 1)?;
    let takes = format!("Takes of all {} set-ups of this scene", parts.len());
    let Some(most) = common.iter().max_by_key(|span| span.duration()) else {
        return Some(format!("{takes} never have their light at the same time on this day."));
    };
    let longest = common.iter().filter_map(|light| held.hold(light)).max_by_key(|span| span.duration());
    Some(match longest {
        Some(longest) => {
            let (long, clock) = (words::duration(longest.duration()), say::clock(longest, stage, style));
            format!("{takes}, each by its own lens and lamps, cut together for {long}: {clock}.")
        }
        None => {
            let (at, why) = (most.middle(), held.too_far(most.middle()));
            let clock = words::clock(words::to_the_minute(stage.zone.local(at)).time(), style);
            let why = why.map(|(n, by)| apart(n, in_steps(n, by))).unwrap_or_default();
            format!("{takes}, each by its own lens and lamps, never cut together: at {clock} {why}.")
        }
    })
}

/// The order of a scene's set-ups inside a match hold, a line each.
pub fn order(
    held: &Match<'_>,
    parts: &[Part],
    day: Span,
    (stage, style, units): (&Stage, Clock, Units),
) -> Vec<String> {
    if parts.len() < 2 {
        return Vec::new();
    }
    let Some(placed) = held.order(parts, day) else {
        let takes = parts.iter().fold(Duration::ZERO, |sum, part| sum + part.takes);
        return vec![format!(
            "The set-ups of this scene do not all fit into one match hold on this day: together they take {}.",
            words::duration(takes)
        )];
    };
    let line = |(number, span): &(usize, Span)| {
        let part = &parts[*number];
        let width = words::length(part.width, units);
        format!("{} {}, {width} across", say::clock(*span, stage, style), part.name)
    };
    placed.iter().map(line).collect()
}

/// How shot and reverse can both have their light, a sentence each.
pub fn reverse(both: &Both, marks: &[String], stage: &Stage, style: Clock) -> Vec<String> {
    let times = |times: &Times| {
        let clock = |span| say::clock(span, stage, style);
        format!("shot {}, reverse {}", clock(times.shot.span), clock(times.reverse.span))
    };
    if let Some(found) = &both.as_they_are {
        return vec![format!("Both on this day: {}.", times(found))];
    }
    let mut lines = vec!["Shot and reverse cannot both have this light on this day.".to_owned()];
    if let Some((by, found)) = &both.turned {
        let way = if by.degrees() > 0.0 { "clockwise" } else { "anticlockwise" };
        lines.push(format!("With the line turned {} {way}: {}.", words::degrees(by.abs()), times(found)));
    }
    if let Some((place, found)) = &both.elsewhere {
        let name = marks.get(*place).map_or("another mark", String::as_str);
        lines.push(format!("On {name}: {}.", times(found)));
    }
    lines
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::plan::calendar;
    use crate::plan::cutting::Gauge;
    use crate::plan::cutting::match_limit::MatchLimit;
    use crate::plan::cutting::reverse::{both, reverse_of};
    use crate::plan::fixture::{ClearSun, field, on, wish};
    use crate::plan::search::met::met;
    use crate::plan::wish::{DateRange, SunOnMark};
    use crate::sky::sun::Sun;
    use crate::units::{Bearing, Instant, Metres, Mired, Stops, Vector, World};

    fn backlit(lens: f64) -> Stage {
        Stage {
            lens: Bearing::from_degrees(lens),
            wish: wish((135.0, 225.0), (5.0, 35.0), SunOnMark::Yes),
            takes: Duration::from_minutes(20),
            ..field()
        }
    }

    #[test]
    fn the_hold_and_the_order() {
        let stage = backlit(250.0);
        let sun = Sun::new(stage.site);
        let day =
            calendar::whole(&stage.zone, DateRange { from: on(2027, 3, 20), to: on(2027, 3, 20) }).unwrap();
        let held = Match { sun: &sun, gauges: &[&ClearSun, &ClearSun], limit: MatchLimit::default() };
        let light = met(&sun, &stage, day);
        let line = hold(&held, &light, &stage, Clock::default());
        assert!(line.starts_with("Light as wished 1") && line.contains("Takes cut together for "), "{line}");
        assert!(hold(&held, &Spans::none(), &stage, Clock::default()).starts_with("No light"));
        let part = |name: &str, width: f64| Part {
            name: name.into(),
            width: Metres::from_metres(width),
            takes: Duration::from_minutes(10),
            met: light.clone(),
        };
        let told = |parts: &[Part]| order(&held, parts, day, (&stage, Clock::default(), Units::Metric));
        let lines = told(&[part("close", 0.5), part("wide", 6.0)]);
        assert!(lines[0].ends_with(" wide, 6.0 m across"), "{lines:?}");
        assert!(told(&[part("alone", 1.0)]).is_empty());
        let long = Part { takes: Duration::from_minutes(200), ..part("long", 1.0) };
        assert!(told(&[long, part("wide", 6.0)])[0].contains("do not all fit"));
    }

    /// Sides that are two stops apart, whatever the hour.
    struct TwoStops;

    impl Gauge for TwoStops {
        fn ratio(&self, _: Vector<World>, _: Instant) -> Option<Stops> {
            Some(Stops::from_stops(2.0))
        }
        fn colour(&self, _: Vector<World>, _: Instant) -> Option<Mired> {
            None
        }
    }

    /// The same with a stop between them.
    struct OneStop;

    impl Gauge for OneStop {
        fn ratio(&self, _: Vector<World>, _: Instant) -> Option<Stops> {
            Some(Stops::from_stops(1.0))
        }
        fn colour(&self, _: Vector<World>, _: Instant) -> Option<Mired> {
            None
        }
    }

    #[test]
    fn all_set_ups_of_a_scene() {
        let stage = backlit(250.0);
        let sun = Sun::new(stage.site);
        let span = |hours: (u32, u32)| {
            let clock =
                |hour| stage.zone.at_clock(on(2027, 3, 20), Duration::from_minutes(60 * i64::from(hour)));
            Span::new(clock(hours.0), clock(hours.1)).unwrap()
        };
        let part = |hours| Part {
            name: String::new(),
            width: Metres::from_metres(1.0),
            takes: Duration::from_minutes(10),
            met: span(hours).into(),
        };
        let told = |gauges: [&dyn Gauge; 2], hours: [(u32, u32); 2]| {
            let held = Match { sun: &sun, gauges: &gauges, limit: MatchLimit::default() };
            together(&held, &hours.map(part), &stage, Clock::default())
        };
        let fine = told([&OneStop, &OneStop], [(13, 15), (12, 14)]).unwrap();
        assert!(
            fine.starts_with(
                "Takes of all 2 set-ups of this scene, each by its own lens and lamps, cut together for "
            ),
            "{fine}"
        );
        let apart = told([&OneStop, &TwoStops], [(13, 15), (12, 14)]).unwrap();
        assert!(apart.ends_with("never cut together: at 13:30 the ratio is 1 stop away."), "{apart}");
        let never = told([&OneStop, &OneStop], [(13, 15), (10, 12)]).unwrap();
        assert!(never.contains("never have their light at the same time"), "{never}");
        let held = Match { sun: &sun, gauges: &[&OneStop], limit: MatchLimit::default() };
        assert_eq!(together(&held, &[part((13, 15))], &stage, Clock::default()), None);
    }

    #[test]
    fn shot_and_reverse() {
        let told = |lens: f64| {
            let shot = backlit(lens);
            let found = both(&Sun::new(shot.site), [&shot, &reverse_of(&shot)], &[], on(2027, 5, 20));
            reverse(&found, &[], &shot, Clock::default())
        };
        assert!(told(90.0)[0].starts_with("Both on this day: shot "), "{:?}", told(90.0));
        assert!(told(180.0)[0].contains("cannot both"));
        assert!(told(180.0)[1].starts_with("With the line turned "), "{:?}", told(180.0));
    }
}
