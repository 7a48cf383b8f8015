//! A text as a picture of squares that any phone's camera reads (QR code, ISO/IEC 18004, by the crate `qrcodegen`).

use qrcodegen::{QrCode, QrCodeEcc};

use super::paint::Paint;
use super::path::Path;
use super::shape::{Drawing, Layer, Point, ViewBox};

/// Empty squares around the code, as the standard asks.
const QUIET: i32 = 4;

/// Longest text that is drawn, in bytes. Our own choice: beyond it the squares are too small for a phone's camera to
/// read from a phone's screen.
pub const MOST_BYTES: usize = 1_800;

/// The picture of `text`; `None` if it is too long to be read from a screen.
pub fn code(text: &str) -> Option<Drawing> {
    if text.len() > MOST_BYTES {
        return None;
    }
    let code = QrCode::encode_binary(text.as_bytes(), QrCodeEcc::Low).ok()?;
    let whole = f64::from(code.size() + 2 * QUIET);
    let mut ground = Path::new();
    bar(&mut ground, [0.0, 0.0], [whole, whole]);
    let mut squares = Path::new();
    for y in 0..code.size() {
        row(&code, y, &mut squares);
    }
    let view = ViewBox { x: 0.0, y: 0.0, width: whole, height: whole };
    let layers = vec![
        Layer { paint: Paint::Lit, width: 0.0, path: ground },
        Layer { paint: Paint::Shade, width: 0.0, path: squares },
    ];
    let words = "The link as a picture for another phone's camera".to_owned();
    Some(Drawing { view, layers, labels: Vec::new(), hits: Vec::new(), text: words })
}

/// The dark squares of a row, neighbours as one bar.
fn row(code: &QrCode, y: i32, squares: &mut Path) {
    let mut begin = None;
    for x in 0..=code.size() {
        // Beyond the edge all is light.
        match (code.get_module(x, y), begin) {
            (true, None) => begin = Some(x),
            (false, Some(from)) => {
                let [left, right, top] = [from, x, y].map(|place| f64::from(place + QUIET));
                bar(squares, [left, top], [right, top + 1.0]);
                begin = None;
            }
            _ => {}
        }
    }
}

fn bar(path: &mut Path, [left, top]: [f64; 2], [right, bottom]: [f64; 2]) {
    path.move_to(Point::new(left, top));
    path.line_to(Point::new(right, top))
        .line_to(Point::new(right, bottom))
        .line_to(Point::new(left, bottom))
        .close();
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_short_text_is_the_smallest_code() {
        let drawing = code("Tide").unwrap();
        // Version 1 has 21 squares a side; with the quiet zone 29.
        assert_eq!(drawing.view.width, 29.0);
        let squares = drawing.layers[1].path.text();
        assert!(squares.starts_with("M4 4L11 4"), "the finder pattern is seven wide: {}", &squares[..20]);
    }

    #[test]
    fn long_texts_have_no_picture() {
        assert!(code(&"x".repeat(MOST_BYTES)).is_some());
        assert!(code(&"x".repeat(MOST_BYTES + 1)).is_none());
    }
}
