//! The picture from above, beside the demo project and set-ups made up for it.

use super::*;
use crate::draw::ink;
use crate::place::opening::Opening;
use crate::project::demo;
use crate::units::Height;

fn loft() -> Room {
    demo::project().locations[0].rooms[0].clone()
}

fn overhead(room: Option<&Room>) -> Overhead<'_> {
    let sun = |bearing: f64| Vector::towards(Bearing::from_degrees(bearing), Height::clamped(12.0));
    Overhead {
        room,
        mark: [3.6, 2.6].map(Metres::from_metres),
        mark_name: "by the bench",
        facing: Bearing::from_degrees(120.0),
        lens: Bearing::from_degrees(300.0),
        distance: Metres::from_metres(2.5),
        across: Degrees::from_degrees(28.0),
        suns: [255.0, 258.0, 261.0].map(|bearing| (sun(bearing), "17:38".to_owned())),
        rigged: vec![Rigged {
            piece: Piece::Board,
            width: Metres::from_metres(1.5),
            bearing: Bearing::from_degrees(75.0),
            distance: Metres::from_metres(1.2),
            words: ["white board".to_owned(), String::new()],
        }],
        title: "4 A · Mending the sail".to_owned(),
        lines: vec!["key from camera left".to_owned(), "board, right".to_owned()],
        units: Units::Metric,
    }
}

/// Every point that the `d` of a path names, read back from the text of the drawing alone.
fn points(d: &str) -> Vec<[f64; 2]> {
    let numbers: Vec<f64> = d
        .split(|letter: char| letter.is_ascii_alphabetic() || letter == ' ' || letter == ',')
        .filter_map(|word| word.parse().ok())
        .collect();
    numbers.chunks_exact(2).map(|pair| [pair[0], pair[1]]).collect()
}

/// The `d` of every path painted in one way.
fn paths(svg: &str, paint: &str) -> Vec<String> {
    let cut =
        |piece: &str| piece.split(" d=\"").nth(1).and_then(|rest| rest.split('"').next()).map(str::to_owned);
    svg.split("<path").filter(|piece| piece.contains(paint)).filter_map(cut).collect()
}

/// The bar says how long it is; walls, camera and mark measured against it have the lengths of the room.
#[test]
fn everything_is_at_the_scale_of_the_bar() {
    let room = loft();
    let svg = ink::svg(&overhead(Some(&room)).drawing());
    let lines = paths(&svg, "data-paint=\"draw-line\"");
    let bar = lines.iter().map(|d| points(d)).find(|p| p.len() == 4 && p[0][0] == p[1][0]).unwrap();
    let length: f64 = svg.split(" m<").next().unwrap().rsplit('>').next().unwrap().parse().unwrap();
    let metre = (bar[2][0] - bar[1][0]) / length;
    let floor = points(&paths(&svg, "data-paint=\"draw-floor\"")[0]);
    let side = |one: usize, two: usize| {
        crate::maths::hypot(floor[one][0] - floor[two][0], floor[one][1] - floor[two][1]) / metre
    };
    // Paths are printed to a tenth of a unit: a few millimetres of the room.
    assert!((side(0, 1) - 8.0).abs() < 0.02, "{}", side(0, 1));
    assert!((side(1, 2) - 6.0).abs() < 0.02, "{}", side(1, 2));
    let board = lines.iter().map(|d| points(d)).find(|p| p.len() == 2).unwrap();
    let wide = crate::maths::hypot(board[0][0] - board[1][0], board[0][1] - board[1][1]) / metre;
    assert!((wide - 1.5).abs() < 0.02, "{wide}");
    let seen = points(&paths(&svg, "data-paint=\"draw-dashed\"")[0]);
    let [left, camera, right] = [seen[0], seen[1], seen[2]];
    let middle = [(left[0] + right[0]) / 2.0, (left[1] + right[1]) / 2.0];
    let far = crate::maths::hypot(middle[0] - camera[0], middle[1] - camera[1]) / metre;
    assert!((far - 5.0 * crate::maths::cos(Degrees::from_degrees(14.0).radians())).abs() < 0.02, "{far}");
}

/// A roof light lies where it is over the floor, as large as it is, and dashed: it is no part of the plan's own height.
#[test]
fn a_roof_light_is_a_dashed_rectangle_over_the_floor() {
    let mut room = loft();
    let mut light = Opening::rectangle("r", "roof light", 0, [3.0, 2.0, 0.8, 1.2].map(Metres::from_metres));
    light.in_ceiling = true;
    room.openings = vec![light];
    let svg = ink::svg(&overhead(Some(&room)).drawing());
    let floor = points(&paths(&svg, "data-paint=\"draw-floor\"")[0]);
    let metre = (floor[1][0] - floor[0][0]).abs() / 8.0;
    let roof = points(&paths(&svg, "data-paint=\"draw-dashed\"")[0]);
    let at = |n: usize| [(roof[n][0] - floor[0][0]) / metre, (floor[0][1] - roof[n][1]) / metre];
    let range = |axis: usize| {
        (0..4)
            .map(at)
            .map(|spot| spot[axis].abs())
            .fold([f64::MAX, 0.0], |[low, high], one| [one.min(low), one.max(high)])
    };
    for (found, expected) in [(range(0), [3.0, 3.8]), (range(1), [2.0, 3.2])] {
        assert!((found[0] - expected[0]).abs() < 0.02 && (found[1] - expected[1]).abs() < 0.02, "{found:?}");
    }
    assert!(paths(&svg, "data-paint=\"draw-opening\"").is_empty());
}

#[test]
fn all_of_it_lies_on_the_paper() {
    let room = loft();
    for place in [Some(&room), None] {
        let drawing = overhead(place).drawing();
        for layer in &drawing.layers {
            for [x, y] in points(layer.path.text()) {
                assert!((0.0..=PAPER.x).contains(&x) && (0.0..=PAPER.y).contains(&y), "{x} {y}");
            }
        }
        assert!(drawing.labels.iter().any(|label| label.text.contains("17:38, 12°")), "{:?}", drawing.labels);
    }
}

#[test]
fn in_the_open_north_is_up() {
    let drawing = overhead(None).drawing();
    let letter = drawing.labels.iter().find(|label| label.text == "N").unwrap();
    assert!(letter.at.y < 36.0 && (letter.at.x - (PAPER.x - 28.0)).abs() < 1e-9);
}
