//! Undo and redo: a stack of roots.
//!
//! Roots share what they have in common, so a step costs little more than what it changed. All edits of one drag,
//! from pointer down to up, are one step.

use std::sync::Arc;

use super::document::Project;

/// Steps kept. Our own choice.
const DEPTH: usize = 200;

/// A root that can be gone back to, and what leaving it did.
#[derive(Clone, Debug)]
struct Step {
    label: &'static str,
    root: Arc<Project>,
}

/// What can be undone and redone.
#[derive(Clone, Debug, Default)]
pub struct History {
    past: Vec<Step>,
    future: Vec<Step>,
    /// The drag whose edits still belong to the last step.
    drag: Option<u32>,
}

impl History {
    /// Keeps the root `before` an edit. Edits that carry the number of one drag are one step.
    pub fn keep(&mut self, label: &'static str, before: Arc<Project>, drag: Option<u32>) {
        let goes_on = drag.is_some() && self.drag == drag;
        self.drag = drag;
        if goes_on {
            return;
        }
        self.future.clear();
        self.past.push(Step { label, root: before });
        if self.past.len() > DEPTH {
            self.past.remove(0);
        }
    }

    /// The root before the last step; `now` can be redone.
    pub fn undo(&mut self, now: Arc<Project>) -> Option<(&'static str, Arc<Project>)> {
        self.drag = None;
        let Step { label, root } = self.past.pop()?;
        self.future.push(Step { label, root: now });
        Some((label, root))
    }

    /// The root after the step undone last; `now` can be undone again.
    pub fn redo(&mut self, now: Arc<Project>) -> Option<(&'static str, Arc<Project>)> {
        self.drag = None;
        let Step { label, root } = self.future.pop()?;
        self.past.push(Step { label, root: now });
        Some((label, root))
    }

    /// What undo would undo.
    pub fn undo_label(&self) -> Option<&'static str> {
        self.past.last().map(|step| step.label)
    }

    /// What redo would do again.
    pub fn redo_label(&self) -> Option<&'static str> {
        self.future.last().map(|step| step.label)
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::project::demo;

    fn titled(title: &str) -> Arc<Project> {
        Arc::new(Project { title: title.to_owned(), ..demo::project() })
    }

    #[test]
    fn there_and_back() {
        let mut history = History::default();
        history.keep("one", titled("a"), None);
        history.keep("two", titled("b"), None);
        let (label, b) = history.undo(titled("c")).unwrap();
        assert_eq!((label, b.title.as_str()), ("two", "b"));
        let (_, a) = history.undo(b).unwrap();
        assert_eq!(a.title, "a");
        assert!(history.undo(a.clone()).is_none());
        let (label, b) = history.redo(a).unwrap();
        assert_eq!((label, b.title.as_str()), ("one", "b"));
        history.keep("three", b, None);
        assert_eq!(history.redo_label(), None, "a new edit ends the way forward");
    }

    #[test]
    fn a_drag_is_one_step() {
        let mut history = History::default();
        for title in ["a", "b", "c"] {
            history.keep("turn", titled(title), Some(7));
        }
        history.keep("turn", titled("d"), Some(8));
        assert_eq!(history.undo(titled("e")).unwrap().1.title, "d");
        assert_eq!(history.undo(titled("d")).unwrap().1.title, "a");
    }
}
