//! A skyline changed by hand, point by point.

use super::{Point, Skyline};

impl Skyline {
    /// The skyline of other points: those that `change` makes of its own.
    pub fn changed(&self, change: impl FnOnce(&mut Vec<Point>)) -> Self {
        let mut points = self.points().to_vec();
        change(&mut points);
        Self::new(points)
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_point_more_and_a_point_less_is_the_same_line() {
        let line = Skyline::from_columns("120 4\n150 12\n300 2").unwrap();
        let more = line.changed(|points| points.push(Skyline::from_columns("200 30").unwrap().points()[0]));
        assert_eq!(more.points().len(), 4);
        let less = more.changed(|points| points.retain(|point| point.height.degrees() < 30.0));
        assert_eq!(less, line);
    }
}
