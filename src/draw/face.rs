//! The ball with a nose: what the lens sees of a head that is turned, and where its nose casts a shadow.
//!
//! All is computed on the sphere that is stretched into the egg ([`super::ball`]): the shadow ends where the line from
//! the nose's tip along the light meets it. A shadow that passes beside the head ends at its edge. The nose of the egg
//! is larger than a nose, so that its shadow is read at a glance: see [`crate::light::face`] for millimetres.

use super::ball::{self, add_ball};
use super::paint::Paint;
use super::path::Path;
use super::shape::{Drawing, Point, ViewBox};
use crate::light::relative::InLens;
use crate::units::Vector;

/// How far the nose stands out, its half width, its bridge and its foot above and below its middle, radii. Our own choice.
const OUT: f64 = 0.26;
const HALF_WIDTH: f64 = 0.10;
const BRIDGE: f64 = 0.26;
const FOOT: f64 = 0.12;

/// Half the height of the egg.
const HALF: f64 = 50.0;

/// A nose turned further from the lens than this (depth of its root, radii) is not drawn. Our own choice.
const HIDDEN: f64 = 0.25;

/// The ball with a nose that points along `nose`; `sun` is `None` for no sun on the face.
pub fn face(sun: Option<Vector<InLens>>, nose: Vector<InLens>) -> Drawing {
    let side = HALF * 1.2;
    let mut drawing = Drawing::showing(ViewBox { x: -side, y: -side, width: 2.0 * side, height: 2.0 * side });
    add_ball(&mut drawing, Point::default(), HALF, sun);
    let head = Head::new(nose);
    if head.root.y < HIDDEN {
        if let Some(shadow) = sun.and_then(|sun| head.shadow(ball::stretched(sun))) {
            drawing.fill(Paint::Shade, outline(&shadow));
        }
        let [bridge, tip, left, right] = head.corners();
        let lit = sun.is_some_and(|sun| head.root.dot(ball::stretched(sun)) > 0.0);
        drawing.fill(if lit { Paint::Floor } else { Paint::Skyline }, outline(&[bridge, left, tip, right]));
        drawing.stroke(Paint::Line, HALF * 0.03, outline(&[bridge, left, tip, right]));
    }
    drawing.text = ball::words(sun);
    drawing
}

/// A nose on the unit sphere.
struct Head {
    /// Where the nose sits.
    root: Vector<InLens>,
    /// Up the face, and to its left as the head sees it.
    up: Vector<InLens>,
    aside: Vector<InLens>,
}

impl Head {
    fn new(nose: Vector<InLens>) -> Self {
        let root = ball::stretched(nose);
        let up = (Vector::UP - root * root.z).unit().unwrap_or(Vector::new(0.0, 1.0, 0.0));
        Self { root, up, aside: up.cross(root) }
    }

    /// A point of the sphere beside the root.
    fn on(&self, aside: f64, up: f64) -> Vector<InLens> {
        (self.root + self.aside * aside + self.up * up).unit().unwrap_or(self.root)
    }

    fn tip(&self) -> Vector<InLens> {
        self.root * (1.0 + OUT) - self.up * FOOT
    }

    /// Bridge, tip, and the two sides of the foot.
    fn corners(&self) -> [Vector<InLens>; 4] {
        [self.on(0.0, BRIDGE), self.tip(), self.on(HALF_WIDTH, -FOOT), self.on(-HALF_WIDTH, -FOOT)]
    }

    /// The shadow's outline; `None` for a nose that is in the shade itself.
    fn shadow(&self, light: Vector<InLens>) -> Option<Vec<Vector<InLens>>> {
        if self.root.dot(light) <= 0.0 {
            return None;
        }
        let end = cast(self.tip(), light);
        let [bridge, _, left, right] = self.corners();
        Some(vec![bridge, left, end, right])
    }
}

/// Where the shadow of a point off the unit sphere falls on it, or passes it most nearly.
fn cast(point: Vector<InLens>, light: Vector<InLens>) -> Vector<InLens> {
    let along = point.dot(light);
    let under = along * along - (point.dot(point) - 1.0);
    let far = along - if under > 0.0 { under.sqrt() } else { 0.0 };
    let fallen = point - light * far.max(0.0);
    fallen.unit().unwrap_or(fallen)
}

/// An outline on the paper.
fn outline(corners: &[Vector<InLens>]) -> Path {
    let mut path = Path::new();
    for (n, corner) in corners.iter().enumerate() {
        let at = Point::new(corner.x * HALF * ball::SLENDER, -corner.z * HALF);
        if n == 0 {
            path.move_to(at);
        } else {
            path.line_to(at);
        }
    }
    path.close();
    path
}

/// How far a nose is turned from the lens, "24° to camera left"; "to the lens".
pub fn turned_words(yaw: crate::units::Degrees) -> String {
    let degrees = crate::words::degrees(yaw.abs());
    match yaw.degrees().round() {
        0.0 => "to the lens".to_owned(),
        yaw if yaw.abs() >= 180.0 => "away from the lens".to_owned(),
        yaw if yaw > 0.0 => format!("{degrees} to camera left"),
        _ => format!("{degrees} to camera right"),
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::units::Degrees;
    use proptest::prelude::*;

    fn unit(x: f64, y: f64, z: f64) -> Vector<InLens> {
        Vector::new(x, y, z).unit().unwrap()
    }

    #[test]
    fn light_from_the_right_throws_the_shadow_to_the_left() {
        let head = Head::new(unit(0.0, -1.0, 0.0));
        let light = ball::stretched(unit(1.0, -1.0, 1.0));
        let end = head.shadow(light).unwrap()[2];
        assert!(end.x < -0.1 && end.z < -0.2 && end.y < 0.0, "{end:?}");
        assert!(head.shadow(ball::stretched(unit(0.0, 1.0, 0.2))).is_none(), "light from behind");
    }

    #[test]
    fn a_head_turned_away_shows_no_nose() {
        let sun = Some(unit(1.0, -1.0, 0.5));
        assert!(face(sun, unit(0.0, 1.0, 0.0)).layer(Paint::Floor).is_none());
        assert!(face(sun, unit(0.0, -1.0, 0.0)).layer(Paint::Floor).is_some());
        assert_eq!(face(sun, unit(0.0, -1.0, 0.0)).text, ball::words(sun));
    }

    #[test]
    fn words_of_a_turned_head() {
        assert_eq!(turned_words(Degrees::from_degrees(24.0)), "24° to camera left");
        assert_eq!(turned_words(Degrees::from_degrees(-24.0)), "24° to camera right");
        assert_eq!(turned_words(Degrees::from_degrees(-0.2)), "to the lens");
        assert_eq!(turned_words(Degrees::from_degrees(180.0)), "away from the lens");
    }

    proptest! {
        #[test]
        fn the_shadow_lies_on_the_head_and_on_the_light(
            nose in (-1.0..1.0f64, -1.0..-0.2f64, -0.5..0.5f64), sun in (-1.0..1.0f64, -1.0..1.0f64, 0.0..1.0f64),
        ) {
            let head = Head::new(unit(nose.0, nose.1, nose.2));
            let light = ball::stretched(unit(sun.0, sun.1, sun.2));
            let end = cast(head.tip(), light);
            prop_assert!((end.norm() - 1.0).abs() < 1e-9);
            let way = head.tip() - end;
            // Where the line meets the head, the way from there to the tip runs along the light.
            let meets = head.tip().dot(light).powi(2) > head.tip().dot(head.tip()) - 1.0;
            if meets && head.tip().dot(light) > 0.0 {
                prop_assert!(way.cross(light).norm() < 1e-6);
                prop_assert!(end.dot(light) > -1e-6, "on the lit side");
            }
        }

        #[test]
        fn mirrored_heads_cast_mirrored_shadows(
            nose in (-1.0..1.0f64, -1.0..-0.2f64, -0.5..0.5f64), sun in (-1.0..1.0f64, -1.0..1.0f64, 0.0..1.0f64),
        ) {
            let end = |side: f64| {
                let head = Head::new(unit(side * nose.0, nose.1, nose.2));
                cast(head.tip(), ball::stretched(unit(side * sun.0, sun.1, sun.2)))
            };
            let (one, other) = (end(1.0), end(-1.0));
            prop_assert!((one.x + other.x).abs() < 1e-9 && (one.y - other.y).abs() < 1e-9 && (one.z - other.z).abs() < 1e-9);
        }
    }
}
