//! Scales: where a value stands along a line, and which value stands at a point of it.
//!
//! A scale may be a circle that was cut open (a bearing), whose end joins its beginning.

/// Values from one end of a line to the other, in steps.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Scale {
    /// Value at the beginning.
    pub from: f64,
    /// Value at the end; on a circle it is the beginning again.
    pub to: f64,
    /// Smallest change.
    pub step: f64,
    /// Whether the end joins the beginning.
    pub wraps: bool,
}

impl Scale {
    /// Bearings in whole degrees.
    pub const BEARING: Self = Self { from: 0.0, to: 360.0, step: 1.0, wraps: true };

    /// A line with two ends.
    pub const fn line(from: f64, to: f64, step: f64) -> Self {
        Self { from, to, step, wraps: false }
    }

    /// Where `value` stands, 0 to 1.
    ///
    /// ```
    /// # use slantlight::draw::scale::Scale;
    /// assert_eq!(Scale::BEARING.share(90.0), 0.25);
    /// assert_eq!(Scale::line(0.0, 10.0, 1.0).share(12.0), 1.0);
    /// ```
    pub fn share(&self, value: f64) -> f64 {
        (self.held(value) - self.from) / (self.to - self.from)
    }

    /// The nearest step to the point at `share` of the line.
    pub fn at_share(&self, share: f64) -> f64 {
        self.to_step(self.from + share * (self.to - self.from))
    }

    /// `value` moved by so many steps, onto a step.
    pub fn moved(&self, value: f64, steps: f64) -> f64 {
        self.to_step(value + steps * self.step)
    }

    /// The last value that is on the scale: on a circle, one step before the end.
    pub fn last(&self) -> f64 {
        if self.wraps { self.to - self.step } else { self.to }
    }

    /// The nearest step to `value` that is on the scale.
    fn to_step(self, value: f64) -> f64 {
        let stepped = self.from + ((value - self.from) / self.step).round() * self.step;
        // Steps of a tenth do not add up exactly; nine decimals are finer than any step.
        self.held((stepped * 1e9).round() / 1e9)
    }

    /// `value` brought onto the scale: around a circle, or to the nearer end.
    fn held(self, value: f64) -> f64 {
        if self.wraps {
            self.from + (value - self.from).rem_euclid(self.to - self.from)
        } else {
            value.clamp(self.from, self.to)
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_circle_goes_on_through_north() {
        assert_eq!(Scale::BEARING.moved(359.0, 1.0), 0.0);
        assert_eq!(Scale::BEARING.moved(0.0, -1.0), 359.0);
        assert_eq!(Scale::BEARING.at_share(1.0), 0.0);
        assert_eq!(Scale::BEARING.last(), 359.0);
    }

    #[test]
    fn a_line_ends() {
        let minutes = Scale::line(5.0, 120.0, 5.0);
        assert_eq!(minutes.moved(120.0, 3.0), 120.0);
        assert_eq!(minutes.moved(7.0, 1.0), 10.0);
        assert_eq!(minutes.at_share(-0.5), 5.0);
        assert_eq!(Scale::line(0.0, 1.0, 0.1).moved(0.2, 1.0), 0.3);
    }
}
