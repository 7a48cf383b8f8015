//! When to ring: so long before a slot begins, and before it ends.

use super::ahead::Ahead;
use crate::units::{Duration, Instant};

/// What an alarm is about.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Alarm {
    /// A slot begins then.
    Begins(Instant),
    /// A slot ends then.
    Ends(Instant),
}

impl Alarm {
    /// When it happens.
    pub const fn at(self) -> Instant {
        match self {
            Self::Begins(at) | Self::Ends(at) => at,
        }
    }
}

/// The alarm that became due since `before`. After a sleep it rings late, unless what it is about has passed; a clock
/// that was put back rings nothing.
pub fn due(ahead: &Ahead, lead: Duration, (before, now): (Instant, Instant)) -> Option<Alarm> {
    let rings = |alarm: &Alarm| {
        let at = alarm.at() - lead;
        before < at && at <= now && now < alarm.at()
    };
    edges(ahead).filter(rings).min_by_key(|alarm| alarm.at())
}

/// When the next alarm after `now` is due.
pub fn next(ahead: &Ahead, lead: Duration, now: Instant) -> Option<Instant> {
    edges(ahead).map(|alarm| alarm.at() - lead).filter(|at| *at > now).min()
}

fn edges(ahead: &Ahead) -> impl Iterator<Item = Alarm> {
    ahead.slots().flat_map(|(slot, _)| [Alarm::Begins(slot.span.start()), Alarm::Ends(slot.span.end())])
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::plan::fixture::{loft, on};
    use crate::sky::sun::Sun;

    #[test]
    fn it_rings_once_before_the_begin_and_once_before_the_end() {
        let stage = loft();
        let ahead =
            Ahead::of(&Sun::new(stage.site), Some(&stage), (&stage.zone, &stage.skyline), on(2027, 3, 11));
        let slot = ahead.slots().next().unwrap().0.span;
        let (lead, second) = (Duration::from_minutes(5), Duration::from_millis(1000));
        let mut rung = Vec::new();
        let mut now = slot.start() - Duration::from_minutes(10);
        let first = slot.start() - lead;
        assert_eq!(next(&ahead, lead, now), Some(first));
        assert!(next(&ahead, lead, first).is_some_and(|at| at > first));
        while now < slot.end() + second {
            rung.extend(due(&ahead, lead, (now, now + second)));
            now = now + second;
        }
        assert_eq!(rung, [Alarm::Begins(slot.start()), Alarm::Ends(slot.end())]);
    }

    #[test]
    fn a_sleep_rings_late_but_not_too_late() {
        let stage = loft();
        let ahead =
            Ahead::of(&Sun::new(stage.site), Some(&stage), (&stage.zone, &stage.skyline), on(2027, 3, 11));
        let slot = ahead.slots().next().unwrap().0.span;
        let (lead, minute) = (Duration::from_minutes(5), Duration::from_minutes(1));
        let asleep = slot.start() - Duration::from_minutes(60);
        let woken = |to| due(&ahead, lead, (asleep, to));
        assert_eq!(woken(slot.start() - minute), Some(Alarm::Begins(slot.start())));
        assert_eq!(woken(slot.start() + minute), None, "it has begun: the countdown says so");
        let put_back = due(&ahead, lead, (slot.start(), slot.start() - minute));
        assert_eq!(put_back, None);
    }
}
