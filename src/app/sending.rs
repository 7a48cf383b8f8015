//! Sending a project: the share sheet with a file, else with text, else a download. Call from inside a tap.

use slantlight::project::document::Project;

use super::devices::share::{self, Packed, Shared};
use super::devices::{clipboard, download};
use super::parts::Notes;
use super::store::{Store, cabinet};

/// Sends a project by whatever way this browser has.
pub fn send(store: Store, notes: Notes, project: &Project) {
    let (text, id) = (cabinet::write(project), project.id.clone());
    let stem = stem(&project.title);
    let json = Packed { name: format!("{stem}.json"), media_type: "application/json".to_owned() };
    let plain = Packed { name: format!("{stem}.txt"), media_type: "text/plain".to_owned() };
    let fallback = text.clone();
    share::share(&project.title, &text, &[json, plain.clone()], move |shared| match shared {
        Shared::Sent => store.copies.made(&id),
        Shared::Cancelled => {}
        Shared::Unable => {
            if download::download(&plain.name, &plain.media_type, &fallback) {
                store.copies.made(&id);
                notes.say(format!(
                    "This browser has no way to send files: look for {} in the downloads.",
                    plain.name
                ));
            } else {
                notes
                    .say("This browser neither sends nor downloads files. Copy the project as text instead.");
            }
        }
    });
}

/// Puts a project into the downloads as a file.
pub fn export(store: Store, notes: Notes, project: &Project) {
    let name = format!("{}.json", stem(&project.title));
    if download::download(&name, "application/json", &cabinet::write(project)) {
        store.copies.made(&project.id);
        notes.say(format!("{name} is in the downloads."));
    } else {
        notes.say("This browser does not download files. Copy the project as text instead.");
    }
}

/// Copies a project as text, to be pasted into a message.
pub fn copy(store: Store, notes: Notes, project: &Project) {
    let id = project.id.clone();
    clipboard::copy(&cabinet::write(project), move |copied| {
        if copied {
            store.copies.made(&id);
            notes.say("Copied. Paste it into a message.");
        } else {
            notes.say("This browser does not let the app copy. Export it as a file instead.");
        }
    });
}

/// A file's name from a title: lower case, letters and digits, joined by hyphens.
fn stem(title: &str) -> String {
    let plain: String =
        title.to_lowercase().chars().map(|c| if c.is_alphanumeric() { c } else { ' ' }).collect();
    let joined = plain.split_whitespace().collect::<Vec<_>>().join("-");
    if joined.is_empty() { "slantlight-project".to_owned() } else { joined }
}
