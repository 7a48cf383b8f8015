//! Safety: asking the browser, at the first save, not to throw our storage away; and saying so when it refuses.

use leptos::prelude::*;
use leptos::task::spawn_local;

use super::keeper::Kept;
use crate::app::devices::local;
use crate::app::devices::persistence::{self, Persistence};
use crate::app::parts::Notes;

/// Remembers that the person was told.
const TOLD: &str = "slantlight-told-of-keeping";

/// Asks once per start, after the first durable write; tells of a refusal once per browser.
pub fn ask_at_first_save(kept: RwSignal<Kept>, notes: Notes) {
    Effect::new(move |asked: Option<bool>| {
        let is_first = asked != Some(true) && kept.get() == Kept::Saved;
        if is_first {
            spawn_local(ask(notes));
        }
        asked == Some(true) || is_first
    });
}

async fn ask(notes: Notes) {
    if persistence::ask().await == Persistence::Granted || local::read(TOLD).is_some() {
        return;
    }
    notes.say("Saved here. This browser may delete it after a week without a visit: send yourself a copy, see Projects.");
    // Without room they are told again next time, which does no harm.
    let _ = local::write(TOLD, "yes");
}
