//! Settings: how this phone writes and looks. They belong to the phone, not to a project.

use leptos::prelude::*;
use serde::{Deserialize, Serialize};
use slantlight::project::reader;
use slantlight::words::{Clock, Units};

use crate::app::devices::local;
use crate::app::second::{self, Missing, Second};

/// Where they are kept.
const KEY: &str = "slantlight-settings";

/// How this phone writes and looks.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize)]
#[serde(default)]
pub struct Settings {
    /// Metres, or feet and inches.
    pub units: Units,
    /// Hours of the clock.
    pub clock: Clock,
    /// Light or dark.
    pub scheme: Scheme,
    /// How long before a slot begins or ends an alarm rings, minutes.
    pub lead_minutes: u32,
    /// Whether the screen may fall asleep on Now.
    pub may_sleep: bool,
}

impl Default for Settings {
    fn default() -> Self {
        Self {
            units: Units::default(),
            clock: Clock::default(),
            scheme: Scheme::default(),
            // Our own choice: time to call the set to order.
            lead_minutes: 5,
            may_sleep: false,
        }
    }
}

/// Light or dark.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum Scheme {
    /// As the system has it.
    #[default]
    System,
    /// Paper.
    Light,
    /// For blue hour and night.
    Dark,
    /// Dark and dim, so that nobody is dazzled after sunset.
    Dim,
}

impl Scheme {
    /// The word the style sheets know; `None` leaves it to the system.
    const fn word(self) -> Option<&'static str> {
        match self {
            Self::System => None,
            Self::Light => Some("light"),
            Self::Dark => Some("dark"),
            Self::Dim => Some("dim"),
        }
    }
}

/// The settings as they were kept.
///
/// # Errors
/// Some were, and the second part of the app, which can read them, did not arrive.
pub async fn found() -> Result<Settings, Missing> {
    second::read_if_kept(KEY, |table| table.settings).await
}

/// The settings as they were found; kept anew and shown whenever they change.
pub fn kept(found: Settings) -> RwSignal<Settings> {
    let (settings, second) = (RwSignal::new(found), Second::here());
    Effect::new(move |before: Option<Settings>| {
        let now = settings.get();
        show(now.scheme);
        if before.is_some_and(|before| before != now) {
            second.later(move |table| (table.keep_settings)(now));
        }
        now
    });
    settings
}

/// Without room they last as long as the page; nothing that a person made is lost. In the second part.
pub fn keep(settings: Settings) {
    let _ = local::write(KEY, &reader::to_text(&settings));
}

/// Tells the style sheets.
fn show(scheme: Scheme) {
    let Some(root) = document().document_element() else { return };
    // Fails only for names that no attribute may have.
    drop(match scheme.word() {
        Some(word) => root.set_attribute("data-scheme", word),
        None => root.remove_attribute("data-scheme"),
    });
}
