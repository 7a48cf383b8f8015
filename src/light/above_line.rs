//! A part of the sky, parted by the skyline: what of it is sky, and what is ground, hills and houses.
//!
//! Corners are directions; the part is convex. There is no sky below the horizon, whatever the skyline says.

use crate::place::polygon::Few;
use crate::place::skyline::{Edge, Skyline};
use crate::units::{Degrees, Vector, World};

type Part = Few<World>;

/// Calls `each` with every convex piece that is sky.
pub(super) fn sky(line: &Skyline, part: &Part, mut each: impl FnMut(&[Vector<World>])) {
    let upper = cut(part, Vector::UP);
    if line.is_level() {
        tell(&upper, &mut each);
    }
    over_edges(line, &upper, |over, edge| tell(&cut(over, edge.above.normal), &mut each));
}

/// Calls `each` with every convex piece that is not.
pub(super) fn ground(line: &Skyline, part: &Part, mut each: impl FnMut(&[Vector<World>])) {
    tell(&cut(part, -Vector::UP), &mut each);
    over_edges(line, &cut(part, Vector::UP), |over, edge| tell(&cut(over, -edge.above.normal), &mut each));
}

/// What of a part stands over or under each straight piece of the skyline.
fn over_edges(line: &Skyline, part: &Part, mut each: impl FnMut(&Part, &Edge)) {
    let quarter = Degrees::from_degrees(90.0);
    for edge in line.edges().iter().filter(|_| !part.is_nothing()) {
        let right_of = edge.from.turned(quarter).level();
        let left_of = -edge.to().turned(quarter).level();
        let over = cut(&cut(part, right_of), left_of);
        if !over.is_nothing() {
            each(&over, edge);
        }
    }
}

fn cut(part: &Part, inwards: Vector<World>) -> Part {
    let mut part = *part;
    part.cut(inwards);
    part
}

fn tell(part: &Part, each: &mut impl FnMut(&[Vector<World>])) {
    if !part.is_nothing() {
        each(part.corners());
    }
}
