//! Work that takes longer than a frame, in slices between the frames.

use core::time::Duration as Wait;

use leptos::prelude::*;
use slantlight::units::Duration;

use super::clock;

/// The longest slice: a page that answers within a frame. Our own choice.
const SLICE: Duration = Duration::from_millis(8);

/// Work in slices, one at a time; it ends with the page that began it.
#[derive(Clone, Copy)]
pub struct Slices {
    /// Counts what was begun and stopped, so that a former one is known by its number.
    turn: StoredValue<u32>,
}

impl Slices {
    /// Nothing runs.
    pub fn idle() -> Self {
        Self { turn: StoredValue::new(0) }
    }

    /// What runs does not go on.
    pub fn stop(self) {
        self.turn.update_value(|turn| *turn = turn.wrapping_add(1));
    }

    /// Does `step` of `work` again and again until it says that all is done; what ran before does not go on. `show` is
    /// called at the end of each slice, with whether that was the last. The first slice runs at once.
    pub fn run<W: 'static>(
        self,
        work: W,
        step: impl Fn(&mut W) -> bool + 'static,
        show: impl Fn(&W, bool) + 'static,
    ) {
        self.stop();
        self.slice(self.turn.get_value(), work, step, show);
    }

    fn slice<W: 'static>(
        self,
        turn: u32,
        mut work: W,
        step: impl Fn(&mut W) -> bool + 'static,
        show: impl Fn(&W, bool) + 'static,
    ) {
        // A page that was left takes its numbers along.
        if self.turn.try_get_value() != Some(turn) {
            return;
        }
        let begun = clock::now();
        let mut is_done = step(&mut work);
        while !is_done && clock::now() - begun <= SLICE {
            is_done = step(&mut work);
        }
        show(&work, is_done);
        if !is_done {
            set_timeout(move || self.slice(turn, work, step, show), Wait::ZERO);
        }
    }
}
