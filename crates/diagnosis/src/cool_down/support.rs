//! What else was read while it cooled: the coil, the room, what it draws.
//!
//! Only readings since it was switched on count: a coil's and watts of before are of another cool-down.

use job::{Job, Place};
use measure::cool_down::{Draw, Support, TemperatureAt};
use quantity::{Celsius, Watts};

use super::course::Watched;
use crate::Machine;
use crate::checks::running::Running;
use crate::whole::usual_bounds;

/// Of a job, with the room's temperature where it was read.
pub(super) fn support(job: &Job, watched: &Watched, room: Option<Celsius>) -> Support {
    let coil = watched.readings(job, Place::Evaporator);
    let coil = coil.into_iter().map(|(at, temperature)| TemperatureAt {
        at: watched.began.until(at),
        temperature,
    });
    Support {
        coil: coil.collect(),
        room,
        draw: draw(job, watched),
    }
}

/// The later of both watts, beside what is usual; an inverter's follow its speed and say nothing.
fn draw(job: &Job, watched: &Watched) -> Option<Draw> {
    let machine = Machine::of(job);
    let running = Running::of(job, machine.mains);
    let (least, most) = usual_bounds(job, &machine, &running)?;
    let watts = running.watts()?;
    let read = running.watts_read(job)?;
    (watched.holds(read) && !running.is_by_board).then(|| Draw {
        watts: watts.value(),
        usual: [Watts::new(least), Watts::new(most)],
    })
}
