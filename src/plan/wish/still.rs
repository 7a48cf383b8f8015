//! Match this still: the light of a reference frame as a wish.
//!
//! Somebody turns a ball until it is lit like the face in the frame; the ball's light is then a direction off the lens and
//! a height, which become arc and heights with some give. The picture itself is never measured.

use super::{Arc, Heights, Wish};
use crate::light::class::light_bearing;
use crate::light::relative::{InLens, LensFrame};
use crate::units::{Bearing, Degrees, Height, Vector};

/// How far off the matched light may be to either side. Our own choice: nearer than an eye tells by a ball.
pub const GIVE: Degrees = Degrees::from_degrees(10.0);

/// A light told by the ball.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Still {
    /// Off the lens, positive to camera right.
    pub off: Degrees,
    /// Above the horizon.
    pub height: Height,
}

impl Still {
    /// As a level lens sees it.
    pub fn seen(&self) -> Vector<InLens> {
        let north = Bearing::default();
        let light = Vector::towards(light_bearing(self.off, north), self.height);
        LensFrame::new(north, Degrees::default()).sees(light)
    }

    /// The middle of a wish, where the ball begins.
    pub fn of(wish: &Wish) -> Self {
        let middle = |from: f64, to: f64| (from + to) / 2.0;
        Self {
            off: Degrees::from_degrees(middle(wish.arc.from.degrees(), wish.arc.to.degrees())).signed(),
            height: Height::clamped(middle(wish.heights.from.degrees(), wish.heights.to.degrees()).max(0.0)),
        }
    }

    /// `wish` with this light, and [`GIVE`] to each side of it; never below the horizon.
    pub fn fill(&self, wish: &Wish) -> Wish {
        let give = GIVE.degrees();
        let from = Degrees::from_degrees(self.off.degrees() - give).positive();
        let height = self.height.degrees();
        Wish {
            arc: Arc { from, to: Degrees::from_degrees(from.degrees() + 2.0 * give), either_side: false },
            heights: Heights {
                from: Height::clamped((height - give).max(0.0)),
                to: Height::clamped(height + give),
            },
            ..wish.clone()
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::light::phase::off_axis;
    use crate::plan::fixture::{field, on};
    use crate::plan::search::slots;
    use crate::plan::stage::Stage;
    use crate::plan::wish::DateRange;
    use crate::sky::sun::Sun;
    use proptest::prelude::*;

    proptest! {
        #[test]
        fn every_slot_looks_like_the_still(off in -180.0..180.0f64, height in 2.0..50.0f64, lens in 0.0..360.0f64) {
            let still = Still { off: Degrees::from_degrees(off), height: Height::clamped(height) };
            let stage = Stage { lens: Bearing::from_degrees(lens), wish: still.fill(&field().wish), ..field() };
            let sun = Sun::new(stage.site);
            let frame = LensFrame::new(stage.lens, Degrees::default());
            let found = slots(&sun, &stage, &[DateRange { from: on(2027, 3, 1), to: on(2027, 3, 31) }]);
            for slot in found {
                let seen = frame.sees(slot.light.direction);
                // Ten degrees of bearing and ten of height are at most the diagonal of both.
                prop_assert!(seen.angle_to(still.seen()).degrees() < 14.5);
            }
        }

        #[test]
        fn filled_and_read_back(off in -179.0..180.0f64, height in 10.0..80.0f64) {
            let still = Still { off: Degrees::from_degrees(off), height: Height::clamped(height) };
            let back = Still::of(&still.fill(&field().wish));
            prop_assert!((back.off.degrees() - off).abs() < 1e-9 && (back.height.degrees() - height).abs() < 1e-9);
        }
    }

    #[test]
    fn light_from_behind_is_seen_behind() {
        let back = Still { off: Degrees::from_degrees(180.0), height: Height::clamped(0.0) };
        assert!((back.seen().y - 1.0).abs() < 1e-12);
        let axis = LensFrame::new(Bearing::default(), Degrees::default()).ahead();
        assert!(off_axis(light_bearing(back.off, Bearing::default()).level(), axis).degrees() < 1e-9);
    }
}
