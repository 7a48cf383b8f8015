//! Frames, flags and mirrors over a hold: the sun's way for [`crate::light::cover`], and the minutes until a mirror must
//! be aimed again.

pub mod kit;
pub mod words;

use crate::light::cover::{Away, Cloth, NoStand, Stand, stand};
use crate::light::mirror::Mirror;
use crate::plan::search::scan;
use crate::plan::stage::Stage;
use crate::sky::sun::Sun;
use crate::units::{Degrees, Duration, Instant, Metres, Span, Vector, World};

/// Time between two looks at the sun's way. Our own choice: a quarter of a degree, over which it is straight.
const LOOK: Duration = Duration::from_minutes(1);

/// Longest that a mirror is followed. Our own choice.
const FOLLOWED: Duration = Duration::from_minutes(180);

/// What a cloth does over a hold.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Covered {
    /// Where it stands, and what the whole hold needs.
    pub stand: Stand,
    /// Until when the cloth at hand covers, standing for as long as it can from the begin; the whole hold if it is large
    /// enough. `None` if it is too small even for the first minute.
    pub until: Option<Instant>,
}

/// Where a cloth stands through `hold`.
///
/// # Errors
/// There is no place for it.
pub fn covered(sun: &Sun, hold: Span, cloth: Cloth, away: Away, covers: Metres) -> Result<Covered, NoStand> {
    let whole = stand(&way(sun, hold), away, covers)?;
    if whole.is_covered_by(cloth) {
        return Ok(Covered { stand: whole, until: Some(hold.end()) });
    }
    // The longer the way the larger the cloth, so that the first end that is too much is the only one.
    let enough = |end: Instant| {
        let part = Span::new(hold.start(), end).map(|part| stand(&way(sun, part), away, covers));
        part.and_then(Result::ok).filter(|stand| stand.is_covered_by(cloth))
    };
    let first = hold.start() + LOOK;
    let until = enough(first).map(|_| scan::edge(first, hold.end(), |end| enough(end).is_none()));
    let shorter = until.and_then(|end| enough(end - Duration::from_millis(1000)));
    Ok(Covered { stand: Stand { needs: whole.needs, ..shorter.unwrap_or(whole) }, until })
}

/// The sun's directions through a span, both ends included.
pub fn way(sun: &Sun, span: Span) -> Vec<Vector<World>> {
    let steps = (0..).map(|n| span.start() + Duration::from_millis(n * LOOK.millis()));
    let inside = steps.take_while(|at| *at < span.end());
    inside.chain([span.end()]).map(|at| sun.apparent(at)).collect()
}

/// A mirror aimed at an instant.
#[derive(Clone, Debug, PartialEq)]
pub struct Aimed {
    /// The mirror.
    pub mirror: Mirror,
    /// How far it leans back from the upright; forward is negative.
    pub leans: Degrees,
    /// Side of the patch it throws.
    pub patch: Metres,
    /// From when it lights the mark to when it must be aimed again.
    pub lights: Option<Span>,
    /// The opening that its beam goes through to the mark (its place in the stage's list); `None` in the open, or if the
    /// beam ends on a wall.
    pub through: Option<usize>,
}

/// A mirror with its middle at `at` (metres from the mark), aimed from there at the mark. `None` if no mirror there can
/// do it.
pub fn aimed(
    sun: &Sun,
    stage: &Stage,
    (at, side): (Vector<World>, Metres),
    covers: Metres,
    when: Instant,
) -> Option<Aimed> {
    let mirror = Mirror::aimed(at, side, sun.apparent(when)).filter(|_| sun.apparent(when).z > 0.0)?;
    let around = Span::new(when - FOLLOWED, when + FOLLOWED)?;
    let lit = scan::spans(around, LOOK, |now| {
        let light = sun.apparent(now);
        light.z > 0.0 && mirror.lights(light, covers)
    });
    let direction = at.unit()?;
    let through =
        stage.openings.as_ref().and_then(|all| all.iter().position(|opening| opening.contains(direction)));
    Some(Aimed {
        leans: Degrees::from_degrees(mirror.normal.height().degrees()),
        patch: crate::light::aim::patch_side(side, Metres::from_metres(at.norm())),
        lights: lit.iter().find(|span| span.contains(when)),
        through,
        mirror,
    })
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::plan::fixture::{field, loft, span};
    use crate::units::{Bearing, Height};

    fn cloth(width: f64, height: f64) -> Cloth {
        Cloth { width: Metres::from_metres(width), height: Metres::from_metres(height) }
    }

    #[test]
    fn a_large_cloth_covers_the_hold_and_a_small_one_says_until_when() {
        let sun = Sun::new(field().site);
        let hold = span("2027-06-21T12:00:00Z", "2027-06-21T13:00:00Z");
        let rise = Away::Above(Metres::from_metres(1.5));
        let covers = Metres::from_metres(0.3);
        let large = covered(&sun, hold, cloth(2.4, 2.4), rise, covers).unwrap();
        assert_eq!(large.until, Some(hold.end()));
        let small = covered(&sun, hold, cloth(0.9, 0.9), rise, covers).unwrap();
        let until = small.until.unwrap();
        assert!(until < hold.end() && until > hold.start() + Duration::from_minutes(5), "{until}");
        // Standing for that long it covers; for three minutes more it would not.
        let long = |minutes: i64| {
            let part = Span::new(hold.start(), until + Duration::from_minutes(minutes)).unwrap();
            stand(&way(&sun, part), rise, covers).unwrap().is_covered_by(cloth(0.9, 0.9))
        };
        assert!(long(-1) && !long(3));
        assert_eq!(covered(&sun, hold, cloth(0.3, 0.3), rise, covers).unwrap().until, None);
    }

    #[test]
    fn a_mirror_ten_metres_off_lasts_some_minutes() {
        let (sun, stage) = (Sun::new(field().site), field());
        let when = span("2027-03-21T11:00:00Z", "2027-03-21T12:00:00Z").start();
        let at = Vector::towards(Bearing::from_degrees(10.0), Height::clamped(0.0)) * 10.0;
        let aimed =
            aimed(&sun, &stage, (at, Metres::from_metres(1.2)), Metres::from_metres(0.3), when).unwrap();
        let lights = aimed.lights.unwrap();
        // A quarter of a degree a minute is 44 mm at 10 m; the board spares about 0.3 m to each side.
        let ahead = (lights.end() - when).minutes();
        assert!((4.0..10.0).contains(&ahead), "{ahead}");
        assert!((aimed.patch.metres() - 1.293).abs() < 1e-9);
        assert_eq!(aimed.through, None);
    }

    #[test]
    fn a_beam_finds_its_window() {
        let (sun, stage) = (Sun::new(loft().site), loft());
        let when = span("2027-03-21T11:00:00Z", "2027-03-21T12:00:00Z").start();
        let out = |bearing: f64, height: f64| {
            Vector::towards(Bearing::from_degrees(bearing), Height::clamped(height)) * 8.0
        };
        let through = |at| {
            aimed(&sun, &stage, (at, Metres::from_metres(1.0)), Metres::from_metres(0.2), when)
                .unwrap()
                .through
        };
        assert_eq!(through(out(248.0 - 15.0, 10.0)), Some(0));
        assert_eq!(through(out(248.0 + 15.0, 10.0)), Some(1));
        assert_eq!(through(out(248.0, 10.0)), None, "the wall between the two");
    }
}
