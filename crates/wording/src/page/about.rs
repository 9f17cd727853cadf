//! What stands on the page about safety and limits.

/// A part of that page.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct AboutSection {
    /// Its heading.
    pub heading: &'static str,
    /// What stands under it.
    pub lines: &'static [&'static str],
}

/// The heading of the page.
pub const ABOUT_HEADING: &str = "Safety, and what this is";

/// The page, safety in front.
pub const ABOUT: &[AboutSection] = &[
    AboutSection {
        heading: "Before you touch anything",
        lines: &[
            "Plug out, and the plug where you can see it. Nothing in this version is done under power.",
            "A machine that tripped a protective device may be live. Don't try another outlet, and \
             never bypass, remove or move such a device to make a machine run: the trip has told \
             you something.",
            "A capacitor or an electronic board can hold a charge: wait ten minutes after \
             unplugging and don't touch bare contacts.",
            "Parts just taken off can be hot enough to burn. Edges of sheet metal cut.",
        ],
    },
    AboutSection {
        heading: "Refrigerant",
        lines: &[
            "Many refrigerants burn. Where the plate doesn't say, treat it as one that does: doors \
             open, fresh air, no flame, no spark, no lamp or hair dryer.",
            "The sealed system stays closed: no piercing, venting, brazing or charging. That is \
             licensed work almost everywhere.",
        ],
    },
    AboutSection {
        heading: "Children, storing, moving",
        lines: &[
            "A child can suffocate in a cabinet that latches. Take the doors or the lid off, or \
             lock it, wherever a machine stands unwatched.",
            "A chest or a tall cabinet needs two people. Keep it upright; after it lay down, let it \
             stand for hours before it is powered.",
            "Food that has been warm is not saved by cooling it again.",
        ],
    },
    AboutSection {
        heading: "What this can't do",
        lines: &[
            "This version measures windings. Ohms can condemn a compressor; they can't clear one.",
            "An ordinary ohmmeter tests insulation at a volt or so. Over range on it is not proof \
             of insulation.",
            "The odds rest on stated judgement and on your readings, not on statistics.",
            "Local codes and licensed practice come before anything that stands here.",
        ],
    },
    AboutSection {
        heading: "What stays on this device",
        lines: &[
            "Everything. Nothing is sent anywhere, there is no account, and no one counts visits.",
            "Jobs lie in this browser's storage. Clearing the browser's data deletes them, and some \
             phones clear it by themselves after a week without a visit: put Coldcase on the home \
             screen, and send what matters as a file from its Record.",
            "On an iPhone: the share button, then “Add to Home Screen”. On Android: the browser's \
             menu, then “Add to Home screen” or “Install”. What is kept in the browser doesn't \
             move there by itself: send it as a file first.",
        ],
    },
    AboutSection {
        heading: "Licence",
        lines: &["Coldcase is free software under the MIT licence, without warranty of any kind."],
    },
];
