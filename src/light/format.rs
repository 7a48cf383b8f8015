//! Generic picture formats of sensors and film.
//!
//! Width and height of the picture in millimetres. Source: handbook F6, public tables of camera apertures; digital
//! sensors vary by model and crop mode, so the numbers can be typed as well.

/// A format.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Format {
    /// What the trade calls it.
    pub name: &'static str,
    /// Width of the picture.
    pub width_mm: f64,
    /// Height of the picture.
    pub height_mm: f64,
}

/// All of them, the smallest first.
pub const FORMATS: [Format; 14] = [
    Format { name: "Super 8", width_mm: 5.79, height_mm: 4.01 },
    Format { name: "2/3-inch", width_mm: 9.59, height_mm: 5.39 },
    Format { name: "16 mm", width_mm: 10.26, height_mm: 7.49 },
    Format { name: "Super 16", width_mm: 12.52, height_mm: 7.41 },
    Format { name: "1-inch", width_mm: 13.2, height_mm: 8.8 },
    Format { name: "four thirds", width_mm: 17.3, height_mm: 13.0 },
    Format { name: "35 mm Academy", width_mm: 21.95, height_mm: 16.0 },
    Format { name: "APS-C", width_mm: 23.6, height_mm: 15.7 },
    Format { name: "35 mm 3-perf", width_mm: 24.89, height_mm: 13.87 },
    Format { name: "Super 35", width_mm: 24.89, height_mm: 18.66 },
    Format { name: "full frame", width_mm: 36.0, height_mm: 24.0 },
    Format { name: "medium 44 × 33", width_mm: 43.8, height_mm: 32.9 },
    Format { name: "65 mm 5-perf", width_mm: 52.48, height_mm: 23.01 },
    Format { name: "6 × 7", width_mm: 70.0, height_mm: 56.0 },
];

/// The format with this width and height, if it is one of ours.
pub fn named(width_mm: f64, height_mm: f64) -> Option<&'static Format> {
    FORMATS.iter().find(|format| format.width_mm == width_mm && format.height_mm == height_mm)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn every_format_finds_itself() {
        for format in &FORMATS {
            assert_eq!(named(format.width_mm, format.height_mm), Some(format));
        }
        assert_eq!(named(1.0, 1.0), None);
    }
}
