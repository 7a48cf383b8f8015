//! A day at a place, as Now shows it: everything that is worked out once a day, ready to be asked of each instant.

use chrono::NaiveDate;

use super::agenda::{self, Line};
use super::at_hand::{AtHand, set_ups_at};
use super::document::{Location, Project};
use super::find::Standing;
use super::levels;
use super::stage;
use crate::light::daylight::twilight;
use crate::light::relative::{InLens, LensFrame};
use crate::light::shadow::shadow_length;
use crate::place::site::Site;
use crate::place::skyline::Skyline;
use crate::place::zone::Zone;
use crate::plan::levels::subject::sky_of;
use crate::plan::levels::{Levels, Subject, say};
use crate::plan::search::on_mark;
use crate::plan::today::ahead::Ahead;
use crate::plan::today::words::{self as count_words, Said, Whose};
use crate::plan::today::{self, Today};
use crate::sky::events::Passage;
use crate::sky::sun::Sun;
use crate::units::{Bearing, Degrees, Duration, Height, Instant, Span, Vector, World};
use crate::words::{self, Clock};

/// The change of the twilight is taken over this.
const APART: Duration = Duration::from_minutes(1);

/// Below this height the sky alone is the light, and how fast it goes is worth more than a shadow's length. Our choice.
const DUSK: f64 = 0.0;

/// A day at a place.
#[derive(Clone, Debug)]
pub struct DayAt {
    /// The place's clock.
    pub zone: Zone,
    /// The day.
    pub day: Span,
    /// Set-ups at the location, in the order of the script.
    pub at_hand: Vec<AtHand>,
    /// Which of them is counted.
    pub current: Option<usize>,
    /// What blocks the sky from where the subject is.
    pub skyline: Skyline,
    /// The sun's path through the day.
    pub path: Vec<(Instant, Vector<World>)>,
    /// What happens, in order.
    pub lines: Vec<Line>,
    /// The light of this day and the next.
    pub ahead: Ahead,
    today: Today,
    /// The set-up that is counted, as its levels are worked out.
    lit: Option<Subject>,
    site: Site,
    sun: Sun,
}

impl DayAt {
    /// At a location of a project; the set-up with this id is counted if it is there, else the first one.
    /// `None` for a date that the zone left out.
    pub fn of(
        project: &Project,
        location: &Location,
        zone: Zone,
        (date, set_up): (NaiveDate, Option<&str>),
    ) -> Option<Self> {
        let at_hand = set_ups_at(project, location, &zone);
        let named = at_hand.iter().position(|one| Some(one.id.as_str()) == set_up);
        let current = named.or((!at_hand.is_empty()).then_some(0));
        let noon = zone.day(date)?.middle();
        let skyline = match current {
            Some(place) => at_hand[place].stage.skyline_at(noon).clone(),
            None => stage::around(&Standing { location, room: None, mark: None }).on(date).clone(),
        };
        let lit = current.and_then(|place| levels::of_set_up(project, &at_hand[place].id, zone.clone()).ok());
        Some(Self { lit, ..Self::new((location.site, zone, skyline), date, (at_hand, current))? })
    }

    /// At any point of the Earth.
    pub fn anywhere(site: Site, zone: Zone, date: NaiveDate) -> Option<Self> {
        Self::new((site, zone, Skyline::default()), date, (Vec::new(), None))
    }

    fn new(
        (site, zone, skyline): (Site, Zone, Skyline),
        date: NaiveDate,
        (at_hand, current): (Vec<AtHand>, Option<usize>),
    ) -> Option<Self> {
        let (day, sun) = (zone.day(date)?, Sun::new(site));
        let one = current.map(|place| &at_hand[place]);
        let ahead = Ahead::of(&sun, one.map(|one| &one.stage), (&zone, &skyline), date);
        let today = Today::of(&sun, day);
        let up = agenda::up(&sun, &skyline, day);
        let mut lines = agenda::of_the_sun(&today, up.into_iter(), &skyline);
        lines.extend(agenda::of_the_moon(site, day));
        for (place, other) in at_hand.iter().enumerate() {
            lines.extend(match Some(place) == current {
                true => [
                    agenda::of_the_mark(&sun, other, (date, &lines)),
                    agenda::of_the_set_up(&ahead, other, date),
                ]
                .concat(),
                false => agenda::of_another(&sun, other, date),
            });
        }
        lines.extend(at_hand.iter().flat_map(|one| agenda::of_the_shots(one, day)));
        let (path, lines) = (today::path(&sun, day), agenda::in_order(lines));
        Some(Self { zone, day, at_hand, current, skyline, path, lines, ahead, today, lit: None, site, sun })
    }

    /// The set-up that is counted.
    pub fn set_up(&self) -> Option<&AtHand> {
        self.at_hand.get(self.current?)
    }

    /// Where it is.
    pub const fn site(&self) -> Site {
        self.site
    }

    /// Where the sun is seen.
    pub fn sun_at(&self, at: Instant) -> Vector<World> {
        self.sun.apparent(at)
    }

    /// The light on the face as the lens sees it; nothing where the sun does not reach the mark.
    pub fn on_face(&self, at: Instant) -> Option<Vector<InLens>> {
        let one = self.set_up()?;
        let sun = on_mark::sun_there(&self.sun, &self.skyline, at)?;
        let through =
            one.stage.openings.as_ref().is_none_or(|all| all.iter().any(|opening| opening.contains(sun)));
        // The tilt of a lens turns no side of a face to the light.
        through.then(|| LensFrame::new(one.stage.lens, Degrees::default()).sees(sun))
    }

    /// Since when all that the countdown says but its number has held, at the earliest since the minute began.
    pub fn turn(&self, at: Instant) -> Instant {
        let minute = at - Duration::from_millis(at.unix_millis().rem_euclid(60_000));
        self.ahead.last_turn(at).map_or(minute, |turn| turn.max(minute))
    }

    /// The countdown.
    pub fn said(&self, at: Instant, clock: Clock) -> Said {
        let stage = self.set_up().map(|one| &one.stage);
        let whose = Whose { stage, zone: &self.zone, skyline: &self.skyline, clock };
        count_words::said(&self.ahead, &self.sun, whose, at)
    }

    /// Height, bearing, back over key and the shadow's length, or at dusk how bright the sky is and how fast that goes; value
    /// and name.
    pub fn facts(&self, at: Instant) -> Vec<(String, String)> {
        let sun = self.sun_at(at);
        let height = Degrees::from_degrees(sun.height().degrees());
        let bearing = Degrees::from_degrees(sun.bearing().degrees());
        let mut facts =
            vec![(words::degrees_fine(height), "height"), (words::degrees(bearing), "bearing, true")];
        if height.degrees() > DUSK {
            facts.extend(self.back_fact(at));
            let shadow = shadow_length(sun.height()).map_or("none".to_owned(), words::times);
            facts.push((shadow, "shadow length"));
        } else {
            let (now, then) =
                (twilight::brown(sun.height()), twilight::brown(self.sun_at(at + APART).height()));
            facts.push((words::lux(now), "open sky, model"));
            facts.extend(stop_every(now.stops_over(then).stops()));
        }
        facts.into_iter().map(|(value, name)| (value, name.to_owned())).collect()
    }

    /// How far the subject's back is over its brighter side, under the sky that its wish names, else a clear one.
    fn back_fact(&self, at: Instant) -> Option<(String, &'static str)> {
        let (subject, one) = (self.lit.as_ref()?, self.set_up()?);
        say::back_fact(&Levels::of(subject, &subject.hour(&self.sun, at, sky_of(one.stage.wish.sky))))
    }

    /// The instant at which the sun's path passes a bearing nearest in time to `near`; its end beyond it.
    pub fn at_bearing(&self, bearing: Bearing, near: Instant) -> Option<Instant> {
        today::at_bearing(&self.path, bearing, near)
    }

    /// A sentence for a day on which the sun does not rise or set.
    pub const fn polar(&self) -> Option<&'static str> {
        match self.today.sun {
            Passage::Crosses { .. } => None,
            Passage::AboveAllDay => Some("The sun does not set on this day."),
            Passage::BelowAllDay => Some("The sun does not rise on this day."),
        }
    }

    /// When a day's work usually ends: with the evening's blue hour, else with the date.
    pub fn usual_wrap(&self) -> Instant {
        self.today.first(today::What::EveningBlue).and_then(|one| one.until).unwrap_or(self.day.end())
    }

    /// When the sun shows above the skyline.
    pub fn up(&self) -> crate::units::Spans {
        on_mark::sun_up(&self.sun, &self.skyline, self.day)
    }

    /// Time of a line in words: "17:38", "18:53–19:03".
    pub fn time_of(&self, line: &Line, clock: Clock) -> String {
        let time = |at| words::to_the_minute(self.zone.local(at)).time();
        match line.until {
            None => words::clock(time(line.at), clock),
            Some(end) => words::clock_from_to(time(line.at), time(end), clock),
        }
    }

    /// Whether the sun is so near to a direction that nobody may look there.
    pub fn is_near_the_sun(&self, at: Instant, (bearing, height): (Bearing, Height)) -> bool {
        crate::plan::search::through_window::sun_in_sight(self.sun_at(at), Vector::towards(bearing, height))
    }
}

/// "5 min" per stop lost or gained; nothing while it stands still.
fn stop_every(lost_a_minute: f64) -> Option<(String, &'static str)> {
    let minutes = (1.0 / lost_a_minute.abs()).round();
    let name = if lost_a_minute > 0.0 { "for a stop less" } else { "for a stop more" };
    (minutes < 60.0).then(|| (format!("{minutes} min"), name))
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::project::demo;

    fn march() -> DayAt {
        let project = demo::project();
        let loft = project.location("sail-loft").unwrap();
        let date = NaiveDate::from_ymd_opt(2027, 3, 11).unwrap();
        DayAt::of(&project, loft, Zone::fixed("UTC", Duration::ZERO), (date, Some("set-up-4a"))).unwrap()
    }

    fn at(text: &str) -> Instant {
        Instant::parse(text).unwrap()
    }

    #[test]
    fn the_named_set_up_is_counted_else_the_first_one() {
        let day = march();
        assert_eq!(day.set_up().unwrap().name, "4 A");
        let project = demo::project();
        let pans = project.location("salt-pans").unwrap();
        let date = NaiveDate::from_ymd_opt(2027, 3, 11).unwrap();
        let other =
            DayAt::of(&project, pans, Zone::fixed("UTC", Duration::ZERO), (date, Some("set-up-4a"))).unwrap();
        assert_eq!(other.set_up().unwrap().name, "1 A");
    }

    #[test]
    fn the_face_is_lit_only_while_the_sun_comes_through() {
        let day = march();
        assert!(day.on_face(at("2027-03-11T10:00:00Z")).is_none(), "the windows face west");
        let slot = day.ahead.next_slot(day.day.start()).unwrap().span;
        assert!(day.on_face(slot.middle()).is_some());
    }

    #[test]
    fn without_a_project_the_sun_is_counted() {
        let date = NaiveDate::from_ymd_opt(2027, 3, 11).unwrap();
        let site = demo::project().locations[0].site;
        let day = DayAt::anywhere(site, Zone::fixed("UTC", Duration::ZERO), date).unwrap();
        let said = day.said(at("2027-03-11T18:00:00Z"), Clock::TwentyFour);
        assert_eq!((said.what.as_str(), said.holds.as_str()), ("of sun left", ""));
        assert!(said.detail.starts_with("Ends 18:3") && said.detail.ends_with(", sunset."), "{said:?}");
        assert!(day.on_face(at("2027-03-11T18:00:00Z")).is_none());
    }

    #[test]
    fn facts_change_at_dusk() {
        let day = march();
        let names = |text| -> Vec<String> { day.facts(at(text)).into_iter().map(|(_, name)| name).collect() };
        assert_eq!(
            names("2027-03-11T17:28:00Z"),
            ["height", "bearing, true", "back over key", "shadow length"]
        );
        assert_eq!(
            names("2027-03-11T18:49:00Z"),
            ["height", "bearing, true", "open sky, model", "for a stop less"]
        );
        assert_eq!(names("2027-03-11T06:30:00Z")[3], "for a stop more");
    }

    #[test]
    fn dragging_along_the_strip_finds_the_time_again() {
        let day = march();
        for text in ["2027-03-11T09:13:00Z", "2027-03-11T15:47:00Z"] {
            let there = day.at_bearing(day.sun_at(at(text)).bearing(), at("2027-03-11T12:00:00Z")).unwrap();
            assert!((there - at(text)).millis().abs() < 60_000, "{text} {there}");
        }
    }
}
