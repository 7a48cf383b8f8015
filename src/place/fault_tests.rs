//! Each fault alone, found by spoiling a sound room.

use super::*;

fn m(metres: f64) -> Metres {
    Metres::from_metres(metres)
}

fn sound() -> Room {
    let mut room = Room::rectangle("r", "loft", [m(5.0), m(4.0), m(2.6)], Default::default());
    room.openings = vec![Opening::rectangle("o", "window", 1, [m(1.0), m(0.9), m(1.2), m(1.4)])];
    room.marks = vec![Mark::new("m", "mark 1", [m(2.0), m(2.0)])];
    room
}

fn spoiled(spoil: impl FnOnce(&mut Room)) -> Vec<Fault> {
    let mut room = sound();
    spoil(&mut room);
    room.check()
}

#[test]
fn a_sound_room_has_no_faults() {
    assert_eq!(sound().check(), []);
}

#[test]
fn each_fault_is_found() {
    let corner = |x, y| [m(x), m(y)];
    assert_eq!(spoiled(|room| room.floor.truncate(2))[0], Fault::Corners { count: 2 });
    assert_eq!(spoiled(|room| room.floor[2] = corner(f64::NAN, 1.0))[0], Fault::NotANumber);
    assert_eq!(spoiled(|room| room.floor[2] = room.floor[1])[0], Fault::NoLength { wall: 1 });
    assert_eq!(spoiled(|room| room.floor.swap(2, 3))[0], Fault::Crossing { wall: 1, other: 3 });
    assert_eq!(spoiled(|room| room.floor.reverse())[0], Fault::Clockwise);
    assert!(spoiled(|room| room.floor.rotate_left(1)).contains(&Fault::Axes));
    assert!(spoiled(|room| room.ceiling = m(0.0)).contains(&Fault::Ceiling { ceiling: m(0.0) }));
    let (opening, mark) = ("window".to_owned(), "mark 1".to_owned());
    let past = Fault::PastWall { opening: opening.clone(), end: m(4.2), length: m(4.0) };
    assert_eq!(spoiled(|room| room.openings[0].offset = m(3.0)), [past]);
    let past = Fault::PastCeiling { opening: opening.clone(), head: m(2.9), ceiling: m(2.6) };
    assert_eq!(spoiled(|room| room.openings[0].sill = m(1.5)), [past]);
    let wall = Fault::NoSuchWall { opening: opening.clone(), wall: 4 };
    assert_eq!(spoiled(|room| room.openings[0].wall = 4), [wall]);
    assert_eq!(spoiled(|room| room.openings[0].width = m(0.0)), [Fault::Size { opening: opening.clone() }]);
    let glass = Fault::Transmittance { opening, given: 1.5 };
    assert_eq!(spoiled(|room| room.openings[0].transmittance = 1.5), [glass]);
    assert_eq!(spoiled(|room| room.marks[0].x = m(6.0)), [Fault::MarkOutside { mark: mark.clone() }]);
    let face = Fault::FaceOutside { mark, height: m(3.0) };
    assert_eq!(spoiled(|room| room.marks[0].face_height = m(3.0)), [face]);
}

#[test]
fn a_roof_light_must_be_over_the_floor() {
    let roof = |x: f64| {
        spoiled(move |room| {
            (room.openings[0].in_ceiling, room.openings[0].wall, room.openings[0].offset) = (true, 9, m(x));
        })
    };
    assert_eq!(roof(1.0), []);
    assert_eq!(roof(4.5), [Fault::PastRoof { opening: "window".to_owned() }]);
}

#[test]
fn faults_are_said_in_words() {
    let words = spoiled(|room| room.openings[0].offset = m(3.0))[0].to_string();
    assert_eq!(words, "window: ends at 4.2 m in a wall of 4 m");
}
