//! What is refused, by the parameter's name.

/// A parameter with which no machine can be built or run.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct ParameterError {
    /// The parameter, as the field is called in the code: `supply.volts`.
    pub parameter: &'static str,
    /// What was given.
    pub given: f64,
    /// The least that is taken.
    pub least: f64,
    /// The most that is taken.
    pub most: f64,
}

impl core::fmt::Display for ParameterError {
    fn fmt(&self, f: &mut core::fmt::Formatter<'_>) -> core::fmt::Result {
        write!(
            f,
            "{} is {}: give {} to {}",
            self.parameter, self.given, self.least, self.most
        )
    }
}

impl core::error::Error for ParameterError {}

/// Lets a value within its bounds pass; what is no number is outside of any.
pub(crate) fn within(
    parameter: &'static str,
    given: f64,
    least: f64,
    most: f64,
) -> Result<(), ParameterError> {
    if given >= least && given <= most {
        Ok(())
    } else {
        Err(ParameterError {
            parameter,
            given,
            least,
            most,
        })
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn what_is_no_number_is_refused_by_the_parameters_name() {
        assert!(within("supply.volts", 0.0, 0.0, 300.0).is_ok());
        assert!(within("supply.volts", 300.0, 0.0, 300.0).is_ok());
        for wrong in [f64::NAN, f64::INFINITY, -1.0, 400.0] {
            let error = within("supply.volts", wrong, 0.0, 300.0).unwrap_err();
            assert!(error.to_string().starts_with("supply.volts is "));
        }
    }
}
