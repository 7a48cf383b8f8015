//! Today's sun at the current location, as Start shows it.

use leptos::prelude::*;
use slantlight::place::zone::Zone;
use slantlight::plan::today::{Today, What};
use slantlight::sky::events::Passage;
use slantlight::sky::sun::Sun;
use slantlight::units::{Instant, Span};
use slantlight::words::{self, Clock};

use crate::app::parts::{Fact, Facts, SectionHead};
use crate::app::store::Store;

/// What the sun does today at the location that all rooms show.
pub fn section() -> AnyView {
    let store = Store::here();
    let day = Day::shown(store);
    let place =
        Signal::derive(move || store.current_location().map_or(String::new(), |place| place.name.clone()));
    let date = Signal::derive(move || words::date(store.current_zone().date(store.moment.to_the_minute())));
    let facts =
        Signal::derive(move || day.get().map_or(Vec::new(), |day| day.facts(store.settings.get().clock)));
    let polar = move || day.get().and_then(|day| day.polar());
    view! {
        <Show when=move || day.with(Option::is_some)>
            <section>
                <SectionHead title=place beside=date />
                {move || polar().map(|sentence| view! { <p>{sentence}</p> })}
                <Facts facts=facts />
            </section>
        </Show>
    }
    .into_any()
}

/// The day that all rooms show, at the location that all rooms show.
#[derive(Clone, PartialEq)]
struct Day {
    zone: std::sync::Arc<Zone>,
    sun: SunAt,
    today: Today,
}

/// The sun at a site; two are the same if their sites are.
#[derive(Clone, Copy, PartialEq)]
struct SunAt(slantlight::place::site::Site);

impl Day {
    /// `None` without a location. Tracked, and made anew only when date or place change.
    fn shown(store: Store) -> Memo<Option<Self>> {
        let date = Memo::new(move |_| store.current_zone().date(store.moment.to_the_minute()));
        let location = Memo::new(move |_| store.current_location());
        Memo::new(move |_| {
            let location = location.get()?;
            let zone = store.zones.named(&location.zone);
            let day = zone.day(date.get())?;
            Some(Self::at(SunAt(location.site), zone, day))
        })
    }

    fn at(sun: SunAt, zone: std::sync::Arc<Zone>, day: Span) -> Self {
        Self { zone, sun, today: Today::of(&sun.track(), day) }
    }

    /// "06:50 sunrise" and so on, in the order of the day.
    fn facts(&self, clock: Clock) -> Vec<Fact> {
        let fact = |what: What, end: bool, name: &str| {
            let found = self.today.first(what)?;
            Some(Fact::new(self.time(if end { found.until? } else { found.at }, clock), name))
        };
        let facts = [
            fact(What::Sunrise, false, "sunrise"),
            fact(What::LowFrom, false, "under 6° from"),
            fact(What::Sunset, false, "sunset"),
            fact(What::EveningBlue, true, "blue until"),
        ];
        facts.into_iter().flatten().collect()
    }

    /// A sentence for a day on which the sun does not rise or set.
    fn polar(&self) -> Option<&'static str> {
        match self.today.sun {
            Passage::Crosses { .. } => None,
            Passage::AboveAllDay => Some("The sun does not set on this day."),
            Passage::BelowAllDay => Some("The sun does not rise on this day."),
        }
    }

    fn time(&self, at: Instant, clock: Clock) -> String {
        words::clock(words::to_the_minute(self.zone.local(at)).time(), clock)
    }
}

impl SunAt {
    fn track(self) -> Sun {
        Sun::new(self.0)
    }
}
