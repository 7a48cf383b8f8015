//! What a layer or a label is for, and the class by which the style sheet paints it.

/// What a layer shows.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Paint {
    /// Paper-white: a surface in the light.
    Lit,
    /// Prussian blue: a surface in the shade.
    Shade,
    /// The open sky.
    Sky,
    /// Sky that an opening lets onto the mark.
    Opening,
    /// What stands before the sky.
    Skyline,
    /// The band that a handle runs along.
    Track,
    /// Floor of a room.
    Floor,
    /// Wall with the light in it.
    Wall,
    /// Another wall.
    WallFar,
    /// Sun down.
    Night,
    /// Sun up.
    Day,
    /// Air in the light, translucent.
    Shaft,
    /// Where the wish is met, translucent.
    Wish,
    /// Ink, filled.
    Solid,
    /// A line of ink.
    Line,
    /// A fine line of scales.
    Tick,
    /// A dashed line of ink.
    Dashed,
    /// A line of the accent: now, handles.
    Accent,
    /// The accent, filled.
    AccentFill,
}

impl Paint {
    /// Every one.
    pub const ALL: [Self; 19] = [
        Self::Lit,
        Self::Shade,
        Self::Sky,
        Self::Opening,
        Self::Skyline,
        Self::Track,
        Self::Floor,
        Self::Wall,
        Self::WallFar,
        Self::Night,
        Self::Day,
        Self::Shaft,
        Self::Wish,
        Self::Solid,
        Self::Line,
        Self::Tick,
        Self::Dashed,
        Self::Accent,
        Self::AccentFill,
    ];

    /// Its class in the style sheet (`style/drawing.css`).
    pub const fn class(self) -> &'static str {
        match self {
            Self::Lit => "draw-lit",
            Self::Shade => "draw-shade",
            Self::Sky => "draw-sky",
            Self::Opening => "draw-opening",
            Self::Skyline => "draw-skyline",
            Self::Track => "draw-track",
            Self::Floor => "draw-floor",
            Self::Wall => "draw-wall",
            Self::WallFar => "draw-wall-far",
            Self::Night => "draw-night",
            Self::Day => "draw-day",
            Self::Shaft => "draw-shaft",
            Self::Wish => "draw-wish",
            Self::Solid => "draw-solid",
            Self::Line => "draw-line",
            Self::Tick => "draw-tick",
            Self::Dashed => "draw-dashed",
            Self::Accent => "draw-accent",
            Self::AccentFill => "draw-accent-fill",
        }
    }
}

/// What a label is printed in.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Ink {
    /// On a light ground.
    Plain,
    /// On the skyline, the night or the shade.
    OnDark,
}

impl Ink {
    /// Every one.
    pub const ALL: [Self; 2] = [Self::Plain, Self::OnDark];

    /// Its class in the style sheet (`style/drawing.css`).
    pub const fn class(self) -> &'static str {
        match self {
            Self::Plain => "draw-label",
            Self::OnDark => "draw-label-on-dark",
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    const STYLE: &str = include_str!(concat!(env!("CARGO_MANIFEST_DIR"), "/style/drawing.css"));

    #[test]
    fn every_class_is_painted() {
        let classes = Paint::ALL.map(Paint::class).into_iter().chain(Ink::ALL.map(Ink::class));
        for class in classes {
            assert!(
                STYLE.contains(&format!(".{class} {{")) || STYLE.contains(&format!(".{class},\n")),
                "{class}"
            );
        }
    }
}
