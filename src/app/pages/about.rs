//! About: how this phone writes and looks, what the app does with what it knows, and which build this is.

use leptos::prelude::*;
use slantlight::project::route::Route;
use slantlight::words::{Clock, Units};

use crate::app::devices::bridge;
use crate::app::parts::{Frame, SectionHead, Segmented};
use crate::app::store::{Scheme, Store};

/// Settings and privacy.
#[component]
pub fn About() -> impl IntoView {
    view! {
        <Frame title="Settings and privacy" back=("Start".to_owned(), Route::Start.href())>
            <Settings />
            <Privacy />
            <section>
                <SectionHead title="What it is" ruled=true />
                <p>
                    "Slantlight says where the sun will be, what it does through that window to that shot, and how long it holds. The figures are for a clear sky: no forecast is in them, and a meter on the day has the last word."
                </p>
                <p class="soft">{format!("Build {}", bridge::build())}</p>
            </section>
        </Frame>
    }
}

/// Units, clock, scheme.
#[component]
fn Settings() -> impl IntoView {
    let settings = Store::here().settings;
    let choose = move |change: fn(&mut crate::app::store::Settings, usize)| {
        Callback::new(move |index| settings.update(|settings| change(settings, index)))
    };
    view! {
        <section class="stack">
            <SectionHead title="This phone" beside="kept apart from your projects" ruled=true />
            <Segmented
                label="Lengths"
                names=vec!["metres".to_owned(), "feet, inches".to_owned()]
                chosen=Signal::derive(move || place(&UNITS, settings.get().units))
                on_choose=choose(|settings, index| settings.units = UNITS[index])
            />
            <Segmented
                label="Clock"
                names=vec!["17:38".to_owned(), "5:38 pm".to_owned()]
                chosen=Signal::derive(move || place(&CLOCKS, settings.get().clock))
                on_choose=choose(|settings, index| settings.clock = CLOCKS[index])
            />
            <Segmented
                label="Screen"
                names=vec!["as the phone".to_owned(), "paper".to_owned(), "night".to_owned(), "dim".to_owned()]
                chosen=Signal::derive(move || place(&SCHEMES, settings.get().scheme))
                on_choose=choose(|settings, index| settings.scheme = SCHEMES[index])
            />
        </section>
    }
}

/// What is true of every build: the page's own policy forbids anything else.
#[component]
fn Privacy() -> impl IntoView {
    view! {
        <section class="stack">
            <SectionHead title="Privacy" ruled=true />
            <p>
                "Everything is worked out and kept on this phone. Nothing is sent anywhere: no account, no counting, no maps or weather from elsewhere. The only network use is fetching the app itself, and newer versions of it, from the place you opened it at."
            </p>
            <p>
                "Position, compass and tilt are read when you ask for them, used for the field you asked for, and kept only in your project. A project leaves this phone when you send it. A link carries it behind the #, a part of the address that browsers send to no server; whoever has the link has the project."
            </p>
        </section>
    }
}

const UNITS: [Units; 2] = [Units::Metric, Units::FeetInches];
const CLOCKS: [Clock; 2] = [Clock::TwentyFour, Clock::Twelve];
const SCHEMES: [Scheme; 4] = [Scheme::System, Scheme::Light, Scheme::Dark, Scheme::Dim];

/// Where `chosen` stands among `all`.
fn place<T: PartialEq>(all: &[T], chosen: T) -> usize {
    all.iter().position(|one| *one == chosen).unwrap_or(0)
}
