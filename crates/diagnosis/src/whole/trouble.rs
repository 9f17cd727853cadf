//! Whether anything is at fault, and whether that is wear alone.
//!
//! Gathered block by block along the Path, because parts of one block meet in the same
//! conditions already: one long row over all parts would tie everything to everything.

use belief::{BuildError, Variable};

use super::assembly::Assembly;
use super::fault::Part::{self, *};

pub(super) const STATES: [&str; 3] = ["none", "wear_only", "fault"];
pub(super) const NONE: usize = 0;
pub(super) const WEAR_ONLY: usize = 1;
const FAULT: usize = 2;

/// The blocks, in the order of the Path.
const BLOCKS: [(&str, &[Part]); 4] = [
    (
        "trouble_control",
        &[
            SupplyLine,
            ProtectiveDevice,
            Setting,
            Thermostat,
            Thermistor,
            Board,
            DefrostEnd,
            Room,
        ],
    ),
    (
        "trouble_compressor",
        &[
            Overload,
            Wiring,
            StartDevice,
            Capacitor,
            Rotor,
            InnerProtector,
            Windings,
            Drive,
            Insulation,
            OtherInsulation,
        ],
    ),
    ("trouble_sealed", &[Valves, Capillary, Charge]),
    (
        "trouble_exchange",
        &[
            Condenser,
            CondenserFan,
            Demand,
            Lamp,
            Seal,
            Drain,
            DefrostStart,
            DefrostHeater,
            EvaporatorFan,
            Damper,
        ],
    ),
];

/// Whether each block is in trouble.
pub(super) struct Blocks {
    motor: [Variable; 2],
    pub(super) sealed: Variable,
    exchange: Variable,
}

impl Blocks {
    pub(super) fn of(assembly: &mut Assembly) -> Result<Self, BuildError> {
        let [control, compressor, sealed, exchange] = BLOCKS;
        Ok(Self {
            motor: [block(assembly, control)?, block(assembly, compressor)?],
            sealed: block(assembly, sealed)?,
            exchange: block(assembly, exchange)?,
        })
    }

    /// The worst of all. The side of the motor and that of the cold meet once.
    pub(super) fn worst(&self, assembly: &mut Assembly) -> Result<Variable, BuildError> {
        let each: &[usize] = &[NONE, WEAR_ONLY, FAULT];
        let mut worst = |name: &str, blocks: [Variable; 2]| {
            let causes = blocks.map(|block| (block, each));
            assembly.worst_of(name, &STATES, &causes)
        };
        let sides = [
            worst("trouble_up_to_motor", self.motor)?,
            worst("trouble_beyond_motor", [self.sealed, self.exchange])?,
        ];
        worst("trouble", sides)
    }
}

fn block(assembly: &mut Assembly, (name, parts): (&str, &[Part])) -> Result<Variable, BuildError> {
    let there: Vec<_> = parts
        .iter()
        .filter_map(|part| assembly.part(*part).cloned())
        .collect();
    let effects: Vec<Vec<usize>> = there
        .iter()
        .map(|part| {
            let faults = part
                .faults
                .iter()
                .map(|fault| if fault.is_wear() { WEAR_ONLY } else { FAULT });
            std::iter::once(NONE).chain(faults).collect()
        })
        .collect();
    let causes: Vec<(Variable, &[usize])> = there
        .iter()
        .zip(&effects)
        .map(|(part, effects)| (part.variable, effects.as_slice()))
        .collect();
    assembly.worst_of(name, &STATES, &causes)
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::Choice;

    #[test]
    fn every_part_is_counted_once() {
        let mut parts: Vec<Part> = BLOCKS
            .iter()
            .flat_map(|(_, parts)| parts.iter().copied())
            .collect();
        parts.sort();
        assert_eq!(parts, Part::ALL);
    }
}
