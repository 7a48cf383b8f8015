//! What a check says when it fails: file, line, input, what was compared, got, expected, tolerance.

use std::fmt;

use super::Row;

/// Why a check failed.
#[derive(Debug)]
pub struct Failure {
    /// File name, without folder.
    pub file: String,
    /// Line, counted from 1; 0 for the file as a whole.
    pub line: usize,
    reason: String,
}

impl Failure {
    /// A value of a row is not what it should be.
    pub fn differs(row: &Row<'_>, what: &str, got: String, expected: String, tolerance: String) -> Self {
        let reason =
            format!("{what}: got {got}, expected {expected}, tolerance {tolerance}\n  input {}", row.input());
        Self { file: row.file().to_owned(), line: row.line(), reason }
    }

    /// The file is not the table it should be.
    pub fn malformed(file: &str, line: usize, reason: &str) -> Self {
        Self { file: file.to_owned(), line, reason: reason.to_owned() }
    }

    /// The file cannot be read.
    pub fn unreadable(file: &str, error: &std::io::Error) -> Self {
        Self::malformed(file, 0, &error.to_string())
    }
}

impl fmt::Display for Failure {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        write!(f, "{}:{}: {}", self.file, self.line, self.reason)
    }
}
