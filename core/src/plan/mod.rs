//! 8 PLAN: what is done to the block: to which size a bore is machined, where it is bored, what is left, and which piston
//! goes into which bore.

pub mod clean_up;
pub mod machining;
pub mod matching;
pub mod oversize;
