//! Moving the edges of a wish's arc, by drag and by key.
//!
//! Edges stand on whole degrees, keep their order and some width between them, and may run through the back
//! and the front: the arc stays `0 ≤ from < 360`, `from + 10 ≤ to ≤ from + 360`.

use crate::plan::wish::Arc;
use crate::units::Degrees;

/// Narrowest arc that a drag leaves. Our own choice: the sun crosses it in half an hour.
const NARROWEST: f64 = 10.0;

/// All round.
const WIDEST: f64 = 360.0;

/// An edge of an arc.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Edge {
    /// Where it begins.
    From,
    /// Where it ends.
    To,
}

impl Edge {
    /// Where it stands.
    pub const fn of(self, arc: Arc) -> Degrees {
        match self {
            Self::From => arc.from,
            Self::To => arc.to,
        }
    }
}

/// The angle of a bracket that is, or is not, the mirror image of an edge; and back again.
pub fn mirrored_angle(off: Degrees, mirrored: bool) -> Degrees {
    Degrees::from_degrees(if mirrored { -off.degrees() } else { off.degrees() })
}

/// The arc after an edge (or its mirror image) was dragged to an angle off the lens.
///
/// The edge goes the short way round, and stops short of the other edge.
pub fn moved(arc: Arc, edge: Edge, mirrored: bool, angle: Degrees) -> Arc {
    let target = mirrored_angle(angle, mirrored).degrees();
    let turn = Degrees::from_degrees(target - edge.of(arc).degrees()).signed();
    moved_by(arc, edge, turn)
}

/// The arc after an edge was moved by a step, as by a key; positive widens at `To` and narrows at `From`.
pub fn moved_by(arc: Arc, edge: Edge, step: Degrees) -> Arc {
    let (from, to) = (arc.from.degrees(), arc.to.degrees());
    let wanted = (edge.of(arc).degrees() + step.degrees()).round();
    let (from, to) = match edge {
        Edge::From => (wanted.clamp(to - WIDEST, to - NARROWEST), to),
        Edge::To => (from, wanted.clamp(from + NARROWEST, from + WIDEST)),
    };
    let start = Degrees::from_degrees(from).positive().degrees();
    Arc { from: Degrees::from_degrees(start), to: Degrees::from_degrees(start + (to - from)), ..arc }
}

#[cfg(test)]
mod tests {
    use super::*;
    use proptest::prelude::*;

    fn arc(from: f64, to: f64) -> Arc {
        Arc { from: Degrees::from_degrees(from), to: Degrees::from_degrees(to), either_side: true }
    }

    fn dragged(start: Arc, edge: Edge, mirrored: bool, angle: f64) -> (f64, f64) {
        let arc = moved(start, edge, mirrored, Degrees::from_degrees(angle));
        (arc.from.degrees(), arc.to.degrees())
    }

    #[test]
    fn an_edge_follows_the_pointer_to_whole_degrees() {
        assert_eq!(dragged(arc(112.0, 165.0), Edge::From, false, 100.4), (100.0, 165.0));
        assert_eq!(dragged(arc(112.0, 165.0), Edge::To, true, 200.0), (112.0, 160.0));
    }

    #[test]
    fn arcs_run_through_the_back_and_the_front() {
        assert_eq!(dragged(arc(112.0, 165.0), Edge::To, false, 190.0), (112.0, 190.0));
        assert_eq!(dragged(arc(20.0, 60.0), Edge::From, false, 350.0), (350.0, 420.0));
        assert_eq!(dragged(arc(350.0, 420.0), Edge::To, false, 50.0), (350.0, 410.0));
    }

    #[test]
    fn edges_stop_short_of_each_other() {
        assert_eq!(dragged(arc(112.0, 165.0), Edge::From, false, 170.0), (155.0, 165.0));
        assert_eq!(dragged(arc(112.0, 165.0), Edge::To, false, 90.0), (112.0, 122.0));
        assert_eq!(dragged(arc(10.0, 360.0), Edge::To, false, 20.0), (10.0, 370.0), "all round and no more");
    }

    #[test]
    fn keys_take_steps() {
        let step =
            |by: f64| moved_by(arc(112.5, 157.5), Edge::From, Degrees::from_degrees(by)).from.degrees();
        assert_eq!(step(1.0), 114.0);
        assert_eq!(step(-10.0), 103.0);
    }

    proptest! {
        #[test]
        fn an_arc_stays_an_arc(
            from in 0.0..360.0f64, width in 10.0..=360.0f64, angle in -720.0..720.0f64,
            end in any::<bool>(), mirrored in any::<bool>(),
        ) {
            let edge = if end { Edge::From } else { Edge::To };
            let (from, to) = dragged(arc(from, from + width), edge, mirrored, angle);
            prop_assert!((0.0..360.0).contains(&from));
            prop_assert!((10.0 - 1e-9..=360.0 + 1e-9).contains(&(to - from)), "{} {}", from, to);
        }
    }
}
