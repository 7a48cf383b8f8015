//! Openings: windows, doors, gaps and roof lights, measured in a wall or the ceiling, or sighted from a mark.

use serde::{Deserialize, Serialize};

use crate::units::{Bearing, Degrees, Height, Metres};

/// A rectangular opening in a wall or in the ceiling, cut square through it.
///
/// Offset runs along the wall from its first corner: seen from *outside* that is from the left. A roof light's offset and
/// width run along the room's x, its sill and height along the room's y, its reveal straight up.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct Opening {
    /// Stable within the project.
    pub id: String,
    /// "Loft window, left".
    pub name: String,
    /// Wall it is in: wall `n` runs from corner `n` to corner `n + 1` of the floor.
    pub wall: usize,
    /// Whether it is a roof light: in the ceiling, whatever its wall.
    #[serde(default, skip_serializing_if = "core::ops::Not::not")]
    pub in_ceiling: bool,
    /// From the wall's first corner to the opening's nearer edge; for a roof light from corner 0, along x.
    #[serde(rename = "offset_m")]
    pub offset: Metres,
    /// Lower edge above the floor; for a roof light its nearer edge, along y.
    #[serde(rename = "sill_m")]
    pub sill: Metres,
    /// Clear width.
    #[serde(rename = "width_m")]
    pub width: Metres,
    /// Clear height, sill to head.
    #[serde(rename = "height_m")]
    pub height: Metres,
    /// Thickness of the wall around it, from the inner face outwards.
    #[serde(rename = "reveal_m", default)]
    pub reveal: Metres,
    /// What juts out above it.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub overhang: Option<Overhang>,
    /// Glazing bars.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub bars: Option<Bars>,
    /// Share of the light that the glass lets through, 0 to 1; 1 for no glass.
    #[serde(default = "clear")]
    pub transmittance: f64,
    /// Curtained, boarded or blacked out: no light comes through.
    #[serde(default)]
    pub covered: bool,
}

/// A level slab that juts out above an opening, as wide as one likes to the sides.
#[derive(Clone, Copy, Debug, PartialEq, Serialize, Deserialize)]
pub struct Overhang {
    /// From the outer face of the wall outwards.
    #[serde(rename = "depth_m")]
    pub depth: Metres,
    /// From the opening's head up to the slab.
    #[serde(rename = "above_m")]
    pub above: Metres,
}

/// Bars that part an opening into rows and columns of panes.
#[derive(Clone, Copy, Debug, PartialEq, Serialize, Deserialize)]
pub struct Bars {
    /// Panes above each other.
    pub rows: u8,
    /// Panes beside each other.
    pub columns: u8,
    /// Width of a bar.
    #[serde(rename = "thickness_m")]
    pub thickness: Metres,
}

/// An opening known only by the directions of its corners, seen from a mark.
///
/// Two opposite corners do not fix a window (the top edge of one seen aslant is a great circle): the wall's
/// bearing or a third corner does. With neither, the answer stands with a larger ±.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct Sighting {
    /// Stable within the project.
    pub id: String,
    /// "the west window".
    pub name: String,
    /// Two opposite corners, then perhaps a third.
    pub corners: Vec<Corner>,
    /// Outward normal of the wall, where it is known.
    #[serde(rename = "wall_bearing_deg", default, skip_serializing_if = "Option::is_none")]
    pub wall_bearing: Option<Bearing>,
    /// How far off the bearings may be.
    #[serde(rename = "bearing_uncertainty_deg")]
    pub bearing_uncertainty: Degrees,
}

/// A direction in which a corner of an opening was seen.
#[derive(Clone, Copy, Debug, PartialEq, Serialize, Deserialize)]
pub struct Corner {
    /// True bearing.
    #[serde(rename = "bearing_deg")]
    pub bearing: Bearing,
    /// Height above the horizon.
    #[serde(rename = "height_deg")]
    pub height: Height,
}

/// No glass.
const fn clear() -> f64 {
    1.0
}

/// Width of a glazing bar when nobody has said better. Our own choice.
const BAR: Metres = Metres::from_metres(0.03);

impl Opening {
    /// Per cent of the light that its glass lets through.
    pub fn glass_percent(&self) -> f64 {
        self.transmittance * 100.0
    }

    /// Sets the same.
    pub fn set_glass_percent(&mut self, percent: f64) {
        self.transmittance = (percent / 100.0).clamp(0.0, 1.0);
    }

    /// Gives it a slab that juts out so far, so high above its head; none for no depth.
    pub fn set_overhang(&mut self, depth: Metres, above: Metres) {
        self.overhang = (depth.metres() > 0.0).then_some(Overhang { depth, above });
    }

    /// Parts it into panes above and beside each other; no bars for a single pane.
    pub fn set_panes(&mut self, rows: u8, columns: u8) {
        let thickness = self.bars.map_or(BAR, |bars| bars.thickness);
        let (rows, columns) = (rows.max(1), columns.max(1));
        self.bars = (rows > 1 || columns > 1).then_some(Bars { rows, columns, thickness });
    }

    /// Panes above and beside each other.
    pub fn panes(&self) -> (u8, u8) {
        self.bars.map_or((1, 1), |bars| (bars.rows, bars.columns))
    }

    /// A plain opening in a wall: offset, sill, width and height; no reveal, no glass.
    pub fn rectangle(id: &str, name: &str, wall: usize, [offset, sill, width, height]: [Metres; 4]) -> Self {
        Self {
            id: id.to_owned(),
            name: name.to_owned(),
            wall,
            in_ceiling: false,
            offset,
            sill,
            width,
            height,
            reveal: Metres::from_metres(0.0),
            overhang: None,
            bars: None,
            transmittance: clear(),
            covered: false,
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn one_pane_has_no_bars_and_no_depth_is_no_overhang() {
        let mut window = Opening::rectangle("o", "window", 0, [1.0; 4].map(Metres::from_metres));
        assert_eq!(window.panes(), (1, 1));
        window.set_panes(2, 0);
        assert_eq!((window.panes(), window.bars.unwrap().thickness), ((2, 1), BAR));
        window.set_panes(1, 1);
        assert_eq!(window.bars, None);
        let [depth, above] = [0.5, 0.1].map(Metres::from_metres);
        window.set_overhang(depth, above);
        assert_eq!(window.overhang, Some(Overhang { depth, above }));
        window.set_overhang(Metres::default(), above);
        assert_eq!(window.overhang, None);
    }
}
