//! What the sun does on a day: transits, rise and set, twilights, any height up and down.
//!
//! A day is a span that is handed in, usually a civil date of a zone: 23, 24 or 25 hours. Heights are airless, of the
//! centre, as almanacs have them. A day can hold any number of crossings; a sun that stays above or below a height all
//! day is an outcome of its own, not a missing value. Edges are right to 0.01 s of the day track.

use super::sun::Sun;
use crate::place::cone::{Cone, HalfSpace};
use crate::units::{Duration, Height, Instant, Span, Vector, World};

/// Rise and set: 34′ of refraction and 16′ of radius below the level horizon. Convention of the almanacs.
pub const RISE_AND_SET: Height = Height::clamped(-50.0 / 60.0);

/// Ends of civil, nautical and astronomical twilight. Convention.
pub const CIVIL: Height = Height::clamped(-6.0);
/// See [`CIVIL`].
pub const NAUTICAL: Height = Height::clamped(-12.0);
/// See [`CIVIL`].
pub const ASTRONOMICAL: Height = Height::clamped(-18.0);

/// What the sun does about a height in the course of a day.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum Passage {
    /// It crosses the height: going up and going down, each in order of time.
    Crosses {
        /// Going up.
        up: Vec<Instant>,
        /// Going down.
        down: Vec<Instant>,
    },
    /// It stays above all day.
    AboveAllDay,
    /// It stays below all day.
    BelowAllDay,
}

impl Passage {
    /// Times at which it goes up through the height.
    pub fn up(&self) -> &[Instant] {
        if let Self::Crosses { up, .. } = self { up } else { &[] }
    }

    /// Times at which it goes down through the height.
    pub fn down(&self) -> &[Instant] {
        if let Self::Crosses { down, .. } = self { down } else { &[] }
    }
}

/// The events of a day.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Events {
    /// Upper transits: the sun on the meridian, at its highest or nearly so.
    pub transits: Vec<Instant>,
    /// Lower transits: solar midnight.
    pub lower_transits: Vec<Instant>,
    /// Sunrise and sunset.
    pub sun: Passage,
    /// Civil dawn and dusk.
    pub civil: Passage,
    /// Nautical dawn and dusk.
    pub nautical: Passage,
    /// Astronomical dawn and dusk.
    pub astronomical: Passage,
}

impl Sun {
    /// Transits, rise and set, and the twilights of a day.
    pub fn events(&self, day: Span) -> Events {
        Events {
            transits: self.transits(day),
            lower_transits: self.lower_transits(day),
            sun: self.passage(RISE_AND_SET, day),
            civil: self.passage(CIVIL, day),
            nautical: self.passage(NAUTICAL, day),
            astronomical: self.passage(ASTRONOMICAL, day),
        }
    }

    /// What the airless centre does about a height in the course of a day.
    pub fn passage(&self, height: Height, day: Span) -> Passage {
        let side = HalfSpace { normal: Vector::UP, least: height.sin() };
        let (up, down) = self.edges(side, day);
        if up.is_empty() && down.is_empty() {
            let above = side.contains(self.direction(day.middle()));
            return if above { Passage::AboveAllDay } else { Passage::BelowAllDay };
        }
        Passage::Crosses { up, down }
    }

    /// When the sun passes the meridian on its upper side: from the east of it to the west.
    pub fn transits(&self, day: Span) -> Vec<Instant> {
        self.edges(EASTERN_SKY, day).1
    }

    /// When the sun passes the meridian on its lower side, from the west to the east: solar midnight.
    pub fn lower_transits(&self, day: Span) -> Vec<Instant> {
        self.edges(EASTERN_SKY, day).0
    }

    /// When the airless centre goes into a half-space, and when out of it.
    fn edges(&self, side: HalfSpace, day: Span) -> (Vec<Instant>, Vec<Instant>) {
        // Searched a little beyond the day, so that the day's own ends are not taken for edges.
        let wide = Span::new(day.start() - BEYOND, day.end() + BEYOND).unwrap_or(day);
        let spans = self.airless_spans(&Cone { sides: vec![side] }, wide);
        let edges = |edge: fn(Span) -> Instant| {
            spans.iter().map(edge).filter(|at| day.contains(*at)).collect::<Vec<_>>()
        };
        (edges(Span::start), edges(Span::end))
    }
}

/// How far beyond a day its edges are looked for.
const BEYOND: Duration = Duration::from_minutes(1);

/// Everything to the east of the meridian.
const EASTERN_SKY: HalfSpace = HalfSpace::beside(Vector::<World>::new(1.0, 0.0, 0.0));

#[cfg(test)]
mod tests {
    use super::*;
    use crate::place::site::Site;
    use crate::units::{Latitude, Longitude};

    /// The handbook's site T.
    fn site_t() -> Sun {
        let (latitude, longitude) = (Latitude::from_degrees(48.0), Longitude::from_degrees(11.0));
        Sun::new(Site { latitude: latitude.unwrap(), longitude: longitude.unwrap(), ..Site::default() })
    }

    fn day(date: &str) -> Span {
        let start = Instant::parse(&format!("{date}T00:00:00Z")).unwrap();
        Span::new(start, start + Duration::DAY).unwrap()
    }

    fn clock(date: &str, time: &str) -> Instant {
        Instant::parse(&format!("{date}T{time}:00Z")).unwrap()
    }

    #[test]
    fn handbook_t_a6() {
        let table = [
            ("2026-03-20", ["06:00", "05:19", "17:29", "16:48", "17:48", "18:00", "18:36", "19:14"]),
            ("2026-06-21", ["04:05", "03:16", "19:19", "18:30", "19:44", "20:01", "20:58", "22:38"]),
            ("2026-09-23", ["05:45", "05:04", "17:12", "16:31", "17:31", "17:43", "18:19", "18:57"]),
            ("2026-12-21", ["07:57", "07:03", "15:25", "14:31", "15:48", "16:02", "16:41", "17:19"]),
        ];
        for (date, [high, rise, set, low, golden, civil, nautical, astronomical]) in table {
            let (sun, day) = (site_t(), day(date));
            let events = sun.events(day);
            let (plus, minus) =
                (sun.passage(Height::clamped(6.0), day), sun.passage(Height::clamped(-4.0), day));
            for (found, expected) in [
                (plus.up(), high),
                (events.sun.up(), rise),
                (events.sun.down(), set),
                (plus.down(), low),
                (minus.down(), golden),
                (events.civil.down(), civil),
                (events.nautical.down(), nautical),
                (events.astronomical.down(), astronomical),
            ] {
                let off = (found[0] - clock(date, expected)).minutes();
                assert!(off.abs() <= 1.0, "{date} {expected}: {}", found[0]);
            }
        }
    }

    /// Handbook T-A7.
    #[test]
    fn midsummer_dawn_falls_on_the_date_before() {
        let dawn = site_t().passage(ASTRONOMICAL, day("2026-06-20"));
        let late = *dawn.up().last().unwrap();
        assert!((late - clock("2026-06-20", "23:58")).minutes().abs() <= 1.0, "{late}");
    }

    #[test]
    fn poles_have_named_outcomes() {
        let north = Sun::new(Site { latitude: Latitude::from_degrees(90.0).unwrap(), ..Site::default() });
        assert_eq!(north.passage(RISE_AND_SET, day("2026-06-21")), Passage::AboveAllDay);
        assert_eq!(north.passage(RISE_AND_SET, day("2026-12-21")), Passage::BelowAllDay);
        let start = clock("2026-01-01", "00:00");
        let year = Span::new(start, start + Duration::from_minutes(365 * 1440)).unwrap();
        let once = north.passage(RISE_AND_SET, year);
        assert_eq!((once.up().len(), once.down().len()), (1, 1), "one rise and one set a year");
    }
}
