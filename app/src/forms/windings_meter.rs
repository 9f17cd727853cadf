//! Which meter is in use and how its range is set: remembered from job to job.

use measure::{Meter, MeterKind};
use quantity::Ohms;

/// The meter as the person described it once.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct MeterInUse {
    /// How good it is.
    pub kind: MeterKind,
    /// How its range is chosen.
    pub range: Range,
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
            kind: MeterKind::Basic,
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
        match self.range {
            Range::Automatic => self.kind.automatic(),
            Range::EndsAt(top) => self.kind.set_to(top),
        }
    }

    /// As remembered: two words, for example `basic automatic` or `good 200`.
    #[must_use]
    pub fn remembered(self) -> String {
        let range = match self.range {
            Range::Automatic => "automatic".to_owned(),
            Range::EndsAt(top) => top.get().to_string(),
        };
        format!("{} {range}", kind_name(self.kind))
    }

    /// From what was remembered; the ordinary meter where that can't be read.
    #[must_use]
    pub fn recalled(text: &str) -> Self {
        let parsed = text.split_once(' ').and_then(|(kind, range)| {
            Some(Self {
                kind: kind_named(kind)?,
                range: range_named(range)?,
            })
        });
        parsed.unwrap_or_default()
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

fn kind_name(kind: MeterKind) -> &'static str {
    match kind {
        MeterKind::Basic => "basic",
        MeterKind::Good => "good",
    }
}

fn kind_named(name: &str) -> Option<MeterKind> {
    MeterKind::ALL
        .into_iter()
        .find(|kind| kind_name(*kind) == name)
}

fn range_named(name: &str) -> Option<Range> {
    if name == "automatic" {
        return Some(Range::Automatic);
    }
    let top = Ohms::new(name.parse().ok()?);
    MeterKind::MANUAL_RANGES
        .contains(&top)
        .then_some(Range::EndsAt(top))
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn every_meter_is_recalled_as_it_was_remembered() {
        for kind in MeterKind::ALL {
            for range in Range::all() {
                let meter = MeterInUse { kind, range };
                assert_eq!(MeterInUse::recalled(&meter.remembered()), meter);
            }
        }
    }

    #[test]
    fn a_setting_that_cannot_be_read_is_the_ordinary_meter() {
        for text in [
            "",
            "basic",
            "best automatic",
            "good 300",
            "good NaN",
            "basic -200",
        ] {
            assert_eq!(MeterInUse::recalled(text), MeterInUse::default(), "{text}");
        }
    }

    #[test]
    fn a_range_set_by_hand_is_what_over_range_lies_above() {
        let meter = MeterInUse::recalled("basic 200").meter();
        assert_eq!(meter.top, Ohms::new(200.0));
    }
}
