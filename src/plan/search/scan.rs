//! When something is so that no plane of the sky can tell: looked at step by step, its edges found by halving.
//!
//! What comes and goes between two looks is not seen; callers choose steps in which nothing does.

use crate::units::{Duration, Instant, Span, Spans};

/// Edges are found to this. Our own choice: clocks show minutes.
const EXACT: Duration = Duration::from_millis(500);

/// All of `within` in which `holds`, looked at every `step`.
pub(in crate::plan) fn spans(within: Span, step: Duration, holds: impl Fn(Instant) -> bool) -> Spans {
    let mut found = Vec::new();
    let mut from = holds(within.start()).then_some(within.start());
    let mut before = within.start();
    while before < within.end() {
        let next = (before + step).min(within.end());
        match (from, holds(next)) {
            (None, true) => from = Some(edge(before, next, &holds)),
            (Some(start), false) => {
                found.extend(Span::new(start, edge(before, next, |at| !holds(at))));
                from = None;
            }
            _ => {}
        }
        before = next;
    }
    found.extend(from.and_then(|start| Span::new(start, within.end())));
    Spans::gather(found)
}

/// The first instant after `from` at which `turned`, which it is at `to` and not at `from`.
pub(in crate::plan) fn edge(mut from: Instant, mut to: Instant, turned: impl Fn(Instant) -> bool) -> Instant {
    while to - from > EXACT {
        let middle = from + Duration::from_millis((to - from).millis() / 2);
        if turned(middle) { to = middle } else { from = middle }
    }
    to
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn edges_are_found_between_the_looks() {
        let at = |seconds: i64| Instant::from_unix_millis(seconds * 1000);
        let within = Span::new(at(0), at(3600)).unwrap();
        let on = |now: Instant| (at(100)..at(1000)).contains(&now) || now >= at(3333);
        let found = spans(within, Duration::from_minutes(1), on);
        let edges: Vec<f64> =
            found.iter().flat_map(|span| [span.start(), span.end()]).map(|at| at.unix_seconds()).collect();
        assert_eq!(edges.len(), 4);
        for (edge, expected) in edges.into_iter().zip([100.0, 1000.0, 3333.0, 3600.0]) {
            assert!((edge - expected).abs() <= 0.5, "{edge}");
        }
    }
}
