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

const BLOCKS: [(&str, &[Part]); 6] = [
    ("trouble_supply", &[SupplyLine, ProtectiveDevice]),
    (
        "trouble_call",
        &[Setting, Thermostat, Thermistor, Board, DefrostEnd, Room],
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
            Insulation,
            OtherInsulation,
            Drive,
        ],
    ),
    ("trouble_pump", &[Valves, Capillary, Charge]),
    (
        "trouble_heat",
        &[Condenser, CondenserFan, Demand, Lamp, Seal],
    ),
    (
        "trouble_air",
        &[Drain, DefrostStart, DefrostHeater, EvaporatorFan, Damper],
    ),
];

/// The worst of all parts.
pub(super) fn of(assembly: &mut Assembly) -> Result<Variable, BuildError> {
    let mut blocks = Vec::new();
    for (name, parts) in BLOCKS {
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
        blocks.push(assembly.network.worst_of(name, &STATES, &causes)?);
    }
    let each: &[usize] = &[NONE, WEAR_ONLY, FAULT];
    let mut worst = |name: &str, blocks: &[Variable]| {
        let causes: Vec<(Variable, &[usize])> = blocks.iter().map(|block| (*block, each)).collect();
        assembly.network.worst_of(name, &STATES, &causes)
    };
    // The side of the motor and that of the cold meet once.
    let (motor, cold) = blocks.split_at(3);
    let sides = [
        worst("trouble_up_to_motor", motor)?,
        worst("trouble_beyond_motor", cold)?,
    ];
    worst("trouble", &sides)
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
