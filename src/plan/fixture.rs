//! Stages for the tests of this room: a loft, an open field, and random ones from everywhere on Earth.

use std::sync;

use chrono::{NaiveDate, NaiveTime};
use proptest::prelude::*;

use crate::light::colour::sun::{Haze, temperature};
use crate::place::blocker::{Blocker, DayOfYear, Eye, Kind, Leaves};
use crate::place::cone::{Cone, HalfSpace};
use crate::place::opening::Opening;
use crate::place::room::Room;
use crate::place::seasons::{Around, Seasons};
use crate::place::site::Site;
use crate::place::skyline::{Point, Skyline};
use crate::place::zone::Zone;
use crate::plan::cutting::Gauge;
use crate::plan::in_room::RoomStage;
use crate::plan::levels;
use crate::plan::levels::wished::{LevelWish, Wished};
use crate::plan::shot::Shot;
use crate::plan::stage::{Stage, StageOpening};
use crate::plan::wish::face::{FaceWish, InPicture};
use crate::plan::wish::{Arc, ClockRange, Heights, Sky, SunOnMark, Wish};
use crate::units::{
    Bearing, Degrees, Duration, Height, Instant, Latitude, Longitude, Metres, Mired, Span, Stops, Vector,
    World,
};

pub(super) fn site(latitude: f64, longitude: f64) -> Site {
    Site {
        latitude: Latitude::from_degrees(latitude).unwrap(),
        longitude: Longitude::from_degrees(longitude).unwrap(),
        elevation: Metres::from_metres(0.0),
    }
}

pub(super) fn on(year: i32, month: u32, day: u32) -> NaiveDate {
    NaiveDate::from_ymd_opt(year, month, day).unwrap()
}

/// Three times as bright on one side as on the other, or so: by day at site T, in the open.
pub(super) fn of_a_ratio() -> Stage {
    let subject = levels::fixture::open(200.0);
    let mut stage = Stage { wish: wish((0.0, 360.0), (3.0, 90.0), SunOnMark::Any), ..field() };
    stage.wish.levels = LevelWish { ratio: Some([2.5, 4.0]), ..LevelWish::default() };
    (stage.site, stage.zone) = (subject.site, subject.zone.clone());
    stage.lens = Bearing::from_degrees(90.0);
    stage.levels = Some(sync::Arc::new(Wished { wish: stage.wish.levels, subject }));
    stage
}

pub(super) fn at(text: &str) -> Instant {
    Instant::parse(text).unwrap()
}

pub(super) fn span(from: &str, to: &str) -> Span {
    Span::new(at(from), at(to)).unwrap()
}

pub(super) fn time(hour: u32, minute: u32) -> NaiveTime {
    NaiveTime::from_hms_opt(hour, minute, 0).unwrap()
}

/// A clock `standard` minutes ahead of UTC, and an hour more within each of `summers`.
pub(super) fn clock(standard: i64, summers: &[(&str, &str)]) -> Zone {
    let summers: Vec<Span> = summers.iter().map(|(from, to)| span(from, to)).collect();
    let ask = |now| {
        let summer = summers.iter().any(|summer| summer.contains(now));
        Some(Duration::from_minutes(if summer { standard + 60 } else { standard }))
    };
    Zone::by_asking("somewhere", span("2026-01-01T00:00:00Z", "2029-01-01T00:00:00Z"), ask).unwrap()
}

/// Western European time of 2026 and 2027.
pub(super) fn lisbon() -> Zone {
    clock(
        0,
        &[
            ("2026-03-29T01:00:00Z", "2026-10-25T01:00:00Z"),
            ("2027-03-28T01:00:00Z", "2027-10-31T01:00:00Z"),
            ("2028-03-26T01:00:00Z", "2028-10-29T01:00:00Z"),
        ],
    )
}

pub(super) fn wish(arc: (f64, f64), heights: (f64, f64), sun_on_mark: SunOnMark) -> Wish {
    Wish {
        arc: Arc { from: Degrees::from_degrees(arc.0), to: Degrees::from_degrees(arc.1), either_side: true },
        heights: Heights { from: Height::clamped(heights.0), to: Height::clamped(heights.1) },
        sun_on_mark,
        sky: Sky::Any,
        dates: vec![],
        hours: None,
        face: FaceWish::default(),
        in_picture: InPicture::Any,
        levels: Default::default(),
    }
}

/// What an upright rectangle lets through: its wall faces `wall`, and left, right, lower and upper edge lie at
/// these distances from the eye's foot on the wall, in units of the eye's distance from it.
pub(super) fn window(name: &str, wall: f64, sides: (f64, f64), levels: (f64, f64)) -> StageOpening {
    let out = Bearing::from_degrees(wall).level();
    let right = Bearing::from_degrees(wall + 90.0).level();
    let edge = |along: Vector<World>, least: f64, sign: f64| {
        HalfSpace::beside(((along - out * least) * sign).unit().unwrap())
    };
    let sides = vec![
        edge(right, sides.0, 1.0),
        edge(right, sides.1, -1.0),
        edge(Vector::UP, levels.0, 1.0),
        edge(Vector::UP, levels.1, -1.0),
        HalfSpace::beside(out),
    ];
    StageOpening {
        id: name.into(),
        name: name.into(),
        cones: vec![Cone { sides }],
        uncertainty: Degrees::from_degrees(5.0),
    }
}

pub(super) fn skyline(points: &[(f64, f64)]) -> Skyline {
    let point = |(bearing, height): &(f64, f64)| Point {
        bearing: Bearing::from_degrees(*bearing),
        height: Height::clamped(*height),
    };
    Skyline::new(points.iter().map(point).collect())
}

/// A loft with two tall west windows on a lagoon, the mark 3 m inside; the lens looks south-west.
pub(super) fn loft() -> Stage {
    Stage {
        site: site(40.64, -8.65),
        zone: lisbon(),
        lens: Bearing::from_degrees(215.0),
        lens_uncertainty: Degrees::from_degrees(5.0),
        free: None,
        wish: wish((112.0, 165.0), (4.0, 16.0), SunOnMark::Yes),
        takes: Duration::from_minutes(25),
        openings: Some(vec![
            window("left window", 248.0, (-0.5, -0.1), (0.0, 0.9)),
            window("right window", 248.0, (0.1, 0.5), (0.0, 0.9)),
        ]),
        skyline: Skyline::default(),
        seasons: None,
        shot: Shot::default(),
        levels: None,
    }
}

/// The loft as a room: 8 × 6 m, two windows of 1.2 × 1.7 m in the wall that faces 248°.
pub(super) fn room_stage() -> RoomStage {
    let m = Metres::from_metres;
    let mut room = Room::rectangle("r", "loft", [8.0, 6.0, 3.4].map(m), Bearing::from_degrees(248.0));
    let window = |id: &str, name: &str, offset: f64| Opening {
        reveal: m(0.35),
        ..Opening::rectangle(id, name, 0, [offset, 0.9, 1.2, 1.7].map(m))
    };
    room.openings = vec![window("l", "left window", 4.6), window("r", "right window", 1.8)];
    let wish = Wish {
        arc: Arc { from: Degrees::from_degrees(0.0), to: Degrees::from_degrees(360.0), either_side: false },
        ..wish((0.0, 360.0), (-90.0, 90.0), SunOnMark::Yes)
    };
    RoomStage { stage: Stage { wish, ..loft() }, room, far: Around::default() }
}

/// The salt pans: open and flat.
pub(super) fn field() -> Stage {
    Stage { openings: None, wish: wish((150.0, 210.0), (2.0, 20.0), SunOnMark::Any), ..loft() }
}

fn some_wish() -> impl Strategy<Value = Wish> {
    let arc = (0.0..360.0f64, 5.0..=360.0f64, any::<bool>());
    let heights = (prop_oneof![-8.0..0.0f64, 0.0..40.0f64], 2.0..50.0f64);
    let mark = prop_oneof![Just(SunOnMark::Any), Just(SunOnMark::Yes), Just(SunOnMark::No)];
    let hours = prop_oneof![
        2 => Just(None),
        1 => (0u32..24, 0u32..60, 0u32..24).prop_map(|(from, minute, to)| {
            Some(ClockRange { from: time(from, minute), to: time(to, 0) })
        }),
    ];
    (arc, heights, mark, hours).prop_map(|((from, width, either_side), (low, more), sun_on_mark, hours)| {
        let mut wish = wish((from, from + width), (low, (low + more).min(90.0)), sun_on_mark);
        wish.arc.either_side = either_side;
        wish.hours = hours;
        wish
    })
}

fn some_openings() -> impl Strategy<Value = Option<Vec<StageOpening>>> {
    let one = (0.0..360.0f64, -2.0..1.0f64, 0.2..3.0f64, -0.3..0.5f64, 0.3..3.0f64).prop_map(
        |(wall, left, wide, sill, high)| window("window", wall, (left, left + wide), (sill, sill + high)),
    );
    prop_oneof![1 => Just(None), 2 => proptest::collection::vec(one, 0..4).prop_map(Some)]
}

/// None, a skyline for all year, or a tree before it that loses its leaves (and gets them back) within the year.
fn some_skyline() -> impl Strategy<Value = (Skyline, Option<Seasons>)> {
    let points = proptest::collection::vec((0.0..360.0f64, -2.0..30.0f64), 1..12);
    let day = || (1u8..13, 1u8..29).prop_map(|(month, day)| DayOfYear { month, day });
    let tree = (0.0..360.0f64, 2.0..20.0f64, day(), day());
    prop_oneof![
        Just((Skyline::default(), None)),
        points.prop_map(|points| (skyline(&points), None)),
        tree.prop_map(|(bearing, height, on, off)| {
            let tree = tree_at(bearing, height, Leaves { on, off });
            (Skyline::default(), Seasons::around(&Skyline::default(), &[tree], Eye::default()))
        }),
    ]
}

/// A tree 10 m away, 12 m wide.
pub(super) fn tree_at(bearing: f64, height: f64, leaves: Leaves) -> Blocker {
    Blocker {
        id: "tree".into(),
        name: "tree".into(),
        kind: Kind::Tree,
        bearing: Bearing::from_degrees(bearing),
        distance: Metres::from_metres(10.0),
        width: Metres::from_metres(12.0),
        depth: Metres::default(),
        height: Metres::from_metres(height),
        turned: Degrees::default(),
        leaves: Some(leaves),
    }
}

/// A clock somewhere on Earth, with a summer time that begins and ends in 2027.
fn some_clock() -> impl Strategy<Value = Zone> {
    (-48i64..56)
        .prop_map(|quarters| clock(quarters * 15, &[("2027-03-28T01:00:00Z", "2027-10-31T01:00:00Z")]))
}

/// A stage anywhere on Earth, in the open or in a room, with or without a skyline.
pub(super) fn some_stage() -> impl Strategy<Value = Stage> {
    let place = (-90.0..=90.0f64, -180.0..=180.0f64);
    (place, some_clock(), 0.0..360.0f64, some_wish(), some_openings(), some_skyline()).prop_map(
        |((latitude, longitude), zone, lens, wish, openings, (skyline, seasons))| Stage {
            site: site(latitude, longitude),
            zone,
            lens: Bearing::from_degrees(lens),
            wish,
            openings,
            skyline,
            seasons,
            takes: Duration::ZERO,
            ..loft()
        },
    )
}

/// Two days that begin anywhere in 2027, transitions of the clock included more often than by chance.
pub(super) fn some_days() -> impl Strategy<Value = Span> {
    let minute = prop_oneof![0i64..525_600, 123_000i64..124_500, 435_500i64..437_000];
    minute.prop_map(|minute| {
        let start = at("2027-01-01T00:00:00Z") + Duration::from_minutes(minute);
        Span::new(start, start + Duration::from_minutes(2 * 1440)).unwrap()
    })
}

/// The colour of a sun in middling air, nothing about the ratio.
pub(super) struct ClearSun;

impl Gauge for ClearSun {
    fn ratio(&self, _: Vector<World>, _: Instant) -> Option<Stops> {
        None
    }

    fn colour(&self, light: Vector<World>, _: Instant) -> Option<Mired> {
        temperature(light.height(), Haze::MIDDLING).map(|kelvin| kelvin.mired())
    }
}
