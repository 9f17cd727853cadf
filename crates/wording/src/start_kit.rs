//! What a start kit would do here, and where it is the wrong answer.

mod sentences;

use diagnosis::{KitDeclared, KitNeed, NoKit};

pub(crate) use sentences::report;
pub use sentences::{because, class, discharge, ends, micro, range, rests_on, tries, verdict};

use crate::Words;

/// The page's heading, and what leads to it.
pub const TITLE: &str = "Would a start kit help?";
/// While the machine is being weighed.
pub const WEIGHING: &str = "Weighing what is known…";
/// Above the reasons against one.
pub const WHY_NOT: &str = "Why not";
/// Above what is missing.
pub const MISSING: &str = "To be known first";
/// Above what would narrow the band.
pub const NARROWER: &str = "What would narrow it";
/// Above the curve.
pub const CURVE: &str = "What a capacitor would do";
/// Above what has to be right about the capacitor.
pub const CAPACITOR: &str = "The capacitor";
/// Above what was tried.
pub const TRIED: &str = "What tries say";
/// Above what it rests on.
pub const RESTS_ON: &str = "What this rests on";
/// What stands along the curve's foot.
pub const ACROSS: &str = "Microfarads";
/// What stands along its side.
pub const UPWARDS: &str = "Starting torque, times the plain device's";
/// The curve's line.
pub const MIDDLE: &str = "As many motors above as below";
/// The curve's band.
pub const BAND: &str = "Eight motors of ten that fit";
/// The useful range.
pub const USEFUL: &str = "Useful range";
/// Where the plain device stands.
pub const PLAIN: &str = "Plain start device";
/// Why there are two capacitances.
pub const WHY_TWO: &str = "At the smaller end the currents of both windings stand at a right angle. \
                           Torque still grows beyond that, since more current flows through the \
                           start winding, until the larger end. Above it torque falls and the \
                           current still rises.";
/// What a kit is on a machine that starts and on one that is tight.
pub const CONVENIENCE: &str = "On a compressor that also starts without one after an ordinary rest \
                               a kit is a convenience; on a tight rotor it is a stopgap. It mends \
                               nothing.";
/// What has to take the capacitor off.
pub const CUTS_OUT: &str = "Never a capacitor alone: something in the kit has to take it off within \
                            a second or so, or it burns the start winding.";
/// Gas and codes.
pub const CODES: &str = "Never where the gas burns, unless the maker declares that kit for this gas \
                         and this compressor. Local codes and licensed practice come first.";
/// Asked where the gas burns.
pub const DECLARED_FOR: &str = "A kit that its maker declares for a gas that burns";
/// How it is answered.
pub const DECLARED_HOW: &str = "Read the kit's packing or sheet: which gas, and is this compressor \
                                among those that it names? \"Universal\" names neither.";
/// What holds for a kit that is declared for this gas.
pub const DECLARED: &str = "The gas burns: only the very kit of which you said that its maker \
                            declares it for this gas and this compressor, fitted as its sheet says, \
                            its cover on. Before power, doors open and fresh air; no power at all \
                            where gas may be out. Any other kit stays refused.";
/// What isn't known of any motor.
pub const LIMITS: &str = "Ohms don't show what a rotor at rest adds. What is thought of it is \
                          judgement, told as a band and not as one motor; a kit's own relay or PTC \
                          is left out.";

impl Words for KitDeclared {
    fn words(self) -> &'static str {
        match self {
            Self::R600a => "R600a, and this compressor",
            Self::R290 => "R290, and this compressor",
            Self::Neither => "No such gas, or not this compressor",
        }
    }
}

impl Words for NoKit {
    fn words(self) -> &'static str {
        match self {
            Self::NotToBePowered => {
                "It may not be powered: what stands under safety comes before any start."
            }
            Self::GasBurns => {
                "The gas burns. Only the maker's start gear, or a kit that the maker declares for \
                 this gas and this compressor, may go on it."
            }
            Self::GasUnknown => {
                "Nobody could read which gas is in it, so it counts as one that burns."
            }
            Self::Inverter => {
                "A board drives this motor. It has no start winding: a kit or mains on its pins \
                 destroys it."
            }
            Self::WindingsNotWhole => {
                "A winding, or the protector inside, doesn't read as it should. More torque mends \
                 neither. If it was hot, measure again once it is cold."
            }
            Self::StartDeviceDead => {
                "The start device is dead by its own looks or readings. One of the same kind takes \
                 its place, and that is the repair."
            }
            Self::CapacitorByDesign => {
                "It starts with a capacitor by design. That one is checked, and replaced by its \
                 marking; a kit beside it is no gain."
            }
            Self::RotorTight => {
                "The rotor is likely tight or seized. A kit may start it for a while and hides \
                 that: a stopgap at best, to be told to whoever buys it. A known-good plain start \
                 device after a long rest tells more."
            }
            Self::VoltsFall => {
                "The volts fall while it starts, and torque falls with their square. Outlet, cord \
                 and extension come first; a kit draws more and lowers them further."
            }
            Self::SealedSystem => {
                "Capillary or charge is likely at fault. Then the pressures level slowly or not at \
                 all, and a kit starts the compressor against them instead of showing it."
            }
        }
    }
}

impl Words for KitNeed {
    fn words(self) -> &'static str {
        match self {
            Self::Mains | Self::Frequency => "The mains",
            Self::Refrigerant => "The refrigerant",
            Self::Windings => "The three pairs of pins",
            Self::StartAndRun => "Which winding starts it",
            Self::StartDevice => "The start device",
            Self::DeviceOhms => "The start device's ohms",
            Self::DeviceWithoutOhms => "An electronic start device",
            Self::WindingsAgain => "The pins once more",
            Self::CurrentAgain => "The highest amperes once more",
            Self::Current => "The highest amperes while it hums",
            Self::Volts => "The lowest volts at that try",
        }
    }

    fn hint(self) -> Option<&'static str> {
        Some(match self {
            Self::Mains => "Volts and hertz of the outlet.",
            Self::Frequency => {
                "100 V comes with 50 and with 60 Hz, a fifth apart in capacitance: no curve for it."
            }
            Self::Refrigerant => "By its plate: where the gas burns, no universal kit.",
            Self::Windings => "Bare pins, all three pairs, and the windings whole.",
            Self::StartAndRun => "Both read alike: the wiring as found tells them apart.",
            Self::StartDevice => "What kind it is: what a kit adds is told against it.",
            Self::DeviceOhms => "Cold, off the pins; or the ohms printed on it.",
            Self::DeviceWithoutOhms => {
                "Its ohms don't say how it starts, so that nothing can be told against it."
            }
            Self::WindingsAgain => {
                "No motor has these two windings: leads zeroed, pins bare, three pairs."
            }
            Self::CurrentAgain => {
                "No motor with these windings draws that. One conductor in the clamp, not the whole \
                 cord; and the highest it showed."
            }
            Self::Current => "By a clamp that keeps the highest, with the plain device.",
            Self::Volts => "By a meter beside its plug.",
        })
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use diagnosis::Choice;

    #[test]
    fn every_reason_and_every_need_is_said_in_whole_sentences() {
        let reasons = NoKit::ALL.iter().map(|why| why.words());
        let hints = KitNeed::ALL.iter().filter_map(|need| need.hint());
        for said in reasons.chain(hints) {
            assert!(said.ends_with('.') && !said.contains("  "), "{said}");
        }
        let names: Vec<_> = KitNeed::ALL.iter().map(|need| need.words()).collect();
        assert!(names.iter().all(|name| !name.is_empty()));
        assert_eq!(
            KitNeed::ALL.len(),
            KitNeed::ALL.iter().filter_map(|one| one.hint()).count()
        );
    }

    #[test]
    fn gas_that_burns_leaves_only_the_makers_parts_or_a_declared_kit() {
        for said in [NoKit::GasBurns.words(), CODES, DECLARED] {
            assert!(said.contains("declare") && said.contains("maker"), "{said}");
        }
    }
}
