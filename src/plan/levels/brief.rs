//! Levels for the people who rig: which side is the key, the ratio, the camera, and what the lamps give and draw.

use super::exposure::{Sought, Trouble, solved};
use super::say::{headline, ratio_of, trouble, trust};
use super::{Levels, Subject};
use crate::light::exposure::IncidentConstant;
use crate::light::ratio::Ratio;
use crate::plan::kit::{CameraSettings, Gear, Placed};
use crate::units::{Density, Watts};
use crate::words;
use crate::words::stops::{kelvin, nd, ratio, t_stop, whole};

/// Key side and ratio, the camera with its filter, power, a line each.
pub fn lines(subject: &Subject, levels: &Levels, metered: bool) -> Vec<String> {
    let mut lines = vec![key(subject, levels, metered), camera(&subject.camera, levels)];
    lines.extend(power(subject));
    lines
}

/// "key left, 3 : 1 (1⅔ stops), 4 : 1 wanted; model ± ⅓".
fn key(subject: &Subject, levels: &Levels, metered: bool) -> String {
    let wanted =
        subject.rig.wanted().map(|wanted: Ratio| format!(", {} wanted", ratio(wanted))).unwrap_or_default();
    let trust = trust(levels.trust, metered);
    match levels.ratio() {
        None => format!("both sides alike, 1 : 1{wanted}; {trust}"),
        Some(_) => {
            format!(
                "key {}, {} ({}){wanted}; {trust}",
                levels.bright.word(),
                ratio_of(levels),
                headline(levels)
            )
        }
    }
}

/// "key T8, ISO 400, 24 fps, 180°, no ND; T2.8 takes ND 0.9".
fn camera(camera: &CameraSettings, levels: &Levels) -> String {
    let key = levels.bright().total();
    let set = solved(camera, key, Sought::TStop);
    let rate = words::to_edit(camera.rate.fps(), 3);
    let shutter = words::to_edit(camera.shutter.degrees(), 1);
    let speed = whole(camera.iso.iso());
    let at =
        format!("key {}, ISO {speed}, {rate} fps, {shutter}°, {}", t_stop(set.camera.t_stop), nd(camera.nd));
    if let Some(short @ Trouble::LensTooSlow(_)) = set.trouble {
        return format!("{at}. {}", trouble(short));
    }
    let open = solved(&CameraSettings { nd: Density::default(), ..*camera }, key, Sought::Nd);
    let differs = (open.camera.nd.density() - camera.nd.density()).abs() > 0.05 && open.trouble.is_none();
    match differs {
        true => format!("{at}; {} takes {}", t_stop(camera.t_stop), nd(open.camera.nd)),
        false => at,
    }
}

/// "lamps draw 650 W undimmed"; `None` without lamps.
fn power(subject: &Subject) -> Option<String> {
    let lamps: Vec<&Gear> = subject
        .rig
        .placed
        .iter()
        .filter_map(|placed| subject.gear(placed))
        .filter(|gear| gear.lamp().is_some())
        .collect();
    let unsaid = lamps.iter().filter(|gear| gear.power() == Watts::default()).count();
    let drawn: Watts = lamps.iter().map(|gear| gear.power()).sum();
    let drawn = whole(drawn.watts());
    match (lamps.len(), unsaid) {
        (0, _) => None,
        (_, 0) => Some(format!("lamps draw {drawn} W undimmed")),
        (all, unsaid) if all == unsaid => {
            Some("what the lamps draw is not known: read it off them".to_owned())
        }
        (_, unsaid) => Some(format!("lamps draw {drawn} W undimmed, and {unsaid} not known")),
    }
}

/// "50 %, T2.8 alone, 3,200 K": what a lamp gives on the subject. Empty for what does not shine.
pub fn lamp(camera: &CameraSettings, gear: &Gear, placed: &Placed) -> String {
    let Some(lamp) = gear.lamp() else { return String::new() };
    let light = lamp.light(placed.level, placed.distance);
    let stop = camera.exposure().with_t_stop_for(light, IncidentConstant::FLAT).t_stop;
    let colour = lamp.colour.temperature().map_or_else(|| "saturated".to_owned(), kelvin);
    let level = placed.level.percent().round();
    format!("{level} %, {} alone, {colour}", t_stop(stop))
}

#[cfg(test)]
mod tests {
    use super::super::fixture;
    use super::*;
    use crate::light::daylight::Sky;
    use crate::plan::kit::{Brightness, Thing, generic};
    use crate::sky::sun::Sun;
    use crate::units::{Instant, Lux, Metres, Share};

    #[test]
    fn the_crew_reads_key_stop_filter_and_power() {
        let mut subject = fixture::open(330.0);
        let tube = generic::examples().into_iter().find(|one| one.0 == "Tube, 1.2 m").unwrap();
        subject.kit = vec![generic::gear("tube", tube)];
        subject.rig.placed = vec![Placed::usual("tube"), Placed::usual("tube")];
        let at = Instant::parse("2026-06-21T15:00:00Z").unwrap();
        let levels = Levels::of(&subject, &subject.hour(&Sun::new(subject.site), at, Sky::Clear));
        let told = lines(&subject, &levels, false);
        assert!(told[0].starts_with("key ") && told[0].contains(" : 1 ("), "{told:?}");
        assert!(told[1].starts_with("key T") && told[1].contains("takes ND "), "{told:?}");
        // Two tubes of twenty watts.
        assert_eq!(told[2], "lamps draw 40 W undimmed");
        subject.kit[0].set_power(Watts::default());
        assert!(power(&subject).unwrap().contains("not known"));
    }

    /// The stop that the line names lets the lamp's own light expose a flat disc rightly: N² = E·t·S / 250 (handbook F1).
    #[test]
    fn a_lamp_is_told_by_the_stop_it_gives_alone() {
        let (name, is) = generic::examples().remove(0);
        let mut gear = generic::gear("panel", (name, is));
        let read = Brightness::Reading { lux: Lux::from_lux(1000.0), at: Metres::from_metres(1.0) };
        gear.measure(|is| {
            if let Thing::Lamp(lamp) = is {
                lamp.brightness = read;
            }
        });
        let camera = CameraSettings::default();
        let placed = Placed {
            distance: Metres::from_metres(1.0),
            level: Share::clamped(0.5),
            ..Placed::usual("panel")
        };
        let stop = (500.0 * (1.0 / 48.0) * 400.0 / 250.0_f64).sqrt();
        let marked = t_stop(crate::units::TStop::clamped(stop));
        assert_eq!(lamp(&camera, &gear, &placed), format!("50 %, {marked} alone, 5,600 K"));
    }
}
