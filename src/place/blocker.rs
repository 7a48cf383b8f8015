//! Blockers: things at a known distance that hide the sky, seen anew from each mark and face height.
//!
//! Positions are metres east and north of the location, heights are above its ground. A blocker stands on a rectangle (a tree
//! turns its crown to whoever looks). Its upper outline is straight edges, so that it becomes an exact skyline.

use chrono::{Datelike, NaiveDate};
use serde::{Deserialize, Serialize};

use super::cone::HalfSpace;
use super::skyline::{Point, Skyline};
use crate::units::{Bearing, Degrees, Height, Metres, Vector, World};

/// Beside a blocker the sky is open down to here, so that it never hides what lies below its own edges.
const OPEN: f64 = -89.0;

/// Widest piece of an edge between two points of the skyline, degrees. Our choice: under what a skyline takes for
/// one roof.
const PIECE: f64 = 30.0;

/// What a blocker is.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum Kind {
    /// A house or any other block.
    #[default]
    House,
    /// A free-standing wall.
    Wall,
    /// The edge of a roof or terrace one stands on.
    Parapet,
    /// A tree or a row of them.
    Tree,
}

/// Something that hides the sky.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct Blocker {
    /// Stable within the project.
    pub id: String,
    /// "the boat house".
    pub name: String,
    /// What it is.
    #[serde(default)]
    pub kind: Kind,
    /// Towards the middle of its near face, from the location.
    #[serde(rename = "bearing_deg")]
    pub bearing: Bearing,
    /// To the middle of its near face.
    #[serde(rename = "distance_m")]
    pub distance: Metres,
    /// Across the line of sight, or across `turned`.
    #[serde(rename = "width_m")]
    pub width: Metres,
    /// Away from the near face; nought for a wall.
    #[serde(rename = "depth_m", default)]
    pub depth: Metres,
    /// Its top above the ground of the location.
    #[serde(rename = "height_m")]
    pub height: Metres,
    /// How far the near face is turned clockwise from square to the line of sight.
    #[serde(rename = "turned_deg", default)]
    pub turned: Degrees,
    /// When a tree has leaves; `None` for all year. A bare tree hides nothing.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub leaves: Option<Leaves>,
}

/// When a tree has leaves, each year.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize)]
pub struct Leaves {
    /// First day with leaves.
    pub on: DayOfYear,
    /// First day without.
    pub off: DayOfYear,
}

/// A day of any year; the 29th of February is the 1st of March in the other years.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Serialize, Deserialize)]
pub struct DayOfYear {
    /// 1 to 12.
    pub month: u8,
    /// 1 to 31.
    pub day: u8,
}

impl DayOfYear {
    /// The day of a date.
    pub fn of(date: NaiveDate) -> Self {
        Self { month: date.month() as u8, day: date.day() as u8 }
    }

    /// Its date in a year; a day that its month lacks is the first of the next month.
    pub fn in_year(self, year: i32) -> Option<NaiveDate> {
        let (month, day) = (u32::from(self.month), u32::from(self.day.max(1)));
        NaiveDate::from_ymd_opt(year, month, day).or_else(|| NaiveDate::from_ymd_opt(year, month + 1, 1))
    }
}

impl Leaves {
    /// Whether there are leaves on a day; over New Year where they come in the southern spring.
    pub fn are_on(self, today: DayOfYear) -> bool {
        let (after_on, before_off) = (self.on <= today, today < self.off);
        if self.on <= self.off { after_on && before_off } else { after_on || before_off }
    }
}

/// Where one looks from: metres east and north of the location, and the eye above its ground.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub struct Eye {
    /// East of the location.
    pub east: Metres,
    /// North of it.
    pub north: Metres,
    /// Above its ground.
    pub height: Metres,
}

impl Blocker {
    /// What it hides; `None` from where one stands in it, and for sizes that are not numbers.
    pub fn seen_from(&self, eye: Eye) -> Option<Skyline> {
        let corners = self.corners(eye)?;
        let sides = if self.depth.metres() > 0.0 { corners.len() } else { 1 };
        let edges = (0..sides).map(|side| [corners[side], corners[(side + 1) % corners.len()]]);
        edges.filter_map(outline).reduce(|all, edge| all.or(&edge))
    }

    /// Its upper corners from the eye, the near face first; a tree's face is turned to the eye.
    fn corners(&self, eye: Eye) -> Option<Vec<Vector<World>>> {
        let from = Vector::new(eye.east.metres(), eye.north.metres(), eye.height.metres());
        let near = self.bearing.level() * self.distance.metres() + Vector::UP * self.height.metres() - from;
        let (half, depth) = (self.width.metres() / 2.0, self.depth.metres());
        let faces = match self.kind {
            Kind::Tree => Vector::<World>::new(near.x, near.y, 0.0).unit()?.bearing(),
            _ => self.bearing.turned(self.turned),
        };
        let (across, away) =
            (faces.turned(Degrees::from_degrees(90.0)).level() * half, faces.level() * depth);
        let corners = vec![near - across, near + across, near + across + away, near - across + away];
        let sound = corners.iter().all(|corner| corner.norm().is_finite()) && half > 0.0 && depth >= 0.0;
        (sound && !is_over(&corners)).then_some(corners)
    }
}

/// Whether the eye stands within the rectangle, seen from above.
fn is_over(corners: &[Vector<World>]) -> bool {
    let turn = |a: Vector<World>, b: Vector<World>| a.x * b.y - a.y * b.x;
    let next = corners.iter().cycle().skip(1);
    let turns: Vec<f64> = corners.iter().zip(next).map(|(a, b)| turn(*a, *b)).collect();
    turns.iter().all(|turn| *turn > 0.0) || turns.iter().all(|turn| *turn < 0.0)
}

/// A straight edge as a skyline, with open sky beside it; `None` for one seen end on.
fn outline([a, b]: [Vector<World>; 2]) -> Option<Skyline> {
    let clockwise = a.bearing().turn_to(b.bearing()).degrees() > 0.0;
    let (from, to) = if clockwise { (a, b) } else { (b, a) };
    let width = from.bearing().turn_to(to.bearing()).degrees();
    let above = HalfSpace::beside(to.cross(from).unit().filter(|normal| normal.z > 0.0)?);
    let from = from.bearing();
    let pieces = (width / PIECE).ceil().max(1.0) as u32;
    let top = (0..=pieces).map(|piece| {
        let bearing = from.turned(Degrees::from_degrees(width * (f64::from(piece) / f64::from(pieces))));
        Point { bearing, height: above.edge_at(bearing) }
    });
    let top: Vec<Point> = top.collect();
    // The sky opens at the very bearings of the ends: rounding must not put an end beside its step.
    let open = |end: &Point| Point { height: Height::clamped(OPEN), ..*end };
    let (left, right) = (top.first().map(open), top.last().map(open));
    Some(Skyline::new(left.into_iter().chain(top).chain(right).collect()))
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::maths;
    use proptest::prelude::*;

    fn m(metres: f64) -> Metres {
        Metres::from_metres(metres)
    }

    fn house() -> Blocker {
        Blocker {
            id: "b".to_owned(),
            name: "boat house".to_owned(),
            kind: Kind::House,
            bearing: Bearing::from_degrees(90.0),
            distance: m(20.0),
            width: m(10.0),
            depth: m(6.0),
            height: m(8.0),
            turned: Degrees::default(),
            leaves: None,
        }
    }

    fn eye(east: f64, north: f64, height: f64) -> Eye {
        Eye { east: m(east), north: m(north), height: m(height) }
    }

    fn degrees(opposite: f64, adjacent: f64) -> f64 {
        Degrees::from_radians(maths::atan2(opposite, adjacent)).degrees()
    }

    #[test]
    fn a_house_is_as_high_as_its_near_edge() {
        let seen = house().seen_from(eye(0.0, 0.0, 1.5)).unwrap();
        let height = |bearing| seen.height_at(Bearing::from_degrees(bearing)).degrees();
        assert!((height(90.0) - degrees(6.5, 20.0)).abs() < 1e-9);
        assert!(height(90.0 + degrees(5.0, 20.0) + 0.1) < -80.0 && height(270.0) < -80.0);
    }

    #[test]
    fn three_metres_move_the_edge() {
        let at =
            |east| house().seen_from(eye(east, 0.0, 1.5)).unwrap().height_at(Bearing::from_degrees(90.0));
        assert!((at(3.0).degrees() - degrees(6.5, 17.0)).abs() < 1e-9);
        // From the other side its far edge has become the near one.
        let west = house().seen_from(eye(40.0, 0.0, 1.5)).unwrap().height_at(Bearing::from_degrees(270.0));
        assert!((west.degrees() - degrees(6.5, 14.0)).abs() < 1e-9);
        assert_eq!(house().seen_from(eye(22.0, 0.0, 1.5)), None, "one stands in it");
    }

    #[test]
    fn a_tree_hides_the_sky_while_it_has_leaves() {
        let day = |month, day| DayOfYear { month, day };
        let on = |leaves: Leaves, date: &str| leaves.are_on(DayOfYear::of(date.parse().unwrap()));
        let north = Leaves { on: day(4, 15), off: day(11, 1) };
        assert!(on(north, "2027-04-15") && on(north, "2027-10-31"));
        assert!(!on(north, "2027-04-14") && !on(north, "2027-11-01"));
        let south = Leaves { on: day(10, 1), off: day(4, 20) };
        assert!(on(south, "2027-12-31") && on(south, "2028-02-29") && !on(south, "2027-06-21"));
    }

    /// Whether a ray passes below the top of the rectangle while over it; shares nothing with outlines.
    fn is_hit(blocker: &Blocker, eye: Eye, bearing: f64, height: f64) -> bool {
        let facing = blocker.bearing.turned(blocker.turned);
        let (away, across) = (facing.level(), facing.turned(Degrees::from_degrees(90.0)).level());
        let near = blocker.bearing.level() * blocker.distance.metres();
        let start = Vector::new(eye.east.metres(), eye.north.metres(), 0.0) - near;
        let to = Bearing::from_degrees(bearing).level();
        let (mut enter, mut leave) = (0.0f64, f64::INFINITY);
        let half = blocker.width.metres() / 2.0;
        for (axis, low, high) in [(away, 0.0, blocker.depth.metres()), (across, -half, half)] {
            let (at, pace) = (axis.dot(start), axis.dot(to));
            let (a, b) = ((low - at) / pace, (high - at) / pace);
            (enter, leave) = (enter.max(a.min(b)), leave.min(a.max(b)));
        }
        let climb = maths::tan(Degrees::from_degrees(height).radians());
        let below = |reach: f64| eye.height.metres() + climb * reach < blocker.height.metres();
        enter < leave && (below(enter) || below(leave))
    }

    proptest! {
        #[test]
        fn outlines_hide_what_rays_hit(
            at in 0.0..360.0f64, distance in 4.0..60.0f64, width in 0.5..40.0f64, depth in 0.5..20.0f64,
            top in 0.5..30.0f64, turned in -60.0..60.0f64, east in -3.0..3.0f64, north in -3.0..3.0f64,
            bearing in -80.0..80.0f64, height in -40.0..70.0f64,
        ) {
            let blocker = Blocker {
                bearing: Bearing::from_degrees(at), distance: m(distance), width: m(width), depth: m(depth),
                height: m(top), turned: Degrees::from_degrees(turned), ..house()
            };
            let eye = eye(east, north, 1.6);
            let Some(seen) = blocker.seen_from(eye) else { return Ok(()) };
            let bearing = at + bearing;
            let edge = |by: f64| seen.height_at(Bearing::from_degrees(bearing + by)).degrees();
            // Not on an edge, where rounding decides.
            prop_assume!((edge(0.0) - height).abs() > 1e-6 && (edge(-1e-6) - edge(1e-6)).abs() < 1.0);
            prop_assert_eq!(edge(0.0) > height, is_hit(&blocker, eye, bearing, height));
        }
    }
}
