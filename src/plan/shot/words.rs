//! Face and frame in words: what the light does to the face at an instant, and what is in the picture.

use super::in_frame::InFrame;
use crate::light::face::{Cheek, Facing, cheek, in_the_eyes, pattern};
use crate::light::picture::SunSeen;
use crate::plan::search::words as say;
use crate::plan::stage::Stage;
use crate::units::{Bearing, Span, Vector, World};
use crate::words::{self, Clock};

/// "Light 48° off the nose, 32° over it: triangle on the shadow cheek, short side. Sun in the eyes."
pub fn face(light: Vector<World>, facing: Facing, lens: Bearing) -> String {
    let (off, over) = facing.angles_to(light);
    let named = pattern(light, facing).map_or("no pattern with a name", |pattern| pattern.words());
    let side = match cheek(light, facing, lens) {
        Some(Cheek::Short) => ", short side",
        Some(Cheek::Broad) => ", broad side",
        None => "",
    };
    let eyes = if in_the_eyes(light, facing) { " Sun in the eyes." } else { "" };
    format!(
        "Light {} off the nose, {} over it: {named}{side}.{eyes}",
        words::degrees(off.abs()),
        words::degrees(over)
    )
}

/// What is in the frame, a sentence each; what does not matter is left out.
pub fn frame(found: &InFrame, stage: &Stage, style: Clock) -> Vec<String> {
    let mut lines =
        vec![format!("{}.", words::capital(found.sun.map_or("no sun on the lens", SunSeen::words)))];
    if !found.windows.is_empty() {
        lines.push(format!("In the picture: {}.", found.windows.join(", ")));
    }
    if found.outside {
        lines.push("The camera would stand outside the room: come nearer or take a shorter lens.".to_owned());
    }
    if !found.shadow.is_empty() {
        let spans: Vec<String> = found.shadow.iter().map(|span| say::clock(span, stage, style)).collect();
        lines.push(format!("The crew's own shadow is in the picture {}.", spans.join(", ")));
    }
    lines
}

/// The longest span of some light, or the one that an instant lies in.
pub fn chosen(spans: &crate::units::Spans, at: crate::units::Instant) -> Option<Span> {
    spans.iter().find(|span| span.contains(at)).or_else(|| crate::plan::search::free_lens::longest(spans))
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::plan::fixture::{field, span};
    use crate::units::{Height, Spans};

    #[test]
    fn face_and_frame_in_words() {
        let facing = Facing { bearing: Bearing::from_degrees(150.0), pitch: Height::clamped(0.0) };
        let light = Vector::towards(Bearing::from_degrees(200.0), Height::clamped(40.0));
        assert_eq!(
            face(light, facing, Bearing::from_degrees(0.0)),
            "Light 50° off the nose, 40° over it: triangle on the shadow cheek, broad side."
        );
        let low = Vector::towards(Bearing::from_degrees(160.0), Height::clamped(10.0));
        assert!(
            face(low, facing, Bearing::from_degrees(330.0))
                .ends_with("no pattern with a name. Sun in the eyes.")
        );
        let found = InFrame {
            sun: Some(SunSeen::JustOut),
            windows: vec!["left".into(), "right".into()],
            outside: true,
            shadow: Spans::from(span("2027-03-11T17:00:00Z", "2027-03-11T18:10:00Z")),
        };
        assert_eq!(
            frame(&found, &field(), Clock::default()),
            [
                "Sun just out of the picture.",
                "In the picture: left, right.",
                "The camera would stand outside the room: come nearer or take a shorter lens.",
                "The crew's own shadow is in the picture 17:00–18:10.",
            ]
        );
    }
}
