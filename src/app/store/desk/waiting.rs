//! What waits on the desk to be heard of.
//!
//! Screens and shelves hear of an edit with the next animation frame. While something is dragged only that itself does:
//! the rest of the screen hears of it ten times a second, since numbers that change faster cannot be read, and the shelves
//! once a second. Both hear of it at once when it is let go. A page that is left flushes.
//!
//! Writing takes the app's second part. In the seconds of a first visit before that has come, nothing is called saved.

use std::sync::Arc;
use std::time::Duration as Pause;

use leptos::prelude::*;
use slantlight::project::document::Project;
use slantlight::project::filed::Filed;
use slantlight::project::versions;

use super::Desk;
use crate::app::devices::clock;

/// Between two looks of the rest of the screen while something is dragged. Our own choice.
const CALM: Pause = Pause::from_millis(100);

/// Between two records while something is dragged. Our own choice.
const DRAG_PAUSE: Pause = Pause::from_secs(1);

/// What waits to be heard of.
#[derive(Clone, Copy, Debug, Default)]
pub(super) struct Waiting {
    /// What is dragged, and with it the screens.
    screens: bool,
    /// What calls the rest of the screen while something is dragged.
    calm: Option<TimeoutHandle>,
    /// The shelves.
    shelves: bool,
    /// Whether the shelves are to hear with the next frame.
    at_once: bool,
    /// What calls them otherwise.
    timer: Option<TimeoutHandle>,
}

impl Desk {
    /// Shows and keeps what is waiting, now.
    pub fn flush(self) {
        self.show();
        self.settle();
        self.keep();
    }

    /// What is dragged hears of what is waiting.
    fn show(self) {
        if self.take_waiting(|waiting| &mut waiting.screens) {
            self.live.set(self.latest());
            self.show_steps();
        }
    }

    /// All of the screen shows the project with the last edit in it.
    pub(super) fn settle(self) {
        if let Some(timer) = self.waiting.try_update_value(|waiting| waiting.calm.take()).flatten() {
            timer.clear();
        }
        let latest = self.latest();
        for heard in [self.live, self.shown] {
            if !heard.with_untracked(|heard| Arc::ptr_eq(heard, &latest)) {
                heard.set(latest.clone());
            }
        }
    }

    /// The shelves hear of what is waiting.
    fn keep(self) {
        if !self.take_waiting(|waiting| &mut waiting.shelves) {
            return;
        }
        self.take_waiting(|waiting| &mut waiting.at_once);
        if let Some(timer) = self.waiting.try_update_value(|waiting| waiting.timer.take()).flatten() {
            timer.clear();
        }
        let project = self.latest();
        let before = self.filed_as(&project.id);
        self.previous.set_value(before.as_ref().map(|before| before.project.clone()));
        let revision = before.as_ref().map_or(0, |before| before.revision) + 1;
        let filed = Filed { revision, written: clock::now(), project };
        if let Some(before) = before
            && versions::ends_a_day(before.written, filed.written)
        {
            self.keeper.lay_aside(before);
        }
        self.file(filed.clone());
        self.keeper.await_newer();
        self.second.later(move |table| (table.write)(self, filed));
    }

    /// Writes a project to the shelves, and tells the other tabs. In the second part.
    pub fn write_at_once(self, filed: Filed) {
        let record = filed.seal();
        self.news.with_value(|news| {
            if let Some(news) = news {
                news.tell(&record);
            }
        });
        self.keeper.keep(&filed.project.id, record);
    }

    /// The new root waits for the next frame, or for the page to be left.
    pub(super) fn put(self, root: Arc<Project>) {
        self.put_in(root, true);
    }

    /// The same; the shelves hear of it with that frame, or after a pause.
    pub(super) fn put_in(self, root: Arc<Project>, at_once: bool) {
        self.latest.set_value(root);
        let was_waiting = self.waiting.try_update_value(|waiting| {
            waiting.shelves = true;
            waiting.at_once |= at_once;
            core::mem::replace(&mut waiting.screens, true)
        });
        if was_waiting == Some(false) {
            request_animation_frame(move || self.frame());
        }
    }

    /// What was dragged is let go: the shelves hear of it with the next frame.
    pub fn end_drag(self) {
        let is_waiting = self.waiting.try_update_value(|waiting| {
            waiting.at_once |= waiting.shelves;
            waiting.at_once
        });
        if is_waiting == Some(true) {
            request_animation_frame(move || self.frame());
        }
    }

    fn frame(self) {
        self.show();
        let waiting = self.waiting.get_value();
        if waiting.at_once {
            self.settle();
            self.keep();
            return;
        }
        if waiting.calm.is_none() {
            match set_timeout_with_handle(move || self.settle(), CALM) {
                Ok(timer) => self.waiting.update_value(|waiting| waiting.calm = Some(timer)),
                Err(_) => self.settle(),
            }
        }
        if waiting.shelves && waiting.timer.is_none() {
            match set_timeout_with_handle(move || self.keep(), DRAG_PAUSE) {
                Ok(timer) => {
                    self.keeper.await_newer();
                    self.waiting.update_value(|waiting| waiting.timer = Some(timer));
                }
                Err(_) => self.keep(),
            }
        }
    }

    /// Whether this was waiting; it is not any more.
    fn take_waiting(self, part: fn(&mut Waiting) -> &mut bool) -> bool {
        self.waiting.try_update_value(|waiting| core::mem::take(part(waiting))).unwrap_or_default()
    }
}
