//! The day that the folds of this page speak of, and a number of the set-up in a field.

use leptos::prelude::*;
use slantlight::place::zone::Zone;
use slantlight::plan::calendar;
use slantlight::plan::search::met::met;
use slantlight::plan::stage::Stage;
use slantlight::plan::wish::DateRange;
use slantlight::project::document::SetUp;
use slantlight::sky::sun::Sun;
use slantlight::units::{Instant, Span, Spans};

use super::shown::Shown;
use crate::app::parts::NumberField;

/// A number of the set-up in a field.
pub fn number(
    shown: Shown,
    (label, unit): (&'static str, &'static str),
    limits: (f64, f64),
    read: fn(&SetUp) -> f64,
    write: fn(&mut SetUp, f64),
) -> AnyView {
    let value = Signal::derive(move || shown.with(read).unwrap_or_default());
    let change = move |number: f64| shown.change(|set_up| write(set_up, number));
    view! { <NumberField label=label unit=unit limits=limits value=value on_change=change /> }.into_any()
}

/// The set-up on the day of the instant shown.
pub struct Day {
    /// Its sun.
    pub sun: Sun,
    /// The set-up, resolved.
    pub stage: std::sync::Arc<Stage>,
    /// The instant shown.
    pub at: Instant,
    /// The day, from midnight to midnight of the place's clock.
    pub whole: Span,
    /// When the wish is met on it.
    pub met: Spans,
}

impl Day {
    /// Of the set-up shown; tracked. `None` while it has no place.
    pub fn of(shown: Shown) -> Option<Self> {
        let stage = shown.stage.get().ok()?;
        let at = shown.store.moment.to_the_minute();
        let date = stage.zone.date(at);
        let whole = calendar::whole(&stage.zone, DateRange { from: date, to: date })?;
        let sun = Sun::new(stage.site);
        let met = met(&sun, &stage, whole);
        Some(Self { sun, stage, at, whole, met })
    }

    /// The place's clock.
    pub fn zone(&self) -> &Zone {
        &self.stage.zone
    }
}

/// What stands where a set-up has no place yet.
pub const NOWHERE: &str = "Say above where this set-up is, and the answer stands here.";
