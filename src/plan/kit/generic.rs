//! Generic examples for a kit that nobody has measured yet. All numbers are invented; one reading makes them one's own.

use super::colour::LampColour;
use super::gear::{Board, Frame, Gear, Thing};
use super::lamp::{Brightness, Form, Lamp};
use crate::units::{Degrees, Lux, Metres, Share, Stops, Watts};

/// The examples: names, and what they are.
pub fn examples() -> Vec<(&'static str, Thing)> {
    vec![
        (
            "Small panel, 0.6 × 0.3 m",
            lamp(Form::Panel, (1400.0, 60.0), (0.6, 0.3), LampColour::white(5600.0)),
        ),
        ("Tube, 1.2 m", lamp(Form::Tube, (200.0, 20.0), (1.2, 0.0), LampColour::white(4300.0))),
        ("Tube, 1.2 m, red", lamp(Form::Tube, (60.0, 20.0), (1.2, 0.0), LampColour::Xy { x: 0.67, y: 0.32 })),
        ("Spot, tungsten", spot()),
        ("White board, 1.2 × 1.2 m", board(1.2, 0.85)),
        ("White board, 2.4 × 2.4 m", board(2.4, 0.85)),
        ("Black cloth, 1.2 × 1.2 m", board(1.2, 0.03)),
        ("Black cloth, 2.4 × 2.4 m", board(2.4, 0.03)),
        ("Frame, 1.2 m, half diffusion", frame(1.2, 1.0)),
        ("Frame, 2.4 m, full diffusion", frame(2.4, 2.0)),
    ]
}

/// One of them as a piece of the kit.
pub fn gear(id: &str, (name, is): (&str, Thing)) -> Gear {
    Gear { id: id.to_owned(), name: name.to_owned(), count: 1, invented: true, is }
}

const fn metres(metres: f64) -> Metres {
    Metres::from_metres(metres)
}

/// A lamp by its light at a metre and what it draws.
const fn lamp(
    form: Form,
    (lux, watts): (f64, f64),
    (width, height): (f64, f64),
    colour: LampColour,
) -> Thing {
    let brightness = Brightness::Reading { lux: Lux::from_lux(lux), at: metres(1.0) };
    Thing::Lamp(Lamp {
        form,
        brightness,
        width: metres(width),
        height: metres(height),
        beam: None,
        colour,
        dims: true,
        power: Some(Watts::from_watts(watts)),
    })
}

const fn spot() -> Thing {
    let brightness = Brightness::Reading { lux: Lux::from_lux(2400.0), at: metres(3.0) };
    Thing::Lamp(Lamp {
        form: Form::Point,
        brightness,
        width: metres(0.0),
        height: metres(0.0),
        beam: Some(Degrees::from_degrees(40.0)),
        colour: LampColour::white(3200.0),
        dims: true,
        power: Some(Watts::from_watts(650.0)),
    })
}

const fn board(side: f64, reflectance: f64) -> Thing {
    Thing::Board(Board {
        width: metres(side),
        height: metres(side),
        reflectance: Share::clamped(reflectance),
    })
}

const fn frame(side: f64, loss: f64) -> Thing {
    Thing::Frame(Frame { width: metres(side), height: metres(side), loss: Stops::from_stops(loss) })
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn every_example_is_marked_as_invented() {
        let all: Vec<Gear> = examples().into_iter().map(|one| gear("id", one)).collect();
        assert!(all.iter().all(|one| one.invented && !one.name.is_empty()));
        assert!(all.iter().any(|one| one.lamp().is_some_and(|lamp| lamp.colour.temperature().is_none())));
        assert!(all.iter().any(|one| matches!(one.is, Thing::Board(board) if board.is_black())));
    }
}
