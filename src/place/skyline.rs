//! Skylines: how high the view is blocked, by bearing.
//!
//! Between two points the edge is a great circle, as a straight roof is seen. Points far apart do not stand for one
//! roof: there the height is led over evenly. Inside, every edge is a plane through the eye, so that asking whether a
//! direction is clear is one look-up and one product, without trigonometry. Without points it is the level horizon.

mod change;
mod columns;
mod edge;
mod join;

pub use columns::{BadLine, Trouble};

use serde::{Deserialize, Serialize};

use super::cone::HalfSpace;
use crate::maths;
use crate::units::{Bearing, Degrees, Height, Vector, World};

/// Points further apart are not the ends of one straight roof: its great circle would bulge by over 1° at 10° of
/// height. Our choice, with room for rounding.
const ONE_ROOF: f64 = 45.000_001;

/// Steps in which the height is led over wider gaps. Our choice.
const STEP: f64 = 15.0;

/// Points count as no higher or lower than this: straight up has no bearing.
const STEEPEST: f64 = 89.0;

/// Narrower pieces are upright steps, degrees.
const UPRIGHT: f64 = 1e-9;

/// A point of a skyline.
#[derive(Clone, Copy, Debug, PartialEq, Serialize, Deserialize)]
pub struct Point {
    /// True bearing.
    #[serde(rename = "bearing_deg")]
    pub bearing: Bearing,
    /// Height above the horizon; below it where one looks down.
    #[serde(rename = "height_deg")]
    pub height: Height,
}

/// A straight piece of a skyline, clockwise from one direction to another.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Edge {
    /// Where it begins.
    pub from: Bearing,
    /// How far it runs clockwise, over 0° and at most 45°.
    pub width: Degrees,
    /// Direction of its first end.
    pub start: Vector<World>,
    /// Direction of its last end.
    pub end: Vector<World>,
    /// Everything above it.
    pub above: HalfSpace,
}

/// The edge of what blocks the sky, all the way round.
#[derive(Clone, Debug, Default, PartialEq, Serialize, Deserialize)]
#[serde(from = "Vec<Point>", into = "Vec<Point>")]
pub struct Skyline {
    points: Vec<Point>,
    edges: Vec<Edge>,
    /// Monotone angle at which each edge begins.
    starts: Vec<f64>,
}

impl Skyline {
    /// From points in any order. Two of one bearing make an upright step, the first named to its left.
    pub fn new(mut points: Vec<Point>) -> Self {
        crate::order::by(&mut points, |a, b| a.bearing.degrees().total_cmp(&b.bearing.degrees()));
        let mut edges: Vec<Edge> = corners(&points).windows(2).filter_map(edge).collect();
        // A wide gap over north is led over in pieces that begin on both sides of it.
        crate::order::by(&mut edges, |a, b| monotone(a.start).total_cmp(&monotone(b.start)));
        let starts = edges.iter().map(|edge| monotone(edge.start)).collect();
        Self { points, edges, starts }
    }

    /// Whether it is the level horizon, with no points.
    pub fn is_level(&self) -> bool {
        self.points.is_empty()
    }

    /// Points as given, from north clockwise.
    pub fn points(&self) -> &[Point] {
        &self.points
    }

    /// Its pieces, clockwise; together they go once round, each beginning where the one before ends (higher or lower
    /// at a step). None for the level horizon.
    pub fn edges(&self) -> &[Edge] {
        &self.edges
    }

    /// The piece over which `direction` stands; `None` for the level horizon.
    pub fn edge_at(&self, direction: Vector<World>) -> Option<&Edge> {
        let after = self.starts.partition_point(|start| *start <= monotone(direction));
        // Before the first start one is still in the piece that ran over north.
        self.edges.get(after.checked_sub(1).unwrap_or(self.edges.len().saturating_sub(1)))
    }

    /// How high the view is blocked at a bearing; just clockwise of it, at a step.
    pub fn height_at(&self, bearing: Bearing) -> Height {
        self.edge_at(bearing.level()).map_or(Height::default(), |edge| edge.height_at(bearing))
    }

    /// Whether any of a disc of `radius` shows above it when its middle is seen in `direction` (length one); for a
    /// negative radius, whether all of the disc does.
    ///
    /// At the point of a gable the disc is measured to the lines of its two sides.
    pub fn clears(&self, direction: Vector<World>, radius: Degrees) -> bool {
        let reach = maths::sin(radius.radians());
        self.edge_at(direction).map_or(direction.z >= -reach, |edge| edge.clears(direction, reach))
    }

    /// The higher of two, at every bearing.
    pub fn or(&self, other: &Self) -> Self {
        let level = Self::level();
        let full = |line: &Self| if line.edges.is_empty() { level.clone() } else { line.clone() };
        join::higher(&full(self), &full(other))
    }

    /// The level horizon, written out.
    fn level() -> Self {
        Self::new(vec![Point { bearing: Bearing::default(), height: Height::default() }])
    }
}

impl From<Vec<Point>> for Skyline {
    fn from(points: Vec<Point>) -> Self {
        Self::new(points)
    }
}

impl From<Skyline> for Vec<Point> {
    fn from(skyline: Skyline) -> Self {
        skyline.points
    }
}

/// Ends of edges once round: `points` (sorted), gaps led over, and the first one again.
fn corners(points: &[Point]) -> Vec<Point> {
    let mut corners = Vec::new();
    for (index, point) in points.iter().enumerate() {
        let next = points.get(index + 1).unwrap_or(&points[0]);
        let last = index + 1 == points.len();
        let turn = point.bearing.turn_to(next.bearing).positive().degrees();
        // All points on one bearing: the last edge goes all the way round.
        let closes = last && points[0].bearing == point.bearing;
        corners.extend(led_over(*point, next.height, if closes { 360.0 } else { turn }));
    }
    corners.extend(points.first());
    corners
}

/// The point itself, and more after it in a gap of `width` degrees up to a point of height `to`.
fn led_over(point: Point, to: Height, width: f64) -> impl Iterator<Item = Point> {
    let steps = if width > ONE_ROOF { (width / STEP).ceil() as u32 } else { 1 };
    let (from, rise) = (point.height.degrees(), to.degrees() - point.height.degrees());
    (0..steps).map(move |step| {
        let share = f64::from(step) / f64::from(steps);
        Point {
            bearing: point.bearing.turned(Degrees::from_degrees(width * share)),
            height: Height::clamped(from + rise * share),
        }
    })
}

/// The piece between two neighbours; `None` where they stand on one bearing.
fn edge(ends: &[Point]) -> Option<Edge> {
    let [from, to] = [ends[0], ends[1]]
        .map(|end| Point { height: Height::clamped(end.height.degrees().clamp(-STEEPEST, STEEPEST)), ..end });
    let width = from.bearing.turn_to(to.bearing).positive();
    let start = Vector::towards(from.bearing, from.height);
    let end = Vector::towards(to.bearing, to.height);
    let normal = end.cross(start).unit()?;
    (width.degrees() > UPRIGHT && normal.z > 0.0).then_some(Edge {
        from: from.bearing,
        width,
        start,
        end,
        above: HalfSpace::beside(normal),
    })
}

/// A number in 0..4 that grows with the bearing, without trigonometry.
pub(crate) fn monotone(direction: Vector<World>) -> f64 {
    let Vector { x, y, .. } = direction;
    let share = |part: f64, other: f64| if part + other > 0.0 { part / (part + other) } else { 0.0 };
    match (x >= 0.0, y > 0.0) {
        (true, true) => share(x, y),
        (true, false) => 1.0 + share(-y, x),
        (false, false) => 2.0 + share(-x, -y),
        (false, true) => 3.0 + share(y, -x),
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use proptest::prelude::*;

    fn point(bearing: f64, height: f64) -> Point {
        Point { bearing: Bearing::from_degrees(bearing), height: Height::clamped(height) }
    }

    fn line(points: &[(f64, f64)]) -> Skyline {
        Skyline::new(points.iter().map(|(bearing, height)| point(*bearing, *height)).collect())
    }

    fn height(line: &Skyline, bearing: f64) -> f64 {
        line.height_at(Bearing::from_degrees(bearing)).degrees()
    }

    #[test]
    fn without_points_it_is_the_level_horizon() {
        assert_eq!(height(&Skyline::default(), 77.0), 0.0);
        let grazing = Vector::towards(Bearing::from_degrees(77.0), Height::clamped(-0.2));
        assert!(Skyline::default().clears(grazing, Degrees::from_degrees(0.266)));
        assert!(!Skyline::default().clears(grazing, Degrees::from_degrees(0.1)));
    }

    #[test]
    fn a_straight_roof_is_a_great_circle() {
        // A roof 10 m above the eye, 20 m off to the north, from 10 m west to 10 m east.
        let end = Degrees::from_radians(maths::atan2(10.0, maths::hypot(10.0, 20.0))).degrees();
        let roof = line(&[(-26.565_051_177, end), (26.565_051_177, end), (26.6, 0.0), (333.0, 0.0)]);
        // 53° apart: no single roof by our rule, so name the middle as well.
        assert!(height(&roof, 0.0) < 25.0);
        let middle = Degrees::from_radians(maths::atan2(10.0, 20.0)).degrees();
        let roof = line(&[(-26.565_051_177, end), (0.0, middle), (26.565_051_177, end)]);
        let quarter = Degrees::from_radians(maths::atan2(10.0, maths::hypot(5.0, 20.0))).degrees();
        let at = Degrees::from_radians(maths::atan2(5.0, 20.0)).degrees();
        assert!((height(&roof, at) - quarter).abs() < 1e-9);
        assert!((height(&roof, -at) - quarter).abs() < 1e-9);
    }

    #[test]
    fn a_single_point_goes_all_round() {
        let hedge = line(&[(350.0, 8.0)]);
        for bearing in [0.0, 90.0, 179.0, 349.0, 350.0] {
            assert!((height(&hedge, bearing) - 8.0).abs() < 0.08, "{bearing}: {}", height(&hedge, bearing));
        }
    }

    #[test]
    fn a_step_has_two_heights() {
        let wall = line(&[(90.0, 0.0), (90.0, 30.0), (120.0, 30.0), (120.0, 0.0)]);
        assert!(height(&wall, 89.99) < 0.1);
        assert!((height(&wall, 90.01) - 30.0).abs() < 0.1);
        assert!(height(&wall, 120.01) < 0.1);
        let north = line(&[(0.0, -5.0), (0.0, 30.0), (40.0, 30.0), (40.0, -5.0)]).or(&Skyline::default());
        assert!((height(&north, 0.01) - 30.0).abs() < 0.1 && height(&north, 359.99) == 0.0);
    }

    #[test]
    fn it_is_saved_as_its_points() {
        let wall = line(&[(120.0, 30.0), (90.0, 2.5)]);
        let text = serde_json::to_string(&wall).unwrap();
        assert_eq!(
            text,
            r#"[{"bearing_deg":90.0,"height_deg":2.5},{"bearing_deg":120.0,"height_deg":30.0}]"#
        );
        assert_eq!(serde_json::from_str::<Skyline>(&text).unwrap(), wall);
    }

    pub(super) fn some_points() -> impl Strategy<Value = Vec<Point>> {
        let one = (0.0..360.0f64, -20.0..80.0f64).prop_map(|(bearing, height)| point(bearing, height));
        proptest::collection::vec(one, 0..12)
    }

    proptest! {
        #[test]
        fn clear_is_higher(points in some_points(), bearing in 0.0..360.0f64, up in -30.0..89.0f64) {
            let line = Skyline::new(points);
            let edge = height(&line, bearing);
            prop_assume!((up - edge).abs() > 1e-9);
            let direction = Vector::towards(Bearing::from_degrees(bearing), Height::clamped(up));
            prop_assert_eq!(line.clears(direction, Degrees::default()), up > edge);
        }

        #[test]
        fn edges_close_the_circle(points in some_points()) {
            let line = Skyline::new(points);
            let round: f64 = line.edges().iter().map(|edge| edge.width.degrees()).sum();
            prop_assert!(line.points().is_empty() || (round - 360.0).abs() < 1e-9);
        }

        #[test]
        fn the_higher_of_two(a in some_points(), b in some_points(), bearing in 0.0..360.0f64) {
            let (a, b) = (Skyline::new(a), Skyline::new(b));
            let expected = height(&a, bearing).max(height(&b, bearing));
            prop_assert!((height(&a.or(&b), bearing) - expected).abs() < 1e-6);
        }
    }
}
