//! A board that throws light back: how much.
//!
//! Where it must face is in [`super::aim`].

use super::form_factor;
use super::reach::{Reach, distance_for};
use crate::units::{Lux, Metres, Share};

/// What a board's surface gives back (common practice, no source); specular foils are not matt and not here.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Cloth {
    /// White foam or cloth.
    White,
    /// Unbleached cloth.
    Unbleached,
    /// Grey card.
    Grey,
    /// Black cloth.
    Black,
}

impl Cloth {
    /// All of them, lightest first.
    pub const ALL: [Self; 4] = [Self::White, Self::Unbleached, Self::Grey, Self::Black];

    /// Its name.
    pub const fn word(self) -> &'static str {
        match self {
            Self::White => "white",
            Self::Unbleached => "unbleached",
            Self::Grey => "grey",
            Self::Black => "black",
        }
    }

    /// What it gives back.
    pub const fn reflectance(self) -> Share {
        Share::clamped(match self {
            Self::White => 0.85,
            Self::Unbleached => 0.65,
            Self::Grey => 0.18,
            Self::Black => 0.03,
        })
    }
}

/// A matt board.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Board {
    /// Width.
    pub width: Metres,
    /// Height.
    pub height: Metres,
    /// What it gives back.
    pub reflectance: Share,
}

impl Board {
    /// Light on a subject that the board faces squarely from `distance`, itself lit by `on_board`: `ρ E F`.
    ///
    /// ```
    /// # use slantlight::{light::board::Board, units::{Lux, Metres, Share}};
    /// let side = Metres::from_metres(1.2);
    /// let board = Board { width: side, height: side, reflectance: Share::clamped(0.85) };
    /// let back = board.returns(Lux::from_lux(77_900.0), Metres::from_metres(2.0));
    /// assert!((back.kilolux() - 6.8).abs() < 0.05);
    /// ```
    pub fn returns(&self, on_board: Lux, distance: Metres) -> Lux {
        on_board.share(self.reflectance).share(form_factor::centred(self.width, self.height, distance))
    }

    /// How far off it gives a wished fill.
    pub fn distance_for(&self, on_board: Lux, wished: Lux, nearest: Metres) -> Reach {
        distance_for(|distance| self.returns(on_board, distance), wished, nearest)
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn board() -> Board {
        let side = Metres::from_metres(1.2);
        Board { width: side, height: side, reflectance: Share::clamped(0.85) }
    }

    #[test]
    fn a_board_in_the_sun() {
        // T-G2: 90 kilolux at 30° on the board.
        let on_board = Lux::from_kilolux(90.0 * 0.75_f64.sqrt());
        assert!((on_board.kilolux() - 77.9).abs() < 0.05);
        for (distance, kilolux) in [(1.0, 20.6), (1.5, 11.1), (2.0, 6.8), (3.0, 3.2)] {
            let got = board().returns(on_board, Metres::from_metres(distance)).kilolux();
            assert!((got - kilolux).abs() <= 0.0501, "{distance}: {got}");
        }
        // As if it were a point: 13.5 at 1.5 m, a fifth too much.
        let point = 0.85 * on_board.kilolux() * 1.44 / (core::f64::consts::PI * 2.25);
        assert!((point - 13.5).abs() < 0.05);
        assert!((point / board().returns(on_board, Metres::from_metres(1.5)).kilolux() - 1.21).abs() < 0.01);
    }

    #[test]
    fn distance_gives_the_fill() {
        let (on_board, wished) = (Lux::from_kilolux(77.9), Lux::from_kilolux(5.0));
        let Reach::At(distance) = board().distance_for(on_board, wished, Metres::from_metres(0.5)) else {
            panic!()
        };
        assert!((board().returns(on_board, distance).lux() / 5000.0 - 1.0).abs() < 1e-3);
    }
}
