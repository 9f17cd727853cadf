//! What a running machine's watts, volts and amperes say, in words.

use diagnosis::{MotorLoad, RunningFinding};
use measure::running::{Plate, RunningError};
use measure::{Against, Direction, WattsTrend};
use quantity::{Amps, Ratio, Uncertain};

use crate::Locale;
use crate::value::{percent, scaled};

/// Says a finding about a running machine.
pub(crate) fn running_finding(finding: &RunningFinding, locale: &Locale) -> String {
    match finding {
        RunningFinding::PowerFactor { factor, load } => {
            format!(
                "Power factor {}. {}",
                scaled(factor, 1.0, "", locale).trim_end(),
                works(*load)
            )
        }
        RunningFinding::Unusable(error) => unusable(*error).to_owned(),
        RunningFinding::AgainstLabel {
            whose,
            share,
            against,
        } => label(*whose, share, *against, locale),
        RunningFinding::StartWindingLeftIn { share } => format!(
            "It draws {} of its compressor's label and goes on doing so: the start winding may be \
             left in, or the motor doesn't come up to speed (judgement). Unplug it; look at the \
             start device first.",
            percent(share, locale)
        ),
        RunningFinding::Trend(trend) => trends(trend, locale),
        RunningFinding::LockedRotor { least, most, bound } => {
            locked(*least, *most, bound.as_ref(), locale)
        }
        RunningFinding::MoreThanItsWindings { bound } => format!(
            "As it started it drew more than the {} that its windings can let through: one of both \
             readings isn't of this motor, or something else draws beside it. Read both again.",
            scaled(bound, 1.0, "A", locale)
        ),
    }
}

const fn works(load: MotorLoad) -> &'static str {
    match load {
        MotorLoad::Idle => {
            "So low is a motor that turns with next to nothing to do: little is pumped \
             (judgement; with a run capacitor it tells nothing)."
        }
        MotorLoad::Pumping => "That is a motor at work (judgement).",
        MotorLoad::CannotTell => "That doesn't tell whether the motor idles or works.",
    }
}

const fn unusable(error: RunningError) -> &'static str {
    match error {
        RunningError::NotAReading => "Watts, volts or amperes can't be: read them again.",
        RunningError::NoVolts => "No volts: read them at the machine's plug.",
        RunningError::NoCurrent => {
            "No current: it doesn't run, or the clamp is round the whole cord, where it reads zero."
        }
        RunningError::MoreWattsThanVoltAmperes => {
            "More watts than volts times amperes: one of them is of another moment. Read all three \
             in the same minute."
        }
        RunningError::Milliamperes => {
            "Volts times amperes are fifty times the watts or more: the amperes look like \
             milliamperes. Enter them again, with m after the number."
        }
    }
}

fn label(whose: Plate, share: &Uncertain<Ratio>, against: Against, locale: &Locale) -> String {
    let of = percent(share, locale);
    match (whose, against) {
        (Plate::Machine, Against::Above) => {
            format!("It draws {of} of the machine's plate, heater included: too much.")
        }
        (Plate::Machine, _) => format!(
            "It draws {of} of the machine's plate, which may count a defrost heater: that tells \
             little. The compressor's own label would."
        ),
        (Plate::Compressor, Against::Within) => format!(
            "It draws {of} of its compressor's label: as sound ones settle, at 55 to 90 % (common \
             practice)."
        ),
        (Plate::Compressor, Against::Below) => format!(
            "It draws {of} of its compressor's label, less than the 55 to 90 % at which sound ones \
             settle (common practice). Watts tell more: losing half its work takes a quarter off \
             the amperes and more than half off the watts."
        ),
        (Plate::Compressor, Against::Above) => format!(
            "It draws {of} of its compressor's label, more than the 55 to 90 % at which sound ones \
             settle (common practice): heat that doesn't get away, a tight rotor, or a start \
             winding left in."
        ),
        (Plate::Compressor, Against::CannotTell) => format!(
            "It draws {of} of its compressor's label, too close to an end of the usual 55 to 90 % \
             for this meter to tell."
        ),
    }
}

fn trends(trend: &WattsTrend, locale: &Locale) -> String {
    let change = scaled(&trend.change, 1.0, "W", locale);
    match trend.direction {
        Direction::Falling => format!(
            "From the fifth to the thirtieth minute the watts fell, by {change}. Slowly down is \
             sound; down to far less within minutes is not."
        ),
        Direction::Rising => format!(
            "From the fifth to the thirtieth minute the watts rose, by {change}: heat doesn't get \
             away, or the motor labours."
        ),
        Direction::Steady => {
            format!(
                "From the fifth to the thirtieth minute the watts stayed: {change}. Steady and \
                 high is a load that doesn't end, or a start winding left in; steady and low is a \
                 motor with little to pump (judgement)."
            )
        }
        Direction::CannotTell => {
            format!("Whether the watts went up or down this meter can't tell: {change}.")
        }
    }
}

fn locked(least: Amps, most: Amps, bound: Option<&Uncertain<Amps>>, locale: &Locale) -> String {
    let number = |amps: Amps| locale.number(amps.get(), 1);
    let range = format!(
        "With its rotor locked it should draw {} to {}\u{a0}A, four to eight times what it takes \
         now (from memory)",
        number(least),
        number(most)
    );
    match bound {
        Some(bound) => format!(
            "{range}; its windings let through {} at most.",
            scaled(bound, 1.0, "A", locale)
        ),
        None => format!("{range}."),
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use quantity::Sources;

    #[test]
    fn a_machines_plate_tells_little_and_a_compressors_label_more() {
        let share =
            Uncertain::exact(Ratio::new(0.73)).with(Sources::default().fresh(), Ratio::new(0.01));
        let of = |whose, against| {
            let finding = RunningFinding::AgainstLabel {
                whose,
                share: share.clone(),
                against,
            };
            running_finding(&finding, &Locale::default()).replace('\u{a0}', " ")
        };
        let own = of(Plate::Compressor, Against::Within);
        assert!(own.starts_with("It draws 73.0 ± 2.0 % of its compressor's label: as sound ones"));
        assert!(own.contains("common practice"));
        assert!(of(Plate::Machine, Against::CannotTell).contains("may count a defrost heater"));
    }

    #[test]
    fn a_power_factor_has_no_unit_and_what_it_tells_is_called_judgement() {
        let factor =
            Uncertain::exact(Ratio::new(0.93)).with(Sources::default().fresh(), Ratio::new(0.01));
        let finding = RunningFinding::PowerFactor {
            factor,
            load: MotorLoad::Pumping,
        };
        assert_eq!(
            running_finding(&finding, &Locale::default()).replace('\u{a0}', " "),
            "Power factor 0.93 ± 0.02. That is a motor at work (judgement)."
        );
    }
}
