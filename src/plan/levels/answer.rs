//! What to change for a wished ratio: every piece of the kit is tried where it can help, and the answers are put in order.
//!
//! Each piece is moved (a lamp that dims also dimmed) until the ratio is the one wished, by halving: ratios change one way
//! with distance. The best answer is the one with the least work: move what stands there, then what is in the kit, then
//! what would have to be brought. What cannot reach it comes last and says how far it comes.

use super::bare::Bare;
use super::hour::Hour;
use super::sides::Levels;
use super::subject::Subject;
use crate::light::ratio::{Fill, Ratio, fill_for};
use crate::plan::kit::{Gear, Placed, Side, Thing};
use crate::units::{Lux, Metres, Share, Stops};

/// Farthest that a piece may stand (our choice: cables, arms and rooms end about there).
const FARTHEST: f64 = 12.0;

/// Nearer than this to the wish, it is reached: what a third of a stop rounds to.
const REACHED: f64 = 1.0 / 6.0;

/// Halvings of a distance: to a millimetre.
const ROUNDS: usize = 40;

/// What is done.
#[derive(Clone, Debug, PartialEq)]
pub enum Means {
    /// What stands there goes to another distance.
    Move {
        /// Where it stands now.
        from: Metres,
    },
    /// A lamp that stands there is dimmed anew.
    Dim {
        /// Its level now.
        from: Share,
    },
    /// What stands there goes away.
    Strike,
    /// A piece of the kit comes.
    Bring,
    /// Something that is not in the kit: so much light on the shadow side.
    Borrow {
        /// Light to add.
        fill: Lux,
    },
    /// Something that is not in the kit: so much less light on the shadow side, or so much more on the bright one.
    TakeAway {
        /// Stops by which the shadow side must fall, positive.
        by: Stops,
    },
}

/// One answer.
#[derive(Clone, Debug, PartialEq)]
pub struct Answer {
    /// What is done.
    pub means: Means,
    /// The piece, as it stands then; `None` for what is not in the kit.
    pub piece: Option<Placed>,
    /// Its name.
    pub name: String,
    /// All that stands there then; `None` if this cannot be taken.
    pub placed: Option<Vec<Placed>>,
    /// The ratio that comes of it; `None` for sides alike.
    pub ratio: Option<Ratio>,
    /// Whether that is the one wished, to a third of a stop.
    pub reaches: bool,
}

/// How far the ratio is off a wish: positive if the shadow side must come down.
pub fn too_flat_by(levels: &Levels, wished: Ratio) -> Stops {
    wished.stops() - levels.ratio().map_or(Stops::default(), Ratio::stops)
}

/// Answers for the ratio wished, the best first; empty where it is reached already.
pub fn answers(subject: &Subject, hour: &Hour, wished: Ratio) -> Vec<Answer> {
    let bare = Bare::of(subject, hour);
    let ask = Ask { subject, hour, bare: &bare, wished };
    let now = Levels::with(subject, hour, &bare, &subject.rig.placed);
    if too_flat_by(&now, wished).stops().abs() < REACHED {
        return Vec::new();
    }
    let mut all = ask.with_what_stands(now.bright);
    all.extend(ask.with_the_kit(&now));
    all.push(ask.without_the_kit(&now));
    let work = |answer: &Answer| match answer.means {
        Means::Move { .. } | Means::Dim { .. } => 0,
        Means::Strike => 1,
        Means::Bring => 2,
        Means::Borrow { .. } | Means::TakeAway { .. } => 3,
    };
    let missing = |answer: &Answer| (ask.over(answer.ratio).abs() * 3.0).round() as i64;
    crate::order::by_key(&mut all, |answer| {
        (!answer.reaches, if answer.reaches { 0 } else { missing(answer) }, work(answer))
    });
    all
}

struct Ask<'a> {
    subject: &'a Subject,
    hour: &'a Hour,
    bare: &'a Bare,
    wished: Ratio,
}

impl Ask<'_> {
    /// Moving, dimming or striking each piece that stands there.
    fn with_what_stands(&self, bright: Side) -> Vec<Answer> {
        let mut all = Vec::new();
        for (at, placed) in self.subject.rig.placed.iter().enumerate() {
            let Some(gear) = self.subject.gear(placed).filter(|_| placed.side != Side::Background) else {
                continue;
            };
            let others = |one: Placed| {
                let mut list = self.subject.rig.placed.clone();
                list[at] = one;
                list
            };
            all.extend(self.moved(gear, placed, Means::Move { from: placed.distance }, bright, others));
            if gear.lamp().is_some_and(|lamp| lamp.dims) {
                all.extend(self.dimmed(gear, placed, bright, others));
            }
            let mut without = self.subject.rig.placed.clone();
            without.remove(at);
            all.push(self.answer(Means::Strike, gear, placed.clone(), without, bright));
        }
        // Striking helps only where it reaches; moving only where it changes something.
        all.retain(|answer| answer.reaches || !matches!(answer.means, Means::Strike));
        all
    }

    /// Bringing each piece of the kit that is left, to where it can help.
    fn with_the_kit(&self, now: &Levels) -> Vec<Answer> {
        let flat = too_flat_by(now, self.wished).stops() > 0.0;
        let (bright, shadow) = (now.bright, now.bright.other());
        let standing = |gear: &Gear| self.subject.rig.placed.iter().filter(|one| one.gear == gear.id).count();
        let free = self.subject.kit.iter().filter(|gear| standing(gear) < gear.count as usize);
        free.filter_map(|gear| {
            let side = match gear.is {
                Thing::Board(board) if board.is_black() == flat => shadow,
                Thing::Lamp(_) => {
                    if flat {
                        bright
                    } else {
                        shadow
                    }
                }
                Thing::Frame(_) if !flat && now.sun.is_some() => bright,
                _ => return None,
            };
            let usual = Metres::from_metres(2.0);
            let placed = Placed { gear: gear.id.clone(), side, distance: usual, level: Share::WHOLE };
            let beside = |one: Placed| [self.subject.rig.placed.as_slice(), &[one]].concat();
            self.moved(gear, &placed, Means::Bring, bright, beside)
        })
        .collect()
    }

    /// What no piece is named for: light to add, or to take away.
    fn without_the_kit(&self, now: &Levels) -> Answer {
        let (bright, shadow) = (now.bright().total(), now.shadow().total());
        let nothing = |means| Answer {
            means,
            piece: None,
            name: String::new(),
            placed: None,
            ratio: Some(self.wished),
            reaches: true,
        };
        // A fill beside the lens reaches both sides alike, so what is over the shadow side is the key.
        match fill_for(self.wished, bright - shadow, shadow) {
            Fill::Add(fill) => nothing(Means::Borrow { fill }),
            Fill::TooMuchAround { by, .. } => nothing(Means::TakeAway { by: -by }),
        }
    }

    /// The piece at the distance that makes the ratio, or the end of its range that comes nearest.
    fn moved(
        &self,
        gear: &Gear,
        placed: &Placed,
        means: Means,
        bright: Side,
        list: impl Fn(Placed) -> Vec<Placed>,
    ) -> Option<Answer> {
        let at = |metres: f64| Placed { distance: Metres::from_metres(metres), ..placed.clone() };
        let over = |metres: f64| self.over(self.ratio(&list(at(metres)), bright));
        let metres = nearest_root(over, (gear.nearest().metres(), FARTHEST));
        // To the decimetre, as a tape is read out.
        let piece = at((metres * 10.0).round() / 10.0);
        let answer = self.answer(means, gear, piece.clone(), list(piece), bright);
        let before = self.over(self.ratio(&self.subject.rig.placed, bright)).abs();
        // What does not bring it nearer by a third of a stop is no answer.
        (self.over(answer.ratio).abs() < before - REACHED).then_some(answer)
    }

    fn dimmed(
        &self,
        gear: &Gear,
        placed: &Placed,
        bright: Side,
        list: impl Fn(Placed) -> Vec<Placed>,
    ) -> Option<Answer> {
        let at = |level: f64| Placed { level: Share::clamped(level), ..placed.clone() };
        let level = nearest_root(|level| self.over(self.ratio(&list(at(level)), bright)), (0.01, 1.0));
        let piece = at((level * 100.0).round() / 100.0);
        let answer = self.answer(Means::Dim { from: placed.level }, gear, piece.clone(), list(piece), bright);
        answer.reaches.then_some(answer)
    }

    fn answer(&self, means: Means, gear: &Gear, piece: Placed, placed: Vec<Placed>, bright: Side) -> Answer {
        let ratio = self.ratio(&placed, bright);
        let reaches = self.over(ratio).abs() <= REACHED;
        Answer { means, piece: Some(piece), name: gear.name.clone(), placed: Some(placed), ratio, reaches }
    }

    /// The ratio with something else standing there; none if the other side becomes the bright one.
    fn ratio(&self, placed: &[Placed], bright: Side) -> Option<Ratio> {
        let levels = Levels::with(self.subject, self.hour, self.bare, placed);
        levels.ratio().filter(|_| levels.bright == bright)
    }

    /// Stops of a ratio over the wish.
    fn over(&self, ratio: Option<Ratio>) -> f64 {
        ratio.map_or(0.0, |ratio| ratio.stops().stops()) - self.wished.stops().stops()
    }
}

/// Where a function that rises or falls all the way is nothing, else the end at which it comes nearest.
fn nearest_root(function: impl Fn(f64) -> f64, (mut from, mut to): (f64, f64)) -> f64 {
    let (first, last) = (function(from), function(to));
    if (first >= 0.0) == (last >= 0.0) {
        return if first.abs() <= last.abs() { from } else { to };
    }
    for _ in 0..ROUNDS {
        let middle = 0.5 * (from + to);
        if (function(middle) >= 0.0) == (first >= 0.0) {
            from = middle;
        } else {
            to = middle;
        }
    }
    0.5 * (from + to)
}

#[cfg(test)]
#[path = "answer_tests.rs"]
mod tests;
