//! 8 PLAN: what is done to the block: to which size a bore is machined, where it is bored, what is left, and which piston
//! goes into which bore; then how rings are filed, liners shimmed, a gasket chosen, masses matched and a finish checked.
//!
#![doc = include_str!("../../docs/plan.md")]

pub mod clean_up;
pub mod filing;
pub mod gasket;
pub mod machining;
pub mod matching;
pub mod oversize;
pub mod shims;
pub mod surface;
pub mod weights;
