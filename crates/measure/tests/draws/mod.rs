//! Random numbers from a fixed seed.

/// SplitMix64: the same numbers everywhere.
pub(crate) struct Draws(u64);

impl Draws {
    pub(crate) fn new(seed: u64) -> Self {
        Self(seed)
    }

    /// A share from 0 up to 1.
    pub(crate) fn share(&mut self) -> f64 {
        self.0 = self.0.wrapping_add(0x9E37_79B9_7F4A_7C15);
        let mut state = self.0;
        state = (state ^ (state >> 30)).wrapping_mul(0xBF58_476D_1CE4_E5B9);
        state = (state ^ (state >> 27)).wrapping_mul(0x94D0_49BB_1331_11EB);
        ((state ^ (state >> 31)) >> 11) as f64 / (1u64 << 53) as f64
    }

    /// A standard normal number (Box and Muller).
    pub(crate) fn normal(&mut self) -> f64 {
        let radius = libm::sqrt(-2.0 * libm::log(1.0 - self.share()));
        radius * libm::cos(2.0 * core::f64::consts::PI * self.share())
    }
}
