//! Thread CPU time, rounds that take turns, and bars.

use std::hint::black_box;

use cpu_time::ThreadTime;

/// Times of everything that was measured, nanoseconds.
#[derive(Default)]
pub struct Rounds {
    times: Vec<(&'static str, Vec<f64>)>,
}

impl Rounds {
    /// Runs `work` once; where it did only a part, the time is multiplied by `scale`.
    pub fn time<T>(&mut self, name: &'static str, scale: f64, work: impl FnOnce() -> T) {
        let before = ThreadTime::now();
        black_box(work());
        let nanos = before.elapsed().as_nanos() as f64 * scale;
        match self.times.iter_mut().find(|(other, _)| *other == name) {
            Some((_, times)) => times.push(nanos),
            None => self.times.push((name, vec![nanos])),
        }
    }

    /// Median of the rounds, nanoseconds.
    pub fn median(&self, name: &str) -> f64 {
        let mut times = self.times.iter().find(|(other, _)| *other == name).unwrap().1.clone();
        times.sort_by(f64::total_cmp);
        times[times.len() / 2]
    }

    /// All medians.
    pub fn print(&self) {
        for (name, times) in &self.times {
            println!("{name:58} {:>12.4} ms, median of {}", self.median(name) / 1e6, times.len());
        }
    }
}

/// A number and what it must hold.
pub struct Bar {
    name: &'static str,
    measured: f64,
    hold: f64,
    least: bool,
}

impl Bar {
    /// More is better.
    pub const fn at_least(name: &'static str, measured: f64, hold: f64) -> Self {
        Self { name, measured, hold, least: true }
    }

    /// Less is better.
    pub const fn at_most(name: &'static str, measured: f64, hold: f64) -> Self {
        Self { name, measured, hold, least: false }
    }

    /// One line with its mark.
    pub fn print(&self) {
        let Self { name, measured, hold, least } = self;
        let (sign, holds) = if *least { ("≥", measured >= hold) } else { ("≤", measured <= hold) };
        println!("{name:58} {measured:>10.1} {sign:>4}{hold:>6} {}", if holds { "holds" } else { "FAILS" });
    }
}
