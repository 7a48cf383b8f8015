//! The room from above with the minutes of the wished light on it: the larger a dot, the longer it holds there.
//!
//! The best place for a chair is ringed, the way of a followed patch is a line from stay to stay. `draw` knows no plan: the
//! caller brings spots and their shares of the longest hold.

use super::paint::Paint;
use super::path::Path;
use super::plan::{Plan, Scene, plan};
use super::shape::{Drawing, Point};
use crate::place::room::Room;
use crate::units::{Metres, Share, Vector};
use crate::words::Units;

/// Radius of the dot of the longest hold, as a share of the distance to the next.
const LARGEST: f64 = 0.48;

/// Radius of the ring about the best spot, and of a stay.
const RING: f64 = 9.0;
const STAY: f64 = 3.0;

/// A spot of the floor, and how much of the longest hold it has.
pub type Held = ([Metres; 2], Share);

/// The drawing: spots that lie `step` apart, the best of them, and the stays of a chair that is moved.
pub fn hold_map(
    room: &Room,
    spots: &[Held],
    step: Metres,
    best: Option<[Metres; 2]>,
    stays: &[[Metres; 2]],
) -> Drawing {
    let units = Units::Metric;
    let mut drawing = plan(room, Scene { sun: None, lens: None, units });
    let view = Plan::of(room);
    let place = |[x, y]: [Metres; 2]| view.place(Vector::new(x.metres(), y.metres(), 0.0));
    let largest = LARGEST * place([step, Metres::default()]).distance(place([Metres::default(); 2]));
    let mut dots = Path::new();
    for (spot, share) in spots.iter().filter(|(_, share)| share.fraction() > 0.0) {
        // The area of a dot is its time.
        let radius = largest * share.fraction().sqrt();
        dots.ellipse(place(*spot), radius, radius);
    }
    drawing.fill(Paint::Lit, dots);
    let way: Vec<Point> = stays.iter().map(|stay| place(*stay)).collect();
    let (mut line, mut ends, mut ring) = (Path::new(), Path::new(), Path::new());
    line.polyline(&way);
    for at in &way {
        ends.ellipse(*at, STAY, STAY);
    }
    if let Some(best) = best {
        ring.ellipse(place(best), RING, RING);
    }
    drawing.stroke(Paint::Line, 1.6, line).fill(Paint::Solid, ends).stroke(Paint::Accent, 2.4, ring);
    drawing.hits.clear();
    drawing.text = format!("{} from above: the larger a dot, the longer the light holds there", room.name);
    drawing
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn dots_ring_and_way_are_layers_of_the_plan() {
        let m = Metres::from_metres;
        let room = Room::rectangle("r", "loft", [m(6.0), m(4.0), m(3.0)], Default::default());
        let spots = [([m(1.0), m(1.0)], Share::WHOLE), ([m(1.5), m(1.0)], Share::NONE)];
        let bare = hold_map(&room, &[], m(0.5), None, &[]);
        let full =
            hold_map(&room, &spots, m(0.5), Some([m(1.0), m(1.0)]), &[[m(1.0), m(1.0)], [m(1.5), m(1.0)]]);
        assert!(full.layers.len() > bare.layers.len());
        assert!(full.hits.is_empty() && full.text.starts_with("loft from above"));
    }
}
