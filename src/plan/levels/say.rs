//! Levels in words: rows, the sentence that says what to do, the camera, the evening.

use super::answer::{Answer, Means, too_flat_by};
use super::dusk::Fall;
use super::exposure::Trouble;
use super::level::{Level, Origin};
use super::sides::{Hardness, Levels};
use super::towards::{Look, Shaft};
use super::trust::Trust;
use crate::light::daylight::Correction;
use crate::light::ratio::Ratio;
use crate::plan::kit::Side;
use crate::units::{Lux, Metres, Share, Stops};
use crate::words::stops::{lux, ratio, stops, thirds};
use crate::words::{self, Units, capital};

/// "1⅔ stops", or "even" where the sides are alike; to the step that is worth showing.
pub fn headline(levels: &Levels) -> String {
    let over = levels.trust.rounded(levels.ratio().map_or(Stops::default(), Ratio::stops));
    if over.stops() < 0.1 { "Even".to_owned() } else { stops(over) }
}

/// "3 : 1", "1 : 1".
pub fn ratio_of(levels: &Levels) -> String {
    levels.ratio().map_or_else(|| "1 : 1".to_owned(), ratio)
}

/// "model ± ⅓", "metered ± ⅓", "nearest stop: meter it".
pub fn trust(trust: Trust, metered: bool) -> String {
    if trust.whole_stops {
        return "nearest stop, ± 1: meter it".to_owned();
    }
    let who = if metered { "metered" } else { "model" };
    format!("{who} ± {}", thirds(trust.either_way))
}

/// "metered: ⅔ stop under the model".
pub fn correction(correction: Correction) -> String {
    let side = if correction.stops().stops() < 0.0 { "under" } else { "over" };
    format!("metered: {} {side} the model", stops(correction.stops()))
}

/// "back 3⅔ over key"; empty in the dark.
pub fn back_over_key(levels: &Levels) -> String {
    match back(levels) {
        None => String::new(),
        Some((_, "as")) => "back as key".to_owned(),
        Some((stops, side)) => format!("back {} {side} key", thirds(stops)),
    }
}

/// The same as value and name: "3⅔ stops", "back over key"; nothing in the dark.
pub fn back_fact(levels: &Levels) -> Option<(String, &'static str)> {
    let (off, side) = back(levels)?;
    let name = match side {
        "over" => "back over key",
        "under" => "back under key",
        _ => "back to key",
    };
    Some((stops(off), name))
}

/// How far the back is off the key, and to which side.
fn back(levels: &Levels) -> Option<(Stops, &'static str)> {
    let over = levels.trust.rounded(levels.level(Side::Back).total().stops_over(levels.bright().total()));
    let side = match over.stops() {
        stops if !stops.is_finite() => return None,
        stops if stops > 0.1 => "over",
        stops if stops < -0.1 => "under",
        _ => "as",
    };
    Some((over, side))
}

/// "92,000 lx", or "17,000–68,000 lx" where only a range is worth showing.
pub fn level(level: &Level, trust: Trust) -> String {
    if !trust.is_range {
        return lux(level.total());
    }
    let [from, to] = trust.range(level.total()).map(lux);
    format!("{}–{to}", from.trim_end_matches(" lx"))
}

/// "sun through Loft window, left", "sky", "Tube, 1.2 m"; "no light".
pub fn main_source(level: &Level) -> String {
    let Some(part) = level.main() else { return "no light".to_owned() };
    match part.origin {
        Origin::Sun if part.name.is_empty() => "sun".to_owned(),
        Origin::Sun => format!("sun through {}", part.name),
        Origin::Moon => "moon".to_owned(),
        Origin::Sky => "sky".to_owned(),
        Origin::Ground => "ground".to_owned(),
        Origin::Room => "the room's own light".to_owned(),
        Origin::There | Origin::Lamp | Origin::Board | Origin::Frame => part.name.clone(),
    }
}

/// "hard, a quarter of the face in the sun", "soft, no sun on the mark".
pub fn modelling(levels: &Levels) -> String {
    let hardness = match levels.hardness() {
        Hardness::Hard => "hard",
        Hardness::Mixed => "half hard",
        Hardness::Soft => "soft",
    };
    match levels.lit {
        None => format!("{hardness}, no sun on the mark"),
        Some(lit) => format!(
            "{hardness}, the lens sees {} % of the face in the sun",
            (lit.percent() / 5.0).round() * 5.0
        ),
    }
}

/// "Take ⅓ stop off the fill side": what the ratio wished asks for, by the side that the first answer works on; "This is
/// 4 : 1, as wanted."
pub fn need(levels: &Levels, wished: Ratio, first: Option<&Answer>) -> String {
    let by = too_flat_by(levels, wished).to_third();
    let on_key =
        first.and_then(|answer| answer.piece.as_ref()).is_some_and(|piece| piece.side == levels.bright);
    match (by.stops(), on_key) {
        (by, _) if by.abs() < 0.1 => format!("This is {}, as wanted.", ratio(wished)),
        (more, true) if more > 0.0 => format!("Give the key side {} more", stops(by)),
        (more, false) if more > 0.0 => format!("Take {} off the fill side", stops(by)),
        (_, true) => format!("Take {} off the key side", stops(by)),
        (_, false) => format!("Give the fill side {} more", stops(by)),
    }
}

/// "White board, 1.2 × 1.2 m: left, from 1.6 m to 1.9 m".
pub fn answer(answer: &Answer, units: Units) -> String {
    let metres = |length: Metres| words::length(length, units);
    let piece = answer.piece.as_ref();
    let (side, to) = piece.map_or(("", Metres::default()), |piece| (piece.side.word(), piece.distance));
    let level = piece.map_or(Share::WHOLE, |piece| piece.level);
    let percent = |level: Share| format!("{} %", level.percent().round());
    match &answer.means {
        Means::Move { from } => format!("{}: {side}, from {} to {}", answer.name, metres(*from), metres(to)),
        Means::Dim { from } => {
            format!("{}: {side}, dim from {} to {}", answer.name, percent(*from), percent(level))
        }
        Means::Strike => format!("{}: take it away", answer.name),
        Means::Bring => format!("{}: {side}, {} from the face", answer.name, metres(to)),
        Means::Borrow { fill } => format!("Not from the kit: {} of fill from beside the lens", lux(*fill)),
        Means::TakeAway { by } => {
            format!("Not from the kit: black cloth or shade, {} off the shadow side", stops(*by))
        }
    }
}

/// "makes 4 : 1", "comes to 3 : 1 only".
pub fn comes_to(answer: &Answer) -> String {
    let made = answer.ratio.map_or_else(|| "1 : 1".to_owned(), ratio);
    if answer.reaches { format!("makes {made}") } else { format!("comes to {made} only") }
}

/// What stands against a camera.
pub fn trouble(trouble: Trouble) -> String {
    match trouble {
        Trouble::LensTooSlow(short) => format!("The slowest lens is {} short.", stops(short)),
        Trouble::ShutterFixed => "This shutter cannot be set: seek another setting.".to_owned(),
        Trouble::ShutterTooShort(short) => format!("Even an open shutter is {} short.", stops(short)),
        Trouble::NoLightToTake(short) => format!("No filter helps: the light is {} short.", stops(short)),
    }
}

/// "a stop every 5 min from 18:50", with the clock already in words.
pub fn fall(fall: Fall, clock: &str) -> String {
    format!("A stop every {:.0} min from {clock}.", fall.every.minutes())
}

/// "much more than from the side: about 4 stops over it, ± 1½": what haze makes of a shaft.
pub fn shaft(shaft: Shaft) -> String {
    let look = match shaft.look {
        Look::Less => "less than from the side",
        Look::Side => "as from the side",
        Look::More => "more than from the side",
        Look::MuchMore => "much more than from the side",
    };
    let over = Stops::from_stops(shaft.over_side.stops().round());
    let side = if over.stops() < 0.0 { "under" } else { "over" };
    match shaft.look {
        Look::Side => format!("{look}, within a stop"),
        _ => format!("{look}: about {} {side} it, ± 1½", stops(over)),
    }
}

/// How long a bar is, 0 to 1: nine stops under the brightest there is nothing left of it.
pub fn bar(level: Lux, brightest: Lux) -> f64 {
    /// Stops on a bar (our choice: what a picture holds).
    const STOPS: f64 = 9.0;
    let under = brightest.stops_over(level).stops();
    if under.is_finite() { (1.0 - under / STOPS).clamp(0.0, 1.0) } else { 0.0 }
}

/// "camera left", "camera right".
pub fn side(side: Side) -> String {
    capital(&format!("camera {}", side.word()))
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::light::daylight::Sky;
    use crate::plan::kit::Placed;
    use crate::plan::levels::fixture;
    use crate::sky::sun::Sun;
    use crate::units::Instant;

    fn levels(lens: f64, sky: Sky, at: &str) -> Levels {
        let subject = fixture::open(lens);
        Levels::of(&subject, &subject.hour(&Sun::new(subject.site), Instant::parse(at).unwrap(), sky))
    }

    #[test]
    fn a_sunny_side_and_a_shady_one() {
        let got = levels(330.0, Sky::Clear, "2026-06-21T15:00:00Z");
        assert!(headline(&got).ends_with("stops"), "{}", headline(&got));
        assert_eq!(
            (trust(got.trust, false).as_str(), trust(got.trust, true).as_str()),
            ("model ± ⅓", "metered ± ⅓")
        );
        assert!(modelling(&got).contains("in the sun"), "{}", modelling(&got));
        assert_eq!(main_source(got.bright()), "sun");
        let wished = Ratio::from_number(4.0 * got.ratio().unwrap().number()).unwrap();
        assert_eq!(need(&got, wished, None), "Take 2 stops off the fill side");
        assert!(need(&got, got.ratio().unwrap(), None).contains("as wanted"));
    }

    #[test]
    fn cloud_is_a_range_and_night_a_whole_stop() {
        let grey = levels(0.0, Sky::Overcast, "2026-06-21T15:00:00Z");
        assert!(level(grey.bright(), grey.trust).contains('–'));
        assert_eq!((headline(&grey).as_str(), ratio_of(&grey).as_str()), ("Even", "1 : 1"));
        let night = levels(0.0, Sky::Clear, "2026-06-21T21:30:00Z");
        assert_eq!(trust(night.trust, false), "nearest stop, ± 1: meter it");
    }

    #[test]
    fn answers_name_the_piece_and_where_it_goes() {
        let placed = Placed {
            gear: "b".to_owned(),
            side: Side::Left,
            distance: Metres::from_metres(1.9),
            level: Share::WHOLE,
        };
        let made = Ratio::from_number(4.0).ok();
        let moved = Answer {
            means: Means::Move { from: Metres::from_metres(1.6) },
            piece: Some(placed),
            name: "White board".to_owned(),
            placed: None,
            ratio: made,
            reaches: true,
        };
        assert_eq!(answer(&moved, Units::Metric), "White board: left, from 1.6 m to 1.9 m");
        assert_eq!(comes_to(&moved), "makes 4 : 1");
        let short = Answer { reaches: false, means: Means::Strike, ..moved };
        assert_eq!(comes_to(&short), "comes to 4 : 1 only");
    }

    #[test]
    fn bars_shrink_with_stops() {
        let lux = Lux::from_lux;
        assert_eq!(
            (bar(lux(512.0), lux(512.0)), bar(lux(1.0), lux(512.0)), bar(lux(0.0), lux(512.0))),
            (1.0, 0.0, 0.0)
        );
    }
}
