//! The sun in the picture, as a wish asks for it: within the four planes of the lens, through an opening where the camera
//! stands in a room, and over all that stands around.

use super::within;
use crate::place::cone::Cone;
use crate::place::seasons::Around;
use crate::plan::search::above::{shown, shows};
use crate::plan::stage::{Stage, parts_of};
use crate::plan::wish::face::InPicture;
use crate::sky::sun::Sun;
use crate::units::{Bearing, Instant, Span, Spans, Vector, World};

/// What is asked of the picture for one bearing of the lens.
pub(in crate::plan) struct Pictured {
    /// The part of the sky in which the sun must be seen.
    asked: Option<Cone>,
    /// The part in which it must not.
    barred: Option<Cone>,
    /// What a lens in a room sees of the sky; `None` in the open.
    sky: Option<Vec<Cone>>,
    /// What hides the sun from a lens in a room; in the open, what hides it from the mark.
    around: Option<Around>,
}

impl Pictured {
    /// Of `stage` if its lens looked to `lens`; `None` if nothing is asked.
    pub(in crate::plan) fn of(stage: &Stage, lens: Bearing) -> Option<Self> {
        let picture = stage.shot.picture?;
        let (inside, near) = (picture.holds_sun(lens), picture.nears_sun(lens));
        let (asked, barred) = match stage.wish.in_picture {
            InPicture::Any => return None,
            InPicture::In => (Some(inside), None),
            InPicture::JustOut => (Some(near), Some(inside)),
            InPicture::Out => (None, Some(near)),
        };
        let camera = stage.shot.vantage.as_ref();
        let (sky, around) = (camera.and_then(|one| one.sky(lens)), camera.map(|one| one.around(lens)));
        Some(Self { asked, barred, sky, around })
    }

    /// What of `light` is left.
    pub(in crate::plan) fn leaves(&self, sun: &Sun, stage: &Stage, light: Spans) -> Spans {
        let left = match &self.asked {
            Some(part) => self.seen(sun, stage, (&light, part)),
            None => light,
        };
        match &self.barred {
            Some(part) => left.without(&self.seen(sun, stage, (&left, part))),
            None => left,
        }
    }

    /// Whether the light of an instant does.
    pub(in crate::plan) fn grants(&self, stage: &Stage, at: Instant, light: Vector<World>) -> bool {
        let sees = |part: &Cone| {
            let line = || match &self.around {
                Some(around) => around.on(stage.zone.date(at)),
                None => stage.skyline_at(at),
            };
            part.contains(light)
                && self.sky.as_ref().is_none_or(|sky| sky.iter().any(|cone| cone.contains(light)))
                && shows(line(), light)
        };
        self.asked.as_ref().is_none_or(sees) && !self.barred.as_ref().is_some_and(sees)
    }

    /// When, of `light`, the lens sees the sun in a part of the sky.
    fn seen(&self, sun: &Sun, stage: &Stage, (light, part): (&Spans, &Cone)) -> Spans {
        let inside = within(sun, light, core::slice::from_ref(part));
        let light = self.sky.as_ref().map_or_else(|| inside.clone(), |sky| within(sun, &inside, sky));
        let Some((first, last)) = light.as_slice().first().zip(light.as_slice().last()) else { return light };
        let around = match &self.around {
            Some(around) => (&around.in_leaf, around.seasons.as_ref()),
            None => (&stage.skyline, stage.seasons.as_ref()),
        };
        let whole = Span::new(first.start(), last.end()).into_iter();
        let parts = whole.flat_map(|whole| parts_of(&stage.zone, around, whole));
        let clear = parts.map(|(part, line)| shown(sun, line, &light.and(&part.into())));
        clear.reduce(|all, one| all.or(&one)).unwrap_or_default()
    }
}
