//! The run of the day, row by row.

use super::{Kind, Maker, Row, title};
use crate::project::shoot::day::{Move, Stop};
use crate::units::{Duration, Instant, Span};
use crate::words;

impl Maker<'_> {
    pub(super) fn rows(&self) -> Vec<Row> {
        let mut rows = vec![self.call()];
        for (n, stop) in self.run.stops.iter().enumerate() {
            let mut before: Vec<Row> = Vec::new();
            before.extend(self.run.moves.iter().find(|one| one.before == n).map(|one| self.moved(one, stop)));
            before.extend(self.run.meal.filter(|(_, at)| *at == n).map(|(span, _)| self.meal(span)));
            crate::order::by_key(&mut before, |row| row.span.0);
            rows.extend(before);
            rows.push(self.stop(stop));
        }
        let last = self.run.stops.last().map_or(self.run.wrap, |stop| stop.span.end());
        let wrap = format!("wrap out from {}", self.read.clock(last));
        rows.push(self.plain(Kind::Wrap, (self.run.wrap, self.run.wrap), "Wrap".to_owned(), wrap));
        rows
    }

    fn plain(&self, kind: Kind, span: (Instant, Instant), title: String, sub: String) -> Row {
        let clock = self.read.clock(span.0);
        Row { kind, span, clock, title, sub, bar: None, pinned: false, faults: Vec::new() }
    }

    fn call(&self) -> Row {
        let morning = &self.run.morning;
        let place = self.run.stops.first().and_then(|stop| self.project.location(&stop.location));
        let place = place.map(|location| location.name.clone()).unwrap_or_default();
        let haze = morning.haze.map(|at| format!(" · haze up {}", self.read.clock(at))).unwrap_or_default();
        let sub =
            format!("{place} · on the mark, pre-light from {}{haze}", self.read.clock(morning.pre_light));
        self.plain(Kind::Call, (morning.call, morning.call), "Call".to_owned(), sub)
    }

    fn moved(&self, one: &Move, to: &Stop) -> Row {
        let place =
            self.project.location(&to.location).map(|location| location.name.clone()).unwrap_or_default();
        let guess = if one.estimated { " (drive estimated)" } else { "" };
        let there = one.at + Duration::from_minutes(i64::from(one.minutes));
        let haze = self.project.shoot.place(&to.location).times.haze;
        let haze = match haze {
            0 => String::new(),
            _ => format!(", haze {haze} min"),
        };
        let sub =
            format!("to {place}{guess} · rig there from {}, {} min{haze}", self.read.clock(there), one.rig);
        self.plain(Kind::Move, (one.at, there), format!("Move, {} min", one.minutes), sub)
    }

    fn meal(&self, span: Span) -> Row {
        let sub = format!("{} · rule: {}", words::duration(span.duration()), self.project.shoot.meal.name);
        self.plain(Kind::Meal, (span.start(), span.end()), "Meal".to_owned(), sub)
    }

    fn stop(&self, stop: &Stop) -> Row {
        let found = self.project.set_up(&stop.set_up);
        let heading = found.map(|(scene, set_up)| title(&scene.heading(), set_up)).unwrap_or_default();
        let lit = self.lit.iter().find(|one| one.set_up == stop.set_up);
        let slot = lit.and_then(|one| one.slots.iter().find(|slot| slot.span.contains(stop.span.middle())));
        let light = slot.map(|slot| crate::plan::search::words::light(&slot.light));
        let holds = stop.light.map(|light| {
            let (hold, takes) = (words::duration(light.duration()), words::duration(stop.span.duration()));
            format!("holds {hold} until {}, needs {takes}", self.read.clock(light.end()))
        });
        let ready = format!("ready by {}", self.read.clock(stop.ready_by));
        let notes = found.map(|(_, set_up)| set_up.notes.clone()).filter(|notes| !notes.is_empty());
        let sub: Vec<String> = [light, holds, Some(ready), notes].into_iter().flatten().collect();
        let bar = stop.light.map(|light| percent(stop.span.duration(), light.duration()));
        Row {
            bar,
            pinned: stop.pinned,
            faults: self.faults(Some(&stop.set_up)),
            ..self.plain(
                Kind::SetUp(stop.set_up.clone()),
                (stop.span.start(), stop.span.end()),
                heading,
                sub.join(" · "),
            )
        }
    }
}

/// A share in whole percent.
fn percent(part: Duration, whole: Duration) -> u8 {
    (part.millis() * 100 / whole.millis().max(1)).clamp(0, 100) as u8
}
