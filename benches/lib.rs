//! Benches of gaugepoint; see README.md beside this file.
