//! The desk: the project that is open, its history, and its way to the shelves. The only writer of a project.
//!
//! An edit holds at once; screens and shelves hear of it once per animation frame, or when the page is left.

use std::sync::Arc;

use leptos::prelude::*;
use slantlight::project::document::Project;
use slantlight::project::edit::{self, Edit};
use slantlight::project::filed::Filed;
use slantlight::project::history::History;

use super::cabinet;
use super::keeper::Keeper;
use crate::app::devices::writer::News;
use crate::app::devices::{clock, visibility};

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
    /// What it is about is not there any more.
    Gone,
}

/// The open project.
#[derive(Clone, Copy)]
pub struct Desk {
    /// The project as the screens show it.
    shown: RwSignal<Arc<Project>>,
    /// The project with the last edit in it, at most a frame ahead of what is shown.
    latest: StoredValue<Arc<Project>>,
    history: StoredValue<History>,
    /// What undo and redo would do.
    pub steps: RwSignal<Steps>,
    /// All projects of this browser, the open one as it was kept last.
    pub filed: RwSignal<Vec<Filed>>,
    /// Whether this tab may write.
    pub may_write: RwSignal<bool>,
    /// Writes to the shelves.
    pub keeper: Keeper,
    is_waiting: StoredValue<bool>,
    last_drag: StoredValue<u32>,
    news: StoredValue<Option<News>, LocalStorage>,
}

impl Desk {
    /// Lays `project` on the desk. `filed` are all projects of this browser.
    pub fn new(project: Arc<Project>, filed: Vec<Filed>, keeper: Keeper, may_write: RwSignal<bool>) -> Self {
        let desk = Self {
            shown: RwSignal::new(project.clone()),
            latest: StoredValue::new(project),
            history: StoredValue::new(History::default()),
            steps: RwSignal::new(Steps::default()),
            filed: RwSignal::new(filed),
            may_write,
            keeper,
            is_waiting: StoredValue::new(false),
            last_drag: StoredValue::new(0),
            news: StoredValue::new_local(None),
        };
        desk.news.set_value(Some(News::listen(move |record| desk.hear(&record))));
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

    /// Lays another project on the desk; what was there is flushed first.
    pub fn lay(self, project: Arc<Project>) {
        self.flush();
        cabinet::remember_open(&project.id);
        self.clear_history();
        self.latest.set_value(project.clone());
        self.shown.set(project);
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

    /// Shows and keeps what is waiting, now.
    pub fn flush(self) {
        if !self.is_waiting.get_value() {
            return;
        }
        self.is_waiting.set_value(false);
        let project = self.latest();
        self.shown.set(project.clone());
        self.show_steps();
        let filed = Filed { revision: self.revision(&project.id) + 1, written: clock::now(), project };
        let record = filed.seal();
        self.news.with_value(|news| {
            if let Some(news) = news {
                news.tell(&record);
            }
        });
        self.keeper.keep(&filed.project.id, record);
        self.file(filed);
    }

    /// What another tab has kept: it shows here too, unless this tab writes.
    fn hear(self, record: &str) {
        let Some(filed) = Filed::read(record) else { return };
        if filed.project.id == self.latest().id && !self.may_write.get_untracked() {
            self.clear_history();
            self.latest.set_value(filed.project.clone());
            self.shown.set(filed.project.clone());
        }
        self.file(filed);
    }

    /// Puts a project into the list in place of an older state of it.
    fn file(self, new: Filed) {
        self.filed.update(|filed| match filed.iter_mut().find(|one| one.project.id == new.project.id) {
            Some(old) => *old = new,
            None => filed.push(new),
        });
    }

    /// How often the project was written; 0 for one that never was.
    fn revision(self, id: &str) -> u64 {
        self.filed.with_untracked(|filed| {
            filed.iter().find(|one| one.project.id == id).map_or(0, |one| one.revision)
        })
    }

    fn clear_history(self) {
        self.history.set_value(History::default());
        self.show_steps();
    }

    fn show_steps(self) {
        let steps = self
            .history
            .with_value(|history| Steps { undo: history.undo_label(), redo: history.redo_label() });
        self.steps.set(steps);
    }

    /// The edit's new root; the old one goes into the history.
    fn make(self, edit: Edit, drag: Option<u32>) -> Result<(), NotMade> {
        if !self.may_write.get_untracked() {
            return Err(NotMade::OtherTab);
        }
        let (before, label) = (self.latest(), edit.label());
        let after = edit::apply(&before, edit).map_err(|_| NotMade::Gone)?;
        self.history.update_value(|history| history.keep(label, before, drag));
        self.put(Arc::new(after));
        Ok(())
    }

    /// A step back or forth.
    fn step(self, take: Take) -> Option<&'static str> {
        if !self.may_write.get_untracked() {
            return None;
        }
        let now = self.latest();
        let (label, root) = self.history.try_update_value(|history| take(history, now)).flatten()?;
        self.put(root);
        Some(label)
    }

    /// The new root waits for the next frame, or for the page to be left.
    fn put(self, root: Arc<Project>) {
        self.latest.set_value(root);
        if !self.is_waiting.get_value() {
            self.is_waiting.set_value(true);
            request_animation_frame(move || self.flush());
        }
    }
}
