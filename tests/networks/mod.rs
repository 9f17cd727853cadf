//! Evidence drawn from the networks that whole machines are weighed in, and what our inference
//! makes of it, for programs of others to check.
//!
//! Nothing here takes an answer from the inference to draw with: a machine is drawn from causes
//! to effects by the tables alone, and what is seen of it follows from its states.

mod draw;
mod record;
mod told;

pub(crate) use draw::machine;
pub use draw::{Drawn, draw};
pub use record::{RecordError, sets, write};
pub use told::write_jobs;
