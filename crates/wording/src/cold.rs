//! What a job holds of a machine that is being proved, in words: places, events, temperatures and
//! counts of energy.

use job::{ColdEvent, ColdEventKind, Metered, MeteredError, Moment, Place, Spot};
use job::{TemperatureLog, TemperatureLogError};

use crate::page::EntryWords;
use crate::start_trials::{is_later, lasting};
use crate::{Locale, Words, measured};

const ENTERED_LATER: &str = "entered later";

impl Words for Place {
    fn words(self) -> &'static str {
        match self {
            Self::Freezer => "In the freezer",
            Self::FreshFood => "In the fresh-food part",
            Self::Room => "In the room",
            Self::Evaporator => "On the evaporator",
            Self::Condenser => "On the condenser",
            Self::SuctionLine => "On the suction line",
            Self::DrierOutlet => "At the drier's outlet",
            Self::Shell => "On the compressor",
        }
    }
}

impl Words for ColdEventKind {
    fn words(self) -> &'static str {
        match self {
            Self::SwitchedOn => "Switched on, warm inside",
            Self::CompressorOn => "The compressor started",
            Self::CompressorOff => "The compressor stopped by itself",
            Self::Tripped => "It tripped",
            Self::DoorOpened => "The door was opened",
            Self::Loaded => "Something warm was put in",
            Self::SetPointChanged => "The control was set anew",
            Self::DefrostBegan => "A defrost began",
            Self::DefrostEnded => "The defrost ended by itself",
            Self::DefrostWater => "Defrost water seen in the pan",
            Self::ProbeMoved => "The thermometer was moved",
            Self::SwitchedOff => "Switched off",
        }
    }
}

/// "at 3:05 pm", and that it was entered later where it was.
fn at(moment: Moment, entered: Moment, locale: &Locale) -> String {
    let mut says = format!("at {}", locale.moment(moment));
    if is_later(moment, entered) {
        says.push_str(&format!(", {ENTERED_LATER}"));
    }
    says
}

pub(crate) fn spot(spot: &Spot, entered: Moment, locale: &Locale) -> EntryWords {
    EntryWords {
        about: format!("Temperature: {}", spot.place.words().to_lowercase()),
        says: format!(
            "{}, {}",
            measured(spot.reading.measured, locale),
            at(spot.at, entered, locale)
        ),
    }
}

pub(crate) fn log(log: &TemperatureLog, locale: &Locale) -> EntryWords {
    let points = log.points();
    // A course has a first and a last point.
    let span = match (points.first(), points.last()) {
        (Some(first), Some(last)) => {
            format!(
                " from {} to {}",
                locale.moment(first.0),
                locale.moment(last.0)
            )
        }
        _ => String::new(),
    };
    EntryWords {
        about: format!(
            "Temperatures out of a file: {}",
            log.place().words().to_lowercase()
        ),
        says: format!("{} rows of {}{span}", log.rows(), log.file().as_str()),
    }
}

pub(crate) fn event(event: ColdEvent, entered: Moment, locale: &Locale) -> EntryWords {
    EntryWords {
        about: event.kind.words().to_owned(),
        says: at(event.at, entered, locale),
    }
}

pub(crate) fn metered(metered: &Metered, locale: &Locale) -> EntryWords {
    let mut says = format!(
        "{} from {} to {}",
        measured(metered.energy().measured, locale),
        locale.moment(metered.from()),
        locale.moment(metered.to())
    );
    if let Some(ran) = metered.ran() {
        says.push_str(&format!(", under load for {}", lasting(ran)));
    }
    EntryWords {
        about: "Energy counted".to_owned(),
        says,
    }
}

pub(crate) fn log_error(error: Option<TemperatureLogError>) -> &'static str {
    match error {
        None => "its times, temperatures or rows don't make a course.",
        Some(TemperatureLogError::TooFew) => "a course has at least two points.",
        Some(TemperatureLogError::TooMany) => "more points than a course may have.",
        Some(TemperatureLogError::NotInOrder { .. }) => "is not after the point before it.",
        Some(TemperatureLogError::Impossible { .. }) => {
            "no thermometer for a refrigerator shows that."
        }
    }
}

pub(crate) fn metered_error(error: MeteredError) -> &'static str {
    match error {
        MeteredError::EndsBeforeItBegins => "ends when it begins, or before: one time is wrong.",
        MeteredError::NotEnergy => "what was counted has to be an energy within the meter's range.",
        MeteredError::Negative => "a meter can't count less than nothing.",
        MeteredError::RanTooLong => "it can't have run for longer than was metered.",
    }
}
