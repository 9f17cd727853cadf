//! Whether what is said to be so sure is so often true.

/// Statements of one tenth of the scale.
#[derive(Debug, Clone, Copy, Default)]
pub struct Decile {
    /// How many statements.
    pub statements: u32,
    /// From how many machines.
    pub machines: u32,
    stated: f64,
    true_ones: f64,
    squares: f64,
}

/// Ten deciles of stated probability.
#[derive(Debug, Clone, Copy, Default)]
pub struct Calibration {
    /// From [0, 0.1) to [0.9, 1].
    pub deciles: [Decile; 10],
}

impl Calibration {
    /// Adds all statements about one machine. They hang together, so the machine counts as one
    /// draw for the standard error.
    pub fn add(&mut self, statements: impl Iterator<Item = (f64, bool)>) {
        let mut surprise = [None; 10];
        for (stated, is_true) in statements {
            let place = ((stated * 10.0) as usize).min(9);
            let found = f64::from(u8::from(is_true));
            let decile = &mut self.deciles[place];
            decile.statements += 1;
            decile.stated += stated;
            decile.true_ones += found;
            *surprise[place].get_or_insert(0.0) += found - stated;
        }
        for (decile, surprise) in self.deciles.iter_mut().zip(surprise) {
            if let Some(surprise) = surprise {
                decile.machines += 1;
                decile.squares += surprise * surprise;
            }
        }
    }

    /// Adds what another sample found.
    pub fn merge(&mut self, other: &Self) {
        for (mine, theirs) in self.deciles.iter_mut().zip(&other.deciles) {
            mine.statements += theirs.statements;
            mine.machines += theirs.machines;
            mine.stated += theirs.stated;
            mine.true_ones += theirs.true_ones;
            mine.squares += theirs.squares;
        }
    }
}

impl Decile {
    /// The mean probability said.
    #[must_use]
    pub fn said(&self) -> f64 {
        self.stated / f64::from(self.statements.max(1))
    }

    /// The share that was true.
    #[must_use]
    pub fn found(&self) -> f64 {
        self.true_ones / f64::from(self.statements.max(1))
    }

    /// Found less said.
    #[must_use]
    pub fn gap(&self) -> f64 {
        self.found() - self.said()
    }

    /// The standard error of the gap, machines being independent and the statements about one
    /// machine not (cluster-robust variance of a mean).
    #[must_use]
    pub fn standard_error(&self) -> f64 {
        libm::sqrt(self.squares) / f64::from(self.statements.max(1))
    }
}
