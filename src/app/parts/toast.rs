//! Short notes that come and go, read out by screen readers, perhaps with one thing to do ("Undo").

use core::time::Duration;
use std::sync::Arc;

use leptos::prelude::*;

/// How long a note stays. Our own choice: long enough to read two lines and to reach for the button.
const STAYS: Duration = Duration::from_secs(8);

/// What a note's button says and does. Counted, not kept by the page that made it: the page may be gone by then.
type Action = (String, Arc<dyn Fn() + Send + Sync>);

/// A note with perhaps one thing to do.
#[derive(Clone)]
struct Note {
    id: u32,
    says: String,
    action: Option<Action>,
}

/// The notes that are shown now, newest last.
#[derive(Clone, Copy)]
pub struct Notes {
    shown: RwSignal<Vec<Note>>,
    last_id: StoredValue<u32>,
}

impl Notes {
    /// Makes notes possible for all that is inside the app. Call once, at its root.
    pub fn provide() -> Self {
        let notes = Self { shown: RwSignal::new(Vec::new()), last_id: StoredValue::new(0) };
        provide_context(notes);
        notes
    }

    /// The app's notes; ask while a component is made, not in a tap.
    pub fn here() -> Self {
        expect_context()
    }

    /// Shows a note.
    pub fn say(self, says: impl Into<String>) {
        self.add(says.into(), None);
    }

    /// Shows a note with one thing to do.
    pub fn say_with(self, says: impl Into<String>, button: &str, action: impl Fn() + Send + Sync + 'static) {
        self.add(says.into(), Some((button.to_owned(), Arc::new(action))));
    }

    fn add(self, says: String, action: Option<Action>) {
        let id = self.last_id.get_value() + 1;
        self.last_id.set_value(id);
        self.shown.update(|shown| {
            // One note with a button at a time: two "Undo" side by side would not say which.
            shown.retain(|note| note.action.is_none() || action.is_none());
            shown.push(Note { id, says, action });
        });
        set_timeout(move || self.close(id), STAYS);
    }

    fn close(self, id: u32) {
        self.shown.update(|shown| shown.retain(|note| note.id != id));
    }
}

/// The place of the notes.
#[component]
pub fn Toasts() -> impl IntoView {
    let notes = Notes::here();
    let button = move |id: u32, (word, action): Action| {
        let act = move |_| {
            action();
            notes.close(id);
        };
        view! { <button type="button" class="plain" on:click=act>{word}</button> }
    };
    view! {
        <div class="toasts" role="status" aria-live="polite">
            <For each=move || notes.shown.get() key=|note| note.id let:note>
                <div class="toast">
                    <span>{note.says}</span>
                    {note.action.map(|action| button(note.id, action))}
                </div>
            </For>
        </div>
    }
}
