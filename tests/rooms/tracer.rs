//! One ray from a point of a room towards the sky: through which opening it leaves, if it does.

use slantlight::place::opening::Opening;
use slantlight::place::room::Room;

/// x, y, z in axes of the room.
pub type P = [f64; 3];

/// Nearer than this is where the ray starts.
const START: f64 = 1e-9;

/// A direction of the world in axes of the room.
pub fn to_room(room: &Room, bearing_deg: f64, height_deg: f64) -> P {
    let (bearing, height) = (bearing_deg.to_radians(), height_deg.to_radians());
    let turn = room.wall_bearing.degrees().to_radians();
    // x points a quarter turn left of the bearing of wall 0, y against it.
    let (x, y) = (turn - core::f64::consts::FRAC_PI_2, turn + core::f64::consts::PI);
    [height.cos() * (bearing - x).cos(), height.cos() * (bearing - y).cos(), height.sin()]
}

/// The opening by which a ray from `from` along `way` leaves the room into the open sky.
pub fn leaves(room: &Room, from: P, way: P) -> Option<usize> {
    let corners: Vec<[f64; 2]> = room.floor.iter().map(|corner| corner.map(|size| size.metres())).collect();
    let top = room.ceiling.metres();
    let mut nearest = f64::INFINITY;
    let mut wall_hit = None;
    for wall in 0..corners.len() {
        let (a, b) = (corners[wall], corners[(wall + 1) % corners.len()]);
        let (dx, dy) = (b[0] - a[0], b[1] - a[1]);
        let length = dx.hypot(dy);
        let (ux, uy) = (dx / length, dy / length);
        let (ox, oy) = (uy, -ux);
        let facing = way[0] * ox + way[1] * oy;
        let reach = ((a[0] - from[0]) * ox + (a[1] - from[1]) * oy) / facing;
        let hit = along(from, way, reach);
        let u = (hit[0] - a[0]) * ux + (hit[1] - a[1]) * uy;
        if facing.abs() > 1e-12 && reach > START && reach < nearest && u >= 0.0 && u <= length {
            (nearest, wall_hit) = (reach, Some((wall, u, facing, [ux, uy])));
        }
    }
    let roof = (top - from[2]) / way[2];
    let floor = -from[2] / way[2];
    if way[2] < 0.0 && floor > START && floor < nearest {
        return None;
    }
    if way[2] > 0.0 && roof > START && roof < nearest {
        let hit = along(from, way, roof);
        return by(room, |opening| {
            let reach = opening.reveal.metres() / way[2];
            let outer = [hit[0] + way[0] * reach, hit[1] + way[1] * reach];
            opening.in_ceiling && passes(opening, [hit[0], hit[1]], outer)
        })
        .filter(|_| !hits_a_screen(room, from, way));
    }
    let (wall, u, facing, ahead) = wall_hit?;
    if facing < 0.0 {
        return None;
    }
    let hit = along(from, way, nearest);
    by(room, |opening| {
        let reach = opening.reveal.metres() / facing;
        let outer = [u + (way[0] * ahead[0] + way[1] * ahead[1]) * reach, hit[2] + way[2] * reach];
        !opening.in_ceiling
            && opening.wall == wall
            && passes(opening, [u, hit[2]], outer)
            && clears_the_slab(opening, outer[1], way[2] / facing)
    })
    .filter(|_| !hits_a_screen(room, from, way))
}

fn along(from: P, way: P, reach: f64) -> P {
    core::array::from_fn(|axis| from[axis] + way[axis] * reach)
}

fn by(room: &Room, lets_out: impl Fn(&Opening) -> bool) -> Option<usize> {
    room.openings.iter().position(|opening| !opening.covered && lets_out(opening))
}

/// Through the hole in the inner face and a pane of the outer one, each as along and up.
fn passes(opening: &Opening, inner: [f64; 2], outer: [f64; 2]) -> bool {
    let (x, y) = (opening.offset.metres(), opening.sill.metres());
    let (width, height) = (opening.width.metres(), opening.height.metres());
    let hole = |p: [f64; 2]| p[0] >= x && p[0] <= x + width && p[1] >= y && p[1] <= y + height;
    if !hole(inner) || !hole(outer) {
        return false;
    }
    let Some(bars) = opening.bars else { return true };
    let bar = bars.thickness.metres();
    let between = |at: f64, size: f64, panes: u8| {
        let pitch = (size + bar) / f64::from(panes);
        at % pitch <= pitch - bar
    };
    between(outer[0] - x, width, bars.columns) && between(outer[1] - y, height, bars.rows)
}

/// Beneath the slab: at its level the ray is beyond its far edge.
fn clears_the_slab(opening: &Opening, up: f64, climb: f64) -> bool {
    let Some(slab) = opening.overhang else { return true };
    let rise = opening.sill.metres() + opening.height.metres() + slab.above.metres() - up;
    climb <= 0.0 || rise / climb >= slab.depth.metres()
}

/// Any upright rectangle outside, as it stands about the middle of the room.
fn hits_a_screen(room: &Room, from: P, way: P) -> bool {
    let count = room.floor.len() as f64;
    let middle: [f64; 2] = core::array::from_fn(|axis| {
        room.floor.iter().map(|corner| corner[axis].metres()).sum::<f64>() / count
    });
    // The library rounds the middle to a centimetre.
    let middle = middle.map(|size| (size * 100.0).round() / 100.0);
    room.screens.iter().any(|screen| {
        let span = (screen.to.degrees() - screen.from.degrees()).rem_euclid(360.0);
        let ahead = to_room(room, screen.from.degrees() + span / 2.0, 0.0);
        let facing = way[0] * ahead[0] + way[1] * ahead[1];
        let start = (from[0] - middle[0]) * ahead[0] + (from[1] - middle[1]) * ahead[1];
        let reach = (screen.distance.metres() - start) / facing;
        let hit = along(from, way, reach);
        let aside = (hit[0] - middle[0]) * ahead[1] - (hit[1] - middle[1]) * ahead[0];
        let half = screen.distance.metres() * (span / 2.0).to_radians().tan();
        facing > 0.0 && reach > 0.0 && aside.abs() <= half && hit[2] <= screen.height.metres()
    })
}
