//! What the search found, in words: the reason of a slot, why it begins and ends, the days of a run.
//!
//! Direction class first, degrees after. Times of the clock are rounded to the minute here and nowhere else.

use super::reason::Reason;
use super::runs::Run;
use super::slot::{Light, Slot};
use super::uncertainty::{Edges, Outcome};
use crate::light::class;
use crate::plan::stage::Stage;
use crate::plan::wish::face::InPicture;
use crate::units::{Degrees, Height, Span};
use crate::words::{self, Clock};

/// "¾ back, right".
pub fn light(light: &Light) -> String {
    class::words(light.off_lens, light.direction.height())
}

/// "10–4° high".
pub fn heights((start, end): (Height, Height)) -> String {
    let angle = |height: Height| Degrees::from_degrees(height.degrees());
    format!("{} high", words::degrees_from_to(angle(start), angle(end)))
}

/// "¾ back, right · 10–4° high · ± 6 min"; where the lens is free, "lens 215° SW · " before it.
pub fn reason(slot: &Slot, stage: &Stage, edges: &Edges) -> String {
    let lens = stage.free.is_some().then(|| format!("lens {} · ", words::bearing(slot.lens)));
    format!(
        "{}{} · {} · {}",
        lens.unwrap_or_default(),
        light(&slot.light),
        heights(slot.heights),
        words::plus_minus(edges.larger())
    )
}

/// What the uncertainty may do to a slot; nothing where it holds.
pub fn outcome(edges: &Edges) -> Option<&'static str> {
    match edges.outcome {
        Outcome::Holds => None,
        Outcome::MayBeTooShort => Some("may be too short if the bearing is off"),
        Outcome::MayVanish => Some("may vanish if the bearing is off"),
    }
}

/// "17:38–18:14", on the place's clock.
pub fn clock(span: Span, stage: &Stage, style: Clock) -> String {
    let local = |at| words::to_the_minute(stage.zone.local(at)).time();
    words::clock_from_to(local(span.start()), local(span.end()), style)
}

/// "4–21 Mar".
pub fn dates(run: &Run) -> String {
    let (from, to) = run.dates();
    words::dates_from_to(from, to)
}

/// "4–21 Mar, about 17:40".
pub fn run(run: &Run, style: Clock) -> String {
    format!("{}, about {}", dates(run), words::clock(words::to_ten_minutes(run.about), style))
}

/// "works on 143 days".
pub fn works_on(days: usize) -> String {
    match days {
        0 => "works on no day".into(),
        1 => "works on 1 day".into(),
        days => format!("works on {days} days"),
    }
}

/// Why a slot does not begin earlier: "sun reaches the left window".
pub fn begins(slot: &Slot, stage: &Stage) -> String {
    match slot.starts {
        Reason::Dates => "the dates begin".into(),
        Reason::Hours => "the hours begin".into(),
        Reason::TooLow(low) => format!("sun above {}", height(low)),
        Reason::TooHigh(high) => format!("sun below {}", height(high)),
        Reason::Arc => "light comes into the arc".into(),
        Reason::Face => "light comes onto the face as wished".into(),
        Reason::Picture => sun_in_picture(stage, true).into(),
        Reason::Horizon => "sunrise".into(),
        Reason::Skyline => "sun clears the skyline".into(),
        Reason::OutOfOpening(n) => format!("sun reaches {}", name(stage, n)),
        Reason::Through(n) => format!("sun leaves {}", name(stage, n)),
        Reason::InTheSun => "sun goes behind the skyline".into(),
        Reason::Levels => "the levels are as wished".into(),
        Reason::DatesSearched => "the day begins".into(),
    }
}

/// Why a slot ends: "sun leaves the left window".
pub fn ends(slot: &Slot, stage: &Stage) -> String {
    match slot.ends {
        Reason::Dates => "the dates end".into(),
        Reason::Hours => "the hours end".into(),
        Reason::TooLow(low) => format!("sun below {}", height(low)),
        Reason::TooHigh(high) => format!("sun above {}", height(high)),
        Reason::Arc => "light leaves the arc".into(),
        Reason::Face => "light on the face changes".into(),
        Reason::Picture => sun_in_picture(stage, false).into(),
        Reason::Horizon => "sunset".into(),
        Reason::Skyline => "sun behind the skyline".into(),
        Reason::OutOfOpening(n) => format!("sun leaves {}", name(stage, n)),
        Reason::Through(n) => format!("sun comes through {}", name(stage, n)),
        Reason::InTheSun => "sun clears the skyline".into(),
        Reason::Levels => "the levels leave the wish".into(),
        Reason::DatesSearched => "the day ends".into(),
    }
}

/// What the sun does to the picture when a slot begins or ends.
fn sun_in_picture(stage: &Stage, begins: bool) -> &'static str {
    match (stage.wish.in_picture, begins) {
        (InPicture::In, true) => "sun comes into the picture",
        (InPicture::In, false) => "sun leaves the picture",
        (InPicture::JustOut, true) => "sun stands beside the picture",
        (InPicture::JustOut, false) => "sun no longer beside the picture",
        (_, true) => "sun clear of the picture",
        (_, false) => "sun comes near the picture",
    }
}

/// "4°".
fn height(height: Height) -> String {
    words::degrees(Degrees::from_degrees(height.degrees()))
}

/// Name of an opening.
fn name(stage: &Stage, n: usize) -> &str {
    stage.openings.as_ref().and_then(|all| all.get(n)).map_or("the opening", |opening| &opening.name)
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::plan::fixture::{lisbon, loft, on};
    use crate::plan::search::runs::runs;
    use crate::plan::search::slots;
    use crate::plan::search::uncertainty::edges;
    use crate::plan::wish::DateRange;
    use crate::sky::sun::Sun;
    use crate::units::Duration;

    fn march() -> (Stage, Vec<Slot>) {
        let stage = loft();
        let dates = [DateRange { from: on(2027, 3, 8), to: on(2027, 3, 12) }];
        let found = slots(&Sun::new(stage.site), &stage, &dates);
        (stage, found)
    }

    #[test]
    fn a_slot_says_why_it_is_one() {
        let (stage, found) = march();
        let slot = &found[0];
        let edges = edges(&Sun::new(stage.site), &stage, slot);
        let words = reason(slot, &stage, &edges);
        assert!(words.starts_with("¾ back, right · ") && words.contains("° high · ± "), "{words}");
        assert!(words.ends_with(" min"), "{words}");
        assert_eq!(ends(slot, &stage), "sun below 4°");
        let free = Stage { free: Some(Vec::new()), ..stage };
        assert_eq!(reason(slot, &free, &edges), format!("lens 215° SW · {words}"));
    }

    #[test]
    fn every_reason_has_words() {
        let (stage, found) = march();
        let say = |reason: Reason| {
            let slot = Slot { starts: reason, ends: reason, ..found[0].clone() };
            (begins(&slot, &stage), ends(&slot, &stage))
        };
        let pair = |a: &str, b: &str| (a.to_string(), b.to_string());
        assert_eq!(say(Reason::OutOfOpening(0)), pair("sun reaches left window", "sun leaves left window"));
        assert_eq!(
            say(Reason::Through(1)),
            pair("sun leaves right window", "sun comes through right window")
        );
        assert_eq!(say(Reason::TooHigh(Height::clamped(16.0))), pair("sun below 16°", "sun above 16°"));
        assert_eq!(say(Reason::TooLow(Height::clamped(-6.0))), pair("sun above −6°", "sun below −6°"));
        assert_eq!(say(Reason::Skyline), pair("sun clears the skyline", "sun behind the skyline"));
        assert_eq!(say(Reason::Horizon), pair("sunrise", "sunset"));
        assert_eq!(say(Reason::Arc), pair("light comes into the arc", "light leaves the arc"));
        assert_eq!(say(Reason::OutOfOpening(9)).1, "sun leaves the opening");
    }

    #[test]
    fn a_run_says_its_days_and_about_when() {
        let (stage, found) = march();
        let all = runs(&stage, &found);
        assert_eq!(dates(&all[0]), "8–12 Mar");
        let words = run(&all[0], Clock::TwentyFour);
        assert!(words.starts_with("8–12 Mar, about 1") && words.ends_with('0'), "{words}");
        assert_eq!(works_on(143), "works on 143 days");
        assert_eq!(works_on(1), "works on 1 day");
    }

    #[test]
    fn the_clock_is_the_places_own() {
        let stage = Stage { zone: lisbon(), ..loft() };
        let summer = crate::plan::fixture::span("2027-07-01T17:38:20Z", "2027-07-01T18:13:40Z");
        assert_eq!(clock(summer, &stage, Clock::TwentyFour), "18:38–19:14");
        assert_eq!(clock(summer, &stage, Clock::Twelve), "6:38–7:14 pm");
    }

    #[test]
    fn uncertainty_speaks_up_only_when_it_matters() {
        let edges = |outcome| Edges { start: Duration::ZERO, end: Duration::ZERO, outcome };
        assert_eq!(outcome(&edges(Outcome::Holds)), None);
        assert_eq!(outcome(&edges(Outcome::MayVanish)), Some("may vanish if the bearing is off"));
    }
}
