//! Words for the answers no almanac gives: same light again, only here from–to, and what else would do.

use super::only_here::LensArc;
use super::otherwise::{Change, Nearby};
use super::same_light::Again;
use super::words::{clock, heights, light};
use crate::place::background::Background;
use crate::plan::stage::Stage;
use crate::plan::wish::Wish;
use crate::units::{Bearing, Degrees, Instant, Metres};
use crate::words::{self, Clock, Units};

/// "Sat 2 Oct 2027 18:17".
pub fn again(again: &Again, stage: &Stage, style: Clock) -> String {
    moment(again.at, stage, style)
}

/// "within 0.2° of Thu 11 Mar 2027 17:38".
pub fn how_near(again: &Again, shot: Instant, stage: &Stage, style: Clock) -> String {
    // Rounded up: what is 0.04° off is not within 0.0°.
    let tenths = (again.apart.degrees() * 10.0).ceil().max(1.0);
    let within = words::degrees_fine(Degrees::from_degrees(tenths / 10.0));
    format!("within {within} of {}", moment(shot, stage, style))
}

/// "lens 190°–228°", "lens 215° SW" where there is but one.
pub fn lens(arc: &LensArc) -> String {
    if arc.from == arc.to {
        format!("lens {}", words::bearing(arc.from))
    } else {
        format!("lens {}", words::bearings_from_to(arc.from, arc.to))
    }
}

/// "Camera 2.5 m from the mark, towards 35° NE".
pub fn camera_stands(lens: Bearing, distance: Metres, units: Units) -> String {
    let far = words::length(distance, units);
    format!("Camera {far} from the mark, towards {}", words::bearing(lens.reversed()))
}

/// "¾ back, right · holds 60 min · 30–19° high".
pub fn lens_reason(arc: &LensArc) -> String {
    format!("{} · holds {} · {}", light(&arc.light), words::duration(arc.best.hold()), heights(arc.heights))
}

/// "not 40°–70° (the car park)"; empty without bad backgrounds.
pub fn bad_backgrounds(backgrounds: &[Background]) -> String {
    let bad = backgrounds.iter().filter(|background| !background.good).map(|background| {
        let why = if background.why.is_empty() { String::new() } else { format!(" ({})", background.why) };
        format!("{}{why}", words::bearings_from_to(background.from, background.to))
    });
    let bad: Vec<_> = bad.collect();
    if bad.is_empty() { String::new() } else { format!("left out: {}", bad.join(", ")) }
}

/// "Thu 11 Mar 2027 17:38–18:14, lens 215° SW".
pub fn nearby(nearby: &Nearby, stage: &Stage, style: Clock) -> String {
    let date = words::date(words::to_the_minute(stage.zone.local(nearby.span.start())).date());
    format!("{date} {}, lens {}", clock(nearby.span, stage, style), words::bearing(nearby.lens))
}

/// "sun up to 20° instead of 16°", "arc from 100° instead of 112°".
pub fn change(change: Change, wish: &Wish) -> String {
    let new = change.apply(wish);
    let instead = |what: &str, new: f64, old: f64| {
        let degrees = |number: f64| words::degrees(Degrees::from_degrees(number));
        format!("{what} {} instead of {}", degrees(new), degrees(old))
    };
    match change {
        Change::ArcFrom(_) => instead("arc from", new.arc.from.degrees(), wish.arc.from.degrees()),
        Change::ArcTo(_) => instead("arc to", new.arc.to.degrees(), wish.arc.to.degrees()),
        Change::Lowest(_) => instead("sun from", new.heights.from.degrees(), wish.heights.from.degrees()),
        Change::Highest(_) => instead("sun up to", new.heights.to.degrees(), wish.heights.to.degrees()),
    }
}

/// "Thu 11 Mar 2027 17:38".
fn moment(at: Instant, stage: &Stage, style: Clock) -> String {
    let local = words::to_the_minute(stage.zone.local(at));
    format!("{} {}", words::date(local.date()), words::clock(local.time(), style))
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::plan::fixture::{at, field, on, span, wish};
    use crate::plan::search::only_here::{arcs, every_bearing};
    use crate::plan::wish::SunOnMark;
    use crate::plan::wish::lens::LensChoice;
    use crate::sky::sun::Sun;

    fn a_while() -> Again {
        Again {
            at: at("2027-10-02T17:16:40Z"),
            date: on(2027, 10, 2),
            apart: Degrees::from_degrees(0.13),
            span: span("2027-10-02T17:00:00Z", "2027-10-02T17:30:00Z"),
        }
    }

    #[test]
    fn same_light_again() {
        let stage = field();
        assert_eq!(again(&a_while(), &stage, Clock::TwentyFour), "Sat 2 Oct 2027 18:17");
        let shot = at("2027-03-11T17:38:00Z");
        assert_eq!(
            how_near(&a_while(), shot, &stage, Clock::TwentyFour),
            "within 0.2° of Thu 11 Mar 2027 17:38"
        );
    }

    #[test]
    fn where_the_camera_goes() {
        let stage = field();
        let sun = Sun::new(stage.site);
        let hour = span("2027-03-11T17:20:00Z", "2027-03-11T18:10:00Z");
        let range = LensChoice::Range {
            from_deg: Bearing::from_degrees(235.0),
            to_deg: Bearing::from_degrees(271.0),
        };
        let found = arcs(&sun, &stage, &every_bearing(&sun, &stage, hour, range, &[]));
        assert_eq!(lens(&found[0]), "lens 235°–271°");
        let words = lens_reason(&found[0]);
        assert!(words.starts_with("back · holds 50 min · 1") && words.ends_with("° high"), "{words}");
        let one = LensArc { to: found[0].from, ..found[0].clone() };
        assert_eq!(lens(&one), "lens 235° SW");
        let stands = camera_stands(one.from, Metres::from_metres(2.5), Units::Metric);
        assert_eq!(stands, "Camera 2.5 m from the mark, towards 55° NE");
    }

    #[test]
    fn what_else_would_do() {
        let stage = field();
        let slot = Nearby {
            span: span("2027-03-11T17:38:00Z", "2027-03-11T18:14:00Z"),
            lens: Bearing::from_degrees(215.0),
        };
        assert_eq!(nearby(&slot, &stage, Clock::TwentyFour), "Thu 11 Mar 2027 17:38–18:14, lens 215° SW");
        let wish = wish((112.0, 165.0), (4.0, 16.0), SunOnMark::Yes);
        let by = Degrees::from_degrees;
        assert_eq!(change(Change::ArcFrom(by(12.0)), &wish), "arc from 100° instead of 112°");
        assert_eq!(change(Change::ArcTo(by(5.0)), &wish), "arc to 170° instead of 165°");
        assert_eq!(change(Change::Highest(by(4.0)), &wish), "sun up to 20° instead of 16°");
        assert_eq!(change(Change::Lowest(by(3.0)), &wish), "sun from 1° instead of 4°");
    }
}
