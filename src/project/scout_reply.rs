//! A recce by somebody who has no project: five questions in a link, and an answer in plain words to paste.
//!
//! The link holds no more than the name and the id of the location; the answer is lines of text that a person can
//! read in the message as well. Texts come from outside: lengths are capped, other lines are passed over.

use super::document::Location;
use super::scout::{Answer, ROWS};
use crate::place::coordinates;
use crate::place::site::Site;
use crate::units::Metres;
use crate::words;

/// First line of every answer.
const HEAD: &str = "Recce for";

/// The longest answer to one question, in letters. Our own choice.
pub const LONGEST: usize = 2_000;

/// A question to somebody who knows nothing of the film, and the row of the sheet that its answer goes to.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Question {
    /// Key of the row.
    pub key: &'static str,
    /// In words that need no explanation.
    pub asks: &'static str,
}

/// What is asked beside the position: what can be answered on the spot.
pub const ASKED: [Question; 4] = [
    asks(
        "bearings",
        "Which way do the windows look? Hold the phone's edge along the wall and read its compass.",
    ),
    asks(
        "horizon",
        "What hides the sky? Houses, trees, hills: where, and how high with your arm stretched, in fists.",
    ),
    asks("power", "Is there power? How many sockets, and where is the fuse box?"),
    asks("noise", "What do you hear, and at what hours will it be worse?"),
];

const fn asks(key: &'static str, asks: &'static str) -> Question {
    Question { key, asks }
}

/// What somebody found out.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Reply {
    /// The location that was asked about.
    pub location: String,
    /// Where they stood, and how exact that is.
    pub position: Option<(Site, Option<Metres>)>,
    /// What they wrote, by the key of the row.
    pub answers: Vec<(String, String)>,
}

impl Reply {
    /// The answer as text for a message. `name` is what the location is called.
    pub fn to_text(&self, name: &str) -> String {
        let mut text = format!("{HEAD} {} [{}]\n", one_line(name), self.location);
        if let Some((site, accuracy)) = self.position {
            let within = accuracy.map(|accuracy| format!(";u={}", accuracy.metres())).unwrap_or_default();
            let (latitude, longitude) = (site.latitude.degrees(), site.longitude.degrees());
            text.push_str(&format!("Position: geo:{latitude},{longitude}{within}\n"));
        }
        for (key, answer) in &self.answers {
            if let Some(row) = ROWS.iter().find(|row| row.key == *key)
                && !answer.trim().is_empty()
            {
                text.push_str(&format!("{}: {}\n", row.name, one_line(answer)));
            }
        }
        text
    }

    /// Reads an answer out of a message; `None` if there is none in it.
    pub fn parse(text: &str) -> Option<Self> {
        let mut lines = text.lines().map(str::trim).skip_while(|line| !line.starts_with(HEAD));
        let (_, id) = lines.next()?.strip_suffix(']')?.rsplit_once('[')?;
        let mut reply = Self { location: id.to_owned(), ..Self::default() };
        for line in lines {
            let Some((name, answer)) = line.split_once(':') else { continue };
            let answer: String = answer.trim().chars().take(LONGEST).collect();
            if name == "Position" {
                let found = coordinates::parse(&answer).ok();
                reply.position = found.map(|found| (found.site, found.accuracy));
            } else if let Some(row) = ROWS.iter().find(|row| row.name == name) {
                reply.answers.push((row.key.to_owned(), answer));
            }
        }
        Some(reply)
    }

    /// Writes the answers into the scout sheet, under what stands there already. Where they stood is an answer, too:
    /// the location itself stays where it is.
    pub fn write_into(&self, location: &mut Location) {
        let stood = self.position.map(|(site, accuracy)| {
            let within =
                accuracy.map(|accuracy| format!(", within {:.0} m", accuracy.metres())).unwrap_or_default();
            ("bearings".to_owned(), format!("Stood at {}{within}", words::position(site)))
        });
        for (key, answer) in stood.iter().chain(&self.answers) {
            let both = match location.scouted(key) {
                Answer::Found(old) if old != answer && !old.contains(answer) => format!("{old}\n{answer}"),
                Answer::Found(old) => old.to_owned(),
                Answer::Empty | Answer::NotKnown => answer.clone(),
            };
            location.scout_row(key, Answer::Found(&both));
        }
    }
}

fn one_line(text: &str) -> String {
    text.split_whitespace().collect::<Vec<_>>().join(" ")
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::project::demo;
    use proptest::prelude::*;

    fn reply() -> Reply {
        let pans = &demo::project().locations[1];
        Reply {
            location: pans.id.clone(),
            position: Some((
                Site { elevation: Metres::from_metres(0.0), ..pans.site },
                Some(Metres::from_metres(8.0)),
            )),
            answers: vec![
                ("power".into(), "none, generator: behind the shed".into()),
                ("noise".into(), "planes".into()),
            ],
        }
    }

    #[test]
    fn an_answer_comes_back_out_of_a_message() {
        let text = format!("hello!\n\n{}\nsee you", reply().to_text("Salt pans [north]"));
        assert_eq!(Reply::parse(&text), Some(reply()));
        assert_eq!(Reply::parse("hello"), None);
    }

    #[test]
    fn every_question_has_its_row() {
        assert!(ASKED.iter().all(|question| ROWS.iter().any(|row| row.key == question.key)));
    }

    #[test]
    fn an_answer_adds_to_the_sheet_and_takes_nothing_away() {
        let mut pans = Location::clone(&demo::project().locations[1]);
        pans.scout_row("noise", Answer::Found("bells at six"));
        pans.scout_row("power", Answer::NotKnown);
        reply().write_into(&mut pans);
        reply().write_into(&mut pans);
        assert_eq!(pans.scouted("bearings"), Answer::Found("Stood at 40.6449 N 8.6642 W, within 8 m"));
        assert_eq!(pans.scouted("noise"), Answer::Found("bells at six\nplanes"));
        assert_eq!(pans.scouted("power"), Answer::Found("none, generator: behind the shed"));
    }

    proptest! {
        #[test]
        fn any_text_is_an_answer_or_none(text in "(Recce for .{0,20}\\[.{0,9}\\]\n)?(.{0,30}\n){0,9}") {
            let mut pans = Location::clone(&demo::project().locations[1]);
            if let Some(reply) = Reply::parse(&text) {
                reply.write_into(&mut pans);
            }
        }
    }
}
