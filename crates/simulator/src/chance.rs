//! Chance that is the same on every machine: SplitMix64, a public-domain generator, from a seed.

/// A stream of random numbers.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Chance(u64);

impl Chance {
    /// The stream that belongs to a seed.
    ///
    /// ```
    /// let mut one = simulator::Chance::new(7);
    /// let mut other = simulator::Chance::new(7);
    /// assert_eq!(one.bits(), other.bits());
    /// ```
    #[must_use]
    pub const fn new(seed: u64) -> Self {
        Self(seed)
    }

    /// A stream of its own for a purpose, so that one more draw here shifts nothing there.
    #[must_use]
    pub fn fork(&self, purpose: u64) -> Self {
        let mut mixed = Self(self.0 ^ purpose.wrapping_mul(0xd6e8_feb8_6659_fd93));
        Self(mixed.bits())
    }

    /// 64 random bits.
    pub fn bits(&mut self) -> u64 {
        self.0 = self.0.wrapping_add(0x9e37_79b9_7f4a_7c15);
        let mut mixed = self.0;
        mixed = (mixed ^ (mixed >> 30)).wrapping_mul(0xbf58_476d_1ce4_e5b9);
        mixed = (mixed ^ (mixed >> 27)).wrapping_mul(0x94d0_49bb_1331_11eb);
        mixed ^ (mixed >> 31)
    }

    /// A number from 0 up to, not including, 1.
    pub fn share(&mut self) -> f64 {
        // 53 bits fill the fraction of a double exactly.
        (self.bits() >> 11) as f64 / 9_007_199_254_740_992.0
    }

    /// A number between two bounds, each as likely as any other.
    pub fn between(&mut self, least: f64, most: f64) -> f64 {
        least + (most - least) * self.share()
    }

    /// A number of the normal distribution with mean 0 and deviation 1.
    pub fn normal(&mut self) -> f64 {
        // 1 − share is never 0, of which there is no logarithm.
        let length = libm::sqrt(-2.0 * libm::log(1.0 - self.share()));
        length * libm::cos(core::f64::consts::TAU * self.share())
    }

    /// Whether something happens that happens so often.
    pub fn happens(&mut self, probability: f64) -> bool {
        self.share() < probability
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    /// The first outputs for the seed 1234567, as in the generator's published test vector
    /// (S. Vigna, splitmix64.c, public domain; vector from memory).
    #[test]
    fn the_first_numbers_are_those_of_the_published_generator() {
        let mut chance = Chance::new(1_234_567);
        assert_eq!(chance.bits(), 6_457_827_717_110_365_317);
        assert_eq!(chance.bits(), 3_203_168_211_198_807_973);
    }

    #[test]
    fn normal_numbers_have_mean_nought_and_deviation_one() {
        let mut chance = Chance::new(3);
        let drawn: Vec<f64> = (0..20_000).map(|_| chance.normal()).collect();
        let mean = drawn.iter().sum::<f64>() / 20_000.0;
        let square = drawn.iter().map(|x| x * x).sum::<f64>() / 20_000.0;
        // Four standard errors of the mean and of the mean square.
        assert!(mean.abs() < 4.0 / libm::sqrt(20_000.0), "{mean}");
        assert!(
            (square - 1.0).abs() < 4.0 * libm::sqrt(2.0 / 20_000.0),
            "{square}"
        );
    }
}
