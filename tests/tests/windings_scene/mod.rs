//! Anything that can be entered about windings, drawn at random, and the same with other names
//! for the pins.

use measure::MeterKind;
use measure::windings::{
    Inspection, Leads, Mains, Pair, PairReading, Pin, StartGear, WiringAsFound,
};
use proptest::prelude::*;
use proptest::sample::select;
use quantity::{Observed, Ohms, Typed};

/// What was shown between two pins.
#[derive(Debug, Clone, Copy)]
pub(crate) enum Shown {
    /// Not read.
    Nothing,
    /// Over range.
    Above(f64),
    /// A number, and the step of its last digit.
    Number { ohms: f64, count: f64 },
}

/// Everything that was entered.
#[derive(Debug, Clone)]
pub(crate) struct Scene {
    pub(crate) shown: [Shown; 3],
    pub(crate) meter: MeterKind,
    pub(crate) leads: Leads,
    pub(crate) start_gear: StartGear,
    pub(crate) mains: Option<Mains>,
    pub(crate) overload_on: Option<Pin>,
    pub(crate) start_device_on: Option<Pair>,
    pub(crate) line_on: Option<Pin>,
    pub(crate) marked: [Option<Pin>; 3],
}

/// Where the pins go under all six ways of naming them anew.
pub(crate) const PERMUTATIONS: [[Pin; 3]; 6] = [
    [Pin::One, Pin::Two, Pin::Three],
    [Pin::One, Pin::Three, Pin::Two],
    [Pin::Two, Pin::One, Pin::Three],
    [Pin::Two, Pin::Three, Pin::One],
    [Pin::Three, Pin::One, Pin::Two],
    [Pin::Three, Pin::Two, Pin::One],
];

impl Scene {
    /// Nothing read, bare pins, a good meter, a 115 V machine.
    pub(crate) fn bare() -> Self {
        Self {
            shown: [Shown::Nothing; 3],
            meter: MeterKind::Good,
            leads: Leads::Unknown,
            start_gear: StartGear::Off,
            mains: Some(Mains::V120F60),
            overload_on: None,
            start_device_on: None,
            line_on: None,
            marked: [None; 3],
        }
    }

    pub(crate) fn inspection(&self) -> Inspection {
        self.entered_in([0, 1, 2])
    }

    /// As if the pairs had been read in this order.
    pub(crate) fn entered_in(&self, order: [usize; 3]) -> Inspection {
        let mut inspection = Inspection::default();
        inspection.leads = self.leads;
        inspection.start_gear = self.start_gear;
        inspection.mains = self.mains;
        inspection.wiring = WiringAsFound {
            overload_on: self.overload_on,
            start_device_on: self.start_device_on,
            line_on: self.line_on,
            marked: self.marked,
        };
        for place in order {
            let (observed, count) = match self.shown[place] {
                Shown::Nothing => continue,
                Shown::Above(above) => (
                    Observed::OverRange {
                        above: Ohms::new(above),
                    },
                    0.0,
                ),
                Shown::Number { ohms, count } => (Observed::Value(Ohms::new(ohms)), count),
            };
            inspection.set(PairReading {
                pair: Pair::ALL[place],
                typed: Typed {
                    observed,
                    count: Ohms::new(count),
                },
                accuracy: self.meter.automatic().accuracy,
            });
        }
        inspection
    }

    /// The same machine and the same readings, with each pin called by another name.
    pub(crate) fn relabelled(&self, to: [Pin; 3]) -> Self {
        let pin = |pin: Pin| to[pin.index()];
        let pair = |of: Pair| {
            let [one, other] = of.pins().map(pin);
            *Pair::ALL
                .iter()
                .find(|pair| pair.has(one) && pair.has(other))
                .unwrap()
        };
        let mut scene = self.clone();
        for (place, of) in Pair::ALL.into_iter().enumerate() {
            scene.shown[pair(of).index()] = self.shown[place];
        }
        scene.overload_on = self.overload_on.map(pin);
        scene.start_device_on = self.start_device_on.map(pair);
        scene.line_on = self.line_on.map(pin);
        scene.marked = self.marked.map(|marked| marked.map(pin));
        scene
    }
}

/// Sound motors nearly as often as anything at all.
pub(crate) fn scene() -> impl Strategy<Value = Scene> {
    let shown = prop_oneof![
        3 => motor(),
        3 => [anything(), anything(), anything()],
    ];
    let around = (
        select(MeterKind::ALL.to_vec()),
        leads(),
        select(vec![StartGear::Unknown, StartGear::Off, StartGear::StillOn]),
        select(vec![None, Some(Mains::V120F60), Some(Mains::V230F50)]),
    );
    let pin = || proptest::option::of(select(Pin::ALL.to_vec()));
    let pair = proptest::option::of(select(Pair::ALL.to_vec()));
    let wiring = (pin(), pair, pin(), [pin(), pin(), pin()]);
    (shown, around, wiring).prop_map(|(shown, around, wiring)| {
        let (meter, leads, start_gear, mains) = around;
        let (overload_on, start_device_on, line_on, marked) = wiring;
        Scene {
            shown,
            meter,
            leads,
            start_gear,
            mains,
            overload_on,
            start_device_on,
            line_on,
            marked,
        }
    })
}

fn motor() -> impl Strategy<Value = [Shown; 3]> {
    (1.5..40.0f64, 0.7..3.0f64, -0.3..0.8f64).prop_map(|(run, ratio, excess)| {
        let both = run * (1.0 + ratio) + excess;
        [run + excess, run * ratio + excess, both].map(|ohms| Shown::Number {
            ohms: (10.0 * ohms).round() / 10.0,
            count: 0.1,
        })
    })
}

fn anything() -> impl Strategy<Value = Shown> {
    let number = |ohms: f64, count: f64| Shown::Number { ohms, count };
    prop_oneof![
        1 => Just(Shown::Nothing),
        2 => select(vec![20.0, 200.0, 2e6, 40e6]).prop_map(Shown::Above),
        4 => (-4.6..9.2f64, select(vec![0.01, 0.1, 1.0]))
            .prop_map(move |(log, count)| number(libm::exp(log), count)),
        1 => select(vec![0.0, 1e-9, 1e9]).prop_map(move |ohms| number(ohms, 0.1)),
    ]
}

fn leads() -> impl Strategy<Value = Leads> {
    let measured = (0.0..1.0f64).prop_map(|ohms| {
        let typed = Typed {
            observed: Observed::Value(Ohms::new(ohms)),
            count: Ohms::new(0.1),
        };
        Leads::Measured(typed, MeterKind::Good.automatic().accuracy)
    });
    prop_oneof![
        select(vec![Leads::Unknown, Leads::Zeroed, Leads::NotZeroed]),
        measured,
    ]
}
