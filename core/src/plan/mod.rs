//! 8 PLAN: what is done with which part.

pub mod matching;
