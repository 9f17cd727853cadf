//! The words for practising on simulated machines. The page fetches them with that part.

/// Leads to it, and its heading.
pub const PRACTISE: &str = "Practise without a freezer";
/// What it is.
pub const HOW: &str = "A simulated machine stands on the bench. You examine it on the same screens as a \
                       real one; where you would put probes, look or listen, a button does it. When you \
                       are done, or give up, the truth is shown beside your way and the app's.";
/// Above the lessons.
pub const LESSONS: &str = "Five machines from the repair evening";
/// What they are.
pub const LESSONS_HOW: &str = "In the back room of a repair evening stand five machines, each with a \
                               note on its lid. Each has one thing to teach.";
/// Above the machines at random.
pub const AT_RANDOM: &str = "A machine at random";
/// What they are.
pub const AT_RANDOM_HOW: &str = "Drawn by how often each fault is the one, by our judgement. Sometimes \
                                 nothing is wrong.";
/// A machine is being simulated.
pub const MAKING: &str = "The machine is being set up.";
/// No machine came out.
pub const NOT_FOUND: &str = "No such machine came out this time. Try again.";
/// Difficulties with what they mean.
pub const EASY: (&str, &str) = ("Easy", "one fault that can't be overlooked");
/// The same.
pub const ORDINARY: (&str, &str) = ("Ordinary", "as machines are offered");
/// The same.
pub const HARD: (&str, &str) = ("Hard", "two faults, or one that barely shows");

/// A lesson: what its machine is called, what its note says, and in the end what it teaches.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Lesson {
    /// What its machine is called.
    pub title: &'static str,
    /// What its note says.
    pub note: &'static str,
    /// What it teaches.
    pub point: &'static str,
}

/// An open start device.
pub const HUMS_AND_CLICKS: Lesson = Lesson {
    title: "The chest from the boathouse",
    note: "Hums for a few seconds, clicks, is quiet, and begins again. “Surely the compressor.”",
    point: "A start device that lets no current through leaves the rotor standing: hum, click, pause. Its \
            ohms show it within minutes, and it is the cheapest part of the machine. Nobody should give up \
            a compressor that was never given a good start device.",
};
/// A leak that isn't the compressor's.
pub const TRIPS_THE_OUTLET: Lesson = Lesson {
    title: "The tall one that trips",
    note: "The outlet goes. The last who looked at it wrote: “Earth fault, compressor, scrap.”",
    point: "From the plug a leak of the heater and a leak of a winding look alike. Each pin to the shell \
            tells them apart: here the pins are clear, so that it is the heater, the fan or the wiring. \
            Until it is found, the machine stays unplugged.",
};
/// Part of the gas is gone.
pub const NEVER_GETS_THERE: Lesson = Lesson {
    title: "The chest that never gets there",
    note: "Runs day and night. What is put in stays soft.",
    point: "A pump that runs with too little to pump: fewer watts than such a machine takes, a condenser \
            that hardly warms, frost on the first part only. One of these alone says little; together they \
            point to the charge, and a sealed circuit is licensed work.",
};
/// Ice, because nothing thaws it.
pub const COLD_ON_ONE_SIDE: Lesson = Lesson {
    title: "Cold above, warm below",
    note: "The freezer freezes, the milk turns sour. It was switched off for a weekend once, and was well \
           for a week.",
    point: "Ice behind the panel keeps the air from going round. Thawing cures it for a week: what matters \
            is why it wasn't thawed. Heater, its thermostat and its fuse are measured in a row, unplugged.",
};
/// Nothing wrong.
pub const BROUGHT_BACK: Lesson = Lesson {
    title: "The one that was brought back",
    note: "Sold on Friday, brought back on Saturday: “doesn't get cold.” It had been given an hour.",
    point: "Nothing is wrong with it. A freezer that was warm needs most of a day, and a reading that fits \
            a sound machine is a finding too. Every part replaced here would have been replaced in vain.",
};

/// Above every screen of a practice job.
pub const MARK: &str = "Practice: a simulated machine.";
/// Leads to the truth.
pub const DONE: &str = "The truth";
/// What a list of entries calls by what a machine was made.
pub const MACHINE: &str = "Practice machine";

/// Asks a meter.
pub const MEASURE: &str = "Measure it";
/// Asks eyes.
pub const LOOK: &str = "Look";
/// Asks ears.
pub const LISTEN: &str = "Listen";
/// Asks hands.
pub const FEEL: &str = "Feel";
/// Asks people.
pub const ASK: &str = "Ask around";
/// It is being found out.
pub const WAIT: &str = "One moment.";
/// In front of what a meter shows.
pub const SHOWS: &str = "The meter shows";
/// In front of what is printed.
pub const PRINTED: &str = "On it is printed";
/// In front of what was seen, heard or felt.
pub const FOUND: &str = "On this machine:";
/// Enters what was found.
pub const ENTER_THIS: &str = "Enter this";
/// Nothing can be found.
pub const NOTHING: &str =
    "Nothing of that can be told on this machine: say below that it can't be done.";
/// Nothing of a list.
pub const NONE_OF_IT: &str = "nothing of the kind";
/// Over range, spoken.
pub const OVER_RANGE: &str = "over range";
/// Turns sound off.
pub const SOUND_OFF: &str = "Turn sound off";
/// Turns it on.
pub const SOUND_ON: &str = "Turn sound on";

/// The job doesn't say which machine it is.
pub const UNTOLD: &str = "This job no longer says which practice machine it is about, so that nothing can \
                          be measured on it. Everything that was entered is still here.";
/// There is no such machine.
pub const UNKNOWN: &str = "This version of the app has no such practice machine, so that nothing can be \
                           measured on it. Everything that was entered is still here.";
/// It would be another.
pub const ANOTHER: &str = "This version of the app makes another machine than the one this job was begun \
                           with, so that its readings wouldn't fit. Everything that was entered is still \
                           here; begin a new one to practise.";

/// The heading of the truth.
pub const TRUTH: &str = "The truth";
/// Before it is shown.
pub const TRUTH_HOW: &str = "What is wrong with the machine, and how the app would have gone about it. \
                             After that it is no riddle any more.";
/// Shows it.
pub const SHOW_TRUTH: &str = "Show the truth";
/// It is being worked out.
pub const WORKING_OUT: &str = "The app examines the same machine. That takes a moment.";
/// Above what is wrong.
pub const IS_WRONG: &str = "What is wrong with it";
/// Nothing is.
pub const NOTHING_WRONG: &str = "Nothing. It does what it should.";
/// Above what a lesson teaches.
pub const POINT: &str = "What it teaches";
/// Above what the app makes of the readings.
pub const FROM_READINGS: &str = "From your readings the app says";
/// Above both ways.
pub const WAYS: &str = "Two ways through it";
/// The person's way.
pub const YOURS: &str = "Yours";
/// The app's.
pub const OURS: &str = "The app's next check, each time";
/// Nothing was examined.
pub const NO_CHECKS: &str = "No check was made.";
/// What the minutes are.
pub const MINUTES_HOW: &str = "Minutes are the app's own for each check, by judgement, without what it \
                               takes to open covers.";
/// Leads to the next one.
pub const ANOTHER_ONE: &str = "Practise on another";

/// How bad a case of a fault it is, by its severity from 0 to 1, after its name.
#[must_use]
pub fn severity(severity: f64) -> &'static str {
    match severity {
        slight if slight < 0.35 => "a slight case",
        middling if middling < 0.6 => "a plain case",
        _ => "a bad case",
    }
}

/// So many checks, with what they take.
#[must_use]
pub fn effort(checks: usize, minutes: f64, waiting: f64) -> String {
    let checks = match checks {
        1 => "1 check".to_owned(),
        many => format!("{many} checks"),
    };
    let work = format!("{checks}, about {}", minutes_of(minutes));
    if waiting < 1.0 {
        return work;
    }
    format!("{work}, and {} of waiting", minutes_of(waiting))
}

fn minutes_of(minutes: f64) -> String {
    if minutes < 90.0 {
        return format!("{minutes:.0} min");
    }
    format!("{:.0} h", minutes / 60.0)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn what_checks_take_is_told_in_minutes_and_from_an_hour_and_a_half_in_hours() {
        assert_eq!(effort(1, 4.4, 0.0), "1 check, about 4 min");
        assert_eq!(
            effort(6, 29.6, 720.0),
            "6 checks, about 30 min, and 12 h of waiting"
        );
        assert_eq!(effort(0, 0.0, 0.0), "0 checks, about 0 min");
    }

    #[test]
    fn a_fault_is_as_plain_as_it_is_bad() {
        let said = [0.0, 0.5, 1.0].map(severity);
        assert_eq!(said, ["a slight case", "a plain case", "a bad case"]);
    }
}
