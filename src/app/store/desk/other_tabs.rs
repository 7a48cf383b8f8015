//! The desk among other tabs: who may write, what another one has written, and what is done when two did.

use std::sync::Arc;

use leptos::prelude::*;
use slantlight::project::filed::{Filed, Unread};
use slantlight::project::merge::{agreed, followed};

use super::Desk;
use crate::app::devices::writer;
use crate::app::store::shelf::Quick;

impl Desk {
    /// Whether a newer build has written the open project, so that this one only shows it. Tracked.
    pub fn is_newer(self) -> bool {
        let id = &self.shown.get().id;
        self.newer.with(|newer| newer.contains(id))
    }

    /// Takes the pen from the tab that has it, with all that tab has written.
    pub fn take_over(self) {
        // Without what that tab has written this one must not write.
        self.second.ask(move |table| {
            if let Some(record) = Quick.read_now(&self.latest().id) {
                (table.hear)(self, &record);
            }
            writer::take_over(self.may_write);
        });
    }

    /// What another tab has kept, as soon as it can be read.
    pub(super) fn hear(self, record: String) {
        self.second.ask(move |table| (table.hear)(self, &record));
    }

    /// What another tab has kept: it shows here too. A tab that may write as well puts the two together.
    pub fn hear_at_once(self, record: &str) {
        let filed = match Filed::read(record) {
            Ok(filed) => filed,
            Err(Unread::Newer(id)) => return self.newer.update(|newer| newer.push(id)),
            Err(Unread::Damaged) => return,
        };
        let known = self.filed_as(&filed.project.id);
        if known.as_ref().is_some_and(|known| known.revision > filed.revision) {
            return;
        }
        let is_open = filed.project.id == self.latest().id;
        self.file(filed.clone());
        match (is_open, self.may_write.get_untracked()) {
            (false, _) => {}
            (true, false) => {
                self.clear_history();
                self.latest.set_value(filed.project);
                self.settle();
            }
            (true, true) => self.put_together(filed, known),
        }
    }

    /// Two tabs have written. One that has built on what this one wrote is followed, with what was not written yet;
    /// where neither knew of the other, both come to the same.
    fn put_together(self, heard: Filed, known: Option<Filed>) {
        let latest = self.latest();
        let joined = match known {
            Some(known) if known.revision < heard.revision => {
                followed(&latest, &heard.project, Some(&known.project))
            }
            _ => agreed(&latest, &heard.project, self.previous.get_value().as_deref()),
        };
        let Ok(joined) = joined else { return };
        if joined != *latest {
            self.keeper.lay_aside(heard.clone());
            self.history.update_value(|history| history.keep("take in another tab's changes", latest, None));
            self.notes.say("Another tab has changed this project as well. Both were put together; see Projects for earlier versions.");
        }
        if joined == *heard.project {
            self.latest.set_value(heard.project);
            self.settle();
            self.show_steps();
        } else {
            self.put(Arc::new(joined));
        }
    }
}
