//! One row of a table; cells are read by the name of their column.

use slantlight::units::Instant;

use super::Failure;

/// A row, and where it stands.
#[derive(Clone, Copy)]
pub struct Row<'a> {
    file: &'a str,
    line: usize,
    columns: &'a [String],
    cells: &'a [String],
}

impl<'a> Row<'a> {
    pub(super) const fn new(file: &'a str, line: usize, columns: &'a [String], cells: &'a [String]) -> Self {
        Self { file, line, columns, cells }
    }

    /// File name.
    pub const fn file(&self) -> &'a str {
        self.file
    }

    /// Line in the file, counted from 1.
    pub const fn line(&self) -> usize {
        self.line
    }

    /// The cell as it is written.
    pub fn text(&self, column: &str) -> Result<&'a str, Failure> {
        let index = self.columns.iter().position(|name| name == column);
        index
            .map(|index| self.cells[index].as_str())
            .ok_or_else(|| Failure::malformed(self.file, self.line, &format!("no column '{column}'")))
    }

    /// A number; an empty cell is a failure.
    pub fn number(&self, column: &str) -> Result<f64, Failure> {
        self.read(column, "a number", |text| text.parse().ok().filter(|number: &f64| number.is_finite()))
    }

    /// A number, or nothing for an empty cell.
    pub fn optional(&self, column: &str) -> Result<Option<f64>, Failure> {
        if self.text(column)?.is_empty() { Ok(None) } else { self.number(column).map(Some) }
    }

    /// A whole number.
    pub fn integer(&self, column: &str) -> Result<i64, Failure> {
        self.read(column, "a whole number", |text| text.parse().ok())
    }

    /// An instant in RFC 3339.
    pub fn instant(&self, column: &str) -> Result<Instant, Failure> {
        self.read(column, "an instant", |text| Instant::parse(text).ok())
    }

    /// Any number of instants with ';' between them.
    pub fn instants(&self, column: &str) -> Result<Vec<Instant>, Failure> {
        self.read(column, "instants", |text| {
            text.split(';').filter(|one| !one.is_empty()).map(|one| Instant::parse(one).ok()).collect()
        })
    }

    /// A cell read in any other way.
    pub fn read<T>(
        &self,
        column: &str,
        kind: &str,
        read: impl Fn(&'a str) -> Option<T>,
    ) -> Result<T, Failure> {
        let text = self.text(column)?;
        read(text).ok_or_else(|| {
            Failure::malformed(self.file, self.line, &format!("{column} '{text}' is not {kind}"))
        })
    }

    /// A failure of this row that is not a number too far off.
    pub fn differs(&self, what: &str, got: impl ToString, expected: impl ToString) -> Failure {
        Failure::differs(self, what, got.to_string(), expected.to_string(), "exact".to_owned())
    }

    /// Every cell with its name, for failures.
    pub fn input(&self) -> String {
        let pairs = self.columns.iter().zip(self.cells).filter(|(_, cell)| !cell.is_empty());
        pairs.map(|(name, cell)| format!("{name}={cell}")).collect::<Vec<_>>().join(" ")
    }
}
