//! A file's temperatures, column by column, with what was done on the way.

use quantity::{Celsius, Seconds};

use crate::LogError;
use crate::decoded::decoded;
use crate::jumps::jumps;
use crate::layout::{Clock, Layout, Series, When};
use crate::notes::{Missing, Note, SeriesNote, Skipped};
use crate::order::{Rows, in_order};
use crate::ranking::middle;
use crate::rows::{NoReading, Reader};
use crate::table::Table;

/// One reading.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Point {
    /// In seconds since 1970-01-01T00:00:00Z.
    pub at: Seconds,
    /// What the probe showed.
    pub temperature: Celsius,
}

/// One column of temperatures.
#[derive(Debug, Clone, PartialEq)]
pub struct LoggedSeries {
    /// Which column, from 0.
    pub column: usize,
    /// What stands above it; empty where nothing does.
    pub heading: String,
    /// Its readings in rising order of time, no two of one time.
    pub points: Vec<Point>,
    /// What is to be told of it.
    pub notes: Vec<SeriesNote>,
}

/// A file as read.
#[derive(Debug, Clone, PartialEq)]
pub struct Logged {
    /// Its columns of temperatures, in the order of the file; those without any reading too.
    pub series: Vec<LoggedSeries>,
    /// Rows that count.
    pub rows: usize,
    /// What is to be told of all of it.
    pub notes: Vec<Note>,
}

/// Fewer rows are no course.
const LEAST_ROWS: usize = 2;
/// Rows that lie further than ten years from the middle one are of a clock that wasn't set.
const FAR: f64 = 10.0 * 365.25 * 86_400.0;

/// Reads a file by a layout that [`crate::Looked::settle`] gave for it.
///
/// # Errors
/// [`LogError::OtherLayout`] where the layout is of another file, [`LogError::TooFewRows`] where
/// fewer than two rows hold a time and a temperature.
pub fn read(bytes: &[u8], layout: &Layout) -> Result<Logged, LogError> {
    let text = decoded(bytes)?;
    read_table(&Table::split(&text, layout.delimiter)?, layout)
}

/// Reads a file that is cut into cells already.
pub(crate) fn read_table(table: &Table, layout: &Layout) -> Result<Logged, LogError> {
    if !is_of_file(layout, table) {
        return Err(LogError::OtherLayout);
    }
    let mut taken = Taken::new(layout, table);
    for row in layout.first..table.rows() {
        taken.take(table, row);
    }
    let Taken {
        rows,
        mut skipped,
        missing,
        ..
    } = taken;
    let rows = near_each_other(rows, &mut skipped);
    if rows.at.len() < LEAST_ROWS {
        return Err(LogError::TooFewRows {
            rows: rows.at.len(),
        });
    }
    let (rows, of_order) = in_order(rows, wall_clock(layout));
    if is_by_twelve(layout) && of_order.contains(&Note::NewestFirst) {
        return Err(LogError::NewestFirstByTwelve);
    }
    let count = rows.at.len();
    let series = layout.series.iter().zip(&rows.columns).zip(missing);
    let series: Vec<LoggedSeries> = series
        .map(|((series, values), missing)| logged(layout, *series, &rows.at, values, missing))
        .collect();
    if series.iter().all(|one| one.points.len() < LEAST_ROWS) {
        let rows = series.iter().map(|one| one.points.len()).max().unwrap_or(0);
        return Err(LogError::TooFewRows { rows });
    }
    let notes = skipped.into_iter().flatten().chain(of_order);
    Ok(Logged {
        series,
        rows: count,
        notes: notes.collect(),
    })
}

const fn is_by_twelve(layout: &Layout) -> bool {
    let clock = match layout.when {
        When::Calendar { clock, .. } | When::Time { clock, .. } => clock,
        When::Elapsed { .. } | When::Unix { .. } | When::SerialDays { .. } => return false,
    };
    matches!(clock, Clock::Twelve(_))
}

/// The offset in seconds of times that a clock on a wall showed.
fn wall_clock(layout: &Layout) -> Option<f64> {
    let offset = f64::from(layout.offset_minutes) * 60.0;
    matches!(layout.when, When::Calendar { .. } | When::SerialDays { .. }).then_some(offset)
}

/// A row of the log where one should be, with as many cells.
fn is_of_file(layout: &Layout, table: &Table) -> bool {
    layout.first < table.rows() && table.width(layout.first) == layout.headings.len()
}

fn logged(
    layout: &Layout,
    series: Series,
    at: &[f64],
    values: &[f64],
    missing: Missings,
) -> LoggedSeries {
    let there = at.iter().zip(values).filter(|(_, value)| !value.is_nan());
    let points: Vec<Point> = there
        .map(|(at, value)| Point {
            at: Seconds::new(*at),
            temperature: Celsius::new(*value),
        })
        .collect();
    let mut notes: Vec<SeriesNote> = missing.into_iter().flatten().collect();
    notes.extend(jumps(&points));
    LoggedSeries {
        column: series.column,
        heading: layout
            .headings
            .get(series.column)
            .cloned()
            .unwrap_or_default(),
        points,
        notes,
    }
}

/// A note for each reason, once there is one.
type Missings = [Option<SeriesNote>; 3];
type Skips = [Option<Note>; 3];

/// What was taken from the rows so far.
struct Taken<'a> {
    layout: &'a Layout,
    reader: Reader<'a>,
    rows: Rows,
    skipped: Skips,
    missing: Vec<Missings>,
}

impl<'a> Taken<'a> {
    fn new(layout: &'a Layout, table: &Table) -> Self {
        let columns = layout.series.len();
        Self {
            layout,
            reader: Reader::new(layout, table),
            rows: Rows {
                at: Vec::new(),
                columns: vec![Vec::new(); columns],
            },
            skipped: [None, None, None],
            missing: vec![[None, None, None]; columns],
        }
    }

    /// A function of its own, which a browser can make fast while the rows before it are read.
    #[inline(never)]
    fn take(&mut self, table: &'a Table, row: usize) {
        let Ok(at) = self.reader.at(table, row) else {
            let is_heading = self.layout.heading_row.is_some_and(|heading| {
                table.width(heading) == table.width(row)
                    && table.cells(heading).eq(table.cells(row))
            });
            let why = if is_heading {
                Skipped::RepeatedHeading
            } else {
                Skipped::NoTime
            };
            skip(&mut self.skipped, why, table.line(row));
            return;
        };
        self.rows.at.push(at);
        for (place, series) in self.layout.series.iter().enumerate() {
            let value = self
                .reader
                .celsius(table, row, *series)
                .unwrap_or_else(|why| {
                    let why = match why {
                        NoReading::Missing => Missing::SaysSo,
                        NoReading::NotANumber => Missing::NotANumber,
                        NoReading::BeyondAnyPlace => Missing::BeyondAnyPlace,
                    };
                    miss(
                        &mut self.missing[place],
                        why,
                        table.cell(row, series.column),
                    );
                    f64::NAN
                });
            self.rows.columns[place].push(value);
        }
    }
}

fn skip(skipped: &mut Skips, reason: Skipped, first: u64) {
    if let Note::Skipped { rows, .. } = skipped[reason as usize].get_or_insert(Note::Skipped {
        why: reason,
        rows: 0,
        line: first,
    }) {
        *rows += 1;
    }
}

fn miss(missing: &mut Missings, why: Missing, cell: &str) {
    let empty = || SeriesNote::NoReading {
        why,
        cells: 0,
        sample: cell.to_owned(),
    };
    if let SeriesNote::NoReading { cells, .. } = missing[why as usize].get_or_insert_with(empty) {
        *cells += 1;
    }
}

/// Without rows of a clock that wasn't set. Their lines are not known any more; the count is told.
fn near_each_other(rows: Rows, skipped: &mut Skips) -> Rows {
    let Some(middle) = middle(&rows.at) else {
        return rows;
    };
    let is_near: Vec<bool> = rows
        .at
        .iter()
        .map(|at| (at - middle).abs() <= FAR)
        .collect();
    let far = is_near.iter().filter(|near| !**near).count();
    if far == 0 {
        return rows;
    }
    for _ in 0..far {
        skip(skipped, Skipped::FarFromOthers, 0);
    }
    let only = |values: &[f64]| {
        values
            .iter()
            .zip(&is_near)
            .filter(|(_, near)| **near)
            .map(|(value, _)| *value)
            .collect()
    };
    Rows {
        at: only(&rows.at),
        columns: rows.columns.iter().map(|column| only(column)).collect(),
    }
}
