//! A piece of the kit and all that its owner knows of it: how bright, how large, its beam and colour.

use leptos::prelude::*;
use slantlight::plan::kit::{Board, Brightness, Form, Frame, Gear, Lamp, LampColour, Placed, Thing};
use slantlight::plan::levels::rows;
use slantlight::project::edit::Edit;
use slantlight::units::{Candelas, Degrees, Lux, Metres, Share, Stops, Watts};

use super::colour::ColourFields;
use super::shown::Lit;
use crate::app::parts::{Entry, LengthField, NumberField, Segmented, TextField};

/// A piece, cheap to copy into its fields.
#[derive(Clone, Copy)]
struct OfKit {
    lit: Lit,
    gear: Memo<Option<Gear>>,
}

impl OfKit {
    fn change(self, change: impl FnOnce(&mut Gear)) {
        let store = self.lit.shown.store;
        // From the latest root: two changes may come within one frame.
        let project = store.desk.latest();
        let is_it =
            |one: &Gear| self.gear.with_untracked(|gear| gear.as_ref().is_some_and(|gear| gear.id == one.id));
        if let Some(mut gear) = project.kit.iter().find(|one| is_it(one)).map(|one| Gear::clone(one)) {
            change(&mut gear);
            store.edit(Edit::PutGear(Box::new(gear)));
        }
    }

    fn lamp(self) -> Option<Lamp> {
        self.gear.with(|gear| gear.as_ref().and_then(|gear| gear.lamp().copied()))
    }

    fn change_lamp(self, change: impl FnOnce(&mut Lamp)) {
        self.change(|gear| {
            gear.measure(|is| {
                if let Thing::Lamp(lamp) = is {
                    change(lamp);
                }
            });
        });
    }

    fn number(self, read: fn(&Lamp) -> f64) -> Signal<f64> {
        Signal::derive(move || self.lamp().as_ref().map_or(0.0, read))
    }

    /// A length that `at` finds in what the piece is.
    fn length(self, label: &'static str, at: fn(&mut Thing) -> Option<&mut Metres>) -> AnyView {
        let store = self.lit.shown.store;
        let value = Signal::derive(move || {
            let mut is = self.gear.with(|gear| gear.as_ref().map(|gear| gear.is));
            is.as_mut().and_then(at).copied().unwrap_or_default()
        });
        let set = move |to: Metres| {
            self.change(|gear| gear.measure(|is| at(is).into_iter().for_each(|length| *length = to)));
        };
        let units = Signal::derive(move || store.settings.get().units);
        view! { <LengthField label=label value=value units=units limits=(0.0, 100.0) on_change=set /> }
            .into_any()
    }
}

/// One piece of the kit.
#[component]
pub fn Piece(lit: Lit, id: String) -> impl IntoView {
    let store = lit.shown.store;
    let id = StoredValue::new(id);
    let gear = Memo::new(move |_| {
        let found = |kit: &[std::sync::Arc<Gear>]| {
            id.with_value(|id| kit.iter().find(|gear| gear.id == *id).map(|gear| Gear::clone(gear)))
        };
        store.desk.with(|project| found(&project.kit))
    });
    let piece = OfKit { lit, gear };
    let bring = move |_| {
        let placed = Placed::usual(&id.get_value());
        lit.shown.change(move |set_up| set_up.rig.placed.push(placed));
    };
    let remove = move |_| {
        if let Some(gear) = gear.get_untracked() {
            store.edit_with_undo(Edit::RemoveGear(gear.id), format!("{} removed", gear.name));
        }
    };
    let with =
        move |read: &dyn Fn(&Gear) -> String| gear.with(|gear| gear.as_ref().map(read)).unwrap_or_default();
    let name = Signal::derive(move || with(&|gear| gear.name.clone()));
    let sub = Signal::derive(move || with(&|gear| rows::gear(gear, store.settings.get().units)));
    let count =
        Signal::derive(move || gear.with(|gear| gear.as_ref().map_or(1.0, |gear| f64::from(gear.count))));
    // What kind of thing it is does not change.
    let is = gear.with_untracked(|gear| gear.as_ref().map(|gear| gear.is));
    let measures = move || match is? {
        Thing::Lamp(_) => Some(view! { <OfLamp piece=piece /> }.into_any()),
        Thing::Board(_) => Some(flat(piece, "Gives back (white cloth 85, black 3)", "%", 100.0, BOARD)),
        Thing::Frame(_) => Some(flat(piece, "Its cloth takes", "stops", 6.0, FRAME)),
    };
    view! {
        <Entry title=name sub=sub>
            <button type="button" class="button" on:click=bring>"Bring it here"</button>
            <TextField label="Name" value=name on_change=move |text: String| piece.change(|gear| gear.name.clone_from(&text)) />
            <NumberField label="How many" value=count limits=(0.0, 100.0) decimals=0
                on_change=move |to| piece.change(|gear| gear.count = to as u32) />
            {measures()}
            <button type="button" class="button" on:click=remove>"Remove from the kit"</button>
        </Entry>
    }
}

/// How bright a lamp is, how large, its beam, its colour.
#[component]
fn OfLamp(piece: OfKit) -> impl IntoView {
    let form = Signal::derive(move || {
        piece.lamp().and_then(|lamp| Form::ALL.iter().position(|form| *form == lamp.form)).unwrap_or_default()
    });
    let by_candelas = Signal::derive(move || {
        usize::from(piece.lamp().is_some_and(|lamp| matches!(lamp.brightness, Brightness::Candela(_))))
    });
    let lux = piece
        .number(|lamp| if let Brightness::Reading { lux, .. } = lamp.brightness { lux.lux() } else { 0.0 });
    let read = move |to: f64| {
        piece.change_lamp(|lamp| {
            if let Brightness::Reading { lux, .. } = &mut lamp.brightness {
                *lux = Lux::from_lux(to);
            }
        });
    };
    let colour = Signal::derive(move || piece.lamp().map_or(LampColour::default(), |lamp| lamp.colour));
    let power = Signal::derive(move || {
        piece.gear.with(|gear| gear.as_ref().map_or(0.0, |gear| gear.power().watts()))
    });
    let fixed = Signal::derive(move || usize::from(piece.lamp().is_some_and(|lamp| !lamp.dims)));
    view! {
        <Segmented label="It shines as" names=Form::ALL.map(|form| form.word().to_owned()).to_vec() chosen=form
            on_choose=move |at: usize| piece.change_lamp(|lamp| lamp.form = Form::ALL[at]) />
        <Segmented label="Known by" names=["a reading", "candelas"].map(str::to_owned).to_vec() chosen=by_candelas
            on_choose=move |at: usize| piece.change_lamp(|lamp| lamp.say_by_candelas(at == 1)) />
        <Show when=move || by_candelas.get() == 0>
            <NumberField label="The meter said" unit="lx" value=lux limits=(0.1, 1e6) decimals=0 on_change=read />
            {piece.length("At a distance of", |is| match is {
                Thing::Lamp(Lamp { brightness: Brightness::Reading { at, .. }, .. }) => Some(at),
                _ => None,
            })}
        </Show>
        <Show when=move || by_candelas.get() == 1>
            <NumberField label="Along its axis" unit="cd" limits=(0.1, 1e8) decimals=0 value=piece.number(|lamp| lamp.candelas().candelas())
                on_change=move |to| piece.change_lamp(|lamp| lamp.brightness = Brightness::Candela(Candelas::from_candelas(to))) />
        </Show>
        <Show when=move || form.get() != 0>
            {piece.length("Width, or length of a tube", |is| if let Thing::Lamp(lamp) = is { Some(&mut lamp.width) } else { None })}
        </Show>
        <Show when=move || form.get() == 1>
            {piece.length("Height", |is| if let Thing::Lamp(lamp) = is { Some(&mut lamp.height) } else { None })}
        </Show>
        <NumberField label="Beam, full angle at half its light (0: not known)" unit="°" limits=(0.0, 180.0) decimals=0
            value=piece.number(|lamp| lamp.beam.map_or(0.0, Degrees::degrees))
            on_change=move |to| piece.change_lamp(|lamp| lamp.beam = (to > 0.0).then(|| Degrees::from_degrees(to))) />
        <ColourFields colour=colour on_change=move |to| piece.change_lamp(|lamp| lamp.colour = to) />
        <NumberField label="Draws (0: not known)" unit="W" value=power limits=(0.0, 1e5) decimals=0
            on_change=move |to| piece.change(|gear| gear.set_power(Watts::from_watts(to))) />
        <Segmented label="It dims" names=["yes", "no"].map(str::to_owned).to_vec() chosen=fixed
            on_choose=move |at: usize| piece.change_lamp(|lamp| lamp.dims = at == 0) />
    }
}

/// The size of a board or a frame, and how much of the light it gives back, or takes.
fn flat(piece: OfKit, label: &'static str, unit: &'static str, most: f64, of: OfCloth) -> AnyView {
    let value = Signal::derive(move || {
        piece.gear.with(|gear| gear.as_ref().and_then(|gear| (of.read)(&gear.is))).unwrap_or_default()
    });
    let set = move |to: f64| piece.change(|gear| gear.measure(|is| (of.write)(is, to)));
    view! {
        {piece.length("Width", |is| match is {
            Thing::Board(Board { width, .. }) | Thing::Frame(Frame { width, .. }) => Some(width),
            Thing::Lamp(_) => None,
        })}
        {piece.length("Height", |is| match is {
            Thing::Board(Board { height, .. }) | Thing::Frame(Frame { height, .. }) => Some(height),
            Thing::Lamp(_) => None,
        })}
        <NumberField label=label unit=unit value=value limits=(0.0, most) decimals=of.decimals on_change=set />
    }
    .into_any()
}

/// How a field reads and writes what a cloth does.
#[derive(Clone, Copy)]
struct OfCloth {
    decimals: usize,
    read: fn(&Thing) -> Option<f64>,
    write: fn(&mut Thing, f64),
}

/// What a board gives back.
const BOARD: OfCloth = OfCloth {
    decimals: 0,
    read: |is| if let Thing::Board(board) = is { Some(board.reflectance.percent()) } else { None },
    write: |is, to| {
        if let Thing::Board(board) = is {
            board.reflectance = Share::clamped(to / 100.0);
        }
    },
};

/// What the cloth of a frame takes.
const FRAME: OfCloth = OfCloth {
    decimals: 2,
    read: |is| if let Thing::Frame(frame) = is { Some(frame.loss.stops()) } else { None },
    write: |is, to| {
        if let Thing::Frame(frame) = is {
            frame.loss = Stops::from_stops(to);
        }
    },
};
