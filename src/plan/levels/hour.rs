//! The light of an hour at a place: sun, sky and moon, corrected by a meter.

use crate::light::daylight::sky_table::SkyTable;
use crate::light::daylight::{Correction, Daylight, Sky, daylight, ies, moonlight};
use crate::light::view::{Shows, View};
use crate::place::site::Site;
use crate::place::skyline::Skyline;
use crate::plan::search::reason::above_horizon;
use crate::sky::delta_t::Clock;
use crate::sky::moon;
use crate::sky::search::SUN_RADIUS;
use crate::sky::sun::Sun;
use crate::units::{Height, Instant, Luminance, Lux, Share, Vector, World};

/// Above this the moon is drowned by the day (our choice: nautical dusk is 300 full moons brighter).
const MOON_COUNTS: Height = Height::clamped(-6.0);

/// The light at an instant, in the open.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Hour {
    /// When.
    pub at: Instant,
    /// Kind of sky.
    pub sky: Sky,
    /// Direction in which the sun is seen.
    pub sun: Vector<World>,
    /// Sun and sky, corrected.
    pub light: Daylight,
    /// Direction of the moon, and its light on a surface that faces it; `None` where it does not count.
    pub moon: Option<(Vector<World>, Lux)>,
    /// What the ground gives back.
    pub ground: Share,
    /// What a meter has corrected.
    pub correction: Correction,
    /// Luminance of the sky where the table of the standard's says one, candelas on a square metre.
    unit: f64,
}

impl Hour {
    /// Of a model, not yet corrected; `day_of_year` from 1.
    pub fn of(sun: &Sun, at: Instant, sky: Sky, ground: Share, day_of_year: u32) -> Self {
        let towards = sun.apparent(at);
        let light = daylight(sky, towards.height(), ies::outside(day_of_year));
        Self {
            at,
            sky,
            sun: towards,
            light,
            moon: None,
            ground,
            correction: Correction::default(),
            unit: light.sky.lux() / SkyTable::of(sky).on_level_ground(towards.height()),
        }
    }

    /// With the moon, where it counts.
    pub fn with_moon(self, site: Site) -> Self {
        if self.sun.height() > MOON_COUNTS || self.sky == Sky::Overcast {
            return self;
        }
        let clock = Clock::at(self.at);
        let moon = moon::position(site, self.at, clock);
        let level = moonlight::circular_171(moon.apparent_height, moon::phase(self.at, clock).elongation);
        let up = moon.apparent_height.sin();
        let facing = (up > 0.05).then(|| (moon.direction(), level * (1.0 / up)));
        Self { moon: facing, ..self }
    }

    /// Corrected by a meter; the moon is not.
    pub fn corrected(self, correction: Correction) -> Self {
        let light =
            Daylight { beam: correction.applied(self.light.beam), sky: correction.applied(self.light.sky) };
        Self { light, correction, unit: self.unit * correction.stops().factor(), ..self }
    }

    /// Height of the sun.
    pub fn height(&self) -> Height {
        self.sun.height()
    }

    /// On level ground, in the open.
    pub fn level(&self) -> Lux {
        let moon = self.moon.map_or(Lux::default(), |(towards, facing)| facing * towards.z.max(0.0));
        self.light.level(self.height()) + moon
    }

    /// Luminance of the ground and of all that stands on it, candelas on a square metre.
    fn ground_luminance(&self) -> f64 {
        self.ground.fraction() * self.level().lux() / core::f64::consts::PI
    }

    /// Light of what a view shows on each of `planes`, sky and ground apart. The luminance of a piece is found once, and
    /// only if any of them faces it.
    pub fn on_planes<const N: usize>(&self, view: &View, planes: [Vector<World>; N]) -> [(Lux, Lux); N] {
        let (table, ground) = (SkyTable::of(self.sky), self.ground_luminance());
        let mut sums = [(0.0, 0.0); N];
        for piece in &view.pieces {
            let facing = planes.map(|plane| plane.dot(piece.towards).max(0.0));
            if facing.iter().all(|facing| *facing == 0.0) {
                continue;
            }
            let luminance = match piece.shows {
                Shows::Sky => self.unit * table.luminance(piece.towards, self.sun),
                Shows::Ground => ground,
            };
            let light = luminance * piece.steradians;
            for (facing, sum) in facing.iter().zip(&mut sums) {
                match piece.shows {
                    Shows::Sky => sum.0 += light * facing,
                    Shows::Ground => sum.1 += light * facing,
                }
            }
        }
        sums.map(|(sky, ground)| (Lux::from_lux(sky), Lux::from_lux(ground)))
    }

    /// Mean luminance of what a view shows, by how it lights a plane; `None` if it shows nothing to it.
    pub fn mean_luminance(&self, view: &View, plane: Vector<World>) -> Option<Luminance> {
        let factor = view.form_factor(plane).fraction();
        let [(sky, ground)] = self.on_planes(view, [plane]);
        let mean = (sky + ground).lux() / (core::f64::consts::PI * factor);
        (factor > 0.0).then(|| Luminance::from_candelas_per_square_metre(mean))
    }
}

/// Whether some of the sun's disc clears the horizon or the skyline.
pub fn is_clear(skyline: &Skyline, light: Vector<World>) -> bool {
    if skyline.is_level() { above_horizon().contains(light) } else { skyline.clears(light, SUN_RADIUS) }
}
