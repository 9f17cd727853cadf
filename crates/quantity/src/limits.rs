//! Which values can't be, and which are worth asking about.

use crate::Quantity;

/// Whether a value beyond a limit is refused or asked about.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Strictness {
    /// Can't be: the value is not taken.
    Hard,
    /// Unusual: the value is taken once the person says that it is right.
    Soft,
}

/// Which side of a limit is beyond it.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum Side<Q> {
    /// Values below this are beyond the limit.
    Below(Q),
    /// Values above this are beyond the limit.
    Above(Q),
}

/// One limit with the reason for it, which the screen turns into words.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Limit<Q, R> {
    /// Refused or asked about.
    pub strictness: Strictness,
    /// Where it lies.
    pub side: Side<Q>,
    /// Why it is there.
    pub reason: R,
}

/// A table of limits. The first one that a value is beyond speaks, so hard ones come first.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Limits<Q: 'static, R: 'static>(pub &'static [Limit<Q, R>]);

impl<Q: Quantity, R: Copy> Limits<Q, R> {
    /// The first limit that `value` is beyond.
    ///
    /// ```
    /// # use quantity::{Limit, Limits, Ohms, Side, Strictness};
    /// const TABLE: Limits<Ohms, &str> = Limits(&[
    ///     Limit { strictness: Strictness::Hard, side: Side::Below(Ohms::new(0.0)), reason: "sign" },
    ///     Limit { strictness: Strictness::Soft, side: Side::Above(Ohms::new(100.0)), reason: "kilo" },
    /// ]);
    /// assert!(TABLE.beyond(Ohms::new(4.7)).is_none());
    /// assert_eq!(TABLE.beyond(Ohms::new(4700.0)).map(|limit| limit.reason), Some("kilo"));
    /// ```
    #[must_use]
    pub fn beyond(&self, value: Q) -> Option<Limit<Q, R>> {
        self.0
            .iter()
            .find(|limit| match limit.side {
                Side::Below(bound) => value < bound,
                Side::Above(bound) => value > bound,
            })
            .copied()
    }
}
