//! What must not be done meanwhile, whether enough is known, and why a check has to wait.

use diagnosis::{Closed, Decided, Hold, WhyWithheld};

use crate::Words;

impl Words for Hold {
    fn words(self) -> &'static str {
        match self {
            Self::DoNotEnergise => "Don't power it: its metal may be live.",
            Self::DoNotRunGasMayBeOut => {
                "Don't run it: gas that burns may be out. Doors open, fresh air, no spark."
            }
            Self::DoNotCondemnCompressor => {
                "Don't call the compressor dead before a known-good start device and enough volts \
                 were tried, each once it is safe."
            }
            Self::DoNotFitStartKit => {
                "No universal start kit: it hides why the compressor doesn't start, and is never \
                 for gas that burns or for an inverter's compressor."
            }
            Self::DoNotBuyBoardYet => {
                "Don't buy a board before the three windings read alike and none reaches the shell."
            }
            Self::DoNotScrapYet => {
                "Don't scrap it yet: what is known doesn't say that nothing else helps."
            }
            Self::DoNotOpenSealedSystem => {
                "The sealed system stays closed: no valve clamped on, nothing topped up."
            }
        }
    }
}

impl Words for Decided {
    fn words(self) -> &'static str {
        match self {
            Self::GoOn => "Not decided yet: another check is worth its time.",
            Self::NearlySure => "Enough is known to do it.",
            Self::NothingWorthwhile => "No check that can safely be done now is worth its time.",
        }
    }
}

/// Why a check has to wait, as a sentence.
#[must_use]
pub fn not_now(why: &WhyWithheld) -> String {
    match why {
        WhyWithheld::NothingToObserve => {
            "Not now: it looks at what this machine hardly does.".to_owned()
        }
        other => format!("Not now: {}.", why_withheld(other)),
    }
}

/// Why a check is not offered, behind "not now".
pub(super) fn why_withheld(why: &WhyWithheld) -> String {
    match why {
        WhyWithheld::Closed(reasons) if reasons.contains(&Closed::Stop) => {
            Closed::Stop.words().to_owned()
        }
        WhyWithheld::Closed(reasons) => {
            let reasons: Vec<&str> = reasons.iter().map(|reason| reason.words()).collect();
            reasons.join(", and ")
        }
        WhyWithheld::GasMayBeOut => "gas that burns may be out".to_owned(),
        WhyWithheld::NotWithGasThatBurns => {
            "the gas burns or isn't known, and it would add a contact that can spark; on the start \
             kit's page you can say that its maker declares it for this gas and this compressor"
                .to_owned()
        }
        WhyWithheld::AfterGoodDevice => "a plain known-good start device is tried first".to_owned(),
        WhyWithheld::NothingToObserve => "this machine hardly does".to_owned(),
        WhyWithheld::CannotBeDone => "you said that it can't be done".to_owned(),
    }
}
