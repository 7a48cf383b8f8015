//! The small vocabulary of every drawing: points, layers, labels, areas to touch.

use core::fmt;

use super::arc::Edge;
use super::paint::{Ink, Paint};
use super::path::Path;

/// A place on the paper: x right, y down, in units of the view box.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub struct Point {
    /// To the right.
    pub x: f64,
    /// Down.
    pub y: f64,
}

impl Point {
    /// From its two parts.
    pub const fn new(x: f64, y: f64) -> Self {
        Self { x, y }
    }

    /// How far it is from another.
    pub fn distance(self, other: Self) -> f64 {
        crate::maths::hypot(self.x - other.x, self.y - other.y)
    }
}

/// The part of the paper that is shown.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct ViewBox {
    /// Left edge.
    pub x: f64,
    /// Upper edge.
    pub y: f64,
    /// Width.
    pub width: f64,
    /// Height.
    pub height: f64,
}

impl fmt::Display for ViewBox {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        write!(f, "{} {} {} {}", self.x, self.y, self.width, self.height)
    }
}

/// One path, painted in one way.
#[derive(Clone, Debug, PartialEq)]
pub struct Layer {
    /// What it shows.
    pub paint: Paint,
    /// Width of its line; 0 for a filled one.
    pub width: f64,
    /// Its outline.
    pub path: Path,
}

/// Which part of a text stands at its point.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Anchor {
    /// Its beginning.
    Start,
    /// Its middle.
    Middle,
    /// Its end.
    End,
}

impl Anchor {
    /// The value of SVG's `text-anchor`.
    pub const fn word(self) -> &'static str {
        match self {
            Self::Start => "start",
            Self::Middle => "middle",
            Self::End => "end",
        }
    }
}

/// A word or a number on the paper.
#[derive(Clone, Debug, PartialEq)]
pub struct Label {
    /// On its base line.
    pub at: Point,
    /// What it says.
    pub text: String,
    /// Which part of it stands there.
    pub anchor: Anchor,
    /// What it is printed in.
    pub ink: Ink,
    /// Turned clockwise about its point, degrees; for SVG's `rotate`.
    pub turned: f64,
}

/// What is touched.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Target {
    /// An edge of a wish's arc; `mirrored` for that of its mirror image.
    ArcEdge {
        /// Which edge it moves.
        edge: Edge,
        /// Whether it is the mirror image.
        mirrored: bool,
    },
    /// A mark of a room, by its place in the list.
    Mark(usize),
    /// An opening of a room, by its place in the list.
    Opening(usize),
}

/// A round area to touch.
#[derive(Clone, Debug, PartialEq)]
pub struct Hit {
    /// What it is.
    pub target: Target,
    /// Its centre.
    pub at: Point,
    /// Its radius.
    pub reach: f64,
    /// What a screen reader calls it.
    pub name: String,
}

/// A drawing, ready to be printed.
#[derive(Clone, Debug, PartialEq)]
pub struct Drawing {
    /// The part of the paper that is shown.
    pub view: ViewBox,
    /// From the back to the front.
    pub layers: Vec<Layer>,
    /// Above the layers.
    pub labels: Vec<Label>,
    /// Areas to touch.
    pub hits: Vec<Hit>,
    /// The drawing in words.
    pub text: String,
}

impl Drawing {
    /// An empty sheet from the upper left corner on.
    pub fn sized(width: f64, height: f64) -> Self {
        Self::showing(ViewBox { x: 0.0, y: 0.0, width, height })
    }

    /// An empty sheet.
    pub const fn showing(view: ViewBox) -> Self {
        Self { view, layers: Vec::new(), labels: Vec::new(), hits: Vec::new(), text: String::new() }
    }

    /// Lays a filled layer on top; an empty one is left out.
    pub fn fill(&mut self, paint: Paint, path: Path) -> &mut Self {
        self.stroke(paint, 0.0, path)
    }

    /// Lays a line of some width on top; an empty one is left out.
    pub fn stroke(&mut self, paint: Paint, width: f64, path: Path) -> &mut Self {
        if !path.is_empty() {
            self.layers.push(Layer { paint, width, path });
        }
        self
    }

    /// Lays a filled layer on top, even an empty one: the layers above it keep their places while it comes and goes, and
    /// only it is printed anew.
    pub fn fill_always(&mut self, paint: Paint, path: Path) -> &mut Self {
        self.layers.push(Layer { paint, width: 0.0, path });
        self
    }

    /// Prints a label.
    pub fn label(&mut self, at: Point, text: impl Into<String>, anchor: Anchor, ink: Ink) -> &mut Self {
        self.labels.push(Label { at, text: text.into(), anchor, ink, turned: 0.0 });
        self
    }

    /// What is touched at a point: of the areas that hold it, the one with the nearest centre.
    pub fn touched(&self, at: Point) -> Option<Target> {
        let near = self.hits.iter().filter(|hit| hit.at.distance(at) <= hit.reach);
        near.min_by(|a, b| a.at.distance(at).total_cmp(&b.at.distance(at))).map(|hit| hit.target)
    }

    /// The first layer of a paint that shows anything.
    pub fn layer(&self, paint: Paint) -> Option<&Layer> {
        self.layers.iter().find(|layer| layer.paint == paint && !layer.path.is_empty())
    }
}
