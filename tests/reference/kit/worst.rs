//! The one way to compare numbers, which remembers how near each kind of value came to its tolerance.

use std::fmt;

use super::{Failure, Row};

/// The largest error of each kind of value in a table.
#[derive(Debug)]
pub struct Worst {
    table: &'static str,
    rows: usize,
    kinds: Vec<Kind>,
}

#[derive(Debug)]
struct Kind {
    what: &'static str,
    unit: &'static str,
    count: usize,
    error: f64,
    tolerance: f64,
    line: usize,
}

impl Worst {
    /// Nothing compared yet.
    pub const fn of(table: &'static str) -> Self {
        Self { table, rows: 0, kinds: Vec::new() }
    }

    /// One more row has been used.
    pub const fn row(&mut self) {
        self.rows += 1;
    }

    /// Fails unless `got` is within `tolerance` of `expected`; `what` and its unit name the kind, "height °".
    pub fn near(
        &mut self,
        row: &Row<'_>,
        (what, unit): (&'static str, &'static str),
        (got, expected): (f64, f64),
        tolerance: f64,
    ) -> Result<(), Failure> {
        let error = (got - expected).abs();
        self.note(row, (what, unit), error, tolerance);
        // Written so that an error that is not a number fails too.
        if error <= tolerance {
            return Ok(());
        }
        Err(Failure::differs(row, what, got.to_string(), expected.to_string(), format!("{tolerance} {unit}")))
    }

    fn note(
        &mut self,
        row: &Row<'_>,
        (what, unit): (&'static str, &'static str),
        error: f64,
        tolerance: f64,
    ) {
        let index = self.kinds.iter().position(|kind| kind.what == what).unwrap_or_else(|| {
            self.kinds.push(Kind { what, unit, count: 0, error: 0.0, tolerance, line: row.line() });
            self.kinds.len() - 1
        });
        let kind = &mut self.kinds[index];
        kind.count += 1;
        if error / tolerance > kind.error / kind.tolerance {
            (kind.error, kind.tolerance, kind.line) = (error, tolerance, row.line());
        }
    }
}

impl fmt::Display for Worst {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        writeln!(f, "{}: {} rows agree; worst errors", self.table, self.rows)?;
        for Kind { what, unit, count, error, tolerance, line } in &self.kinds {
            writeln!(
                f,
                "  {what:34} {error:12.7} {unit} of {tolerance} {unit}, line {line} ({count} values)"
            )?;
        }
        Ok(())
    }
}
