//! Where energy went over a time.

use quantity::Joules;

/// What was taken from the supply, and where it went. All but `taken` add up to it.
#[derive(Debug, Clone, Copy, PartialEq, Default)]
pub struct Energy {
    /// From the supply, ahead of all resistance; what leaks to earth too.
    pub taken: Joules,
    /// Heat in the house's wiring and an extension cord, ahead of a power meter at the plug.
    pub house: Joules,
    /// Heat in the machine's own cord.
    pub cord: Joules,
    /// Heat in the protector.
    pub protector: Joules,
    /// Heat in the start gear, coils and pellets.
    pub gear: Joules,
    /// Heat in the main winding.
    pub main_winding: Joules,
    /// Heat in the start winding.
    pub start_winding: Joules,
    /// Heat in the iron.
    pub iron: Joules,
    /// Heat in the rotor.
    pub rotor: Joules,
    /// Heat of friction.
    pub friction: Joules,
    /// Work on the gas.
    pub gas: Joules,
    /// What the rotor has taken up in motion.
    pub kinetic: Joules,
    /// Heat on the way to earth.
    pub leak: Joules,
}

impl Energy {
    /// Everything that the energy taken has turned into.
    #[must_use]
    pub fn gone(&self) -> Joules {
        self.house
            + self.cord
            + self.protector
            + self.gear
            + self.main_winding
            + self.start_winding
            + self.iron
            + self.rotor
            + self.friction
            + self.gas
            + self.kinetic
            + self.leak
    }

    /// What a meter at the plug has counted.
    #[must_use]
    pub fn at_plug(&self) -> Joules {
        self.taken - self.house
    }

    pub(crate) fn add(&mut self, other: &Self) {
        let sum = |mine: &mut Joules, more: Joules| *mine = *mine + more;
        sum(&mut self.taken, other.taken);
        sum(&mut self.house, other.house);
        sum(&mut self.cord, other.cord);
        sum(&mut self.protector, other.protector);
        sum(&mut self.gear, other.gear);
        sum(&mut self.main_winding, other.main_winding);
        sum(&mut self.start_winding, other.start_winding);
        sum(&mut self.iron, other.iron);
        sum(&mut self.rotor, other.rotor);
        sum(&mut self.friction, other.friction);
        sum(&mut self.gas, other.gas);
        sum(&mut self.kinetic, other.kinetic);
        sum(&mut self.leak, other.leak);
    }
}
