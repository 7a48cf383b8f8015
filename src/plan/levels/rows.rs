//! Rows in words that hang on no instant: cameras, pieces of the kit, readings, lights of a place.

use super::exposure::{Shutters, Sought, Trouble, loads, shutters, solved};
use super::ramp::Ahead;
use super::say;
use crate::light::daylight::Sky;
use crate::light::exposure::flicker::Mains;
use crate::light::fixture::beam::spot;
use crate::light::ratio::Ratio;
use crate::place::zone::Zone;
use crate::plan::kit::{CameraSettings, Facing, Gear, Placed, Reading, There, Thing};
use crate::plan::wish;
use crate::units::{Duration, Lux, Metres, Stops};
use crate::words::stops as numbers;
use crate::words::{self, Clock, Units};

/// A camera on the screen.
#[derive(Clone, Debug, PartialEq)]
pub struct CameraRow {
    /// "Camera A".
    pub name: String,
    /// Values with their names.
    pub facts: Vec<(String, String)>,
    /// What stands against it.
    pub trouble: Option<String>,
    /// Shutters under the mains, film, when its slowest lens runs out.
    pub says: Vec<String>,
    /// T-stops through the hours ahead, a whole stop apart: "18:52", "T2.8".
    pub ramp: Vec<(String, String)>,
}

/// Cameras in the light of a key, each with one setting found from the others.
pub fn camera_rows(
    cameras: &[(String, CameraSettings)],
    key: Lux,
    sought: Sought,
    there: &[There],
    ahead: Ahead<'_>,
) -> Vec<CameraRow> {
    let row = |(name, camera): &(String, CameraSettings)| {
        let set = solved(camera, key, sought);
        CameraRow {
            name: name.clone(),
            facts: facts(&set.camera),
            trouble: set.trouble.map(trouble),
            says: says(camera, there).into_iter().chain(ahead.runs_out(camera)).collect(),
            ramp: ahead.ramp(camera),
        }
    };
    cameras.iter().map(row).collect()
}

fn trouble(trouble: Trouble) -> String {
    say::trouble(trouble)
}

fn facts(camera: &CameraSettings) -> Vec<(String, String)> {
    let fact = |value: String, name: &str| (value, name.to_owned());
    let rate = words::to_edit(camera.rate.fps(), 3);
    let nd = if camera.nd.density() > 0.05 { numbers::stops(camera.nd.stops()) } else { String::new() };
    vec![
        fact(numbers::t_stop(camera.t_stop), "lens"),
        fact(format!("ISO {}", numbers::whole(camera.iso.iso())), "speed"),
        fact(rate, "frames/s"),
        fact(shutter_angle(camera), "shutter"),
        fact(numbers::nd(camera.nd), &nd),
    ]
}

/// "180°", "172.8°".
fn shutter_angle(camera: &CameraSettings) -> String {
    format!("{}°", words::to_edit(camera.shutter.degrees(), 1))
}

fn says(camera: &CameraSettings, there: &[There]) -> Vec<String> {
    let of_lights = |mains: Mains| there.iter().any(|light| light.mains == Some(mains));
    let both = [(Mains::Hertz50, "50 Hz"), (Mains::Hertz60, "60 Hz")];
    let known = both.iter().any(|(mains, _)| of_lights(*mains));
    let asked = both.iter().filter(|(mains, _)| !known || of_lights(*mains));
    let mut lines: Vec<String> =
        asked.map(|(mains, name)| format!("{name}: {}", safe(&shutters(camera, *mains)))).collect();
    if let Some((run, count)) = loads(camera, Duration::from_minutes(10)) {
        lines.push(format!("A load runs {}; ten minutes take {count}.", words::duration(run)));
    }
    lines
}

fn safe(shutters: &Shutters) -> String {
    match shutters {
        Shutters::Any => "any shutter is safe".to_owned(),
        Shutters::Angles(none) if none.is_empty() => "no shutter is safe".to_owned(),
        Shutters::Angles(angles) => {
            let angles: Vec<String> = angles.iter().map(|angle| words::degrees_fine(*angle)).collect();
            format!("safe at {}", angles.join(", "))
        }
    }
}

/// "4 : 1, 2 stops"; "no wish" for none.
pub fn ratio_wanted(stops: f64) -> String {
    let stops = Stops::from_stops(stops);
    match Ratio::from_stops(stops) {
        Ok(ratio) => format!("{}, {}", numbers::ratio(ratio), numbers::stops(stops)),
        Err(_) => "no wish".to_owned(),
    }
}

/// "left, 1.9 m, its beam 1.4 m wide there, dimmed to 40 %".
pub fn placed(placed: &Placed, gear: Option<&Gear>, units: Units) -> String {
    let mut parts = vec![placed.side.word().to_owned(), words::length(placed.distance, units)];
    let lamp = gear.and_then(Gear::lamp);
    if let Some(beam) = lamp.and_then(|lamp| lamp.beam) {
        parts.push(format!("its beam {} wide there", words::length(spot(beam, placed.distance), units)));
    }
    let percent = placed.level.percent().round();
    if lamp.is_some_and(|lamp| lamp.dims) && percent < 100.0 {
        parts.push(format!("dimmed to {percent} %"));
    }
    parts.join(", ")
}

/// "2 of them, 1,400 lx at 1 m, 5,600 K, invented".
pub fn gear(gear: &Gear, units: Units) -> String {
    let size = |sizes: [Metres; 2]| words::sizes(&sizes, units, words::measure);
    let what = match &gear.is {
        Thing::Lamp(lamp) => {
            let lux = gear.lux_at_a_metre().map(numbers::lux).unwrap_or_default();
            let colour = lamp.colour.temperature().map_or("saturated".to_owned(), numbers::kelvin);
            let draws =
                lamp.power.map(|power| format!(", {} W", numbers::whole(power.watts()))).unwrap_or_default();
            format!("{lux} at 1 m, {colour}{draws}")
        }
        Thing::Board(board) => {
            let back = board.reflectance.percent().round();
            format!("{}, gives back {back} %", size([board.width, board.height]))
        }
        Thing::Frame(frame) => {
            format!("{}, takes {}", size([frame.width, frame.height]), numbers::stops(frame.loss))
        }
    };
    let count = if gear.count == 1 { String::new() } else { format!("{} of them, ", gear.count) };
    let invented = if gear.invented { ", invented" } else { "" };
    format!("{count}{what}{invented}")
}

/// "Thu 11 Mar 2027 16:20: 30,000 lx facing the sun".
pub fn reading(reading: &Reading, zone: &Zone, style: Clock) -> String {
    let local = words::to_the_minute(zone.local(reading.at));
    let facing = match reading.facing {
        Facing::Sun => "facing the sun".to_owned(),
        Facing::Up => "straight up".to_owned(),
        Facing::Bearing(bearing) => format!("facing {}", words::bearing(bearing)),
    };
    let (date, time) = (words::date(local.date()), words::clock(local.time(), style));
    format!("{date} {time}: {} {facing}", numbers::lux(reading.says.light()))
}

/// "20 lx from 248° WSW, 2,700 K, 50 Hz, on 17:00–23:30".
pub fn there(there: &There, style: Clock) -> String {
    let from = there.bearing.map_or(String::new(), |bearing| format!(" from {}", words::bearing(bearing)));
    let colour = there.colour.temperature().map_or("saturated".to_owned(), numbers::kelvin);
    let mains = match there.mains {
        None => "",
        Some(Mains::Hertz50) => ", 50 Hz",
        Some(Mains::Hertz60) => ", 60 Hz",
    };
    let clock = |time| words::clock(time, style);
    let hours = there.hours.map(|hours| format!(", on {}–{}", clock(hours.from), clock(hours.to)));
    format!("{}{from}, {colour}{mains}{}", numbers::lux(there.lux), hours.unwrap_or_default())
}

/// An end of the hours of a light, as a field for times wants it; empty for always.
pub fn hour_typed(hours: Option<wish::ClockRange>, is_end: bool) -> String {
    let hour = |hours: wish::ClockRange| if is_end { hours.to } else { hours.from };
    hours.map_or(String::new(), |hours| words::clock(hour(hours), Clock::TwentyFour))
}

/// The wish's word for a sky.
pub const fn wish_sky(sky: Sky) -> wish::Sky {
    match sky {
        Sky::Clear => wish::Sky::Clear,
        Sky::Hazy => wish::Sky::Hazy,
        Sky::Broken => wish::Sky::Broken,
        Sky::Overcast => wish::Sky::Overcast,
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::plan::kit::generic;

    #[test]
    fn two_cameras_in_one_light() {
        let cameras = [
            ("A".to_owned(), CameraSettings::default()),
            (
                "B".to_owned(),
                CameraSettings {
                    film: Some(crate::light::exposure::film::Film::Mm16),
                    ..CameraSettings::default()
                },
            ),
        ];
        let zone = Zone::fixed("UTC", Duration::ZERO);
        let ahead = |samples| Ahead { samples, zone: &zone, clock: Clock::TwentyFour };
        let rows = camera_rows(&cameras, Lux::from_lux(20.0), Sought::TStop, &[], ahead(&[]));
        assert!(rows.iter().all(|row| row.trouble.as_deref().is_some_and(|text| text.contains("short"))));
        // Five whole pulses of 60 Hz fall into a frame at 24.
        let mains = ["50 Hz: safe at 86.4°, 172.8°, 259.2°, 345.6°", "60 Hz: any shutter is safe"];
        assert_eq!(rows[0].says, mains);
        assert_eq!(rows[1].says[2], "A load runs 11 min; ten minutes take 1.");
        let bright = camera_rows(&cameras, Lux::from_lux(90_000.0), Sought::Nd, &[], ahead(&[]));
        assert!(
            bright[0].facts.iter().any(|(value, name)| value.starts_with("ND 2") && name.contains("stops")),
            "{bright:?}"
        );
    }

    #[test]
    fn a_light_that_is_there_in_words() {
        let mut lamp = There::usual("id");
        assert_eq!(there(&lamp, Clock::TwentyFour), "20 lx, 2,700 K");
        lamp.bearing = Some(crate::units::Bearing::from_degrees(248.0));
        lamp.mains = Some(Mains::Hertz50);
        lamp.hours = wish::ClockRange::typed(None, Some("17:00"), None);
        assert_eq!(there(&lamp, Clock::TwentyFour), "20 lx from 248° WSW, 2,700 K, 50 Hz, on 17:00–00:00");
    }

    #[test]
    fn pieces_and_wishes_in_words() {
        let all: Vec<Gear> = generic::examples().into_iter().map(|one| generic::gear("id", one)).collect();
        assert_eq!(gear(&all[0], Units::Metric), "1,400 lx at 1 m, 5,600 K, 60 W, invented");
        assert!(gear(&all[2], Units::Metric).contains("saturated"));
        assert!(gear(&all[4], Units::Metric).contains("gives back 85 %"));
        assert_eq!((ratio_wanted(2.0).as_str(), ratio_wanted(0.0).as_str()), ("4 : 1, 2 stops", "no wish"));
        let dimmed = Placed { level: crate::units::Share::clamped(0.4), ..Placed::usual("id") };
        assert_eq!(placed(&dimmed, Some(&all[0]), Units::Metric), "left, 2.0 m, dimmed to 40 %");
        // 40° at 2 m: 2 · 2 tan 20° = 1.46 m.
        let wide = placed(&Placed::usual("id"), Some(&all[3]), Units::Metric);
        assert_eq!(wide, "left, 2.0 m, its beam 1.5 m wide there");
    }
}
