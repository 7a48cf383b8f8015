//! Reading a table: a comment block, a line of column names, then rows that all have as many cells.

use std::fs;
use std::path::Path;

use super::{Failure, Row, tables};

/// A table in memory. Cells hold no quotes and no commas.
pub struct Table {
    file: String,
    columns: Vec<String>,
    lines: Vec<(usize, Vec<String>)>,
}

impl Table {
    /// Reads `name` in `folder`; anything unusual is a failure, and so is a row too few in the repository's own.
    pub fn read(folder: &Path, name: &str) -> Result<Self, Failure> {
        let text =
            fs::read_to_string(folder.join(name)).map_err(|error| Failure::unreadable(name, &error))?;
        let table = Self::parse(name, &text)?;
        table.count(folder, name)?;
        Ok(table)
    }

    /// The rows in order.
    pub fn rows(&self) -> impl Iterator<Item = Row<'_>> {
        self.lines.iter().map(|(line, cells)| Row::new(&self.file, *line, &self.columns, cells))
    }

    fn parse(name: &str, text: &str) -> Result<Self, Failure> {
        let mut lines = text.lines().enumerate().map(|(index, line)| (index + 1, line)).peekable();
        let mut comments = 0;
        while lines.next_if(|(_, line)| line.starts_with('#')).is_some() {
            comments += 1;
        }
        if comments == 0 {
            return Err(Failure::malformed(name, 1, "no '#' lines that say what the table is"));
        }
        let (line, names) =
            lines.next().ok_or_else(|| Failure::malformed(name, comments, "no column names"))?;
        let columns = split(name, line, names)?;
        if (1..columns.len()).any(|n| columns[n..].contains(&columns[n - 1])) {
            return Err(Failure::malformed(name, line, "two columns of one name"));
        }
        let lines = lines
            .map(|(line, text)| Ok((line, cells(name, line, text, columns.len())?)))
            .collect::<Result<_, Failure>>()?;
        Ok(Self { file: name.to_owned(), columns, lines })
    }

    fn count(&self, folder: &Path, name: &str) -> Result<(), Failure> {
        let expected = tables::ROWS.iter().find(|(file, _)| *file == name).map(|(_, rows)| *rows);
        let right = if folder == super::committed() {
            Some(self.lines.len()) == expected
        } else {
            !self.lines.is_empty()
        };
        let words = || format!("{} rows, expected {expected:?}", self.lines.len());
        if right { Ok(()) } else { Err(Failure::malformed(name, 0, &words())) }
    }
}

fn cells(name: &str, line: usize, text: &str, columns: usize) -> Result<Vec<String>, Failure> {
    let cells = split(name, line, text)?;
    if cells.len() == columns {
        return Ok(cells);
    }
    Err(Failure::malformed(name, line, &format!("{} cells under {columns} columns", cells.len())))
}

fn split(name: &str, line: usize, text: &str) -> Result<Vec<String>, Failure> {
    if text.contains('"') {
        return Err(Failure::malformed(name, line, "a quote, which this loader does not read"));
    }
    Ok(text.split(',').map(str::to_owned).collect())
}

#[test]
fn a_table_must_be_whole() {
    let refused = |text: &str| Table::parse("t.csv", text).map(|_| ()).unwrap_err().to_string();
    assert!(refused("a,b\n1,2\n").contains("no '#' lines"));
    assert!(refused("# x\n").contains("no column names"));
    assert!(refused("# x\na,a\n").contains("two columns"));
    assert!(refused("# x\na,b\n1,2\n1\n").contains("t.csv:4"));
    assert!(refused("# x\na,b\n\"1\",2\n").contains("quote"));
    let table = Table::parse("t.csv", "# x\na,b\n1,\n").unwrap();
    let row = table.rows().next().unwrap();
    assert_eq!(row.number("a").unwrap(), 1.0);
    assert_eq!(row.optional("b").unwrap(), None);
    assert!(row.number("b").unwrap_err().to_string().contains("t.csv:3"));
    assert!(row.number("c").unwrap_err().to_string().contains("no column"));
}
