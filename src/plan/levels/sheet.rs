//! All that a screen of levels prints at one instant, as plain words and shares: the screen itself computes nothing.

use super::answer::answers;
use super::colours::{Row as Colour, contrast};
use super::day;
use super::dusk::Sample;
use super::exposure::{Sought, solved, t_stop};
use super::hour::Hour;
use super::level::Level;
use super::say;
use super::sides::Levels;
use super::subject::Subject;
use crate::light::colour::daylight_locus::white;
use crate::light::colour::swatch::Swatch;
use crate::light::daylight::{Correction, Sky};
use crate::light::relative::{InLens, LensFrame};
use crate::plan::kit::{Placed, Side};
use crate::sky::sun::Sun;
use crate::units::{Duration, Instant, Lux, Vector};
use crate::words::stops as numbers;
use crate::words::{Clock, Units};

/// How far ahead the evening is looked at (our choice: what a crew decides about now).
const AHEAD: Duration = Duration::from_minutes(180);

/// How words are said.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Style {
    /// 24 or 12 hours.
    pub clock: Clock,
    /// Metres or feet.
    pub units: Units,
}

/// A side on the screen.
#[derive(Clone, Debug, PartialEq)]
pub struct SideRow {
    /// "Key side".
    pub name: String,
    /// "sky, camera right".
    pub source: String,
    /// Length of its bar, 0 to 1.
    pub bar: f64,
    /// "T3.2".
    pub t_stop: String,
    /// "1,600 lx".
    pub lux: String,
}

/// An answer on the screen.
#[derive(Clone, Debug, PartialEq)]
pub struct Offer {
    /// "White board: left, from 1.6 m to 1.9 m".
    pub text: String,
    /// "makes 4 : 1".
    pub comes_to: String,
    /// What stands there then; `None` if it cannot be taken.
    pub placed: Option<Vec<Placed>>,
}

/// A colour on the screen.
#[derive(Clone, Debug, PartialEq)]
pub struct ColourRow {
    /// "Key side".
    pub name: &'static str,
    /// As style sheets write it: a hash and six hexadecimal digits.
    pub swatch: String,
    /// "3,200 K, +134 mired: full blue".
    pub text: String,
}

/// Everything.
#[derive(Clone, Debug, PartialEq)]
pub struct Sheet {
    /// "1⅔ stops".
    pub headline: String,
    /// "key side over fill side, 3 : 1" and what goes beneath it.
    pub under: Vec<String>,
    /// Where the key comes from, as the lens sees it.
    pub key: Option<Vector<InLens>>,
    /// Light of the key side, for the cameras.
    pub key_light: Lux,
    /// Back, key side, fill side, behind.
    pub sides: Vec<SideRow>,
    /// What the wish asks for; empty without one.
    pub need: String,
    /// What would do it, best first.
    pub offers: Vec<Offer>,
    /// Colours, and their contrast in words.
    pub colours: Vec<ColourRow>,
    /// Key against background.
    pub contrast: String,
    /// Light of the key side from now on, for the cameras.
    pub ahead: Vec<Sample>,
    /// Window, evening, wet floor, haze: sentences with their headings.
    pub notes: Vec<(&'static str, String)>,
}

/// One instant under one sky.
pub struct Asked<'a> {
    /// Who.
    pub subject: &'a Subject,
    /// The sun of the place.
    pub sun: &'a Sun,
    /// When.
    pub at: Instant,
    /// Under which sky.
    pub sky: Sky,
    /// The levels of the day, from [`day::curve`].
    pub day: &'a [day::Sample],
    /// How words are said.
    pub style: Style,
}

impl Asked<'_> {
    /// The sheet.
    pub fn sheet(&self) -> Sheet {
        let hour = self.subject.hour(self.sun, self.at, self.sky);
        let levels = Levels::of(self.subject, &hour);
        let wanted = self.subject.rig.wanted();
        let answers = wanted.map(|wanted| answers(self.subject, &hour, wanted)).unwrap_or_default();
        let offer = |answer: &super::answer::Answer| Offer {
            text: say::answer(answer, self.style.units),
            comes_to: say::comes_to(answer),
            placed: answer.placed.clone(),
        };
        Sheet {
            headline: say::headline(&levels),
            under: under(&levels, &hour),
            key: Some(self.key(&levels)),
            key_light: levels.bright().total(),
            sides: self.sides(&levels),
            need: wanted.map(|wanted| say::need(&levels, wanted, answers.first())).unwrap_or_default(),
            offers: answers.iter().map(offer).collect(),
            colours: self.colours(&levels),
            contrast: contrast_words(&levels),
            ahead: self.ahead(levels.bright().total()),
            notes: self.notes(&levels, &hour),
        }
    }

    /// The sun where it reaches the mark, else the brighter cheek, else the front.
    fn key(&self, levels: &Levels) -> Vector<InLens> {
        let lens = LensFrame::new(self.subject.lens, self.subject.tilt);
        let over = levels.bright().total().stops_over(levels.shadow().total()).stops();
        match &levels.sun {
            Some((sun, _)) => lens.sees(*sun),
            None if over > 1.0 / 6.0 => lens.sees(self.subject.normal(levels.bright)),
            None => lens.sees(self.subject.normal(Side::Front)),
        }
    }

    fn sides(&self, levels: &Levels) -> Vec<SideRow> {
        let shown = named(levels);
        let brightest = shown.iter().map(|(_, side)| levels.level(*side).total().lux()).fold(0.0, f64::max);
        let row = |(name, side): (&'static str, Side)| {
            let level = levels.level(side);
            let cheek = matches!(side, Side::Left | Side::Right);
            let place = if cheek { format!(", camera {}", side.word()) } else { String::new() };
            SideRow {
                name: name.to_owned(),
                source: format!("{}{place}", say::main_source(level)),
                bar: say::bar(level.total(), Lux::from_lux(brightest)),
                t_stop: self.stop(level, levels),
                lux: say::level(level, levels.trust),
            }
        };
        shown.map(row).into()
    }

    /// "T3.2", or its range where only that is worth showing.
    fn stop(&self, level: &Level, levels: &Levels) -> String {
        let camera = &self.subject.camera;
        if level.total().lux() <= 0.0 {
            return "–".to_owned();
        }
        if !levels.trust.is_range {
            return numbers::t_stop(t_stop(camera, level));
        }
        let [from, to] = levels.trust.range(level.total());
        let mark = |light| numbers::t_stop(solved(camera, light, Sought::TStop).camera.t_stop);
        format!("{}–{}", mark(from), mark(to))
    }

    fn colours(&self, levels: &Levels) -> Vec<ColourRow> {
        let balance = white(self.subject.camera.balance);
        let row = |(name, side): (&'static str, Side)| {
            let row = Colour::of(levels.level(side), &self.subject.camera)?;
            Some(ColourRow { name, swatch: Swatch::of(row.colour, balance).hex(), text: colour_words(&row) })
        };
        named(levels).into_iter().filter_map(row).collect()
    }

    /// The key side's light in the hours ahead.
    pub(super) fn ahead(&self, now: Lux) -> Vec<Sample> {
        let ahead = self.day.iter().filter(|one| one.at > self.at && one.at < self.at + AHEAD);
        core::iter::once((self.at, now)).chain(ahead.map(|one| (one.at, one.bright))).collect()
    }
}

/// The four sides that are shown, by their names.
fn named(levels: &Levels) -> [(&'static str, Side); 4] {
    [
        ("Back", Side::Back),
        ("Key side", levels.bright),
        ("Fill side", levels.bright.other()),
        ("Background", Side::Background),
    ]
}

fn under(levels: &Levels, hour: &Hour) -> Vec<String> {
    let back = say::back_over_key(levels);
    let trust = say::trust(levels.trust, hour.correction != Correction::default());
    let second = if back.is_empty() { trust } else { format!("{back} · {trust}") };
    vec![format!("key side over fill side, {}", say::ratio_of(levels)), second]
}

/// "4,400 K, +49 mired: quarter blue, half magenta, CC 15".
fn colour_words(row: &Colour) -> String {
    let Some(((kelvin, _), rendered)) = row.white.zip(row.rendered) else {
        return format!("x {:.2}, y {:.2}: no colour temperature", row.colour.x(), row.colour.y());
    };
    let filter = row.filter.map_or(String::new(), |filter| format!(": {}", filter.name));
    let tint = row.tint.and_then(|tint| Some((tint, tint.nearest_strength()?)));
    let tint = tint.map_or(String::new(), |(tint, name)| {
        let colour = if tint.units() > 0.0 { "magenta" } else { "green" };
        format!(", {name} {colour}, CC {:.0}", tint.units().abs())
    });
    format!("{}, {}{filter}{tint}", numbers::kelvin(kelvin), numbers::mired(rendered))
}

fn contrast_words(levels: &Levels) -> String {
    let Some(contrast) = contrast(levels) else { return String::new() };
    let difference = format!("Δu′v′ {:.3}", contrast.difference);
    match contrast.warmer {
        None => format!("Key against background: {difference}"),
        Some((mired, look)) => {
            format!("Key against background: {}, {difference}, {}", numbers::mired(mired), look.word())
        }
    }
}

#[cfg(test)]
#[path = "sheet_tests.rs"]
mod tests;
