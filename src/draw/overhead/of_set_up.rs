//! The overhead of a set-up in one of its slots, with what the crew must know in words.

use super::{Overhead, Piece, Rigged};
use crate::light::class;
use crate::light::exposure::field_of_view::field_of_view;
use crate::place::zone::Zone;
use crate::plan::kit::{Placed, Thing};
use crate::plan::levels::subject::sky_of;
use crate::plan::levels::{Levels, brief};
use crate::project::document::{Location, Project, Scene, SetUp};
use crate::project::find::Standing;
use crate::project::levels;
use crate::sky::sun::Sun;
use crate::units::{Degrees, Instant, Metres, Span};
use crate::words::{self, Clock, Units};

/// The longest line of words on the paper, in letters. Our own choice: as wide as the paper.
const LONGEST_LINE: usize = 56;

/// The most lines of notes on the paper.
const MOST_NOTES: usize = 5;

/// How hours and lengths are printed.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Style {
    /// 17:38 or 5:38 pm.
    pub clock: Clock,
    /// Metres or feet.
    pub units: Units,
}

/// What is drawn of a set-up during `slot`; `None` if it is nowhere. `zone` is that of its location.
pub fn of_set_up<'a>(
    project: &'a Project,
    (scene, set_up): (&Scene, &SetUp),
    slot: Span,
    zone: &Zone,
    style: Style,
) -> Option<Overhead<'a>> {
    let standing = project.standing(set_up.at.as_ref()?)?;
    let sun = Sun::new(standing.location.site);
    let clock = |at: Instant| words::clock(words::to_the_minute(zone.local(at)).time(), style.clock);
    let times = [slot.start(), slot.middle(), slot.end()];
    let camera = project.camera_of(set_up);
    let width = Metres::from_metres(camera.map_or(36.0, |camera| camera.sensor_width_mm) / 1000.0);
    Some(Overhead {
        room: standing.room,
        mark: standing.mark.map_or([Metres::default(); 2], |mark| [mark.x, mark.y]),
        mark_name: standing.mark.map_or(&standing.location.name, |mark| &mark.name),
        facing: set_up.facing.map_or_else(|| set_up.lens.bearing.reversed(), |facing| facing.bearing),
        lens: set_up.lens.bearing,
        distance: set_up.lens.distance,
        across: field_of_view(width, Metres::from_metres(set_up.lens.focal_mm / 1000.0)),
        suns: times.map(|at| (sun.apparent(at), clock(at))),
        rigged: set_up
            .rig
            .placed
            .iter()
            .filter_map(|placed| rigged(project, set_up, placed, style))
            .collect(),
        title: format!("{} · set-up {}", scene.heading(), set_up.name),
        lines: lines(project, set_up, &standing, (slot, zone), style),
        units: style.units,
    })
}

/// A placed thing; `None` if the kit no longer has it.
fn rigged(project: &Project, set_up: &SetUp, placed: &Placed, style: Style) -> Option<Rigged> {
    let gear = project.kit.iter().find(|gear| gear.id == placed.gear)?;
    let camera = project.camera_of(set_up).map(|camera| camera.settings).unwrap_or_default();
    let length = words::length(placed.distance, style.units);
    let piece = match gear.is {
        Thing::Lamp(_) => Piece::Lamp,
        Thing::Board(_) => Piece::Board,
        Thing::Frame(_) => Piece::Frame,
    };
    Some(Rigged {
        piece,
        width: gear.width(),
        bearing: set_up.lens.bearing.reversed().turned(placed.side.off_the_camera()),
        distance: placed.distance,
        words: [gear.name.clone(), [length, brief::lamp(&camera, gear, placed)].join(" ").trim().to_owned()],
    })
}

/// When and where, the lens, the light, key and camera, power, cautions, notes.
fn lines(
    project: &Project,
    set_up: &SetUp,
    standing: &Standing<'_>,
    (slot, zone): (Span, &Zone),
    style: Style,
) -> Vec<String> {
    let [from, to] = [slot.start(), slot.end()].map(|at| words::to_the_minute(zone.local(at)));
    let lens = &set_up.lens;
    let length = |length| words::length(length, style.units);
    let mut lines = vec![
        format!(
            "{}, {} · {}",
            words::date(from.date()),
            words::clock_from_to(from.time(), to.time(), style.clock),
            standing.words()
        ),
        format!(
            "{} mm towards {}, {} away, {} high",
            lens.focal_mm,
            words::bearing(lens.bearing),
            length(lens.distance),
            length(lens.height)
        ),
        light(set_up, standing.location, slot),
    ];
    lines.extend(of_levels(project, set_up, slot.middle(), zone));
    if set_up.wish.may_face_the_sun() {
        lines.push("Sun near the lens: no optical finder, cap between takes.".to_owned());
    }
    let notes = set_up.notes.lines().filter(|line| !line.trim().is_empty());
    lines.extend(notes.take(MOST_NOTES).map(str::to_owned));
    lines.iter().flat_map(|line| wrapped(line)).collect()
}

/// "sun ¾ back, right, from 262° W, 13° to 9° high".
fn light(set_up: &SetUp, location: &Location, slot: Span) -> String {
    let sun = Sun::new(location.site);
    let [first, middle, last] = [slot.start(), slot.middle(), slot.end()].map(|at| sun.apparent(at));
    if middle.height().degrees() < 0.0 {
        return "sun below the horizon: light from the sky and from lamps".to_owned();
    }
    let off = class::off_lens(middle.bearing(), set_up.lens.bearing);
    let high = [first, last].map(|sun| words::degrees(Degrees::from_degrees(sun.height().degrees())));
    format!(
        "sun {}, from {}, {} to {} high",
        class::words(off, middle.height()),
        words::bearing(middle.bearing()),
        high[0],
        high[1]
    )
}

/// What the levels say in the middle of the slot; nothing where they cannot be worked out.
fn of_levels(project: &Project, set_up: &SetUp, at: Instant, zone: &Zone) -> Vec<String> {
    let Ok(subject) = levels::of_set_up(project, &set_up.id, zone.clone()) else { return Vec::new() };
    let sun = Sun::new(subject.site);
    let levels = Levels::of(&subject, &subject.hour(&sun, at, sky_of(set_up.wish.sky)));
    brief::lines(&subject, &levels, subject.correction(&sun, at).is_some())
}

/// A line on as many lines as it takes, broken between words.
fn wrapped(line: &str) -> Vec<String> {
    let mut lines = vec![String::new()];
    for word in line.split_whitespace() {
        let word: String = word.chars().take(LONGEST_LINE).collect();
        let last = lines.last().map_or(0, |line| line.chars().count());
        if last > 0 && last + 1 + word.chars().count() > LONGEST_LINE {
            lines.push(String::new());
        }
        if let Some(line) = lines.last_mut() {
            line.push_str(if line.is_empty() { "" } else { " " });
            line.push_str(&word);
        }
    }
    lines
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::project::demo;
    use crate::units::Duration;

    #[test]
    fn every_set_up_of_the_demo_has_a_plan() {
        let demo = demo::project();
        let start = Instant::parse("2027-03-11T17:00:00Z").unwrap();
        let slot = Span::new(start, start + Duration::from_minutes(40)).unwrap();
        let style = Style { clock: Clock::TwentyFour, units: Units::Metric };
        let zone = Zone::fixed("UTC", Duration::default());
        for pair in demo.set_ups() {
            let plan = of_set_up(&demo, pair, slot, &zone, style).unwrap();
            assert!(plan.lines.iter().all(|line| line.chars().count() <= LONGEST_LINE));
            assert!(plan.lines[0].starts_with("Thu 11 Mar 2027, 17:00–17:40"), "{}", plan.lines[0]);
            assert!(plan.lines.len() < 14, "{:?}", plan.lines);
            assert!(plan.lines.iter().any(|line| line.starts_with("key T")), "{:?}", plan.lines);
            assert!(!plan.drawing().layers.is_empty());
        }
    }
}
