//! The three pins of a compressor, the pairs between them and the parts they can play.

/// One of the three pins, numbered as the person sees them, clockwise where they form a triangle.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
pub enum Pin {
    /// The first.
    One,
    /// The second.
    Two,
    /// The third.
    Three,
}

/// Two pins with the meter between them.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
pub enum Pair {
    /// Pins 1 and 2.
    OneTwo,
    /// Pins 1 and 3.
    OneThree,
    /// Pins 2 and 3.
    TwoThree,
}

/// The part that a pin plays in a motor with a run and a start winding.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
pub enum Role {
    /// Where both windings meet.
    Common,
    /// The far end of the start winding.
    Start,
    /// The far end of the run winding.
    Run,
}

/// Which pin plays which part. Always a permutation.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Assignment {
    common: Pin,
    start: Pin,
    run: Pin,
}

impl Pin {
    /// All pins.
    pub const ALL: [Self; 3] = [Self::One, Self::Two, Self::Three];

    /// 0, 1 or 2: its place in an array of three.
    #[must_use]
    pub const fn index(self) -> usize {
        self as usize
    }

    /// 1, 2 or 3: as shown.
    #[must_use]
    pub const fn number(self) -> usize {
        self as usize + 1
    }

    /// The next pin clockwise.
    #[must_use]
    pub const fn next(self) -> Self {
        match self {
            Self::One => Self::Two,
            Self::Two => Self::Three,
            Self::Three => Self::One,
        }
    }
}

impl Pair {
    /// All pairs.
    pub const ALL: [Self; 3] = [Self::OneTwo, Self::OneThree, Self::TwoThree];

    /// 0, 1 or 2: its place in an array of three.
    #[must_use]
    pub const fn index(self) -> usize {
        self as usize
    }

    /// Its two pins.
    #[must_use]
    pub const fn pins(self) -> [Pin; 2] {
        match self {
            Self::OneTwo => [Pin::One, Pin::Two],
            Self::OneThree => [Pin::One, Pin::Three],
            Self::TwoThree => [Pin::Two, Pin::Three],
        }
    }

    /// The pin that is not in it.
    #[must_use]
    pub const fn opposite(self) -> Pin {
        match self {
            Self::OneTwo => Pin::Three,
            Self::OneThree => Pin::Two,
            Self::TwoThree => Pin::One,
        }
    }

    /// The pair that leaves `pin` out.
    #[must_use]
    pub const fn without(pin: Pin) -> Self {
        match pin {
            Pin::One => Self::TwoThree,
            Pin::Two => Self::OneThree,
            Pin::Three => Self::OneTwo,
        }
    }

    /// Whether `pin` is in it.
    #[must_use]
    pub fn has(self, pin: Pin) -> bool {
        self.opposite() != pin
    }

    /// The pin that two different pairs share.
    #[must_use]
    pub fn shared_with(self, other: Self) -> Option<Pin> {
        let shared = |pin: &Pin| self.has(*pin) && other.has(*pin);
        (self != other)
            .then(|| Pin::ALL.into_iter().find(shared))
            .flatten()
    }
}

impl Assignment {
    /// All six ways of giving three parts to three pins.
    pub const ALL: [Self; 6] = [
        Self::of(Pin::One, Pin::Two, Pin::Three),
        Self::of(Pin::One, Pin::Three, Pin::Two),
        Self::of(Pin::Two, Pin::One, Pin::Three),
        Self::of(Pin::Two, Pin::Three, Pin::One),
        Self::of(Pin::Three, Pin::One, Pin::Two),
        Self::of(Pin::Three, Pin::Two, Pin::One),
    ];

    const fn of(common: Pin, start: Pin, run: Pin) -> Self {
        Self { common, start, run }
    }

    /// The pin that plays this part.
    #[must_use]
    pub const fn pin(self, role: Role) -> Pin {
        match role {
            Role::Common => self.common,
            Role::Start => self.start,
            Role::Run => self.run,
        }
    }

    /// The part that this pin plays.
    #[must_use]
    pub fn role(self, pin: Pin) -> Role {
        if pin == self.common {
            Role::Common
        } else if pin == self.start {
            Role::Start
        } else {
            Role::Run
        }
    }

    /// The pair between common and run: the run winding alone.
    #[must_use]
    pub const fn run_pair(self) -> Pair {
        Pair::without(self.start)
    }

    /// The pair between common and start: the start winding alone.
    #[must_use]
    pub const fn start_pair(self) -> Pair {
        Pair::without(self.run)
    }

    /// The pair between start and run: both windings in series.
    #[must_use]
    pub const fn series_pair(self) -> Pair {
        Pair::without(self.common)
    }
}

impl Role {
    /// All parts, in the order in which they are told.
    pub const ALL: [Self; 3] = [Self::Common, Self::Start, Self::Run];
}
