//! The rest of a set-up: where it is, the lens, dates and hours, the sky, its name, its end.

use leptos::prelude::*;
use slantlight::light::format::{self, FORMATS};
use slantlight::plan::wish::presets::NAMED_HEIGHTS;
use slantlight::plan::wish::{ClockRange, DateRange, Sky};
use slantlight::project::document::{At, Camera, SetUp};
use slantlight::project::edit::Edit;
use slantlight::project::link::excerpt;
use slantlight::project::route::Route;
use slantlight::project::start;
use slantlight::units::{Degrees, Metres};

use super::levels::LevelFields;
use super::shown::Shown;
use super::wish::HeightSliders;
use crate::app::pages::as_link::AsLink;
use crate::app::parts::{Area, Chips, Hands, LengthField, NumberField, TextField};
use crate::app::router;

/// All of it, folded.
#[component]
pub fn Details(shown: Shown) -> impl IntoView {
    view! {
        <section id="where"><Where shown=shown /></section>
        <details class="fold">
            <summary>"Height of the sun"</summary>
            <NamedRanges shown=shown />
            <HeightSliders shown=shown />
        </details>
        <details class="fold">
            <summary>"Lens and camera"</summary>
            <LensFields shown=shown />
        </details>
        <details class="fold">
            <summary>"Dates, hours and sky"</summary>
            <Times shown=shown />
        </details>
        <details class="fold">
            <summary>"Levels wished"</summary>
            <LevelFields shown=shown />
        </details>
        <details class="fold">
            <summary>"Name, notes, remove"</summary>
            <Names shown=shown />
        </details>
    }
}

/// Ranges of heights that the trade has names for; the sliders below set their own.
#[component]
fn NamedRanges(shown: Shown) -> impl IntoView {
    let names = NAMED_HEIGHTS.map(|one| one.name.to_owned()).to_vec();
    let chosen = Signal::derive(move || {
        let now = shown.with(|set_up| set_up.wish.heights)?;
        NAMED_HEIGHTS.iter().position(|one| one.heights == now)
    });
    let choose = move |place: usize| {
        if let Some(one) = NAMED_HEIGHTS.get(place) {
            shown.change(|set_up| set_up.wish.heights = one.heights);
        }
    };
    view! {
        <Chips label="Heights with a name" names=Signal::stored(names) chosen=chosen on_choose=choose />
        <p class="soft">"Common practice: no standard says where these begin and end. Set your own below."</p>
    }
}

/// The mark, among all marks of the project.
#[component]
fn Where(shown: Shown) -> impl IntoView {
    let store = shown.store;
    let spots = Memo::new(move |_| store.desk.with(start::spots));
    let chosen = move || shown.with(|set_up| set_up.at.clone()).flatten();
    let choose = move |event| {
        let place = event_target_value(&event).parse::<usize>().ok();
        let at = place
            .and_then(|place| spots.with_untracked(|spots| spots.get(place).map(|spot| spot.at.clone())));
        shown.change(|set_up| set_up.at = at);
    };
    let option = move |(place, words, at): (usize, String, At)| {
        let selected = move || chosen().as_ref() == Some(&at);
        view! { <option value=place.to_string() selected=selected>{words}</option> }
    };
    view! {
        <div class="field">
            <label for="set-up-where">"Where"</label>
            <select id="set-up-where" on:change=choose>
                <option value="" selected=move || chosen().is_none()>"not chosen yet"</option>
                {move || {
                    spots.get().into_iter().enumerate().map(|(place, spot)| option((place, spot.words, spot.at))).collect_view()
                }}
            </select>
        </div>
        <Show when=move || spots.with(Vec::is_empty)>
            <p>"No place in this project yet. " <a href=Route::Places.href()>"Add a place"</a></p>
        </Show>
    }
}

#[component]
fn LensFields(shown: Shown) -> impl IntoView {
    let number = move |read: fn(&SetUp) -> f64| Signal::derive(move || shown.with(read).unwrap_or_default());
    let length =
        move |read: fn(&SetUp) -> Metres| Signal::derive(move || shown.with(read).unwrap_or_default());
    let units = Signal::derive(move || shown.store.settings.get().units);
    view! {
        <div class="fields">
            <LengthField label="Camera to subject" units=units limits=(0.05, 2000.0) value=length(|s| s.lens.distance)
                on_change=move |to| shown.change(|s| s.lens.distance = to) />
            <LengthField label="Lens above the floor" units=units limits=(-20.0, 200.0) value=length(|s| s.lens.height)
                on_change=move |to| shown.change(|s| s.lens.height = to) />
            <NumberField label="Tilt, up is positive" hands=Hands::PLUS_MINUS unit="°" limits=(-90.0, 90.0) value=number(|s| s.lens.tilt.degrees())
                on_change=move |d| shown.change(|s| s.lens.tilt = Degrees::from_degrees(d)) />
            <NumberField label="Focal length" unit="mm" limits=(1.0, 3000.0) value=number(|s| s.lens.focal_mm)
                on_change=move |mm| shown.change(|s| s.lens.focal_mm = mm) />
            <NumberField label="Bearing good to ±" unit="°" limits=(0.0, 45.0) value=number(|s| s.lens.bearing_uncertainty.degrees())
                on_change=move |d| shown.change(|s| s.lens.bearing_uncertainty = Degrees::from_degrees(d)) />
            <Gate shown=shown />
        </div>
    }
}

/// The picture's size on sensor or film: a format with a name, or typed numbers.
#[component]
fn Gate(shown: Shown) -> impl IntoView {
    let store = shown.store;
    let camera = Memo::new(move |_| {
        let found = shown.with(Clone::clone);
        let found = found.and_then(|set_up| store.desk.with(|project| project.camera_of(&set_up).cloned()));
        found.unwrap_or_else(|| start::camera("camera-a"))
    });
    let put = move |change: &dyn Fn(&mut Camera)| {
        // From the latest root: two changes may come within one frame.
        let (project, id) = (store.desk.latest(), camera.with_untracked(|camera| camera.id.clone()));
        let mut changed = project.camera(&id).cloned().unwrap_or_else(|| camera.get_untracked());
        change(&mut changed);
        store.edit(Edit::PutCamera(changed));
    };
    let choose = move |event| {
        if let Some(format) =
            event_target_value(&event).parse().ok().and_then(|place: usize| FORMATS.get(place))
        {
            put(&|camera| {
                (camera.sensor_width_mm, camera.sensor_height_mm) = (format.width_mm, format.height_mm)
            });
        }
    };
    let is_chosen = move |name: &'static str| {
        let named = camera.with(|camera| format::named(camera.sensor_width_mm, camera.sensor_height_mm));
        named.is_some_and(|format| format.name == name)
    };
    let option = move |(place, one): (usize, &'static format::Format)| {
        view! { <option value=place.to_string() selected=move || is_chosen(one.name)>{one.name}</option> }
    };
    view! {
        <div class="field">
            <label for="set-up-format">{move || format!("Format of {}", camera.get().name)}</label>
            <select id="set-up-format" on:change=choose>
                <option value="">"as typed"</option>
                {FORMATS.iter().enumerate().map(option).collect_view()}
            </select>
        </div>
        <NumberField label="Picture width" unit="mm" limits=(0.5, 300.0) value=Signal::derive(move || camera.get().sensor_width_mm)
            on_change=move |mm| put(&|camera| camera.sensor_width_mm = mm) />
        <NumberField label="Picture height" unit="mm" limits=(0.5, 300.0) value=Signal::derive(move || camera.get().sensor_height_mm)
            on_change=move |mm| put(&|camera| camera.sensor_height_mm = mm) />
    }
}

/// Possible dates and hours, and the sky the wish is meant for.
#[component]
fn Times(shown: Shown) -> impl IntoView {
    let dates = move || shown.with(|set_up| set_up.wish.dates.first().copied()).flatten();
    let hours = move || shown.with(|set_up| set_up.wish.hours).flatten();
    let date = move |read: fn(DateRange) -> chrono::NaiveDate| {
        move || dates().map(|range| read(range).to_string()).unwrap_or_default()
    };
    let hour = move |read: fn(ClockRange) -> chrono::NaiveTime| {
        move || {
            hours()
                .map(|range| read(range).to_string().chars().take(5).collect::<String>())
                .unwrap_or_default()
        }
    };
    let set_dates = move |from: Option<String>, to: Option<String>| {
        shown.change(|set_up| {
            set_up.wish.dates =
                DateRange::typed(dates(), from.as_deref(), to.as_deref()).into_iter().collect()
        });
    };
    let set_hours = move |from: Option<String>, to: Option<String>| {
        shown.change(|set_up| set_up.wish.hours = ClockRange::typed(hours(), from.as_deref(), to.as_deref()));
    };
    view! {
        <div class="fields two">
            <DateOrTime kind="date" label="First date possible" value=date(|range| range.from) on_change=move |text| set_dates(Some(text), None) />
            <DateOrTime kind="date" label="Last date possible" value=date(|range| range.to) on_change=move |text| set_dates(None, Some(text)) />
            <DateOrTime kind="time" label="Not before" value=hour(|range| range.from) on_change=move |text| set_hours(Some(text), None) />
            <DateOrTime kind="time" label="Not after" value=hour(|range| range.to) on_change=move |text| set_hours(None, Some(text)) />
        </div>
        <p class="soft">"Empty fields mean any date and any hour."</p>
        <SkyChoice shown=shown />
    }
}

/// A field that opens the phone's own calendar or clock.
#[component]
fn DateOrTime<V>(
    kind: &'static str,
    label: &'static str,
    value: V,
    #[prop(into)] on_change: Callback<String>,
) -> impl IntoView
where
    V: Fn() -> String + Send + Sync + 'static,
{
    view! {
        <label class="field">
            <span>{label}</span>
            <input type=kind prop:value=value on:change=move |event| on_change.run(event_target_value(&event)) />
        </label>
    }
}

/// In the order of the screen.
const SKIES: [(Sky, &str); 5] = [
    (Sky::Any, "any sky"),
    (Sky::Clear, "clear"),
    (Sky::Hazy, "sun through haze"),
    (Sky::Broken, "sun and cloud in turn"),
    (Sky::Overcast, "overcast"),
];

/// No weather is known offline: the sky is the person's word.
#[component]
fn SkyChoice(shown: Shown) -> impl IntoView {
    let chosen = move || shown.with(|set_up| set_up.wish.sky).unwrap_or_default();
    let choose = move |event| {
        let named = event_target_value(&event);
        if let Some((sky, _)) = SKIES.iter().find(|(_, name)| *name == named) {
            shown.change(|set_up| set_up.wish.sky = *sky);
        }
    };
    let option = move |(sky, name): (Sky, &'static str)| {
        view! { <option value=name selected=move || chosen() == sky>{name}</option> }
    };
    view! {
        <div class="field">
            <label for="set-up-sky">"Meant for"</label>
            <select id="set-up-sky" on:change=choose>{SKIES.map(option).collect_view()}</select>
        </div>
    }
}

#[component]
fn Names(shown: Shown) -> impl IntoView {
    let store = shown.store;
    let scene_text = move |read: fn(&slantlight::project::document::Scene) -> &String| {
        Signal::derive(move || shown.with_scene(|scene| read(scene).clone()).unwrap_or_default())
    };
    let rename = move |change: &dyn Fn(&mut slantlight::project::document::Scene)| {
        let Some(id) = shown.with_scene(|scene| scene.id.clone()) else { return };
        let project = store.desk.latest();
        if let Some(mut scene) = project.scene(&id).cloned() {
            change(&mut scene);
            store.edit(Edit::PutScene(Box::new(scene)));
        }
    };
    let link = AsLink::here();
    let as_link = move |_| {
        let project = store.desk.latest();
        if let Some(part) = shown.with(|set_up| excerpt(&project, &set_up.id)).flatten() {
            link.show(&part);
        }
    };
    let remove = move |_| {
        let Some(id) = shown.with(|set_up| set_up.id.clone()) else { return };
        router::go(&Route::Scenes);
        store.edit_with_undo(Edit::RemoveSetUp(id), "Set-up removed");
    };
    view! {
        <div class="fields">
            <TextField label="Scene number" value=scene_text(|s| &s.number) on_change=move |text: String| rename(&|s| s.number.clone_from(&text)) />
            <TextField label="Scene title" value=scene_text(|s| &s.title) on_change=move |text: String| rename(&|s| s.title.clone_from(&text)) />
            <TextField label="Set-up" value=Signal::derive(move || shown.with(|s| s.name.clone()).unwrap_or_default())
                on_change=move |text| shown.change(|s| s.name = text) />
            <Area label="Notes" value=Signal::derive(move || shown.with(|s| s.notes.clone()).unwrap_or_default())
                on_input=move |text| shown.drag(|s| s.notes = text) />
            <button type="button" class="button" on:click=as_link>"This set-up as a link"</button>
            <button type="button" class="button" on:click=remove>"Remove this set-up"</button>
        </div>
    }
}
