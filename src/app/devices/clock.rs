//! The phone's clock: now, told each minute while the page is seen, and between the minutes when somebody asks for it.
//!
//! A look at the clock each second costs next to nothing, and notices a sleep or a clock that was set; what costs is telling
//! all who listen. So they are told when another minute has begun, when the time runs not on but elsewhere, and at the
//! instants for which somebody has asked to be woken.

use leptos::prelude::*;
use slantlight::units::Instant;

use super::visibility;

/// From one look at the clock to the next.
const LOOK: core::time::Duration = core::time::Duration::from_secs(1);

/// Told at least so often.
const MINUTE: i64 = 60_000;

/// What the phone's clock says.
pub fn now() -> Instant {
    Instant::from_unix_millis(js_sys::Date::now() as i64)
}

/// The time as it is told, and the way to ask for more of it.
#[derive(Clone, Copy)]
pub struct Clock {
    /// When it was told last.
    pub time: ReadSignal<Instant>,
    tell: WriteSignal<Instant>,
    /// The next instant for which somebody has asked; told once.
    wanted: StoredValue<Option<Instant>>,
}

impl Clock {
    /// Now, and ticking while the page is seen; told at once when it is seen again.
    pub fn ticking() -> Self {
        let (time, tell) = signal(now());
        let clock = Self { time, tell, wanted: StoredValue::new(None) };
        // One interval for as long as the page is seen: a timer made anew each second costs more than the look itself, and
        // so does asking each time whether the page is seen.
        let looks = StoredValue::new(None::<IntervalHandle>);
        let watch = move |seen: bool| {
            if let Some(handle) = looks.try_update_value(Option::take).flatten() {
                handle.clear();
            }
            if seen {
                looks.set_value(set_interval_with_handle(move || clock.look(false), LOOK).ok());
            }
        };
        watch(visibility::is_seen());
        visibility::on_change(move |seen| {
            watch(seen);
            if seen {
                clock.look(true);
            }
        });
        clock
    }

    /// Asks to be told the time as soon as it is later than `at`. Ask again each time it is told.
    pub fn wake_after(self, at: Instant) {
        self.wanted.update_value(|wanted| *wanted = Some(wanted.map_or(at, |other| other.min(at))));
    }

    /// Looks, and tells if there is something to tell.
    fn look(self, anew: bool) {
        let time = now();
        if anew || self.is_news(time) {
            self.wanted.set_value(None);
            self.tell.set(time);
        }
    }

    fn is_news(self, time: Instant) -> bool {
        let last = self.time.get_untracked();
        let is_wanted = self.wanted.get_value().is_some_and(|at| time > at);
        let minute = |time: Instant| time.unix_millis().div_euclid(MINUTE);
        is_wanted || minute(time) != minute(last) || time < last
    }
}
