//! How many minutes of work it takes until enough is known, over the worked cases: following our
//! next check, and following a fixed checklist along the Path.
//!
//! Both begin with what a person tells of the machine, do first what safety asks for, take only
//! what is offered at the moment, pay for the change of access, and stop when the verdict says
//! that enough is known or no check that is left is worth its time.
//!
//! A check's answer is the story's, where it has one. Where it has none, the answer is drawn by a
//! fixed seed from the network with the story's faults in it, all other parts sound, and the
//! story's own answers entered; both ways of working see the same machine. What brings no answer
//! that way costs its minutes and tells nothing.

mod bench;
mod story;
mod summary;

pub(crate) use story::stories;
pub(crate) use summary::Summary;
