//! A camera in the light of a subject: any one setting from the others, where tones land, the window against the room, and
//! the shutters that the mains allow.

use super::level::Level;
use crate::light::exposure::film::Film;
use crate::light::exposure::flicker::{Mains, any_angle_is_safe, safe_angles};
use crate::light::exposure::placement::placed;
use crate::light::exposure::{IncidentConstant, Settings};
use crate::plan::kit::CameraSettings;
use crate::units::{
    Degrees, Density, Duration, FrameRate, Iso, Luminance, Lux, Share, ShutterTime, Stops, TStop,
};

/// The setting that is found from the others.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub enum Sought {
    /// How far the lens is opened.
    #[default]
    TStop,
    /// Sensor or film speed.
    Iso,
    /// How far the shutter is open.
    Shutter,
    /// Frames in a second, at the same angle.
    Rate,
    /// Neutral density.
    Nd,
}

impl Sought {
    /// All of them.
    pub const ALL: [Self; 5] = [Self::TStop, Self::Iso, Self::Shutter, Self::Rate, Self::Nd];

    /// Its name.
    pub const fn word(self) -> &'static str {
        match self {
            Self::TStop => "T-stop",
            Self::Iso => "ISO",
            Self::Shutter => "shutter",
            Self::Rate => "frames",
            Self::Nd => "ND",
        }
    }
}

/// Why a camera cannot be set so.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Trouble {
    /// The slowest lens does not open so far: the light is short by so much.
    LensTooSlow(Stops),
    /// Its shutter is built as it is.
    ShutterFixed,
    /// No shutter is open for so much of its turn: the light is short by so much.
    ShutterTooShort(Stops),
    /// There is no filter that gives light: it is short by so much.
    NoLightToTake(Stops),
}

/// A camera, set.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Set {
    /// How.
    pub camera: CameraSettings,
    /// What stands against it.
    pub trouble: Option<Trouble>,
}

/// Widest angle that a shutter can be open.
const WHOLE_TURN: f64 = 360.0;

/// The camera with one setting found from the others, for a subject in `light`; by a flat disc.
///
/// ```
/// # use slantlight::{plan::{kit::CameraSettings, levels::exposure::{Sought, solved}}, units::{Iso, Lux}};
/// let camera = CameraSettings { iso: Iso::clamped(800.0), ..CameraSettings::default() };
/// let set = solved(&camera, Lux::from_lux(117.6), Sought::TStop).camera;
/// assert!((set.t_stop.number() - 2.8).abs() < 0.001);
/// ```
pub fn solved(camera: &CameraSettings, light: Lux, sought: Sought) -> Set {
    let (settings, meter) = (camera.exposure(), IncidentConstant::FLAT);
    match sought {
        Sought::TStop => {
            let t_stop = settings.with_t_stop_for(light, meter).t_stop;
            let short = camera.slowest_lens.closed_from(t_stop);
            let slow = short.stops() > 1e-9;
            set(CameraSettings { t_stop, ..*camera }, slow.then_some(Trouble::LensTooSlow(short)))
        }
        Sought::Iso => set(CameraSettings { iso: settings.with_iso_for(light, meter).iso, ..*camera }, None),
        Sought::Shutter => shutter(camera, settings.with_time_for(light, meter).time),
        Sought::Rate => {
            let seconds = settings.with_time_for(light, meter).time.seconds();
            let rate = FrameRate::clamped(camera.shutter.degrees() / (WHOLE_TURN * seconds));
            set(CameraSettings { rate, ..*camera }, None)
        }
        Sought::Nd => {
            let nd = settings.with_filter_for(light, meter).filter;
            let short = Density::from_density(-nd.density()).stops();
            let none = nd.density() < -1e-9;
            let nd = Density::from_density(nd.density().max(0.0));
            set(CameraSettings { nd, ..*camera }, none.then_some(Trouble::NoLightToTake(short)))
        }
    }
}

fn set(camera: CameraSettings, trouble: Option<Trouble>) -> Set {
    Set { camera, trouble }
}

fn shutter(camera: &CameraSettings, time: ShutterTime) -> Set {
    let angle = time.angle(camera.rate).degrees();
    let trouble = if camera.shutter_is_fixed {
        Some(Trouble::ShutterFixed)
    } else if angle > WHOLE_TURN {
        Some(Trouble::ShutterTooShort(Stops::from_factor(angle / WHOLE_TURN)))
    } else {
        None
    };
    let shutter =
        if camera.shutter_is_fixed { camera.shutter } else { Degrees::from_degrees(angle.min(WHOLE_TURN)) };
    set(CameraSettings { shutter, ..*camera }, trouble)
}

/// The light that the camera needs with its slowest lens wide open and no filter.
pub fn least_light(camera: &CameraSettings) -> Lux {
    let open = Settings { t_stop: camera.slowest_lens, filter: Density::default(), ..camera.exposure() };
    open.light(IncidentConstant::FLAT)
}

/// Stops of the lightest tone on the bright side and the darkest on the shadow side over and under middle grey, exposed for
/// the bright side.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Tones {
    /// White cloth in the key.
    pub highlight: Stops,
    /// Dark cloth in the shadow.
    pub shadow: Stops,
}

/// White and dark cloth (handbook G5).
const WHITE: Share = Share::clamped(0.90);
const DARK: Share = Share::clamped(0.04);

impl Tones {
    /// Of the two sides.
    pub fn of(bright: Lux, shadow: Lux) -> Self {
        Self { highlight: placed(bright, WHITE, bright), shadow: placed(shadow, DARK, bright) }
    }
}

/// How far over the middle of the picture the view of a window may stand (our choice: bright, with detail left).
const WINDOW_MAY: Stops = Stops::from_stops(3.0);

/// A window in the picture.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct WindowView {
    /// Its view over middle grey in the key.
    pub over: Stops,
    /// Neutral density on the glass that brings it to three stops over; none if it is there.
    pub nd: Density,
}

/// What is seen through a window against a subject that is exposed for.
pub fn window_view(view: Luminance, key: Lux) -> WindowView {
    let grey = Luminance::of_matt(key, crate::light::exposure::placement::MIDDLE_GREY);
    let over = view.stops_over(grey);
    let nd = Density::from_stops(Stops::from_stops((over - WINDOW_MAY).stops().max(0.0)));
    WindowView { over, nd }
}

/// What shutters a frequency of the mains allows.
#[derive(Clone, Debug, PartialEq)]
pub enum Shutters {
    /// Any, as long as camera and mains keep their beat.
    Any,
    /// These angles; none where even an open shutter is too short.
    Angles(Vec<Degrees>),
}

/// Shutters for a camera under lamps on the mains.
pub fn shutters(camera: &CameraSettings, mains: Mains) -> Shutters {
    if any_angle_is_safe(camera.rate, mains) {
        return Shutters::Any;
    }
    Shutters::Angles(safe_angles(camera.rate, mains).collect())
}

/// How long a load runs, and how many a shot of a length takes; `None` for a sensor.
pub fn loads(camera: &CameraSettings, shot: Duration) -> Option<(Duration, u32)> {
    let film: Film = camera.film?;
    Some((film.run_time(camera.load, camera.rate), film.loads(shot, camera.load, camera.rate)))
}

/// The T-stop of a level, as the camera is set.
pub fn t_stop(camera: &CameraSettings, level: &Level) -> TStop {
    camera.exposure().with_t_stop_for(level.total(), IncidentConstant::FLAT).t_stop
}

/// The film speed that the slowest lens needs in a light.
pub fn least_iso(camera: &CameraSettings, light: Lux) -> Iso {
    let open = CameraSettings { t_stop: camera.slowest_lens, nd: Density::default(), ..*camera };
    solved(&open, light, Sought::Iso).camera.iso
}

#[cfg(test)]
#[path = "exposure_tests.rs"]
mod tests;
