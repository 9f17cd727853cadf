//! Dates and times of cells that are read one after another: what a cell has in common with the one
//! before isn't read again. A log has few days and many times.

use crate::scan::{scanned, time_to_end};
use crate::stamp::{DateParts, Written};

/// What the cell before told.
#[derive(Debug, Default, Clone, Copy)]
pub(crate) struct InTurn<'a> {
    /// The cell itself.
    before: Option<(&'a str, Option<Written>)>,
    /// What stood in front of its time, and which date that is.
    day: Option<(&'a str, DateParts)>,
}

impl<'a> InTurn<'a> {
    /// Reads a cell as [`crate::scan::written`] does; `None` where it is neither date nor time.
    pub(crate) fn written(&mut self, cell: &'a str) -> Option<Written> {
        let cell = cell.trim();
        if let Some((before, found)) = self.before
            && before == cell
        {
            return found;
        }
        let found = self.on_the_same_day(cell).or_else(|| self.anew(cell));
        self.before = Some((cell, found));
        found
    }

    /// The same up to the time, which begins with a digit there as it did before.
    fn on_the_same_day(&self, cell: &str) -> Option<Written> {
        let (in_front, date) = self.day?;
        let rest = cell.strip_prefix(in_front)?;
        if !rest.as_bytes().first()?.is_ascii_digit() {
            return None;
        }
        let (time, offset) = time_to_end(rest)?;
        Some(Written {
            date: Some(date),
            time: Some(time),
            offset,
        })
    }

    fn anew(&mut self, cell: &'a str) -> Option<Written> {
        let (found, in_front) = scanned(cell)?;
        let in_front = in_front.and_then(|length| cell.get(..length));
        self.day = in_front.zip(found.date);
        Some(found)
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::scan::written;

    #[test]
    fn each_cell_says_what_it_says_alone() {
        let cells = [
            "2024-03-05T08:00:00Z",
            "2024-03-05T08:00:10Z",
            "2024-03-05T08:00:10Z",
            "2024-03-05T8 h",
            "2024-03-06T08:00",
            " 2024-03-06T08:05+01:00 ",
            "05/03/2024 11:55 PM",
            "05/03/2024 11:56 PM",
            "05/03/2024",
            "05/03/2024 ",
            "05/03/20241:00",
            "Tue 5 Mar 2024, 7:05",
            "Tue 5 Mar 2024, 7:05 a.m.",
            "Tue 5 Mar 2024, 17:05",
            "Wed 6 Mar 2024, 17:05",
            "20240305T080000",
            "20240305T080010",
            "08:00:00",
            "08:00:00 05.03.2024",
            "no reading",
            "",
        ];
        for one in cells {
            for other in cells {
                let mut in_turn = InTurn::default();
                for cell in [one, other, one, one, other] {
                    assert_eq!(in_turn.written(cell), written(cell), "{cell} after {one}");
                }
            }
        }
    }
}
