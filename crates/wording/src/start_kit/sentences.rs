//! A start kit's curve in sentences: the answer, which capacitances, what both ends do.
//!
//! Answers: how are a curve's figures said, and rounded to what they are worth? Must never know:
//! how they came about.

use diagnosis::{KitAdvice, KitCurve, KitTries, StartKit};
use measure::start_kit::{KitPoint, Spread};
use quantity::{Amps, Farads, Ohms, Ratio, Volts};

use super::{CODES, CONVENIENCE, CUTS_OUT, DECLARED, LIMITS};
use crate::{Locale, ohms, uncertain_ohms};

/// Fewer motors than this fit all readings: the band is rough (judgement).
const FEW_MOTORS: f64 = 60.0;

/// The answer in a few words.
#[must_use]
pub fn verdict(kit: &StartKit) -> &'static str {
    match kit {
        StartKit::NotThisMachine(_) => "No, not on this machine as it is.",
        StartKit::Missing(_) => "That can't be told yet.",
        StartKit::Curve(curve) => match curve.advice {
            KitAdvice::Convenience => "It isn't needed.",
            KitAdvice::LittleGain => "Hardly.",
            KitAdvice::PlainDeviceFirst => "Not yet: a good plain start device first.",
            KitAdvice::WouldHide => "As a test, not as a repair.",
            KitAdvice::WorthATest => "It may: it is worth a test.",
        },
    }
}

/// Why, and how much torque a kit gives in the middle of its useful range.
#[must_use]
pub fn because(curve: &KitCurve, locale: &Locale) -> String {
    let gain = times(curve.middle.torque, locale);
    match curve.advice {
        KitAdvice::Convenience => format!(
            "It starts by itself after an ordinary rest. A kit would be a convenience, with {gain} \
             the torque of the plain device."
        ),
        KitAdvice::PlainDeviceFirst => format!(
            "One of the same kind that is known to be good comes before any kit. A kit would give \
             {gain} its torque."
        ),
        KitAdvice::WouldHide => format!(
            "A tight rotor or another cause isn't ruled out, and a kit would hide it. It would give \
             {gain} the torque of the plain device."
        ),
        KitAdvice::LittleGain | KitAdvice::WorthATest => {
            format!("In its useful range a kit gives {gain} the torque of the plain device.")
        }
    }
}

/// Which capacitances help, and for how many motors.
#[must_use]
pub fn range(curve: &KitCurve, locale: &Locale) -> String {
    let (from, to) = (curve.range.from, curve.range.to);
    format!(
        "Useful: about {} to {}. Under {} is too little and over {} too much for nine motors of ten \
         that fit your readings.",
        micro(from.median, locale),
        micro(to.median, locale),
        micro(from.tenth, locale),
        micro(to.ninetieth, locale)
    )
}

/// What both ends of the range do.
#[must_use]
pub fn ends(curve: &KitCurve, locale: &Locale) -> [String; 2] {
    curve.ends.map(|end| at(&end, locale))
}

fn at(point: &KitPoint, locale: &Locale) -> String {
    let volts = point.capacitor_volts;
    format!(
        "With {}: {} the torque, {} from the line while the rotor rests, {}\u{a0}V across the \
         capacitor ({} to {}).",
        micro(point.capacitance, locale),
        times(point.torque, locale),
        amps(point.line, locale),
        two_digits(volts.median.get(), locale),
        two_digits(volts.tenth.get(), locale),
        two_digits(volts.ninetieth.get(), locale)
    )
}

/// What the capacitor must stand.
#[must_use]
pub fn class(curve: &KitCurve, locale: &Locale) -> String {
    match curve.class {
        Some(class) => format!(
            "Made for motor starts on alternating current, of at least {}. Its volts rise above \
             those at rest while the motor comes up to speed.",
            volts(class, locale)
        ),
        None => {
            "None of the usual classes, up to 330\u{a0}V, surely holds its volts: only a kit that \
                 its maker declares for this compressor."
                .to_owned()
        }
    }
}

/// How it is discharged.
#[must_use]
pub fn discharge(curve: &KitCurve, locale: &Locale) -> Option<String> {
    let seconds = curve.discharge?.get();
    // Up to the next five seconds: a longer time is a safe one.
    let told = libm::ceil(seconds / 5.0) * 5.0;
    Some(format!(
        "Unplugged, it may hold its charge: {} across it for {}\u{a0}s or longer, then prove it \
         under {} with a meter before a hand goes near.",
        ohms(KitCurve::BLEEDER, locale),
        locale.number(told, 0),
        volts(measure::SAFE_BELOW, locale)
    ))
}

/// Whether tries with a kit bear it out.
#[must_use]
pub fn tries(curve: &KitCurve) -> Option<&'static str> {
    Some(match curve.tries {
        KitTries::None => return None,
        KitTries::TooFew => "A kit was tried, too seldom to say whether that bears it out.",
        KitTries::Agree => "The tries agree with what was foretold.",
        KitTries::Disagree => {
            "The tries don't agree with what was foretold: another capacitance, a kit that takes it \
             off too early, or a cause that more torque doesn't mend."
        }
    })
}

/// From which readings it was drawn.
#[must_use]
pub fn rests_on(curve: &KitCurve, locale: &Locale) -> Vec<String> {
    let readings = &curve.readings;
    let device = if readings.device > Ohms::new(0.0) {
        format!(
            "plain start device {}",
            one_decimal(readings.device, locale)
        )
    } else {
        "a relay's contact as plain start device".to_owned()
    };
    let supply = format!(
        "{}{}, {}\u{a0}Hz",
        volts(readings.supply, locale),
        if readings.supply_read {
            ""
        } else {
            " by name, not read"
        },
        locale.number(readings.frequency.get(), 0)
    );
    let mut lines = vec![format!(
        "Run winding {}, start winding {}, {device}, {supply}.",
        uncertain_ohms(&readings.main, locale),
        uncertain_ohms(&readings.start, locale)
    )];
    lines.push(match &readings.current {
        None => "No current was read: the band is as wide as ohms leave it.".to_owned(),
        Some(current) => format!(
            "{}\u{a0}A at most with the plain device, {}.",
            locale.number(current.amps.value().get(), 1),
            if current.hummed {
                "while it hummed"
            } else {
                "as it started, which a clamp without a memory for peaks misses"
            }
        ),
    });
    if curve.support < FEW_MOTORS {
        lines.push(
            "Few motors fit all of these readings at once: measure again before a part is bought."
                .to_owned(),
        );
    }
    lines
}

/// The curve for the report; nothing where there is none.
pub(crate) fn report(kit: &StartKit, locale: &Locale) -> Vec<String> {
    let Some(curve) = kit.curve() else {
        return Vec::new();
    };
    let mut lines = vec![
        [verdict(kit), &because(curve, locale)].join(" "),
        range(curve, locale),
    ];
    lines.extend(ends(curve, locale));
    lines.push(class(curve, locale));
    lines.extend(discharge(curve, locale));
    lines.extend(tries(curve).map(str::to_owned));
    lines.extend(rests_on(curve, locale));
    lines.extend(curve.is_declared.then(|| DECLARED.to_owned()));
    lines.extend([CONVENIENCE, CUTS_OUT, CODES, LIMITS].map(str::to_owned));
    lines
}

/// "about 2.1 times (1.6 to 3.0)".
fn times(torque: Spread<Ratio>, locale: &Locale) -> String {
    let number = |ratio: Ratio| locale.number(ratio.get(), 1);
    format!(
        "about {} times ({} to {})",
        number(torque.median),
        number(torque.tenth),
        number(torque.ninetieth)
    )
}

/// "about 22 A (20 to 25)".
fn amps(line: Spread<Amps>, locale: &Locale) -> String {
    let number = |amps: Amps| two_digits(amps.get(), locale);
    format!(
        "about {}\u{a0}A ({} to {})",
        number(line.median),
        number(line.tenth),
        number(line.ninetieth)
    )
}

/// A capacitance in microfarads, rounded to two digits.
///
/// ```
/// use quantity::Farads;
/// use wording::{Locale, start_kit::micro};
/// let said = |farads| micro(Farads::new(farads), &Locale::default());
/// assert_eq!(said(176.2e-6), "180\u{a0}µF");
/// assert_eq!(said(23.4e-6), "23\u{a0}µF");
/// assert_eq!(said(8.27e-6), "8.3\u{a0}µF");
/// ```
#[must_use]
pub fn micro(capacitance: Farads, locale: &Locale) -> String {
    format!("{}\u{a0}µF", two_digits(capacitance.get() * 1e6, locale))
}

/// A number rounded to two digits, without those behind the mark that this leaves empty.
fn two_digits(value: f64, locale: &Locale) -> String {
    if value < 9.95 {
        return locale.number(value, 1);
    }
    let step = libm::pow(10.0, libm::floor(libm::log10(value)) - 1.0);
    locale.number(libm::round(value / step) * step, 0)
}

fn volts(value: Volts, locale: &Locale) -> String {
    format!("{}\u{a0}V", locale.number(value.get(), 0))
}

fn one_decimal(value: Ohms, locale: &Locale) -> String {
    format!("{}\u{a0}Ω", locale.number(value.get(), 1))
}

#[cfg(test)]
mod tests {
    use super::*;
    use diagnosis::{KitCurrent, KitReadings, NoKit};
    use measure::start_kit::UsefulRange;
    use quantity::{Hertz, Seconds, Sources, Uncertain};

    fn spread<Q: quantity::Quantity>(values: [f64; 3]) -> Spread<Q> {
        let [tenth, median, ninetieth] = values.map(Q::new);
        Spread {
            tenth,
            median,
            ninetieth,
        }
    }

    fn point(farads: f64, torque: [f64; 3]) -> KitPoint {
        KitPoint {
            capacitance: Farads::new(farads),
            torque: spread(torque),
            line: spread([20.4, 22.1, 24.6]),
            capacitor_volts: spread([91.0, 106.0, 121.0]),
        }
    }

    /// Invented figures.
    fn curve() -> KitCurve {
        let mut sources = Sources::default();
        let mut ohms =
            |value| Uncertain::exact(Ohms::new(value)).with(sources.fresh(), Ohms::new(0.05));
        let (main, start) = (ohms(2.0), ohms(7.0));
        let amps = Uncertain::exact(Amps::new(32.0)).with(sources.fresh(), Amps::new(0.9));
        KitCurve {
            readings: KitReadings {
                main,
                start,
                device: Ohms::new(4.7),
                supply: Volts::new(118.0),
                supply_read: true,
                frequency: Hertz::new(60.0),
                current: Some(KitCurrent { amps, hummed: true }),
            },
            points: Vec::new(),
            range: UsefulRange {
                from: spread([121e-6, 176.2e-6, 210e-6]),
                to: spread([270e-6, 332.1e-6, 434e-6]),
            },
            ends: [
                point(176.2e-6, [1.7, 2.06, 2.4]),
                point(332.1e-6, [2.1, 2.65, 3.0]),
            ],
            middle: point(241e-6, [1.9, 2.42, 2.8]),
            support: 300.0,
            class: Some(Volts::new(165.0)),
            discharge: Some(Seconds::new(6.2)),
            advice: KitAdvice::WorthATest,
            tries: KitTries::None,
            is_declared: false,
            narrower: Vec::new(),
        }
    }

    fn plain(said: &str) -> String {
        said.replace('\u{a0}', " ")
    }

    #[test]
    fn the_range_is_rounded_to_two_digits_and_says_for_how_many_motors() {
        let said = plain(&range(&curve(), &Locale::default()));
        assert!(said.contains("about 180 µF to 330 µF"), "{said}");
        assert!(said.contains("Under 120 µF"), "{said}");
        assert!(said.contains("over 430 µF"), "{said}");
        assert!(
            said.contains("nine motors of ten that fit your readings"),
            "{said}"
        );
        let [low, _] = ends(&curve(), &Locale::default()).map(|said| plain(&said));
        assert!(low.contains("about 2.1 times (1.7 to 2.4)"), "{low}");
        assert!(
            low.contains("110 V across the capacitor (91 to 120)"),
            "{low}"
        );
    }

    #[test]
    fn a_time_to_discharge_is_never_rounded_down() {
        let said = |seconds| {
            let curve = KitCurve {
                discharge: Some(Seconds::new(seconds)),
                ..curve()
            };
            plain(&discharge(&curve, &Locale::default()).unwrap())
        };
        assert!(
            said(6.2).contains("10 kΩ across it for 10 s"),
            "{}",
            said(6.2)
        );
        assert!(said(10.1).contains("15 s") && said(5.0).contains(" 5 s"));
        assert!(said(6.2).contains("under 50 V"));
    }

    #[test]
    fn the_report_has_a_curve_with_its_limits_or_nothing() {
        let locale = Locale::default();
        let none = report(&StartKit::NotThisMachine(vec![NoKit::GasBurns]), &locale);
        assert_eq!(none, Vec::<String>::new());
        let lines = report(&StartKit::Curve(Box::new(curve())), &locale);
        for limit in [CONVENIENCE, CUTS_OUT, CODES, LIMITS] {
            assert!(lines.iter().any(|line| line == limit), "{limit}");
        }
        assert!(CONVENIENCE.contains("convenience") && CONVENIENCE.contains("stopgap"));
    }

    #[test]
    fn what_was_not_read_and_what_is_rough_is_said() {
        let mut curve = curve();
        curve.support = 30.0;
        curve.readings.supply_read = false;
        curve.readings.current = None;
        let said = rests_on(&curve, &Locale::default()).join(" ");
        for part in ["by name, not read", "No current was read", "Few motors"] {
            assert!(said.contains(part), "{said}");
        }
    }

    #[test]
    fn the_answer_differs_with_what_a_kit_would_be_good_for_and_tells_the_gain() {
        use diagnosis::Choice;
        let said = KitAdvice::ALL.iter().map(|&advice| {
            let curve = KitCurve { advice, ..curve() };
            let why = because(&curve, &Locale::default());
            assert!(why.contains("about 2.4 times (1.9 to 2.8)"), "{why}");
            verdict(&StartKit::Curve(Box::new(curve)))
        });
        let said: std::collections::BTreeSet<&str> = said.collect();
        assert_eq!(said.len(), KitAdvice::ALL.len());
    }
}
