//! Text cut into rows of cells.

use std::fmt;

use csv_core::{ReadRecordResult, Reader, ReaderBuilder};

use crate::LogError;

/// What stands between two cells.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Delimiter {
    /// `;`
    Semicolon,
    /// A tab.
    Tab,
    /// `,`
    Comma,
    /// `|`
    Bar,
    /// One blank or more.
    Blanks,
}

impl Delimiter {
    /// All of them; of two that fit alike the earlier one is taken.
    pub const ALL: [Self; 5] = [
        Self::Semicolon,
        Self::Tab,
        Self::Comma,
        Self::Bar,
        Self::Blanks,
    ];

    /// Whether it stands anywhere in a text.
    pub(crate) fn stands_in(self, text: &str) -> bool {
        let is_it = |byte: u8| match self.byte() {
            Some(own) => byte == own,
            None => byte == b' ' || byte == b'\t',
        };
        text.bytes().any(is_it)
    }

    const fn byte(self) -> Option<u8> {
        match self {
            Self::Semicolon => Some(b';'),
            Self::Tab => Some(b'\t'),
            Self::Comma => Some(b','),
            Self::Bar => Some(b'|'),
            Self::Blanks => None,
        }
    }
}

/// No logger has more columns.
const MOST_CELLS: usize = 1000;

/// All cells of a text, without their quotes. Empty lines are no rows.
#[derive(Default, PartialEq)]
pub(crate) struct Table {
    text: String,
    cells: Vec<Cell>,
    rows: Vec<Row>,
}

/// Where a cell stands in the table's text: no file has more bytes than this can count.
#[derive(Debug, Clone, Copy, PartialEq)]
struct Cell {
    start: u32,
    end: u32,
}

impl Cell {
    const fn of(start: usize, end: usize) -> Self {
        Self {
            start: start as u32,
            end: end as u32,
        }
    }
}

#[derive(Debug, Clone, Copy, PartialEq)]
struct Row {
    /// The first of its cells.
    first: usize,
    /// In the file, from 1.
    line: u64,
}

impl fmt::Debug for Table {
    /// Without its text, which may be millions of letters.
    fn fmt(&self, formatter: &mut fmt::Formatter<'_>) -> fmt::Result {
        write!(formatter, "Table of {} rows", self.rows.len())
    }
}

impl Table {
    /// Cuts a text by one delimiter.
    pub(crate) fn split(text: &str, delimiter: Delimiter) -> Result<Self, LogError> {
        match delimiter.byte() {
            Some(byte) if !text.contains('"') => Self::unquoted(text, byte),
            Some(byte) => Self::by_byte(text, byte),
            None => Self::by_blanks(text),
        }
    }

    /// Without quotes a mark is a mark: what [`Table::by_byte`] makes of it, in a fraction of the time.
    fn unquoted(text: &str, delimiter: u8) -> Result<Self, LogError> {
        let mut table = Self {
            text: text.to_owned(),
            ..Self::default()
        };
        let (mut start, mut line) = (0, 1);
        while start < text.len() {
            start = table.cut_row(start, delimiter, line)?;
            line += 1;
        }
        Ok(table)
    }

    /// Cuts the row that starts there, and returns where the next one does. A function of its own, which a
    /// browser can make fast while the rows before it are cut.
    #[inline(never)]
    fn cut_row(&mut self, start: usize, delimiter: u8, line: u64) -> Result<usize, LogError> {
        let first = self.cells.len();
        let bytes = self.text.as_bytes();
        let (mut cell, mut place) = (start, start);
        while let Some(byte) = bytes.get(place).copied() {
            if byte == delimiter {
                self.cells.push(Cell::of(cell, place));
                cell = place + 1;
            } else if byte == b'\n' || byte == b'\r' {
                break;
            }
            place += 1;
        }
        let next = match bytes.get(place..) {
            Some([b'\r', b'\n', ..]) => place + 2,
            _ => place + 1,
        };
        if place > start {
            self.cells.push(Cell::of(cell, place));
            self.rows.push(Row { first, line });
        }
        if self.cells.len() - first > MOST_CELLS {
            return Err(LogError::TooManyCells { line });
        }
        Ok(next)
    }

    fn by_byte(text: &str, delimiter: u8) -> Result<Self, LogError> {
        let mut reader: Reader = ReaderBuilder::new().delimiter(delimiter).build();
        // Taking quotes away makes nothing longer.
        let mut out = vec![0_u8; text.len()];
        let mut ends = vec![0_usize; MOST_CELLS];
        let mut table = Self::default();
        let (mut input, mut filled) = (text.as_bytes(), 0);
        loop {
            let (first, start, mut cells) = (table.cells.len(), filled, 0);
            let line = loop {
                let (result, taken, written, ended) =
                    reader.read_record(input, &mut out[filled..], &mut ends[cells..]);
                let ends_line = input[..taken].ends_with(b"\n");
                let line = reader.line() - u64::from(ends_line);
                input = &input[taken..];
                filled += written;
                cells += ended;
                match result {
                    ReadRecordResult::Record => break Some(line),
                    ReadRecordResult::End => break None,
                    // All of the text was handed over: the next call is told that it was.
                    ReadRecordResult::InputEmpty => {}
                    ReadRecordResult::OutputFull | ReadRecordResult::OutputEndsFull => {
                        return Err(LogError::TooManyCells { line });
                    }
                }
            };
            // The ends of a row's cells are counted from where the row starts.
            let mut from = start;
            table.cells.extend(ends[..cells].iter().map(|end| {
                let cell = Cell::of(from, start + end);
                from = start + end;
                cell
            }));
            match line {
                Some(line) if cells > 0 => table.rows.push(Row { first, line }),
                Some(_) => {}
                None => break,
            }
        }
        out.truncate(filled);
        // Cells are cut at ASCII marks, so that what was text stays text.
        table.text = String::from_utf8(out).map_err(|_| LogError::NotText)?;
        Ok(table)
    }

    fn by_blanks(text: &str) -> Result<Self, LogError> {
        let mut table = Self {
            text: String::with_capacity(text.len()),
            ..Self::default()
        };
        for (line, content) in (1..).zip(text.lines()) {
            let first = table.cells.len();
            for cell in content.split([' ', '\t']).filter(|cell| !cell.is_empty()) {
                let start = table.text.len();
                table.text.push_str(cell.trim_matches('"'));
                table.cells.push(Cell::of(start, table.text.len()));
            }
            if table.cells.len() - first > MOST_CELLS {
                return Err(LogError::TooManyCells { line });
            }
            if table.cells.len() > first {
                table.rows.push(Row { first, line });
            }
        }
        Ok(table)
    }

    pub(crate) fn rows(&self) -> usize {
        self.rows.len()
    }

    /// The line of a row in the file, from 1.
    pub(crate) fn line(&self, row: usize) -> u64 {
        self.rows[row].line
    }

    /// How many cells a row has.
    pub(crate) fn width(&self, row: usize) -> usize {
        let next = self.rows.get(row + 1).map(|next| next.first);
        next.unwrap_or(self.cells.len()) - self.rows[row].first
    }

    /// A cell without blanks around it; empty where the row has no such cell.
    pub(crate) fn cell(&self, row: usize, column: usize) -> &str {
        if column >= self.width(row) {
            return "";
        }
        let Cell { start, end } = self.cells[self.rows[row].first + column];
        trimmed(&self.text[start as usize..end as usize])
    }

    pub(crate) fn cells(&self, row: usize) -> impl Iterator<Item = &str> {
        (0..self.width(row)).map(move |column| self.cell(row, column))
    }
}

/// Without blanks around it. Nearly no cell has any, and of most letters a look tells that.
fn trimmed(text: &str) -> &str {
    match text.as_bytes() {
        [b'!'..=b'~'] | [b'!'..=b'~', .., b'!'..=b'~'] => text,
        _ => text.trim(),
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn cells(text: &str, delimiter: Delimiter) -> Vec<Vec<String>> {
        let table = Table::split(text, delimiter).unwrap();
        (0..table.rows())
            .map(|row| table.cells(row).map(str::to_owned).collect())
            .collect()
    }

    #[test]
    fn quotes_hold_cells_together_and_disappear() {
        let text = "a;\"b;c\";\"d \"\"e\"\"\"\n\n1;2;3";
        assert_eq!(
            cells(text, Delimiter::Semicolon),
            [vec!["a", "b;c", "d \"e\""], vec!["1", "2", "3"]]
        );
    }

    #[test]
    fn any_number_of_blanks_is_one_mark() {
        assert_eq!(
            cells("  a   b\t c\r\n1 2 3\r\n", Delimiter::Blanks),
            [["a", "b", "c"], ["1", "2", "3"]]
        );
    }

    #[test]
    fn the_last_row_counts_with_and_without_an_end_of_line() {
        for text in ["1,2\n3,4", "1,2\n3,4\n", "1,2\r\n3,4\r\n", "1,2\r3,4"] {
            assert_eq!(cells(text, Delimiter::Comma), [["1", "2"], ["3", "4"]]);
        }
        assert_eq!(cells("1,2\n3,", Delimiter::Comma), [["1", "2"], ["3", ""]]);
    }

    #[test]
    fn lines_are_those_of_the_file() {
        let table = Table::split("a,b\n\n1,2\n3,4\n", Delimiter::Comma).unwrap();
        let lines: Vec<u64> = (0..3).map(|row| table.line(row)).collect();
        assert_eq!(lines, [1, 3, 4]);
        assert_eq!((table.cell(2, 1), table.cell(2, 5)), ("4", ""));
    }

    #[test]
    fn without_quotes_the_short_way_cuts_as_the_long_one_does() {
        let texts = [
            "a,b,c\n1,2,3\n",
            "a,b\r\n\r\n1,2\r\n3,4",
            "a,b\r1,2\r\r3,4\r",
            "\n\n,\n,,\n 1 , 2\n\n",
            "1\n2\n",
            ",",
            "Zeit °C,Kühlfach\n1,2\n\r3,4",
            "",
            "\n",
        ];
        for text in texts {
            let short = Table::unquoted(text, b',').unwrap();
            let long = Table::by_byte(text, b',').unwrap();
            let cells = |table: &Table| {
                let row = |row| table.cells(row).map(str::to_owned).collect();
                (0..table.rows()).map(row).collect::<Vec<Vec<String>>>()
            };
            assert_eq!(cells(&short), cells(&long), "{text:?}");
            let lines = |table: &Table| -> Vec<u64> {
                (0..table.rows()).map(|row| table.line(row)).collect()
            };
            // The long way counts no line that a carriage return ends by itself.
            if !text.replace("\r\n", "\n").contains('\r') {
                assert_eq!(lines(&short), lines(&long), "{text:?}");
            }
        }
    }

    #[test]
    fn a_row_of_thousands_of_cells_is_refused() {
        let long = "1,".repeat(2000);
        let refused = Table::split(&long, Delimiter::Comma).err();
        assert_eq!(refused, Some(LogError::TooManyCells { line: 1 }));
    }
}
