//! What is told of a mark: of the day and the year, once things have settled; of the instant, live.

use chrono::NaiveDate;

use super::patch_day::PatchDay;
use super::story::{self, Style};
use super::{RoomStage, dark, head};
use crate::light::drift::{Suns, climbs, drift};
use crate::light::in_room::InRoom as Numbers;
use crate::light::patch::beams;
use crate::light::penumbra;
use crate::light::relative::LensFrame;
use crate::light::skylight::Inside;
use crate::place::mark::Mark;
use crate::plan::levels;
use crate::plan::levels::towards::Shaft;
use crate::sky::sun::Sun;
use crate::units::{Degrees, Duration, Metres, Share, Vector, World};
use crate::words;

/// Of the date and the year from it on: "All of a head …", "Sun on the floor …", "Between 2 Nov and 8 Feb …".
pub fn of_the_day(
    sun: &Sun,
    place: &RoomStage,
    mark: &Mark,
    date: NaiveDate,
    style: Style<'_>,
) -> Vec<String> {
    let Some(day) = style.zone.day(date) else { return Vec::new() };
    let face = crate::place::aperture::face(mark);
    let year = dark::words(&dark::dark(sun, &place.stage, date), &mark.name);
    let lit = head::lit(sun, place, face, day);
    let patch = PatchDay::on(sun, &place.on(date), day);
    [story::head(&lit, style), story::patch(&patch, style), year].into_iter().flatten().collect()
}

/// Of the instant with the sun at the first direction, and a while later at the second.
pub fn of_now(
    place: &RoomStage,
    mark: &Mark,
    [now, then]: [Vector<World>; 2],
    apart: Duration,
    units: words::Units,
) -> Vec<String> {
    let room = &place.room;
    let face = crate::place::aperture::face(mark);
    let numbers = Numbers::of(room, [now, then], apart);
    let on_mark = Inside { room, line: &place.stage.skyline }.sun(face, now);
    let asked = on_mark.first().map(|through| through.opening);
    let first = asked.or_else(|| beams(room, room.room_from_world(now)).first().map(|beam| beam.opening));
    let Some(opening) = first.and_then(|index| Some((index, room.openings.get(index)?))) else {
        return Vec::new();
    };
    let suns = Suns { now: room.room_from_world(now), then: room.room_from_world(then), apart };
    let edges = story::edges(&drift(room, opening.0, suns, Metres::default()), units)
        .filter(|_| numbers.floor_m2 > 0.0);
    let edges = edges.map(|said| format!("{}: {}", opening.1.name, lower(&said)));
    let climb =
        asked.and_then(|_| story::climb(&climbs(room, opening.1, face, suns), mark.face_height, units));
    let lit = (numbers.floor_m2 > 0.0 || numbers.walls_m2 > 0.0).then(|| {
        format!(
            "In the sun: {} of floor, {} of wall.",
            words::area(numbers.floor_m2, units),
            words::area(numbers.walls_m2, units)
        )
    });
    let soft = penumbra::on_floor(opening.1.whole().high, now.height())
        .filter(|_| numbers.floor_m2 > 0.0)
        .map(|soft| format!("Its upper edge is soft over {}.", words::measure(soft, units)));
    let glass = on_mark.first().filter(|through| through.light < Share::clamped(0.995));
    let glass =
        glass.map(|through| format!("The glass lets {:.0} % of this sun through.", through.light.percent()));
    [edges, climb, lit, soft, glass].into_iter().flatten().collect()
}

/// "In haze, towards scene 4, set-up A, a shaft shows much more than from the side: about 4 stops over it, ± 1½.": for each
/// lens, while the sun comes in.
pub fn in_haze(place: &RoomStage, now: Vector<World>, lenses: &[(String, LensFrame)]) -> Vec<String> {
    let clear = place.stage.skyline.clears(now, Degrees::default());
    let comes_in = clear && !beams(&place.room, place.room.room_from_world(now)).is_empty();
    let say = |(name, lens): &(String, LensFrame)| {
        format!("In haze, towards {name}, a shaft shows {}.", levels::say::shaft(Shaft::of(*lens, now)))
    };
    if comes_in { lenses.iter().map(say).collect() } else { Vec::new() }
}

fn lower(text: &str) -> String {
    let mut letters = text.chars();
    letters.next().map(|first| first.to_lowercase().chain(letters).collect()).unwrap_or_default()
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::plan::fixture::{at, on, room_stage};
    use crate::units::Bearing;
    use crate::words::{Clock, Units};

    #[test]
    fn a_mark_in_the_loft() {
        let mut place = room_stage();
        place.room.openings[0].transmittance = 0.78;
        let mark = Mark::new("m", "mark 1", [3.6, 2.6].map(Metres::from_metres));
        place.stage = place.at(crate::place::aperture::face(&mark));
        let sun = Sun::new(place.stage.site);
        let zone = place.stage.zone.clone();
        let style = Style { zone: &zone, clock: Clock::TwentyFour, units: Units::Metric };
        let day = of_the_day(&sun, &place, &mark, on(2027, 3, 11), style);
        assert!(day[0].starts_with("All of a head") && day[1].starts_with("Sun on the floor"), "{day:?}");
        assert!(day.iter().any(|said| said.ends_with("the sun never reaches the mark “mark 1”.")), "{day:?}");
        let minute = Duration::from_minutes(1);
        let told = |text: &str| {
            let now = at(text);
            of_now(&place, &mark, [sun.apparent(now), sun.apparent(now + minute)], minute, Units::Metric)
        };
        let said = told("2027-03-11T16:40:00Z");
        assert!(said.iter().any(|one| one.contains("lower edge drifts")), "{said:?}");
        assert!(
            said.iter().any(|one| one.starts_with("In the sun: ") && one.contains(" m² of floor")),
            "{said:?}"
        );
        assert_eq!(told("2027-03-11T09:00:00Z"), Vec::<String>::new());
        let against = LensFrame::new(Bearing::from_degrees(248.0), Degrees::default());
        let haze = |text: &str| in_haze(&place, sun.apparent(at(text)), &[("set-up A".to_owned(), against)]);
        let said = haze("2027-03-11T16:40:00Z");
        assert!(said[0].starts_with("In haze, towards set-up A, a shaft shows much more"), "{said:?}");
        assert!(said[0].ends_with(" stops over it, ± 1½.") && haze("2027-03-11T09:00:00Z").is_empty());
    }
}
