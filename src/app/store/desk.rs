//! The desk: the project that is open, its history, and its way to the shelves. The only writer of a project.
//!
//! An edit holds at once; screens and shelves hear of it soon after (`waiting`).

mod other_tabs;
mod waiting;

use std::sync::Arc;

use leptos::prelude::*;
use slantlight::project::document::Project;
use slantlight::project::edit::{self, Edit};
use slantlight::project::filed::Filed;
use slantlight::project::history::History;

use super::cabinet::{self, Found};
use super::keeper::Keeper;
use crate::app::devices::visibility;
use crate::app::devices::writer::{self, News};
use crate::app::parts::Notes;
use crate::app::second::Second;

/// What undo and redo would do, in words.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub struct Steps {
    /// "remove the room".
    pub undo: Option<&'static str>,
    /// The same for redo.
    pub redo: Option<&'static str>,
}

/// A step back or forth through the history: what it was, and the root it leads to.
type Take = fn(&mut History, Arc<Project>) -> Option<(&'static str, Arc<Project>)>;

/// Why an edit was not made.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum NotMade {
    /// Another tab writes.
    OtherTab,
    /// A newer build has written this project.
    Newer,
    /// What it is about is not there any more.
    Gone,
}

/// The open project.
#[derive(Clone, Copy)]
pub struct Desk {
    /// The project as the screens show it.
    shown: RwSignal<Arc<Project>>,
    /// The same for what is dragged itself: ahead of all the rest while the hand moves.
    live: RwSignal<Arc<Project>>,
    /// The project with the last edit in it, at most a frame ahead of what is live.
    latest: StoredValue<Arc<Project>>,
    /// The state before the one this tab wrote last: what another tab may still know.
    previous: StoredValue<Option<Arc<Project>>>,
    history: StoredValue<History>,
    /// What undo and redo would do.
    pub steps: RwSignal<Steps>,
    /// All projects of this browser, the open one as it was kept last.
    pub filed: RwSignal<Vec<Filed>>,
    /// Whether this tab may write.
    pub may_write: RwSignal<bool>,
    /// Ids of projects that a newer build has written: shown here, never written.
    pub newer: RwSignal<Vec<String>>,
    /// Writes to the shelves.
    pub keeper: Keeper,
    waiting: StoredValue<waiting::Waiting>,
    last_drag: StoredValue<u32>,
    news: StoredValue<Option<News>, LocalStorage>,
    notes: Notes,
    second: Second,
}

impl Desk {
    /// Lays `project` on the desk. `found` is all that this browser keeps.
    pub fn new(project: Arc<Project>, found: Found, notes: Notes) -> Self {
        let desk = Self {
            shown: RwSignal::new(project.clone()),
            live: RwSignal::new(project.clone()),
            latest: StoredValue::new(project),
            previous: StoredValue::new(None),
            history: StoredValue::new(History::default()),
            steps: RwSignal::new(Steps::default()),
            filed: RwSignal::new(found.filed),
            may_write: writer::claim(),
            newer: RwSignal::new(found.newer),
            keeper: Keeper::new(found.durable),
            waiting: StoredValue::new(waiting::Waiting::default()),
            last_drag: StoredValue::new(0),
            news: StoredValue::new_local(None),
            notes,
            second: Second::here(),
        };
        desk.news.set_value(Some(News::listen(move |record| desk.hear(record))));
        visibility::on_leaving(move || desk.flush());
        desk
    }

    /// The project; tracked.
    pub fn project(self) -> Arc<Project> {
        self.shown.get()
    }

    /// The project with the last edit in it; not tracked.
    pub fn latest(self) -> Arc<Project> {
        self.latest.get_value()
    }

    /// What `read` finds in the project; tracked.
    pub fn with<T>(self, read: impl FnOnce(&Project) -> T) -> T {
        self.shown.with(|project| read(project))
    }

    /// The same for what is dragged itself: it hears of each frame. Tracked.
    pub fn with_live<T>(self, read: impl FnOnce(&Project) -> T) -> T {
        self.live.with(|project| read(project))
    }

    /// Makes an edit: one step of undo.
    ///
    /// # Errors
    /// Another tab writes, or what the edit is about is gone.
    pub fn edit(self, edit: Edit) -> Result<(), NotMade> {
        self.make(edit, None)
    }

    /// A number for the edits of one drag, from pointer down to up.
    pub fn new_drag(self) -> u32 {
        self.last_drag.update_value(|last| *last = last.wrapping_add(1));
        self.last_drag.get_value()
    }

    /// Makes one of the edits of a drag; all of them are one step of undo.
    ///
    /// # Errors
    /// Another tab writes, or what the edit is about is gone.
    pub fn edit_in_drag(self, edit: Edit, drag: u32) -> Result<(), NotMade> {
        self.make(edit, Some(drag))
    }

    /// Takes back the last step; says what it was.
    pub fn undo(self) -> Option<&'static str> {
        self.step(History::undo)
    }

    /// Makes the step again that was taken back last; says what it was.
    pub fn redo(self) -> Option<&'static str> {
        self.step(History::redo)
    }

    /// Whether the project was ever kept; an empty one that nobody has changed was not. Tracked.
    pub fn is_filed(self) -> bool {
        let project = self.shown.get();
        self.filed.with(|filed| filed.iter().any(|one| one.project.id == project.id))
    }

    /// The project with this id as it is here now; nothing for one that was never kept.
    pub fn kept_as(self, id: &str) -> Option<Arc<Project>> {
        let latest = self.latest();
        let kept = self.filed_as(id)?;
        Some(if latest.id == id { latest } else { kept.project })
    }

    /// Whether a project with this id is kept, by this build or a newer one.
    pub fn is_known(self, id: &str) -> bool {
        self.filed_as(id).is_some() || self.newer.with_untracked(|newer| newer.iter().any(|one| one == id))
    }

    /// Lays another project on the desk; what was there is flushed first.
    pub fn lay(self, project: Arc<Project>) {
        self.flush();
        cabinet::remember_open(&project.id);
        self.clear_history();
        self.latest.set_value(project);
        self.settle();
    }

    /// Lays a project on the desk and keeps it: a new one, an imported one, a copy.
    pub fn lay_and_keep(self, project: Arc<Project>) {
        self.lay(project.clone());
        self.put(project);
        self.flush();
    }

    /// Takes a project out of the cabinet. What to do with the desk, if it lies there, is the caller's to say.
    pub fn discard(self, id: &str) {
        self.filed.update(|filed| filed.retain(|one| one.project.id != id));
        self.keeper.forget(id.to_owned());
    }

    /// Puts a whole other state in place of the open project: one step of undo. The state that was is laid aside as well.
    ///
    /// # Errors
    /// This tab may not write the project.
    pub fn replace(self, project: Arc<Project>, label: &'static str) -> Result<(), NotMade> {
        self.may_change()?;
        self.lay_aside();
        let before = self.latest();
        self.history.update_value(|history| history.keep(label, before, None));
        self.put(project);
        Ok(())
    }

    /// Lays the present state of the open project aside, as a version it can be brought back to.
    pub fn lay_aside(self) {
        self.flush();
        if let Some(filed) = self.filed_as(&self.latest().id) {
            self.keeper.lay_aside(filed);
        }
    }

    /// Puts a project into the list in place of an older state of it.
    fn file(self, new: Filed) {
        self.filed.update(|filed| match filed.iter_mut().find(|one| one.project.id == new.project.id) {
            Some(old) => *old = new,
            None => filed.push(new),
        });
    }

    /// The project as it was kept last; `None` for one that never was.
    fn filed_as(self, id: &str) -> Option<Filed> {
        self.filed.with_untracked(|filed| filed.iter().find(|one| one.project.id == id).cloned())
    }

    /// Whether this tab may write the open project.
    fn may_change(self) -> Result<(), NotMade> {
        if !self.may_write.get_untracked() {
            return Err(NotMade::OtherTab);
        }
        let id = &self.latest().id;
        if self.newer.with_untracked(|newer| newer.contains(id)) { Err(NotMade::Newer) } else { Ok(()) }
    }

    fn clear_history(self) {
        self.history.set_value(History::default());
        self.show_steps();
    }

    fn show_steps(self) {
        let steps = self
            .history
            .with_value(|history| Steps { undo: history.undo_label(), redo: history.redo_label() });
        if self.steps.get_untracked() != steps {
            self.steps.set(steps);
        }
    }

    /// The edit's new root; the old one goes into the history.
    fn make(self, edit: Edit, drag: Option<u32>) -> Result<(), NotMade> {
        self.may_change()?;
        let (before, label) = (self.latest(), edit.label());
        let after = edit::apply(&before, edit).map_err(|_| NotMade::Gone)?;
        self.history.update_value(|history| history.keep(label, before, drag));
        self.put_in(Arc::new(after), drag.is_none());
        Ok(())
    }

    /// A step back or forth.
    fn step(self, take: Take) -> Option<&'static str> {
        self.may_change().ok()?;
        let now = self.latest();
        let (label, root) = self.history.try_update_value(|history| take(history, now)).flatten()?;
        self.put(root);
        Some(label)
    }
}
