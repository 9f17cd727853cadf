//! What to do, with what it is done to.

use diagnosis::{Action, Fault};

use super::within;
use crate::Words;

/// Says an action, and on what.
///
/// ```
/// use diagnosis::{Action, Fault};
/// let said = wording::whole::action(Action::Replace, Some(Fault::StartDeviceOpen));
/// assert_eq!(said, "Replace the start device");
/// ```
#[must_use]
pub fn action(action: Action, fault: Option<Fault>) -> String {
    match action {
        Action::NothingToRepair => "Nothing to repair: it does what it should".to_owned(),
        Action::WaitAndRepeat => "Give it a day and repeat the readings".to_owned(),
        Action::SetControl => "Set the control to cool, and clear any special mode".to_owned(),
        Action::BetterOutlet => better_outlet(fault).to_owned(),
        Action::Move => moved(fault).to_owned(),
        Action::Clean => "Unplug it, clean the condenser and give it air".to_owned(),
        Action::Thaw => "Thaw it fully, unplugged, doors open, no blade and no heat gun".to_owned(),
        Action::MendWiring => "Unplug it and mend the wires and connectors".to_owned(),
        Action::TestFit => test_fit(fault),
        Action::Replace => replace(fault),
        // No repair, and no gear is made for every gas.
        Action::FitStartGear => "Fit the start gear that its maker allows for a compressor that \
                                 starts hard, as a stopgap"
            .to_owned(),
        Action::LicensedWork => because(
            "Licensed work on the compressor or the sealed system",
            fault,
        ),
        Action::StopDoNotEnergise => because("Stop: it must not be powered again as it is", fault),
        Action::Scrap => because(
            "Scrap it, the refrigerant recovered by someone licensed",
            fault,
        ),
    }
}

fn because(what: &str, fault: Option<Fault>) -> String {
    match fault {
        Some(fault) => format!("{what} ({})", within(fault.words())),
        None => what.to_owned(),
    }
}

/// A protective device is never got round: it is replaced, or the machine gets another one.
fn better_outlet(fault: Option<Fault>) -> &'static str {
    match fault {
        Some(Fault::TripsByItself) => {
            "With no leak found, have the outlet's protective device checked, or use another \
             protected outlet"
        }
        _ => "Use a better outlet, protected too, with a short heavy cord or none",
    }
}

fn moved(fault: Option<Fault>) -> &'static str {
    match fault {
        Some(Fault::RoomTooCold) => "Put it in a warmer room",
        Some(Fault::TooMuchAsked) => "Ask less of it: a cooler place, a smaller load, a day's time",
        _ => "Put it where it is neither too hot nor too cold",
    }
}

fn test_fit(fault: Option<Fault>) -> String {
    let part = fault.map_or_else(|| "part".to_owned(), |fault| within(fault.part().words()));
    format!("Fit a known-good {part} to see whether that is it")
}

fn replace(fault: Option<Fault>) -> String {
    match fault {
        Some(Fault::ControlStaysOn) => {
            "Replace the thermostat, or the board whose relay stays on".to_owned()
        }
        Some(Fault::DriveWithoutOutput) => {
            "Replace the inverter board, ten minutes after unplugging".to_owned()
        }
        Some(Fault::AnotherPartLeaks) => {
            "Replace the heater, fan or wiring that leaks, and measure \
                                          to metal again before it is powered"
                .to_owned()
        }
        Some(fault) => format!("Replace the {}", within(fault.part().words())),
        None => "Replace the part".to_owned(),
    }
}
