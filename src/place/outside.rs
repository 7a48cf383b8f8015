//! What stands around a room: its own skyline and upright screens, seen anew from every spot in it.
//!
//! A screen is a flat upright rectangle, such as the front of the house across the street: at a distance from the *middle of
//! the room*, between two bearings from there, its top at a height above the room's floor. It reaches down without end.

use serde::{Deserialize, Serialize};

use super::blocker::{Blocker, Eye, Kind};
use super::room::Room;
use super::skyline::Skyline;
use crate::maths;
use crate::units::{Bearing, Degrees, InRoom, Metres, Vector};

/// Widest span of a screen's bearings, degrees: a flat front cannot fill half the view. Our choice.
const WIDEST: f64 = 170.0;

/// An upright rectangle outside.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct Screen {
    /// Stable within the project.
    pub id: String,
    /// "house across the street".
    pub name: String,
    /// From the middle of the room straight to its plane.
    #[serde(rename = "distance_m")]
    pub distance: Metres,
    /// True bearing of its left end, seen from the middle of the room.
    #[serde(rename = "from_bearing_deg")]
    pub from: Bearing,
    /// True bearing of its right end.
    #[serde(rename = "to_bearing_deg")]
    pub to: Bearing,
    /// Its top above the room's floor.
    #[serde(rename = "height_m")]
    pub height: Metres,
}

impl Screen {
    /// How wide it looks from the middle of the room.
    pub fn span(&self) -> Degrees {
        let clockwise = self.from.turn_to(self.to).positive().degrees();
        Degrees::from_degrees(clockwise.min(WIDEST))
    }

    /// The same as something that stands around the middle of the room.
    fn blocker(&self) -> Blocker {
        let half = Degrees::from_degrees(self.span().degrees() / 2.0);
        let width = 2.0 * self.distance.metres() * maths::tan(half.radians());
        Blocker {
            id: self.id.clone(),
            name: self.name.clone(),
            kind: Kind::Wall,
            bearing: self.from.turned(half),
            distance: self.distance,
            width: Metres::from_metres(width),
            depth: Metres::default(),
            height: self.height,
            turned: Degrees::default(),
            leaves: None,
        }
    }

    /// Its left and right upper corner, and the level way to it, in axes of the room.
    pub(crate) fn corners(&self, room: &Room) -> ([Vector<InRoom>; 2], Vector<InRoom>) {
        let blocker = self.blocker();
        let away = room.room_from_world(blocker.bearing.level());
        let right = room.room_from_world(blocker.bearing.turned(Degrees::from_degrees(90.0)).level());
        let [x, y] = room.middle().map(Metres::metres);
        let top = Vector::new(x, y, self.height.metres()) + away * self.distance.metres();
        let half = right * (blocker.width.metres() / 2.0);
        ([top - half, top + half], away)
    }
}

impl Room {
    /// What of its own surroundings blocks the sky from a point of it.
    pub fn line_from(&self, point: Vector<InRoom>) -> Skyline {
        let [x, y] = self.middle().map(Metres::metres);
        let from_middle = self.world_from_room(point - Vector::new(x, y, 0.0));
        let [east, north, height] = [from_middle.x, from_middle.y, from_middle.z].map(Metres::from_metres);
        let seen =
            self.screens.iter().filter_map(|screen| screen.blocker().seen_from(Eye { east, north, height }));
        seen.fold(self.skyline.clone(), |all, one| all.or(&one))
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn street() -> Room {
        let mut room =
            Room::rectangle("r", "r", [6.0, 4.0, 3.0].map(Metres::from_metres), Bearing::from_degrees(90.0));
        room.screens.push(Screen {
            id: "s".to_owned(),
            name: "house across the street".to_owned(),
            distance: Metres::from_metres(12.0),
            from: Bearing::from_degrees(60.0),
            to: Bearing::from_degrees(120.0),
            height: Metres::from_metres(8.0),
        });
        room
    }

    fn height(room: &Room, point: Vector<InRoom>, bearing: f64) -> f64 {
        room.line_from(point).height_at(Bearing::from_degrees(bearing)).degrees()
    }

    #[test]
    fn nearer_to_the_window_the_house_across_is_higher() {
        let room = street();
        let expected = |distance: f64, up: f64| Degrees::from_radians(maths::atan2(up, distance)).degrees();
        // The room's y points west, so that y 0 is 2 m nearer than the middle.
        assert!((height(&room, Vector::new(3.0, 2.0, 1.5), 90.0) - expected(12.0, 6.5)).abs() < 1e-9);
        assert!((height(&room, Vector::new(3.0, 0.0, 1.5), 90.0) - expected(10.0, 6.5)).abs() < 1e-9);
        assert!((height(&room, Vector::new(3.0, 4.0, 0.0), 90.0) - expected(14.0, 8.0)).abs() < 1e-9);
        assert_eq!(height(&room, Vector::new(3.0, 2.0, 1.5), 130.0), 0.0);
    }

    #[test]
    fn its_corners_lie_where_its_bearings_say() {
        let room = street();
        let ([left, right], away) = room.screens[0].corners(&room);
        let middle = Vector::new(3.0, 2.0, 8.0);
        let bearing = |corner: Vector<InRoom>| room.world_from_room(corner - middle).bearing().degrees();
        assert!((bearing(left) - 60.0).abs() < 1e-9 && (bearing(right) - 120.0).abs() < 1e-9);
        assert!((away.dot(left - middle) - 12.0).abs() < 1e-9);
    }
}
