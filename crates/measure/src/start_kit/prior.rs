//! What is thought of a motor of which no more than ohms are known. All figures are judgement.

/// From where to where a ratio lies, every factor within as likely as any other.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Span {
    /// The least; above zero.
    pub least: f64,
    /// The most; above the least.
    pub most: f64,
}

impl Span {
    /// Where a share from 0 to 1 of the way leads, on the logarithmic scale.
    pub(super) fn at(self, share: f64) -> f64 {
        self.least * libm::pow(self.most / self.least, share)
    }

    pub(super) fn holds(self, ratio: f64) -> bool {
        ratio >= self.least && ratio <= self.most
    }

    fn is_one(self) -> bool {
        self.least > 0.0 && self.most >= self.least && self.most.is_finite()
    }
}

/// Ratios that ohms leave open.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct KitPrior {
    /// The rotor's resistance at standstill, seen from the main winding, over that winding's
    /// ohms.
    pub rotor_over_main: Span,
    /// The main winding's reactance over its resistance, rotor included in both.
    pub main_reactance_over_resistance: Span,
    /// Turns of the start winding over those of the main winding, as fields count them.
    pub turns: Span,
    /// The start winding's reactance over what the turns alone would make of the main winding's.
    pub start_reactance: Span,
    /// The least angle between the currents with the plain device, in degrees: a motor that was
    /// made to start with it turns forwards.
    pub least_angle_degrees: f64,
}

impl Default for KitPrior {
    /// Wide on purpose. Textbooks' motors: the rotor 1.9 times the main winding (a 1/4 hp motor
    /// of 2.02 and 4.12 Ω; Fitzgerald, Kingsley & Umans, *Electric Machinery*, example 9.2, data
    /// from memory), reactance over resistance 0.82, and 19° between the currents (the same,
    /// example 9.1).
    fn default() -> Self {
        let span = |least, most| Span { least, most };
        Self {
            rotor_over_main: span(0.4, 2.5),
            main_reactance_over_resistance: span(0.5, 2.5),
            turns: span(0.7, 1.8),
            start_reactance: span(0.6, 1.1),
            least_angle_degrees: 10.0,
        }
    }
}

impl KitPrior {
    pub(super) fn is_one(&self) -> bool {
        let spans = [
            self.rotor_over_main,
            self.main_reactance_over_resistance,
            self.turns,
            self.start_reactance,
        ];
        spans.into_iter().all(Span::is_one) && self.least_angle_degrees > 0.0
    }
}
