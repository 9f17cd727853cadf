//! What else is read while a cabinet cools: its coil, the room, what it draws.

use measure::cool_down::{Draw, Support, TemperatureAt};
use quantity::{Celsius, Seconds, Watts};
use simulator::Chance;

use super::cabinet::{CoolingMachine, Place};

/// A coil is read so often, in seconds, and not before its first quarter of an hour.
const EACH: f64 = 600.0;
const FIRST: f64 = 900.0;
/// Thermometers are off by up to so many kelvins, as such things are sold (common practice, no source), and
/// watts at the plug by two in a hundred (from memory).
const OFF: f64 = 1.0;
const GAIN: f64 = 0.02;
/// A reading beside the others, in kelvins.
const NOISE: f64 = 0.1;

impl Place {
    /// What people are told such machines draw once they are cold, as the instructions of the app have it
    /// (judgement); of a refrigerator no figure is known.
    const fn usual_watts(self) -> Option<[Watts; 2]> {
        match self {
            Self::Chest => Some([Watts::new(60.0), Watts::new(140.0)]),
            Self::Upright => Some([Watts::new(75.0), Watts::new(140.0)]),
            Self::CombinedFreezer | Self::CombinedFreshFood => {
                Some([Watts::new(90.0), Watts::new(170.0)])
            }
            Self::Refrigerator => None,
        }
    }
}

impl CoolingMachine {
    /// What a person reads besides in so many hours: the coil's metal on its mean each ten minutes, the room,
    /// and watts the last time it ran without its heater. Nobody can put a thermometer on a mean; where
    /// on a coil it lies is part of what two thermometers differ by.
    #[must_use]
    pub fn support(&self, place: Place, hours: f64, chance: &mut Chance) -> Support {
        let [coil_off, room_off] = [0, 1].map(|_| chance.between(-OFF, OFF));
        let gain = 1.0 + chance.between(-GAIN, GAIN);
        let seen = |at: f64| (FIRST..=hours * 3_600.0 + 1.0).contains(&at);
        let mut next = FIRST;
        let mut coil = Vec::new();
        for sample in self.samples.iter().filter(|one| seen(one.time.get())) {
            if sample.time.get() >= next {
                next += EACH;
                coil.push(TemperatureAt {
                    at: Seconds::new(sample.time.get()),
                    temperature: Celsius::new(
                        sample.evaporator.get() + coil_off + NOISE * chance.normal(),
                    ),
                });
            }
        }
        let mut runs = self.samples.iter().filter(|one| {
            let is_cooling = one.running && !one.defrosting;
            seen(one.time.get()) && is_cooling
        });
        let draw = runs.next_back().zip(place.usual_watts());
        Support {
            coil,
            room: Some(Celsius::new(self.room.get() + room_off)),
            draw: draw.map(|(sample, usual)| Draw {
                watts: Watts::new(sample.watts.get() * gain),
                usual,
            }),
        }
    }
}
