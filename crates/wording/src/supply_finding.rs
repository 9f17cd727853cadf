//! What the outlet and its volts say, in words.

use diagnosis::{OutletWiring, PowerSource, Protection, StandsAgainst, SupplyFinding};
use measure::Against;
use measure::supply::{Conductors, SupplyError, SupplyStandard};
use quantity::{Metres, Ohms, Ratio, Uncertain, Volts};

use crate::powered_choices::conductors as size;
use crate::value::{percent, scaled};
use crate::{Locale, uncertain_ohms};

/// Says a finding about the supply.
pub(crate) fn supply_finding(finding: &SupplyFinding, locale: &Locale) -> String {
    match finding {
        SupplyFinding::Protection(protection) => protected(*protection).to_owned(),
        SupplyFinding::Wiring(wiring) => wired(*wiring).to_owned(),
        SupplyFinding::Source(source) => fed(*source).to_owned(),
        SupplyFinding::Idle(stands) => format!("At rest {}", against(stands, locale)),
        SupplyFinding::Lowest(stands) => format!("As it starts {}", against(stands, locale)),
        SupplyFinding::Fall { share, is_caught } => fall(share, *is_caught, locale),
        SupplyFinding::Unusable(error) => unusable(*error).to_owned(),
        SupplyFinding::TorqueLeft { share, is_caught } => torque(share, *is_caught, locale),
        SupplyFinding::Resistance { way, cord } => resistance(way.as_ref(), *cord, locale),
        SupplyFinding::LongestCord {
            conductors,
            length,
            used,
        } => longest(*conductors, *length, *used, locale),
    }
}

const fn protected(protection: Protection) -> &'static str {
    match protection {
        Protection::TripsByItsButton => {
            "The outlet's protection answers to its test button. Everything powered is done there."
        }
        Protection::None => "The outlet has no protection: nothing is powered there.",
        Protection::ButtonDoesNothing => {
            "The outlet's protection doesn't answer to its button: nothing is powered there."
        }
    }
}

const fn wired(wiring: OutletWiring) -> &'static str {
    match wiring {
        OutletWiring::EarthMissing => "The outlet has no earth. Have it mended.",
        OutletWiring::PolesSwapped => {
            "Live and neutral are swapped at the outlet: where plugs fit one way only, parts stay \
             live with the control switched off. Have it mended."
        }
        OutletWiring::Right | OutletWiring::NotLooked => "",
    }
}

const fn fed(source: PowerSource) -> &'static str {
    match source {
        PowerSource::Generator => {
            "It is fed by a generator or an inverter. Those sag and change their frequency as a \
             motor starts, and a compressor takes several times its running current then: a hum \
             there says little. Judge it on the mains."
        }
        PowerSource::ExtensionCord => {
            "It is fed through a cord or a strip. Read its volts at the machine's own end, and try \
             it without before anything is blamed on the compressor."
        }
        PowerSource::OutletAlone => "",
    }
}

fn against(stands: &StandsAgainst, locale: &Locale) -> String {
    let StandsAgainst {
        volts,
        standard,
        against,
    } = stands;
    let read = scaled(volts, 1.0, "V", locale);
    let limits = format!(
        "{} to {}",
        volt(standard.least, locale),
        volt(standard.most, locale)
    );
    let by = named(standard.standard);
    match against {
        Against::Within => format!("{read}: within {limits}, {by}."),
        Against::Below => format!("{read}: below {limits}, {by}."),
        Against::Above => format!("{read}: above {limits}, {by}."),
        Against::CannotTell => {
            format!("{read}: too close to an end of {limits} for this meter to tell, {by}.")
        }
    }
}

const fn named(standard: SupplyStandard) -> &'static str {
    match standard {
        SupplyStandard::AnsiUtilisationA => "ANSI C84.1 range A at the appliance (from memory)",
        SupplyStandard::AnsiUtilisationB => "ANSI C84.1 range B at the appliance (from memory)",
        SupplyStandard::AnsiServiceA => "ANSI C84.1 range A at the meter",
        SupplyStandard::Iec230 => "IEC 60038 and EN 50160 (from memory)",
        SupplyStandard::RefrigeratorOutlet115 => {
            "what a refrigerator's outlet should have under load (Modern Refrigeration and Air \
             Conditioning, 2017, p. 646)"
        }
        SupplyStandard::NemaMotor => "a motor's own ±10 % (NEMA MG 1)",
    }
}

fn fall(share: &Uncertain<Ratio>, is_caught: bool, locale: &Locale) -> String {
    let by = percent(share, locale);
    let (least, most) = (
        (share.value() - share.expanded()).get(),
        (share.value() + share.expanded()).get(),
    );
    let at_least = if is_caught { "" } else { "at least " };
    let meaning = match () {
        () if least > diagnosis::FALLS_TOO_FAR.get() => {
            "That can keep a sound compressor from starting: mend the way to it before it is \
             blamed."
        }
        () if most < diagnosis::FALLS_AS_USUAL.get() && is_caught => {
            "The supply isn't what keeps it from starting."
        }
        () if is_caught => "More than is usual, and not enough by itself to stop a sound one.",
        () => "For a moment it may have been more: a meter that keeps the lowest would tell.",
    };
    format!("As it starts the volts fall by {at_least}{by}. {meaning}")
}

const fn unusable(error: SupplyError) -> &'static str {
    match error {
        SupplyError::NoIdleVolts => "No volts at rest: read them first, with the machine off.",
        SupplyError::NoStartingVolts => "The volts during the start can't be: read them again.",
        SupplyError::NoCurrent => {
            "No current: clamp one conductor in a line splitter, not the whole cord."
        }
        SupplyError::NoPowerFactor => "The power factor can't be.",
        SupplyError::VoltsRose => {
            "The volts rose as it started, by more than the meter explains: something else was \
             switched off in between, or both were swapped. Read both again."
        }
    }
}

fn torque(share: &Uncertain<Ratio>, is_caught: bool, locale: &Locale) -> String {
    let at_most = if is_caught { "" } else { "at most " };
    format!(
        "That leaves {at_most}{} of its rated starting torque, which goes with the square of the \
         volts.",
        percent(share, locale)
    )
}

fn resistance(way: Option<&Uncertain<Ohms>>, cord: Option<Ohms>, locale: &Locale) -> String {
    let of_cord = cord.map(|cord| format!("{}\u{a0}Ω", locale.number(cord.get(), 2)));
    match (way, of_cord) {
        (Some(way), Some(cord)) => format!(
            "Between the mains and the machine lie {} at most; of that the cord has {cord} by its \
             size. The rest is mains, house wiring and contacts.",
            uncertain_ohms(way, locale)
        ),
        (Some(way), None) => format!(
            "Between the mains and the machine lie {} at most: mains, house wiring and contacts.",
            uncertain_ohms(way, locale)
        ),
        (None, Some(cord)) => format!("The cord has {cord} by its size, contacts not counted."),
        (None, None) => String::new(),
    }
}

fn longest(
    conductors: Conductors,
    length: Metres,
    used: Option<Metres>,
    locale: &Locale,
) -> String {
    let sensible = format!(
        "At this starting current a cord of {} takes 3 % of the volts at {}, the advice for a \
         branch (NEC 210.19(A), a note)",
        size(conductors),
        metres(length, locale)
    );
    match used {
        Some(used) if used > length => {
            format!("{sensible}. Yours is {}: too long.", metres(used, locale))
        }
        Some(used) => format!("{sensible}. Yours is {}.", metres(used, locale)),
        None => format!("{sensible}."),
    }
}

fn metres(length: Metres, locale: &Locale) -> String {
    format!("{}\u{a0}m", locale.number(length.get(), 0))
}

fn volt(volts: Volts, locale: &Locale) -> String {
    let whole = (volts.get() - libm::round(volts.get())).abs() < 1e-9;
    format!("{}\u{a0}V", locale.number(volts.get(), usize::from(!whole)))
}

#[cfg(test)]
mod tests {
    use super::*;
    use measure::supply::VoltageStandard;
    use quantity::Sources;

    fn said(finding: &SupplyFinding) -> String {
        supply_finding(finding, &Locale::default()).replace('\u{a0}', " ")
    }

    fn share(value: f64, standard: f64) -> Uncertain<Ratio> {
        let source = Sources::default().fresh();
        Uncertain::exact(Ratio::new(value)).with(source, Ratio::new(standard))
    }

    #[test]
    fn a_fall_is_told_with_its_uncertainty_and_what_it_is_worth() {
        let fall = |value, is_caught| {
            said(&SupplyFinding::Fall {
                share: share(value, 0.006),
                is_caught,
            })
        };
        assert!(
            fall(0.14, true).starts_with("As it starts the volts fall by 14.0 ± 1.2 %. That can")
        );
        assert!(fall(0.03, true).ends_with("isn't what keeps it from starting."));
        let moment = fall(0.03, false);
        assert!(moment.contains("at least 3.0 ± 1.2 %") && moment.contains("may have been more"));
        // Its uncertainty reaches across ten per cent: no blame.
        assert!(fall(0.105, true).contains("not enough by itself"));
    }

    #[test]
    fn a_standard_is_named_with_its_limits() {
        let stands = StandsAgainst {
            volts: Uncertain::exact(Volts::new(98.0)),
            standard: VoltageStandard::of_motor(Volts::new(115.0)),
            against: Against::Below,
        };
        let told = said(&SupplyFinding::Lowest(stands));
        assert_eq!(
            told,
            "As it starts 98.00 ± 0.00 V: below 103.5 V to 126.5 V, a motor's own ±10 % (NEMA MG 1)."
        );
    }

    #[test]
    fn a_cord_that_is_too_long_is_told_so() {
        let longest = |used| {
            said(&SupplyFinding::LongestCord {
                conductors: Conductors::Awg14,
                length: Metres::new(13.6),
                used: Some(Metres::new(used)),
            })
        };
        assert!(longest(30.0).ends_with("Yours is 30 m: too long."));
        assert!(longest(7.5).ends_with("Yours is 8 m."));
    }
}
