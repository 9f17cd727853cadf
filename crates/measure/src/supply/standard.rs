//! Which volts are within which standard.

use quantity::{Uncertain, Volts};

use crate::{Against, against};

/// A standard that says which volts there may be.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum SupplyStandard {
    /// ANSI C84.1, range A, at the appliance on a 120 V system (from memory).
    AnsiUtilisationA,
    /// ANSI C84.1, range B, at the appliance on a 120 V system (from memory).
    AnsiUtilisationB,
    /// ANSI C84.1, range A, where the supply enters the house (±5 %).
    AnsiServiceA,
    /// IEC 60038 and EN 50160: 230 V ±10 % (from memory).
    Iec230,
    /// A refrigerator's outlet under load: 115 V ±10 % (*Modern Refrigeration and Air
    /// Conditioning*, 2017, p. 646).
    RefrigeratorOutlet115,
    /// NEMA MG 1: a motor's plate ±10 %, by [`VoltageStandard::of_motor`].
    NemaMotor,
}

/// The volts that a standard allows.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct VoltageStandard {
    /// Which standard.
    pub standard: SupplyStandard,
    /// The least.
    pub least: Volts,
    /// The most.
    pub most: Volts,
}

/// All standards that give volts by themselves.
pub const SUPPLY_STANDARDS: [VoltageStandard; 5] = [
    allows(SupplyStandard::AnsiUtilisationA, 108.0, 126.0),
    allows(SupplyStandard::AnsiUtilisationB, 104.0, 127.0),
    allows(SupplyStandard::AnsiServiceA, 114.0, 126.0),
    allows(SupplyStandard::Iec230, 207.0, 253.0),
    allows(SupplyStandard::RefrigeratorOutlet115, 103.5, 126.5),
];

const fn allows(standard: SupplyStandard, least: f64, most: f64) -> VoltageStandard {
    VoltageStandard {
        standard,
        least: Volts::new(least),
        most: Volts::new(most),
    }
}

impl VoltageStandard {
    /// What a motor's own plate allows: ±10 % (NEMA MG 1).
    #[must_use]
    pub fn of_motor(plate: Volts) -> Self {
        Self {
            standard: SupplyStandard::NemaMotor,
            least: plate * 0.9,
            most: plate * 1.1,
        }
    }

    /// Whether volts are within, as far as the meter lets one tell.
    ///
    /// ```
    /// use measure::Against;
    /// use measure::supply::SUPPLY_STANDARDS;
    /// use quantity::{Uncertain, Volts};
    /// let low = Uncertain::exact(Volts::new(106.0));
    /// assert_eq!(SUPPLY_STANDARDS[0].judge(&low), Against::Below);
    /// assert_eq!(SUPPLY_STANDARDS[1].judge(&low), Against::Within);
    /// ```
    #[must_use]
    pub fn judge(&self, volts: &Uncertain<Volts>) -> Against {
        against(volts, self.least, self.most)
    }
}
