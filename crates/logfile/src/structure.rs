//! Where in a table the rows of a log begin, and what kind of cell stands in which column.

use crate::number::{DecimalMark, number, says_missing};
use crate::scan::written;
use crate::table::{Delimiter, Table};
use crate::{LogError, words};

/// What a cell looks like by itself.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(crate) enum Kind {
    Empty,
    Missing,
    Number,
    Date,
    Time,
    Moment,
    Text,
}

impl Kind {
    pub(crate) fn of(cell: &str) -> Self {
        if cell.is_empty() {
            return Self::Empty;
        }
        if DecimalMark::ALL
            .into_iter()
            .any(|mark| number(cell, mark).is_some())
        {
            return Self::Number;
        }
        match written(cell).map(|found| (found.date.is_some(), found.time.is_some())) {
            Some((true, true)) => Self::Moment,
            Some((true, false)) => Self::Date,
            Some(_) => Self::Time,
            None if says_missing(cell) => Self::Missing,
            None => Self::Text,
        }
    }

    const fn says_when(self) -> bool {
        matches!(self, Self::Date | Self::Time | Self::Moment)
    }
}

/// Rows that are looked at for their kinds.
const SAMPLE_ROWS: usize = 400;
/// As much text is cut by each delimiter to find the right one.
const SAMPLE_BYTES: usize = 65_536;

/// What a table is made of.
#[derive(Debug)]
pub(crate) struct Structure {
    /// The first row of the log.
    pub(crate) first: usize,
    /// What most cells of each column are.
    pub(crate) kinds: Vec<Kind>,
    /// A heading for each column; empty ones where there are none.
    pub(crate) headings: Vec<String>,
    /// The row nearest above the log that holds headings.
    pub(crate) heading_row: Option<usize>,
    /// How well that delimiter fits: rows, times the share of columns that are no mere text.
    score: f64,
}

impl Structure {
    /// Looks at the first rows. `None` where none of them is one of a log.
    pub(crate) fn of(table: &Table) -> Option<Self> {
        let rows: Vec<Vec<Kind>> = (0..table.rows().min(SAMPLE_ROWS))
            .map(|row| table.cells(row).map(Kind::of).collect())
            .collect();
        let says_when = |row: &&Vec<Kind>| row.iter().any(|kind| kind.says_when());
        let of_log: Vec<&Vec<Kind>> = rows.iter().filter(|row| is_of_log(row)).collect();
        let with_when: Vec<&Vec<Kind>> = of_log.iter().copied().filter(says_when).collect();
        // A line of the preamble may hold a date too; a log that has dates has them in each row.
        let counted = if with_when.len() * 2 >= of_log.len() {
            &with_when
        } else {
            &of_log
        };
        let width = most_frequent(counted.iter().map(|row| row.len()))?;
        let alike: Vec<&Vec<Kind>> = counted
            .iter()
            .copied()
            .filter(|row| row.len() == width)
            .collect();
        let kinds: Vec<Kind> = (0..width).map(|column| most_of(&alike, column)).collect();
        let first = rows
            .iter()
            .position(|row| row.len() == width && fits(row, &kinds))?;
        let useful = kinds
            .iter()
            .filter(|kind| !matches!(kind, Kind::Text))
            .count();
        let (headings, heading_row) = headings(table, first, &kinds);
        Some(Self {
            first,
            score: alike.len() as f64 * useful as f64 / width as f64,
            kinds,
            headings,
            heading_row,
        })
    }

    /// All text above the log but its headings.
    pub(crate) fn preamble<'a>(&self, table: &'a Table) -> impl Iterator<Item = &'a str> {
        let until = self.heading_row.unwrap_or(self.first);
        (0..until).flat_map(|row| table.cells(row))
    }

    /// Fewer headings than columns: what was one cell for the writer has become two.
    pub(crate) fn check_headings(
        &self,
        table: &Table,
        delimiter: Delimiter,
    ) -> Result<(), LogError> {
        let (Some(row), false) = (self.heading_row, delimiter == Delimiter::Blanks) else {
            return Ok(());
        };
        let headings = table.width(row);
        let last_is_used = !matches!(self.kinds.last(), None | Some(Kind::Empty));
        if headings < self.kinds.len() && headings > 1 && last_is_used {
            let cells = self.kinds.len();
            return Err(LogError::MoreCellsThanHeadings { headings, cells });
        }
        Ok(())
    }
}

/// The delimiter by which the most rows look like a log's.
pub(crate) fn delimiter_of(text: &str) -> Result<Delimiter, LogError> {
    let sample = beginning(text);
    let mut best: Option<(Delimiter, f64)> = None;
    // What doesn't stand in it cuts nothing.
    let there = Delimiter::ALL
        .into_iter()
        .filter(|one| one.stands_in(sample));
    for delimiter in there {
        let table = Table::split(sample, delimiter)?;
        let score = Structure::of(&table).map_or(0.0, |structure| structure.score);
        if score > best.map_or(0.0, |(_, most)| most) {
            best = Some((delimiter, score));
        }
    }
    best.map(|(delimiter, _)| delimiter).ok_or(LogError::NoRows)
}

/// Whole lines from the beginning.
fn beginning(text: &str) -> &str {
    if text.len() <= SAMPLE_BYTES {
        return text;
    }
    let end = text.floor_char_boundary(SAMPLE_BYTES);
    let whole = text[..end].rfind('\n').map_or(end, |place| place + 1);
    &text[..whole]
}

/// A row of a log says when and how much, or holds two numbers, one of which may be when.
fn is_of_log(row: &[Kind]) -> bool {
    let count = |wanted: Kind| row.iter().filter(|kind| **kind == wanted).count();
    let numbers = count(Kind::Number);
    let says_when = row.iter().any(|kind| kind.says_when());
    row.len() > 1 && (says_when && numbers + count(Kind::Missing) > 0 || numbers > 1)
}

fn most_frequent(values: impl Iterator<Item = usize>) -> Option<usize> {
    let values: Vec<usize> = values.collect();
    let count = |wanted: usize| values.iter().filter(|value| **value == wanted).count();
    values.iter().copied().max_by_key(|value| count(*value))
}

fn most_of(rows: &[&Vec<Kind>], column: usize) -> Kind {
    const TELLING: [Kind; 5] = [
        Kind::Moment,
        Kind::Date,
        Kind::Time,
        Kind::Number,
        Kind::Text,
    ];
    let count = |wanted: Kind| rows.iter().filter(|row| row[column] == wanted).count();
    let most = TELLING.into_iter().rev().max_by_key(|kind| count(*kind));
    most.filter(|kind| count(*kind) > 0).unwrap_or(Kind::Empty)
}

/// Whether a row has in each column what most rows have there, or nothing.
fn fits(row: &[Kind], kinds: &[Kind]) -> bool {
    let one_fits = |(kind, wanted): (&Kind, &Kind)| match wanted {
        Kind::Date | Kind::Time | Kind::Moment => kind == wanted,
        Kind::Number => matches!(kind, Kind::Number | Kind::Missing | Kind::Empty),
        Kind::Empty | Kind::Missing | Kind::Text => true,
    };
    is_of_log(row) && row.iter().zip(kinds).all(one_fits)
}

/// The headings above the log, those of up to two rows joined: units often stand below the names.
fn headings(table: &Table, first: usize, kinds: &[Kind]) -> (Vec<String>, Option<usize>) {
    let mut headings = vec![String::new(); kinds.len()];
    let mut nearest = None;
    let is_heading = |row: &usize| {
        let cells: Vec<&str> = table.cells(*row).collect();
        let kinds = || cells.iter().map(|cell| Kind::of(cell));
        let filled = cells.iter().filter(|cell| !cell.is_empty()).count();
        let says_when = kinds().any(Kind::says_when);
        cells.len() > 1 && filled > 0 && !says_when && kinds().any(|kind| kind == Kind::Text)
    };
    for row in (first.saturating_sub(2)..first)
        .rev()
        .take_while(is_heading)
    {
        nearest = nearest.or(Some(row));
        if table.width(row) != kinds.len() {
            break;
        }
        for (heading, cell) in headings.iter_mut().zip(table.cells(row)) {
            let joined = [cell, heading.as_str()].join(" ");
            *heading = joined.trim().to_owned();
        }
        let folded = headings.iter().map(|heading| words::folded(heading));
        let names_time = folded
            .into_iter()
            .any(|heading| words::names_time(&heading));
        if names_time {
            break;
        }
    }
    (headings, nearest)
}

#[cfg(test)]
mod tests {
    use super::*;

    fn structure(text: &str) -> (Delimiter, Structure) {
        let delimiter = delimiter_of(text).unwrap();
        let table = Table::split(text, delimiter).unwrap();
        (delimiter, Structure::of(&table).unwrap())
    }

    #[test]
    fn delimiters_are_told_by_what_they_leave_in_the_cells() {
        let with = |text| structure(text).0;
        assert_eq!(
            with("05.03.2024 08:00;-18,2\n05.03.2024 08:05;-18,3\n"),
            Delimiter::Semicolon
        );
        assert_eq!(
            with("05.03.2024 08:00\t-18,2\n05.03.2024 08:05\t-18,3\n"),
            Delimiter::Tab
        );
        assert_eq!(
            with("2024-03-05 08:00,-18.2\n2024-03-05 08:05,-18.3\n"),
            Delimiter::Comma
        );
        assert_eq!(
            with("2024-03-05 08:00|-18.2\n2024-03-05 08:05|-18.3\n"),
            Delimiter::Bar
        );
        assert_eq!(
            with("05.03.2024 08:00 -12,5\n05.03.2024 08:05 -12,5\n"),
            Delimiter::Blanks
        );
        assert_eq!(with("0,5;-18,2;3,1\n1,0;-18,3;3,0\n"), Delimiter::Semicolon);
        assert_eq!(
            delimiter_of("no log at all,\nbut text, with commas\n"),
            Err(LogError::NoRows)
        );
    }

    #[test]
    fn a_preamble_is_passed_over_and_headings_are_joined() {
        let text = "Logger,A1\nStarted,2024-03-05 08:00\n\nNo,Time,Probe 1\n,,°C\n1,2024-03-05 08:00,-18\n2,2024-03-05 08:05,--\n";
        let (_, found) = structure(text);
        assert_eq!(found.headings, ["No", "Time", "Probe 1 °C"]);
        assert_eq!(found.kinds, [Kind::Number, Kind::Moment, Kind::Number]);
    }

    #[test]
    fn decimal_commas_between_commas_are_noticed() {
        let text = "Zeit,Temp\n05.03.2024 08:00,-18,2\n05.03.2024 08:05,-18,3\n";
        let table = Table::split(text, Delimiter::Comma).unwrap();
        let refused = Structure::of(&table)
            .unwrap()
            .check_headings(&table, Delimiter::Comma);
        assert_eq!(
            refused,
            Err(LogError::MoreCellsThanHeadings {
                headings: 2,
                cells: 3
            })
        );
    }
}
