//! Machines with known windings, and what lies between their pins.

use measure::windings::{Assignment, Explanation, Mains, Pair, Role};

use super::Random;

/// What is true of a machine.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Kind {
    /// Two whole windings.
    Sound,
    /// Protector or common lead open: ohms can't tell which.
    CommonOpen,
    /// Start winding open.
    StartOpen,
    /// Run winding open.
    RunOpen,
    /// Turns shorted within one winding, or of one against the other.
    ShortedTurns,
    /// A PTC start device left across start and run.
    StartDeviceOn,
    /// One pair measured badly.
    ProbeMissed,
    /// Three equal windings.
    EqualWindings,
    /// One coil on two pins.
    SingleCoil,
}

impl Kind {
    /// All kinds.
    pub const ALL: [Self; 9] = [
        Self::Sound,
        Self::CommonOpen,
        Self::StartOpen,
        Self::RunOpen,
        Self::ShortedTurns,
        Self::StartDeviceOn,
        Self::ProbeMissed,
        Self::EqualWindings,
        Self::SingleCoil,
    ];

    /// The kind that an explanation stands for.
    #[must_use]
    pub const fn of(explanation: Explanation) -> Self {
        match explanation {
            Explanation::Sound | Explanation::LeadsNotZeroed => Self::Sound,
            Explanation::ProtectorOpen | Explanation::CommonLeadOpen => Self::CommonOpen,
            Explanation::StartOpen => Self::StartOpen,
            Explanation::RunOpen => Self::RunOpen,
            Explanation::ShortedTurns => Self::ShortedTurns,
            Explanation::StartDeviceOn => Self::StartDeviceOn,
            Explanation::ProbeMissed => Self::ProbeMissed,
            Explanation::EqualWindings => Self::EqualWindings,
            Explanation::SingleCoil => Self::SingleCoil,
        }
    }

    /// One word for the head of a column.
    #[must_use]
    pub const fn short_name(self) -> &'static str {
        match self {
            Self::Sound => "sound",
            Self::CommonOpen => "common",
            Self::StartOpen => "start",
            Self::RunOpen => "run",
            Self::ShortedTurns => "shorted",
            Self::StartDeviceOn => "device",
            Self::ProbeMissed => "probe",
            Self::EqualWindings => "equal",
            Self::SingleCoil => "coil",
        }
    }

    /// A name for tables.
    #[must_use]
    pub const fn name(self) -> &'static str {
        match self {
            Self::Sound => "sound",
            Self::CommonOpen => "common open",
            Self::StartOpen => "start open",
            Self::RunOpen => "run open",
            Self::ShortedTurns => "shorted turns",
            Self::StartDeviceOn => "start device on",
            Self::ProbeMissed => "probe missed",
            Self::EqualWindings => "equal windings",
            Self::SingleCoil => "single coil",
        }
    }
}

/// How start over run is spread among sound motors.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum RatioSpread {
    /// Log-normal with 15 % of the 230 V and 3 % of the 115 V machines at or below 1; medians
    /// 1.3 and 1.8 (judgement: ratios of 1.3 to 5 are usual, some below 1 are reported).
    Stated,
    /// As stated, but every log ratio moved down so that 25 % and 8 % lie at or below 1.
    LowerThanStated,
    /// The same medians and shares at or below 1, with the heavier tails of a logistic.
    HeavyTails,
}

/// Standard normal quantiles of 15 %, 3 %, 25 % and 8 % (tables of the normal distribution).
const QUANTILES: [f64; 4] = [1.0364, 1.8808, 0.6745, 1.4051];

impl RatioSpread {
    /// Draws start over run.
    fn draw(self, mains: Mains, random: &mut Random) -> f64 {
        let (median, stated, lower, share) = match mains {
            Mains::V230F50 => (1.3, QUANTILES[0], QUANTILES[2], 0.15),
            Mains::V120F60 => (1.8, QUANTILES[1], QUANTILES[3], 0.03),
        };
        let centre = libm::log(median);
        let deviation = centre / stated;
        let log = match self {
            Self::Stated => centre + deviation * random.normal(),
            Self::LowerThanStated => deviation * (lower + random.normal()),
            Self::HeavyTails => {
                let odds = |p: f64| libm::log(p / (1.0 - p));
                let scale = centre / -odds(share);
                centre + scale * odds(random.uniform(1e-9, 1.0 - 1e-9))
            }
        };
        libm::exp(log)
    }
}

/// A machine whose truth is known.
#[derive(Debug, Clone, Copy)]
pub struct Machine {
    /// What is true of it.
    pub kind: Kind,
    /// Its mains.
    pub mains: Mains,
    /// Which pin plays which part; without meaning where there are no two windings.
    pub assignment: Assignment,
    /// Ohms between the pins in the order of [`Pair::ALL`]; `None` is no connection.
    pub pairs: [Option<f64>; 3],
}

/// Ohms of the run winding by motor size, from 1/12 hp to 1/3 hp (from memory), 115 V then 230 V.
const RUN_115: [(f64, f64); 5] = [(5.0, 14.0), (4.0, 8.0), (3.0, 6.0), (2.0, 5.0), (1.5, 3.5)];
const RUN_230: [(f64, f64); 5] = [
    (18.0, 45.0),
    (12.0, 28.0),
    (10.0, 22.0),
    (8.0, 16.0),
    (5.0, 12.0),
];
/// Cold PTC start devices, nominal ohms at 25 °C, each ±25 % (common practice, no source).
const DEVICE_115: [f64; 5] = [3.3, 4.7, 6.8, 10.0, 15.0];
const DEVICE_230: [f64; 5] = [15.0, 22.0, 25.0, 33.0, 47.0];

impl Machine {
    /// Draws a machine of this kind: either mains, any size class, any order of the pins.
    #[must_use]
    pub fn draw(kind: Kind, spread: RatioSpread, random: &mut Random) -> Self {
        let mains = random.pick([Mains::V120F60, Mains::V230F50]);
        let (low, high) = random.pick(match mains {
            Mains::V120F60 => RUN_115,
            Mains::V230F50 => RUN_230,
        });
        let run = random.log_uniform(low, high);
        let start = run * spread.draw(mains, random);
        let assignment = random.pick(Assignment::ALL);
        let [common_run, common_start, start_run] = between(kind, mains, run, start, random);
        let pairs = Pair::ALL.map(|pair| match assignment.role(pair.opposite()) {
            Role::Start => common_run,
            Role::Run => common_start,
            Role::Common => start_run,
        });
        Self {
            kind,
            mains,
            assignment,
            pairs,
        }
    }
}

/// Ohms between common and run, common and start, start and run.
fn between(
    kind: Kind,
    mains: Mains,
    run: f64,
    start: f64,
    random: &mut Random,
) -> [Option<f64>; 3] {
    let all = |pairs: [f64; 3]| pairs.map(Some);
    match kind {
        // What is wrong with a missed probe is no part of the machine.
        Kind::Sound | Kind::ProbeMissed => all([run, start, run + start]),
        Kind::CommonOpen => [None, None, Some(run + start)],
        Kind::StartOpen => [Some(run), None, None],
        Kind::RunOpen => [None, Some(start), None],
        Kind::ShortedTurns => all(shorted(run, start, random)),
        Kind::StartDeviceOn => {
            let nominal = random.pick(match mains {
                Mains::V120F60 => DEVICE_115,
                Mains::V230F50 => DEVICE_230,
            });
            let device = nominal * random.uniform(0.75, 1.25);
            all([
                parallel(run, start + device),
                parallel(start, run + device),
                parallel(run + start, device),
            ])
        }
        Kind::EqualWindings => {
            // Three-phase machines read 1 to 50 Ω a pair (*Heating and Cooling Essentials*,
            // 2022, §25.8); alike within 1 % (judgement).
            let pair = random.log_uniform(1.0, 50.0);
            all([(); 3].map(|()| pair * random.uniform(0.99, 1.01)))
        }
        Kind::SingleCoil => [None, None, Some(random.log_uniform(3.0, 30.0))],
    }
}

/// A third each: turns gone from the run winding, from the start winding, or a touch between
/// both somewhere along them. A short within one winding leaves 20 to 80 % of it (judgement).
fn shorted(run: f64, start: f64, random: &mut Random) -> [f64; 3] {
    let left = random.uniform(0.2, 0.8);
    let (run_place, start_place) = (random.uniform(0.1, 0.9), random.uniform(0.1, 0.9));
    match random.pick([0, 1, 2]) {
        0 => [run * left, start, run * left + start],
        1 => [run, start * left, run + start * left],
        _ => {
            let shared = parallel(run * run_place, start * start_place);
            let (run_rest, start_rest) = (run * (1.0 - run_place), start * (1.0 - start_place));
            [
                shared + run_rest,
                shared + start_rest,
                run_rest + start_rest,
            ]
        }
    }
}

fn parallel(one: f64, other: f64) -> f64 {
    one * other / (one + other)
}
