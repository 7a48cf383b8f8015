//! The room from above: what is drawn, and the way back from the paper.

use super::*;
use crate::place::mark::Mark;
use crate::place::opening::{Opening, Overhang};
use crate::units::Height;
use proptest::prelude::*;

fn m(metres: f64) -> Metres {
    Metres::from_metres(metres)
}

fn loft(bearing: f64) -> Room {
    let mut room =
        Room::rectangle("r", "sail loft", [m(8.0), m(6.0), m(3.4)], Bearing::from_degrees(bearing));
    room.openings.push(Opening::rectangle("o", "window", 0, [m(2.0), m(0.9), m(1.2), m(1.7)]));
    room.marks.push(Mark {
        id: "m".into(),
        name: "mark 1".into(),
        x: m(4.2),
        y: m(3.0),
        face_height: m(1.5),
        sighted: vec![],
    });
    room
}

fn scene(sun: Option<(f64, f64)>) -> Scene {
    let towards =
        |(bearing, height)| Vector::towards(Bearing::from_degrees(bearing), Height::clamped(height));
    let lens = Some((0, Bearing::from_degrees(215.0), Degrees::from_degrees(40.0)));
    Scene { sun: sun.map(towards), lens, units: Units::Metric }
}

#[test]
fn the_sun_lies_on_the_floor_inside_the_sunny_wall() {
    let drawing = plan(&loft(248.0), scene(Some((248.0, 30.0))));
    assert!(drawing.layer(Paint::Lit).is_some());
    assert_eq!(drawing.text, "sail loft from above, wall 1 faces 248° WSW, sun from 248° WSW");
    assert!(plan(&loft(248.0), scene(Some((68.0, 30.0)))).layer(Paint::Lit).is_none());
}

#[test]
fn north_is_up_where_wall_1_faces_south() {
    let north = |bearing: f64| {
        let drawing = plan(&loft(bearing), scene(None));
        drawing.labels.iter().find(|label| label.text == "N").unwrap().at
    };
    // 22 above the arrow's middle, and 22 to its left where the room has been turned by a quarter.
    assert!(north(180.0).distance(Point::new(PAPER.x - 26.0, 12.0)) < 1e-9);
    assert!(north(270.0).distance(Point::new(PAPER.x - 48.0, 34.0)) < 1e-9);
}

#[test]
fn the_scale_is_a_round_length() {
    let last = |units| {
        let drawing = plan(&loft(180.0), Scene { units, ..scene(None) });
        drawing.labels.last().unwrap().text.clone()
    };
    assert_eq!(last(Units::Metric), words::length(m(2.0), Units::Metric));
    assert_eq!(last(Units::FeetInches), words::length(Metres::from_feet(5.0), Units::FeetInches));
}

#[test]
fn marks_and_openings_can_be_touched() {
    let (room, drawing) = (loft(180.0), plan(&loft(180.0), scene(None)));
    let at = |x: f64, y: f64| Plan::of(&room).place(Vector::new(x, y, 0.0));
    assert_eq!(drawing.touched(at(4.2, 3.0)), Some(Target::Mark(0)));
    assert_eq!(drawing.touched(at(2.6, 0.0)), Some(Target::Opening(0)));
    let mut nothing = loft(180.0);
    nothing.floor.clear();
    assert!(plan(&nothing, scene(None)).layers.is_empty());
}

#[test]
fn a_slab_over_a_window_is_dashed_as_far_out_as_it_reaches() {
    let mut room = loft(180.0);
    (room.openings[0].reveal, room.openings[0].overhang) =
        (m(0.3), Some(Overhang { depth: m(0.9), above: m(0.2) }));
    let plan_of = Plan::of(&room);
    let dashed = |room: &Room| {
        let drawing = plan(room, Scene { lens: None, ..scene(None) });
        drawing.layer(Paint::Dashed).map(|layer| layer.path.text().to_owned())
    };
    let mut slab = Path::new();
    let at = |x: f64, y: f64| plan_of.place(Vector::new(x, y, 0.0));
    slab.polyline(&[at(2.0, -0.3), at(2.0, -1.2), at(3.2, -1.2), at(3.2, -0.3)]);
    assert_eq!(dashed(&room).as_deref(), Some(slab.text()));
    assert_eq!(dashed(&loft(180.0)), None);
}

proptest! {
    #[test]
    fn the_paper_is_read_back(x in 0.0..8.0f64, y in 0.0..6.0f64) {
        let room = loft(10.0);
        let plan = Plan::of(&room);
        let at = plan.place(Vector::new(x, y, 0.0));
        let [back_x, back_y] = plan.floor_at(at);
        prop_assert!((back_x.metres() - x).abs() < 1e-9 && (back_y.metres() - y).abs() < 1e-9);
        let along = plan.along_at(at, &room.wall(2).unwrap());
        prop_assert!((along.metres() - (8.0 - x)).abs() < 1e-9, "wall 2 runs against x");
    }
}
