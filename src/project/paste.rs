//! What a pasted text is, wherever it is pasted: asked in the order in which a mistake would cost most.

use super::scout_reply::Reply;
use super::shot_list::{self, Column, Layout};
use super::{link, message};
use crate::place::coordinates::{self, Trouble};
use crate::place::site::Site;
use crate::units::Metres;

/// What a text turned out to be.
#[derive(Clone, Debug, PartialEq)]
pub enum Pasted {
    /// It holds a project or a link to one, whole or damaged: to be read and shown by the one who takes projects in.
    Project,
    /// The answer of somebody who scouted.
    Reply(Reply),
    /// A position, and how exact it says it is.
    Position(Site, Option<Metres>),
    /// Somebody meant a position, but it must be asked about or mended first.
    UnclearPosition,
    /// Rows with scenes.
    ShotList,
    /// Nothing that the app could use.
    Nothing,
}

/// Tells what `text` is.
pub fn what(text: &str) -> Pasted {
    let is_link = link::find(text).is_some();
    if is_link || text.contains(super::document::FORMAT) || message::parse_message(text).is_ok() {
        return Pasted::Project;
    }
    if let Some(reply) = Reply::parse(text) {
        return Pasted::Reply(reply);
    }
    let trouble = match coordinates::parse(text) {
        Ok(found) => return Pasted::Position(found.site, found.accuracy),
        Err(why) => why.trouble,
    };
    // A line of numbers could be a row of a list as well; a list has several.
    let is_one_line = !text.trim().contains('\n');
    match is_meant(&trouble) {
        true if is_one_line => Pasted::UnclearPosition,
        _ if is_list(text) => Pasted::ShotList,
        true => Pasted::UnclearPosition,
        false => Pasted::Nothing,
    }
}

/// Whether somebody meant a position by what could not be read as one: a few loose numbers say too little.
const fn is_meant(trouble: &Trouble) -> bool {
    !matches!(
        trouble,
        Trouble::Empty | Trouble::Nothing | Trouble::OnlyOne | Trouble::TooMany | Trouble::BadNumber
    )
}

/// Whether most of what stands there are scenes.
fn is_list(text: &str) -> bool {
    let Ok(table) = shot_list::read(text) else { return false };
    let columns = Layout::of(&table).columns;
    let holds = |column| columns.contains(&column);
    holds(Column::Scene) && (holds(Column::Side) || holds(Column::Minutes) || holds(Column::Place))
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::project::{canonical, demo};

    #[test]
    fn each_kind_is_told_from_the_others() {
        let project = canonical::to_text(&demo::project());
        assert_eq!(what(&format!("here it is\n{project}")), Pasted::Project);
        assert!(matches!(what("Recce for Salt pans [salt-pans]\nNoise: planes"), Pasted::Reply(_)));
        assert!(matches!(what("40.6405, -8.6538"), Pasted::Position(..)));
        assert_eq!(
            what("4A INT. SAIL LOFT - DAY - 25 min\n5 EXT. SALT PANS - DUSK - 30 min"),
            Pasted::ShotList
        );
        assert_eq!(what("4A INT. SAIL LOFT - DAY - 25 min"), Pasted::ShotList);
        for unclear in ["40,6 8,7", "95.1, 8.7", "40.1 N 8.7 N", "40°61' N 8°3' W"] {
            assert_eq!(what(unclear), Pasted::UnclearPosition, "{unclear}");
        }
        for nothing in ["", "see you at five", "12", "a, b, c"] {
            assert_eq!(what(nothing), Pasted::Nothing, "{nothing}");
        }
    }
}
