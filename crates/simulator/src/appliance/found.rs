//! How a machine is found: frosted, or standing in its defrost.
//!
//! Answers: which state was it left in? Must never know: why.

use super::{Appliance, Drive, state};
use quantity::Ratio;

impl<D: Drive> Appliance<D> {
    /// Lets frost lie all over the evaporator: a share, 0 to 1, of what fills its spaces.
    pub fn grow_frost(&mut self, share: Ratio) {
        let before = self.stored();
        let fills = self.parts.cabinet.evaporator.rime.fills.get();
        let each = fills * share.get().clamp(0.0, 1.0) / 3.0;
        self.row[state::FROST..state::FROST + 3].fill(each);
        self.steps.forget();
        self.brought += self.stored() - before;
    }

    /// Gives the heater its turn, whatever the timer has counted.
    pub fn begin_defrost(&mut self) {
        self.control.defrosting = Some(0.0);
    }
}

#[cfg(test)]
mod tests {
    use super::super::{Kind, Mains};
    use super::*;
    use crate::Refrigerant;
    use quantity::Seconds;

    fn frost_free() -> Appliance {
        Appliance::example(Kind::FrostFree, Mains::V115F60, Refrigerant::R134a).unwrap()
    }

    #[test]
    fn a_frosted_evaporator_cools_the_fresh_food_less_and_the_books_hold() {
        let (mut clear, mut iced) = (frost_free(), frost_free());
        iced.grow_frost(Ratio::new(0.95));
        for machine in [&mut clear, &mut iced] {
            machine.advance(Seconds::new(4.0 * 3600.0)).unwrap();
        }
        let fresh = |machine: &Appliance| machine.observe().second_air.unwrap().get();
        assert!(fresh(&iced) > fresh(&clear) + 2.0);
        let energy = iced.energy();
        let sum = energy.mains + energy.room + energy.moisture + energy.brought;
        let gap = (energy.stored - sum).get() / energy.mains.get();
        assert!(libm::fabs(gap) < 1e-9, "{gap}");
    }

    #[test]
    fn a_machine_that_stands_in_its_defrost_does_not_cool() {
        let mut standing = frost_free();
        let mut parts = *standing.parts();
        if let Some(defrost) = &mut parts.cabinet.defrost {
            defrost.timer.advances = false;
        }
        standing.alter(parts).unwrap();
        standing.begin_defrost();
        let course = standing.advance(Seconds::new(3600.0)).unwrap();
        assert_eq!(course.starts, 0);
    }
}
