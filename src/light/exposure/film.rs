//! Film through the gate: how long a load runs.
//!
//! Frames on a foot follow from the pitch of the perforations (facts of the formats, SMPTE).

use crate::units::{Duration, FrameRate, Metres};

/// How a film is run.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Film {
    /// 8 mm, Super 8.
    Super8,
    /// 16 mm and Super 16.
    Mm16,
    /// 35 mm, four perforations a frame.
    Mm35FourPerf,
    /// 35 mm, three perforations a frame.
    Mm35ThreePerf,
    /// 35 mm, two perforations a frame.
    Mm35TwoPerf,
    /// 65 mm, five perforations a frame.
    Mm65FivePerf,
}

impl Film {
    /// All of them, narrow to wide.
    pub const ALL: [Self; 6] = [
        Self::Super8,
        Self::Mm16,
        Self::Mm35FourPerf,
        Self::Mm35ThreePerf,
        Self::Mm35TwoPerf,
        Self::Mm65FivePerf,
    ];

    /// Its name.
    pub const fn word(self) -> &'static str {
        match self {
            Self::Super8 => "8 mm",
            Self::Mm16 => "16 mm",
            Self::Mm35FourPerf => "35 mm, 4 perf",
            Self::Mm35ThreePerf => "35 mm, 3 perf",
            Self::Mm35TwoPerf => "35 mm, 2 perf",
            Self::Mm65FivePerf => "65 mm",
        }
    }

    /// Frames on a foot.
    pub const fn frames_on_a_foot(self) -> f64 {
        match self {
            Self::Super8 => 72.0,
            Self::Mm16 => 40.0,
            Self::Mm35FourPerf => 16.0,
            Self::Mm35ThreePerf => 64.0 / 3.0,
            Self::Mm35TwoPerf => 32.0,
            Self::Mm65FivePerf => 12.8,
        }
    }

    /// How long a load lasts at a frame rate.
    ///
    /// ```
    /// # use slantlight::{light::exposure::film::Film, units::{FrameRate, Metres}};
    /// let load = Film::Mm16.run_time(Metres::from_feet(400.0), FrameRate::clamped(24.0));
    /// assert!((load.minutes() - 11.11).abs() < 0.01);
    /// ```
    pub fn run_time(self, load: Metres, rate: FrameRate) -> Duration {
        Duration::from_seconds(load.feet().max(0.0) * self.frames_on_a_foot() / rate.fps())
    }

    /// Loads that a shot of a length takes, at least one.
    pub fn loads(self, shot: Duration, load: Metres, rate: FrameRate) -> u32 {
        let one = self.run_time(load, rate).seconds();
        if one > 0.0 { (shot.seconds() / one).ceil().max(1.0) as u32 } else { 1 }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_thousand_feet_run_eleven_minutes() {
        let (load, rate) = (Metres::from_feet(1000.0), FrameRate::clamped(24.0));
        let minutes = Film::Mm35FourPerf.run_time(load, rate).minutes();
        assert!((minutes - 11.11).abs() < 0.01);
        assert_eq!(Film::Mm35FourPerf.loads(Duration::from_minutes(25), load, rate), 3);
        assert_eq!(Film::Mm35FourPerf.loads(Duration::from_minutes(1), load, rate), 1);
        assert_eq!(Film::Mm16.loads(Duration::from_minutes(1), Metres::default(), rate), 1);
        let two = Film::Mm35TwoPerf.run_time(load, rate).minutes();
        assert!((two / minutes - 2.0).abs() < 1e-5);
    }
}
