//! What policies of looking and acting cost in expectation, on small problems cut from the
//! networks of whole machines, where the best policy of all can be worked out.
//!
//! The method is that of Heckerman, Breese and Rommelse, "Decision-theoretic troubleshooting"
//! (1995), and of Breese and Heckerman, "Decision-theoretic troubleshooting: a framework for
//! repair and experiment" (1996), both from memory: networks of a known device, expected costs
//! instead of anecdotes, and simple orders beside the best.
//!
//! A problem has five parts that may be at fault, each as likely as after the complaint of a
//! machine drawn from the network, one or two at a time; four checks that tell something about
//! them; prices of looking, mending and scrapping as the ranking of the next check has them. The
//! machine is tried after each repair. What the policies can't avoid (the part that has to be
//! bought, the machine that has to be scrapped) is in the costs, so that ratios are near one.

mod problem;
mod rule;
mod table;

pub use problem::{Problem, draw};
pub use rule::Rule;
pub use table::{Row, problems, table};
