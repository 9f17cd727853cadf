//! Temperatures of a machine that is being proved: read by a person, or out of a logger's file.
//!
//! Answers: where, when, and what did the thermometer show? Must never know: what that means, in
//! which form a file was written.

use quantity::Celsius;

use crate::{Moment, Reading, Text};

/// Where a temperature was taken.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
pub enum Place {
    /// In the freezer.
    Freezer,
    /// In the fresh-food part.
    FreshFood,
    /// In the room.
    Room,
    /// On the evaporator.
    Evaporator,
    /// On the condenser.
    Condenser,
    /// On the suction line, where it comes back to the compressor.
    SuctionLine,
    /// At the drier's outlet.
    DrierOutlet,
    /// On the compressor's shell.
    Shell,
}

impl Place {
    /// All of them, in the order in which they are offered.
    pub const ALL: [Self; 8] = [
        Self::Freezer,
        Self::FreshFood,
        Self::Room,
        Self::Evaporator,
        Self::Condenser,
        Self::SuctionLine,
        Self::DrierOutlet,
        Self::Shell,
    ];
}

/// One temperature that a person read.
#[derive(Debug, Clone, PartialEq)]
pub struct Spot {
    /// Where.
    pub place: Place,
    /// When.
    pub at: Moment,
    /// What the thermometer showed, in degrees Celsius.
    pub reading: Reading,
}

/// A course of temperatures out of a logger's file, thinned: from two to
/// [`TemperatureLog::MOST_POINTS`] points in rising order of time, of temperatures from −100 to
/// +200 °C.
#[derive(Debug, Clone, PartialEq)]
pub struct TemperatureLog {
    place: Place,
    file: Text,
    rows: u32,
    points: Vec<(Moment, Celsius)>,
}

/// Why points are no course.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum TemperatureLogError {
    /// Fewer than two.
    TooFew,
    /// More than [`TemperatureLog::MOST_POINTS`].
    TooMany,
    /// A point's time is not after that of the one before.
    NotInOrder {
        /// Its place in the list, counted from 0.
        point: usize,
    },
    /// A temperature is no number or outside of −100 to +200 °C: no thermometer for a cabinet shows
    /// that.
    Impossible {
        /// Its place in the list, counted from 0.
        point: usize,
    },
}

impl TemperatureLog {
    /// Two thousand points show a week at five minutes each, and leave room for a hundred jobs in a
    /// browser.
    pub const MOST_POINTS: usize = 2_000;

    /// A course by where it was taken, the file's name, how many rows that had, and its points.
    ///
    /// ```
    /// # use job::{Moment, Place, TemperatureLog, TemperatureLogError, Text};
    /// # use quantity::Celsius;
    /// let at = |minutes: i64| Moment::new(minutes * 60_000, 0).unwrap();
    /// let file = Text::new("logger.csv").unwrap();
    /// let points = vec![(at(0), Celsius::new(21.0)), (at(5), Celsius::new(18.5))];
    /// let log = TemperatureLog::new(Place::Freezer, file.clone(), 2, points).unwrap();
    /// assert_eq!(log.points().len(), 2);
    ///
    /// let again = vec![(at(5), Celsius::new(21.0)), (at(5), Celsius::new(18.5))];
    /// let refused = TemperatureLog::new(Place::Freezer, file, 2, again);
    /// assert_eq!(refused, Err(TemperatureLogError::NotInOrder { point: 1 }));
    /// ```
    ///
    /// # Errors
    /// [`TemperatureLogError`] where the points are no course.
    pub fn new(
        place: Place,
        file: Text,
        rows: u32,
        points: Vec<(Moment, Celsius)>,
    ) -> Result<Self, TemperatureLogError> {
        if points.len() < 2 {
            return Err(TemperatureLogError::TooFew);
        }
        if points.len() > Self::MOST_POINTS {
            return Err(TemperatureLogError::TooMany);
        }
        for (point, (_, temperature)) in points.iter().enumerate() {
            // Not a number is in no range.
            if !(-100.0..=200.0).contains(&temperature.get()) {
                return Err(TemperatureLogError::Impossible { point });
            }
        }
        for (before, pair) in points.windows(2).enumerate() {
            if pair[1].0.unix_milliseconds() <= pair[0].0.unix_milliseconds() {
                let point = before + 1;
                return Err(TemperatureLogError::NotInOrder { point });
            }
        }
        Ok(Self {
            place,
            file,
            rows,
            points,
        })
    }

    /// Where it was taken.
    #[must_use]
    pub const fn place(&self) -> Place {
        self.place
    }

    /// The name of the file.
    #[must_use]
    pub const fn file(&self) -> &Text {
        &self.file
    }

    /// How many rows the file had for this place.
    #[must_use]
    pub const fn rows(&self) -> u32 {
        self.rows
    }

    /// Its points, in rising order of time.
    #[must_use]
    pub fn points(&self) -> &[(Moment, Celsius)] {
        &self.points
    }
}
