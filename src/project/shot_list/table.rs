//! From pasted text to rows of cells.
//!
//! Cells are parted by tabs, semicolons or commas, whichever most rows agree on, with quotes as RFC 4180 has them
//! (the kept crate `csv` reads them); text that none of these parts is read line by line as scene headings.

use csv::ReaderBuilder;

use super::heading;

/// The longest text that is read, in bytes. Our own choice; a list of a thousand rows is a tenth of it.
pub const LONGEST: usize = 1_000_000;

/// The most rows that are read. Our own choice.
pub const MOST_ROWS: usize = 2_000;

/// Rows of cells, without empty rows.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Table {
    /// The rows, the first of which may name the columns.
    pub rows: Vec<Row>,
}

/// A row.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Row {
    /// The line of the text on which it begins, from 1.
    pub line: u64,
    /// Its cells, without blanks around them. Rows may differ in their number.
    pub cells: Vec<String>,
}

impl Table {
    /// The number of columns of the longest row.
    pub fn width(&self) -> usize {
        self.rows.iter().map(|row| row.cells.len()).max().unwrap_or(0)
    }
}

/// Why no row was read.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Unread {
    /// Nothing but blanks.
    Empty,
    /// More bytes than [`LONGEST`].
    TooLong,
    /// More rows than [`MOST_ROWS`].
    TooMany,
}

/// Reads a text of any origin.
///
/// # Errors
/// It is empty, or larger than any shot list.
pub fn read(text: &str) -> Result<Table, Unread> {
    if text.len() > LONGEST {
        return Err(Unread::TooLong);
    }
    let text = text.trim_start_matches('\u{feff}');
    let rows = match parted_by(text) {
        Some(delimiter) => parted(text, delimiter),
        None => plain(text),
    };
    match rows.len() {
        0 => Err(Unread::Empty),
        count if count > MOST_ROWS => Err(Unread::TooMany),
        _ => Ok(Table { rows }),
    }
}

/// What parts the cells: the first of tab, semicolon and comma that divides more than half of the rows, unless
/// most lines are scene headings, whose commas belong to their words.
fn parted_by(text: &str) -> Option<u8> {
    let lines = text.lines().filter(|line| !line.trim().is_empty());
    let (all, headings) =
        lines.fold((0, 0), |(all, headings), line| (all + 1, headings + usize::from(heading::is_one(line))));
    [b'\t', b';', b','].into_iter().find(|&delimiter| {
        let rows = parted(text, delimiter);
        let divided = rows.iter().filter(|row| row.cells.len() > 1).count();
        let is_prose = delimiter == b',' && 2 * headings > all;
        2 * divided > rows.len() && !is_prose
    })
}

fn parted(text: &str, delimiter: u8) -> Vec<Row> {
    let mut reader = ReaderBuilder::new()
        .has_headers(false)
        .flexible(true)
        .delimiter(delimiter)
        .from_reader(text.as_bytes());
    let mut lines = Lines { text, byte: 0, line: 1 };
    // Reading from memory, with any number of cells a row, cannot fail: the text is UTF-8 already.
    let records = reader.records().filter_map(Result::ok);
    let rows = records.map(|record| Row {
        line: lines.at(record.position().map_or(0, csv::Position::byte) as usize),
        cells: record.iter().map(|cell| cell.trim().to_owned()).collect(),
    });
    rows.filter(|row| row.cells.iter().any(|cell| !cell.is_empty())).collect()
}

/// Counts lines while a text is read from its start to its end.
struct Lines<'a> {
    text: &'a str,
    byte: usize,
    line: u64,
}

impl Lines<'_> {
    /// The line of the first letter at or behind `byte` that ends no line: where a record begins.
    fn at(&mut self, byte: usize) -> u64 {
        let bytes = self.text.as_bytes();
        let blank = bytes[byte..].iter().take_while(|byte| matches!(byte, b'\r' | b'\n')).count();
        let begin = byte + blank;
        self.line += bytes[self.byte..begin].iter().filter(|byte| **byte == b'\n').count() as u64;
        self.byte = begin;
        self.line
    }
}

fn plain(text: &str) -> Vec<Row> {
    let lines = (1..).zip(text.lines()).filter(|(_, line)| !line.trim().is_empty());
    lines.map(|(line, words)| Row { line, cells: heading::cells(words) }).collect()
}

#[cfg(test)]
mod tests {
    use super::*;

    fn cells(text: &str) -> Vec<Vec<String>> {
        read(text).unwrap().rows.into_iter().map(|row| row.cells).collect()
    }

    #[test]
    fn tabs_semicolons_and_commas_are_told_apart() {
        assert_eq!(cells("1\tloft, west; wide\n2\tslip"), [["1", "loft, west; wide"], ["2", "slip"]]);
        assert_eq!(cells("1;2,5;loft\n2;3,5;slip"), [["1", "2,5", "loft"], ["2", "3,5", "slip"]]);
        assert_eq!(cells("1,loft; west\n2,slip"), [["1", "loft; west"], ["2", "slip"]]);
    }

    #[test]
    fn quotes_keep_commas_line_breaks_and_quotes() {
        let text = "1,\"loft, the \"\"long\"\" one\",\"first\nsecond\"\r\n2,slip,x\r\n";
        assert_eq!(cells(text), [["1", "loft, the \"long\" one", "first\nsecond"], ["2", "slip", "x"]]);
        assert_eq!(read(text).unwrap().rows[1].line, 3);
    }

    #[test]
    fn empty_rows_are_passed_over_and_short_rows_kept() {
        let table = read("\u{feff}1,loft,x\n\n ,,\n2\n3,slip,y").unwrap();
        assert_eq!(table.rows.iter().map(|row| row.cells.len()).collect::<Vec<_>>(), [3, 1, 3]);
        assert_eq!(table.width(), 3);
    }

    #[test]
    fn what_is_no_list_is_refused() {
        assert_eq!(read(" \n\n"), Err(Unread::Empty));
        assert_eq!(read(&"a,b\n".repeat(MOST_ROWS + 1)), Err(Unread::TooMany));
        assert_eq!(read(&"a".repeat(LONGEST + 1)), Err(Unread::TooLong));
    }
}
