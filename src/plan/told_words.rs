//! A wall found from a call or a picture, in words.

use crate::light::told_patch::{NoWall, WallFound};
use crate::units::Degrees;
use crate::words;

/// A story that misses the sun's height by more than this is worth asking again. Our own choice.
const DOUBTFUL: Degrees = Degrees::from_degrees(5.0);

/// What was found, or what to ask for.
pub fn found(wall: &Result<WallFound, NoWall>) -> String {
    let found = match wall {
        Ok(found) => found,
        Err(NoWall::NoSun) => {
            return "The sun is not up at the time shown: set date and time of the call above.".to_owned();
        }
        Err(NoWall::NotInside) => {
            return "Type how far inside, away from the wall, the patch's corner lies.".to_owned();
        }
        Err(NoWall::TooRough) => {
            return "What was told is too rough: ask for a patch further from the wall.".to_owned();
        }
    };
    let bearing =
        format!("The wall faces {}, ± {}.", words::bearing(found.bearing), words::degrees(found.give));
    match found.disagrees {
        Some(off) if off.abs() > DOUBTFUL => {
            let way = if off.degrees() > 0.0 { "higher" } else { "lower" };
            format!(
                "{bearing} But the height that was told puts the sun {} {way} than it stood: ask again.",
                words::degrees(off.abs())
            )
        }
        Some(_) => format!("{bearing} The height that was told agrees."),
        None => bearing,
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::units::Bearing;

    #[test]
    fn each_outcome_has_a_sentence() {
        let wall = |disagrees: Option<f64>| {
            found(&Ok(WallFound {
                bearing: Bearing::from_degrees(248.2),
                give: Degrees::from_degrees(2.6),
                disagrees: disagrees.map(Degrees::from_degrees),
            }))
        };
        assert_eq!(wall(None), "The wall faces 248° WSW, ± 3°.");
        assert_eq!(wall(Some(1.0)), "The wall faces 248° WSW, ± 3°. The height that was told agrees.");
        assert!(wall(Some(-9.0)).ends_with("puts the sun 9° lower than it stood: ask again."));
        assert!(found(&Err(NoWall::NoSun)).contains("not up"));
        assert!(
            found(&Err(NoWall::NotInside)).contains("inside")
                && found(&Err(NoWall::TooRough)).contains("rough")
        );
    }
}
