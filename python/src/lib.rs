#![forbid(unsafe_code)]
//! Python module of gaugepoint.
