//! What a capacitor in circuit and a leakage clamp say, in words.

use diagnosis::{CapacitorFinding, LeakageFinding, TripWhen};
use measure::{Against, CapacitorError, CapacitorMarking, ProtectiveDevice, Trip};
use quantity::{Amps, Farads, Joules, Seconds, Uncertain, Volts};

use crate::Locale;
use crate::value::scaled;

/// Says a finding about a capacitor that was measured while it worked.
pub(crate) fn capacitor(finding: &CapacitorFinding, locale: &Locale) -> String {
    match finding {
        CapacitorFinding::Capacitance { farads, marked } => {
            let has = scaled(farads, 1e6, "µF", locale);
            match marked {
                None => format!("The capacitor has {has}. What is printed on it would tell more."),
                Some((marking, against)) => {
                    format!(
                        "The capacitor has {has}; by its marking {}. {}",
                        range(*marking, locale),
                        judged(*against)
                    )
                }
            }
        }
        CapacitorFinding::Holds {
            energy,
            volts,
            hurts,
            safe_after,
        } => holds(*energy, *volts, *hurts, *safe_after, locale),
        CapacitorFinding::Unusable(error) => unusable(*error).to_owned(),
        CapacitorFinding::FrequencyNotKnown => {
            "These mains have 50 or 60 Hz, and the capacitance follows from it: use a meter's \
             capacitance range."
                .to_owned()
        }
    }
}

fn range(marking: CapacitorMarking, locale: &Locale) -> String {
    let micro = |farads: Farads| locale.number(farads.get() * 1e6, 1);
    format!(
        "{} to {}\u{a0}µF",
        micro(marking.least),
        micro(marking.most)
    )
}

const fn judged(against: Against) -> &'static str {
    match against {
        Against::Within => "That fits.",
        Against::Below => "It has lost capacitance: replace it by one of the same marking.",
        Against::Above => {
            "More than its marking: the reading or the marking is another part's, or it is shorted \
             in part. Measure it discharged."
        }
        Against::CannotTell => {
            "This clamp can't tell whether that fits. A meter's capacitance range is better: \
             plug out, discharged, one lead off."
        }
    }
}

fn holds(
    energy: Joules,
    volts: Volts,
    hurts: bool,
    safe_after: Seconds,
    locale: &Locale,
) -> String {
    let decimals = if energy.get() < 0.95 { 2 } else { 1 };
    let harm = if hurts {
        "enough to hurt"
    } else {
        "not to be touched all the same"
    };
    format!(
        "Pulled at the crest it is left with {}\u{a0}V and {} J, {harm}. 10 kΩ bring it below \
         50\u{a0}V in {}\u{a0}s; take five seconds and more, and prove it with a meter.",
        locale.number(volts.get(), 0),
        locale.number(energy.get(), decimals),
        locale.number(safe_after.get(), 1)
    )
}

const fn unusable(error: CapacitorError) -> &'static str {
    match error {
        CapacitorError::NoVolts => {
            "No volts across the capacitor: read them at its own terminals while it works."
        }
        CapacitorError::NoCurrent => {
            "No current through the capacitor: clamp one of its own leads. If it stays at zero, \
             the capacitor or its switch is open."
        }
        CapacitorError::NoMainsFrequency => "The mains' frequency can't be.",
    }
}

/// Says a finding about leakage and trips.
pub(crate) fn leakage(finding: &LeakageFinding, locale: &Locale) -> String {
    match finding {
        LeakageFinding::Current {
            current,
            in_service,
            device,
        } => {
            let does = device.map_or_else(String::new, |(device, trip)| {
                format!(" {}", would(device, trip))
            });
            format!("{}{does}", leaks(current, *in_service, locale))
        }
        LeakageFinding::Sum {
            sum,
            device,
            trip,
            alone,
        } => added(sum, *device, *trip, *alone, locale),
        LeakageFinding::PointsTo(when) => points(*when).to_owned(),
        LeakageFinding::TooMuchCurrent => {
            "A breaker or a fuse goes for too much current, not for a leak: a short, a rotor that \
             doesn't turn, or too much else on the same circuit. From blade to blade an ohmmeter \
             tells a short."
                .to_owned()
        }
        LeakageFinding::NoUnprotectedOutlet => {
            "An outlet without protection is no answer: the leak stays, and a hand takes the place \
             of the device. Heater, compressor and fan unplugged in turn find the part."
                .to_owned()
        }
    }
}

fn leaks(current: &Uncertain<Amps>, in_service: Against, locale: &Locale) -> String {
    let milliamps = scaled(current, 1e3, "mA", locale);
    let meaning = match in_service {
        Against::Above => {
            "more than the 3.5 mA that appliances in service may have (VDE 0701-0702, 5.5): find \
             the part that leaks before it is powered again."
        }
        Against::CannotTell => {
            "too close to the 3.5 mA that appliances in service may have (VDE 0701-0702, 5.5) for \
             this clamp to tell."
        }
        Against::Within | Against::Below => {
            "within the 3.5 mA that appliances in service may have (VDE 0701-0702, 5.5). What \
             leaks only with the defrost heater on doesn't show unless it was on."
        }
    };
    format!("It leaks {milliamps}: {meaning}")
}

fn would(device: ProtectiveDevice, trip: Trip) -> String {
    let device = called(device);
    match trip {
        Trip::No => format!("{device} stays on at that."),
        Trip::May => format!("{device} may trip at that."),
        Trip::Must => format!("{device} trips at that."),
    }
}

const fn called(device: ProtectiveDevice) -> &'static str {
    match device {
        ProtectiveDevice::GroundFault6Milliamps => "A ground-fault device (4 to 6\u{a0}mA, UL 943)",
        ProtectiveDevice::ResidualCurrent30Milliamps => {
            "A residual-current device (15 to 30\u{a0}mA, IEC 61008-1)"
        }
    }
}

fn added(
    sum: &Uncertain<Amps>,
    device: ProtectiveDevice,
    trip: Trip,
    alone: Trip,
    locale: &Locale,
) -> String {
    let together = format!(
        "Together they leak {} at most. {}",
        scaled(sum, 1e3, "mA", locale),
        would(device, trip)
    );
    if trip > alone {
        format!(
            "{together} This machine alone doesn't reach that: several small leaks add up. Give it \
             a protected outlet of its own."
        )
    } else {
        together
    }
}

const fn points(when: TripWhen) -> &'static str {
    match when {
        TripWhen::AtOnce => {
            "A trip as the plug goes in points to what is connected all the time: cord, plug, \
             wiring, or a compressor that leaks (judgement)."
        }
        TripWhen::AtStart => {
            "A trip as the compressor starts points to its winding or its terminals (judgement)."
        }
        TripWhen::AtDefrost => {
            "A trip as a defrost begins points to its heater: unplug it and measure it to bare metal \
             (judgement)."
        }
        TripWhen::HoursLater => {
            "A trip hours later points to the defrost heater, which comes on then (judgement)."
        }
        TripWhen::AsItStops => {
            "A trip as it stops is often the spark of a switch that opens, which some devices take \
             for a leak (judgement): a newer device, or another one, tells."
        }
        TripWhen::Irregular => {
            "Trips without a pattern point to damp, to something else on the device, or to the \
             device itself (judgement)."
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use quantity::Sources;

    fn told(said: &str) -> String {
        said.replace('\u{a0}', " ")
    }

    #[test]
    fn a_capacitance_is_told_with_its_marking_and_what_the_clamp_cannot_tell() {
        let farads = Uncertain::exact(Farads::new(41.3e-6))
            .with(Sources::default().fresh(), Farads::new(0.4e-6));
        let marking = CapacitorMarking::run(Farads::new(40e-6));
        let of = |against| {
            let finding = CapacitorFinding::Capacitance {
                farads: farads.clone(),
                marked: Some((marking, against)),
            };
            told(&capacitor(&finding, &Locale::default()))
        };
        assert_eq!(
            of(Against::Within),
            "The capacitor has 41.3 ± 0.8 µF; by its marking 37.6 to 42.4 µF. That fits."
        );
        assert!(of(Against::CannotTell).contains("can't tell"));
        assert!(of(Against::Below).contains("lost capacitance"));
    }

    #[test]
    fn small_leaks_are_said_to_add_up_only_where_the_machine_alone_stays_below() {
        let sum = Uncertain::exact(Amps::new(6.6e-3));
        let of = |alone| {
            let finding = LeakageFinding::Sum {
                sum: sum.clone(),
                device: ProtectiveDevice::GroundFault6Milliamps,
                trip: Trip::Must,
                alone,
            };
            told(&leakage(&finding, &Locale::default()))
        };
        assert!(of(Trip::No).contains("several small leaks add up"));
        assert!(of(Trip::No).contains("4 to 6 mA, UL 943"));
        assert!(!of(Trip::Must).contains("add up"));
    }

    #[test]
    fn what_a_moment_points_to_is_called_judgement() {
        use diagnosis::Choice;
        for when in TripWhen::ALL {
            assert!(points(*when).contains("judgement"), "{when:?}");
        }
    }
}
