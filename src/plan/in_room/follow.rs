//! Following the patch: where to move a chair, and when, so that a face keeps the light for longer than at any one spot.
//!
//! Time is cut into stays of one length. In each the chair stands at a spot of the hold map that has the light throughout,
//! and between two stays it is moved by no more than a stride or two. Of all such chains the longest is taken, and of
//! those the one with the fewest metres. Exact over the grid and the starts that are tried.

use super::hold_map::{HoldMap, Spot};
use crate::units::{Duration, Instant, Metres, Span};

/// Farthest that a chair is moved at once, metres. Our own choice: without striking the set-up.
const FARTHEST: f64 = 0.8;

/// Between the starts that are tried. Our own choice.
const TRY: Duration = Duration::from_minutes(5);

/// A stay of the chair.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Stay {
    /// From when.
    pub from: Instant,
    /// Along wall 1 from corner 1.
    pub x: Metres,
    /// From wall 1 into the room.
    pub y: Metres,
}

/// A chain of stays.
#[derive(Clone, Debug, PartialEq)]
pub struct Followed {
    /// Where the chair stands, in order; stays at one spot are one.
    pub stays: Vec<Stay>,
    /// From the first stay to the end of the last.
    pub span: Span,
    /// The longest that any one spot has the light.
    pub without: Duration,
    /// The longest move.
    pub farthest: Metres,
}

/// The longest chain of stays of length `every`; `None` where it gains nothing.
pub fn follow(map: &HoldMap, every: Duration, day: Span) -> Option<Followed> {
    let tries = (every.millis() / TRY.millis()).max(1);
    let starts = (0..tries).map(|number| day.start() + Duration::from_millis(number * TRY.millis()));
    let chains = starts.filter_map(|start| chain(map, every, Span::new(start, day.end())?));
    let best = chains.reduce(|best, other| if other.is_better_than(&best) { other } else { best })?;
    let without = map.longest();
    let span =
        Span::new(best.start, best.start + Duration::from_millis(every.millis() * best.spots.len() as i64))?;
    (span.duration() > without).then(|| followed(map, &best, span, without, every))
}

/// Spots stay by stay.
struct Chain {
    start: Instant,
    spots: Vec<usize>,
    moved: f64,
}

impl Chain {
    fn is_better_than(&self, other: &Self) -> bool {
        (self.spots.len(), -self.moved) > (other.spots.len(), -other.moved)
    }
}

/// How many stays a chain that ends at a spot has, how far it was moved, and where it stood before.
#[derive(Clone, Copy)]
struct Link {
    stays: usize,
    moved: f64,
    before: Option<usize>,
}

/// The longest chain whose stays begin at the start of `within` and every so long after it.
fn chain(map: &HoldMap, every: Duration, within: Span) -> Option<Chain> {
    let count = (within.duration().millis() / every.millis()) as usize;
    let begin = |stay: usize| within.start() + Duration::from_millis(every.millis() * stay as i64);
    let mut links: Vec<Vec<Option<Link>>> = Vec::with_capacity(count);
    let mut best: Option<(usize, usize, Link)> = None;
    for stay in 0..count {
        let slice = Span::new(begin(stay), begin(stay + 1))?;
        let before = links.last();
        let row: Vec<Option<Link>> = (0..map.spots.len())
            .map(|spot| holds(&map.spots[spot], slice).then(|| link(map, spot, before)))
            .collect();
        for (spot, link) in row.iter().enumerate().filter_map(|(spot, link)| Some((spot, (*link)?))) {
            let better = best.is_none_or(|(.., most)| (link.stays, -link.moved) > (most.stays, -most.moved));
            if better {
                best = Some((stay, spot, link));
            }
        }
        links.push(row);
    }
    let (last, mut spot, link) = best?;
    let mut spots = vec![spot];
    for row in (0..=last).rev() {
        let Some(before) = links[row][spot].and_then(|link| link.before) else { break };
        spots.push(before);
        spot = before;
    }
    spots.reverse();
    Some(Chain { start: begin(last + 1 - spots.len()), spots, moved: link.moved })
}

/// The best way to come to a spot from the stay before.
fn link(map: &HoldMap, spot: usize, before: Option<&Vec<Option<Link>>>) -> Link {
    let mut best = Link { stays: 1, moved: 0.0, before: None };
    for (from, link) in
        before.into_iter().flatten().enumerate().filter_map(|(from, link)| Some((from, (*link)?)))
    {
        let way = apart(&map.spots[from], &map.spots[spot]);
        let moved = link.moved + way;
        if way <= FARTHEST && (link.stays + 1, -moved) > (best.stays, -best.moved) {
            best = Link { stays: link.stays + 1, moved, before: Some(from) };
        }
    }
    best
}

fn holds(spot: &Spot, slice: Span) -> bool {
    spot.light.iter().any(|span| span.start() <= slice.start() && span.end() >= slice.end())
}

fn apart(one: &Spot, other: &Spot) -> f64 {
    crate::maths::hypot(one.x.metres() - other.x.metres(), one.y.metres() - other.y.metres())
}

fn followed(map: &HoldMap, chain: &Chain, span: Span, without: Duration, every: Duration) -> Followed {
    let mut stays: Vec<Stay> = Vec::new();
    let mut farthest = 0.0f64;
    for (number, spot) in chain.spots.iter().enumerate() {
        let Spot { x, y, .. } = map.spots[*spot];
        let is_same = stays.last().is_some_and(|last| (last.x, last.y) == (x, y));
        if number > 0 {
            farthest = farthest.max(apart(&map.spots[chain.spots[number - 1]], &map.spots[*spot]));
        }
        if !is_same {
            stays.push(Stay {
                from: chain.start + Duration::from_millis(every.millis() * number as i64),
                x,
                y,
            });
        }
    }
    Followed { stays, span, without, farthest: Metres::from_metres(farthest) }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::plan::fixture::{at, on, room_stage};
    use crate::sky::sun::Sun;
    use crate::units::Spans;

    /// Spots in a row, each lit for 20 minutes, ten minutes later than the one before.
    fn row(step: f64) -> (HoldMap, Span) {
        let noon = at("2027-03-11T12:00:00Z");
        let minutes = |number: i64| noon + Duration::from_minutes(number);
        let spots = (0..6).map(|n| Spot {
            x: Metres::from_metres(f64::from(n) * step),
            y: Metres::from_metres(1.0),
            light: Spans::from(
                Span::new(minutes(10 * i64::from(n)), minutes(10 * i64::from(n) + 20)).unwrap(),
            ),
        });
        let map = HoldMap { step: Metres::from_metres(step), spots: spots.collect() };
        (map, Span::new(minutes(-60), minutes(180)).unwrap())
    }

    #[test]
    fn a_chair_that_moves_keeps_the_light() {
        let (map, day) = row(0.4);
        let found = follow(&map, Duration::from_minutes(10), day).unwrap();
        // From 12:00 to 13:10, against 20 minutes; with as few metres as it takes.
        assert_eq!((found.span.duration().minutes(), found.without.minutes()), (70.0, 20.0));
        assert!((found.farthest.metres() - 0.4).abs() < 1e-9 && found.stays.len() == 6, "{found:?}");
        assert!(found.stays.windows(2).all(|pair| pair[0].from < pair[1].from));
    }

    #[test]
    fn too_far_to_carry_is_not_followed() {
        let (map, day) = row(1.0);
        assert_eq!(follow(&map, Duration::from_minutes(10), day), None);
    }

    #[test]
    fn every_stay_in_the_loft_has_the_light() {
        let place = room_stage();
        let sun = Sun::new(place.stage.site);
        let day = place.stage.zone.day(on(2027, 3, 11)).unwrap();
        let map = HoldMap::of(&sun, &place, Metres::from_metres(1.2), day);
        let found = follow(&map, Duration::from_minutes(15), day).unwrap();
        assert!(found.span.duration() > found.without);
        for (stay, next) in
            found.stays.iter().zip(found.stays.iter().skip(1).map(|next| next.from).chain([found.span.end()]))
        {
            let spot = map.spots.iter().find(|spot| (spot.x, spot.y) == (stay.x, stay.y)).unwrap();
            assert!(holds(spot, Span::new(stay.from, next).unwrap()));
        }
    }
}
