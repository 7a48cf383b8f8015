//! The two rectangles of an opening: in the inner face of its wall or of the ceiling, and in the outer one.

use super::opening::Opening;
use super::room::Room;
use super::wall::Wall;
use crate::units::{InRoom, Metres, Vector};

/// Corners of an opening in room axes: lower first, lower second, upper second, upper first, where *first* is
/// towards the wall's first corner.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Frame {
    /// In the inner face of the wall.
    pub inner: [Vector<InRoom>; 4],
    /// In the outer face.
    pub outer: [Vector<InRoom>; 4],
    /// The wall it is in, or the ceiling.
    pub wall: Wall,
}

impl Room {
    /// Where an opening is; `None` if there is no such wall.
    pub fn frame(&self, opening: &Opening) -> Option<Frame> {
        let wall = self.face_of(opening)?;
        let (first, low) = (opening.offset.metres(), opening.sill.metres());
        let (second, high) = (first + opening.width.metres(), low + opening.height.metres());
        let inner = [(first, low), (second, low), (second, high), (first, high)]
            .map(|(along, up)| wall.point(Metres::from_metres(along), Metres::from_metres(up)));
        let outer = inner.map(|corner| corner + wall.outward * opening.reveal.metres());
        Some(Frame { inner, outer, wall })
    }
}
