//! What probes on the sealed circuit add: simulated machines that run and stay warm, read once after
//! three hours, weighed before and after the probes are entered.
//!
//! `cargo run --profile host -p practice --example probes [machines of each] [seed]`

use diagnosis::{Build, Choice, Fault, Model, Whole, assess};
use job::{
    Answer, ColdEvent, ColdEventKind, Content, Entry, Id, Job, Measured, Moment, Name, Origin,
    Place, Question, Reading, Spot, Text,
};
use measure::refrigerant::Refrigerant;
use practice::fault_of;
use quantity::{Accuracy, Celsius, Ratio, Seconds, Sources, Uncertain, parse_reading};
use simulator::appliance::{Kind, Observation};
use simulator::machine::{Ailment, Blueprint, Machine, Trouble};
use simulator::{Chance, ParameterError};

const KINDS: [(Kind, Build, &str); 3] = [
    (Kind::ChestFreezer, Build::ManualDefrost, "chest-freezer"),
    (
        Kind::UprightFreezer,
        Build::ManualDefrost,
        "upright-freezer",
    ),
    (Kind::FrostFree, Build::FrostFree, "fridge-freezer"),
];
/// Faults with which it runs and doesn't get cold, or only just.
const AILMENTS: [Option<Ailment>; 11] = [
    None,
    Some(Ailment::ChargeLow),
    Some(Ailment::ChargeGone),
    Some(Ailment::CapillaryNarrow),
    Some(Ailment::ValvesWorn),
    Some(Ailment::WrongCharge),
    Some(Ailment::CondenserMatted),
    Some(Ailment::RoomFanStopped),
    Some(Ailment::BlowerStopped),
    Some(Ailment::IcedUp),
    Some(Ailment::SealLeaks),
];
const RUN: Seconds = Seconds::new(10_800.0);
/// What a household thermometer and its place are off by, in kelvins (judgement).
const OFF: f64 = 0.7;

/// A job that is written line by line.
struct Told(Job);

impl Told {
    fn enter(&mut self, minute: i64, content: Content) {
        let number = self.0.entries().len();
        let (Ok(id), Ok(at)) = (Id::new(&format!("e-{number}")), moment(minute)) else {
            return;
        };
        // Identifiers differ by their number.
        let _ = self.0.add(Entry { id, at, content });
    }

    fn choose(&mut self, check: &str, item: &str, choice: &str) {
        let (Ok(question), Ok(name)) = (Question::new(check, item), Name::new(choice)) else {
            return;
        };
        let answer = Answer::Choice(name);
        self.enter(0, Content::Answer { question, answer });
    }

    fn event(&mut self, minute: i64, kind: ColdEventKind) {
        if let Ok(at) = moment(minute) {
            self.enter(minute, Content::Event(ColdEvent { at, kind }));
        }
    }

    fn spot(&mut self, place: Place, shown: f64) {
        let typed = format!("{shown:.1}");
        let read = parse_reading(&typed, Celsius::new(200.0)).ok();
        let parts = (read, Text::new(&typed).ok(), Accuracy::new(1.0, 2.0));
        if let ((Some(read), Some(typed), Some(accuracy)), Ok(at)) = (parts, moment(185)) {
            let measured = Measured::Celsius(read);
            let reading = Reading {
                typed,
                measured,
                accuracy,
            };
            self.enter(185, Content::Spot(Spot { place, at, reading }));
        }
    }

    fn whole(&self, model: &Model) -> Option<Whole> {
        assess(model, &self.0, moment(190).ok()?).whole
    }
}

fn moment(minute: i64) -> Result<Moment, job::MomentError> {
    Moment::new(1_795_600_000_000 + minute * 60_000, 0)
}

/// What is counted of machines with one fault.
#[derive(Default)]
struct Count {
    machines: f64,
    first: [f64; 2],
    truth: [f64; 2],
    sealed: [f64; 2],
    apart: [f64; 4],
}

impl Count {
    fn see(&mut self, stage: usize, whole: &Whole, truth: Option<Fault>) {
        let of = |fault: Option<Fault>| match fault {
            None => whole.nothing_wrong.probability,
            Some(fault) => {
                let mut suspects = whole.suspects.iter();
                let found = suspects.find(|one| one.fault == Some(fault));
                found.map_or(0.0, |one| one.probability)
            }
        };
        let sealed = [
            Fault::ValvesWorn,
            Fault::CapillaryRestricted,
            Fault::ChargeLow,
            Fault::ChargeGone,
            Fault::ChargeContaminated,
        ];
        let first = whole.suspects.first().and_then(|one| one.fault);
        self.first[stage] += f64::from(u8::from(first == truth));
        self.truth[stage] += of(truth);
        self.sealed[stage] += sealed.iter().map(|one| of(Some(*one))).sum::<f64>();
    }
}

fn main() -> Result<(), ParameterError> {
    let mut arguments = std::env::args().skip(1);
    let mut number = |otherwise: u64| {
        let given = arguments.next().and_then(|text| text.parse().ok());
        given.unwrap_or(otherwise)
    };
    let (each, seed) = (number(10), number(3));
    let model = Model::default();
    println!(
        "{:22} machines; first right, chance of the truth, of a sealed fault: before > after;",
        ""
    );
    println!(
        "{:22} K: coil to air, condenser, drier, suction line to room",
        ""
    );
    for (kind, build, name) in KINDS {
        for (place, ailment) in AILMENTS.into_iter().enumerate() {
            let mut count = Count::default();
            for one in 0..each {
                let mut chance = Chance::new(seed).fork(one).fork(place as u64);
                let blueprint = Blueprint::drawn(kind, false, &mut chance);
                let Some(seen) = seen(&blueprint, ailment, &mut chance)? else {
                    continue;
                };
                let truth = ailment.map(fault_of);
                let probed = [false, true].map(|probed| {
                    told(name, build, &seen, probed, &mut chance.fork(9))?.whole(&model)
                });
                let [Some(before), Some(after)] = probed else {
                    continue;
                };
                count.machines += 1.0;
                count.see(0, &before, truth);
                count.see(1, &after, truth);
                for (sum, apart) in count.apart.iter_mut().zip(apart(&seen)) {
                    *sum += apart;
                }
            }
            print(name, ailment, &count);
        }
    }
    println!("watts half an hour in over watts after three hours, sound machines:");
    for (kind, _, name) in KINDS {
        for one in 0..each {
            let mut chance = Chance::new(seed).fork(one).fork(1_000);
            let blueprint = Blueprint::drawn(kind, false, &mut chance);
            if let Some([simulated, expected]) = watts(&blueprint, &chance)? {
                println!("{name:15} simulated {simulated:.3}, expected {expected:.3}");
            }
        }
    }
    Ok(())
}

/// How many times as much it takes warm as later: by the simulator, and by where it evaporates and
/// condenses at both times.
fn watts(blueprint: &Blueprint, chance: &Chance) -> Result<Option<[f64; 2]>, ParameterError> {
    let machine = Machine::build(blueprint, &[], chance.fork(1))?;
    let name = format!("{:?}", blueprint.refrigerant);
    let mut all = Refrigerant::ALL.into_iter();
    let Some(gas) = all.find(|one| format!("{one:?}") == name) else {
        return Ok(None);
    };
    let mut at = [(0.0, 0.0); 2];
    for (found, time) in at.iter_mut().zip([1_800.0, RUN.get()]) {
        let session = machine.plug_in(Seconds::new(time))?;
        let now = session.now();
        let mut sources = Sources::default();
        let exact = |pressure| gas.saturation_temperature(pressure).map(Uncertain::exact);
        let (Ok(cold), Ok(warm)) = (exact(now.seen.suction), exact(now.seen.discharge)) else {
            return Ok(None);
        };
        let share = gas.power_share(&cold, &warm, sources.fresh());
        let Ok(share) = share else {
            return Ok(None);
        };
        *found = (now.watts.get(), share.value().get());
    }
    let [(warm, expected_warm), (cold, expected_cold)] = at;
    Ok(Some([warm / cold, expected_warm / expected_cold]))
}

/// After three hours, where it ran at least the last quarter of an hour.
fn seen(
    blueprint: &Blueprint,
    ailment: Option<Ailment>,
    chance: &mut Chance,
) -> Result<Option<Observation>, ParameterError> {
    let severity = Ratio::new(0.3 + 0.7 * chance.share());
    let troubles: Vec<Trouble> = ailment
        .filter(|one| one.exists_in(blueprint))
        .map(|ailment| Trouble { ailment, severity })
        .into_iter()
        .collect();
    if troubles.is_empty() && ailment.is_some() {
        return Ok(None);
    }
    let machine = Machine::build(blueprint, &troubles, chance.fork(1))?;
    let session = machine.plug_in(RUN)?;
    Ok((session.is_turning() && session.running_share() > 0.95).then(|| session.now().seen))
}

fn told(
    name: &str,
    build: Build,
    seen: &Observation,
    probed: bool,
    chance: &mut Chance,
) -> Option<Told> {
    let id = Id::new("probes").ok()?;
    let mut told = Told(Job::new(id, moment(0).ok()?, Origin::Invented));
    told.choose("machine", "kind", name);
    told.choose("machine", "build", build.name());
    told.choose("machine", "complaint", "runs-stays-warm");
    told.choose("machine", "told-by", "myself");
    told.event(1, ColdEventKind::SwitchedOn);
    told.event(2, ColdEventKind::CompressorOn);
    let mut off = || OFF * chance.normal();
    told.spot(Place::Room, seen.room.get() + off());
    told.spot(Place::Freezer, seen.air.get() + off());
    if probed {
        for (place, shown) in [
            (Place::Evaporator, seen.evaporator[1]),
            (Place::Condenser, seen.condenser),
            (Place::DrierOutlet, seen.drier_outlet),
            (Place::SuctionLine, seen.suction_line),
        ] {
            told.spot(place, shown.get() + off());
        }
    }
    Some(told)
}

fn apart(seen: &Observation) -> [f64; 4] {
    [
        seen.evaporator[1].get() - seen.air.get(),
        seen.condenser.get() - seen.room.get(),
        seen.drier_outlet.get() - seen.room.get(),
        seen.suction_line.get() - seen.room.get(),
    ]
}

fn print(name: &str, ailment: Option<Ailment>, count: &Count) {
    let mean = |sum: f64| sum / count.machines.max(1.0);
    let what = ailment.map_or("nothing".to_owned(), |one| format!("{one:?}"));
    let pair = |of: [f64; 2]| format!("{:.2} > {:.2}", mean(of[0]), mean(of[1]));
    let apart = count.apart.map(|sum| format!("{:6.1}", mean(sum)));
    println!(
        "{name:15} {what:16} {:3}; {}; {}; {}; {}",
        count.machines,
        pair(count.first),
        pair(count.truth),
        pair(count.sealed),
        apart.join(" ")
    );
}
