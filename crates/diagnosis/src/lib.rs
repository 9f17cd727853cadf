//! How a refrigerating appliance fails, what is known of one, and what to do next.
//!
//! Answers: given a job, which links of the Path hold or are broken as far as anyone knows, what
//! was found, what to be careful of, and which step comes next in a safe order; and, everything
//! weighed together, which parts are suspects, which check is worth its time, and what to do.
//!
//! Must never know: where a job is stored, how a sentence reads, what a screen looks like, what
//! time it is unless told.
//!
//! A check is one file in `checks` and one line in the list there. What weighs the whole machine
//! stands in `whole`; [`Assessment::whole`] is what comes out of it.

#![forbid(unsafe_code)]

mod assessment;
mod caution;
mod checks;
mod choice;
mod circuit;
mod cool_down;
mod energy;
mod finding;
mod gate;
mod instrument;
mod item;
mod path;
mod proof;
mod start_kit;
mod start_trials;
mod step;
mod whole;

pub use assessment::{Adviser, Assessment, Model, advise, assess, assess_checks, export_networks};
pub use caution::{Caution, Level};
pub use checks::Check;
pub use checks::capacitor_in_circuit::{
    CapacitorFinding, CapacitorInCircuit, CapacitorKind, DISCHARGED_THROUGH,
};
pub use checks::energy::{
    ColdCompartment, ENERGY, EnergyClass, EnergyFigure, EnergyNeed, FigureError, Icemaker,
    typed_price, typed_volume, typed_year,
};
pub use checks::ground::{
    Blades, EarthPin, Grade, Ground, LeakPath, Leakage, TesterChoice, clear_above,
};
pub use checks::leakage::{IN_SERVICE, LeakageFinding, Leaking, TripCompany, TripDevice, TripWhen};
pub use checks::look_over::{LookedOver, PlateMains, Sign};
pub use checks::machine::{Complaint, Kind, Machine, MainsChoice, Refrigerant, ToldBy};
pub use checks::protector::{ProtectorKind, ProtectorKnown, Warmth};
pub use checks::running::{LabelOf, MotorLoad, Running, RunningFinding};
pub use checks::shell::Shell;
pub use checks::start_device::{
    Contact, Inverted, Looks, StartDevice, StartDeviceKind, StartDeviceKnown, Upright,
};
pub use checks::stored_charge::{StoredCharge, Stores};
pub use checks::supply::{
    CORD_MAY_TAKE, Caught, CordConductors, FALLS_AS_USUAL, FALLS_TOO_FAR, OutletWiring,
    PowerSource, Protection, StandsAgainst, Supply, SupplyFinding,
};
pub use checks::winding_temperature::WindingTemperature;
pub use checks::windings::{
    GearChoice, LeadsChoice, PairChoice, PinChoice, PinShape, WindingsKnown, item_of_pair,
};
pub use choice::{Asked, Choice, answered};
pub use circuit::{Circuit, Draw, Saturation};
pub use cool_down::{ColdSign, Compartment, CoolDown, Course, Forecast, ScaleDoubt};
pub use energy::{Against as EnergyAgainst, Energy, Metering, RunBy, Stands};
pub use finding::{Finding, WindingsFinding, explanation_name};
pub use gate::{Closed, Gate, Gates};
pub use instrument::usual_accuracy;
pub use item::Item;
pub use path::{Basis, Link, LinkState};
pub use proof::{
    Failure, HeldBack, Missing, NotNeeded, Proof, ProofItem, ProofPoint, ProofState, Proven,
};
pub use start_kit::{
    KitAdvice, KitCurrent, KitCurve, KitDeclared, KitNeed, KitReadings, KitTries, NoKit, StartKit,
};
pub use start_trials::{Clock, Pause, Series, StartTrials};
pub use step::{Power, Step, Tool};
pub use whole::{
    ANSWER, Action, Advice, Again, Ask, Assumptions, Build, CHANGE, Change, Changed, Clue,
    Conflict, Cost, CostError, Costs, Decided, Edit, Expense, ExportedNetwork, Fault, Figures,
    History, Hold, LinkOdds, NextCheck, Opens, Overturn, Part, PriorError, Priors, Proposal, Setup,
    Stake, Suspect, THERE_IS_NONE, Task, Term, Verdict, Weighed, Whole, WhyWithheld, Withheld,
    present,
};
