//! 6 DECISION: does a value conform to its limit, what do findings by eye ask for, and does the part go back.

mod conformity;
pub mod finding;
mod limit;
pub mod risk;
mod verdict;

pub use conformity::{Decision, Of, Outcome as Conformity, Rule, decide_mm};
pub(crate) use conformity::{Judged, RuleInForce, judge};
pub(crate) use limit::{Limit, Limits};
pub(crate) use verdict::{Ground, verdict};
pub use verdict::{Outcome, Verdict};
