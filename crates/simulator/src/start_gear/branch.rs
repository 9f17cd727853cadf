//! Parallel branches between the run and the start pin, and their state.

use quantity::{Amps, Ohms, Volts};

use super::ptc::{Fed, Pellet};
use super::{Capacitor, Contact, CurrentRelay, PotentialRelay, Ptc, Switch};
use crate::ParameterError;
use crate::error::within;
use crate::phasor::Phasor;

/// One way from the run to the start pin: a switch with, perhaps, a capacitor in series.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Branch {
    /// What switches it.
    pub switch: Switch,
    /// What is in series.
    pub capacitor: Option<Capacitor>,
}

/// All start gear: up to [`StartGear::MOST`] branches in parallel.
#[derive(Debug, Clone, PartialEq)]
pub struct StartGear {
    /// The branches.
    pub branches: Vec<Branch>,
}

impl StartGear {
    /// The most branches.
    pub const MOST: usize = 4;

    /// A PTC alone (resistance start, induction run).
    #[must_use]
    pub fn ptc(ohms: Ohms) -> Self {
        let switch = Switch::Ptc(Ptc::of(ohms));
        Self {
            branches: vec![Branch {
                switch,
                capacitor: None,
            }],
        }
    }

    /// A current relay, with a start capacitor or without. It has to fit its motor: the main winding
    /// must draw more than `pick_up` at rest and less than `drop_out` at speed, the start winding
    /// still in.
    #[must_use]
    pub fn current_relay(
        (pick_up, drop_out): (Amps, Amps),
        coil: Ohms,
        capacitor: Option<Capacitor>,
    ) -> Self {
        let switch = Switch::CurrentRelay(CurrentRelay {
            coil,
            pick_up,
            drop_out,
            contact: Contact::Sound,
        });
        Self {
            branches: vec![Branch { switch, capacitor }],
        }
    }

    /// The same gear with a run capacitor across it.
    #[must_use]
    pub fn with_run_capacitor(self, microfarads: f64) -> Self {
        self.with(Branch {
            switch: Switch::Always,
            capacitor: Some(Capacitor::film(microfarads)),
        })
    }

    /// The same gear with a start kit across it: a potential relay and a start capacitor. It has to
    /// fit its motor: below the volts that the start winding has at rest, the relay chatters. Across
    /// a cold PTC, a kit adds little; most kits take the PTC's place.
    #[must_use]
    pub fn with_relay_kit(self, microfarads: f64, pick_up: Volts) -> Self {
        self.with(Branch {
            switch: Switch::PotentialRelay(PotentialRelay {
                pick_up,
                drop_out: pick_up * 0.4,
                contact: Contact::Sound,
            }),
            capacitor: Some(Capacitor::electrolytic(microfarads)),
        })
    }

    /// The same gear with a start kit across it that lets its capacitor go by a PTC of its own.
    #[must_use]
    pub fn with_ptc_kit(self, microfarads: f64, ohms: Ohms) -> Self {
        self.with(Branch {
            switch: Switch::Ptc(Ptc::of(ohms)),
            capacitor: Some(Capacitor::electrolytic(microfarads)),
        })
    }

    fn with(mut self, branch: Branch) -> Self {
        self.branches.push(branch);
        self
    }

    /// Refuses what no gear has, by the parameter's name.
    ///
    /// # Errors
    /// [`ParameterError`] names the first parameter out of its bounds.
    pub fn check(&self) -> Result<(), ParameterError> {
        let count = self.branches.len() as f64;
        within("gear.branches", count, 0.0, Self::MOST as f64)?;
        for branch in &self.branches {
            branch.switch.check()?;
            if let Some(capacitor) = &branch.capacitor {
                capacitor.check()?;
            }
        }
        Ok(())
    }

    /// Resistance that the gear puts in series with the main winding.
    pub(crate) fn coil(&self) -> f64 {
        self.branches.iter().map(|one| one.switch.coil()).sum()
    }
}

/// Temperature and contacts of each branch.
#[derive(Debug, Clone, PartialEq)]
pub(crate) struct GearState {
    branches: Vec<BranchState>,
}

#[derive(Debug, Clone, Copy, PartialEq)]
struct BranchState {
    pellet: Option<Pellet>,
    celsius: f64,
    /// Kelvins a second over the last step, if that was short.
    rate: f64,
    told: bool,
    /// How long an electronic starter has had current, or, counted up to its rest, had none.
    energised: f64,
    idle: f64,
}

impl BranchState {
    fn pellet_ohms(&self, ahead: f64) -> Option<f64> {
        let celsius = self.celsius + self.rate * ahead;
        self.pellet.and_then(|pellet| pellet.ohms(celsius))
    }
}

impl GearState {
    pub(crate) fn rested(gear: &StartGear, celsius: f64) -> Self {
        let branch = |one: &Branch| BranchState {
            pellet: match &one.switch {
                Switch::Ptc(ptc) => Some(ptc.pellet()),
                _ => None,
            },
            celsius,
            rate: 0.0,
            told: one.switch.closed_at_rest(),
            energised: 0.0,
            idle: f64::MAX,
        };
        Self {
            branches: gear.branches.iter().map(branch).collect(),
        }
    }

    fn each<'a>(&'a self, gear: &'a StartGear) -> impl Iterator<Item = (&'a Branch, BranchState)> {
        gear.branches.iter().zip(self.branches.iter().copied())
    }

    /// All branches in parallel; `None` when none is closed. Pellets are taken as they will be so
    /// many seconds ahead if they go on as in the last step.
    pub(crate) fn impedance(&self, gear: &StartGear, hertz: f64, ahead: f64) -> Option<Phasor> {
        let mut closed = false;
        let mut sum = Phasor::NOUGHT;
        for (branch, state) in self.each(gear) {
            if let Some(impedance) = impedance(branch, state, hertz, ahead) {
                closed = true;
                sum = sum + impedance.inverse();
            }
        }
        closed.then(|| sum.inverse())
    }

    /// What a meter finds between the gear's ends with direct current; `None` for open.
    pub(crate) fn ohms(&self, gear: &StartGear) -> Option<Ohms> {
        let siemens: f64 = self
            .each(gear)
            .filter_map(|(branch, state)| {
                let told = branch.switch.closed_at_rest();
                let switch = branch.switch.ohms(told, state.pellet_ohms(0.0))?;
                let rest = match &branch.capacitor {
                    Some(capacitor) => capacitor.ohms()?,
                    None => 0.0,
                };
                Some(1.0 / (switch + rest))
            })
            .sum();
        (siemens > 0.0).then(|| Ohms::new(1.0 / siemens))
    }

    /// Contacts follow the main winding's amperes and the start winding's volts. Returns whether
    /// any moved.
    pub(crate) fn switch(&mut self, gear: &StartGear, main: f64, start_volts: f64) -> bool {
        let mut moved = false;
        for (branch, state) in gear.branches.iter().zip(&mut self.branches) {
            let told = match &branch.switch {
                Switch::CurrentRelay(relay) if state.told => main > relay.drop_out.get(),
                Switch::CurrentRelay(relay) => main > relay.pick_up.get(),
                Switch::PotentialRelay(relay) if state.told => start_volts < relay.pick_up.get(),
                Switch::PotentialRelay(relay) => start_volts < relay.drop_out.get(),
                Switch::Electronic(starter) => {
                    state.energised < starter.closed_for.get()
                        && (state.energised > 0.0 || state.idle >= starter.ready_after.get())
                }
                Switch::Always | Switch::Ptc(_) => continue,
            };
            moved |= told != state.told;
            state.told = told;
        }
        moved
    }

    /// Lets time pass under the volts (effective) across the gear, which may be nought. Pellets
    /// are warmed by what they carry and cooled toward `around`.
    pub(crate) fn advance(
        &mut self,
        gear: &StartGear,
        hertz: f64,
        volts: f64,
        around: f64,
        seconds: f64,
    ) {
        for (branch, state) in gear.branches.iter().zip(&mut self.branches) {
            if volts > 0.0 {
                state.energised += seconds;
                state.idle = 0.0;
            } else {
                state.idle += seconds;
                state.energised = 0.0;
                state.told = branch.switch.closed_at_rest();
            }
            if let Some(pellet) = &state.pellet {
                let rest = match &branch.capacitor {
                    Some(capacitor) => capacitor.impedance(hertz),
                    None => Some(Phasor::NOUGHT),
                };
                // Behind an open capacitor there are no volts.
                let fed = rest.map(|rest| Fed { volts, rest });
                let warmed = pellet.warmed(state.celsius, around, seconds, fed);
                let is_short = seconds > 0.0 && seconds < 0.02;
                state.rate = if is_short {
                    (warmed - state.celsius) / seconds
                } else {
                    0.0
                };
                state.celsius = warmed;
            }
        }
    }

    /// Whether no branch lets a start's current through: pellets hot, contacts open. What always
    /// stays in doesn't count.
    pub(crate) fn is_out(&self, gear: &StartGear) -> bool {
        self.each(gear).all(|(branch, state)| match &branch.switch {
            Switch::Always => true,
            other => match &state.pellet {
                Some(pellet) => pellet.has_let_go(state.celsius),
                None => other.ohms(state.told, None).is_none(),
            },
        })
    }

    /// The temperature of the first pellet in °C, if there is one.
    pub(crate) fn pellet(&self, gear: &StartGear) -> Option<f64> {
        self.each(gear)
            .find(|(_, state)| state.pellet.is_some())
            .map(|(_, state)| state.celsius)
    }
}

fn impedance(branch: &Branch, state: BranchState, hertz: f64, ahead: f64) -> Option<Phasor> {
    let switch = branch.switch.ohms(state.told, state.pellet_ohms(ahead))?;
    let rest = match &branch.capacitor {
        Some(capacitor) => capacitor.impedance(hertz)?,
        None => Phasor::NOUGHT,
    };
    Some(rest + Phasor::real(switch))
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_kit_in_parallel_lets_more_through_and_sets_it_ahead() {
        let alone = StartGear::ptc(Ohms::new(5.0));
        let both = alone.clone().with_relay_kit(150.0, Volts::new(200.0));
        let admittance = |gear: &StartGear| {
            let state = GearState::rested(gear, 25.0);
            state.impedance(gear, 60.0, 0.0).unwrap().inverse()
        };
        let (alone, both) = (admittance(&alone), admittance(&both));
        assert!(both.size() > alone.size());
        assert!(alone.im.abs() < 1e-12 && both.im > 0.04);
    }

    #[test]
    fn a_potential_relay_opens_at_its_volts_and_falls_back_below_others() {
        let gear = StartGear { branches: vec![] }.with_relay_kit(150.0, Volts::new(200.0));
        let mut state = GearState::rested(&gear, 25.0);
        assert!(!state.is_out(&gear));
        assert!(!state.switch(&gear, 10.0, 150.0));
        assert!(state.switch(&gear, 2.0, 201.0) && state.is_out(&gear));
        assert!(!state.switch(&gear, 2.0, 100.0));
        assert!(state.switch(&gear, 2.0, 79.0) && !state.is_out(&gear));
    }

    #[test]
    fn an_electronic_starter_lets_go_by_time_and_needs_its_rest() {
        let starter = super::super::Electronic {
            closed_for: quantity::Seconds::new(0.6),
            ready_after: quantity::Seconds::new(60.0),
            resistance: Ohms::new(0.3),
            contact: Contact::Sound,
        };
        let branch = Branch {
            switch: Switch::Electronic(starter),
            capacitor: None,
        };
        let gear = StartGear {
            branches: vec![branch],
        };
        let mut state = GearState::rested(&gear, 25.0);
        assert!(state.switch(&gear, 8.0, 90.0));
        state.advance(&gear, 50.0, 200.0, 25.0, 0.7);
        assert!(state.switch(&gear, 8.0, 90.0) && state.is_out(&gear));
        state.advance(&gear, 50.0, 0.0, 25.0, 30.0);
        assert!(!state.switch(&gear, 8.0, 90.0));
        state.advance(&gear, 50.0, 0.0, 25.0, 31.0);
        assert!(state.switch(&gear, 8.0, 90.0));
    }

    /// Cold it conducts at once; hot from running it takes about a minute to have its ohms back.
    #[test]
    fn a_pellet_heats_in_tenths_of_a_second_and_cools_in_about_a_minute() {
        let gear = StartGear::ptc(Ohms::new(5.0));
        let mut state = GearState::rested(&gear, 25.0);
        let mut seconds = 0.0;
        while !state.is_out(&gear) {
            state.advance(&gear, 60.0, 40.0, 40.0, 1e-3);
            seconds += 1e-3;
        }
        assert!(seconds > 0.1 && seconds < 3.0, "{seconds}");
        state.advance(&gear, 60.0, 115.0, 40.0, 600.0);
        let hot = state.clone();
        state.advance(&gear, 60.0, 0.0, 40.0, 120.0);
        assert!(hot.ohms(&gear).unwrap().get() > 1000.0);
        assert!(state.ohms(&gear).unwrap().get() < 5.5);
    }
}
