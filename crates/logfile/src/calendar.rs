//! Days of the Gregorian calendar, counted from 1970-01-01.

/// Days from 1970-01-01 to a date; `None` where there is no such date between 1900 and 2199.
///
/// Years are counted from 1 March, so that the leap day is the last of its year.
pub(crate) const fn days(year: i32, month: u8, day: u8) -> Option<i32> {
    if year < 1900
        || year > 2199
        || month < 1
        || month > 12
        || day < 1
        || day > month_length(year, month)
    {
        return None;
    }
    let year = if month <= 2 { year - 1 } else { year };
    let from_march = (month as i32 + 9) % 12;
    let day_of_year = (153 * from_march + 2) / 5 + day as i32 - 1;
    let era = year / 400;
    let year_of_era = year % 400;
    let day_of_era = year_of_era * 365 + year_of_era / 4 - year_of_era / 100 + day_of_year;
    Some(era * 146_097 + day_of_era - 719_468)
}

const fn month_length(year: i32, month: u8) -> u8 {
    match month {
        2 if year % 4 == 0 && (year % 100 != 0 || year % 400 == 0) => 29,
        2 => 28,
        4 | 6 | 9 | 11 => 30,
        _ => 31,
    }
}

/// Whether a day is a Sunday. 1970-01-01 was a Thursday.
pub(crate) const fn is_sunday(days: i32) -> bool {
    (days + 4).rem_euclid(7) == 0
}

/// The month of a day, 1 to 12.
pub(crate) const fn month_of(days: i32) -> u8 {
    let from_march_0000 = days + 719_468;
    let day_of_era = from_march_0000.rem_euclid(146_097);
    let year_of_era =
        (day_of_era - day_of_era / 1_460 + day_of_era / 36_524 - day_of_era / 146_096) / 365;
    let day_of_year = day_of_era - (365 * year_of_era + year_of_era / 4 - year_of_era / 100);
    let from_march = (5 * day_of_year + 2) / 153;
    (if from_march >= 10 {
        from_march - 9
    } else {
        from_march + 3
    }) as u8
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn dates_are_counted_as_on_a_calendar() {
        assert_eq!(days(1970, 1, 1), Some(0));
        assert_eq!(days(2000, 2, 29), Some(11_016));
        assert_eq!(days(2024, 3, 5), Some(19_787));
        assert_eq!(days(2023, 2, 29), None);
        assert_eq!(days(2024, 13, 1), None);
        assert_eq!(days(1899, 12, 31), None);
        assert!(is_sunday(days(2024, 10, 27).unwrap()));
        assert!(!is_sunday(days(2024, 10, 26).unwrap()));
    }

    #[test]
    fn every_day_follows_the_one_before_it() {
        let mut expected = days(1900, 1, 1).unwrap();
        for year in 1900..2200 {
            for month in 1..=12 {
                for day in 1..=31 {
                    if let Some(found) = days(year, month, day) {
                        assert_eq!(found, expected);
                        assert_eq!(month_of(found), month);
                        expected += 1;
                    }
                }
            }
        }
        assert_eq!(expected - days(1900, 1, 1).unwrap(), 300 * 365 + 73);
    }
}
