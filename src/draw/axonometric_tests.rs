//! The room from a raised corner: what is drawn, and the way back from the paper.

use super::*;
use crate::place::mark::Mark;
use crate::place::opening::Opening;
use crate::units::{Bearing, Height};
use proptest::prelude::*;

fn m(metres: f64) -> Metres {
    Metres::from_metres(metres)
}

fn loft() -> Room {
    let mut room = Room::rectangle("r", "sail loft", [m(8.0), m(6.0), m(3.4)], Bearing::from_degrees(248.0));
    for offset in [2.4, 4.8] {
        room.openings.push(Opening::rectangle("o", "window", 0, [m(offset), m(0.9), m(1.2), m(1.7)]));
    }
    let mark = Mark {
        id: "m".into(),
        name: "mark 1".into(),
        x: m(4.2),
        y: m(3.0),
        face_height: m(1.5),
        sighted: vec![],
    };
    room.marks.push(mark);
    room
}

fn sun(room: &Room, bearing: f64, height: f64) -> Vector<InRoom> {
    room.room_from_world(Vector::towards(Bearing::from_degrees(bearing), Height::clamped(height)))
}

fn pieces(drawing: &Drawing, paint: Paint) -> usize {
    drawing.layer(paint).map_or(0, |layer| layer.path.text().matches('M').count())
}

#[test]
fn the_sunny_wall_is_far_and_to_the_left() {
    let room = loft();
    let wall = wall_to_see(&room, Some(sun(&room, 240.0, 25.0))).unwrap();
    let view = View::of(&room, &wall);
    assert!(view.shows(&wall));
    assert_eq!(room.walls().filter(|(_, wall)| view.shows(wall)).count(), 2);
    let middle = |wall: &Wall| view.place((wall.from + wall.to) * 0.5);
    let across = view.place(Vector::new(4.0, 3.0, 0.0));
    assert!(middle(&wall).x < across.x && middle(&wall).y < across.y);
}

#[test]
fn two_windows_make_two_patches_and_two_shafts() {
    let room = loft();
    let drawing = axonometric(&room, Some(sun(&room, 240.0, 25.0)));
    assert_eq!((pieces(&drawing, Paint::Opening), pieces(&drawing, Paint::Shaft)), (2, 2));
    assert!(drawing.layers.iter().any(|layer| layer.paint == Paint::Lit));
    assert_eq!(drawing.text, "sail loft: sun through 2 openings, on the floor");
    assert_eq!(drawing.hits.len(), 3);
    assert_eq!(drawing.labels.last().unwrap().text, "wall faces 248°");
}

#[test]
fn without_sun_there_is_no_light() {
    let drawing = axonometric(&loft(), None);
    assert!(drawing.layer(Paint::Lit).is_none() && drawing.layer(Paint::Shaft).is_none());
    assert_eq!(drawing.text, "sail loft: no sun in the room");
    let mut nothing = loft();
    nothing.floor.clear();
    assert!(axonometric(&nothing, None).layers.is_empty());
}

#[test]
fn a_hull_leaves_out_what_is_inside() {
    let points = [(0.0, 0.0), (2.0, 0.0), (1.0, 1.0), (2.0, 2.0), (0.0, 2.0)];
    assert_eq!(hull(points.map(|(x, y)| Point::new(x, y)).to_vec()).len(), 4);
}

proptest! {
    #[test]
    fn floor_and_wall_are_read_back(x in 0.0..8.0f64, y in 0.0..6.0f64, up in 0.0..3.4f64) {
        let room = loft();
        let wall = room.wall(0).unwrap();
        let view = View::of(&room, &wall);
        let [back_x, back_y] = view.floor_at(view.place(Vector::new(x, y, 0.0)));
        prop_assert!((back_x.metres() - x).abs() < 1e-9 && (back_y.metres() - y).abs() < 1e-9);
        let [along, high] = view.wall_at(view.place(wall.point(m(x), m(up))), &wall);
        prop_assert!((along.metres() - x).abs() < 1e-9 && (high.metres() - up).abs() < 1e-9);
    }

    #[test]
    fn every_corner_is_on_the_paper(width in 0.5..40.0f64, depth in 0.5..40.0f64, number in 0usize..4) {
        let room = Room::rectangle("r", "room", [m(width), m(depth), m(3.0)], Bearing::from_degrees(10.0));
        let view = View::of(&room, &room.wall(number).unwrap());
        for (_, wall) in room.walls() {
            for up in [0.0, 3.0] {
                let at = view.place(wall.point(m(0.0), m(up)));
                prop_assert!((0.0..=PAPER.x).contains(&at.x) && (0.0..=PAPER.y).contains(&at.y));
            }
        }
    }
}
