//! What a coil's temperature and a machine's watts say of where its air ends.
//!
//! *Coil.* Heat goes into a coil or plate in proportion to how much colder it is than the air, and out of the
//! room into the cabinet in proportion to how much colder that is than the room. Where it ends both are the
//! same. So the kelvins between air and coil while it cools say how strongly it cools, and against what the
//! cabinet loses ([`super::CoolDownPrior::loss`]) where that leads. The colder the coil, the thinner the gas that the
//! compressor swallows: its cooling halves every [`HALVES`] kelvins. That holds for a coil that air gets to: one that is
//! iced or whose fan stands is far colder than the air and cools nothing, so a share of all such readings is
//! taken to say nothing, and a coil that is improbably cold isn't heard at all.
//!
//! *Watts.* A compressor that moves little gas draws little. Far under what is usual it is weakened; watts as
//! usual clear nothing, since a leak at the door or a hot condenser costs none.

use quantity::{Celsius, Watts};

use super::belief::{Part, weighed};
use super::course::CoolDown;
use super::prior::Normal;
use super::thinned::{TemperatureAt, median};

/// What else was read while it cooled.
#[derive(Debug, Clone, PartialEq, Default)]
pub struct Support {
    /// Of the coil or plate, in the order of time: any number, none too.
    pub coil: Vec<TemperatureAt>,
    /// Of the room; what it started from stands for it otherwise.
    pub room: Option<Celsius>,
    /// What the running compressor draws.
    pub draw: Option<Draw>,
}

/// Watts beside what is usual. Nothing is made of it unless all three are above zero and in order.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Draw {
    /// Some minutes after the start or later, while it runs and no heater is on.
    pub watts: Watts,
    /// The least and the most that nineteen in twenty sound ones draw.
    pub usual: [Watts; 2],
}

/// Kelvins over which cooling halves (judgement: suction pressure of the household refrigerants halves within
/// 16 to 18 K, from memory, and a capillary evens some of that out).
const HALVES: f64 = 20.0;
/// Standard deviation of ln of what is lost over what the coil takes up, among cabinets of a kind (judgement).
const LOSS_VARIES: f64 = 0.35;
/// Standard uncertainty of the kelvins between air and coil: two thermometers and the spot (judgement).
const BETWEEN: f64 = 1.0;
/// So often a coil's readings say what they seem to (judgement: air gets to most coils).
const TRUSTED: f64 = 0.8;
/// Otherwise it ends anywhere within so many kelvins.
const ANYWHERE: f64 = 60.0;
/// A coil that is below the air by so many times what would do where a control holds it is one that no air
/// gets to.
const STARVED: f64 = 6.0;
/// Above where a control holds it by so many kelvins and standard deviations it runs without a stop.
const RUNS: f64 = 3.0;
/// Readings of the last so many seconds count: earlier ones are of another coil, warm gas and all.
const LATELY: f64 = 3600.0;
/// Before that the coil is yet to get cold.
const AT_FIRST: f64 = 900.0;
/// Half of the weakened draw as sound ones do; the others about so much of it, within this standard deviation
/// of its ln (judgement).
const WEAK_DRAW: (f64, f64) = (0.6, 0.35);

impl CoolDown {
    /// The same with what else was read. Exact under what it states, and quick.
    ///
    /// ```
    /// use measure::cool_down::{CabinetKind, CoolDown, Support, TemperatureAt};
    /// use quantity::{Celsius, Seconds};
    /// let at = |minute: u32, celsius: f64| TemperatureAt {
    ///     at: Seconds::new(f64::from(minute) * 60.0),
    ///     temperature: Celsius::new(celsius),
    /// };
    /// // An hour in which a freezer's air hardly cools, and its coil is no colder than the air.
    /// let air: Vec<TemperatureAt> =
    ///     (0..=60).map(|minute| at(minute, 21.0 - 0.05 * f64::from(minute))).collect();
    /// let plain = CoolDown::of(&air, &CabinetKind::ChestFreezer.prior()).unwrap();
    /// let coil = vec![at(40, 18.5), at(50, 18.0), at(60, 17.5)];
    /// let with = plain.with(&Support { coil, ..Support::default() });
    /// assert!(with.end().from > plain.end().from);
    /// ```
    #[must_use]
    pub fn with(&self, support: &Support) -> Self {
        let told = self.told_by_coil(support);
        let odds = support.draw.and_then(|draw| draw.odds());
        let mut parts = Vec::new();
        for part in &self.parts {
            let likely = odds.map_or(
                1.0,
                |[sound, weak]| if part.is_sound { sound } else { weak },
            );
            let weight = part.weight * likely;
            let Some(end) = told else {
                parts.push(Part { weight, ..*part });
                continue;
            };
            let (state, ln) = part.state.with_end(end.mean, end.deviation * end.deviation);
            let density = libm::exp(ln) / libm::sqrt(2.0 * core::f64::consts::PI);
            parts.push(Part {
                weight: weight * (1.0 - TRUSTED) / ANYWHERE,
                ..*part
            });
            parts.push(Part {
                weight: weight * TRUSTED * density,
                state,
                ..*part
            });
        }
        Self {
            parts: weighed(parts),
            ..self.clone()
        }
    }

    /// Where air ends by what its coil shows, in °C.
    fn told_by_coil(&self, support: &Support) -> Option<Normal> {
        let loss = self.beforehand.loss?;
        let first = self.log.temperature.first().copied()?;
        let room = support.room.map_or(first, Celsius::get);
        let held = &self.beforehand.held;
        let runs = held.mean + RUNS * held.deviation + RUNS;
        let since = (self.log.last() - LATELY).max(AT_FIRST);
        let seen = support.coil.iter().filter_map(|one| {
            let (at, coil) = (one.at.get(), one.temperature.get());
            let is_read = (since..=self.log.last() + 1.0).contains(&at) && coil.is_finite();
            let air = self.log.read_at(at);
            (is_read && air > runs).then_some((air, air - coil))
        });
        let (mut air, mut below): (Vec<f64>, Vec<f64>) = seen.unzip();
        if below.is_empty() || !(-60.0..=60.0).contains(&room) {
            return None;
        }
        let cabinet = Cabinet {
            loss,
            room,
            held: held.mean,
        };
        told(cabinet, median(&mut air), median(&mut below))
    }
}

#[derive(Clone, Copy)]
struct Cabinet {
    loss: f64,
    room: f64,
    /// Where a control holds it.
    held: f64,
}

/// Where air ends that stands so warm with a coil so many kelvins below it.
fn told(cabinet: Cabinet, air: f64, below: f64) -> Option<Normal> {
    let would_do = cabinet.loss * (cabinet.room - cabinet.held);
    if below > STARVED * would_do {
        return None;
    }
    let varies = LOSS_VARIES;
    let [cold, middle, warm] =
        [(-varies, BETWEEN), (0.0, 0.0), (varies, -BETWEEN)].map(|(ln, more)| {
            let loss = cabinet.loss * libm::exp(ln);
            balance(Cabinet { loss, ..cabinet }, air, below + more)
        });
    Some(Normal {
        mean: middle,
        deviation: (0.5 * (warm - cold)).max(2.0),
    })
}

/// Where what is lost and what is taken up are the same, between −60 °C and the room.
fn balance(cabinet: Cabinet, air: f64, below: f64) -> f64 {
    let (mut least, mut most) = (-60.0, cabinet.room);
    for _ in 0..40 {
        let end = 0.5 * (least + most);
        let taken = below.max(0.0) * libm::exp2((end - air) / HALVES);
        if taken > cabinet.loss * (cabinet.room - end) {
            most = end;
        } else {
            least = end;
        }
    }
    0.5 * (least + most)
}

impl Draw {
    /// How likely it is in a sound machine and in a weakened one, but for a constant.
    fn odds(&self) -> Option<[f64; 2]> {
        let [watts, least, most] = [self.watts, self.usual[0], self.usual[1]].map(Watts::get);
        if !(watts > 0.0 && least > 0.0 && most > least && most.is_finite() && watts.is_finite()) {
            return None;
        }
        let density = |mean: f64, deviation: f64| {
            let away = (libm::log(watts) - mean) / deviation;
            libm::exp(-0.5 * away * away) / deviation
        };
        let usual = 0.5 * (libm::log(least) + libm::log(most));
        let sound = density(usual, libm::log(most / least) / 4.0);
        let feeble = density(usual + libm::log(WEAK_DRAW.0), WEAK_DRAW.1);
        // No reading is impossible in a sound one: a meter errs, and so does who reads it.
        Some([sound + 0.02, 0.5 * sound + 0.5 * feeble + 0.02])
    }
}

#[cfg(test)]
mod tests {
    use super::super::prior::CabinetKind;
    use super::*;
    use quantity::Seconds;

    const CHEST: Cabinet = Cabinet {
        loss: 0.07,
        room: 23.0,
        held: -20.0,
    };

    fn at(minute: f64, celsius: f64) -> TemperatureAt {
        TemperatureAt {
            at: Seconds::new(minute * 60.0),
            temperature: Celsius::new(celsius),
        }
    }

    /// Two hours from 23 °C towards −20 °C.
    fn log() -> CoolDown {
        let air: Vec<TemperatureAt> = (0..=60)
            .map(|place| {
                let minute = 2.0 * f64::from(place);
                at(minute, -20.0 + 43.0 * libm::exp(-minute / 150.0))
            })
            .collect();
        CoolDown::of(&air, &CabinetKind::ChestFreezer.prior()).unwrap()
    }

    fn warm_end(cool_down: &CoolDown) -> f64 {
        cool_down.end().to.get()
    }

    #[test]
    fn both_heats_are_the_same_at_the_end() {
        let end = balance(CHEST, -1.0, 7.5);
        let taken = 7.5 * libm::exp2((end + 1.0) / HALVES);
        assert!((taken - 0.07 * (23.0 - end)).abs() < 1e-6, "{end}");
        assert!((-30.0..-18.0).contains(&end), "{end}");
    }

    #[test]
    fn a_coil_as_warm_as_the_air_leads_to_the_room() {
        assert!((balance(CHEST, 15.0, 0.0) - 23.0).abs() < 1e-6);
        assert!((balance(CHEST, 15.0, -4.0) - 23.0).abs() < 1e-6);
    }

    #[test]
    fn the_farther_below_the_air_the_colder_the_end_until_no_air_gets_there() {
        let ends = [1.0, 3.0, 6.0, 9.0].map(|below| told(CHEST, 10.0, below).map(|end| end.mean));
        assert!(ends.windows(2).all(|pair| pair[1] < pair[0]), "{ends:?}");
        assert!(told(CHEST, 10.0, 40.0).is_none());
    }

    #[test]
    fn a_coil_speaks_only_while_the_compressor_surely_runs_and_the_air_was_read() {
        let plain = log();
        let told = |coil: Vec<TemperatureAt>| {
            let room = Some(Celsius::new(23.0));
            plain.told_by_coil(&Support {
                coil,
                room,
                draw: None,
            })
        };
        assert!(told(vec![at(110.0, -6.0)]).is_some());
        assert!(told(Vec::new()).is_none());
        // Of its first minutes, of long ago, of later than the air was read, and no number.
        assert!(told(vec![at(10.0, 20.0)]).is_none());
        assert!(told(vec![at(50.0, 2.0)]).is_none());
        assert!(told(vec![at(130.0, -6.0)]).is_none());
        assert!(told(vec![at(110.0, f64::NAN)]).is_none());
    }

    #[test]
    fn a_coil_that_cools_other_air_says_nothing_of_this() {
        let beside = CabinetKind::CombinedFreshFood.prior();
        let told = |loss: Option<quantity::Ratio>| {
            let warm: Vec<TemperatureAt> = (0..=60)
                .map(|place| at(2.0 * f64::from(place), 23.0 - 0.1 * f64::from(place)))
                .collect();
            let fit = CoolDown::of(&warm, &super::super::CoolDownPrior { loss, ..beside });
            let coil = vec![at(110.0, 12.0)];
            fit.unwrap().told_by_coil(&Support {
                coil,
                ..Support::default()
            })
        };
        assert_eq!(beside.loss, None);
        assert!(told(None).is_none());
        assert!(told(CabinetKind::CombinedFreezer.prior().loss).is_some());
    }

    #[test]
    fn nothing_more_read_changes_nothing() {
        let plain = log();
        let with = plain.with(&Support::default());
        assert!((warm_end(&plain) - warm_end(&with)).abs() < 1e-9);
    }

    #[test]
    fn few_watts_speak_for_a_weak_machine_and_usual_ones_clear_little() {
        let draw = |watts: f64| Draw {
            watts: Watts::new(watts),
            usual: [Watts::new(60.0), Watts::new(140.0)],
        };
        let for_weak = |watts: f64| {
            let [sound, weak] = draw(watts).odds().unwrap();
            weak / sound
        };
        assert!(for_weak(35.0) > 10.0, "{}", for_weak(35.0));
        assert!((0.4..1.0).contains(&for_weak(95.0)), "{}", for_weak(95.0));
        let plain = log();
        let with = |watts| {
            plain.with(&Support {
                draw: Some(draw(watts)),
                ..Support::default()
            })
        };
        assert!(warm_end(&with(35.0)) > warm_end(&plain) + 0.5);
        assert!(warm_end(&with(95.0)) <= warm_end(&plain));
        assert!(draw(0.0).odds().is_none() && draw(f64::NAN).odds().is_none());
    }
}
