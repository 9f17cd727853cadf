//! The addresses of the screens, as they stand behind "#".

use job::Id;

/// A screen.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum Route {
    /// The list of jobs.
    Jobs,
    /// A new job, question by question.
    New(Step),
    /// A place in a job.
    Job(Id, Place),
    /// Opening a file.
    Import,
    /// What this is, its limits, and safety.
    About,
    /// What the person sets once for all jobs.
    Settings,
    /// What is assumed before anything is known.
    Assumptions,
    /// Machines to practise on.
    Practice,
    /// No screen has this address.
    Unknown,
}

/// A question of a new job.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
pub enum Step {
    /// What is it?
    Kind,
    /// Which mains?
    Mains,
    /// What did it do?
    Complaint,
    /// Who says so?
    ToldBy,
}

/// A place in a job.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum Place {
    /// What to do next.
    Do,
    /// One check, by name.
    Check(String),
    /// Taking in the file of a temperature logger.
    Log,
    /// What is known.
    Known,
    /// What was done, to be kept and passed on.
    Record,
    /// The record as a page that goes with the machine.
    RecordPage,
    /// What is wrong with a machine to practise on.
    Truth,
}

impl Step {
    const ALL: [(Self, &str); 4] = [
        (Self::Kind, ""),
        (Self::Mains, "mains"),
        (Self::Complaint, "complaint"),
        (Self::ToldBy, "told-by"),
    ];

    fn name(self) -> &'static str {
        let named = Self::ALL.iter().find(|(step, _)| *step == self);
        named.map_or("", |(_, name)| name)
    }
}

impl Route {
    /// The screen at an address. A trailing slash and a missing first one make no difference.
    ///
    /// ```
    /// # use app::route::Route;
    /// assert_eq!(Route::at("/import"), Route::Import);
    /// assert_eq!(Route::at("/import").address(), "/import");
    /// ```
    #[must_use]
    pub fn at(address: &str) -> Self {
        let parts: Vec<&str> = address.split('/').filter(|part| !part.is_empty()).collect();
        match parts.as_slice() {
            [] => Self::Jobs,
            ["new"] => Self::New(Step::Kind),
            ["new", step] => Step::ALL
                .iter()
                .find(|(_, name)| name == step)
                .map_or(Self::Unknown, |(step, _)| Self::New(*step)),
            ["import"] => Self::Import,
            ["about"] => Self::About,
            ["settings"] => Self::Settings,
            ["assumptions"] => Self::Assumptions,
            ["practice"] => Self::Practice,
            ["job", id, place @ ..] => match (Id::new(id), Place::at(place)) {
                (Ok(id), Some(place)) => Self::Job(id, place),
                _ => Self::Unknown,
            },
            _ => Self::Unknown,
        }
    }

    /// The address of the screen, to stand behind "#".
    #[must_use]
    pub fn address(&self) -> String {
        match self {
            Self::Jobs | Self::Unknown => "/".to_owned(),
            Self::New(Step::Kind) => "/new".to_owned(),
            Self::New(step) => ["/new/", step.name()].concat(),
            Self::Job(id, place) => ["/job/", id.as_str(), &place.address()].concat(),
            Self::Import => "/import".to_owned(),
            Self::About => "/about".to_owned(),
            Self::Settings => "/settings".to_owned(),
            Self::Assumptions => "/assumptions".to_owned(),
            Self::Practice => "/practice".to_owned(),
        }
    }

    /// The address as a link's target.
    #[must_use]
    pub fn link(&self) -> String {
        ["#", &self.address()].concat()
    }

    /// The job that the screen belongs to.
    #[must_use]
    pub fn job(&self) -> Option<&Id> {
        match self {
            Self::Job(id, _) => Some(id),
            _ => None,
        }
    }

    /// The place in a job, if it is one.
    #[must_use]
    pub fn place(&self) -> Option<&Place> {
        match self {
            Self::Job(_, place) => Some(place),
            _ => None,
        }
    }
}

impl Place {
    fn at(parts: &[&str]) -> Option<Self> {
        match parts {
            [] | ["do"] => Some(Self::Do),
            ["do", "cool-down", "log"] => Some(Self::Log),
            ["do", check] => Some(Self::Check((*check).to_owned())),
            ["known"] => Some(Self::Known),
            ["record"] => Some(Self::Record),
            ["record", "page"] => Some(Self::RecordPage),
            ["truth"] => Some(Self::Truth),
            _ => None,
        }
    }

    fn address(&self) -> String {
        match self {
            Self::Do => String::new(),
            Self::Check(check) => ["/do/", check].concat(),
            Self::Log => "/do/cool-down/log".to_owned(),
            Self::Known => "/known".to_owned(),
            Self::Record => "/record".to_owned(),
            Self::RecordPage => "/record/page".to_owned(),
            Self::Truth => "/truth".to_owned(),
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn job(place: Place) -> Route {
        Route::Job(Id::new("4f1c-9").unwrap(), place)
    }

    #[test]
    fn every_screen_is_found_again_at_its_own_address() {
        let screens = [
            Route::Jobs,
            Route::New(Step::Kind),
            Route::New(Step::Mains),
            Route::New(Step::Complaint),
            Route::New(Step::ToldBy),
            Route::Import,
            Route::About,
            Route::Settings,
            Route::Assumptions,
            Route::Practice,
            job(Place::Truth),
            job(Place::Do),
            job(Place::Check("windings".to_owned())),
            job(Place::Log),
            job(Place::Known),
            job(Place::Record),
            job(Place::RecordPage),
        ];
        for screen in screens {
            assert_eq!(Route::at(&screen.address()), screen);
        }
    }

    #[test]
    fn an_address_that_no_screen_has_is_said_to_be_unknown() {
        for address in [
            "/jobs",
            "/job",
            "/job/ä",
            "/job/a/b",
            "/new/9",
            "/job/a/do/b/c",
        ] {
            assert_eq!(Route::at(address), Route::Unknown, "{address}");
        }
    }

    #[test]
    fn slashes_too_many_or_too_few_make_no_difference() {
        assert_eq!(Route::at(""), Route::Jobs);
        assert_eq!(Route::at("about/"), Route::About);
        assert_eq!(Route::at("//job/4f1c-9/"), job(Place::Do));
    }
}
