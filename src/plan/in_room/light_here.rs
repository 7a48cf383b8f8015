//! The sky's light on the planes of a face at a spot, under three skies, as shares of the light outdoors.

use super::{RoomStage, seen_from};
use crate::light::interreflected::Bounced;
use crate::light::sky_model::SkyModel;
use crate::light::skylight::{Facing, Inside, SkyShare};
use crate::units::{Bearing, Degrees, InRoom, Lux, Share, Vector, World};

/// A plane and the sky's light on it.
#[derive(Clone, Debug, PartialEq)]
pub struct PlaneLight {
    /// "left cheek".
    pub name: &'static str,
    /// Under the overcast, the uniform and the clear sky; no clear sky without a sun.
    pub shares: [Option<SkyShare>; 3],
}

/// Front, cheeks, crown of a face that looks to a bearing, and the floor below it; glass and bars counted.
pub fn planes(
    place: &RoomStage,
    face: Vector<InRoom>,
    looks: Bearing,
    sun: Option<Vector<World>>,
) -> Vec<PlaneLight> {
    let skies = [Some(SkyModel::OVERCAST), Some(SkyModel::UNIFORM), sun.map(SkyModel::clear)];
    let side = |turn: f64| looks.turned(Degrees::from_degrees(turn)).level();
    let on_floor = Vector::new(face.x, face.y, 0.0);
    let all = [
        ("front of the face", face, side(0.0)),
        ("its left cheek", face, side(-90.0)),
        ("its right cheek", face, side(90.0)),
        ("crown, looking up", face, Vector::UP),
        ("floor below", on_floor, Vector::UP),
    ];
    let light = |(name, at, normal): (&'static str, Vector<InRoom>, Vector<World>)| {
        let line = seen_from(&place.room, &place.far.in_leaf, at);
        let inside = Inside { room: &place.room, line: &line };
        let share = |sky: SkyModel| inside.sky(Facing { at, normal }, &sky).iter().map(|one| one.light).sum();
        PlaneLight { name, shares: skies.map(|sky| sky.map(share)) }
    };
    all.into_iter().map(light).collect()
}

/// What walls, floor and ceiling add on every plane under an overcast sky, as a share of the light outdoors; `ground` is what
/// the ground there gives back. An estimate.
pub fn bounced(place: &RoomStage, face: Vector<InRoom>, ground: Share) -> Share {
    let line = seen_from(&place.room, &place.far.in_leaf, face);
    let inside = Inside { room: &place.room, line: &line };
    let whole = Lux::from_lux(1.0);
    let before = |normal: Vector<World>| {
        let sky = inside.open_sky(normal, &SkyModel::OVERCAST).of(whole);
        (sky, whole.share(ground) * (0.5 * (1.0 - normal.z)))
    };
    Share::clamped(Bounced::of(&inside, (Vector::UP, Lux::default()), before).total().lux())
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::plan::fixture::room_stage;
    use crate::units::Height;

    #[test]
    fn a_face_that_looks_out_gets_most_in_front() {
        let place = room_stage();
        let sun = Vector::towards(Bearing::from_degrees(200.0), Height::clamped(30.0));
        let found = planes(&place, Vector::new(4.0, 2.0, 1.5), Bearing::from_degrees(248.0), Some(sun));
        let share = |plane: usize, sky: usize| found[plane].shares[sky].unwrap().ratio();
        for sky in 0..3 {
            assert!(share(0, sky) > share(1, sky) && share(0, sky) > share(2, sky) && share(4, sky) > 0.0);
        }
        // The sun stands left of the way out, and with it the bright part of the clear sky.
        assert!(share(1, 2) / share(2, 2) > share(1, 1) / share(2, 1));
        let dark = planes(&place, Vector::new(4.0, 2.0, 1.5), Bearing::from_degrees(248.0), None);
        assert_eq!(dark[0].shares[2], None);
        let bounced = bounced(&place, Vector::new(4.0, 2.0, 1.5), Share::clamped(0.2)).fraction();
        assert!(bounced > 0.001 && bounced < 0.05, "{bounced}");
    }
}
