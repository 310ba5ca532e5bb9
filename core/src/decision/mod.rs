//! 6 DECISION: does a value conform to its limit, what do findings by eye ask for, and does the part go back.

mod conformity;
pub mod finding;
mod limit;
pub mod risk;
pub mod signs;
mod rule;
mod verdict;

pub(crate) use conformity::{Against, GUARD_FACTOR, GUARD_SOURCE, Judged, asked, check_order, decide, judge};
pub use conformity::{Decision, Of, Outcome as Conformity, decide_mm, probability_of_conformity};
pub(crate) use limit::{Limit, LimitSets, Limits, WHICH, named};
pub use rule::Rule;
pub(crate) use rule::RuleInForce;
pub(crate) use verdict::{Ground, together, verdict};
pub use verdict::{Outcome, Verdict};
