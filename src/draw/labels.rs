//! Room for labels: places beside a point that nothing else has taken.

use super::shape::Point;

/// Width of a figure and height of a line of labels, 12 px type. Measured on our font, rounded up.
const FIGURE: f64 = 8.0;
const LINE: f64 = 12.0;

/// Places that are tried, in this order: right above, right below, left above, left below; from the point.
const TRIED: [(f64, f64); 6] =
    [(13.0, -10.0), (15.0, 5.0), (13.0, 12.0), (-13.0, -10.0), (-15.0, 5.0), (-13.0, 12.0)];

/// The paper's free room.
pub(super) struct Free {
    paper: Point,
    taken: Vec<(Point, f64, f64)>,
}

impl Free {
    /// All of the paper.
    pub(super) const fn on(paper: Point) -> Self {
        Self { paper, taken: Vec::new() }
    }

    /// Takes a box by its middle, width and height.
    pub(super) fn take(&mut self, middle: Point, width: f64, height: f64) {
        self.taken.push((middle, width, height));
    }

    /// Takes room for a text beside a point, and says where its middle is; `None` where there is none.
    pub(super) fn beside(&mut self, point: Point, text: &str) -> Option<Point> {
        let width = text.chars().count() as f64 * FIGURE;
        let stretch = (width - 2.0 * FIGURE).max(0.0) / 2.0;
        let place = |(x, y): (f64, f64)| Point::new(point.x + x + stretch.copysign(x), point.y + y);
        let free = TRIED.into_iter().map(place).find(|middle| self.is_free(*middle, width))?;
        self.take(free, width, LINE);
        Some(free)
    }

    fn is_free(&self, middle: Point, width: f64) -> bool {
        let inside = middle.x >= width / 2.0
            && middle.x <= self.paper.x - width / 2.0
            && middle.y >= LINE / 2.0
            && middle.y <= self.paper.y - LINE / 2.0;
        inside
            && self.taken.iter().all(|(other, wide, high)| {
                (middle.x - other.x).abs() * 2.0 >= width + wide
                    || (middle.y - other.y).abs() * 2.0 >= LINE + high
            })
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_second_label_gives_way_and_a_crowd_is_left_out() {
        let mut free = Free::on(Point::new(100.0, 100.0));
        let first = free.beside(Point::new(50.0, 50.0), "17").unwrap();
        let second = free.beside(Point::new(52.0, 50.0), "18").unwrap();
        assert!((first.x - second.x).abs() >= 16.0 || (first.y - second.y).abs() >= 12.0);
        free.take(Point::new(50.0, 50.0), 100.0, 100.0);
        assert_eq!(free.beside(Point::new(50.0, 50.0), "19"), None);
    }

    #[test]
    fn labels_stay_on_the_paper() {
        let mut free = Free::on(Point::new(100.0, 100.0));
        assert!(free.beside(Point::new(95.0, 50.0), "17").unwrap().x < 95.0);
        assert_eq!(free.beside(Point::new(50.0, -30.0), "17"), None);
    }
}
