//! Ready-made wishes for the looks that are asked for most.
//!
//! The directions are the handbook's classes (B2); bounds inside them, and every height, are common practice
//! with no source. A preset only fills the arc, the heights and the sun on the mark: dates, hours and sky stay
//! as they were, and each bound can be changed afterwards.

use super::{Arc, Heights, SunOnMark, Wish};
use crate::units::{Degrees, Height};

/// A ready-made wish.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Preset {
    /// Stable name for addresses and tests.
    pub id: &'static str,
    /// What the trade calls it.
    pub name: &'static str,
    /// What it looks like, in a few words.
    pub looks: &'static str,
    /// Where the light comes from.
    pub arc: Arc,
    /// How high it stands.
    pub heights: Heights,
    /// Whether it reaches the mark.
    pub sun_on_mark: SunOnMark,
}

/// All presets, in the order of the screen. Common practice, no source.
pub const PRESETS: [Preset; 8] = [
    Preset {
        id: "rim",
        name: "rim",
        looks: "a bright outline, the face in shade",
        arc: arc(150.0, 210.0),
        heights: heights(4.0, 35.0),
        sun_on_mark: SunOnMark::Yes,
    },
    Preset {
        id: "three-quarter-back",
        name: "¾ back",
        looks: "a bright edge on one side, the shadow side to the lens",
        arc: arc(112.5, 157.5),
        heights: heights(4.0, 30.0),
        sun_on_mark: SunOnMark::Yes,
    },
    Preset {
        id: "split",
        name: "split",
        looks: "half the face lit, strong texture",
        arc: arc(67.5, 112.5),
        heights: heights(4.0, 40.0),
        sun_on_mark: SunOnMark::Yes,
    },
    Preset {
        id: "window-wrap",
        name: "window wrap",
        looks: "soft light from the window's side, no sun on the mark",
        arc: arc(22.5, 112.5),
        heights: heights(10.0, 65.0),
        sun_on_mark: SunOnMark::No,
    },
    Preset {
        id: "shaft",
        name: "shaft",
        looks: "sunlight falling in behind the mark",
        arc: arc(112.5, 247.5),
        heights: heights(10.0, 45.0),
        sun_on_mark: SunOnMark::No,
    },
    Preset {
        id: "silhouette",
        name: "silhouette",
        looks: "a dark shape before a bright, low sun",
        arc: arc(165.0, 195.0),
        heights: heights(0.0, 12.0),
        sun_on_mark: SunOnMark::Yes,
    },
    Preset {
        id: "blue-hour",
        name: "blue hour",
        looks: "no sun, a blue sky that still gives light",
        arc: arc(0.0, 360.0),
        heights: heights(-6.0, -4.0),
        sun_on_mark: SunOnMark::Any,
    },
    Preset {
        id: "flat",
        name: "flat",
        looks: "light from the lens, little modelling",
        arc: arc(-22.5 + 360.0, 22.5 + 360.0),
        heights: heights(10.0, 50.0),
        sun_on_mark: SunOnMark::Yes,
    },
];

impl Preset {
    /// `wish` with this light.
    pub fn fill(&self, wish: &Wish) -> Wish {
        Wish { arc: self.arc, heights: self.heights, sun_on_mark: self.sun_on_mark, ..wish.clone() }
    }

    /// Whether `wish` asks for exactly this light.
    pub fn matches(&self, wish: &Wish) -> bool {
        self.arc == wish.arc && self.heights == wish.heights && self.sun_on_mark == wish.sun_on_mark
    }
}

/// A range of sun heights that the trade has a name for. Handbook A4: no standard, so every bound is a setting.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct NamedHeights {
    /// Stable name.
    pub id: &'static str,
    /// What the trade calls it.
    pub name: &'static str,
    /// From the lowest to the highest.
    pub heights: Heights,
}

/// Named ranges with the default offered for each. Common practice, no source.
pub const NAMED_HEIGHTS: [NamedHeights; 4] = [
    NamedHeights { id: "blue-hour", name: "blue hour", heights: heights(-6.0, -4.0) },
    NamedHeights { id: "golden-hour", name: "golden hour", heights: heights(-4.0, 6.0) },
    NamedHeights { id: "low-sun", name: "low sun", heights: heights(0.0, 10.0) },
    NamedHeights { id: "hard-midday", name: "hard midday", heights: heights(50.0, 90.0) },
];

/// Either side of the lens, `from` upwards to `to`.
const fn arc(from: f64, to: f64) -> Arc {
    Arc { from: Degrees::from_degrees(from), to: Degrees::from_degrees(to), either_side: true }
}

/// From the lowest to the highest.
const fn heights(from: f64, to: f64) -> Heights {
    Heights { from: Height::clamped(from), to: Height::clamped(to) }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::plan::wish::face::{FaceWish, InPicture};
    use crate::plan::wish::region::bearings;
    use crate::units::Bearing;

    #[test]
    fn every_preset_is_a_wish_that_the_document_allows() {
        for preset in PRESETS {
            let (from, to) = (preset.arc.from.degrees(), preset.arc.to.degrees());
            assert!((0.0..=360.0).contains(&from), "{}", preset.id);
            assert!((from..=from + 360.0).contains(&to), "{}", preset.id);
            assert!(preset.heights.from < preset.heights.to, "{}", preset.id);
        }
    }

    #[test]
    fn names_are_told_apart() {
        for (n, preset) in PRESETS.iter().enumerate() {
            assert!(PRESETS[n + 1..].iter().all(|other| other.id != preset.id && other.name != preset.name));
        }
    }

    #[test]
    fn light_comes_from_where_the_name_says() {
        let covers = |id: &str, off: f64| {
            let preset = PRESETS.iter().find(|preset| preset.id == id).unwrap();
            // The lens looks north, so off the lens to the right is a bearing east of south.
            let arcs = bearings(preset.arc, Bearing::from_degrees(0.0));
            arcs.iter().any(|arc| arc.contains(Bearing::from_degrees(180.0 - off)))
        };
        assert!(covers("rim", 180.0) && !covers("rim", 90.0));
        assert!(covers("three-quarter-back", 135.0) && covers("three-quarter-back", -135.0));
        assert!(!covers("three-quarter-back", 180.0));
        assert!(covers("split", 90.0) && covers("split", -90.0));
        assert!(
            covers("flat", 0.0) && covers("flat", 20.0) && covers("flat", -20.0) && !covers("flat", 30.0)
        );
        assert!(covers("blue-hour", 77.0));
    }

    #[test]
    fn filling_keeps_dates_and_hours() {
        let wish = Wish {
            arc: arc(0.0, 10.0),
            heights: heights(1.0, 2.0),
            sun_on_mark: SunOnMark::Any,
            sky: crate::plan::wish::Sky::Clear,
            dates: vec![],
            hours: None,
            face: FaceWish::default(),
            in_picture: InPicture::Any,
            levels: Default::default(),
        };
        let rim = PRESETS[0].fill(&wish);
        assert!(PRESETS[0].matches(&rim) && !PRESETS[1].matches(&rim));
        assert_eq!(rim.sky, wish.sky);
    }
}
