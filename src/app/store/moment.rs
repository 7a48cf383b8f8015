//! The moment: the one instant that all five rooms show. It is now, and ticks, until a slot or a time is chosen.

use leptos::prelude::*;
use slantlight::units::Instant;

use crate::app::devices::clock::{self, Clock};

/// Milliseconds in a minute.
const MINUTE: i64 = 60_000;

/// The instant that all rooms show.
#[derive(Clone, Copy)]
pub struct Moment {
    /// What the phone's clock says: told each minute, and when somebody has asked for it.
    pub clock: ReadSignal<Instant>,
    ticks: Clock,
    /// The instant that was chosen; `None` for now.
    chosen: RwSignal<Option<Instant>>,
    /// The instant shown, to the minute: what most of a page needs.
    minute: Memo<Instant>,
    /// What the phone's clock says, to the hour.
    hour: Memo<Instant>,
}

impl Moment {
    /// Now, and ticking.
    pub fn ticking() -> Self {
        let (ticks, chosen) = (Clock::ticking(), RwSignal::new(None));
        let clock = ticks.time;
        let minute = Memo::new(move |_| floor(chosen.get().unwrap_or_else(|| clock.get()), MINUTE));
        let hour = Memo::new(move |_| floor(clock.get(), 60 * MINUTE));
        Self { clock, ticks, chosen, minute, hour }
    }

    /// The instant shown, to the minute; tracked.
    pub fn to_the_minute(self) -> Instant {
        self.minute.get()
    }

    /// The instant shown, as exact as it was told: for countdowns alone, which ask to be woken. Tracked.
    pub fn as_told(self) -> Instant {
        self.chosen.get().unwrap_or_else(|| self.clock.get())
    }

    /// The instant shown, to the millisecond: for what is written down in a tap.
    pub fn of_the_tap(self) -> Instant {
        self.chosen.get_untracked().unwrap_or_else(clock::now)
    }

    /// Asks for the clock to be told as soon as it is later than `at`; holds until it is told the next time.
    pub fn wake_after(self, at: Instant) {
        self.ticks.wake_after(at);
    }

    /// What the phone's clock says, to the hour: for what changes with the date. Tracked.
    pub fn today(self) -> Instant {
        self.hour.get()
    }

    /// Whether the instant shown is now; tracked.
    pub fn is_now(self) -> bool {
        self.chosen.get().is_none()
    }

    /// Every room stands at `instant` from here on.
    pub fn stand_at(self, instant: Instant) {
        self.chosen.set(Some(instant));
    }

    /// Back to now.
    pub fn back_to_now(self) {
        self.chosen.set(None);
    }
}

/// `instant`, back to a whole multiple of so many milliseconds.
fn floor(instant: Instant, step: i64) -> Instant {
    let millis = instant.unix_millis();
    Instant::from_unix_millis(millis - millis.rem_euclid(step))
}
