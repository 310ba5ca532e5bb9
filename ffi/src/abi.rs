//! The number of the ABI: of the header, of [`gaugepoint_abi`](crate::status::gaugepoint_abi) and of the shared library's
//! name. Read by `build.rs` too.

/// Number of the ABI this header belongs to. It rises when a program built for the old one would no longer run rightly.
pub const GAUGEPOINT_ABI: i32 = 1;
