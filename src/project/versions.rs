//! Versions: a ring of earlier states of a project, kept beside it, from which it can be brought back.
//!
//! One is laid aside at the first change of another day, and before anything that changes much at once: two versions
//! put together, one brought back, one sent. Of days that are over only the last one stays, and the oldest go when
//! there are too many. Where they lie is the work of `src/app`.

use crate::units::Instant;

/// Versions that always stay, whatever their day. Our own choice.
pub const LATEST: usize = 6;

/// Most versions of one project. Our own choice: two weeks of shooting days.
pub const MOST: usize = 14;

/// What every key of a version begins with.
const PREFIX: &str = "slantlight-version-";

/// Milliseconds of a day of UTC.
const DAY: i64 = 86_400_000;

/// Whether the state that was written at `before` is the last one of a day that is over.
pub fn ends_a_day(before: Instant, now: Instant) -> bool {
    day(before) != day(now)
}

/// Whether a version of some project lies under `key`.
pub fn is_version(key: &str) -> bool {
    key.starts_with(PREFIX)
}

/// Where the version of project `id` that was written at `written` lies.
pub fn key(id: &str, written: Instant) -> String {
    format!("{}{written}", keys_of(id))
}

/// What the keys of all versions of project `id` begin with. What follows is a time stamp without the sign between,
/// so that no other project's keys begin so.
pub fn keys_of(id: &str) -> String {
    format!("{PREFIX}{id}~")
}

/// When the version under `key` was written; `None` for a key that is not of project `id`.
pub fn written(key: &str, id: &str) -> Option<Instant> {
    Instant::parse(key.strip_prefix(&keys_of(id))?).ok()
}

/// Of the versions of one project, those that go.
///
/// ```
/// use slantlight::project::versions::superfluous;
/// use slantlight::units::Instant;
/// let hourly: Vec<Instant> = (0..30).map(|hour| Instant::from_unix_millis(hour * 3_600_000)).collect();
/// let gone = superfluous(&hourly);
/// // Six of the second day stay, and the last one of the first.
/// assert_eq!(hourly.len() - gone.len(), 7);
/// assert!(!gone.contains(&hourly[23]) && gone.contains(&hourly[22]));
/// ```
pub fn superfluous(versions: &[Instant]) -> Vec<Instant> {
    let mut newest_first = versions.to_vec();
    crate::order::by(&mut newest_first, |one, other| other.cmp(one));
    newest_first.dedup();
    let (mut gone, mut kept, mut last_day) = (Vec::new(), 0, None);
    for version in newest_first {
        let is_last_of_day = last_day != Some(day(version));
        last_day = Some(day(version));
        if kept < LATEST || (is_last_of_day && kept < MOST) {
            kept += 1;
        } else {
            gone.push(version);
        }
    }
    gone
}

fn day(instant: Instant) -> i64 {
    instant.unix_millis().div_euclid(DAY)
}

#[cfg(test)]
mod tests {
    use super::*;
    use proptest::prelude::*;

    fn at(text: &str) -> Instant {
        Instant::parse(text).unwrap()
    }

    #[test]
    fn a_day_ends_at_midnight() {
        let evening = at("2027-03-11T23:59:59Z");
        assert!(ends_a_day(evening, at("2027-03-12T00:00:00Z")));
        assert!(!ends_a_day(at("2027-03-11T00:00:00Z"), evening));
        assert!(ends_a_day(evening, at("2027-03-10T23:00:00Z")), "a clock that was put back is another day");
    }

    #[test]
    fn keys_lead_back() {
        let when = at("2027-03-11T17:38:00Z");
        let key = key("salt~and", when);
        assert_eq!(written(&key, "salt~and"), Some(when));
        assert_eq!(written(&key, "salt"), None);
        assert_eq!(written("slantlight-project-salt", "salt"), None);
    }

    proptest! {
        #[test]
        fn the_ring_is_small_and_keeps_the_newest(days in prop::collection::vec((0i64..40, 0i64..24), 0..80)) {
            let all: Vec<_> = days.iter().map(|(d, h)| Instant::from_unix_millis(d * DAY + h * 3_600_000)).collect();
            let gone = superfluous(&all);
            let mut kept: Vec<_> = all.iter().copied().filter(|one| !gone.contains(one)).collect();
            kept.sort_unstable();
            kept.dedup();
            prop_assert!(kept.len() <= MOST);
            if let Some(newest) = all.iter().max() {
                prop_assert!(kept.contains(newest));
            }
            let mut of_days: Vec<_> = all.iter().map(|one| day(*one)).collect();
            of_days.sort_unstable();
            of_days.dedup();
            // The last one of each of the newest days is there, as long as there is room.
            for wanted in of_days.iter().rev().take(MOST - LATEST) {
                let last = all.iter().filter(|one| day(**one) == *wanted).max().unwrap();
                prop_assert!(kept.contains(last));
            }
            prop_assert!(superfluous(&kept).is_empty(), "what was tidied stays");
        }
    }
}
