//! A room's day in sentences.

use super::follow::Followed;
use super::hold_map::HoldMap;
use super::light_here::PlaneLight;
use super::patch_day::PatchDay;
use crate::light::drift::{Climb, Edge, EdgeDrift};
use crate::light::wall_bearing::FromSun;
use crate::place::zone::Zone;
use crate::units::{Bearing, Degrees, Duration, Instant, Metres, Share, Spans};
use crate::words::{self, Clock, Units};

/// How times and lengths are written.
#[derive(Clone, Copy, Debug)]
pub struct Style<'a> {
    /// The place's clock.
    pub zone: &'a Zone,
    /// 24 hours, or am and pm.
    pub clock: Clock,
    /// Metres, or feet and inches.
    pub units: Units,
}

impl Style<'_> {
    fn at(&self, at: Instant) -> String {
        words::clock(words::to_the_minute(self.zone.local(at)).time(), self.clock)
    }
}

/// "All of a head is in it 15:58–18:09."; `None` for no time.
pub fn head(lit: &Spans, style: Style<'_>) -> Option<String> {
    let span = |span: crate::units::Span| format!("{}–{}", style.at(span.start()), style.at(span.end()));
    let all: Vec<String> = lit.iter().map(span).collect();
    (!all.is_empty()).then(|| format!("All of a head is in the sun {}.", all.join(" and ")))
}

/// "On the floor 14:50–18:30; from 17:20 it climbs wall 3."
pub fn patch(day: &PatchDay, style: Style<'_>) -> Option<String> {
    let first = day.on_floor.as_slice().first()?;
    let last = day.on_floor.as_slice().last()?;
    let climbs = day.climbs().map(|(wall, at)| format!("; from {} on wall {}", style.at(at), wall + 1));
    Some(format!(
        "Sun on the floor {}–{}{}.",
        style.at(first.start()),
        style.at(last.end()),
        climbs.unwrap_or_default()
    ))
}

/// "Its lower edge drifts 1.4 cm/min to 71° ENE, its upper 3.9 to 68° ENE."; `None` for no patch now.
pub fn edges(drifts: &[EdgeDrift], units: Units) -> Option<String> {
    let say = |drift: &EdgeDrift| {
        let (speed, unit) = words::per_minute([drift.speed; 2], units);
        format!("its {} drifts {speed} {unit} to {}", drift.edge.word(), words::bearing(drift.towards))
    };
    let said: Vec<String> = [Edge::Sill, Edge::Head, Edge::Left, Edge::Right]
        .into_iter()
        .filter_map(|edge| drifts.iter().find(|drift| drift.edge == edge).map(say))
        .collect();
    (!said.is_empty()).then(|| format!("{}.", words::capital(&said.join(", "))))
}

/// "The shadow below the light climbs 2.0 cm/min where the mark is: it stands at 0.85 m."; of the edge nearest to the face.
pub fn climb(climbs: &[Climb], face: Metres, units: Units) -> Option<String> {
    let far = |climb: &Climb| (climb.height.metres() - face.metres()).abs();
    let nearest = climbs.iter().min_by(|a, b| far(a).total_cmp(&far(b)))?;
    let (speed, unit) = words::per_minute([Metres::from_metres(nearest.per_minute.metres().abs()); 2], units);
    let way = if nearest.per_minute.metres() < 0.0 { "sinks" } else { "climbs" };
    let shadow = if nearest.edge == Edge::Sill { "The shadow of the sill" } else { "The shadow of the head" };
    let height = words::measure(nearest.height, units);
    Some(format!(
        "{shadow} {way} {speed} {unit} at the mark, now at {height}; the face is at {}.",
        words::measure(face, units)
    ))
}

/// "Best chair: 2.40 m along wall 1 and 1.75 m into the room, 22 min from 16:20."
pub fn chair(map: &HoldMap, style: Style<'_>) -> String {
    match map.best().and_then(|best| Some((best, best.longest()?))) {
        None => "No spot of the floor has this light on this day.".to_owned(),
        Some((best, span)) => format!(
            "Best chair: {}, {} from {}.",
            tapes(best.x, best.y, style.units),
            words::duration(span.duration()),
            style.at(span.start())
        ),
    }
}

/// "Move it 40 cm every 15 min: 55 min instead of 22 min, from 16:05."
pub fn follow(followed: &Followed, every: Duration, style: Style<'_>) -> String {
    format!(
        "Follow the patch, up to {} every {}: {} instead of {}.",
        words::measure(followed.farthest, style.units),
        words::duration(every),
        words::duration(followed.span.duration()),
        words::duration(followed.without)
    )
}

/// "16:20: 2.40 m along wall 1 and 1.75 m into the room", stay by stay, and the end.
pub fn stays(followed: &Followed, style: Style<'_>) -> Vec<String> {
    let stay = |stay: &super::follow::Stay| {
        format!("{}: {}", style.at(stay.from), tapes(stay.x, stay.y, style.units))
    };
    let mut all: Vec<String> = followed.stays.iter().map(stay).collect();
    all.push(format!("{}: the light is gone", style.at(followed.span.end())));
    all
}

/// "Wall 1 faces 249.3° WSW ± 0.8°, by the sun. The room says 248.0°, 1.3° less."
pub fn bearing(found: &FromSun, wall: usize, said: Bearing, units: Units) -> String {
    let off = said.turn_to(found.bearing).degrees();
    let fine = |angle: f64| words::degrees_fine(Degrees::from_degrees(angle));
    let (by_sun, good) = (found.bearing, fine(found.good_to.degrees()));
    let compared = match off {
        off if off.abs() < 0.05 => "the room says the same".to_owned(),
        off => format!(
            "the room says {}, {} {}",
            fine(said.degrees()),
            fine(off.abs()),
            if off > 0.0 { "less" } else { "more" }
        ),
    };
    let point = words::compass_point(by_sun);
    let answer = format!(
        "By the sun wall {} faces {} {point} ± {good}; {compared}.",
        wall + 1,
        fine(by_sun.degrees())
    );
    match found.lengths.filter(|[expected, measured]| is_astray(*expected, *measured)) {
        None => answer,
        Some([expected, measured]) => format!(
            "{answer} But the light should lie {} from what casts it, and you measured {}: is it the right corner, and the floor level?",
            words::measure(expected, units),
            words::measure(measured, units)
        ),
    }
}

/// Whether lengths differ by more than a tenth, which no tape does. Our own choice.
fn is_astray(expected: Metres, measured: Metres) -> bool {
    (expected.metres() - measured.metres()).abs() > 0.1 * expected.metres()
}

/// "front of the face: overcast 2.3 %, even sky 2.0 %, clear 4.1 %".
pub fn plane(light: &PlaneLight) -> String {
    let skies = ["overcast", "even sky", "clear"].into_iter().zip(light.shares);
    let said: Vec<String> =
        skies.filter_map(|(name, share)| Some(format!("{name} {}", percent(share?.ratio())))).collect();
    format!("{}: {}", light.name, said.join(", "))
}

/// "About 1.1 % more comes from walls, floor and ceiling, on every plane: an estimate."
pub fn bounced(share: Share) -> String {
    format!(
        "About {} more comes back from walls, floor and ceiling, on every plane: an estimate.",
        percent(share.fraction())
    )
}

/// To two figures below ten per cent.
fn percent(share: f64) -> String {
    let percent = share * 100.0;
    if percent < 0.995 { format!("{percent:.2} %") } else { format!("{percent:.1} %") }
}

/// Two tape measures from corner 1.
fn tapes(x: Metres, y: Metres, units: Units) -> String {
    format!(
        "{} along wall 1 from corner 1 and {} into the room",
        words::measure(x, units),
        words::measure(y, units)
    )
}

#[cfg(test)]
mod tests {
    use super::super::follow::follow as followed;
    use super::*;
    use crate::light::drift::{Suns, climbs, drift};
    use crate::plan::fixture::{on, room_stage};
    use crate::sky::sun::Sun;
    use crate::units::Vector;

    #[test]
    fn a_day_in_the_loft() {
        let place = room_stage();
        let style = Style { zone: &place.stage.zone, clock: Clock::TwentyFour, units: Units::Metric };
        let sun = Sun::new(place.stage.site);
        let day = place.stage.zone.day(on(2027, 3, 11)).unwrap();
        let patch_day = PatchDay::on(&sun, &place, day);
        let said = patch(&patch_day, style).unwrap();
        assert!(said.starts_with("Sun on the floor 1") && said.contains("on wall "), "{said}");
        let at = crate::units::Instant::parse("2027-03-11T16:20:00Z").unwrap();
        let minute = Duration::from_minutes(1);
        let [now, then] = [at, at + minute].map(|at| place.room.room_from_world(sun.apparent(at)));
        let suns = Suns { now, then, apart: minute };
        let said = edges(&drift(&place.room, 0, suns, Metres::default()), Units::Metric).unwrap();
        assert!(
            said.starts_with("Its lower edge drifts ")
                && said.contains(" cm/min to ")
                && said.contains(", its upper edge"),
            "{said}"
        );
        let spot = Vector::new(3.6, 2.6, 1.25);
        let said = climb(
            &climbs(&place.room, &place.room.openings[0], spot, suns),
            Metres::from_metres(1.25),
            Units::Metric,
        )
        .unwrap();
        assert!(said.contains("climbs") && said.contains("1.25 m"), "{said}");
        let map = HoldMap::of(&sun, &place, Metres::from_metres(1.2), day);
        let every = Duration::from_minutes(15);
        let found = followed(&map, every, day).unwrap();
        let said = (chair(&map, style), follow(&found, every, style));
        assert!(
            said.0.contains(" m along wall 1 from corner 1 and ")
                && said.1.contains(" every 15 min: ")
                && said.1.contains(" instead of "),
            "{said:?}"
        );
        assert!(stays(&found, style).last().unwrap().ends_with("the light is gone"));
    }

    #[test]
    fn a_bearing_is_compared_and_doubted() {
        let said = Bearing::from_degrees(248.0);
        let m = Metres::from_metres;
        let found = |to: f64, lengths| FromSun {
            bearing: Bearing::from_degrees(to),
            good_to: Degrees::from_degrees(0.8),
            lengths,
        };
        let sure = bearing(&found(249.3, Some([m(2.0), m(2.1)])), 0, said, Units::Metric);
        assert_eq!(sure, "By the sun wall 1 faces 249.3° WSW ± 0.8°; the room says 248.0°, 1.3° less.");
        let astray = bearing(&found(248.0, Some([m(2.0), m(3.1)])), 2, said, Units::Metric);
        assert!(
            astray.contains("the same") && astray.contains("2.00 m") && astray.contains("3.10 m"),
            "{astray}"
        );
        assert_eq!(
            bounced(Share::clamped(0.0042)),
            "About 0.42 % more comes back from walls, floor and ceiling, on every plane: an estimate."
        );
    }

    #[test]
    fn nothing_is_said_of_nothing() {
        let zone = Zone::fixed("UTC", Duration::ZERO);
        let style = Style { zone: &zone, clock: Clock::TwentyFour, units: Units::Metric };
        assert_eq!((head(&Spans::none(), style), patch(&PatchDay::default(), style)), (None, None));
        assert_eq!((edges(&[], Units::Metric), climb(&[], Metres::default(), Units::Metric)), (None, None));
        let empty = HoldMap { step: Metres::from_metres(0.25), spots: Vec::new() };
        assert!(chair(&empty, style).starts_with("No spot"));
    }
}
