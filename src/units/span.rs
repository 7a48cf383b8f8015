//! Spans of time and sets of them.
//!
//! A span is half-open, [start, end). A set of spans is sorted, and its spans neither touch nor overlap.

use super::time::{Duration, Instant};

/// Milliseconds in a minute.
const MINUTE: i64 = 60_000;

/// From `start` up to `end`; never empty.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub struct Span {
    start: Instant,
    end: Instant,
}

impl Span {
    /// From `start` to `end`; `None` unless `start` comes first.
    pub fn new(start: Instant, end: Instant) -> Option<Self> {
        (start < end).then_some(Self { start, end })
    }

    /// First instant.
    pub const fn start(self) -> Instant {
        self.start
    }

    /// First instant no longer in it.
    pub const fn end(self) -> Instant {
        self.end
    }

    /// How long it lasts.
    pub fn duration(self) -> Duration {
        self.end - self.start
    }

    /// The instant half-way through.
    pub fn middle(self) -> Instant {
        self.start + Duration::from_millis(self.duration().millis() / 2)
    }

    /// The first whole minute of it, where screens that know only minutes stand; its start if it holds none.
    pub fn first_minute(self) -> Instant {
        let past = self.start.unix_millis().rem_euclid(MINUTE);
        let next = self.start + Duration::from_millis((MINUTE - past) % MINUTE);
        if self.contains(next) { next } else { self.start }
    }

    /// Whether `instant` lies in it.
    pub fn contains(self, instant: Instant) -> bool {
        self.start <= instant && instant < self.end
    }

    /// What it shares with `other`.
    pub fn and(self, other: Self) -> Option<Self> {
        Self::new(self.start.max(other.start), self.end.min(other.end))
    }
}

/// A set of spans, sorted, apart from each other.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct Spans(Vec<Span>);

impl Spans {
    /// No time at all.
    pub const fn none() -> Self {
        Self(Vec::new())
    }

    /// Gathers spans in any order; those that touch or overlap become one.
    pub fn gather(mut spans: Vec<Span>) -> Self {
        crate::order::by_key(&mut spans, |span| span.start);
        let mut joined: Vec<Span> = Vec::with_capacity(spans.len());
        for span in spans {
            match joined.last_mut() {
                Some(last) if span.start <= last.end => last.end = last.end.max(span.end),
                _ => joined.push(span),
            }
        }
        Self(joined)
    }

    /// The spans in order.
    pub fn iter(&self) -> impl DoubleEndedIterator<Item = Span> + ExactSizeIterator + '_ {
        self.0.iter().copied()
    }

    /// The spans in order.
    pub fn as_slice(&self) -> &[Span] {
        &self.0
    }

    /// Whether there is no time in it.
    pub fn is_empty(&self) -> bool {
        self.0.is_empty()
    }

    /// All its time together.
    pub fn total(&self) -> Duration {
        self.iter().fold(Duration::ZERO, |sum, span| sum + span.duration())
    }

    /// Whether `instant` lies in one of them.
    pub fn contains(&self, instant: Instant) -> bool {
        let after = self.0.partition_point(|span| span.start <= instant);
        after > 0 && self.0[after - 1].contains(instant)
    }

    /// In this set or the other (union).
    pub fn or(&self, other: &Self) -> Self {
        Self::gather([self.0.as_slice(), other.0.as_slice()].concat())
    }

    /// In both sets (intersection).
    pub fn and(&self, other: &Self) -> Self {
        let (mut a, mut b) = (self.0.iter().peekable(), other.0.iter().peekable());
        let mut shared = Vec::new();
        while let (Some(one), Some(two)) = (a.peek(), b.peek()) {
            shared.extend(one.and(**two));
            if one.end <= two.end {
                a.next()
            } else {
                b.next()
            };
        }
        Self(shared)
    }

    /// In `whole` but not in this set (complement).
    pub fn complement(&self, whole: Span) -> Self {
        let mut free = Vec::with_capacity(self.0.len() + 1);
        let mut from = whole.start;
        for span in self.iter() {
            free.extend(Span::new(from, span.start.min(whole.end)));
            from = from.max(span.end);
        }
        free.extend(Span::new(from, whole.end));
        Self(free)
    }

    /// In this set but not in the other.
    pub fn without(&self, other: &Self) -> Self {
        match (self.0.first(), self.0.last()) {
            (Some(first), Some(last)) => {
                let whole = Span { start: first.start, end: last.end };
                self.and(&other.complement(whole))
            }
            _ => Self::none(),
        }
    }
}

impl From<Span> for Spans {
    fn from(span: Span) -> Self {
        Self(vec![span])
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use proptest::prelude::*;

    fn at(minute: i64) -> Instant {
        Instant::from_unix_millis(minute * 60_000)
    }

    fn some_spans() -> impl Strategy<Value = Spans> {
        proptest::collection::vec((0i64..200, 1i64..40), 0..12).prop_map(|pairs| {
            Spans::gather(
                pairs.into_iter().filter_map(|(from, long)| Span::new(at(from), at(from + long))).collect(),
            )
        })
    }

    #[test]
    fn the_first_minute_lies_in_the_span() {
        let at = |millis| Instant::from_unix_millis(millis);
        let first = |start, end| Span::new(at(start), at(end)).unwrap().first_minute();
        assert_eq!(first(60_000, 300_000), at(60_000));
        assert_eq!(first(60_001, 300_000), at(120_000));
        assert_eq!(first(-1, 300_000), at(0));
        assert_eq!(first(60_001, 119_000), at(60_001));
    }

    proptest! {
        #[test]
        fn sets_agree_with_each_minute(a in some_spans(), b in some_spans()) {
            let whole = Span::new(at(10), at(230)).unwrap();
            let (or, and, not, less) = (a.or(&b), a.and(&b), a.complement(whole), a.without(&b));
            for minute in 0..260 {
                let now = at(minute);
                let (in_a, in_b) = (a.iter().any(|s| s.contains(now)), b.iter().any(|s| s.contains(now)));
                prop_assert_eq!(or.contains(now), in_a || in_b);
                prop_assert_eq!(and.contains(now), in_a && in_b);
                prop_assert_eq!(not.contains(now), whole.contains(now) && !in_a);
                prop_assert_eq!(less.contains(now), in_a && !in_b);
            }
            for set in [&or, &and, &not, &less] {
                prop_assert!(set.as_slice().windows(2).all(|pair| pair[0].end() < pair[1].start() ));
            }
        }
    }
}
