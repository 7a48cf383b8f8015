//! Frames, flags and mirrors in words: where each stands over a hold.

use super::kit::GripKit;
use super::{Aimed, aimed, covered};
use crate::light::cover::{Away, NoStand};
use crate::maths;
use crate::plan::search::words as say;
use crate::plan::shot::in_frame::shows;
use crate::plan::stage::Stage;
use crate::sky::sun::Sun;
use crate::units::{Degrees, Instant, Metres, Span, Vector, World};
use crate::words::{self, Clock, Units};

/// What must stay in the shade of a frame, and in the light of a mirror, about the face: our own choice.
const HEAD: Metres = Metres::from_metres(0.3);

/// The front of a lens with its hood: our own choice.
const GLASS: Metres = Metres::from_metres(0.08);

/// A sentence each for frame, flag and mirror through a hold; the mirror is aimed at its begin.
pub fn lines(
    sun: &Sun,
    stage: &Stage,
    kit: &GripKit,
    hold: Span,
    (style, units): (Clock, Units),
) -> Vec<String> {
    let mut lines = vec![format!("For {}:", say::clock(hold, stage, style))];
    lines.push(frame(sun, stage, kit, hold, (style, units)));
    lines.extend(flag(sun, stage, kit, hold, units));
    lines.extend(mirror(sun, stage, kit, hold.start(), (style, units)));
    lines
}

fn frame(sun: &Sun, stage: &Stage, kit: &GripKit, hold: Span, (style, units): (Clock, Units)) -> String {
    let found = match covered(sun, hold, kit.frame(), Away::Above(kit.frame_above), HEAD) {
        Ok(found) => found,
        Err(NoStand::NoSun) => return "Frame: no sun to soften.".to_owned(),
        Err(NoStand::TooLow) => return "Frame: its middle must be above the face.".to_owned(),
        Err(NoStand::TooFarRound) => return "Frame: the sun goes too far round for one frame.".to_owned(),
    };
    let stand = found.stand;
    let needs = words::sizes(&[stand.needs.width, stand.needs.height], units, words::measure);
    let place = format!(
        "{} from the mark towards {}, leaning back {}",
        words::measure(Metres::from_metres(maths::hypot(stand.centre.x, stand.centre.y)), units),
        words::bearing(stand.centre.bearing()),
        words::degrees(leans(stand.normal())),
    );
    let is_outside = stage.shot.vantage.as_ref().is_some_and(|camera| !camera.is_in_room(stand.centre));
    let outside = if is_outside { " That is outside the room: bring its middle down." } else { "" };
    let until = |at: Instant| say::clock(Span::new(hold.start(), at).unwrap_or(hold), stage, style);
    match found.until {
        Some(end) if end >= hold.end() => {
            format!("Frame: {place}. Covers to the end; {needs} would do.{outside}")
        }
        Some(end) => format!("Frame: {place}. Covers {}; the whole time needs {needs}.{outside}", until(end)),
        None => format!("Frame: too small even for a minute; the whole time needs {needs}."),
    }
}

/// The flag that keeps the sun off the lens; nothing while it does not reach the glass.
fn flag(sun: &Sun, stage: &Stage, kit: &GripKit, hold: Span, units: Units) -> Option<String> {
    let picture = stage.shot.picture?;
    let ahead = crate::light::relative::LensFrame::new(stage.lens, picture.tilt).ahead();
    if sun.apparent(hold.middle()).dot(ahead) <= 0.0 {
        return None;
    }
    let stand = crate::light::cover::stand(&super::way(sun, hold), Away::At(kit.flag), GLASS).ok()?;
    let needs = words::sizes(&[stand.needs.width, stand.needs.height], units, words::measure);
    let seen = shows(&picture, stage.lens, &stand.corners(stand.needs));
    let warning = if seen { ", and would be in the picture" } else { "" };
    let middle = Degrees::from_degrees(stand.centre.height().degrees());
    Some(format!(
        "Flag: {needs} at {} from the glass, towards {}, {} up{warning}.",
        words::measure(kit.flag, units),
        words::bearing(stand.centre.bearing()),
        words::degrees(middle)
    ))
}

fn mirror(
    sun: &Sun,
    stage: &Stage,
    kit: &GripKit,
    when: Instant,
    (style, units): (Clock, Units),
) -> Vec<String> {
    let at = kit.bearing.level() * kit.distance.metres() + Vector::UP * kit.above.metres();
    let Some(found) = aimed(sun, stage, (at, kit.mirror), HEAD, when) else {
        return vec!["Mirror: it cannot throw the sun on the mark from there.".to_owned()];
    };
    let Aimed { mirror, leans, patch, lights, through } = found;
    let faces = format!("Mirror: faces {}, {}", words::bearing(mirror.normal.bearing()), lean_words(leans));
    let patch = words::measure(patch, units);
    let holds = lights.map_or_else(
        || "too small to light the whole face".to_owned(),
        |span| {
            let ahead = Span::new(when, span.end()).unwrap_or(span);
            format!(
                "aim it again after {}, {}",
                words::duration(ahead.duration()),
                say::clock(ahead, stage, style)
            )
        },
    );
    let mut lines = vec![format!("{faces}. Throws a patch of {patch}; {holds}.")];
    if let Some(openings) = &stage.openings {
        lines.push(through.map_or_else(
            || "Its beam meets a wall: move it until it looks through a window.".to_owned(),
            |place| format!("Its beam comes through {}.", openings[place].name),
        ));
    }
    lines
}

fn leans(normal: Vector<World>) -> Degrees {
    Degrees::from_degrees(normal.height().degrees())
}

fn lean_words(leans: Degrees) -> String {
    let angle = words::degrees(leans.abs());
    if leans.degrees() >= 0.0 { format!("leaning back {angle}") } else { format!("leaning forward {angle}") }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::light::picture::Picture;
    use crate::plan::fixture::{field, loft, span};
    use crate::units::Bearing;

    fn told(stage: &Stage, kit: &GripKit) -> Vec<String> {
        let hold = span("2027-06-21T12:00:00Z", "2027-06-21T12:40:00Z");
        lines(&Sun::new(stage.site), stage, kit, hold, (Clock::default(), Units::Metric))
    }

    #[test]
    fn a_noon_in_the_open() {
        let mut stage = field();
        stage.lens = Bearing::from_degrees(180.0);
        let degrees = Degrees::from_degrees;
        stage.shot.picture = Some(Picture { across: degrees(40.0), up: degrees(27.0), tilt: degrees(0.0) });
        let lines = told(&stage, &GripKit::default());
        assert_eq!(lines[0], "For 13:00–13:40:");
        assert!(lines[1].starts_with("Frame: ") && lines[1].contains("Covers to the end"), "{}", lines[1]);
        assert!(lines[2].starts_with("Flag: ") && !lines[2].contains("in the picture"), "{}", lines[2]);
        assert!(
            lines[3].starts_with("Mirror: faces ") && lines[3].contains("aim it again after"),
            "{}",
            lines[3]
        );
        assert_eq!(lines.len(), 4);
        let small = GripKit { frame_width: HEAD, frame_height: HEAD, ..GripKit::default() };
        assert!(told(&stage, &small)[1].contains("too small even for a minute"));
        let low = GripKit { frame_above: Metres::from_metres(-0.2), ..GripKit::default() };
        assert!(told(&stage, &low)[1].contains("must be above the face"));
    }

    #[test]
    fn a_room_says_where_the_beam_comes_in() {
        let at = |bearing: f64| GripKit {
            bearing: Bearing::from_degrees(bearing),
            distance: Metres::from_metres(8.0),
            above: Metres::from_metres(1.4),
            ..GripKit::default()
        };
        assert_eq!(told(&loft(), &at(233.0)).last().unwrap(), "Its beam comes through left window.");
        assert!(told(&loft(), &at(248.0)).last().unwrap().contains("meets a wall"));
    }
}
