//! A running time as a clock shows it.

use quantity::Seconds;

/// "4:30", from an hour on "1:04:30".
pub fn clock_digits(time: Seconds) -> String {
    let seconds = time.get().max(0.0) as u64;
    let (hours, minutes, seconds) = (seconds / 3_600, seconds / 60 % 60, seconds % 60);
    if hours > 0 {
        format!("{hours}:{minutes:02}:{seconds:02}")
    } else {
        format!("{minutes}:{seconds:02}")
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn hours_stand_in_front_once_there_are_any() {
        let shown = [270.0, 3_870.0, -1.0].map(|time| clock_digits(Seconds::new(time)));
        assert_eq!(shown, ["4:30", "1:04:30", "0:00"]);
    }
}
