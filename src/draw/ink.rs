//! A drawing as a picture of its own, in black and greys: for paper, and for phones without the app.
//!
//! The screens paint by their style sheet; a picture that travels has none, so each paint has a grey here. Greys
//! are black at some strength, which prints alike everywhere.

use core::fmt::{self, Write};

use super::paint::Paint;
use super::shape::Drawing;

/// How a paint looks without colours: black at this strength, and dashes if any.
const fn grey(paint: Paint) -> (f64, &'static str) {
    match paint {
        Paint::Lit | Paint::Day => (0.0, ""),
        Paint::Sky | Paint::Opening | Paint::Track => (0.06, ""),
        Paint::Floor | Paint::Wall | Paint::Shaft => (0.16, ""),
        Paint::WallFar | Paint::Wish | Paint::Skyline => (0.28, ""),
        Paint::Tick => (0.45, ""),
        Paint::Shade | Paint::Night => (0.7, ""),
        Paint::Dashed => (1.0, "5 4"),
        Paint::Solid | Paint::Line | Paint::Accent | Paint::AccentFill => (1.0, ""),
    }
}

/// Words stand before whatever they are written over.
const HALO: &str = " paint-order=\"stroke\" stroke=\"white\" stroke-opacity=\"0.8\" stroke-width=\"3\" stroke-linejoin=\"round\"";

/// The drawing as the text of an SVG file, on white.
pub fn svg(drawing: &Drawing) -> String {
    let view = drawing.view;
    let mut out = format!(
        "<svg xmlns=\"http://www.w3.org/2000/svg\" viewBox=\"{view}\" width=\"{}\" height=\"{}\" font-family=\"sans-serif\" font-size=\"13\">",
        view.width, view.height
    );
    out.push_str("<rect width=\"100%\" height=\"100%\" fill=\"white\"/>");
    for layer in &drawing.layers {
        let (strength, dashes) = grey(layer.paint);
        let is_line = layer.width > 0.0;
        // What is lit covers the floor: white, where a grey would let it through.
        let ink = if strength == 0.0 { "white" } else { "black" };
        let (what, other) = if is_line { ("stroke", "fill") } else { ("fill", "stroke") };
        let strength = if strength == 0.0 { 1.0 } else { strength };
        write(
            &mut out,
            format_args!("<path data-paint=\"{}\" d=\"{}\"", layer.paint.class(), layer.path.text()),
        );
        write(&mut out, format_args!(" {what}=\"{ink}\" {what}-opacity=\"{strength}\" {other}=\"none\""));
        if is_line {
            write(&mut out, format_args!(" stroke-width=\"{}\" stroke-linejoin=\"round\"", layer.width));
        }
        if !dashes.is_empty() {
            write(&mut out, format_args!(" stroke-dasharray=\"{dashes}\""));
        }
        out.push_str("/>");
    }
    for label in &drawing.labels {
        let (x, y) = (label.at.x, label.at.y);
        write(
            &mut out,
            format_args!("<text x=\"{x}\" y=\"{y}\" text-anchor=\"{}\"{HALO}", label.anchor.word()),
        );
        if label.turned != 0.0 {
            write(&mut out, format_args!(" transform=\"rotate({} {x} {y})\"", label.turned));
        }
        write(&mut out, format_args!(">{}</text>", escaped(&label.text)));
    }
    out.push_str("</svg>");
    out
}

fn write(out: &mut String, words: fmt::Arguments<'_>) {
    out.write_fmt(words).expect("a string takes all that is written");
}

/// Text as XML carries it (XML 1.0, section 2.4); control letters, which no file may hold, are left out.
fn escaped(text: &str) -> String {
    let mut out = String::with_capacity(text.len());
    for letter in text.chars().filter(|letter| !letter.is_control()) {
        match letter {
            '&' => out.push_str("&amp;"),
            '<' => out.push_str("&lt;"),
            '>' => out.push_str("&gt;"),
            '"' => out.push_str("&quot;"),
            other => out.push(other),
        }
    }
    out
}

#[cfg(test)]
mod tests {
    use super::super::paint::Ink;
    use super::super::shape::{Anchor, Point};
    use super::*;

    #[test]
    fn words_cannot_break_out_of_the_picture() {
        let mut drawing = Drawing::sized(10.0, 10.0);
        drawing.label(Point::default(), "<script>\u{0}\"&", Anchor::Start, Ink::Plain);
        let text = svg(&drawing);
        assert!(text.contains(">&lt;script&gt;&quot;&amp;</text>") && !text.contains('\u{0}'));
    }
}
