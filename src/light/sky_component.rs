//! How much of the sky's light a window brings to a level table inside: closed forms for one plain window.
//!
//! Sky component: light on a level point inside over light on level ground outside, from the sky alone, without glass,
//! walls' light or obstructions. For rooms of any shape see the search over openings; this is its check, and a quick answer.

use crate::maths;
use crate::units::{Degrees, Metres, Share};

const PI: f64 = core::f64::consts::PI;

/// A window seen from a level point: its lower edge on the point's own height, one edge straight in front.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct FromPoint {
    /// Head of the window over the point.
    pub height: Metres,
    /// Width to one side.
    pub width: Metres,
    /// Distance of the point from the window's plane.
    pub distance: Metres,
}

impl FromPoint {
    /// Angle up to the head, angle across to the far edge, and that angle along the head, radians.
    fn angles(self) -> (f64, f64, f64) {
        let (d, up) = (self.distance.metres(), maths::atan2(self.height.metres(), self.distance.metres()));
        let across = maths::atan2(self.width.metres(), d);
        (up, across, maths::atan(maths::tan(across) * maths::cos(up)))
    }

    /// Under an even sky: `(b − c cos a)/2π`.
    ///
    /// # Source
    /// J. W. T. Walsh, *The Science of Daylight* (1961), in the form of Tregenza and Sharples' algorithm 2.32; checked by
    /// numerical integration.
    pub fn uniform(self) -> Share {
        let (a, b, c) = self.angles();
        Share::clamped((b - c * maths::cos(a)) / (2.0 * PI))
    }

    /// Under the traditional overcast sky, three times as bright in the zenith as at the horizon. Same source:
    /// `3(b − c cos a)/14π + 2/7π · asin(sin a sin b) − sin 2a sin c/7π`.
    ///
    /// ```
    /// # use slantlight::{light::sky_component::FromPoint, units::Metres};
    /// let [height, width, distance] = [1.5, 1.0, 2.0].map(Metres::from_metres);
    /// assert!((FromPoint { height, width, distance }.overcast().fraction() - 0.019_355).abs() < 5e-7);
    /// ```
    pub fn overcast(self) -> Share {
        let (a, b, c) = self.angles();
        let even = 3.0 * (b - c * maths::cos(a)) / (14.0 * PI);
        let graded = 2.0 / (7.0 * PI) * maths::asin(maths::sin(a) * maths::sin(b));
        Share::clamped(even + graded - maths::sin(2.0 * a) * maths::sin(c) / (7.0 * PI))
    }
}

/// Average daylight factor of a room: `τ A_w θ/(A (1 − R²))`, per cent of the light outdoors.
///
/// # Source
/// Building Research Establishment and CIBSE, *Lighting Guide 10* (the form as remembered there).
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct AverageDaylight {
    /// What the glass lets through, frame and dirt included.
    pub transmittance: Share,
    /// Glass, square metres (width × height of the openings).
    pub glass_m2: f64,
    /// Angle of sky seen from the window: 90° less what stands before it.
    pub sky: Degrees,
    /// All the room's surfaces, square metres.
    pub surfaces_m2: f64,
    /// Their mean reflectance.
    pub reflectance: Share,
}

impl AverageDaylight {
    /// Mean light on level surfaces in the room over light outdoors.
    pub fn factor(&self) -> Share {
        let lost = 1.0 - self.reflectance.fraction() * self.reflectance.fraction();
        let percent =
            self.transmittance.fraction() * self.glass_m2 * self.sky.degrees() / (self.surfaces_m2 * lost);
        Share::clamped(percent / 100.0)
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn from_point(height: f64, distance: f64) -> FromPoint {
        let metres = Metres::from_metres;
        FromPoint { height: metres(height), width: metres(1.0), distance: metres(distance) }
    }

    #[test]
    fn one_side_and_both() {
        // T-C9.
        assert!((from_point(1.5, 2.0).uniform().fraction() - 0.025_344).abs() < 5e-7);
        assert!((from_point(1.5, 2.0).overcast().fraction() - 0.019_355).abs() < 5e-7);
        for (distance, percent) in [(1.0, 14.25), (2.0, 3.87), (3.0, 1.36), (4.0, 0.59)] {
            let both = 2.0 * from_point(1.5, distance).overcast().percent();
            assert!((both - percent).abs() < 0.0051, "{distance}: {both}");
        }
        // Overcast, sun at 40°, 13.8 kilolux outside, 2 m from glass and frame of 0.61: 326 lx.
        let lux = 13_800.0 * 2.0 * from_point(1.5, 2.0).overcast().fraction() * 0.61;
        assert!((lux - 326.0).abs() < 0.6, "{lux}");
    }

    #[test]
    fn a_sill_above_the_table() {
        // T-C10: sill 0.2, head 1.7 over the table.
        let both =
            2.0 * (from_point(1.7, 2.0).overcast().percent() - from_point(0.2, 2.0).overcast().percent());
        assert!((both - 4.63).abs() < 0.0051, "{both}");
    }

    #[test]
    fn a_room_on_average() {
        // T-C12.
        let room = AverageDaylight {
            transmittance: Share::clamped(0.648),
            glass_m2: 3.0,
            sky: Degrees::from_degrees(65.0),
            surfaces_m2: 88.6,
            reflectance: Share::clamped(0.5),
        };
        assert!((room.factor().percent() - 1.90).abs() < 0.005);
    }

    #[test]
    fn an_overcast_window_before_a_face() {
        // T-C11, worked: 2 m wide, 0.9 m above the eye, 2 m away, overcast sky of 10 kilolux, glass and frame 0.612: 403 lx
        // from the sky, which is dark near the horizon.
        let (pieces, mut sum) = (400, 0.0);
        for i in 0..pieces {
            for j in 0..pieces {
                let x = (f64::from(i) + 0.5) / f64::from(pieces);
                let z = 0.9 * (f64::from(j) + 0.5) / f64::from(pieces);
                let square = x * x + z * z + 4.0;
                let zenith = 9.0 * 10_000.0 / (7.0 * PI);
                sum += zenith * (1.0 + 2.0 * z / square.sqrt()) / 3.0 * 4.0 / (square * square);
            }
        }
        let lux = 2.0 * 0.612 * sum * 0.9 / f64::from(pieces * pieces);
        assert!((lux - 403.0).abs() < 0.6, "{lux}");
    }

    #[test]
    fn the_closed_forms_are_the_integrals() {
        // Light on a level point from a window in small pieces: cos at the point × cos at the window / distance².
        let (height, width, distance) = (1.5, 1.0, 2.0);
        let (mut even, mut graded) = (0.0, 0.0);
        let pieces = 400;
        for i in 0..pieces {
            for j in 0..pieces {
                let x = width * (f64::from(i) + 0.5) / f64::from(pieces);
                let z = height * (f64::from(j) + 0.5) / f64::from(pieces);
                let square = x * x + z * z + distance * distance;
                let up = z / square.sqrt();
                let light = up * (distance / square.sqrt()) / square;
                even += light;
                graded += light * (1.0 + 2.0 * up) / 3.0;
            }
        }
        let piece = width * height / f64::from(pieces * pieces);
        let window = from_point(height, distance);
        assert!((even * piece / PI - window.uniform().fraction()).abs() < 1e-6);
        assert!((graded * piece / (7.0 * PI / 9.0) - window.overcast().fraction()).abs() < 1e-6);
    }
}
