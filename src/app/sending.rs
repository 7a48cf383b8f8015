//! Sending a project: the share sheet with a file, else with text, else a download. Call from inside a tap.

use slantlight::project::canonical::to_text;
use slantlight::project::document::Project;
use slantlight::project::send::{self, Candidate};

use super::devices::share::{self, Shared};
use super::devices::{clipboard, download};
use super::parts::Notes;
use super::store::Store;

/// Sends a project by whatever way this browser has.
pub fn send(store: Store, notes: Notes, project: &Project) {
    let (files, id) = (send::candidates(project), project.id.clone());
    let [_, plain] = files.clone();
    share::share(&project.title, &to_text(project), &files, move |shared| match shared {
        Shared::Sent => store.copy_made(&id),
        Shared::Cancelled => {}
        Shared::Unable => keep_as_file(store, notes, &id, &plain),
    });
}

/// Puts a project into the downloads as a file.
pub fn export(store: Store, notes: Notes, project: &Project) {
    let [json, _] = send::candidates(project);
    keep_as_file(store, notes, &project.id, &json);
}

/// Copies a project as text, to be pasted into a message.
pub fn copy(store: Store, notes: Notes, project: &Project) {
    let id = project.id.clone();
    clipboard::copy(&to_text(project), move |copied| {
        if copied {
            store.copy_made(&id);
            notes.say("Copied. Paste it into a message.");
        } else {
            notes.say("This browser does not let the app copy. Export it as a file instead.");
        }
    });
}

/// Sends words by the share sheet; where there is none, copies them.
pub fn words(notes: Notes, title: &str, text: String) {
    share::share(title, &text.clone(), &[], move |shared| {
        if shared == Shared::Unable {
            clipboard::copy(&text, move |copied| {
                notes.say(match copied {
                    true => "Copied. Paste it into a message.",
                    false => {
                        "This browser neither sends nor copies text. Print it, or send the project as a file."
                    }
                });
            });
        }
    });
}

fn keep_as_file(store: Store, notes: Notes, id: &str, file: &Candidate) {
    if download::download(&file.name, file.media_type, &file.bytes) {
        store.copy_made(id);
        notes.say(format!("{} is in the downloads.", file.name));
    } else {
        notes.say("This browser neither sends nor downloads files. Copy the project as text instead.");
    }
}
