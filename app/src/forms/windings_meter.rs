//! Which meter is in use and how its range is set: remembered from job to job.

use measure::{Meter, MeterKind};
use quantity::{Accuracy, Observed, Ohms, parse_decimal, parse_reading, write_decimal};

/// The meter as the person described it once.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct MeterInUse {
    /// How good it is.
    pub profile: Profile,
    /// How its range is chosen.
    pub range: Range,
}

/// How good a meter is.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum Profile {
    /// One of the kinds that are known.
    Kind(MeterKind),
    /// By its own data sheet.
    Own(OwnMeter),
}

/// A meter by its own data sheet.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct OwnMeter {
    /// ±(percent of reading + counts) on ohms.
    pub accuracy: Accuracy,
    /// The end of its highest ohms range.
    pub top: Ohms,
}

/// Why a meter's figures can't be those of a meter.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum NoSuchMeter {
    /// The percentage is no number, or outside 0 to 20.
    Percent,
    /// The counts are no number, or outside 0 to 100.
    Counts,
    /// The highest range is no number, or ends below 200 Ω or above 1 GΩ.
    Top,
}

/// How a meter's range is chosen. It decides what "over range" means.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum Range {
    /// The meter does.
    Automatic,
    /// By hand, ending here: one of [`MeterKind::MANUAL_RANGES`].
    EndsAt(Ohms),
}

impl Default for MeterInUse {
    fn default() -> Self {
        Self {
            profile: Profile::Kind(MeterKind::Basic),
            range: Range::Automatic,
        }
    }
}

impl MeterInUse {
    /// The name of the setting.
    pub const SETTING: &'static str = "meter";

    /// The meter as it is for the next reading.
    #[must_use]
    pub fn meter(self) -> Meter {
        let automatic = match self.profile {
            Profile::Kind(kind) => kind.automatic(),
            Profile::Own(OwnMeter { accuracy, top }) => Meter { accuracy, top },
        };
        match self.range {
            Range::Automatic => automatic,
            Range::EndsAt(top) => Meter { top, ..automatic },
        }
    }

    /// As remembered: its range and how good it is, for example `automatic basic`, `200 good` or
    /// `automatic 0.8 3 40000000`.
    #[must_use]
    pub fn remembered(self) -> String {
        let range = match self.range {
            Range::Automatic => AUTOMATIC.to_owned(),
            Range::EndsAt(top) => write_decimal(top.get()),
        };
        let profile = match self.profile {
            Profile::Kind(kind) => kind_name(kind).to_owned(),
            Profile::Own(own) => own.remembered(),
        };
        [range, profile].join(" ")
    }

    /// From what was remembered; the ordinary meter where that can't be read.
    #[must_use]
    pub fn recalled(text: &str) -> Self {
        let parsed = text.split_once(' ').and_then(|(range, profile)| {
            let kind = MeterKind::ALL
                .into_iter()
                .find(|kind| kind_name(*kind) == profile);
            Some(Self {
                profile: match kind {
                    Some(kind) => Profile::Kind(kind),
                    None => Profile::Own(OwnMeter::recalled(profile)?),
                },
                range: range_named(range)?,
            })
        });
        parsed.unwrap_or_default()
    }
}

impl OwnMeter {
    /// The name of the setting.
    pub const SETTING: &'static str = "own-meter";

    const LOWEST_TOP: Ohms = Ohms::new(200.0);
    const HIGHEST_TOP: Ohms = Ohms::new(1e9);

    /// From figures off a data sheet, as typed.
    ///
    /// # Errors
    /// [`NoSuchMeter`] for the first figure that can't be.
    pub fn parse(percent: &str, counts: &str, top: &str) -> Result<Self, NoSuchMeter> {
        let percent = number(percent).ok_or(NoSuchMeter::Percent)?;
        Accuracy::new(percent, 0.0).ok_or(NoSuchMeter::Percent)?;
        let counts = number(counts).ok_or(NoSuchMeter::Counts)?;
        let accuracy = Accuracy::new(percent, counts).ok_or(NoSuchMeter::Counts)?;
        let top = match parse_reading(top, Self::HIGHEST_TOP) {
            Ok(typed) => typed.observed,
            Err(_) => return Err(NoSuchMeter::Top),
        };
        match top {
            Observed::Value(top) if top >= Self::LOWEST_TOP && top <= Self::HIGHEST_TOP => {
                Ok(Self { accuracy, top })
            }
            _ => Err(NoSuchMeter::Top),
        }
    }

    /// As remembered: percent, counts and the end of the highest range in ohms.
    #[must_use]
    pub fn remembered(self) -> String {
        let (percent, counts) = (self.accuracy.percent(), self.accuracy.counts());
        [percent, counts, self.top.get()]
            .map(write_decimal)
            .join(" ")
    }

    /// From what was remembered.
    #[must_use]
    pub fn recalled(text: &str) -> Option<Self> {
        let mut figures = text.split(' ');
        let (percent, counts, top) = (figures.next()?, figures.next()?, figures.next()?);
        Self::parse(percent, counts, top).ok()
    }
}

impl Range {
    /// All ways, the commonest first.
    #[must_use]
    pub fn all() -> Vec<Self> {
        let by_hand = MeterKind::MANUAL_RANGES.into_iter().map(Self::EndsAt);
        core::iter::once(Self::Automatic).chain(by_hand).collect()
    }
}

const AUTOMATIC: &str = "automatic";

fn kind_name(kind: MeterKind) -> &'static str {
    match kind {
        MeterKind::Basic => "basic",
        MeterKind::Good => "good",
    }
}

/// A bare number with either decimal mark.
fn number(text: &str) -> Option<f64> {
    parse_decimal(text.trim())
}

fn range_named(name: &str) -> Option<Range> {
    if name == AUTOMATIC {
        return Some(Range::Automatic);
    }
    let top = Ohms::new(parse_decimal(name)?);
    MeterKind::MANUAL_RANGES
        .contains(&top)
        .then_some(Range::EndsAt(top))
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn every_meter_is_recalled_as_it_was_remembered() {
        let own = Profile::Own(OwnMeter::parse("0,8", "3", "40M").unwrap());
        let kinds = MeterKind::ALL.map(Profile::Kind);
        for profile in kinds.into_iter().chain([own]) {
            for range in Range::all() {
                let meter = MeterInUse { profile, range };
                assert_eq!(MeterInUse::recalled(&meter.remembered()), meter);
            }
        }
    }

    #[test]
    fn a_setting_that_cannot_be_read_is_the_ordinary_meter() {
        for text in [
            "",
            "automatic",
            "automatic best",
            "300 good",
            "NaN good",
            "-200 basic",
            "automatic 50 3 4e7",
        ] {
            assert_eq!(MeterInUse::recalled(text), MeterInUse::default(), "{text}");
        }
    }

    #[test]
    fn a_range_set_by_hand_is_what_over_range_lies_above() {
        let meter = MeterInUse::recalled("200 basic").meter();
        assert_eq!(meter.top, Ohms::new(200.0));
    }

    #[test]
    fn a_meter_by_its_data_sheet_gives_its_readings_its_own_accuracy() {
        let own = OwnMeter::parse("0.5", "2", "60M").unwrap();
        assert_eq!((own.accuracy.percent(), own.accuracy.counts()), (0.5, 2.0));
        assert_eq!(own.top, Ohms::new(60e6));
    }

    #[test]
    fn figures_that_no_meter_has_are_refused_each_by_its_name() {
        let refused = |percent, counts, top| OwnMeter::parse(percent, counts, top).unwrap_err();
        assert_eq!(refused("one", "3", "40M"), NoSuchMeter::Percent);
        assert_eq!(refused("30", "3", "40M"), NoSuchMeter::Percent);
        assert_eq!(refused("1", "-1", "40M"), NoSuchMeter::Counts);
        assert_eq!(refused("1", "", "40M"), NoSuchMeter::Counts);
        assert_eq!(refused("1", "3", "40"), NoSuchMeter::Top);
        assert_eq!(refused("1", "3", "OL"), NoSuchMeter::Top);
    }
}
