//! Choices as types, so that an answer that isn't offered can't be given and a choice without
//! words doesn't compile.

use job::Job;

/// One of a fixed list.
pub trait Choice: Copy + Eq + 'static {
    /// All of them, in the order in which they are offered.
    const ALL: &'static [Self];

    /// The name by which it is kept in a job.
    fn name(self) -> &'static str;

    /// The choice with this name.
    #[must_use]
    fn from_name(name: &str) -> Option<Self> {
        Self::ALL
            .iter()
            .copied()
            .find(|choice| choice.name() == name)
    }
}

/// A choice that answers one question of one check.
pub trait Asked: Choice {
    /// The check that asks.
    const CHECK: &'static str;
    /// The item that it answers.
    const ITEM: &'static str;
}

/// The answer that counts, where it is one that this program knows.
///
/// ```
/// # use diagnosis::{answered, Kind};
/// # use job::{Id, Job, Moment, Origin};
/// # let now = Moment::new(0, 0).unwrap();
/// let job = Job::new(Id::new("j").unwrap(), now, Origin::Person);
/// assert_eq!(answered::<Kind>(&job), None);
/// ```
#[must_use]
pub fn answered<C: Asked>(job: &Job) -> Option<C> {
    job.choice(C::CHECK, C::ITEM).and_then(C::from_name)
}

/// Declares an enum of choices with their names, and what question they answer, if just one.
macro_rules! choices {
    (
        $(#[$doc:meta])*
        pub enum $type:ident $(answers $check:literal / $item:literal)? {
            $($(#[$variant_doc:meta])* $variant:ident = $name:literal,)*
        }
    ) => {
        $(#[$doc])*
        #[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
        pub enum $type {
            $($(#[$variant_doc])* $variant,)*
        }

        impl $crate::Choice for $type {
            const ALL: &'static [Self] = &[$(Self::$variant),*];

            fn name(self) -> &'static str {
                match self {
                    $(Self::$variant => $name,)*
                }
            }
        }

        $(impl $crate::Asked for $type {
            const CHECK: &'static str = $check;
            const ITEM: &'static str = $item;
        })?
    };
}

pub(crate) use choices;
