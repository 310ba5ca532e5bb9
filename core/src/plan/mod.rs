//! 8 PLAN: what is done to the block: to which size a bore is machined, where it is bored, and what is left.

pub mod clean_up;
pub mod machining;
pub mod oversize;
