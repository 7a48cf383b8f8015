//! What entities are called on the screens.

use super::document::{SavedSlot, Scene, SetUp};
use super::find::Standing;
use crate::light::class::light_bearing;
use crate::light::relative::{InLens, LensFrame};
use crate::plan::wish::lens::LensChoice;
use crate::units::{Degrees, Height, Span, Vector};
use crate::words;

impl Scene {
    /// "4 · Mending the sail".
    pub fn heading(&self) -> String {
        match (self.number.is_empty(), self.title.is_empty()) {
            (false, false) => format!("{} · {}", self.number, self.title),
            (false, true) => format!("Scene {}", self.number),
            (true, false) => self.title.clone(),
            (true, true) => "A scene without a name".to_owned(),
        }
    }
}

impl Standing<'_> {
    /// "Sail loft, by the bench".
    pub fn words(&self) -> String {
        match (self.mark, self.room) {
            (Some(mark), _) => format!("{}, {}", self.location.name, mark.name),
            (None, Some(room)) => format!("{}, {}", self.location.name, room.name),
            (None, None) => self.location.name.clone(),
        }
    }
}

impl SetUp {
    /// "set-up A, 50 mm", "set-up A, 50 mm, lens 190°–228°".
    pub fn words(&self) -> String {
        let lens = match self.lens.choice {
            LensChoice::Fixed => String::new(),
            LensChoice::Range { from_deg, to_deg } => {
                format!(", lens {}", words::bearings_from_to(from_deg, to_deg))
            }
            LensChoice::AnyGoodBackground => ", any good background".to_owned(),
        };
        format!("set-up {}, {} mm{lens}", self.name, self.lens.focal_mm)
    }

    /// The middle of the wish as the lens sees it, for a small ball; nothing for a wish without the sun.
    pub fn wished_light(&self) -> Option<Vector<InLens>> {
        let (arc, heights) = (self.wish.arc, self.wish.heights);
        let height = (heights.from.degrees() + heights.to.degrees()) / 2.0;
        if height <= 0.0 {
            return None;
        }
        let off = Degrees::from_degrees((arc.from.degrees() + arc.to.degrees()) / 2.0);
        let light = Vector::towards(light_bearing(off, self.lens.bearing), Height::clamped(height));
        Some(LensFrame::new(self.lens.bearing, self.lens.tilt).sees(light))
    }
}

impl SavedSlot {
    /// Whether it is the slot found at `span`: they share more than half of the shorter one. Edges move by
    /// seconds when a wall is measured again.
    pub fn is_about(&self, span: Span) -> bool {
        let Some(kept) = Span::new(self.start, self.end) else { return false };
        let shorter = kept.duration().min(span.duration());
        kept.and(span).is_some_and(|shared| 2 * shared.duration().millis() > shorter.millis())
    }
}

#[cfg(test)]
mod tests {
    use crate::plan::wish::lens::LensChoice;
    use crate::project::demo;
    use crate::units::{Bearing, Duration, Instant, Span};

    #[test]
    fn the_demo_is_called_what_it_is() {
        let demo = demo::project();
        let (scene, set_up) = demo.set_up("set-up-4a").unwrap();
        assert_eq!(scene.heading(), "4 · Mending the sail");
        let standing = demo.standing(set_up.at.as_ref().unwrap()).unwrap();
        assert_eq!(standing.words(), "Sail loft, by the bench");
        assert_eq!(set_up.words(), "set-up A, 50 mm");
        let mut free = set_up.clone();
        free.lens.choice = LensChoice::Range {
            from_deg: Bearing::from_degrees(190.0),
            to_deg: Bearing::from_degrees(228.0),
        };
        assert_eq!(free.words(), "set-up A, 50 mm, lens 190°–228°");
        free.lens.choice = LensChoice::AnyGoodBackground;
        assert_eq!(free.words(), "set-up A, 50 mm, any good background");
        // Three-quarter back, right: to camera right and before the lens.
        let light = set_up.wished_light().unwrap();
        assert!(light.x > 0.3 && light.y > 0.3);
        let blue_hour = demo.set_up("set-up-9a").unwrap().1;
        assert_eq!(blue_hour.wished_light(), None);
    }

    #[test]
    fn a_kept_slot_is_known_again_though_its_edges_moved() {
        let at = |minute| Instant::default() + Duration::from_minutes(minute);
        let kept =
            crate::project::document::SavedSlot { id: "k".to_owned(), start: at(0), end: at(30), lens: None };
        assert!(kept.is_about(Span::new(at(4), at(34)).unwrap()));
        assert!(!kept.is_about(Span::new(at(20), at(60)).unwrap()));
        assert!(!kept.is_about(Span::new(at(1440), at(1470)).unwrap()));
    }
}
