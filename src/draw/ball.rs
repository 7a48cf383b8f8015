//! The ball: a shaded egg that shows what the lens will see of a round subject.
//!
//! The egg is an ellipsoid, higher than wide. Its terminator is where the surface runs along the light: for the
//! unit sphere that is stretched into it, the great circle across the light's direction, each axis of which is
//! divided by the stretch (surface normals of an ellipsoid are `(x/a², y/b², z/c²)`). An affine picture of a great
//! circle is half an ellipse, so the lit part is bounded by two half ellipses and drawn exactly.
//! Only the sun's own light is shown: without it the egg is all shade.

use core::f64::consts::{FRAC_PI_2, PI};

use super::paint::Paint;
use super::path::Path;
use super::shape::{Drawing, Point, ViewBox};
use crate::light::relative::{InLens, LensFrame};
use crate::maths;
use crate::units::{Bearing, Degrees, Height, Vector};

/// Width of the egg over its height. Our own choice.
pub(super) const SLENDER: f64 = 0.84;

/// Outline over half the height. Our own choice.
const OUTLINE: f64 = 0.075;

/// Half the height of the egg that stands alone.
const HALF: f64 = 50.0;

/// The ball alone. `sun` is where the sun stands as the lens sees it; `None` for no sun on the subject.
///
/// ```
/// # use slantlight::{draw::ball::ball, light::relative::LensFrame, units::{Bearing, Degrees, Height, Vector}};
/// let lens = LensFrame::new(Bearing::from_degrees(215.0), Degrees::default());
/// let sun = Vector::towards(Bearing::from_degrees(275.0), Height::clamped(8.0));
/// assert_eq!(ball(Some(lens.sees(sun))).text, "lit from the right, a quarter of the face");
/// ```
pub fn ball(sun: Option<Vector<InLens>>) -> Drawing {
    let (across, down) = (HALF * (SLENDER + OUTLINE), HALF * (1.0 + OUTLINE));
    let view = ViewBox { x: -across, y: -down, width: 2.0 * across, height: 2.0 * down };
    let mut drawing = Drawing::showing(view);
    add_ball(&mut drawing, Point::default(), HALF, sun);
    drawing.text = words(sun);
    drawing
}

/// A ball in three-quarter back light: the look this app is asked for most, so its emblem. `index.html` holds the same
/// paths, to be seen before the app has arrived.
pub fn emblem() -> Drawing {
    let lens = LensFrame::new(Bearing::from_degrees(0.0), Degrees::default());
    ball(Some(lens.sees(Vector::towards(Bearing::from_degrees(62.0), Height::clamped(16.0)))))
}

/// Lays a ball on another drawing.
pub fn add_ball(drawing: &mut Drawing, centre: Point, half_height: f64, sun: Option<Vector<InLens>>) {
    let disc = |wider: f64| {
        let mut path = Path::new();
        path.ellipse(centre, half_height * (SLENDER + wider), half_height * (1.0 + wider));
        path
    };
    drawing.fill(Paint::Shade, disc(0.0));
    let place = |x: f64, y: f64| Point::new(centre.x + x * half_height * SLENDER, centre.y - y * half_height);
    drawing.fill_always(Paint::Lit, sun.map_or_else(Path::new, |sun| lit(stretched(sun), &place)));
    // Around the egg, not over it: a rim of light may be thinner than the line.
    drawing.stroke(Paint::Line, half_height * OUTLINE, disc(OUTLINE / 2.0));
}

/// What the ball shows: "lit from the right, a quarter of the face".
pub fn words(sun: Option<Vector<InLens>>) -> String {
    match sun {
        None => "no sun on the face".to_owned(),
        // The lens looks along y: light from behind it has a negative y.
        Some(sun) => format!("lit from {}, {} of the face", from_where(sun), how_much((1.0 - sun.y) / 2.0)),
    }
}

/// The light's direction for the sphere that is stretched into the egg.
pub(super) fn stretched(sun: Vector<InLens>) -> Vector<InLens> {
    let pulled = Vector::new(sun.x / SLENDER, sun.y / SLENDER, sun.z);
    pulled.unit().unwrap_or(-Vector::UP)
}

/// The lit part of the unit disc: half the limb, then back along the terminator.
fn lit(light: Vector<InLens>, place: &impl Fn(f64, f64) -> Point) -> Path {
    let aside = maths::hypot(light.x, light.z);
    let towards = -light.y;
    let (cos, sin) = if aside > 1e-9 { (light.x / aside, light.z / aside) } else { (1.0, 0.0) };
    let mut path = Path::new();
    if towards <= -1.0 + 1e-12 {
        return path;
    }
    // Along the limb on the light's side, in a frame whose first axis points to the light …
    let limb = |x: f64, y: f64| place(x * cos - y * sin, x * sin + y * cos);
    path.move_to(limb(0.0, -1.0));
    path.turn(&limb, -FRAC_PI_2, FRAC_PI_2);
    // … and back along the terminator, flattened by how far the light comes from the front.
    let back = |x: f64, y: f64| limb(x * towards, y);
    path.turn(&back, FRAC_PI_2, FRAC_PI_2 + PI);
    path.close();
    path
}

/// Share of the face below which only its edge is lit. Our own choice.
const RIM: f64 = 0.1;

/// Words for a share of the face, each up to a bound. Our own choice.
const SHARES: [(f64, &str); 8] = [
    (RIM, "a thin rim"),
    (0.18, "an eighth"),
    (0.29, "a quarter"),
    (0.41, "a third"),
    (0.58, "half"),
    (0.71, "two thirds"),
    (0.88, "three quarters"),
    (0.97, "nearly all"),
];

fn how_much(share: f64) -> &'static str {
    SHARES.iter().find(|(below, _)| share < *below).map_or("all", |(_, words)| words)
}

/// The side of the picture the light comes from, in eight parts; "behind" and "the front" along the lens.
fn from_where(sun: Vector<InLens>) -> &'static str {
    /// Sine of 25°: closer to the lens axis there is no side to speak of. Our own choice.
    const ALONG: f64 = 0.423;
    if maths::hypot(sun.x, sun.z) < ALONG {
        return if sun.y > 0.0 { "behind" } else { "the front" };
    }
    let eighth = (maths::atan2(sun.z, sun.x) / (PI / 4.0)).round() as i32;
    match eighth.rem_euclid(8) {
        0 => "the right",
        1 => "above right",
        2 => "above",
        3 => "above left",
        4 => "the left",
        5 => "below left",
        6 => "below",
        _ => "below right",
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::light::class::light_bearing;
    use crate::light::phase::lit_share;
    use proptest::prelude::*;

    #[test]
    fn the_first_page_shows_the_emblem_before_the_app_is_there() {
        let page = include_str!("../../index.html");
        for layer in emblem().layers {
            assert!(page.contains(layer.path.text()), "{}", layer.path.text());
        }
    }

    fn seen(off: f64, height: f64) -> Vector<InLens> {
        let lens = Bearing::from_degrees(215.0);
        let light = Vector::towards(light_bearing(Degrees::from_degrees(off), lens), Height::clamped(height));
        LensFrame::new(lens, Degrees::default()).sees(light)
    }

    fn lit_path(off: f64, height: f64) -> String {
        let drawing = ball(Some(seen(off, height)));
        drawing.layer(Paint::Lit).map_or(String::new(), |layer| layer.path.text().to_owned())
    }

    #[test]
    fn side_light_splits_the_face_upright() {
        // From the lower pole up the right limb, then straight down.
        assert_eq!(
            lit_path(90.0, 0.0),
            "M0 50C23.2 50 42 27.61 42 0C42 -27.61 23.2 -50 0 -50C0 -50 0 -27.61 0 0C0 27.61 0 50 0 50Z"
        );
    }

    #[test]
    fn front_light_leaves_no_shade_and_back_light_no_light() {
        assert!(lit_path(0.0, 0.0).starts_with("M0 50C23.2 50 42 27.61 42 0"));
        assert!(lit_path(0.0, 0.0).contains("-42 0"), "the other limb too");
        assert_eq!(lit_path(180.0, 0.0), "");
        assert!(ball(None).layer(Paint::Lit).is_none());
    }

    #[test]
    fn words_say_what_is_drawn() {
        assert_eq!(words(Some(seen(90.0, 5.0))), "lit from the right, half of the face");
        assert_eq!(words(Some(seen(-120.0, 5.0))), "lit from the left, a quarter of the face");
        assert_eq!(words(Some(seen(180.0, 30.0))), "lit from above, a thin rim of the face");
        assert_eq!(words(Some(seen(180.0, 5.0))), "lit from behind, a thin rim of the face");
        assert_eq!(words(Some(seen(0.0, 5.0))), "lit from the front, all of the face");
        assert_eq!(words(Some(seen(60.0, 89.0))), "lit from above, half of the face");
        assert_eq!(words(None), "no sun on the face");
    }

    proptest! {
        #[test]
        fn the_terminator_runs_along_the_light(off in -179.0..179.0f64, height in 0.0..85.0f64, along in 0.0..PI) {
            // A point of the visible terminator, put back on the egg: its normal is square to the light.
            let sun = seen(off, height);
            let light = stretched(sun);
            let aside = maths::hypot(light.x, light.z);
            prop_assume!(aside > 1e-6);
            let (sin, cos) = maths::sin_cos(along);
            let (x, y, toward) = (sin * light.y, cos, sin * aside);
            let (right, up) = ((x * light.x - y * light.z) / aside, (x * light.z + y * light.x) / aside);
            let normal = Vector::<InLens>::new(right / SLENDER, -toward / SLENDER, up);
            prop_assert!(normal.dot(sun).abs() < 1e-12);
        }

        #[test]
        fn words_and_share_agree(off in -180.0..180.0f64, height in 0.0..90.0f64) {
            let sun = seen(off, height);
            let phase = Degrees::from_radians(maths::acos((-sun.y).clamp(-1.0, 1.0)));
            prop_assert!(words(Some(sun)).contains(how_much(lit_share(phase))));
        }
    }
}
