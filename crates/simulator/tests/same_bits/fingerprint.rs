//! One number for the course of many machines.

use quantity::{Ratio, Seconds};
use simulator::Chance;
use simulator::appliance::Kind;
use simulator::machine::{Ailment, Blueprint, Machine, Trouble};

/// What a computer of 64 bits made of them (x86-64, the test's own profile and others).
pub(crate) const KNOWN: u64 = 0x2cc4_752f_8390_1a83;

/// FNV-1a over the bytes of numbers (from memory).
pub(crate) fn of_machines() -> u64 {
    let mut print = 0xcbf2_9ce4_8422_2325_u64;
    for number in 0..24 {
        for value in course(number) {
            for byte in value.to_bits().to_le_bytes() {
                print = (print ^ u64::from(byte)).wrapping_mul(0x0100_0000_01b3);
            }
        }
    }
    print
}

/// Temperatures, pressures and watts, minute by minute.
fn course(number: u64) -> Vec<f64> {
    let chance = Chance::new(number);
    let kind = Kind::ALL[(number % 5) as usize];
    let blueprint = Blueprint::drawn(kind, number % 7 == 6, &mut chance.fork(0));
    let ailment = Ailment::ALL[(number * 5 % Ailment::ALL.len() as u64) as usize];
    let trouble = Trouble {
        ailment,
        severity: Ratio::new(0.6),
    };
    let machine = Machine::build(&blueprint, &[trouble], chance.fork(1)).unwrap();
    let session = machine.plug_in(Seconds::new(900.0)).unwrap();
    let samples = session.course().samples.iter();
    samples
        .flat_map(|sample| {
            [
                sample.air.get(),
                sample.evaporator.get(),
                sample.shell.get(),
                sample.suction.get(),
                sample.discharge.get(),
                sample.watts.get(),
            ]
        })
        .collect()
}
