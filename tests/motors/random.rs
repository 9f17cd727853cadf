//! Random numbers that are the same on every machine and in every year.

/// SplitMix64 (Steele, Lea and Flood, *Fast Splittable Pseudorandom Number Generators*, 2014).
#[derive(Debug, Clone)]
pub struct Random {
    state: u64,
}

impl Random {
    /// The same seed gives the same numbers.
    #[must_use]
    pub const fn seeded(seed: u64) -> Self {
        Self { state: seed }
    }

    /// The next 64 random bits.
    fn bits(&mut self) -> u64 {
        self.state = self.state.wrapping_add(0x9E37_79B9_7F4A_7C15);
        let mut z = self.state;
        z = (z ^ (z >> 30)).wrapping_mul(0xBF58_476D_1CE4_E5B9);
        z = (z ^ (z >> 27)).wrapping_mul(0x94D0_49BB_1331_11EB);
        z ^ (z >> 31)
    }

    /// From 0 up to, but not including, 1.
    pub fn unit(&mut self) -> f64 {
        // 53 bits fill the mantissa of a double exactly.
        (self.bits() >> 11) as f64 / (1u64 << 53) as f64
    }

    /// Evenly between two numbers.
    pub fn uniform(&mut self, low: f64, high: f64) -> f64 {
        low + (high - low) * self.unit()
    }

    /// Between two numbers, evenly in the logarithm.
    pub fn log_uniform(&mut self, low: f64, high: f64) -> f64 {
        libm::exp(self.uniform(libm::log(low), libm::log(high)))
    }

    /// Standard normal, by Box and Muller.
    pub fn normal(&mut self) -> f64 {
        let radius = libm::sqrt(-2.0 * libm::log(1.0 - self.unit()));
        radius * libm::cos(2.0 * core::f64::consts::PI * self.unit())
    }

    /// True with this probability.
    pub fn chance(&mut self, probability: f64) -> bool {
        self.unit() < probability
    }

    /// One of several, all equally likely.
    pub fn pick<T: Copy, const N: usize>(&mut self, from: [T; N]) -> T {
        let place = (self.unit() * N as f64) as usize;
        from[place.min(N - 1)]
    }
}
