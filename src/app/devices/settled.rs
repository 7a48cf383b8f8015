//! Work that waits until nothing has moved for a moment, so that a drag stays smooth.

use std::time::Duration as Pause;

use leptos::prelude::*;

/// How long nothing must move. Our own choice: longer than between two moves of a hand.
const STILL: Pause = Pause::from_millis(250);

/// What `work` says once nothing that `follow` reads has changed for a moment; `first` before the first time.
pub fn settled(
    first: String,
    follow: impl Fn() + 'static,
    work: impl Fn() -> String + Copy + 'static,
) -> RwSignal<String> {
    let said = RwSignal::new(first);
    let moves = StoredValue::new(Moves::default());
    Effect::new(move |_| {
        follow();
        moves.update_value(|moves| moves.count += 1);
        wait(said, moves, work);
    });
    on_cleanup(move || {
        if let Some(timer) = moves.try_update_value(|moves| moves.timer.take()).flatten() {
            timer.clear();
        }
    });
    said
}

/// How often something has moved, and the timer that looks whether it still does.
#[derive(Clone, Copy, Default)]
struct Moves {
    count: usize,
    timer: Option<TimeoutHandle>,
}

/// Looks after a moment whether something has moved since, and waits again if so: one timer a moment costs less than a
/// new one with each move.
fn wait(said: RwSignal<String>, moves: StoredValue<Moves>, work: impl Fn() -> String + Copy + 'static) {
    let Moves { count, timer: None } = moves.get_value() else { return };
    let look = move || {
        // A page may be left before its time has come: then nothing it would read is there any more.
        let Some(now) = moves.try_update_value(|moves| {
            moves.timer = None;
            moves.count
        }) else {
            return;
        };
        if now == count { said.set(untrack(work)) } else { wait(said, moves, work) }
    };
    let timer = set_timeout_with_handle(look, STILL).ok();
    moves.update_value(|moves| moves.timer = timer);
}
